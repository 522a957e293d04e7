/* test-outline.c - footprints: discs and boxes on the floor
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "polygon.h"

#include "check.h"
#include "rooms.h"

static LrOutline
moved (const LrOutline *outline,
       LrVec2           by)
{
  LrOutline copy = *outline;

  copy.centre_m = lr_vec2_add (copy.centre_m, by);
  for (size_t i = 0; i < copy.n; i++)
    copy.corner_m[i] = lr_vec2_add (copy.corner_m[i], by);
  return copy;
}

static LrOutline
random_outline (double reach_m)
{
  LrVec2 centre_m = random_point (reach_m);
  double length_m = g_test_rand_double_range (0.1, 2.0), width_m = g_test_rand_double_range (0.1, 2.0);

  return g_test_rand_bit () ? lr_outline_disc (centre_m, 0.5 * length_m)
                            : lr_outline_box (centre_m, length_m, width_m, g_test_rand_double_range (-4.0, 4.0));
}

static void
test_box (void)
{
  LrOutline box = lr_outline_box (lr_vec2 (1.0, 2.0), 4.0, 2.0, 90.0 * LR_DEG);

  g_test_message ("by hand: 4 m by 2 m, turned upright");
  g_assert_cmpuint (box.n, ==, 4);
  assert_near_2 (box.corner_m[0], lr_vec2 (2.0, 0.0), 1e-12);
  assert_near_2 (box.corner_m[1], lr_vec2 (2.0, 4.0), 1e-12);
  assert_near_2 (box.corner_m[2], lr_vec2 (0.0, 4.0), 1e-12);
  assert_near_2 (box.corner_m[3], lr_vec2 (0.0, 0.0), 1e-12);
  assert_near (box.radius_m, sqrt (5.0), 1e-12);
  assert_near (lr_polygon_area_m2 (box.corner_m, 4), 8.0, 1e-12);
}

static void
assert_overlap (const char *name,
                LrOutline   a,
                LrOutline   b,
                double      depth_m,
                LrVec2      push)
{
  LrVec2 found = { UNTOUCHED, UNTOUCHED };

  g_test_message ("%s, by hand", name);
  assert_near (lr_outline_overlap_m (&a, &b, &found), depth_m, 1e-9);
  if (depth_m > 0.0)
    assert_near_2 (found, push, 1e-9);
  else
    g_assert_cmpfloat (found.x, ==, UNTOUCHED);

  /* From the other side the way out is the opposite one */
  assert_near (lr_outline_overlap_m (&b, &a, &found), depth_m, 1e-9);
  if (depth_m > 0.0)
    assert_near_2 (found, lr_vec2_scale (push, -1.0), 1e-9);
  g_assert_cmpfloat (lr_outline_overlap_m (&a, &b, NULL), >=, 0.0);
}

static void
test_overlap (void)
{
  LrVec2 o = { 0.0, 0.0 }, right = { 1.0, 0.0 }, up = { 0.0, 1.0 }, none = { 0.0, 0.0 };
  LrOutline square = lr_outline_box (o, 2.0, 2.0, 0.0);
  LrOutline diamond = lr_outline_box (lr_vec2 (0.0, 2.0), 2.0, 2.0, 45.0 * LR_DEG);

  assert_overlap ("discs", lr_outline_disc (lr_vec2 (1.5, 0.0), 1.0), lr_outline_disc (o, 1.0), 0.5, right);
  assert_overlap ("discs apart", lr_outline_disc (lr_vec2 (2.1, 0.0), 1.0), lr_outline_disc (o, 1.0), 0.0, none);
  assert_overlap ("discs that touch", lr_outline_disc (lr_vec2 (2.0, 0.0), 1.0), lr_outline_disc (o, 1.0), 0.0, none);
  assert_overlap ("boxes", lr_outline_box (lr_vec2 (0.5, 1.7), 2.0, 2.0, 0.0), square, 0.3, up);
  assert_overlap ("boxes side by side", lr_outline_box (lr_vec2 (2.0, 0.3), 2.0, 2.0, 0.0), square, 0.0, none);
  assert_overlap ("a box on its point", diamond, square, sqrt (2.0) - 1.0, up);
  assert_overlap ("a disc at an edge", lr_outline_disc (lr_vec2 (0.2, 1.4), 0.5), square, 0.1, up);
  assert_overlap ("a disc at a corner", lr_outline_disc (lr_vec2 (1.3, 1.4), 0.6), square, 0.1, lr_vec2 (0.6, 0.8));
  assert_overlap ("a disc past a corner", lr_outline_disc (lr_vec2 (1.3, 1.4), 0.4), square, 0.0, none);
  assert_overlap ("a disc inside", lr_outline_disc (lr_vec2 (0.0, 0.4), 0.1), square, 0.7, up);
  assert_overlap ("a box in a long one", lr_outline_box (lr_vec2 (3.0, 0.1), 0.4, 0.4, 0.0),
                  lr_outline_box (o, 10.0, 1.0, 0.0), 0.6, up);
}

