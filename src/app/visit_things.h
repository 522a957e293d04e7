/* visit_things.h - things of one kind, as they are noted on a visit
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define LR_TYPE_VISIT_THINGS (lr_visit_things_get_type ())
G_DECLARE_FINAL_TYPE (LrVisitThings, lr_visit_things, LR, VISIT_THINGS, GtkBox)

/* @kind: of circuits, house lights or noises */
GtkWidget *lr_visit_things_new    (LrDocument *document, LrItemKind kind, GtkSizeGroup *left, GtkSizeGroup *right);
void       lr_visit_things_update (LrVisitThings *self);
/* A title over a part of the form; (transfer full): a row that may hold a button beside it */
GtkWidget *lr_visit_title_new     (const char *title);
