/* optics.c - what a lens does with light from one distance: field, sharpness, blur
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The thin lens of Hecht, Optics, 5th ed., chapter 5 (Gaussian lens formula), and the depth of
 * field of Greenleaf, Photographic Optics (1950). With s and v the distances of subject and sensor
 * from the lens,
 *
 *   1/f = 1/s + 1/v      m = v/s = f/(s - f)      v = f (1 + m)
 *
 * A tape is held to the mark of the sensor plane, so the distance of the subject is q = s + v
 * everywhere in the program. With s v = f q that gives s^2 - q s + f q = 0, whose larger root is
 * the usual one, m <= 1. 50 mm on a 36 mm wide sensor at "2 m" shows 1367 mm by this datum, 1404 mm
 * from the lens and 1440 mm by the proportion w q/f: the datum matters by five per cent.
 *
 * A lens that focuses inside changes f when it is focused close, so no formula is exact there.
 */

#include "optics.h"

#include "domain.h"

static bool
is_focus (const LrFocus *focus)
{
  return lr_is_positive (focus->subject_m)
         && lr_is_positive (focus->image_m)
         && lr_is_positive (focus->magnification);
}

/**
 * lr_focus_at:
 * @focal_m: focal length f [m], > 0
 * @sensor_distance_m: from the sensor plane to the subject q [m], >= 4 f
 * @focus: (out): where the lens stands between them, and the magnification
 *
 * Solves the lens equation from the sensor plane: `s = (q + sqrt (q^2 - 4 f q)) / 2`,
 * `v = f q / s`, `m = v / s`. Nearer than 4 f there is no sharp image.
 *
 * Source: Gaussian lens formula, Hecht, Optics, 5th ed., chapter 5; closed form.
 *
 * Returns: %FALSE, with @focus untouched, unless both lengths are finite and in their domain
 */
bool
lr_focus_at (double   focal_m,
             double   sensor_distance_m,
             LrFocus *focus)
{
  double root, subject_m;

  if (!lr_is_positive (focal_m) || !lr_is_positive (sensor_distance_m)
      || sensor_distance_m < 4.0 * focal_m)
    return false;

  /* q (q - 4 f) would overflow for a distance that is only absurd */
  root = sqrt (sensor_distance_m) * sqrt (sensor_distance_m - 4.0 * focal_m);
  subject_m = 0.5 * (sensor_distance_m + root);

  focus->subject_m = subject_m;
  focus->image_m = focal_m * (sensor_distance_m / subject_m);
  focus->magnification = focus->image_m / subject_m;
  return true;
}

/**
 * lr_field_angle_rad:
 * @extent_m: width, height or diagonal of the image [m], > 0; times the squeeze for the width
 *   through an anamorphic lens
 * @focal_m: focal length f [m], > 0
 * @magnification: m, >= 0; 0 when the lens is focused at infinity
 * @angle_rad: (out): angle of view [rad], in (0, pi)
 *
 * Angle of view of a rectilinear lens: `2 atan (extent / (2 f (1 + m)))`.
 *
 * Source: Ray, Applied Photographic Optics, on lens geometry.
 *
 * Returns: %FALSE, with @angle_rad untouched, unless every number is finite and in its domain
 */
bool
lr_field_angle_rad (double  extent_m,
                    double  focal_m,
                    double  magnification,
                    double *angle_rad)
{
  if (!lr_is_positive (extent_m) || !lr_is_positive (focal_m) || !lr_is_at_least_zero (magnification))
    return false;

  *angle_rad = 2.0 * atan (extent_m / (2.0 * focal_m * (1.0 + magnification)));
  return true;
}

/**
 * lr_field_extent_m:
 * @extent_m: width or height of the image [m], > 0; times the squeeze for the width through an
 *   anamorphic lens
 * @focus: where the lens is focused, from lr_focus_at()
 * @distance_from_lens_m: of the plane that is asked about, from the lens [m], > 0
 * @field_m: (out): width or height of what is seen in that plane [m]
 *
 * Similar triangles over the lens: `field = extent x / v`; in the plane of focus that is
 * extent / m.
 *
 * Source: closed form.
 *
 * Returns: %FALSE, with @field_m untouched, unless every number is finite and > 0
 */
bool
lr_field_extent_m (double         extent_m,
                   const LrFocus *focus,
                   double         distance_from_lens_m,
                   double        *field_m)
{
  if (!lr_is_positive (extent_m) || !is_focus (focus) || !lr_is_positive (distance_from_lens_m))
    return false;

  *field_m = extent_m * distance_from_lens_m / focus->image_m;
  return true;
}

