/* test-found.c - a room that is found otherwise: what goes along with its walls, and the set that moves as one
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where things must be is worked out by hand from the room of 4 by 3 m: its walls count anticlockwise from the lower one.
 */

#include "plan-test.h"

#include <math.h>

static char *
add (LrPlan    **plan,
     LrItemKind  kind,
     int         form,
     double      x_m,
     double      y_m)
{
  g_autoptr (LrItem) item = lr_item_new_usual (kind, form, "");
  g_autoptr (GError) error = NULL;
  char *id = NULL;

  take_next (plan, lr_plan_add (*plan, item, lr_vec2 (x_m, y_m), 0.0, &id, &error), &error);
  return id;
}

/* A box so long (along x) and wide, with its middle there */
static void
add_box (LrPlan **plan,
         double   x_m,
         double   y_m,
         double   length_m,
         double   width_m)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *id = add (plan, LR_ITEM_FURNITURE, LR_FURNITURE_BOX, x_m, y_m);
  const LrChange changes[] = { { id, "length-mm", length_m }, { id, "width-mm", width_m } };

  take_next (plan, lr_plan_change (*plan, changes, 2, &error), &error);
}

static LrVec2
place (const LrPlan *plan,
       const char   *id)
{
  const LrItem *item = lr_plan_find (plan, id);

  g_assert_nonnull (item);
  return item->at_m;
}

static void
assert_at (const LrPlan *plan,
           const char   *id,
           double        x_m,
           double        y_m)
{
  LrVec2 at_m = place (plan, id);

  g_test_message ("%s", id);
  g_assert_cmpfloat_with_epsilon (at_m.x, x_m, 1e-9);
  g_assert_cmpfloat_with_epsilon (at_m.y, y_m, 1e-9);
}

/* furniture-1 at the right wall, -2 in the lower right corner, -3 at the lower wall by its first end, -4 at the lower wall near
 * its second, -5 in the room, -6 under the person */
static LrPlan *
furnished (void)
{
  LrPlan *plan = new_room ();

  add_box (&plan, 3.8, 2.0, 0.4, 0.6);
  add_box (&plan, 3.75, 0.25, 0.5, 0.5);
  add_box (&plan, 0.5, 0.2, 0.8, 0.4);
  add_box (&plan, 2.9, 0.2, 0.6, 0.4);
  add_box (&plan, 0.8, 2.2, 0.4, 0.4);
  add_box (&plan, 2.0, 1.5, 0.5, 0.5);

  return plan;
}

static LrPlan *
as_found (LrPlan *plan)
{
  g_autoptr (LrPlan) planned = plan;
  g_autoptr (GError) error = NULL;
  LrPlan *found = lr_plan_copy_found (planned, "As planned, as found", &error);

  g_assert_no_error (error);
  g_assert_cmpstr (lr_plan_get_setup (found)->found_of, ==, "setup-1");
  g_assert_cmpstr (lr_plan_planned (found)->id, ==, "setup-1");

  return found;
}

typedef struct
{
  const char *id;
  LrGoes      goes;
  int         wall;
} GoesCase;

static void
test_goes_with (void)
{
  static const GoesCase cases[] = {
    { "furniture-1", LR_GOES_WALL, 1 }, { "furniture-2", LR_GOES_WALL, 0 }, { "furniture-3", LR_GOES_WALL, 0 },
    { "furniture-4", LR_GOES_WALL, 0 }, { "furniture-5", LR_GOES_ROOM, -1 }, { "furniture-6", LR_GOES_SET, -1 },
    { "person-1", LR_GOES_SET, -1 },
  };
  g_autoptr (LrPlan) plan = furnished ();
  const LrChange stay = { "furniture-6", "goes-with", LR_GOES_ROOM }, hang = { "person-1", "goes-with", LR_GOES_WALL };
  g_autoptr (GError) error = NULL;
  int wall;

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_test_message ("%s", cases[i].id);
      g_assert_cmpint (lr_setup_goes_with (lr_plan_get_setup (plan), lr_plan_find (plan, cases[i].id), &wall), ==, cases[i].goes);
      g_assert_cmpint (wall, ==, cases[i].wall);
    }

  take_next (&plan, lr_plan_change (plan, &stay, 1, &error), &error);
  g_assert_cmpint (lr_setup_goes_with (lr_plan_get_setup (plan), lr_plan_find (plan, "furniture-6"), NULL), ==, LR_GOES_ROOM);
  take_next (&plan, lr_plan_change (plan, &hang, 1, &error), &error);
  g_assert_cmpint (lr_setup_goes_with (lr_plan_get_setup (plan), lr_plan_find (plan, "person-1"), &wall), ==, LR_GOES_WALL);
  g_assert_cmpint (wall, ==, 0);
  assert_round_trip (plan);
}

