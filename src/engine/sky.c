/* sky.c - how bright the sky is from place to place, and what color daylight has
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two of the standard skies of ISO 15469 (CIE S 011): the traditional overcast one, type 16, after Moon and Spencer; and the clear one of
 * low turbidity, type 12, its constants from memory. Haze, broken cloud and houses opposite are not in them.
 */

#include "sky.h"

#define UP_STEPS 9
#define ROUND_STEPS 36
/* Color */
#define EXTRATERRESTRIAL_K 5900.0 /* of the sun outside the air, as its luminous color; from memory */
#define BLUE_UM 0.45
#define RED_UM 0.65
#define SECOND_RADIATION_UM_K 14388.0
#define TURBIDITY 0.1             /* Angstrom's beta of usual clear air; common practice, no source */
#define LEAST_K 2000.0

/* From the horizon up; @sine: of the altitude */
static double
gradation (LrSky  sky,
           double sine)
{
  return sky == LR_SKY_OVERCAST ? 1.0 + 2.0 * sine : 1.0 - exp (-0.32 / fmax (sine, 1e-6));
}

/* Away from the sun */
static double
indicatrix (LrSky  sky,
            double from_sun_rad)
{
  double cosine = cos (from_sun_rad);

  return sky == LR_SKY_OVERCAST ? 1.0 : 1.0 + 10.0 * (exp (-3.0 * from_sun_rad) - exp (-1.5 * LR_PI)) + 0.45 * cosine * cosine;
}

/**
 * lr_sky_luminance:
 * @sky: of which kind
 * @sun_altitude_rad: of the sun [rad]
 * @altitude_rad: of the place in the sky [rad], 0 to pi / 2
 * @off_rad: its azimuth less the sun's [rad]
 *
 * Source: ISO 15469 (CIE S 011).
 *
 * Returns: its luminance over that of the zenith
 */
double
lr_sky_luminance (LrSky  sky,
                  double sun_altitude_rad,
                  double altitude_rad,
                  double off_rad)
{
  double cosine = sin (sun_altitude_rad) * sin (altitude_rad) + cos (sun_altitude_rad) * cos (altitude_rad) * cos (off_rad);
  double from_sun_rad = acos (fmin (1.0, fmax (-1.0, cosine)));

  return gradation (sky, sin (altitude_rad)) * indicatrix (sky, from_sun_rad)
         / (gradation (sky, 1.0) * indicatrix (sky, 0.5 * LR_PI - sun_altitude_rad));
}

/**
 * lr_sky_upright_share:
 * @sky: of which kind
 * @sun_altitude_rad: of the sun [rad]
 * @off_rad: the azimuth that the face looks to less the sun's [rad]
 *
 * Summed over pieces of the sky of 10 degrees each way.
 *
 * Returns: illuminance of an upright face over that of level ground, both from the sky alone
 */
double
lr_sky_upright_share (LrSky  sky,
                      double sun_altitude_rad,
                      double off_rad)
{
  const double up = 0.5 * LR_PI / UP_STEPS, round = 2.0 * LR_PI / ROUND_STEPS;
  double level = 0.0, upright = 0.0;

  for (int i = 0; i < UP_STEPS; i++)
    for (int k = 0; k < ROUND_STEPS; k++)
      {
        double altitude_rad = (i + 0.5) * up, azimuth_rad = (k + 0.5) * round;
        double share = lr_sky_luminance (sky, sun_altitude_rad, altitude_rad, azimuth_rad) * cos (altitude_rad);

        level += share * sin (altitude_rad);
        upright += share * cos (altitude_rad) * fmax (0.0, cos (azimuth_rad - off_rad));
      }
  return upright / level;
}

/**
 * lr_air_mass:
 * @sun_altitude_rad: of the sun [rad]
 *
 * Source: Kasten and Young, Applied Optics 28 (1989), 4735; the constants from memory.
 *
 * Returns: the way of its light through the air over that from the zenith; at the horizon about 38
 */
double
lr_air_mass (double sun_altitude_rad)
{
  double h = fmax (0.0, sun_altitude_rad) / LR_DEG;

  return 1.0 / (sin (h * LR_DEG) + 0.50572 * pow (h + 6.07995, -1.6364));
}

/**
 * lr_sun_kelvin:
 * @sun_altitude_rad: of the sun [rad]
 *
 * Air takes more of the blue than of the red. What it takes at two wavelengths of a radiator that follows Wien's law turns it into one
 * of another temperature: `1 / T = 1 / T0 + m (d_blue - d_red) / (c2 (1 / l_blue - 1 / l_red))`.
 *
 * Source: depth of the air 0.008735 l^-4.08 (Leckner, Solar Energy 20 (1978)) and of haze beta l^-1.3 (Angstrom 1929), l in micrometres,
 * both from memory.
 *
 * Returns: color temperature of direct sunlight [K], no less than 2000; in clear air it may be 300 K more, in haze as much less
 */
double
lr_sun_kelvin (double sun_altitude_rad)
{
  double blue = 0.008735 * pow (BLUE_UM, -4.08) + TURBIDITY * pow (BLUE_UM, -1.3);
  double red = 0.008735 * pow (RED_UM, -4.08) + TURBIDITY * pow (RED_UM, -1.3);
  double per_k = lr_air_mass (sun_altitude_rad) * (blue - red) / (SECOND_RADIATION_UM_K * (1.0 / BLUE_UM - 1.0 / RED_UM));

  return fmax (LEAST_K, 1.0 / (1.0 / EXTRATERRESTRIAL_K + per_k));
}
