/* sun.c - where the sun is, and how bright
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The position by the series of low accuracy in Meeus, Astronomical Algorithms, chapter 25, as used by the solar calculator of the
 * National Oceanic and Atmospheric Administration: 0.01 degrees of longitude. Universal time stands for dynamical time; their
 * minute of difference moves the sun by 0.0008 degrees among the stars.
 */

#include "sun.h"

#include "domain.h"

#define PARALLAX_RAD (8.794 / 3600.0 * LR_DEG)
#define HORIZON_RAD (-0.833 * LR_DEG) /* 34' of refraction and 16' of half the disc */
#define ROUNDS 4

/**
 * lr_julian_day:
 * @year: from 1901 to 2199
 * @month: 1 to 12
 * @day: 1 to 31
 * @hours: since midnight of universal time [h], also < 0 or > 24
 * @julian_day: (out): days and parts of them
 *
 * Source: Meeus, Astronomical Algorithms, chapter 7.
 *
 * Returns: %FALSE, with @julian_day untouched, unless every number is in its domain
 */
bool
lr_julian_day (int     year,
               int     month,
               int     day,
               double  hours,
               double *julian_day)
{
  static const int days[] = { 31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31 };
  int y = month <= 2 ? year - 1 : year, m = month <= 2 ? month + 12 : month, century = y / 100;

  if (year < 1901 || year > 2199 || month < 1 || month > 12 || day < 1 || day > days[month - 1]
      || !isfinite (hours))
    return false;

  *julian_day = floor (365.25 * (y + 4716)) + floor (30.6001 * (m + 1)) + day + (2 - century + century / 4) - 1524.5 + hours / 24.0;
  return true;
}

static double
polynomial_rad (double t,
                double c0,
                double c1,
                double c2)
{
  return fmod (c0 + t * (c1 + t * c2), 360.0) * LR_DEG;
}

/* Of the apparent sun, seen from the middle of the earth */
static void
find_declination (double  t,
                  double *declination_rad,
                  double *equation_min)
{
  double l0 = polynomial_rad (t, 280.46646, 36000.76983, 0.0003032), m = polynomial_rad (t, 357.52911, 35999.05029, -0.0001537);
  double e = 0.016708634 - t * (0.000042037 + 0.0000001267 * t);
  double c = (1.914602 - t * (0.004817 + 0.000014 * t)) * sin (m) + (0.019993 - 0.000101 * t) * sin (2.0 * m) + 0.000289 * sin (3.0 * m);
  double omega = (125.04 - 1934.136 * t) * LR_DEG;
  double longitude = l0 + (c - 0.00569 - 0.00478 * sin (omega)) * LR_DEG;
  double obliquity = (23.439291 - 0.0130042 * t + 0.00256 * cos (omega)) * LR_DEG;
  double y = tan (0.5 * obliquity);

  y *= y;
  *declination_rad = asin (sin (obliquity) * sin (longitude));
  *equation_min = 4.0 / LR_DEG
                  * (y * sin (2.0 * l0) - 2.0 * e * sin (m) + 4.0 * e * y * sin (m) * cos (2.0 * l0) - 0.5 * y * y * sin (4.0 * l0)
                     - 1.25 * e * e * sin (2.0 * m));
}

/**
 * lr_sun_place:
 * @julian_day: an instant of universal time, 1901 to 2199
 * @latitude_rad: of the place [rad], north > 0
 * @longitude_rad: of the place [rad], east > 0
 * @place: (out): where the sun is
 *
 * The altitude is true: what the air lifts it by is lr_sun_refraction_rad().
 *
 * Source: Meeus, Astronomical Algorithms, chapters 13 and 25.
 *
 * Returns: %FALSE, with @place untouched, unless every number is in its domain
 */
bool
lr_sun_place (double      julian_day,
              double      latitude_rad,
              double      longitude_rad,
              LrSunPlace *place)
{
  double t = (julian_day - 2451545.0) / 36525.0, declination, equation, hour, sine, altitude, azimuth;

  if (!(fabs (t) < 2.0) || !(fabs (latitude_rad) <= 0.5 * LR_PI) || !isfinite (longitude_rad))
    return false;

  find_declination (t, &declination, &equation);
  hour = fmod ((julian_day - 0.5) * 360.0 + 0.25 * equation, 360.0) * LR_DEG + longitude_rad - LR_PI;
  sine = sin (latitude_rad) * sin (declination) + cos (latitude_rad) * cos (declination) * cos (hour);
  altitude = asin (fmin (1.0, fmax (-1.0, sine)));
  azimuth = LR_PI + atan2 (sin (hour) * cos (declination),
                           cos (hour) * sin (latitude_rad) * cos (declination) - sin (declination) * cos (latitude_rad));

  *place = (LrSunPlace) { altitude - PARALLAX_RAD * cos (altitude), fmod (azimuth + 2.0 * LR_PI, 2.0 * LR_PI), declination, equation };
  return true;
}

/**
 * lr_sun_refraction_rad:
 * @altitude_rad: true altitude [rad]
 *
 * At 1010 hPa and 10 degrees; 0 from a degree under the horizon on.
 *
 * Source: Saemundsson, Sky and Telescope 72 (1986), 70, as given by Meeus, chapter 16.
 *
 * Returns: by how much the air lifts it [rad]
 */
