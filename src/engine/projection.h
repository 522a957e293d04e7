/* projection.h - from the room to the frame
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "vec.h"

/* A camera that looks level is tilted by 0; it never rolls. */
typedef struct
{
  LrVec3 eye_m;                  /* the lens */
  LrVec3 right, up, forward;     /* unit, orthogonal */
  double half_width, half_height; /* tangent of half the angle of view */
} LrProjection;

/* A place in the frame: 0, 0 its upper left corner, 1, 1 its lower right one; depth along the axis [m] */
typedef struct
{
  double across, down, depth_m;
} LrFramePoint;

void   lr_projection_look (LrVec3 eye_m, double pan_rad, double tilt_rad, double half_width, double half_height, LrProjection *projection);
bool   lr_projection_point (const LrProjection *projection, LrVec3 point_m, LrFramePoint *place);
LrVec3 lr_projection_ray (const LrProjection *projection, double across, double down);
bool   lr_projection_aim (LrVec3 from_m, LrVec3 at_m, double across, double down, double half_width, double half_height, double *pan_rad, double *tilt_rad);
