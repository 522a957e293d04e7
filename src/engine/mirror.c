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
