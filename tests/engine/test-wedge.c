/* test-wedge.c - what is seen of a room between two directions
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "polygon.h"

#include "check.h"
#include "rooms.h"

#define OUT_MAX (2 * ROOM_MAX + 3)

typedef struct
{
  const char *name;
  LrVec2      apex_m, right, left;
  size_t      n; /* expected, on the L of 4 m by 4 m */
  LrVec2      out_m[8];
} WedgeCase;

/* Source: lines intersected by hand */
static const WedgeCase wedge_cases[] = {
  { "one-wall", { 1, 1 }, { 3, -0.5 }, { 3, 0.5 }, 3, { { 1, 1 }, { 4, 0.5 }, { 4, 1.5 } } },
  { "a-corner", { 1, 1 }, { 1, -1 }, { 1, 0 }, 4, { { 1, 1 }, { 2, 0 }, { 4, 0 }, { 4, 1 } } },
  /* (2, 2) hides the upper arm: past it the way goes on to the left wall at (0, 10/3) */
  { "inner-corner-left", { 3.5, 1 }, { -0.3, 1 }, { -1, 0.1 }, 5,
    { { 3.5, 1 }, { 3.2, 2 }, { 2, 2 }, { 0, 10.0 / 3.0 }, { 0, 1.35 } } },
  /* from the upper arm, past (2, 2) down to the lower wall at (10/3, 0) */
  { "inner-corner-right", { 1, 3.5 }, { 0.5, -3.5 }, { 1, -1 }, 5,
    { { 1, 3.5 }, { 1.5, 0 }, { 10.0 / 3.0, 0 }, { 2, 2 }, { 2, 2.5 } } },
  { "at-the-wall", { 0, 1 }, { 1, -1 }, { 1, 0 }, 4, { { 0, 1 }, { 1, 0 }, { 4, 0 }, { 4, 1 } } },
  { "edges-through-corners", { 1, 1 }, { 3, -1 }, { 3, 1 }, 3, { { 1, 1 }, { 4, 0 }, { 4, 2 } } },
};

static void
test_wedge (gconstpointer data)
{
  const WedgeCase *c = data;
  LrVec2 out_m[OUT_MAX];
  size_t n = lr_wedge_in_room (l_room_m, 6, c->apex_m, c->right, c->left, out_m, OUT_MAX);

  g_test_message ("lines intersected by hand, on the L");
  g_assert_cmpuint (n, ==, c->n);
  for (size_t i = 0; i < n; i++)
    assert_near_2 (out_m[i], c->out_m[i], 1e-9);
}

/* How far one sees, found another way: the least crossing with every wall, walls solved as a
 * pair of equations */
static double
seen_m (const Room *room,
        LrVec2      from_m,
        double      angle_rad)
{
  double c = cos (angle_rad), s = sin (angle_rad), least_m = HUGE_VAL;

  for (size_t i = 0; i < room->n; i++)
    {
      LrVec2 a = room->corners_m[i], b = room->corners_m[(i + 1) % room->n];
      double det = c * (a.y - b.y) - s * (a.x - b.x);
      double t = ((a.x - from_m.x) * (a.y - b.y) - (a.y - from_m.y) * (a.x - b.x)) / det;
      double u = (c * (a.y - from_m.y) - s * (a.x - from_m.x)) / det;

      if (det != 0.0 && t > 0.0 && u >= 0.0 && u <= 1.0)
        least_m = fmin (least_m, t);
    }

  return least_m;
}

/* The wedge's area is the integral of half the square of how far one sees */
static double
swept_m2 (const Room *room,
          LrVec2      apex_m,
          double      right_rad,
          double      width_rad)
{
  const int n_steps = 20000;
  double sum_m2 = 0.0;

  for (int i = 0; i < n_steps; i++)
    {
      double r_m = seen_m (room, apex_m, right_rad + width_rad * (i + 0.5) / n_steps);

      sum_m2 += 0.5 * r_m * r_m;
    }

  return sum_m2 * width_rad / n_steps;
}