/**
 * lr_sharp_range:
 * @focal_m: focal length f [m], > 0
 * @f_number: the nominal f-number N, > 0
 * @coc_m: circle of confusion c, in the plane of the sensor [m], > 0
 * @focus: where the lens is focused, from lr_focus_at()
 * @range: (out): the hyperfocal distance, from the lens, and the limits, from the sensor plane
 *
 * With the hyperfocal distance `H = f^2 / (N c) + f`, from the lens,
 *
 *   near = s (H - f) / (H + s - 2 f)      far = s (H - f) / (H - s), infinite from s = H on
 *
 * and the image distance added to both, so that a tape from the sensor plane reads them.
 *
 * Source: Greenleaf, Photographic Optics (1950). Printed tables mostly drop the "+ f" of H and take
 * nominal f-numbers (5.6, not 5.657); this takes what it is given.
 *
 * Returns: %FALSE, with @range untouched, unless every number is finite and in its domain
 */
bool
lr_sharp_range (double         focal_m,
                double         f_number,
                double         coc_m,
                const LrFocus *focus,
                LrSharpRange  *range)
{
  double beyond_f_m, s;

  if (!lr_is_positive (focal_m) || !lr_is_positive (f_number) || !lr_is_positive (coc_m)
      || !is_focus (focus) || focus->subject_m <= focal_m)
    return false;

  beyond_f_m = focal_m * focal_m / (f_number * coc_m); /* H - f */
  s = focus->subject_m;

  range->hyperfocal_m = beyond_f_m + focal_m;
  range->near_m = focus->image_m + s * beyond_f_m / (beyond_f_m + s - focal_m);
  range->far_m = s < range->hyperfocal_m
                     ? focus->image_m + s * beyond_f_m / (range->hyperfocal_m - s)
                     : HUGE_VAL;
  return true;
}

/**
 * lr_f_number_for_depth:
 * @focal_m: focal length f [m], > 0
 * @coc_m: circle of confusion c, in the plane of the sensor [m], > 0
 * @focus: where the lens is focused, from lr_focus_at()
 * @depth_m: the depth of field T that is wanted, from limit to limit [m], > 0
 * @f_number: (out): the f-number that gives it
 *
 * With `r = N c (s - f) / f^2` the limits are `s / (1 + r)` and `s / (1 - r)`, so `T = 2 s r / (1 - r^2)` and
 *
 *   r = T / (s + sqrt (s^2 + T^2))      N = r f^2 / (c (s - f))
 *
 * The exact inverse of lr_sharp_range(). For T small beside s it is the usual `N = T m^2 / (2 c (1 + m))`, in which only
 * the magnification counts: at the same framing every lens takes the same stop.
 *
 * Source: closed form from Greenleaf, Photographic Optics (1950).
 *
 * Returns: %FALSE, with @f_number untouched, unless every number is finite and in its domain
 */
bool
lr_f_number_for_depth (double         focal_m,
                       double         coc_m,
                       const LrFocus *focus,
                       double         depth_m,
                       double        *f_number)
{
  double r;

  if (!lr_is_positive (focal_m) || !lr_is_positive (coc_m) || !lr_is_positive (depth_m) || !is_focus (focus)
      || focus->subject_m <= focal_m)
    return false;

  r = depth_m / (focus->subject_m + hypot (focus->subject_m, depth_m));
  *f_number = r * focal_m * focal_m / (coc_m * (focus->subject_m - focal_m));
  return true;
}

/**
 * lr_blur_disc_m:
 * @focal_m: focal length f [m], > 0
 * @f_number: N, > 0
 * @focus: where the lens is focused, from lr_focus_at()
 * @point_from_lens_m: distance x of a point from the lens [m], > 0; HUGE_VAL for one at infinity
 * @disc_m: (out): diameter of its image, in the plane of the sensor [m]
 *
 * `b = f^2 / (N (s - f)) |1 - s/x|`, which is f m / N for a point at infinity. The blur of the
 * aperture alone: what diffraction and the lens's faults add is left out.
 *
 * Source: closed form by similar triangles; Ray, Applied Photographic Optics, on depth of field.
 *
 * Returns: %FALSE, with @disc_m untouched, unless every number is in its domain
 */
bool
lr_blur_disc_m (double         focal_m,
                double         f_number,
                const LrFocus *focus,
                double         point_from_lens_m,
                double        *disc_m)
{
  if (!lr_is_positive (focal_m) || !lr_is_positive (f_number) || !is_focus (focus)
      || focus->subject_m <= focal_m || !(point_from_lens_m > 0.0))
    return false;

  *disc_m = focal_m * focal_m / (f_number * (focus->subject_m - focal_m))
            * fabs (1.0 - focus->subject_m / point_from_lens_m);
  return true;
}

/**
 * lr_close_focus_stops:
 * @magnification: m, >= 0
 * @stops: (out): light that is lost against a lens focused at infinity [stops], >= 0
 *
 * The lens stands f (1 + m) from the sensor, so the same pupil lights an area (1 + m)^2 as large: `2 log2 (1 + m)`. A third
 * of a stop from m = 0.12 on; an interview has a tenth of that. T-stops are marked for infinity, so they lose it too.
 *
 * Source: Ray, Applied Photographic Optics, on close-up photography; Hecht, Optics, chapter 5.
 *
 * Returns: %FALSE, with @stops untouched, unless @magnification is finite and >= 0
 */
