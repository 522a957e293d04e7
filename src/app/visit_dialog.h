/* visit_dialog.h - what is asked and noted on a visit to the place, on one screen
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define LR_TYPE_VISIT_DIALOG (lr_visit_dialog_get_type ())
G_DECLARE_FINAL_TYPE (LrVisitDialog, lr_visit_dialog, LR, VISIT_DIALOG, GtkWindow)

/* Every field is an edit of the document at once, that undo takes back. @parent: (nullable) */
GtkWidget *lr_visit_dialog_new (GtkWindow *parent, LrDocument *document);
