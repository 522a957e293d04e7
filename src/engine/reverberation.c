/* reverberation.c - how long a room rings, and how far a voice carries over it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Kuttruff, Room Acoustics, chapter 5; EN 12354-6:2003, clause 4 (55.3 / c, and objects beside surfaces); air: ISO 9613-1:1993.
 */

#include "reverberation.h"

#include "domain.h"

#define MEAN_PATHS 55.262 /* 24 ln 10: sixty decibels, and the mean free path 4 V / S */
#define DB_PER_NEPER_POWER 4.342944819 /* 10 lg e: of power, not of pressure */
#define PI 3.14159265358979323846

/**
 * lr_air_loss_db_m:
 * @frequency_hz: > 0
 * @celsius: temperature of the air [°C], -20 to 50
 * @humidity_share: relative humidity, 0 .. 1
 * @loss_db_m: (out): what a plane wave loses in a metre [dB/m]
 *
 * Source: ISO 9613-1:1993, at 101.325 kPa.
 *
 * Returns: %FALSE, with @loss_db_m untouched, outside the domain
 */
bool
lr_air_loss_db_m (double  frequency_hz,
                  double  celsius,
                  double  humidity_share,
                  double *loss_db_m)
{
  double t_k = celsius + 273.15, ratio = t_k / 293.15, h, f_o, f_n, f2 = frequency_hz * frequency_hz;

  if (!lr_is_positive (frequency_hz) || !(celsius >= -20.0 && celsius <= 50.0) || !(humidity_share >= 0.0 && humidity_share <= 1.0))
    return false;

  h = 100.0 * humidity_share * pow (10.0, -6.8346 * pow (273.16 / t_k, 1.261) + 4.6151);
  f_o = 24.0 + 4.04e4 * h * (0.02 + h) / (0.391 + h);
  f_n = pow (ratio, -0.5) * (9.0 + 280.0 * h * exp (-4.170 * (pow (ratio, -1.0 / 3.0) - 1.0)));
  *loss_db_m = 8.686 * f2
               * (1.84e-11 * sqrt (ratio)
                  + pow (ratio, -2.5) * (0.01275 * exp (-2239.1 / t_k) / (f_o + f2 / f_o) + 0.1068 * exp (-3352.0 / t_k) / (f_n + f2 / f_n)));
  return true;
}

/* 4 m V: the air as an absorbing area [m²] */
static double
air_area_m2 (double volume_m3,
             double air_db_m)
{
  return 4.0 * volume_m3 * air_db_m / DB_PER_NEPER_POWER;
}

/**
 * lr_reverberation_sabine_s:
 * @volume_m3: of the room [m³], > 0
 * @absorption_m2: of surfaces, people and things [m²], >= 0
 * @air_db_m: what the air takes [dB/m], >= 0
 * @time_s: (out): reverberation time, for 60 dB [s]
 *
 * `55.3 V / (c (A + 4 m V))`.
 *
 * Source: Kuttruff, Room Acoustics, chapter 5; EN 12354-6:2003, clause 4.
 *
 * Returns: %FALSE, with @time_s untouched, outside the domain or when nothing absorbs
 */
bool
lr_reverberation_sabine_s (double  volume_m3,
                           double  absorption_m2,
                           double  air_db_m,
                           double *time_s)
{
  double area_m2 = absorption_m2 + air_area_m2 (volume_m3, air_db_m);

  if (!lr_is_positive (volume_m3) || !lr_is_at_least_zero (absorption_m2) || !lr_is_at_least_zero (air_db_m) || !lr_is_positive (area_m2))
    return false;

  *time_s = MEAN_PATHS / LR_SOUND_SPEED_M_S * volume_m3 / area_m2;
  return true;
}

/**
 * lr_reverberation_eyring_s:
 * @volume_m3: of the room [m³], > 0
 * @surface_m2: of all that bounds it [m²], > 0
 * @surfaces_m2: absorption of that [m²], >= 0, < @surface_m2
 * @objects_m2: absorption of people and things [m²], >= 0
 * @air_db_m: what the air takes [dB/m], >= 0
 * @time_s: (out): reverberation time, for 60 dB [s]
 *
 * `55.3 V / (c (-S ln (1 - a) + n A + 4 m V))`, a the mean coefficient; objects stay outside the logarithm.
 *
 * Source: Eyring, JASA 1 (1930); Kuttruff, Room Acoustics, chapter 5.
 *
 * Returns: %FALSE, with @time_s untouched, outside the domain or when nothing absorbs
 */
bool
lr_reverberation_eyring_s (double  volume_m3,
                           double  surface_m2,
                           double  surfaces_m2,
                           double  objects_m2,
                           double  air_db_m,
                           double *time_s)
{
  if (!lr_is_positive (surface_m2) || !lr_is_at_least_zero (surfaces_m2) || !(surfaces_m2 < surface_m2) || !lr_is_at_least_zero (objects_m2))
    return false;

  return lr_reverberation_sabine_s (volume_m3, -surface_m2 * log1p (-surfaces_m2 / surface_m2) + objects_m2, air_db_m, time_s);
}

/**
 * lr_reverberation_area_m2:
 * @volume_m3: of the room [m³], > 0
 * @time_s: its reverberation time [s], > 0
 * @absorption_m2: (out): what absorbs in it [m²], the air included
 *
 * Source: Sabine's formula, as above, turned round.
 *
 * Returns: %FALSE, with @absorption_m2 untouched, outside the domain
 */
bool
lr_reverberation_area_m2 (double  volume_m3,
                          double  time_s,
                          double *absorption_m2)
{
  if (!lr_is_positive (volume_m3) || !lr_is_positive (time_s))
    return false;

  *absorption_m2 = MEAN_PATHS / LR_SOUND_SPEED_M_S * volume_m3 / time_s;
  return true;
}

/**
 * lr_critical_distance_m:
 * @directivity: intensity on the source's axis over its mean all round, > 0; 1: alike everywhere
 * @absorption_m2: of the room [m²], > 0
 * @distance_m: (out): where both are alike [m]
 *
 * `sqrt (Q A / 16 pi)`. A microphone that favours its axis hears from its distance factor times as far.
 *
 * Source: Kuttruff, Room Acoustics, chapter 5; Schroeder, JASA 99 (1996).
 *
 * Returns: %FALSE, with @distance_m untouched, outside the domain
 */
bool
lr_critical_distance_m (double  directivity,
                        double  absorption_m2,
                        double *distance_m)
{
  if (!lr_is_positive (directivity) || !lr_is_positive (absorption_m2))
    return false;

  *distance_m = sqrt (directivity * absorption_m2 / (16.0 * PI));
  return true;
}
