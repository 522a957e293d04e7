/* app-test.h - what the tests of the window's data share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "document.h"
#include "plan_edit.h"
#include "plan_reader.h"
#include "plan_writer.h"

#include <gio/gio.h>
#include <glib/gstdio.h>

static inline LrPlan *
read_example (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "examples", "loft.lookroom", NULL);
  g_autoptr (GError) error = NULL;
  LrPlan *plan = lr_plan_read (path, &error);

  g_assert_no_error (error);
  return plan;
}

static inline LrDocument *
new_example (void)
{
  LrDocument *document = lr_document_new ();

  lr_document_reset (document, read_example (), NULL);
  return document;
}

/* First item of that kind in the set-up shown */
static inline const LrItem *
first_of (LrDocument *document,
          LrItemKind  kind)
{
  const LrSetup *setup = lr_plan_get_setup (lr_document_get_plan (document));

  for (guint i = 0; i < setup->items->len; i++)
    if (((const LrItem *) g_ptr_array_index (setup->items, i))->kind == kind)
      return g_ptr_array_index (setup->items, i);
  g_assert_not_reached ();
}

/* (transfer full): the committed plan with the item @by_m further east */
static inline LrPlan *
moved (LrDocument *document,
       const char *id,
       double      by_m)
{
  const LrPlan *plan = lr_document_get_committed (document);
  const LrItem *item = lr_plan_find (plan, id);
  g_autoptr (GError) error = NULL;
  LrPlan *next = lr_plan_move (plan, id, lr_vec2 (item->at_m.x + by_m, item->at_m.y), &error);

  g_assert_no_error (error);
  return next;
}

static inline char *
new_folder (void)
{
  g_autoptr (GError) error = NULL;
  char *folder = g_dir_make_tmp ("lookroom-XXXXXX", &error);

  g_assert_no_error (error);
  return folder;
}
