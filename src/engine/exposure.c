/* exposure.c - from light to signal, and shutters that suit the mains
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Exposure by the equation of incident-light meters, `N^2 / t = E S / C` (ISO 2720:1974) with C = 250 for a flat receptor. A grey of 18 %
 * comes out in the middle then, and a matte white of 100 % at 1. The speed that a camera shows is its maker's choice: what is
 * predicted is right to half a stop at best.
 */

#include "exposure.h"

#include "domain.h"

#define METER_C 250.0
#define STOPS_PER_DENSITY 3.3219280948873623 /* log2 10 */
#define WHOLE_PULSES 0.01  /* so near to a whole number of pulses counts as one */
#define WHOLE_FRAMES 1e-6

static bool
is_known (const LrExposure *exposure)
{
  return lr_is_positive (exposure->f_number) && lr_is_positive (exposure->shutter_s) && lr_is_positive (exposure->iso)
         && lr_is_at_least_zero (exposure->nd_stops);
}

/**
 * lr_exposure_lx:
 * @exposure: how the camera is set
 * @lux: (out): illuminance for which that is right [lx]
 *
 * Source: ISO 2720:1974, C = 250.
 *
 * Returns: %FALSE, with @lux untouched, unless every setting is in its domain
 */
bool
lr_exposure_lx (const LrExposure *exposure,
                double           *lux)
{
  if (!is_known (exposure))
    return false;

  *lux = METER_C * exposure->f_number * exposure->f_number * exp2 (exposure->nd_stops) / (exposure->shutter_s * exposure->iso);
  return true;
}

/**
 * lr_exposure_share:
 * @exposure: how the camera is set
 * @lux: illuminance on the surface [lx], >= 0
 * @reflectance: of the surface, 0 to 1
 * @share: (out): of the level of a perfect white in the light that the exposure is right for
 *
 * Source: as lr_exposure_lx(); Lambert's law.
 *
 * Returns: %FALSE, with @share untouched, unless every number is in its domain
 */
bool
lr_exposure_share (const LrExposure *exposure,
                   double            lux,
                   double            reflectance,
                   double           *share)
{
  double right_lx;

  if (!lr_exposure_lx (exposure, &right_lx) || !lr_is_at_least_zero (lux) || !lr_is_at_least_zero (reflectance) || reflectance > 1.0)
    return false;

  *share = reflectance * lux / right_lx;
  return true;
}

/**
 * lr_exposure_stops_to:
 * @exposure: how the camera is set
 * @lux: illuminance on the surface [lx], > 0
 * @reflectance: of the surface, > 0 to 1
 * @share: at which it is wanted, > 0
 * @stops: (out): how much more light, or less filter, it takes
 *
 * Returns: %FALSE, with @stops untouched, unless every number is in its domain
 */
bool
lr_exposure_stops_to (const LrExposure *exposure,
                      double            lux,
                      double            reflectance,
                      double            share,
                      double           *stops)
{
  double now;

  if (!lr_is_positive (share) || !lr_exposure_share (exposure, lux, reflectance, &now) || !lr_is_positive (now))
    return false;

  *stops = log2 (share / now);
  return true;
}

/**
 * lr_signal_of_share:
 * @share: of white, >= 0; over 1 it clips
 *
 * Source: ITU-R BT.709-6, item 1.2.
 *
 * Returns: the signal, 0 to 1
 */
double
lr_signal_of_share (double share)
{
  double l = fmin (1.0, fmax (0.0, share));

  return l < 0.018 ? 4.5 * l : 1.099 * pow (l, 0.45) - 0.099;
}

/**
 * lr_share_of_signal:
 * @signal: 0 to 1
 *
 * Source: ITU-R BT.709-6, item 1.2, turned round.
 *
 * Returns: the share of white, 0 to 1
 */
double
lr_share_of_signal (double signal)
{
  double v = fmin (1.0, fmax (0.0, signal));

  return v < 0.081 ? v / 4.5 : pow ((v + 0.099) / 1.099, 1.0 / 0.45);
}

/**
 * lr_shutter_s:
 * @angle_rad: opening of the shutter [rad], in (0, 2 pi]
 * @fps: pictures a second, > 0
 * @shutter_s: (out): exposure time [s]
 *
 * Source: definition, `angle / (2 pi fps)`.
 *
 * Returns: %FALSE, with @shutter_s untouched, unless both numbers are in their domain
 */
bool
lr_shutter_s (double  angle_rad,
              double  fps,
              double *shutter_s)
{
  if (!lr_is_positive (angle_rad) || angle_rad > 2.0 * LR_PI + 1e-9 || !lr_is_positive (fps))
    return false;

  *shutter_s = angle_rad / (2.0 * LR_PI * fps);
  return true;
}

/**
 * lr_shutter_rad:
 * @shutter_s: exposure time [s], > 0
 * @fps: pictures a second, > 0
 * @angle_rad: (out): opening of a turning shutter that exposes as long [rad]; over 2 pi there is none
 *
 * Source: definition, `2 pi fps t`.
 *
 * Returns: %FALSE, with @angle_rad untouched, unless both numbers are in their domain
 */
bool
lr_shutter_rad (double  shutter_s,
                double  fps,
                double *angle_rad)
{
  if (!lr_is_positive (shutter_s) || !lr_is_positive (fps))
    return false;

  *angle_rad = 2.0 * LR_PI * fps * shutter_s;
  return true;
}

