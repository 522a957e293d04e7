/* outline.c - footprints: discs and convex polygons on the floor
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two convex shapes are apart if and only if a line parts them; for polygons it may be taken along
 * an edge of one of them, for a disc also square to the way from its centre to the other's nearest
 * corner, for two discs square to the way between their centres (separating axes: Ericson,
 * Real-Time Collision Detection, 2005, section 5.2.1, from memory).
 */

#include "polygon.h"

#include "domain.h"

#define SAME_M 1e-9

/**
 * lr_outline_disc:
 * @centre_m: its centre [m]
 * @radius_m: its radius [m], >= 0
 *
 * Returns: the disc
 */
LrOutline
lr_outline_disc (LrVec2 centre_m,
                 double radius_m)
{
  return (LrOutline) { .n = 0, .centre_m = centre_m, .radius_m = radius_m };
}

/**
 * lr_outline_box:
 * @centre_m: its centre [m]
 * @length_m: along @angle_rad [m], >= 0
 * @width_m: across it [m], >= 0
 * @angle_rad: direction of its length [rad], anticlockwise from +x
 *
 * Returns: the box, its corners anticlockwise from the one that is behind on the right
 */
LrOutline
lr_outline_box (LrVec2 centre_m,
                double length_m,
                double width_m,
                double angle_rad)
{
  static const double signs[4][2] = { { -0.5, -0.5 }, { 0.5, -0.5 }, { 0.5, 0.5 }, { -0.5, 0.5 } };
  LrOutline box = { .n = 4, .centre_m = centre_m, .radius_m = 0.5 * hypot (length_m, width_m) };

  for (size_t i = 0; i < 4; i++)
    {
      LrVec2 corner_m = { signs[i][0] * length_m, signs[i][1] * width_m };

      box.corner_m[i] = lr_vec2_add (centre_m, lr_vec2_rotate (corner_m, angle_rad));
    }

  return box;
}

/**
 * lr_outline_contains:
 * @outline: a footprint
 * @point_m: a point [m]
 *
 * Source: closed form.
 *
 * Returns: whether the point is inside or, within a nanometre, on the edge
 */
bool
lr_outline_contains (const LrOutline *outline,
                     LrVec2           point_m)
{
  if (outline->n == 0)
    return lr_vec2_distance (outline->centre_m, point_m) <= outline->radius_m + SAME_M;

  return lr_polygon_contains (outline->corner_m, outline->n, point_m);
}

static bool
disc_ray (const LrOutline *disc,
          LrVec2           from_m,
          LrVec2           direction,
          double          *enter_m,
          double          *leave_m)
{
  LrVec2 to_centre = lr_vec2_sub (disc->centre_m, from_m);
  double beside_m = lr_vec2_cross (direction, to_centre);
  double middle_m = lr_vec2_dot (direction, to_centre);
  double half2_m2 = (disc->radius_m - beside_m) * (disc->radius_m + beside_m);

  if (!(half2_m2 > 0.0))
    return false;

  *enter_m = middle_m - sqrt (half2_m2);
  *leave_m = middle_m + sqrt (half2_m2);
  return true;
}

/* Clips the line by each edge in turn (Cyrus and Beck 1978) */
static bool
convex_ray (const LrOutline *outline,
            LrVec2           from_m,
            LrVec2           direction,
            double          *enter_m,
            double          *leave_m)
{
  *enter_m = -HUGE_VAL;
  *leave_m = HUGE_VAL;

  for (size_t i = 0; i < outline->n; i++)
    {
      LrVec2 a_m = outline->corner_m[i];
      LrVec2 way = lr_vec2_sub (outline->corner_m[i + 1 < outline->n ? i + 1 : 0], a_m);
      double outward = lr_vec2_cross (direction, way);
      double inside = lr_vec2_cross (way, lr_vec2_sub (from_m, a_m)); /* > 0 left of the edge */

      if (outward > 0.0)
        *leave_m = fmin (*leave_m, inside / outward);
      else if (outward < 0.0)
        *enter_m = fmax (*enter_m, inside / outward);
      else if (inside < 0.0)
        return false;
    }

  return *enter_m < *leave_m && isfinite (*enter_m) && isfinite (*leave_m);
}

