/* test-diff.c - what is different between two set-ups
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each difference is made by hand in the room of 4 by 3 m, so that what must be told is known.
 */

#include "plan-test.h"

#include "plan_diff.h"

#include <math.h>

static void
add_at (LrPlan    **plan,
        LrItemKind  kind,
        int         form,
        double      x_m,
        double      y_m)
{
  g_autoptr (LrItem) item = lr_item_new_usual (kind, form, "");
  g_autoptr (GError) error = NULL;

  take_next (plan, lr_plan_add (*plan, item, lr_vec2 (x_m, y_m), 0.0, NULL, &error), &error);
}

/* The subject in the middle, a camera, two lights, a boom, a door and a cabinet at the right wall */
static LrPlan *
set (void)
{
  LrPlan *plan = new_room ();
  g_autoptr (GError) error = NULL;
  const LrChange size[] = { { "furniture-1", "length-mm", 0.4 }, { "furniture-1", "width-mm", 0.6 } };

  add_at (&plan, LR_ITEM_CAMERA, 0, 3.0, 2.5);
  add_at (&plan, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 3.0, 1.5);
  add_at (&plan, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 1.0, 0.7);
  add_at (&plan, LR_ITEM_MICROPHONE, LR_MIC_BOOM, 2.0, 2.6);
  add_at (&plan, LR_ITEM_MICROPHONE, LR_MIC_LAVALIER, 2.0, 1.5);
  take_next (&plan, lr_plan_change_text (plan, "microphone-2", "worn-by", "person-1", &error), &error);
  add_at (&plan, LR_ITEM_DOOR, 0, 0.0, 1.5);
  add_at (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_BOX, 3.8, 0.5);
  take_next (&plan, lr_plan_change (plan, size, 2, &error), &error);

  return plan;
}

static LrPlan *
found_of (const LrPlan *plan)
{
  g_autoptr (GError) error = NULL;
  LrPlan *found = lr_plan_copy_found (plan, "As found", &error);

  g_assert_no_error (error);
  return found;
}

static const LrDiff *
nth (const LrPlanDiff *diff,
     guint             i)
{
  g_assert_cmpuint (i, <, diff->all->len);
  return &g_array_index (diff->all, LrDiff, i);
}

static void
test_none (void)
{
  g_autoptr (LrPlan) plan = set ();
  g_autoptr (LrPlan) found = found_of (plan);
  g_autoptr (LrPlanDiff) diff = lr_plan_diff_new (plan, found);

  g_assert_cmpuint (diff->all->len, ==, 0);
}

/* Under a centimetre and a degree a tape tells nothing; from there on it does */
static void
test_least (void)
{
  g_autoptr (LrPlan) plan = set ();
  g_autoptr (LrPlan) found = found_of (plan);
  g_autoptr (GError) error = NULL;

  take_next (&found, lr_plan_move (found, "light-1", lr_vec2 (3.009, 1.5), &error), &error);
  take_next (&found, lr_plan_change (found, (LrChange[]) { { "camera-1", "lens-height-mm", 1.209 } }, 1, &error), &error);
  take_next (&found, lr_plan_turn (found, "person-1", 0.9 * LR_DEG, &error), &error);
  {
    g_autoptr (LrPlanDiff) diff = lr_plan_diff_new (plan, found);

    g_assert_cmpuint (diff->all->len, ==, 0);
  }
  take_next (&found, lr_plan_move (found, "light-1", lr_vec2 (3.01, 1.5), &error), &error);
  take_next (&found, lr_plan_change (found, (LrChange[]) { { "camera-1", "lens-height-mm", 1.21 } }, 1, &error), &error);
  take_next (&found, lr_plan_turn (found, "person-1", 1.0 * LR_DEG, &error), &error);
  {
    g_autoptr (LrPlanDiff) diff = lr_plan_diff_new (plan, found);

    g_assert_cmpuint (diff->all->len, ==, 3);
  }
}

