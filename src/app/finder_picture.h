/* finder_picture.h - a camera's picture, painted once for each thing that it shows
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define LR_TYPE_FINDER_PICTURE (lr_finder_picture_get_type ())
G_DECLARE_FINAL_TYPE (LrFinderPicture, lr_finder_picture, LR, FINDER_PICTURE, GtkWidget)

GtkWidget *lr_finder_picture_new  (void);
/* It is never higher than that [px]; in a low window it leaves room for what stands below */
void       lr_finder_picture_set_max_height (LrFinderPicture *self, int max_height_px);
void       lr_finder_picture_set_plain (LrFinderPicture *self, gboolean is_plain); /* no thirds, no safe area, any size */
/* @camera (nullable): a reading of the document's study, valid until its next change */
void       lr_finder_picture_show (LrFinderPicture *self, LrDocument *document, const LrCameraReading *camera);
const char *lr_finder_picture_get_camera (LrFinderPicture *self); /* (nullable) */
gboolean   lr_finder_picture_get_area (LrFinderPicture *self, graphene_rect_t *area);
