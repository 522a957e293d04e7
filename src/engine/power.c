/* power.c - what lamps draw from a circuit and what is lost in a lead
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sources: IEC 60228, class 5, plain copper, for metric sizes; ASTM B258 for American wire gauges; circuit theory.
 */

#include "power.h"

#include "domain.h"
#include "vec.h"

#include <stddef.h>

#define COPPER_OHM_MM2_KM 17.241 /* annealed, 20 °C: IEC 60028 */
#define CLASS_5_OHM_MM2_KM 19.95 /* the most that a size of 1.5 or 2.5 mm² comes to; other sizes have no more */
#define ZERO_RESISTANCE_C 234.5  /* below 0 °C, copper: IEC 60228, correction of temperature */
#define SAME_MM2 0.006           /* sizes are written with two decimals */

typedef struct
{
  double core_mm2, ohm_km;
} Size;

/* 0.75 to 2.5 mm²: the tables of IEC 60228; 0.5 and from 4 mm² on from memory */
static const Size sizes[] = {
  { 0.5, 39.0 }, { 0.75, 26.0 }, { 1.0, 19.5 }, { 1.5, 13.3 }, { 2.5, 7.98 },
  { 4.0, 4.95 }, { 6.0, 3.30 }, { 10.0, 1.91 }, { 16.0, 1.21 },
};

/**
 * lr_power_current_a:
 * @power_w: what it takes [W], >= 0
 * @volts_v: of the mains [V], > 0
 * @power_factor: 0 to 1, > 0
 * @current_a: (out): the current [A]
 *
 * `I = P / (V PF)`. Source: circuit theory.
 *
 * Returns: false, with @current_a untouched, if a number is not in its domain
 */
bool
lr_power_current_a (double  power_w,
                    double  volts_v,
                    double  power_factor,
                    double *current_a)
{
  if (!lr_is_at_least_zero (power_w) || !lr_is_positive (volts_v) || !lr_is_positive (power_factor) || power_factor > 1.0)
    return false;

  *current_a = power_w / (volts_v * power_factor);
  return true;
}

/* Area of an American wire gauge: d = 0.127 mm 92^((36 - n) / 39) */
static double
gauge_mm2 (int gauge)
{
  double d_mm = 0.127 * pow (92.0, (36.0 - gauge) / 39.0);

  return 0.25 * LR_PI * d_mm * d_mm;
}

/**
 * lr_power_resistance_ohm_km:
 * @core_mm2: cross-section of a conductor [mm²], > 0
 * @ohm_km: (out): its resistance at 20 °C [Ω/km]
 *
 * A metric size has what IEC 60228 allows a flexible conductor at most, an even American gauge that of solid copper of its
 * area; any other size what the metric ones come to per area.
 *
 * Returns: false, with @ohm_km untouched, unless @core_mm2 is finite and > 0
 */
bool
lr_power_resistance_ohm_km (double  core_mm2,
                            double *ohm_km)
{
  if (!lr_is_positive (core_mm2))
    return false;

  for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++)
    if (fabs (core_mm2 - sizes[i].core_mm2) < SAME_MM2)
      {
        *ohm_km = sizes[i].ohm_km;
        return true;
      }
  for (int gauge = 6; gauge <= 18; gauge += 2)
    if (fabs (core_mm2 - gauge_mm2 (gauge)) < SAME_MM2)
      {
        *ohm_km = COPPER_OHM_MM2_KM / gauge_mm2 (gauge);
        return true;
      }

  *ohm_km = CLASS_5_OHM_MM2_KM / core_mm2;
  return true;
}

/**
 * lr_power_bears_a:
 * @core_mm2: cross-section of a conductor [mm²], > 0
 * @current_a: (out): what it bears for hours, lying free and unwound [A]
 *
 * The next smaller size of the table counts for one in between.
 *
 * Source: BS 7671:2018, table 4F3A, flexible cords of two cores, from memory. What is marked on lead, plug and reel goes before it.
 *
 * Returns: false, with @current_a untouched, unless @core_mm2 is finite and at least that of the table's thinnest, 0.5 mm²
 */
bool
lr_power_bears_a (double  core_mm2,
                  double *current_a)
{
  static const struct { double core_mm2, current_a; } cords[] = {
    { 0.5, 3.0 }, { 0.75, 6.0 }, { 1.0, 10.0 }, { 1.25, 13.0 }, { 1.5, 16.0 }, { 2.5, 25.0 }, { 4.0, 32.0 },
  };
  bool is_found = false;

  for (size_t i = 0; isfinite (core_mm2) && i < sizeof cords / sizeof *cords && core_mm2 >= cords[i].core_mm2 - SAME_MM2; i++)
    {
      *current_a = cords[i].current_a;
      is_found = true;
    }

  return is_found;
}

/**
 * lr_power_drop_v:
 * @length_m: of the lead, one way [m], >= 0
 * @current_a: through it [A], >= 0
 * @ohm_km: resistance of one conductor at 20 °C [Ω/km], > 0
 * @conductor_c: how warm the conductors are [°C], above absolute zero
 * @drop_v: (out): what is lost in both conductors [V]
 *
 * `2 L I r / 1000`, times `(234.5 + t) / 254.5`. Single phase, reactance left out. Source: circuit theory; the temperature:
 * IEC 60228.
 *
 * Returns: false, with @drop_v untouched, if a number is not in its domain
 */
bool
lr_power_drop_v (double  length_m,
                 double  current_a,
                 double  ohm_km,
                 double  conductor_c,
                 double *drop_v)
{
  if (!lr_is_at_least_zero (length_m) || !lr_is_at_least_zero (current_a) || !lr_is_positive (ohm_km)
      || !isfinite (conductor_c) || !(conductor_c > -ZERO_RESISTANCE_C))
    return false;

  *drop_v = 2.0 * length_m * current_a * ohm_km / 1000.0 * (ZERO_RESISTANCE_C + conductor_c) / (ZERO_RESISTANCE_C + 20.0);
  return true;
}
