/* floor_hand.c - what is in hand: halo, knobs, distances
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "floor_layers.h"

#define LEAST_SPAN_PX 46.0 /* "0.80 m" between the halo and a wall; in less it stands over the thing */
#define HALO_WIDTH_PX 4.0
#define HALO_ALPHA 0.85
#define LEAD_HALO_ALPHA 0.55 /* the lead itself must show on it */
#define TURN_KNOB_RADIUS_PX 5.5
#define SIZE_KNOB_PX 8.0
#define OBLIQUE_PX 6.3
#define WALL_LINE_PX 14.0

/* A lead's halo lies under it, along its path */
static void
draw_lead_halo (const LrFloor *floor)
{
  LrPen pen = lr_pen (floor->cr, floor->view, floor->in_hand, floor->setup);

  cairo_save (floor->cr);
  lr_floor_to_item (floor->cr, floor->view, floor->in_hand);
  lr_symbol_lead_band (&pen, floor->theme->room, 1.0, 2.0 * HALO_WIDTH_PX * floor->px);
  lr_symbol_lead_band (&pen, floor->theme->in_hand_halo, LEAD_HALO_ALPHA, 2.0 * HALO_WIDTH_PX * floor->px);
  lr_symbol_lead_line (&pen);
  cairo_restore (floor->cr);
}

static gboolean
has_square_halo (const LrPlaced *placed)
{
  return placed->item->kind == LR_ITEM_FURNITURE && placed->item->furniture.form != LR_FURNITURE_CYLINDER;
}

static gboolean
is_boom (const LrPlaced *placed)
{
  return placed->item->kind == LR_ITEM_MICROPHONE && placed->item->microphone.form == LR_MIC_BOOM;
}

/* Corners that the size knobs sit on are square */
static void
trace_square (const LrFloor  *floor,
              const LrPlaced *placed)
{
  const LrFurniture *furniture = &placed->item->furniture;
  double outside_m = LR_HALO_PX * floor->px / floor->view->scale;
  LrOutline box = lr_outline_box (placed->at_m, furniture->length_m + 2.0 * outside_m, furniture->width_m + 2.0 * outside_m,
                                  placed->facing_rad);

  for (gsize i = 0; i < box.n; i++)
    if (i == 0)
      lr_floor_move_to (floor, box.corner_m[i]);
    else
      lr_floor_line_to (floor, box.corner_m[i]);
  cairo_close_path (floor->cr);
}

/* Labels keep off the halo, too */
static void
block_halo (const LrFloor   *floor,
            const LrOutline *outline)
{
  LrOutline device = lr_floor_device_outline (floor->view, outline);
  double outside = (LR_HALO_PX + 0.5 * HALO_WIDTH_PX) * floor->px;

  if (device.n == 0)
    {
      lr_labels_block_disc (floor->labels, device.centre_m, device.radius_m + outside);
      return;
    }
  for (gsize i = 0; i < device.n; i++)
    {
      LrVec2 from = device.corner_m[i], to = device.corner_m[(i + 1) % device.n];
      LrVec2 along = lr_vec2_polar (lr_vec2_angle_rad (lr_vec2_sub (to, from)), outside), out = lr_vec2_left (along);
      LrVec2 band[4];

      if (lr_vec2_dot (out, lr_vec2_sub (device.centre_m, from)) > 0.0)
        out = lr_vec2_scale (out, -1.0);
      band[0] = from;
      band[1] = to;
      band[2] = lr_vec2_add (lr_vec2_add (to, along), out);
      band[3] = lr_vec2_sub (lr_vec2_add (from, out), along);
      lr_labels_block_polygon (floor->labels, band, G_N_ELEMENTS (band));
    }
}

static void
draw_halo (const LrFloor   *floor,
           const LrOutline *outline)
{
  const LrPlaced *placed = floor->in_hand;
  cairo_t *cr = floor->cr;

  if (placed->item->kind == LR_ITEM_LEAD)
    {
      draw_lead_halo (floor);
      return;
    }

  if (has_square_halo (placed))
    trace_square (floor, placed);
  else
    lr_floor_trace_around (cr, floor->view, placed, outline, LR_HALO_PX * floor->px);

  lr_theme_set_color (cr, floor->theme->in_hand_halo, HALO_ALPHA);
  lr_theme_set_line (cr, floor->theme, LR_LINE_THIN, LR_DASH_SOLID);
  cairo_set_line_width (cr, HALO_WIDTH_PX * floor->px);
  cairo_stroke_preserve (cr);
  lr_theme_set_color (cr, floor->theme->in_hand, 1.0);
  lr_theme_set_line (cr, floor->theme, LR_LINE_THIN, LR_DASH_SOLID);
  cairo_stroke (cr);
  /* a boom's arm is kept clear with its symbol */
  block_halo (floor, is_boom (placed) ? &placed->footprint : outline);
}

