/* routing_private.h - what the files of routing share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "routing.h"

#define LR_ROUTE_TOUCH_M 1e-6     /* going so far through a thing is touching it */
#define LR_ROUTE_STEPS 24         /* tangents round a full turn of what is round: 1 / cos 7.5 degrees, 0.9 % too far out */
#define LR_ROUTE_CORNERS (LR_ROUTE_STEPS + LR_OUTLINE_MAX)
#define LR_ROUTE_LEAVE_SHARE 0.7  /* of the distance of an end from a block: what is left to go round it */

/* A block grown by what is kept clear: convex, anticlockwise; n 0: none */
typedef struct
{
  size_t n;
  LrVec2 corner_m[LR_ROUTE_CORNERS];
  LrVec2 centre_m;
  double radius_m; /* of the circle round centre_m that holds it */
} LrRouteShape;

/* Lengths in a room do not overflow: a square root is several times as fast as hypot () */
static inline double
lr_route_far_m (LrVec2 a_m, LrVec2 b_m)
{
  LrVec2 way = lr_vec2_sub (b_m, a_m);

  return sqrt (lr_vec2_dot (way, way));
}

bool   lr_route_meets       (const LrRouteShape *shape, LrVec2 a_m, LrVec2 b_m);
bool   lr_route_leaves_room (const LrRouteFloor *floor, LrVec2 a_m, LrVec2 b_m);
double lr_route_step_cost_m (const LrRouteFloor *floor, LrVec2 a_m, LrVec2 b_m, double at_most_m);
bool   lr_route_grow        (const LrRouteFloor *floor, const LrOutline *block, LrVec2 from_m, LrVec2 to_m, LrRouteShape *grown);
