/* supply.c - what goes along and is not placed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "supply.h"

#include "plan_json.h"
#include "prop_rows.h"

#include <glib/gi18n-lib.h>

#define ROW_OWNER LrSupply

static const LrChoice forms[] = {
  [LR_SUPPLY_TRIPOD] = { "tripod", N_("Tripod") },
  [LR_SUPPLY_STAND] = { "stand", N_("Stand") },
  [LR_SUPPLY_BOOM_STAND] = { "boom-stand", N_("Boom stand") },
  [LR_SUPPLY_CLAMP] = { "clamp", N_("Clamp") },
  [LR_SUPPLY_SANDBAG] = { "sandbag", N_("Sandbag") },
  [LR_SUPPLY_BATTERY] = { "battery", N_("Battery") },
  [LR_SUPPLY_CELLS] = { "cells", N_("Set of cells") },
  [LR_SUPPLY_CARD] = { "card", N_("Card to record on") },
  [LR_SUPPLY_SOUND_LEAD] = { "sound-lead", N_("Microphone lead") },
  [LR_SUPPLY_MULTIWAY] = { "multiway", N_("Multiway socket") },
  [LR_SUPPLY_FLOOR_TAPE] = { "floor-tape", N_("Floor tape") },
  [LR_SUPPLY_MARK_TAPE] = { "mark-tape", N_("Marking tape") },
  [LR_SUPPLY_OTHER] = { "other", N_("Other") },
  { NULL, NULL },
};

static const char *const units[LR_N_SUPPLY_FORMS] = {
  [LR_SUPPLY_SANDBAG] = "kg", [LR_SUPPLY_BATTERY] = "Wh", [LR_SUPPLY_CARD] = "GB", [LR_SUPPLY_SOUND_LEAD] = "m",
  [LR_SUPPLY_FLOOR_TAPE] = "m", [LR_SUPPLY_MARK_TAPE] = "m",
};

static const LrProp supply_rows[] = {
  CHOICE ("form", N_("Form"), form, forms, LR_SUPPLY_OTHER),
  TEXT ("title", N_("Title"), title),
  TEXT ("note", N_("Note"), note),
  COUNT ("count", N_("In the kit"), count, 0, 1000, 1),
  NUMBER_OR_NONE ("size", N_("Size"), size, 0.1, 100000.0, 1, NULL),
};

static const LrPropTable supply_table = TABLE (supply_rows);

/**
 * lr_supply_table:
 *
 * Returns: (transfer none): its members
 */
const LrPropTable *
lr_supply_table (void)
{
  return &supply_table;
}

/**
 * lr_supply_form_title:
 * @form: a form
 *
 * Returns: (transfer none): for people, translated
 */
const char *
lr_supply_form_title (LrSupplyForm form)
{
  g_return_val_if_fail (form < LR_N_SUPPLY_FORMS, "");

  return _(forms[form].label);
}

/**
 * lr_supply_unit:
 * @form: a form
 *
 * Returns: (transfer none) (nullable): what its size is told in; %NULL: it has none
 */
const char *
lr_supply_unit (LrSupplyForm form)
{
  g_return_val_if_fail (form < LR_N_SUPPLY_FORMS, NULL);

  return units[form];
}

/**
 * lr_supply_new:
 * @form: a form
 *
 * Returns: (transfer full): one of it, with the form's title
 */
LrSupply *
lr_supply_new (LrSupplyForm form)
{
  LrSupply *supply = g_atomic_rc_box_new0 (LrSupply);

  lr_prop_table_init (&supply_table, supply);
  supply->form = form;
  if (form != LR_SUPPLY_OTHER)
    lr_prop_put_text (lr_prop_table_find (&supply_table, "title"), supply, _(forms[form].label));

  return supply;
}

/**
 * lr_supply_copy:
 * @supply: one
 *
 * Returns: (transfer full): a fresh one that may be written
 */
LrSupply *
lr_supply_copy (const LrSupply *supply)
{
  LrSupply *copy = g_atomic_rc_box_dup (sizeof *supply, (gpointer) supply);

  lr_prop_table_copy (&supply_table, copy, supply);
  copy->unknown = lr_json_dup_object (supply->unknown);

  return copy;
}

static void
clear (gpointer data)
{
  LrSupply *supply = data;

  lr_prop_table_clear (&supply_table, supply);
  g_clear_pointer (&supply->unknown, json_object_unref);
}

/**
 * lr_supply_unref:
 * @supply: (transfer full): one
 */
void
lr_supply_unref (LrSupply *supply)
{
  g_atomic_rc_box_release_full (supply, clear);
}

/**
 * lr_supply_equal:
 * @a: one
 * @b: another
 *
 * Returns: whether they are the same in every member
 */
gboolean
lr_supply_equal (const LrSupply *a,
                 const LrSupply *b)
{
  return a == b || (lr_prop_table_equal (&supply_table, a, b) && lr_json_objects_equal (a->unknown, b->unknown));
}

/**
 * lr_supplies_new:
 *
 * Returns: (transfer full) (element-type LrSupply): an empty list
 */
GPtrArray *
lr_supplies_new (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify) lr_supply_unref);
}

/**
 * lr_supplies_copy:
 * @supplies: (element-type LrSupply): a list
 *
 * Returns: (transfer full) (element-type LrSupply): fresh copies of all, which may be written
 */
GPtrArray *
lr_supplies_copy (GPtrArray *supplies)
{
  GPtrArray *copies = lr_supplies_new ();

  for (guint i = 0; i < supplies->len; i++)
    g_ptr_array_add (copies, lr_supply_copy (supplies->pdata[i]));

  return copies;
}

/**
 * lr_supplies_equal:
 * @a: (element-type LrSupply): a list
 * @b: (element-type LrSupply): another
 *
 * Returns: whether both have the same in the same order
 */
gboolean
lr_supplies_equal (GPtrArray *a,
                   GPtrArray *b)
{
  if (a == b)
    return TRUE;
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    if (!lr_supply_equal (a->pdata[i], b->pdata[i]))
      return FALSE;

  return TRUE;
}
