/* washes.c - thin colour over a part of the floor
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Shapes are cut by geometry where the room allows it, and a wash fades along a line: cairo's clips and round gradients cost
 * twice as much in software, which a drag would feel.
 */

#include "washes.h"

#include <string.h>

/* Cuts by lines never leave more than two corners for one: a run of corners beyond the line becomes two on it */
#define MOST_CORNERS(n) (4 * (n) + 4)

/* The part of a polygon on the side of a line that its normal points to (Sutherland and Hodgman 1974) */
static gsize
cut_half (const LrVec2 *corners,
          gsize         n,
          LrVec2        on_line,
          LrVec2        normal,
          LrVec2       *out)
{
  gsize n_out = 0;

  for (gsize i = 0; i < n; i++)
    {
      LrVec2 from = corners[i], to = corners[(i + 1) % n];
      double a = lr_vec2_dot (lr_vec2_sub (from, on_line), normal), b = lr_vec2_dot (lr_vec2_sub (to, on_line), normal);

      if (a >= 0.0)
        out[n_out++] = from;
      if ((a < 0.0) != (b < 0.0))
        out[n_out++] = lr_vec2_along (from, lr_vec2_sub (to, from), a / (a - b));
    }

  return n_out;
}

static void
set_source (cairo_t *cr,
            LrVec2   from,
            LrVec2   to,
            LrColor  color,
            double   from_alpha,
            double   to_alpha)
{
  cairo_pattern_t *wash;

  if (from_alpha == to_alpha)
    {
      lr_theme_set_color (cr, color, from_alpha);
      return;
    }

  wash = cairo_pattern_create_linear (from.x, from.y, to.x, to.y);
  cairo_pattern_add_color_stop_rgba (wash, 0.0, color.r, color.g, color.b, from_alpha);
  cairo_pattern_add_color_stop_rgba (wash, 1.0, color.r, color.g, color.b, to_alpha);
  cairo_set_source (cr, wash);
  cairo_pattern_destroy (wash);
}

static gboolean
is_convex (const LrVec2 *corners,
           gsize         n)
{
  for (gsize i = 0; i < n; i++)
    {
      LrVec2 a = corners[i], b = corners[(i + 1) % n], c = corners[(i + 2) % n];

      if (lr_vec2_cross (lr_vec2_sub (b, a), lr_vec2_sub (c, b)) < -1e-9)
        return FALSE;
    }

  return TRUE;
}

/* (transfer full): the part of a polygon inside a convex one */
static LrVec2 *
cut (const LrVec2 *within,
     gsize         n_within,
     const LrVec2 *corners,
     gsize         n,
     gsize        *n_inside)
{
  LrVec2 *from = g_new (LrVec2, MOST_CORNERS (n + n_within)), *to = g_new (LrVec2, MOST_CORNERS (n + n_within));

  memcpy (from, corners, n * sizeof *from);
  for (gsize i = 0; i < n_within && n >= 3; i++)
    {
      LrVec2 inward = lr_vec2_left (lr_vec2_sub (within[(i + 1) % n_within], within[i])), *swap = from;

      n = cut_half (from, n, within[i], inward, to);
      from = to;
      to = swap;
    }
  g_free (to);
  *n_inside = n;

  return from;
}

/**
 * lr_wash_trace_inside:
 * @floor: a drawing
 * @points_m: a closed line [m]
 * @n: how many points
 *
 * Adds the parts of the line inside the room to the path, broken where it leaves the room.
 */
void
lr_wash_trace_inside (const LrFloor *floor,
                      const LrVec2  *points_m,
                      gsize          n)
{
  const LrRoom *room = floor->room;
  gboolean has_room = room->n_corners >= 3, was_inside = FALSE;

  for (gsize i = 0; i <= n; i++)
    {
      LrVec2 at_m = points_m[i % n], before_m = points_m[(i + n - 1) % n];
      gboolean is_inside = !has_room || lr_polygon_contains (room->corners_m, room->n_corners, at_m);
      LrRayHit hit;

      if (i > 0 && is_inside != was_inside
          && lr_polygon_ray (room->corners_m, room->n_corners, is_inside ? at_m : before_m,
                             lr_vec2_sub (is_inside ? before_m : at_m, is_inside ? at_m : before_m), &hit))
        {
          if (is_inside)
            lr_floor_move_to (floor, hit.at_m);
          else
            lr_floor_line_to (floor, hit.at_m);
        }
      if (is_inside && i > 0)
        lr_floor_line_to (floor, at_m);
      else if (is_inside)
        lr_floor_move_to (floor, at_m);
      was_inside = is_inside;
    }
}

static void
fill (const LrFloor *floor,
      const LrVec2  *corners_m,
      gsize          n)
{
  for (gsize i = 0; i < n; i++)
    lr_floor_line_to (floor, corners_m[i]);
  cairo_fill (floor->cr);
}

/**
 * lr_wash_fill_within:
 * @floor: a drawing
 * @within_m: a polygon [m], anticlockwise
 * @n_within: how many corners; 0: no bounds
 * @corners_m: a polygon [m]
 * @n: how many corners
 * @from_m: where the wash begins [m]
 * @to_m: where it has its other value [m]; it fades evenly from the one to the other
 * @color: its colour
 * @from_alpha: at @from_m
 * @to_alpha: at @to_m and beyond
 *
 * Fills what the two polygons share.
 */
void
lr_wash_fill_within (const LrFloor *floor,
                     const LrVec2  *within_m,
                     gsize          n_within,
                     const LrVec2  *corners_m,
                     gsize          n,
                     LrVec2         from_m,
                     LrVec2         to_m,
                     LrColor        color,
                     double         from_alpha,
                     double         to_alpha)
{
  set_source (floor->cr, lr_floor_device (floor, from_m), lr_floor_device (floor, to_m), color, from_alpha, to_alpha);
  if (n_within >= 3 && is_convex (within_m, n_within))
    {
      gsize n_inside;
      g_autofree LrVec2 *inside_m = cut (within_m, n_within, corners_m, n, &n_inside);

      fill (floor, inside_m, n_inside);
      return;
    }

  cairo_save (floor->cr);
  for (gsize i = 0; i < n_within; i++)
    lr_floor_line_to (floor, within_m[i]);
  if (n_within >= 3)
    cairo_clip (floor->cr);
  fill (floor, corners_m, n);
  cairo_restore (floor->cr);
}
