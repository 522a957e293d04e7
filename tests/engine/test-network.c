/* test-network.c - points from lengths and angles
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "check.h"
#include "network.h"

#include <string.h>

#define N_ROOMS 400

static LrNetMeasure
length (size_t from,
        size_t to,
        double value_m,
        double sd_m)
{
  return (LrNetMeasure) { LR_NET_LENGTH, from, to, 0, value_m, sd_m };
}

static LrNetMeasure
angle (size_t at,
       size_t from,
       size_t to,
       double value_deg,
       double sd_deg)
{
  return (LrNetMeasure) { LR_NET_ANGLE, from, to, at, value_deg * LR_DEG, sd_deg * LR_DEG };
}

/* Published examples */

/* C. D. Ghilani, Adjustment Computations, example 14.1: a station from three known ones. Measures from memory; that they meet
 * within 0.1 in 5,000 guards the memory. The place and its standard errors: numpy's least squares, with the same equal
 * weights. */
static void
test_three_lengths (void)
{
  LrNetPoint points[] = { { { 865.40, 4527.15 }, true, true }, { { 2432.55, 2047.25 }, true, true },
                          { { 2865.22, 27.15 }, true, true }, { { 6500.0, 2000.0 }, false, false } };
  const LrNetMeasure measures[] = { length (0, 3, 6049.00, 1.0), length (1, 3, 4736.83, 1.0), length (2, 3, 5446.49, 1.0) };
  LrNetSolution solution;

  g_assert_true (lr_net_adjust (points, 4, measures, 3, &solution));
  assert_near (points[3].at_m.x, 6861.3168, 1e-4);
  assert_near (points[3].at_m.y, 3727.8186, 1e-4);
  g_assert_cmpuint (solution.freedom, ==, 1);
  assert_near (sqrt (solution.misfit), 0.0976594, 1e-6);
  assert_near (solution.checks[0].residual, -0.0374, 1e-4);
  assert_near (solution.checks[1].residual, 0.0768, 1e-4);
  assert_near (solution.checks[2].residual, -0.0474, 1e-4);
  assert_near (sqrt (solution.misfit * solution.covariance_m2[6 * 8 + 6]), 0.0775264, 1e-6);
  assert_near (sqrt (solution.misfit * solution.covariance_m2[7 * 8 + 7]), 0.1542489, 1e-6);
  lr_net_clear (&solution);
}

/* The same book, example 14.2: two stations from two known ones and five lengths. The book's standard deviation of unit weight
 * is 0.136 (measures and it from memory, which it guards); the places: numpy's least squares. */
static void
test_braced_quadrilateral (void)
{
  LrNetPoint points[] = { { { 2410000.000, 390000.000 }, true, true }, { { 2411820.000, 386881.222 }, true, true },
                          { { 2415776.819, 391043.461 }, false, false }, { { 2416898.227, 387602.294 }, false, false } };
  const LrNetMeasure measures[] = { length (0, 2, 5870.302, 1.0), length (0, 3, 7297.588, 1.0), length (2, 3, 3616.434, 1.0),
                                    length (2, 1, 5742.878, 1.0), length (3, 1, 5123.760, 1.0) };
  LrNetSolution solution;

  g_assert_true (lr_net_adjust (points, 4, measures, 5, &solution));
  assert_near (sqrt (solution.misfit / (double) solution.freedom), 0.136, 5e-4);
  assert_near (points[2].at_m.x, 2415776.9044, 2e-4);
  assert_near (points[2].at_m.y, 391043.2945, 2e-4);
  assert_near (points[3].at_m.x, 2416892.6955, 2e-4);
  assert_near (points[3].at_m.y, 387603.2551, 2e-4);
  assert_near (sqrt (solution.misfit * solution.covariance_m2[4 * 8 + 4]), 0.14878839, 1e-6);
  lr_net_clear (&solution);
}

/* Closed forms */

