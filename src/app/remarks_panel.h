/* remarks_panel.h - what would go wrong, what to know, what is fine, each in one line
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define LR_TYPE_REMARKS_PANEL (lr_remarks_panel_get_type ())
G_DECLARE_FINAL_TYPE (LrRemarksPanel, lr_remarks_panel, LR, REMARKS_PANEL, GtkWidget)

void lr_remarks_panel_set_document (LrRemarksPanel *self, LrDocument *document);
/* How many lines it is high */
void lr_remarks_panel_set_rows     (LrRemarksPanel *self, int n_rows);
