/* wall_light.h - what falls on a wall from place to place
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "light_shade.h"

#include <gio/gio.h>

typedef struct LrBounce LrBounce; /* bounce.h */

/* Of one wall, on even cells: along it from its first corner, then up */
typedef struct
{
  guint   n, m;
  double *lx;         /* n * m, at the middles of the cells */
  double  least_lx, most_lx;
  double  mean_lx;    /* without the sun's patch */
  double *sun_lx;     /* n * m, what of lx is the sun's; NULL: it does not reach the wall */
  double  full_sun_lx; /* of it where nothing is in its way */
} LrWallLight;

/* (transfer full) (element-type LrWallLight) (nullable): one for each wall of the room; NULL: cancelled */
GArray *lr_wall_lights   (const LrBounce *bounce, const LrStudy *study, const LrLightShade *shade, const GArray *sources,
                          GCancellable *cancellable);
/* @along and @up as shares of the wall's length and height, 0 to 1 */
double  lr_wall_light_lx (const LrWallLight *light, double along, double up);
