/* small_plan.h - a room as one of several side by side
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "comparison.h"
#include "floor.h"

/* Device units per metre at which every room fits into a box; the same for all, so that sizes can be seen */
double lr_small_plan_scale (const LrComparison *comparison, double width, double height);
/* Room, furniture, people, cameras and the longest free line, in the middle of the box */
void   lr_small_plan_draw  (cairo_t *cr, const LrRoomFigures *room, const LrTheme *theme, double scale, double width, double height);
