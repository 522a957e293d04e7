/* test-kit.c - the job's kit, what goes along with it, and the kit that is kept between jobs
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What files do under failure is checked against what own_kit.h promises: a file that is no kit stays as it is, byte for byte.
 */

#include "plan-test.h"

#include "own_kit.h"

#include <glib/gstdio.h>

static char *folder;

static char *
in_folder (const char *name)
{
  return g_build_filename (folder, name, NULL);
}

static const LrSupply *
supply_at (const LrPlan *plan,
           guint         index)
{
  g_assert_cmpuint (index, <, plan->supplies->len);
  return plan->supplies->pdata[index];
}

/* Two sandbags of 5 kg behind the generic kit */
static LrPlan *
new_with_bags (void)
{
  LrPlan *plan = new_room ();
  g_autoptr (GError) error = NULL;

  take_next (&plan, lr_plan_add_supply (plan, LR_SUPPLY_SANDBAG, &error), &error);
  take_next (&plan, lr_plan_set_supply_number (plan, 0, "count", 2, &error), &error);
  take_next (&plan, lr_plan_set_supply_number (plan, 0, "size", 5.0, &error), &error);
  take_next (&plan, lr_plan_set_supply_text (plan, 0, "note", "sand, not filled to the top", &error), &error);
  return plan;
}

static void
test_supplies (void)
{
  g_autoptr (LrPlan) plan = new_with_bags ();
  g_autoptr (LrPlan) before = lr_plan_ref (plan);
  g_autoptr (LrPlan) refused = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_cmpstr (supply_at (plan, 0)->title, ==, "Sandbag");
  g_assert_cmpint (supply_at (plan, 0)->count, ==, 2);
  g_assert_cmpfloat (supply_at (plan, 0)->size, ==, 5.0);
  assert_round_trip (plan);

  refused = lr_plan_set_supply_number (plan, 0, "count", -1, &error);
  g_assert_null (refused);
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE);
  g_clear_error (&error);
  refused = lr_plan_set_supply_number (plan, 1, "count", 1, &error);
  g_assert_null (refused);
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND);
  g_clear_error (&error);
  g_assert_null (lr_plan_remove_supply (plan, 7, NULL));
  g_assert_null (lr_plan_set_supply_text (plan, 0, "count", "x", NULL));

  take_next (&plan, lr_plan_remove_supply (plan, 0, &error), &error);
  g_assert_cmpuint (plan->supplies->len, ==, 0);
  g_assert_cmpuint (before->supplies->len, ==, 1); /* a plan never changes */
  g_assert_false (lr_plan_equal (plan, before));
  assert_round_trip (plan);
}

static guint
n_of_kit (const LrPlan *plan,
          const char   *id)
{
  guint n = 0;

  for (guint s = 0; s < plan->setups->len; s++)
    {
      const LrSetup *setup = plan->setups->pdata[s];

      for (guint i = 0; i < setup->items->len; i++)
        {
          const LrItem *item = setup->items->pdata[i];

          n += g_str_equal (item->kit, id) || (item->kind == LR_ITEM_CAMERA && g_str_equal (item->camera.lens, id));
        }
    }
  return n;
}

/* Each entry of a kit can go: what was taken from it stays in the room, in every set-up, and names it no more */
static void
test_remove (void)
{
  g_autoptr (LrPlan) plan = read_example ("loft.lookroom");
  g_autoptr (GError) error = NULL;

  take_next (&plan, lr_plan_copy_setup (plan, "as found", &error), &error);
  while (plan->kit->len > 0)
    {
      g_autofree char *id = g_strdup (((const LrKitEntry *) plan->kit->pdata[0])->item->id);
      guint n_items = lr_plan_get_setup (plan)->items->len, n_entries = plan->kit->len;

      g_test_message ("%s", id);
      take_next (&plan, lr_plan_remove_kit_entry (plan, id, &error), &error);
      g_assert_cmpuint (plan->kit->len, ==, n_entries - 1);
      g_assert_cmpuint (lr_plan_get_setup (plan)->items->len, ==, n_items);
      g_assert_cmpuint (n_of_kit (plan, id), ==, 0);
      assert_round_trip (plan);
    }
  g_assert_null (lr_plan_remove_kit_entry (plan, "boom", &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND);
}

static void
test_add (void)
{
  g_autoptr (LrPlan) plan = new_room (), other = lr_plan_new_empty ();
  g_autoptr (GError) error = NULL;
  guint n = plan->kit->len;

  for (guint i = 0; i < other->kit->len; i++)
    {
      g_autofree char *id = NULL;

      take_next (&plan, lr_plan_add_kit_entry (plan, other->kit->pdata[i], &id, &error), &error);
      g_assert_cmpuint (plan->kit->len, ==, n + i + 1);
      g_assert_true (lr_plan_find_kit (plan, id) == plan->kit->pdata[n + i]);
      g_assert_cmpstr (id, !=, ((const LrKitEntry *) other->kit->pdata[i])->item->id); /* that is taken */
    }
  assert_round_trip (plan);
}

/* What both have is taken as it is there, the rest is added, nothing goes: twice is as good as once */
static void
test_take (void)
{
  g_autoptr (LrPlan) plan = read_example ("loft.lookroom"), theirs = new_with_bags ();
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) once = NULL, twice = NULL;

  take_next (&theirs, lr_plan_set_kit_count (theirs, "boom", 3, &error), &error);
  take_next (&theirs, lr_plan_set_kit_text (theirs, "flag", "title", "Black flag", &error), &error);
  take_next (&theirs, lr_plan_remove_kit_entry (theirs, "reflector", &error), &error);
  once = lr_plan_take_kit (plan, theirs->kit, theirs->supplies, &error);
  g_assert_no_error (error);
  g_assert_cmpint (lr_plan_find_kit (once, "boom")->count, ==, 3);
  g_assert_cmpstr (lr_plan_find_kit (once, "flag")->title, ==, "Black flag");
  g_assert_nonnull (lr_plan_find_kit (once, "reflector"));
  g_assert_cmpint (supply_at (once, 0)->count, ==, 2);
  g_assert_true (lr_plan_get_setup (once) == lr_plan_get_setup (plan)); /* the room is as it was */
  assert_round_trip (once);

  twice = lr_plan_take_kit (once, theirs->kit, theirs->supplies, &error);
  g_assert_no_error (error);
  g_assert_true (lr_plan_equal (once, twice));
}

