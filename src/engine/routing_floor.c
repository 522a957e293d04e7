/* routing_floor.c - what a step over a floor counts, and what is in its way
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Source: closed form; segments are clipped by convex outlines as Cyrus and Beck (1978) do.
 */

#include "routing_private.h"

#define NEAR 1e-9
#define MAX_SPANS 64 /* walls of a room that a step may lie along */

/* Part of a segment, in shares of its length */
typedef struct
{
  double from, to;
} Span;

static bool
clip_convex (const LrVec2 *corners_m,
             size_t        n,
             LrVec2        a_m,
             LrVec2        step,
             Span         *span)
{
  span->from = 0.0;
  span->to = 1.0;
  for (size_t i = 0; i < n; i++)
    {
      LrVec2 way = lr_vec2_sub (corners_m[i + 1 < n ? i + 1 : 0], corners_m[i]);
      double inside = lr_vec2_cross (way, lr_vec2_sub (a_m, corners_m[i]));
      double inward = lr_vec2_cross (way, step);

      if (fabs (inward) < 1e-15)
        {
          if (inside <= 0.0)
            return false;
        }
      else
        {
          double at = -inside / inward;

          if (inward > 0.0 && at > span->from)
            span->from = at;
          else if (inward < 0.0 && at < span->to)
            span->to = at;
          if (!(span->from < span->to))
            return false;
        }
    }

  return n > 0;
}

static bool
clip_disc (const LrOutline *disc,
           LrVec2           a_m,
           LrVec2           step,
           Span            *span)
{
  LrVec2 to_centre = lr_vec2_sub (disc->centre_m, a_m);
  double length_m2 = lr_vec2_dot (step, step), along_m2 = lr_vec2_dot (step, to_centre), beside_m2 = lr_vec2_cross (step, to_centre);
  double half_m4 = disc->radius_m * disc->radius_m * length_m2 - beside_m2 * beside_m2, half_m2;

  if (!(half_m4 > 0.0) || !(length_m2 > 0.0))
    return false;

  half_m2 = sqrt (half_m4);
  span->from = along_m2 > half_m2 ? (along_m2 - half_m2) / length_m2 : 0.0;
  span->to = along_m2 + half_m2 < length_m2 ? (along_m2 + half_m2) / length_m2 : 1.0;
  return span->from < span->to;
}

/* Whether a step comes into the upright square round a circle */
static bool
is_near (LrVec2 c_m,
         double r_m,
         LrVec2 a_m,
         LrVec2 b_m)
{
  LrVec2 low = a_m, high = b_m;

  if (a_m.x > b_m.x)
    low.x = b_m.x, high.x = a_m.x;
  if (a_m.y > b_m.y)
    low.y = b_m.y, high.y = a_m.y;
  return c_m.x + r_m >= low.x && c_m.x - r_m <= high.x && c_m.y + r_m >= low.y && c_m.y - r_m <= high.y;
}

static bool
clip (const LrOutline *outline,
      LrVec2           a_m,
      LrVec2           b_m,
      Span            *span)
{
  LrVec2 step = lr_vec2_sub (b_m, a_m);

  if (!is_near (outline->centre_m, outline->radius_m, a_m, b_m))
    return false;

  return outline->n == 0 ? clip_disc (outline, a_m, step, span) : clip_convex (outline->corner_m, outline->n, a_m, step, span);
}

/**
 * lr_route_meets:
 * @shape: a grown block
 * @a_m: one end of a step [m]
 * @b_m: its other end [m]
 *
 * Returns: whether the step goes through it; touching its edge is not going through
 */
bool
lr_route_meets (const LrRouteShape *shape,
                LrVec2              a_m,
                LrVec2              b_m)
{
  Span span;

  return is_near (shape->centre_m, shape->radius_m, a_m, b_m)
         && clip_convex (shape->corner_m, shape->n, a_m, lr_vec2_sub (b_m, a_m), &span)
         && (span.to - span.from) * lr_route_far_m (a_m, b_m) > LR_ROUTE_TOUCH_M;
}

