/* sun.h - where the sun is, and how bright
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Places in radians, north and east > 0. Azimuth clockwise from true north. Instants are Julian days of universal time.
 */

#pragma once

#include "vec.h"

#include <stddef.h>

typedef struct
{
  double altitude_rad;      /* of the middle of its disc, without air */
  double azimuth_rad;       /* 0 to 2 pi */
  double declination_rad;
  double equation_min;      /* of time: sundial less clock [minutes] */
} LrSunPlace;

/* The civil date in the Gregorian calendar, with hours since its midnight of universal time, also < 0 or > 24 */
bool   lr_julian_day     (int year, int month, int day, double hours, double *julian_day);
bool   lr_sun_place      (double julian_day, double latitude_rad, double longitude_rad, LrSunPlace *place);
double lr_sun_refraction_rad (double altitude_rad);
/* When the upper edge passes a level horizon, on the day that begins at that instant of local midnight; FALSE: it does not */
bool   lr_sun_rise_set   (double midnight_day, double latitude_rad, double longitude_rad, double *rise_day, double *set_day);

/* To the sun, in the axes of a room whose sheet has north @north_rad clockwise of up */
LrVec3 lr_sun_way        (double altitude_rad, double azimuth_rad, double north_rad);
/* What a polygon in a wall lets fall on a level @z_m, seen along the rays; FALSE: the sun is not before its front */
bool   lr_sun_patch      (const LrVec3 *corner_m, size_t n, LrVec3 outward, LrVec3 way, double z_m, LrVec2 *patch_m);

/* Mean illuminance on a clear day and under a closed cover of cloud [lx]; altitude > 0 */
double lr_sun_direct_normal_lx (double altitude_rad);
double lr_sky_clear_lx         (double altitude_rad);
double lr_sky_overcast_lx      (double altitude_rad);
