/* lists_dialog.h - the lists of a job, in one window beside the sheet
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define LR_TYPE_LISTS_DIALOG (lr_lists_dialog_get_type ())
G_DECLARE_FINAL_TYPE (LrListsDialog, lr_lists_dialog, LR, LISTS_DIALOG, GtkWindow)

/* @parent: (nullable). One window a document: shows it again if there is one. @page: "run", ...; "": the last one */
GtkWidget *lr_lists_dialog_show (GtkWindow *parent, LrDocument *document, const char *page);

/* lists_NAME.c: a page each, which follows the document; (transfer floating) */
GtkWidget *lr_lists_run_new       (LrDocument *document);
GtkWidget *lr_lists_checks_new    (LrDocument *document);
GtkWidget *lr_lists_questions_new (LrDocument *document);
GtkWidget *lr_lists_tape_new      (LrDocument *document);
GtkWidget *lr_lists_packing_new (LrDocument *document);
GtkWidget *lr_lists_kit_new (LrDocument *document);
