/* viewfinders.h - what two cameras see, because they will be cut against each other: one above the other, or side by side
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define LR_TYPE_VIEWFINDERS (lr_viewfinders_get_type ())
G_DECLARE_FINAL_TYPE (LrViewfinders, lr_viewfinders, LR, VIEWFINDERS, GtkWidget)

void lr_viewfinders_set_document (LrViewfinders *self, LrDocument *document);
/* Side by side, as they will be cut, instead of one above the other */
void lr_viewfinders_set_cut (LrViewfinders *self, gboolean has_cut);
gboolean lr_viewfinders_get_cut (LrViewfinders *self);
/* Of each picture [px] */
void lr_viewfinders_set_max_height (LrViewfinders *self, int max_height_px);
/* From the picture back, of the camera in hand */
void lr_viewfinders_open_frame (LrViewfinders *self);
