/* stability.h - what keeps a stand upright
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A stand on three legs, its feet on a circle, tips about the line between two feet. That line is half the circle's radius
 * from the post: this near an arm may hang over a gap between two legs; over a leg it has all of the radius before it, and half
 * of it behind. Statics of a rigid stand on a level floor: the plan knows neither slack joints nor soft carpets.
 */

#pragma once

#include <stdbool.h>
#include <stddef.h>

#define LR_STAND_GAP_SHARE 0.5 /* cos 60 degrees */
#define LR_GRAVITY_M_S2 9.80665

/* Something that weighs, so far out along the arm from the post; < 0 behind it */
typedef struct
{
  double mass_kg, offset_m;
} LrStandMass;

typedef struct
{
  double moment_kg_m; /* that holds it, less what tips it, to the weaker side; < 0: it falls */
  double factor;      /* what holds over what tips, to the weaker side; HUGE_VAL when nothing tips it */
} LrStability;

/* @front_m, @back_m: from the post to the lines about which it would tip */
bool lr_stand_stability (const LrStandMass *masses, size_t n, double front_m, double back_m, LrStability *stability);
/* A level push at a height that just tips it */
bool lr_stand_push_n (double moment_kg_m, double height_m, double *push_n);
/* Least weight, hung at the post, that brings the factor and the push up to what is wanted; 0 if they are */
bool lr_stand_bag_kg (const LrStandMass *masses, size_t n, double front_m, double back_m, double factor, double push_n,
                      double height_m, double *bag_kg);
