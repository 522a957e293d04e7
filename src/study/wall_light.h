/* wall_light.h - what falls on a wall from place to place
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "light_shade.h"

#include <gio/gio.h>

typedef struct LrBounce LrBounce; /* bounce.h */

/* What shadows of people and equipment leave of the light on part of a wall, on an even net */
typedef struct
{
  guint   n, m;                     /* points along and up; 0: there is no shadow */
  double  along0, along1, up0, up1; /* of the first and the last, as shares of the wall's length and height */
  double *left;                     /* n * m: what is left, 0 to 1 */
} LrWallShade;

/* Of one wall, on even cells: along it from its first corner, then up */
typedef struct
{
  guint   n, m;
  double *lx;         /* n * m, at the middles of the cells */
  double  least_lx, most_lx;
  double  mean_lx;    /* without the sun's patch and the shadows of people and equipment */
  double *sun_lx;     /* n * m, what of lx is the sun's; NULL: it does not reach the wall */
  double  full_sun_lx; /* of it where nothing is in its way */
  double *back_lx;    /* of lx, what the room gives back */
  LrWallShade shade;
} LrWallLight;

/* @shade: without people and equipment, whose shadows come later; @sun_shade: with them.
 * (transfer full) (element-type LrWallLight) (nullable): one for each wall of the room; NULL: cancelled */
GArray *lr_wall_lights   (const LrBounce *bounce, const LrStudy *study, const LrLightShade *shade, const LrLightShade *sun_shade,
                          const GArray *sources, GCancellable *cancellable);
/* @along and @up as shares of the wall's length and height, 0 to 1 */
double  lr_wall_light_lx (const LrWallLight *light, double along, double up);
double  lr_wall_light_unshaded_lx (const LrWallLight *light, double along, double up);
double  lr_wall_light_back_lx     (const LrWallLight *light, double along, double up);
/* Share of the light that shadows of people and equipment leave there */
double  lr_wall_shade_left (const LrWallShade *shade, double along, double up);
/* Minds a shade that it was given, which it takes */
void    lr_wall_light_take_shade (LrWallLight *light);
