/* test-routing.c - ways over a floor, against closed forms and against brute force
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "check.h"
#include "routing.h"

#include <string.h>

#define MAX_POINTS 64
#define SIDE_M 6.0
#define CELL_M 0.1
#define N_CELLS 61

static const LrVec2 square_m[] = { { 0.0, 0.0 }, { SIDE_M, 0.0 }, { SIDE_M, SIDE_M }, { 0.0, SIDE_M } };
/* An L: the upper right quarter is not there */
static const LrVec2 ell_m[] = { { 0.0, 0.0 }, { 6.0, 0.0 }, { 6.0, 3.0 }, { 3.0, 3.0 }, { 3.0, 6.0 }, { 0.0, 6.0 } };

static LrRouteFloor
plain_floor (const LrOutline *blocks,
             size_t           n_blocks)
{
  return (LrRouteFloor) {
    .room_m = square_m, .n_room = 4, .blocks = blocks, .n_blocks = n_blocks, .open_times = 1.0, .zone_times = 1.0,
  };
}

static double
route_length_m (const LrRouteFloor *floor,
                LrVec2              from_m,
                LrVec2              to_m)
{
  LrVec2 path_m[MAX_POINTS];
  size_t n = 0;

  if (!lr_route_find (floor, from_m, to_m, path_m, MAX_POINTS, &n))
    return NAN;

  g_assert_true (lr_route_is_free (floor, path_m, n));
  assert_near_2 (path_m[0], from_m, 1e-12);
  assert_near_2 (path_m[n - 1], to_m, 1e-12);
  return lr_route_length_m (path_m, n);
}

static void
test_straight (void)
{
  LrRouteFloor floor = plain_floor (NULL, 0);

  assert_near (route_length_m (&floor, lr_vec2 (1.0, 1.0), lr_vec2 (4.0, 5.0)), 5.0, 1e-12);
}

/* A box of 2 m by 1 m in the straight way: closed form by Pythagoras, round either end alike */
static void
test_box (void)
{
  LrOutline box = lr_outline_box (lr_vec2 (3.0, 3.0), 1.0, 2.0, 0.0);
  LrRouteFloor floor = plain_floor (&box, 1);

  assert_near (route_length_m (&floor, lr_vec2 (0.5, 3.0), lr_vec2 (5.5, 3.0)), 2.0 * hypot (2.0, 1.0) + 1.0, 1e-9);
  /* kept 0.1 m clear of */
  floor.clear_m = 0.1;
  assert_near (route_length_m (&floor, lr_vec2 (0.5, 3.0), lr_vec2 (5.5, 3.0)), 2.0 * hypot (1.9, 1.1) + 1.2, 1e-9);
}

/* Round the inner corner of an L; closed form */
static void
test_corner (void)
{
  LrRouteFloor floor = plain_floor (NULL, 0);

  floor.room_m = ell_m;
  floor.n_room = G_N_ELEMENTS (ell_m);
  assert_near (route_length_m (&floor, lr_vec2 (5.0, 2.0), lr_vec2 (2.0, 5.0)), hypot (2.0, 1.0) * 2.0, 1e-9);
}

/* Round a disc the shortest way is two tangents and an arc; the octagon round it is longer by less than 6 %: the circumference's
 * ratio is 8 tan 22.5° / pi */
static void
test_disc (void)
{
  LrOutline disc = lr_outline_disc (lr_vec2 (3.0, 3.0), 1.0);
  LrRouteFloor floor = plain_floor (&disc, 1);
  double exact_m = 2.0 * sqrt (2.5 * 2.5 - 1.0) + 2.0 * asin (1.0 / 2.5);
  double length_m = route_length_m (&floor, lr_vec2 (0.5, 3.0), lr_vec2 (5.5, 3.0));

  g_assert_cmpfloat (length_m, >=, exact_m - 1e-9);
  g_assert_cmpfloat (length_m, <=, 1.055 * exact_m);
}

static void
test_no_way (void)
{
  LrOutline wall = lr_outline_box (lr_vec2 (3.0, 3.0), 0.4, 7.0, 0.0);
  LrRouteFloor floor = plain_floor (&wall, 1);
  LrVec2 path_m[MAX_POINTS];
  size_t n = 77;

  g_assert_false (lr_route_find (&floor, lr_vec2 (1.0, 3.0), lr_vec2 (5.0, 3.0), path_m, MAX_POINTS, &n));
  g_assert_cmpuint (n, ==, 77);
  /* what holds an end does not count: a lamp on a table */
  assert_near (route_length_m (&floor, lr_vec2 (3.0, 3.0), lr_vec2 (5.0, 3.0)), 2.0, 1e-12);
}

