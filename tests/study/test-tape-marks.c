/* test-tape-marks.c - setting out by tape
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "fixture.h"
#include "tape_marks.h"

static const LrVec2 notch_m[] = { { 0.0, 0.0 }, { 5.2, 0.0 }, { 5.2, 4.1 }, { 2.2, 4.1 }, { 2.2, 2.6 }, { 0.0, 2.6 } };

static LrPlan *
room_of (const LrVec2 *corners_m,
         gsize         n)
{
  g_autoptr (LrPlan) box = fixture_room (5.0, 4.0, 2.5);
  g_autoptr (GError) error = NULL;
  LrPlan *plan = lr_plan_set_corners (box, corners_m, n, &error);

  g_assert_no_error (error);
  return plan;
}

static void
set_limit (LrPlan **plan,
           double   length_m)
{
  LrPlan *next = lr_plan_set_limit (*plan, LR_LIMIT_TAPE_LENGTH, length_m, NULL);

  g_assert_nonnull (next);
  lr_plan_unref (*plan);
  *plan = next;
}

static const LrTapeMark *
mark_at (const GArray *marks,
         guint         i)
{
  g_assert_cmpuint (i, <, marks->len);
  return &g_array_index (marks, LrTapeMark, i);
}

static void
assert_from (const LrTapeFix *fix,
             gsize            a,
             gsize            b)
{
  g_assert_cmpint (fix->way, !=, LR_FIX_NONE);
  g_assert_cmpuint (fix->from[0], ==, a);
  g_assert_cmpuint (fix->from[1], ==, b);
}

/* Two tapes of 3.20 m and 3.10 m from corners 5.00 m apart meet at (2.563, 1.916): trilateration by hand. The tapes cross at
 * 105 degrees; from the far corners they would at 38 */
static void
test_worked (void)
{
  g_autoptr (LrPlan) plan = fixture_room (5.0, 9.0, 2.5);
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (GArray) marks = NULL;
  const LrTapeMark *mark;
  const char *id = fixture_add (&plan, LR_ITEM_CAMERA, 0, 2.563, 1.916);

  fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_TABLE, 3.0, 6.0);
  study = lr_study_new (plan);
  marks = lr_tape_marks_new (study);
  g_assert_cmpuint (marks->len, ==, 1);
  mark = mark_at (marks, 0);
  g_assert_cmpstr (mark->placed->item->id, ==, id);
  assert_from (&mark->corners, 0, 1);
  assert_near (mark->corners.length_m[0], 3.20, 0.001);
  assert_near (mark->corners.length_m[1], 3.10, 0.001);
  assert_near (mark->corners.crossing_rad / LR_DEG, 105.0, 0.1);
  g_assert_false (mark->corners.is_poor);
  assert_from (&mark->walls, 0, 1);
  assert_near (mark->walls.length_m[0], 1.916, 1e-9);
  assert_near (mark->walls.length_m[1], 2.437, 1e-9);
  assert_near (mark->walls.crossing_rad / LR_DEG, 90.0, 1e-9);
  /* tapes of 4 mm and 0.2 mm per metre: square to each other the ellipse's half axes are their own errors */
  assert_near (mark->walls.error.major_m, 0.004 + 0.0002 * 2.437, 1e-12);
  assert_near (mark->walls.error.minor_m, 0.004 + 0.0002 * 1.916, 1e-12);
}

/* A chest in the corner: no tape can be held there */
static void
test_covered (void)
{
  g_autoptr (LrPlan) plan = fixture_room (5.0, 9.0, 2.5);
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (GArray) marks = NULL;

  fixture_add (&plan, LR_ITEM_CAMERA, 0, 2.563, 1.916);
  fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_CHEST, 0.3, 0.3);
  study = lr_study_new (plan);
  marks = lr_tape_marks_new (study);
  g_assert_cmpint (mark_at (marks, 0)->corners.way, ==, LR_FIX_CLEAR);
  for (gsize k = 0; k < 2; k++)
    g_assert_cmpuint (mark_at (marks, 0)->corners.from[k], !=, 0);
}

