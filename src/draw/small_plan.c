/* small_plan.c - a room as one of several side by side
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "small_plan.h"

#define MARGIN 8.0   /* device units: walls are drawn outside the corners */
#define TICK 5.0     /* half a stroke across the line's end */

/**
 * lr_small_plan_scale:
 * @comparison: rooms
 * @width: of the box that each is drawn in
 * @height: of it
 *
 * Returns: device units per metre; 0 without a room that is drawn
 */
double
lr_small_plan_scale (const LrComparison *comparison,
                     double              width,
                     double              height)
{
  double scale = HUGE_VAL;

  for (guint i = 0; i < comparison->rooms->len; i++)
    {
      const LrRoom *room = lr_comparison_room (comparison, i)->setup->room;
      LrVec2 low_m, high_m;

      if (room->n_corners < 3)
        continue;
      lr_polygon_bounds (room->corners_m, room->n_corners, &low_m, &high_m);
      scale = fmin (scale, fmin ((width - 2.0 * MARGIN) / fmax (high_m.x - low_m.x, 0.1), (height - 2.0 * MARGIN) / fmax (high_m.y - low_m.y, 0.1)));
    }

  return isfinite (scale) && scale > 0.0 ? scale : 0.0;
}

/* Along which the background is farthest */
static void
draw_line (cairo_t             *cr,
           const LrRoomFigures *room,
           const LrView        *view)
{
  LrVec2 from = lr_view_to_device (view, room->line_from_m), to = lr_view_to_device (view, room->line_to_m);
  double length = lr_vec2_distance (from, to);
  LrVec2 across;

  if (!isfinite (room->line_m) || length < 1.0)
    return;

  across = lr_vec2_scale (lr_vec2_left (lr_vec2_sub (to, from)), TICK / length);
  lr_theme_set_color (cr, view->theme->family_line[LR_FAMILY_SIGHT], 1.0);
  lr_theme_set_line (cr, view->theme, LR_LINE_OUTLINE, LR_DASH_SHORT);
  cairo_move_to (cr, from.x, from.y);
  cairo_line_to (cr, to.x, to.y);
  cairo_stroke (cr);
  lr_theme_set_line (cr, view->theme, LR_LINE_OUTLINE, LR_DASH_SOLID);
  cairo_move_to (cr, from.x - across.x, from.y - across.y);
  cairo_line_to (cr, from.x + across.x, from.y + across.y);
  cairo_move_to (cr, to.x - across.x, to.y - across.y);
  cairo_line_to (cr, to.x + across.x, to.y + across.y);
  cairo_stroke (cr);
}

/**
 * lr_small_plan_draw:
 * @cr: a cairo context
 * @room: a room
 * @theme: palette
 * @scale: device units per metre, see lr_small_plan_scale()
 * @width: of the box
 * @height: of it
 *
 * Draws nothing but the ground where no room is drawn.
 */
void
lr_small_plan_draw (cairo_t             *cr,
                    const LrRoomFigures *room,
                    const LrTheme       *theme,
                    double               scale,
                    double               width,
                    double               height)
{
  LrView view = { .scale = scale, .width = width, .height = height, .theme = theme, .is_small = TRUE };
  const LrRoom *walls = room->setup->room;
  LrVec2 low_m, high_m;

  if (walls->n_corners < 3 || !(scale > 0.0))
    {
      cairo_rectangle (cr, 0.0, 0.0, width, height);
      lr_theme_set_color (cr, theme->ground, 1.0);
      cairo_fill (cr);
      return;
    }

  lr_polygon_bounds (walls->corners_m, walls->n_corners, &low_m, &high_m);
  view.origin = lr_vec2 (0.5 * width - 0.5 * scale * (low_m.x + high_m.x), 0.5 * height + 0.5 * scale * (low_m.y + high_m.y));
  lr_floor_draw (cr, room->study->plan, room->study, NULL, &view);
  draw_line (cr, room, &view);
}
