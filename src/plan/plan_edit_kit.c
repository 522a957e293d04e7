/* plan_edit_kit.c - what comes into the kit and what leaves it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_edit_private.h"

#include "plan_check.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* The next plan with lists of its own, whose entries are shared with @plan */
static LrPlan *
begin_kit (const LrPlan  *plan,
           GError       **error)
{
  LrPlan *next = lr_edit_begin (plan, NULL, error);

  if (next == NULL)
    return NULL;
  g_ptr_array_unref (next->kit);
  next->kit = g_ptr_array_new_with_free_func ((GDestroyNotify) lr_kit_entry_unref);
  for (guint i = 0; i < plan->kit->len; i++)
    g_ptr_array_add (next->kit, lr_kit_entry_copy (plan->kit->pdata[i]));

  return next;
}

/* "lens-35", or "lens-35-2" where that is taken */
static char *
dup_free_id (const LrPlan *plan,
             const char   *wanted)
{
  char *id = g_strdup (wanted);

  for (guint n = 2; lr_plan_find_kit (plan, id) != NULL; n++)
    {
      g_free (id);
      id = g_strdup_printf ("%s-%u", wanted, n);
    }

  return id;
}

/* References that name nothing in the plan are dropped */
static void
drop_refs (const LrPlan *plan,
           LrItem       *item)
{
  const LrPropTable *table = &lr_item_kind_info (item->kind)->table;

  for (gsize i = 0; i < table->n_props; i++)
    if (table->props[i].type == LR_PROP_REF
        && !lr_ref_is_valid (plan, lr_plan_get_setup (plan), item, &table->props[i], lr_prop_get_text (&table->props[i], item)))
      lr_prop_put_text (&table->props[i], item, "");
}

static LrKitEntry *
adopt (const LrPlan     *plan,
       const LrKitEntry *entry,
       const char       *id)
{
  LrKitEntry *copy = lr_kit_entry_copy (entry);
  LrItem *item = lr_item_copy (entry->item);

  lr_prop_put_text (lr_item_find_prop (item->kind, "id"), item, id);
  drop_refs (plan, item);
  lr_item_unref (copy->item);
  copy->item = item;

  return copy;
}

/**
 * lr_plan_add_kit_entry:
 * @plan: a plan
 * @entry: what to make a copy of
 * @id: (out) (optional) (transfer full): the new entry's id
 * @error: return location
 *
 * The copy has an id of its own; what it names beside it and is not there is dropped.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_add_kit_entry (const LrPlan      *plan,
                       const LrKitEntry  *entry,
                       char             **id,
                       GError           **error)
{
  g_autoptr (LrPlan) next = begin_kit (plan, error);
  g_autofree char *free_id = NULL;

  if (next == NULL)
    return NULL;
  free_id = dup_free_id (next, entry->item->id);
  g_ptr_array_add (next->kit, adopt (next, entry, free_id));
  if (id != NULL)
    *id = g_steal_pointer (&free_id);

  return g_steal_pointer (&next);
}

/* The item no longer names the entry; FALSE: it did not */
static gboolean
forget_entry (LrSetup    *setup,
              guint       index,
              const char *id)
{
  const LrItem *item = setup->items->pdata[index];
  const LrItemKindInfo *info = lr_item_kind_info (item->kind);
  const LrPropTable *tables[] = { lr_item_common_table (info->place), &info->table };
  LrItem *fresh = NULL;

  for (guint t = 0; t < G_N_ELEMENTS (tables); t++)
    for (gsize i = 0; i < tables[t]->n_props; i++)
      {
        const LrProp *prop = &tables[t]->props[i];

        if (prop->type != LR_PROP_REF || !lr_ref_is_to_kit (prop) || strcmp (lr_prop_get_text (prop, item), id) != 0)
          continue;
        if (fresh == NULL)
          item = fresh = lr_edit_item_at (setup, index);
        lr_prop_put_text (prop, fresh, "");
      }

  return fresh != NULL;
}

static void
forget_everywhere (LrPlan     *next,
                   const char *id)
{
  for (guint s = 0; s < next->setups->len; s++)
    {
      g_autoptr (LrSetup) setup = lr_setup_copy (next->setups->pdata[s]);
      gboolean is_changed = FALSE;

      for (guint i = 0; i < setup->items->len; i++)
        is_changed |= forget_entry (setup, i, id);
      if (!is_changed)
        continue;
      lr_setup_unref (next->setups->pdata[s]);
      next->setups->pdata[s] = g_steal_pointer (&setup);
    }
}

