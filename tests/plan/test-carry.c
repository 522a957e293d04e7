/* test-carry.c - carrying things from one set-up into another, and the order of set-ups
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan-test.h"

#include <math.h>

static LrPlan *
add (LrPlan    **plan,
     LrItem     *prototype,
     double      x_m,
     double      y_m,
     char      **id)
{
  g_autoptr (GError) error = NULL;

  take_next (plan, lr_plan_add (*plan, prototype, lr_vec2 (x_m, y_m), 0.0, id, &error), &error);
  lr_item_unref (prototype);
  return *plan;
}

static void
set_text (LrPlan    **plan,
          const char *id,
          const char *key,
          const char *text)
{
  g_autoptr (GError) error = NULL;

  take_next (plan, lr_plan_change_text (*plan, id, key, text, &error), &error);
}

static LrPlan *
show (LrPlan    **plan,
      const char *name)
{
  g_autoptr (GError) error = NULL;

  take_next (plan, lr_plan_show_setup (*plan, name, &error), &error);
  return *plan;
}

/* The room of 4 by 3 m with Wenna, "person-1", her lavalier, a camera with a lens on her, a lamp, and a socket with a lead to it; and,
 * shown, "Hall": a room of @width_m by @depth_m whose lowest corner is at 10, 20 */
static LrPlan *
new_two_rooms (double width_m,
               double depth_m)
{
  const LrVec2 corners_m[] = { { 10.0, 20.0 }, { 10.0 + width_m, 20.0 }, { 10.0 + width_m, 20.0 + depth_m }, { 10.0, 20.0 + depth_m } };
  g_autoptr (GError) error = NULL;
  LrPlan *plan = new_room ();

  set_text (&plan, "person-1", "name", "Wenna");
  add (&plan, lr_item_new_usual (LR_ITEM_MICROPHONE, LR_MIC_LAVALIER, ""), 0.0, 0.0, NULL);
  set_text (&plan, "microphone-1", "worn-by", "person-1");
  add (&plan, lr_item_new (LR_ITEM_CAMERA, ""), 3.5, 1.0, NULL);
  set_text (&plan, "camera-1", "aims-at", "person-1");
  set_text (&plan, "camera-1", "lens", "lens-50");
  add (&plan, lr_item_new_usual (LR_ITEM_LIGHT, LR_LIGHT_PANEL, ""), 1.0, 2.5, NULL);
  add (&plan, lr_item_new (LR_ITEM_SOCKET, ""), 3.0, 0.0, NULL);
  add (&plan, lr_item_new (LR_ITEM_LEAD, ""), 3.0, 0.1, NULL);
  set_text (&plan, "lead-1", "socket", "socket-1");
  set_text (&plan, "lead-1", "feeds", "light-1");
  take_next (&plan, lr_plan_new_setup (plan, "Hall", &error), &error);
  take_next (&plan, lr_plan_set_corners (plan, corners_m, G_N_ELEMENTS (corners_m), &error), &error);

  return plan;
}

static const LrSetup *
setup_of (const LrPlan *plan,
          guint         index)
{
  return plan->setups->pdata[index];
}

static LrPlan *
copy_all (LrPlan **plan)
{
  static const char *const ids[] = { "person-1", "microphone-1", "camera-1", "light-1", "socket-1", "lead-1" };
  g_autoptr (GError) error = NULL;

  show (plan, "setup-1");
  take_next (plan, lr_plan_copy_items (*plan, ids, G_N_ELEMENTS (ids), "Hall", &error), &error);
  g_assert_cmpuint ((*plan)->shown, ==, 0);
  return show (plan, "Hall");
}

