/* test-beam.c - parallel light through an opening of a room's wall, and what it falls on
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "check.h"

#include "beam.h"
#include "sun.h"

static const LrVec2 room_m[] = { { 0.0, 0.0 }, { 5.0, 0.0 }, { 5.0, 4.0 }, { 0.0, 4.0 } };

static void
aim (double         altitude_deg,
     double         azimuth_deg,
     LrVec2        *direction,
     LrBeamHeights *heights)
{
  LrVec3 way = lr_sun_way (altitude_deg * LR_DEG, azimuth_deg * LR_DEG, 0.0);
  double flat = lr_vec2_length (lr_vec3_flat (way));

  *direction = lr_vec2_scale (lr_vec3_flat (way), -1.0 / flat);
  *heights = (LrBeamHeights) { 0.9, 2.1, way.z / flat };
}

static double
area_of (const LrVec3 *corner_m,
         size_t        n)
{
  LrVec3 sum = { 0.0, 0.0, 0.0 };

  for (size_t i = 0; i < n; i++)
    sum = lr_vec3_add (sum, lr_vec3_cross (corner_m[i], corner_m[(i + 1) % n]));
  return 0.5 * lr_vec3_length (sum);
}

/* Opening in a south wall, x 1.0 to 2.2; corners worked by hand as for the whole patch: at 15 degrees and 150 the floor gets the triangle
 * (0, 2.909) (0.521, 2.909) (0, 3.811), .2347 m2, and the rest falls on the west wall */
static void
test_corner (void)
{
  LrBeamStrip strips[LR_BEAM_STRIPS];
  LrBeamHeights heights;
  LrVec2 direction, floor_m[LR_BEAM_CORNERS];
  LrVec3 wall_m[LR_BEAM_CORNERS];
  double floor_m2 = 0.0, flux = 0.0, in;
  size_t n_strips;

  aim (15.0, 150.0, &direction, &heights);
  n_strips = lr_beam_strips (room_m, 4, lr_vec2 (1.0, 0.0), lr_vec2 (2.2, 0.0), direction, strips);
  for (size_t i = 0; i < n_strips; i++)
    {
      size_t n = lr_beam_on_level (&strips[i], &heights, 0.0, floor_m);
      double across;

      floor_m2 += n > 0 ? fabs (lr_polygon_area_m2 (floor_m, n)) : 0.0;
      n = lr_beam_on_wall (&strips[i], &heights, wall_m);
      across = strips[i].edge == 3 ? -direction.x : direction.y;
      flux += n > 0 ? area_of (wall_m, n) * across * cos (15.0 * LR_DEG) : 0.0;
    }
  assert_near (floor_m2, 0.2347, 1e-3);
  /* all that comes in falls on something: 1.2 m by 1.2 m turned away from the light */
  in = 1.44 * direction.y * cos (15.0 * LR_DEG);
  assert_near (flux + floor_m2 * sin (15.0 * LR_DEG), in, 1e-9);
}

/* The sun 45 degrees high straight before a window: light that comes through at z is on the floor z inside. With the wall opposite 1.5 m
 * away the floor has it from .9 m to there, the wall up to 2.1 - 1.5 */
