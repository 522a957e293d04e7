/* study.h - every number that is computed from a plan
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pure: the same plan gives the same study. No I/O, no globals. Lengths in metres, angles in radians, shares of the
 * frame 0..1. What cannot be computed (no subject, no corners) is NAN, or its has_ flag is FALSE.
 */

#pragma once

#include "body.h"
#include "framing.h"
#include "optics.h"
#include "plan.h"
#include "polygon.h"
#include "projection.h"
#include "sightlines.h"

/* A microphone on a camera sits over its lens, its capsule a little ahead of the tripod's middle; common practice, no source */
#define LR_CAMERA_MIC_AHEAD_M 0.05
#define LR_CAMERA_MIC_ABOVE_M 0.10
#define LR_CAMERA_MIC_M 0.22 /* its length */

/* Where a thing stands and the room that it takes */
typedef struct
{
  const LrItem *item;
  LrVec2     at_m;
  double     facing_rad;     /* as it is: towards what it looks or aims at, if it does */
  LrOutline  footprint;      /* on the floor: what the collisions use */
  double     bottom_m, top_m;/* heights that it fills */
  double     leg_gap_m;      /* a stand's: so deep something may stand in its footprint, between two legs; else 0 */
  gboolean   has_footprint;  /* FALSE: takes no room (lavalier, lead, noise in the wall, house light, socket) */
  LrBody     body;           /* people */
  LrVec3     eyes_m;         /* people: between the eyes */
  LrVec3     point_m;        /* what others aim at: eyes of a person, middle of a thing */
} LrPlaced;

typedef enum { LR_BEHIND_NOTHING, LR_BEHIND_WALL, LR_BEHIND_ITEM, LR_BEHIND_FLOOR, LR_BEHIND_CEILING } LrBehind;

typedef struct
{
  const LrItem   *item;
  const LrPlaced *placed;
  const LrPlaced *subject;       /* whom it is judged against: the person it aims at, else the subject; may be NULL */
  gboolean        is_main;       /* the first camera of the set-up */
  double          converter;     /* factor behind the lens; 1: none */
  double          focal_m, f_number; /* effective: as marked, times the converter. The camera's own are the marked ones */
  LrSensorArea    recorded;      /* part of the sensor that the mode records */
  LrSensorArea    area;          /* part of that which is delivered */
  double          image_aspect;  /* width : height as delivered */
  double          width_share;   /* of the recorded width, that is delivered */
  LrVec3          sensor_m;      /* middle of the sensor plane: above the tripod's centre */
  LrProjection    projection;    /* through the lens */
  double          pan_rad, tilt_rad;
  double          angle_h_rad, angle_v_rad;
  gboolean        has_subject;   /* what follows needs one */
  double          distance_m;    /* middle of the sensor plane to the eyes, as the tape is held */
  double          eyes_depth_m;  /* the same along the axis: what the lens is focused by */
  double          focus_m;       /* where it is focused, from the sensor plane */
  LrFocus         focus;         /* the same from the lens; without one subject_m is HUGE_VAL and image_m the focal length */
  double          magnification;
  double          close_stops;   /* light that is lost because it is focused near */
  double          coc_m;         /* limit of the blur disc that counts as sharp */
  double          field_w_m, field_h_m; /* at the eyes, as delivered */
  double          recorded_field_w_m, recorded_field_h_m; /* at the eyes, as recorded */
  double          sharp_near_m, sharp_far_m, hyperfocal_m; /* from the sensor plane; far may be HUGE_VAL */
  double          sharp_depth_m; /* from near to far; HUGE_VAL if far is */
  double          sharp_front_m; /* of it before the eyes: how far a head may sway; < 0 when they are nearer; NAN without a subject */
  double          sharp_front_share; /* of the depth, before the plane of focus */
  double          f_number_for_depth; /* as marked: what gives the depth that is comfortable, focused as it is */
  LrFraming       framing;       /* shot is LR_N_SHOTS and the shares NAN when nothing of the person is in the frame */
  double          eyes_across, eyes_down;   /* where the eyes fall in the frame */
  gboolean        is_looking;    /* the subject looks at someone: gaze and line are known */
  gboolean        is_on_study_line; /* the look runs along the study's line: sides may be compared */
  double          gaze_rad;      /* signed, horizontal: off the lens */
  double          gaze_up_rad;   /* look against lens, vertical, seen by the subject; > 0 looks above the lens */
  double          lens_up_rad;   /* elevation of the lens seen from the eyes: > 0 looks down on the subject */
  double          lens_above_m;  /* lens above the subject's eyes */
  LrSide          side;          /* of the tripod's centre */
  double          line_margin_rad; /* 0 on the line .. pi/2 */
  double          line_distance_m;
  LrJointCut      joint;         /* nearest to the lower edge; joint is LR_N_JOINTS when none is in the frame's width */
  double          eyes_rule;     /* where a frame so high should have the eyes, of its height */
  double          look_across;   /* the look's part to the right of the frame, -1 .. 1; < 0 looks left; NAN without a partner */
  double          look_room;     /* share of the frame's width ahead of the face; NAN when not in it or nobody is looked at */
  double          face_ratio;    /* nose over ear: perspective of the face */
  LrBehind        behind;        /* what the lens axis meets behind the subject */
  const LrPlaced *behind_item;
  int             behind_wall;
  LrVec3          behind_at_m;   /* where */
  double          behind_m;      /* from the sensor plane, along the axis */
  double          separation_m;  /* subject to it */
  double          behind_field_w_m, behind_field_h_m; /* how much of it the frame sees, in the plane square to the axis */
  double          size_ratio;    /* a thing there against the same thing at the subject */
  double          blur_m;        /* disc on the sensor */
  double          blur_share;    /* of the frame's width, as delivered */
  LrVec2         *wedge_m;       /* field on the floor, cut by the walls: apex first; n_wedge corners */
  gsize           n_wedge;
} LrCameraReading;

