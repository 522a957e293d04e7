/* history.h - the list of plans that undo and redo walk
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "plan.h"

typedef struct
{
  GPtrArray *steps; /* never empty */
  guint      at;    /* the current one */
} LrHistory;

void        lr_history_init      (LrHistory *history, LrPlan *plan);
void        lr_history_clear     (LrHistory *history);
void        lr_history_restart   (LrHistory *history, LrPlan *plan);

LrPlan     *lr_history_get_plan  (const LrHistory *history);
void        lr_history_push      (LrHistory *history, LrPlan *plan, const char *what, const char *merge_key);
gboolean    lr_history_merge     (LrHistory *history, LrPlan *plan, const char *merge_key, gint64 within_us);
gboolean    lr_history_go        (LrHistory *history, int by);
const char *lr_history_get_title (const LrHistory *history, int by);
