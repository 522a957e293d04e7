/* light_readings.h - what each light gives where it is aimed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Light that comes straight from the lamp by its data; what walls and ceiling give back is not in it. Computed when it is asked for.
 */

#pragma once

#include "light_sources.h"

typedef struct
{
  double lux;        /* on the face that was asked for */
  double seen_share; /* of that light, past people, furniture, panels and walls in between */
} LrLightAt;

/* Along its axis from over the stand: where the level is @stops over that at @aim_m along it; FALSE: nowhere before the lamp */
gboolean lr_light_stop_m  (const LrStudy *study, const LrPlaced *light, double aim_m, int stops, double *along_m);
/* At the eyes of a person or the middle of a thing that it aims at, on a face turned to it */
gboolean lr_light_at_aim  (const LrStudy *study, const LrPlaced *light, LrLightAt *at);
