/* run_words.c - whether the day is long enough, in sentences
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "run_words.h"

#include <glib/gi18n-lib.h>

#define PEOPLE_TIRE_MIN 60 /* of an interview without a break; common practice, no source */

/**
 * lr_duration_format:
 * @minutes: >= 0
 *
 * Returns: (transfer full): "45 min", "2 h", "2 h 30 min"
 */
char *
lr_duration_format (int minutes)
{
  if (minutes < 60)
    /* Translators: a duration */
    return g_strdup_printf (_("%d min"), minutes);
  if (minutes % 60 == 0)
    /* Translators: a duration */
    return g_strdup_printf (_("%d h"), minutes / 60);
  /* Translators: a duration */
  return g_strdup_printf (_("%d h %d min"), minutes / 60, minutes % 60);
}

/**
 * lr_run_heading:
 * @sheet: a run sheet
 * @part: of the day
 *
 * Returns: (transfer full): its title, what it takes and, if that is less, what is planned; what is more has a note; plain text
 */
char *
lr_run_heading (const LrRunSheet *sheet,
                LrRunPart         part)
{
  const LrRunSpan *span = &sheet->span[part];
  g_autofree char *needed = lr_duration_format (span->needed_min), *planned = lr_duration_format (MAX (span->planned_min, 0));

  if (span->planned_min <= span->needed_min)
    /* Translators: part of the day, a duration */
    return g_strdup_printf (_("%s: %s"), lr_run_part_title (part), needed);
  /* Translators: part of the day, two durations */
  return g_strdup_printf (_("%s: %s, %s are planned"), lr_run_part_title (part), needed, planned);
}

static void
note_rig (GPtrArray       *notes,
          const LrRunSpan *span)
{
  int missing = span->needed_min - span->planned_min;
  g_autofree char *longer = lr_duration_format (MAX (missing, 0)), *planned = lr_duration_format (MAX (span->planned_min, 0));
  g_autofree char *wanted = lr_minute_format (span->to - span->needed_min), *begin = NULL;

  if (span->planned_min < 0 || missing <= 0)
    return;

  begin = span->to >= span->needed_min ? g_strdup_printf (_("come in at <b>%s</b>"), wanted) : g_strdup (_("rig the day before"));
  /* Translators: two durations; "come in at 08:30" */
  g_ptr_array_add (notes,
                   g_strdup_printf (_("Rigging takes <b>%s</b> longer than the <b>%s</b> planned before rolling: %s, bring a hand, or leave "
                                      "something out."), longer, planned, begin));
}

static void
note_roll (GPtrArray        *notes,
           const LrRunSheet *sheet)
{
  const LrRunSpan *span = &sheet->span[LR_RUN_ROLL];
  g_autofree char *longer = lr_duration_format (MAX (span->needed_min - span->planned_min, 0));
  g_autofree char *planned = lr_duration_format (MAX (span->planned_min, 0));

  if (span->planned_min >= 0 && span->needed_min > span->planned_min)
    /* Translators: two durations */
    g_ptr_array_add (notes, g_strdup_printf (_("Interview, inserts and room tone take <b>%s</b> longer than the <b>%s</b> planned between rolling "
                                               "and wrap."), longer, planned));
  for (guint i = 0; i < sheet->steps->len; i++)
    {
      const LrRunStep *step = g_ptr_array_index (sheet->steps, i);

      if (g_str_equal (step->key, "interview") && !step->is_left_out && step->minutes > PEOPLE_TIRE_MIN)
        g_ptr_array_add (notes,
                         g_strdup_printf (_("The interview has <b>%d</b> min: plan a break every 20 to 30, and look at focus, media and sun then."),
                                                 step->minutes));
    }
}

static void
note_strike (GPtrArray       *notes,
             const LrRunSpan *span)
{
  g_autofree char *longer = lr_duration_format (MAX (span->needed_min - span->planned_min, 0));
  g_autofree char *planned = lr_duration_format (MAX (span->planned_min, 0));

  if (span->planned_min >= 0 && span->needed_min > span->planned_min)
    /* Translators: two durations */
    g_ptr_array_add (notes,
                     g_strdup_printf (_("Striking takes <b>%s</b> longer than the <b>%s</b> planned after wrap: ask for the room until later, or wrap earlier."),
                                      longer, planned));
}

/**
 * lr_run_notes:
 * @sheet: a run sheet
 *
 * Returns: (transfer full) (element-type utf8): sentences in Pango markup on what does not fit the job's times; may be empty
 */
GPtrArray *
lr_run_notes (const LrRunSheet *sheet)
{
  GPtrArray *notes = g_ptr_array_new_with_free_func (g_free);

  note_rig (notes, &sheet->span[LR_RUN_RIG]);
  note_roll (notes, sheet);
  note_strike (notes, &sheet->span[LR_RUN_STRIKE]);
  return notes;
}