/* Seen by hand: the straight line from (0, 0) to the camera passes (2.125, 2.60), inside the wall that ends at the inner corner
 * (2.20, 2.60); only the corners at x 5.20, the inner one and (2.20, 4.10) see the camera. Its foot on the wall at y 2.60 lies
 * beyond that wall's end, and that on the left wall behind another. */
static void
test_notch (void)
{
  g_autoptr (LrPlan) plan = room_of (notch_m, G_N_ELEMENTS (notch_m));
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (GArray) marks = NULL;

  fixture_add (&plan, LR_ITEM_CAMERA, 0, 2.77, 3.39);
  study = lr_study_new (plan);
  marks = lr_tape_marks_new (study);
  for (gsize k = 0; k < 2; k++)
    {
      g_assert_true (mark_at (marks, 0)->corners.from[k] >= 1 && mark_at (marks, 0)->corners.from[k] <= 4);
      g_assert_true (mark_at (marks, 0)->walls.from[k] <= 3);
    }
}

/* Each mark in an arm of its own is taped from that arm */
static void
test_arms (void)
{
  static const LrVec2 corners_m[] = { { 0.0, 0.0 }, { 9.0, 0.0 }, { 9.0, 6.0 }, { 8.0, 6.0 },
                                      { 8.0, 1.0 }, { 1.0, 1.0 }, { 1.0, 6.0 }, { 0.0, 6.0 } };
  g_autoptr (LrPlan) plan = room_of (corners_m, G_N_ELEMENTS (corners_m));
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (GArray) marks = NULL;

  fixture_add (&plan, LR_ITEM_CAMERA, 0, 0.4, 5.3);
  fixture_add (&plan, LR_ITEM_CAMERA, 0, 8.6, 5.3);
  study = lr_study_new (plan);
  marks = lr_tape_marks_new (study);
  for (guint i = 0; i < 2; i++)
    for (gsize k = 0; k < 2; k++)
      {
        double x_m = mark_at (marks, i)->corners.from_m[k].x;

        g_assert_cmpint (mark_at (marks, i)->corners.way, ==, LR_FIX_CLEAR);
        g_assert_true (i == 0 ? x_m <= 1.0 : x_m >= 8.0);
      }
}

/* From the middle of 12 m by 12 m every corner is 8.49 m away, half a diagonal, and every wall 6 m */
static void
test_limit (void)
{
  g_autoptr (LrPlan) plan = fixture_room (12.0, 12.0, 2.5);

  fixture_add (&plan, LR_ITEM_CAMERA, 0, 6.0, 6.0);
  for (int i = 0; i < 3; i++)
    {
      static const double limit_m[] = { 8.0, 8.5, 5.9 };
      g_autoptr (LrStudy) study = NULL;
      g_autoptr (GArray) marks = NULL;

      set_limit (&plan, limit_m[i]);
      study = lr_study_new (plan);
      marks = lr_tape_marks_new (study);
      g_assert_cmpint (mark_at (marks, 0)->corners.way, ==, i == 1 ? LR_FIX_CLEAR : LR_FIX_NONE);
      g_assert_cmpint (mark_at (marks, 0)->walls.way, ==, i == 2 ? LR_FIX_NONE : LR_FIX_CLEAR);
      if (i == 1)
        assert_near (mark_at (marks, 0)->corners.crossing_rad / LR_DEG, 90.0, 1e-9);
    }
}