/* The kit that is kept */

static void
test_own (void)
{
  g_autofree char *path = in_folder ("deep/lookroom/kit.json");
  g_autoptr (LrPlan) plan = new_with_bags (), empty = lr_plan_new_empty (), begun = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (LrOwnKit) none = lr_own_kit_read (path, &error), kit = NULL;

  g_assert_no_error (error);
  g_assert_null (none);
  g_assert_true (lr_own_kit_write (plan, path, &error));
  g_assert_no_error (error);
  kit = lr_own_kit_read (path, &error);
  g_assert_no_error (error);
  begun = lr_plan_begin_with_kit (empty, kit->entries, kit->supplies);
  g_assert_cmpuint (begun->kit->len, ==, plan->kit->len);
  for (guint i = 0; i < plan->kit->len; i++)
    g_assert_cmpstr (((const LrKitEntry *) begun->kit->pdata[i])->title, ==, ((const LrKitEntry *) plan->kit->pdata[i])->title);
  g_assert_true (lr_supply_equal (supply_at (begun, 0), supply_at (plan, 0)));
  assert_round_trip (begun);

  take_next (&plan, lr_plan_set_kit_count (plan, "boom", 4, &error), &error);
  g_assert_true (lr_own_kit_write (plan, path, &error)); /* over a good one */
}

typedef struct
{
  const char *name, *text;
  int         code;
} Broken;

static const Broken broken[] = {
  { "empty", "", LR_PLAN_ERROR_SYNTAX },
  { "half", "{ \"format\": \"lookroom-kit\", \"version\": 1, \"kit\": [ {", LR_PLAN_ERROR_SYNTAX },
  { "not-text", "\xff\xfe", LR_PLAN_ERROR_SYNTAX },
  { "other", "{ \"format\": \"lookroom-plan\", \"version\": 1 }", LR_PLAN_ERROR_FORMAT },
  { "list", "[]", LR_PLAN_ERROR_FORMAT },
  { "newer", "{ \"format\": \"lookroom-kit\", \"version\": 99 }", LR_PLAN_ERROR_VERSION },
  { "no-kind", "{ \"format\": \"lookroom-kit\", \"version\": 1, \"kit\": [ { \"id\": \"a\" } ] }", LR_PLAN_ERROR_VALUE },
  { "count", "{ \"format\": \"lookroom-kit\", \"version\": 1, \"supplies\": [ { \"count\": -1 } ] }", LR_PLAN_ERROR_VALUE },
  { "form", "{ \"format\": \"lookroom-kit\", \"version\": 1, \"supplies\": [ { \"form\": \"crane\" } ] }", LR_PLAN_ERROR_VALUE },
};

/* It is told, and stays as it is when a kit is to be kept there */
static void
test_broken (gconstpointer data)
{
  const Broken *c = data;
  g_autofree char *path = in_folder (c->name), *after = NULL;
  g_autoptr (LrPlan) plan = new_room ();
  g_autoptr (GError) error = NULL, refusal = NULL;

  g_assert_true (g_file_set_contents (path, c->text, -1, NULL));
  g_assert_null (lr_own_kit_read (path, &error));
  g_assert_error (error, LR_PLAN_ERROR, c->code);
  g_test_message ("%s", error->message);
  g_assert_true (g_str_has_prefix (error->message, path));
  g_assert_false (lr_own_kit_write (plan, path, &refusal));
  g_assert_error (refusal, LR_PLAN_ERROR, c->code);
  g_assert_true (g_file_get_contents (path, &after, NULL, NULL));
  g_assert_cmpstr (after, ==, c->text);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  folder = g_dir_make_tmp ("lookroom-kit-XXXXXX", NULL);

  g_test_add_func ("/kit/supplies", test_supplies);
  g_test_add_func ("/kit/add", test_add);
  g_test_add_func ("/kit/remove", test_remove);
  g_test_add_func ("/kit/take", test_take);
  g_test_add_func ("/kit/own", test_own);
  for (guint i = 0; i < G_N_ELEMENTS (broken); i++)
    {
      g_autofree char *path = g_strconcat ("/kit/broken/", broken[i].name, NULL);

      g_test_add_data_func (path, &broken[i], test_broken);
    }

  return g_test_run ();
}
