/* lamp_row.h - a light's photometric file: which it is, what it says, another one, none
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "document.h"

#include <gtk/gtk.h>

#define LR_TYPE_LAMP_ROW (lr_lamp_row_get_type ())
G_DECLARE_FINAL_TYPE (LrLampRow, lr_lamp_row, LR, LAMP_ROW, GtkWidget)

/* Invisible unless @item (nullable) is a light */
void lr_lamp_row_show      (LrLampRow *self, LrDocument *document, const LrItem *item);
/* The light that is shown gets that file; what is wrong with it is said in the row */
void lr_lamp_row_take_file (LrLampRow *self, GFile *file);
