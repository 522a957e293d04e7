/* plan_edit_job.c - changing the job, the limits and the kit
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_edit_private.h"

#include "date_parse.h"
#include "plan_check.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/**
 * lr_edit_begin_job:
 * @plan: a plan
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan, whose job may be written
 */
LrPlan *
lr_edit_begin_job (const LrPlan  *plan,
                   GError       **error)
{
  LrPlan *next = lr_edit_begin (plan, NULL, error);

  if (next == NULL)
    return NULL;
  lr_job_unref (next->job);
  next->job = lr_job_copy (plan->job);

  return next;
}

/**
 * lr_plan_set_job:
 * @plan: a plan
 * @key: a text of the job
 * @text: what it becomes; days and times of the day as people write them, or ""
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_job (const LrPlan  *plan,
                 const char    *key,
                 const char    *text,
                 GError       **error)
{
  g_autoptr (LrPlan) next = lr_edit_begin_job (plan, error);
  const LrProp *prop = lr_prop_table_find (lr_job_table (), key);
  g_autofree char *kept = NULL;

  if (next == NULL)
    return NULL;
  if (prop == NULL || !lr_prop_is_text (prop))
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("A job has no text “%s”."), key);
      return NULL;
    }
  if (!lr_edit_check_text (_(prop->label), text, error))
    return NULL;
  kept = lr_prop_text_take (prop, text, error);
  if (kept == NULL)
    return NULL;
  lr_prop_put_text (prop, next->job, kept);

  return g_steal_pointer (&next);
}

/**
 * lr_plan_set_job_number:
 * @plan: a plan
 * @key: "sky"
 * @value: in inside units; choices: the enum's value
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_job_number (const LrPlan  *plan,
                        const char    *key,
                        double         value,
                        GError       **error)
{
  g_autoptr (LrPlan) next = lr_edit_begin_job (plan, error);
  const LrProp *prop = lr_prop_table_find (lr_job_table (), key);

  if (next == NULL)
    return NULL;
  if (prop == NULL || lr_prop_is_text (prop))
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("A job has no number “%s”."), key);
      return NULL;
    }
  if (!lr_edit_check_number (prop, value, error))
    return NULL;
  lr_prop_put_number (prop, next->job, value);

  return g_steal_pointer (&next);
}

/**
 * lr_plan_set_requests:
 * @plan: a plan
 * @requests: (array zero-terminated=1): what the place is asked to arrange
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_requests (const LrPlan       *plan,
                      const char *const  *requests,
                      GError            **error)
{
  g_autoptr (LrPlan) next = lr_edit_begin_job (plan, error);

  if (next == NULL)
    return NULL;
  for (gsize i = 0; requests[i] != NULL; i++)
    if (!lr_edit_check_text (_("Please arrange"), requests[i], error))
      return NULL;
  g_strfreev (next->job->requests);
  next->job->requests = g_strdupv ((char **) requests);

  return g_steal_pointer (&next);
}

/**
 * lr_plan_set_limit:
 * @plan: a plan
 * @limit: a limit
 * @value: in inside units; NAN goes back to the default
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_limit (const LrPlan  *plan,
                   LrLimit        limit,
                   double         value,
                   GError       **error)
{
  g_autoptr (LrPlan) next = lr_edit_begin (plan, NULL, error);
  const LrProp *prop;

  g_return_val_if_fail (limit < LR_N_LIMITS, NULL);

  if (next == NULL)
    return NULL;

  prop = &lr_limit_info (limit)->prop;
  if (!isnan (value) && !lr_edit_check_number (prop, value, error))
    return NULL;
  next->limits.is_set[limit] = !isnan (value);
  next->limits.value[limit] = isnan (value) ? prop->fallback : lr_prop_quantise (prop, value);

  return g_steal_pointer (&next);
}

static gpointer
copy_entry (gconstpointer entry,
            gpointer      data G_GNUC_UNUSED)
{
  return lr_kit_entry_copy (entry);
}

/* The next plan with a kit of its own, and the entry in it, which may be written; @entry's item is still shared */
static LrPlan *
begin_kit (const LrPlan  *plan,
           const char    *kit_id,
           LrKitEntry   **entry,
           GError       **error)
{
  g_autoptr (LrPlan) next = lr_edit_begin (plan, NULL, error);

  if (next == NULL)
    return NULL;

  g_ptr_array_unref (next->kit);
  next->kit = g_ptr_array_copy (plan->kit, (GCopyFunc) copy_entry, NULL);
  *entry = (LrKitEntry *) lr_plan_find_kit (next, kit_id);
  if (*entry == NULL)
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("There is no “%s” in the kit."), kit_id);
      return NULL;
    }

  return g_steal_pointer (&next);
}

