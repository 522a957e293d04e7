/* light_readings.h - what each light gives where it matters
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Light that comes straight from the lamp by its data; what walls and ceiling give back is not in it. Computed when it is asked for.
 */

#pragma once

#include "light.h"
#include "study.h"

typedef struct
{
  double lux;        /* on the face that was asked for */
  double seen_share; /* of what emits, past people, furniture and panels in between; 1 from a point that is seen */
} LrLightAt;

/* What emits, as it is dimmed; FALSE: nothing, or it cannot be told */
gboolean lr_light_emitter (const LrStudy *study, const LrPlaced *light, LrEmitter *emitter);
/* Along its axis from over the stand: where the level is @stops over that at @aim_m along it; FALSE: nowhere before the lamp */
gboolean lr_light_stop_m  (const LrStudy *study, const LrPlaced *light, double aim_m, int stops, double *along_m);
/* @of (nullable): the thing that the face belongs to, which does not stand in its own way */
gboolean lr_light_at      (const LrStudy *study, const LrPlaced *light, LrVec3 point_m, LrVec3 normal, const LrPlaced *of, LrLightAt *at);
/* At the eyes of a person or the middle of a thing that it aims at, on a face turned to it */
gboolean lr_light_at_aim  (const LrStudy *study, const LrPlaced *light, LrLightAt *at);