/* Before a doorway there is no wall to tape from, and a sofa stands before another; a table lets the tape through */
static void
test_in_the_way (void)
{
  g_autoptr (LrPlan) plan = fixture_room (6.0, 5.0, 2.5);
  g_autoptr (LrStudy) open = NULL, sofa = NULL, table = NULL;
  g_autoptr (GArray) by_door = NULL, by_sofa = NULL, by_table = NULL;
  const char *in_the_way;

  fixture_add (&plan, LR_ITEM_CAMERA, 0, 2.0, 1.5);
  fixture_add (&plan, LR_ITEM_DOOR, 0, 2.0, 0.0);
  open = lr_study_new (plan);
  by_door = lr_tape_marks_new (open);
  assert_from (&mark_at (by_door, 0)->walls, 2, 3);
  g_assert_cmpint (mark_at (by_door, 0)->walls.way, ==, LR_FIX_CLEAR);

  in_the_way = fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_SOFA, 0.8, 1.5);
  sofa = lr_study_new (plan);
  by_sofa = lr_tape_marks_new (sofa);
  assert_from (&mark_at (by_sofa, 0)->walls, 1, 2); /* the wall of the sofa is no use while another is clear */

  fixture_set (&plan, in_the_way, "form", LR_FURNITURE_TABLE);
  table = lr_study_new (plan);
  by_table = lr_tape_marks_new (table);
  assert_from (&mark_at (by_table, 0)->walls, 2, 3);
}

/* Walled in by cabinets: there is no other way than over them, and that is said */
static void
test_over (void)
{
  g_autoptr (LrPlan) plan = fixture_room (6.0, 6.0, 2.5);
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (GArray) marks = NULL;
  static const LrVec2 at_m[] = { { 3.0, 1.5 }, { 3.0, 4.5 }, { 1.5, 3.0 }, { 4.5, 3.0 } };

  fixture_add (&plan, LR_ITEM_CAMERA, 0, 3.0, 3.0);
  for (gsize i = 0; i < G_N_ELEMENTS (at_m); i++)
    {
      const char *id = fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_CABINET, at_m[i].x, at_m[i].y);

      fixture_set (&plan, id, "length-mm", 1.0);
      fixture_set (&plan, id, "width-mm", 1.0);
    }
  study = lr_study_new (plan);
  marks = lr_tape_marks_new (study);
  g_assert_cmpint (mark_at (marks, 0)->walls.way, ==, LR_FIX_OVER);
  g_assert_cmpint (mark_at (marks, 0)->corners.way, ==, LR_FIX_CLEAR); /* between the cabinets, to the corners */
}

static void
test_outside (void)
{
  g_autoptr (LrPlan) plan = fixture_room (5.0, 4.0, 2.5);
  g_autoptr (LrPlan) empty = fixture_empty ();
  g_autoptr (LrStudy) study = NULL, nothing = lr_study_new (empty);
  g_autoptr (GArray) marks = NULL, none = lr_tape_marks_new (nothing);
  LrTapeGrid grid = { .wall = 99 };

  g_assert_cmpuint (none->len, ==, 0);
  g_assert_false (lr_tape_grid (nothing->setup->room, &grid));
  g_assert_cmpuint (grid.wall, ==, 99);

  fixture_add (&plan, LR_ITEM_CAMERA, 0, 5.6, 2.0);
  study = lr_study_new (plan);
  marks = lr_tape_marks_new (study);
  g_assert_false (mark_at (marks, 0)->is_inside);
  g_assert_cmpint (mark_at (marks, 0)->walls.way, ==, LR_FIX_NONE);
  g_assert_cmpint (mark_at (marks, 0)->corners.way, ==, LR_FIX_NONE);
  g_assert_cmpint (mark_at (marks, 0)->aim_wall, ==, -1);
}

/* --- Against every pair --------------------------------------------------------------------------------------- */

