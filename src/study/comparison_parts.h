/* comparison_parts.h - the steps of a comparison
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each fills its figures of a room that is drawn.
 */

#pragma once

#include "comparison.h"

void lr_compare_house (LrRoomFigures *room); /* comparison_house.c: windows, walls, power, access */
void lr_compare_sun   (LrRoomFigures *room); /* comparison_sun.c */
void lr_compare_sound (LrRoomFigures *room); /* comparison_sound.c: after the house */

static inline void
lr_compare_set (LrRoomFigures *room,
                LrCompare      row,
                double         value)
{
  room->figure[row] = (LrFigure) { LR_KNOWN, value };
}
