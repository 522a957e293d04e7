/* snapping.c - where a dragged point wants to be
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A room frame has its first axis along the first wall: a point is turned into it, pulled along its two axes, and
 * turned back.
 */

#include "snapping.h"

/* Lines that are nearer to parallel than this (sine of the angle) do not cross */
#define PARALLEL 1e-9
/* Cosine of the least angle at which two walls make a corner that a thing can stand in: 45 degrees, and a little for rounding */
#define SQUARE_ENOUGH 0.7072

/* Walls nearer than this touch; the file holds whole millimetres */
#define TOUCH_M 1e-6

typedef struct
{
  double at;      /* the coordinate of the line */
  LrVec2 from_m;  /* the point that the line goes through */
  bool   is_found;
} Line;

/**
 * lr_snap_value:
 * @value: any number
 * @step: the grid, or 0 for none
 *
 * Source: closed form.
 *
 * Returns: the multiple of @step nearest to @value; @value itself for a @step that is not > 0
 */
double
lr_snap_value (double value,
               double step)
{
  return step > 0.0 ? round (value / step) * step : value;
}

/**
 * lr_snap_angle_rad:
 * @angle_rad: an angle [rad]
 * @step_rad: directions that pull: its multiples [rad], > 0
 * @reach_rad: how near one must be [rad]
 *
 * Source: closed form.
 *
 * Returns: the nearest multiple of @step_rad if it is within @reach_rad, else @angle_rad; in (-pi, pi]
 */
double
lr_snap_angle_rad (double angle_rad,
                   double step_rad,
                   double reach_rad)
{
  double pulled = lr_snap_value (angle_rad, step_rad);

  return lr_angle_wrap_rad (fabs (pulled - angle_rad) <= reach_rad ? pulled : angle_rad);
}

/**
 * lr_snap_step_m:
 * @px_per_m: scale of the sheet [px/m], > 0
 *
 * A hand on a pointer tells about one pixel apart; a finer grid than that would only add noise to the file.
 * Common practice, no source.
 *
 * Returns: 0.01, 0.05 or 0.10 [m]
 */
double
lr_snap_step_m (double px_per_m)
{
  if (px_per_m >= 80.0)
    return 0.01;
  return px_per_m >= 18.0 ? 0.05 : 0.10;
}

/* The nearest of the points' coordinates along axis, if it is in reach */
static Line
nearest_line (double        value,
              const LrVec2 *points_m,
              size_t        n,
              LrVec2        axis,
              double        reach_m)
{
  Line line = { value, { 0.0, 0.0 }, false };
  double best_m = reach_m;

  for (size_t i = 0; i < n; i++)
    {
      double at = lr_vec2_dot (points_m[i], axis);

      if (reach_m > 0.0 && fabs (at - value) <= best_m)
        {
          best_m = fabs (at - value);
          line = (Line) { at, points_m[i], true };
        }
    }
  return line;
}

/* Pulls a point along two axes that stand square on each other: to the lines through the points, else to the grid */
static LrSnap
snap_in_frame (LrVec2            point_m,
               const LrVec2     *points_m,
               size_t            n,
               LrVec2            x_axis,
               const LrSnapPull *pull)
{
  LrVec2 y_axis = lr_vec2_left (x_axis);
  double x = lr_vec2_dot (point_m, x_axis), y = lr_vec2_dot (point_m, y_axis);
  Line across = nearest_line (x, points_m, n, x_axis, pull->reach_m);
  Line along = nearest_line (y, points_m, n, y_axis, pull->reach_m);
  LrSnap snap = { point_m, 0, across.from_m, along.from_m };

  if (across.is_found)
    snap.why |= LR_SNAP_ALIGN_X;
  if (along.is_found)
    snap.why |= LR_SNAP_ALIGN_Y;

  x = across.is_found ? across.at : lr_snap_value (x, pull->step_m);
  y = along.is_found ? along.at : lr_snap_value (y, pull->step_m);
  snap.at_m = lr_vec2_add (lr_vec2_scale (x_axis, x), lr_vec2_scale (y_axis, y));
  return snap;
}

/**
 * lr_snap_place:
 * @point_m: where the pointer would put the thing [m]
 * @others_m: (array length=n): places of the others [m]
 * @n: how many there are
 * @pull: what pulls
 *
 * The nearest line through another thing along x or y within reach wins in each direction; the grid has what is left.
 *
 * Source: closed form.
 *
 * Returns: the place, and why
 */
