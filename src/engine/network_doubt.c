/* network_doubt.c - how well points are known, which measure is in doubt, and what would settle it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "network_private.h"

static void
put (LrNetRow     *row,
     const size_t *column,
     size_t        n_unknown,
     size_t        point,
     LrVec2        by)
{
  const double each[2] = { by.x, by.y };

  for (size_t k = 0; k < 2; k++)
    if (column == NULL || column[2 * point + k] < n_unknown)
      {
        row->column[row->n] = column == NULL ? 2 * point + k : column[2 * point + k];
        row->by[row->n++] = each[k];
      }
}

/**
 * lr_net_derive:
 * @measure: a length or an angle
 * @points: where its points are [m], apart
 * @column: (nullable) (array): of each coordinate, its column; those from @n_unknown on are left out. %NULL: each is its own
 * @n_unknown: how many columns
 *
 * Source: closed form; Ghilani, Adjustment Computations, equations 14.9 and 15.11; from memory.
 *
 * Returns: the derivatives of the measure by the coordinates of its points
 */
LrNetRow
lr_net_derive (const LrNetMeasure *measure,
               const LrNetPoint   *points,
               const size_t       *column,
               size_t              n_unknown)
{
  LrNetRow row = { 0 };

  if (measure->kind == LR_NET_LENGTH)
    {
      LrVec2 along = lr_net_way (points, measure->from, measure->to);

      along = lr_vec2_scale (along, 1.0 / lr_vec2_length (along));
      put (&row, column, n_unknown, measure->to, along);
      put (&row, column, n_unknown, measure->from, lr_vec2_scale (along, -1.0));
    }
  else
    {
      LrVec2 to = lr_net_way (points, measure->at, measure->to), from = lr_net_way (points, measure->at, measure->from);
      LrVec2 by_to = lr_vec2_scale (lr_vec2_left (to), 1.0 / lr_vec2_dot (to, to));
      LrVec2 by_from = lr_vec2_scale (lr_vec2_left (from), -1.0 / lr_vec2_dot (from, from));

      put (&row, column, n_unknown, measure->to, by_to);
      put (&row, column, n_unknown, measure->from, by_from);
      put (&row, column, n_unknown, measure->at, lr_vec2_scale (lr_vec2_add (by_to, by_from), -1.0));
    }
  return row;
}

/**
 * lr_net_spread:
 * @solution: what holds the covariance Q
 * @a: derivatives by all coordinates
 * @b: others
 *
 * Returns: `a' Q b`, the covariance of two functions of the points
 */
double
lr_net_spread (const LrNetSolution *solution,
               const LrNetRow      *a,
               const LrNetRow      *b)
{
  size_t size = 2 * solution->n_points;
  double sum = 0.0;

  for (size_t i = 0; i < a->n; i++)
    for (size_t k = 0; k < b->n; k++)
      sum += a->by[i] * b->by[k] * solution->covariance_m2[a->column[i] * size + b->column[k]];
  return sum;
}

/**
 * lr_net_point_sd_m:
 * @solution: of lr_net_adjust()
 * @point: index of a point
 *
 * The square root of the larger eigenvalue of the point's covariance. It is told against the points that are known.
 *
 * Source: closed form; Ghilani, Adjustment Computations, chapter 19 (the standard error ellipse).
 *
 * Returns: [m]
 */
double
lr_net_point_sd_m (const LrNetSolution *solution,
                   size_t               point)
{
  size_t size = 2 * solution->n_points;
  const double *q = &solution->covariance_m2[2 * point * size + 2 * point];
  double half = (q[0] + q[size + 1]) / 2.0;

  return sqrt (fmax (0.0, half + hypot ((q[0] - q[size + 1]) / 2.0, q[1])));
}

/**
 * lr_net_length_sd_m:
 * @solution: of lr_net_adjust()
 * @points: the adjusted points
 * @p: index of one
 * @q: index of another, elsewhere
 *
 * Source: propagation of variances, `a' Q a`.
 *
 * Returns: [m]
 */
