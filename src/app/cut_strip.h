/* cut_strip.h - two cameras side by side, as they will be cut: titles, pictures, figures, and what is to be said of it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define LR_TYPE_CUT_STRIP (lr_cut_strip_get_type ())
G_DECLARE_FINAL_TYPE (LrCutStrip, lr_cut_strip, LR, CUT_STRIP, GtkWidget)

GtkWidget  *lr_cut_strip_new            (LrDocument *document);
void        lr_cut_strip_set_max_height (LrCutStrip *self, int max_height_px); /* of the pictures */
/* The cameras that the user chose; without a choice, or when one is gone, those that are cut most */
void        lr_cut_strip_choose         (LrCutStrip *self, const char *id_a, const char *id_b);
/* Ids of those that it shows now: the chosen ones, or those of a remark in hand; FALSE: none */
gboolean    lr_cut_strip_get_shown      (LrCutStrip *self, const char **id_a, const char **id_b);
/* The plan or the remark in hand is another: words and lines at once; pictures are due until the next */
void        lr_cut_strip_update         (LrCutStrip *self);
void        lr_cut_strip_update_picture (LrCutStrip *self, int side);
