/* test-snapping.c - where a dragged point wants to be
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Expected places are elementary geometry, worked by hand beside each case.
 */

#include "snapping.h"

#include <glib.h>

#define NEAR_M 1e-9

static const LrSnapPull pull = { .step_m = 0.05, .reach_m = 0.10, .reach_rad = 4.0 * LR_DEG };

static void
assert_place (LrVec2 at_m,
              double x_m,
              double y_m)
{
  g_assert_cmpfloat_with_epsilon (at_m.x, x_m, NEAR_M);
  g_assert_cmpfloat_with_epsilon (at_m.y, y_m, NEAR_M);
}

static void
test_value (void)
{
  g_assert_cmpfloat_with_epsilon (lr_snap_value (1.234, 0.01), 1.23, NEAR_M);
  g_assert_cmpfloat_with_epsilon (lr_snap_value (-1.234, 0.05), -1.25, NEAR_M);
  g_assert_cmpfloat (lr_snap_value (1.234, 0.0), ==, 1.234);
  g_assert_cmpfloat (lr_snap_value (1.234, -1.0), ==, 1.234);
  g_assert_true (isnan (lr_snap_value (NAN, 0.05)));
}

typedef struct
{
  const char *name;
  double      angle_deg, step_deg, reach_deg; /* in */
  double      expected_deg;
} AngleCase;

static const AngleCase angle_cases[] = {
  { "pulled",           88.5,  90.0, 2.0,  90.0 },
  { "out-of-reach",     87.5,  90.0, 2.0,  87.5 },
  { "at-reach",         -2.0,  15.0, 2.0,   0.0 },
  { "wraps",           359.0,  15.0, 2.0,   0.0 },
  { "half-turn",      -179.0,  15.0, 2.0, 180.0 },
};

static void
test_angle (gconstpointer data)
{
  const AngleCase *c = data;
  double angle_rad = lr_snap_angle_rad (c->angle_deg * LR_DEG, c->step_deg * LR_DEG, c->reach_deg * LR_DEG + 1e-12);

  g_assert_cmpfloat_with_epsilon (lr_angle_wrap_rad (angle_rad - c->expected_deg * LR_DEG), 0.0, 1e-9);
}

static void
test_step (void)
{
  g_assert_cmpfloat (lr_snap_step_m (102.0), ==, 0.01);
  g_assert_cmpfloat (lr_snap_step_m (75.6), ==, 0.05);
  g_assert_cmpfloat (lr_snap_step_m (10.0), ==, 0.10);
}

typedef struct
{
  const char *name;
  LrVec2      corners_m[6]; /* in */
  size_t      n;
  LrVec2      point_m;
  LrVec2      expected_m;
  unsigned    why;
} CornerCase;

/* 0.10 off in 3.02 m is 1.9 degrees, in reach; .33 in 4.00 is 4.7 degrees, out of it. (2.02 + 1.99) / sqrt 2 = 2.836, rounded
 * to 2.85 along the diagonal. */
static const CornerCase corner_cases[] = {
  { "first-on-grid",     { { 0, 0 } }, 0, { 1.234, 2.211 }, { 1.25, 2.20 }, 0 },
  { "along-x",           { { 0, 0 } }, 1, { 3.02, 0.10 }, { 3.00, 0.0 }, LR_SNAP_DIRECTION },
  { "along-diagonal",    { { 0, 0 } }, 1, { 2.02, 1.99 },
    { 2.85 * 0.70710678118654752, 2.85 * 0.70710678118654752 }, LR_SNAP_DIRECTION },

  { "free",              { { 0, 0 } }, 1, { 4.00, 0.33 }, { 4.00, 0.35 }, 0 },
  { "right-angle",       { { 0, 0 }, { 4, 0 } }, 2, { 4.08, 2.51 }, { 4.0, 2.50 }, LR_SNAP_DIRECTION },
  { "over-first-corner", { { 0, 0 }, { 4, 0 }, { 4, 2.5 } }, 3, { 0.06, 2.55 }, { 0.0, 2.5 },
    LR_SNAP_DIRECTION | LR_SNAP_ALIGN_X },
  { "closes",            { { 0, 0 }, { 4, 0 }, { 4, 2.5 }, { 0, 2.5 } }, 4, { 0.05, 0.07 }, { 0, 0 }, LR_SNAP_FIRST },
  { "two-do-not-close",  { { 0, 0 }, { 4, 0 } }, 2, { 0.03, 0.0 }, { 0.0, 0.0 }, LR_SNAP_DIRECTION | LR_SNAP_ALIGN_X },
  /* the 3-4-5 triangle: a first wall along (.8, .6); square to it is (-.6, .8); 2 m of that is (-1.2, 1.6) */
  { "askew-right-angle", { { 0, 0 }, { 4, 3 } }, 2, { 2.82, 4.61 }, { 2.8, 4.6 }, LR_SNAP_DIRECTION },
  /* no direction in reach, but level with the first corner's line along x */
  { "level-with-first",  { { 0, 0 }, { 3, 0 }, { 4.0, 2.3 } }, 3, { 7.0, 0.04 }, { 7.0, 0.0 }, LR_SNAP_ALIGN_Y },
};

