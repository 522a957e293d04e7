/* intrusion_levels.c - ceiling and floor in the picture
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "intrusions_private.h"

#define COLUMNS 16
#define PLACES 8       /* in each */
#define COARSER 2      /* as many times fewer of both for the floor, which is no fault */
#define HALVINGS 6     /* of the way from a place that is seen to one that is not */
#define INWARD 1e-3    /* of the frame: rays along the very edge may miss */
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

/* What is looked for through a column of the frame */
typedef struct
{
  const LrLensView   *view;
  const LrSilhouette *seen;
  double              height_m; /* of the level over the lens */
  gboolean            is_over;  /* its far end is the lower one in the frame */
} Level;

static gboolean
is_seen_at (const Level *level,
            LrVec2       at,
            double      *depth_m)
{
  const LrLensView *view = level->view;
  LrVec3 way = lr_projection_ray (view->projection, at.x, at.y);
  double to_m = level->height_m / way.z;

  if (!(to_m > 0.0) || !lr_polygon_contains (level->seen->corner, level->seen->n, at)
      || lr_view_is_hidden (view, !view->is_room_simple, at, way, to_m))
    return FALSE;

  *depth_m = to_m * lr_vec3_dot (way, view->projection->forward);
  return TRUE;
}

/* Where a column goes into the outline and where it leaves it for good; a little inwards */
static gboolean
find_column (const LrSilhouette *seen,
             double              x,
             double             *from,
             double             *to)
{
  *from = HUGE_VAL;
  *to = -HUGE_VAL;
  for (size_t i = 0; i < seen->n; i++)
    {
      LrVec2 a = seen->corner[i], b = seen->corner[(i + 1) % seen->n];
      double y = a.y + (x - a.x) / (b.x - a.x) * (b.y - a.y);

      if ((a.x <= x) == (b.x <= x))
        continue;
      *from = MIN (*from, y + INWARD);
      *to = MAX (*to, y - INWARD);
    }

  return *from < *to;
}

/* From a place that is seen towards one that may not be: the last that is */
static void
note_end (const Level *level,
          LrLook      *look,
          LrVec2       at,
          double       hidden_y)
{
  const LrProjection *p = level->view->projection;
  LrVec2 end = { at.x, hidden_y };
  double depth_m;

  if (is_seen_at (level, end, &depth_m))
    {
      lr_look_note_place (look, p, end, depth_m);
      return;
    }

  for (int i = 0; i < HALVINGS; i++)
    {
      double y = 0.5 * (at.y + hidden_y);

      if (is_seen_at (level, lr_vec2 (at.x, y), &depth_m))
        {
          at.y = y;
          lr_look_note_place (look, p, at, depth_m);
        }
      else
        hidden_y = y;
    }
}

/* Places down a column, and how far the level reaches in it. Returns the length that is seen; @length: of the column */
static double
look_down (const Level *level,
           LrLook      *look,
           double       x,
           double      *length)
{
  int n_places = level->is_over ? PLACES : PLACES / COARSER;
  double from, to, step, end = NAN, depth_m;
  guint n = 0, n_seen = 0;

  *length = 0.0;
  if (!find_column (level->seen, x, &from, &to))
    return 0.0;

  step = (to - from) / n_places;
  for (int j = 0; j < n_places; j++)
    {
      LrVec2 at = { x, level->is_over ? from + (j + 0.5) * step : to - (j + 0.5) * step };

      if (!lr_polygon_contains (level->seen->corner, level->seen->n, at))
        continue;
      n++;
      if (!is_seen_at (level, at, &depth_m))
        continue;
      n_seen++;
      lr_look_note_place (look, level->view->projection, at, depth_m);
      end = at.y;
    }
  *length = step * n;
  if (n_seen == 0)
    return 0.0;

  note_end (level, look, lr_vec2 (x, end), level->is_over ? MIN (end + step, to) : MAX (end - step, from));
  return step * n_seen;
}

/* Columns all over the outline, and through its corners, where it may reach farthest. Returns the share of it that is seen */
static double
look_all_over (const Level      *level,
               LrLook           *look,
               const LrFrameBox *bounds)
{
  int n_columns = level->is_over ? COLUMNS : COLUMNS / COARSER;
  double sum = 0.0, sum_seen = 0.0, length;

  for (int i = 0; i < n_columns; i++)
    {
      sum_seen += look_down (level, look, bounds->x0 + (i + 0.5) / n_columns * (bounds->x1 - bounds->x0), &length);
      sum += length;
    }
  for (size_t i = 0; level->is_over && i < level->seen->n; i++)
    {
      double x = level->seen->corner[i].x;

      look_down (level, look, x + (x < 0.5 * (bounds->x0 + bounds->x1) ? INWARD : -INWARD), &length);
    }

  return sum > 0.0 ? sum_seen / sum : 0.0;
}

/* Nothing hides any of it */
static void
note_corners (const Level *level,
              LrLook      *look)
{
  const LrProjection *p = level->view->projection;

  for (size_t i = 0; i < level->seen->n; i++)
    {
      LrVec3 way = lr_projection_ray (p, level->seen->corner[i].x, level->seen->corner[i].y);

      lr_look_note_place (look, p, level->seen->corner[i], level->height_m / way.z * lr_vec3_dot (way, p->forward));
    }
}

/**
 * lr_view_look_at_level:
 * @view: a view from inside the room
 * @look: scratch
 * @part: %LR_INTRUDER_CEILING or %LR_INTRUDER_FLOOR
 * @level_m: its height [m]
 *
 * Adds what the frame shows of it: by its outline, or, where something may hide it, by rays down columns of the frame. The
 * ceiling of a room of very many corners is not looked for.
 */
void
lr_view_look_at_level (LrLensView    *view,
                       LrLook        *look,
                       LrIntruderPart part,
                       double         level_m)
{
  LrSilhouette seen;
  Level level = { .view = view, .seen = &seen, .height_m = level_m - view->projection->eye_m.z, .is_over = part == LR_INTRUDER_CEILING };
  LrFrameBox bounds;
  double share = 1.0;

  if (view->study->setup->room->n_corners > MAX_ROOM_CORNERS)
    return;

  seen.n = see_level (view, level_m, seen.corner);
  if (seen.n < 3 || lr_silhouette_area (&seen) < LEAST_PLANE)
    return;

  lr_look_begin (view, NULL, look);
  bounds = lr_silhouette_bounds (&seen);
  if (lr_view_may_hide (view, NULL, &bounds, HUGE_VAL) || !view->is_room_simple)
    share = look_all_over (&level, look, &bounds);
  else
    note_corners (&level, look);
  if (!(share > 0.0))
    return;

  look->intrusion.part = part;
  look->intrusion.share = lr_silhouette_area (&seen) * share;
  look->intrusion.is_partly_hidden = share < 1.0;
  lr_look_choose_edge (look, view->projection);
  look->intrusion.edge = part == LR_INTRUDER_CEILING ? LR_BORDER_TOP : LR_BORDER_BOTTOM;
  look->intrusion.is_cut = TRUE;
  lr_look_keep_outline (look, view->study, &seen);
  g_array_append_val (view->study->intrusions, look->intrusion);
}
