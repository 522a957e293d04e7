/* test-stability.c - what keeps a stand upright
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "check.h"
#include "stability.h"

#define RADIUS_M 0.5

typedef struct
{
  const char *name;
  double      bag_kg, bag_at_m;
  double      gap_kg_m, gap_factor, leg_kg_m, leg_factor; /* expected */
} BoomCase;

/* A stand of 4 kg, feet .5 m out, a boom of 1.5 kg with its middle at .2 m and 3 kg at its end, 1.2 m out. Source: sums of moments
 * by hand, over a gap (.25 m) and over a leg (.5 m) */
static const BoomCase boom_cases[] = {
  { "bare", 0.0, 0.0, -1.775, 0.377, 0.350, 1.167 },
  { "counterweight", 5.0, -0.6, 2.475, 1.868, 5.850, 3.786 },
  { "bag-at-the-post", 6.8, 0.0, -0.075, 0.974, 3.750, 2.786 },
};

static void
test_boom (gconstpointer data)
{
  const BoomCase *c = data;
  const LrStandMass masses[] = { { 4.0, 0.0 }, { 3.0, 1.2 }, { 1.5, 0.2 }, { c->bag_kg, c->bag_at_m } };
  LrStability gap, leg;

  /* the back far away: the sums of the table are those to the front */
  g_assert_true (lr_stand_stability (masses, 4, 0.5 * RADIUS_M, 9.0, &gap));
  g_assert_true (lr_stand_stability (masses, 4, RADIUS_M, 9.0, &leg));
  assert_near (gap.moment_kg_m, c->gap_kg_m, 1e-3);
  assert_near (gap.factor, c->gap_factor, 1e-3);
  assert_near (leg.moment_kg_m, c->leg_kg_m, 1e-3);
  assert_near (leg.factor, c->leg_factor, 1e-3);
}

/* With the counterweight 2.475 kg m hold it: 16.18 N at 1.5 m. A straight stand of 4 kg with 3 kg on it: 8.58 N at 2 m. By hand. */
static void
test_push (void)
{
  const LrStandMass straight[] = { { 4.0, 0.0 }, { 3.0, 0.0 } };
  LrStability stability;
  double push_n = NAN;

  g_assert_true (lr_stand_push_n (2.475, 1.5, &push_n));
  assert_near (push_n, 16.18, 5e-3);
  g_assert_true (lr_stand_stability (straight, 2, 0.25, 0.25, &stability));
  g_assert_true (stability.factor == HUGE_VAL);
  g_assert_true (lr_stand_push_n (stability.moment_kg_m, 2.0, &push_n));
  assert_near (push_n, 8.58, 5e-3);
  g_assert_true (lr_stand_push_n (-1.0, 2.0, &push_n));
  g_assert_cmpfloat (push_n, ==, 0.0);
}

/* A stand of 5 kg with a pole of .8 kg and a microphone of .35 kg, feet .5 m out, pole from .55 m behind to 1.79 m ahead: 1.50, and with
 * a bag of 7 kg 3.60: sums of moments by hand */
static void
test_pole (void)
{
  const LrStandMass pole[] = { { 5.0, 0.0 }, { 0.8, 0.619 }, { 0.35, 1.788 }, { 7.0, 0.0 } };
  LrStability stability;

  g_assert_true (lr_stand_stability (pole, 3, 0.25, 0.25, &stability));
  assert_near (stability.factor, 1.50, 0.005);
  g_assert_true (lr_stand_stability (pole, 4, 0.25, 0.25, &stability));
  assert_near (stability.factor, 3.60, 0.005);
}

/* Too much behind the post tips it backwards */
static void
test_counterweight (void)
{
  const LrStandMass masses[] = { { 4.0, 0.0 }, { 1.0, 1.0 }, { 6.0, -0.8 } };
  LrStability stability;

  g_assert_true (lr_stand_stability (masses, 3, 0.25, 0.25, &stability));
  /* backwards: 4 x .25 + 1 x 1.25 hold, 6 x .55 tip */
  assert_near (stability.factor, 2.25 / 3.3, 1e-12);
  assert_near (stability.moment_kg_m, -1.05, 1e-12);
}

