/* volume_ray.c - where a ray meets a solid
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Tells which of two things is in front of the other.
 */

#include "silhouette.h"

static bool
meet_ellipsoid (const LrVolume *shape,
                LrVec3          from_m,
                LrVec3          way,
                double         *enter_m)
{
  LrVec3 start = lr_vec3_sub (from_m, shape->point_m[0]);
  double a = 0.0, b = 0.0, c = -1.0, root;

  /* |s + t w|^2 = 1 where the ellipsoid is the unit sphere */
  for (int i = 1; i <= 3; i++)
    {
      LrVec3 axis = shape->point_m[i];
      double length2 = fmax (lr_vec3_dot (axis, axis), 1e-18);
      double s = lr_vec3_dot (start, axis) / length2, w = lr_vec3_dot (way, axis) / length2;

      a += w * w;
      b += s * w;
      c += s * s;
    }

  root = b * b - a * c;
  if (!(root >= 0.0) || (c > 0.0 && b > 0.0))
    return false;

  *enter_m = c <= 0.0 ? 0.0 : (-b - sqrt (root)) / a;
  return true;
}

/* Where the ray passes nearest to the bar's axis */
static bool
meet_bar (const LrVolume *shape,
          LrVec3          from_m,
          LrVec3          way,
          double         *enter_m)
{
  LrVec3 axis = lr_vec3_sub (shape->point_m[1], shape->point_m[0]), start = lr_vec3_sub (from_m, shape->point_m[0]);
  double aa = lr_vec3_dot (axis, axis), aw = lr_vec3_dot (axis, way);
  double as = lr_vec3_dot (axis, start), ws = lr_vec3_dot (way, start);
  double nearest = aa - aw * aw, along = aa > 0.0 ? as / aa : 0.0, t, off_m;

  if (nearest > 1e-12 * aa)
    along = (as - aw * ws) / nearest;
  along = fmin (fmax (along, 0.0), 1.0);
  t = fmax (0.0, along * aw - ws);
  off_m = lr_vec3_length (lr_vec3_sub (lr_vec3_along (start, way, t), lr_vec3_scale (axis, along)));
  if (off_m > shape->radius_m)
    return false;

  *enter_m = fmax (0.0, t - sqrt (shape->radius_m * shape->radius_m - off_m * off_m));
  return true;
}

static bool
meet_prism (const LrVolume *shape,
            LrVec3          from_m,
            LrVec3          way,
            double         *enter_m)
{
  LrVec2 flat = lr_vec3_flat (way);
  double length = lr_vec2_length (flat), enter, leave;

  if (length < 1e-6 || !lr_outline_ray (&shape->base, lr_vec3_flat (from_m), flat, &enter, &leave))
    return false;

  enter /= length;
  leave /= length;
  if (fabs (way.z) > 1e-12)
    {
      double at_bottom = (shape->bottom_m - from_m.z) / way.z, at_top = (shape->top_m - from_m.z) / way.z;

      enter = fmax (enter, fmin (at_bottom, at_top));
      leave = fmin (leave, fmax (at_bottom, at_top));
    }
  else if (from_m.z < shape->bottom_m || from_m.z > shape->top_m)
    return false;

  if (enter > leave)
    return false;

  *enter_m = enter;
  return true;
}

/**
 * lr_volume_ray:
 * @shape: a solid
 * @from_m: where the ray starts [m]
 * @way: where it goes, of length 1
 * @enter_m: (out): distance at which it goes in [m], >= 0
 *
 * The faces of a hull are not known: it answers with the distance at which the ray passes its middle, and is met by
 * every ray.
 *
 * Source: closed form.
 *
 * Returns: %FALSE, with @enter_m untouched, if the ray passes by
 */
bool
lr_volume_ray (const LrVolume *shape,
               LrVec3          from_m,
               LrVec3          way,
               double         *enter_m)
{
  switch (shape->type)
    {
    case LR_VOLUME_BAR:
      return meet_bar (shape, from_m, way, enter_m);
    case LR_VOLUME_ELLIPSOID:
      return meet_ellipsoid (shape, from_m, way, enter_m);
    case LR_VOLUME_PRISM:
      return meet_prism (shape, from_m, way, enter_m);
    case LR_VOLUME_HULL:
    default:
      *enter_m = fmax (0.0, lr_vec3_dot (lr_vec3_sub (shape->centre_m, from_m), way));
      return true;
    }
}

/* Seen along the ray, a convex hull is met when no line through the ray's place leaves all corners on one side, unless all are behind */
static bool
meet_hull (const LrVolume *shape,
           LrVec3          from_m,
           LrVec3          way)
{
  LrVec3 side = fabs (way.z) < 0.9 ? lr_vec3 (way.y, -way.x, 0.0) : lr_vec3 (0.0, way.z, -way.y), up = lr_vec3_cross (side, way);
  LrVec2 seen[LR_VOLUME_MAX];
  bool is_ahead = false;

  for (size_t i = 0; i < shape->n; i++)
    {
      LrVec3 to_m = lr_vec3_sub (shape->point_m[i], from_m);

      is_ahead |= lr_vec3_dot (to_m, way) > 0.0;
      seen[i] = lr_vec2 (lr_vec3_dot (to_m, side), lr_vec3_dot (to_m, up));
    }
  for (size_t i = 0; i < shape->n; i++)
    {
      bool is_left = false, is_right = false;

      for (size_t j = 0; j < shape->n; j++)
        {
          double cross = lr_vec2_cross (seen[i], seen[j]);

          is_left |= cross > 0.0 || (j != i && cross == 0.0 && lr_vec2_dot (seen[i], seen[j]) <= 0.0);
          is_right |= cross < 0.0 || (j != i && cross == 0.0 && lr_vec2_dot (seen[i], seen[j]) <= 0.0);
        }
      if (!is_left || !is_right)
        return false;
    }
  return is_ahead;
}

/**
 * lr_volume_is_met:
 * @shape: a solid
 * @from_m: where the ray starts [m]
 * @way: where it goes, of length 1
 * @enter_m: (out): distance as lr_volume_ray() has it [m]
 *
 * As lr_volume_ray(), but a hull too is met only by rays that go through it.
 *
 * Source: closed form.
 *
 * Returns: %FALSE, with @enter_m untouched, if the ray passes by
 */
bool
lr_volume_is_met (const LrVolume *shape,
                  LrVec3          from_m,
                  LrVec3          way,
                  double         *enter_m)
{
  return (shape->type != LR_VOLUME_HULL || meet_hull (shape, from_m, way)) && lr_volume_ray (shape, from_m, way, enter_m);
}
