/* washes.h - thin colour over a part of the floor
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "floor_layers.h"

/* Path of those parts of a closed line [m] that lie inside the room */
void     lr_wash_trace_inside (const LrFloor *floor, const LrVec2 *points_m, gsize n);
/* Fills what two polygons [m] share, the first anticlockwise, with a colour whose alpha runs evenly between two places [m] */
void     lr_wash_fill_within  (const LrFloor *floor, const LrVec2 *within_m, gsize n_within, const LrVec2 *corners_m, gsize n,
                               LrVec2 from_m, LrVec2 to_m, LrColor color, double from_alpha, double to_alpha);
