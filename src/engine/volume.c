/* volume.c - solids that a lens may see: bars, ellipsoids, prisms, hulls of points
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "silhouette.h"

/**
 * lr_volume_bar:
 * @shape: (out caller-allocates): a shape
 * @from_m: one end of its axis [m]
 * @to_m: the other [m]
 * @radius_m: its radius [m]
 *
 * A round bar with half balls for ends.
 */
void
lr_volume_bar (LrVolume *shape,
               LrVec3    from_m,
               LrVec3    to_m,
               double    radius_m)
{
  shape->type = LR_VOLUME_BAR;
  shape->n = 2;
  shape->point_m[0] = from_m;
  shape->point_m[1] = to_m;
  shape->radius_m = radius_m;
  shape->centre_m = lr_vec3_scale (lr_vec3_add (from_m, to_m), 0.5);
  shape->reach_m = 0.5 * lr_vec3_length (lr_vec3_sub (to_m, from_m)) + radius_m;
}

/**
 * lr_volume_ellipsoid:
 * @shape: (out caller-allocates): a shape
 * @middle_m: its middle [m]
 * @x_m: a half axis [m], of some length
 * @y_m: another, square to it [m]
 * @z_m: the third, square to both [m]
 */
void
lr_volume_ellipsoid (LrVolume *shape,
                     LrVec3    middle_m,
                     LrVec3    x_m,
                     LrVec3    y_m,
                     LrVec3    z_m)
{
  shape->type = LR_VOLUME_ELLIPSOID;
  shape->n = 4;
  shape->point_m[0] = shape->centre_m = middle_m;
  shape->point_m[1] = x_m;
  shape->point_m[2] = y_m;
  shape->point_m[3] = z_m;
  shape->reach_m = fmax (lr_vec3_length (x_m), fmax (lr_vec3_length (y_m), lr_vec3_length (z_m)));
}

/**
 * lr_volume_prism:
 * @shape: (out caller-allocates): a shape
 * @base: its outline on the floor
 * @bottom_m: its lower face above the floor [m]
 * @top_m: its upper one [m]
 */
void
lr_volume_prism (LrVolume        *shape,
                 const LrOutline *base,
                 double           bottom_m,
                 double           top_m)
{
  shape->type = LR_VOLUME_PRISM;
  shape->base = *base;
  shape->bottom_m = bottom_m;
  shape->top_m = top_m;
  shape->centre_m = lr_vec2_raise (base->centre_m, 0.5 * (bottom_m + top_m));
  shape->reach_m = hypot (base->radius_m, 0.5 * (top_m - bottom_m));
}

/**
 * lr_volume_hull:
 * @shape: (out caller-allocates): a shape
 * @points_m: points [m]
 * @n: how many, 1 to %LR_VOLUME_MAX; more are left out
 *
 * The convex hull of the points.
 */
void
lr_volume_hull (LrVolume     *shape,
                const LrVec3 *points_m,
                size_t        n)
{
  LrVec3 sum = { 0.0, 0.0, 0.0 };

  shape->type = LR_VOLUME_HULL;
  shape->n = n < LR_VOLUME_MAX ? n : LR_VOLUME_MAX;
  for (size_t i = 0; i < shape->n; i++)
    {
      shape->point_m[i] = points_m[i];
      sum = lr_vec3_add (sum, points_m[i]);
    }
  shape->centre_m = lr_vec3_scale (sum, 1.0 / (double) shape->n);
  shape->reach_m = 0.0;
  for (size_t i = 0; i < shape->n; i++)
    shape->reach_m = fmax (shape->reach_m, lr_vec3_length (lr_vec3_sub (shape->point_m[i], shape->centre_m)));
}
