/* color.c - the color of white light
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "color.h"

#include "domain.h"

#define LEAST_K 1667.0
#define MOST_K 25000.0
#define LEAST_DAYLIGHT_K 4000.0
#define MOST_MCCAMY_K 10000.0
#define LEAST_MCCAMY_K 2000.0
#define DAYLIGHT_FROM_K 5000.0

/**
 * lr_mired:
 * @kelvin: color temperature [K], > 0
 * @mired: (out): reciprocal megakelvin
 *
 * Source: definition, `10^6 / T`.
 *
 * Returns: %FALSE, with @mired untouched, unless the temperature is in its domain
 */
bool
lr_mired (double  kelvin,
          double *mired)
{
  if (!lr_is_positive (kelvin))
    return false;

  *mired = 1e6 / kelvin;
  return true;
}

/**
 * lr_mired_shift:
 * @from_k: color temperature without the filter [K], > 0
 * @to_k: with it [K], > 0
 * @mired: (out): shift of the filter; > 0 warms
 *
 * Source: definition.
 *
 * Returns: %FALSE, with @mired untouched, unless both temperatures are in their domain
 */
bool
lr_mired_shift (double  from_k,
                double  to_k,
                double *mired)
{
  if (!lr_is_positive (from_k) || !lr_is_positive (to_k))
    return false;

  *mired = 1e6 / to_k - 1e6 / from_k;
  return true;
}

/**
 * lr_shifted_k:
 * @kelvin: color temperature without the filter [K], > 0
 * @shift_mired: of the filter; > 0 warms
 * @shifted_k: (out): with it [K]
 *
 * Source: definition.
 *
 * Returns: %FALSE, with @shifted_k untouched, if there is no such temperature
 */
bool
lr_shifted_k (double  kelvin,
              double  shift_mired,
              double *shifted_k)
{
  double mired;

  if (!lr_mired (kelvin, &mired) || !lr_is_positive (mired + shift_mired))
    return false;

  *shifted_k = 1e6 / (mired + shift_mired);
  return true;
}

static double
cubic (double t,
       double c3,
       double c2,
       double c1,
       double c0)
{
  return ((c3 * t + c2) * t + c1) * t + c0;
}

/**
 * lr_planck_locus:
 * @kelvin: [K], 1667 to 25000
 * @chromaticity: (out): of a black body
 *
 * Source: Kang, Moon, Hong, Lee, Cho, Kim, Journal of the Korean Physical Society 41 (2002), 865-871: cubics that stay within 0.0006 of
 * Planck's law.
 *
 * Returns: %FALSE, with @chromaticity untouched, outside that range
 */
bool
lr_planck_locus (double          kelvin,
                 LrChromaticity *chromaticity)
{
  double r = 1e3 / kelvin, x, y;

  if (!(kelvin >= LEAST_K && kelvin <= MOST_K))
    return false;

  x = kelvin <= 4000.0 ? cubic (r, -0.2661239, -0.2343589, 0.8776956, 0.179910) : cubic (r, -3.0258469, 2.1070379, 0.2226347, 0.240390);
  y = kelvin <= 2222.0   ? cubic (x, -1.1063814, -1.34811020, 2.18555832, -0.20219683)
      : kelvin <= 4000.0 ? cubic (x, -0.9549476, -1.37418593, 2.09137015, -0.16748867)
                         : cubic (x, 3.0817580, -5.87338670, 3.75112997, -0.37001483);
  *chromaticity = (LrChromaticity) { x, y };
  return true;
}

/**
 * lr_daylight_locus:
 * @kelvin: [K], 4000 to 25000
 * @chromaticity: (out): of a phase of daylight
 *
 * Source: CIE 15, Colorimetry. Illuminant D65 is 6503.6 K: its name comes from an older constant.
 *
 * Returns: %FALSE, with @chromaticity untouched, outside that range
 */
bool
lr_daylight_locus (double          kelvin,
                   LrChromaticity *chromaticity)
{
  double r = 1e3 / kelvin, x;

  if (!(kelvin >= LEAST_DAYLIGHT_K && kelvin <= MOST_K))
    return false;

  x = kelvin <= 7000.0 ? cubic (r, -4.6070, 2.9678, 0.09911, 0.244063) : cubic (r, -2.0064, 1.9018, 0.24748, 0.237040);
  *chromaticity = (LrChromaticity) { x, (-3.0 * x + 2.870) * x - 0.275 };
  return true;
}

