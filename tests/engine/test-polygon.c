/* test-polygon.c - rooms: polygons that may be concave
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "polygon.h"

#include "check.h"
#include "rooms.h"

typedef struct
{
  const char *name;
  size_t      n;
  LrVec2      corners_m[8];
  double      area_m2;     /* expected */
  LrVec2      centroid_m;
  const char *source;
} AreaCase;

static const AreaCase area_cases[] = {
  { "square", 4, { { 1, 1 }, { 3, 1 }, { 3, 3 }, { 1, 3 } }, 4.0, { 2.0, 2.0 }, "closed form" },
  { "clockwise", 4, { { 1, 1 }, { 1, 3 }, { 3, 3 }, { 3, 1 } }, -4.0, { 2.0, 2.0 }, "closed form" },
  { "triangle", 3, { { 0, 0 }, { 6, 0 }, { 0, 3 } }, 9.0, { 2.0, 1.0 }, "Archimedes: the mean of the corners" },
  { "ell", 6, { { 0, 0 }, { 4, 0 }, { 4, 2 }, { 2, 2 }, { 2, 4 }, { 0, 4 } }, 12.0, { 5.0 / 3.0, 5.0 / 3.0 },
    "two rectangles by hand: (8 × 2 + 4 × 1) / 12" },
  { "far-away", 4, { { 1e6, 1e6 }, { 1e6 + 2, 1e6 }, { 1e6 + 2, 1e6 + 2 }, { 1e6, 1e6 + 2 } }, 4.0,
    { 1e6 + 1, 1e6 + 1 }, "closed form" },
  { "line", 3, { { 0, 0 }, { 2, 2 }, { 4, 4 } }, 0.0, { 2.0, 2.0 }, "no area: the mean of the corners" },
  { "point", 1, { { 2, 7 } }, 0.0, { 2.0, 7.0 }, "no area: the mean of the corners" },
  { "nothing", 0, { { 0, 0 } }, 0.0, { 0.0, 0.0 }, "no corners" },
};

static void
test_area (gconstpointer data)
{
  const AreaCase *c = data;

  g_test_message ("%s", c->source);
  assert_near (lr_polygon_area_m2 (c->corners_m, c->n), c->area_m2, 1e-9);
  assert_near_2 (lr_polygon_centroid_m (c->corners_m, c->n), c->centroid_m, 1e-9);
}

typedef struct
{
  const char *name;
  size_t      n;
  LrVec2      corners_m[6];
  bool        is_simple;
} SimpleCase;

static const SimpleCase simple_cases[] = {
  { "square", 4, { { 0, 0 }, { 2, 0 }, { 2, 2 }, { 0, 2 } }, true },
  { "clockwise", 4, { { 0, 0 }, { 0, 2 }, { 2, 2 }, { 2, 0 } }, true },
  { "ell", 6, { { 0, 0 }, { 4, 0 }, { 4, 2 }, { 2, 2 }, { 2, 4 }, { 0, 4 } }, true },
  { "corner-on-a-wall", 5, { { 0, 0 }, { 2, 0 }, { 4, 0 }, { 4, 3 }, { 0, 3 } }, true },
  { "bow-tie", 4, { { 0, 0 }, { 2, 2 }, { 2, 0 }, { 0, 2 } }, false },
  { "spike", 5, { { 0, 0 }, { 4, 0 }, { 2, 0 }, { 2, 2 }, { 0, 2 } }, false },
  { "same-corner-twice", 5, { { 0, 0 }, { 2, 0 }, { 2, 0 }, { 2, 2 }, { 0, 2 } }, false },
  { "first-corner-again", 5, { { 0, 0 }, { 2, 0 }, { 2, 2 }, { 0, 2 }, { 0, 0 } }, false },
  { "pinched", 6, { { 0, 0 }, { 4, 0 }, { 2, 2 }, { 4, 4 }, { 0, 4 }, { 2, 2 } }, false },
  { "touches-a-wall", 5, { { 0, 0 }, { 4, 0 }, { 4, 4 }, { 2, 0 }, { 0, 4 } }, false },
  { "touched-by-a-corner", 5, { { 2, 0 }, { 0, 4 }, { 0, 0 }, { 4, 0 }, { 4, 4 } }, false },
  { "line", 3, { { 0, 0 }, { 1, 1 }, { 2, 2 } }, false },
  { "two", 2, { { 0, 0 }, { 2, 0 } }, false },
  { "nan", 4, { { 0, 0 }, { 2, 0 }, { NAN, 2 }, { 0, 2 } }, false },
  { "inf", 4, { { 0, 0 }, { 2, 0 }, { 2, HUGE_VAL }, { 0, 2 } }, false },
};

