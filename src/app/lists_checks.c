/* lists_checks.c - what is looked at before rolling, ticked on the day
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "lists_dialog.h"

#include "list_page.h"
#include "preroll.h"

#define LIST "checks"

static void
fill (LrListPage *page,
      LrDocument *document)
{
  const LrLightLevels *levels = lr_document_has_current_levels (document) ? lr_document_get_levels (document) : NULL;
  g_autoptr (GPtrArray) checks = lr_preroll_new (lr_document_get_study (document), levels, lr_document_get_remarks (document),
                                                 lr_document_get_units (document));
  int group = -1;

  for (guint i = 0; i < checks->len; i++)
    {
      const LrPrerollCheck *check = g_ptr_array_index (checks, i);
      const LrListLine line = { .key = check->key, .tick = check->tick, .has_box = TRUE,
                                .markup = check->markup, .item = check->item[0] != '\0' ? check->item : NULL };

      if ((int) check->group != group)
        {
          group = (int) check->group;
          lr_list_page_group (page, lr_preroll_group_title (check->group));
        }
      lr_list_page_line (page, &line, NULL);
    }
}

/**
 * lr_lists_checks_new:
 * @document: whose checks
 *
 * Returns: (transfer floating): the page
 */
GtkWidget *
lr_lists_checks_new (LrDocument *document)
{
  return lr_list_page_new (document, LIST, fill);
}