/**
 * lr_route_leaves_room:
 * @floor: a floor
 * @a_m: one end of a step, in the room or on a wall [m]
 * @b_m: its other end [m]
 *
 * Returns: whether the step crosses a wall
 */
bool
lr_route_leaves_room (const LrRouteFloor *floor,
                      LrVec2              a_m,
                      LrVec2              b_m)
{
  LrVec2 step = lr_vec2_sub (b_m, a_m);

  for (size_t i = 0; i < floor->n_room; i++)
    {
      LrVec2 p_m = floor->room_m[i], q_m = floor->room_m[i + 1 < floor->n_room ? i + 1 : 0], way = lr_vec2_sub (q_m, p_m);
      double p = lr_vec2_cross (step, lr_vec2_sub (p_m, a_m)), q = lr_vec2_cross (step, lr_vec2_sub (q_m, a_m));
      double a = lr_vec2_cross (way, lr_vec2_sub (a_m, p_m)), b = lr_vec2_cross (way, lr_vec2_sub (b_m, p_m));

      if (((p > NEAR && q < -NEAR) || (p < -NEAR && q > NEAR)) && ((a > NEAR && b < -NEAR) || (a < -NEAR && b > NEAR)))
        return true;
    }

  return false;
}

/* Parts of the step that lie along a wall, sorted into @spans */
static size_t
spans_along_walls (const LrRouteFloor *floor,
                   LrVec2              a_m,
                   LrVec2              step,
                   Span               *spans)
{
  size_t n = 0;

  for (size_t i = 0; i < floor->n_room && n < MAX_SPANS; i++)
    {
      LrVec2 p_m = floor->room_m[i], q_m = floor->room_m[i + 1 < floor->n_room ? i + 1 : 0], way = lr_vec2_sub (q_m, p_m), out;
      double length_m = lr_route_far_m (p_m, q_m), a_in_m2, b_in_m2, band_m2 = length_m * floor->band_m;
      LrVec2 strip[4];
      Span span;
      size_t at;

      a_in_m2 = lr_vec2_cross (way, lr_vec2_sub (a_m, p_m));
      b_in_m2 = a_in_m2 + lr_vec2_cross (way, step);
      if ((a_in_m2 > band_m2 && b_in_m2 > band_m2) || !(length_m > 0.0))
        continue;
      out = lr_vec2_left (lr_vec2_scale (way, 1.0 / length_m));

      strip[0] = lr_vec2_along (p_m, out, -0.01);
      strip[1] = lr_vec2_along (q_m, out, -0.01);
      strip[2] = lr_vec2_along (q_m, out, floor->band_m);
      strip[3] = lr_vec2_along (p_m, out, floor->band_m);
      if (!clip_convex (strip, 4, a_m, step, &span))
        continue;
      for (at = n++; at > 0 && spans[at - 1].from > span.from; at--)
        spans[at] = spans[at - 1];
      spans[at] = span;
    }

  return n;
}

static double
share_along_walls (const LrRouteFloor *floor,
                   LrVec2              a_m,
                   LrVec2              step)
{
  Span spans[MAX_SPANS];
  size_t n = spans_along_walls (floor, a_m, step, spans);
  double share = 0.0, reached = 0.0;

  for (size_t i = 0; i < n; i++)
    {
      share += fmax (0.0, spans[i].to - fmax (spans[i].from, reached));
      reached = fmax (reached, spans[i].to);
    }
  return share;
}

/**
 * lr_route_step_cost_m:
 * @floor: a floor
 * @a_m: one end of a step [m]
 * @b_m: its other end [m]
 * @at_most_m: more is of no interest [m]
 *
 * Returns: what the step counts [m], at least its length; only that it counts more where it is more than @at_most_m
 */
