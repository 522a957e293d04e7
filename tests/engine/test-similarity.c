/* test-similarity.c - from a picture to the floor
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Expected values: closed form, from triangles whose sides are whole numbers.
 */

#include "check.h"

#include "similarity.h"

typedef struct
{
  const char *name;
  LrVec2      p, q;            /* of the picture */
  LrVec2      p_m, q_m;        /* on the floor */
  double      scale, turn_deg; /* expected */
  LrVec2      origin_m;
  const char *source;
} PairsCase;

static const PairsCase pairs_cases[] = {
  { "same", { 0, 0 }, { 1, 0 }, { 0, 0 }, { 1, 0 }, 1.0, 0.0, { 0, 0 }, "the identity" },
  { "sized", { 100, 50 }, { 500, 50 }, { 1, 0.5 }, { 5, 0.5 }, 0.01, 0.0, { 0, 0 }, "400 px are 4 m" },
  { "moved", { 100, 50 }, { 500, 50 }, { 3, 2 }, { 7, 2 }, 0.01, 0.0, { 2, 1.5 }, "the same, 2 m right and 1.5 m up" },
  { "quarter", { 0, 0 }, { 200, 0 }, { 1, 1 }, { 1, 5 }, 0.02, 90.0, { 1, 1 }, "right becomes up" },
  { "half", { 0, 0 }, { 0, 10 }, { 0, 0 }, { 0, -5 }, 0.5, 180.0, { 0, 0 }, "up becomes down" },
  { "3-4-5", { 0, 0 }, { 300, 400 }, { 2, 3 }, { 7, 3 }, 0.01, -53.13010235415598, { 2, 3 }, "atan (4/3) = 53.130 102 354°; 500 px are 5 m" },
  { "5-12-13", { 10, 0 }, { 10, 26 }, { 0, 0 }, { 5, 12 }, 0.5, -22.61986494804043, { -4.615384615384615, 1.923076923076923 },
    "up turns by atan (5/12) = 22.619 864 948° clockwise; the origin is 5 m from p, at (-12, 5) / 13 of it" },
};

static void
test_pairs (gconstpointer data)
{
  const PairsCase *c = data;
  LrSimilarity found;

  g_test_message ("closed form: %s", c->source);
  g_assert_true (lr_similarity_from_pairs (c->p, c->q, c->p_m, c->q_m, &found));
  assert_near (found.scale, c->scale, 1e-12);
  assert_near (fabs (found.turn_rad) / LR_DEG, fabs (c->turn_deg), 1e-9);
  assert_near (lr_angle_wrap_rad (found.turn_rad - c->turn_deg * LR_DEG), 0.0, 1e-9);
  assert_near_2 (found.origin_m, c->origin_m, 1e-12);
}

typedef struct
{
  const char *name;
  LrVec2      direction;
  double      turn_deg; /* expected */
} StraightenCase;

/* Closed form: to the nearest multiple of a quarter turn */
static const StraightenCase straighten_cases[] = {
  { "level", { 5, 0 }, 0.0 },
  { "upright", { 0, 2 }, 0.0 },
  { "left", { -3, 0 }, 0.0 },
  { "down", { 0, -1 }, 0.0 },
  { "rises", { 12, 5 }, -22.61986494804043 },
  { "steep", { 3, 4 }, 36.86989764584402 },
  { "falls", { 12, -5 }, 22.61986494804043 },
  { "to-the-left", { -12, 5 }, 22.61986494804043 },
};

static void
test_straighten (gconstpointer data)
{
  const StraightenCase *c = data;

  assert_near (lr_straighten_rad (c->direction) / LR_DEG, c->turn_deg, 1e-9);
}