static LrNetPoint
free_point (double x_m,
            double y_m)
{
  return (LrNetPoint) { { x_m, y_m }, false, false };
}

/* A corner at 0, 0 and the wall from it along +x: they say where the room lies */
static void
hold (LrNetPoint *points)
{
  points[0].holds_x = points[0].holds_y = points[1].holds_y = true;
}

/* Three angles of a triangle that are 9 seconds too much lose 3 seconds each: "equal weights share the misclosure equally",
 * every textbook; with weights it is shared as their inverses. The side gives the scale. */
static void
test_angle_sum (void)
{
  LrNetPoint points[] = { free_point (0.0, 0.0), free_point (5.0, 0.0), free_point (1.0, 3.0) };
  const double s = 1.0 / 3600.0;
  const LrNetMeasure measures[] = { length (0, 1, 5.0, 0.01), angle (0, 1, 2, 60.0 + 4.0 * s, s), angle (1, 2, 0, 70.0 + 4.0 * s, s),
                                    angle (2, 0, 1, 50.0 + 1.0 * s, 2.0 * s) };
  LrNetSolution solution;

  hold (points);
  g_assert_true (lr_net_adjust (points, 3, measures, 4, &solution));
  assert_near (solution.checks[1].residual / LR_DEG * 3600.0, -1.5, 1e-6);
  assert_near (solution.checks[2].residual / LR_DEG * 3600.0, -1.5, 1e-6);
  assert_near (solution.checks[3].residual / LR_DEG * 3600.0, -6.0, 1e-6);
  /* what the others make of an angle misses it by all of the misclosure, and the side is checked by nothing */
  assert_near (solution.checks[1].error / LR_DEG * 3600.0, 9.0, 1e-6);
  assert_near (solution.checks[0].error, 0.0, 1e-12);
  assert_near (solution.checks[0].redundancy, 0.0, 1e-9);
  assert_near (points[1].at_m.x, 5.0, 1e-12);
  lr_net_clear (&solution);
}

/* A rectangle whose corners are square to a second: opposite walls are two measures of one length. Weighted mean
 * (a / s^2 + b / t^2) / (1 / s^2 + 1 / t^2), the difference in standard deviations d / sqrt (s^2 + t^2) for either, and
 * the standard error of the mean st / sqrt (s^2 + t^2). */
static void
test_square_rectangle (void)
{
  LrNetPoint points[] = { free_point (0.0, 0.0), free_point (5.0, 0.0), free_point (5.0, 4.0), free_point (0.0, 4.0) };
  const LrNetMeasure measures[] = { length (0, 1, 5.0, 0.01), length (1, 2, 4.0, 0.01), length (2, 3, 4.94, 0.02), length (3, 0, 4.0, 0.01),
                                    angle (0, 1, 3, 90.0, 1e-4), angle (1, 2, 0, 90.0, 1e-4), angle (2, 3, 1, 90.0, 1e-4),
                                    angle (3, 0, 2, 90.0, 1e-4) };
  size_t suspects[8];
  LrNetSolution solution;

  hold (points);
  g_assert_true (lr_net_adjust (points, 4, measures, 8, &solution));
  g_assert_cmpuint (solution.freedom, ==, 3);
  assert_near (points[1].at_m.x, (5.0 / 1e-4 + 4.94 / 4e-4) / (1.0 / 1e-4 + 1.0 / 4e-4), 1e-5);
  assert_near (points[2].at_m.y, 4.0, 1e-6);
  assert_near (fabs (solution.checks[0].standardized), 0.06 / sqrt (0.0005), 1e-3);
  assert_near (fabs (solution.checks[2].standardized), 0.06 / sqrt (0.0005), 1e-3);
  assert_near (solution.checks[2].error, -0.06, 1e-6);
  assert_near (solution.checks[0].error, 0.06, 1e-6);
  assert_near (lr_net_length_sd_m (&solution, points, 0, 1), 0.01 * 0.02 / sqrt (0.0005), 1e-5);
  assert_near (lr_net_point_sd_m (&solution, 1), 0.01 * 0.02 / sqrt (0.0005), 1e-5);
  g_assert_cmpuint (lr_net_suspects (&solution, 2.0, suspects, 8), ==, 2);
  g_assert_cmpuint (suspects[0] + suspects[1], ==, 2); /* walls 0 and 2, in either order */
  g_assert_cmpuint (lr_net_suspects (&solution, 3.0, suspects, 8), ==, 0);
  lr_net_clear (&solution);
}

