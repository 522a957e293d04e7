/* vec.h - points and directions in the plane and in space
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * x right, y up the sheet, z above the floor; angle 0 along +x, anticlockwise. Positions are in metres;
 * a direction is a vector of length 1.
 */

#pragma once

#include <math.h>
#include <stdbool.h>

#define LR_PI 3.14159265358979323846
#define LR_DEG (LR_PI / 180.0)

typedef struct
{
  double x, y;
} LrVec2;

typedef struct
{
  double x, y, z;
} LrVec3;

static inline LrVec2
lr_vec2 (double x, double y)
{
  return (LrVec2) { x, y };
}

static inline LrVec3
lr_vec3 (double x, double y, double z)
{
  return (LrVec3) { x, y, z };
}

static inline LrVec2
lr_vec2_add (LrVec2 a, LrVec2 b)
{
  return lr_vec2 (a.x + b.x, a.y + b.y);
}

static inline LrVec2
lr_vec2_sub (LrVec2 a, LrVec2 b)
{
  return lr_vec2 (a.x - b.x, a.y - b.y);
}

static inline LrVec2
lr_vec2_scale (LrVec2 a, double k)
{
  return lr_vec2 (a.x * k, a.y * k);
}

/* a + k d: the point k metres from a along the direction d */
static inline LrVec2
lr_vec2_along (LrVec2 a, LrVec2 d, double k)
{
  return lr_vec2 (a.x + k * d.x, a.y + k * d.y);
}

static inline double
lr_vec2_dot (LrVec2 a, LrVec2 b)
{
  return a.x * b.x + a.y * b.y;
}

/* z component of a × b: positive when b lies anticlockwise of a */
static inline double
lr_vec2_cross (LrVec2 a, LrVec2 b)
{
  return a.x * b.y - a.y * b.x;
}

/* Length, >= 0, without overflow */
static inline double
lr_vec2_length (LrVec2 a)
{
  return hypot (a.x, a.y);
}

static inline double
lr_vec2_distance (LrVec2 a, LrVec2 b)
{
  return hypot (b.x - a.x, b.y - a.y);
}

/* Direction anticlockwise from +x, in [-pi, pi]; 0 for a vector without length */
static inline double
lr_vec2_angle_rad (LrVec2 a)
{
  return atan2 (a.y, a.x);
}

static inline bool
lr_vec2_is_finite (LrVec2 a)
{
  return isfinite (a.x) && isfinite (a.y);
}

/* The vector of a direction, anticlockwise from +x, and a length */
static inline LrVec2
lr_vec2_polar (double angle_rad, double length)
{
  return lr_vec2 (length * cos (angle_rad), length * sin (angle_rad));
}

/* a turned anticlockwise */
static inline LrVec2
lr_vec2_rotate (LrVec2 a, double angle_rad)
{
  double c = cos (angle_rad), s = sin (angle_rad);

  return lr_vec2 (c * a.x - s * a.y, s * a.x + c * a.y);
}

/* a turned by +90 degrees */
static inline LrVec2
lr_vec2_left (LrVec2 a)
{
  return lr_vec2 (-a.y, a.x);
}

static inline LrVec3
lr_vec3_add (LrVec3 a, LrVec3 b)
{
  return lr_vec3 (a.x + b.x, a.y + b.y, a.z + b.z);
}

static inline LrVec3
lr_vec3_sub (LrVec3 a, LrVec3 b)
{
  return lr_vec3 (a.x - b.x, a.y - b.y, a.z - b.z);
}

static inline LrVec3
lr_vec3_scale (LrVec3 a, double k)
{
  return lr_vec3 (a.x * k, a.y * k, a.z * k);
}

/* a + k d: the point k metres from a along the direction d */
static inline LrVec3
lr_vec3_along (LrVec3 a, LrVec3 d, double k)
{
  return lr_vec3 (a.x + k * d.x, a.y + k * d.y, a.z + k * d.z);
}

static inline double
lr_vec3_dot (LrVec3 a, LrVec3 b)
{
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

/* Right-handed: x × y = z */
static inline LrVec3
lr_vec3_cross (LrVec3 a, LrVec3 b)
{
  return lr_vec3 (a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x);
}

static inline double
lr_vec3_length (LrVec3 a)
{
  return sqrt (lr_vec3_dot (a, a));
}

/* The direction from one point to another; that of +x where they are the same */
static inline LrVec3
lr_vec3_way (LrVec3 from, LrVec3 to)
{
  LrVec3 way = lr_vec3_sub (to, from);
  double length = lr_vec3_length (way);

  return length > 1e-9 ? lr_vec3_scale (way, 1.0 / length) : lr_vec3 (1.0, 0.0, 0.0);
}

/* Its place in plan */
static inline LrVec2
lr_vec3_flat (LrVec3 a)
{
  return lr_vec2 (a.x, a.y);
}

/* The place in plan at a height above the floor */
static inline LrVec3
lr_vec2_raise (LrVec2 a, double z_m)
{
  return lr_vec3 (a.x, a.y, z_m);
}

/* The same angle in (-pi, pi] */
static inline double
lr_angle_wrap_rad (double angle_rad)
{
  double a = remainder (angle_rad, 2.0 * LR_PI);

  return a <= -LR_PI ? a + 2.0 * LR_PI : a;
}
