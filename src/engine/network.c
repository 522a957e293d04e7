/* network.c - points in the plane from lengths and angles between them, by least squares
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every measure is an equation f (points) = value + residual with the weight 1 / sd^2. The points that make the weighted sum
 * of squared residuals least are found by Gauss and Newton's steps: N dx = A' P (value - f), N = A' P A, A the derivatives
 * of f. The covariance of the points is N^-1, with standard deviations as they are given: those of a room are known
 * better beforehand than from the few measures more than are needed.
 *
 * Source: C. D. Ghilani, Adjustment Computations, chapters 11 (the method), 14 (lengths), 15 (angles); from memory.
 */

#include "network.h"

#include "domain.h"
#include "network_private.h"

#include <stdlib.h>
#include <string.h>

#define MOST_STEPS 60
#define MOST_HALVINGS 12
#define STEP_SHARE 1e-12   /* of the points' extent: a step as small as that is the last */
#define PIVOT_SHARE 1e-10  /* of its diagonal element: a pivot below it leaves its point free to move */
#define CHECKED 1e-6       /* a redundancy below it is none */

/* What is solved: the columns of the coordinates that are not known */
typedef struct
{
  LrNetPoint         *points;
  size_t              n, n_measures, n_unknown;
  const LrNetMeasure *measures;
  size_t             *column; /* 2 n: of x0, y0, ...; n_unknown where known */
  double             *normal; /* n_unknown squared: N, then its Cholesky factor */
  double             *step;   /* n_unknown */
  LrNetRow           *rows;
} Net;

static double
computed (const LrNetMeasure *measure,
          const LrNetPoint   *points)
{
  if (measure->kind == LR_NET_LENGTH)
    return lr_vec2_length (lr_net_way (points, measure->from, measure->to));

  return lr_vec2_angle_rad (lr_net_way (points, measure->at, measure->to))
         - lr_vec2_angle_rad (lr_net_way (points, measure->at, measure->from));
}

/* Adjusted less measured, of an angle the short way round */
static double
residual_of (const LrNetMeasure *measure,
             const LrNetPoint   *points)
{
  double off = computed (measure, points) - measure->value;

  return measure->kind == LR_NET_LENGTH ? off : lr_angle_wrap_rad (off);
}

static double
misfit_of (const Net        *net,
           const LrNetPoint *points)
{
  double sum = 0.0;

  for (size_t i = 0; i < net->n_measures; i++)
    {
      double off = residual_of (&net->measures[i], points) / net->measures[i].sd;

      sum += off * off;
    }
  return sum;
}

/* N and the right-hand side at the points as they are */
static void
assemble (Net *net)
{
  size_t u = net->n_unknown;

  memset (net->normal, 0, u * u * sizeof *net->normal);
  memset (net->step, 0, u * sizeof *net->step);
  for (size_t i = 0; i < net->n_measures; i++)
    {
      const LrNetMeasure *measure = &net->measures[i];
      double weight = 1.0 / (measure->sd * measure->sd), off = residual_of (measure, net->points);
      LrNetRow *row = &net->rows[i];

      *row = lr_net_derive (measure, net->points, net->column, u);
      for (size_t a = 0; a < row->n; a++)
        {
          net->step[row->column[a]] -= weight * row->by[a] * off;
          for (size_t b = 0; b < row->n; b++)
            net->normal[row->column[a] * u + row->column[b]] += weight * row->by[a] * row->by[b];
        }
    }
}

/* N = L L', in its lower triangle; false if a point is not held in its place */
static bool
factor (Net *net)
{
  size_t u = net->n_unknown;
  double *l = net->normal;

  for (size_t j = 0; j < u; j++)
    {
      double pivot = l[j * u + j];

      for (size_t k = 0; k < j; k++)
        pivot -= l[j * u + k] * l[j * u + k];
      if (!(pivot > PIVOT_SHARE * l[j * u + j]) || !isfinite (pivot))
        return false;
      l[j * u + j] = sqrt (pivot);
      for (size_t i = j + 1; i < u; i++)
        {
          double sum = l[i * u + j];

          for (size_t k = 0; k < j; k++)
            sum -= l[i * u + k] * l[j * u + k];
          l[i * u + j] = sum / l[j * u + j];
        }
    }
  return true;
}

/* L L' x = x, in place */
static void
substitute (const Net *net,
            double    *x)
{
  size_t u = net->n_unknown;
  const double *l = net->normal;

  for (size_t i = 0; i < u; i++)
    {
      for (size_t k = 0; k < i; k++)
        x[i] -= l[i * u + k] * x[k];
      x[i] /= l[i * u + i];
    }
  for (size_t i = u; i-- > 0;)
    {
      for (size_t k = i + 1; k < u; k++)
        x[i] -= l[k * u + i] * x[k];
      x[i] /= l[i * u + i];
    }
}

