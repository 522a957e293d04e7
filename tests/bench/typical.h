/* typical.h - the plans that the benches measure with
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "plan.h"

/* An interview as the budgets mean it: 2 people, 3 cameras, 5 lights, 3 microphones and 15 pieces of furniture in a room
 * of 8 corners with a door and two windows */
LrPlan *lr_typical_plan_new (void);
/* The same interview in a hall, with rows of chairs, tables, lights, microphones and panels up to @n_items items */
LrPlan *lr_large_plan_new   (guint n_items);
/* (transfer full): the plan file that the arguments name, or the typical plan; ends the program if it cannot be read */
LrPlan *lr_bench_plan_open  (int argc, char **argv);
