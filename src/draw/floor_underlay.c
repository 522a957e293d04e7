/* floor_underlay.c - the picture of a floor plan that walls are drawn over
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * It is for drawing the room and not for showing it: the page, which others set out from, has only what was measured.
 */

#include "floor_layers.h"

/* More of the device than this for one of its pixels is a scale that nobody wants, and cairo's numbers have an end */
#define MAX_PX_PER_PX 4096.0

/**
 * lr_floor_draw_underlay:
 * @floor: a drawing
 *
 * Paints it over ground and grid.
 */
void
lr_floor_draw_underlay (const LrFloor *floor)
{
  const LrView *view = floor->view;
  const LrRoom *room = floor->room;
  LrSimilarity lies;

  if (!floor->has_base || view->is_page || view->underlay == NULL || room->underlay_is_hidden || !lr_room_underlay (room, &lies)
      || lies.scale * view->scale > MAX_PX_PER_PX)
    return;

  lr_underlay_paint (view->underlay, floor->cr, &lies, view->scale, view->origin, room->underlay_dim,
                     floor->theme == lr_theme_get (LR_THEME_DARK));
}
