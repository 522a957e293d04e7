/* test-room.c - edits of the room, and what they do to the things on its walls
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "plan-test.h"

#include "polygon.h"

#include <math.h>

typedef struct
{
  const char *name;
  LrVec2      to_m;
  int         wall;
  double      along_m; /* of the near edge of a door 0.85 m wide */
} HangCase;

/* The room is 4 by 3 m; walls count anticlockwise from the lower one */
static const HangCase hang_cases[] = {
  { "slides", { 2.0, 0.2 }, 0, 1.575 },
  { "stops-at-the-first-corner", { 0.2, -0.3 }, 0, 0.0 },
  { "stops-at-the-second-corner", { 3.8, -0.3 }, 0, 3.15 },
  { "jumps", { 3.8, 1.5 }, 1, 1.075 },
  { "from-outside", { 2.0, 9.0 }, 2, 1.575 },
  { "backwards-along-the-upper-wall", { 3.0, 2.9 }, 2, 0.575 },
  { "tie-stays-on-its-wall", { 0.5, 0.5 }, 0, 0.075 },
};

static LrPlan *
room_with_door (void)
{
  g_autoptr (LrPlan) plan = new_room ();
  g_autoptr (LrItem) door = lr_item_new (LR_ITEM_DOOR, "");
  g_autoptr (GError) error = NULL;
  LrPlan *next = lr_plan_add (plan, door, lr_vec2 (2.0, 0.0), 0.0, NULL, &error);

  g_assert_no_error (error);

  return next;
}

static void
test_hang (gconstpointer data)
{
  const HangCase *c = data;
  g_autoptr (LrPlan) plan = room_with_door ();
  g_autoptr (GError) error = NULL;
  const LrItem *door;

  take_next (&plan, lr_plan_move (plan, "door-1", c->to_m, &error), &error);
  door = lr_plan_find (plan, "door-1");
  g_assert_cmpint (door->wall, ==, c->wall);
  g_assert_cmpfloat_with_epsilon (door->along_m, c->along_m, 1e-9);
}

