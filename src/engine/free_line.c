/* free_line.c - how far one can look in a room
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The longest line in a polygon goes through two corners of it or of what stands in it: moved along itself sideways its length changes
 * evenly, and turned round one corner between two walls it is convex in the angle, so neither has its greatest value between two
 * corners. All pairs of corners are tried. A round thing has the corners of the octagon round it: a line past it may be found some
 * centimetres short.
 */

#include "free_line.h"

#include "domain.h"

#include <stdlib.h>

#define NEAR_M 1e-7
#define BESIDE_M 1e-5
#define DISC_CORNERS 8

typedef struct
{
  const LrVec2    *room_m;
  size_t           n;
  const LrOutline *blocks;
  size_t           n_blocks;
  double          *cut;     /* where the line meets something, from its point [m] */
  size_t           n_cuts;
  LrVec2           at_m, way;
} Scan;

static int
compare (const void *a,
         const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return x < y ? -1 : x > y ? 1 : 0;
}

static void
cut_by_walls (Scan *scan)
{
  for (size_t i = 0; i < scan->n; i++)
    {
      LrVec2 a = lr_vec2_sub (scan->room_m[i], scan->at_m), b = lr_vec2_sub (scan->room_m[(i + 1) % scan->n], scan->at_m);
      double off_a = lr_vec2_cross (scan->way, a), off_b = lr_vec2_cross (scan->way, b);

      /* of a wall along the line the corners count */
      if (fabs (off_a) < NEAR_M)
        scan->cut[scan->n_cuts++] = lr_vec2_dot (scan->way, a);
      else if (fabs (off_b) >= NEAR_M && off_a * off_b < 0.0)
        scan->cut[scan->n_cuts++] = lr_vec2_dot (scan->way, a) + off_a / (off_a - off_b) * lr_vec2_dot (scan->way, lr_vec2_sub (b, a));
    }
}

static void
cut_by_blocks (Scan   *scan,
               double  reach_m)
{
  LrVec2 start_m = lr_vec2_along (scan->at_m, scan->way, -reach_m);
  double enter_m, leave_m;

  for (size_t i = 0; i < scan->n_blocks; i++)
    if (lr_outline_ray (&scan->blocks[i], start_m, scan->way, &enter_m, &leave_m) && leave_m - enter_m > NEAR_M)
      {
        scan->cut[scan->n_cuts++] = enter_m - reach_m;
        scan->cut[scan->n_cuts++] = leave_m - reach_m;
      }
}

static bool
is_blocked (const LrOutline *block,
            LrVec2           at_m)
{
  if (block->n == 0)
    return lr_vec2_distance (block->centre_m, at_m) < block->radius_m;
  for (size_t i = 0; i < block->n; i++)
    {
      LrVec2 side = lr_vec2_sub (block->corner_m[(i + 1) % block->n], block->corner_m[i]);

      if (lr_vec2_cross (side, lr_vec2_sub (at_m, block->corner_m[i])) < 0.0)
        return false;
    }

  return true;
}

static bool
is_free (const Scan *scan,
         LrVec2      at_m)
{
  if (!lr_polygon_contains (scan->room_m, scan->n, at_m))
    return false;
  for (size_t i = 0; i < scan->n_blocks; i++)
    if (is_blocked (&scan->blocks[i], at_m))
      return false;

  return true;
}

/* A line along a wall, or past a corner or a thing, is free on one side of it; between a thing and the wall that it touches on none */
static bool
passes (const Scan *scan,
        LrVec2      at_m)
{
  LrVec2 left = lr_vec2_left (scan->way);

  return is_free (scan, lr_vec2_along (at_m, left, BESIDE_M)) || is_free (scan, lr_vec2_along (at_m, left, -BESIDE_M));
}

/* Between its first and its last wall */
static bool
is_too_short (const Scan *scan,
              double      least_m)
{
  double low = HUGE_VAL, high = -HUGE_VAL;

  for (size_t i = 0; i < scan->n_cuts; i++)
    {
      low = fmin (low, scan->cut[i]);
      high = fmax (high, scan->cut[i]);
    }

  return !(high - low > least_m);
}

/* The longest free stretch of the line through two points */
static void
scan_line (Scan   *scan,
           double  reach_m,
           double *best_m,
           LrVec2 *from_m,
           LrVec2 *to_m)
{
  double start = NAN;

  scan->n_cuts = 0;
  cut_by_walls (scan);
  if (is_too_short (scan, *best_m))
    return;
  cut_by_blocks (scan, reach_m);
  qsort (scan->cut, scan->n_cuts, sizeof *scan->cut, compare);
  for (size_t i = 0; i + 1 < scan->n_cuts; i++)
    {
      double here = scan->cut[i], next = scan->cut[i + 1];

      /* what is left of the line is no longer than what was found */
      if (scan->cut[scan->n_cuts - 1] - (isnan (start) ? here : start) <= *best_m)
        return;
      if (next - here < NEAR_M)
        continue;
      if (!passes (scan, lr_vec2_along (scan->at_m, scan->way, 0.5 * (here + next))))
        {
          start = NAN;
          continue;
        }
      if (isnan (start))
        start = here;
      if (next - start > *best_m + NEAR_M)
        {
          *best_m = next - start;
          *from_m = lr_vec2_along (scan->at_m, scan->way, start);
          *to_m = lr_vec2_along (scan->at_m, scan->way, next);
        }
    }
}

