/* frame_popover.h - from the picture back: shot sizes, background, lenses and focus of one camera
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define LR_TYPE_FRAME_POPOVER (lr_frame_popover_get_type ())
G_DECLARE_FINAL_TYPE (LrFramePopover, lr_frame_popover, LR, FRAME_POPOVER, GtkPopover)

GtkWidget *lr_frame_popover_new        (LrDocument *document);
/* (nullable): id of the camera that it is about */
void       lr_frame_popover_set_camera (LrFramePopover *self, const char *id);
