/* floor_dimensions.c - how large the room is
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * ISO 129-1: thin dimension lines with oblique strokes, the figure above the line and readable from below or from the right,
 * extension lines that start clear of the wall and run past the line.
 */

#include "floor_layers.h"

#define LINE_OFF_PX 46.0   /* from the wall's outer face */
#define CLEAR_PX 2.5
#define PAST_PX 2.5
#define OBLIQUE_PX 6.3
#define TEXT_OFF_PX 9.0

/* A dimension between two device places, drawn so far off in a device direction */
static void
draw_dimension (const LrFloor *floor,
                LrVec2         a,
                LrVec2         b,
                LrVec2         off,
                double         face,
                double         length_m)
{
  g_autofree char *text = lr_length_format (length_m, floor->view->units);
  double line = face + LINE_OFF_PX * floor->px;
  LrVec2 from = lr_vec2_along (a, off, line), to = lr_vec2_along (b, off, line);
  LrVec2 way = lr_vec2_scale (lr_vec2_sub (to, from), 1.0 / MAX (lr_vec2_distance (from, to), 1e-6));
  double angle = lr_floor_reading_angle_rad (from, to);
  LrVec2 up = lr_vec2 (sin (angle), -cos (angle));
  LrVec2 place = lr_vec2_along (lr_vec2_scale (lr_vec2_add (from, to), 0.5), up, TEXT_OFF_PX * floor->px);
  cairo_t *cr = floor->cr;
  LrLabel label = {
    .rank = LR_LABEL_DIMENSION,
    .text = text,
    .style = { .size = floor->theme->type_size[LR_TYPE_NOTE] },
    .color = floor->theme->ink2,
    .halo = floor->theme->ground,
    .has_halo = TRUE,
    .angle_rad = angle,
  };

  lr_theme_set_color (cr, floor->theme->ink2, 1.0);
  for (int end = 0; end < 2; end++)
    {
      LrVec2 at = end == 0 ? a : b;
      LrVec2 start = lr_vec2_along (at, off, face + CLEAR_PX * floor->px);
      LrVec2 stop = lr_vec2_along (at, off, line + PAST_PX * floor->px);

      cairo_move_to (cr, start.x, start.y);
      cairo_line_to (cr, stop.x, stop.y);
    }
  lr_theme_set_line (cr, floor->theme, LR_LINE_HAIR, LR_DASH_SOLID);
  cairo_stroke (cr);

  cairo_move_to (cr, from.x, from.y);
  cairo_line_to (cr, to.x, to.y);
  lr_theme_set_line (cr, floor->theme, LR_LINE_THIN, LR_DASH_SOLID);
  cairo_stroke (cr);
  lr_theme_set_line (cr, floor->theme, LR_LINE_OUTLINE, LR_DASH_SOLID);
  lr_floor_oblique (cr, from, way, OBLIQUE_PX);
  lr_floor_oblique (cr, to, way, OBLIQUE_PX);

  lr_labels_add_at (floor->labels, &label, &place, 1);
}

/**
 * lr_floor_draw_dimensions:
 * @floor: a drawing
 *
 * The room's extent below it and on its left.
 */
void
lr_floor_draw_dimensions (const LrFloor *floor)
{
  const LrRoom *room = floor->room;
  double face = LR_WALL_M * floor->view->scale;
  LrVec2 low_m, high_m, low, high;

  if (!floor->view->has_dimensions || !floor->has_base || room->n_corners < 3)
    return;

  low_m = high_m = room->corners_m[0];
  for (gsize i = 1; i < room->n_corners; i++)
    {
      low_m = lr_vec2 (MIN (low_m.x, room->corners_m[i].x), MIN (low_m.y, room->corners_m[i].y));
      high_m = lr_vec2 (MAX (high_m.x, room->corners_m[i].x), MAX (high_m.y, room->corners_m[i].y));
    }
  low = lr_floor_device (floor, low_m);
  high = lr_floor_device (floor, high_m);

  cairo_save (floor->cr);
  draw_dimension (floor, low, lr_vec2 (high.x, low.y), lr_vec2 (0.0, 1.0), face, high_m.x - low_m.x);
  draw_dimension (floor, low, lr_vec2 (low.x, high.y), lr_vec2 (-1.0, 0.0), face, high_m.y - low_m.y);
  cairo_restore (floor->cr);
}