/* By many points along the way, and whether each is in the room by counting crossings of a ray: not as the program does it */
static gboolean
is_seen (const LrVec2 *room_m,
         gsize         n,
         LrVec2        from_m,
         LrVec2        to_m)
{
  for (int k = 1; k < 400; k++)
    {
      LrVec2 at_m = lr_vec2_along (from_m, lr_vec2_sub (to_m, from_m), k / 400.0);
      gboolean is_in = FALSE;

      for (gsize i = 0, j = n - 1; i < n; j = i++)
        if ((room_m[i].y > at_m.y) != (room_m[j].y > at_m.y)
            && at_m.x < (room_m[j].x - room_m[i].x) * (at_m.y - room_m[i].y) / (room_m[j].y - room_m[i].y) + room_m[i].x)
          is_in = !is_in;
      if (!is_in)
        return FALSE;
    }

  return TRUE;
}

/* Longer half axis of the ellipse by its sum and product, T = (a^2 + b^2) / sin^2 and D = a^2 b^2 / sin^2 */
static double
worst_of (double a_m,
          double b_m,
          double crossing_rad)
{
  double sine2 = sin (crossing_rad) * sin (crossing_rad), sa = 0.004 + 0.0002 * a_m, sb = 0.004 + 0.0002 * b_m;
  double sum = (sa * sa + sb * sb) / sine2, product = sa * sa * sb * sb / sine2;

  return sqrt (0.5 * (sum + sqrt (fmax (0.0, sum * sum - 4.0 * product))));
}

/* The angle at a place by the law of cosines */
static double
angle_between (LrVec2 at_m,
               LrVec2 p_m,
               LrVec2 q_m)
{
  double a = lr_vec2_distance (at_m, p_m), b = lr_vec2_distance (at_m, q_m), c = lr_vec2_distance (p_m, q_m);

  return acos (CLAMP ((a * a + b * b - c * c) / (2.0 * a * b), -1.0, 1.0));
}

/* Least over all pairs of points, fair ones before flat ones; @n_pairs: how many there are */
static double
best_of (LrVec2        mark_m,
         const LrVec2 *points_m,
         gsize         n,
         guint        *n_pairs)
{
  double best_m = HUGE_VAL;
  gboolean is_fair = FALSE;

  *n_pairs = 0;
  for (gsize i = 0; i < n; i++)
    for (gsize j = i + 1; j < n; j++)
      {
        double angle = angle_between (mark_m, points_m[i], points_m[j]);
        gboolean is_this_fair = angle >= 30.0 * LR_DEG && angle <= 150.0 * LR_DEG;
        double error_m = worst_of (lr_vec2_distance (mark_m, points_m[i]), lr_vec2_distance (mark_m, points_m[j]), angle);

        if (sin (angle) < 1e-6)
          continue;
        (*n_pairs)++;
        if ((is_this_fair && !is_fair) || (is_this_fair == is_fair && error_m < best_m))
          {
            best_m = error_m;
            is_fair = is_this_fair;
          }
      }

  return best_m;
}

static void
check_against_all (const LrTapeMark *mark,
                   const LrVec2     *room_m,
                   gsize             n)
{
  LrVec2 corners_m[8], feet_m[8];
  gsize n_corners = 0, n_feet = 0;
  guint n_pairs;
  double best_m;

  for (gsize i = 0; i < n; i++)
    {
      LrVec2 a_m = room_m[i], b_m = room_m[(i + 1) % n], foot_m;
      double share = lr_vec2_dot (lr_vec2_sub (mark->mark_m, a_m), lr_vec2_sub (b_m, a_m))
                     / lr_vec2_dot (lr_vec2_sub (b_m, a_m), lr_vec2_sub (b_m, a_m));

      if (lr_vec2_distance (a_m, mark->mark_m) <= 8.0 && is_seen (room_m, n, mark->mark_m, a_m))
        corners_m[n_corners++] = a_m;
      foot_m = lr_vec2_along (a_m, lr_vec2_sub (b_m, a_m), share);
      if (share >= 0.0 && share <= 1.0 && lr_vec2_distance (foot_m, mark->mark_m) <= 8.0 && is_seen (room_m, n, mark->mark_m, foot_m))
        feet_m[n_feet++] = foot_m;
    }

  best_m = best_of (mark->mark_m, corners_m, n_corners, &n_pairs);
  g_assert_cmpint (mark->corners.way, ==, n_pairs > 0 ? LR_FIX_CLEAR : LR_FIX_NONE);
  if (n_pairs > 0)
    assert_near (mark->corners.error.major_m, best_m, 1e-8);

  best_m = best_of (mark->mark_m, feet_m, n_feet, &n_pairs);
  g_assert_cmpint (mark->walls.way, ==, n_pairs > 0 ? LR_FIX_CLEAR : LR_FIX_NONE);
  if (n_pairs > 0)
    assert_near (mark->walls.error.major_m, best_m, 1e-8);
}

