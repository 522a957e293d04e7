/* field.h - the widget that shows and takes one property
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signals:
 *   "number"   (double value, gboolean is_step)  another number was given; a step is one press of an arrow key
 *   "text"     (char *text)                      another text, or the id of another item
 *   "refused"  (char *sentence)                  what was typed does not fit; NULL: it does now
 */

#pragma once

#include <gtk/gtk.h>

#include "prop.h"
#include "units.h"

#define LR_TYPE_FIELD (lr_field_get_type ())
G_DECLARE_FINAL_TYPE (LrField, lr_field, LR, FIELD, GtkWidget)

/* An entry, a drop-down or a check button, by the type of @prop, which outlives it. @offset: added to what is shown before
 * it is given, "from the west wall" [inside units] */
GtkWidget    *lr_field_new            (const LrProp *prop, LrUnits units);
const LrProp *lr_field_get_prop       (LrField *self);
void          lr_field_set_offset     (LrField *self, double offset);
void          lr_field_set_number     (LrField *self, double value);
void          lr_field_set_text       (LrField *self, const char *text);
/* What an empty field means: "on the eyes, 2.54 m" */
void          lr_field_set_placeholder (LrField *self, const char *text);
/* Standard values offered beside typing */
void          lr_field_set_presets    (LrField *self, const double *values, gsize n);
/* References: what may be named. @ids and @titles are NULL-terminated and of one length */
void          lr_field_set_options    (LrField *self, const char *const *ids, const char *const *titles);
/* Whether something is typed in it that has not been taken yet */
gboolean      lr_field_has_typed_text (LrField *self);
/* Takes what is typed, as leaving the field does; FALSE: it was refused */
gboolean      lr_field_take           (LrField *self);