/**
 * lr_plan_remove_kit_entry:
 * @plan: a plan
 * @kit_id: of a kit entry
 * @error: return location
 *
 * Things that were taken from it stay where they are in every set-up, and are no longer of the kit; a camera keeps its focal
 * length without the lens.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_remove_kit_entry (const LrPlan  *plan,
                          const char    *kit_id,
                          GError       **error)
{
  g_autoptr (LrPlan) next = begin_kit (plan, error);
  guint index = 0;

  if (next == NULL)
    return NULL;
  while (index < next->kit->len && strcmp (((const LrKitEntry *) next->kit->pdata[index])->item->id, kit_id) != 0)
    index++;
  if (index == next->kit->len)
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("There is no “%s” in the kit."), kit_id);
      return NULL;
    }

  g_ptr_array_remove_index (next->kit, index);
  forget_everywhere (next, kit_id);
  for (guint i = 0; i < next->kit->len; i++)
    {
      LrKitEntry *entry = next->kit->pdata[i];
      LrKitEntry *fresh = adopt (next, entry, entry->item->id);

      lr_kit_entry_unref (entry);
      next->kit->pdata[i] = fresh;
    }

  return g_steal_pointer (&next);
}

static guint
find_index (GPtrArray  *kit,
            const char *id)
{
  guint i = 0;

  while (i < kit->len && strcmp (((const LrKitEntry *) kit->pdata[i])->item->id, id) != 0)
    i++;

  return i;
}

static void
take_entry (LrPlan           *next,
            const LrKitEntry *theirs)
{
  guint index = find_index (next->kit, theirs->item->id);
  gboolean is_there = index < next->kit->len;

  if (is_there && ((const LrKitEntry *) next->kit->pdata[index])->item->kind == theirs->item->kind)
    {
      LrKitEntry *ours = next->kit->pdata[index];

      next->kit->pdata[index] = adopt (next, theirs, theirs->item->id);
      lr_kit_entry_unref (ours);
    }
  else
    {
      g_autofree char *id = dup_free_id (next, theirs->item->id);

      g_ptr_array_add (next->kit, adopt (next, theirs, id));
    }
}

/* The supply of the same form, title and size; (nullable) */
static LrSupply *
find_supply (GPtrArray      *supplies,
             const LrSupply *like)
{
  for (guint i = 0; i < supplies->len; i++)
    {
      LrSupply *supply = supplies->pdata[i];

      if (supply->form == like->form && supply->size == like->size && strcmp (supply->title, like->title) == 0)
        return supply;
    }

  return NULL;
}

/**
 * lr_plan_take_kit:
 * @plan: a plan
 * @kit: (element-type LrKitEntry): another kit
 * @supplies: (element-type LrSupply): and what goes along with it
 * @error: return location
 *
 * What both have becomes as it is in @kit, count and all; what the plan does not have is added; what @kit does not have stays.
 * Entries are the same by id and kind, supplies by form, title and size.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_take_kit (const LrPlan  *plan,
                  GPtrArray     *kit,
                  GPtrArray     *supplies,
                  GError       **error)
{
  g_autoptr (LrPlan) next = begin_kit (plan, error);

  if (next == NULL)
    return NULL;

  for (int pass = 0; pass < 2; pass++) /* lenses first: cameras name them */
    for (guint i = 0; i < kit->len; i++)
      if ((((const LrKitEntry *) kit->pdata[i])->item->kind == LR_ITEM_LENS) == (pass == 0))
        take_entry (next, kit->pdata[i]);
  g_ptr_array_unref (next->supplies);
  next->supplies = lr_supplies_copy (plan->supplies);
  for (guint i = 0; i < supplies->len; i++)
    {
      const LrSupply *theirs = supplies->pdata[i];
      LrSupply *ours = find_supply (next->supplies, theirs);

      if (ours == NULL)
        g_ptr_array_add (next->supplies, lr_supply_copy (theirs));
      else
        {
          ours->count = theirs->count;
          lr_prop_put_text (lr_prop_table_find (lr_supply_table (), "note"), ours, theirs->note);
        }
    }

  return g_steal_pointer (&next);
}

