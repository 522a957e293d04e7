/* endurance.c - how much recording and running takes
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A byte is 8 bits, prefixes are decimal (IEC 80000-13, from memory); a watt-hour is 3,600 J: definitions.
 */

#include "endurance.h"

#include <math.h>

#define ROUNDING 1e-9
#define MOST 1e6 /* of whole things: beyond it a number is a mistake */

static bool
is_positive (double value)
{
  return isfinite (value) && value > 0.0;
}

/* Whole things that make up @times of one; false: too many to be meant */
static bool
round_up (double  times,
          int    *n)
{
  if (!(times >= 0.0) || times > MOST)
    return false;

  *n = (int) ceil (times - ROUNDING);
  return true;
}

/**
 * lr_recorded_gb:
 * @rate_mbit_s: of all that is recorded [10^6 bit/s], > 0
 * @time_s: how long [s], >= 0
 * @size_gb: (out): what it fills [10^9 bytes]
 *
 * Source: closed form, rate × time / 8.
 *
 * Returns: false, with @size_gb untouched, outside the domain
 */
bool
lr_recorded_gb (double  rate_mbit_s,
                double  time_s,
                double *size_gb)
{
  if (!is_positive (rate_mbit_s) || !isfinite (time_s) || time_s < 0.0)
    return false;

  *size_gb = rate_mbit_s * time_s / 8.0 / 1000.0;
  return true;
}

/**
 * lr_cards_needed:
 * @size_gb: what is recorded [10^9 bytes], >= 0
 * @card_gb: what one card holds [10^9 bytes], > 0
 * @fill_share: of it that is filled, (0, 1]
 * @n: (out): cards
 *
 * Returns: false, with @n untouched, outside the domain
 */
bool
lr_cards_needed (double  size_gb,
                 double  card_gb,
                 double  fill_share,
                 int    *n)
{
  return isfinite (size_gb) && is_positive (card_gb) && is_positive (fill_share) && fill_share <= 1.0
         && round_up (size_gb / (card_gb * fill_share), n);
}

/**
 * lr_battery_s:
 * @battery_wh: what it holds, as marked [Wh], > 0
 * @usable_share: of that, which can be had, (0, 1]
 * @draw_w: what it runs [W], > 0
 * @time_s: (out): how long [s]
 *
 * Source: closed form, energy over power.
 *
 * Returns: false, with @time_s untouched, outside the domain
 */
bool
lr_battery_s (double  battery_wh,
              double  usable_share,
              double  draw_w,
              double *time_s)
{
  if (!is_positive (battery_wh) || !is_positive (usable_share) || usable_share > 1.0 || !is_positive (draw_w))
    return false;

  *time_s = 3600.0 * usable_share * battery_wh / draw_w;
  return true;
}

/**
 * lr_batteries_needed:
 * @draw_w: what is run [W], > 0
 * @time_s: how long [s], >= 0
 * @more_share: of that time in reserve, >= 0
 * @battery_wh: what one holds, as marked [Wh], > 0
 * @usable_share: of that, which can be had, (0, 1]
 * @n: (out): batteries
 *
 * Returns: false, with @n untouched, outside the domain
 */
bool
lr_batteries_needed (double  draw_w,
                     double  time_s,
                     double  more_share,
                     double  battery_wh,
                     double  usable_share,
                     int    *n)
{
  double one_s;

  return isfinite (time_s) && time_s >= 0.0 && isfinite (more_share) && more_share >= 0.0
         && lr_battery_s (battery_wh, usable_share, draw_w, &one_s) && round_up (time_s * (1.0 + more_share) / one_s, n);
}
