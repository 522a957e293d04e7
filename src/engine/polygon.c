/* polygon.c - rooms: polygons that may be concave, and what a ray meets in them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Everything is linear in the number of corners but lr_polygon_is_simple() and lr_wedge_in_room(),
 * which are quadratic: a room has eight corners, at worst some sixty. Points nearer to each other
 * than a nanometre are one.
 *
 * Source of the methods: closed forms; O'Rourke, Computational Geometry in C, 2nd ed., chapters 1
 * and 7 (area, point in polygon, segment intersection), from memory.
 */

#include "polygon.h"

#include "domain.h"

#define SAME_M 1e-9
#define SAME_RAD 1e-12

static LrVec2
corner_after (const LrVec2 *corners_m,
              size_t        n,
              size_t        edge)
{
  return corners_m[edge + 1 < n ? edge + 1 : 0];
}

/**
 * lr_segment_distance_m:
 * @a_m: one end [m]
 * @b_m: the other end [m], may be the same
 * @point_m: a point [m]
 * @nearest_m: (out) (optional): the point of the segment nearest to it [m]
 *
 * Source: closed form.
 *
 * Returns: the distance [m], >= 0
 */
double
lr_segment_distance_m (LrVec2  a_m,
                       LrVec2  b_m,
                       LrVec2  point_m,
                       LrVec2 *nearest_m)
{
  LrVec2 way = lr_vec2_sub (b_m, a_m);
  double length2_m2 = lr_vec2_dot (way, way);
  double share = length2_m2 > 0.0 ? lr_vec2_dot (lr_vec2_sub (point_m, a_m), way) / length2_m2 : 0.0;
  LrVec2 at_m = share >= 1.0 ? b_m : lr_vec2_along (a_m, way, fmax (share, 0.0));

  if (nearest_m != NULL)
    *nearest_m = at_m;
  return lr_vec2_distance (at_m, point_m);
}

/**
 * lr_polygon_area_m2:
 * @corners_m: (array length=n): the corners [m]
 * @n: how many
 *
 * Half the sum of the cross products of neighbouring corners, taken from the first one so that a
 * room far from the origin loses no digits.
 *
 * Source: closed form (the surveyor's formula).
 *
 * Returns: the area [m2], > 0 if the corners run anticlockwise, < 0 if clockwise; 0 for fewer than
 *   three
 */
double
lr_polygon_area_m2 (const LrVec2 *corners_m,
                    size_t        n)
{
  double twice_m2 = 0.0;

  for (size_t i = 1; i + 1 < n; i++)
    twice_m2 += lr_vec2_cross (lr_vec2_sub (corners_m[i], corners_m[0]),
                               lr_vec2_sub (corners_m[i + 1], corners_m[0]));

  return 0.5 * twice_m2;
}

/**
 * lr_polygon_centroid_m:
 * @corners_m: (array length=n): the corners [m]
 * @n: how many, >= 1
 *
 * Centre of gravity of the area: the mean of the triangles from the first corner, each with its
 * signed area. Of a polygon without an area, the mean of its corners. In a concave room it may lie
 * outside.
 *
 * Source: closed form.
 *
 * Returns: the point [m]; the origin for no corners
 */
LrVec2
lr_polygon_centroid_m (const LrVec2 *corners_m,
                       size_t        n)
{
  double area_m2 = lr_polygon_area_m2 (corners_m, n);
  LrVec2 sum = { 0.0, 0.0 };

  if (n == 0)
    return sum;

  if (fabs (area_m2) < SAME_M * SAME_M)
    {
      for (size_t i = 0; i < n; i++)
        sum = lr_vec2_add (sum, corners_m[i]);
      return lr_vec2_scale (sum, 1.0 / (double) n);
    }

  for (size_t i = 1; i + 1 < n; i++)
    {
      LrVec2 a = lr_vec2_sub (corners_m[i], corners_m[0]);
      LrVec2 b = lr_vec2_sub (corners_m[i + 1], corners_m[0]);

      sum = lr_vec2_along (sum, lr_vec2_add (a, b), lr_vec2_cross (a, b));
    }

  return lr_vec2_along (corners_m[0], sum, 1.0 / (6.0 * area_m2));
}

