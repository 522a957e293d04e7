/* pickup.c - how a microphone's pattern and place favour one source over another
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The pressure of a small source falls as 1 / distance; a first-order microphone weighs it by share + (1 - share) cos of the
 * angle off its axis (Eargle, The Microphone Book, 2nd ed., chapter 6).
 */

#include "pickup.h"

#include "domain.h"

#define LEAST_DISTANCE_M 0.02 /* a source does not come nearer to a capsule than this */
#define STEP_M 0.06
#define HALVINGS 24

static double
amplitude (const LrPickup *pickup,
           LrVec3          from_m)
{
  LrVec3 way = lr_vec3_sub (from_m, pickup->capsule_m);
  double distance_m = fmax (lr_vec3_length (way), LEAST_DISTANCE_M);
  double pattern = pickup->omni_share + (1.0 - pickup->omni_share) * lr_vec3_dot (way, pickup->axis) / distance_m;

  return fabs (pattern) / distance_m;
}

/**
 * lr_pickup_level_db:
 * @pickup: a microphone
 * @from_m: where a source is [m]
 * @reference_m: where it is compared with [m]
 * @level_db: (out): its level against the same source at the reference [dB]; -HUGE_VAL where the pattern is deaf
 *
 * `20 log10 (a / b)` of the two amplitudes. A source within 2 cm of the capsule counts as 2 cm away.
 *
 * Source: closed form.
 *
 * Returns: %FALSE, with @level_db untouched, if the microphone is deaf to the reference or the input is not finite
 */
bool
lr_pickup_level_db (const LrPickup *pickup,
                    LrVec3          from_m,
                    LrVec3          reference_m,
                    double         *level_db)
{
  double a = amplitude (pickup, from_m), b = amplitude (pickup, reference_m);

  if (!lr_is_positive (b) || !lr_is_at_least_zero (a))
    return false;

  *level_db = 20.0 * log10 (a / b);

  return true;
}

/**
 * lr_pickup_contour_m:
 * @pickup: a microphone
 * @centre_m: a source that it should hear [m]: a mouth
 * @direction: a direction in the level plane, of length 1
 * @level_db: < 0
 * @reach_m: how far to look [m], > 0
 * @distance_m: (out): from the centre, at most @reach_m [m]
 *
 * Walks outwards by steps of 6 cm to the first that is below the level, then halves the step.
 *
 * Source: closed form of lr_pickup_level_db(), solved by bisection.
 *
 * Returns: %FALSE, with @distance_m untouched, if the microphone is deaf to the centre or the input is not in its domain
 */
bool
lr_pickup_contour_m (const LrPickup *pickup,
                     LrVec3          centre_m,
                     LrVec2          direction,
                     double          level_db,
                     double          reach_m,
                     double         *distance_m)
{
  LrVec3 way = lr_vec2_raise (direction, 0.0);
  double least = amplitude (pickup, centre_m) * pow (10.0, level_db / 20.0);
  double inside_m = 0.0, outside_m = STEP_M;

  if (!lr_is_positive (least) || !(level_db < 0.0) || !lr_is_positive (reach_m) || !lr_is_positive (lr_vec2_length (direction)))
    return false;

  while (outside_m < reach_m && amplitude (pickup, lr_vec3_along (centre_m, way, outside_m)) >= least)
    {
      inside_m = outside_m;
      outside_m += STEP_M;
    }
  for (int i = 0; i < HALVINGS && outside_m - inside_m > 1e-4; i++)
    {
      double middle_m = 0.5 * (inside_m + outside_m);

      if (amplitude (pickup, lr_vec3_along (centre_m, way, middle_m)) >= least)
        inside_m = middle_m;
      else
        outside_m = middle_m;
    }

  *distance_m = fmin (inside_m, reach_m);

  return true;
}