/* All kinds together against another program: scipy.optimize.least_squares on the same residuals, its Jacobian's covariance, and
 * wall 0 as it comes out without its own measure. */
static const double shape_m[6][2] = { { 5.01773144, 0.0 }, { 5.011771932, 2.979742765 }, { 3.021336458, 2.978961348 },
                                      { 3.022538583, 4.008975501 }, { 0.02207892, 4.019065471 } };

static size_t
measure_shape (LrNetMeasure *measures)
{
  static const double walls_m[6] = { 5.02, 2.98, 1.99, 1.03, 3.00, 4.02 }, turns_deg[6] = { 90, 90, -90, 90, 90, 90 };
  size_t n = 0;

  for (size_t i = 0; i < 6; i++)
    measures[n++] = length (i, (i + 1) % 6, walls_m[i], 0.004 + 0.0002 * walls_m[i]);
  for (size_t i = 0; i < 6; i++)
    measures[n++] = angle ((i + 1) % 6, (i + 2) % 6, i, 180.0 - turns_deg[i], 0.3);
  measures[n++] = length (0, 2, 5.83, 0.004 + 0.0002 * 5.83);
  measures[n++] = length (1, 5, 6.41, 0.004 + 0.0002 * 6.41);
  return n;
}

static void
test_room_with_diagonals (void)
{
  static const double standardized[] = { -0.994538754, -0.17296746, 0.276536624, 0.016450616, 0.276391672, -0.653042344 };
  static const double redundancy[] = { 0.207788894, 0.099910836, 0.128296124, 0.046092233, 0.140538299, 0.07759221 };
  LrNetPoint points[] = { free_point (0.0, 0.0), free_point (5.0, 0.0), free_point (5.0, 3.0), free_point (3.0, 3.0),
                          free_point (3.0, 4.0), free_point (0.0, 4.0) };
  LrNetMeasure measures[14];
  size_t n = measure_shape (measures);
  LrNetSolution solution;
  double sum = 0.0;

  hold (points);
  g_assert_true (lr_net_adjust (points, 6, measures, n, &solution));
  for (size_t i = 0; i < 5; i++)
    {
      assert_near (points[i + 1].at_m.x, shape_m[i][0], 1e-6);
      assert_near (points[i + 1].at_m.y, shape_m[i][1], 1e-6);
    }
  for (size_t i = 0; i < 6; i++)
    {
      assert_near (solution.checks[i].standardized, standardized[i], 1e-4);
      assert_near (solution.checks[i].redundancy, redundancy[i], 1e-5);
    }
  for (size_t i = 0; i < n; i++)
    sum += solution.checks[i].redundancy;
  assert_near (sum, (double) solution.freedom, 1e-9); /* closed form: the trace of a projector */
  assert_near (solution.misfit, 2.14935084, 1e-6);
  assert_near (solution.checks[0].error, 0.0109082, 2e-5);
  assert_near (lr_net_point_sd_m (&solution, 3), 0.0072620, 1e-6);
  assert_near (lr_net_point_sd_m (&solution, 5), 0.0068800, 1e-6);
  lr_net_clear (&solution);
}

