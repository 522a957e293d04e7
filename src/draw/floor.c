/* floor.c - the floor plan, on any surface
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One function per layer, back to front. A drag draws two halves: all but what moves, once, and what moves, for each frame;
 * which item is in which half is decided in one place, floor_scope.c.
 */

#include "floor.h"

#include "floor_layers.h"

/* Ground, room and grid */

static void
draw_grid (const LrFloor *floor)
{
  const LrView *view = floor->view;
  LrVec2 low = lr_view_to_room (view, lr_vec2 (0.0, view->height));
  LrVec2 high = lr_view_to_room (view, lr_vec2 (view->width, 0.0));
  cairo_t *cr = floor->cr;

  for (double x = ceil (low.x); x <= high.x; x += 1.0)
    {
      lr_floor_move_to (floor, lr_vec2 (x, low.y));
      lr_floor_line_to (floor, lr_vec2 (x, high.y));
    }
  for (double y = ceil (low.y); y <= high.y; y += 1.0)
    {
      lr_floor_move_to (floor, lr_vec2 (low.x, y));
      lr_floor_line_to (floor, lr_vec2 (high.x, y));
    }
  lr_theme_set_color (cr, floor->theme->grid, 1.0);
  lr_theme_set_line (cr, floor->theme, LR_LINE_HAIR, LR_DASH_SOLID);
  cairo_stroke (cr);
}

static void
draw_ground (const LrFloor *floor)
{
  cairo_t *cr = floor->cr;

  if (!floor->has_base)
    return;

  cairo_save (cr);
  if (!floor->view->is_page)
    {
      cairo_rectangle (cr, 0.0, 0.0, floor->view->width, floor->view->height);
      lr_theme_set_color (cr, floor->theme->ground, 1.0);
      cairo_fill (cr);
    }
  if (floor->room->n_corners >= 3)
    {
      lr_floor_trace_room (floor);
      lr_theme_set_color (cr, floor->theme->room, 1.0);
      cairo_fill_preserve (cr);
      cairo_clip (cr);
    }
  draw_grid (floor);
  cairo_restore (cr);
}

/* Things */

static void
draw_placed (const LrFloor  *floor,
             const LrPlaced *placed)
{
  cairo_save (floor->cr);
  lr_floor_to_item (floor->cr, floor->view, placed);
  lr_symbol_draw (floor->cr, floor->view, placed, floor->setup);
  cairo_restore (floor->cr);
}

static gboolean
is_on_sheet (const LrPlaced *placed)
{
  return isfinite (placed->at_m.x) && isfinite (placed->at_m.y);
}

static void
draw_kind (const LrFloor *floor,
           LrItemKind     kind)
{
  const LrPlaced *placed = (const LrPlaced *) (gpointer) floor->study->placed->data;

  for (guint i = 0; i < floor->study->placed->len; i++)
    if (placed[i].item->kind == kind && floor->is_drawn[i] && is_on_sheet (&placed[i]))
      draw_placed (floor, &placed[i]);
}

static void
draw_kinds (const LrFloor    *floor,
            const LrItemKind *kinds,
            gsize             n)
{
  for (gsize i = 0; i < n; i++)
    draw_kind (floor, kinds[i]);
}

static void
draw_washes (const LrFloor *floor)
{
  lr_overlay_sight_washes (floor);
  lr_overlay_light_pools (floor);
  lr_overlay_levels (floor);
  lr_overlay_sun (floor);
  lr_overlay_sound (floor);
}

static void
draw_furniture (const LrFloor *floor)
{
  draw_kind (floor, LR_ITEM_FURNITURE);
}

static void
draw_room_things (const LrFloor *floor)
{
  static const LrItemKind kinds[] = {
    LR_ITEM_WINDOW, LR_ITEM_DOOR, LR_ITEM_SOCKET, LR_ITEM_CIRCUIT, LR_ITEM_HOUSE_LIGHT, LR_ITEM_NOISE, LR_ITEM_LEAD,
  };

  draw_kinds (floor, kinds, G_N_ELEMENTS (kinds));
}

static void
draw_set (const LrFloor *floor)
{
  static const LrItemKind under_line[] = { LR_ITEM_PANEL };
  static const LrItemKind over_line[] = { LR_ITEM_PERSON, LR_ITEM_LIGHT, LR_ITEM_MICROPHONE, LR_ITEM_CAMERA };

  draw_kinds (floor, under_line, G_N_ELEMENTS (under_line));
  lr_overlay_sight_line (floor);
  draw_kinds (floor, over_line, G_N_ELEMENTS (over_line));
  lr_overlay_light_axes (floor);
}

/* Rarely what stands lowest hides what lies in a wall: the item in hand always shows */
static void
draw_in_hand (const LrFloor *floor)
{
  if (floor->view->is_page)
    return;

  lr_floor_draw_ghost (floor);
  lr_floor_draw_hand (floor);
}

