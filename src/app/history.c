/* history.c - the list of plans that undo and redo walk
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Plans share what they have in common, so a step costs about as much as the item that changed in it.
 */

#include "history.h"

#define MAX_STEPS 2000

typedef struct
{
  LrPlan *plan;
  char   *what;      /* what led to it: "Move camera B"; NULL for the first */
  char   *merge_key; /* may be NULL */
  gint64  when_us;
} Step;

static Step *
step_new (LrPlan     *plan,
          const char *what,
          const char *merge_key)
{
  Step *step = g_new0 (Step, 1);

  step->plan = plan;
  step->what = g_strdup (what);
  step->merge_key = g_strdup (merge_key);
  step->when_us = g_get_monotonic_time ();
  return step;
}

static void
step_free (gpointer data)
{
  Step *step = data;

  lr_plan_unref (step->plan);
  g_free (step->what);
  g_free (step->merge_key);
  g_free (step);
}

static Step *
get_step (const LrHistory *history,
          guint            index)
{
  return g_ptr_array_index (history->steps, index);
}

/**
 * lr_history_init:
 * @history: (out caller-allocates): where to start a history
 * @plan: (transfer full): its first plan
 */
void
lr_history_init (LrHistory *history,
                 LrPlan    *plan)
{
  history->steps = g_ptr_array_new_with_free_func (step_free);
  history->at = 0;
  g_ptr_array_add (history->steps, step_new (plan, NULL, NULL));
}

/**
 * lr_history_clear:
 *
 * Lets go of all plans; the history may be initialised again.
 */
void
lr_history_clear (LrHistory *history)
{
  g_clear_pointer (&history->steps, g_ptr_array_unref);
}

/**
 * lr_history_restart:
 * @plan: (transfer full): the only plan from now on
 */
void
lr_history_restart (LrHistory *history,
                    LrPlan    *plan)
{
  g_ptr_array_set_size (history->steps, 0);
  g_ptr_array_add (history->steps, step_new (plan, NULL, NULL));
  history->at = 0;
}

/**
 * lr_history_get_plan:
 *
 * Returns: (transfer none): the current plan
 */
LrPlan *
lr_history_get_plan (const LrHistory *history)
{
  return get_step (history, history->at)->plan;
}

/**
 * lr_history_push:
 * @plan: (transfer full): the next plan, current from now on; what was to be redone is forgotten
 * @what: (nullable): title of the step
 * @merge_key: (nullable): for lr_history_merge()
 */
void
lr_history_push (LrHistory  *history,
                 LrPlan     *plan,
                 const char *what,
                 const char *merge_key)
{
  g_ptr_array_set_size (history->steps, (int) history->at + 1);
  if (history->steps->len >= MAX_STEPS)
    g_ptr_array_remove_index (history->steps, 0);
  g_ptr_array_add (history->steps, step_new (plan, what, merge_key));
  history->at = history->steps->len - 1;
}

/**
 * lr_history_merge:
 * @plan: (transfer full): taken only if the answer is %TRUE
 * @merge_key: (nullable): what the step must have been made with
 * @within_us: longest time since the last step [µs]
 *
 * Puts @plan in the place of the last step's plan, if that step is current, has the same key and is fresh enough.
 *
 * Returns: whether it did
 */
gboolean
lr_history_merge (LrHistory  *history,
                  LrPlan     *plan,
                  const char *merge_key,
                  gint64      within_us)
{
  Step *step = get_step (history, history->at);
  gint64 now_us = g_get_monotonic_time ();

  if (merge_key == NULL || g_strcmp0 (step->merge_key, merge_key) != 0
      || history->at + 1 != history->steps->len || now_us - step->when_us > within_us)
    return FALSE;

  lr_plan_unref (step->plan);
  step->plan = plan;
  step->when_us = now_us;
  return TRUE;
}

/**
 * lr_history_go:
 * @by: -1 to undo, 1 to redo
 *
 * Returns: whether there is such a step, which is current then
 */
gboolean
lr_history_go (LrHistory *history,
               int        by)
{
  gint64 to = (gint64) history->at + by;

  if (to < 0 || to >= history->steps->len)
    return FALSE;

  history->at = (guint) to;
  return TRUE;
}

/**
 * lr_history_get_title:
 * @by: -1 for what undo takes back, 1 for what redo does again
 *
 * Returns: (transfer none) (nullable): title of that step, %NULL when there is none
 */
const char *
lr_history_get_title (const LrHistory *history,
                      int              by)
{
  guint index = by < 0 ? history->at : history->at + 1;

  if (index == 0 || index >= history->steps->len)
    return NULL;

  return get_step (history, index)->what;
}
