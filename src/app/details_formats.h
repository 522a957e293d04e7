/* details_formats.h - sensors, lenses and factors by name, offered in the fields of a camera; the fields of its lens
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "details_rows.h"
#include "field_presets.h"

/* Properties of the lens that is on a camera, which live in the kit; NULL-terminated; one that starts with "=" takes a row */
const char *const *lr_details_lens_keys   (void);
/* The property of that key, of the entry in the kit or of the lens that it is */
const LrProp      *lr_details_lens_prop   (const char *key);
gboolean           lr_details_is_of_lens  (const LrProp *prop);
/* The entry that is on the camera, if @prop is one of those; else (nullable) */
const LrKitEntry  *lr_details_lens_of     (const LrPlan *plan, const LrItem *item, const LrProp *prop);
/* (nullable): instead of the property's own label */
const char        *lr_details_lens_label  (const LrProp *prop);

/* Names for what the field may hold, if its property has such; @chosen gets the field */
void               lr_details_offer_names (LrField *field, LrPresetChosen chosen);
/* The list of names begins at what @owner has */
void               lr_details_show_name   (LrField *field, gconstpointer owner);
/* (transfer full) (nullable): the next plan, with the named thing of that index */
LrPlan            *lr_details_take_name   (const LrPlan *plan, const LrItem *item, const LrProp *prop, guint index, GError **error);
