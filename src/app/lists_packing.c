/* lists_packing.c - what to bring, ticked when it is packed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "lists_dialog.h"

#include "list_page.h"
#include "packing_words.h"

#include <glib/gi18n-lib.h>

#define LIST "packing"

static void
add_row (LrListPage      *page,
         const LrPackRow *row)
{
  g_autofree char *lead = g_strdup_printf ("%d\u00a0×", row->quantity);
  g_autofree char *markup = g_markup_escape_text (row->title, -1), *note = g_markup_escape_text (row->why, -1);
  const LrListLine line = { .key = row->key, .tick = row->tick, .has_box = TRUE,
                            .lead = lead, .markup = markup, .note = *note != '\0' ? note : NULL };

  lr_list_page_line (page, &line, NULL);
}

/* What is planned and cannot be packed is told before all else */
static void
add_lacking (LrListPage      *page,
             const GPtrArray *rows)
{
  if (lr_pack_rows_lacking (rows) == 0)
    return;

  lr_list_page_group (page, lr_pack_lack_title ());
  for (guint i = 0; i < rows->len; i++)
    {
      const LrPackRow *row = rows->pdata[i];
      g_autofree char *key = g_strconcat ("lack:", row->key, NULL), *lead = g_strdup_printf ("%d\u00a0×", row->missing);
      g_autofree char *markup = g_markup_escape_text (row->title, -1);
      g_autofree char *note = g_markup_printf_escaped ("<b>%s</b>%s%s", row->lack, *row->why != '\0' ? " · " : "", row->why);
      const LrListLine line = { .key = key, .lead = lead, .markup = markup, .note = note };

      if (row->missing > 0)
        lr_list_page_line (page, &line, NULL);
    }
}

static void
fill (LrListPage *page,
      LrDocument *document)
{
  g_autoptr (GPtrArray) rows = lr_pack_rows_new (lr_document_get_study (document), lr_document_get_units (document));

  if (rows->len == 0)
    lr_list_page_say (page, "none", lr_pack_empty_text ());
  add_lacking (page, rows);
  for (int group = 0; group < LR_N_PACK_GROUPS; group++)
    {
      gboolean has_title = FALSE;

      for (guint i = 0; i < rows->len; i++)
        {
          const LrPackRow *row = rows->pdata[i];

          if ((int) row->group != group)
            continue;
          if (!has_title)
            lr_list_page_group (page, lr_pack_group_title (group));
          has_title = TRUE;
          add_row (page, row);
        }
    }
  if (rows->len > 0)
    lr_list_page_say (page, "rules", _("<small>Quantities are estimates from the plan, by rules of thumb. What a camera takes and records, "
                                       "its battery and its cards are told in the kit or in its Details.</small>"));
}

/**
 * lr_lists_packing_new:
 * @document: whose plan is packed for
 *
 * Returns: (transfer floating): the page
 */
GtkWidget *
lr_lists_packing_new (LrDocument *document)
{
  GtkWidget *page = lr_list_page_new (document, LIST, fill), *button = gtk_button_new_with_mnemonic (_("The _kit…"));

  gtk_actionable_set_detailed_action_name (GTK_ACTIONABLE (button), "win.lists::kit");
  gtk_widget_set_tooltip_text (button, _("What the job’s kit has, and how many of each"));
  gtk_box_append (GTK_BOX (lr_list_page_get_bar (LR_LIST_PAGE (page))), button);
  return page;
}
