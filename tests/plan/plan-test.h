/* plan-test.h - what the plan's tests share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "plan_edit.h"
#include "plan_reader.h"
#include "plan_writer.h"

#include <string.h>

static inline LrPlan *
read_example (const char *name)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "examples", name, NULL);
  LrPlan *plan = lr_plan_read (path, &error);

  g_assert_no_error (error);

  return plan;
}

/* A plan with a room of 4 by 3 m and one person, "person-1", in its middle */
static inline LrPlan *
new_room (void)
{
  static const LrVec2 corners_m[] = { { 0.0, 0.0 }, { 4.0, 0.0 }, { 4.0, 3.0 }, { 0.0, 3.0 } };
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) empty = lr_plan_new_empty ();
  g_autoptr (LrPlan) bare = lr_plan_set_corners (empty, corners_m, G_N_ELEMENTS (corners_m), &error);
  g_autoptr (LrItem) person = lr_item_new (LR_ITEM_PERSON, "");
  LrPlan *plan;

  g_assert_no_error (error);
  plan = lr_plan_add (bare, person, lr_vec2 (2.0, 1.5), 0.0, NULL, &error);
  g_assert_no_error (error);

  return plan;
}

/* Takes the place of *plan: the next one, which must be there */
static inline void
take_next (LrPlan **plan,
           LrPlan  *next,
           GError **error)
{
  g_assert_no_error (*error);
  g_assert_nonnull (next);
  lr_plan_unref (*plan);
  *plan = next;
}

static inline LrPlan *
read_back (const LrPlan *plan)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = lr_plan_to_bytes (plan);
  gsize length;
  const char *data = g_bytes_get_data (bytes, &length);
  LrPlan *again = lr_plan_read_data (data, length, &error);

  g_assert_no_error (error);

  return again;
}

/* Saved and read it is equal, and saved again the same file */
static inline void
assert_round_trip (const LrPlan *plan)
{
  g_autoptr (LrPlan) again = read_back (plan);
  g_autoptr (GBytes) first = lr_plan_to_bytes (plan), second = lr_plan_to_bytes (again);

  g_assert_true (lr_plan_equal (plan, again));
  g_assert_true (g_bytes_equal (first, second));
}
