/* test-free_line.c - how far one can look in a room
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "check.h"

#include "free_line.h"

typedef struct
{
  const char *name;
  LrVec2      room_m[8];
  size_t      n;
  LrOutline   block;
  bool        has_block;
  double      line_m;  /* expected */
  double      tolerance_m;
  const char *source;
} LineCase;

#define BOX(x0, y0, x1, y1) \
  { .n = 4, .corner_m = { { x0, y0 }, { x1, y0 }, { x1, y1 }, { x0, y1 } }, .centre_m = { 0.5 * (x0 + x1), 0.5 * (y0 + y1) }, .radius_m = 2.0 }

static const LineCase line_cases[] = {
  { "rectangle", { { 0, 0 }, { 4, 0 }, { 4, 3 }, { 0, 3 } }, 4, { 0 }, false, 5.0, 1e-9, "diagonal of 4 and 3" },
  { "triangle", { { 0, 0 }, { 4, 0 }, { 0, 3 } }, 3, { 0 }, false, 5.0, 1e-9, "the longest side" },
  { "l-through-a-corner", { { 0, 0 }, { 6, 0 }, { 6, 1 }, { 1, 1 }, { 1, 3 }, { 0, 3 } }, 6, { 0 }, false, 6.118823416, 1e-8,
    "from (6, 0) past (1, 1) to (0, 1.2): sqrt (36 + 1.44); corner to corner it is sqrt (37)" },
  { "u-shaped", { { 0, 0 }, { 5, 0 }, { 5, 4 }, { 4, 4 }, { 4, 1 }, { 1, 1 }, { 1, 4 }, { 0, 4 } }, 8, { 0 }, false, 5.153882032, 1e-8,
    "from (5, 0) past (1, 1) to (0, 1.25): sqrt (25 + 1.5625)" },
  { "in-the-middle", { { 0, 0 }, { 4, 0 }, { 4, 3 }, { 0, 3 } }, 4, BOX (1.5, 1.0, 2.5, 2.0), true, 4.308131846, 1e-8,
    "from (0, 0) past (2.5, 1) to (4, 1.6): sqrt (16 + 2.56)" },
  { "along-a-wall", { { 0, 0 }, { 4, 0 }, { 4, 3 }, { 0, 3 } }, 4, BOX (1.0, 0.0, 3.0, 3.0), true, 3.16227766, 1e-8,
    "two strips of 1 by 3 m are left: sqrt (10)" },
  { "round", { { 0, 0 }, { 4, 0 }, { 4, 3 }, { 0, 3 } }, 4, { .n = 0, .centre_m = { 2.0, 1.5 }, .radius_m = 0.5 }, true, 4.4256, 0.03,
    "tangent from (0, 0): at atan2 (1.5, 2) - asin (0.5 / 2.5) = 25.33 degrees to x = 4: 4 / cos; by the octagon up to 3 cm less" },
};

static void
test_line (gconstpointer data)
{
  const LineCase *c = data;
  LrVec2 from_m, to_m;

  g_test_message ("%s", c->source);
  g_assert_true (lr_free_line (c->room_m, c->n, &c->block, c->has_block ? 1 : 0, &from_m, &to_m));
  g_test_message ("(%g, %g) to (%g, %g): %.9f", from_m.x, from_m.y, to_m.x, to_m.y, lr_vec2_distance (from_m, to_m));
  g_assert_cmpfloat_with_epsilon (lr_vec2_distance (from_m, to_m), c->line_m, c->tolerance_m);
}

