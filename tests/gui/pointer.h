/* pointer.h - a real pointer and keyboard, by the X server's own test extension
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "vec.h"

/* Places are pixels of @widget. Each flushes; the main loop then delivers the events */
void pointer_move   (GtkWidget *widget, LrVec2 at);
void pointer_button (GtkWidget *widget, guint button, gboolean is_down);
void pointer_key    (GtkWidget *widget, guint keyval);
/* With a key held down: Control, Alt */
void pointer_chord  (GtkWidget *widget, guint held, guint keyval);
/* Press, ten steps, release; runs the main loop between them as a hand would */
void pointer_drag   (GtkWidget *widget, guint button, LrVec2 from, LrVec2 to);
/* Runs the main loop for so long */
void pointer_wait   (guint ms);