double
lr_route_step_cost_m (const LrRouteFloor *floor,
                      LrVec2              a_m,
                      LrVec2              b_m,
                      double              at_most_m)
{
  LrVec2 step = lr_vec2_sub (b_m, a_m);
  double length_m = sqrt (lr_vec2_dot (step, step)), times = 1.0;
  Span span;

  if (floor->open_times > 1.0)
    times += (floor->open_times - 1.0) * (1.0 - share_along_walls (floor, a_m, step));
  for (size_t i = 0; i < floor->n_zones && length_m * times < at_most_m; i++)
    if (clip (&floor->zones[i], a_m, b_m, &span))
      times += (floor->zone_times - 1.0) * (span.to - span.from);

  return length_m * times;
}

/**
 * lr_route_length_m:
 * @path_m: (array length=n): a path [m]
 * @n: how many points
 *
 * Returns: how long it is [m]
 */
double
lr_route_length_m (const LrVec2 *path_m,
                   size_t        n)
{
  double length_m = 0.0;

  for (size_t i = 1; i < n; i++)
    length_m += lr_vec2_distance (path_m[i - 1], path_m[i]);

  return length_m;
}

/**
 * lr_route_cost_m:
 * @floor: a floor
 * @path_m: (array length=n): a path [m]
 * @n: how many points
 *
 * Returns: what it counts [m]
 */
double
lr_route_cost_m (const LrRouteFloor *floor,
                 const LrVec2       *path_m,
                 size_t              n)
{
  double cost_m = 0.0;

  for (size_t i = 1; i < n; i++)
    cost_m += lr_route_step_cost_m (floor, path_m[i - 1], path_m[i], HUGE_VAL);

  return cost_m;
}

/* From a point to an outline, 0 inside; when it is farther than @enough_m, no more than it is */
static double
outline_distance_m (const LrOutline *outline,
                    LrVec2           point_m,
                    double           enough_m)
{
  double distance_m = HUGE_VAL, at_least_m = lr_route_far_m (outline->centre_m, point_m) - outline->radius_m;

  if (at_least_m > enough_m)
    return at_least_m;

  if (outline->n == 0)
    return fmax (0.0, lr_vec2_distance (outline->centre_m, point_m) - outline->radius_m);
  if (lr_polygon_contains (outline->corner_m, outline->n, point_m))
    return 0.0;
  for (size_t i = 0; i < outline->n; i++)
    distance_m = fmin (distance_m, lr_segment_distance_m (outline->corner_m[i], outline->corner_m[i + 1 < outline->n ? i + 1 : 0],
                                                          point_m, NULL));

  return distance_m;
}

/* A disc becomes the polygon of tangents round it, one of which faces a point */
static void
grow_disc (const LrOutline *disc,
           double           by_m,
           LrVec2           facing_m,
           int              n_sides,
           LrRouteShape    *grown)
{
  double facing_rad = lr_vec2_angle_rad (lr_vec2_sub (facing_m, disc->centre_m));

  grown->n = (size_t) n_sides;
  grown->centre_m = disc->centre_m;
  grown->radius_m = (disc->radius_m + by_m) / cos (LR_PI / n_sides);
  for (int i = 0; i < n_sides; i++)
    grown->corner_m[i] = lr_vec2_add (disc->centre_m, lr_vec2_polar (facing_rad + (2 * i + 1) * LR_PI / n_sides, grown->radius_m));
}

static void
add_corner (LrRouteShape *grown,
            LrVec2        at_m)
{
  grown->corner_m[grown->n++] = at_m;
  grown->radius_m = fmax (grown->radius_m, lr_vec2_distance (at_m, grown->centre_m));
}

/* Round a corner, from the side along @u to the side along @v: tangents of the arc, which meet at @n_parts places */
static void
add_arc (LrRouteShape *grown,
         LrVec2        corner_m,
         LrVec2        u,
         double        turn_rad,
         int           n_parts,
         double        by_m)
{
  double outward_rad = lr_vec2_angle_rad (u) - 0.5 * LR_PI, part_rad = turn_rad / n_parts;

  for (int i = 0; i < n_parts; i++)
    add_corner (grown, lr_vec2_add (corner_m, lr_vec2_polar (outward_rad + (i + 0.5) * part_rad, by_m / cos (0.5 * part_rad))));
}

