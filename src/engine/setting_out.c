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

/* The square of the sine of the tapes' worst crossing, which orders crossings as their angle away from a straight line
 * does; 0 as soon as one is no better than @least */
static double
worst_crossing (LrVec2        p_m,
                LrVec2        q_m,
                const LrVec2 *points_m,
                size_t        n_points,
                double        least)
{
  double worst = 1.0;

  for (size_t i = 0; i < n_points; i++)
    {
      LrVec2 to_p = lr_vec2_sub (p_m, points_m[i]);
      LrVec2 to_q = lr_vec2_sub (q_m, points_m[i]);
      double cross_m2 = lr_vec2_cross (to_p, to_q);
      double crossing = cross_m2 * cross_m2 / (lr_vec2_dot (to_p, to_p) * lr_vec2_dot (to_q, to_q));

      if (!(crossing > least))
        return 0.0;
      worst = fmin (worst, crossing);
    }

  return worst;
}

/**
 * lr_tape_corners:
 * @corners_m: (array length=n): the corners of a room [m]
 * @n: how many, >= 2
 * @points_m: (array length=n_points): the places to be taped [m]
 * @n_points: how many, >= 1
 * @p: (out): index of the first corner
 * @q: (out): index of the second, > @p
 *
 * The pair from which the worst of the places is taped best: its tapes cross nearest to a right
 * angle. Of equal pairs the first one. Walls that stand between a corner and a place are not looked
 * at.
 *
 * Source: exhaustive search.
 *
 * Returns: %FALSE, with the outputs untouched, where there is no pair from which every place can be
 *   taped
 */
bool
lr_tape_corners (const LrVec2 *corners_m,
                 size_t        n,
                 const LrVec2 *points_m,
                 size_t        n_points,
                 size_t       *p,
                 size_t       *q)
{
  double best = 0.0;

  if (n_points == 0)
    return false;

  for (size_t i = 0; i < n; i++)
    for (size_t j = i + 1; j < n; j++)
      {
        /* Equal but for rounding is equal, so that the choice does not jump about during a drag */
        double worst = worst_crossing (corners_m[i], corners_m[j], points_m, n_points, best + 1e-9);

        if (worst > 0.0)
          {
            best = worst;
            *p = i;
            *q = j;
          }
      }

  return best > 0.0;
}