static void
paint_knob (const LrFloor *floor,
            LrLineWeight   weight)
{
  lr_theme_set_color (floor->cr, floor->theme->room, 1.0);
  cairo_fill_preserve (floor->cr);
  lr_theme_set_color (floor->cr, floor->theme->in_hand, 1.0);
  lr_theme_set_line (floor->cr, floor->theme, weight, LR_DASH_SOLID);
  cairo_stroke (floor->cr);
}

static void
draw_turn_knob (const LrFloor   *floor,
                const LrOutline *outline,
                LrVec2           at)
{
  LrVec2 facing = lr_vec2 (cos (floor->in_hand->facing_rad), -sin (floor->in_hand->facing_rad));
  LrVec2 from = lr_floor_beside (floor->view, outline, facing, LR_HALO_PX * floor->px);
  cairo_t *cr = floor->cr;

  cairo_move_to (cr, from.x, from.y);
  cairo_line_to (cr, at.x, at.y);
  lr_theme_set_color (cr, floor->theme->in_hand, 1.0);
  lr_theme_set_line (cr, floor->theme, LR_LINE_THIN, LR_DASH_SOLID);
  cairo_stroke (cr);
  cairo_new_sub_path (cr);
  cairo_arc (cr, at.x, at.y, TURN_KNOB_RADIUS_PX * floor->px, 0.0, 2.0 * LR_PI);
  paint_knob (floor, LR_LINE_THICK);
}

static void
draw_square_knob (const LrFloor *floor,
                  LrVec2         at)
{
  double half = 0.5 * SIZE_KNOB_PX * floor->px;

  cairo_rectangle (floor->cr, at.x - half, at.y - half, 2.0 * half, 2.0 * half);
  paint_knob (floor, LR_LINE_OUTLINE);
}

/* Turn knobs under the square ones, which may share their place */
static void
draw_knobs (const LrFloor   *floor,
            const LrOutline *outline)
{
  g_autoptr (GArray) knobs = lr_floor_knobs (floor->study, floor->view);

  for (guint i = 0; i < knobs->len; i++)
    {
      const LrKnob *knob = &g_array_index (knobs, LrKnob, i);

      if (knob->type == LR_HIT_TURN_KNOB)
        draw_turn_knob (floor, outline, knob->at);
      else
        draw_square_knob (floor, knob->at);
      lr_labels_block_disc (floor->labels, knob->at, 7.0 * floor->px);
    }
}

/* Distances */

static void
add_distance (const LrFloor *floor,
              LrVec2         from,
              LrVec2         to,
              double         length_m)
{
  static const double shares[] = { 0.5, 0.35, 0.65, 0.2, 0.8 }; /* of the way */
  static const double off_px[] = { 9.0, -9.0, 24.0, -24.0, 40.0, -40.0 }; /* beside the line, or past somebody who sits there */
  g_autofree char *text = lr_length_format (length_m, floor->view->units);
  double angle = lr_floor_reading_angle_rad (from, to);
  LrVec2 up = lr_vec2 (sin (angle), -cos (angle));
  LrVec2 places[G_N_ELEMENTS (off_px) * G_N_ELEMENTS (shares)];
  gsize n = 0;
  LrLabel label = {
    .rank = LR_LABEL_FIGURE,
    .text = text,
    .style = { .size = floor->theme->type_size[LR_TYPE_DISTANCE], .weight = PANGO_WEIGHT_SEMIBOLD },
    .color = floor->theme->in_hand,
    .halo = floor->theme->room,
    .has_halo = TRUE,
    .angle_rad = angle,
  };

  for (gsize far = 0; far < G_N_ELEMENTS (off_px); far += 2)
    for (gsize i = 0; i < G_N_ELEMENTS (shares); i++)
      for (gsize side = 0; side < 2; side++)
        places[n++] = lr_vec2_along (lr_vec2_along (from, lr_vec2_sub (to, from), shares[i]), up, off_px[far + side] * floor->px);
  lr_labels_add_at (floor->labels, &label, places, n);
}

typedef struct
{
  double distance_m;
  LrVec2 foot_m;
} WallDistance;

