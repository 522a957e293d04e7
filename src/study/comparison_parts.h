/* comparison_parts.h - the steps of a comparison
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each fills its figures of a room that is drawn.
 */

#pragma once

#include "comparison.h"

void lr_compare_house (LrRoomFigures *room); /* comparison_house.c: windows, walls, power, access */
void lr_compare_people (LrRoomFigures *room); /* comparison_people.c: what hangs on who is there, as far as it comes at once */
void lr_compare_ways_out (LrRoomFigures *room, const GArray *ways); /* the same: @ways (nullable): LrWayOut */
void lr_compare_sun   (LrRoomFigures *room); /* comparison_sun.c */
void lr_compare_sound (LrRoomFigures *room); /* comparison_sound.c: after the house */

static inline void
lr_compare_set (LrRoomFigures *room,
                LrCompare      row,
                double         value)
{
  room->figure[row] = (LrFigure) { LR_KNOWN, value };
}

/* As usual is as nobody noted */
static inline void
lr_compare_noted (LrRoomFigures *room,
                  LrCompare      row,
                  double         value,
                  const LrProp  *prop)
{
  room->figure[row] = (LrFigure) { fabs (value - prop->fallback) > 1e-9 ? LR_KNOWN : LR_TAKEN, value };
}
