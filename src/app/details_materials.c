/* details_materials.c - materials of surfaces by name, offered in their fields
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "details_materials.h"

#include "materials.h"

#include <glib/gi18n-lib.h>

/**
 * lr_details_offer_materials:
 * @field: of what a surface is of
 * @chosen: called with @field when one is chosen
 *
 * Offers the names of the table of materials.
 */
void
lr_details_offer_materials (LrField        *field,
                            LrPresetChosen  chosen)
{
  gsize n;
  const LrMaterial *materials = lr_materials (&n);
  g_autofree const char **titles = g_new0 (const char *, n + 1);

  for (gsize i = 0; i < n; i++)
    titles[i] = _(materials[i].title);
  lr_field_presets_attach (GTK_ENTRY (gtk_widget_get_first_child (GTK_WIDGET (field))), titles, chosen, field);
}
