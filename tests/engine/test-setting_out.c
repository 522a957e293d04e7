/* test-setting_out.c - a place on the floor by tape
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "setting_out.h"

#include "check.h"

typedef struct
{
  const char *name;
  double      a_m, b_m, w_m; /* in: tapes from (0, 0) and (w, 0) */
  double      x_m, y_m;      /* expected */
  double      tolerance_m;
  const char *source;
} MeetCase;

static const MeetCase meet_cases[] = {
  { "worked", 3.20, 3.10, 5.00, 2.563, 1.916, 5e-4, "x = (a^2 - b^2 + w^2) / 2w, y = sqrt (a^2 - x^2), by hand" },
  { "3-4-5", 3.0, 4.0, 5.0, 1.8, 2.4, 1e-12, "Euclid VI.8: height 12/5, foot 9/5" },
  { "5-12-13", 13.0, 5.0, 12.0, 12.0, 5.0, 1e-12, "Pythagorean triple: over the second point" },
  { "behind", 5.0, 13.0, 12.0, 0.0, 5.0, 1e-12, "Pythagorean triple: over the first point" },
};

static void
test_meet (gconstpointer data)
{
  const MeetCase *c = data;
  LrVec2 p_m = { 0.0, 0.0 }, q_m = { c->w_m, 0.0 }, point_m;

  g_test_message ("%s", c->source);
  g_assert_true (lr_tape_meet (p_m, q_m, c->a_m, c->b_m, 1, &point_m));
  assert_near_2 (point_m, lr_vec2 (c->x_m, c->y_m), c->tolerance_m);
  g_assert_true (lr_tape_meet (p_m, q_m, c->a_m, c->b_m, -1, &point_m));
  assert_near_2 (point_m, lr_vec2 (c->x_m, -c->y_m), c->tolerance_m);
  g_assert_true (lr_tape_meet (q_m, p_m, c->b_m, c->a_m, 1, &point_m));
  assert_near_2 (point_m, lr_vec2 (c->x_m, -c->y_m), c->tolerance_m);
}

/* What a centimetre of tape does: 1.6 cm across on both tapes, 1.3 cm along on opposite ones,
 * 5.9 cm near the base */
static void
test_errors (void)
{
  LrVec2 p_m = { 0.0, 0.0 }, q_m = { 5.0, 0.0 }, true_m, off_m;
  double a_m, b_m;

  g_test_message ("differentials of the two circles, by hand: dy = a da / y and dx = a da / w");
  g_assert_true (lr_tape_meet (p_m, q_m, 3.20, 3.10, 1, &true_m));
  g_assert_true (lr_tape_meet (p_m, q_m, 3.21, 3.11, 1, &off_m));
  assert_near (off_m.y - true_m.y, 0.016, 5e-4);
  g_assert_true (lr_tape_meet (p_m, q_m, 3.21, 3.09, 1, &off_m));
  assert_near (off_m.x - true_m.x, 0.013, 5e-4);

  /* The same place brought to 0.40 m from the base: tapes flatter than 150 degrees */
  a_m = hypot (true_m.x, 0.40);
  b_m = hypot (5.0 - true_m.x, 0.40);
  g_assert_true (lr_tape_meet (p_m, q_m, a_m + 0.01, b_m + 0.01, 1, &off_m));
  assert_near (off_m.y - 0.40, 0.059, 2e-3);
}

typedef struct
{
  const char *name;
  LrVec2      point_m; /* taped from (0, 0) and (4, 0) */
  double      crossing_deg;
} CrossingCase;

/* Source: closed form, angles in a half circle and in isosceles triangles */
static const CrossingCase crossing_cases[] = {
  { "half-circle", { 2.0, 2.0 }, 90.0 },
  { "half-circle-low", { 2.0 + 1.6, 1.2 }, 90.0 },
  { "equilateral", { 2.0, 3.4641016151377544 }, 60.0 },
  { "between", { 1.0, 0.0 }, 180.0 },
  { "in-line", { 7.0, 0.0 }, 0.0 },
  { "other-side", { 2.0, -2.0 }, 90.0 },
};

static void
test_crossing (gconstpointer data)
{
  const CrossingCase *c = data;
  LrTapePair tapes;

  g_test_message ("Thales: the angle in a half circle is right; equilateral triangle");
  g_assert_true (lr_tape_pair (lr_vec2 (0.0, 0.0), lr_vec2 (4.0, 0.0), c->point_m, &tapes));
  assert_near (tapes.crossing_rad / LR_DEG, c->crossing_deg, 1e-9);
}

