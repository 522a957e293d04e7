/* boom_geometry.c - where a boom may hang, and what balances it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "boom_geometry.h"

#include "domain.h"

/**
 * lr_boom_least_m:
 * @frame: a camera's upper edge and a mouth
 * @up_rad: how high over the mouth the capsule hangs, seen from it, towards the camera: 0 .. pi / 2 [rad]
 * @distance_m: (out): from mouth to capsule, on the edge and clear of it [m]
 *
 * The edge is a plane that holds the frame's width: `(h + t D + m - z) / (sin f + t cos f)`.
 *
 * Source: closed form.
 *
 * Returns: %FALSE, with @distance_m untouched, outside the domain or where any distance is clear of the frame
 */
bool
lr_boom_least_m (const LrBoomFrame *frame,
                 double             up_rad,
                 double            *distance_m)
{
  double over_m = frame->lens_m + frame->edge_slope * frame->away_m + frame->clear_m - frame->mouth_m;
  double rise = sin (up_rad) + frame->edge_slope * cos (up_rad);

  if (!lr_is_positive (over_m) || !lr_is_positive (rise))
    return false;

  *distance_m = over_m / rise;
  return true;
}

/**
 * lr_boom_counterweight_kg:
 * @arm_kg: mass of the whole arm [kg], >= 0
 * @middle_m: from the post to the arm's centre of gravity, towards the capsule [m]
 * @capsule_kg: of microphone and holder at its end [kg], >= 0
 * @reach_m: from the post to that end [m], > 0
 * @short_m: from the post to the weight behind [m], > 0
 * @weight_kg: (out): what balances it [kg]; 0 when the arm's own tail is heavier
 *
 * Moments about the post.
 *
 * Source: closed form, the lever.
 *
 * Returns: %FALSE, with @weight_kg untouched, outside the domain
 */
bool
lr_boom_counterweight_kg (double  arm_kg,
                          double  middle_m,
                          double  capsule_kg,
                          double  reach_m,
                          double  short_m,
                          double *weight_kg)
{
  if (!lr_is_at_least_zero (arm_kg) || !isfinite (middle_m) || !lr_is_at_least_zero (capsule_kg) || !lr_is_positive (reach_m)
      || !lr_is_positive (short_m))
    return false;

  *weight_kg = fmax (0.0, (capsule_kg * reach_m + arm_kg * middle_m) / short_m);
  return true;
}
