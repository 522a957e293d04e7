/* room_dialog.h - the room by tape
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define LR_TYPE_ROOM_DIALOG (lr_room_dialog_get_type ())
G_DECLARE_FINAL_TYPE (LrRoomDialog, lr_room_dialog, LR, ROOM_DIALOG, GtkWindow)

/* Commits the room to the document and closes itself. @parent: (nullable) */
GtkWidget *lr_room_dialog_new (GtkWindow *parent, LrDocument *document);