/* Its edges move outwards; its corners stay sharp, or go round */
static void
grow_polygon (const LrOutline *outline,
              double           by_m,
              bool             is_round,
              LrRouteShape    *grown)
{
  grown->n = 0;
  grown->centre_m = outline->centre_m;
  grown->radius_m = 0.0;
  for (size_t i = 0; i < outline->n; i++)
    {
      LrVec2 before = lr_vec2_sub (outline->corner_m[i], outline->corner_m[i > 0 ? i - 1 : outline->n - 1]);
      LrVec2 after = lr_vec2_sub (outline->corner_m[i + 1 < outline->n ? i + 1 : 0], outline->corner_m[i]);
      double a = lr_vec2_length (before), b = lr_vec2_length (after);
      LrVec2 u = lr_vec2_scale (before, 1.0 / fmax (a, 1e-12)), v = lr_vec2_scale (after, 1.0 / fmax (b, 1e-12));
      double turn_rad = atan2 (lr_vec2_cross (u, v), lr_vec2_dot (u, v));
      int n_parts = (int) ceil (turn_rad * LR_ROUTE_STEPS / (2.0 * LR_PI) - NEAR);

      /* all corners of a convex outline make one turn: there is room for their parts */
      if (is_round && n_parts > 1 && grown->n + (size_t) n_parts + outline->n - i <= LR_ROUTE_CORNERS + 1)
        add_arc (grown, outline->corner_m[i], u, turn_rad, n_parts, by_m);
      else
        add_corner (grown, lr_vec2_sub (outline->corner_m[i],
                                        lr_vec2_scale (lr_vec2_left (lr_vec2_add (u, v)), by_m / fmax (1.0 + lr_vec2_dot (u, v), 0.1))));
    }
}

static void
grow (const LrOutline *block,
      double           by_m,
      LrVec2           facing_m,
      bool             is_round,
      LrRouteShape    *grown)
{
  if (block->n == 0)
    grow_disc (block, by_m, facing_m, is_round ? LR_ROUTE_STEPS : LR_OUTLINE_MAX, grown);
  else
    grow_polygon (block, by_m, is_round, grown);
}

/**
 * lr_route_grow:
 * @floor: a floor
 * @block: what is in the way there
 * @from_m: one end of the path [m]
 * @to_m: the other [m]
 * @grown: (out): what the path goes round
 *
 * Where an end lies nearer, the path may start from there.
 *
 * Returns: false if an end lies in the block: it counts for nothing
 */
bool
lr_route_grow (const LrRouteFloor *floor,
               const LrOutline    *block,
               LrVec2              from_m,
               LrVec2              to_m,
               LrRouteShape       *grown)
{
  double from_off_m = outline_distance_m (block, from_m, 1.5 * floor->clear_m);
  double to_off_m = floor->is_end_strict ? HUGE_VAL : outline_distance_m (block, to_m, 1.5 * floor->clear_m);
  double off_m = fmin (from_off_m, to_off_m);
  LrVec2 nearer_m = from_off_m < to_off_m ? from_m : to_m;
  LrRouteShape shape;

  if (!(off_m > 0.0))
    return false;

  grow (block, floor->clear_m, nearer_m, floor->is_round, &shape);
  if (off_m < 1.5 * floor->clear_m)
    for (int i = 0; i < 2; i++)
      {
        if (!lr_polygon_contains (shape.corner_m, shape.n, from_m)
            && (floor->is_end_strict || !lr_polygon_contains (shape.corner_m, shape.n, to_m)))
          break;
        if (i == 1)
          return false;
        grow (block, LR_ROUTE_LEAVE_SHARE * fmin (floor->clear_m, off_m), nearer_m, floor->is_round, &shape);
      }

  *grown = shape;
  return true;
}