/* Walls on which the foot of the perpendicular lies, the nearest first */
static int
find_walls (const LrFloor *floor,
            LrVec2         at_m,
            WallDistance   nearest[2])
{
  int n = 0;

  if (!lr_polygon_contains (floor->room->corners_m, floor->room->n_corners, at_m))
    return 0; /* a noise behind a wall */

  for (gsize i = 0; i < floor->room->n_corners; i++)
    {
      WallDistance wall;
      LrVec2 from_m, along;
      double length_m, along_m;

      if (!lr_room_wall (floor->room, (int) i, &from_m, &along, &length_m))
        continue;
      along_m = lr_vec2_dot (lr_vec2_sub (at_m, from_m), along);
      wall.foot_m = lr_vec2_along (from_m, along, along_m);
      wall.distance_m = lr_vec2_cross (along, lr_vec2_sub (at_m, from_m));
      if (along_m < 0.0 || along_m > length_m || wall.distance_m < 0.02)
        continue;

      if (n < 2)
        nearest[n++] = wall;
      else if (wall.distance_m < nearest[1].distance_m)
        nearest[1] = wall;
      if (n == 2 && nearest[1].distance_m < nearest[0].distance_m)
        {
          WallDistance swap = nearest[0];

          nearest[0] = nearest[1];
          nearest[1] = swap;
        }
    }

  return n;
}

/* Where a line from the item in hand comes out of its outline. The outline is known from its middle, while the line starts at
 * the item's place, a person's head: what counts is how far the rim is along the line. */
static LrVec2
leave_outline (const LrFloor   *floor,
               const LrOutline *outline,
               LrVec2           way,
               double           outside)
{
  LrVec2 at = lr_floor_device (floor, floor->in_hand->at_m);
  LrVec2 rim = lr_floor_beside (floor->view, outline, way, outside);

  return lr_vec2_along (at, way, lr_vec2_dot (lr_vec2_sub (rim, at), way));
}

static void
draw_to_walls (const LrFloor   *floor,
               const LrOutline *outline)
{
  WallDistance walls[2];
  LrVec2 at_m = floor->in_hand->at_m, at = lr_floor_device (floor, at_m);
  int n = find_walls (floor, at_m, walls);
  cairo_t *cr = floor->cr;

  for (int i = 0; i < n; i++)
    {
      LrVec2 foot = lr_floor_device (floor, walls[i].foot_m);
      LrVec2 way = lr_vec2_scale (lr_vec2_sub (foot, at), 1.0 / lr_vec2_distance (foot, at));
      LrVec2 rim = leave_outline (floor, outline, way, (LR_HALO_PX + 3.0) * floor->px);

      cairo_move_to (cr, at.x, at.y);
      cairo_line_to (cr, foot.x, foot.y);
      lr_theme_set_color (cr, floor->theme->in_hand, 1.0);
      lr_theme_set_line (cr, floor->theme, LR_LINE_OUTLINE, LR_DASH_SOLID);
      cairo_stroke (cr);
      lr_floor_oblique (cr, foot, way, OBLIQUE_PX);
      add_distance (floor, lr_vec2_dot (lr_vec2_sub (foot, rim), way) > LEAST_SPAN_PX * floor->px ? rim : at, foot,
                    walls[i].distance_m);
      lr_labels_block_segment (floor->labels, at, foot);
    }
}

/* What is in a wall is measured along it, from both ends, on a line inside the room */
static void
draw_along_wall (const LrFloor   *floor,
                 const LrOutline *outline)
{
  const LrItem *item = floor->in_hand->item;
  double width_m = item->kind == LR_ITEM_DOOR ? item->door.width_m : item->kind == LR_ITEM_WINDOW ? item->window.width_m : 0.0;
  double reach_m = 0.0, length_m;
  LrVec2 from_m, along, in, spans_m[2][2];
  cairo_t *cr = floor->cr;

  if (!lr_room_wall (floor->room, item->wall, &from_m, &along, &length_m))
    return;

  in = lr_vec2_left (along);
  for (gsize i = 0; i < outline->n; i++)
    reach_m = MAX (reach_m, lr_vec2_dot (lr_vec2_sub (outline->corner_m[i], from_m), in));
  if (item->kind == LR_ITEM_DOOR)
    reach_m = 0.0; /* beside the swing, not beyond it */
  from_m = lr_vec2_along (from_m, in, reach_m + WALL_LINE_PX * floor->px / floor->view->scale);
  spans_m[0][0] = from_m;
  spans_m[0][1] = lr_vec2_along (from_m, along, item->along_m);
  spans_m[1][0] = lr_vec2_along (from_m, along, item->along_m + width_m);
  spans_m[1][1] = lr_vec2_along (from_m, along, length_m);

  for (int i = 0; i < 2; i++)
    {
      LrVec2 a = lr_floor_device (floor, spans_m[i][0]), b = lr_floor_device (floor, spans_m[i][1]), way;

      if (lr_vec2_distance (a, b) < 1.0)
        continue;
      way = lr_vec2_scale (lr_vec2_sub (b, a), 1.0 / lr_vec2_distance (a, b));
      cairo_move_to (cr, a.x, a.y);
      cairo_line_to (cr, b.x, b.y);
      lr_theme_set_color (cr, floor->theme->in_hand, 1.0);
      lr_theme_set_line (cr, floor->theme, LR_LINE_OUTLINE, LR_DASH_SOLID);
      cairo_stroke (cr);
      lr_floor_oblique (cr, a, way, OBLIQUE_PX);
      lr_floor_oblique (cr, b, way, OBLIQUE_PX);
      lr_labels_block_segment (floor->labels, a, b);
      add_distance (floor, a, b, lr_vec2_distance (spans_m[i][0], spans_m[i][1]));
    }
}

