/* kit_figures.c - the numbers of a thing of the kit that packing reckons with
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a thing takes, its battery, its cards, its length: they go with the kit from job to job. Things that are placed already keep
 * their own.
 */

#include "config.h"

#include "kit_figures.h"

#include "packing.h"
#include "prop_text.h"

#include <glib/gi18n-lib.h>

static const char *const camera_keys[] = { "draw-w", "battery-wh", "data-rate-mbit-s", "card-gb", NULL };
static const char *const light_keys[] = { "power-w", "battery-wh", NULL };
static const char *const lead_keys[] = { "length-mm", "core-mm2", NULL };

static const char *const *const keys[LR_N_ITEM_KINDS] = {
  [LR_ITEM_CAMERA] = camera_keys, [LR_ITEM_LIGHT] = light_keys, [LR_ITEM_LEAD] = lead_keys,
};

/**
 * lr_kit_figures_new:
 * @kind: of the thing
 * @units: how lengths are written
 *
 * Returns: (transfer floating) (nullable): its fields, folded
 */
GtkWidget *
lr_kit_figures_new (LrItemKind kind,
                    LrUnits    units)
{
  GtkWidget *expander, *grid;

  if (keys[kind] == NULL)
    return NULL;
  expander = gtk_expander_new (_("Figures"));
  grid = lr_field_grid_new ();
  for (const char *const *key = keys[kind]; *key != NULL; key++)
    {
      const LrProp *prop = lr_item_find_prop (kind, *key);
      LrField *field = lr_field_grid_add (LR_FIELD_GRID (grid), prop, NULL, units, FALSE);
      g_autofree char *usual = lr_prop_text_format (prop, lr_pack_usual (kind, *key), units);
      g_autofree char *text = lr_pack_usual (kind, *key) > 0.0 ? g_strdup_printf (_("%s is reckoned"), usual) : g_strdup (_("not given"));

      if (prop->is_optional)
        lr_field_set_placeholder (field, text);
    }
  gtk_expander_set_child (GTK_EXPANDER (expander), grid);
  gtk_widget_add_css_class (expander, "note");

  return expander;
}

/**
 * lr_kit_figures_get_grid:
 * @figures: as lr_kit_figures_new() made it
 *
 * Returns: (transfer none): its fields
 */
LrFieldGrid *
lr_kit_figures_get_grid (GtkWidget *figures)
{
  return LR_FIELD_GRID (gtk_expander_get_child (GTK_EXPANDER (figures)));
}

/**
 * lr_kit_figures_set:
 * @figures: as lr_kit_figures_new() made it
 * @item: the kit entry's
 *
 * Shows the numbers that it has; what is being typed stays.
 */
void
lr_kit_figures_set (GtkWidget    *figures,
                    const LrItem *item)
{
  LrFieldGrid *grid = lr_kit_figures_get_grid (figures);

  for (guint i = 0; i < lr_field_grid_get_n (grid); i++)
    {
      LrField *field = lr_field_grid_get (grid, i);

      if (!lr_field_has_typed_text (field))
        lr_field_set_number (field, lr_prop_get_number (lr_field_get_prop (field), item));
    }
}
