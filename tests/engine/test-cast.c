/* test-cast.c - where a shadow falls, how dark it is and how soft
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Against closed forms: similar triangles, the shadow of a ball from a point, an area by its sides, and parts of a lamp counted one by one.
 */

#include "cast.h"

#include "check.h"

static LrEmitter
panel (LrVec3 at_m,
       double width_m,
       double height_m)
{
  return (LrEmitter) { .shape = LR_EMITTER_RECTANGLE, .at_m = at_m, .axis = { -1.0, 0.0, 0.0 }, .right = { 0.0, 1.0, 0.0 }, .up = { 0.0, 0.0, 1.0 },
                       .width_m = width_m, .height_m = height_m, .candela = 100.0, .lobe = { .power = 1.0 } };
}

/* A lamp 4 m from the wall x = 0 and a point 1 m from it: the shadow is 4/3 as far off the foot of the lamp as the point (similar triangles) */
static void
test_point (void)
{
  LrVec3 at_m = { 9.0, 9.0, 9.0 };

  g_assert_true (lr_cast_point (lr_vec3 (4.0, 0.0, 2.0), lr_vec3 (1.0, 0.9, 1.4), lr_vec3 (0.0, 0.0, 0.0), lr_vec3 (1.0, 0.0, 0.0), &at_m));
  assert_near (at_m.x, 0.0, 1e-12);
  assert_near (at_m.y, 0.9 * 4.0 / 3.0, 1e-12);
  assert_near (at_m.z, 2.0 - 0.6 * 4.0 / 3.0, 1e-12);
  g_assert_false (lr_cast_point (lr_vec3 (4.0, 0.0, 2.0), lr_vec3 (4.5, 0.9, 1.4), lr_vec3 (0.0, 0.0, 0.0), lr_vec3 (1.0, 0.0, 0.0), &at_m));
  g_assert_false (lr_cast_point (lr_vec3 (4.0, 0.0, 2.0), lr_vec3 (-1.0, 0.0, 2.0), lr_vec3 (0.0, 0.0, 0.0), lr_vec3 (1.0, 0.0, 0.0), &at_m));
}

/* Size of the lamp times the way behind over the way before (similar triangles); of a lamp that is 0.6 by 0.2 m the sharper: 0.2 · 1 / 3 */
static void
test_half_shadow (void)
{
  LrEmitter lamp = panel (lr_vec3 (4.0, 0.0, 1.5), 0.6, 0.2);
  double width_m = NAN;

  g_assert_true (lr_half_shadow_m (&lamp, 0.0, lr_vec3 (1.0, 0.0, 1.5), lr_vec3 (0.0, 0.0, 0.0), lr_vec3 (1.0, 0.0, 0.0), &width_m));
  assert_near (width_m, 0.2 / 3.0, 1e-12);

  lamp.shape = LR_EMITTER_POINT;
  g_assert_true (lr_half_shadow_m (&lamp, 0.1, lr_vec3 (1.0, 0.0, 1.5), lr_vec3 (0.0, 0.0, 0.0), lr_vec3 (1.0, 0.0, 0.0), &width_m));
  assert_near (width_m, 0.1 / 3.0, 1e-12);
  g_assert_false (lr_half_shadow_m (&lamp, 0.1, lr_vec3 (5.0, 0.0, 1.5), lr_vec3 (0.0, 0.0, 0.0), lr_vec3 (1.0, 0.0, 0.0), &width_m));
}

static double
covered_from (const LrEmitter *lamp,
              double           size_m,
              LrVec3           from_m,
              const LrVolume  *shapes,
              size_t           n)
{
  LrSilhouette silhouettes[LR_COVER_MAX];
  LrLampView view;
  size_t k = 0;

  g_assert_true (lr_lamp_view (lamp, size_m, from_m, &view));
  for (size_t i = 0; i < n; i++)
    k += lr_silhouette (&view.projection, &shapes[i], &silhouettes[k]);
  return lr_lamp_covered (&view, silhouettes, k);
}