double
lr_sun_refraction_rad (double altitude_rad)
{
  double h = altitude_rad / LR_DEG;

  return h < -1.0 ? 0.0 : 1.02 / 60.0 / tan ((h + 10.3 / (h + 5.11)) * LR_DEG) * LR_DEG;
}

/* The instant at which the sun passes the horizon, from a first guess; @side: -1 rising, 1 setting */
static bool
find_passage (double  day,
              double  noon_day,
              double  latitude_rad,
              double  longitude_rad,
              int     side,
              double *passage_day)
{
  for (int i = 0; i < ROUNDS; i++)
    {
      LrSunPlace place;
      double cosine;

      if (!lr_sun_place (day, latitude_rad, longitude_rad, &place))
        return false;

      cosine = (sin (HORIZON_RAD) - sin (latitude_rad) * sin (place.declination_rad)) / (cos (latitude_rad) * cos (place.declination_rad));
      if (!(fabs (cosine) <= 1.0))
        return false;
      day = noon_day - place.equation_min / 1440.0 + side * acos (cosine) / (2.0 * LR_PI);
    }

  *passage_day = day;
  return true;
}

/**
 * lr_sun_rise_set:
 * @midnight_day: the instant of local midnight, universal time
 * @latitude_rad: of the place [rad], north > 0
 * @longitude_rad: of the place [rad], east > 0
 * @rise_day: (out): when the upper edge rises over a level horizon
 * @set_day: (out): when it sets
 *
 * Source: Meeus, chapter 15: the middle of the disc at -0.833 degrees, 34' of refraction and 16' of half the disc.
 *
 * Returns: %FALSE, with both untouched, if it stays up or down all day
 */
bool
lr_sun_rise_set (double  midnight_day,
                 double  latitude_rad,
                 double  longitude_rad,
                 double *rise_day,
                 double *set_day)
{
  double noon_day, rise, set;

  if (!isfinite (midnight_day) || !isfinite (longitude_rad))
    return false;

  /* mean noon of the place that is nearest to the middle of the day */
  noon_day = floor (midnight_day + 0.5 + longitude_rad / (2.0 * LR_PI) + 0.5) - longitude_rad / (2.0 * LR_PI);
  if (!find_passage (noon_day - 0.25, noon_day, latitude_rad, longitude_rad, -1, &rise)
      || !find_passage (noon_day + 0.25, noon_day, latitude_rad, longitude_rad, 1, &set))
    return false;

  *rise_day = rise;
  *set_day = set;
  return true;
}

/**
 * lr_sun_way:
 * @altitude_rad: above the horizon [rad]
 * @azimuth_rad: clockwise from north [rad]
 * @north_rad: how far north is turned clockwise from up the sheet [rad]
 *
 * Returns: the direction to the sun in the room's axes, of length 1
 */
LrVec3
lr_sun_way (double altitude_rad,
            double azimuth_rad,
            double north_rad)
{
  double angle = 0.5 * LR_PI - azimuth_rad - north_rad;

  return lr_vec3 (cos (altitude_rad) * cos (angle), cos (altitude_rad) * sin (angle), sin (altitude_rad));
}

/**
 * lr_sun_patch:
 * @corner_m: corners of an opening [m]
 * @n: their number, > 0
 * @outward: of its wall, of length 1
 * @way: to the sun, of length 1
 * @z_m: a level under them [m]
 * @patch_m: (out): @n corners of the patch on that level [m]
 *
 * Source: closed form, `corner - (z / way.z) way`.
 *
 * Returns: %FALSE, with @patch_m untouched, if the sun is under the horizon or behind the wall
 */
bool
lr_sun_patch (const LrVec3 *corner_m,
              size_t        n,
              LrVec3        outward,
              LrVec3        way,
              double        z_m,
              LrVec2       *patch_m)
{
  if (!(way.z > 1e-6) || !(lr_vec3_dot (way, outward) > 0.0))
    return false;

  for (size_t i = 0; i < n; i++)
    patch_m[i] = lr_vec3_flat (lr_vec3_along (corner_m[i], way, -(corner_m[i].z - z_m) / way.z));
  return true;
}

/**
 * lr_sun_direct_normal_lx:
 * @altitude_rad: of the sun [rad]
 *
 * Source: Illuminating Engineering Society, Recommended practice for the calculation of daylight availability, Journal of the
 * IES 13(4), 1984; the constants from memory. Means: at one time it may be half or twice as much.
 *
 * Returns: on a face turned to the sun, through a clear sky [lx]; 0 at and under the horizon
 */
double
lr_sun_direct_normal_lx (double altitude_rad)
{
  return altitude_rad > 0.0 ? 127500.0 * exp (-0.21 / sin (altitude_rad)) : 0.0;
}

/**
 * lr_sky_clear_lx:
 * @altitude_rad: of the sun [rad]
 *
 * Source: as lr_sun_direct_normal_lx().
 *
 * Returns: on level ground from a clear sky without the sun [lx]
 */
double
lr_sky_clear_lx (double altitude_rad)
{
  return altitude_rad > 0.0 ? 800.0 + 15500.0 * sqrt (sin (altitude_rad)) : 0.0;
}

/**
 * lr_sky_overcast_lx:
 * @altitude_rad: of the sun [rad]
 *
 * Source: as lr_sun_direct_normal_lx().
 *
 * Returns: on level ground from a sky that is covered [lx]
 */
double
lr_sky_overcast_lx (double altitude_rad)
{
  return altitude_rad > 0.0 ? 300.0 + 21000.0 * sin (altitude_rad) : 0.0;
}