/* Before a door what stands there counts, although the way ends beside it: .4 m of a gap let .3 m through, not .5 m */
static void
test_strict_end (void)
{
  LrOutline box = lr_outline_box (lr_vec2 (3.0, 0.9), 1.0, 1.0, 0.0);
  LrRouteFloor floor = plain_floor (&box, 1);
  LrOutline blocks[2] = { box, lr_outline_box (lr_vec2 (3.0, -0.5), 6.0, 1.0, 0.0) };

  floor.blocks = blocks;
  floor.n_blocks = 2;
  floor.is_end_strict = true;
  floor.clear_m = 0.15;
  g_assert_false (isnan (route_length_m (&floor, lr_vec2 (3.0, 5.0), lr_vec2 (3.0, 0.2))));
  floor.clear_m = 0.25;
  g_assert_true (isnan (route_length_m (&floor, lr_vec2 (3.0, 5.0), lr_vec2 (3.0, 0.2))));
  floor.is_end_strict = false;
  g_assert_false (isnan (route_length_m (&floor, lr_vec2 (3.0, 5.0), lr_vec2 (3.0, 0.2))));
}

/* The widest way to the end, by halving what is kept clear */
static double
widest_m (LrRouteFloor floor,
          LrVec2       from_m,
          LrVec2       to_m,
          double       most_m)
{
  double low_m = 0.0, high_m = most_m;
  LrVec2 path_m[MAX_POINTS];
  size_t n;

  floor.is_round = floor.is_end_strict = true;
  for (int i = 0; i < 24; i++)
    {
      double middle_m = 0.5 * (low_m + high_m);

      floor.clear_m = 0.5 * middle_m;
      if (lr_route_seek (&floor, from_m, to_m, path_m, MAX_POINTS, &n) == LR_ROUTE_FOUND)
        low_m = middle_m;
      else
        high_m = middle_m;
    }

  return low_m;
}

/* What goes past two corners, or between discs, is as wide as they are apart, whichever way that is: Pythagoras. A way is told no wider,
 * and no more than 1 in 100 narrower: cos 7.5 degrees */
static void
test_width (void)
{
  static const double apart_m[][2] = { { 0.6, 0.6 }, { 0.7, 0.7 }, { 0.3, 0.9 }, { 0.9, 0.1 }, { 0.2, 0.2 } };

  for (gsize i = 0; i < G_N_ELEMENTS (apart_m); i++)
    {
      double x_m = 3.0 + apart_m[i][0], y_m = 3.0 + apart_m[i][1], exact_m = hypot (apart_m[i][0], apart_m[i][1]), told_m;
      const LrOutline boxes[] = { lr_outline_box (lr_vec2 (2.5, 1.5), 1.0, 3.0, 0.0),
                                  lr_outline_box (lr_vec2 (x_m + 0.5, 0.5 * (SIDE_M + y_m)), 1.0, SIDE_M - y_m, 0.0) };
      const LrOutline discs[] = { lr_outline_disc (lr_vec2 (3.0 - 0.6, 3.0 - 0.8), 1.0), boxes[1], lr_outline_box (lr_vec2 (2.4, 1.0), 0.1, 2.0, 0.0) };
      LrRouteFloor floor = plain_floor (boxes, 2);

      told_m = widest_m (floor, lr_vec2 (0.5, 5.5), lr_vec2 (5.5, 0.5), 1.2);
      g_test_message ("corner to corner %.3f m, told %.3f m", exact_m, told_m);
      g_assert_cmpfloat (told_m, <=, exact_m + 1e-5);
      g_assert_cmpfloat (told_m, >=, 0.99 * exact_m);

      floor = plain_floor (discs, 3);
      /* from the middle of the disc to the corner, less its radius */
      exact_m = hypot (x_m - 2.4, y_m - 2.2) - 1.0;
      told_m = widest_m (floor, lr_vec2 (0.5, 5.5), lr_vec2 (5.5, 0.5), 2.0);
      g_test_message ("disc to corner %.3f m, told %.3f m", exact_m, told_m);
      g_assert_cmpfloat (told_m, <=, exact_m + 1e-5);
      g_assert_cmpfloat (told_m, >=, 0.98 * exact_m - 0.01); /* the disc's own radius as well */
    }
}

