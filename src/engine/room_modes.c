/* room_modes.c - what a room's and a table's hard faces do to a voice
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Modes: Rayleigh. Flutter and comb: mirror images of the source, each face giving back 1 - absorption of the energy.
 */

#include "room_modes.h"

#include "domain.h"

#include "reverberation.h"

/**
 * lr_room_mode_hz:
 * @sides_m: of a box [m], > 0
 * @half_waves: along each, >= 0, not all 0
 * @frequency_hz: (out)
 *
 * `c / 2 sqrt ((p / L)² + (q / W)² + (r / H)²)`.
 *
 * Source: Rayleigh, The Theory of Sound; Kuttruff, Room Acoustics, chapter 3.
 *
 * Returns: %FALSE, with @frequency_hz untouched, outside the domain
 */
bool
lr_room_mode_hz (const double  sides_m[3],
                 const int     half_waves[3],
                 double       *frequency_hz)
{
  double sum = 0.0;

  for (int i = 0; i < 3; i++)
    {
      double k = half_waves[i] / sides_m[i];

      if (!lr_is_positive (sides_m[i]) || half_waves[i] < 0)
        return false;
      sum += k * k;
    }
  if (!(sum > 0.0))
    return false;

  *frequency_hz = 0.5 * LR_SOUND_SPEED_M_S * sqrt (sum);
  return true;
}

/**
 * lr_schroeder_hz:
 * @time_s: reverberation time [s], > 0
 * @volume_m3: of the room [m³], > 0
 * @frequency_hz: (out)
 *
 * `2000 sqrt (T / V)`.
 *
 * Source: Schroeder, JASA 99 (1996).
 *
 * Returns: %FALSE, with @frequency_hz untouched, outside the domain
 */
bool
lr_schroeder_hz (double  time_s,
                 double  volume_m3,
                 double *frequency_hz)
{
  if (!lr_is_positive (time_s) || !lr_is_positive (volume_m3))
    return false;

  *frequency_hz = 2000.0 * sqrt (time_s / volume_m3);
  return true;
}

/**
 * lr_flutter:
 * @spacing_m: of the faces [m], > 0
 * @absorption_a: of one, 0 .. 1
 * @absorption_b: of the other
 * @flutter: (out caller-allocates)
 *
 * Repeats every 2 L / c, and loses -5 lg ((1 - a) (1 - b)) dB a crossing, in the mean.
 *
 * Source: closed form.
 *
 * Returns: %FALSE, with @flutter untouched, outside the domain or when nothing or everything is absorbed
 */
bool
lr_flutter (double     spacing_m,
            double     absorption_a,
            double     absorption_b,
            LrFlutter *flutter)
{
  double kept = (1.0 - absorption_a) * (1.0 - absorption_b);

  if (!lr_is_positive (spacing_m) || !(absorption_a >= 0.0 && absorption_a < 1.0) || !(absorption_b >= 0.0 && absorption_b < 1.0)
      || !(kept < 1.0))
    return false;

  flutter->period_s = 2.0 * spacing_m / LR_SOUND_SPEED_M_S;
  flutter->ring_s = 60.0 * spacing_m / (LR_SOUND_SPEED_M_S * -5.0 * log10 (kept));
  return true;
}

/**
 * lr_comb:
 * @direct_m: from the source straight to the microphone [m], > 0
 * @reflected_m: by the face [m], > @direct_m
 * @absorption: of the face, 0 .. 1
 * @comb: (out caller-allocates)
 *
 * First notch c / 2 D, D the longer way's excess; the reflection is `d / r sqrt (1 - a)` as strong.
 *
 * Source: Everest, Master Handbook of Acoustics, on comb filters; closed form.
 *
 * Returns: %FALSE, with @comb untouched, outside the domain
 */
bool
lr_comb (double  direct_m,
         double  reflected_m,
         double  absorption,
         LrComb *comb)
{
  double excess_m = reflected_m - direct_m;

  if (!lr_is_positive (direct_m) || !isfinite (reflected_m) || !(excess_m > 1e-9) || !(absorption >= 0.0 && absorption <= 1.0))
    return false;

  comb->delay_s = excess_m / LR_SOUND_SPEED_M_S;
  comb->notch_hz = 0.5 / comb->delay_s;
  comb->share = direct_m / reflected_m * sqrt (1.0 - absorption);
  comb->peak_db = 20.0 * log10 (1.0 + comb->share);
  comb->notch_db = 20.0 * log10 (1.0 - comb->share);
  return true;
}
