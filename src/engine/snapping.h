/* snapping.h - where a dragged point wants to be
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Plain arithmetic, no state. A pull of 0 is off. Directions of a room that is being drawn are taken from its first wall,
 * so that a room that stands askew on the sheet still gets right angles.
 */

#pragma once

#include "polygon.h"

typedef struct
{
  double step_m;    /* grid of lengths or places */
  double reach_m;   /* how near an alignment must be to pull */
  double reach_rad; /* how near a direction must be to pull */
  double close_m;   /* how near the first corner must be to close a room, if more than reach_m */
} LrSnapPull;

typedef enum
{
  LR_SNAP_DIRECTION = 1 << 0, /* the running wall stands at a multiple of 45 degrees */
  LR_SNAP_ALIGN_X   = 1 << 1, /* stands on the line through x_from_m across the first direction */
  LR_SNAP_ALIGN_Y   = 1 << 2, /* stands on the line through y_from_m along the first direction */
  LR_SNAP_FIRST     = 1 << 3, /* is the first corner: closes the room */
} LrSnapWhy;

typedef struct
{
  LrVec2   at_m;
  unsigned why;               /* LrSnapWhy */
  LrVec2   x_from_m, y_from_m;
} LrSnap;

double lr_snap_value     (double value, double step);
double lr_snap_angle_rad (double angle_rad, double step_rad, double reach_rad);
/* The finest of 1, 5 and 10 cm that the hand can tell apart on a sheet of so many pixels per metre */
double lr_snap_step_m    (double px_per_m);
/* A thing's place among other things: on their lines along x and y, else on the grid */
LrSnap lr_snap_place     (LrVec2 point_m, const LrVec2 *others_m, size_t n, const LrSnapPull *pull);
/* The next corner of a room after n corners */
LrSnap lr_snap_corner    (const LrVec2 *corners_m, size_t n, LrVec2 point_m, const LrSnapPull *pull);
/* The move that brings an outline flush with the walls that it nearly touches; 0, 0 if there is none in reach */
LrVec2 lr_snap_to_walls  (const LrOutline *outline, const LrVec2 *room_m, size_t n, double reach_m);
/* Wall edge moved by by_m to its left (into the room), the two walls beside it keep their directions */
bool   lr_shift_wall     (const LrVec2 *corners_m, size_t n, size_t edge, double by_m, LrVec2 *out_m);
/* Whether a path that goes on from its last corner to next crosses or touches itself; the first corner may be met */
bool   lr_path_crosses   (const LrVec2 *corners_m, size_t n, LrVec2 next_m);