/* A picture that lies at 1 cm to the pixel; its points (100, 100) and (500, 400) are 500 px apart on a slant of 3 to 4 */
static void
test_scaled (void)
{
  const LrSimilarity before = { 0.01, 0.0, { 2.0, 1.0 } };
  LrVec2 p = lr_vec2 (100.0, 100.0), q = lr_vec2 (500.0, 400.0);
  LrSimilarity after;

  g_test_message ("closed form: 500 px are 8 m, so 16 mm to the pixel; p stays at (3, 2), q lies 8 m on, along (4, 3) / 5 or level");
  g_assert_true (lr_similarity_scaled (&before, p, q, 8.0, false, &after));
  assert_near (after.scale, 0.016, 1e-12);
  assert_near (after.turn_rad, 0.0, 1e-12);
  assert_near_2 (lr_similarity_apply (&after, p), lr_vec2 (3.0, 2.0), 1e-12);
  assert_near_2 (lr_similarity_apply (&after, q), lr_vec2 (3.0 + 6.4, 2.0 + 4.8), 1e-12);

  g_assert_true (lr_similarity_scaled (&before, p, q, 8.0, true, &after));
  assert_near (after.turn_rad / LR_DEG, -36.86989764584402, 1e-9);
  assert_near_2 (lr_similarity_apply (&after, p), lr_vec2 (3.0, 2.0), 1e-12);
  assert_near_2 (lr_similarity_apply (&after, q), lr_vec2 (11.0, 2.0), 1e-12);

  /* upright is nearer to a line that runs at 3 to the right and 4 up */
  g_assert_true (lr_similarity_scaled (&before, lr_vec2 (0.0, 0.0), lr_vec2 (300.0, 400.0), 5.0, true, &after));
  assert_near_2 (lr_similarity_apply (&after, lr_vec2 (300.0, 400.0)), lr_vec2 (2.0, 6.0), 1e-12);
}

/* A quarter turn about (1, 1) takes (3, 1) to (1, 3) */
static void
test_turned (void)
{
  const LrSimilarity before = { 0.5, 0.1, { 3.0, 1.0 } };
  LrSimilarity after = lr_similarity_turned (&before, lr_vec2 (1.0, 1.0), 0.5 * LR_PI);

  assert_near_2 (after.origin_m, lr_vec2 (1.0, 3.0), 1e-12);
  assert_near (after.turn_rad, 0.1 + 0.5 * LR_PI, 1e-12);
  g_assert_cmpfloat (after.scale, ==, 0.5);
}

/* There and back; every length grows by the scale */
static void
test_round_trip (void)
{
  for (int i = 0; i < 1000; i++)
    {
      LrVec2 p = random_point (4000.0), q = random_point (4000.0);
      LrSimilarity s = { g_test_rand_double_range (1e-4, 0.1), g_test_rand_double_range (-LR_PI, LR_PI), random_point (50.0) }, again;
      LrVec2 p_m = lr_similarity_apply (&s, p), q_m = lr_similarity_apply (&s, q);

      assert_near_2 (lr_similarity_invert (&s, p_m), p, 1e-6);
      assert_near (lr_vec2_distance (p_m, q_m), s.scale * lr_vec2_distance (p, q), 1e-9);
      if (lr_vec2_distance (p, q) < 1.0)
        continue;
      g_assert_true (lr_similarity_from_pairs (p, q, p_m, q_m, &again));
      assert_within (again.scale, s.scale, 1e-9);
      assert_near_2 (lr_similarity_apply (&again, q), q_m, 1e-9);
    }
}

static void
test_refused (void)
{
  const LrSimilarity before = { 0.01, 0.0, { 0.0, 0.0 } };
  LrVec2 p = lr_vec2 (1.0, 1.0), q = lr_vec2 (5.0, 1.0);
  LrSimilarity untouched = { UNTOUCHED, UNTOUCHED, { UNTOUCHED, UNTOUCHED } };

  for (size_t i = 0; i < G_N_ELEMENTS (not_positive); i++)
    g_assert_false (lr_similarity_scaled (&before, p, q, not_positive[i], false, &untouched));
  g_assert_false (lr_similarity_scaled (&before, p, p, 1.0, true, &untouched));
  g_assert_false (lr_similarity_from_pairs (p, q, p, p, &untouched));
  g_assert_false (lr_similarity_from_pairs (p, lr_vec2 (NAN, 0.0), p, q, &untouched));
  g_assert_false (lr_similarity_from_pairs (p, q, lr_vec2 (HUGE_VAL, 0.0), q, &untouched));
  g_assert_cmpfloat (untouched.scale, ==, UNTOUCHED);
  g_assert_cmpfloat (untouched.turn_rad, ==, UNTOUCHED);
  g_assert_cmpfloat (untouched.origin_m.x, ==, UNTOUCHED);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/similarity/pairs", pairs_cases, test_pairs);
  add_rows ("/similarity/straighten", straighten_cases, test_straighten);
  g_test_add_func ("/similarity/scaled", test_scaled);
  g_test_add_func ("/similarity/turned", test_turned);
  g_test_add_func ("/similarity/round-trip", test_round_trip);
  g_test_add_func ("/similarity/refused", test_refused);

  return g_test_run ();
}