typedef struct
{
  const LrCameraReading *a, *b;  /* the same subject */
  double   angle_rad;            /* at the middle of the subject's head, in plan */
  int      steps;                /* whole shot sizes apart */
  double   size_ratio;           /* of the heads in the two frames, >= 1 */
  gboolean is_same_side;
  gboolean is_same_look;         /* both show the subject looking to the same side of the frame; FALSE without a look */
  double   eyes_step;            /* eyes_down of b less that of a */
  double   gaze_step_rad;        /* how much farther past the lens the look goes in b */
  double   gaze_up_step_rad;     /* gaze_up_rad of b less that of a */
} LrPairReading;

/* Two cameras on the two people who look at each other, to be cut as question and answer */
typedef struct
{
  const LrCameraReading *a, *b;
  gboolean is_opposed;           /* one looks left, the other right */
  double   gaze_step_rad;        /* as in a pair */
  double   gaze_up_step_rad;     /* 0 when the lens heights mirror each other: each look passes its lens alike */
  double   size_ratio;           /* of the fields' heights, >= 1 */
} LrReverseReading;

typedef enum { LR_CLASH_OVERLAP, LR_CLASH_OUTSIDE, LR_CLASH_DOOR, LR_CLASH_CEILING } LrClashType;

typedef struct
{
  LrClashType     type;
  const LrPlaced *a, *b;         /* b: the other thing, the door; NULL for outside and ceiling */
  double          depth_m;       /* by how much */
  LrVec2          push;          /* a's shortest way out, unit */
  LrVec2          at_m;
} LrClash;

typedef struct
{
  const LrItem *item;
  double        length_m;        /* along its path */
} LrLeadReading;

typedef struct
{
  const LrPlan  *plan;           /* held */
  const LrSetup *setup;
  GArray        *placed;         /* LrPlaced, one per item, in the set-up's order */
  const LrPlaced *subject, *interviewer; /* may be NULL */
  gboolean       has_line;
  LrVec2         line_from_m, line_to_m; /* eyes of the subject, eyes of the interviewer */
  GArray        *cameras;        /* LrCameraReading */
  GArray        *pairs;          /* LrPairReading: every two cameras on one person */
  GArray        *reverses;       /* LrReverseReading: every two on the two ends of the line */
  GArray        *clashes;        /* LrClash */
  GArray        *intrusions;     /* LrIntrusion, see intrusions.h */
  GArray        *outlines, *outline_points; /* LrFrameOutline; LrVec2 in the frame */
  GArray        *leads;          /* LrLeadReading */
  double         eyes_level_m;   /* interviewer's eyes above the subject's; NAN without both */
  double         room_area_m2;
  GHashTable    *by_id;          /* private: of LrPlaced */
  gboolean       is_trial;       /* private: without wedges and leads */
  struct LrSound **sound;        /* private: see sound.h; what is heard, once it was asked for */
} LrStudy;