static void
test_simple (gconstpointer data)
{
  const SimpleCase *c = data;

  g_test_message ("by the definition of a simple polygon, looked at");
  g_assert_cmpint (lr_polygon_is_simple (c->corners_m, c->n), ==, c->is_simple);
}

/* Random rooms are simple; two far corners of a convex one that change places make it cross itself */
static void
test_simple_random (void)
{
  for (int i = 0; i < 200; i++)
    {
      Room room = random_room (i);
      LrVec2 swap;

      g_assert_true (lr_polygon_is_simple (room.corners_m, room.n));
      g_assert_cmpfloat (lr_polygon_area_m2 (room.corners_m, room.n), >, 0.0);

      for (size_t k = 0; k < room.n; k++)
        room.corners_m[k] = lr_vec2_polar (2.0 * LR_PI * (double) k / (double) room.n, 3.0);
      g_assert_true (lr_polygon_is_simple (room.corners_m, room.n));
      swap = room.corners_m[1];
      room.corners_m[1] = room.corners_m[room.n / 2 + 1];
      room.corners_m[room.n / 2 + 1] = swap;
      g_assert_false (lr_polygon_is_simple (room.corners_m, room.n));
    }
}

static void
test_contains (void)
{
  g_test_message ("winding number by summed angles (O'Rourke, Computational Geometry in C, section 7.4.1, from memory)");

  for (int i = 0; i < 200; i++)
    {
      Room room = random_room (i);

      for (int k = 0; k < 100; k++)
        {
          LrVec2 point_m = random_point (6.0);

          if (fabs (lr_polygon_distance_m (room.corners_m, room.n, point_m, NULL)) > 1e-8)
            g_assert_cmpint (lr_polygon_contains (room.corners_m, room.n, point_m), ==, winds_round (&room, point_m));
        }
    }
}

/* On an edge and at a corner is inside; level with a corner nothing is counted twice */
static void
test_contains_edges (void)
{
  g_test_message ("by hand, on the L");
  g_assert_true (lr_polygon_contains (l_room_m, 6, lr_vec2 (2.0, 3.0)));
  g_assert_true (lr_polygon_contains (l_room_m, 6, lr_vec2 (2.0, 2.0)));
  g_assert_true (lr_polygon_contains (l_room_m, 6, lr_vec2 (4.0, 2.0)));
  g_assert_true (lr_polygon_contains (l_room_m, 6, lr_vec2 (1.0, 2.0)));
  g_assert_true (lr_polygon_contains (l_room_m, 6, lr_vec2 (1.0, 0.0)));
  g_assert_false (lr_polygon_contains (l_room_m, 6, lr_vec2 (-1.0, 2.0)));
  g_assert_false (lr_polygon_contains (l_room_m, 6, lr_vec2 (5.0, 2.0)));
  g_assert_false (lr_polygon_contains (l_room_m, 6, lr_vec2 (-1.0, 0.0)));
  g_assert_false (lr_polygon_contains (l_room_m, 6, lr_vec2 (3.0, 2.001)));
  g_assert_false (lr_polygon_contains (l_room_m, 2, lr_vec2 (1.0, 0.0)));
  g_assert_false (lr_polygon_contains (l_room_m, 6, lr_vec2 (NAN, 1.0)));
}

typedef struct
{
  const char *name;
  LrVec2      from_m, direction;
  size_t      edge; /* expected, on the L */
  double      along_m, distance_m;
} RayCase;

