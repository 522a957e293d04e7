/* grab.h - what a widget paints, as pixels
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

/* (transfer full): a picture of the widget, a pixel a unit of its own */
cairo_surface_t *grab          (GtkWidget *widget);
/* How many pixels are others; the pictures have one size */
guint            n_different   (cairo_surface_t *a, cairo_surface_t *b);
