/* exposure.h - from light to signal, and shutters that suit the mains
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "vec.h"

typedef struct
{
  double f_number;   /* or the T-stop, where it is known */
  double shutter_s;
  double iso;
  double nd_stops;   /* >= 0 */
} LrExposure;

/* Incident light that puts 18 % grey in the middle */
bool   lr_exposure_lx       (const LrExposure *exposure, double *lux);
/* A matte surface in that light, as a share of the white that the meter's exposure gives: 1 clips */
bool   lr_exposure_share    (const LrExposure *exposure, double lux, double reflectance, double *share);
/* What is missing, in stops, until it comes out at a share; > 0: more light */
bool   lr_exposure_stops_to (const LrExposure *exposure, double lux, double reflectance, double share, double *stops);

double lr_signal_of_share   (double share);  /* ITU-R BT.709, 0 to 1 */
double lr_share_of_signal   (double signal);

bool   lr_shutter_s         (double angle_rad, double fps, double *shutter_s);
bool   lr_shutter_rad       (double shutter_s, double fps, double *angle_rad);
bool   lr_t_stop            (double f_number, double transmittance, double *t_stop);
bool   lr_nd_stops          (double density, double *stops);
bool   lr_nd_density        (double stops, double *density);

typedef enum
{
  LR_FLICKER_NONE,   /* every row of every picture gets the same light */
  LR_FLICKER_BANDS,  /* pictures are alike, rows are not */
  LR_FLICKER_BEATS,  /* pictures differ */
} LrFlicker;

typedef struct
{
  LrFlicker grade;
  double    pulses;      /* of light in an exposure */
  double    beat_hz;     /* of what beats; 0 else */
  double    ripple;      /* +- share of fully modulated light by row or picture */
  double    nearest_s;   /* the shutter without flicker that is nearest, no longer than a picture */
} LrFlickerReading;

bool   lr_flicker           (double mains_hz, double fps, double shutter_s, LrFlickerReading *reading);
/* Of the exposures without flicker that lie in a range the one nearest to what is wanted */
bool   lr_steady_shutter_s  (double mains_hz, double fps, double least_s, double most_s, double wanted_s, double *shutter_s);