/* Source: by hand, on the L of 4 m by 4 m */
static const RayCase ray_cases[] = {
  { "right", { 1, 1 }, { 1, 0 }, 1, 1.0, 3.0 },
  { "up", { 1, 1 }, { 0, 3 }, 4, 1.0, 3.0 },
  { "hidden-wall", { 3, 1 }, { 0, 1 }, 2, 1.0, 1.0 },
  { "past-the-corner", { 3, 0.5 }, { -2, 2 }, 5, 0.5, 4.242640687119285 },
  { "touching-the-corner", { 3, 0.5 }, { -2, 3 }, 2, 2.0, 1.8027756377319946 },
  { "from-outside", { -1, 1 }, { 1, 0 }, 5, 3.0, 1.0 },
  { "from-the-wall-in", { 0, 1 }, { 1, 0 }, 1, 1.0, 4.0 },
  { "from-the-wall-out", { 0, 1 }, { -1, 0 }, 5, 3.0, 0.0 },
  { "along-the-wall", { 1, 0 }, { 1, 0 }, 1, 0.0, 3.0 },
};

static void
test_ray (gconstpointer data)
{
  const RayCase *c = data;
  LrVec2 unit = lr_vec2_scale (c->direction, 1.0 / lr_vec2_length (c->direction));
  LrRayHit hit;

  g_test_message ("by hand, on the L");
  g_assert_true (lr_polygon_ray (l_room_m, 6, c->from_m, c->direction, &hit));
  g_assert_cmpuint (hit.edge, ==, c->edge);
  assert_near (hit.along_m, c->along_m, 1e-12);
  assert_near (hit.distance_m, c->distance_m, 1e-12);
  assert_near_2 (hit.at_m, lr_vec2_along (c->from_m, unit, c->distance_m), 1e-12);
}

/* Up to the hit the way is inside, just past it outside, and the hit lies on its edge */
static void
test_ray_random (void)
{
  for (int i = 0; i < 1000; i++)
    {
      Room room = random_room (i);
      LrVec2 from_m = random_point (3.0), direction = lr_vec2_polar (g_test_rand_double_range (-4.0, 4.0), 1.0);
      LrVec2 a_m, b_m;
      LrRayHit hit;

      if (!winds_round (&room, from_m))
        continue;
      g_assert_true (lr_polygon_ray (room.corners_m, room.n, from_m, direction, &hit));
      for (int k = 1; k < 50; k++)
        g_assert_true (winds_round (&room, lr_vec2_along (from_m, direction, hit.distance_m * (k / 50.0))));
      g_assert_false (winds_round (&room, lr_vec2_along (from_m, direction, hit.distance_m + 1e-7)));

      a_m = room.corners_m[hit.edge];
      b_m = room.corners_m[(hit.edge + 1) % room.n];
      assert_near (lr_vec2_distance (a_m, hit.at_m), hit.along_m, 1e-9);
      assert_near (hit.along_m + lr_vec2_distance (hit.at_m, b_m), lr_vec2_distance (a_m, b_m), 1e-9);
      assert_near_2 (hit.at_m, lr_vec2_along (from_m, direction, hit.distance_m), 1e-9);
    }
}

typedef struct
{
  const char *name;
  LrVec2      point_m;
  double      distance_m; /* expected, on the L */
  LrVec2      nearest_m;
} DistanceCase;

/* Source: by hand, on the L of 4 m by 4 m */
static const DistanceCase distance_cases[] = {
  { "inside", { 3.5, 1.2 }, 0.5, { 4.0, 1.2 } },
  { "by-the-inner-corner", { 1.7, 1.6 }, 0.5, { 2.0, 2.0 } },
  { "outside-a-wall", { -0.7, 3.0 }, -0.7, { 0.0, 3.0 } },
  { "outside-a-corner", { 4.3, -0.4 }, -0.5, { 4.0, 0.0 } },
  { "in-the-notch", { 2.4, 3.0 }, -0.4, { 2.0, 3.0 } },
};

static void
test_distance (gconstpointer data)
{
  const DistanceCase *c = data;
  LrRayHit nearest;

  g_test_message ("by hand, on the L");
  assert_near (lr_polygon_distance_m (l_room_m, 6, c->point_m, &nearest), c->distance_m, 1e-12);
  assert_near (nearest.distance_m, fabs (c->distance_m), 1e-12);
  assert_near_2 (nearest.at_m, c->nearest_m, 1e-12);
  assert_near (nearest.along_m, lr_vec2_distance (l_room_m[nearest.edge], c->nearest_m), 1e-12);
}

