/* page_care.c - what can hurt someone, on the page
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "cautions.h"
#include "page_private.h"

/**
 * lr_page_care_new:
 * @sheet: the page
 *
 * Returns: (transfer full): cautions, the gravest first; no rows when the plan gives no cause
 */
LrTable *
lr_page_care_new (const LrSheet *sheet)
{
  LrTable *table = lr_table_new ("care", _("Take care"));
  g_autoptr (GPtrArray) cautions = lr_cautions_new (sheet->study, sheet->options->units);

  table->bullet = LR_BULLET_DOT;
  for (guint i = 0; i < cautions->len; i++)
    lr_table_add_sentence (table, LR_GRADE_MIND, g_strdup (g_ptr_array_index (cautions, i)));

  return table;
}