static void
test_overlap_about_one_centre (void)
{
  LrOutline a = lr_outline_disc (lr_vec2 (1.0, 1.0), 0.3), b = lr_outline_disc (lr_vec2 (1.0, 1.0), 0.5);
  LrVec2 push;

  g_test_message ("by hand: the sum of the radii, any way");
  assert_near (lr_outline_overlap_m (&a, &b, &push), 0.8, 1e-12);
  assert_near (lr_vec2_length (push), 1.0, 1e-12);
}

/* The move parts them; no shorter one does, whichever way; what parts has no point in common */
static void
test_overlap_property (void)
{
  for (int i = 0; i < 500; i++)
    {
      LrOutline a = random_outline (1.0), b = random_outline (1.0), out;
      LrVec2 push;
      double depth_m = lr_outline_overlap_m (&a, &b, &push);

      if (depth_m == 0.0)
        {
          for (int k = 0; k < 200; k++)
            {
              LrVec2 point_m = random_point (2.0);

              g_assert_false (lr_outline_contains (&a, point_m) && lr_outline_contains (&b, point_m));
            }
          continue;
        }

      assert_near (lr_vec2_length (push), 1.0, 1e-12);
      out = moved (&a, lr_vec2_scale (push, depth_m + 1e-8));
      g_assert_cmpfloat (lr_outline_overlap_m (&out, &b, NULL), ==, 0.0);
      for (int k = 0; k < 360 && depth_m > 1e-5; k++) /* of less a thousandth is no nanometre, which counts as parted */
        {
          out = moved (&a, lr_vec2_polar (k * LR_DEG, 0.999 * depth_m));
          g_assert_cmpfloat (lr_outline_overlap_m (&out, &b, NULL), >, 0.0);
        }
    }
}

static void
assert_outside (const char   *name,
                LrOutline     outline,
                const LrVec2 *room_m,
                size_t        n,
                double        outside_m)
{
  g_test_message ("%s, by hand", name);
  assert_near (lr_outline_outside_m (&outline, room_m, n), outside_m, 1e-9);
}