/* Against ten thousand points strewn along the walls */
static void
test_distance_random (void)
{
  for (int i = 0; i < 50; i++)
    {
      Room room = random_room (i);
      LrVec2 point_m = random_point (6.0);
      double sampled_m = HUGE_VAL;

      for (size_t k = 0; k < room.n; k++)
        for (int s = 0; s < 1000; s++)
          {
            LrVec2 a_m = room.corners_m[k], b_m = room.corners_m[(k + 1) % room.n];
            LrVec2 at_m = lr_vec2_along (a_m, lr_vec2_sub (b_m, a_m), s / 1000.0);

            sampled_m = fmin (sampled_m, lr_vec2_distance (at_m, point_m));
          }

      g_assert_cmpfloat (fabs (lr_polygon_distance_m (room.corners_m, room.n, point_m, NULL)), <=, sampled_m + 1e-12);
      assert_near (fabs (lr_polygon_distance_m (room.corners_m, room.n, point_m, NULL)), sampled_m, 0.013);
    }
}

static void
test_segment (void)
{
  LrVec2 a_m = { 1.0, 1.0 }, b_m = { 5.0, 1.0 }, nearest_m;

  g_test_message ("by hand: beside, past either end (3-4-5), and a segment without length");
  assert_near (lr_segment_distance_m (a_m, b_m, lr_vec2 (2.0, 3.5), &nearest_m), 2.5, 1e-12);
  assert_near_2 (nearest_m, lr_vec2 (2.0, 1.0), 1e-12);
  assert_near (lr_segment_distance_m (a_m, b_m, lr_vec2 (8.0, 5.0), &nearest_m), 5.0, 1e-12);
  assert_near_2 (nearest_m, b_m, 1e-12);
  assert_near (lr_segment_distance_m (a_m, b_m, lr_vec2 (-2.0, -3.0), &nearest_m), 5.0, 1e-12);
  assert_near_2 (nearest_m, a_m, 1e-12);
  assert_near (lr_segment_distance_m (a_m, a_m, lr_vec2 (4.0, 5.0), NULL), 5.0, 1e-12);
}

static void
test_domain (void)
{
  LrRayHit hit = { .distance_m = UNTOUCHED };
  LrVec2 inside_m = { 1.0, 1.0 }, right = { 1.0, 0.0 };

  g_assert_false (lr_polygon_ray (l_room_m, 2, inside_m, right, &hit));
  g_assert_false (lr_polygon_ray (l_room_m, 6, lr_vec2 (NAN, 1.0), right, &hit));
  g_assert_false (lr_polygon_ray (l_room_m, 6, lr_vec2 (1.0, HUGE_VAL), right, &hit));
  g_assert_false (lr_polygon_ray (l_room_m, 6, inside_m, lr_vec2 (0.0, 0.0), &hit));
  g_assert_false (lr_polygon_ray (l_room_m, 6, inside_m, lr_vec2 (NAN, 0.0), &hit));
  g_assert_false (lr_polygon_ray (l_room_m, 6, lr_vec2 (5.0, 1.0), right, &hit)); /* away from the room */
  g_assert_cmpfloat (lr_polygon_distance_m (l_room_m, 2, inside_m, &hit), ==, -HUGE_VAL);
  g_assert_cmpfloat (lr_polygon_distance_m (l_room_m, 6, lr_vec2 (NAN, 0.0), &hit), ==, -HUGE_VAL);
  g_assert_cmpfloat (hit.distance_m, ==, UNTOUCHED);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/polygon/area", area_cases, test_area);
  add_rows ("/polygon/simple", simple_cases, test_simple);
  add_rows ("/polygon/ray", ray_cases, test_ray);
  add_rows ("/polygon/distance", distance_cases, test_distance);
  g_test_add_func ("/polygon/simple-random", test_simple_random);
  g_test_add_func ("/polygon/contains", test_contains);
  g_test_add_func ("/polygon/contains-edges", test_contains_edges);
  g_test_add_func ("/polygon/ray-random", test_ray_random);
  g_test_add_func ("/polygon/distance-random", test_distance_random);
  g_test_add_func ("/polygon/segment", test_segment);
  g_test_add_func ("/polygon/domain", test_domain);

  return g_test_run ();
}