static LrVec2
stepped (const Net *net,
         size_t     point,
         double     share)
{
  LrVec2 at_m = net->points[point].at_m;
  size_t x = net->column[2 * point], y = net->column[2 * point + 1];

  return lr_vec2 (at_m.x + (x < net->n_unknown ? share * net->step[x] : 0.0),
                  at_m.y + (y < net->n_unknown ? share * net->step[y] : 0.0));
}

/* Goes the step, or the first half, quarter, ... of it that does not make the fit worse; false if none is better */
static bool
go (Net        *net,
    LrNetPoint *trial)
{
  double before = misfit_of (net, net->points), share = 1.0;

  for (int i = 0; i < MOST_HALVINGS; i++, share /= 2.0)
    {
      for (size_t k = 0; k < net->n; k++)
        {
          trial[k] = net->points[k];
          trial[k].at_m = stepped (net, k, share);
        }
      if (misfit_of (net, trial) <= before * (1.0 + 1e-12) + 1e-18)
        {
          memcpy (net->points, trial, net->n * sizeof *trial);
          return true;
        }
    }
  return false;
}

static double
extent_m (const Net *net)
{
  double most_m = 0.0;

  for (size_t i = 1; i < net->n; i++)
    most_m = fmax (most_m, lr_vec2_length (lr_net_way (net->points, 0, i)));
  return most_m;
}

/* Steps until they are nothing. The last factor of N stays */
static bool
solve (Net *net)
{
  LrNetPoint *trial = malloc (net->n * sizeof *trial);
  bool has_come = false, is_lost = trial == NULL;

  for (int i = 0; i < MOST_STEPS && !has_come && !is_lost; i++)
    {
      double largest_m = 0.0;

      assemble (net);
      if (!factor (net))
        break;
      substitute (net, net->step);
      for (size_t k = 0; k < net->n_unknown; k++)
        largest_m = fmax (largest_m, fabs (net->step[k]));
      has_come = largest_m <= STEP_SHARE * extent_m (net);
      is_lost = !has_come && !go (net, trial);
      /* where rounding alone is left, no step is better */
      has_come = has_come || (is_lost && largest_m <= 1e-7 * extent_m (net));
    }
  free (trial);
  return has_come;
}

/* N^-1, spread over all coordinates */
static void
write_covariance (const Net *net,
                  double    *covariance_m2,
                  double    *work)
{
  size_t size = 2 * net->n;

  memset (covariance_m2, 0, size * size * sizeof *covariance_m2);
  for (size_t i = 0; i < size; i++)
    {
      if (net->column[i] >= net->n_unknown)
        continue;
      memset (work, 0, net->n_unknown * sizeof *work);
      work[net->column[i]] = 1.0;
      substitute (net, work);
      for (size_t k = 0; k < size; k++)
        if (net->column[k] < net->n_unknown)
          covariance_m2[i * size + k] = work[net->column[k]];
    }
}

/* Baarda's data snooping. Redundancy is 1 - a' Q a / sd^2; a residual has the standard deviation sd sqrt (redundancy), and an
 * error in its measure alone shows in it by the share of the redundancy.
 *
 * Source: W. Baarda, A Testing Procedure for Use in Geodetic Networks, Netherlands Geodetic Commission (1968); Ghilani,
 * Adjustment Computations, chapter 21; from memory. */
static void
write_checks (const Net     *net,
              LrNetSolution *solution)
{
  for (size_t i = 0; i < net->n_measures; i++)
    {
      const LrNetMeasure *measure = &net->measures[i];
      LrNetCheck *check = &solution->checks[i];
      LrNetRow row = lr_net_derive (measure, net->points, NULL, 0);
      double residual = residual_of (measure, net->points);
      double redundancy = 1.0 - lr_net_spread (solution, &row, &row) / (measure->sd * measure->sd);

      *check = (LrNetCheck) { .residual = residual, .redundancy = fmin (fmax (redundancy, 0.0), 1.0) };
      if (check->redundancy < CHECKED)
        continue;
      check->standardized = residual / (measure->sd * sqrt (check->redundancy));
      check->error = -residual / check->redundancy;
    }
}