LrSnap
lr_snap_place (LrVec2            point_m,
               const LrVec2     *others_m,
               size_t            n,
               const LrSnapPull *pull)
{
  return snap_in_frame (point_m, others_m, n, lr_vec2 (1.0, 0.0), pull);
}

/* The direction within reach of the way from a to b that makes a multiple of 45 degrees with the frame or the last wall */
static bool
pulled_direction (const LrVec2     *corners_m,
                  size_t            n,
                  LrVec2            point_m,
                  double            frame_rad,
                  const LrSnapPull *pull,
                  double           *direction_rad)
{
  double way_rad = lr_vec2_angle_rad (lr_vec2_sub (point_m, corners_m[n - 1]));
  double bases_rad[2] = { frame_rad, frame_rad };
  double best_rad = pull->reach_rad;
  bool is_found = false;

  if (n >= 2)
    bases_rad[1] = lr_vec2_angle_rad (lr_vec2_sub (corners_m[n - 1], corners_m[n - 2]));

  for (int i = 0; i < 2; i++)
    {
      double turn_rad = lr_angle_wrap_rad (way_rad - bases_rad[i]);
      double off_rad = fabs (lr_snap_value (turn_rad, LR_PI / 4.0) - turn_rad);

      if (off_rad <= best_rad && pull->reach_rad > 0.0)
        {
          best_rad = off_rad;
          *direction_rad = bases_rad[i] + lr_snap_value (turn_rad, LR_PI / 4.0);
          is_found = true;
        }
    }
  return is_found;
}

/* Along the ray from the last corner: to where it crosses a line through an earlier corner, else to a round length */
static LrSnap
snap_on_ray (const LrVec2     *corners_m,
             size_t            n,
             LrVec2            point_m,
             LrVec2            direction,
             LrVec2            x_axis,
             const LrSnapPull *pull)
{
  LrVec2 last_m = corners_m[n - 1];
  LrVec2 axes[2] = { x_axis, lr_vec2_left (x_axis) };
  double length_m = lr_vec2_dot (lr_vec2_sub (point_m, last_m), direction);
  double best_m = pull->reach_m;
  LrSnap snap = { .why = LR_SNAP_DIRECTION };
  double to_m = lr_snap_value (length_m, pull->step_m);

  for (size_t i = 0; i + 1 < n; i++)
    for (int axis = 0; axis < 2; axis++)
      {
        double slope = lr_vec2_dot (direction, axes[axis]);
        double t_m = lr_vec2_dot (lr_vec2_sub (corners_m[i], last_m), axes[axis]) / slope;

        if (fabs (slope) < PARALLEL || pull->reach_m <= 0.0 || t_m <= 0.0 || fabs (t_m - length_m) > best_m)
          continue;
        best_m = fabs (t_m - length_m);
        to_m = t_m;
        snap.why = LR_SNAP_DIRECTION | (axis == 0 ? LR_SNAP_ALIGN_X : LR_SNAP_ALIGN_Y);
        snap.x_from_m = snap.y_from_m = corners_m[i];
      }

  snap.at_m = lr_vec2_along (last_m, direction, to_m);
  return snap;
}

/**
 * lr_snap_corner:
 * @corners_m: (array length=n): the corners so far [m]
 * @n: how many there are, may be 0
 * @point_m: the pointer [m]
 * @pull: what pulls
 *
 * In this order: the first corner, which closes the room; a wall at a multiple of 45 degrees to the first or the last
 * wall (to the sheet while there is none), as long as reaches a line through an earlier corner, else a round length;
 * lines through earlier corners; the grid.
 *
 * Source: closed form.
 *
 * Returns: the place of the next corner, and why
 */
LrSnap
lr_snap_corner (const LrVec2     *corners_m,
                size_t            n,
                LrVec2            point_m,
                const LrSnapPull *pull)
{
  double frame_rad = n >= 2 ? lr_vec2_angle_rad (lr_vec2_sub (corners_m[1], corners_m[0])) : 0.0;
  LrVec2 x_axis = lr_vec2_polar (frame_rad, 1.0);
  double direction_rad;

  if (n >= 3 && lr_vec2_distance (point_m, corners_m[0]) <= fmax (pull->reach_m, pull->close_m))
    return (LrSnap) { .at_m = corners_m[0], .why = LR_SNAP_FIRST };

  if (n >= 1 && lr_vec2_distance (point_m, corners_m[n - 1]) > 0.0
      && pulled_direction (corners_m, n, point_m, frame_rad, pull, &direction_rad))
    return snap_on_ray (corners_m, n, point_m, lr_vec2_polar (direction_rad, 1.0), x_axis, pull);

  return snap_in_frame (point_m, corners_m, n, x_axis, pull);
}

