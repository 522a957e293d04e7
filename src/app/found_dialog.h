/* found_dialog.h - what is otherwise than planned, in a list
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define LR_TYPE_FOUND_DIALOG (lr_found_dialog_get_type ())
G_DECLARE_FINAL_TYPE (LrFoundDialog, lr_found_dialog, LR, FOUND_DIALOG, GtkWindow)

/* (transfer none): GTK holds it until it is closed. It stays open beside the sheet */
GtkWidget *lr_found_dialog_new   (GtkWindow *parent, LrDocument *document);
/* All its words, a line each; (transfer full) */
char      *lr_found_dialog_words (LrFoundDialog *self);
