/* job_hours.c - the hours of the shoot
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "job_hours.h"

#include <stdio.h>

/**
 * lr_minute_parse:
 * @text: "09:30"
 * @minute: (out): since midnight
 *
 * Returns: %FALSE, with @minute untouched, if it is no time of the day
 */
gboolean
lr_minute_parse (const char *text,
                 int        *minute)
{
  int hours, minutes, end = 0;

  if (sscanf (text, "%2d:%2d%n", &hours, &minutes, &end) != 2 || text[end] != '\0' || hours < 0 || hours > 24 || minutes < 0 || minutes > 59
      || hours * 60 + minutes > LR_DAY_MIN)
    return FALSE;

  *minute = hours * 60 + minutes;
  return TRUE;
}

/**
 * lr_minute_format:
 * @minute: since midnight; of a later day too; -1: not known
 *
 * Returns: (transfer full): "08:30"; ""
 */
char *
lr_minute_format (int minute)
{
  return minute < 0 ? g_strdup ("") : g_strdup_printf ("%02d:%02d", minute / 60 % 24, minute % 60);
}

/**
 * lr_job_minutes:
 * @job: a job
 * @in: (out): when one comes in, minutes since midnight of its day; -1: not told
 * @roll: (out): when the cameras roll
 * @wrap: (out): when they stop
 * @out: (out): when one goes
 *
 * A time that is earlier than the one before it is of the next day.
 */
void
lr_job_minutes (const LrJob *job,
                int         *in,
                int         *roll,
                int         *wrap,
                int         *out)
{
  const struct { const char *text; int *minute; } times[] = {
    { job->time_in, in }, { job->time_roll, roll }, { job->time_wrap, wrap }, { job->time_out, out },
  };
  int before = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (times); i++)
    {
      *times[i].minute = -1;
      if (times[i].text[0] == '\0' || !lr_minute_parse (times[i].text, times[i].minute))
        continue;
      while (*times[i].minute < before)
        *times[i].minute += LR_DAY_MIN;
      before = *times[i].minute;
    }
}

/**
 * lr_job_shoot:
 * @job: a job
 * @roll: (out): when the cameras roll, minutes since midnight of its day; may pass 24 h
 * @wrap: (out): when they stop, later than @roll
 *
 * Returns: %FALSE, with both untouched, if one is not told or both are the same
 */
gboolean
lr_job_shoot (const LrJob *job,
              int         *roll,
              int         *wrap)
{
  int in, from, to, out;

  lr_job_minutes (job, &in, &from, &to, &out);
  if (from < 0 || to <= from)
    return FALSE;

  *roll = from;
  *wrap = to;
  return TRUE;
}

/**
 * lr_job_middle:
 * @job: a job
 *
 * Returns: the minute half-way through the shoot, as of lr_job_shoot(); -1: its hours are not told
 */
int
lr_job_middle (const LrJob *job)
{
  int roll, wrap;

  return lr_job_shoot (job, &roll, &wrap) ? (roll + wrap) / 2 : -1;
}
