/* settings.h - what is remembered from one start to the next
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>

#include "units.h"
#include "view.h"
#include "viewfinder.h"

LrUnits  lr_settings_get_units    (void);
void     lr_settings_set_units    (LrUnits units);
/* Families shown on the sheet: LrShow */
guint    lr_settings_get_shown    (void);
void     lr_settings_set_shown    (guint shown);
/* Lines in the viewfinders' pictures: LrFrameLines */
guint    lr_settings_get_frame_lines (void);
void     lr_settings_set_frame_lines (guint lines);
gboolean lr_settings_get_dark     (void);
void     lr_settings_set_dark     (gboolean is_dark);
/* Two cameras side by side, as they will be cut, instead of one above the other */
gboolean lr_settings_get_cut      (void);
void     lr_settings_set_cut      (gboolean has_cut);
/* Path of the plan that was open last, "" for none; (transfer full) */
char    *lr_settings_dup_last_file (void);
void     lr_settings_set_last_file (const char *path);
void     lr_settings_get_window   (int *width, int *height, gboolean *is_maximized);
void     lr_settings_set_window   (int width, int height, gboolean is_maximized);
