/* contract.c - what every remedy owes the set
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "contract.h"

static const LrRemark *
same_of (const LrRemarks *remarks,
         const LrRemark  *remark)
{
  return lr_remarks_find (remarks, remark->key);
}

/* Where the things that it changes stand, or what they are seen in */
static gboolean
is_in_the_way (LrCheck check)
{
  return check == LR_CHECK_OVERLAP || check == LR_CHECK_OUTSIDE || check == LR_CHECK_DOOR_SWING || check == LR_CHECK_CEILING
         || check == LR_CHECK_IN_FRAME || check == LR_CHECK_IN_FRONT || check == LR_CHECK_BOOM_MARGIN || check == LR_CHECK_HEAD_CLEAR;
}

/**
 * contract_check:
 * @remark: one with a remedy
 * @before: all of its plan
 * @after: all of the plan that the remedy makes
 *
 * Its own remark is gone or fine, no other is a Fix that was none, and what moves stands in nothing and is in no picture, even by a little,
 * in which it was not.
 */
void
contract_check (const LrRemark  *remark,
                const LrRemarks *before,
                const LrRemarks *after)
{
  for (guint i = 0; i < after->all->len; i++)
    {
      const LrRemark *now = after->all->pdata[i], *was = same_of (before, now);
      gboolean is_worse = was == NULL || was->grade > now->grade;

      if (now->grade == LR_GRADE_FINE)
        continue;
      if (g_str_equal (now->key, remark->key))
        g_error ("%s\nstill: %s", remark->text, now->text);
      if (is_worse && (now->grade == LR_GRADE_FIX || is_in_the_way (now->check)))
        g_error ("%s\nmakes: %s", remark->text, now->text);
    }
}