/* Brute force: a grid of 2 cm, flooded from where the one end is over all places that keep clear */

#define FINE_M 0.02
#define N_FINE 301

static double
clear_there_m (const LrOutline *blocks,
               int              n_blocks,
               LrVec2           at_m)
{
  double clear_m = HUGE_VAL;

  for (int i = 0; i < n_blocks; i++)
    if (blocks[i].n == 0)
      clear_m = fmin (clear_m, lr_vec2_distance (at_m, blocks[i].centre_m) - blocks[i].radius_m);
    else
      clear_m = fmin (clear_m, -lr_polygon_distance_m (blocks[i].corner_m, blocks[i].n, at_m, NULL));

  return clear_m;
}

static gboolean
floods (float  clear_m[N_FINE][N_FINE],
        double least_m)
{
  static gboolean is_wet[N_FINE][N_FINE];
  static int stack[N_FINE * N_FINE];
  int n = 0;

  memset (is_wet, 0, sizeof is_wet);
  is_wet[15][150] = TRUE;
  stack[n++] = 15 * N_FINE + 150;
  while (n > 0)
    {
      int at = stack[--n], x = at / N_FINE, y = at % N_FINE;

      for (int dx = -1; dx <= 1; dx++)
        for (int dy = -1; dy <= 1; dy++)
          {
            int i = x + dx, j = y + dy;

            if (i < 0 || j < 0 || i >= N_FINE || j >= N_FINE || is_wet[i][j] || clear_m[i][j] < (float) least_m)
              continue;
            is_wet[i][j] = TRUE;
            stack[n++] = i * N_FINE + j;
          }
    }

  return is_wet[285][150];
}

static void
test_width_by_grid (void)
{
  static float clear_m[N_FINE][N_FINE];
  int n_narrow = 0;

  for (int round = 0; round < 12; round++)
    {
      LrOutline blocks[7];
      double low_m = 0.0, high_m = 1.1, told_m;

      for (int i = 0; i < 7; i++)
        {
          LrVec2 at_m = { g_test_rand_double_range (2.2, 3.8), 0.3 + i * 0.9 + g_test_rand_double_range (-0.3, 0.3) };

          blocks[i] = i % 2 == 0 ? lr_outline_box (at_m, g_test_rand_double_range (0.2, 0.9), g_test_rand_double_range (0.2, 0.9),
                                                   g_test_rand_double_range (0.0, LR_PI))
                                 : lr_outline_disc (at_m, g_test_rand_double_range (0.1, 0.5));
        }
      for (int i = 0; i < N_FINE; i++)
        for (int j = 0; j < N_FINE; j++)
          clear_m[i][j] = (float) clear_there_m (blocks, 7, lr_vec2 (i * FINE_M, j * FINE_M));
      for (int i = 0; i < 10; i++)
        {
          double middle_m = 0.5 * (low_m + high_m);

          if (floods (clear_m, 0.5 * middle_m))
            low_m = middle_m;
          else
            high_m = middle_m;
        }
      told_m = widest_m (plain_floor (blocks, 7), lr_vec2 (0.3, 3.0), lr_vec2 (5.7, 3.0), 1.1);
      g_test_message ("by the grid %.3f m, told %.3f m", low_m, told_m);
      /* the grid has no place in the very middle of a gap: half its diagonal to either side. Discs count a little larger */
      g_assert_cmpfloat (told_m, <=, low_m + FINE_M * G_SQRT2 + 0.003);
      g_assert_cmpfloat (told_m, >=, 0.991 * low_m - 0.012);
      n_narrow += told_m < 1.0;
    }
  g_assert_cmpint (n_narrow, >, 3);
}

/* Brute force: every corner to every other, seen or not by looking at each centimetre, then all shortest ways (Floyd and Warshall) */

#define MAX_CORNERS 18

static gboolean
is_inside (const LrOutline *boxes,
           int              n_boxes,
           LrVec2           at_m)
{
  for (int i = 0; i < n_boxes; i++)
    {
      LrVec2 half = lr_vec2_scale (lr_vec2_sub (boxes[i].corner_m[2], boxes[i].corner_m[0]), 0.5);

      if (fabs (at_m.x - boxes[i].centre_m.x) < half.x - 1e-7 && fabs (at_m.y - boxes[i].centre_m.y) < half.y - 1e-7)
        return TRUE;
    }

  return at_m.x < -1e-9 || at_m.y < -1e-9 || at_m.x > SIDE_M + 1e-9 || at_m.y > SIDE_M + 1e-9;
}

