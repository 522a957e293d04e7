/* further_questions.c - questions, and room to write
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a sheet has left under the last question is given to notes: lines are ruled to its foot.
 */

#include "config.h"

#include "further.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define LINES_OF_QUESTION 3 /* under each */

static const LrFlowColumn columns[] = {
  { NULL, 16.0, 0.0, LR_ALIGN_RIGHT },
  { NULL, 0.0, 1.0, LR_ALIGN_LEFT },
};

/* One that was begun and has no words yet is not printed */
static gboolean
is_asked (const LrQuestion *question)
{
  return question->text[strspn (question->text, " \t\n")] != '\0' || question->note[strspn (question->note, " \t\n")] != '\0';
}

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
 * Every question that has words with lines under it, and lines for notes at the end.
 */
void
lr_further_questions (LrFlow *flow)
{
  const LrPlan *plan = lr_flow_sheet (flow)->study->plan;
  const LrJob *job = plan->job;
  gsize number = 0;

  lr_flow_title (flow, _("Questions"), NULL);
  lr_flow_table (flow, columns, G_N_ELEMENTS (columns));
  for (gsize i = 0; i < job->n_questions; i++)
    if (is_asked (&job->questions[i]))
      add_question (flow, &job->questions[i], ++number, lr_plan_is_ticked (plan, "questions", job->questions[i].id));
  lr_flow_group (flow, _("Notes"));
  lr_flow_lines_to_foot (flow);
}
