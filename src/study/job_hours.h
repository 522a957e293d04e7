/* job_hours.h - the hours of the shoot
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One rule for all that asks when the cameras roll: minutes count from midnight of the job's day, and a time that is earlier than the one
 * before it is of the next day.
 */

#pragma once

#include "plan.h"

#define LR_DAY_MIN (24 * 60)

/* "09:30"; FALSE: no time of the day */
gboolean lr_minute_parse  (const char *text, int *minute);
/* "08:30"; a later day's "00:30"; (transfer full); "" for -1 */
char    *lr_minute_format (int minute);
/* Times of the job in order; -1: not told */
void     lr_job_minutes   (const LrJob *job, int *in, int *roll, int *wrap, int *out);
/* From rolling to wrap, which is later; FALSE: they tell no hours */
gboolean lr_job_shoot     (const LrJob *job, int *roll, int *wrap);
/* Half-way through the shoot, by the clock of its day or a later one; -1: they tell no hours */
int      lr_job_middle    (const LrJob *job);