static gboolean
is_seen (const LrOutline *boxes,
         int              n_boxes,
         LrVec2           a_m,
         LrVec2           b_m)
{
  int n_steps = 1 + (int) (lr_vec2_distance (a_m, b_m) / 0.0005);

  for (int i = 0; i <= n_steps; i++)
    if (is_inside (boxes, n_boxes, lr_vec2_along (a_m, lr_vec2_sub (b_m, a_m), (double) i / n_steps)))
      return FALSE;

  return TRUE;
}

static double
brute_force_m (const LrOutline *boxes,
               int              n_boxes,
               LrVec2           from_m,
               LrVec2           to_m)
{
  LrVec2 at_m[MAX_CORNERS] = { from_m, to_m };
  double way_m[MAX_CORNERS][MAX_CORNERS];
  int n = 2;

  for (int i = 0; i < n_boxes; i++)
    for (int j = 0; j < 4; j++)
      at_m[n++] = boxes[i].corner_m[j];
  for (int i = 0; i < n; i++)
    for (int j = 0; j < n; j++)
      way_m[i][j] = is_seen (boxes, n_boxes, at_m[i], at_m[j]) ? lr_vec2_distance (at_m[i], at_m[j]) : HUGE_VAL;
  for (int k = 0; k < n; k++)
    for (int i = 0; i < n; i++)
      for (int j = 0; j < n; j++)
        way_m[i][j] = fmin (way_m[i][j], way_m[i][k] + way_m[k][j]);

  return way_m[0][1];
}

static void
test_brute_force (void)
{
  int n_bent = 0, n_none = 0;

  for (int round = 0; round < 200; round++)
    {
      LrOutline boxes[4];
      int n_boxes = g_test_rand_int_range (1, 5);
      LrVec2 from_m = { 0.2, g_test_rand_double_range (0.0, SIDE_M) }, to_m = { SIDE_M - 0.2, g_test_rand_double_range (0.0, SIDE_M) };
      LrRouteFloor floor = plain_floor (boxes, n_boxes);
      double expected_m, found_m;

      for (int i = 0; i < n_boxes; i++)
        boxes[i] = lr_outline_box (lr_vec2 (g_test_rand_double_range (1.0, 5.0), g_test_rand_double_range (0.0, SIDE_M)),
                                   g_test_rand_double_range (0.2, 1.5), g_test_rand_double_range (0.5, 4.0), 0.0);
      expected_m = brute_force_m (boxes, n_boxes, from_m, to_m);
      found_m = route_length_m (&floor, from_m, to_m);
      if (!isfinite (expected_m))
        {
          g_assert_true (isnan (found_m));
          n_none++;
          continue;
        }
      assert_near (found_m, expected_m, 1e-6);
      n_bent += found_m > lr_vec2_distance (from_m, to_m) + 1e-6;
    }
  g_test_message ("%d bent, %d without a way", n_bent, n_none);
  g_assert_cmpint (n_bent, >, 50);
}

/* Brute force for a floor that counts differently from place to place: Dijkstra over a grid of 10 cm, steps to the next 32 places */

static double
grid_cost_m (const LrRouteFloor *floor,
             LrVec2              from_m,
             LrVec2              to_m)
{
  static double cost_m[N_CELLS][N_CELLS];
  static gboolean is_done[N_CELLS][N_CELLS];
  int end_x = (int) lround (to_m.x / CELL_M), end_y = (int) lround (to_m.y / CELL_M);

  for (int i = 0; i < N_CELLS; i++)
    for (int j = 0; j < N_CELLS; j++)
      {
        cost_m[i][j] = HUGE_VAL;
        is_done[i][j] = FALSE;
      }
  cost_m[lround (from_m.x / CELL_M)][lround (from_m.y / CELL_M)] = 0.0;
  for (;;)
    {
      int x = -1, y = -1;

      for (int i = 0; i < N_CELLS; i++)
        for (int j = 0; j < N_CELLS; j++)
          if (!is_done[i][j] && isfinite (cost_m[i][j]) && (x < 0 || cost_m[i][j] < cost_m[x][y]))
            x = i, y = j;
      if (x < 0 || (x == end_x && y == end_y))
        return x < 0 ? HUGE_VAL : cost_m[x][y];
      is_done[x][y] = TRUE;
      for (int dx = -3; dx <= 3; dx++)
        for (int dy = -3; dy <= 3; dy++)
          {
            LrVec2 step_m[2] = { { x * CELL_M, y * CELL_M }, { (x + dx) * CELL_M, (y + dy) * CELL_M } };
            int i = x + dx, j = y + dy;
            double next_m;

            if ((dx == 0 && dy == 0) || i < 0 || j < 0 || i >= N_CELLS || j >= N_CELLS || is_done[i][j]
                || !lr_route_is_free (floor, step_m, 2))
              continue;
            next_m = cost_m[x][y] + lr_route_cost_m (floor, step_m, 2);
            if (next_m < cost_m[i][j])
              cost_m[i][j] = next_m;
          }
    }
}

