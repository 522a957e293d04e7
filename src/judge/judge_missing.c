/* judge_missing.c - what the other checks need, and what to do next
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "judge_parts.h"

#include <glib/gi18n-lib.h>

static void
miss (LrJudge    *judge,
      const char *what,
      const char *sentence)
{
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_MISSING, LR_GRADE_MIND, NULL, NULL);

  if (remark == NULL)
    return;

  g_free (remark->key);
  remark->key = g_strconcat (lr_check_info (LR_CHECK_MISSING)->word, ":", what, NULL);
  lr_remark_say (remark, "%s", sentence);
}

static gboolean
has_microphone (const LrStudy *study)
{
  for (guint i = 0; i < study->placed->len; i++)
    if (g_array_index (study->placed, LrPlaced, i).item->kind == LR_ITEM_MICROPHONE)
      return TRUE;
  return FALSE;
}

/**
 * lr_judge_missing:
 * @judge: a judge
 *
 * What the plan still lacks.
 */
void
lr_judge_missing (LrJudge *judge)
{
  const LrStudy *study = judge->study;

  if (study->setup->room->n_corners < 3)
    miss (judge, "room", _("There is no room yet: click its corners or type the lengths of its walls."));
  if (study->subject == NULL)
    miss (judge, "subject", _("Nobody to film yet: put in the subject, and the cameras can be judged."));
  else if (study->interviewer == NULL)
    miss (judge, "interviewer", _("No interviewer yet: the look and the line of action need one."));
  if (study->subject != NULL && !has_microphone (study))
    miss (judge, "microphone", _("No microphone yet: nobody hears the subject."));
  if (study->cameras->len == 0)
    miss (judge, "camera", _("No camera yet: put one in to see its frame."));
}
