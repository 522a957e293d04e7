/* small_plan.c - a room as one of several side by side
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * At its size there is place for walls, openings, furniture, people and cameras, these two as marks of their own: what is to be seen is
 * how much room there is, and how the set lies in it.
 */

#include "small_plan.h"

#define MARGIN 8.0   /* device units: walls are drawn outside the corners */
#define TICK 5.0     /* half a stroke across the line's end */
#define HEAD 3.5     /* radius of a person's mark */
#define LOOK 7.0     /* how far the stroke reaches that tells where they look */
#define CAMERA 8.0   /* from the tip of a camera's mark, which lies towards the subject, to its back */

static gboolean
is_drawn (const LrPlaced *placed)
{
  LrItemKind kind = placed->item->kind;

  return (kind == LR_ITEM_FURNITURE || kind == LR_ITEM_PERSON || kind == LR_ITEM_CAMERA) && lr_vec2_is_finite (placed->at_m);
}

static void
widen (LrVec2  at_m,
       LrVec2 *low_m,
       LrVec2 *high_m)
{
  *low_m = lr_vec2 (fmin (low_m->x, at_m.x), fmin (low_m->y, at_m.y));
  *high_m = lr_vec2 (fmax (high_m->x, at_m.x), fmax (high_m->y, at_m.y));
}

/* What stands out over the walls is not to be cut: a thing in a niche, a camera in the doorway */
static void
get_bounds (const LrRoomFigures *figures,
            LrVec2              *low_m,
            LrVec2              *high_m)
{
  const LrRoom *room = figures->setup->room;

  lr_polygon_bounds (room->corners_m, room->n_corners, low_m, high_m);
  for (guint i = 0; i < figures->study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (figures->study->placed, LrPlaced, i);

      if (!is_drawn (placed))
        continue;
      widen (placed->at_m, low_m, high_m);
      for (gsize k = 0; placed->item->kind == LR_ITEM_FURNITURE && placed->has_footprint && k < placed->footprint.n; k++)
        widen (placed->footprint.corner_m[k], low_m, high_m);
    }
}

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
      get_bounds (lr_comparison_room (comparison, i), &low_m, &high_m);
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

static void
draw_grid (cairo_t      *cr,
           const LrRoom *room,
           const LrView *view)
{
  LrVec2 low_m, high_m;

  lr_polygon_bounds (room->corners_m, room->n_corners, &low_m, &high_m);
  cairo_save (cr);
  for (gsize i = 0; i < room->n_corners; i++)
    {
      LrVec2 corner = lr_view_to_device (view, room->corners_m[i]);

      cairo_line_to (cr, corner.x, corner.y);
    }
  cairo_clip (cr);
  for (double x_m = ceil (low_m.x); x_m <= high_m.x; x_m += 1.0)
    {
      double x = lr_view_to_device (view, lr_vec2 (x_m, 0.0)).x;

      cairo_move_to (cr, x, 0.0);
      cairo_line_to (cr, x, view->height);
    }
  for (double y_m = ceil (low_m.y); y_m <= high_m.y; y_m += 1.0)
    {
      double y = lr_view_to_device (view, lr_vec2 (0.0, y_m)).y;

      cairo_move_to (cr, 0.0, y);
      cairo_line_to (cr, view->width, y);
    }
  lr_theme_set_color (cr, view->theme->grid, 1.0);
  lr_theme_set_line (cr, view->theme, LR_LINE_HAIR, LR_DASH_SOLID);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* From each camera to whom it is on */
static void
draw_axes (cairo_t       *cr,
           const LrStudy *study,
           const LrView  *view)
{
  lr_theme_set_color (cr, view->theme->family_line[LR_FAMILY_SIGHT], 1.0);
  lr_theme_set_line (cr, view->theme, LR_LINE_THIN, LR_DASH_SOLID);
  for (guint i = 0; i < study->cameras->len; i++)
    {
      const LrCameraReading *camera = &g_array_index (study->cameras, LrCameraReading, i);
      LrVec2 from, to;

      if (!camera->has_subject || camera->subject == NULL)
        continue;
      from = lr_view_to_device (view, camera->placed->at_m);
      to = lr_view_to_device (view, lr_vec3_flat (camera->subject->eyes_m));
      cairo_move_to (cr, from.x, from.y);
      cairo_line_to (cr, to.x, to.y);
    }
  cairo_stroke (cr);
}

/* On the device y runs down */
static LrVec2
device_way (double angle_rad)
{
  return lr_vec2 (cos (angle_rad), -sin (angle_rad));
}

static void
draw_person (cairo_t        *cr,
             const LrPlaced *person,
             const LrView   *view,
             gboolean        is_subject)
{
  LrVec2 at = lr_view_to_device (view, lr_vec3_flat (person->eyes_m)), nose = lr_vec2_along (at, device_way (person->facing_rad), LOOK);

  lr_theme_set_color (cr, view->theme->ink, 1.0);
  lr_theme_set_line (cr, view->theme, LR_LINE_OUTLINE, LR_DASH_SOLID);
  cairo_move_to (cr, at.x, at.y);
  cairo_line_to (cr, nose.x, nose.y);
  cairo_stroke (cr);
  cairo_arc (cr, at.x, at.y, HEAD, 0.0, 2.0 * LR_PI);
  if (is_subject)
    {
      cairo_fill (cr);
      return;
    }
  lr_theme_set_color (cr, view->theme->room, 1.0);
  cairo_fill_preserve (cr);
  lr_theme_set_color (cr, view->theme->ink, 1.0);
  cairo_stroke (cr);
}

static void
draw_camera (cairo_t        *cr,
             const LrPlaced *camera,
             const LrView   *view)
{
  LrVec2 way = device_way (camera->facing_rad), tip = lr_vec2_along (lr_view_to_device (view, camera->at_m), way, 0.5 * CAMERA);
  LrVec2 back = lr_vec2_along (tip, way, -CAMERA), aside = lr_vec2_scale (lr_vec2_left (way), 0.4 * CAMERA);

  cairo_move_to (cr, tip.x, tip.y);
  cairo_line_to (cr, back.x + aside.x, back.y + aside.y);
  cairo_line_to (cr, back.x - aside.x, back.y - aside.y);
  cairo_close_path (cr);
  lr_theme_set_color (cr, view->theme->family_line[LR_FAMILY_SIGHT], 1.0);
  cairo_fill (cr);
}

static void
draw_set (cairo_t       *cr,
          const LrStudy *study,
          const LrView  *view)
{
  draw_axes (cr, study, view);
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);

      if (!is_drawn (placed))
        continue;
      if (placed->item->kind == LR_ITEM_PERSON)
        draw_person (cr, placed, view, placed == study->subject);
      else if (placed->item->kind == LR_ITEM_CAMERA)
        draw_camera (cr, placed, view);
    }
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
  LrView view = { .scale = scale, .width = width, .height = height, .theme = theme };
  const LrRoom *walls = room->setup->room;
  LrVec2 low_m, high_m;

  cairo_rectangle (cr, 0.0, 0.0, width, height);
  lr_theme_set_color (cr, theme->ground, 1.0);
  cairo_fill (cr);
  if (walls->n_corners < 3 || !(scale > 0.0))
    return;

  get_bounds (room, &low_m, &high_m);
  view.origin = lr_vec2 (0.5 * width - 0.5 * scale * (low_m.x + high_m.x), 0.5 * height + 0.5 * scale * (low_m.y + high_m.y));
  lr_floor_draw_shell (cr, room->study->plan, room->study, &view);
  draw_grid (cr, walls, &view);
  draw_line (cr, room, &view);
  draw_set (cr, room->study, &view);
}
