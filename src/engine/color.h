/* color.h - the color of white light
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Correlated color temperatures in kelvin, chromaticities in the CIE 1931 diagram, differences in reciprocal megakelvin: so
 * that equal steps look alike.
 */

#pragma once

#include "vec.h"

#include <stddef.h>

typedef struct
{
  double x, y;
} LrChromaticity;

bool lr_mired          (double kelvin, double *mired);
bool lr_mired_shift    (double from_k, double to_k, double *mired);
bool lr_shifted_k      (double kelvin, double shift_mired, double *shifted_k);

bool lr_planck_locus   (double kelvin, LrChromaticity *chromaticity);
bool lr_daylight_locus (double kelvin, LrChromaticity *chromaticity);
/* What a lamp of that temperature looks like: Planckian when warm, daylight when cool, between the two in between */
bool lr_white          (double kelvin, LrChromaticity *chromaticity);
bool lr_correlated_k   (LrChromaticity chromaticity, double *kelvin);

/* The light of several sources together */
bool lr_mix_white      (const double *kelvin, const double *lux, size_t n, LrChromaticity *chromaticity);
/* Linear sRGB, its largest part 1, none less than 0 */
bool lr_tint           (LrChromaticity chromaticity, double *red, double *green, double *blue);
