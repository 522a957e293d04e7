/* floor_knobs.c - where the knobs of the item in hand are
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One list for drawing and for the pointer, so that what is seen is what is met.
 */

#include "floor_layers.h"

#define TURN_KNOB_PX 16.5         /* past the halo */
#define LEAST_SIDE_PX 20.0        /* furniture that is smaller has no size knobs */
#define LEAST_EDGE_KNOB_PX 44.0   /* sides that are shorter have none in their middle */

static void
add_knob (GArray   *knobs,
          LrHitType type,
          int       index,
          LrVec2    at)
{
  LrKnob knob = { type, index, at };

  g_array_append_val (knobs, knob);
}

static gboolean
can_turn (const LrItem *item)
{
  switch (item->kind)
    {
    case LR_ITEM_PERSON:
    case LR_ITEM_CAMERA:
    case LR_ITEM_LIGHT:
    case LR_ITEM_PANEL:
    case LR_ITEM_FURNITURE:
    case LR_ITEM_NOISE:
      return TRUE;
    case LR_ITEM_MICROPHONE:
      return lr_microphone_stands (&item->microphone);
    case LR_ITEM_LEAD:
    case LR_ITEM_DOOR:
    case LR_ITEM_WINDOW:
    case LR_ITEM_SOCKET:
    case LR_ITEM_CIRCUIT:
    case LR_ITEM_HOUSE_LIGHT:
    case LR_ITEM_LENS:
    case LR_N_ITEM_KINDS:
    default:
      return FALSE;
    }
}

/* Eight around a piece of furniture, from its own +x +y corner anticlockwise */
static void
add_size_knobs (GArray         *knobs,
                const LrView   *view,
                const LrPlaced *placed)
{
  static const double x_signs[8] = { 1, 0, -1, -1, -1, 0, 1, 1 };
  static const double y_signs[8] = { 1, 1, 1, 0, -1, -1, -1, 0 };
  const LrFurniture *furniture = &placed->item->furniture;
  double length = furniture->length_m * view->scale, width = furniture->width_m * view->scale;
  LrVec2 centre = lr_view_to_device (view, placed->at_m);
  double outside = LR_HALO_PX * view->theme->unit_px;

  if (MIN (length, width) < LEAST_SIDE_PX * view->theme->unit_px)
    return;

  for (int i = 0; i < 8; i++)
    {
      double side = x_signs[i] == 0.0 ? length : width; /* the side that an edge's knob sits on */
      LrVec2 off = lr_vec2 (x_signs[i] * (0.5 * length + outside), y_signs[i] * (0.5 * width + outside));

      if (i % 2 == 1 && side < LEAST_EDGE_KNOB_PX * view->theme->unit_px)
        continue;
      off = lr_vec2_rotate (off, placed->facing_rad);
      add_knob (knobs, LR_HIT_SIZE_KNOB, i, lr_vec2 (centre.x + off.x, centre.y - off.y));
    }
}

/* The ends of a door or window: 0 nearer to the wall's first corner, 1 the other */
static void
add_end_knobs (GArray         *knobs,
               const LrView   *view,
               const LrPlaced *placed,
               double          width_m)
{
  double half_m = 0.5 * width_m + LR_HALO_PX * view->theme->unit_px / view->scale;
  LrVec2 middle_m = lr_vec2_along (placed->at_m, lr_vec2_polar (placed->facing_rad, 1.0), -0.5 * LR_WALL_M);
  LrVec2 to_start = lr_vec2_polar (placed->facing_rad + 0.5 * LR_PI, 1.0);

  add_knob (knobs, LR_HIT_SIZE_KNOB, 0, lr_view_to_device (view, lr_vec2_along (middle_m, to_start, half_m)));
  add_knob (knobs, LR_HIT_SIZE_KNOB, 1, lr_view_to_device (view, lr_vec2_along (middle_m, to_start, -half_m)));
}

static void
add_turn_knob (GArray          *knobs,
               const LrView    *view,
               const LrPlaced  *placed,
               const LrOutline *outline)
{
  LrVec2 facing = lr_vec2 (cos (placed->facing_rad), -sin (placed->facing_rad));

  add_knob (knobs, LR_HIT_TURN_KNOB, 0,
            lr_floor_beside (view, outline, facing, (LR_HALO_PX + TURN_KNOB_PX) * view->theme->unit_px));
}

/**
 * lr_floor_knobs:
 * @study: a study
 * @view: what is in hand
 *
 * Returns: (transfer full): the knobs of what is in hand: none on paper and in a plan that cannot be changed
 */
GArray *
lr_floor_knobs (const LrStudy *study,
                const LrView  *view)
{
  GArray *knobs = g_array_new (FALSE, FALSE, sizeof (LrKnob));
  const LrPlaced *placed = view->in_hand != NULL ? lr_study_find_placed (study, view->in_hand) : NULL;
  LrOutline outline;

  if (view->is_page || view->is_read_only)
    return knobs;
  if (placed == NULL || !lr_floor_outline (study, view, placed, &outline))
    return knobs;

  if (can_turn (placed->item))
    add_turn_knob (knobs, view, placed, &outline);
  if (placed->item->kind == LR_ITEM_FURNITURE)
    add_size_knobs (knobs, view, placed);
  if (placed->item->kind == LR_ITEM_DOOR)
    add_end_knobs (knobs, view, placed, placed->item->door.width_m);
  if (placed->item->kind == LR_ITEM_WINDOW)
    add_end_knobs (knobs, view, placed, placed->item->window.width_m);
  if (placed->item->kind == LR_ITEM_LEAD)
    for (gsize i = 0; i < placed->item->n_path; i++)
      add_knob (knobs, LR_HIT_PATH_KNOB, (int) i, lr_view_to_device (view, placed->item->path_m[i]));

  return knobs;
}
