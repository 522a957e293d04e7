/* job.c - what, when and for whom
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_private.h"

#include "plan_json.h"
#include "prop_rows.h"

#include <glib/gi18n-lib.h>

#define ROW_OWNER LrJob

static const LrChoice skies[] = {
  [LR_SKY_OVERCAST] = { "overcast", N_("Overcast") },
  [LR_SKY_CLEAR] = { "clear", N_("Clear, with sun") },
  { NULL, NULL },
};

static const LrProp job_rows[] = {
  TEXT ("title", N_("Title"), title),
  TEXT ("subtitle", N_("Subtitle"), subtitle),
  TEXT ("client", N_("Client"), client),
  TEXT ("owner", N_("Owner"), owner),
  TEXT ("notes", N_("Notes"), notes),
  ROW ("date", N_("Date"), LR_PROP_TEXT, date, .form = LR_TEXT_DATE),
  ROW ("time-in", N_("In"), LR_PROP_TEXT, time_in, .form = LR_TEXT_TIME),
  ROW ("time-roll", N_("Rolling"), LR_PROP_TEXT, time_roll, .form = LR_TEXT_TIME),
  ROW ("time-wrap", N_("Wrap"), LR_PROP_TEXT, time_wrap, .form = LR_TEXT_TIME),
  ROW ("time-out", N_("Out"), LR_PROP_TEXT, time_out, .form = LR_TEXT_TIME),
  TEXT ("time-zone", N_("Time zone"), time_zone),
  ROW ("sky", N_("Sky"), LR_PROP_CHOICE, sky, .max = LR_N_SKIES - 1, .choices = skies, .is_optional = TRUE),
  TEXT ("created-by", N_("Created"), created_by),
  TEXT ("approved-by", N_("Approved"), approved_by),
  TEXT ("identification", N_("Plan no."), identification),
  TEXT ("revision", N_("Revision"), revision),
  ROW ("issued", N_("Issued"), LR_PROP_TEXT, issued, .form = LR_TEXT_DATE),
};

static const LrPropTable job_table = TABLE (job_rows);

/**
 * lr_job_table:
 *
 * Returns: (transfer none): the members of a job but those that are lists
 */
const LrPropTable *
lr_job_table (void)
{
  return &job_table;
}

/**
 * lr_job_new:
 *
 * Returns: (transfer full): an empty job
 */
LrJob *
lr_job_new (void)
{
  LrJob *job = g_atomic_rc_box_new0 (LrJob);

  lr_prop_table_init (&job_table, job);
  job->requests = g_new0 (char *, 1);
  job->ticks = g_new0 (char *, 1);

  return job;
}

/**
 * lr_job_copy:
 * @job: a job
 *
 * Returns: (transfer full): a fresh one that may be written
 */
LrJob *
lr_job_copy (const LrJob *job)
{
  LrJob *copy = g_atomic_rc_box_dup (sizeof *job, (gpointer) job);

  lr_prop_table_copy (&job_table, copy, job);
  lr_lists_copy (LR_LISTS_OF_JOB, copy, job);
  copy->requests = g_strdupv (job->requests);
  copy->ticks = g_strdupv (job->ticks);
  copy->unknown = lr_json_dup_object (job->unknown);

  return copy;
}

static void
clear (gpointer data)
{
  LrJob *job = data;

  lr_prop_table_clear (&job_table, job);
  lr_lists_clear (LR_LISTS_OF_JOB, job);
  g_strfreev (job->requests);
  g_strfreev (job->ticks);
  g_clear_pointer (&job->unknown, json_object_unref);
}

/**
 * lr_job_unref:
 * @job: (transfer full): a job
 */
void
lr_job_unref (LrJob *job)
{
  g_atomic_rc_box_release_full (job, clear);
}

/**
 * lr_job_equal:
 * @a: a job
 * @b: another
 *
 * Returns: whether they are the same in every member
 */
gboolean
lr_job_equal (const LrJob *a,
              const LrJob *b)
{
  if (a == b)
    return TRUE;

  return lr_prop_table_equal (&job_table, a, b) && lr_lists_equal (LR_LISTS_OF_JOB, a, b)
         && g_strv_equal ((const char *const *) a->requests, (const char *const *) b->requests)
         && g_strv_equal ((const char *const *) a->ticks, (const char *const *) b->ticks)
         && lr_json_objects_equal (a->unknown, b->unknown);
}
