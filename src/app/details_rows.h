/* details_rows.h - which properties of a kind of thing come first, and what a field of each offers
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "field_grid.h"
#include "study.h"

/* Offered after the circuits of the set-up: one that is not there yet */
#define LR_DETAILS_NEW_CIRCUIT "+"

/* Keys in the order of reading, NULL-terminated; one that starts with "=" takes a row of its own */
const char *const *lr_details_keys       (const LrItem *item);
/* The properties with a label that are not among those; (transfer container) */
GPtrArray         *lr_details_other_props (const LrItem *item);
/* (nullable): instead of the property's own label */
const char        *lr_details_label      (const LrItem *item, const char *key);
/* Standard values to choose from; 0: none */
gsize              lr_details_presets    (const char *key, const double **values);
/* What the field may name, and how its things are called */
void               lr_details_set_options (LrField *field, const LrPlan *plan, const LrItem *item);
/* What an empty field means */
void               lr_details_set_placeholder (LrField *field, const LrStudy *study, const LrItem *item, LrUnits units);
/* What the field counts from: the walls */
double             lr_details_offset     (const LrProp *prop, const LrRoom *room);
/* Whether a light's photometric file says it instead */
gboolean           lr_details_is_by_file (const LrProp *prop, const LrItem *item);
/* Whether changing it changes anything as things are */
gboolean           lr_details_is_live    (const LrProp *prop, const LrItem *item);
/* Standard values in a field, and what it means while it is empty */
void               lr_details_offer_usual (LrField *field);
/* Fields of what is no item: the room, the job. Keys as above */
void               lr_details_add_fields  (LrFieldGrid *grid, const LrPropTable *table, const char *const *keys, LrUnits units);
