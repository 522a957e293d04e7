/* tray.h - what can be brought into the room: the kit, and the things that any room has
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "canvas.h"
#include "document.h"

#define LR_TYPE_TRAY (lr_tray_get_type ())
G_DECLARE_FINAL_TYPE (LrTray, lr_tray, LR, TRAY, GtkWidget)

void lr_tray_set_document (LrTray *self, LrDocument *document);
/* Where Enter and a double click place things */
void lr_tray_set_canvas   (LrTray *self, LrCanvas *canvas);
/* Pictures alone, for a narrow window */
void lr_tray_set_folded   (LrTray *self, gboolean is_folded);
