/* view.c - how a drawing looks at the room
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "floor_layers.h"

/* An empty sheet shows this much floor [m] */
#define EMPTY_WIDTH_M 8.0
#define EMPTY_HEIGHT_M 6.0

/* Room left around what stands outside the walls, for a label beside it; the walls have their dimensions and notes */
#define BESIDE_PX 32.0
#define ABOVE_PX 14.0

/* What must be seen: its place on the floor [m], and how much is left free around it on the device */
typedef struct
{
  LrVec2 low_m, high_m, free;
} Part;

static Part
room_part (const LrStudy *study,
           double         margin)
{
  const LrRoom *room = study->setup->room;
  Part part = { lr_vec2 (0.0, 0.0), lr_vec2 (EMPTY_WIDTH_M, EMPTY_HEIGHT_M), lr_vec2 (margin, margin) };

  if (room->n_corners == 0)
    return part;

  part.low_m = part.high_m = room->corners_m[0];
  for (gsize i = 1; i < room->n_corners; i++)
    {
      part.low_m = lr_vec2 (MIN (part.low_m.x, room->corners_m[i].x), MIN (part.low_m.y, room->corners_m[i].y));
      part.high_m = lr_vec2 (MAX (part.high_m.x, room->corners_m[i].x), MAX (part.high_m.y, room->corners_m[i].y));
    }
  return part;
}

static void
extend (Part   *part,
        LrVec2  at_m,
        double  around_m)
{
  part->low_m = lr_vec2 (MIN (part->low_m.x, at_m.x - around_m), MIN (part->low_m.y, at_m.y - around_m));
  part->high_m = lr_vec2 (MAX (part->high_m.x, at_m.x + around_m), MAX (part->high_m.y, at_m.y + around_m));
}

/* All that stands in and around the room, at least the room itself */
static Part
items_part (const LrView  *view,
            const LrStudy *study,
            const Part    *room)
{
  Part part = { room->low_m, room->high_m, lr_vec2 (MIN (BESIDE_PX, room->free.x), MIN (ABOVE_PX, room->free.y)) };
  LrOutline outline;

  for (guint i = 0; i < study->placed->len; i++)
    if (lr_floor_outline (study, view, &g_array_index (study->placed, LrPlaced, i), &outline))
      {
        if (outline.n == 0)
          extend (&part, outline.centre_m, outline.radius_m);
        for (gsize k = 0; k < outline.n; k++)
          extend (&part, outline.corner_m[k], 0.0);
      }
  return part;
}

/* At which a part's one end and another's other end fit, with what is left free there */
static double
largest_scale (double length_m,
               double free,
               double size)
{
  return MAX (size - free, 1.0) / MAX (length_m, 0.1);
}

static double
find_scale (const Part *parts,
            gsize       n,
            double      width,
            double      height)
{
  double scale = HUGE_VAL;

  for (gsize i = 0; i < n; i++)
    for (gsize j = 0; j < n; j++)
      {
        const Part *a = &parts[i], *b = &parts[j];

        scale = MIN (scale, largest_scale (b->high_m.x - a->low_m.x, a->free.x + b->free.x, width));
        scale = MIN (scale, largest_scale (b->high_m.y - a->low_m.y, a->free.y + b->free.y, height));
      }
  return scale;
}

/**
 * lr_view_fit:
 * @view: its width, height and palette are read, its scale and origin written
 * @study: whose room to show
 * @margin: device units to leave free around the walls
 * @foot: device units at the foot of the drawing that belong to somebody else
 *
 * Largest scale at which the whole room fits with all that stands in and around it, in the middle. Without corners: a floor of 8 by 6 metres.
 */
void
lr_view_fit (LrView        *view,
             const LrStudy *study,
             double         margin,
             double         foot)
{
  Part parts[2] = { room_part (study, margin) };
  LrVec2 low = lr_vec2 (HUGE_VAL, HUGE_VAL), high = lr_vec2 (-HUGE_VAL, -HUGE_VAL);
  double height = MAX (view->height - foot, 1.0);

  /* small symbols have least sizes on the device */
  view->scale = find_scale (parts, 1, view->width, height);
  parts[1] = items_part (view, study, &parts[0]);
  view->scale = find_scale (parts, 2, view->width, height);
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      low.x = MIN (low.x, parts[i].low_m.x * view->scale - parts[i].free.x);
      low.y = MIN (low.y, parts[i].low_m.y * view->scale - parts[i].free.y);
      high.x = MAX (high.x, parts[i].high_m.x * view->scale + parts[i].free.x);
      high.y = MAX (high.y, parts[i].high_m.y * view->scale + parts[i].free.y);
    }
  view->origin = lr_vec2 (0.5 * (view->width - low.x - high.x), 0.5 * (height + low.y + high.y));
}