static void
test_all_pairs (void)
{
  static const LrVec2 box_m[] = { { 0.0, 0.0 }, { 9.0, 0.0 }, { 9.0, 7.0 }, { 0.0, 7.0 } };
  static const LrVec2 cut_m[] = { { 0.0, 0.0 }, { 7.2, 0.0 }, { 7.2, 4.45 }, { 6.25, 5.4 }, { 0.0, 5.4 } };
  static const struct { const LrVec2 *room_m; gsize n; } rooms[] = {
    { box_m, G_N_ELEMENTS (box_m) }, { cut_m, G_N_ELEMENTS (cut_m) }, { notch_m, G_N_ELEMENTS (notch_m) }
  };

  g_test_message ("exhaustive search, with sight by points, angles by the law of cosines and the ellipse by sum and product");
  for (gsize r = 0; r < G_N_ELEMENTS (rooms); r++)
    for (int k = 0; k < 60; k++)
      {
        g_autoptr (LrPlan) plan = room_of (rooms[r].room_m, rooms[r].n);
        LrVec2 at_m = { g_test_rand_double_range (0.05, rooms[r].room_m[1].x - 0.05), g_test_rand_double_range (0.05, 5.0) };
        g_autoptr (LrStudy) study = NULL;
        g_autoptr (GArray) marks = NULL;

        /* to a millimetre, as places are kept; off the corner's lines of sight by as much */
        at_m = lr_vec2 (round (at_m.x * 1e3) / 1e3 + 0.0005, round (at_m.y * 1e3) / 1e3 + 0.0005);
        if (!is_seen (rooms[r].room_m, rooms[r].n, at_m, lr_vec2_along (at_m, lr_vec2 (1.0, 0.3), 1e-4)))
          continue;
        fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_PANEL, at_m.x, at_m.y);
        study = lr_study_new (plan);
        marks = lr_tape_marks_new (study);
        check_against_all (mark_at (marks, 0), rooms[r].room_m, rooms[r].n);
      }
}

/* --- What is read --------------------------------------------------------------------------------------------- */

static const LrTapeMark *
find (const GArray *marks,
      const char   *tag)
{
  for (guint i = 0; i < marks->len; i++)
    if (g_str_equal (mark_at (marks, i)->placed->item->tag, tag))
      return mark_at (marks, i);

  g_assert_not_reached ();
}

