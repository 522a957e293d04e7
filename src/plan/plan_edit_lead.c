/* plan_edit_lead.c - laying a lead
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_check.h"
#include "plan_edit_private.h"

#include <glib/gi18n-lib.h>

static gboolean
name_thing (const LrPlan   *plan,
            const LrSetup  *setup,
            LrItem         *lead,
            const char     *key,
            const char     *id,
            GError        **error)
{
  const LrProp *prop = lr_item_find_prop (LR_ITEM_LEAD, key);

  if (id == NULL)
    return TRUE;
  if (!lr_ref_is_valid (plan, setup, lead, prop, id))
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFERENCE, _("There is no “%s” in this set-up."), id);
      return FALSE;
    }

  lr_prop_put_text (prop, lead, id);
  return TRUE;
}

/* It becomes one like the entry's, which lies where the old one lay */
static gboolean
take_from_kit (const LrPlan  *plan,
               LrItem        *lead,
               const char    *kit,
               GError       **error)
{
  static const char *const keys[] = { "length-mm", "core-mm2", "is-wound", "wound-limit-w" };
  const LrKitEntry *entry = kit != NULL ? lr_plan_find_kit (plan, kit) : NULL;

  if (kit == NULL)
    return TRUE;
  if (entry == NULL || entry->item->kind != LR_ITEM_LEAD)
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("There is no lead “%s” in the kit."), kit);
      return FALSE;
    }

  lr_prop_put_text (lr_item_find_prop (LR_ITEM_LEAD, "kit"), lead, kit);
  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    {
      const LrProp *prop = lr_item_find_prop (LR_ITEM_LEAD, keys[i]);

      lr_prop_put_number (prop, lead, lr_prop_get_number (prop, entry->item));
    }
  return TRUE;
}

/**
 * lr_plan_lay_lead:
 * @plan: a plan
 * @id: of a lead
 * @laying: how it is laid
 * @error: return location
 *
 * One edit for what changes together when a lead goes another way: what is %NULL in @laying stays.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_lay_lead (const LrPlan        *plan,
                  const char          *id,
                  const LrLeadLaying  *laying,
                  GError             **error)
{
  g_autoptr (LrPlan) laid = laying->n_path > 0 ? lr_plan_set_path (plan, id, laying->path_m, laying->n_path, error)
                                               : lr_plan_ref (plan);
  g_autoptr (LrPlan) next = NULL;
  LrSetup *setup;
  LrItem *lead;

  if (laid == NULL)
    return NULL;
  next = lr_edit_begin (laid, &setup, error);
  lead = next != NULL ? lr_edit_item (setup, id, error) : NULL;
  if (lead == NULL)
    return NULL;
  if (lead->kind != LR_ITEM_LEAD)
    {
      lr_edit_refuse (lead, _("cannot take such a path."), error);
      return NULL;
    }
  if (!name_thing (plan, setup, lead, "socket", laying->socket, error) || !name_thing (plan, setup, lead, "feeds", laying->feeds, error)
      || !take_from_kit (plan, lead, laying->kit, error))
    return NULL;

  return g_steal_pointer (&next);
}
