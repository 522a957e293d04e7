/* mirror.c - what a small mirror shows
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The law of reflection: the normal halves the angle between the ways to eye and light.
 */

#include "mirror.h"

#define SPECTACLE_INDEX 1.53 /* to which base curves of lenses refer */

/**
 * lr_mirror_way:
 * @to_eye: from the mirror to who looks
 * @normal: of the mirror
 *
 * Source: law of reflection, `2 (n c) n - c`.
 *
 * Returns: the way from the mirror to what they see in it
 */
LrVec3
lr_mirror_way (LrVec3 to_eye,
               LrVec3 normal)
{
  return lr_vec3_sub (lr_vec3_scale (normal, 2.0 * lr_vec3_dot (normal, to_eye)), to_eye);
}

/**
 * lr_mirror_normal:
 * @to_eye: from the mirror to who looks
 * @to_light: from the mirror to a light
 * @normal: (out): of a mirror that shows it to them
 *
 * Source: law of reflection, the half of the way.
 *
 * Returns: %FALSE, with @normal untouched, if the two ways are opposite
 */
bool
lr_mirror_normal (LrVec3  to_eye,
                  LrVec3  to_light,
                  LrVec3 *normal)
{
  LrVec3 half = lr_vec3_along (to_eye, to_light, 1.0);
  double length = lr_vec3_length (half);

  if (!(length > 1e-9))
    return false;

  *normal = lr_vec3_scale (half, 1.0 / length);
  return true;
}

/**
 * lr_spectacle_turn_rad:
 * @base_dioptres: base curve of the lens [dioptres], > 0
 * @from_middle_m: a place on its front, from the middle [m], >= 0
 *
 * The radius of the front is `(n - 1) / D`, with n = 1.53.
 *
 * Source: definition of the base curve; closed form for a ball.
 *
 * Returns: the angle between the normals there and in the middle [rad]
 */
double
lr_spectacle_turn_rad (double base_dioptres,
                       double from_middle_m)
{
  return asin (fmin (1.0, from_middle_m * base_dioptres / (SPECTACLE_INDEX - 1.0)));
}

/**
 * lr_eye_mirrors:
 * @gaze: where the eye looks, not straight up or down
 * @to_lens: from the eye to who looks at it
 * @to_light: from the eye to a light
 *
 * The cornea is a ball of 7.8 mm radius whose iris is seen 11.7 mm wide; the lids leave 4 mm of it free over the middle and 5.5 mm under it.
 *
 * Source: law of reflection; sizes of an average adult's eye from memory.
 *
 * Returns: whether the light shows as a catch light
 */
bool
lr_eye_mirrors (LrVec3 gaze,
                LrVec3 to_lens,
                LrVec3 to_light)
{
  const double cornea_m = 7.8e-3, iris_m = 0.5 * 11.7e-3, over_m = 4.0e-3, under_m = 5.5e-3;
  double flat = hypot (gaze.x, gaze.y), left_m, up_m;
  LrVec3 normal, left, up;

  if (!(flat > 1e-9) || !lr_mirror_normal (to_lens, to_light, &normal) || lr_vec3_dot (normal, gaze) <= 0.0)
    return false;

  left = lr_vec3 (-gaze.y / flat, gaze.x / flat, 0.0);
  up = lr_vec3_cross (gaze, left);
  left_m = cornea_m * lr_vec3_dot (normal, left);
  up_m = cornea_m * lr_vec3_dot (normal, up);
  return hypot (left_m, up_m) <= iris_m && up_m <= over_m && up_m >= -under_m;
}