/* To whom or what it looks or aims */
static const LrPlaced *
find_partner (const LrFloor *floor)
{
  const LrItem *item = floor->in_hand->item;
  const LrCameraReading *camera = lr_study_find_camera (floor->study, item->id);

  if (camera != NULL)
    return camera->subject;
  if (item->kind == LR_ITEM_LIGHT)
    return lr_study_find_placed (floor->study, item->light.aims_at);
  if (item->kind == LR_ITEM_MICROPHONE && lr_microphone_stands (&item->microphone))
    return lr_study_find_placed (floor->study, item->microphone.aims_at);
  if (floor->in_hand == floor->study->subject)
    return floor->study->interviewer;
  if (floor->in_hand == floor->study->interviewer)
    return floor->study->subject;

  return NULL;
}

static void
draw_to_partner (const LrFloor   *floor,
                 const LrOutline *outline)
{
  const LrPlaced *partner = find_partner (floor);
  const LrCameraReading *camera = lr_study_find_camera (floor->study, floor->in_hand->item->id);
  double length_m;
  LrVec2 at, to, rim;
  cairo_t *cr = floor->cr;

  if (partner == NULL || partner == floor->in_hand)
    return;

  at = lr_floor_device (floor, floor->in_hand->at_m);
  to = lr_floor_device (floor, partner->at_m);
  length_m = camera != NULL && camera->has_subject ? camera->distance_m
                                                   : lr_vec2_distance (floor->in_hand->at_m, partner->at_m);
  if (lr_vec2_distance (at, to) < 20.0)
    return;

  rim = leave_outline (floor, outline, lr_vec2_scale (lr_vec2_sub (to, at), 1.0 / lr_vec2_distance (to, at)),
                       (LR_HALO_PX + 24.0) * floor->px);
  cairo_move_to (cr, at.x, at.y);
  cairo_line_to (cr, to.x, to.y);
  lr_theme_set_color (cr, floor->theme->in_hand, 0.6);
  lr_theme_set_line (cr, floor->theme, LR_LINE_HAIR, LR_DASH_SOLID);
  cairo_stroke (cr);
  add_distance (floor, rim, to, length_m);
}

/**
 * lr_floor_draw_distances:
 * @floor: a drawing
 *
 * From the item in hand to the two nearest walls and to its partner; of what is in a wall, to the wall's ends.
 */
void
lr_floor_draw_distances (const LrFloor *floor)
{
  LrOutline outline;

  if (floor->in_hand == NULL || !lr_floor_outline (floor->study, floor->view, floor->in_hand, &outline)
      || (floor->in_hand->item->kind == LR_ITEM_MICROPHONE && !lr_microphone_stands (&floor->in_hand->item->microphone)))
    return;

  /* a boom stands where its stand does */
  if (floor->in_hand->item->kind == LR_ITEM_MICROPHONE)
    outline = floor->in_hand->footprint;

  switch (lr_item_kind_info (floor->in_hand->item->kind)->place)
    {
    case LR_PLACE_FLOOR:
      draw_to_walls (floor, &outline);
      draw_to_partner (floor, &outline);
      break;
    case LR_PLACE_WALL:
      draw_along_wall (floor, &outline);
      break;
    case LR_PLACE_PATH:
    case LR_PLACE_NONE:
    default:
      break;
    }
}

/**
 * lr_floor_draw_hand:
 * @floor: a drawing
 *
 * Halo and knobs of the item in hand.
 */
void
lr_floor_draw_hand (const LrFloor *floor)
{
  LrOutline outline;

  cairo_save (floor->cr);
  if (floor->in_hand != NULL && lr_floor_outline (floor->study, floor->view, floor->in_hand, &outline))
    {
      draw_halo (floor, &outline);
      draw_knobs (floor, &outline);
    }
  cairo_restore (floor->cr);
}