/* No line between any two of many places on the walls is longer: against the room's own edges, not against corners */
static void
test_against_walls (void)
{
  static const LrVec2 room_m[] = { { 0, 0 }, { 7.2, 0 }, { 7.2, 4.45 }, { 6.25, 5.4 }, { 3.0, 5.4 }, { 2.6, 2.2 }, { 0, 5.4 } };
  LrVec2 from_m, to_m;
  double longest_m, seen_m = 0.0;

  g_assert_true (lr_free_line (room_m, G_N_ELEMENTS (room_m), NULL, 0, &from_m, &to_m));
  longest_m = lr_vec2_distance (from_m, to_m);
  for (gsize wall = 0; wall < G_N_ELEMENTS (room_m); wall++)
    for (int i = 0; i <= 40; i++)
      for (int way = 0; way < 720; way++)
        {
          LrVec2 a = room_m[wall], b = room_m[(wall + 1) % G_N_ELEMENTS (room_m)];
          LrVec2 at_m = lr_vec2_along (a, lr_vec2_sub (b, a), 0.0125 + 0.975 * i / 40.0), direction = lr_vec2_polar (way * 0.5 * LR_DEG, 1.0);
          LrVec2 start_m = lr_vec2_along (at_m, direction, 1e-6);
          LrRayHit hit;

          if (lr_polygon_contains (room_m, G_N_ELEMENTS (room_m), start_m)
              && lr_polygon_ray (room_m, G_N_ELEMENTS (room_m), start_m, direction, &hit))
            seen_m = fmax (seen_m, hit.distance_m);
        }
  g_test_message ("%.4f, by rays %.4f", longest_m, seen_m);
  g_assert_cmpfloat (seen_m, <=, longest_m + 1e-5);
  g_assert_cmpfloat (seen_m, >, longest_m - 0.15);
}

static void
test_line_domain (void)
{
  static const LrVec2 two_m[] = { { 0, 0 }, { 1, 0 } }, odd_m[] = { { 0, 0 }, { 1, 0 }, { (double) NAN, 1 } };
  LrVec2 from_m = { 7, 7 }, to_m = { 8, 8 };

  g_assert_false (lr_free_line (two_m, 2, NULL, 0, &from_m, &to_m));
  g_assert_false (lr_free_line (odd_m, 3, NULL, 0, &from_m, &to_m));
  g_assert_cmpfloat (from_m.x, ==, 7.0);
  g_assert_cmpfloat (to_m.y, ==, 8.0);
}

/* A rectangle of 5 by 2 m, turned by any angle (closed form) */
static void
test_sides (void)
{
  for (int turn = 0; turn < 180; turn += 7)
    {
      LrVec2 room_m[4] = { { 0, 0 }, { 5, 0 }, { 5, 2 }, { 0, 2 } };
      double length_m = 0.0, width_m = 0.0;

      for (int i = 0; i < 4; i++)
        room_m[i] = lr_vec2_rotate (room_m[i], turn * LR_DEG);
      g_assert_true (lr_polygon_sides_m (room_m, 4, &length_m, &width_m));
      g_assert_cmpfloat_with_epsilon (length_m, 5.0, 1e-9);
      g_assert_cmpfloat_with_epsilon (width_m, 2.0, 1e-9);
    }
}

/* The loft with its corner cut off is still 7.20 by 5.40 m */
static void
test_sides_cut (void)
{
  static const LrVec2 room_m[] = { { 0, 0 }, { 7.2, 0 }, { 7.2, 4.45 }, { 6.25, 5.4 }, { 0, 5.4 } }, flat_m[] = { { 0, 0 }, { 1, 0 }, { 2, 0 } };
  double length_m = 0.0, width_m = 0.0;

  g_assert_true (lr_polygon_sides_m (room_m, G_N_ELEMENTS (room_m), &length_m, &width_m));
  g_assert_cmpfloat_with_epsilon (length_m, 7.2, 1e-9);
  g_assert_cmpfloat_with_epsilon (width_m, 5.4, 1e-9);
  g_assert_false (lr_polygon_sides_m (flat_m, 3, &length_m, &width_m));
  g_assert_false (lr_polygon_sides_m (room_m, 2, &length_m, &width_m));
  g_assert_cmpfloat_with_epsilon (width_m, 5.4, 1e-9);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (line_cases); i++)
    {
      g_autofree char *path = g_strdup_printf ("/free-line/line/%s", line_cases[i].name);

      g_test_add_data_func (path, &line_cases[i], test_line);
    }
  g_test_add_func ("/free-line/against-walls", test_against_walls);
  g_test_add_func ("/free-line/domain", test_line_domain);
  g_test_add_func ("/free-line/sides", test_sides);
  g_test_add_func ("/free-line/sides-cut", test_sides_cut);

  return g_test_run ();
}
