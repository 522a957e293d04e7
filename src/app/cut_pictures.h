/* cut_pictures.h - the pictures of two cameras side by side, and what the cut does between them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "document.h"
#include "strip.h"

#define LR_TYPE_CUT_PICTURES (lr_cut_pictures_get_type ())
G_DECLARE_FINAL_TYPE (LrCutPictures, lr_cut_pictures, LR, CUT_PICTURES, GtkWidget)

GtkWidget *lr_cut_pictures_new            (LrDocument *document);
void       lr_cut_pictures_set_max_height (LrCutPictures *self, int max_height_px);
/* What is drawn over the pictures, at once; a picture is due until lr_cut_pictures_update_picture(). NULL: nothing is shown */
void       lr_cut_pictures_show           (LrCutPictures *self, const LrStrip *strip);
void       lr_cut_pictures_update_picture (LrCutPictures *self, int side);
