/* washes.c - thin colour over a part of the floor
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Shapes are cut by geometry where the room allows it: cairo's clips cost twice as much in software, which a drag would feel.
 * A wash that fades is laid in strips of one colour each, so narrow that a screen of 8 bits hardly has a step between them: in
 * software a gradient costs five times as much to paint.
 */

#include "washes.h"

#include <string.h>

/* Cuts by lines never leave more than two corners for one: a run of corners beyond the line becomes two on it */
#define MOST_CORNERS(n) (4 * (n) + 4)

/* The difference of alpha from strip to strip: a step of 2 in the channel that the strongest wash changes most */
#define STRIP_ALPHA 0.012

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

/* Which way a convex polygon turns: 1 anticlockwise, -1 clockwise; 0: it is not convex */
static int
convex_turn (const LrVec2 *corners,
             gsize         n)
{
  gboolean has_left = FALSE, has_right = FALSE;

  for (gsize i = 0; i < n; i++)
    {
      LrVec2 a = corners[i], b = corners[(i + 1) % n], c = corners[(i + 2) % n];
      double turn = lr_vec2_cross (lr_vec2_sub (b, a), lr_vec2_sub (c, b));

      has_left = has_left || turn > 1e-9;
      has_right = has_right || turn < -1e-9;
    }

  return has_left == has_right ? 0 : has_left ? 1 : -1;
}

/* (transfer full): the part of any polygon inside a convex one that turns as @turn says. Where it falls into pieces, they hang
 * together by edges that lie on each other, which fill nothing. */
static LrVec2 *
cut (const LrVec2 *convex,
     gsize         n_convex,
     int           turn,
     const LrVec2 *corners,
     gsize         n,
     gsize        *n_inside)
{
  LrVec2 *from = g_new (LrVec2, MOST_CORNERS (n + n_convex)), *to = g_new (LrVec2, MOST_CORNERS (n + n_convex));

  memcpy (from, corners, n * sizeof *from);
  for (gsize i = 0; i < n_convex && n >= 3; i++)
    {
      LrVec2 inward = lr_vec2_scale (lr_vec2_left (lr_vec2_sub (convex[(i + 1) % n_convex], convex[i])), turn), *swap = from;

      n = cut_half (from, n, convex[i], inward, to);
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

/* A wash whose alpha runs from one value to another */
typedef struct
{
  LrVec2  from_m, to_m;
  LrColor color;
  double  from_alpha, to_alpha;
} Fade;

/* The strips lie across the line from one place to the other; the first and the last reach beyond its ends */
static void
fill_strips (const LrFloor *floor,
             const LrVec2  *corners_m,
             gsize          n,
             const Fade    *fade)
{
  LrVec2 way_m = lr_vec2_sub (fade->to_m, fade->from_m);
  guint n_strips = (guint) ceil (fabs (fade->to_alpha - fade->from_alpha) / STRIP_ALPHA);
  g_autofree LrVec2 *rest_m = g_new (LrVec2, MOST_CORNERS (n)), *strip_m = g_new (LrVec2, MOST_CORNERS (n));

  for (guint i = 0; i < n_strips; i++)
    {
      double share = (i + 0.5) / n_strips;
      gsize n_strip = n;

      memcpy (strip_m, corners_m, n * sizeof *strip_m);
      if (i > 0)
        {
          n_strip = cut_half (strip_m, n_strip, lr_vec2_along (fade->from_m, way_m, (double) i / n_strips), way_m, rest_m);
          memcpy (strip_m, rest_m, n_strip * sizeof *strip_m);
        }
      if (i + 1 < n_strips)
        {
          n_strip = cut_half (strip_m, n_strip, lr_vec2_along (fade->from_m, way_m, (i + 1.0) / n_strips),
                              lr_vec2_scale (way_m, -1.0), rest_m);
          memcpy (strip_m, rest_m, n_strip * sizeof *strip_m);
        }

      lr_theme_set_color (floor->cr, fade->color, fade->from_alpha + share * (fade->to_alpha - fade->from_alpha));
      fill (floor, strip_m, n_strip);
    }
}

/* A wash in motion has plain edges: they are as faint as it is, and soft ones cost more than the wash */
static void
fill_faded (const LrFloor *floor,
            const LrVec2  *corners_m,
            gsize          n,
            const Fade    *fade)
{
  cairo_antialias_t antialias = cairo_get_antialias (floor->cr);

  if (n < 3)
    return;

  if (floor->view->only != NULL)
    cairo_set_antialias (floor->cr, CAIRO_ANTIALIAS_NONE);
  if (fade->from_alpha != fade->to_alpha)
    fill_strips (floor, corners_m, n, fade);
  else
    {
      lr_theme_set_color (floor->cr, fade->color, fade->from_alpha);
      fill (floor, corners_m, n);
    }
  cairo_set_antialias (floor->cr, antialias);
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
  const Fade fade = { from_m, to_m, color, from_alpha, to_alpha };
  int within_turn = n_within >= 3 ? convex_turn (within_m, n_within) : 0;
  int own_turn = n_within >= 3 && within_turn == 0 ? convex_turn (corners_m, n) : 0;

  if (within_turn != 0 || own_turn != 0)
    {
      gsize n_inside;
      g_autofree LrVec2 *inside_m = within_turn != 0 ? cut (within_m, n_within, within_turn, corners_m, n, &n_inside)
                                                     : cut (corners_m, n, own_turn, within_m, n_within, &n_inside);

      fill_faded (floor, inside_m, n_inside, &fade);
      return;
    }

  cairo_save (floor->cr);
  for (gsize i = 0; i < n_within; i++)
    lr_floor_line_to (floor, within_m[i]);
  if (n_within >= 3)
    cairo_clip (floor->cr);
  fill_faded (floor, corners_m, n, &fade);
  cairo_restore (floor->cr);
}
