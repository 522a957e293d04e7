/* sky.h - how bright the sky is from place to place, and what color daylight has
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "vec.h"

typedef enum { LR_SKY_OVERCAST, LR_SKY_CLEAR, LR_N_SKIES } LrSky;

/* Over that of the zenith. @off_rad: azimuth from the sun's */
double lr_sky_luminance     (LrSky sky, double sun_altitude_rad, double altitude_rad, double off_rad);
/* What an upright face gets from the sky before it, over what level ground gets; @off_rad: its azimuth from the sun's */
double lr_sky_upright_share (LrSky sky, double sun_altitude_rad, double off_rad);

/* Thickness of air on the way to the sun, over that to the zenith */
double lr_air_mass          (double sun_altitude_rad);
/* Color temperature of direct sunlight */
double lr_sun_kelvin        (double sun_altitude_rad);
