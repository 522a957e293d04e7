/* free_line.h - how far one can look in a room
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "polygon.h"

/* The longest straight line over the floor that stays in the room and meets none of the outlines; false: there is no room */
bool lr_free_line (const LrVec2 *room_m, size_t n, const LrOutline *blocks, size_t n_blocks, LrVec2 *from_m, LrVec2 *to_m);
/* Length and width of the smallest rectangle round a polygon, in whatever direction it lies; false: it is none */
bool lr_polygon_sides_m (const LrVec2 *corners_m, size_t n, double *length_m, double *width_m);
