/* relight.h - how lamps are to be dimmed and moved, so that faces and walls come out where they are wanted
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Light adds up, and what a lamp gives goes with its dimming, bounces too: so what each source gives alone tells every dimming. Of those that
 * mend a fault and make no other worse that is taken which changes the fewest lamps: house lights and blinds first, then lamps within the
 * range of a dimmer, then lamps that go out. Among these it is the one that comes nearest to all that is wanted.
 */

#pragma once

#include "judge_parts.h"

#define LR_RELIGHT_LAMPS 16
#define LR_RELIGHT_VIEWS 8
#define LR_RELIGHT_STEP 0.05  /* of a dimmer */
#define LR_RELIGHT_LEAST 0.10 /* a lamp is not dimmed further: many go out, flicker or change color there (common practice, no source) */
#define LR_RELIGHT_QUIET_ISO 1600.0 /* over it noise shows, and over the next it is in the way (common practice, no source) */
#define LR_RELIGHT_MOST_ISO 6400.0

/* A level that lamps make together */
typedef struct
{
  double fixed_lx;                   /* of what cannot be dimmed: windows, house lights that stay on */
  double full_lx[LR_RELIGHT_LAMPS];  /* of each lamp at full */
} LrRelightLevel;

typedef struct
{
  const LrPlaced *placed;
  double   dim;                      /* as it is */
  gboolean stays_on;                 /* a key does not go out */
  gboolean is_switch;                /* a house light, a window with a blind: on or off */
  gboolean is_held;                  /* stays as it is */
} LrRelightLamp;

/* What a camera makes of its subject's face and of the walls behind */
typedef struct
{
  const LrCameraReading *camera;
  LrRelightLevel left, right;        /* on the cheeks */
  LrRelightLevel walls;              /* what they give back, as the light on a white wall */
  gboolean has_walls;
  gboolean has_ratio;                /* the first camera on this person */
  double   share_per_lx;             /* of the white, of a surface that reflects all */
  double   skin;                     /* reflectance */
} LrRelightView;

typedef enum { LR_RELIGHT_FACE, LR_RELIGHT_WALLS, LR_RELIGHT_RATIO, LR_N_RELIGHT_AIMS } LrRelightAim;

typedef struct
{
  LrRelightLamp lamp[LR_RELIGHT_LAMPS];
  guint         n_lamps;
  LrRelightView view[LR_RELIGHT_VIEWS];
  guint         n_views;
  double face_share, face_off_stops; /* wanted, and by how much it may be off */
  double wall_share, wall_off_stops; /* share NAN: as dark as they come */
  double wall_under_stops;           /* under the face at least */
  double ratio_min_stops, ratio_max_stops;
  double match_stops;                /* cameras are exposed alike within */
  double most_iso;                   /* that a camera is set to */
} LrRelight;

/* relight_read.c. FALSE: the levels are not those of the plan that is judged, or not whole */
gboolean lr_relight_init   (LrRelight *self, const LrJudge *judge);
/* Number of the camera's view; n_views if there is none */
guint    lr_relight_find   (const LrRelight *self, const LrCameraReading *camera);

/* The dimmings as they are, n_lamps of them */
void     lr_relight_get    (const LrRelight *self, double *dims);
/* By how much a view misses an aim [stops]; <= 0: it does not; HUGE_VAL: it is in the dark */
double   lr_relight_miss   (const LrRelight *self, const double *dims, guint view, LrRelightAim aim);
/* How far all views are off what is wanted: the sum of the squares [stops^2] */
double   lr_relight_off    (const LrRelight *self, const double *dims);
/* Whether @dims mend that and make nothing worse than it is @now; @margin_stops: by so much inside its tolerance */
gboolean lr_relight_mends  (const LrRelight *self, const double *dims, const LrRelight *now, guint view, LrRelightAim aim, double margin_stops);
/* What is to be set */
typedef struct
{
  double dims[LR_RELIGHT_LAMPS];
  double more_stops[LR_RELIGHT_VIEWS]; /* how much more each camera is to make of the light; < 0: less */
} LrRelightAnswer;

/* FALSE: no dimming of one lamp, of two, or of all alike does it; @may_expose: with cameras that are set after the face */
gboolean lr_relight_solve  (const LrRelight *self, guint view, LrRelightAim aim, gboolean may_expose, LrRelightAnswer *answer);
/* Whether cameras that are set otherwise push walls or each other off, or take a noisy ISO */
gboolean lr_relight_harms  (const LrRelight *self, const LrRelightAnswer *answer);

/* relight_move.c: another place for a lamp */
typedef struct
{
  guint  lamp;
  LrVec2 to_m;
  double away_m;       /* from the person then, measured on the floor */
  double turned_rad;   /* round the person; 0: nearer or farther on its own line */
  double dim;
  double left_lx, right_lx; /* of it at full, as told beforehand, on the cheeks */
} LrRelightMove;

#define LR_RELIGHT_MOVES 2

/* The nearest of the places that mend, nearer or farther or round the person of the view either way, dimmed otherwise if need be; returns how many */
guint lr_relight_find_moves (const LrRelight *self, const LrJudge *judge, guint view, LrRelightAim aim, LrRelightMove moves[LR_RELIGHT_MOVES]);

/* relight_remedy.c: what mends is kept, or offered where it has to be tried for room. FALSE: nothing was found */
gboolean lr_judge_keep_dims   (LrJudge *judge, LrRemark *remark, const LrRelight *relight, guint view, LrRelightAim aim, double most_iso);
gboolean lr_judge_offer_light_move (LrJudge *judge, LrRemark *remark, const LrRelight *relight, guint view, LrRelightAim aim);
/* The camera is set otherwise, if that makes nothing else worse; else every camera, if all are off alike */
gboolean lr_judge_keep_exposure (LrJudge *judge, LrRemark *remark, const LrRelight *relight, guint view, double more_stops);
void     lr_judge_offer_exposure (LrJudge *judge, LrRemark *remark, const LrRelight *relight, guint view, double more_stops);
gboolean lr_judge_keep_all_exposures (LrJudge *judge, LrRemark *remark, const LrRelight *relight, guint view);

/* judge_unlit.c */
#define LR_UNLIT_LX 1.0 /* under it a face is in the dark (common practice, no source) */

gboolean lr_judge_unlit (LrJudge *judge, const LrCameraReading *camera, const LrRelight *relight, gboolean is_first);
