/* pattern.c - how a microphone favours its axis
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * First-order patterns: Eargle and Rayburn, The Microphone Book, chapters 5 and 6. An interference tube is taken as open evenly along
 * its length before such a capsule: each part of it lets the sound in, and what comes from the side comes in by paths of different
 * length. Real tubes are damped and differ; below c / 2 L none does anything, and the microphone is its capsule.
 */

#include "pattern.h"

#include "domain.h"

#include "reverberation.h"

#define PI 3.14159265358979323846
#define LEAST_STEPS 32
#define STEPS_PER_RAD 8.0
#define MAX_STEPS 2000

static bool
is_pattern (const LrPattern *pattern,
            double           frequency_hz)
{
  return pattern->omni_share >= 0.0 && pattern->omni_share <= 1.0 && lr_is_at_least_zero (pattern->tube_m) && lr_is_positive (frequency_hz);
}

static double
amplitude (const LrPattern *pattern,
           double           cosine,
           double           frequency_hz)
{
  double capsule = pattern->omni_share + (1.0 - pattern->omni_share) * cosine;
  double x = PI * pattern->tube_m * frequency_hz / LR_SOUND_SPEED_M_S * (1.0 - cosine);

  return x > 1e-6 ? capsule * sin (x) / x : capsule;
}

/**
 * lr_pattern_level_db:
 * @pattern: of a microphone
 * @off_axis_rad: angle between its axis and the way to a source [rad]
 * @frequency_hz: > 0; matters with a tube alone
 * @level_db: (out): against the same source on the axis [dB], <= 0; -HUGE_VAL where the pattern is deaf
 *
 * `20 lg |a + (1 - a) cos t|`, and with a tube times `sin x / x`, x = pi L f / c (1 - cos t).
 *
 * Source: Eargle and Rayburn, The Microphone Book, chapters 5 and 6; the tube in closed form.
 *
 * Returns: %FALSE, with @level_db untouched, outside the domain
 */
bool
lr_pattern_level_db (const LrPattern *pattern,
                     double           off_axis_rad,
                     double           frequency_hz,
                     double          *level_db)
{
  if (!is_pattern (pattern, frequency_hz) || !isfinite (off_axis_rad))
    return false;

  *level_db = 20.0 * log10 (fabs (amplitude (pattern, cos (off_axis_rad), frequency_hz)));
  return true;
}

/* Simpson's rule over the cosine, with steps for each turn of the tube's ripple */
static double
integrate_efficiency (const LrPattern *pattern,
                      double           frequency_hz)
{
  double most_rad = 2.0 * PI * pattern->tube_m * frequency_hz / LR_SOUND_SPEED_M_S, sum = 0.0;
  int n = 2 * (int) fmin (LEAST_STEPS + STEPS_PER_RAD * most_rad, MAX_STEPS);

  for (int i = 0; i <= n; i++)
    {
      double s = amplitude (pattern, -1.0 + 2.0 * i / n, frequency_hz);

      sum += (i == 0 || i == n ? 1.0 : i % 2 != 0 ? 4.0 : 2.0) * s * s;
    }

  return sum / (3.0 * n);
}

/**
 * lr_pattern_efficiency:
 * @pattern: of a microphone
 * @frequency_hz: > 0; matters with a tube alone
 * @efficiency: (out): of sound from everywhere, against an omni, 0 .. 1
 *
 * `(1 - 2 a + 4 a²) / 3`; with a tube the mean of the squared pattern over the sphere, by Simpson's rule.
 *
 * Source: Eargle and Rayburn, The Microphone Book, eq. 6.4.
 *
 * Returns: %FALSE, with @efficiency untouched, outside the domain
 */
bool
lr_pattern_efficiency (const LrPattern *pattern,
                       double           frequency_hz,
                       double          *efficiency)
{
  double a = pattern->omni_share;

  if (!is_pattern (pattern, frequency_hz))
    return false;

  *efficiency = pattern->tube_m > 0.0 ? integrate_efficiency (pattern, frequency_hz) : (1.0 - 2.0 * a + 4.0 * a * a) / 3.0;
  return true;
}

/**
 * lr_pattern_directivity:
 * @pattern: of a microphone
 * @frequency_hz: > 0; matters with a tube alone
 * @index_db: (out): by how much less than an omni it hears of sound from everywhere [dB]
 * @distance_factor: (out): so many times as far as an omni, for the same direct sound over reverberation
 *
 * Source: Eargle and Rayburn, The Microphone Book, eqs. 6.5 and 6.6.
 *
 * Returns: %FALSE, with nothing written, outside the domain
 */
bool
lr_pattern_directivity (const LrPattern *pattern,
                        double           frequency_hz,
                        double          *index_db,
                        double          *distance_factor)
{
  double efficiency;

  if (!lr_pattern_efficiency (pattern, frequency_hz, &efficiency))
    return false;

  *index_db = -10.0 * log10 (efficiency);
  *distance_factor = 1.0 / sqrt (efficiency);
  return true;
}

/**
 * lr_pattern_null_rad:
 * @omni_share: of a first-order pattern, 0 .. 1
 * @null_rad: (out): off the axis, where it is deaf [rad]
 *
 * `acos (-a / (1 - a))`.
 *
 * Source: closed form.
 *
 * Returns: %FALSE, with @null_rad untouched, if it is deaf nowhere
 */
bool
lr_pattern_null_rad (double  omni_share,
                     double *null_rad)
{
  if (!(omni_share >= 0.0 && omni_share <= 0.5))
    return false;

  *null_rad = acos (-omni_share / (1.0 - omni_share));
  return true;
}