/* As far from the lowest corner as at home, and all that was named of each other is named still */
static void
test_together (void)
{
  g_autoptr (LrPlan) plan = new_two_rooms (8.0, 6.0);
  const LrItem *wenna;

  copy_all (&plan);
  g_assert_cmpuint (lr_plan_get_setup (plan)->items->len, ==, 6);
  wenna = lr_plan_find (plan, "person-1");
  g_assert_cmpstr (wenna->name, ==, "Wenna");
  g_assert_cmpfloat_with_epsilon (wenna->at_m.x, 12.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (wenna->at_m.y, 21.5, 1e-9);
  g_assert_cmpstr (lr_plan_find (plan, "microphone-1")->microphone.worn_by, ==, "person-1");
  g_assert_cmpstr (lr_plan_find (plan, "camera-1")->camera.aims_at, ==, "person-1");
  g_assert_cmpstr (lr_plan_find (plan, "lead-1")->lead.socket, ==, "socket-1");
  g_assert_cmpstr (lr_plan_find (plan, "lead-1")->lead.feeds, ==, "light-1");
  g_assert_cmpfloat_with_epsilon (lr_plan_find (plan, "lead-1")->path_m[0].x, 13.0, 1e-9);
  /* the south wall is wall 0 of both */
  g_assert_cmpint (lr_plan_find (plan, "socket-1")->wall, ==, 0);
  g_assert_cmpfloat_with_epsilon (lr_plan_find (plan, "socket-1")->along_m, 3.0, 1e-9);
  assert_round_trip (plan);
}

/* A second copy gets ids, tags and names of its own, and names the second copies */
static void
test_twice (void)
{
  g_autoptr (LrPlan) plan = new_two_rooms (8.0, 6.0);
  g_autoptr (GHashTable) ids = g_hash_table_new (g_str_hash, g_str_equal);
  const LrSetup *hall;

  copy_all (&plan);
  copy_all (&plan);
  hall = lr_plan_get_setup (plan);
  g_assert_cmpuint (hall->items->len, ==, 12);
  for (guint i = 0; i < hall->items->len; i++)
    g_assert_true (g_hash_table_add (ids, ((const LrItem *) hall->items->pdata[i])->id));
  g_assert_cmpstr (lr_plan_find (plan, "person-2")->name, ==, "Wenna 2");
  g_assert_cmpstr (lr_plan_find (plan, "camera-2")->tag, ==, "B");
  g_assert_cmpstr (lr_plan_find (plan, "camera-2")->camera.aims_at, ==, "person-2");
  g_assert_cmpstr (lr_plan_find (plan, "microphone-2")->microphone.worn_by, ==, "person-2");
  g_assert_cmpstr (lr_plan_find (plan, "lead-2")->lead.socket, ==, "socket-2");
  g_assert_cmpuint (setup_of (plan, 0)->items->len, ==, 6);
  assert_round_trip (plan);
}

/* Alone it names its like there: the subject under another name. A socket of another room is no like */
static void
test_likes (void)
{
  static const char *const camera[] = { "camera-1" }, *const lead[] = { "lead-1" };
  g_autoptr (LrPlan) plan = new_two_rooms (8.0, 6.0);
  g_autoptr (GError) error = NULL;
  char *id = NULL;

  add (&plan, lr_item_new_usual (LR_ITEM_PERSON, LR_ROLE_OTHER, ""), 15.0, 25.0, NULL);
  add (&plan, lr_item_new_usual (LR_ITEM_PERSON, LR_ROLE_SUBJECT, ""), 12.0, 23.0, &id);
  set_text (&plan, id, "name", "Bram");
  add (&plan, lr_item_new (LR_ITEM_SOCKET, ""), 13.0, 20.0, NULL);
  show (&plan, "setup-1");
  take_next (&plan, lr_plan_copy_items (plan, camera, 1, "Hall", &error), &error);
  take_next (&plan, lr_plan_copy_items (plan, lead, 1, "Hall", &error), &error);
  show (&plan, "Hall");
  g_assert_cmpstr (lr_plan_find (plan, "camera-1")->camera.aims_at, ==, id);
  g_assert_cmpstr (lr_plan_find (plan, "camera-1")->camera.lens, ==, lr_plan_find_kit (plan, "lens-50") != NULL ? "lens-50" : "");
  g_assert_cmpstr (lr_plan_find (plan, "lead-1")->lead.socket, ==, "");
  g_assert_cmpstr (lr_plan_find (plan, "lead-1")->lead.feeds, ==, "");
  assert_round_trip (plan);
  g_free (id);
}

/* With nobody to aim at it faces where it faced: from (3.5, 1) to (2, 1.5), by hand atan2 (0.5, -1.5) = 161.57 degrees. Without the one who
 * wears it a lavalier lies where they sat */
static void
test_alone (void)
{
  static const char *const ids[] = { "camera-1", "microphone-1" };
  g_autoptr (LrPlan) plan = new_two_rooms (8.0, 6.0);
  g_autoptr (GError) error = NULL;

  show (&plan, "setup-1");
  take_next (&plan, lr_plan_copy_items (plan, ids, 2, "Hall", &error), &error);
  show (&plan, "Hall");
  g_assert_cmpstr (lr_plan_find (plan, "camera-1")->camera.aims_at, ==, "");
  g_assert_cmpfloat_with_epsilon (lr_plan_find (plan, "camera-1")->facing_rad / LR_DEG, 161.57, 0.06);
  g_assert_cmpstr (lr_plan_find (plan, "microphone-1")->microphone.worn_by, ==, "");
  g_assert_cmpfloat_with_epsilon (lr_plan_find (plan, "microphone-1")->at_m.x, 12.0, 1e-9);
  assert_round_trip (plan);
}

/* Into 3 by 2 m: the set, 2.5 m by 1.5 m, keeps its shape. At home x 1 to 3.5 and y 1 to 2.5; there 0.5 m less each way */
static void
test_small_room (void)
{
  static const char *const ids[] = { "person-1", "camera-1", "light-1" };
  g_autoptr (LrPlan) plan = new_two_rooms (3.0, 2.0);
  g_autoptr (GError) error = NULL;
  const LrItem *camera, *light;

  show (&plan, "setup-1");
  take_next (&plan, lr_plan_copy_items (plan, ids, 3, "Hall", &error), &error);
  show (&plan, "Hall");
  camera = lr_plan_find (plan, "camera-1");
  light = lr_plan_find (plan, "light-1");
  g_assert_cmpfloat_with_epsilon (camera->at_m.x, 13.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (camera->at_m.y, 20.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (light->at_m.x, 10.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (light->at_m.y, 22.0, 1e-9);
}

/* A sofa of 2 by 1 m with its middle 2.5 m from the left wall: in a room 3 m wide its end meets the wall, so its middle is at 2 m */
static void
test_outline (void)
{
  static const char *const ids[] = { "furniture-1" };
  const LrChange size[] = { { "furniture-1", "length-mm", 2.0 }, { "furniture-1", "width-mm", 1.0 } };
  g_autoptr (LrPlan) plan = new_two_rooms (3.0, 2.0);
  g_autoptr (GError) error = NULL;

  show (&plan, "setup-1");
  add (&plan, lr_item_new_usual (LR_ITEM_FURNITURE, LR_FURNITURE_BOX, ""), 2.5, 0.5, NULL);
  take_next (&plan, lr_plan_change (plan, size, 2, &error), &error);
  take_next (&plan, lr_plan_copy_items (plan, ids, 1, "Hall", &error), &error);
  show (&plan, "Hall");
  g_assert_cmpfloat_with_epsilon (lr_plan_find (plan, "furniture-1")->at_m.x, 12.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (lr_plan_find (plan, "furniture-1")->at_m.y, 20.5, 1e-9);
}

/* A boom takes its capsule along */
static void
test_boom (void)
{
  static const char *const ids[] = { "microphone-2" };
  g_autoptr (LrPlan) plan = new_two_rooms (8.0, 6.0);
  g_autoptr (GError) error = NULL;
  const LrItem *home, *there;

  show (&plan, "setup-1");
  add (&plan, lr_item_new_usual (LR_ITEM_MICROPHONE, LR_MIC_BOOM, ""), 1.0, 1.0, NULL);
  take_next (&plan, lr_plan_copy_items (plan, ids, 1, "Hall", &error), &error);
  home = lr_setup_find (setup_of (plan, 0), "microphone-2");
  there = lr_setup_find (setup_of (plan, 1), "microphone-1");
  g_assert_cmpfloat_with_epsilon (there->microphone.tip_x_m - home->microphone.tip_x_m, 10.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (there->microphone.tip_y_m - home->microphone.tip_y_m, 20.0, 1e-9);
}

/* In the same set-up a copy stands beside the thing and names what it names */
static void
test_paste (void)
{
  static const char *const ids[] = { "camera-1", "socket-1" };
  g_autoptr (LrPlan) plan = new_two_rooms (8.0, 6.0);
  g_autoptr (GPtrArray) new_ids = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GError) error = NULL;

  show (&plan, "setup-1");
  take_next (&plan, lr_plan_paste (plan, lr_plan_get_setup (plan), ids, 2, lr_vec2 (0.3, -0.3), new_ids, &error), &error);
  g_assert_cmpuint (new_ids->len, ==, 2);
  g_assert_cmpstr (new_ids->pdata[0], ==, "camera-2");
  g_assert_cmpstr (lr_plan_find (plan, "camera-2")->camera.aims_at, ==, "person-1");
  g_assert_cmpfloat_with_epsilon (lr_plan_find (plan, "camera-2")->at_m.x, 3.8, 1e-9);
  g_assert_cmpfloat_with_epsilon (lr_plan_find (plan, "socket-2")->along_m, 3.3, 1e-9);
  assert_round_trip (plan);
}

static void
assert_refused (LrPlan      *next,
                LrPlanError  code,
                GError     **error)
{
  g_assert_null (next);
  g_assert_error (*error, LR_PLAN_ERROR, (int) code);
  g_clear_error (error);
}

static void
test_refused (void)
{
  static const char *const nobody[] = { "nobody" }, *const socket[] = { "socket-1" }, *const wenna[] = { "person-1" };
  g_autoptr (LrPlan) plan = new_two_rooms (8.0, 6.0);
  g_autoptr (GError) error = NULL;

  take_next (&plan, lr_plan_new_setup (plan, "Not seen yet", &error), &error);
  show (&plan, "setup-1");
  assert_refused (lr_plan_copy_items (plan, nobody, 1, "Hall", &error), LR_PLAN_ERROR_NOT_FOUND, &error);
  assert_refused (lr_plan_copy_items (plan, wenna, 1, "Cellar", &error), LR_PLAN_ERROR_NOT_FOUND, &error);
  assert_refused (lr_plan_copy_items (plan, wenna, 1, "setup-1", &error), LR_PLAN_ERROR_REFUSED, &error);
  /* nothing hangs on walls that are not drawn; people may stand there */
  assert_refused (lr_plan_copy_items (plan, socket, 1, "Not seen yet", &error), LR_PLAN_ERROR_REFUSED, &error);
  take_next (&plan, lr_plan_copy_items (plan, wenna, 1, "Not seen yet", &error), &error);
  g_assert_cmpfloat_with_epsilon (lr_setup_find (setup_of (plan, 2), "person-1")->at_m.x, 2.0, 1e-9);
}

static char *
order_of (const LrPlan *plan)
{
  GString *names = g_string_new (NULL);

  for (guint i = 0; i < plan->setups->len; i++)
    g_string_append_printf (names, "%s%s", setup_of (plan, i)->name, i == plan->shown ? "* " : " ");
  return g_string_free (names, FALSE);
}

static void
assert_order (const LrPlan *plan,
              const char   *expected)
{
  g_autofree char *order = order_of (plan);

  g_assert_cmpstr (order, ==, expected);
}

static void
test_order (void)
{
  g_autoptr (LrPlan) plan = new_room (), first = NULL;
  g_autoptr (GError) error = NULL;

  take_next (&plan, lr_plan_rename_setup (plan, "A", &error), &error);
  take_next (&plan, lr_plan_copy_setup (plan, "B", &error), &error);
  take_next (&plan, lr_plan_copy_setup (plan, "C", &error), &error);
  assert_order (plan, "A B C* ");
  first = lr_plan_ref (plan);
  take_next (&plan, lr_plan_move_setup (plan, -1, &error), &error);
  assert_order (plan, "A C* B ");
  take_next (&plan, lr_plan_move_setup (plan, -5, &error), &error);
  assert_order (plan, "C* A B ");
  take_next (&plan, lr_plan_move_setup (plan, G_MAXINT, &error), &error);
  assert_order (plan, "A B C* ");
  g_assert_true (lr_plan_equal (plan, first));
  assert_round_trip (plan);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/carry/together", test_together);
  g_test_add_func ("/carry/twice", test_twice);
  g_test_add_func ("/carry/likes", test_likes);
  g_test_add_func ("/carry/alone", test_alone);
  g_test_add_func ("/carry/small-room", test_small_room);
  g_test_add_func ("/carry/boom", test_boom);
  g_test_add_func ("/carry/outline", test_outline);
  g_test_add_func ("/carry/paste", test_paste);
  g_test_add_func ("/carry/refused", test_refused);
  g_test_add_func ("/setups/order", test_order);

  return g_test_run ();
}