/* Least signed distance of the outline from the line through a along direction; > 0: wholly to its left */
static double
gap_to_line_m (const LrOutline *outline,
               LrVec2           a_m,
               LrVec2           direction)
{
  double gap_m = HUGE_VAL;

  if (outline->n == 0)
    return lr_vec2_cross (direction, lr_vec2_sub (outline->centre_m, a_m)) - outline->radius_m;

  for (size_t i = 0; i < outline->n; i++)
    gap_m = fmin (gap_m, lr_vec2_cross (direction, lr_vec2_sub (outline->corner_m[i], a_m)));
  return gap_m;
}

typedef struct
{
  LrVec2 normal; /* into the room */
  double gap_m;  /* of the outline from the wall's face; < 0: it reaches into the wall */
} NearWall;

/* The wall in reach that is nearest to the outline, that its middle stands beside and that is not parallel to @unlike */
static bool
nearest_wall (const LrOutline *outline,
              const LrVec2    *room_m,
              size_t           n,
              double           reach_m,
              LrVec2           unlike,
              NearWall        *wall)
{
  double best_m = reach_m;
  bool is_found = false;

  for (size_t i = 0; i < n; i++)
    {
      LrVec2 way_m = lr_vec2_sub (room_m[(i + 1) % n], room_m[i]);
      double length_m = lr_vec2_length (way_m);
      LrVec2 along = lr_vec2_scale (way_m, 1.0 / length_m), normal = lr_vec2_left (along);
      double beside_m = lr_vec2_dot (lr_vec2_sub (outline->centre_m, room_m[i]), along);
      double gap_m = gap_to_line_m (outline, room_m[i], along);

      if (!(length_m > 0.0) || beside_m < 0.0 || beside_m > length_m || !(fabs (gap_m) <= best_m)
          || fabs (lr_vec2_dot (normal, unlike)) > SQUARE_ENOUGH)
        continue;
      best_m = fabs (gap_m);
      *wall = (NearWall) { normal, gap_m };
      is_found = true;
    }
  return is_found;
}

/**
 * lr_snap_to_walls:
 * @outline: the thing's footprint [m]
 * @room_m: (array length=n): the room's corners, anticlockwise [m]
 * @n: how many there are
 * @reach_m: how near to a wall the thing must be, on either side of its face [m]
 *
 * Two walls at most pull: the nearest, and the nearest of those that stand at 45 degrees or more to it, which is a thing
 * in a corner. Only walls that the thing's middle stands beside count.
 *
 * Source: closed form.
 *
 * Returns: the move that makes it flush [m]
 */
LrVec2
lr_snap_to_walls (const LrOutline *outline,
                  const LrVec2    *room_m,
                  size_t           n,
                  double           reach_m)
{
  NearWall first, second;
  LrVec2 move_m, along;
  double rest_m;

  if (!nearest_wall (outline, room_m, n, reach_m, lr_vec2 (0.0, 0.0), &first))
    return lr_vec2 (0.0, 0.0);

  move_m = lr_vec2_scale (first.normal, -first.gap_m);
  if (!nearest_wall (outline, room_m, n, reach_m, first.normal, &second))
    return move_m;

  /* along the first wall, so that the thing stays flush with it */
  along = lr_vec2_left (first.normal);
  rest_m = second.gap_m + lr_vec2_dot (move_m, second.normal);
  return lr_vec2_along (move_m, along, -rest_m / lr_vec2_dot (along, second.normal));
}

/* Where the line through a along u crosses the line through b along v */
static bool
lines_meet (LrVec2  a_m,
            LrVec2  u,
            LrVec2  b_m,
            LrVec2  v,
            LrVec2 *at_m)
{
  double sine = lr_vec2_cross (u, v) / (lr_vec2_length (u) * lr_vec2_length (v));

  if (!(fabs (sine) > PARALLEL))
    return false;
  *at_m = lr_vec2_along (a_m, u, lr_vec2_cross (lr_vec2_sub (b_m, a_m), v) / lr_vec2_cross (u, v));
  return true;
}

