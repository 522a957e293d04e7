/* details_materials.c - materials of surfaces by name, offered in their fields
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "details_materials.h"

#include "materials.h"
#include "plan_edit.h"

#include <glib/gi18n-lib.h>

/**
 * lr_details_offer_materials:
 * @field: of what a surface is of
 * @surface: which: "walls", "floor" or "ceiling"
 * @chosen: called with @field and the title when one is chosen
 *
 * Offers the names of those materials in the table that are usual there.
 */
void
lr_details_offer_materials (LrField        *field,
                            const char     *surface,
                            LrPresetChosen  chosen)
{
  gsize n, n_titles = 0;
  const LrMaterial *materials = lr_materials (&n);
  g_autofree const char **titles = g_new0 (const char *, n + 1);

  for (gsize i = 0; i < n; i++)
    if (lr_material_suits (&materials[i], surface))
      titles[n_titles++] = _(materials[i].title);
  lr_field_presets_attach (GTK_ENTRY (gtk_widget_get_first_child (GTK_WIDGET (field))), titles, chosen, field);
}

/**
 * lr_details_name_surface:
 * @document: whose room it is of
 * @surface: "walls", "floor" or "ceiling"
 * @text: what it is called
 *
 * A name of the table brings its sound; of another it is said that it does not.
 *
 * Returns: %FALSE if it was refused
 */
gboolean
lr_details_name_surface (LrDocument *document,
                         const char *surface,
                         const char *text)
{
  const LrPlan *plan = lr_document_get_committed (document);
  const LrMaterial *material = lr_material_named (text);
  g_autofree char *key = g_strconcat (surface, ".material", NULL), *sentence = NULL;
  g_autoptr (GError) error = NULL;
  LrPlan *next = material != NULL ? lr_plan_set_material (plan, surface, material, &error) : lr_plan_set_room_text (plan, key, text, &error);

  if (!lr_document_try (document, next, _("Surfaces"), NULL, &error))
    return FALSE;

  if (material == NULL && *text != '\0')
    {
      /* Translators: what a user calls a surface */
      sentence = g_strdup_printf (_("“%s” is not in the list of surfaces: how it sounds stays as it was. Choose one from the list."), text);
      lr_document_say (document, sentence);
    }
  return TRUE;
}