static void
test_against_grid (void)
{
  const LrOutline blocks[] = {
    lr_outline_box (lr_vec2 (3.05, 0.45), 1.0, 0.9, 0.0), lr_outline_box (lr_vec2 (2.55, 3.05), 0.9, 1.4, 0.3),
  };
  const LrOutline door = lr_outline_box (lr_vec2 (5.6, 2.0), 1.2, 1.0, 0.0);
  static const LrVec2 ends_m[][2] = {
    { { 0.1, 0.1 }, { 4.2, 4.0 } }, { { 1.0, 0.0 }, { 5.0, 0.5 } }, { { 0.0, 3.0 }, { 4.0, 3.0 } }, { { 6.0, 0.5 }, { 5.5, 4.5 } },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (ends_m); i++)
    {
      LrRouteFloor floor = {
        .room_m = square_m, .n_room = 4, .blocks = blocks, .n_blocks = 2, .zones = &door, .n_zones = 1,
        .wall_m = 0.05, .band_m = 0.3, .open_times = 2.0, .zone_times = 4.0,
      };
      LrVec2 path_m[MAX_POINTS];
      size_t n = 0;
      double grid_m = grid_cost_m (&floor, ends_m[i][0], ends_m[i][1]), cost_m;

      g_assert_true (lr_route_find (&floor, ends_m[i][0], ends_m[i][1], path_m, MAX_POINTS, &n));
      cost_m = lr_route_cost_m (&floor, path_m, n);
      g_test_message ("%zu: %.3f m, by the grid %.3f m", i, cost_m, grid_m);
      /* a right angle off the wall instead of the cheapest slant: up to 2 - sqrt 3 of the way across, twice the floor's count */
      g_assert_cmpfloat (cost_m, <=, 1.08 * grid_m);
      g_assert_cmpfloat (cost_m, >=, 0.94 * grid_m);
    }
}

/* From corner to corner along two walls, where the open counts twice: 11.6 m at least, against 16.4 m that count straight through */
static void
test_along_walls (void)
{
  LrRouteFloor floor = plain_floor (NULL, 0);
  LrVec2 path_m[MAX_POINTS];
  size_t n = 0;

  floor.wall_m = 0.05;
  floor.band_m = 0.3;
  floor.open_times = 2.0;
  g_assert_true (lr_route_find (&floor, lr_vec2 (0.1, 0.1), lr_vec2 (5.9, 5.9), path_m, MAX_POINTS, &n));
  g_assert_cmpfloat (lr_route_cost_m (&floor, path_m, n), <=, 11.8);
  for (size_t i = 0; i < n; i++)
    g_assert_cmpfloat (lr_polygon_distance_m (square_m, 4, path_m[i], NULL), <=, 0.3);

  /* but straight through when a wall is no better: 5.8 sqrt 2 */
  floor.open_times = 1.0;
  assert_near (route_length_m (&floor, lr_vec2 (0.1, 0.1), lr_vec2 (5.9, 5.9)), 5.8 * G_SQRT2, 1e-9);
}

/* Round the zone when that is cheaper, straight through it when it is not */
static void
test_zone (void)
{
  LrOutline zone = lr_outline_box (lr_vec2 (3.0, 3.0), 1.0, 1.0, 0.0);
  LrRouteFloor floor = plain_floor (NULL, 0);
  LrVec2 from_m = { 2.0, 3.0 }, to_m = { 4.0, 3.0 }, straight_m[2] = { { 2.0, 3.0 }, { 4.0, 3.0 } }, path_m[MAX_POINTS];
  size_t n = 0;

  floor.zones = &zone;
  floor.n_zones = 1;
  floor.zone_times = 4.0;
  /* by hand: half a metre either side, a metre that counts four */
  assert_near (lr_route_cost_m (&floor, straight_m, 2), 5.0, 1e-12);
  g_assert_true (lr_route_find (&floor, from_m, to_m, path_m, MAX_POINTS, &n));
  /* by hand: round two corners, which count as zone not at all */
  assert_near (lr_route_cost_m (&floor, path_m, n), 2.0 * hypot (0.5, 0.5) + 1.0, 1e-9);
  /* by hand: a metre that counts 1.2 is cheaper than the corners */
  floor.zone_times = 1.2;
  g_assert_true (lr_route_find (&floor, from_m, to_m, path_m, MAX_POINTS, &n));
  assert_near (lr_route_cost_m (&floor, path_m, n), 2.2, 1e-9);
}

