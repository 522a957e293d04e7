/* cast.c - where a shadow falls, how dark it is and how soft
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Seen from a place in a shadow, things stand before the lamp: what they cover of what shines is what they keep away. In a frame that is
 * level with the lamp it is an upright rectangle, and a convex solid a convex polygon, so the share is exact (closed form). Where two
 * things overlap it is that of strips of the lamp, each looked at in its middle. The light of all parts is taken as alike.
 */

#include "cast.h"

#define LEAST_AWAY_M 0.03
#define STRIPS 24

static LrVec3
across (LrVec3 way)
{
  LrVec3 side = fabs (way.z) < 0.9 ? lr_vec3 (way.y, -way.x, 0.0) : lr_vec3 (0.0, way.z, -way.y);

  return lr_vec3_scale (side, 1.0 / lr_vec3_length (side));
}

/* What shines: of a point, a square that is turned to the place */
static bool
get_face (const LrEmitter *lamp,
          double           size_m,
          LrVec3           from_m,
          LrVec3          *ahead,
          LrVec3          *right,
          double          *width_m,
          double          *height_m)
{
  LrVec3 way = lr_vec3_sub (lamp->at_m, from_m);
  double length_m = lr_vec3_length (way);

  if (!(length_m > LEAST_AWAY_M))
    return false;

  if (lamp->shape != LR_EMITTER_POINT)
    {
      *ahead = lr_vec3_scale (lamp->axis, -1.0);
      *right = lamp->right;
      *width_m = lamp->width_m;
      *height_m = lamp->shape == LR_EMITTER_DISC ? lamp->width_m : lamp->height_m;
      return *width_m > 0.0 && *height_m > 0.0;
    }

  *ahead = lr_vec3_scale (way, 1.0 / length_m);
  *right = across (*ahead);
  *width_m = *height_m = size_m;
  return size_m > 0.0;
}

/**
 * lr_lamp_view:
 * @lamp: a lamp; a disc is taken as the square round it
 * @size_m: of a point, the side of what really shines [m], > 0
 * @from_m: a place [m]
 * @view: (out): the lamp as it is seen from there
 *
 * Source: closed form, similar triangles.
 *
 * Returns: %FALSE, with @view untouched, if the place is behind the lamp or in its plane
 */
bool
lr_lamp_view (const LrEmitter *lamp,
              double           size_m,
              LrVec3           from_m,
              LrLampView      *view)
{
  LrVec3 ahead, right, up, way = lr_vec3_sub (lamp->at_m, from_m);
  double width_m, height_m, away_m, x, y, half_x, half_y;

  if (!get_face (lamp, size_m, from_m, &ahead, &right, &width_m, &height_m))
    return false;

  away_m = lr_vec3_dot (way, ahead);
  if (!(away_m > LEAST_AWAY_M))
    return false;

  up = lr_vec3_cross (right, ahead);
  x = lr_vec3_dot (way, right) / away_m;
  y = lr_vec3_dot (way, up) / away_m;
  half_x = 0.5 * width_m / away_m;
  half_y = 0.5 * height_m / away_m;
  /* half a width of 1: from the middle to the edge of the frame is one metre in one */
  view->projection = (LrProjection) { from_m, right, up, ahead, 1.0, 1.0 };
  view->box = (LrFrameBox) { 0.5 + 0.5 * (x - half_x), 0.5 + 0.5 * (x + half_x), 0.5 - 0.5 * (y + half_y), 0.5 - 0.5 * (y - half_y) };
  view->away_m = away_m;
  return true;
}

static bool
overlap (const LrSilhouette *a,
         const LrSilhouette *b)
{
  LrFrameBox p = lr_silhouette_bounds (a), q = lr_silhouette_bounds (b);

  return p.x0 < q.x1 && q.x0 < p.x1 && p.y0 < q.y1 && q.y0 < p.y1;
}

static bool
any_overlap (const LrSilhouette *silhouettes,
             size_t              n)
{
  for (size_t i = 0; i < n; i++)
    for (size_t j = i + 1; j < n; j++)
      if (overlap (&silhouettes[i], &silhouettes[j]))
        return true;
  return false;
}

/* Where a level line runs through a convex polygon */
static bool
chord (const LrSilhouette *s,
       double              y,
       double             *from,
       double             *to)
{
  double low = HUGE_VAL, high = -HUGE_VAL;

  for (size_t i = 0; i < s->n; i++)
    {
      LrVec2 a = s->corner[i], b = s->corner[i + 1 < s->n ? i + 1 : 0];
      double x;

      if ((a.y <= y) == (b.y <= y))
        continue;
      x = a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y);
      low = x < low ? x : low;
      high = x > high ? x : high;
    }

  *from = low;
  *to = high;
  return high > low;
}

