/* trial.c - what a remedy would make of the rest of the set
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The remedy is applied, and the plan that it makes studied and judged. It passes if the check that asked for it is fine then, nothing is
 * a Fix that was none before, nothing that it moves comes to stand in a thing, a wall or a door's swing, or shows in a picture, even by a
 * little, and, when it mends a Mind, there are fewer of those. Levels of light take too long for a trial, so what hangs on them is counted
 * on neither side.
 */

#include "config.h"

#include "judge_parts.h"

#include <string.h>

#define SAME_DEPTH_M 0.002 /* places are rounded to whole millimetres */

static gboolean
is_same_verdict (const LrVerdict *a,
                 const LrVerdict *b)
{
  return a->check == b->check && strcmp (a->id_a, b->id_a) == 0 && strcmp (a->id_b, b->id_b) == 0;
}

static gboolean
has_grade (const GArray    *verdicts,
           const LrVerdict *wanted,
           LrGrade          grade)
{
  for (guint i = 0; i < verdicts->len; i++)
    {
      const LrVerdict *verdict = &g_array_index (verdicts, LrVerdict, i);

      if (verdict->grade <= grade && is_same_verdict (verdict, wanted))
        return TRUE;
    }

  return FALSE;
}

/* What a trial does not see */
static gboolean
hangs_on_levels (LrCheck check)
{
  return (check >= LR_CHECK_UNLIT && check <= LR_CHECK_MIXED_WHITES) || check == LR_CHECK_CATCH_LIGHT || check == LR_CHECK_SHADOW
         || check == LR_CHECK_WAY_OUT || check == LR_CHECK_WHEELCHAIR;
}

static guint
count_minds (const GArray *verdicts)
{
  guint n = 0;

  for (guint i = 0; i < verdicts->len; i++)
    {
      const LrVerdict *verdict = &g_array_index (verdicts, LrVerdict, i);

      n += verdict->grade == LR_GRADE_MIND && !hangs_on_levels (verdict->check);
    }

  return n;
}

/* A thing in a picture, or too near a head or the ceiling */
static gboolean
is_in_the_way (LrCheck check)
{
  return check == LR_CHECK_IN_FRAME || check == LR_CHECK_IN_FRONT || check == LR_CHECK_BOOM_MARGIN || check == LR_CHECK_HEAD_CLEAR;
}

static gboolean
makes_worse (const GArray    *before,
             const LrVerdict *asked,
             const LrVerdict *verdict)
{
  if (verdict->grade == LR_GRADE_FINE)
    return FALSE;

  return is_same_verdict (verdict, asked) || (verdict->grade == LR_GRADE_FIX && !has_grade (before, verdict, LR_GRADE_FIX))
         || (is_in_the_way (verdict->check) && !has_grade (before, verdict, verdict->grade));
}

static gboolean
is_better (const GArray    *before,
           const LrVerdict *asked,
           const GArray    *after)
{
  guint n_mended = asked->grade == LR_GRADE_MIND && !hangs_on_levels (asked->check) ? 1 : 0;

  for (guint i = 0; i < after->len; i++)
    if (makes_worse (before, asked, &g_array_index (after, LrVerdict, i)))
      return FALSE;

  return asked->grade == LR_GRADE_FIX || count_minds (after) + n_mended <= count_minds (before);
}

static const char *
id_of (const LrPlaced *placed)
{
  return placed != NULL ? placed->item->id : "";
}

static gboolean
was_as_deep (const LrStudy *before,
             const LrClash *clash)
{
  for (guint i = 0; i < before->clashes->len; i++)
    {
      const LrClash *was = &g_array_index (before->clashes, LrClash, i);

      if (was->type == clash->type && strcmp (id_of (was->a), id_of (clash->a)) == 0 && strcmp (id_of (was->b), id_of (clash->b)) == 0
          && clash->depth_m <= was->depth_m + SAME_DEPTH_M)
        return TRUE;
    }

  return FALSE;
}

/* By more than the plan allows; gaps between legs are for who sets up, not for who advises */
static gboolean
runs_into (const LrStudy *before,
           const LrStudy *after,
           double         limit_m)
{
  for (guint i = 0; i < after->clashes->len; i++)
    {
      const LrClash *clash = &g_array_index (after->clashes, LrClash, i);

      if (clash->depth_m > limit_m && !was_as_deep (before, clash))
        return TRUE;
    }

  return FALSE;
}

/**
 * lr_judge_try:
 * @judge: a judge that has asked every family
 * @remedy: what would mend
 * @asked: the verdict that it mends
 *
 * Returns: whether it does, and makes nothing else worse that matters more
 */
gboolean
lr_judge_try (const LrJudge   *judge,
              const LrRemedy  *remedy,
              const LrVerdict *asked)
{
  g_autoptr (LrPlan) plan = lr_remedy_apply (remedy, judge->study->plan, NULL);
  g_autoptr (LrStudy) study = NULL;
  LrJudge trial = { .limits = judge->limits, .units = judge->units, .is_trial = TRUE };
  gboolean is_good;

  if (plan == NULL)
    return FALSE;

  study = lr_study_new_trial (plan);
  if (runs_into (judge->study, study, judge->limits[LR_LIMIT_OVERLAP]))
    return FALSE;

  trial.study = study;
  trial.verdicts = g_array_sized_new (FALSE, FALSE, sizeof (LrVerdict), judge->verdicts->len + 8);
  lr_judge_all (&trial);
  is_good = is_better (judge->verdicts, asked, trial.verdicts);
  if (is_good) /* what stands in the pictures costs more than the rest: last */
    {
      lr_study_find_intrusions (study, judge->study);
      lr_judge_intrusions (&trial);
      is_good = is_better (judge->verdicts, asked, trial.verdicts);
    }
  g_array_unref (trial.verdicts);

  return is_good;
}