static void
test_corner (gconstpointer data)
{
  const CornerCase *c = data;
  LrSnap snap = lr_snap_corner (c->corners_m, c->n, c->point_m, &pull);

  g_assert_cmpuint (snap.why, ==, c->why);
  assert_place (snap.at_m, c->expected_m.x, c->expected_m.y);
}

static void
test_corner_without_pull (void)
{
  const LrVec2 corners_m[] = { { 0, 0 }, { 4, 0 }, { 4, 2.5 } };
  const LrSnapPull none = { 0 };
  LrSnap snap = lr_snap_corner (corners_m, 3, lr_vec2 (0.001, 2.501), &none);

  g_assert_cmpuint (snap.why, ==, 0);
  assert_place (snap.at_m, 0.001, 2.501);
}

/* A pier of 8 cm: a fine pull leaves it, and still the room closes as near as a hand comes */
static void
test_corner_fine (void)
{
  const LrVec2 corners_m[] = { { 0, 0 }, { 4, 0 }, { 4, 2.5 } };
  const LrSnapPull fine = { .step_m = 0.01, .reach_m = 0.05, .reach_rad = 4.0 * LR_DEG, .close_m = 0.15 };
  LrSnap snap = lr_snap_corner (corners_m, 3, lr_vec2 (0.083, 2.52), &fine);

  g_assert_cmpuint (snap.why, ==, LR_SNAP_DIRECTION);
  assert_place (snap.at_m, 0.08, 2.5);
  snap = lr_snap_corner (corners_m, 3, lr_vec2 (0.08, 0.09), &fine);
  g_assert_cmpuint (snap.why, ==, LR_SNAP_FIRST);
  assert_place (snap.at_m, 0.0, 0.0);
}

static void
test_place (void)
{
  const LrVec2 others_m[] = { { 1.0, 1.0 }, { 1.12, 5.0 }, { 3.0, 2.0 } };
  LrSnap snap = lr_snap_place (lr_vec2 (1.08, 2.03), others_m, 3, &pull);

  /* 1.12 is nearer to 1.08 than 1.00 is; 2.00 is the only one level with 2.03 */
  g_assert_cmpuint (snap.why, ==, LR_SNAP_ALIGN_X | LR_SNAP_ALIGN_Y);
  assert_place (snap.at_m, 1.12, 2.0);
  assert_place (snap.x_from_m, 1.12, 5.0);
  assert_place (snap.y_from_m, 3.0, 2.0);

  snap = lr_snap_place (lr_vec2 (2.03, 3.99), NULL, 0, &pull);
  g_assert_cmpuint (snap.why, ==, 0);
  assert_place (snap.at_m, 2.05, 4.0);
}

typedef struct
{
  const char *name;
  double      x_m, y_m, turn_deg;  /* a box of 1.0 x 0.4 */
  double      move_x_m, move_y_m;
} WallCase;

/* Room 5 x 4. Half sizes .5 and .2: flush with the south wall at y = .2, in the corner at x = .5. Turned by 90 degrees: .5 high. */
static const WallCase wall_cases[] = {
  { "middle",        2.5, 2.0,   0.0,  0.0,   0.0 },
  { "south",         2.5, 0.25,  0.0,  0.0,  -0.05 },
  { "reaches-in",    2.5, 0.13,  0.0,  0.0,   0.07 },
  { "corner",        0.56, 0.24, 0.0, -0.06, -0.04 },
  { "east-turned",   4.73, 2.0, 90.0,  0.07,  0.0 },
  { "outside",       6.0, 2.0,   0.0,  0.0,   0.0 },
};

static void
test_walls (gconstpointer data)
{
  const WallCase *c = data;
  const LrVec2 room_m[] = { { 0, 0 }, { 5, 0 }, { 5, 4 }, { 0, 4 } };
  LrOutline box = lr_outline_box (lr_vec2 (c->x_m, c->y_m), 1.0, 0.4, c->turn_deg * LR_DEG);

  assert_place (lr_snap_to_walls (&box, room_m, 4, 0.10), c->move_x_m, c->move_y_m);
}

static void
test_walls_disc (void)
{
  const LrVec2 room_m[] = { { 0, 0 }, { 5, 0 }, { 5, 4 }, { 0, 4 } };
  LrOutline disc = lr_outline_disc (lr_vec2 (0.35, 2.0), 0.3);

  assert_place (lr_snap_to_walls (&disc, room_m, 4, 0.10), -0.05, 0.0);
}

/* In a corner that is not square the thing is flush with both walls: checked by the distances themselves */
static void
test_walls_slanting (void)
{
  const LrVec2 room_m[] = { { 0, 0 }, { 6, 0 }, { 4, 4 }, { 0, 4 } };
  LrOutline disc = lr_outline_disc (lr_vec2 (5.46, 0.33), 0.3);
  LrVec2 move_m = lr_snap_to_walls (&disc, room_m, 4, 0.10);
  LrVec2 at_m = lr_vec2_add (disc.centre_m, move_m);

  g_assert_cmpfloat_with_epsilon (at_m.y, 0.3, NEAR_M);
  g_assert_cmpfloat_with_epsilon (lr_segment_distance_m (room_m[1], room_m[2], at_m, NULL), 0.3, NEAR_M);
}

