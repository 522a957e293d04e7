/* comparison.h - candidate rooms side by side: the same figures of every set-up
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each figure says how well it is known: what nobody noted is no figure. One that is partly or wholly taken as usual is told, but must not
 * be held against others. What is best is the judge's to say. Rooms are candidates: a set-up that was found otherwise than planned is
 * told as found, and what it was planned as is left out.
 */

#pragma once

#include "light_levels.h"
#include "sound.h"
#include "sun_readings.h"

/* In the order of telling */
typedef enum
{
  LR_COMPARE_AREA,         /* of the floor [m²] */
  LR_COMPARE_LONGEST,      /* sides of the smallest rectangle along one of its walls that holds the room [m] */
  LR_COMPARE_SHORTEST,
  LR_COMPARE_CEILING,      /* [m] */
  LR_COMPARE_BACKGROUND,   /* from the subject to what is behind, as far as the room allows: see lr_comparison_new() [m] */
  LR_COMPARE_BEHIND,       /* the same as placed, of the first camera [m] */
  LR_COMPARE_BARE_WINDOWS, /* windows that no blind covers [m²] */
  LR_COMPARE_HOUSE_LIGHTS, /* of those that are on, what nobody can switch off [lm] */
  LR_COMPARE_WALLS,        /* reflectance, share */
  LR_COMPARE_SUN,          /* minutes of the shoot in which it comes in, past the blinds as set */
  LR_COMPARE_SUN_ON_FACE,  /* minutes of the shoot in which it is on the subject's head */
  LR_COMPARE_NOISE,        /* where the subject's head is, else in the middle of the room, as planned [dB(A)] */
  LR_COMPARE_QUIET,        /* the same with all off that can be switched off */
  LR_COMPARE_REVERBERATION, /* at middle frequencies, the mean of 500 Hz and 1 kHz [s] */
  LR_COMPARE_CIRCUITS,
  LR_COMPARE_POWER,        /* for us, of circuits with a socket in the room, under the rule for hours [W] */
  LR_COMPARE_OUTLETS,
  LR_COMPARE_DOOR,         /* the widest [m] */
  LR_COMPARE_EXITS,        /* doors that are marked as ways out */
  LR_COMPARE_WAY_OUT,      /* the narrowest of all people's, way or door, no more than the limit asks for [m]; see lr_comparison_take_levels() */
  LR_COMPARE_FIX,          /* remarks of the set as it stands; the judge counts them */
  LR_COMPARE_MIND,
  LR_N_COMPARES
} LrCompare;

typedef enum
{
  LR_KNOWN,
  LR_KNOWN_PARTLY,  /* value holds, with what is not noted taken as usual */
  LR_TAKEN,         /* value is as usual, for it is not noted */
  LR_NOT_NOTED,
  LR_NOT_DRAWN,     /* no door, window or socket is in the plan: whether there is none is not known */
  LR_NOT_PLACED,    /* nobody, or no camera, is in the room yet */
  LR_NO_DAY,        /* date, times, time zone or place of the shoot are missing */
  LR_NO_ROOM,       /* it is not drawn */
  LR_AWAITED,       /* it is still worked out */
} LrKnown;

typedef struct
{
  LrKnown known;
  double  value;    /* NAN unless it is known, partly, or taken */
} LrFigure;

typedef struct
{
  LrStudy     *study;         /* of the plan that shows the set-up */
  const LrSetup *setup;
  const LrSetup *planned;      /* which it is as found of; (nullable) */
  LrFigure     figure[LR_N_COMPARES];
  double       line_m;        /* the longest that one can look, and between which places */
  LrVec2       line_from_m, line_to_m;
  double       windows_m2;
  double       dark_share;    /* of the windows, that blinds can cover; NAN without windows */
  const LrItem *behind_item;  /* as placed; (nullable) */
  int          behind_wall;   /* -1: no wall */
  const LrItem *loudest;      /* noise of those that are on; (nullable) */
  gboolean     is_background_measured, is_reverberation_measured;
  LrSoundPart  hard_part;     /* walls, floor, ceiling or openings: the one that gives back most */
  double       hard_m2;       /* as much as it gives back, in m² that take up nothing; NAN without a room */
  guint        n_sockets;
  gboolean     is_full_load;  /* a local rule lets circuits be loaded fully */
  const LrItem *narrow_item;  /* what makes the way out narrower than is asked for, maybe its door; (nullable) */
  gboolean     is_way_full;   /* it is as wide as is asked for: it may be wider */
} LrRoomFigures;

typedef struct
{
  LrPlan *plan;
  GArray *rooms;              /* LrRoomFigures, of each set-up in the plan's order, but for those that were found otherwise */
  guint   n_left_out;
  double  camera_m;           /* from camera to subject, with which all backgrounds are reckoned */
  const LrSetup *camera_setup; /* whose it is; NULL: a usual one */
} LrComparison;

LrComparison *lr_comparison_new  (const LrPlan *plan);
void          lr_comparison_free (LrComparison *comparison);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrComparison, lr_comparison_free)

/* Whether some of its figures wait for levels of light */
gboolean      lr_comparison_is_awaited (const LrComparison *comparison, guint index);
/* What takes long: ways out. @levels (nullable): of the room's plan; NULL: they could not be had */
void          lr_comparison_take_levels (LrComparison *comparison, guint index, const LrLightLevels *levels);

/* Whether it says something of the room: no figure that is taken as usual does */
static inline gboolean
lr_figure_is_told (const LrFigure *figure)
{
  return figure->known == LR_KNOWN || figure->known == LR_KNOWN_PARTLY;
}

static inline const LrRoomFigures *
lr_comparison_room (const LrComparison *comparison,
                    guint               index)
{
  return &g_array_index (comparison->rooms, LrRoomFigures, index);
}