static LrVec2
random_apex (const Room *room)
{
  LrVec2 apex_m;

  do
    apex_m = random_point (4.0);
  while (lr_polygon_distance_m (room->corners_m, room->n, apex_m, NULL) < 0.01);

  return apex_m;
}

static void
test_area (void)
{
  g_test_message ("polar integral of what a ray sees, 20000 steps");

  for (int i = 0; i < 60; i++)
    {
      Room room = random_room (i);
      LrVec2 apex_m = random_apex (&room), out_m[OUT_MAX];
      double right_rad = g_test_rand_double_range (-LR_PI, LR_PI), width_rad = g_test_rand_double_range (0.05, 3.1);
      size_t n = lr_wedge_in_room (room.corners_m, room.n, apex_m, lr_vec2_polar (right_rad, 2.0),
                                   lr_vec2_polar (right_rad + width_rad, 0.5), out_m, 2 * room.n + 3);
      double area_m2 = lr_polygon_area_m2 (out_m, n), expected_m2 = swept_m2 (&room, apex_m, right_rad, width_rad);

      g_assert_cmpuint (n, >=, 3);
      assert_near (area_m2, expected_m2, 0.01 + 2e-3 * expected_m2);
    }
}

/* Corners in order from right to left; whatever lies in the wedge is seen, and what is seen lies
 * in it */
static void
test_visible (void)
{
  for (int i = 0; i < 300; i++)
    {
      Room room = random_room (i);
      LrVec2 apex_m = random_apex (&room), out_m[OUT_MAX];
      double right_rad = g_test_rand_double_range (-LR_PI, LR_PI), width_rad = g_test_rand_double_range (0.05, 3.1);
      size_t n = lr_wedge_in_room (room.corners_m, room.n, apex_m, lr_vec2_polar (right_rad, 1.0),
                                   lr_vec2_polar (right_rad + width_rad, 1.0), out_m, OUT_MAX);
      double before_rad = 0.0;

      assert_near_2 (out_m[0], apex_m, 1e-15);
      for (size_t k = 1; k < n; k++)
        {
          LrVec2 way = lr_vec2_sub (out_m[k], apex_m);
          double at_rad = lr_angle_wrap_rad (lr_vec2_angle_rad (way) - right_rad);

          g_assert_cmpfloat (at_rad, >, before_rad - 1e-6);
          g_assert_cmpfloat (at_rad, <, width_rad + 1e-6);
          before_rad = fmax (at_rad, before_rad);
          g_assert_true (lr_polygon_contains (room.corners_m, room.n, out_m[k]));
        }

      for (int k = 0; k < 200; k++)
        {
          LrVec2 point_m = lr_vec2_add (apex_m, random_point (6.0)), way = lr_vec2_sub (point_m, apex_m);
          double at_rad = lr_angle_wrap_rad (lr_vec2_angle_rad (way) - right_rad);
          bool is_seen = at_rad > 0.0 && at_rad < width_rad
                         && lr_vec2_length (way) < seen_m (&room, apex_m, right_rad + at_rad);

          if (fabs (lr_polygon_distance_m (out_m, n, point_m, NULL)) > 1e-6)
            g_assert_cmpint (lr_polygon_contains (out_m, n, point_m), ==, is_seen);
        }
    }
}

/* A lens on a wall, in a corner, at the inner corner, on the line of a wall, outside: nothing
 * beyond a wall, no crash */
static void
test_awkward_apex (void)
{
  static const LrVec2 apices_m[] = {
    { 0, 0 }, { 4, 2 }, { 2, 2 }, { 2, 3 }, { 3, 2 }, { 2, 1 }, { 1, 2 }, { 4, 1 }, { 0, 4 },
  };

  for (size_t i = 0; i < G_N_ELEMENTS (apices_m); i++)
    for (int k = 0; k < 72; k++)
      {
        LrVec2 right = lr_vec2_polar (5.0 * k * LR_DEG, 1.0), left = lr_vec2_rotate (right, 40.0 * LR_DEG);
        LrVec2 out_m[OUT_MAX];
        size_t n = lr_wedge_in_room (l_room_m, 6, apices_m[i], right, left, out_m, OUT_MAX);

        for (size_t j = 0; j < n; j++)
          {
            LrVec2 way = lr_vec2_sub (out_m[j + 1 < n ? j + 1 : 0], out_m[j]);

            for (int s = 0; s < 20; s++)
              g_assert_true (lr_polygon_contains (l_room_m, 6, lr_vec2_along (out_m[j], way, s / 20.0)));
          }
      }
}