/* From a near-point lamp 4 m off, a ball of radius r half-way, square to the wall: its shadow's radius is d tan (asin (r / a)), with a = 2 m
 * to the ball and d = 4 m to the wall (closed form) */
static void
test_ball (void)
{
  const double radius_m = 0.3, edge_m = 4.0 * tan (asin (radius_m / 2.0));
  LrEmitter lamp = { .shape = LR_EMITTER_POINT, .at_m = { 4.0, 0.0, 1.5 }, .axis = { -1.0, 0.0, 0.0 }, .candela = 1.0 };
  LrVolume ball;

  lr_volume_ellipsoid (&ball, lr_vec3 (2.0, 0.0, 1.5), lr_vec3 (radius_m, 0.0, 0.0), lr_vec3 (0.0, radius_m, 0.0), lr_vec3 (0.0, 0.0, radius_m));
  for (int i = 0; i < 8; i++)
    {
      double a = i * LR_PI / 4.0 + 0.1;

      assert_near (covered_from (&lamp, 0.001, lr_vec3 (0.0, 0.98 * edge_m * cos (a), 1.5 + 0.98 * edge_m * sin (a)), &ball, 1), 1.0, 1e-9);
      assert_near (covered_from (&lamp, 0.001, lr_vec3 (0.0, 1.02 * edge_m * cos (a), 1.5 + 1.02 * edge_m * sin (a)), &ball, 1), 0.0, 1e-9);
    }
}

/* An upright edge half-way between a panel 0.8 m wide and the wall: across the half-shadow, 0.8 m wide, the light falls off evenly
 * (similar triangles) */
static void
test_edge (void)
{
  LrEmitter lamp = panel (lr_vec3 (4.0, 0.0, 1.5), 0.8, 0.5);
  LrOutline base = lr_outline_box (lr_vec2 (2.0, 5.0), 0.001, 10.0, 0.0);
  LrVolume board;

  lr_volume_prism (&board, &base, 0.0, 3.0);
  for (int i = -5; i <= 5; i++)
    {
      double y = 0.1 * i;

      assert_near (covered_from (&lamp, 0.0, lr_vec3 (0.0, y, 1.5), &board, 1), fmin (1.0, fmax (0.0, 0.5 + y / 0.8)), 2e-3);
    }
}

/* A bar 24 mm thick, level, half-way before a panel 0.8 m high: seen from the wall it covers 48 mm of it, 0.06 (similar triangles). It is
 * told as exactly when the same bar stands there twice, one over the other */
static void
test_thin (void)
{
  LrEmitter lamp = panel (lr_vec3 (4.0, 0.0, 1.5), 0.8, 0.8);
  LrVolume bars[2];

  lr_volume_bar (&bars[0], lr_vec3 (2.0, -3.0, 1.5), lr_vec3 (2.0, 3.0, 1.5), 0.012);
  lr_volume_bar (&bars[1], lr_vec3 (2.0, -3.0, 1.6), lr_vec3 (2.0, 3.0, 1.6), 0.012);
  assert_near (covered_from (&lamp, 0.0, lr_vec3 (0.0, 0.0, 1.5), bars, 1), 0.06, 2e-3);
  assert_near (covered_from (&lamp, 0.0, lr_vec3 (0.0, 0.0, 1.5), bars, 2), 0.12, 4e-3);
}