/**
 * lr_t_stop:
 * @f_number: the f-number, > 0
 * @transmittance: of the lens, > 0 to 1
 * @t_stop: (out): the T-stop
 *
 * Source: definition, `N / sqrt (transmittance)`.
 *
 * Returns: %FALSE, with @t_stop untouched, unless both numbers are in their domain
 */
bool
lr_t_stop (double  f_number,
           double  transmittance,
           double *t_stop)
{
  if (!lr_is_positive (f_number) || !lr_is_positive (transmittance) || transmittance > 1.0)
    return false;

  *t_stop = f_number / sqrt (transmittance);
  return true;
}

/**
 * lr_nd_stops:
 * @density: optical density of a grey filter, >= 0
 * @stops: (out): how much it takes
 *
 * Source: ISO 5-2, density is the logarithm to base 10 of the reciprocal transmittance.
 *
 * Returns: %FALSE, with @stops untouched, unless the density is in its domain
 */
bool
lr_nd_stops (double  density,
             double *stops)
{
  if (!lr_is_at_least_zero (density))
    return false;

  *stops = density * STOPS_PER_DENSITY;
  return true;
}

/**
 * lr_nd_density:
 * @stops: how much a grey filter takes, >= 0
 * @density: (out): its optical density
 *
 * Source: ISO 5-2, as lr_nd_stops().
 *
 * Returns: %FALSE, with @density untouched, unless @stops is in its domain
 */
bool
lr_nd_density (double  stops,
               double *density)
{
  if (!lr_is_at_least_zero (stops))
    return false;

  *density = stops / STOPS_PER_DENSITY;
  return true;
}

/**
 * lr_flicker:
 * @mains_hz: frequency of the mains [Hz], > 0
 * @fps: pictures a second, > 0
 * @shutter_s: exposure time [s], > 0
 * @reading: (out): what lamps that pulse with the mains do to the picture
 *
 * Such lamps pulse twice in a period. A whole number of pulses in each exposure gives every row of every picture the same light. Else
 * pictures are alike if they hold a whole number of pulses from one to the next, but the rows of a rolling shutter are not. Lamps
 * that are dimmed at a high frequency are another matter.
 *
 * Source: closed form; the ripple is the mean of a sine over the exposure, `sin (pi n) / (pi n)`.
 *
 * Returns: %FALSE, with @reading untouched, unless every number is in its domain
 */
bool
lr_flicker (double            mains_hz,
            double            fps,
            double            shutter_s,
            LrFlickerReading *reading)
{
  double pulse_hz = 2.0 * mains_hz, n = pulse_hz * shutter_s, per_frame = pulse_hz / fps, whole = round (n), most = floor (per_frame + WHOLE_PULSES);
  LrFlickerReading read = { .pulses = n };

  if (!lr_is_positive (mains_hz) || !lr_is_positive (fps) || !lr_is_positive (shutter_s))
    return false;

  read.ripple = fabs (sin (LR_PI * n) / (LR_PI * n));
  read.nearest_s = fmax (1.0, fmin (whole, most)) / pulse_hz;
  if (whole >= 1.0 && fabs (n - whole) <= WHOLE_PULSES)
    read.grade = LR_FLICKER_NONE;
  else if (fabs (per_frame - round (per_frame)) <= WHOLE_FRAMES)
    read.grade = LR_FLICKER_BANDS;
  else
    {
      read.grade = LR_FLICKER_BEATS;
      read.beat_hz = fabs (pulse_hz - round (per_frame) * fps);
    }

  *reading = read;
  return true;
}

/**
 * lr_steady_shutter_s:
 * @mains_hz: frequency of the mains [Hz], > 0
 * @fps: pictures a second, > 0
 * @least_s: shortest exposure time [s], > 0
 * @most_s: longest [s]
 * @wanted_s: what it is to be near [s]
 * @shutter_s: (out): an exposure time of whole pulses of such lamps [s]
 *
 * No longer than a picture, whatever @most_s is. Of two that are as near the shorter one is taken, which more cameras have: 24 pictures a second
 * on 60 Hz are shot at 144 degrees, a sixtieth, rather than at 216 (common practice, no source).
 *
 * Source: closed form, as lr_flicker().
 *
 * Returns: %FALSE, with @shutter_s untouched, if there is none, or a number is not in its domain
 */
bool
lr_steady_shutter_s (double  mains_hz,
                     double  fps,
                     double  least_s,
                     double  most_s,
                     double  wanted_s,
                     double *shutter_s)
{
  double pulse_hz = 2.0 * mains_hz, longest_s = fmin (most_s, (1.0 + WHOLE_FRAMES) / fps), least, most;

  if (!lr_is_positive (mains_hz) || !lr_is_positive (fps) || !lr_is_positive (least_s) || !lr_is_positive (longest_s)
      || !lr_is_positive (wanted_s))
    return false;

  least = fmax (1.0, ceil (pulse_hz * least_s - WHOLE_FRAMES));
  most = floor (pulse_hz * longest_s + WHOLE_FRAMES);
  if (most < least)
    return false;

  *shutter_s = fmin (most, fmax (least, ceil (pulse_hz * wanted_s - 0.5 - WHOLE_PULSES))) / pulse_hz;
  return true;
}
