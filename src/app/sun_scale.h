/* sun_scale.h - the time of day whose sun the sheet shows
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "document.h"

#include <gtk/gtk.h>

#define LR_TYPE_SUN_SCALE (lr_sun_scale_get_type ())
G_DECLARE_FINAL_TYPE (LrSunScale, lr_sun_scale, LR, SUN_SCALE, GtkWidget)

/* Seen while the document shows the sun; once */
void lr_sun_scale_set_document (LrSunScale *self, LrDocument *document);