/* In the order in which they matter, each with its figures */
static void
test_each (void)
{
  g_autoptr (LrPlan) plan = set ();
  g_autoptr (LrPlan) found = found_of (plan);
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlanDiff) diff = NULL;
  const LrDiff *d;

  take_next (&found, lr_plan_set_wall_length (found, 0, 3.7, &error), &error);
  take_next (&found, lr_plan_set_room (found, "height-mm", 2.4, &error), &error);
  take_next (&found, lr_plan_move (found, "light-1", lr_vec2 (2.6, 1.5), &error), &error);
  take_next (&found, lr_plan_change (found, (LrChange[]) { { "camera-1", "focal-mm", 0.035 } }, 1, &error), &error);
  take_next (&found, lr_plan_remove (found, "light-2", &error), &error);
  add_at (&found, LR_ITEM_PANEL, LR_PANEL_FLAG, 1.0, 2.0);
  diff = lr_plan_diff_new (plan, found);

  /* walls 0 and 2, the height, the door's wall stands still, the cabinet went along with its wall */
  g_assert_cmpuint (diff->all->len, ==, 7);
  d = nth (diff, 0);
  g_assert_cmpint (d->type, ==, LR_DIFF_WALL);
  g_assert_cmpint (d->wall, ==, 0);
  g_assert_cmpfloat_with_epsilon (d->from, 4.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (d->to, 3.7, 1e-9);
  g_assert_cmpint (nth (diff, 1)->wall, ==, 2);
  d = nth (diff, 2);
  g_assert_cmpint (d->type, ==, LR_DIFF_CHANGED);
  g_assert_cmpint (d->owner, ==, LR_DIFF_OWNER_ROOM);
  g_assert_cmpstr (d->prop->key, ==, "height-mm");
  d = nth (diff, 3);
  g_assert_cmpint (d->group, ==, LR_DIFF_OF_CAMERAS);
  g_assert_cmpstr (d->prop->key, ==, "focal-mm");
  g_assert_cmpfloat_with_epsilon (d->from, 0.05, 1e-9);
  g_assert_cmpfloat_with_epsilon (d->to, 0.035, 1e-9);
  d = nth (diff, 4);
  g_assert_cmpint (d->type, ==, LR_DIFF_MOVED);
  g_assert_cmpstr (d->now->id, ==, "light-1");
  g_assert_cmpfloat_with_epsilon (d->nearer_m, 0.4, 1e-9);
  d = nth (diff, 5);
  g_assert_cmpint (d->type, ==, LR_DIFF_GONE);
  g_assert_cmpstr (d->was->id, ==, "light-2");
  d = nth (diff, 6);
  g_assert_cmpint (d->type, ==, LR_DIFF_ADDED);
  g_assert_cmpint (d->group, ==, LR_DIFF_OF_REST);
}

/* The set moved as one is one difference; a lamp that moved besides is told from where it would be then */
static void
test_set (void)
{
  g_autoptr (LrPlan) plan = set ();
  g_autoptr (LrPlan) found = found_of (plan);
  g_autoptr (GError) error = NULL;
  LrVec2 lamp_m;

  take_next (&found, lr_plan_move_set (found, lr_vec2 (2.0, 1.5), 5.0 * LR_DEG, lr_vec2 (-0.4, 0.1), &error), &error);
  {
    g_autoptr (LrPlanDiff) diff = lr_plan_diff_new (plan, found);
    const LrDiff *d = nth (diff, 0);

    g_assert_cmpuint (diff->all->len, ==, 1);
    g_assert_cmpint (d->type, ==, LR_DIFF_SET);
    g_assert_cmpfloat_with_epsilon (d->turn_rad, 5.0 * LR_DEG, 0.1 * LR_DEG);
    g_assert_cmpfloat_with_epsilon (d->from_m.x, 2.0, 1e-9);
    g_assert_cmpfloat_with_epsilon (d->to_m.x, 1.6, 2e-3);
    g_assert_cmpfloat_with_epsilon (d->to_m.y, 1.6, 2e-3);
  }

  lamp_m = lr_plan_find (found, "light-1")->at_m;
  take_next (&found, lr_plan_move (found, "light-1", lr_vec2 (lamp_m.x - 0.3, lamp_m.y), &error), &error);
  {
    g_autoptr (LrPlanDiff) diff = lr_plan_diff_new (plan, found);
    const LrDiff *d = lr_plan_diff_find (diff, LR_DIFF_MOVED, "light-1");

    g_assert_cmpuint (diff->all->len, ==, 2);
    g_assert_nonnull (d);
    g_assert_cmpfloat_with_epsilon (lr_vec2_distance (d->from_m, d->to_m), 0.3, 3e-3);
    g_assert_cmpfloat_with_epsilon (d->from_m.x, lamp_m.x, 3e-3);
  }
}

