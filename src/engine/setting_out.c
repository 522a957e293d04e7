/* setting_out.c - a place on the floor by tape
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two tapes from two known points meet at the place. An error in the tapes grows as 1 / sin of the
 * angle at which they cross: twofold at 30 and 150 degrees. The tapes are taken as level and
 * straight; what stands between is not looked at.
 */

#include "setting_out.h"

#include "domain.h"

/* Tapes that fall short of each other by less than this just meet */
#define MEET_M 1e-9
/* Directions nearer to each other than this are one */
#define PARALLEL_SINE 1e-9

/**
 * lr_tape_pair:
 * @p_m: a known point [m]
 * @q_m: another [m]
 * @point_m: the place [m], at neither
 * @tapes: (out): the two lengths [m] and the angle between the tapes at the place [rad]
 *
 * Source: closed form.
 *
 * Returns: %FALSE, with @tapes untouched, unless the three points are finite and apart
 */
bool
lr_tape_pair (LrVec2      p_m,
              LrVec2      q_m,
              LrVec2      point_m,
              LrTapePair *tapes)
{
  LrVec2 to_p = lr_vec2_sub (p_m, point_m);
  LrVec2 to_q = lr_vec2_sub (q_m, point_m);

  if (!lr_is_positive (lr_vec2_length (to_p)) || !lr_is_positive (lr_vec2_length (to_q))
      || !lr_is_positive (lr_vec2_distance (p_m, q_m)))
    return false;

  tapes->from_p_m = lr_vec2_length (to_p);
  tapes->from_q_m = lr_vec2_length (to_q);
  tapes->crossing_rad = fabs (atan2 (lr_vec2_cross (to_p, to_q), lr_vec2_dot (to_p, to_q)));
  return true;
}

/**
 * lr_tape_meet:
 * @p_m: a known point [m]
 * @q_m: another [m], elsewhere
 * @from_p_m: length of the tape from p, a [m], > 0
 * @from_q_m: length of the tape from q, b [m], > 0
 * @side: > 0 for the place left of the way from p to q, < 0 for the one right of it
 * @point_m: (out): where the tapes meet [m]
 *
 * Along pq, `x = (a^2 - b^2 + w^2) / 2 w`, and off it `y = sqrt (a^2 - x^2)`, w being the distance
 * of p and q.
 *
 * Source: closed form (trilateration in the plane).
 *
 * Returns: %FALSE, with @point_m untouched, unless every number is in its domain and the tapes meet
 */
bool
lr_tape_meet (LrVec2  p_m,
              LrVec2  q_m,
              double  from_p_m,
              double  from_q_m,
              int     side,
              LrVec2 *point_m)
{
  double base_m = lr_vec2_distance (p_m, q_m);
  LrVec2 along;
  double x, y;

  if (!lr_is_positive (base_m) || !lr_is_positive (from_p_m) || !lr_is_positive (from_q_m) || side == 0)
    return false;

  x = 0.5 * ((from_p_m - from_q_m) * (from_p_m + from_q_m) / base_m + base_m);
  if (fabs (x) > from_p_m + MEET_M)
    return false;

  y = sqrt (fmax (0.0, (from_p_m - x) * (from_p_m + x)));
  along = lr_vec2_scale (lr_vec2_sub (q_m, p_m), 1.0 / base_m);
  *point_m = lr_vec2_along (lr_vec2_along (p_m, along, x), lr_vec2_left (along), side > 0 ? y : -y);
  return true;
}

/**
 * lr_fix_error:
 * @along_a: direction in which the first length is measured, of length 1
 * @sd_a_m: standard deviation of that length [m], >= 0
 * @along_b: direction of the second
 * @sd_b_m: its standard deviation [m], >= 0
 * @error: (out): the ellipse
 *
 * Of a tape from a corner the direction is that of the tape, of a distance from a wall the wall's normal: a length tells where
 * the point is along its direction and nothing across it. With the directions as rows of J, the point's covariance is
 * `inv (J) diag (sa^2, sb^2) inv (J)^T`. Its trace gives the mean error of the point, `sqrt (sa^2 + sb^2) / sin angle`; for two
 * alike the half axes are `s / sqrt (1 -+ |cos angle|)`, so `s / sin angle` is nearly the longer one while the angle is fair.
 *
 * Source: closed form, by the law of propagation of variances (textbooks of surveying have the mean error as that of a fix by
 * two distances; from memory).
 *
 * Returns: %FALSE, with @error untouched, if the directions are parallel or a number is not in its domain
 */
bool
lr_fix_error (LrVec2      along_a,
              double      sd_a_m,
              LrVec2      along_b,
              double      sd_b_m,
              LrFixError *error)
{
  double sine = lr_vec2_cross (along_a, along_b);
  LrVec2 by_a, by_b; /* the move of the point, of one standard deviation of each length */
  double xx, xy, yy, half_sum, half_difference;

  if (!(fabs (sine) > PARALLEL_SINE) || !isfinite (sine) || !lr_is_at_least_zero (sd_a_m) || !lr_is_at_least_zero (sd_b_m))
    return false;

  by_a = lr_vec2_scale (lr_vec2 (along_b.y, -along_b.x), sd_a_m / sine);
  by_b = lr_vec2_scale (lr_vec2 (-along_a.y, along_a.x), sd_b_m / sine);
  xx = by_a.x * by_a.x + by_b.x * by_b.x;
  xy = by_a.x * by_a.y + by_b.x * by_b.y;
  yy = by_a.y * by_a.y + by_b.y * by_b.y;

  half_sum = 0.5 * (xx + yy);
  half_difference = hypot (0.5 * (xx - yy), xy);
  error->major_m = sqrt (half_sum + half_difference);
  error->minor_m = sqrt (fmax (0.0, half_sum - half_difference));
  error->major_rad = 0.5 * atan2 (2.0 * xy, xx - yy);
  error->point_m = sqrt (xx + yy);
  return true;
}
