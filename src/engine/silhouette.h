/* silhouette.h - what a solid covers of the frame
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Places in the frame are as in projection.h: x across and y down, 0..1 from the upper left.
 */

#pragma once

#include "polygon.h"
#include "projection.h"

#define LR_VOLUME_MAX 8
#define LR_SILHOUETTE_MAX 64

typedef enum
{
  LR_VOLUME_BAR,       /* round, with round ends: point_m[0] to point_m[1], radius_m */
  LR_VOLUME_ELLIPSOID, /* middle point_m[0], half axes point_m[1..3] */
  LR_VOLUME_PRISM,     /* upright: base, bottom_m to top_m */
  LR_VOLUME_HULL,      /* convex hull of n points */
} LrVolumeType;

typedef struct
{
  LrVolumeType type;
  size_t      n;
  LrVec3      point_m[LR_VOLUME_MAX];
  double      radius_m;
  LrOutline   base;
  double      bottom_m, top_m;
  LrVec3      centre_m; /* a ball that holds it */
  double      reach_m;
} LrVolume;

/* A convex polygon in the frame, also beyond its edges */
typedef struct
{
  size_t n;
  LrVec2 corner[LR_SILHOUETTE_MAX];
} LrSilhouette;

/* Part of the frame's plane: 0..1 each way is the frame */
typedef struct
{
  double x0, x1, y0, y1;
} LrFrameBox;

void lr_volume_bar       (LrVolume *shape, LrVec3 from_m, LrVec3 to_m, double radius_m);
void lr_volume_ellipsoid (LrVolume *shape, LrVec3 middle_m, LrVec3 x_m, LrVec3 y_m, LrVec3 z_m);
void lr_volume_prism     (LrVolume *shape, const LrOutline *base, double bottom_m, double top_m);
void lr_volume_hull      (LrVolume *shape, const LrVec3 *points_m, size_t n);

/* Quick: FALSE when a ball is surely outside the frame and what lies @above its upper edge, in shares of its height */
bool lr_frame_may_hold (const LrProjection *projection, LrVec3 centre_m, double reach_m, double above);
/* A box in the frame that holds the image of a ball; FALSE: it is behind the lens */
bool lr_ball_bounds    (const LrProjection *projection, LrVec3 centre_m, double reach_m, LrFrameBox *bounds);
/* FALSE: nothing of it is in front of the lens */
bool lr_silhouette     (const LrProjection *projection, const LrVolume *shape, LrSilhouette *silhouette);
/* Cuts it; FALSE: nothing is left */
bool lr_silhouette_clip (LrSilhouette *silhouette, const LrFrameBox *box);
/* The same for any polygon; returns the corners that are left, at most @max; corner_out may not be corner */
size_t lr_frame_clip    (const LrVec2 *corner, size_t n, const LrFrameBox *box, LrVec2 *corner_out, size_t max);
double lr_silhouette_area     (const LrSilhouette *silhouette); /* share of the frame */
bool   lr_silhouette_contains (const LrSilhouette *silhouette, LrVec2 at);
LrFrameBox lr_silhouette_bounds (const LrSilhouette *silhouette);
/* Where a ray of length 1 goes in; of a hull, where it passes its middle */
bool   lr_volume_ray (const LrVolume *shape, LrVec3 from_m, LrVec3 way, double *enter_m);
/* The same, where a hull is met only by what goes through it */
bool   lr_volume_is_met (const LrVolume *shape, LrVec3 from_m, LrVec3 way, double *enter_m);
