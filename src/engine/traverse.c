/* traverse.c - a walk along the walls, from lengths and turns to corners
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A closed traverse of surveying, with angles that are taken as true (right angles, mostly) and lengths that are taped.
 */

#include "traverse.h"

/**
 * lr_traverse_walk:
 * @legs: (array length=n): walls in the order of walking
 * @n: how many walls
 * @points_m: (out) (array length=n+1): corners [m]: the start at 0, 0, then the end of each wall
 *
 * Source: closed form.
 *
 * Returns: false, with @points_m untouched, unless all numbers are finite and all lengths > 0
 */
bool
lr_traverse_walk (const LrTraverseLeg *legs,
                  size_t               n,
                  LrVec2              *points_m)
{
  double heading_rad = 0.0;

  for (size_t i = 0; i < n; i++)
    if (!isfinite (legs[i].length_m) || legs[i].length_m <= 0.0 || !isfinite (legs[i].turn_rad))
      return false;

  points_m[0] = lr_vec2 (0.0, 0.0);
  for (size_t i = 0; i < n; i++)
    {
      points_m[i + 1] = lr_vec2_add (points_m[i], lr_vec2_polar (heading_rad, legs[i].length_m));
      heading_rad += legs[i].turn_rad;
    }
  return true;
}

/**
 * lr_traverse_gap_m:
 * @points_m: (array length=n+1): of a walk [m]
 * @n: how many walls
 *
 * Source: closed form.
 *
 * Returns: the linear misclosure: how far the end lies from the start [m]
 */
double
lr_traverse_gap_m (const LrVec2 *points_m,
                   size_t        n)
{
  return lr_vec2_distance (points_m[0], points_m[n]);
}

/**
 * lr_traverse_close:
 * @points_m: (inout) (array length=n+1): of a walk [m]; the last becomes the first
 * @n: how many walls
 *
 * The compass rule: every corner is moved against the misclosure by the share of the walk that lies behind it.
 *
 * Source: N. Bowditch, The Analyst 1 (1808); C. D. Ghilani and P. R. Wolf, Elementary Surveying, "Compass (Bowditch)
 * rule". From memory.
 */
void
lr_traverse_close (LrVec2 *points_m,
                   size_t  n)
{
  LrVec2 gap_m = lr_vec2_sub (points_m[n], points_m[0]), before_m = points_m[0];
  double total_m = 0.0, walked_m = 0.0;

  for (size_t i = 0; i < n; i++)
    total_m += lr_vec2_distance (points_m[i], points_m[i + 1]);
  if (!(total_m > 0.0))
    return;

  for (size_t i = 1; i <= n; i++)
    {
      LrVec2 here_m = points_m[i];

      walked_m += lr_vec2_distance (before_m, here_m);
      before_m = here_m;
      points_m[i] = lr_vec2_along (here_m, gap_m, -walked_m / total_m);
    }
}
