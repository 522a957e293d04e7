/* plan.c - the plan itself: a value that is shared, compared and looked into
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_private.h"

#include "plan_json.h"

#include <glib/gi18n-lib.h>
#include <string.h>

G_DEFINE_QUARK (lr-plan-error-quark, lr_plan_error)

static gpointer
ref_setup (gconstpointer setup,
           gpointer      data G_GNUC_UNUSED)
{
  return lr_setup_ref (setup);
}

/**
 * lr_plan_alloc:
 *
 * Returns: (transfer full): an empty job, default limits, no kit and no set-ups: not yet a plan
 */
LrPlan *
lr_plan_alloc (void)
{
  LrPlan *plan = g_atomic_rc_box_new0 (LrPlan);

  plan->job = lr_job_new ();
  lr_limits_init (&plan->limits);
  plan->kit = g_ptr_array_new_with_free_func ((GDestroyNotify) lr_kit_entry_unref);
  plan->supplies = lr_supplies_new ();
  plan->setups = g_ptr_array_new_with_free_func ((GDestroyNotify) lr_setup_unref);
  plan->version = LR_PLAN_VERSION;

  return plan;
}

/**
 * lr_plan_new_empty:
 *
 * Returns: (transfer full): a plan with the generic kit and one set-up whose room is not drawn yet
 */
LrPlan *
lr_plan_new_empty (void)
{
  LrPlan *plan = lr_plan_alloc ();

  g_ptr_array_unref (plan->kit);
  plan->kit = lr_kit_new_generic ();
  g_ptr_array_add (plan->setups, lr_setup_new ("setup-1", _("As planned")));

  return plan;
}

/**
 * lr_plan_copy:
 * @plan: a plan
 *
 * Returns: (transfer full): a fresh one that may be written and shares job, kit and set-ups
 */
LrPlan *
lr_plan_copy (const LrPlan *plan)
{
  LrPlan *copy = g_atomic_rc_box_dup (sizeof *plan, (gpointer) plan);

  g_atomic_rc_box_acquire (plan->job);
  g_ptr_array_ref (plan->kit);
  g_ptr_array_ref (plan->supplies);
  copy->setups = g_ptr_array_copy (plan->setups, (GCopyFunc) ref_setup, NULL);
  copy->unknown = lr_json_dup_object (plan->unknown);
  copy->unknown_limits = lr_json_dup_object (plan->unknown_limits);

  return copy;
}

/**
 * lr_plan_ref:
 * @plan: a plan
 *
 * May be called from any thread.
 *
 * Returns: (transfer full): @plan
 */
LrPlan *
lr_plan_ref (const LrPlan *plan)
{
  return g_atomic_rc_box_acquire ((gpointer) plan);
}

static void
clear (gpointer data)
{
  LrPlan *plan = data;

  lr_job_unref (plan->job);
  g_ptr_array_unref (plan->kit);
  g_ptr_array_unref (plan->supplies);
  g_ptr_array_unref (plan->setups);
  g_clear_pointer (&plan->unknown, json_object_unref);
  g_clear_pointer (&plan->unknown_limits, json_object_unref);
}

/**
 * lr_plan_unref:
 * @plan: (transfer full): a plan
 *
 * May be called from any thread.
 */
void
lr_plan_unref (LrPlan *plan)
{
  g_atomic_rc_box_release_full (plan, clear);
}

static gboolean
limits_equal (const LrLimits *a,
              const LrLimits *b)
{
  for (int i = 0; i < LR_N_LIMITS; i++)
    if (a->is_set[i] != b->is_set[i] || a->value[i] != b->value[i])
      return FALSE;

  return TRUE;
}

static gboolean
kits_equal (GPtrArray *a,
            GPtrArray *b)
{
  if (a == b)
    return TRUE;
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    if (!lr_kit_entry_equal (a->pdata[i], b->pdata[i]))
      return FALSE;

  return TRUE;
}

static gboolean
setups_equal (GPtrArray *a,
              GPtrArray *b)
{
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    if (!lr_setup_equal (a->pdata[i], b->pdata[i]))
      return FALSE;

  return TRUE;
}

/**
 * lr_plan_says_the_same:
 * @a: a plan
 * @b: another
 *
 * Parts that both share are not looked into.
 *
 * Returns: whether both hold the same, whichever set-up they show
 */
gboolean
lr_plan_says_the_same (const LrPlan *a,
                       const LrPlan *b)
{
  if (a == b)
    return TRUE;

  return a->version == b->version && limits_equal (&a->limits, &b->limits)
         && setups_equal (a->setups, b->setups) && lr_job_equal (a->job, b->job) && kits_equal (a->kit, b->kit)
         && lr_supplies_equal (a->supplies, b->supplies)
         && lr_json_objects_equal (a->unknown, b->unknown)
         && lr_json_objects_equal (a->unknown_limits, b->unknown_limits);
}

/**
 * lr_plan_equal:
 * @a: a plan
 * @b: another
 *
 * Returns: whether both would be saved as the same file
 */
gboolean
lr_plan_equal (const LrPlan *a,
               const LrPlan *b)
{
  return a->shown == b->shown && lr_plan_says_the_same (a, b);
}

/**
 * lr_plan_get_setup:
 * @plan: a plan
 *
 * Returns: (transfer none): the shown set-up
 */
const LrSetup *
lr_plan_get_setup (const LrPlan *plan)
{
  return plan->setups->pdata[plan->shown];
}

/**
 * lr_plan_find:
 * @plan: a plan
 * @id: (nullable): an id
 *
 * Returns: (transfer none) (nullable): the item with that id in the shown set-up
 */
const LrItem *
lr_plan_find (const LrPlan *plan,
              const char   *id)
{
  return lr_setup_find (lr_plan_get_setup (plan), id);
}

/**
 * lr_plan_find_kit:
 * @plan: a plan
 * @id: (nullable): an id
 *
 * Returns: (transfer none) (nullable): the kit entry with that id
 */
const LrKitEntry *
lr_plan_find_kit (const LrPlan *plan,
                  const char   *id)
{
  if (id == NULL || *id == '\0')
    return NULL;

  for (guint i = 0; i < plan->kit->len; i++)
    {
      const LrKitEntry *entry = plan->kit->pdata[i];

      if (strcmp (entry->item->id, id) == 0)
        return entry;
    }

  return NULL;
}

/**
 * lr_plan_kit_left:
 * @plan: a plan
 * @entry: one of its kit's entries
 *
 * Returns: how many of it are still in the van when the shown set-up is rigged; < 0 if it takes more than there are
 */
int
lr_plan_kit_left (const LrPlan     *plan,
                  const LrKitEntry *entry)
{
  const LrSetup *setup = lr_plan_get_setup (plan);
  int left = entry->count;

  for (guint i = 0; i < setup->items->len; i++)
    {
      const LrItem *item = setup->items->pdata[i];
      const char *taken = item->kit;

      if (entry->item->kind == LR_ITEM_LENS)
        taken = item->kind == LR_ITEM_CAMERA ? item->camera.lens : "";
      if (strcmp (taken, entry->item->id) == 0)
        left--;
    }

  return left;
}