/* The lower wall is 30 cm shorter: the right wall comes in by as much */
static void
test_shorter (void)
{
  g_autoptr (LrPlan) plan = as_found (furnished ());
  g_autoptr (GError) error = NULL;

  take_next (&plan, lr_plan_set_wall_length (plan, 0, 3.7, &error), &error);
  assert_at (plan, "furniture-1", 3.5, 2.0);
  assert_at (plan, "furniture-2", 3.45, 0.25);
  assert_at (plan, "furniture-3", 0.5, 0.2);
  assert_at (plan, "furniture-4", 2.9, 0.2);
  assert_at (plan, "furniture-5", 0.8, 2.2);
  assert_at (plan, "furniture-6", 2.0, 1.5);
  assert_at (plan, "person-1", 2.0, 1.5);
  assert_round_trip (plan);

  /* 1 m more: what stood at the end of the lower wall is pushed back onto it */
  take_next (&plan, lr_plan_set_wall_length (plan, 0, 3.0, &error), &error);
  assert_at (plan, "furniture-4", 2.7, 0.2);
}

/* Door on the upper wall, window on the right one, socket on the lower one, box at the upper wall. The lower wall is taped 30 cm shorter:
 * the right wall comes in, with its window; the rest stays in the room. The upper wall ran from (4, 3) to (0, 3): what was 2.5 m from its
 * first corner is 2.2 m from it now */
