/* remark_line.h - the widgets that show one remark in the list
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "document.h"
#include "remark_row.h"

#include <gtk/gtk.h>

typedef struct _LrRemarkLine LrRemarkLine;

LrRemarkLine *lr_remark_line_new        (void);
void          lr_remark_line_free       (LrRemarkLine *self);
GtkWidget    *lr_remark_line_get_widget (LrRemarkLine *self);
void          lr_remark_line_bind       (LrRemarkLine *self, LrDocument *document, LrRemarkRow *row);
void          lr_remark_line_unbind     (LrRemarkLine *self);
void          lr_remark_line_hold       (LrRemarkLine *self, gboolean is_held);