/* The length that a level line runs through one or more of them */
static double
covered_length (const LrSilhouette *silhouettes,
                size_t              n,
                double              y)
{
  double from[LR_COVER_MAX], to[LR_COVER_MAX], length = 0.0, reached = -HUGE_VAL;
  size_t k = 0;

  for (size_t i = 0; i < n; i++)
    {
      double a, b;
      size_t j = k;

      if (!chord (&silhouettes[i], y, &a, &b))
        continue;
      for (; j > 0 && from[j - 1] > a; j--)
        {
          from[j] = from[j - 1];
          to[j] = to[j - 1];
        }
      from[j] = a;
      to[j] = b;
      k++;
    }

  for (size_t i = 0; i < k; i++)
    if (to[i] > reached)
      {
        length += to[i] - fmax (from[i], reached);
        reached = to[i];
      }
  return length;
}

/**
 * lr_lamp_covered:
 * @view: a lamp
 * @silhouettes: (inout): solids as they stand before it, in the view's projection; they are cut to the lamp
 * @n: how many; beyond %LR_COVER_MAX they are not looked at
 *
 * Source: closed form where none overlaps another, else the rule of the middle over strips.
 *
 * Returns: the share of what shines that they cover together, 0 to 1
 */
double
lr_lamp_covered (const LrLampView *view,
                 LrSilhouette     *silhouettes,
                 size_t            n)
{
  const LrFrameBox *box = &view->box;
  double width = box->x1 - box->x0, height = box->y1 - box->y0, sum = 0.0;
  size_t k = 0;

  for (size_t i = 0; i < n && k < LR_COVER_MAX; i++)
    if (lr_silhouette_clip (&silhouettes[i], box))
      {
        if (i != k)
          silhouettes[k] = silhouettes[i];
        k++;
      }

  if (k > 1 && any_overlap (silhouettes, k))
    {
      for (int i = 0; i < STRIPS; i++)
        sum += covered_length (silhouettes, k, box->y0 + (i + 0.5) / STRIPS * height);
      return fmin (1.0, sum / (STRIPS * width));
    }

  for (size_t i = 0; i < k; i++)
    sum += lr_silhouette_area (&silhouettes[i]);
  return fmin (1.0, sum / (width * height));
}

/**
 * lr_cast_point:
 * @lamp_m: where light comes from [m]
 * @past_m: a point that it passes [m]
 * @plane_m: a point of a plane [m]
 * @normal: of it, of length 1
 * @at_m: (out): where the shadow of @past_m falls on it [m]
 *
 * Source: closed form, similar triangles.
 *
 * Returns: %FALSE, with @at_m untouched, if the plane is not beyond @past_m
 */
bool
lr_cast_point (LrVec3  lamp_m,
               LrVec3  past_m,
               LrVec3  plane_m,
               LrVec3  normal,
               LrVec3 *at_m)
{
  LrVec3 way = lr_vec3_sub (past_m, lamp_m);
  double per_m = lr_vec3_dot (way, normal), to_m = lr_vec3_dot (lr_vec3_sub (plane_m, lamp_m), normal);

  if (!(fabs (per_m) > 1e-9) || !(to_m / per_m >= 1.0))
    return false;

  *at_m = lr_vec3_along (lamp_m, way, to_m / per_m);
  return true;
}

static bool
width_by (LrVec3  lamp_m,
          LrVec3  half_m,
          LrVec3  past_m,
          LrVec3  plane_m,
          LrVec3  normal,
          double *width_m)
{
  LrVec3 a, b;

  if (!lr_cast_point (lr_vec3_add (lamp_m, half_m), past_m, plane_m, normal, &a)
      || !lr_cast_point (lr_vec3_sub (lamp_m, half_m), past_m, plane_m, normal, &b))
    return false;

  *width_m = lr_vec3_length (lr_vec3_sub (a, b));
  return true;
}

/**
 * lr_half_shadow_m:
 * @lamp: a lamp
 * @size_m: of a point, the side of what really shines [m], > 0
 * @past_m: an edge that it passes [m]
 * @plane_m: a point of a plane [m]
 * @normal: of it, of length 1
 * @width_m: (out): from full light to full shadow on the plane [m]
 *
 * The size of the lamp times the way behind the edge over that before it, for a lamp level with the plane.
 *
 * Source: closed form, similar triangles.
 *
 * Returns: %FALSE, with @width_m untouched, if the plane is not beyond the edge
 */
bool
lr_half_shadow_m (const LrEmitter *lamp,
                  double           size_m,
                  LrVec3           past_m,
                  LrVec3           plane_m,
                  LrVec3           normal,
                  double          *width_m)
{
  LrVec3 ahead, right, up;
  double width, height, by_width_m, by_height_m;

  if (!get_face (lamp, size_m, past_m, &ahead, &right, &width, &height))
    return false;

  up = lr_vec3_cross (right, ahead);
  if (!width_by (lamp->at_m, lr_vec3_scale (right, 0.5 * width), past_m, plane_m, normal, &by_width_m)
      || !width_by (lamp->at_m, lr_vec3_scale (up, 0.5 * height), past_m, plane_m, normal, &by_height_m))
    return false;

  *width_m = fmin (by_width_m, by_height_m);
  return true;
}
