/* lobe.h - how a lamp's intensity falls off from its axis
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "vec.h"

/* By two angles of a data sheet, or by one; the reference is the intensity on the axis (CIE), not the largest one (IES) */
typedef struct
{
  double beam_rad;   /* full angle between the directions of half of it; 0: the power counts */
  double sharpness;  /* power of the angle, with a beam_rad: 2 is Gaussian, more has a flatter middle and a sharper edge */
  double power;      /* power n of the cosine: 1 is Lambertian, 0 the same all round the front */
} LrLobe;

/* From the full angles to half and to a tenth of the intensity; @field_rad 0: not known, a power of the cosine */
bool   lr_lobe_init     (LrLobe *lobe, double beam_rad, double field_rad);
/* Share of the intensity on the axis, by the cosine of the angle off it; 0 behind */
double lr_lobe_relative (const LrLobe *lobe, double cosine);
/* Flux by intensity on the axis [lm/cd] */
double lr_lobe_sr       (const LrLobe *lobe);
/* Full angle between the directions of half of the intensity */
double lr_lobe_beam_rad (const LrLobe *lobe);
/* Whether it is the cosine's own */
bool   lr_lobe_is_matte (const LrLobe *lobe);
/* Full angle between the directions of a tenth */
double lr_lobe_field_rad (const LrLobe *lobe);
