/* floor.h - the floor plan, on any surface
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "view.h"

/* All the drawing there is: screen, PDF and PNG differ in @cr and @view only */
void lr_floor_draw (cairo_t *cr, const LrPlan *plan, const LrStudy *study, const LrRemarks *remarks, const LrView *view);

/* The room alone, with what stands in it before anything is set up: walls, windows, doors, furniture */
void lr_floor_draw_shell (cairo_t *cr, const LrPlan *plan, const LrStudy *study, const LrView *view);

/* The outline of the thing under the pointer and its Mind mark alone, for a sheet that keeps the rest */
void lr_floor_draw_pointed (cairo_t *cr, const LrStudy *study, const LrRemarks *remarks, const LrView *view);
/* The Fix marks of what stands still while the view's skip is dragged, which lr_floor_draw() leaves out then */
void lr_floor_draw_still_fixes (cairo_t *cr, const LrStudy *study, const LrRemarks *remarks, const LrView *view);

typedef enum { LR_HIT_NOTHING, LR_HIT_ITEM, LR_HIT_TURN_KNOB, LR_HIT_SIZE_KNOB, LR_HIT_PATH_KNOB, LR_HIT_CORNER, LR_HIT_WALL } LrHitType;

typedef struct
{
  LrHitType   type;
  const char *id;     /* of the item; owned by the plan */
  int         index;  /* size knob 0..7 (corner, edge, ... anticlockwise from the item's +x +y; of a door or window 0 its end nearer
                       * to the wall's first corner, 1 the other), path point, corner or wall */
} LrHit;

/* What a pointer at the device place meets: knobs of the item in hand first (24 px reach), then items from the top, then corners, walls */
LrHit lr_floor_hit (const LrStudy *study, const LrView *view, LrVec2 at);
/* Device rectangle that the item, its marks, its labels and its overlays may touch */
void  lr_floor_item_extents (const LrStudy *study, const LrView *view, const char *id, cairo_rectangle_t *extents);
/* Halfway between a corner's two walls, into the room; y up */
LrVec2 lr_room_inward (const LrRoom *room, gsize corner);
/* North ring with its arrow, the N outside it */
void  lr_north_draw (cairo_t *cr, const LrTheme *theme, double north_rad, double radius, double x, double y);
