/* levels_bar.h - how face, clothes and walls come out in a camera
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "document.h"

#include <gtk/gtk.h>

#define LR_TYPE_LEVELS_BAR (lr_levels_bar_get_type ())
G_DECLARE_FINAL_TYPE (LrLevelsBar, lr_levels_bar, LR, LEVELS_BAR, GtkWidget)

/* Invisible where nothing is known; @camera (nullable): id */
void lr_levels_bar_show (LrLevelsBar *self, LrDocument *document, const char *camera);
