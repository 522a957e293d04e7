/* compare_row.h - a row of the table of rooms
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "comparison_words.h"

#define LR_COMPARE_TITLE_PX 168
#define LR_COMPARE_WHY_PX 230

/* @room_px: width of a room's column */
GtkWidget *lr_compare_row_new (const LrCompared *compared, const LrComparedRow *row, int room_px);
/* Its heading: (nullable): "Sound" before the first row of sound */
GtkWidget *lr_compare_heading_new (LrCompare row);
/* The row that a widget of the table shows */
LrCompare  lr_compare_row_get (GtkWidget *row);
