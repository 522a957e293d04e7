/* plan_diff_private.h - how the set moved as one, for plan_diff.c
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "plan_diff.h"

/* One thing, before and after */
typedef struct
{
  const LrItem *was, *now;
  LrVec2        was_m, now_m;
  gboolean      is_of_set;    /* moves with it, in both set-ups, and has a place of its own */
} LrDiffPair;

/* Turned about about_m, then moved */
typedef struct
{
  LrVec2 about_m, by_m;
  double turn_rad;
} LrRigid;

LrVec2   lr_rigid_apply    (const LrRigid *rigid, LrVec2 at_m);
/* How most of the set moved; FALSE, and nothing moves: it did not move, or not as one */
gboolean lr_diff_find_rigid (const LrDiffPair *pairs, gsize n, LrRigid *rigid);

/* plan_diff.c: the properties of a table that differ, of the same kind of owner */
void     lr_diff_add_props (LrPlanDiff *diff, const LrPropTable *table, const LrDiff *like, gconstpointer was, gconstpointer now);
/* plan_diff_room.c */
void     lr_diff_add_location (LrPlanDiff *diff);
void     lr_diff_add_room  (LrPlanDiff *diff);
