/* further_run.c - the run sheet
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "further.h"

#include "run_words.h"

#include <glib/gi18n-lib.h>

static const LrFlowColumn columns[] = {
  { N_("From"), 34.0, 0.0, LR_ALIGN_RIGHT },
  { N_("Until"), 34.0, 0.0, LR_ALIGN_RIGHT },
  { N_("Min"), 26.0, 0.0, LR_ALIGN_RIGHT },
  { N_("Step"), 0.0, 3.0, LR_ALIGN_LEFT },
  { N_("Counted"), 0.0, 2.0, LR_ALIGN_LEFT },
};

static void
add_step (LrFlow          *flow,
          const LrRunStep *step)
{
  const LrPlan *plan = lr_flow_sheet (flow)->study->plan;
  g_autofree char *from = lr_minute_format (step->from), *to = lr_minute_format (step->to);
  g_autofree char *minutes = g_strdup_printf ("%d", step->minutes);
  g_autofree char *title = g_markup_escape_text (step->title, -1);
  g_autofree char *reason = g_markup_escape_text (step->has_own_minutes ? "" : step->reason, -1);
  const char *cells[] = { from, to, minutes, title, reason };

  lr_flow_row (flow, lr_plan_is_ticked (plan, "run", step->key) ? LR_FLOW_BOX_TICKED : LR_FLOW_BOX, cells);
}

/* "08:30 in, 10:00 rolling, ..." */
static char *
times_text (const LrJob *job)
{
  g_autoptr (GString) text = g_string_new (NULL);
  const struct { const char *time, *word; } times[] = {
    { job->time_in, _("in") }, { job->time_roll, _("rolling") }, { job->time_wrap, _("wrap") }, { job->time_out, _("out") }
  };

  for (gsize i = 0; i < G_N_ELEMENTS (times); i++)
    if (times[i].time[0] != '\0')
      g_string_append_printf (text, "%s%s %s", text->len > 0 ? "   " : "", times[i].time, times[i].word);
  return g_markup_escape_text (text->str, -1);
}

/* "Keys: Tamsin Roe 01632 960145": whom to call, a line each */
static void
add_people (LrFlow           *flow,
            const LrLocation *location)
{
  g_autofree char *plain = lr_location_dup_where (location);

  if (location->n_contacts > 0 || plain[0] != '\0')
    lr_flow_group (flow, _("Where and who"));
  if (plain[0] != '\0')
    {
      g_autofree char *where = g_markup_escape_text (plain, -1);

      lr_flow_paragraph (flow, where);
    }
  if (location->access[0] != '\0')
    {
      g_autofree char *access = g_markup_printf_escaped (_("Access: %s"), location->access);

      lr_flow_paragraph (flow, access);
    }
  for (gsize i = 0; i < location->n_contacts; i++)
    {
      const LrContact *contact = &location->contacts[i];
      g_autofree char *who = g_markup_printf_escaped ("%s%s<b>%s</b> %s", contact->role, contact->role[0] != '\0' ? ": " : "", contact->name,
                                                      contact->phone);

      lr_flow_paragraph (flow, who);
    }
}

/**
 * lr_further_run:
 * @flow: gets the list
 *
 * The steps of the day with their times, what does not fit, and whom to call.
 */
void
lr_further_run (LrFlow *flow)
{
  const LrStudy *study = lr_flow_sheet (flow)->study;
  g_autoptr (LrRunSheet) sheet = lr_run_sheet_new (study);
  g_autoptr (GPtrArray) notes = lr_run_notes (sheet);
  g_autofree char *times = times_text (study->plan->job);
  int part = -1;

  lr_flow_title (flow, _("Run sheet"), times);
  for (guint i = 0; i < notes->len; i++)
    lr_flow_paragraph (flow, g_ptr_array_index (notes, i));
  lr_flow_table (flow, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < sheet->steps->len; i++)
    {
      const LrRunStep *step = g_ptr_array_index (sheet->steps, i);

      if (step->is_left_out)
        continue;
      if ((int) step->part != part)
        {
          g_autofree char *heading = lr_run_heading (sheet, step->part);

          lr_flow_group (flow, heading);
        }
      part = (int) step->part;
      add_step (flow, step);
    }
  lr_flow_paragraph (flow, _("Minutes are estimates for one person."));
  add_people (flow, study->setup->location);
}