/* What may be no less than another number takes that along: the ends of a prime lens move together */
static void
take_along (LrItem     *item,
            const char *key)
{
  const LrOrderedPair *pair = lr_item_check_order (item);

  if (pair != NULL)
    {
      const LrProp *changed = lr_item_find_prop (item->kind, key);
      const LrProp *other = lr_item_find_prop (item->kind, strcmp (pair->low, key) == 0 ? pair->high : pair->low);

      lr_prop_put_number (other, item, lr_prop_get_number (changed, item));
    }
}

/**
 * lr_plan_set_kit_number:
 * @plan: a plan
 * @kit_id: of a kit entry
 * @key: "count", or a number of what the entry is
 * @value: in inside units
 * @error: return location
 *
 * Things that were taken from the entry before keep what they are; cameras that have a lens of the kit on them see through
 * it as it is now. A shortest focal length that is set beyond the longest takes that along, and so on.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_kit_number (const LrPlan  *plan,
                        const char    *kit_id,
                        const char    *key,
                        double         value,
                        GError       **error)
{
  const LrProp *prop = lr_prop_table_find (lr_kit_entry_table (), key);
  LrKitEntry *entry = NULL;
  g_autoptr (LrPlan) next = begin_kit (plan, kit_id, &entry, error);
  LrItem *item;

  if (next == NULL)
    return NULL;
  if (prop != NULL && !lr_prop_is_text (prop))
    {
      if (!lr_edit_check_number (prop, value, error))
        return NULL;
      lr_prop_put_number (prop, entry, value);
      return g_steal_pointer (&next);
    }

  item = lr_item_copy (entry->item);
  lr_item_unref (entry->item);
  entry->item = item;
  if (!lr_edit_put_number (item, key, value, error))
    return NULL;
  take_along (item, key);

  return g_steal_pointer (&next);
}

/**
 * lr_plan_set_kit_text:
 * @plan: a plan
 * @kit_id: of a kit entry
 * @key: "title" or "note"
 * @text: what it becomes
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_kit_text (const LrPlan  *plan,
                      const char    *kit_id,
                      const char    *key,
                      const char    *text,
                      GError       **error)
{
  const LrProp *prop = lr_prop_table_find (lr_kit_entry_table (), key);
  LrKitEntry *entry = NULL;
  g_autoptr (LrPlan) next = begin_kit (plan, kit_id, &entry, error);

  if (next == NULL)
    return NULL;
  if (prop == NULL || !lr_prop_is_text (prop))
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("A thing of the kit has no text “%s”."), key);
      return NULL;
    }
  if (!lr_edit_check_text (_(prop->label), text, error))
    return NULL;
  lr_prop_put_text (prop, entry, text);

  return g_steal_pointer (&next);
}

/**
 * lr_plan_set_kit_lens:
 * @plan: a plan
 * @kit_id: of a kit entry that is a lens
 * @type: a row of the table of lenses
 * @error: return location
 *
 * The entry becomes a lens of that type: its numbers, title and note. Its id, its count and its converter stay.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_kit_lens (const LrPlan      *plan,
                      const char        *kit_id,
                      const LrLensType  *type,
                      GError           **error)
{
  LrKitEntry *entry = NULL;
  g_autoptr (LrPlan) next = begin_kit (plan, kit_id, &entry, error);
  LrItem *item;

  if (next == NULL)
    return NULL;
  if (entry->item->kind != LR_ITEM_LENS)
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED, _("“%s” in the kit is not a lens."), entry->title);
      return NULL;
    }

  item = lr_item_copy (entry->item);
  item->lens = type->item->lens;
  item->lens.converter = entry->item->lens.converter;
  lr_item_unref (entry->item);
  entry->item = item;
  lr_prop_put_text (lr_prop_table_find (lr_kit_entry_table (), "title"), entry, _(type->title));
  lr_prop_put_text (lr_prop_table_find (lr_kit_entry_table (), "note"), entry, _(type->note));

  return g_steal_pointer (&next);
}

/**
 * lr_plan_set_kit_count:
 * @plan: a plan
 * @kit_id: of a kit entry
 * @count: how many of it there are
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_kit_count (const LrPlan  *plan,
                       const char    *kit_id,
                       int            count,
                       GError       **error)
{
  return lr_plan_set_kit_number (plan, kit_id, "count", count, error);
}
