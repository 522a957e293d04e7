/* perspective.c - what distance does to sizes
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Similar triangles from the lens: a field of width W at distance D is W x / D wide at distance x.
 * The focal length cancels out: where the camera stands decides, the lens only crops.
 */

#include "perspective.h"

#include "domain.h"

/**
 * lr_background_extent_m:
 * @subject_field_m: width or height of the field at the subject [m], > 0
 * @subject_m: distance of the subject from the lens D [m], > 0
 * @behind_m: distance of the background behind the subject B [m], >= 0
 * @extent_m: (out): width or height of the background that is seen [m]
 *
 * `field (D + B) / D`.
 *
 * Source: closed form.
 *
 * Returns: %FALSE, with @extent_m untouched, unless every number is finite and in its domain
 */
bool
lr_background_extent_m (double  subject_field_m,
                        double  subject_m,
                        double  behind_m,
                        double *extent_m)
{
  if (!lr_is_positive (subject_field_m) || !lr_is_positive (subject_m) || !lr_is_at_least_zero (behind_m))
    return false;

  *extent_m = subject_field_m * ((subject_m + behind_m) / subject_m);
  return true;
}

/**
 * lr_background_size_ratio:
 * @subject_m: distance of the subject from the lens D [m], > 0
 * @behind_m: distance of the background behind the subject B [m], >= 0
 * @ratio: (out): size in the frame of a thing in the background over an equal one at the subject
 *
 * `D / (D + B)`, in (0, 1].
 *
 * Source: closed form.
 *
 * Returns: %FALSE, with @ratio untouched, unless both lengths are finite and in their domain
 */
bool
lr_background_size_ratio (double  subject_m,
                          double  behind_m,
                          double *ratio)
{
  if (!lr_is_positive (subject_m) || !lr_is_at_least_zero (behind_m))
    return false;

  *ratio = subject_m / (subject_m + behind_m);
  return true;
}

/**
 * lr_distance_for_background_m:
 * @subject_field_m: width of the field at the subject [m], > 0
 * @background_field_m: width of background that is wanted [m], > @subject_field_m
 * @behind_m: distance of the background behind the subject B [m], > 0
 * @subject_m: (out): distance of the subject from the lens that shows it [m]
 *
 * `B Ws / (Wb - Ws)`: the inverse of lr_background_extent_m() at constant framing.
 *
 * Source: closed form.
 *
 * Returns: %FALSE, with @subject_m untouched, unless every number is finite and in its domain
 */
bool
lr_distance_for_background_m (double  subject_field_m,
                              double  background_field_m,
                              double  behind_m,
                              double *subject_m)
{
  if (!lr_is_positive (subject_field_m) || !lr_is_positive (background_field_m)
      || !lr_is_positive (behind_m) || background_field_m <= subject_field_m)
    return false;

  *subject_m = behind_m * (subject_field_m / (background_field_m - subject_field_m));
  return true;
}

/**
 * lr_face_depth_ratio:
 * @subject_m: distance of the middle of the head from the lens D [m], > @half_head_depth_m
 * @half_head_depth_m: half the length of the head h [m], > 0
 * @ratio: (out): size of the nose over the ears, against their true sizes
 *
 * `(D + h) / (D - h)`: 1.1 at two metres, 1.4 at 0.6 m, where a nose looks large.
 *
 * Source: closed form.
 *
 * Returns: %FALSE, with @ratio untouched, unless both lengths are finite and in their domain
 */
bool
lr_face_depth_ratio (double  subject_m,
                     double  half_head_depth_m,
                     double *ratio)
{
  if (!lr_is_positive (subject_m) || !lr_is_positive (half_head_depth_m)
      || subject_m <= half_head_depth_m)
    return false;

  *ratio = (subject_m + half_head_depth_m) / (subject_m - half_head_depth_m);
  return true;
}