/* With the bag that is told the factor or the push is met, with a little less it is not */
static void
test_bag (void)
{
  const LrStandMass boom[] = { { 4.0, 0.0 }, { 3.0, 1.2 }, { 1.5, 0.2 } };
  double bag_kg = NAN, less_kg = NAN;
  LrStability stability;

  g_assert_true (lr_stand_bag_kg (boom, 3, 0.25, 0.25, 2.0, 0.0, 1.5, &bag_kg));
  for (int i = 0; i < 2; i++)
    {
      const LrStandMass bagged[] = { boom[0], boom[1], boom[2], { bag_kg * (i == 0 ? 1.0001 : 0.999), 0.0 } };

      g_assert_true (lr_stand_stability (bagged, 4, 0.25, 0.25, &stability));
      g_assert_cmpint (stability.factor >= 2.0, ==, i == 0);
    }

  /* by hand: 20 N at 2 m are 4.079 kg m; 7 kg at .25 m hold 1.75; 2.329 / .25 = 9.32 kg */
  g_assert_true (lr_stand_bag_kg ((LrStandMass[]) { { 7.0, 0.0 } }, 1, 0.25, 0.25, 2.0, 20.0, 2.0, &bag_kg));
  assert_near (bag_kg, 9.315, 0.005);
  g_assert_true (lr_stand_bag_kg ((LrStandMass[]) { { 70.0, 0.0 } }, 1, 0.25, 0.25, 2.0, 20.0, 2.0, &less_kg));
  g_assert_cmpfloat (less_kg, ==, 0.0);
}

/* Least signed distance of the weight's plumb line to the three lines between the feet, the arm at any turn: never less than over a gap,
 * never more than over a leg. Brute force over the turns, from the feet as points */
static void
test_all_turns (void)
{
  LrVec2 feet[3];
  double least_m = HUGE_VAL, most_m = 0.0;

  for (int i = 0; i < 3; i++)
    feet[i] = lr_vec2_polar (i * 120.0 * LR_DEG, RADIUS_M);
  for (int turn = 0; turn < 720; turn++)
    {
      LrVec2 way = lr_vec2_polar (0.5 * turn * LR_DEG, 1.0);
      double reach_m = HUGE_VAL; /* how far out the plumb line may go along the arm */

      for (int i = 0; i < 3; i++)
        {
          LrVec2 outward = lr_vec2_polar (lr_vec2_angle_rad (lr_vec2_add (feet[i], feet[(i + 1) % 3])), 1.0);
          double toward = lr_vec2_dot (outward, way);

          if (toward > 1e-9)
            reach_m = fmin (reach_m, lr_vec2_dot (outward, feet[i]) / toward);
        }
      least_m = fmin (least_m, reach_m);
      most_m = fmax (most_m, reach_m);
    }
  assert_near (least_m, LR_STAND_GAP_SHARE * RADIUS_M, 1e-9);
  assert_near (most_m, RADIUS_M, 1e-9);
}

static void
test_domain (void)
{
  const LrStandMass good = { 1.0, 0.0 };
  LrStability out = { UNTOUCHED, UNTOUCHED };
  double number = UNTOUCHED;

  for (size_t i = 0; i < G_N_ELEMENTS (not_positive); i++)
    {
      double bad = not_positive[i];

      g_assert_false (lr_stand_stability (&good, 1, bad, 0.2, &out));
      g_assert_false (lr_stand_stability (&good, 1, 0.2, bad, &out));
      g_assert_false (lr_stand_push_n (1.0, bad, &number));
      g_assert_false (lr_stand_bag_kg (&good, 1, 0.2, 0.2, 2.0, 10.0, bad, &number));
    }
  g_assert_false (lr_stand_stability ((LrStandMass[]) { { -1.0, 0.0 } }, 1, 0.2, 0.2, &out));
  g_assert_false (lr_stand_stability ((LrStandMass[]) { { 1.0, NAN } }, 1, 0.2, 0.2, &out));
  g_assert_false (lr_stand_push_n (NAN, 1.0, &number));
  g_assert_cmpfloat (out.factor, ==, UNTOUCHED);
  g_assert_cmpfloat (number, ==, UNTOUCHED);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/stability/boom", boom_cases, test_boom);
  g_test_add_func ("/stability/push", test_push);
  g_test_add_func ("/stability/pole", test_pole);
  g_test_add_func ("/stability/counterweight", test_counterweight);
  g_test_add_func ("/stability/bag", test_bag);
  g_test_add_func ("/stability/all-turns", test_all_turns);
  g_test_add_func ("/stability/domain", test_domain);

  return g_test_run ();
}
