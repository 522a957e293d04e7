/* test-vec.c - points and directions
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "check.h"

typedef struct
{
  const char *name;
  double      angle_deg, wrapped_deg;
} WrapCase;

/* Source: closed form, multiples of 360 degrees */
static const WrapCase wrap_cases[] = {
  { "zero", 0.0, 0.0 },
  { "inside", -179.0, -179.0 },
  { "half-turn", 180.0, 180.0 },
  { "half-turn-back", -180.0, 180.0 },
  { "past-half", 181.0, -179.0 },
  { "turn", 360.0, 0.0 },
  { "many", 3.0 * 360.0 + 90.0, 90.0 },
  { "many-back", -5.0 * 360.0 - 90.0, -90.0 },
};

static void
test_wrap (gconstpointer data)
{
  const WrapCase *c = data;

  g_test_message ("closed form: multiples of 360 degrees");
  assert_near (lr_angle_wrap_rad (c->angle_deg * LR_DEG) / LR_DEG, c->wrapped_deg, 1e-9);
}

/* i × j = k and its cyclic followers; a quarter turn takes x to y */
static void
test_hand (void)
{
  LrVec3 i = lr_vec3 (1.0, 0.0, 0.0), j = lr_vec3 (0.0, 1.0, 0.0), k = lr_vec3 (0.0, 0.0, 1.0);
  LrVec2 x = lr_vec2 (1.0, 0.0), y = lr_vec2 (0.0, 1.0);

  g_test_message ("right-handed axes: i × j = k");
  g_assert_cmpfloat (lr_vec3_dot (lr_vec3_cross (i, j), k), ==, 1.0);
  g_assert_cmpfloat (lr_vec3_dot (lr_vec3_cross (j, k), i), ==, 1.0);
  g_assert_cmpfloat (lr_vec3_dot (lr_vec3_cross (k, i), j), ==, 1.0);
  g_assert_cmpfloat (lr_vec2_cross (x, y), ==, 1.0);
  assert_near_2 (lr_vec2_left (x), y, 1e-15);
  assert_near_2 (lr_vec2_rotate (x, 0.5 * LR_PI), y, 1e-15);
  assert_near_2 (lr_vec2_rotate (x, LR_PI / 6.0), lr_vec2 (sqrt (3.0) / 2.0, 0.5), 1e-15);
  g_assert_cmpfloat (lr_vec3_length (lr_vec3 (2.0, 3.0, 6.0)), ==, 7.0); /* 4 + 9 + 36 = 49 */
  g_assert_cmpfloat (lr_vec2_distance (lr_vec2 (1.0, 1.0), lr_vec2 (4.0, 5.0)), ==, 5.0);
}

/* A turn keeps lengths, and angles add */
static void
test_rotate (void)
{
  for (int i = 0; i < 1000; i++)
    {
      LrVec2 a = random_point (10.0);
      double angle_rad = g_test_rand_double_range (-20.0, 20.0);
      LrVec2 turned = lr_vec2_rotate (a, angle_rad);

      assert_near (lr_vec2_length (turned), lr_vec2_length (a), 1e-13);
      assert_near (lr_angle_wrap_rad (lr_vec2_angle_rad (turned) - lr_vec2_angle_rad (a) - angle_rad), 0.0, 1e-12);
      assert_near_2 (lr_vec2_polar (lr_vec2_angle_rad (a), lr_vec2_length (a)), a, 1e-13);
    }
}

static void
test_finite (void)
{
  g_assert_true (lr_vec2_is_finite (lr_vec2 (0.0, -1e300)));
  g_assert_false (lr_vec2_is_finite (lr_vec2 (NAN, 0.0)));
  g_assert_false (lr_vec2_is_finite (lr_vec2 (0.0, HUGE_VAL)));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/vec/wrap", wrap_cases, test_wrap);
  g_test_add_func ("/vec/hand", test_hand);
  g_test_add_func ("/vec/rotate", test_rotate);
  g_test_add_func ("/vec/finite", test_finite);

  return g_test_run ();
}
