/* run_edit.c - changing one step of the run sheet
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The plan keeps what differs from the run sheet that follows from it: an entry that says nothing is dropped.
 */

#include "config.h"

#include "run_edit.h"

#include "plan_edit.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/**
 * lr_plan_find_run_step:
 * @plan: a plan
 * @key: of a step
 *
 * Returns: (transfer none) (nullable): what the user made of it; %NULL: nothing
 */
const LrRunEntry *
lr_plan_find_run_step (const LrPlan *plan,
                       const char   *key)
{
  for (gsize i = 0; i < plan->job->n_run; i++)
    if (strcmp (plan->job->run[i].key, key) == 0)
      return &plan->job->run[i];

  return NULL;
}

static gboolean
is_own (const char *key)
{
  return g_str_has_prefix (key, LR_RUN_OWN);
}

static gboolean
says_nothing (const LrRunEntry *entry)
{
  return !is_own (entry->key) && entry->title[0] == '\0' && entry->minutes == 0 && !entry->is_left_out && entry->unknown == NULL;
}

/* (element-type LrRunEntry): as the plan has them, to be changed; texts are the plan's */
static GArray *
copy_entries (const LrPlan *plan)
{
  GArray *entries = g_array_new (FALSE, TRUE, sizeof (LrRunEntry));

  if (plan->job->n_run > 0)
    g_array_append_vals (entries, plan->job->run, (guint) plan->job->n_run);
  return entries;
}

static LrPlan *
set (const LrPlan  *plan,
     GArray        *entries,
     GError       **error)
{
  return lr_plan_set_run (plan, (const LrRunEntry *) (gpointer) entries->data, entries->len, error);
}

/* The plan with @entry in the place of the one of its key */
static LrPlan *
put (const LrPlan      *plan,
     const LrRunEntry  *entry,
     GError           **error)
{
  g_autoptr (GArray) entries = copy_entries (plan);
  guint at = 0;

  while (at < entries->len && strcmp (g_array_index (entries, LrRunEntry, at).key, entry->key) != 0)
    at++;
  if (at < entries->len)
    g_array_remove_index (entries, at);
  if (!says_nothing (entry))
    g_array_insert_vals (entries, at, entry, 1);

  return set (plan, entries, error);
}

static LrRunEntry
entry_of (const LrPlan *plan,
          const char   *key)
{
  const LrRunEntry *entry = lr_plan_find_run_step (plan, key);

  return entry != NULL ? *entry : (LrRunEntry) { .key = (char *) key, .title = (char *) "", .after = (char *) "" };
}

/**
 * lr_plan_name_run_step:
 * @plan: a plan
 * @key: of a step
 * @title: what it is called; "": as usual
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_name_run_step (const LrPlan  *plan,
                       const char    *key,
                       const char    *title,
                       GError       **error)
{
  LrRunEntry entry = entry_of (plan, key);

  entry.title = (char *) title;
  return put (plan, &entry, error);
}

/**
 * lr_plan_time_run_step:
 * @plan: a plan
 * @key: of a step
 * @minutes: how long it takes; 0: as estimated
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_time_run_step (const LrPlan  *plan,
                       const char    *key,
                       int            minutes,
                       GError       **error)
{
  LrRunEntry entry = entry_of (plan, key);

  entry.minutes = minutes;
  return put (plan, &entry, error);
}

/**
 * lr_plan_leave_out_run_step:
 * @plan: a plan
 * @key: of a step
 * @is_left_out: whether it is not done on this job
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_leave_out_run_step (const LrPlan  *plan,
                            const char    *key,
                            gboolean       is_left_out,
                            GError       **error)
{
  LrRunEntry entry = entry_of (plan, key);

  entry.is_left_out = is_left_out;
  return put (plan, &entry, error);
}

/**
 * lr_plan_add_run_step:
 * @plan: a plan
 * @after: key of the step that it follows; "": the first
 * @title: what it is called
 * @minutes: how long it takes
 * @key: (out) (optional) (transfer full): its key
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_add_run_step (const LrPlan  *plan,
                      const char    *after,
                      const char    *title,
                      int            minutes,
                      char         **key,
                      GError       **error)
{
  g_autofree char *own = NULL;
  LrRunEntry entry;
  LrPlan *next;
  guint number = 0;

  do
    {
      g_free (own);
      own = g_strdup_printf (LR_RUN_OWN "%u", ++number);
    }
  while (lr_plan_find_run_step (plan, own) != NULL);

  entry = entry_of (plan, own);
  entry.title = (char *) title;
  entry.after = (char *) after;
  entry.minutes = minutes;
  next = put (plan, &entry, error);
  if (next != NULL && key != NULL)
    *key = g_steal_pointer (&own);
  return next;
}

/**
 * lr_plan_remove_run_step:
 * @plan: a plan
 * @key: of one of the user's own steps
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_remove_run_step (const LrPlan  *plan,
                         const char    *key,
                         GError       **error)
{
  const LrRunEntry *entry = lr_plan_find_run_step (plan, key);
  g_autoptr (GArray) entries = copy_entries (plan);

  if (entry == NULL || !is_own (key))
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("There is no step “%s” that was added."), key);
      return NULL;
    }
  for (guint i = entries->len; i > 0; i--)
    {
      LrRunEntry *other = &g_array_index (entries, LrRunEntry, i - 1);

      if (strcmp (other->key, key) == 0)
        g_array_remove_index (entries, i - 1);
      else if (strcmp (other->after, key) == 0)
        other->after = entry->after;
    }

  return set (plan, entries, error);
}
