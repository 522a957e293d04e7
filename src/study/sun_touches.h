/* sun_touches.h - what the sun touches over the shoot, and when
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Computed when it is asked for.
 */

#pragma once

#include "sun_readings.h"

#define LR_SUN_SPANS 3

typedef enum
{
  LR_SUN_HEAD,        /* of the subject */
  LR_SUN_TRUNK,       /* of the subject */
  LR_SUN_BACKGROUND,  /* walls that a camera sees */
  LR_SUN_LENS,        /* of a camera, from before it */
  LR_SUN_TABLE,       /* a table's top, where a camera sees it */
  LR_N_SUN_THINGS
} LrSunThing;

typedef struct
{
  LrSunThing thing;
  const LrPlaced *placed;   /* the person, the camera, the table */
  const LrPlaced *window;   /* through which it comes */
  guint n;                  /* of spans; of more than there is room for the last goes on to the end */
  struct { int first, last; } span[LR_SUN_SPANS]; /* minutes of the day */
  LrVec2 at_m;              /* where, in the middle of the first span */
  gboolean is_spared_by_half; /* with the blind half down it does not touch it */
  double side_rad;          /* head: the sun's bearing off the look in the middle of the first span, > 0 to the left; lens: off its axis */
} LrSunTouch;

/* (transfer full) (element-type LrSunTouch): from minute @from to @to; empty if it is not known where the sun is */
GArray *lr_sun_touches (const LrStudy *study, int from, int to);
/* Whether it is on a person at an instant, with the sun that way: LR_SUN_HEAD or LR_SUN_TRUNK */
gboolean lr_sun_is_on  (const LrStudy *study, const LrPlaced *person, LrSunThing part, LrVec3 way);