static void
test_outside (void)
{
  LrVec2 from_m = { -1, 1 }, out_m[OUT_MAX];

  g_test_message ("by hand: from outside, the outer face of the wall; away from the room, nothing");
  g_assert_cmpuint (lr_wedge_in_room (l_room_m, 6, from_m, lr_vec2 (2, -1), lr_vec2 (2, 1), out_m, OUT_MAX), ==, 3);
  assert_near_2 (out_m[1], lr_vec2 (0.0, 0.5), 1e-9);
  assert_near_2 (out_m[2], lr_vec2 (0.0, 1.5), 1e-9);
  /* The left part of this wedge passes the room: it ends at the corner (0, 4), and the apex is not named twice */
  g_assert_cmpuint (lr_wedge_in_room (l_room_m, 6, from_m, lr_vec2 (2, 1), lr_vec2 (-1, 2), out_m, OUT_MAX), ==, 3);
  assert_near_2 (out_m[1], lr_vec2 (0.0, 1.5), 1e-9);
  assert_near_2 (out_m[2], lr_vec2 (0.0, 4.0), 1e-9);
  g_assert_cmpuint (lr_wedge_in_room (l_room_m, 6, from_m, lr_vec2 (-2, 1), lr_vec2 (-2, -1), out_m, OUT_MAX), ==, 0);
}

static void
test_domain (void)
{
  LrVec2 out_m[OUT_MAX], in_m = { 1.0, 1.0 }, right = { 1.0, 0.0 }, left = { 0.0, 1.0 }, none = { 0.0, 0.0 };

  g_assert_cmpuint (lr_wedge_in_room (l_room_m, 2, in_m, right, left, out_m, OUT_MAX), ==, 0);
  g_assert_cmpuint (lr_wedge_in_room (l_room_m, 6, in_m, left, right, out_m, OUT_MAX), ==, 0);
  g_assert_cmpuint (lr_wedge_in_room (l_room_m, 6, in_m, right, right, out_m, OUT_MAX), ==, 0);
  g_assert_cmpuint (lr_wedge_in_room (l_room_m, 6, in_m, right, lr_vec2 (-1.0, 0.0), out_m, OUT_MAX), ==, 0);
  g_assert_cmpuint (lr_wedge_in_room (l_room_m, 6, in_m, none, left, out_m, OUT_MAX), ==, 0);
  g_assert_cmpuint (lr_wedge_in_room (l_room_m, 6, in_m, right, none, out_m, OUT_MAX), ==, 0);
  g_assert_cmpuint (lr_wedge_in_room (l_room_m, 6, in_m, lr_vec2 (NAN, 0.0), left, out_m, OUT_MAX), ==, 0);
  g_assert_cmpuint (lr_wedge_in_room (l_room_m, 6, lr_vec2 (NAN, 0.0), right, left, out_m, OUT_MAX), ==, 0);
  g_assert_cmpuint (lr_wedge_in_room (l_room_m, 6, in_m, right, left, out_m, 0), ==, 0);
  g_assert_cmpuint (lr_wedge_in_room (l_room_m, 6, in_m, right, left, out_m, 3), ==, 0);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/wedge/ell", wedge_cases, test_wedge);
  g_test_add_func ("/wedge/area", test_area);
  g_test_add_func ("/wedge/visible", test_visible);
  g_test_add_func ("/wedge/awkward-apex", test_awkward_apex);
  g_test_add_func ("/wedge/outside", test_outside);
  g_test_add_func ("/wedge/domain", test_domain);

  return g_test_run ();
}