static void
test_round_trip (void)
{
  for (int i = 0; i < 1000; i++)
    {
      LrVec2 p_m = random_point (5.0), q_m = random_point (5.0), point_m = random_point (5.0), back_m;
      double side = lr_vec2_cross (lr_vec2_sub (q_m, p_m), lr_vec2_sub (point_m, p_m));
      LrTapePair tapes;

      g_assert_true (lr_tape_pair (p_m, q_m, point_m, &tapes));
      if (fabs (side) < 1e-3 * lr_vec2_distance (p_m, q_m) || lr_vec2_distance (p_m, q_m) < 0.1)
        continue;
      g_assert_true (lr_tape_meet (p_m, q_m, tapes.from_p_m, tapes.from_q_m, side > 0.0 ? 1 : -1, &back_m));
      assert_near_2 (back_m, point_m, 1e-9);
    }
}

typedef struct
{
  const char *name;
  double      angle_deg; /* between the two lengths */
  double      sd_a_m, sd_b_m;
  double      major_m, minor_m, point_m; /* expected */
  const char *source;
} ErrorCase;

static const ErrorCase error_cases[] = {
  { "square", 90.0, 0.004, 0.004, 0.004, 0.004, 0.004 * 1.4142135623730951, "closed form: a circle; the mean error is s sqrt 2 / sin" },
  { "square-uneven", 90.0, 0.003, 0.004, 0.004, 0.003, 0.005, "closed form: half axes are the errors; 3-4-5" },
  { "flat", 30.0, 0.005, 0.005, 0.01366025403784439, 0.003660254037844386, 0.01414213562373095,
    "closed form: s / sqrt (1 -+ cos 30), s sqrt 2 / sin 30" },
  { "sharp", 150.0, 0.005, 0.005, 0.01366025403784439, 0.003660254037844386, 0.01414213562373095, "the same beyond a right angle" },
  { "sixty", 60.0, 0.006, 0.006, 0.008485281374238571, 0.004898979485566356, 0.009797958971132713,
    "closed form: s sqrt 2 and s sqrt (2 / 3); s sqrt 2 / sin 60" },
};

static void
test_fix_error (gconstpointer data)
{
  const ErrorCase *c = data;

  g_test_message ("%s", c->source);
  for (double turn_deg = 0.0; turn_deg < 360.0; turn_deg += 37.0)
    {
      LrVec2 a = lr_vec2_polar (turn_deg * LR_DEG, 1.0), b = lr_vec2_polar ((turn_deg + c->angle_deg) * LR_DEG, 1.0);
      LrFixError error, other;

      g_assert_true (lr_fix_error (a, c->sd_a_m, b, c->sd_b_m, &error));
      assert_near (error.major_m, c->major_m, 1e-12);
      assert_near (error.minor_m, c->minor_m, 1e-12);
      assert_near (error.point_m, c->point_m, 1e-12);
      g_assert_true (lr_fix_error (b, c->sd_b_m, lr_vec2_scale (a, -1.0), c->sd_a_m, &other));
      assert_near (other.major_m, c->major_m, 1e-12);
    }
}

/* The ellipse against tapes that are moved by their errors and meet elsewhere: sums of squares over both, to first order */
static void
test_fix_moves (void)
{
  g_test_message ("central differences of where the tapes meet, which does not use directions");
  for (int i = 0; i < 500; i++)
    {
      LrVec2 p_m = random_point (5.0), q_m = random_point (5.0), point_m = random_point (5.0), move[2], low_m, high_m;
      double sd_m[2] = { 0.004, 0.006 }, part = 1e-3, xx = 0.0, xy = 0.0, yy = 0.0, spread;
      int side = lr_vec2_cross (lr_vec2_sub (q_m, p_m), lr_vec2_sub (point_m, p_m)) > 0.0 ? 1 : -1;
      LrTapePair tapes;
      LrFixError error;

      g_assert_true (lr_tape_pair (p_m, q_m, point_m, &tapes));
      if (sin (tapes.crossing_rad) < 0.2 || fmin (tapes.from_p_m, tapes.from_q_m) < 0.3)
        continue;

      for (int k = 0; k < 2; k++)
        {
          double a_m = part * (k == 0 ? sd_m[0] : 0.0), b_m = part * (k == 1 ? sd_m[1] : 0.0);

          g_assert_true (lr_tape_meet (p_m, q_m, tapes.from_p_m - a_m, tapes.from_q_m - b_m, side, &low_m));
          g_assert_true (lr_tape_meet (p_m, q_m, tapes.from_p_m + a_m, tapes.from_q_m + b_m, side, &high_m));
          move[k] = lr_vec2_scale (lr_vec2_sub (high_m, low_m), 0.5 / part);
          xx += move[k].x * move[k].x;
          xy += move[k].x * move[k].y;
          yy += move[k].y * move[k].y;
        }

      g_assert_true (lr_fix_error (lr_vec2_scale (lr_vec2_sub (point_m, p_m), 1.0 / tapes.from_p_m), sd_m[0],
                                   lr_vec2_scale (lr_vec2_sub (point_m, q_m), 1.0 / tapes.from_q_m), sd_m[1], &error));
      assert_near (error.point_m, sqrt (xx + yy), 1e-7);
      assert_near (error.major_m * error.minor_m, fabs (lr_vec2_cross (move[0], move[1])), 1e-8);
      /* along the longer axis the variance is its square */
      spread = xx * cos (error.major_rad) * cos (error.major_rad) + yy * sin (error.major_rad) * sin (error.major_rad)
               + 2.0 * xy * sin (error.major_rad) * cos (error.major_rad);
      assert_near (sqrt (spread), error.major_m, 1e-7);
    }
}