bool
lr_close_focus_stops (double  magnification,
                      double *stops)
{
  if (!lr_is_at_least_zero (magnification))
    return false;

  *stops = 2.0 * log2 (1.0 + magnification);
  return true;
}

/**
 * lr_sensor_area:
 * @width_m: width of the sensor as it records [m], > 0
 * @height_m: its height [m], > 0
 * @squeeze: of an anamorphic lens: the picture's width is stretched by this when it is shown, > 0;
 *   1 for an ordinary lens
 * @aspect: width over height of the picture as it is shown, > 0
 * @area: (out): the part of the sensor that is used [m], centred on it
 *
 * The largest part of the sensor that has the delivery aspect once its width is multiplied by the
 * squeeze. @area is measured on the sensor, before the squeeze is undone: the shown picture's
 * aspect is `squeeze * area.width_m / area.height_m`. Everything that depends on the width (angle
 * of view, field) takes `squeeze * area.width_m` as the extent; what depends on the height takes it
 * as it is.
 *
 * Source: closed form.
 *
 * Returns: %FALSE, with @area untouched, unless every number is finite and > 0
 */
bool
lr_sensor_area (double        width_m,
                double        height_m,
                double        squeeze,
                double        aspect,
                LrSensorArea *area)
{
  if (!lr_is_positive (width_m) || !lr_is_positive (height_m) || !lr_is_positive (squeeze)
      || !lr_is_positive (aspect))
    return false;

  area->width_m = fmin (width_m, height_m * aspect / squeeze);
  area->height_m = fmin (height_m, width_m * squeeze / aspect);
  return true;
}

/**
 * lr_coc_default_m:
 * @width_m: width of the part of the sensor that is recorded [m], > 0
 * @height_m: its height [m], > 0
 * @coc_m: (out): a circle of confusion to start from [m]
 *
 * A 1500th of the diagonal, 0.029 mm on 36 mm by 24 mm. A mode that records a part of the sensor acts as a smaller
 * sensor: its picture is enlarged by more until it is seen. A delivery aspect that is cut later changes nothing.
 *
 * Source: common practice. No standard fixes it for film or video formats; d/1000 and the width of
 * two pixels are met as well, so it is a setting.
 *
 * Returns: %FALSE, with @coc_m untouched, unless both lengths are finite and > 0
 */
bool
lr_coc_default_m (double  width_m,
                  double  height_m,
                  double *coc_m)
{
  if (!lr_is_positive (width_m) || !lr_is_positive (height_m))
    return false;

  *coc_m = hypot (width_m, height_m) / 1500.0;
  return true;
}

/**
 * lr_focal_for_field_m:
 * @extent_m: width or height of the image [m], > 0; times the squeeze for the width
 * @field_m: width or height to be seen in the plane of focus [m], >= @extent_m
 * @sensor_distance_m: from the sensor plane to that plane q [m], > 0
 * @focal_m: (out): the focal length that does it [m]
 *
 * With `m = extent / field`, `f = m q / (1 + m)^2`. The exact inverse of lr_focus_at() followed by
 * lr_field_extent_m(); fields smaller than the image (m > 1) belong to the other root and are
 * refused.
 *
 * Source: closed form from the Gaussian lens formula.
 *
 * Returns: %FALSE, with @focal_m untouched, unless every number is finite and in its domain
 */
bool
lr_focal_for_field_m (double  extent_m,
                      double  field_m,
                      double  sensor_distance_m,
                      double *focal_m)
{
  double m;

  if (!lr_is_positive (extent_m) || !lr_is_positive (field_m) || !lr_is_positive (sensor_distance_m)
      || field_m < extent_m)
    return false;

  m = extent_m / field_m;
  *focal_m = m * sensor_distance_m / ((1.0 + m) * (1.0 + m));
  return true;
}

/**
 * lr_distance_for_field_m:
 * @extent_m: width or height of the image [m], > 0; times the squeeze for the width
 * @field_m: width or height to be seen in the plane of focus [m], >= @extent_m
 * @focal_m: focal length f [m], > 0
 * @sensor_distance_m: (out): from the sensor plane to that plane [m]
 *
 * With `m = extent / field`, `q = f (1 + m)^2 / m`.
 *
 * Source: closed form from the Gaussian lens formula.
 *
 * Returns: %FALSE, with @sensor_distance_m untouched, unless every number is finite and in its
 *   domain
 */
bool
lr_distance_for_field_m (double  extent_m,
                         double  field_m,
                         double  focal_m,
                         double *sensor_distance_m)
{
  double m;

  if (!lr_is_positive (extent_m) || !lr_is_positive (field_m) || !lr_is_positive (focal_m)
      || field_m < extent_m)
    return false;

  m = extent_m / field_m;
  *sensor_distance_m = focal_m * (1.0 + m) * (1.0 + m) / m;
  return true;
}
