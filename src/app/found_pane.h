/* found_pane.h - what is otherwise than planned, in a list beside the sheet
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define LR_TYPE_FOUND_PANE (lr_found_pane_get_type ())
G_DECLARE_FINAL_TYPE (LrFoundPane, lr_found_pane, LR, FOUND_PANE, GtkBox)

void  lr_found_pane_set_document (LrFoundPane *self, LrDocument *document); /* once */
/* All its words, a line each; (transfer full) */
char *lr_found_pane_words        (LrFoundPane *self);