static bool
segments_touch (LrVec2 a_m,
                LrVec2 b_m,
                LrVec2 c_m,
                LrVec2 d_m)
{
  LrVec2 ab = lr_vec2_sub (b_m, a_m), cd = lr_vec2_sub (d_m, c_m);
  double a_side = lr_vec2_cross (cd, lr_vec2_sub (a_m, c_m));
  double b_side = lr_vec2_cross (cd, lr_vec2_sub (b_m, c_m));
  double c_side = lr_vec2_cross (ab, lr_vec2_sub (c_m, a_m));
  double d_side = lr_vec2_cross (ab, lr_vec2_sub (d_m, a_m));

  if (c_side * d_side < 0.0 && a_side * b_side < 0.0)
    return true;

  return lr_segment_distance_m (a_m, b_m, c_m, NULL) <= SAME_M
         || lr_segment_distance_m (a_m, b_m, d_m, NULL) <= SAME_M
         || lr_segment_distance_m (c_m, d_m, a_m, NULL) <= SAME_M
         || lr_segment_distance_m (c_m, d_m, b_m, NULL) <= SAME_M;
}

/* Whether the edge runs, and the next one does not run back over it */
static bool
turns_cleanly (const LrVec2 *corners_m,
               size_t        n,
               size_t        edge)
{
  LrVec2 a_m = corners_m[edge];
  LrVec2 b_m = corner_after (corners_m, n, edge);
  LrVec2 c_m = corner_after (corners_m, n, edge + 1 < n ? edge + 1 : 0);

  return lr_vec2_distance (a_m, b_m) > SAME_M
         && lr_segment_distance_m (a_m, b_m, c_m, NULL) > SAME_M
         && lr_segment_distance_m (b_m, c_m, a_m, NULL) > SAME_M;
}

/**
 * lr_polygon_is_simple:
 * @corners_m: (array length=n): the corners [m]
 * @n: how many
 *
 * Whether the corners make a room: at least three, finite, no edge without length, none that
 * touches another but its neighbours at their common corner. The way round does not matter.
 *
 * Source: closed form, every pair of edges.
 *
 * Returns: whether it is so
 */
bool
lr_polygon_is_simple (const LrVec2 *corners_m,
                      size_t        n)
{
  if (n < 3)
    return false;

  for (size_t i = 0; i < n; i++)
    if (!lr_vec2_is_finite (corners_m[i]) || !turns_cleanly (corners_m, n, i))
      return false;

  for (size_t i = 0; i < n; i++)
    for (size_t j = i + 2; j < n; j++)
      if ((i > 0 || j < n - 1)
          && segments_touch (corners_m[i], corners_m[i + 1], corners_m[j], corner_after (corners_m, n, j)))
        return false;

  return true;
}

/* Even or odd number of edges to the right of the point */
static bool
is_enclosed (const LrVec2 *corners_m,
             size_t        n,
             LrVec2        point_m)
{
  bool is_inside = false;

  for (size_t i = 0; i < n; i++)
    {
      LrVec2 a = lr_vec2_sub (corners_m[i], point_m);
      LrVec2 b = lr_vec2_sub (corner_after (corners_m, n, i), point_m);

      if ((a.y > 0.0) != (b.y > 0.0) && (lr_vec2_cross (a, b) > 0.0) == (b.y > a.y))
        is_inside = !is_inside;
    }

  return is_inside;
}

/**
 * lr_polygon_contains:
 * @corners_m: (array length=n): the corners of a simple polygon [m], either way round
 * @n: how many
 * @point_m: a point [m]
 *
 * Source: closed form, counting the edges that a ray crosses.
 *
 * Returns: whether the point is inside or, within a nanometre, on an edge
 */
bool
lr_polygon_contains (const LrVec2 *corners_m,
                     size_t        n,
                     LrVec2        point_m)
{
  return lr_polygon_distance_m (corners_m, n, point_m, NULL) >= -SAME_M;
}

/**
 * lr_polygon_distance_m:
 * @corners_m: (array length=n): the corners of a simple polygon [m], either way round
 * @n: how many
 * @point_m: a point [m]
 * @nearest: (out) (optional): the nearest point of the edges; its distance has no sign
 *
 * Source: closed form, the nearest of the edges.
 *
 * Returns: the distance from the edges [m], > 0 inside, < 0 outside; `-HUGE_VAL`, with @nearest
 *   untouched, for fewer than three corners or a point that is not finite
 */
