/* wedge.c - what is seen of a room between two directions
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The directions to the room's corners divide the wedge into sectors. No corner lies within a
 * sector, so one and the same wall is the first to be met all over it: the ray down its middle
 * finds that wall, and the sector's two edges meet it where the sector ends. Where one wall hides
 * another the ends of neighbouring sectors lie on one ray, the nearer being the corner that hides:
 * both are corners of the result.
 *
 * Quadratic in the number of corners, without memory of its own.
 */

#include "polygon.h"

#include "domain.h"

#define SAME_M 1e-9
#define SAME_RAD 1e-9

typedef struct
{
  LrVec2 *corners_m;
  size_t  n, max;
  size_t  edge;  /* of the room, that was met last; its number of corners if none was */
  size_t  begun; /* corners up to the one where it began */
  bool    is_full;
} Shape;

static void
add_corner (Shape *shape,
            LrVec2 corner_m)
{
  if (shape->n > 0 && lr_vec2_distance (shape->corners_m[shape->n - 1], corner_m) <= SAME_M)
    return;

  if (shape->n == shape->max)
    shape->is_full = true;
  else
    shape->corners_m[shape->n++] = corner_m;
}

/* Angle from the right edge of the wedge to the next corner beyond at_rad, or to its left edge */
static double
next_corner_rad (const LrVec2 *room_m,
                 size_t        n,
                 LrVec2        apex_m,
                 LrVec2        right,
                 double        at_rad,
                 double        left_rad)
{
  double next_rad = left_rad;

  for (size_t i = 0; i < n; i++)
    {
      LrVec2 way = lr_vec2_sub (room_m[i], apex_m);
      double angle_rad = atan2 (lr_vec2_cross (right, way), lr_vec2_dot (right, way));

      if (lr_vec2_length (way) > SAME_M && angle_rad > at_rad + SAME_RAD && angle_rad < next_rad)
        next_rad = angle_rad;
    }

  return next_rad;
}

/* Where the direction meets the wall from a to b, or the end of the wall that is nearer to it */
static LrVec2
meet_wall (LrVec2 a_m,
           LrVec2 b_m,
           LrVec2 apex_m,
           LrVec2 direction)
{
  LrVec2 way = lr_vec2_sub (b_m, a_m);
  double share = lr_vec2_cross (lr_vec2_sub (a_m, apex_m), direction) / lr_vec2_cross (direction, way);

  return lr_vec2_along (a_m, way, fmin (fmax (share, 0.0), 1.0));
}

/* The part of the first wall between two directions; the apex, if the room is not seen there */
static void
add_sector (Shape        *shape,
            const LrVec2 *room_m,
            size_t        n,
            LrVec2        apex_m,
            LrVec2        right,
            LrVec2        left)
{
  LrRayHit hit;

  if (lr_polygon_ray (room_m, n, apex_m, lr_vec2_add (right, left), &hit))
    {
      LrVec2 a_m = room_m[hit.edge];
      LrVec2 b_m = room_m[hit.edge + 1 < n ? hit.edge + 1 : 0];

      if (hit.edge == shape->edge) /* the wall goes on past a corner that it hides */
        {
          shape->n = shape->begun;
        }
      else
        {
          add_corner (shape, meet_wall (a_m, b_m, apex_m, right));
          shape->edge = hit.edge;
          shape->begun = shape->n;
        }
      add_corner (shape, meet_wall (a_m, b_m, apex_m, left));
    }
  else
    {
      add_corner (shape, apex_m);
      shape->edge = n;
    }
}

/**
 * lr_wedge_in_room:
 * @room_m: (array length=n): the corners of the room, anticlockwise [m]; it may be concave
 * @n: how many, >= 3
 * @apex_m: where the lens is [m]
 * @right: direction of the wedge's right edge, of any length but 0
 * @left: direction of its left edge, less than pi anticlockwise of @right
 * @out_m: (out) (array length=max): the corners of what is seen, the apex first, then from right to
 *   left [m]
 * @max: room in @out_m; 2 n + 3 are always enough
 *
 * The wedge up to the first wall in every direction. From outside the room that is the wall's outer
 * face.
 *
 * Source: closed form, see the head of this file.
 *
 * Returns: corners written; 0 if the input is not in its domain or @max is too small
 */
size_t
lr_wedge_in_room (const LrVec2 *room_m,
                  size_t        n,
                  LrVec2        apex_m,
                  LrVec2        right,
                  LrVec2        left,
                  LrVec2       *out_m,
                  size_t        max)
{
  Shape shape = { .corners_m = out_m, .max = max, .edge = n };
  double right_length = lr_vec2_length (right);
  double left_rad = atan2 (lr_vec2_cross (right, left), lr_vec2_dot (right, left));
  double at_rad = 0.0;

  if (n < 3 || max < 1 || !lr_vec2_is_finite (apex_m) || !lr_is_positive (right_length)
      || !lr_is_positive (left_rad) || left_rad >= LR_PI)
    return 0;

  right = lr_vec2_scale (right, 1.0 / right_length);
  add_corner (&shape, apex_m);
  while (at_rad < left_rad)
    {
      double next_rad = next_corner_rad (room_m, n, apex_m, right, at_rad, left_rad);

      add_sector (&shape, room_m, n, apex_m,
                  lr_vec2_rotate (right, at_rad), lr_vec2_rotate (right, next_rad));
      at_rad = next_rad;
    }

  if (shape.n > 1 && lr_vec2_distance (shape.corners_m[shape.n - 1], apex_m) <= SAME_M)
    shape.n--;
  return shape.is_full || shape.n < 3 ? 0 : shape.n;
}
