/* canvas_ways_in.h - what an empty sheet offers
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

/* Buttons that activate canvas.type-room and canvas.draw-room */
GtkWidget *lr_canvas_ways_in_new (void);
