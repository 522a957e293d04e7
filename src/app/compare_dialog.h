/* compare_dialog.h - candidate rooms side by side
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define LR_TYPE_COMPARE_DIALOG (lr_compare_dialog_get_type ())
G_DECLARE_FINAL_TYPE (LrCompareDialog, lr_compare_dialog, LR, COMPARE_DIALOG, GtkWindow)

/* @parent: (nullable) */
GtkWidget *lr_compare_dialog_new (GtkWindow *parent, LrDocument *document);