static size_t
add_corners (const LrOutline *block,
             LrVec2          *points_m)
{
  if (block->n > 0)
    {
      for (size_t i = 0; i < block->n; i++)
        points_m[i] = block->corner_m[i];
      return block->n;
    }
  for (size_t i = 0; i < DISC_CORNERS; i++)
    points_m[i] = lr_vec2_add (block->centre_m, lr_vec2_polar (2.0 * LR_PI * (double) i / DISC_CORNERS,
                                                               block->radius_m / cos (LR_PI / DISC_CORNERS)));
  return DISC_CORNERS;
}

static double
find_longest (Scan         *scan,
              const LrVec2 *points_m,
              size_t        n_points,
              LrVec2       *from_m,
              LrVec2       *to_m)
{
  LrVec2 low_m, high_m;
  double best_m = 0.0, reach_m;

  lr_polygon_bounds (scan->room_m, scan->n, &low_m, &high_m);
  reach_m = 2.0 * lr_vec2_distance (low_m, high_m);
  for (size_t i = 0; i < n_points; i++)
    for (size_t k = i + 1; k < n_points; k++)
      {
        LrVec2 span = lr_vec2_sub (points_m[k], points_m[i]);
        double length_m = lr_vec2_length (span);

        if (length_m < 1e-4)
          continue;
        scan->at_m = points_m[i];
        scan->way = lr_vec2_scale (span, 1.0 / length_m);
        scan_line (scan, reach_m, &best_m, from_m, to_m);
      }

  return best_m;
}

/**
 * lr_free_line:
 * @room_m: (array length=n): corners of a simple polygon, anticlockwise [m]
 * @n: how many
 * @blocks: (array length=n_blocks) (nullable): what cannot be looked through
 * @n_blocks: how many
 * @from_m: (out): one end [m]
 * @to_m: (out): the other [m]
 *
 * Along a wall and past a corner counts as free. Time grows as the third power of the corners at most.
 *
 * Source: closed form, see the head of this file.
 *
 * Returns: %FALSE, with both untouched, if there are less than three corners, or nothing is free
 */
bool
lr_free_line (const LrVec2    *room_m,
              size_t           n,
              const LrOutline *blocks,
              size_t           n_blocks,
              LrVec2          *from_m,
              LrVec2          *to_m)
{
  Scan scan = { .room_m = room_m, .n = n, .blocks = blocks, .n_blocks = n_blocks };
  LrVec2 *points_m, a_m = { 0.0, 0.0 }, b_m = { 0.0, 0.0 };
  size_t n_points = n;
  double best_m;

  if (n < 3)
    return false;
  for (size_t i = 0; i < n; i++)
    if (!lr_vec2_is_finite (room_m[i]))
      return false;

  points_m = malloc ((n + n_blocks * LR_OUTLINE_MAX) * sizeof *points_m);
  scan.cut = malloc ((n + 2 * n_blocks) * sizeof *scan.cut);
  if (points_m == NULL || scan.cut == NULL)
    {
      free (points_m);
      free (scan.cut);
      return false;
    }

  for (size_t i = 0; i < n; i++)
    points_m[i] = room_m[i];
  for (size_t i = 0; i < n_blocks; i++)
    n_points += add_corners (&blocks[i], points_m + n_points);
  best_m = find_longest (&scan, points_m, n_points, &a_m, &b_m);
  free (points_m);
  free (scan.cut);
  if (!(best_m > 0.0))
    return false;

  *from_m = a_m;
  *to_m = b_m;
  return true;
}

/**
 * lr_polygon_sides_m:
 * @corners_m: (array length=n): of a polygon [m]
 * @n: how many
 * @length_m: (out): the longer side of the rectangle [m]
 * @width_m: (out): the shorter one [m]
 *
 * Of the rectangles that have a side along one of the polygon's, the one of the least area. Where a side of the outer hull is none of the
 * polygon's, a smaller one may lie aslant; a room's walls are what one measures along.
 *
 * Source: closed form; for a convex polygon it is the least there is (Freeman and Shapira, 1975).
 *
 * Returns: %FALSE, with both untouched, if there are less than three corners, or they enclose nothing
 */
bool
lr_polygon_sides_m (const LrVec2 *corners_m,
                    size_t        n,
                    double       *length_m,
                    double       *width_m)
{
  double best_m2 = HUGE_VAL, sides_m[2] = { 0.0, 0.0 };

  for (size_t i = 0; n >= 3 && i < n; i++)
    {
      LrVec2 side = lr_vec2_sub (corners_m[(i + 1) % n], corners_m[i]), along;
      double side_m = lr_vec2_length (side), low[2] = { HUGE_VAL, HUGE_VAL }, high[2] = { -HUGE_VAL, -HUGE_VAL }, area_m2;

      if (!lr_is_positive (side_m))
        continue;
      along = lr_vec2_scale (side, 1.0 / side_m);
      for (size_t k = 0; k < n; k++)
        {
          double at[2] = { lr_vec2_dot (along, corners_m[k]), lr_vec2_cross (along, corners_m[k]) };

          for (int axis = 0; axis < 2; axis++)
            {
              low[axis] = fmin (low[axis], at[axis]);
              high[axis] = fmax (high[axis], at[axis]);
            }
        }
      area_m2 = (high[0] - low[0]) * (high[1] - low[1]);
      if (!(area_m2 < best_m2))
        continue;
      best_m2 = area_m2;
      sides_m[0] = high[0] - low[0];
      sides_m[1] = high[1] - low[1];
    }
  if (!lr_is_positive (best_m2))
    return false;

  *length_m = fmax (sides_m[0], sides_m[1]);
  *width_m = fmin (sides_m[0], sides_m[1]);
  return true;
}