static void
test_outside (void)
{
  assert_outside ("disc inside", lr_outline_disc (lr_vec2 (1.0, 1.0), 0.5), l_room_m, 6, 0.0);
  assert_outside ("disc that touches", lr_outline_disc (lr_vec2 (1.0, 1.0), 1.0), l_room_m, 6, 0.0);
  assert_outside ("disc over a wall", lr_outline_disc (lr_vec2 (0.3, 1.0), 0.5), l_room_m, 6, 0.2);
  assert_outside ("disc at the inner corner", lr_outline_disc (lr_vec2 (1.7, 1.6), 0.6), l_room_m, 6, 0.1);
  assert_outside ("disc out of the room", lr_outline_disc (lr_vec2 (-2.0, 1.0), 0.5), l_room_m, 6, 2.5);
  assert_outside ("box inside", lr_outline_box (lr_vec2 (1.0, 3.0), 1.9, 1.9, 0.0), l_room_m, 6, 0.0);
  assert_outside ("box against the wall", lr_outline_box (lr_vec2 (1.0, 0.5), 2.0, 1.0, 0.0), l_room_m, 6, 0.0);
  assert_outside ("box over a wall", lr_outline_box (lr_vec2 (0.4, 1.0), 1.0, 0.5, 0.0), l_room_m, 6, 0.1);
  assert_outside ("box on its point", lr_outline_box (lr_vec2 (1.0, 1.0), 2.0, 2.0, 45.0 * LR_DEG), l_room_m, 6,
                  sqrt (2.0) - 1.0);
  assert_outside ("box over the inner corner", lr_outline_box (lr_vec2 (1.9, 1.9), 2.0, 0.6, 135.0 * LR_DEG),
                  l_room_m, 6, 0.3 - 0.1 * sqrt (2.0));
  assert_outside ("thin wall right through", lr_outline_box (lr_vec2 (6.5, 2.45), 0.6, 2.0, 0.0),
                  fin_room_m, 8, 0.05);
  assert_outside ("beside the thin wall", lr_outline_box (lr_vec2 (6.5, 1.2), 0.6, 2.0, 0.0), fin_room_m, 8, 0.0);
  assert_outside ("before the thin wall's end", lr_outline_box (lr_vec2 (4.6, 2.45), 0.6, 2.0, 0.0),
                  fin_room_m, 8, 0.0);
  assert_outside ("no room", lr_outline_disc (lr_vec2 (1.0, 1.0), 0.5), l_room_m, 2, 0.0);
}

/* Whether a wall comes into the outline, tried every few millimetres */
static bool
wall_comes_in (const Room      *room,
               const LrOutline *outline)
{
  for (size_t i = 0; i < room->n; i++)
    {
      LrVec2 a_m = room->corners_m[i], way = lr_vec2_sub (room->corners_m[(i + 1) % room->n], a_m);

      for (int k = 0; k < 2000; k++)
        if (lr_outline_contains (outline, lr_vec2_along (a_m, way, k / 2000.0)))
          return true;
    }

  return false;
}

/* More than nothing if some point of it is outside; nothing unless a point is or a wall, however
 * thin, comes in */
static void
test_outside_property (void)
{
  for (int i = 0; i < 500; i++)
    {
      Room room = random_room (i);
      LrOutline outline = random_outline (3.0);
      double outside_m = lr_outline_outside_m (&outline, room.corners_m, room.n);
      bool is_out = false;

      for (int k = 0; k < 1000; k++)
        {
          LrVec2 point_m = lr_vec2_add (outline.centre_m, random_point (outline.radius_m));

          is_out |= lr_outline_contains (&outline, point_m) && !winds_round (&room, point_m);
        }

      if (is_out)
        g_assert_cmpfloat (outside_m, >, 0.0);
      if (outside_m > 0.1)
        g_assert_true (is_out || wall_comes_in (&room, &outline));
    }
}

typedef struct
{
  const char *name;
  bool        is_disc;
  LrVec2      from_m, direction;
  double      enter_m, leave_m; /* expected; NAN: passes by */
} RayCase;

/* Source: by hand; a disc of radius 1 about (3, 0), a box of 2 m by 2 m about the same point */
static const RayCase ray_cases[] = {
  { "disc", true, { 0, 0 }, { 2, 0 }, 2.0, 4.0 },
  { "disc-off-centre", true, { 0, 0.6 }, { 1, 0 }, 2.2, 3.8 },
  { "disc-inside", true, { 3.5, 0 }, { 1, 0 }, 0.0, 0.5 },
  { "disc-behind", true, { 5, 0 }, { 1, 0 }, NAN, NAN },
  { "disc-beside", true, { 0, 1.1 }, { 1, 0 }, NAN, NAN },
  { "disc-grazed", true, { 0, 1 }, { 1, 0 }, NAN, NAN },
  { "box", false, { 0, 0.5 }, { 1, 0 }, 2.0, 4.0 },
  { "box-slanting", false, { 0, 0 }, { 4, 3 }, NAN, NAN },
  { "box-corner-cut", false, { 1, 0 }, { 4, 2 }, 1.118033988749895, 2.23606797749979 },
  { "box-inside", false, { 3, 0 }, { 0, -5 }, 0.0, 1.0 },
  { "box-behind", false, { 5, 0 }, { 1, 0 }, NAN, NAN },
};