/* A door that gets wider stays on its wall; one wider than the wall begins at the corner; changes of the wall are checked */
static void
test_wall_changes (void)
{
  g_autoptr (LrPlan) plan = room_with_door ();
  g_autoptr (GError) error = NULL;
  LrChange wider = { "door-1", "width-mm", 3.0 }, wall = { "door-1", "wall", 4.0 };

  take_next (&plan, lr_plan_change (plan, &wider, 1, &error), &error);
  g_assert_cmpfloat (lr_plan_find (plan, "door-1")->along_m, ==, 1.0);
  wider.value = 5.0;
  take_next (&plan, lr_plan_change (plan, &wider, 1, &error), &error);
  g_assert_cmpfloat (lr_plan_find (plan, "door-1")->along_m, ==, 0.0);
  g_assert_null (lr_plan_change (plan, &wall, 1, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
}

static void
test_no_wall (void)
{
  g_autoptr (LrPlan) plan = lr_plan_new_empty ();
  g_autoptr (LrItem) door = lr_item_new (LR_ITEM_DOOR, "");
  g_autoptr (GError) error = NULL;

  g_assert_null (lr_plan_add (plan, door, lr_vec2 (1.0, 1.0), 0.0, NULL, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
}

/* The room */

static void
test_corners (void)
{
  static const LrVec2 clockwise[] = { { 0.0, 0.0 }, { 0.0, 3.0004 }, { 4.0, 3.0 }, { 4.0, 0.0 } };
  static const LrVec2 crossing[] = { { 0.0, 0.0 }, { 4.0, 3.0 }, { 4.0, 0.0 }, { 0.0, 3.0 } };
  static const LrVec2 pair[] = { { 0.0, 0.0 }, { 4.0, 3.0 } };
  static const LrVec2 point[] = { { 0.0, 0.0 }, { 4.0, 0.0 }, { 4.0, 0.0001 } }; /* one point once rounded */
  static const LrVec2 nowhere[] = { { 0.0, 0.0 }, { 4.0, 0.0 }, { NAN, 3.0 } };
  g_autoptr (LrPlan) plan = lr_plan_new_empty ();
  g_autoptr (GError) error = NULL;
  const LrRoom *room;

  g_assert_cmpuint (lr_plan_get_setup (plan)->room->n_corners, ==, 0);
  take_next (&plan, lr_plan_set_corners (plan, clockwise, 4, &error), &error);
  room = lr_plan_get_setup (plan)->room;
  g_assert_cmpfloat_with_epsilon (lr_polygon_area_m2 (room->corners_m, room->n_corners), 12.0, 1e-12);

  g_assert_null (lr_plan_set_corners (plan, crossing, 4, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_null (lr_plan_set_corners (plan, pair, 2, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_null (lr_plan_set_corners (plan, point, 3, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_null (lr_plan_set_corners (plan, nowhere, 3, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
  g_clear_error (&error);
  take_next (&plan, lr_plan_set_corners (plan, NULL, 0, &error), &error);
  g_assert_cmpuint (lr_plan_get_setup (plan)->room->n_corners, ==, 0);
  assert_round_trip (plan);
}

/* What was taped is noted with the room, outlives a drag of its corners and walls, and is of another room after a drawing anew */
static void
test_taped (void)
{
  static const LrVec2 corners[] = { { 0.0, 0.0 }, { 4.0, 0.0 }, { 4.0, 3.0 }, { 0.0, 3.0 } };
  static const LrVec2 wider[] = { { 0.0, 0.0 }, { 4.5, 0.0 }, { 4.5, 3.0 }, { 0.0, 3.0 } };
  const LrTapeNote tape[] = { { 0, 1, 4.0, NULL }, { 3, 0, 2.99, NULL }, { 0, 2, 5.0004, NULL } };
  const LrTurnNote turns[] = { { 1, 90.0 * LR_DEG, NULL }, { 2, 88.04 * LR_DEG, NULL } };
  const LrTaped taped = { corners, 4, tape, 3, turns, 2 };
  g_autoptr (LrPlan) plan = lr_plan_new_empty ();
  g_autoptr (LrPlan) anew = NULL;
  g_autoptr (GError) error = NULL;
  const LrRoom *room;

  take_next (&plan, lr_plan_set_taped (plan, &taped, &error), &error);
  room = lr_plan_get_setup (plan)->room;
  g_assert_cmpuint (room->n_tape, ==, 3);
  g_assert_cmpfloat_with_epsilon (room->tape[2].length_m, 5.0, 1e-9);
  g_assert_cmpuint (room->n_turns, ==, 2);
  g_assert_cmpfloat_with_epsilon (room->turns[1].turn_rad, 88.0 * LR_DEG, 1e-9);
  assert_round_trip (plan);

  take_next (&plan, lr_plan_move_corner (plan, 2, lr_vec2 (4.1, 3.0), &error), &error);
  take_next (&plan, lr_plan_shift_corners (plan, wider, 4, &error), &error);
  g_assert_cmpuint (lr_plan_get_setup (plan)->room->n_tape, ==, 3);
  anew = lr_plan_set_corners (plan, wider, 4, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (lr_plan_get_setup (anew)->room->n_tape, ==, 0);
  g_assert_cmpuint (lr_plan_get_setup (anew)->room->n_turns, ==, 0);
  g_assert_false (lr_plan_equal (plan, anew));
}

/* Walked the other way round, the notes are counted as the corners are: wall 0, from corner 0 to 1, is the one that starts in the
 * third corner of four; a turn to the right is one to the left */
static void
test_taped_clockwise (void)
{
  static const LrVec2 corners[] = { { 0.0, 0.0 }, { 0.0, 3.0 }, { 4.0, 3.0 }, { 4.0, 0.0 } };
  const LrTapeNote tape[] = { { 0, 1, 3.0, NULL } };
  const LrTurnNote turns[] = { { 1, -90.0 * LR_DEG, NULL } };
  LrTaped taped = { corners, 4, tape, 1, turns, 1 };
  const LrTapeNote too_long = { 0, 1, 501.0, NULL };
  g_autoptr (LrPlan) plan = lr_plan_new_empty ();
  g_autoptr (GError) error = NULL;
  const LrRoom *room;

  take_next (&plan, lr_plan_set_taped (plan, &taped, &error), &error);
  room = lr_plan_get_setup (plan)->room;
  g_assert_cmpint (room->tape[0].from, ==, 2);
  g_assert_cmpint (room->tape[0].to, ==, 3);
  g_assert_cmpfloat_with_epsilon (lr_vec2_distance (room->corners_m[2], room->corners_m[3]), 3.0, 1e-9);
  g_assert_cmpint (room->turns[0].corner, ==, 2);
  g_assert_cmpfloat_with_epsilon (room->turns[0].turn_rad, 90.0 * LR_DEG, 1e-9);

  taped.tape = &too_long;
  g_assert_null (lr_plan_set_taped (plan, &taped, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
}

/* A room drawn anew: the door in the lower wall goes to the nearest of the new ones; without walls it is in the way */
static void
test_redraw (void)
{
  static const LrVec2 triangle[] = { { 0.0, -1.0 }, { 4.0, -1.0 }, { 2.0, 3.0 } };
  g_autoptr (LrPlan) plan = room_with_door ();
  g_autoptr (GError) error = NULL;

  g_assert_null (lr_plan_set_corners (plan, NULL, 0, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
  g_clear_error (&error);
  take_next (&plan, lr_plan_set_corners (plan, triangle, 3, &error), &error);
  g_assert_cmpint (lr_plan_find (plan, "door-1")->wall, ==, 0);
  g_assert_cmpfloat_with_epsilon (lr_plan_find (plan, "door-1")->along_m, 1.575, 1e-9);
}

static void
test_move_corner (void)
{
  g_autoptr (LrPlan) plan = room_with_door ();
  g_autoptr (GError) error = NULL;

  take_next (&plan, lr_plan_move (plan, "door-1", lr_vec2 (3.8, 0.0), &error), &error);
  take_next (&plan, lr_plan_move_corner (plan, 1, lr_vec2 (3.5, 0.0), &error), &error);
  g_assert_cmpfloat (lr_plan_get_setup (plan)->room->corners_m[1].x, ==, 3.5);
  g_assert_cmpfloat_with_epsilon (lr_plan_find (plan, "door-1")->along_m, 2.65, 1e-9); /* 3.5 less its width */

  g_assert_null (lr_plan_move_corner (plan, 1, lr_vec2 (-1.0, 2.0), &error)); /* over the wall on the left */
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
  g_clear_error (&error);
  g_assert_null (lr_plan_move_corner (plan, 4, lr_vec2 (0.0, 0.0), &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND);
}

static void
test_wall_length (void)
{
  g_autoptr (LrPlan) plan = read_example ("loft.lookroom");
  g_autoptr (GError) error = NULL;
  static const LrVec2 wider[] = { { 0.0, 0.0 }, { 7.5, 0.0 }, { 7.5, 4.45 }, { 6.55, 5.4 }, { 0.0, 5.4 } };
  const LrRoom *room;

  /* The lower wall is parallel to the upper one: the three corners between them move along */
  take_next (&plan, lr_plan_set_wall_length (plan, 0, 7.5, &error), &error);
  room = lr_plan_get_setup (plan)->room;
  for (guint i = 0; i < G_N_ELEMENTS (wider); i++)
    {
      g_assert_cmpfloat_with_epsilon (room->corners_m[i].x, wider[i].x, 1e-9);
      g_assert_cmpfloat_with_epsilon (room->corners_m[i].y, wider[i].y, 1e-9);
    }

  g_assert_null (lr_plan_set_wall_length (plan, 0, 0.0, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
  g_clear_error (&error);
  g_assert_null (lr_plan_set_wall_length (plan, 0, NAN, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
  g_clear_error (&error);
  g_assert_null (lr_plan_set_wall_length (plan, 5, 1.0, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND);
}

static void
test_room_members (void)
{
  g_autoptr (LrPlan) plan = new_room ();
  g_autoptr (GError) error = NULL;

  take_next (&plan, lr_plan_set_room (plan, "walls.reflectance-pct", 0.7, &error), &error);
  take_next (&plan, lr_plan_set_room_text (plan, "floor.material", "boards", &error), &error);
  take_next (&plan, lr_plan_set_room_text (plan, "floor-note", "creaks", &error), &error);
  g_assert_cmpfloat (lr_plan_get_setup (plan)->room->walls.reflectance, ==, 0.7);
  g_assert_cmpstr (lr_plan_get_setup (plan)->room->floor.material, ==, "boards");
  assert_round_trip (plan);

  g_assert_null (lr_plan_set_room (plan, "ceiling.reflectance-pct", 1.7, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
  g_clear_error (&error);
  g_assert_null (lr_plan_set_room (plan, "roof.reflectance-pct", 0.7, &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (hang_cases); i++)
    {
      g_autofree char *path = g_strconcat ("/room/hang/", hang_cases[i].name, NULL);

      g_test_add_data_func (path, &hang_cases[i], test_hang);
    }
  g_test_add_func ("/room/wall-changes", test_wall_changes);
  g_test_add_func ("/room/no-wall", test_no_wall);
  g_test_add_func ("/room/corners", test_corners);
  g_test_add_func ("/room/redraw", test_redraw);
  g_test_add_func ("/room/taped", test_taped);
  g_test_add_func ("/room/taped-clockwise", test_taped_clockwise);
  g_test_add_func ("/room/move-corner", test_move_corner);
  g_test_add_func ("/room/wall-length", test_wall_length);
  g_test_add_func ("/room/room-members", test_room_members);

  return g_test_run ();
}