static void
test_shift_wall (void)
{
  /* a right trapezium: the slanting wall goes up by 4 and back by 2, so .5 m higher is .25 m further back */
  const LrVec2 room_m[] = { { 0, 0 }, { 6, 0 }, { 4, 4 }, { 0, 4 } };
  LrVec2 out_m[4];

  g_assert_true (lr_shift_wall (room_m, 4, 0, 0.5, out_m));
  assert_place (out_m[0], 0.0, 0.5);
  assert_place (out_m[1], 5.75, 0.5);
  assert_place (out_m[2], 4.0, 4.0);
  assert_place (out_m[3], 0.0, 4.0);

  /* there and back again, in place */
  g_assert_true (lr_shift_wall (out_m, 4, 0, -0.5, out_m));
  for (int i = 0; i < 4; i++)
    assert_place (out_m[i], room_m[i].x, room_m[i].y);
}

static void
test_shift_wall_straight_on (void)
{
  /* a corner of 180 degrees on the south wall: the half beside it stays, the corner moves square to the wall */
  const LrVec2 room_m[] = { { 0, 0 }, { 3, 0 }, { 6, 0 }, { 6, 4 }, { 0, 4 } };
  LrVec2 out_m[5];

  g_assert_true (lr_shift_wall (room_m, 5, 0, -1.0, out_m));
  assert_place (out_m[0], 0.0, -1.0);
  assert_place (out_m[1], 3.0, -1.0);
  assert_place (out_m[2], 6.0, 0.0);
}

static void
test_shift_wall_domain (void)
{
  const LrVec2 room_m[] = { { 0, 0 }, { 0, 0 }, { 4, 4 } };
  LrVec2 out_m[3] = { { 9, 9 }, { 9, 9 }, { 9, 9 } };

  g_assert_false (lr_shift_wall (room_m, 3, 0, 0.5, out_m)); /* no length */
  g_assert_false (lr_shift_wall (room_m, 3, 3, 0.5, out_m));
  g_assert_false (lr_shift_wall (room_m, 2, 1, 0.5, out_m));
  g_assert_false (lr_shift_wall (room_m, 3, 1, NAN, out_m));
  g_assert_false (lr_shift_wall (room_m, 3, 1, INFINITY, out_m));
  assert_place (out_m[0], 9.0, 9.0);
}

static void
test_crosses (void)
{
  const LrVec2 path_m[] = { { 0, 0 }, { 4, 0 }, { 4, 3 }, { 2, 3 } };

  g_assert_false (lr_path_crosses (path_m, 4, lr_vec2 (2.0, 1.0)));
  g_assert_true (lr_path_crosses (path_m, 4, lr_vec2 (2.0, -1.0)));
  g_assert_true (lr_path_crosses (path_m, 4, lr_vec2 (2.0, 0.0)));  /* touches */
  g_assert_false (lr_path_crosses (path_m, 4, lr_vec2 (0.0, 0.0))); /* closes */
  g_assert_true (lr_path_crosses (path_m, 4, lr_vec2 (-2.0 - 1e-15, -3.0))); /* through the first corner, but for rounding */
  g_assert_true (lr_path_crosses (path_m, 4, lr_vec2 (3.0, 3.0)));  /* walks back */
  g_assert_false (lr_path_crosses (path_m, 4, lr_vec2 (1.0, 3.0))); /* straight on */
  g_assert_false (lr_path_crosses (path_m, 1, lr_vec2 (1.0, 3.0)));
}

#define ADD_CASES(path, cases, function)                                        \
  for (size_t i = 0; i < G_N_ELEMENTS (cases); i++)                             \
    {                                                                           \
      g_autofree char *name = g_strconcat (path, cases[i].name, NULL);          \
      g_test_add_data_func (name, &cases[i], function);                         \
    }

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/snapping/value", test_value);
  ADD_CASES ("/snapping/angle/", angle_cases, test_angle)
  g_test_add_func ("/snapping/step", test_step);
  g_test_add_func ("/snapping/corner-fine", test_corner_fine);
  ADD_CASES ("/snapping/corner/", corner_cases, test_corner)
  g_test_add_func ("/snapping/corner/no-pull", test_corner_without_pull);
  g_test_add_func ("/snapping/place", test_place);
  ADD_CASES ("/snapping/walls/", wall_cases, test_walls)
  g_test_add_func ("/snapping/walls/disc", test_walls_disc);
  g_test_add_func ("/snapping/walls/slanting", test_walls_slanting);
  g_test_add_func ("/snapping/shift-wall/slanting", test_shift_wall);
  g_test_add_func ("/snapping/shift-wall/straight-on", test_shift_wall_straight_on);
  g_test_add_func ("/snapping/shift-wall/domain", test_shift_wall_domain);
  g_test_add_func ("/snapping/crosses", test_crosses);

  return g_test_run ();
}