/**
 * lr_outline_ray:
 * @outline: a footprint
 * @from_m: where the ray starts [m]
 * @direction: where it goes, of any length but 0
 * @enter_m: (out): distance at which it goes in [m]; 0 if it starts inside
 * @leave_m: (out): distance at which it comes out [m], > @enter_m
 *
 * A ray that only touches the edge does not go in.
 *
 * Source: closed form.
 *
 * Returns: %FALSE, with the outputs untouched, if the ray passes by or the input is not in its
 *   domain
 */
bool
lr_outline_ray (const LrOutline *outline,
                LrVec2           from_m,
                LrVec2           direction,
                double          *enter_m,
                double          *leave_m)
{
  double length = lr_vec2_length (direction);
  double enter, leave;
  bool is_met;

  if (!lr_vec2_is_finite (from_m) || !lr_is_positive (length))
    return false;

  direction = lr_vec2_scale (direction, 1.0 / length);
  is_met = outline->n == 0 ? disc_ray (outline, from_m, direction, &enter, &leave)
                           : convex_ray (outline, from_m, direction, &enter, &leave);
  if (!is_met || !(leave > 0.0))
    return false;

  *enter_m = fmax (enter, 0.0);
  *leave_m = leave;
  return true;
}

/* The outline's shadow on an axis of length 1 */
static void
shadow_m (const LrOutline *outline,
          LrVec2           axis,
          double          *low_m,
          double          *high_m)
{
  *low_m = *high_m = lr_vec2_dot (outline->n == 0 ? outline->centre_m : outline->corner_m[0], axis);

  if (outline->n == 0)
    {
      *low_m -= outline->radius_m;
      *high_m += outline->radius_m;
    }

  for (size_t i = 1; i < outline->n; i++)
    {
      double at_m = lr_vec2_dot (outline->corner_m[i], axis);

      *low_m = fmin (*low_m, at_m);
      *high_m = fmax (*high_m, at_m);
    }
}

typedef struct
{
  double depth_m;
  LrVec2 push;
} Overlap;

/* How far a must go along the axis, one way or the other, to be clear of b; kept if it is the
 * shortest so far */
static void
try_axis (const LrOutline *a,
          const LrOutline *b,
          LrVec2           axis,
          Overlap         *best)
{
  double length = lr_vec2_length (axis);
  double a_low_m, a_high_m, b_low_m, b_high_m, forward_m, back_m;

  if (!(length > SAME_M))
    return;

  axis = lr_vec2_scale (axis, 1.0 / length);
  shadow_m (a, axis, &a_low_m, &a_high_m);
  shadow_m (b, axis, &b_low_m, &b_high_m);
  forward_m = b_high_m - a_low_m;
  back_m = a_high_m - b_low_m;

  if (fmin (forward_m, back_m) < best->depth_m)
    {
      best->depth_m = fmin (forward_m, back_m);
      best->push = forward_m < back_m ? axis : lr_vec2_scale (axis, -1.0);
    }
}

static void
try_edges (const LrOutline *a,
           const LrOutline *b,
           const LrOutline *edges_of,
           Overlap         *best)
{
  for (size_t i = 0; i < edges_of->n; i++)
    {
      LrVec2 way = lr_vec2_sub (edges_of->corner_m[i + 1 < edges_of->n ? i + 1 : 0], edges_of->corner_m[i]);

      try_axis (a, b, lr_vec2_left (way), best);
    }
}

/* The axis between a disc's centre and the nearest place that another outline is made of */
static LrVec2
disc_axis (const LrOutline *disc,
           const LrOutline *other)
{
  LrVec2 nearest = lr_vec2_sub (other->centre_m, disc->centre_m);

  for (size_t i = 0; i < other->n; i++)
    {
      LrVec2 way = lr_vec2_sub (other->corner_m[i], disc->centre_m);

      if (i == 0 || lr_vec2_length (way) < lr_vec2_length (nearest))
        nearest = way;
    }

  return nearest;
}

/**
 * lr_outline_overlap_m:
 * @a: a footprint
 * @b: another
 * @push: (out) (optional): the direction, of length 1, in which a gets out of b by the shortest
 *   move
 *
 * Source: separating axes, see the head of this file.
 *
 * Returns: the length of that move [m]; 0, with @push untouched, if they do not overlap by a
 *   nanometre
 */