/* On paper dimensions and other columns stand around the room */
static void
bound_labels (const LrFloor *floor)
{
  const LrRoom *room = floor->room;
  LrVec2 low, high;

  if (!floor->view->is_page || room->n_corners < 3)
    return;

  low = high = lr_floor_device (floor, room->corners_m[0]);
  for (gsize i = 1; i < room->n_corners; i++)
    {
      LrVec2 corner = lr_floor_device (floor, room->corners_m[i]);

      low = lr_vec2 (MIN (low.x, corner.x), MIN (low.y, corner.y));
      high = lr_vec2 (MAX (high.x, corner.x), MAX (high.y, corner.y));
    }
  lr_labels_set_bounds (floor->labels, low, high);
}

static void
draw_labels (const LrFloor *floor)
{
  bound_labels (floor);
  lr_floor_block_symbols (floor);
  lr_floor_label_items (floor);
  lr_overlay_power (floor);
  lr_overlay_sun_notes (floor);
  lr_labels_draw (floor->labels);
}

/* Words, marks and figures */
static void
draw_over (const LrFloor *floor)
{
  lr_floor_draw_dimensions (floor);
  lr_floor_draw_furnishings (floor);
  lr_floor_draw_distances (floor);
  lr_floor_draw_remark (floor);
  lr_floor_draw_numbers (floor);
  lr_floor_draw_planned (floor);
  draw_in_hand (floor);
  lr_floor_draw_marks (floor);
  draw_labels (floor);
}

static gboolean *
choose_items (const LrStudy *study,
              const LrView  *view)
{
  gboolean *chosen;

  if (view->only != NULL)
    return lr_floor_moving (study, view->only);

  chosen = view->skip != NULL ? lr_floor_moving (study, view->skip) : g_new0 (gboolean, study->placed->len + 1);
  for (guint i = 0; i < study->placed->len; i++)
    chosen[i] = !chosen[i];

  return chosen;
}

/**
 * lr_floor_draw:
 * @cr: a cairo context whose unit is the device's: a pixel, a point
 * @plan: what to draw
 * @study: its study
 * @remarks: (nullable): its remarks: Fix marks
 * @view: scale, place, palette, what is shown and what is in hand
 *
 * All the drawing there is: screen, PDF and PNG differ in @cr and @view only.
 */
void
lr_floor_draw (cairo_t         *cr,
               const LrPlan    *plan,
               const LrStudy   *study,
               const LrRemarks *remarks,
               const LrView    *view)
{
  g_autofree gboolean *is_drawn = choose_items (study, view);
  g_autoptr (LrLabels) labels = lr_labels_new (cr, view);
  const LrPlaced *in_hand = view->in_hand != NULL && !view->is_page ? lr_study_find_placed (study, view->in_hand) : NULL;
  LrFloor floor = {
    .cr = cr, .plan = plan, .study = study, .setup = study->setup, .room = study->setup->room, .remarks = remarks,
    .view = view, .theme = view->theme, .px = view->theme->unit_px, .has_base = view->only == NULL, .is_drawn = is_drawn,
    .labels = labels,
  };

  if (lr_floor_has (&floor, in_hand))
    floor.in_hand = in_hand;

  cairo_save (cr);
  cairo_new_path (cr);
  draw_ground (&floor);
  lr_floor_draw_underlay (&floor);
  draw_washes (&floor);
  draw_furniture (&floor);
  lr_floor_draw_walls (&floor);
  draw_room_things (&floor);
  draw_set (&floor);
  draw_over (&floor);
  cairo_restore (cr);
}

/**
 * lr_floor_draw_shell:
 * @cr: a cairo context whose unit is the device's: a pixel, a point
 * @plan: what to draw
 * @study: its study
 * @view: scale, place and palette
 *
 * The room without grid, labels and what is set up in it: others draw over it.
 */
void
lr_floor_draw_shell (cairo_t       *cr,
                     const LrPlan  *plan,
                     const LrStudy *study,
                     const LrView  *view)
{
  static const LrItemKind in_walls[] = { LR_ITEM_WINDOW, LR_ITEM_DOOR };
  g_autofree gboolean *is_drawn = choose_items (study, view);
  g_autoptr (LrLabels) labels = lr_labels_new (cr, view);
  const LrFloor floor = {
    .cr = cr, .plan = plan, .study = study, .setup = study->setup, .room = study->setup->room, .view = view, .theme = view->theme,
    .px = view->theme->unit_px, .has_base = TRUE, .is_drawn = is_drawn, .labels = labels,
  };

  if (floor.room->n_corners < 3)
    return;

  cairo_save (cr);
  cairo_new_path (cr);
  lr_floor_trace_room (&floor);
  lr_theme_set_color (cr, floor.theme->room, 1.0);
  cairo_fill (cr);
  draw_furniture (&floor);
  lr_floor_draw_walls (&floor);
  draw_kinds (&floor, in_walls, G_N_ELEMENTS (in_walls));
  cairo_restore (cr);
}
