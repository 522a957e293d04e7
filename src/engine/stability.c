/* stability.c - what keeps a stand upright
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Source: statics; moments about the line between two feet.
 */

#include "stability.h"

#include "domain.h"

/* What holds and what tips about a line @edge_m ahead of the post, along the arm (side 1) or against it (side -1) */
typedef struct
{
  double holds_kg_m, tips_kg_m;
} Moments;

static Moments
about_line (const LrStandMass *masses,
            size_t             n,
            double             edge_m,
            double             side)
{
  Moments moments = { 0.0, 0.0 };

  for (size_t i = 0; i < n; i++)
    {
      double moment_kg_m = masses[i].mass_kg * (edge_m - side * masses[i].offset_m);

      if (moment_kg_m >= 0.0)
        moments.holds_kg_m += moment_kg_m;
      else
        moments.tips_kg_m -= moment_kg_m;
    }
  return moments;
}

static bool
are_masses (const LrStandMass *masses,
            size_t             n)
{
  for (size_t i = 0; i < n; i++)
    if (!lr_is_at_least_zero (masses[i].mass_kg) || !isfinite (masses[i].offset_m))
      return false;

  return true;
}

/**
 * lr_stand_stability:
 * @masses: (array length=n): what stands and hangs there
 * @n: how many
 * @front_m: from the post to the line between two feet, along the arm [m], > 0
 * @back_m: the same against the arm [m], > 0
 * @stability: (out): to the weaker side
 *
 * Returns: false, with @stability untouched, if a number is not in its domain
 */
bool
lr_stand_stability (const LrStandMass *masses,
                    size_t             n,
                    double             front_m,
                    double             back_m,
                    LrStability       *stability)
{
  Moments front, back;
  double front_factor, back_factor;

  if (!are_masses (masses, n) || !lr_is_positive (front_m) || !lr_is_positive (back_m))
    return false;

  front = about_line (masses, n, front_m, 1.0);
  back = about_line (masses, n, back_m, -1.0);
  front_factor = front.tips_kg_m > 0.0 ? front.holds_kg_m / front.tips_kg_m : HUGE_VAL;
  back_factor = back.tips_kg_m > 0.0 ? back.holds_kg_m / back.tips_kg_m : HUGE_VAL;
  stability->moment_kg_m = fmin (front.holds_kg_m - front.tips_kg_m, back.holds_kg_m - back.tips_kg_m);
  stability->factor = fmin (front_factor, back_factor);
  return true;
}

/**
 * lr_stand_push_n:
 * @moment_kg_m: that holds it [kg m]
 * @height_m: where it is pushed [m], > 0
 * @push_n: (out): what tips it [N]; 0 if it falls by itself
 *
 * `S g / h`, the feet held.
 *
 * Returns: false, with @push_n untouched, if a number is not in its domain
 */
bool
lr_stand_push_n (double  moment_kg_m,
                 double  height_m,
                 double *push_n)
{
  if (!isfinite (moment_kg_m) || !lr_is_positive (height_m))
    return false;

  *push_n = fmax (moment_kg_m, 0.0) * LR_GRAVITY_M_S2 / height_m;
  return true;
}

static double
bag_about (Moments moments,
           double  edge_m,
           double  factor,
           double  wanted_kg_m)
{
  double for_factor = (factor * moments.tips_kg_m - moments.holds_kg_m) / edge_m;
  double for_push = (wanted_kg_m - moments.holds_kg_m + moments.tips_kg_m) / edge_m;

  return fmax (for_factor, for_push);
}

/**
 * lr_stand_bag_kg:
 * @masses: (array length=n): what stands and hangs there
 * @n: how many
 * @front_m: from the post to the line between two feet, along the arm [m], > 0
 * @back_m: the same against the arm [m], > 0
 * @factor: what should hold over what tips, >= 0
 * @push_n: level push that it should bear [N], >= 0
 * @height_m: where [m], > 0
 * @bag_kg: (out): least weight at the post [kg]
 *
 * Returns: false, with @bag_kg untouched, if a number is not in its domain
 */
bool
lr_stand_bag_kg (const LrStandMass *masses,
                 size_t             n,
                 double             front_m,
                 double             back_m,
                 double             factor,
                 double             push_n,
                 double             height_m,
                 double            *bag_kg)
{
  double wanted_kg_m;

  if (!are_masses (masses, n) || !lr_is_positive (front_m) || !lr_is_positive (back_m) || !lr_is_at_least_zero (factor)
      || !lr_is_at_least_zero (push_n) || !lr_is_positive (height_m))
    return false;

  wanted_kg_m = push_n * height_m / LR_GRAVITY_M_S2;
  *bag_kg = fmax (0.0, fmax (bag_about (about_line (masses, n, front_m, 1.0), front_m, factor, wanted_kg_m),
                             bag_about (about_line (masses, n, back_m, -1.0), back_m, factor, wanted_kg_m)));
  return true;
}
