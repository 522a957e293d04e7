/* floor_walls.c - the cut walls and what is in them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The inner face is the truth; the band outside it is a convention, since nobody measures how thick a wall is.
 */

#include "floor_layers.h"

/* A sharp corner's band is cut where it would run further than this many bands */
#define MITRE_MOST 3.0

/**
 * lr_room_outer_corners:
 * @room: a room with corners, anticlockwise
 * @outside_m: how far outside its walls [m]
 *
 * Each corner moves out along the middle of its angle until it stands @outside_m from both its walls (closed form: the
 * bisector of the outward normals a and b is (a + b) / (1 + a · b)).
 *
 * Returns: (transfer full): as many corners
 */
LrVec2 *
lr_room_outer_corners (const LrRoom *room,
                       double        outside_m)
{
  gsize n = room->n_corners;
  LrVec2 *outer = g_new (LrVec2, n);

  for (gsize i = 0; i < n; i++)
    {
      LrVec2 before, after, a, b, sum;
      double spread, length;

      outer[i] = room->corners_m[i];
      if (!lr_room_wall (room, (int) ((i + n - 1) % n), NULL, &before, NULL) || !lr_room_wall (room, (int) i, NULL, &after, NULL))
        continue;

      a = lr_vec2_scale (lr_vec2_left (before), -1.0);
      b = lr_vec2_scale (lr_vec2_left (after), -1.0);
      sum = lr_vec2_add (a, b);
      spread = MAX (1.0 + lr_vec2_dot (a, b), 1e-3);
      length = MIN (lr_vec2_length (sum) / spread, MITRE_MOST);
      if (lr_vec2_length (sum) > 1e-6)
        outer[i] = lr_vec2_along (outer[i], lr_vec2_scale (sum, 1.0 / lr_vec2_length (sum)), length * outside_m);
    }

  return outer;
}

static void
trace_corners (const LrFloor *floor,
               const LrVec2  *corners_m,
               gsize          n)
{
  lr_floor_move_to (floor, corners_m[0]);
  for (gsize i = 1; i < n; i++)
    lr_floor_line_to (floor, corners_m[i]);
  cairo_close_path (floor->cr);
}

static void
draw_band (const LrFloor *floor)
{
  g_autofree LrVec2 *outer_m = lr_room_outer_corners (floor->room, LR_WALL_M);
  cairo_t *cr = floor->cr;

  trace_corners (floor, outer_m, floor->room->n_corners);
  lr_floor_trace_room (floor);
  cairo_set_fill_rule (cr, CAIRO_FILL_RULE_EVEN_ODD);
  lr_theme_set_color (cr, floor->theme->wall, 1.0);
  cairo_fill (cr);

  trace_corners (floor, outer_m, floor->room->n_corners);
  lr_theme_set_color (cr, floor->theme->ink, 1.0);
  lr_theme_set_line (cr, floor->theme, LR_LINE_THIN, LR_DASH_SOLID);
  cairo_stroke (cr);

  lr_floor_trace_room (floor);
  lr_theme_set_line (cr, floor->theme, LR_LINE_WALL, LR_DASH_SOLID);
  cairo_stroke (cr);
}

/**
 * lr_floor_draw_walls:
 * @floor: a drawing
 *
 * The band, its inner face heavy.
 */
void
lr_floor_draw_walls (const LrFloor *floor)
{
  if (!floor->has_base || floor->room->n_corners < 3)
    return;

  cairo_save (floor->cr);
  draw_band (floor);
  cairo_restore (floor->cr);
}