LrStudy *lr_study_new  (const LrPlan *plan);
LrStudy *lr_study_new_trial (const LrPlan *plan); /* without wedges and leads: to try a remedy */
void     lr_study_free (LrStudy *study);

/* Whom a microphone aims at, and how far its capsule is from the mouth; NULL, with the number untouched, if nobody */
const LrPlaced *lr_study_mouth_distance_m (const LrStudy *study, const LrItem *microphone, double *distance_m);

const LrPlaced        *lr_study_find_placed (const LrStudy *study, const char *id); /* (nullable) */
const LrCameraReading *lr_study_find_camera (const LrStudy *study, const char *id); /* (nullable) */
/* Title of a shot size for people: "medium close-up", translated */
const char            *lr_shot_title (LrShot shot);
char                  *lr_shot_heading (LrShot shot); /* "Medium close-up"; (transfer full) */
const char            *lr_shot_letters (LrShot shot); /* "MCU" */
/* What is to be put on the camera: "50 mm", "50 mm × 1.4" with a converter behind it; (transfer full) */
char                  *lr_camera_lens_title (const LrCameraReading *camera);
/* What a person calls the thing: "Camera B", "Wenna", "L1 key", "drafting table"; (transfer full) */
char                  *lr_item_title (const LrItem *item);
char       *lr_item_title_first (const LrItem *item);                      /* the same at the head of a sentence; (transfer full) */
/* Compass direction of a wall, seen from inside: "north wall", translated. Also "towards the north wall" */
const char            *lr_wall_title   (const LrRoom *room, int wall);
const char            *lr_wall_towards (const LrRoom *room, LrVec2 direction);

/* Blur disc of a plane on the sensor, and as a share of the delivered width; the distance is from the sensor plane */
gboolean lr_camera_blur_at_m (const LrCameraReading *camera, double distance_m, double *disc_m, double *share);

/* Focal length and distance that show a strip of background at the same framing of the subject */
typedef struct
{
  double focal_m, distance_m;    /* effective; from the sensor plane */
} LrRefit;

gboolean lr_camera_refit (const LrCameraReading *camera, double behind_field_w_m, LrRefit *refit);
/* Width of the background that the same framing shows through another focal length, and the distance it takes */
gboolean lr_camera_behind_with_focal (const LrCameraReading *camera, double focal_m, double *behind_field_w_m, double *distance_m);
/* The floor that a door needs: the swing of its leaf, or the way to it; FALSE: its wall is not there */
gboolean lr_study_door_floor (const LrStudy *study, const LrPlaced *door, LrOutline *floor);
/* Whether the thing would stand clear of others, walls and doors elsewhere, but for @allowed_m */
gboolean lr_study_is_clear   (const LrStudy *study, const LrPlaced *placed, LrVec2 at_m, double allowed_m);
/* The same, where legs of stands may stand in each other's gaps */
gboolean lr_study_is_clear_by_legs (const LrStudy *study, const LrPlaced *placed, LrVec2 at_m, double allowed_m);
/* A place near the thing's own where it stands clear of others, walls and door swings; @first_m is looked at first */
gboolean lr_study_find_clear (const LrStudy *study, const LrPlaced *placed, LrVec2 first_m, double allowed_m, LrVec2 *to_m);
/* What leads from a socket feed, at full [W]; FALSE: no lead is in it */
gboolean lr_study_socket_load_w (const LrStudy *study, const LrItem *socket, double *load_w);

/* camera_settings.c */
typedef enum { LR_MAINS_TOLD, LR_MAINS_BY_VOLTS, LR_MAINS_UNKNOWN } LrMainsFrom;

typedef struct
{
  double      hz;
  LrMainsFrom from;     /* else than told it is a guess */
  double      volts_v;  /* that it is guessed from */
} LrMains;

LrMains  lr_study_mains (const LrStudy *study);
/* The native value that is nearest; 0: none is known. And the stops that the ISO set is over it; NAN */
double   lr_camera_native_iso        (const LrCamera *camera);
double   lr_camera_over_native_stops (const LrCamera *camera);
double   lr_camera_shutter_rad       (const LrCamera *camera);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrStudy, lr_study_free)
