/* optics.h - what a lens does with light from one distance: field, sharpness, blur
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A thin lens. Distances to the subject have one datum: the sensor plane. The distance from the lens is solved
 * from it. Every function leaves its output untouched and answers false unless its inputs are in their domain.
 */

#pragma once

#include <stdbool.h>

typedef struct
{
  double subject_m;     /* s: from the lens to the subject */
  double image_m;       /* v: from the lens to the sensor plane; s + v = the distance asked for */
  double magnification; /* m = f / (s - f) */
} LrFocus;

typedef struct
{
  double hyperfocal_m; /* from the lens */
  double near_m;       /* from the sensor plane */
  double far_m;        /* from the sensor plane; HUGE_VAL at and past the hyperfocal distance */
} LrSharpRange;

typedef struct
{
  double width_m, height_m; /* the part of the sensor that is used */
} LrSensorArea;

bool lr_focus_at (double focal_m, double sensor_distance_m, LrFocus *focus);
bool lr_field_angle_rad (double extent_m, double focal_m, double magnification, double *angle_rad);
bool lr_field_extent_m (double extent_m, const LrFocus *focus, double distance_from_lens_m, double *field_m);
bool lr_sharp_range (double focal_m, double f_number, double coc_m, const LrFocus *focus, LrSharpRange *range);
bool lr_f_number_for_depth (double focal_m, double coc_m, const LrFocus *focus, double depth_m, double *f_number);
bool lr_blur_disc_m (double focal_m, double f_number, const LrFocus *focus, double point_from_lens_m, double *disc_m);
bool lr_close_focus_stops (double magnification, double *stops);
bool lr_sensor_area (double width_m, double height_m, double squeeze, double aspect, LrSensorArea *area);
bool lr_coc_default_m (double width_m, double height_m, double *coc_m);
bool lr_focal_for_field_m (double extent_m, double field_m, double sensor_distance_m, double *focal_m);
bool lr_distance_for_field_m (double extent_m, double field_m, double focal_m, double *sensor_distance_m);