static bool
is_measure (const LrNetMeasure *measure,
            const LrNetPoint   *points,
            size_t              n)
{
  bool is_angle = measure->kind == LR_NET_ANGLE;

  if (measure->from >= n || measure->to >= n || measure->from == measure->to || !lr_is_positive (measure->sd)
      || !isfinite (measure->value) || (!is_angle && measure->value <= 0.0))
    return false;
  if (is_angle && (measure->at >= n || measure->at == measure->from || measure->at == measure->to))
    return false;

  /* two points in one place have no direction to move apart in */
  return is_angle ? lr_vec2_length (lr_net_way (points, measure->at, measure->from)) > 0.0
                      && lr_vec2_length (lr_net_way (points, measure->at, measure->to)) > 0.0
                  : lr_vec2_length (lr_net_way (points, measure->from, measure->to)) > 0.0;
}

static bool
may_begin (const LrNetPoint   *points,
           size_t              n,
           const LrNetMeasure *measures,
           size_t              n_measures)
{
  for (size_t i = 0; i < n; i++)
    if (!lr_vec2_is_finite (points[i].at_m))
      return false;
  for (size_t i = 0; i < n_measures; i++)
    if (!is_measure (&measures[i], points, n))
      return false;
  return n > 0 && n_measures > 0;
}

static bool
begin (Net *net)
{
  size_t u = 0;

  net->column = malloc (2 * net->n * sizeof *net->column);
  if (net->column == NULL)
    return false;
  for (size_t i = 0; i < net->n; i++)
    u += (net->points[i].holds_x ? 0 : 1) + (net->points[i].holds_y ? 0 : 1);
  net->n_unknown = u;
  for (size_t i = 0, next = 0; i < net->n; i++)
    {
      net->column[2 * i] = net->points[i].holds_x ? u : next++;
      net->column[2 * i + 1] = net->points[i].holds_y ? u : next++;
    }
  net->normal = malloc ((u * u + 1) * sizeof *net->normal);
  net->step = malloc ((u + 1) * sizeof *net->step);
  net->rows = malloc (net->n_measures * sizeof *net->rows);
  return u > 0 && u <= net->n_measures && net->normal != NULL && net->step != NULL && net->rows != NULL;
}

static void
end (Net *net)
{
  free (net->points);
  free (net->column);
  free (net->normal);
  free (net->step);
  free (net->rows);
}

/* Takes what was solved; false for want of memory */
static bool
conclude (const Net     *net,
          LrNetSolution *solution)
{
  LrNetSolution whole = { .n_points = net->n, .n_measures = net->n_measures, .freedom = net->n_measures - net->n_unknown };

  whole.covariance_m2 = malloc (4 * net->n * net->n * sizeof *whole.covariance_m2);
  whole.checks = malloc (net->n_measures * sizeof *whole.checks);
  if (whole.covariance_m2 == NULL || whole.checks == NULL)
    {
      lr_net_clear (&whole);
      return false;
    }
  whole.misfit = misfit_of (net, net->points);
  write_covariance (net, whole.covariance_m2, net->step);
  write_checks (net, &whole);
  *solution = whole;
  return true;
}

/**
 * lr_net_adjust:
 * @points: (inout) (array length=n): known points [m], and first guesses for the others
 * @n: how many
 * @measures: (array length=n_measures): lengths [m] and angles [rad], each with its standard deviation
 * @n_measures: how many, at least as many as there are coordinates to find
 * @solution: (out): how well they fit, to be freed by lr_net_clear()
 *
 * Moves the points that are not known to where the measures fit best, from the first guess downhill.
 *
 * Source: at the head of this file.
 *
 * Returns: %FALSE, with both outputs untouched, if a number is out of its domain, if the measures do not hold every point in
 *   its place, or if no best place is found
 */
bool
lr_net_adjust (LrNetPoint         *points,
               size_t              n,
               const LrNetMeasure *measures,
               size_t              n_measures,
               LrNetSolution      *solution)
{
  Net net = { .n = n, .n_measures = n_measures, .measures = measures };
  bool is_solved;

  if (!may_begin (points, n, measures, n_measures))
    return false;

  net.points = malloc (n * sizeof *net.points);
  if (net.points == NULL)
    return false;
  memcpy (net.points, points, n * sizeof *points);
  is_solved = begin (&net) && solve (&net) && conclude (&net, solution);
  if (is_solved)
    memcpy (points, net.points, n * sizeof *points);
  end (&net);
  return is_solved;
}

/**
 * lr_net_clear:
 * @solution: of lr_net_adjust(), or zeros
 */
void
lr_net_clear (LrNetSolution *solution)
{
  free (solution->covariance_m2);
  free (solution->checks);
  *solution = (LrNetSolution) { 0 };
}