/**
 * lr_white:
 * @kelvin: [K], 1667 to 25000
 * @chromaticity: (out): of a lamp of that color temperature
 *
 * Planckian up to 4000 K, daylight from 5000 K on, and evenly from one to the other in between: common practice, no source. What a
 * lamp is off towards green or magenta its color temperature does not tell.
 *
 * Returns: %FALSE, with @chromaticity untouched, outside that range
 */
bool
lr_white (double          kelvin,
          LrChromaticity *chromaticity)
{
  LrChromaticity warm, cool;
  double share = (kelvin - LEAST_DAYLIGHT_K) / (DAYLIGHT_FROM_K - LEAST_DAYLIGHT_K);

  if (!lr_planck_locus (kelvin, &warm))
    return false;

  share = fmin (1.0, fmax (0.0, share));
  cool = warm;
  if (share > 0.0)
    lr_daylight_locus (kelvin, &cool);
  *chromaticity = (LrChromaticity) { warm.x + share * (cool.x - warm.x), warm.y + share * (cool.y - warm.y) };
  return true;
}

/**
 * lr_correlated_k:
 * @chromaticity: of nearly white light
 * @kelvin: (out): its correlated color temperature [K]
 *
 * Source: McCamy, Color Research and Application 17 (1992), 142-144: within a few kelvin from 2856 to 6500 K; 1.2 % too low at 10000 K,
 * where it ends here.
 *
 * Returns: %FALSE, with @kelvin untouched, if it is not between 2000 and 10000 K
 */
bool
lr_correlated_k (LrChromaticity chromaticity,
                 double        *kelvin)
{
  double n = (chromaticity.x - 0.3320) / (0.1858 - chromaticity.y), t = cubic (n, 449.0, 3525.0, 6823.3, 5520.33);

  if (!(t >= LEAST_MCCAMY_K && t <= MOST_MCCAMY_K))
    return false;

  *kelvin = t;
  return true;
}

/**
 * lr_mix_white:
 * @kelvin: color temperatures of the sources [K], 1667 to 25000
 * @lux: what each gives there [lx], >= 0, one of them > 0
 * @n: their number, > 0
 * @chromaticity: (out): of all of them together
 *
 * Source: additivity of tristimulus values (CIE 15): with luminance Y, `X + Y + Z = Y / y`.
 *
 * Returns: %FALSE, with @chromaticity untouched, unless every number is in its domain
 */
bool
lr_mix_white (const double   *kelvin,
              const double   *lux,
              size_t          n,
              LrChromaticity *chromaticity)
{
  double sum = 0.0, sum_x = 0.0, sum_y = 0.0;

  for (size_t i = 0; i < n; i++)
    {
      LrChromaticity white;

      if (!lr_is_at_least_zero (lux[i]) || !lr_white (kelvin[i], &white))
        return false;
      sum += lux[i] / white.y;
      sum_x += white.x * lux[i] / white.y;
      sum_y += lux[i];
    }
  if (!lr_is_positive (sum))
    return false;

  *chromaticity = (LrChromaticity) { sum_x / sum, sum_y / sum };
  return true;
}

/**
 * lr_tint:
 * @chromaticity: of a light, y > 0
 * @red: (out): 0 to 1, linear
 * @green: (out): 0 to 1, linear
 * @blue: (out): 0 to 1, linear
 *
 * The white of the drawing is D65: warm light is drawn orange.
 *
 * Source: IEC 61966-2-1 (sRGB), its matrix from XYZ.
 *
 * Returns: %FALSE, with all untouched, for what has no chromaticity
 */
bool
lr_tint (LrChromaticity chromaticity,
         double        *red,
         double        *green,
         double        *blue)
{
  double x = chromaticity.x / chromaticity.y, z = (1.0 - chromaticity.x - chromaticity.y) / chromaticity.y;
  double r = 3.2404542 * x - 1.5371385 - 0.4985314 * z, g = -0.9692660 * x + 1.8760108 + 0.0415560 * z;
  double b = 0.0556434 * x - 0.2040259 + 1.0572252 * z, most = fmax (r, fmax (g, b));

  if (!lr_is_positive (chromaticity.y) || !lr_is_positive (most))
    return false;

  *red = fmax (0.0, r / most);
  *green = fmax (0.0, g / most);
  *blue = fmax (0.0, b / most);
  return true;
}
