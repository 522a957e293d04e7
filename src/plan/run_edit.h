/* run_edit.h - changing one step of the run sheet
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "plan.h"

/* The step is called that; "": as usual */
LrPlan *lr_plan_name_run_step   (const LrPlan *plan, const char *key, const char *title, GError **error);
/* It takes so long; 0: a step of the plan as long as estimated, one of the user's own no time */
LrPlan *lr_plan_time_run_step   (const LrPlan *plan, const char *key, int minutes, GError **error);
LrPlan *lr_plan_leave_out_run_step (const LrPlan *plan, const char *key, gboolean is_left_out, GError **error);
/* One of the user's own, after that of the key @after; @key (out, optional, transfer full) */
LrPlan *lr_plan_add_run_step    (const LrPlan *plan, const char *after, const char *title, int minutes, char **key, GError **error);
/* One of the user's own goes; what followed it follows what it followed */
LrPlan *lr_plan_remove_run_step (const LrPlan *plan, const char *key, GError **error);
/* What the user made of the step; (nullable) */
const LrRunEntry *lr_plan_find_run_step (const LrPlan *plan, const char *key);