/**
 * lr_plan_begin_with_kit:
 * @plan: a plan in which nothing is from its kit
 * @kit: (element-type LrKitEntry): what its kit becomes
 * @supplies: (element-type LrSupply): and what goes along
 *
 * Returns: (transfer full): the next plan
 */
LrPlan *
lr_plan_begin_with_kit (const LrPlan *plan,
                        GPtrArray    *kit,
                        GPtrArray    *supplies)
{
  LrPlan *next = lr_plan_copy (plan);

  g_ptr_array_unref (next->kit);
  g_ptr_array_unref (next->supplies);
  next->kit = g_ptr_array_ref (kit);
  next->supplies = g_ptr_array_ref (supplies);

  return next;
}

/* Supplies */

static LrPlan *
begin_supplies (const LrPlan  *plan,
                guint          index,
                LrSupply     **supply,
                GError       **error)
{
  g_autoptr (LrPlan) next = lr_edit_begin (plan, NULL, error);

  if (next == NULL)
    return NULL;
  if (supply != NULL && index >= plan->supplies->len)
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("There is no row %u of what goes along."), index + 1);
      return NULL;
    }
  g_ptr_array_unref (next->supplies);
  next->supplies = lr_supplies_copy (plan->supplies);
  if (supply != NULL)
    *supply = next->supplies->pdata[index];

  return g_steal_pointer (&next);
}

/**
 * lr_plan_add_supply:
 * @plan: a plan
 * @form: what is added
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan, with one of it behind the others
 */
LrPlan *
lr_plan_add_supply (const LrPlan  *plan,
                    LrSupplyForm   form,
                    GError       **error)
{
  g_autoptr (LrPlan) next = begin_supplies (plan, 0, NULL, error);

  if (next == NULL)
    return NULL;
  if (next->supplies->len >= LR_MAX_SUPPLIES)
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED, _("A plan has at most %d rows of what goes along."), LR_MAX_SUPPLIES);
      return NULL;
    }
  g_ptr_array_add (next->supplies, lr_supply_new (form));

  return g_steal_pointer (&next);
}

/**
 * lr_plan_remove_supply:
 * @plan: a plan
 * @index: of one of its supplies
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_remove_supply (const LrPlan  *plan,
                       guint          index,
                       GError       **error)
{
  LrSupply *supply;
  LrPlan *next = begin_supplies (plan, index, &supply, error);

  if (next != NULL)
    g_ptr_array_remove_index (next->supplies, index);

  return next;
}

/**
 * lr_plan_set_supply_number:
 * @plan: a plan
 * @index: of one of its supplies
 * @key: "form", "count" or "size"
 * @value: what it becomes
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_supply_number (const LrPlan  *plan,
                           guint          index,
                           const char    *key,
                           double         value,
                           GError       **error)
{
  LrSupply *supply = NULL;
  g_autoptr (LrPlan) next = begin_supplies (plan, index, &supply, error);
  const LrProp *prop = lr_prop_table_find (lr_supply_table (), key);

  if (next == NULL)
    return NULL;
  if (prop == NULL || lr_prop_is_text (prop))
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("A thing of the kit has no number “%s”."), key);
      return NULL;
    }
  if (!lr_edit_check_number (prop, value, error))
    return NULL;
  lr_prop_put_number (prop, supply, value);

  return g_steal_pointer (&next);
}

/**
 * lr_plan_set_supply_text:
 * @plan: a plan
 * @index: of one of its supplies
 * @key: "title" or "note"
 * @text: what it becomes
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_supply_text (const LrPlan  *plan,
                         guint          index,
                         const char    *key,
                         const char    *text,
                         GError       **error)
{
  LrSupply *supply = NULL;
  g_autoptr (LrPlan) next = begin_supplies (plan, index, &supply, error);
  const LrProp *prop = lr_prop_table_find (lr_supply_table (), key);

  if (next == NULL)
    return NULL;
  if (prop == NULL || !lr_prop_is_text (prop))
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("A thing of the kit has no text “%s”."), key);
      return NULL;
    }
  if (!lr_edit_check_text (_(prop->label), text, error))
    return NULL;
  lr_prop_put_text (prop, supply, text);

  return g_steal_pointer (&next);
}