/* The example's room as visual.md tells it: corners (0,0) (7.20,0) (7.20,4.45) (6.25,5.40) (0,5.40), north 22 degrees clockwise of up */
static void
test_loft (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (GArray) marks = lr_tape_marks_new (study);
  const LrTapeMark *a = find (marks, "A"), *boom = find (marks, "M1");
  g_autofree char *spot = lr_tape_mark_spot (a), *aim = lr_tape_mark_aim (a, LR_UNITS_METRIC), *feet = lr_tape_mark_aim (a, LR_UNITS_IMPERIAL);
  g_autofree char *out = lr_tape_mark_aim (boom, LR_UNITS_METRIC);
  LrVec2 along;
  LrTapeGrid grid;

  g_assert_true (lr_tape_grid (study->setup->room, &grid));
  g_assert_cmpuint (grid.wall, ==, 0);
  assert_near (a->grid_m.x, 4.81, 1e-9);
  assert_near (a->grid_m.y, 2.80, 1e-9);
  g_assert_cmpint (a->height_of, ==, LR_HEIGHT_LENS);
  assert_near (a->height_m, 1.20, 1e-9);
  g_assert_cmpstr (spot, ==, "camera, tripod");

  /* the spot on the wall lies on the lens axis, at the wall's x */
  g_assert_cmpint (a->aim_wall, ==, 4);
  assert_near (a->aim_at_m.x, 0.0, 1e-9);
  assert_near (a->aim_along_m, 5.40 - a->aim_at_m.y, 1e-9);
  along = lr_vec2_sub (a->aim_at_m, a->mark_m);
  assert_near (lr_vec2_cross (along, lr_vec2_polar (a->facing_rad, 1.0)), 0.0, 1e-9);
  g_assert_cmpstr (aim, ==, "at Wenna; wall 5, 2.69\u00a0m from corner 5");
  /* 2.685 to 2.692 m are 105.7 to 105.99 in: 8 ft 9 3/4 in to a quarter, or 10 */
  g_assert_cmpfloat (a->aim_along_m, <, 2.6893); /* 105.875 in */
  g_assert_nonnull (strstr (feet, "wall 5, 8′\u00a09¾″ from corner 5"));
  assert_near (a->bearing_rad / LR_DEG, fmod (90.0 - a->facing_rad / LR_DEG - 22.0 + 720.0, 360.0), 1e-9);

  g_assert_cmpint (boom->height_of, ==, LR_HEIGHT_CAPSULE);
  assert_near (boom->reach_m, lr_vec2_distance (boom->mark_m, lr_vec3_flat (boom->placed->point_m)), 1e-12);
  g_assert_true (isnan (boom->tilt_rad));
  g_assert_true (g_str_has_suffix (out, "capsule 1.79\u00a0m out")); /* as the example's cautions have it */
}

/* People, cameras, lights, microphones, panels: what the rest is measured against comes first */
static void
test_order (void)
{
  g_autoptr (LrPlan) plan = fixture_room (6.0, 6.0, 2.5);
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (GArray) marks = NULL;
  static const LrItemKind kinds[] = { LR_ITEM_PERSON, LR_ITEM_CAMERA, LR_ITEM_LIGHT, LR_ITEM_MICROPHONE, LR_ITEM_PANEL };

  for (gsize i = G_N_ELEMENTS (kinds); i-- > 0; )
    fixture_add (&plan, kinds[i], 0, 1.0 + (double) i * 0.9, 3.0);
  fixture_add (&plan, LR_ITEM_MICROPHONE, LR_MIC_LAVALIER, 2.0, 2.0);
  study = lr_study_new (plan);
  marks = lr_tape_marks_new (study);
  g_assert_cmpuint (marks->len, ==, G_N_ELEMENTS (kinds));
  for (guint i = 0; i < marks->len; i++)
    g_assert_cmpint (mark_at (marks, i)->placed->item->kind, ==, kinds[i]);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tape-marks/worked", test_worked);
  g_test_add_func ("/tape-marks/covered-corner", test_covered);
  g_test_add_func ("/tape-marks/notch", test_notch);
  g_test_add_func ("/tape-marks/arms", test_arms);
  g_test_add_func ("/tape-marks/limit", test_limit);
  g_test_add_func ("/tape-marks/in-the-way", test_in_the_way);
  g_test_add_func ("/tape-marks/over", test_over);
  g_test_add_func ("/tape-marks/outside", test_outside);
  g_test_add_func ("/tape-marks/all-pairs", test_all_pairs);
  g_test_add_func ("/tape-marks/loft", test_loft);
  g_test_add_func ("/tape-marks/order", test_order);

  return g_test_run ();
}