/**
 * lr_shift_wall:
 * @corners_m: (array length=n): a room [m]
 * @n: how many corners, >= 3
 * @edge: the wall from corner @edge to the next
 * @by_m: how far to its left [m]
 * @out_m: (out) (array length=n): the room after it [m]; may be @corners_m
 *
 * The wall stays parallel to itself; the corners at its ends slide along the walls beside it. A wall beside it that
 * runs on in the same line is left, and the corner moves square to the wall.
 *
 * Source: closed form.
 *
 * Returns: false, with @out_m untouched, for fewer than 3 corners, no such wall, a wall of no length or a number that
 * is not finite
 */
bool
lr_shift_wall (const LrVec2 *corners_m,
               size_t        n,
               size_t        edge,
               double        by_m,
               LrVec2       *out_m)
{
  LrVec2 a_m, b_m, before_m, after_m, along, from_m, to_m;
  double length_m;

  if (n < 3 || edge >= n || !isfinite (by_m))
    return false;

  a_m = corners_m[edge];
  b_m = corners_m[(edge + 1) % n];
  before_m = corners_m[(edge + n - 1) % n];
  after_m = corners_m[(edge + 2) % n];
  length_m = lr_vec2_distance (a_m, b_m);
  if (!(length_m > 0.0) || !isfinite (length_m))
    return false;

  along = lr_vec2_scale (lr_vec2_sub (b_m, a_m), 1.0 / length_m);
  from_m = lr_vec2_along (a_m, lr_vec2_left (along), by_m);
  to_m = lr_vec2_along (b_m, lr_vec2_left (along), by_m);
  lines_meet (from_m, along, a_m, lr_vec2_sub (before_m, a_m), &from_m);
  lines_meet (to_m, along, b_m, lr_vec2_sub (after_m, b_m), &to_m);

  for (size_t i = 0; i < n; i++)
    out_m[i] = i == edge ? from_m : i == (edge + 1) % n ? to_m : corners_m[i];
  return true;
}

/* Whether the segments ab and cd have a point in common */
static bool
segments_meet (LrVec2 a_m,
               LrVec2 b_m,
               LrVec2 c_m,
               LrVec2 d_m)
{
  LrVec2 u = lr_vec2_sub (b_m, a_m), v = lr_vec2_sub (d_m, c_m), w = lr_vec2_sub (c_m, a_m);
  double area = lr_vec2_cross (u, v);

  if (fabs (area) > PARALLEL * lr_vec2_length (u) * lr_vec2_length (v))
    {
      double s = lr_vec2_cross (w, v) / area, t = lr_vec2_cross (w, u) / area;
      double near_s = TOUCH_M / lr_vec2_length (u), near_t = TOUCH_M / lr_vec2_length (v);

      return s >= -near_s && s <= 1.0 + near_s && t >= -near_t && t <= 1.0 + near_t;
    }

  if (fabs (lr_vec2_cross (w, u)) > TOUCH_M * lr_vec2_length (u))
    return false;
  return lr_vec2_dot (lr_vec2_sub (c_m, a_m), lr_vec2_sub (c_m, b_m)) <= 0.0
         || lr_vec2_dot (lr_vec2_sub (d_m, a_m), lr_vec2_sub (d_m, b_m)) <= 0.0
         || lr_vec2_dot (lr_vec2_sub (a_m, c_m), lr_vec2_sub (a_m, d_m)) <= 0.0;
}

/**
 * lr_path_crosses:
 * @corners_m: (array length=n): a path [m]
 * @n: how many corners
 * @next_m: where it would go next [m]
 *
 * The last wall may only be left, not walked back; closing on the first corner is no crossing.
 *
 * Source: closed form.
 *
 * Returns: whether the new wall meets an earlier one
 */
bool
lr_path_crosses (const LrVec2 *corners_m,
                 size_t        n,
                 LrVec2        next_m)
{
  LrVec2 last_m;
  bool closes;

  if (n < 2)
    return false;

  last_m = corners_m[n - 1];
  closes = n >= 3 && lr_vec2_distance (next_m, corners_m[0]) <= TOUCH_M;
  for (size_t i = closes ? 1 : 0; i + 2 < n; i++)
    if (segments_meet (last_m, next_m, corners_m[i], corners_m[i + 1]))
      return true;

  LrVec2 back = lr_vec2_sub (corners_m[n - 2], last_m), on = lr_vec2_sub (next_m, last_m);

  return lr_vec2_dot (back, on) > 0.0
         && fabs (lr_vec2_cross (back, on)) <= PARALLEL * lr_vec2_length (back) * lr_vec2_length (on);
}
