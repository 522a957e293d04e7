/* polygon.h - flat shapes on the floor
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A polygon is an array of corners, anticlockwise, not closed. Rooms may be concave; footprints are convex.
 */

#pragma once

#include <stddef.h>
#include "vec.h"

/* A footprint: a disc (n = 0, radius_m about centre_m) or a convex polygon of up to 8 corners */
#define LR_OUTLINE_MAX 8

typedef struct
{
  size_t n;
  LrVec2 corner_m[LR_OUTLINE_MAX];
  LrVec2 centre_m;
  double radius_m; /* of a disc; of a polygon: of the circle round centre_m that holds it */
} LrOutline;

typedef struct
{
  size_t edge;       /* from corner edge to the next */
  double along_m;    /* from the edge's first corner */
  double distance_m; /* from the ray's start, or from the point that was asked about; >= 0 */
  LrVec2 at_m;
} LrRayHit;

LrOutline lr_outline_disc (LrVec2 centre_m, double radius_m);
/* Length along angle_rad, width across it */
LrOutline lr_outline_box (LrVec2 centre_m, double length_m, double width_m, double angle_rad);

double lr_polygon_area_m2 (const LrVec2 *corners_m, size_t n); /* signed: > 0 anticlockwise */
/* Corners of the upright box around it */
void   lr_polygon_bounds (const LrVec2 *corners_m, size_t n, LrVec2 *low_m, LrVec2 *high_m);
LrVec2 lr_polygon_centroid_m (const LrVec2 *corners_m, size_t n);
bool   lr_polygon_is_simple (const LrVec2 *corners_m, size_t n);
bool   lr_polygon_contains (const LrVec2 *corners_m, size_t n, LrVec2 point_m);
bool   lr_polygon_ray (const LrVec2 *corners_m, size_t n, LrVec2 from_m, LrVec2 direction, LrRayHit *hit);
/* Nearest edge point (may be NULL), and its signed distance: > 0 inside */
double lr_polygon_distance_m (const LrVec2 *corners_m, size_t n, LrVec2 point_m, LrRayHit *nearest);
/* How far the outline reaches outside the room [m], 0 if it is all inside */
double lr_outline_outside_m (const LrOutline *outline, const LrVec2 *room_m, size_t n);
/* Depth by which two outlines overlap [m]: the shortest move that parts them; 0 if they do not. push (may be NULL) is the
 * direction, of length 1, in which a gets out by it */
double lr_outline_overlap_m (const LrOutline *a, const LrOutline *b, LrVec2 *push);
bool   lr_outline_contains (const LrOutline *outline, LrVec2 point_m);
/* Where a ray goes in (0 if it starts inside) and comes out */
bool   lr_outline_ray (const LrOutline *outline, LrVec2 from_m, LrVec2 direction, double *enter_m, double *leave_m);
/* Polygon seen from apex between two directions, anticlockwise from right to left, cut by the room's walls; returns corners written
 * (apex first), 0 if there are none or max is too small: 2 n + 3 always do. The wedge is narrower than pi. */
size_t lr_wedge_in_room (const LrVec2 *room_m, size_t n, LrVec2 apex_m, LrVec2 right, LrVec2 left, LrVec2 *out_m, size_t max);
/* Distance of a point from a segment; nearest_m (may be NULL) is the segment's nearest point */
double lr_segment_distance_m (LrVec2 a_m, LrVec2 b_m, LrVec2 point_m, LrVec2 *nearest_m);