static void
test_fix_domain (void)
{
  LrVec2 x = { 1.0, 0.0 }, y = { 0.0, 1.0 };
  LrFixError error = { .major_m = UNTOUCHED };

  g_assert_false (lr_fix_error (x, 0.004, x, 0.004, &error));
  g_assert_false (lr_fix_error (x, 0.004, lr_vec2 (-1.0, 0.0), 0.004, &error));
  g_assert_false (lr_fix_error (x, -0.004, y, 0.004, &error));
  g_assert_false (lr_fix_error (x, 0.004, y, NAN, &error));
  g_assert_false (lr_fix_error (lr_vec2 (NAN, 0.0), 0.004, y, 0.004, &error));
  g_assert_cmpfloat (error.major_m, ==, UNTOUCHED);
  g_assert_true (lr_fix_error (x, 0.0, y, 0.004, &error));
  assert_near (error.minor_m, 0.0, 1e-15);
}

static void
test_domain (void)
{
  LrVec2 p_m = { 0.0, 0.0 }, q_m = { 5.0, 0.0 }, point_m = { UNTOUCHED, 0.0 };
  LrTapePair tapes = { .from_p_m = UNTOUCHED };

  for (size_t i = 0; i < G_N_ELEMENTS (not_positive); i++)
    {
      g_assert_false (lr_tape_meet (p_m, q_m, not_positive[i], 3.0, 1, &point_m));
      g_assert_false (lr_tape_meet (p_m, q_m, 3.0, not_positive[i], 1, &point_m));
    }
  g_assert_false (lr_tape_meet (p_m, q_m, 2.0, 2.9, 1, &point_m));  /* too short to meet */
  g_assert_false (lr_tape_meet (p_m, q_m, 1.0, 6.5, 1, &point_m));  /* one inside the other */
  g_assert_false (lr_tape_meet (p_m, q_m, 6.5, 1.0, 1, &point_m));
  g_assert_false (lr_tape_meet (p_m, p_m, 3.0, 3.0, 1, &point_m));
  g_assert_false (lr_tape_meet (p_m, q_m, 3.0, 3.0, 0, &point_m));
  g_assert_false (lr_tape_meet (p_m, lr_vec2 (NAN, 0.0), 3.0, 3.0, 1, &point_m));
  g_assert_false (lr_tape_pair (p_m, p_m, q_m, &tapes));
  g_assert_false (lr_tape_pair (p_m, q_m, q_m, &tapes));
  g_assert_false (lr_tape_pair (p_m, q_m, p_m, &tapes));
  g_assert_false (lr_tape_pair (p_m, q_m, lr_vec2 (HUGE_VAL, 0.0), &tapes));
  g_assert_cmpfloat (point_m.x, ==, UNTOUCHED);
  g_assert_cmpfloat (tapes.from_p_m, ==, UNTOUCHED);

  g_assert_true (lr_tape_meet (p_m, q_m, 2.0, 3.0, 1, &point_m)); /* just meeting */
  assert_near_2 (point_m, lr_vec2 (2.0, 0.0), 1e-6);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/setting-out/meet", meet_cases, test_meet);
  add_rows ("/setting-out/crossing", crossing_cases, test_crossing);
  g_test_add_func ("/setting-out/errors", test_errors);
  g_test_add_func ("/setting-out/round-trip", test_round_trip);
  add_rows ("/setting-out/error", error_cases, test_fix_error);
  g_test_add_func ("/setting-out/error-moves", test_fix_moves);
  g_test_add_func ("/setting-out/error-domain", test_fix_domain);
  g_test_add_func ("/setting-out/domain", test_domain);

  return g_test_run ();
}
