/* light_readings.c - what each light gives where it is aimed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "light_readings.h"

#include "light_shade.h"

/**
 * lr_light_stop_m:
 * @study: a study
 * @light: a light of it
 * @aim_m: along its axis from over its stand to its aim [m]
 * @stops: how many stops more than there
 * @along_m: (out): along its axis from over its stand [m]
 *
 * Its output does not matter. Near a wide source the level rises slower than by the distance law, and ends at its face.
 *
 * Returns: %FALSE, with @along_m untouched, if the level is nowhere on the axis
 */
gboolean
lr_light_stop_m (const LrStudy  *study,
                 const LrPlaced *light,
                 double          aim_m,
                 int             stops,
                 double         *along_m)
{
  double before_m = lr_light_ahead_m (&light->item->light), lux, from_m;
  LrEmitter emitter = lr_light_emitter_of (study, light);

  if (emitter.table == NULL && !(emitter.candela > 0.0))
    emitter.candela = 1.0;
  if (!lr_emitter_axis_lx (&emitter, aim_m - before_m, &lux)
      || !lr_emitter_distance_m (&emitter, lux * exp2 (stops), &from_m))
    return FALSE;

  *along_m = before_m + from_m;
  return TRUE;
}

/**
 * lr_light_at_aim:
 * @study: a study
 * @light: a light of it
 * @at: (out): what it gives at the eyes of the person, or the middle of the thing, that it aims at
 *
 * Returns: %FALSE, with @at untouched, if it aims at nothing or has no output
 */
gboolean
lr_light_at_aim (const LrStudy  *study,
                 const LrPlaced *light,
                 LrLightAt      *at)
{
  const LrPlaced *target = lr_study_find_placed (study, light->item->light.aims_at);
  g_autoptr (LrLightShade) shade = NULL;
  LrEmitter emitter;
  LrVec3 way;

  if (target == NULL || target == light || !lr_light_emitter (study, light, &emitter))
    return FALSE;

  way = lr_vec3_sub (emitter.at_m, target->point_m);
  if (!(lr_vec3_length (way) > 1e-6))
    return FALSE;

  shade = lr_light_shade_new (study);
  at->lux = lr_light_source_lx (&emitter, shade, target->point_m, lr_vec3_scale (way, 1.0 / lr_vec3_length (way)), target, &at->seen_share);
  return TRUE;
}