/* Two balls that overlap, against the lamp in 400 by 400 parts, each looked at along its own ray */
static void
test_overlap (void)
{
  LrEmitter lamp = panel (lr_vec3 (4.0, 0.0, 1.5), 0.9, 0.7);
  LrVec3 from_m = { 0.0, 0.35, 1.2 };
  LrVolume balls[2];
  int n_hidden = 0;

  lr_volume_ellipsoid (&balls[0], lr_vec3 (2.0, 0.1, 1.4), lr_vec3 (0.1, 0, 0), lr_vec3 (0, 0.12, 0), lr_vec3 (0, 0, 0.15));
  lr_volume_ellipsoid (&balls[1], lr_vec3 (2.2, 0.2, 1.3), lr_vec3 (0.1, 0, 0), lr_vec3 (0, 0.15, 0), lr_vec3 (0, 0, 0.1));
  for (int i = 0; i < 400 * 400; i++)
    {
      LrVec3 part_m = { 4.0, ((i % 400 + 0.5) / 400.0 - 0.5) * 0.9, 1.5 + ((i / 400 + 0.5) / 400.0 - 0.5) * 0.7 };
      LrVec3 way = lr_vec3_sub (part_m, from_m);
      double enter_m;

      way = lr_vec3_scale (way, 1.0 / lr_vec3_length (way));
      n_hidden += lr_volume_ray (&balls[0], from_m, way, &enter_m) || lr_volume_ray (&balls[1], from_m, way, &enter_m);
    }
  assert_near (covered_from (&lamp, 0.0, from_m, balls, 2), n_hidden / 160000.0, 0.006);
}

/* Behind a panel, and in its plane, nothing of it is seen */
static void
test_domain (void)
{
  LrEmitter lamp = panel (lr_vec3 (4.0, 0.0, 1.5), 0.8, 0.8);
  LrLampView view;

  g_assert_false (lr_lamp_view (&lamp, 0.0, lr_vec3 (5.0, 0.0, 1.5), &view));
  g_assert_false (lr_lamp_view (&lamp, 0.0, lr_vec3 (4.0, 2.0, 1.5), &view));
  g_assert_false (lr_lamp_view (&lamp, 0.0, lr_vec3 (NAN, 2.0, 1.5), &view));
  lamp.shape = LR_EMITTER_POINT;
  g_assert_false (lr_lamp_view (&lamp, 0.0, lr_vec3 (0.0, 0.0, 1.5), &view));
  g_assert_false (lr_lamp_view (&lamp, 0.1, lamp.at_m, &view));
}

/* A box 0.2 by 2 by 0.2 m is met within its sides, not in all of the ball round it */
static void
test_hull (void)
{
  LrVec3 corner_m[8];
  LrVolume box;
  double enter_m = NAN;

  for (int i = 0; i < 8; i++)
    corner_m[i] = lr_vec3 (2.0 + (i & 1 ? 0.1 : -0.1), i & 2 ? 1.0 : -1.0, 1.5 + (i & 4 ? 0.1 : -0.1));
  lr_volume_hull (&box, corner_m, 8);
  g_assert_true (lr_volume_is_met (&box, lr_vec3 (0.0, 0.0, 1.5), lr_vec3 (1.0, 0.0, 0.0), &enter_m));
  assert_near (enter_m, 2.0, 1e-9);
  g_assert_false (lr_volume_is_met (&box, lr_vec3 (0.0, 0.0, 1.5), lr_vec3 (-1.0, 0.0, 0.0), &enter_m)); /* it is behind */
  g_assert_true (lr_volume_is_met (&box, lr_vec3 (0.0, 0.99, 1.59), lr_vec3 (1.0, 0.0, 0.0), &enter_m));
  g_assert_false (lr_volume_is_met (&box, lr_vec3 (0.0, 0.0, 1.61), lr_vec3 (1.0, 0.0, 0.0), &enter_m));
  g_assert_false (lr_volume_is_met (&box, lr_vec3 (0.0, 1.01, 1.5), lr_vec3 (1.0, 0.0, 0.0), &enter_m));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cast/point", test_point);
  g_test_add_func ("/cast/half-shadow", test_half_shadow);
  g_test_add_func ("/cast/ball", test_ball);
  g_test_add_func ("/cast/edge", test_edge);
  g_test_add_func ("/cast/thin", test_thin);
  g_test_add_func ("/cast/overlap", test_overlap);
  g_test_add_func ("/cast/domain", test_domain);
  g_test_add_func ("/cast/hull", test_hull);
  return g_test_run ();
}
