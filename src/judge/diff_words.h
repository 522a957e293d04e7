/* diff_words.h - differences between a set-up as planned and as found, in the user's words
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "plan_diff.h"
#include "study.h"
#include "units.h"

/* "L1 key 0.40 m nearer the subject", figures in <b>; (transfer full) */
char       *lr_diff_markup      (const LrPlanDiff *diff, const LrDiff *found, LrUnits units);
/* What is to be taped still; "" for nothing */
const char *lr_diff_advice      (const LrPlanDiff *diff, const LrDiff *found);
char       *lr_diff_text        (const LrPlanDiff *diff, const LrDiff *found, LrUnits units);
const char *lr_diff_group_title (LrDiffGroup group);
/* "Move the set 0.40 m towards the west wall and turn it 5° clockwise", or "Moved ..."; figures in <b>; (transfer full) */
char       *lr_say_set_move     (const LrRoom *room, LrVec2 by_m, double turn_rad, gboolean is_done, LrUnits units);
/* (transfer full): { "format": "lookroom-differences", ... } */
JsonNode   *lr_plan_diff_to_json (const LrPlanDiff *diff, LrUnits units);