/* Turned and shifted, the same room fits as well: nothing but what is held says where it lies */
static void
test_place_does_not_matter (void)
{
  LrNetPoint points[6] = { { .holds_x = false } };
  LrNetMeasure measures[14];
  size_t n = measure_shape (measures);
  LrNetSolution solution;

  for (size_t i = 0; i < 6; i++)
    {
      LrVec2 at_m = i == 0 ? lr_vec2 (0.0, 0.0) : lr_vec2 (shape_m[i - 1][0], shape_m[i - 1][1]);

      points[i].at_m = lr_vec2_add (lr_vec2 (-40.0, 7.0), lr_vec2_rotate (at_m, 0.5));
    }
  points[2].at_m.x += 0.4; /* a worse guess */
  points[3].holds_x = points[3].holds_y = points[4].holds_x = true;
  g_assert_true (lr_net_adjust (points, 6, measures, n, &solution));
  assert_near (solution.misfit, 2.14935084, 1e-6);
  lr_net_clear (&solution);
}

/* Random rooms with errors of the tape and of the corners */

static double
random_normal (void)
{
  /* Box and Muller */
  double r = sqrt (-2.0 * log (g_test_rand_double_range (1e-12, 1.0)));

  return r * cos (2.0 * LR_PI * g_test_rand_double ());
}

/* n corners round the origin, at angles that are apart */
static void
random_room (LrVec2 *corners_m,
             size_t  n)
{
  for (size_t i = 0; i < n; i++)
    corners_m[i] = lr_vec2_polar (2.0 * LR_PI * ((double) i + g_test_rand_double_range (0.0, 0.6)) / (double) n,
                                  g_test_rand_double_range (2.0, 5.0));
  for (size_t i = n; i-- > 0;)
    corners_m[i] = lr_vec2_rotate (lr_vec2_sub (corners_m[i], corners_m[0]), -lr_vec2_angle_rad (lr_vec2_sub (corners_m[1], corners_m[0])));
}

static double
true_turn_deg (const LrVec2 *corners_m,
               size_t        n,
               size_t        at)
{
  LrVec2 to_next = lr_vec2_sub (corners_m[(at + 1) % n], corners_m[at]);
  LrVec2 to_last = lr_vec2_sub (corners_m[(at + n - 1) % n], corners_m[at]);

  return atan2 (lr_vec2_cross (to_next, to_last), lr_vec2_dot (to_next, to_last)) / LR_DEG;
}

static size_t
random_measures (LrNetMeasure *measures,
                 const LrVec2 *corners_m,
                 size_t        n)
{
  size_t m = 0;

  for (size_t i = 0; i < n; i++)
    {
      double length_m = lr_vec2_distance (corners_m[i], corners_m[(i + 1) % n]), sd_m = 0.004 + 0.0002 * length_m;

      measures[m++] = length (i, (i + 1) % n, length_m + sd_m * random_normal (), sd_m);
      measures[m++] = angle (i, (i + 1) % n, (i + n - 1) % n, true_turn_deg (corners_m, n, i) + 0.3 * random_normal (), 0.3);
    }
  for (size_t i = 0; i < 2; i++)
    {
      double length_m = lr_vec2_distance (corners_m[i], corners_m[i + n / 2]), sd_m = 0.004 + 0.0002 * length_m;

      measures[m++] = length (i, i + n / 2, length_m + sd_m * random_normal (), sd_m);
    }
  return m;
}

/* The solved corners lie within the error that is told, and the misfit is what the measures above need make it: chi squared with
 * that many degrees, whose mean is the degrees and whose variance is twice that. Of 400 rooms the mean of misfit / freedom
 * strays by sqrt (2 / freedom / 400), and of the standardized distance likewise; five of these are allowed. */
