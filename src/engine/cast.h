/* cast.h - where a shadow falls, how dark it is and how soft
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "light.h"
#include "silhouette.h"

#define LR_COVER_MAX 16 /* solids before one lamp that are told together */

/* A lamp as it is looked at from a place: the rectangle that shines, in a frame that is level with it */
typedef struct
{
  LrProjection projection;
  LrFrameBox   box;
  double       away_m;     /* to its plane */
} LrLampView;

/* @size_m: side of a point, as large as it really is. FALSE: nothing of it shines there */
bool   lr_lamp_view         (const LrEmitter *lamp, double size_m, LrVec3 from_m, LrLampView *view);
/* Of what shines, the share that the silhouettes cover together; they are cut to it */
double lr_lamp_covered      (const LrLampView *view, LrSilhouette *silhouettes, size_t n);
/* Where the ray from the lamp past a point meets a plane beyond it */
bool   lr_cast_point        (LrVec3 lamp_m, LrVec3 past_m, LrVec3 plane_m, LrVec3 normal, LrVec3 *at_m);
/* How wide the half-shadow of an edge there is on the plane: the sharper of its sides and its top */
bool   lr_half_shadow_m     (const LrEmitter *lamp, double size_m, LrVec3 past_m, LrVec3 plane_m, LrVec3 normal, double *width_m);
