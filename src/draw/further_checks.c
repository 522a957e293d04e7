/* further_checks.c - what is looked at before rolling
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "further.h"

#include "preroll.h"

#include <glib/gi18n-lib.h>

static const LrFlowColumn columns[] = { { NULL, 0.0, 1.0, LR_ALIGN_LEFT } };

/**
 * lr_further_checks:
 * @flow: gets the list
 *
 * Every check with its box, by groups.
 */
void
lr_further_checks (LrFlow *flow)
{
  const LrSheet *sheet = lr_flow_sheet (flow);
  g_autoptr (GPtrArray) checks = lr_preroll_new (sheet->study, sheet->options->levels, sheet->remarks, sheet->options->units);
  int group = -1;

  lr_flow_title (flow, _("Pre-roll checks"), NULL);
  lr_flow_table (flow, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < checks->len; i++)
    {
      const LrPrerollCheck *check = g_ptr_array_index (checks, i);
      const char *cells[] = { check->markup };

      if ((int) check->group != group)
        lr_flow_group (flow, lr_preroll_group_title (check->group));
      group = (int) check->group;
      lr_flow_row (flow, lr_plan_is_ticked (sheet->study->plan, "checks", check->tick) ? LR_FLOW_BOX_TICKED : LR_FLOW_BOX, cells);
    }
  lr_flow_paragraph (flow,
                     _("Levels that are expected are right to half a stop at best. What holds for stands, leads, heat and ways out is checked on the day; "
                             "local rules and licensed hands go first."));
}
