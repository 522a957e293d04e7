/* intrusion_levels.c - ceiling and floor in the picture
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "intrusions_private.h"

#define PLANE_ACROSS 8
#define PLANE_DOWN 4
#define MAX_ROOM_CORNERS 24
#define NEAR_M 0.01
#define LEAST_PLANE 0.002

/* Cuts the level polygon at the lens and by the frame; returns its corners */
static size_t
see_level (const LrLensView *view,
           double            level_m,
           LrVec2           *seen)
{
  const LrRoom *room = view->study->setup->room;
  const LrProjection *p = view->projection;
  LrVec2 corner[2 * MAX_ROOM_CORNERS];
  size_t n = 0;

  for (size_t i = 0; i < room->n_corners; i++)
    {
      LrVec3 a = lr_vec2_raise (room->corners_m[i], level_m);
      LrVec3 b = lr_vec2_raise (room->corners_m[(i + 1) % room->n_corners], level_m);
      double from = lr_vec3_dot (lr_vec3_sub (a, p->eye_m), p->forward) - NEAR_M;
      double to = lr_vec3_dot (lr_vec3_sub (b, p->eye_m), p->forward) - NEAR_M;
      LrVec3 cut = lr_vec3_along (a, lr_vec3_sub (b, a), from / (from - to));
      LrFramePoint place;

      if (from >= 0.0 && lr_projection_point (p, a, &place))
        corner[n++] = lr_vec2 (place.across, place.down);
      if ((from >= 0.0) != (to >= 0.0) && lr_projection_point (p, cut, &place))
        corner[n++] = lr_vec2 (place.across, place.down);
    }

  return lr_frame_clip (corner, n, &LR_WHOLE_FRAME, seen, LR_SILHOUETTE_MAX);
}

/**
 * lr_view_look_at_level:
 * @view: a view from inside the room
 * @look: scratch
 * @part: %LR_INTRUDER_CEILING or %LR_INTRUDER_FLOOR
 * @level_m: its height [m]
 *
 * Adds what the frame shows of it, by a net of rays. The ceiling of a room of very many corners is not looked for.
 */
void
lr_view_look_at_level (LrLensView    *view,
                       LrLook        *look,
                       LrIntruderPart part,
                       double         level_m)
{
  LrSilhouette seen;
  LrFrameBox bounds;
  double height_m = level_m - view->projection->eye_m.z;
  guint n = 0, n_seen = 0;

  if (view->study->setup->room->n_corners > MAX_ROOM_CORNERS)
    return;

  seen.n = see_level (view, level_m, seen.corner);
  if (seen.n < 3 || lr_silhouette_area (&seen) < LEAST_PLANE)
    return;

  lr_look_begin (view, NULL, look);
  bounds = lr_silhouette_bounds (&seen);
  lr_view_may_hide (view, NULL, &bounds, HUGE_VAL);
  for (int i = 0; i < PLANE_ACROSS * PLANE_DOWN; i++)
    {
      LrVec2 at = { bounds.x0 + (i % PLANE_ACROSS + 0.5) / PLANE_ACROSS * (bounds.x1 - bounds.x0),
                    bounds.y0 + (i / PLANE_ACROSS + 0.5) / PLANE_DOWN * (bounds.y1 - bounds.y0) };
      LrVec3 way = lr_projection_ray (view->projection, at.x, at.y);
      double to_m = height_m / way.z;

      if (!(to_m > 0.0) || !lr_polygon_contains (seen.corner, seen.n, at))
        continue;

      n++;
      if (lr_view_is_hidden (view, !view->is_room_simple, at, way, to_m))
        continue;

      n_seen++;
      lr_look_note_place (look, view->projection, at, to_m * lr_vec3_dot (way, view->projection->forward));
    }
  if (n_seen == 0)
    return;

  look->intrusion.part = part;
  look->intrusion.share = lr_silhouette_area (&seen) * n_seen / n;
  look->intrusion.is_partly_hidden = n_seen < n;
  if (n_seen == n)
    look->bounds = bounds;
  lr_look_choose_edge (look, view->projection);
  look->intrusion.edge = part == LR_INTRUDER_CEILING ? LR_BORDER_TOP : LR_BORDER_BOTTOM;
  look->intrusion.is_cut = TRUE;
  lr_look_keep_outline (look, view->study, &seen);
  g_array_append_val (view->study->intrusions, look->intrusion);
}
