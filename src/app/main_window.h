/* main_window.h - one plan and everything that shows it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "canvas.h"
#include "document.h"

#define LR_TYPE_MAIN_WINDOW (lr_main_window_get_type ())
G_DECLARE_FINAL_TYPE (LrMainWindow, lr_main_window, LR, MAIN_WINDOW, GtkApplicationWindow)

GtkWidget  *lr_main_window_new          (GtkApplication *application);
LrDocument *lr_main_window_get_document (LrMainWindow *self); /* (transfer none) */
LrCanvas   *lr_main_window_get_canvas   (LrMainWindow *self); /* (transfer none) */
/* Nobody has worked in it: another plan may take its place */
gboolean    lr_main_window_is_pristine  (LrMainWindow *self);
/* One sentence at the foot of the sheet, for a while */
void        lr_main_window_say          (LrMainWindow *self, const char *sentence);
/* Says that the plan is what a killed program left behind, and offers the saved state instead */
void        lr_main_window_show_recovered (LrMainWindow *self, const char *sentence);