static void
test_random_rooms (void)
{
  double misfit = 0.0, distance = 0.0;
  size_t n_big = 0, n_checked = 0;

  for (size_t room = 0; room < N_ROOMS; room++)
    {
      const size_t n = 4 + room % 5;
      LrVec2 corners_m[8];
      LrNetPoint points[8];
      LrNetMeasure measures[24];
      LrNetSolution solution;
      size_t m, size = 2 * n;
      double q, off_m;

      random_room (corners_m, n);
      m = random_measures (measures, corners_m, n);
      for (size_t i = 0; i < n; i++)
        points[i] = (LrNetPoint) { corners_m[i], false, false };
      hold (points);
      g_assert_true (lr_net_adjust (points, n, measures, m, &solution));
      g_assert_cmpuint (solution.freedom, ==, 5);
      misfit += solution.misfit / 5.0;

      off_m = points[2].at_m.x - corners_m[2].x;
      q = solution.covariance_m2[4 * size + 4];
      distance += off_m * off_m / q;
      for (size_t i = 0; i < m; i++, n_checked++)
        n_big += fabs (solution.checks[i].standardized) > 1.96;
      lr_net_clear (&solution);
    }
  assert_near (misfit / N_ROOMS, 1.0, 5.0 * sqrt (2.0 / 5.0 / N_ROOMS));
  assert_near (distance / N_ROOMS, 1.0, 5.0 * sqrt (2.0 / N_ROOMS));
  /* one in twenty of standard normal numbers passes 1.96; those of a room hang together, so twice the stray is doubled */
  assert_near ((double) n_big / (double) n_checked, 0.05, 0.015);
}

/* A tape misread by 20 cm in a room with diagonals is found, and how much by */
static void
test_misread_wall (void)
{
  size_t n_found = 0;

  for (size_t room = 0; room < N_ROOMS; room++)
    {
      LrVec2 corners_m[6];
      LrNetPoint points[6];
      LrNetMeasure measures[24];
      LrNetSolution solution;
      size_t suspects[4], m, wrong = 2 * (room % 6);

      random_room (corners_m, 6);
      m = random_measures (measures, corners_m, 6);
      measures[wrong].value += 0.2;
      for (size_t i = 0; i < 6; i++)
        points[i] = (LrNetPoint) { corners_m[i], false, false };
      hold (points);
      g_assert_true (lr_net_adjust (points, 6, measures, m, &solution));
      for (size_t i = lr_net_suspects (&solution, 3.29, suspects, 4); i-- > 0;)
        if (suspects[i] == wrong)
          {
            double sd_m = measures[wrong].sd / sqrt (solution.checks[wrong].redundancy);

            n_found++;
            g_assert_cmpfloat (fabs (solution.checks[wrong].error - 0.2), <, 5.0 * sd_m + 0.01);
          }
      lr_net_clear (&solution);
    }
  g_test_message ("found %zu of %d", n_found, N_ROOMS);
  g_assert_cmpuint (n_found, >, N_ROOMS * 9 / 10);
}

/* What settles it: in a rectangle with one long wall in doubt, either diagonal tells walls 0 and 2 apart; another tape of the
 * wall between them, which both leave alone, tells nothing. */
static void
test_settles (void)
{
  LrNetPoint points[] = { free_point (0.0, 0.0), free_point (5.0, 0.0), free_point (5.0, 4.0), free_point (0.0, 4.0) };
  const LrNetMeasure measures[] = { length (0, 1, 5.0, 0.005), length (1, 2, 4.0, 0.005), length (2, 3, 4.94, 0.005), length (3, 0, 4.0, 0.005),
                                    angle (0, 1, 3, 90.0, 0.3), angle (1, 2, 0, 90.0, 0.3), angle (2, 3, 1, 90.0, 0.3),
                                    angle (3, 0, 2, 90.0, 0.3) };
  const LrNetMeasure diagonal = length (0, 2, 1.0, 0.005), other = length (1, 3, 1.0, 0.005), wall = length (1, 2, 1.0, 0.005);
  const size_t suspects[] = { 0, 2 };
  LrNetSolution solution;
  double settles;

  hold (points);
  g_assert_true (lr_net_adjust (points, 4, measures, 8, &solution));
  settles = lr_net_settles (&solution, points, measures, suspects, 2, &diagonal);
  g_assert_cmpfloat (settles, >, 1.0);
  assert_near (lr_net_settles (&solution, points, measures, suspects, 2, &other), settles, 1e-6);
  g_assert_cmpfloat (lr_net_settles (&solution, points, measures, suspects, 2, &wall), <, 0.05 * settles);
  lr_net_clear (&solution);
}

