/* judge_sun.c - whether the sun reaches a face while the camera rolls
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "judge_parts.h"

#include "sun_readings.h"

#include <glib/gi18n-lib.h>

static const char *
say_minute (LrJudge *judge,
            int      minute)
{
  g_autofree char *text = g_strdup_printf ("%02d:%02d", minute / 60, minute % 60);

  return g_string_chunk_insert (judge->words, text);
}

static void
judge_person (LrJudge        *judge,
              const LrPlaced *person,
              int             roll,
              int             wrap)
{
  const LrPlaced *window = NULL;
  int first = 0, last = 0;
  gboolean is_reached = lr_study_sun_reach (judge->study, person->eyes_m, 0.5 * person->body.head_width_m, roll, wrap, &first, &last, &window);
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_SUN, is_reached ? LR_GRADE_MIND : LR_GRADE_FINE, person, window);
  LrRemedy *remedy;
  const char *name, *title;

  if (remark == NULL)
    return;

  name = lr_say_name (judge, person);
  remark->value = is_reached ? last - first : 0;
  lr_remark_mark_point (remark, person->at_m, NULL);
  if (!is_reached)
    {
      lr_remark_say (remark, _("From <b>%s</b> to <b>%s</b> no sun reaches %s’s face."), say_minute (judge, roll), say_minute (judge, wrap), name);
      return;
    }

  title = lr_say_title (judge, window);
  lr_remark_mark_line (remark, person->at_m, window->at_m, NULL);
  lr_remark_say (remark, _("If it shines, the sun reaches %s’s face through %s from <b>%s</b> to <b>%s</b>."), name, title,
                 say_minute (judge, first), say_minute (judge, last));
  remedy = lr_remedy_new ();
  lr_remedy_change (remedy, window->item, "blind", LR_BLIND_DOWN);
  lr_remedy_say (remedy, say_minute (judge, first), _("Let down the blind of %s by <b>%s</b>."), title, say_minute (judge, first));
  lr_judge_keep (judge, remark, remedy);
}

/**
 * lr_judge_sun:
 * @judge: a judge
 *
 * The subject's face, from the first to the last minute of the shoot. Nothing without date, hours and the place on the earth.
 */
void
lr_judge_sun (LrJudge *judge)
{
  const LrJob *job = judge->study->plan->job;
  LrSunPlace sun;
  int roll, wrap;

  if (judge->is_trial || judge->study->subject == NULL || !lr_minute_parse (job->time_roll, &roll) || !lr_minute_parse (job->time_wrap, &wrap)
      || !lr_study_sun_at (judge->study, roll, &sun))
    return;

  judge_person (judge, judge->study->subject, roll, wrap);
}
