/* details_materials.h - materials of surfaces by name, offered in their fields
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "field.h"
#include "field_presets.h"

/* @chosen gets the field and the index of the material */
void lr_details_offer_materials (LrField *field, LrPresetChosen chosen);