double
lr_polygon_distance_m (const LrVec2 *corners_m,
                       size_t        n,
                       LrVec2        point_m,
                       LrRayHit     *nearest)
{
  LrRayHit best = { .distance_m = HUGE_VAL };

  if (n < 3 || !lr_vec2_is_finite (point_m))
    return -HUGE_VAL;

  for (size_t i = 0; i < n; i++)
    {
      LrVec2 a_m = corners_m[i], at_m;
      double distance_m = lr_segment_distance_m (a_m, corner_after (corners_m, n, i), point_m, &at_m);

      if (distance_m < best.distance_m)
        best = (LrRayHit) { i, lr_vec2_distance (a_m, at_m), distance_m, at_m };
    }

  if (nearest != NULL)
    *nearest = best;
  return is_enclosed (corners_m, n, point_m) ? best.distance_m : -best.distance_m;
}

/* Where the ray meets one edge. An edge through the start counts only if the ray leaves the
 * polygon there. */
static bool
ray_meets_edge (LrVec2    a_m,
                LrVec2    b_m,
                LrVec2    from_m,
                LrVec2    direction,
                LrRayHit *hit)
{
  LrVec2 way = lr_vec2_sub (b_m, a_m);
  LrVec2 to_a = lr_vec2_sub (a_m, from_m);
  double length_m = lr_vec2_length (way);
  double outward_m = lr_vec2_cross (direction, way); /* > 0: from inside to outside */
  double distance_m, along_m;

  if (fabs (outward_m) <= SAME_RAD * length_m)
    return false;

  distance_m = lr_vec2_cross (to_a, way) / outward_m;
  along_m = lr_vec2_cross (to_a, direction) / outward_m * length_m;
  if (along_m < -SAME_M || along_m > length_m + SAME_M
      || distance_m < (outward_m > 0.0 ? -SAME_M : SAME_M))
    return false;

  hit->along_m = fmin (fmax (along_m, 0.0), length_m);
  hit->distance_m = fmax (distance_m, 0.0);
  hit->at_m = lr_vec2_along (a_m, way, hit->along_m / length_m);
  return true;
}

/**
 * lr_polygon_ray:
 * @corners_m: (array length=n): the corners of a simple polygon, anticlockwise [m]
 * @n: how many, >= 3
 * @from_m: where the ray starts [m], inside, outside or on an edge
 * @direction: where it goes, of any length but 0
 * @hit: (out): the first edge that it meets
 *
 * A ray that starts on an edge meets that edge only if it leaves the polygon there: a lens at the
 * wall sees the room. A ray that touches a corner meets it; one that runs along an edge meets what
 * ends that edge.
 *
 * Source: closed form, the nearest of the edges.
 *
 * Returns: %FALSE, with @hit untouched, if it meets none or the input is not in its domain
 */
bool
lr_polygon_ray (const LrVec2 *corners_m,
                size_t        n,
                LrVec2        from_m,
                LrVec2        direction,
                LrRayHit     *hit)
{
  LrRayHit best = { .distance_m = HUGE_VAL };
  double length = lr_vec2_length (direction);

  if (n < 3 || !lr_vec2_is_finite (from_m) || !lr_is_positive (length))
    return false;

  direction = lr_vec2_scale (direction, 1.0 / length);
  for (size_t i = 0; i < n; i++)
    {
      LrRayHit met = { .edge = i };

      if (ray_meets_edge (corners_m[i], corner_after (corners_m, n, i), from_m, direction, &met)
          && met.distance_m < best.distance_m)
        best = met;
    }

  if (!(best.distance_m < HUGE_VAL))
    return false;

  *hit = best;
  return true;
}

/**
 * lr_polygon_bounds:
 * @corners_m: (array length=n): a polygon, not empty [m]
 * @n: number of corners, > 0
 * @low_m: (out): the least x and y [m]
 * @high_m: (out): the greatest [m]
 */
void
lr_polygon_bounds (const LrVec2 *corners_m,
                   size_t        n,
                   LrVec2       *low_m,
                   LrVec2       *high_m)
{
  *low_m = *high_m = corners_m[0];
  for (size_t i = 1; i < n; i++)
    {
      *low_m = lr_vec2 (fmin (low_m->x, corners_m[i].x), fmin (low_m->y, corners_m[i].y));
      *high_m = lr_vec2 (fmax (high_m->x, corners_m[i].x), fmax (high_m->y, corners_m[i].y));
    }
}