static void
test_fittings_stay (void)
{
  g_autoptr (LrPlan) plan = furnished ();
  g_autofree char *door = add (&plan, LR_ITEM_DOOR, 0, 1.2, 3.0), *window = add (&plan, LR_ITEM_WINDOW, 0, 4.0, 1.5);
  g_autofree char *socket = add (&plan, LR_ITEM_SOCKET, 0, 1.0, 0.0), *far = add (&plan, LR_ITEM_SOCKET, 0, 3.8, 3.0);
  g_autoptr (GError) error = NULL;
  double door_m, window_m;

  add_box (&plan, 1.5, 2.8, 0.6, 0.4);
  plan = as_found (plan);
  door_m = lr_plan_find (plan, door)->along_m;
  window_m = lr_plan_find (plan, window)->along_m;
  take_next (&plan, lr_plan_set_wall_length (plan, 0, 3.7, &error), &error);
  g_assert_cmpfloat_with_epsilon (lr_plan_find (plan, door)->along_m, door_m - 0.3, 1e-9);
  g_assert_cmpfloat_with_epsilon (lr_plan_find (plan, window)->along_m, window_m, 1e-9);
  g_assert_cmpfloat_with_epsilon (lr_plan_find (plan, socket)->along_m, 1.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (lr_plan_find (plan, far)->along_m, 0.0, 1e-9); /* its wall ends at 3.7 m */
  assert_at (plan, "furniture-7", 1.5, 2.8);
  assert_round_trip (plan);
}

/* Notes of a room of 4 by 3 m: four walls and a diagonal */
static LrPlan *
taped (void)
{
  static const LrVec2 corners_m[] = { { 0, 0 }, { 4, 0 }, { 4, 3 }, { 0, 3 } };
  static const LrTapeNote tape[] = { { 0, 1, 4.0, NULL }, { 1, 2, 3.0, NULL }, { 2, 3, 4.0, NULL }, { 3, 0, 3.0, NULL }, { 0, 2, 5.0, NULL } };
  const LrTaped notes = { .corners_m = corners_m, .n_corners = 4, .tape = tape, .n_tape = 5 };
  g_autoptr (LrPlan) plan = new_room ();
  g_autoptr (GError) error = NULL;

  take_next (&plan, lr_plan_set_taped (plan, &notes, &error), &error);

  return g_steal_pointer (&plan);
}

/* The length that is typed is what was taped; of what changed with it nothing is; what was taped as found stays so */
static void
test_retape (void)
{
  g_autoptr (LrPlan) plan = as_found (taped ());
  g_autoptr (GError) error = NULL;
  const LrRoom *room;
  double length_m;

  take_next (&plan, lr_plan_set_wall_length (plan, 0, 3.7, &error), &error);
  room = lr_plan_get_setup (plan)->room;
  g_assert_cmpuint (room->n_tape, ==, 3);
  g_assert_true (lr_room_is_taped (room, 0));
  g_assert_true (lr_room_is_taped (room, 1));
  g_assert_false (lr_room_is_taped (room, 2));
  g_assert_true (lr_room_is_taped (room, 3));
  g_assert_cmpfloat_with_epsilon (room->tape[2].length_m, 3.7, 1e-9);
  assert_round_trip (plan);

  /* the other one is 3.65 m: the first keeps its 3.70 */
  take_next (&plan, lr_plan_set_wall_length (plan, 2, 3.65, &error), &error);
  room = lr_plan_get_setup (plan)->room;
  g_assert_true (lr_room_is_taped (room, 0));
  g_assert_true (lr_room_is_taped (room, 2));
  g_assert_true (lr_room_wall (room, 0, NULL, NULL, &length_m));
  g_assert_cmpfloat_with_epsilon (length_m, 3.7, 1e-9);
  g_assert_true (lr_room_wall (room, 2, NULL, NULL, &length_m));
  g_assert_cmpfloat_with_epsilon (length_m, 3.65, 1e-9);

  /* a wall that is dragged is taped no more */
  take_next (&plan, lr_plan_move_corner (plan, 1, lr_vec2 (3.5, 0.0), &error), &error);
  g_assert_false (lr_room_is_taped (lr_plan_get_setup (plan)->room, 0));
  g_assert_true (lr_room_is_taped (lr_plan_get_setup (plan)->room, 2));
}

/* Taped with the room on the right, as found 30 cm shorter: the walls are the same, so what stands at the right one goes along */
static void
test_taped_clockwise (void)
{
  static const LrVec2 was_m[] = { { 0, 0 }, { 0, 3 }, { 4, 3 }, { 4, 0 } }, now_m[] = { { 0, 0 }, { 0, 3 }, { 3.7, 3 }, { 3.7, 0 } };
  const LrTaped was = { .corners_m = was_m, .n_corners = 4 }, now = { .corners_m = now_m, .n_corners = 4 };
  const LrVec2 anticlockwise_m[] = { { 0, 0 }, { 3.7, 0 }, { 3.7, 3 }, { 0, 3 } };
  const LrTaped other = { .corners_m = anticlockwise_m, .n_corners = 4 };
  g_autoptr (LrPlan) plan = furnished ();
  g_autoptr (LrPlan) turned = NULL;
  g_autoptr (GError) error = NULL;

  take_next (&plan, lr_plan_set_taped (plan, &was, &error), &error);
  plan = as_found (plan);
  turned = lr_plan_set_taped (plan, &other, &error);
  g_assert_no_error (error);
  assert_at (turned, "furniture-1", 3.8, 2.0); /* corners are counted from elsewhere: no wall is known to be the same */
  take_next (&plan, lr_plan_set_taped (plan, &now, &error), &error);
  assert_at (plan, "furniture-1", 3.5, 2.0);
  assert_at (plan, "furniture-5", 0.8, 2.2);
}

/* As planned a note stays until the room is taped anew */
static void
test_planned_tape_stays (void)
{
  g_autoptr (LrPlan) plan = taped ();
  g_autoptr (GError) error = NULL;

  take_next (&plan, lr_plan_set_wall_length (plan, 0, 3.7, &error), &error);
  g_assert_cmpuint (lr_plan_get_setup (plan)->room->n_tape, ==, 5);
}

/* As planned the things stay where they were put */
static void
test_planned_stays (void)
{
  g_autoptr (LrPlan) plan = furnished ();
  g_autoptr (GError) error = NULL;

  take_next (&plan, lr_plan_set_wall_length (plan, 0, 3.7, &error), &error);
  assert_at (plan, "furniture-1", 3.8, 2.0);
}

/* A wall that slants takes what stands at it round: 4 across, 3 up. A right-angled triangle of sides 3, 4, 5 */
static void
test_slanting (void)
{
  g_autoptr (LrPlan) plan = as_found (furnished ());
  const LrChange hang = { "person-1", "goes-with", LR_GOES_WALL };
  g_autoptr (GError) error = NULL;
  LrVec2 before_m = place (plan, "furniture-1"), after_m;

  take_next (&plan, lr_plan_change (plan, &hang, 1, &error), &error);
  take_next (&plan, lr_plan_move_corner (plan, 2, lr_vec2 (8.0, 3.0), &error), &error);
  after_m = place (plan, "furniture-1");
  /* the wall goes along (0.8, 0.6) from 4, 0: 2 m along it and 0.2 m to its left */
  g_assert_cmpfloat_with_epsilon (after_m.x, 4.0 + 2.0 * 0.8 - 0.2 * 0.6, 6e-4);
  g_assert_cmpfloat_with_epsilon (after_m.y, 2.0 * 0.6 + 0.2 * 0.8, 6e-4);
  g_assert_cmpfloat_with_epsilon (lr_plan_find (plan, "furniture-1")->facing_rad, atan2 (0.6, 0.8) - 0.5 * LR_PI, 0.05 * LR_DEG + 1e-9);
  g_assert_cmpfloat (before_m.x, ==, 3.8);
  assert_at (plan, "person-1", 2.0, 1.5); /* its wall is the lower one, and that stands still */
}

/* A quarter turn about the person, then half a metre to the left */
static void
test_move_set (void)
{
  g_autoptr (LrPlan) plan = furnished ();
  g_autoptr (GError) error = NULL;
  g_autofree char *camera = add (&plan, LR_ITEM_CAMERA, 0, 3.0, 1.5);
  g_autofree char *boom = add (&plan, LR_ITEM_MICROPHONE, LR_MIC_BOOM, 2.0, 2.5);
  g_autofree char *socket = add (&plan, LR_ITEM_SOCKET, 0, 4.0, 1.0);
  g_autofree char *lead = add (&plan, LR_ITEM_LEAD, 0, 0.0, 0.0);
  const LrVec2 path_m[] = { { 4.0, 1.0 }, { 3.0, 1.0 } };
  const LrLeadLaying laying = { .socket = socket, .path_m = path_m, .n_path = 2 };
  const LrItem *item;

  take_next (&plan, lr_plan_lay_lead (plan, lead, &laying, &error), &error);
  take_next (&plan, lr_plan_change (plan, (LrChange[]) { { boom, "tip-x-mm", 2.2 }, { boom, "tip-y-mm", 1.5 } }, 2, &error), &error);
  take_next (&plan, lr_plan_move_set (plan, lr_vec2 (2.0, 1.5), 0.5 * LR_PI, lr_vec2 (-0.5, 0.0), &error), &error);

  assert_at (plan, "person-1", 1.5, 1.5);
  assert_at (plan, camera, 1.5, 2.5);
  assert_at (plan, boom, 0.5, 1.5);
  item = lr_plan_find (plan, boom);
  g_assert_cmpfloat_with_epsilon (item->microphone.tip_x_m, 1.5, 1.1e-3);
  g_assert_cmpfloat_with_epsilon (item->microphone.tip_y_m, 1.7, 1.1e-3);
  g_assert_cmpfloat_with_epsilon (lr_plan_find (plan, "person-1")->facing_rad, 0.5 * LR_PI, 1e-9);
  assert_at (plan, "furniture-6", 1.5, 1.5);
  assert_at (plan, "furniture-1", 3.8, 2.0);
  assert_at (plan, "furniture-5", 0.8, 2.2);
  item = lr_plan_find (plan, lead);
  g_assert_cmpfloat_with_epsilon (item->path_m[0].x, 4.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (item->path_m[1].x, 2.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (item->path_m[1].y, 2.5, 1e-9);
  assert_round_trip (plan);
}

/* The planned one goes: what was as found of it is a set-up like others */
static void
test_planned_goes (void)
{
  g_autoptr (LrPlan) plan = as_found (furnished ());
  g_autoptr (GError) error = NULL;

  assert_round_trip (plan);
  take_next (&plan, lr_plan_rename_setup (plan, "The real room", &error), &error);
  g_assert_cmpstr (lr_plan_get_setup (plan)->found_of, ==, "setup-1");
  take_next (&plan, lr_plan_show_setup (plan, "setup-1", &error), &error);
  g_assert_null (lr_plan_planned (plan));
  take_next (&plan, lr_plan_remove_setup (plan, &error), &error);
  g_assert_cmpstr (lr_plan_get_setup (plan)->name, ==, "The real room");
  g_assert_cmpstr (lr_plan_get_setup (plan)->found_of, ==, "");
  assert_round_trip (plan);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/found/goes-with", test_goes_with);
  g_test_add_func ("/found/shorter", test_shorter);
  g_test_add_func ("/found/fittings-stay", test_fittings_stay);
  g_test_add_func ("/found/retape", test_retape);
  g_test_add_func ("/found/taped-clockwise", test_taped_clockwise);
  g_test_add_func ("/found/planned-tape-stays", test_planned_tape_stays);
  g_test_add_func ("/found/planned-stays", test_planned_stays);
  g_test_add_func ("/found/slanting", test_slanting);
  g_test_add_func ("/found/move-set", test_move_set);
  g_test_add_func ("/found/planned-goes", test_planned_goes);

  return g_test_run ();
}
