/* judge_tape.c - the room against what was taped in it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "judge_parts.h"

#include "survey_words.h"

#include <glib/gi18n-lib.h>

#define DRAWN_OFF_M 0.01 /* a tape tells a centimetre */

static LrRemark *
add (LrJudge    *judge,
     LrGrade     grade,
     const char *what)
{
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_TAPE, grade, NULL, NULL);

  g_free (remark->key);
  remark->key = g_strconcat (lr_check_info (LR_CHECK_TAPE)->word, ":", what, NULL);
  return remark;
}

/* Where a corner of the survey is drawn */
static LrVec2
corner_m (const LrJudge *judge,
          guint          corner)
{
  const LrRoom *room = judge->study->setup->room;

  return room->corners_m[lr_survey_corner_of (room, corner)];
}

/* What contradicts, where it is drawn */
static void
judge_doubt (LrJudge             *judge,
             const LrSurveyDoubt *doubt,
             guint                number)
{
  g_autofree char *what = g_strdup_printf ("doubt-%u", number + 1);
  g_autofree char *sentence = lr_survey_say_doubt (doubt, judge->units);
  LrRemark *remark = add (judge, LR_GRADE_MIND, what);

  for (guint i = 0; i < doubt->n; i++)
    {
      const LrSurveySuspect *suspect = &doubt->of[i];

      if (suspect->kind == LR_DOUBT_CORNER)
        lr_remark_mark_point (remark, corner_m (judge, suspect->from), NULL);
      else
        lr_remark_mark_line (remark, corner_m (judge, suspect->from), corner_m (judge, suspect->to), NULL);
    }
  if (doubt->n > 1 && doubt->has_settling)
    lr_remark_mark_distance (remark, corner_m (judge, doubt->from), corner_m (judge, doubt->to), NULL);
  remark->value = fabs (doubt->error);
  lr_remark_say (remark, "%s", sentence);
}

/* The wall that is drawn most otherwise than it was taped, and by how much; -1 if none is */
static int
find_moved_wall (const LrJudge  *judge,
                 const LrSurvey *survey,
                 double         *drawn_m,
                 double         *taped_m)
{
  guint n = survey->corners_m->len;
  double worst_m = DRAWN_OFF_M;
  int worst = -1;

  for (guint i = 0; i < n; i++)
    {
      double here_m = lr_vec2_distance (corner_m (judge, i), corner_m (judge, i + 1));
      double there_m = lr_vec2_distance (g_array_index (survey->corners_m, LrVec2, i),
                                         g_array_index (survey->corners_m, LrVec2, (i + 1) % n));

      if (fabs (here_m - there_m) <= worst_m)
        continue;
      worst_m = fabs (here_m - there_m);
      worst = (int) i;
      *drawn_m = here_m;
      *taped_m = there_m;
    }
  return worst;
}

/* Whether the room has its shape: walls may keep their lengths while their corners give way */
static double
farthest_corner_m (const LrJudge  *judge,
                   const LrSurvey *survey,
                   guint          *corner)
{
  double farthest_m = 0.0;

  for (guint i = 0; i < survey->corners_m->len; i++)
    {
      double off_m = lr_vec2_distance (corner_m (judge, i), g_array_index (survey->corners_m, LrVec2, i));

      if (off_m > farthest_m)
        {
          farthest_m = off_m;
          *corner = i;
        }
    }
  return farthest_m;
}

static void
judge_drawn (LrJudge        *judge,
             const LrSurvey *survey)
{
  guint corner = 0;
  double drawn_m = 0.0, taped_m = 0.0, off_m = farthest_corner_m (judge, survey, &corner);
  int wall = find_moved_wall (judge, survey, &drawn_m, &taped_m);
  LrRemark *remark;

  if (wall >= 0)
    {
      remark = add (judge, LR_GRADE_MIND, "drawn");
      remark->value = fabs (drawn_m - taped_m);
      lr_remark_mark_distance (remark, corner_m (judge, (guint) wall), corner_m (judge, (guint) wall + 1),
                               lr_say_length (judge, drawn_m));
      lr_remark_say (remark, _("The room is drawn otherwise than it was taped: wall <b>%d</b> is drawn <b>%s</b> long, "
                               "by the tapes it comes out at <b>%s</b>."), wall + 1, lr_say_length (judge, drawn_m), lr_say_length (judge, taped_m));
    }
  else if (off_m > 2.0 * DRAWN_OFF_M)
    {
      remark = add (judge, LR_GRADE_MIND, "drawn");
      remark->value = off_m;
      lr_remark_mark_point (remark, corner_m (judge, corner), lr_say_small (judge, off_m));
      lr_remark_say (remark, _("The room is drawn otherwise than it was taped: corner <b>%u</b> is <b>%s</b> from its place."),
                     corner + 1, lr_say_small (judge, off_m));
    }
  else if (survey->doubts->len == 0 || g_array_index (survey->doubts, LrSurveyDoubt, 0).is_within)
    {
      remark = add (judge, LR_GRADE_FINE, "drawn");
      remark->value = 2.0 * survey->corner_sd_m;
      lr_remark_say (remark, _("The room is drawn as it was taped; its corners are good to about <b>%s</b>."),
                     lr_say_small (judge, 2.0 * survey->corner_sd_m));
    }
}

/**
 * lr_judge_tape:
 * @judge: a judge
 *
 * What the tapes of the room say of each other, and whether the room is still drawn as they say. No remedy changes a room, so
 * that a trial need not look.
 */
void
lr_judge_tape (LrJudge *judge)
{
  LrSurvey *survey = judge->is_trial ? NULL : lr_survey_of_room (judge->study->setup->room);

  if (survey == NULL)
    return;

  /* notes may name fewer corners than are drawn, or not make a room */
  if (survey->state == LR_SURVEY_ROUND && survey->corners_m->len == judge->study->setup->room->n_corners)
    {
      for (guint i = 0; i < survey->doubts->len; i++)
        if (!g_array_index (survey->doubts, LrSurveyDoubt, i).is_within)
          judge_doubt (judge, &g_array_index (survey->doubts, LrSurveyDoubt, i), i);
      judge_drawn (judge, survey);
    }
  lr_survey_free (survey);
}