double
lr_outline_overlap_m (const LrOutline *a,
                      const LrOutline *b,
                      LrVec2          *push)
{
  Overlap best = { .depth_m = HUGE_VAL };

  if (!(lr_vec2_distance (a->centre_m, b->centre_m) < a->radius_m + b->radius_m))
    return 0.0;

  try_edges (a, b, a, &best);
  try_edges (a, b, b, &best);
  if (a->n == 0)
    try_axis (a, b, disc_axis (a, b), &best);
  if (b->n == 0)
    try_axis (a, b, disc_axis (b, a), &best);
  if (!(best.depth_m < HUGE_VAL)) /* discs about one centre: any way out is as long */
    try_axis (a, b, lr_vec2 (1.0, 0.0), &best);

  if (!(best.depth_m > SAME_M))
    return 0.0;

  if (push != NULL)
    *push = best.push;
  return best.depth_m;
}

/* Depth by which a corner of the room that points inwards stands in the outline */
static double
wall_corner_inside_m (const LrOutline *outline,
                      const LrVec2    *room_m,
                      size_t           n,
                      size_t           corner)
{
  LrVec2 before_m = room_m[corner > 0 ? corner - 1 : n - 1];
  LrVec2 at_m = room_m[corner];
  LrVec2 after_m = room_m[corner + 1 < n ? corner + 1 : 0];

  if (lr_vec2_cross (lr_vec2_sub (at_m, before_m), lr_vec2_sub (after_m, at_m)) >= 0.0)
    return 0.0;

  return fmax (0.0, lr_polygon_distance_m (outline->corner_m, outline->n, at_m, NULL));
}

/* Depth at the middle of the part of the outline's edge that lies behind one wall and before the
 * next: a thin wall that passes right through leaves all corners, the outline's and its own, in the
 * clear */
static double
edge_outside_m (LrVec2        a_m,
                LrVec2        b_m,
                const LrVec2 *room_m,
                size_t        n)
{
  LrVec2 way = lr_vec2_sub (b_m, a_m);
  double length_m = lr_vec2_length (way), at_m = 0.0, outside_m = 0.0;
  LrVec2 from_m = a_m;
  LrRayHit hit;

  while (at_m < length_m && lr_polygon_ray (room_m, n, from_m, way, &hit))
    {
      double next_m = fmin (at_m + fmax (hit.distance_m, 2.0 * SAME_M), length_m);
      LrVec2 middle_m = lr_vec2_along (a_m, way, 0.5 * (at_m + next_m) / length_m);

      outside_m = fmax (outside_m, -lr_polygon_distance_m (room_m, n, middle_m, NULL));
      at_m = next_m;
      from_m = lr_vec2_along (a_m, way, at_m / length_m);
    }

  return outside_m;
}

/**
 * lr_outline_outside_m:
 * @outline: a footprint
 * @room_m: (array length=n): the corners of the room, anticlockwise [m]; it may be concave
 * @n: how many, >= 3
 *
 * Of a disc: the radius less the centre's distance from the walls. Of a polygon: the largest of its
 * corners' distances outside, of the depths to which inward corners of the room stand in it, and of
 * the edges' depths between walls. More than 0 if and only if some of the outline is outside; where
 * a wall passes through, at least half its thickness rather than the whole way out.
 *
 * Source: closed form.
 *
 * Returns: how far it reaches outside [m]; 0 if by less than a nanometre
 */
double
lr_outline_outside_m (const LrOutline *outline,
                      const LrVec2    *room_m,
                      size_t           n)
{
  double centre_m = lr_polygon_distance_m (room_m, n, outline->centre_m, NULL);
  double outside_m = 0.0;

  if (n < 3 || centre_m >= outline->radius_m)
    return 0.0;

  if (outline->n == 0)
    return outline->radius_m - centre_m > SAME_M ? outline->radius_m - centre_m : 0.0;

  for (size_t i = 0; i < outline->n; i++)
    {
      LrVec2 corner_m = outline->corner_m[i];
      LrVec2 next_m = outline->corner_m[i + 1 < outline->n ? i + 1 : 0];

      outside_m = fmax (outside_m, -lr_polygon_distance_m (room_m, n, corner_m, NULL));
      outside_m = fmax (outside_m, edge_outside_m (corner_m, next_m, room_m, n));
    }

  for (size_t i = 0; i < n; i++)
    outside_m = fmax (outside_m, wall_corner_inside_m (outline, room_m, n, i));

  return outside_m > SAME_M ? outside_m : 0.0;
}
