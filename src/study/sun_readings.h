/* sun_readings.h - where the sun is over the day of the shoot, and when it reaches a place in the room
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Times are minutes since midnight of the job's day by the clocks of the place, and may be of a later day. What stands before the windows outside, and furniture inside, is not
 * known or not looked at. Computed when it is asked for.
 */

#pragma once

#include "job_hours.h"
#include "study.h"
#include "sun.h"

/* What a blind leaves of a window */
typedef struct
{
  LrVec2 at_m, along, inward; /* its first end on the wall's inner face */
  double width_m, sill_m, head_m;
} LrSunOpening;

/* FALSE: date, time zone or place are not given */
gboolean lr_study_sun_at    (const LrStudy *study, int minute, LrSunPlace *place);
/* The first and the last minute from @from to @to in which it shines on some of a ball through a window, and that of the first */
gboolean lr_study_sun_reach (const LrStudy *study, LrVec3 middle_m, double radius_m, int from, int to, int *first, int *last, const LrPlaced **window);
/* FALSE: no window, or its blind is down */
gboolean lr_sun_opening     (const LrStudy *study, const LrPlaced *window, LrSunOpening *opening);
/* Whether any of a ball in the room is where light along the way comes through */
gboolean lr_sun_opening_holds (const LrSunOpening *opening, LrVec3 point_m, double radius_m, LrVec3 way);
/* What it lets fall on the floor through a window, past the blind: four corners, from the sill's. FALSE: nothing, or it is not known */
gboolean lr_study_sun_patch (const LrStudy *study, const LrPlaced *window, int minute, LrVec2 patch_m[4]);
/* To the sun, as high as the air lifts it; FALSE: it is under the horizon, or not known */
gboolean lr_study_sun_way   (const LrStudy *study, int minute, LrVec3 *way);
/* The first and the last minute of the day in which it is up; FALSE: never, or it is not known */
gboolean lr_study_sun_up    (const LrStudy *study, int *first, int *last);
/* Half-way through the shoot, for which levels of light are told; -1: its hours are not given */
int      lr_study_light_minute (const LrStudy *study);
