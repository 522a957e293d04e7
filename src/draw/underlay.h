/* underlay.h - what a picture of a floor plan looks like, for drawing it often
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The picture and halves of it, quarters and so on, made when they are wanted: what is painted is never more than twice as fine as
 * the device, so that it costs by the sheet and not by the picture. Of one thread.
 */

#pragma once

#include "similarity.h"

#include <cairo.h>
#include <glib.h>

typedef struct _LrUnderlay LrUnderlay;

/* (transfer full) @surface: an image of the whole picture, opaque. @width_px, @height_px: of the picture in its own pixels or points */
LrUnderlay *lr_underlay_new      (cairo_surface_t *surface, double width_px, double height_px, int n_pages);
LrUnderlay *lr_underlay_ref      (LrUnderlay *underlay);
void        lr_underlay_unref    (LrUnderlay *underlay);
void        lr_underlay_get_size (const LrUnderlay *underlay, double *width_px, double *height_px);
int         lr_underlay_get_n_pages (const LrUnderlay *underlay);

/* Its four corners on the floor, anticlockwise from the lower left one */
void        lr_underlay_corners  (const LrUnderlay *underlay, const LrSimilarity *lies, LrVec2 corners_m[4]);
/* Onto paper that is light, or dark: there what is white in the picture is dark. @scale and @origin are a view's */
void        lr_underlay_paint    (LrUnderlay *underlay, cairo_t *cr, const LrSimilarity *lies, double scale, LrVec2 origin, double dim,
                                  gboolean is_dark);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrUnderlay, lr_underlay_unref)