static void
test_ray (gconstpointer data)
{
  const RayCase *c = data;
  LrVec2 centre_m = { 3.0, 0.0 };
  LrOutline outline = c->is_disc ? lr_outline_disc (centre_m, 1.0) : lr_outline_box (centre_m, 2.0, 2.0, 0.0);
  double enter_m = UNTOUCHED, leave_m = UNTOUCHED;

  g_test_message ("by hand");
  if (isnan (c->enter_m))
    {
      g_assert_false (lr_outline_ray (&outline, c->from_m, c->direction, &enter_m, &leave_m));
      g_assert_true (enter_m == UNTOUCHED && leave_m == UNTOUCHED);
      return;
    }

  g_assert_true (lr_outline_ray (&outline, c->from_m, c->direction, &enter_m, &leave_m));
  assert_near (enter_m, c->enter_m, 1e-12);
  assert_near (leave_m, c->leave_m, 1e-12);
}

static void
test_ray_property (void)
{
  for (int i = 0; i < 1000; i++)
    {
      LrOutline outline = random_outline (2.0);
      LrVec2 from_m = random_point (4.0), direction = lr_vec2_polar (g_test_rand_double_range (-4.0, 4.0), 1.0);
      double enter_m = HUGE_VAL, leave_m = -HUGE_VAL;

      lr_outline_ray (&outline, from_m, direction, &enter_m, &leave_m);
      for (double at_m = 0.0; at_m < 10.0; at_m += 0.01)
        if (fabs (at_m - enter_m) > 1e-6 && fabs (at_m - leave_m) > 1e-6)
          g_assert_cmpint (lr_outline_contains (&outline, lr_vec2_along (from_m, direction, at_m)), ==,
                           at_m > enter_m && at_m < leave_m);
    }
}

static void
test_domain (void)
{
  LrOutline box = lr_outline_box (lr_vec2 (0.0, 0.0), 2.0, 2.0, 0.0);
  LrOutline flat = lr_outline_box (lr_vec2 (0.0, 0.0), 2.0, 0.0, 0.0);
  double enter_m = UNTOUCHED, leave_m = UNTOUCHED;
  LrVec2 o = { -3.0, 0.0 }, right = { 1.0, 0.0 };

  g_assert_false (lr_outline_ray (&box, o, lr_vec2 (0.0, 0.0), &enter_m, &leave_m));
  g_assert_false (lr_outline_ray (&box, o, lr_vec2 (NAN, 0.0), &enter_m, &leave_m));
  g_assert_false (lr_outline_ray (&box, lr_vec2 (NAN, 0.0), right, &enter_m, &leave_m));
  g_assert_false (lr_outline_ray (&box, lr_vec2 (0.0, HUGE_VAL), right, &enter_m, &leave_m));
  g_assert_false (lr_outline_ray (&flat, o, right, &enter_m, &leave_m));
  g_assert_cmpfloat (enter_m, ==, UNTOUCHED);
  g_assert_cmpfloat (leave_m, ==, UNTOUCHED);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/outline/ray", ray_cases, test_ray);
  g_test_add_func ("/outline/box", test_box);
  g_test_add_func ("/outline/overlap", test_overlap);
  g_test_add_func ("/outline/overlap-about-one-centre", test_overlap_about_one_centre);
  g_test_add_func ("/outline/overlap-property", test_overlap_property);
  g_test_add_func ("/outline/outside", test_outside);
  g_test_add_func ("/outline/outside-property", test_outside_property);
  g_test_add_func ("/outline/ray-property", test_ray_property);
  g_test_add_func ("/outline/domain", test_domain);

  return g_test_run ();
}