/* Of two plans that were made apart, things are the same by their tags */
static void
test_two_plans (void)
{
  g_autoptr (LrPlan) plan = set ();
  g_autoptr (LrPlan) other = new_room ();
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlanDiff) diff = NULL;

  add_at (&other, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 0.3, 0.3);
  take_next (&other, lr_plan_change_text (other, "light-1", "tag", "L2", &error), &error);
  diff = lr_plan_diff_new (plan, other);
  g_assert_null (lr_plan_diff_find (diff, LR_DIFF_ADDED, "light-1"));
  for (guint i = 0; i < diff->all->len; i++)
    if (nth (diff, i)->type == LR_DIFF_GONE)
      g_assert_cmpstr (nth (diff, i)->was->id, !=, "light-2");
}

/* What is aimed at is the same by its tag or name, whatever its id is in the other plan */
static void
test_references (void)
{
  g_autoptr (LrPlan) plan = set (), other = set ();
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlanDiff) diff = NULL;

  /* the second light of the one is the first of the other */
  take_next (&plan, lr_plan_change_text (plan, "light-1", "tag", "L7", &error), &error);
  take_next (&other, lr_plan_change_text (other, "light-2", "tag", "L7", &error), &error);
  take_next (&other, lr_plan_change_text (other, "light-1", "tag", "L8", &error), &error);
  take_next (&plan, lr_plan_change_text (plan, "camera-1", "aims-at", "light-1", &error), &error);
  take_next (&other, lr_plan_change_text (other, "camera-1", "aims-at", "light-2", &error), &error);
  diff = lr_plan_diff_new (plan, other);
  for (guint i = 0; i < diff->all->len; i++)
    if (nth (diff, i)->type == LR_DIFF_CHANGED)
      g_assert_cmpstr (nth (diff, i)->prop->key, !=, "aims-at");
}

/* What was noted of the place, and whom to call there */
static void
test_location (void)
{
  g_autoptr (LrPlan) plan = set (), found = found_of (plan);
  g_autoptr (LrPlanDiff) diff = NULL;
  g_autoptr (GError) error = NULL;
  const LrContact contact = { .role = (char *) "Keys", .name = (char *) "Tamsin Roe", .phone = (char *) "" };

  take_next (&found, lr_plan_set_location_text (found, "access", "side door", &error), &error);
  take_next (&found, lr_plan_set_location (found, "longitude-deg", 0.0, &error), &error);
  take_next (&found, lr_plan_set_contacts (found, &contact, 1, &error), &error);
  diff = lr_plan_diff_new (plan, found);
  g_assert_cmpuint (diff->all->len, ==, 3);
  g_assert_cmpstr (nth (diff, 0)->prop->key, ==, "access");
  g_assert_cmpstr (nth (diff, 1)->prop->key, ==, "longitude-deg");
  g_assert_cmpint (nth (diff, 2)->type, ==, LR_DIFF_CONTACTS);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/diff/none", test_none);
  g_test_add_func ("/diff/least", test_least);
  g_test_add_func ("/diff/each", test_each);
  g_test_add_func ("/diff/set", test_set);
  g_test_add_func ("/diff/two-plans", test_two_plans);
  g_test_add_func ("/diff/location", test_location);
  g_test_add_func ("/diff/references", test_references);

  return g_test_run ();
}
