/* further_questions.c - questions, and room to write
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "further.h"

#include <glib/gi18n-lib.h>

#define LINES_OF_QUESTION 3 /* under each */
#define LINES_OF_NOTES 8    /* at the end */

static const LrFlowColumn columns[] = {
  { NULL, 16.0, 0.0, LR_ALIGN_RIGHT },
  { NULL, 0.0, 1.0, LR_ALIGN_LEFT },
};

static void
add_question (LrFlow           *flow,
              const LrQuestion *question,
              gsize             number,
              gboolean          is_ticked)
{
  g_autofree char *count = g_strdup_printf ("%" G_GSIZE_FORMAT, number);
  g_autofree char *text = g_markup_printf_escaped ("<b>%s</b>%s%s", question->text, question->note[0] != '\0' ? "\n" : "", question->note);
  const char *cells[] = { count, text };

  lr_flow_row (flow, is_ticked ? LR_FLOW_BOX_TICKED : LR_FLOW_BOX, cells);
  lr_flow_lines (flow, LINES_OF_QUESTION);
}

/**
 * lr_further_questions:
 * @flow: gets the list
 *
 * Every question with lines under it, and lines for notes at the end.
 */
void
lr_further_questions (LrFlow *flow)
{
  const LrPlan *plan = lr_flow_sheet (flow)->study->plan;
  const LrJob *job = plan->job;

  lr_flow_title (flow, _("Questions"), NULL);
  lr_flow_table (flow, columns, G_N_ELEMENTS (columns));
  for (gsize i = 0; i < job->n_questions; i++)
    add_question (flow, &job->questions[i], i + 1, lr_plan_is_ticked (plan, "questions", job->questions[i].id));
  lr_flow_group (flow, _("Notes"));
  lr_flow_lines (flow, LINES_OF_NOTES);
}