/* A zone before a wall is not slipped past on the wall: from one end of the wall to the other, round it at 45 degrees or through it */
static void
test_zone_at_wall (void)
{
  LrOutline zone = lr_outline_box (lr_vec2 (3.0, 0.5), 1.0, 1.0, 0.0);
  LrRouteFloor floor = plain_floor (NULL, 0);
  LrVec2 path_m[MAX_POINTS];
  size_t n = 0;

  floor.zones = &zone;
  floor.n_zones = 1;
  floor.zone_times = 20.0;
  floor.wall_m = 0.05;
  g_assert_true (lr_route_find (&floor, lr_vec2 (1.5, 0.05), lr_vec2 (4.5, 0.05), path_m, MAX_POINTS, &n));
  /* by hand: over the two upper corners */
  assert_near (lr_route_cost_m (&floor, path_m, n), 2.0 * hypot (1.0, 0.95) + 1.0, 1e-9);
}

/* Very many things that are not in the way change nothing */
static void
test_crowd (void)
{
  enum { N = 400 };
  static LrOutline crowd[N];
  LrRouteFloor floor = plain_floor (crowd, N);

  floor.n_room = 0;
  for (int i = 0; i < N; i++)
    crowd[i] = lr_outline_disc (lr_vec2 (10.0 + i % 20, 10.0 + (i / 20)), 0.3);
  crowd[7] = lr_outline_box (lr_vec2 (3.0, 3.0), 1.0, 2.0, 0.0);
  assert_near (route_length_m (&floor, lr_vec2 (0.5, 3.0), lr_vec2 (5.5, 3.0)), 2.0 * hypot (2.0, 1.0) + 1.0, 1e-9);
}

static void
test_domain (void)
{
  LrRouteFloor floor = plain_floor (NULL, 0), bad;
  LrVec2 path_m[MAX_POINTS];
  size_t n = 77;

  g_assert_false (lr_route_find (&floor, lr_vec2 (NAN, 0.0), lr_vec2 (1.0, 1.0), path_m, MAX_POINTS, &n));
  g_assert_false (lr_route_find (&floor, lr_vec2 (0.0, 0.0), lr_vec2 (1.0, HUGE_VAL), path_m, MAX_POINTS, &n));
  g_assert_false (lr_route_find (&floor, lr_vec2 (0.0, 0.0), lr_vec2 (1.0, 1.0), path_m, 1, &n));
  bad = floor;
  bad.open_times = 0.5;
  g_assert_false (lr_route_find (&bad, lr_vec2 (0.0, 0.0), lr_vec2 (1.0, 1.0), path_m, MAX_POINTS, &n));
  bad = floor;
  bad.clear_m = -1.0;
  g_assert_false (lr_route_find (&bad, lr_vec2 (0.0, 0.0), lr_vec2 (1.0, 1.0), path_m, MAX_POINTS, &n));
  g_assert_cmpuint (n, ==, 77);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/routing/straight", test_straight);
  g_test_add_func ("/routing/box", test_box);
  g_test_add_func ("/routing/corner", test_corner);
  g_test_add_func ("/routing/disc", test_disc);
  g_test_add_func ("/routing/no-way", test_no_way);
  g_test_add_func ("/routing/strict-end", test_strict_end);
  g_test_add_func ("/routing/width", test_width);
  g_test_add_func ("/routing/width-by-grid", test_width_by_grid);
  g_test_add_func ("/routing/brute-force", test_brute_force);
  g_test_add_func ("/routing/against-grid", test_against_grid);
  g_test_add_func ("/routing/along-walls", test_along_walls);
  g_test_add_func ("/routing/zone", test_zone);
  g_test_add_func ("/routing/zone-at-wall", test_zone_at_wall);
  g_test_add_func ("/routing/crowd", test_crowd);
  g_test_add_func ("/routing/domain", test_domain);

  return g_test_run ();
}
