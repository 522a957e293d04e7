/* projection.c - from the room to the frame
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A pinhole at the lens. The camera pans about the vertical, then tilts about its own right-hand
 * axis, and never rolls:
 *
 *   forward = (cos t cos p, cos t sin p, sin t)   right = (sin p, -cos p, 0)   up = right × forward
 */

#include "projection.h"

#include "domain.h"

/* Nearer to the plane of the lens than this is not in front of it */
#define NEAREST_M 1e-9

/**
 * lr_projection_look:
 * @eye_m: where the lens is [m]
 * @pan_rad: direction of the axis in plan [rad], anticlockwise from +x
 * @tilt_rad: the axis above the horizontal [rad]: > 0 looks up
 * @half_width: tangent of half the horizontal angle of view, > 0
 * @half_height: tangent of half the vertical one, > 0
 * @projection: (out): the camera
 *
 * Source: closed form.
 */
void
lr_projection_look (LrVec3        eye_m,
                    double        pan_rad,
                    double        tilt_rad,
                    double        half_width,
                    double        half_height,
                    LrProjection *projection)
{
  double cp = cos (pan_rad), sp = sin (pan_rad);
  double ct = cos (tilt_rad), st = sin (tilt_rad);

  *projection = (LrProjection) {
    .eye_m = eye_m,
    .right = { sp, -cp, 0.0 },
    .up = { -st * cp, -st * sp, ct },
    .forward = { ct * cp, ct * sp, st },
    .half_width = half_width,
    .half_height = half_height,
  };
}

/**
 * lr_projection_point:
 * @projection: a camera, from lr_projection_look()
 * @point_m: a point in the room [m]
 * @place: (out): where it falls in the frame, also beyond its edges, and its depth along the axis
 *   [m]
 *
 * `across = 1/2 + x / (2 z half_width)`, `down = 1/2 - y / (2 z half_height)`, with x, y, z to the
 * right, up and forward of the lens.
 *
 * Source: closed form.
 *
 * Returns: %FALSE, with @place untouched, for a point that is not in front of the lens
 */
bool
lr_projection_point (const LrProjection *projection,
                     LrVec3              point_m,
                     LrFramePoint       *place)
{
  LrVec3 way = lr_vec3_sub (point_m, projection->eye_m);
  double depth_m = lr_vec3_dot (way, projection->forward);

  if (!isfinite (depth_m) || depth_m < NEAREST_M)
    return false;

  place->across = 0.5 + 0.5 * lr_vec3_dot (way, projection->right) / (depth_m * projection->half_width);
  place->down = 0.5 - 0.5 * lr_vec3_dot (way, projection->up) / (depth_m * projection->half_height);
  place->depth_m = depth_m;
  return true;
}

/**
 * lr_projection_ray:
 * @projection: a camera, from lr_projection_look()
 * @across: place in the frame, 0 at its left edge, 1 at its right one
 * @down: 0 at its upper edge, 1 at its lower one
 *
 * The inverse of lr_projection_point(), up to the depth.
 *
 * Source: closed form.
 *
 * Returns: the direction in the room, of length 1
 */
LrVec3
lr_projection_ray (const LrProjection *projection,
                   double              across,
                   double              down)
{
  double x = (2.0 * across - 1.0) * projection->half_width;
  double y = (1.0 - 2.0 * down) * projection->half_height;
  LrVec3 ray = lr_vec3_along (lr_vec3_along (projection->forward, projection->right, x), projection->up, y);

  return lr_vec3_scale (ray, 1.0 / lr_vec3_length (ray));
}

/**
 * lr_projection_aim:
 * @from_m: where the lens is [m]
 * @at_m: the point that is aimed at [m], not straight above or below the lens
 * @across: where it shall fall in the frame, 0 at the left edge, 1 at the right one
 * @down: 0 at the upper edge, 1 at the lower one
 * @half_width: tangent of half the horizontal angle of view, > 0
 * @half_height: tangent of half the vertical one, > 0
 * @pan_rad: (out): direction of the axis in plan [rad], in (-pi, pi]
 * @tilt_rad: (out): above the horizontal [rad], in [-pi/2, pi/2]
 *
 * With (x, y, 1) the place in the frame in units of the depth and e the point's elevation, the
 * vertical part of the ray gives the tilt, `sin t + y cos t = sqrt (1 + x^2 + y^2) sin e`, so
 *
 *   t = asin (sqrt (1 + x^2 + y^2) sin e / sqrt (1 + y^2)) - atan y
 *
 * and the pan is the point's direction in plan plus `atan2 (x, cos t - y sin t)`.
 *
 * Source: closed form.
 *
 * Returns: %FALSE, with the outputs untouched, unless every number is finite and in its domain and
 *   there is such a tilt
 */
bool
lr_projection_aim (LrVec3  from_m,
                   LrVec3  at_m,
                   double  across,
                   double  down,
                   double  half_width,
                   double  half_height,
                   double *pan_rad,
                   double *tilt_rad)
{
  LrVec3 way = lr_vec3_sub (at_m, from_m);
  double x = (2.0 * across - 1.0) * half_width;
  double y = (1.0 - 2.0 * down) * half_height;
  double flat_m = hypot (way.x, way.y);
  double lift, tilt;

  if (!lr_is_positive (half_width) || !lr_is_positive (half_height) || !isfinite (x) || !isfinite (y)
      || !isfinite (way.z) || !lr_is_positive (flat_m))
    return false;

  lift = hypot (hypot (1.0, y), x) * (way.z / hypot (flat_m, way.z)) / hypot (1.0, y);
  if (fabs (lift) > 1.0)
    return false;

  tilt = asin (lift) - atan (y);
  if (fabs (tilt) > 0.5 * LR_PI)
    return false;

  *pan_rad = lr_angle_wrap_rad (atan2 (way.y, way.x) + atan2 (x, cos (tilt) - y * sin (tilt)));
  *tilt_rad = tilt;
  return true;
}
