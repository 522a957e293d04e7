/* further_packing.c - the packing list: how many, what, what for, and a box to tick
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "further.h"
#include "packing_words.h"

#include <glib/gi18n-lib.h>

static const LrFlowColumn columns[] = {
  { N_("No."), 26.0, 0.0, LR_ALIGN_RIGHT },
  { N_("What"), 0.0, 2.0, LR_ALIGN_LEFT },
  { N_("What for"), 0.0, 3.0, LR_ALIGN_LEFT },
};

static void
add_row (LrFlow     *flow,
         LrFlowBox   box,
         int         n,
         const char *title,
         const char *why)
{
  g_autofree char *number = g_strdup_printf ("<b>%d</b>", n), *what = g_markup_escape_text (title, -1);
  g_autofree char *reason = g_markup_escape_text (why, -1);
  const char *cells[] = { number, what, reason };

  lr_flow_row (flow, box, cells);
}

static void
add_lacking (LrFlow          *flow,
             const GPtrArray *rows)
{
  if (lr_pack_rows_lacking (rows) == 0)
    return;

  lr_flow_group (flow, lr_pack_lack_title ());
  for (guint i = 0; i < rows->len; i++)
    {
      const LrPackRow *row = rows->pdata[i];

      if (row->missing > 0)
        add_row (flow, LR_FLOW_NO_BOX, row->missing, row->title, row->lack);
    }
}

/**
 * lr_further_packing:
 * @flow: gets the list
 *
 * What is planned and not in the kit comes first.
 */
void
lr_further_packing (LrFlow *flow)
{
  const LrSheet *sheet = lr_flow_sheet (flow);
  g_autoptr (GPtrArray) rows = lr_pack_rows_new (sheet->study, sheet->options->units);

  lr_flow_title (flow, _("Packing list"), NULL);
  if (rows->len == 0)
    {
      lr_flow_paragraph (flow, lr_pack_empty_text ());
      return;
    }
  lr_flow_table (flow, columns, G_N_ELEMENTS (columns));
  add_lacking (flow, rows);
  for (int group = 0; group < LR_N_PACK_GROUPS; group++)
    {
      gboolean has_title = FALSE;

      for (guint i = 0; i < rows->len; i++)
        {
          const LrPackRow *row = rows->pdata[i];

          if ((int) row->group != group)
            continue;
          if (!has_title)
            lr_flow_group (flow, lr_pack_group_title (group));
          has_title = TRUE;
          add_row (flow, lr_plan_is_ticked (sheet->study->plan, "packing", row->tick) ? LR_FLOW_BOX_TICKED : LR_FLOW_BOX, row->quantity,
                   row->title, row->why);
        }
    }
  lr_flow_paragraph (flow, _("<small>Quantities are estimates from the plan, by rules of thumb.</small>"));
}
