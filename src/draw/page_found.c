/* page_found.c - what is otherwise than planned, on the page of a set-up as found
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "diff_words.h"
#include "page_private.h"

/**
 * lr_page_planned:
 * @sheet: the page
 *
 * Returns: (transfer full) (nullable): the plan with the set-up as planned shown, of which the sheet's is as found
 */
LrPlan *
lr_page_planned (const LrSheet *sheet)
{
  const LrSetup *planned = lr_plan_planned (sheet->study->plan);

  return planned != NULL ? lr_plan_show_setup (sheet->study->plan, planned->id, NULL) : NULL;
}

/**
 * lr_page_found_new:
 * @sheet: the page
 *
 * Returns: (transfer full): differences from the set-up as planned; no rows when this is none as found
 */
LrTable *
lr_page_found_new (const LrSheet *sheet)
{
  LrTable *table = lr_table_new ("found", _("Otherwise than planned"));
  g_autoptr (LrPlan) planned = lr_page_planned (sheet);
  g_autoptr (LrPlanDiff) diff = planned != NULL ? lr_plan_diff_new (planned, sheet->study->plan) : NULL;

  table->bullet = LR_BULLET_DOT;
  if (diff == NULL)
    return table;

  /* Translators: beside the title of what is otherwise than planned: how the plan shows it */
  table->note = g_strdup (_("planned places in broken lines"));
  for (guint i = 0; i < diff->all->len; i++)
    lr_table_add_sentence (table, LR_GRADE_MIND, lr_diff_markup (diff, &g_array_index (diff->all, LrDiff, i), sheet->options->units));

  return table;
}
