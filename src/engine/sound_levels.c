/* sound_levels.c - levels of voices and noises in a room
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A steady source in a room: L = L_W + 10 lg (Q / 4 pi r² + 4 / A); Kuttruff, Room Acoustics, chapter 5; Beranek, Acoustics.
 */

#include "sound_levels.h"

#include "domain.h"

#define PI 3.14159265358979323846
#define DB_PER_DEGREE 0.05

/**
 * lr_level_sum_db:
 * @levels_db: (array length=n): levels; -HUGE_VAL: silent
 * @n: how many
 *
 * `10 lg sum 10^(L / 10)`.
 *
 * Source: Davis and Patronis, Sound System Engineering, 2.15.
 *
 * Returns: the level of all of them [dB]; -HUGE_VAL of none
 */
double
lr_level_sum_db (const double *levels_db,
                 size_t        n)
{
  double sum = 0.0;

  for (size_t i = 0; i < n; i++)
    sum += pow (10.0, 0.1 * levels_db[i]);

  return sum > 0.0 ? 10.0 * log10 (sum) : -HUGE_VAL;
}

/* Share of the power that falls on a square metre, straight */
static double
direct_share (double distance_m,
              double directivity)
{
  return directivity / (4.0 * PI * distance_m * distance_m);
}

/**
 * lr_level_power_db:
 * @level_db: read by a meter in the room [dB]
 * @distance_m: from the source [m], > 0
 * @directivity: of the source, > 0
 * @absorption_m2: of the room [m²], > 0
 * @power_db: (out): what the source gives off [dB re 1 pW]
 *
 * A reading in a room holds the room's answer; to take it for the direct sound alone makes the noise too loud.
 *
 * Source: the head of this file, turned round.
 *
 * Returns: %FALSE, with @power_db untouched, outside the domain
 */
bool
lr_level_power_db (double  level_db,
                   double  distance_m,
                   double  directivity,
                   double  absorption_m2,
                   double *power_db)
{
  if (!isfinite (level_db) || !lr_is_positive (distance_m) || !lr_is_positive (directivity) || !lr_is_positive (absorption_m2))
    return false;

  *power_db = level_db - 10.0 * log10 (direct_share (distance_m, directivity) + 4.0 / absorption_m2);
  return true;
}

/**
 * lr_level_free_power_db:
 * @level_db: straight from the source [dB]
 * @distance_m: from it [m], > 0
 * @directivity: of the source, > 0
 * @power_db: (out): what it gives off [dB re 1 pW]
 *
 * Source: the head of this file without the room.
 *
 * Returns: %FALSE, with @power_db untouched, outside the domain
 */
bool
lr_level_free_power_db (double  level_db,
                        double  distance_m,
                        double  directivity,
                        double *power_db)
{
  if (!isfinite (level_db) || !lr_is_positive (distance_m) || !lr_is_positive (directivity))
    return false;

  *power_db = level_db - 10.0 * log10 (direct_share (distance_m, directivity));
  return true;
}

/**
 * lr_level_direct_db:
 * @power_db: what a source gives off [dB re 1 pW]
 * @distance_m: from it [m], > 0
 * @directivity: of it, that way, > 0
 * @level_db: (out): straight from it [dB]
 *
 * Source: the head of this file.
 *
 * Returns: %FALSE, with @level_db untouched, outside the domain
 */
bool
lr_level_direct_db (double  power_db,
                    double  distance_m,
                    double  directivity,
                    double *level_db)
{
  if (!isfinite (power_db) || !lr_is_positive (distance_m) || !lr_is_positive (directivity))
    return false;

  *level_db = power_db + 10.0 * log10 (direct_share (distance_m, directivity));
  return true;
}

/**
 * lr_level_diffuse_db:
 * @power_db: what a source gives off [dB re 1 pW]
 * @absorption_m2: of the room [m²], > 0
 * @level_db: (out): what the room answers [dB]
 *
 * Source: the head of this file.
 *
 * Returns: %FALSE, with @level_db untouched, outside the domain
 */
bool
lr_level_diffuse_db (double  power_db,
                     double  absorption_m2,
                     double *level_db)
{
  if (!isfinite (power_db) || !lr_is_positive (absorption_m2))
    return false;

  *level_db = power_db + 10.0 * log10 (4.0 / absorption_m2);
  return true;
}

/**
 * lr_voice_turned_db:
 * @off_mouth_rad: between the way that the mouth points and the microphone, -pi .. pi [rad]
 *
 * A-weighted: 1.5 dB for 30 degrees, some 10 dB from front to back; more of the high notes.
 *
 * Source: a rule of primers of room acoustics; measured: Chu and Warnock, NRC IRC RR-104 (2002), figures not seen.
 *
 * Returns: level against straight ahead [dB], <= 0
 */
double
lr_voice_turned_db (double off_mouth_rad)
{
  return -DB_PER_DEGREE * fmin (fabs (off_mouth_rad), PI) * 180.0 / PI;
}
