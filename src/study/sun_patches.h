/* sun_patches.h - what the sun falls on at an instant
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * On the floor, walls and tops of furniture. Walls cut the light, furniture and people are not in its way here.
 */

#pragma once

#include "beam.h"
#include "silhouette.h"
#include "sun_readings.h"

typedef enum { LR_SUN_ON_FLOOR, LR_SUN_ON_WALL, LR_SUN_ON_TOP } LrSunGround;

typedef struct
{
  LrSunGround ground;
  const LrPlaced *window;
  int wall;                 /* of the room, that it is on */
  const LrPlaced *placed;   /* whose top it is on */
  gsize n;
  LrVec3 corner_m[LR_BEAM_CORNERS];
} LrSunPatch;

/* What of a wall it is on, from its first corner and from the floor [m] */
typedef struct
{
  double from_m, to_m, low_m, high_m;
} LrSunStretch;

/* (transfer full) (element-type LrSunPatch); @way to the sun */
GArray      *lr_sun_patches (const LrStudy *study, LrVec3 way);
/* Of one window, through @opening, those on the grounds of the set @grounds, 1 << LrSunGround; of tops that of @only, unless it is NULL */
void         lr_sun_patches_add (GArray *patches, const LrStudy *study, const LrPlaced *window, const LrSunOpening *opening, LrVec3 way,
                                 guint grounds, const LrPlaced *only);
LrSunStretch lr_sun_stretch (const LrStudy *study, const LrSunPatch *patch);
/* The shadow that what stands there throws on the floor: a convex polygon, anticlockwise. Returns the corners; 0: none */
gsize        lr_sun_shadow  (const LrVolume *shape, LrVec3 way, LrVec2 corner_m[2 * LR_OUTLINE_MAX]);
