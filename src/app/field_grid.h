/* field_grid.h - fields with their labels, two pairs a row
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Says under a field why it refuses what was typed. Signals: the others of its fields, with the field in front.
 *   "number"  (LrField *field, double value, gboolean is_step)
 *   "text"    (LrField *field, char *text)
 */

#pragma once

#include "field.h"

#define LR_TYPE_FIELD_GRID (lr_field_grid_get_type ())
G_DECLARE_FINAL_TYPE (LrFieldGrid, lr_field_grid, LR, FIELD_GRID, GtkWidget)

GtkWidget *lr_field_grid_new     (void);
/* Labels of grids that stand under each other take as much width; (nullable): their own. Before the first field is added */
void       lr_field_grid_align   (LrFieldGrid *self, GtkSizeGroup *left, GtkSizeGroup *right);
/* @label (nullable): instead of the property's; @is_wide: takes a row of its own. Returns (transfer none): the field */
LrField   *lr_field_grid_add     (LrFieldGrid *self, const LrProp *prop, const char *label, LrUnits units, gboolean is_wide);
void       lr_field_grid_clear   (LrFieldGrid *self);
guint      lr_field_grid_get_n   (LrFieldGrid *self);
LrField   *lr_field_grid_get     (LrFieldGrid *self, guint index);
void       lr_field_grid_show    (LrFieldGrid *self, gconstpointer owner); /* has all of their properties */
void       lr_field_show         (LrField *field, gconstpointer owner);
