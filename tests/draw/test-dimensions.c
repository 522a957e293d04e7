/* test-dimensions.c - which dimensions a room is given
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Expected rows are worked out by hand from the corners; that each length stands once is ISO 129-1's rule.
 */

#include "config.h"

#include "page_private.h"
#include "plan_edit.h"

#include <math.h>

/* What a chain reads, "0.50 0.80 2.70" */
static char *
chain_text (const LrChain *chain)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i + 1 < chain->points->len; i++)
    g_string_append_printf (text, "%s%.2f", i > 0 ? " " : "",
                            g_array_index (chain->points, LrChainPoint, i + 1).at_m - g_array_index (chain->points, LrChainPoint, i).at_m);

  return g_strdup (text->str);
}

static LrPlan *
room_with (const LrVec2 *corners,
           gsize         n)
{
  g_autoptr (LrPlan) empty = lr_plan_new_empty ();
  g_autoptr (GError) error = NULL;
  LrPlan *plan = lr_plan_set_corners (empty, corners, n, &error);

  g_assert_no_error (error);
  return plan;
}

/* (transfer full) plan; the result too */
static LrPlan *
add_opening (LrPlan     *plan,
             LrItemKind  kind,
             int         wall,
             double      along_m,
             double      width_m)
{
  LrItem *item = lr_item_new (kind, "x");
  g_autoptr (GError) error = NULL;
  g_autofree char *id = NULL;
  LrPlan *added, *placed;

  added = lr_plan_add (plan, item, lr_vec2 (0.1, 0.1), 0.0, &id, &error);
  g_assert_no_error (error);
  {
    const LrChange changes[] = { { id, "wall", wall }, { id, "width-mm", width_m }, { id, "along-mm", along_m } };

    placed = lr_plan_change (added, changes, G_N_ELEMENTS (changes), &error);
    g_assert_no_error (error);
  }

  lr_item_unref (item);
  lr_plan_unref (added);
  lr_plan_unref (plan);
  return placed;
}

static void
assert_chains (const LrPlan      *plan,
               const char *const *expected)
{
  g_autoptr (GPtrArray) chains = lr_page_chains_new (lr_plan_get_setup (plan));

  for (guint i = 0; i < chains->len; i++)
    {
      g_autofree char *text = chain_text (g_ptr_array_index (chains, i));

      g_test_message ("%d: %s", (int) ((const LrChain *) g_ptr_array_index (chains, i))->edge, text);
      g_assert_nonnull (expected[i]);
      g_assert_cmpstr (text, ==, expected[i]);
    }
  g_assert_null (expected[chains->len]);
}

static void
test_plain (void)
{
  const LrVec2 corners[] = { { 0, 0 }, { 4, 0 }, { 4, 3 }, { 0, 3 } };
  g_autoptr (LrPlan) plan = room_with (corners, 4);

  assert_chains (plan, (const char *const[]) { "4.00", "3.00", NULL });
}

static void
test_openings (void)
{
  const LrVec2 corners[] = { { 0, 0 }, { 4, 0 }, { 4, 3 }, { 0, 3 } };
  g_autoptr (LrPlan) plan = add_opening (add_opening (room_with (corners, 4), LR_ITEM_DOOR, 0, 0.5, 0.8), LR_ITEM_WINDOW, 3, 1.0, 1.2);

  /* below: openings, the whole; left: openings from the lower corner up, the whole */
  assert_chains (plan, (const char *const[]) { "0.50 0.80 2.70", "4.00", "0.80 1.20 1.00", "3.00", NULL });
}

/* An L: the corner of the notch is given above and at the right, once each */
static void
test_notch (void)
{
  const LrVec2 corners[] = { { 0, 0 }, { 4, 0 }, { 4, 2 }, { 2.5, 2 }, { 2.5, 3 }, { 0, 3 } };
  g_autoptr (LrPlan) plan = room_with (corners, 6);

  assert_chains (plan, (const char *const[]) { "4.00", "2.00 1.00", "2.50 1.50", "3.00", NULL });
}

/* A cut corner: 0.95 and 0.95 across, 1.34 along itself (Pythagoras: 1.3435) */
static void
test_slant (void)
{
  const LrVec2 corners[] = { { 0, 0 }, { 7.2, 0 }, { 7.2, 4.45 }, { 6.25, 5.4 }, { 0, 5.4 } };
  g_autoptr (LrPlan) plan = room_with (corners, 5);

  assert_chains (plan, (const char *const[]) { "7.20", "4.45 0.95", "5.40", "1.34", NULL });
}

/* A pocket in a wall that no side of the sheet sees is measured along itself */
static void
test_pocket (void)
{
  const LrVec2 corners[] = { { 0, 0 }, { 4, 0 }, { 4, 1 }, { 3, 1 }, { 3, 2 }, { 4, 2 }, { 4, 3 }, { 0, 3 } };
  g_autoptr (LrPlan) plan = room_with (corners, 8);

  assert_chains (plan, (const char *const[]) { "4.00", "1.00 1.00 1.00", "3.00", "1.00", "1.00", NULL });
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/dimensions/plain", test_plain);
  g_test_add_func ("/dimensions/openings", test_openings);
  g_test_add_func ("/dimensions/notch", test_notch);
  g_test_add_func ("/dimensions/slant", test_slant);
  g_test_add_func ("/dimensions/pocket", test_pocket);

  return g_test_run ();
}
