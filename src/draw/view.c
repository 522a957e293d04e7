/* view.c - how a drawing looks at the room
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "view.h"

/* An empty sheet shows this much floor [m] */
#define EMPTY_WIDTH_M 8.0
#define EMPTY_HEIGHT_M 6.0

static void
get_bounds (const LrStudy *study,
            LrVec2        *low,
            LrVec2        *high)
{
  const LrRoom *room = study->setup->room;

  if (room->n_corners == 0)
    {
      *low = lr_vec2 (0.0, 0.0);
      *high = lr_vec2 (EMPTY_WIDTH_M, EMPTY_HEIGHT_M);
      return;
    }

  *low = *high = room->corners_m[0];
  for (gsize i = 1; i < room->n_corners; i++)
    {
      low->x = MIN (low->x, room->corners_m[i].x);
      low->y = MIN (low->y, room->corners_m[i].y);
      high->x = MAX (high->x, room->corners_m[i].x);
      high->y = MAX (high->y, room->corners_m[i].y);
    }
}

/**
 * lr_view_fit:
 * @view: its width and height are read, its scale and origin written
 * @study: whose room to show
 * @margin: device units to leave free on every side
 *
 * Largest scale at which the whole room fits, the room in the middle. Without corners: a floor of 8 by 6 metres.
 */
void
lr_view_fit (LrView        *view,
             const LrStudy *study,
             double         margin)
{
  LrVec2 low, high;
  double width_m, height_m;

  get_bounds (study, &low, &high);
  width_m = MAX (high.x - low.x, 0.1);
  height_m = MAX (high.y - low.y, 0.1);

  view->scale = MIN (MAX (view->width - 2.0 * margin, 1.0) / width_m,
                     MAX (view->height - 2.0 * margin, 1.0) / height_m);
  view->origin.x = 0.5 * view->width - 0.5 * (low.x + high.x) * view->scale;
  view->origin.y = 0.5 * view->height + 0.5 * (low.y + high.y) * view->scale;
}
