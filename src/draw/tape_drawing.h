/* tape_drawing.h - marks on the floor, drawn: with their tapes, or on a grid
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "page_private.h"

#define LR_TAPE_AROUND_PT 28.0 /* free around the inner faces: walls, numbers of corners and grid lines */
#define LR_TAPE_SCALE_PT  22.0 /* under them: the scale and its bar */

/* Where the room stands in a box at the largest standard scale; FALSE: there is no room, or it is too large. The scale is
 * NULL when @is_free: as large as fits */
gboolean lr_tape_drawing_place (const LrSheet *sheet, const LrBox *box, gboolean is_free, LrView *view, const LrStandardScale **scale);
/* Tapes from the corners to each mark. @pointed (nullable): id of an item whose tapes alone are drawn, from its walls too */
void     lr_tape_drawing_tapes (const LrSheet *sheet, const LrView *view, const GArray *marks, const char *pointed);
/* Marks on a grid from a corner along the longest wall, labelled, so many metres wide */
void     lr_tape_drawing_grid  (const LrSheet *sheet, const LrView *view, const GArray *marks, double step_m);
/* How wide the grid is at a scale [m]: half a metre or one, two feet or four */
double   lr_tape_grid_step_m   (const LrSheet *sheet, int scale);
