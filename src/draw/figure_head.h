/* figure_head.h - the surface of a head, for what is drawn on it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Spots are given by the angle round the head, 0 ahead and growing to the left, and the height over the eyes and the
 * lift over the skin in shares of the head's height.
 */

#pragma once

#include "figure_parts.h"

typedef struct
{
  double around_deg, up, lift;
} LrHeadSpot;

/* A point of the head's own frame, in shares of its height: x ahead of its middle, y to the left, z over the eyes */
LrVec3   lr_head_point (const LrFigure *figure, double x, double y, double z);
gboolean lr_head_place (const LrFigure *figure, LrVec3 at_m, LrVec2 *at);
/* How far round a spot lies from the side that faces the lens [deg], signed */
double   lr_head_turned_deg (const LrFigure *figure, LrHeadSpot spot);
/* Spots in the picture, mirrored for side -1; what has turned away slides to the outline. 0: one is behind the lens */
/* The nose of a face that is turned so far that it stands out past it is painted before the face, else after it */
void     lr_figure_paint_nose (const LrFigure *figure, gboolean is_before);
guint    lr_head_spots (const LrFigure *figure, const LrHeadSpot *spots, guint n, int side, LrVec2 *points);