static void
test_heights (void)
{
  static const LrVec2 narrow_m[] = { { 0.0, 0.0 }, { 5.0, 0.0 }, { 5.0, 1.5 }, { 0.0, 1.5 } };
  LrBeamStrip strips[LR_BEAM_STRIPS];
  LrBeamHeights heights;
  LrVec2 direction, floor_m[LR_BEAM_CORNERS], low, high;
  LrVec3 wall_m[LR_BEAM_CORNERS];
  double most_m = 0.0;
  size_t n;

  aim (45.0, 180.0, &direction, &heights);
  g_assert_cmpuint (lr_beam_strips (room_m, 4, lr_vec2 (1.0, 0.0), lr_vec2 (2.2, 0.0), direction, strips), ==, 1);
  n = lr_beam_on_level (&strips[0], &heights, 0.0, floor_m);
  lr_polygon_bounds (floor_m, n, &low, &high);
  assert_near (low.y, 0.9, 1e-9);
  assert_near (high.y, 2.1, 1e-9);
  n = lr_beam_on_level (&strips[0], &heights, 0.75, floor_m); /* a table */
  lr_polygon_bounds (floor_m, n, &low, &high);
  assert_near (low.y, 0.15, 1e-9);
  assert_near (high.y, 1.35, 1e-9);
  g_assert_cmpuint (lr_beam_on_level (&strips[0], &heights, 2.2, floor_m), ==, 0);
  g_assert_cmpuint (lr_beam_on_wall (&strips[0], &heights, wall_m), ==, 0);

  lr_beam_strips (narrow_m, 4, lr_vec2 (1.0, 0.0), lr_vec2 (2.2, 0.0), direction, strips);
  n = lr_beam_on_level (&strips[0], &heights, 0.0, floor_m);
  lr_polygon_bounds (floor_m, n, &low, &high);
  assert_near (low.y, 0.9, 1e-9);
  assert_near (high.y, 1.5, 1e-9);
  n = lr_beam_on_wall (&strips[0], &heights, wall_m);
  g_assert_cmpuint (n, ==, 4);
  for (size_t i = 0; i < n; i++)
    {
      assert_near (wall_m[i].y, 1.5, 1e-9);
      most_m = fmax (most_m, wall_m[i].z);
    }
  assert_near (most_m, 0.6, 1e-9);
}

/* A pier stands before half of the window: that half ends on it, the other goes on to the far wall */
static void
test_pier (void)
{
  static const LrVec2 pier_m[] = { { 0.0, 0.0 }, { 5.0, 0.0 }, { 5.0, 4.0 }, { 4.0, 4.0 }, { 4.0, 1.0 }, { 3.0, 1.0 }, { 3.0, 4.0 }, { 0.0, 4.0 } };
  LrBeamStrip strips[LR_BEAM_STRIPS];
  LrBeamHeights heights;
  LrVec2 direction;

  aim (20.0, 180.0, &direction, &heights);
  g_assert_cmpuint (lr_beam_strips (pier_m, 8, lr_vec2 (2.0, 0.0), lr_vec2 (3.5, 0.0), direction, strips), ==, 2);
  g_assert_cmpuint (strips[0].edge, ==, 6);
  assert_near (strips[0].path_m[0], 4.0, 1e-9);
  assert_near (strips[0].from_m[1].x, 3.0, 1e-9);
  g_assert_cmpuint (strips[1].edge, ==, 4);
  assert_near (strips[1].path_m[1], 1.0, 1e-9);
  /* from the other side nothing comes in */
  g_assert_cmpuint (lr_beam_strips (pier_m, 8, lr_vec2 (2.0, 0.0), lr_vec2 (3.5, 0.0), lr_vec2 (0.0, -1.0), strips), ==, 0);
  g_assert_cmpuint (lr_beam_strips (pier_m, 8, lr_vec2 (2.0, 0.0), lr_vec2 (3.5, 0.0), lr_vec2 (1.0, 0.0), strips), ==, 0);
}

/* Two squares of 2 m that lie a metre aside and up have one square metre in common */
static void
test_common (void)
{
  LrVec2 a_m[LR_BEAM_CORNERS] = { { 0.0, 0.0 }, { 2.0, 0.0 }, { 2.0, 2.0 }, { 0.0, 2.0 } };
  const LrVec2 b_m[] = { { 1.0, 1.0 }, { 3.0, 1.0 }, { 3.0, 3.0 }, { 1.0, 3.0 } }, c_m[] = { { 5.0, 5.0 }, { 6.0, 5.0 }, { 5.0, 6.0 } };
  size_t n = lr_convex_common (a_m, 4, b_m, 4);

  g_assert_cmpuint (n, ==, 4);
  assert_near (lr_polygon_area_m2 (a_m, n), 1.0, 1e-12);
  g_assert_cmpuint (lr_convex_common (a_m, n, c_m, 3), ==, 0);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/beam/corner", test_corner);
  g_test_add_func ("/beam/heights", test_heights);
  g_test_add_func ("/beam/pier", test_pier);
  g_test_add_func ("/beam/common", test_common);
  return g_test_run ();
}
