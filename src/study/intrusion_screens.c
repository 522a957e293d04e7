/* intrusion_screens.c - what may hide a thing from a lens: people, furniture, panels, walls
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "intrusions_private.h"

#define IN_FRONT_M 0.02
#define AT_WALL_M 0.05

/* Quick: whether a ray of length 1 passes through the ball that holds it */
static gboolean
may_meet (const LrScreen *screen,
          LrVec3          way)
{
  double along_m = lr_vec3_dot (screen->way_m, way), reach_m = screen->shape.reach_m;

  return lr_vec3_dot (screen->way_m, screen->way_m) - along_m * along_m < reach_m * reach_m;
}

static void
add_screen (LrLensView     *view,
            const LrPlaced *placed,
            const LrVolume *shape)
{
  LrScreen screen = { .placed = placed };

  if (!lr_frame_may_hold (view->projection, shape->centre_m, shape->reach_m, 0.0)
      || !lr_ball_bounds (view->projection, shape->centre_m, shape->reach_m, &screen.bounds))
    return;

  screen.shape = *shape;
  screen.way_m = lr_vec3_sub (shape->centre_m, view->projection->eye_m);
  screen.from_m = lr_vec3_length (screen.way_m) - shape->reach_m;
  g_array_append_val (view->screens, screen);
}

/**
 * lr_view_fill_screens:
 * @view: a view
 *
 * Finds what in the frame may hide other things: people, furniture, panels.
 */
void
lr_view_fill_screens (LrLensView *view)
{
  for (guint i = 0; i < view->study->placed->len; i++)
    {
      const LrPlaced *placed = lr_study_placed_at (view->study, i);
      LrVolume shapes[2];
      guint n = 0;

      if (placed->item->kind == LR_ITEM_FURNITURE)
        n = lr_furniture_slabs (placed, shapes);
      else if (placed->item->kind == LR_ITEM_PANEL)
        lr_panel_sheet (placed, &shapes[n++]);
      else if (placed->item->kind == LR_ITEM_PERSON && placed->body.stature_m > 0.0)
        {
          lr_person_head (placed, &shapes[n++]);
          lr_person_trunk (placed, &shapes[n++]);
        }

      for (guint j = 0; j < n; j++)
        add_screen (view, placed, &shapes[j]);
    }
  view->has_screens = TRUE;
}

static gboolean
is_wall_between (const LrLensView *view,
                 LrVec3            way,
                 double            to_m)
{
  const LrRoom *room = view->study->setup->room;
  LrVec2 flat = lr_vec3_flat (way);
  double length = lr_vec2_length (flat);
  LrRayHit hit;

  return length > 1e-9
         && lr_polygon_ray (room->corners_m, room->n_corners, lr_vec3_flat (view->projection->eye_m), flat, &hit)
         && hit.distance_m / length < to_m - AT_WALL_M;
}

/**
 * lr_view_is_hidden:
 * @view: a view that knows what is near
 * @has_walls: whether walls may hide it
 * @at: a place in the frame
 * @way: the way through it, of length 1
 * @to_m: how far the thing is on that way [m]
 *
 * Returns: whether something else is nearer
 */
gboolean
lr_view_is_hidden (const LrLensView *view,
                   gboolean          has_walls,
                   LrVec2            at,
                   LrVec3            way,
                   double            to_m)
{
  for (guint i = 0; i < view->n_near; i++)
    {
      const LrScreen *screen = &g_array_index (view->screens, LrScreen, view->near[i]);
      double enter_m;

      if (screen->from_m < to_m && at.x >= screen->bounds.x0 && at.x <= screen->bounds.x1 && at.y >= screen->bounds.y0
          && at.y <= screen->bounds.y1 && may_meet (screen, way) && lr_volume_ray (&screen->shape, view->projection->eye_m, way, &enter_m) && enter_m < to_m - IN_FRONT_M)
        return TRUE;
    }

  return has_walls && is_wall_between (view, way, to_m);
}

/**
 * lr_view_may_hide:
 * @view: a view
 * @placed: (nullable): what is looked at
 * @bounds: part of the frame
 * @to_m: nothing of the thing is farther from the lens [m]
 *
 * Notes what covers some of @bounds.
 *
 * Returns: whether anything does
 */
gboolean
lr_view_may_hide (LrLensView       *view,
                  const LrPlaced   *placed,
                  const LrFrameBox *bounds,
                  double            to_m)
{
  if (!view->has_screens)
    lr_view_fill_screens (view);

  view->n_near = 0;
  for (guint i = 0; i < view->screens->len && view->n_near < LR_MAX_NEAR; i++)
    {
      const LrScreen *screen = &g_array_index (view->screens, LrScreen, i);

      if (screen->placed != placed && screen->from_m < to_m && screen->bounds.x0 < bounds->x1 && screen->bounds.x1 > bounds->x0
          && screen->bounds.y0 < bounds->y1 && screen->bounds.y1 > bounds->y0)
        view->near[view->n_near++] = i;
    }

  return view->n_near > 0;
}

/**
 * lr_view_has_walls_between:
 * @view: a view
 * @placed: what is looked at
 * @reach_m: how far it reaches from its middle [m]
 *
 * In a room what one wall hides another thing from is a corner that juts in: without one near the way to the thing it is
 * not hidden.
 *
 * Returns: whether a wall may stand between; windows lie in theirs
 */
gboolean
lr_view_has_walls_between (const LrLensView *view,
                           const LrPlaced   *placed,
                           double            reach_m)
{
  const LrRoom *room = view->study->setup->room;
  LrVec2 eye_m = lr_vec3_flat (view->projection->eye_m);
  gsize n = room->n_corners;

  if (n < 3)
    return FALSE;
  if (!view->is_in_room) /* a wall of it is between, or a window: what is seen through that is not looked for */
    return TRUE;
  if (placed->item->kind != LR_ITEM_WINDOW && !lr_polygon_contains (room->corners_m, n, placed->at_m))
    return TRUE;

  for (gsize i = 0; !view->is_room_simple && i < n; i++)
    {
      LrVec2 a = room->corners_m[i], b = room->corners_m[(i + 1) % n], c = room->corners_m[(i + 2) % n];

      if (lr_vec2_cross (lr_vec2_sub (b, a), lr_vec2_sub (c, b)) < 0.0
          && lr_segment_distance_m (eye_m, placed->at_m, b, NULL) < reach_m)
        return TRUE;
    }

  return FALSE;
}
