/* glyphs.h - the signs of the five families, as their toggles show them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "theme.h"

#define LR_GLYPH_SIZE_PX 18.0

/* Centred on @x, @y */
void lr_glyph_draw (cairo_t *cr, const LrTheme *theme, LrFamily family, double x, double y);