double
lr_net_length_sd_m (const LrNetSolution *solution,
                    const LrNetPoint    *points,
                    size_t               p,
                    size_t               q)
{
  const LrNetMeasure length = { .kind = LR_NET_LENGTH, .from = p, .to = q };
  LrNetRow row = lr_net_derive (&length, points, NULL, 0);

  return sqrt (fmax (0.0, lr_net_spread (solution, &row, &row)));
}

/* Three to one: how much better an error here must explain the misfit than an error there for that not to be named */
#define ODDS_LOG 1.0986122886681098

/**
 * lr_net_suspects:
 * @solution: of lr_net_adjust()
 * @least: standardized residual from which a measure stands out, > 0
 * @suspects: (out) (array length=max): indices of measures
 * @max: room in @suspects
 *
 * The measure with the largest standardized residual, if it stands out, and those that explain the misfit nearly as well: an
 * error in measure i alone takes w_i squared off the misfit, so that the odds between two are
 * `exp ((w_i^2 - w_k^2) / 2)`; those within 3 to 1 are told.
 *
 * Source: Baarda (1968), as above; the odds are a ratio of likelihoods; 3 to 1 is ours.
 *
 * Returns: how many, worst first
 */
size_t
lr_net_suspects (const LrNetSolution *solution,
                 double               least,
                 size_t              *suspects,
                 size_t               max)
{
  double most = 0.0;
  size_t n = 0;

  for (size_t i = 0; i < solution->n_measures; i++)
    most = fmax (most, fabs (solution->checks[i].standardized));
  if (!(most >= least))
    return 0;

  for (size_t i = 0; i < solution->n_measures; i++)
    {
      double w = solution->checks[i].standardized;
      size_t at;

      if (most * most - w * w >= 2.0 * ODDS_LOG)
        continue;
      /* equal but for rounding stay in the order of measuring */
      for (at = n; at > 0 && fabs (solution->checks[suspects[at - 1]].standardized) < fabs (w) - 1e-6; at--)
        if (at < max)
          suspects[at] = suspects[at - 1];
      if (at < max)
        suspects[at] = i;
      n = n < max ? n + 1 : max;
    }
  return n;
}

/**
 * lr_net_settles:
 * @solution: of lr_net_adjust()
 * @points: the adjusted points
 * @measures: the measures
 * @suspects: (array length=n_suspects): which of them may be in error
 * @n_suspects: how many, >= 1
 * @length: a length that has not been measured, with its standard deviation
 *
 * If suspect i is in error the points move by `-Q a_i error_i / sd_i^2`, and with them the length. Two suspects are told apart
 * by how far the length then differs, d, in the standard deviations of its own measure and of the points: `d^2 / (1 + d^2)` of
 * a pair. That no suspect is in error, and that the misfit is everybody's, is told apart likewise.
 *
 * Source: linearised least squares; the measure of a pair is ours.
 *
 * Returns: the sum over the pairs
 */
double
lr_net_settles (const LrNetSolution *solution,
                const LrNetPoint    *points,
                const LrNetMeasure  *measures,
                const size_t        *suspects,
                size_t               n_suspects,
                const LrNetMeasure  *length)
{
  LrNetRow row = lr_net_derive (length, points, NULL, 0);
  double variance_m2 = lr_net_spread (solution, &row, &row) + length->sd * length->sd, sum = 0.0;

  for (size_t i = 0; i <= n_suspects; i++)
    for (size_t k = i + 1; k <= n_suspects; k++)
      {
        double shift_m[2] = { 0.0, 0.0 }; /* the last of all is nobody's error */
        const size_t pair[2] = { i, k };
        double d2;

        for (size_t s = 0; s < 2; s++)
          if (pair[s] < n_suspects)
            {
              const LrNetMeasure *measure = &measures[suspects[pair[s]]];
              LrNetRow suspect = lr_net_derive (measure, points, NULL, 0);

              shift_m[s] = -lr_net_spread (solution, &row, &suspect) * solution->checks[suspects[pair[s]]].error
                           / (measure->sd * measure->sd);
            }
        d2 = (shift_m[0] - shift_m[1]) * (shift_m[0] - shift_m[1]) / variance_m2;
        sum += d2 / (1.0 + d2);
      }
  return sum;
}
