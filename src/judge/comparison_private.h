/* comparison_private.h - the steps of putting a comparison in words
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "comparison_words.h"

static inline guint
n_rooms (const LrComparison *comparison)
{
  return comparison->rooms->len;
}

static inline const LrFigure *
figure_of (const LrComparison *comparison,
           LrCompare           row,
           guint               index)
{
  return &lr_comparison_room (comparison, index)->figure[row];
}

static inline const char *
name_of (const LrComparison *comparison,
         guint               index)
{
  return lr_comparison_room (comparison, index)->setup->name;
}

/* comparison_verdict.c: what is best in a row, and why */
void     lr_compare_judge_row (const LrComparison *comparison, LrComparedRow *row, LrUnits units);
/* The known ones that are best and worst; FALSE: fewer than two are known */
gboolean lr_compare_ends      (const LrComparison *comparison, LrCompare row, guint *best, guint *worst);
/* "A", "A and B", "A, B and C"; (transfer full) */
char    *lr_compare_join      (const GPtrArray *words);
