/* symbols.h - things seen from above, at their true size
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "view.h"

/* In room metres with y up: the caller has set the transformation to the item's own place and facing; line weights are in
 * device units of @view. @placed may be a kit entry's item at 0, 0 (the Tray's pictures). */
void lr_symbol_draw (cairo_t *cr, const LrView *view, const LrPlaced *placed, const LrSetup *setup);
/* The tag of a family: camera rectangle, light stadium, microphone shield, bold text; centred on x, y in device units */
void lr_tag_draw    (cairo_t *cr, const LrTheme *theme, LrItemKind kind, const char *tag, double size, double x, double y);
/* The same, lower: in the rows of a table */
void lr_tag_draw_low (cairo_t *cr, const LrTheme *theme, LrItemKind kind, const char *tag, double size, double x, double y);
void lr_tag_measure (cairo_t *cr, const LrTheme *theme, LrItemKind kind, const char *tag, double size, double *width, double *height);
/* Fix diamond, Mind triangle, Fine ring; centred */
void lr_grade_mark_draw (cairo_t *cr, const LrTheme *theme, LrGrade grade, double half_width, double x, double y);
/* A kit item's picture in a box of size x size device units (Tray) */
void lr_symbol_draw_icon (cairo_t *cr, const LrTheme *theme, const LrItem *item, double size);