/* Refusals */

static void
assert_refused (LrNetPoint         *points,
                size_t              n,
                const LrNetMeasure *measures,
                size_t              m)
{
  LrNetSolution solution = { .misfit = UNTOUCHED };
  LrVec2 last_m = points[n - 1].at_m;

  g_assert_false (lr_net_adjust (points, n, measures, m, &solution));
  g_assert_cmpfloat (solution.misfit, ==, UNTOUCHED);
  g_assert_true (points[n - 1].at_m.x == last_m.x || isnan (last_m.x));
}

static void
test_domain (void)
{
  const LrNetPoint fine[] = { { { 0.0, 0.0 }, true, true }, { { 3.0, 0.0 }, false, true }, { { 3.0, 4.0 }, false, false } };
  const LrNetMeasure measures[] = { length (0, 1, 3.0, 0.01), length (1, 2, 4.0, 0.01), length (2, 0, 5.0, 0.01) };
  LrNetPoint points[3];
  LrNetMeasure bad[3];
  LrNetSolution solution;

  memcpy (points, fine, sizeof points);
  g_assert_true (lr_net_adjust (points, 3, measures, 3, &solution)); /* as many as are needed: they fit */
  g_assert_cmpuint (solution.freedom, ==, 0);
  assert_near (solution.misfit, 0.0, 1e-12);
  g_assert_cmpuint (lr_net_suspects (&solution, 2.0, (size_t[1]) { 0 }, 1), ==, 0);
  lr_net_clear (&solution);

  assert_refused (points, 3, measures, 2); /* too few */
  for (size_t i = 0; i < G_N_ELEMENTS (not_positive); i++)
    {
      memcpy (bad, measures, sizeof bad);
      bad[1].value = not_positive[i];
      assert_refused (points, 3, bad, 3);
      memcpy (bad, measures, sizeof bad);
      bad[1].sd = not_positive[i];
      assert_refused (points, 3, bad, 3);
    }
  memcpy (bad, measures, sizeof bad);
  bad[2].to = 3; /* no such point */
  assert_refused (points, 3, bad, 3);
  bad[2] = length (1, 1, 4.0, 0.01);
  assert_refused (points, 3, bad, 3);
  bad[2] = angle (1, 1, 0, 90.0, 1.0);
  assert_refused (points, 3, bad, 3);
  bad[2] = length (1, 2, 4.1, 0.01); /* the third point may swing */
  assert_refused (points, 3, bad, 3);

  points[1].at_m = points[2].at_m; /* a wall of no length has no direction */
  assert_refused (points, 3, measures, 3);
  points[1].at_m = lr_vec2 (NAN, 0.0);
  assert_refused (points, 3, measures, 3);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/network/three-lengths", test_three_lengths);
  g_test_add_func ("/network/braced-quadrilateral", test_braced_quadrilateral);
  g_test_add_func ("/network/angle-sum", test_angle_sum);
  g_test_add_func ("/network/square-rectangle", test_square_rectangle);
  g_test_add_func ("/network/room-with-diagonals", test_room_with_diagonals);
  g_test_add_func ("/network/place-does-not-matter", test_place_does_not_matter);
  g_test_add_func ("/network/random-rooms", test_random_rooms);
  g_test_add_func ("/network/misread-wall", test_misread_wall);
  g_test_add_func ("/network/settles", test_settles);
  g_test_add_func ("/network/domain", test_domain);

  return g_test_run ();
}
