/* details_materials.h - materials of surfaces by name, offered in their fields
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "field.h"
#include "document.h"
#include "field_presets.h"

/* What a surface, "walls", "floor" or "ceiling", is called: with the sound of the table's row of that name, if there is one */
gboolean lr_details_name_surface (LrDocument *document, const char *surface, const char *text); /* FALSE: it was refused */
/* What @surface may usually be of; @chosen gets the field and the title of the material */
void lr_details_offer_materials (LrField *field, const char *surface, LrPresetChosen chosen);
