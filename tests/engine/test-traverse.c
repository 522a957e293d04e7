/* test-traverse.c - a walk along the walls
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "traverse.h"

#include <glib.h>

#define NEAR_M 1e-9
#define LEFT (90.0 * LR_DEG)
#define RIGHT (-90.0 * LR_DEG)

static void
assert_place (LrVec2 at_m,
              double x_m,
              double y_m,
              double tolerance_m)
{
  g_assert_cmpfloat_with_epsilon (at_m.x, x_m, tolerance_m);
  g_assert_cmpfloat_with_epsilon (at_m.y, y_m, tolerance_m);
}

static void
test_rectangle (void)
{
  const LrTraverseLeg legs[] = { { 5.0, LEFT }, { 4.0, LEFT }, { 5.0, LEFT }, { 4.0, LEFT } };
  LrVec2 points_m[5];

  g_assert_true (lr_traverse_walk (legs, 4, points_m));
  assert_place (points_m[0], 0.0, 0.0, NEAR_M);
  assert_place (points_m[2], 5.0, 4.0, NEAR_M);
  g_assert_cmpfloat_with_epsilon (lr_traverse_gap_m (points_m, 4), 0.0, NEAR_M);
}

/* An L: 5 x 4 without a corner of 2 x 1 */
static void
test_outer_corner (void)
{
  const LrTraverseLeg legs[] = { { 5.0, LEFT }, { 3.0, LEFT }, { 2.0, RIGHT }, { 1.0, LEFT }, { 3.0, LEFT }, { 4.0, LEFT } };
  LrVec2 points_m[7];

  g_assert_true (lr_traverse_walk (legs, 6, points_m));
  assert_place (points_m[3], 3.0, 3.0, NEAR_M);
  assert_place (points_m[4], 3.0, 4.0, NEAR_M);
  g_assert_cmpfloat_with_epsilon (lr_traverse_gap_m (points_m, 6), 0.0, NEAR_M);
}

/* Three sides of a right-angled 3-4-5 triangle: turns of 90 and 180 - atan (3 / 4) degrees */
static void
test_triangle (void)
{
  const LrTraverseLeg legs[] = { { 4.0, LEFT }, { 3.0, LR_PI - atan2 (4.0, 3.0) }, { 5.0, 0.0 } };
  LrVec2 points_m[4];

  g_assert_true (lr_traverse_walk (legs, 3, points_m));
  g_assert_cmpfloat_with_epsilon (lr_traverse_gap_m (points_m, 3), 0.0, NEAR_M);
}

/* Rectangle with one side 4 cm short, perimeter 17.96. The end misses the start by .04 along +x; by the compass rule the
 * corner after 5 m moves by .04 * 5 / 17.96 = .0111359, after 9 m by .0200445, after 13.96 m by .0310913. */
static void
test_close (void)
{
  const LrTraverseLeg legs[] = { { 5.0, LEFT }, { 4.0, LEFT }, { 4.96, LEFT }, { 4.0, LEFT } };
  LrVec2 points_m[5];

  g_assert_true (lr_traverse_walk (legs, 4, points_m));
  g_assert_cmpfloat_with_epsilon (lr_traverse_gap_m (points_m, 4), 0.04, NEAR_M);
  lr_traverse_close (points_m, 4);
  assert_place (points_m[0], 0.0, 0.0, NEAR_M);
  assert_place (points_m[1], 5.0 - 0.0111359, 0.0, 1e-7);
  assert_place (points_m[2], 5.0 - 0.0200445, 4.0, 1e-7);
  assert_place (points_m[3], 0.04 - 0.0310913, 4.0, 1e-7);
  assert_place (points_m[4], 0.0, 0.0, NEAR_M);
}

static void
test_domain (void)
{
  const LrTraverseLeg bad[][1] = { { { 0.0, LEFT } }, { { -1.0, LEFT } }, { { NAN, LEFT } }, { { INFINITY, LEFT } }, { { 1.0, NAN } } };
  LrVec2 points_m[2] = { { 9.0, 9.0 }, { 9.0, 9.0 } };

  for (size_t i = 0; i < G_N_ELEMENTS (bad); i++)
    g_assert_false (lr_traverse_walk (bad[i], 1, points_m));
  assert_place (points_m[0], 9.0, 9.0, NEAR_M);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/traverse/rectangle", test_rectangle);
  g_test_add_func ("/traverse/outer-corner", test_outer_corner);
  g_test_add_func ("/traverse/triangle", test_triangle);
  g_test_add_func ("/traverse/close", test_close);
  g_test_add_func ("/traverse/domain", test_domain);

  return g_test_run ();
}
