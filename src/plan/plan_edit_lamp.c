/* plan_edit_lamp.c - giving a light its photometric file
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_edit_private.h"

#include <glib/gi18n-lib.h>

/**
 * lr_plan_set_lamp_file:
 * @plan: a plan
 * @id: of a light
 * @name: what the file is called; valid UTF-8
 * @data: (nullable) (array length=length): its bytes; %NULL takes the light's file away, with its name
 * @length: how many
 * @error: return location
 *
 * The plan keeps the text itself. While a light has one, its output and beam are those of the file and not those of the plan, which stay.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_lamp_file (const LrPlan  *plan,
                       const char    *id,
                       const char    *name,
                       const char    *data,
                       gsize          length,
                       GError       **error)
{
  const LrProp *prop = lr_item_find_prop (LR_ITEM_LIGHT, "photometric-file");
  LrSetup *setup;
  g_autoptr (LrPlan) next = lr_edit_begin (plan, &setup, error);
  LrItem *item = next != NULL ? lr_edit_item (setup, id, error) : NULL;
  LrLampFile *file = NULL;

  if (item == NULL)
    return NULL;
  if (item->kind != LR_ITEM_LIGHT)
    {
      lr_edit_refuse (item, _("is no light: it has no photometric file."), error);
      return NULL;
    }
  if (!lr_edit_check_text (_(prop->label), name, error))
    return NULL;
  if (data != NULL)
    {
      file = lr_lamp_file_new_from_data (data, length, error);
      if (file == NULL)
        return NULL;
    }

  g_clear_pointer (&item->lamp_file, lr_lamp_file_unref);
  item->lamp_file = file;
  lr_prop_put_text (prop, item, file != NULL ? name : "");

  return g_steal_pointer (&next);
}
