/* trace_row.h - the picture of a floor plan under the room: which it is, how it is shown, how it lies, none
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "document.h"

#include <gtk/gtk.h>

#define LR_TYPE_TRACE_ROW (lr_trace_row_get_type ())
G_DECLARE_FINAL_TYPE (LrTraceRow, lr_trace_row, LR, TRACE_ROW, GtkWidget)

/* The plan shown is another */
void lr_trace_row_show (LrTraceRow *self, LrDocument *document);
