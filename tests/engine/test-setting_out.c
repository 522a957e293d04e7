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

/* A room of 5 m by 4 m, a place at its lower wall: from the far corners the tapes cross near to
 * a right angle */
static void
test_corners (void)
{
  static const LrVec2 room_m[] = { { 0.0, 0.0 }, { 5.0, 0.0 }, { 5.0, 4.0 }, { 0.0, 4.0 } };
  static const LrVec2 low_m[] = { { 2.5, 0.3 } };
  static const LrVec2 side_m[] = { { 2.6, 2.0 } };
  static const LrVec2 both_m[] = { { 2.5, 2.0 }, { 2.4, 0.2 } };
  size_t p = 9, q = 9;

  g_test_message ("by hand, low: 166 degrees from the near wall's ends, 63 from a side's, 68 from the far wall's; "
                  "in the middle, 2.4 m from the right wall: 80 degrees from its ends, 104 from the others'");
  g_assert_true (lr_tape_corners (room_m, 4, low_m, 1, &p, &q));
  g_assert_cmpuint (p, ==, 2);
  g_assert_cmpuint (q, ==, 3);
  g_assert_true (lr_tape_corners (room_m, 4, side_m, 1, &p, &q));
  g_assert_cmpuint (p, ==, 1);
  g_assert_cmpuint (q, ==, 2);
  g_assert_true (lr_tape_corners (room_m, 4, both_m, 2, &p, &q));
  g_assert_cmpuint (p, ==, 2);
  g_assert_cmpuint (q, ==, 3);

  /* A place in a corner is taped from its neighbours, along two walls: a right angle */
  g_assert_true (lr_tape_corners (room_m, 4, &room_m[3], 1, &p, &q));
  g_assert_true (p == 0 && q == 2);

  p = q = 9;
  g_assert_false (lr_tape_corners (room_m, 1, low_m, 1, &p, &q));
  g_assert_false (lr_tape_corners (room_m, 0, low_m, 1, &p, &q));
  g_assert_false (lr_tape_corners (room_m, 4, low_m, 0, &p, &q));
  g_assert_false (lr_tape_corners (room_m, 2, &(LrVec2) { 2.0, 0.0 }, 1, &p, &q)); /* on the line through both */
  g_assert_cmpuint (p, ==, 9);
  g_assert_cmpuint (q, ==, 9);
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
  g_test_add_func ("/setting-out/corners", test_corners);
  g_test_add_func ("/setting-out/domain", test_domain);

  return g_test_run ();
}
