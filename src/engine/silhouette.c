/* silhouette.c - what a solid covers of the frame
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A convex solid covers the convex hull of the images of its corners. Of an ellipsoid the lens sees the circle in
 * which the polar plane of the lens cuts it: where the ellipsoid is the unit sphere and the lens is at e, the circle about
 * e / |e|^2, square to e, of radius sqrt (1 - 1 / |e|^2) (closed form). A round bar is the hull of the balls at its ends.
 *
 * What crosses the plane of the lens is cut there first: of every two corners on either side of that plane the way
 * between them is cut, and the hull of those cuts is the section.
 */

#include "silhouette.h"

#include <string.h>

#define NEAR_M 0.01
#define ROUND_POINTS 24
#define END_POINTS 12
/* cos and sin of a full turn over the points, and half-way from 1 to 1 / cos of half such a step */
#define ROUND_COS 0.96592582628906829
#define ROUND_SIN 0.25881904510252076
#define ROUND_GROWN 1.0043144802900765
#define END_COS 0.86602540378443865
#define END_SIN 0.5
#define END_GROWN 1.0176380902050415
#define MAX_POINTS 24   /* of any shape */
#define MAX_CUTS ((MAX_POINTS / 2) * (MAX_POINTS / 2))

/* Whether the ball lies wholly beyond a plane through the lens: out is the side of its centre, times the plane's norm */
static bool
is_beyond (double out,
           double reach_m,
           double slope)
{
  return out > 0.0 && out * out > reach_m * reach_m * (1.0 + slope * slope);
}

/**
 * lr_frame_may_hold:
 * @projection: a camera
 * @centre_m: middle of a ball [m]
 * @reach_m: its radius [m]
 * @above: how far over the upper edge counts as well, in shares of the frame's height
 *
 * Returns: %FALSE when nothing of the ball is in the frame; %TRUE may be wrong at corners
 */
bool
lr_frame_may_hold (const LrProjection *projection,
                   LrVec3              centre_m,
                   double              reach_m,
                   double              above)
{
  LrVec3 way = lr_vec3_sub (centre_m, projection->eye_m);
  double z = lr_vec3_dot (way, projection->forward);
  double x, y, upper;

  if (!(z + reach_m > NEAR_M))
    return false;

  x = lr_vec3_dot (way, projection->right);
  y = lr_vec3_dot (way, projection->up);
  upper = projection->half_height * (1.0 + 2.0 * above);
  return !is_beyond (fabs (x) - projection->half_width * z, reach_m, projection->half_width)
         && !is_beyond (y - upper * z, reach_m, upper)
         && !is_beyond (-y - projection->half_height * z, reach_m, projection->half_height);
}

/**
 * lr_ball_bounds:
 * @projection: a camera
 * @centre_m: middle of a ball [m]
 * @reach_m: its radius [m]
 * @bounds: (out): a box that holds its image; of a ball that reaches the plane of the lens, everything
 *
 * Returns: %FALSE, with @bounds untouched, if it lies behind the lens
 */
bool
lr_ball_bounds (const LrProjection *projection,
                LrVec3              centre_m,
                double              reach_m,
                LrFrameBox         *bounds)
{
  LrVec3 way = lr_vec3_sub (centre_m, projection->eye_m);
  double z = lr_vec3_dot (way, projection->forward);
  double x, y, nearest_m = z - reach_m, far_m = z + reach_m;

  if (!(far_m > NEAR_M))
    return false;
  if (nearest_m < NEAR_M)
    {
      *bounds = (LrFrameBox) { -HUGE_VAL, HUGE_VAL, -HUGE_VAL, HUGE_VAL };
      return true;
    }

  /* A cube round the ball: each side is furthest out at its nearer or its farther face */
  x = lr_vec3_dot (way, projection->right);
  y = lr_vec3_dot (way, projection->up);
  bounds->x0 = 0.5 + 0.5 * (x - reach_m) / ((x > reach_m ? far_m : nearest_m) * projection->half_width);
  bounds->x1 = 0.5 + 0.5 * (x + reach_m) / ((x < -reach_m ? far_m : nearest_m) * projection->half_width);
  bounds->y0 = 0.5 - 0.5 * (y + reach_m) / ((y < -reach_m ? far_m : nearest_m) * projection->half_height);
  bounds->y1 = 0.5 - 0.5 * (y - reach_m) / ((y > reach_m ? far_m : nearest_m) * projection->half_height);
  return true;
}

static LrVec3
unit (LrVec3 v)
{
  return lr_vec3_scale (v, 1.0 / fmax (lr_vec3_length (v), 1e-12));
}

/* Points of a circle; n is even: the second half is the first, mirrored */
static size_t
add_circle (LrVec3  middle_m,
            LrVec3  u_m,
            LrVec3  v_m,
            size_t  n,
            LrVec3 *points_m)
{
  double c = n == ROUND_POINTS ? ROUND_COS : END_COS, s = n == ROUND_POINTS ? ROUND_SIN : END_SIN;
  double x = 1.0, y = 0.0;

  for (size_t i = 0; i < n; i++)
    {
      double next = c * x - s * y;

      points_m[i] = lr_vec3_along (lr_vec3_along (middle_m, u_m, x), v_m, y);
      y = s * x + c * y;
      x = next;
    }

  return n;
}

/* What the lens sees as the edge of an ellipsoid; the lens in it sees no edge: then the six ends of its axes */
static size_t
add_ellipsoid (LrVec3        eye_m,
               LrVec3        middle_m,
               const LrVec3 *axes_m,
               size_t        n,
               LrVec3       *points_m)
{
  LrVec3 way = lr_vec3_sub (eye_m, middle_m), eye, u, v;
  double length2[3], distance2, radius;

  for (int i = 0; i < 3; i++)
    length2[i] = fmax (lr_vec3_dot (axes_m[i], axes_m[i]), 1e-18);
  eye = lr_vec3 (lr_vec3_dot (way, axes_m[0]) / length2[0], lr_vec3_dot (way, axes_m[1]) / length2[1],
                 lr_vec3_dot (way, axes_m[2]) / length2[2]);
  distance2 = lr_vec3_dot (eye, eye);
  if (distance2 <= 1.0001)
    {
      for (size_t i = 0; i < 6; i++)
        points_m[i] = lr_vec3_along (middle_m, axes_m[i / 2], i % 2 ? 1.0 : -1.0);
      return 6;
    }

  /* half-way between the polygon in the circle and the one round it: off by 0.4 % of it at most, with 12 points 1.7 % */
  radius = sqrt (1.0 - 1.0 / distance2) * (n == ROUND_POINTS ? ROUND_GROWN : END_GROWN);
  u = unit (lr_vec3_cross (eye, fabs (eye.z) < 0.9 * sqrt (distance2) ? lr_vec3 (0, 0, 1) : lr_vec3 (1, 0, 0)));
  v = unit (lr_vec3_cross (eye, u));
  eye = lr_vec3_scale (eye, 1.0 / distance2);
  u = lr_vec3_scale (u, radius);
  v = lr_vec3_scale (v, radius);

#define TO_ROOM(p) lr_vec3_along (lr_vec3_along (lr_vec3_scale (axes_m[0], (p).x), axes_m[1], (p).y), axes_m[2], (p).z)
  return add_circle (lr_vec3_add (middle_m, TO_ROOM (eye)), TO_ROOM (u), TO_ROOM (v), n, points_m);
#undef TO_ROOM
}

static size_t
add_prism (const LrVolume *shape,
           LrVec3         *points_m)
{
  const LrOutline *base = &shape->base;
  LrVec3 middle_m = lr_vec2_raise (base->centre_m, shape->bottom_m), up_m = { 0.0, 0.0, shape->top_m - shape->bottom_m };
  size_t n = base->n;

  if (n == 0)
    n = add_circle (middle_m, lr_vec3 (base->radius_m, 0, 0), lr_vec3 (0, base->radius_m, 0), END_POINTS, points_m);
  else
    for (size_t i = 0; i < n; i++)
      points_m[i] = lr_vec2_raise (base->corner_m[i], shape->bottom_m);

  for (size_t i = 0; i < n; i++)
    points_m[n + i] = lr_vec3_add (points_m[i], up_m);
  return 2 * n;
}

static size_t
add_points (const LrVolume *shape,
            LrVec3          eye_m,
            LrVec3         *points_m)
{
  double r = shape->radius_m;
  LrVec3 axes_m[3] = { { r, 0.0, 0.0 }, { 0.0, r, 0.0 }, { 0.0, 0.0, r } };
  size_t n;

  switch (shape->type)
    {
    case LR_VOLUME_BAR:
      n = add_ellipsoid (eye_m, shape->point_m[0], axes_m, END_POINTS, points_m);
      return n + add_ellipsoid (eye_m, shape->point_m[1], axes_m, END_POINTS, points_m + n);
    case LR_VOLUME_ELLIPSOID:
      return add_ellipsoid (eye_m, shape->point_m[0], shape->point_m + 1, ROUND_POINTS, points_m);
    case LR_VOLUME_PRISM:
      return add_prism (shape, points_m);
    case LR_VOLUME_HULL:
    default:
      memcpy (points_m, shape->point_m, shape->n * sizeof (LrVec3));
      return shape->n;
    }
}

/* In the camera's axes: x right, y up, z ahead */
static LrVec3
to_camera (const LrProjection *p,
           LrVec3              point_m)
{
  LrVec3 way = lr_vec3_sub (point_m, p->eye_m);

  return lr_vec3 (lr_vec3_dot (way, p->right), lr_vec3_dot (way, p->up), lr_vec3_dot (way, p->forward));
}

static LrVec2
to_frame (const LrProjection *p,
          LrVec3              camera_m)
{
  return lr_vec2 (0.5 + 0.5 * camera_m.x / (camera_m.z * p->half_width),
                  0.5 - 0.5 * camera_m.y / (camera_m.z * p->half_height));
}

/* By x, then by y: few points, nearly in order */
static void
sort_points (LrVec2 *points,
             size_t  n)
{
  for (size_t i = 1; i < n; i++)
    {
      LrVec2 p = points[i];
      size_t j = i;

      for (; j > 0 && (points[j - 1].x > p.x || (points[j - 1].x == p.x && points[j - 1].y > p.y)); j--)
        points[j] = points[j - 1];
      points[j] = p;
    }
}

/* Andrew's monotone chain (Information Processing Letters 9, 1979); the points are put in order */
static void
set_hull (LrVec2       *points,
          size_t        n,
          LrSilhouette *hull)
{
  LrVec2 chain[2 * (MAX_POINTS + MAX_CUTS)];
  size_t k = 0;

  sort_points (points, n);
  for (int pass = 0; pass < 2; pass++)
    {
      size_t start = k;

      for (size_t i = 0; i < n; i++)
        {
          LrVec2 p = points[pass == 0 ? i : n - 1 - i];

          while (k >= start + 2
                 && lr_vec2_cross (lr_vec2_sub (chain[k - 1], chain[k - 2]), lr_vec2_sub (p, chain[k - 2])) <= 0.0)
            k--;
          chain[k++] = p;
        }
      k--;
    }

  hull->n = k < LR_SILHOUETTE_MAX - 4 ? k : LR_SILHOUETTE_MAX - 4;
  memcpy (hull->corner, chain, hull->n * sizeof (LrVec2));
}

/**
 * lr_silhouette:
 * @projection: a camera
 * @shape: a solid
 * @silhouette: (out): what it covers, also beyond the edges of the frame
 *
 * Source: closed form, see the head of this file.
 *
 * Returns: %FALSE, with @silhouette untouched, if nothing of it lies in front of the lens
 */
bool
lr_silhouette (const LrProjection *projection,
               const LrVolume     *shape,
               LrSilhouette       *silhouette)
{
  LrVec3 points_m[MAX_POINTS];
  LrVec2 seen[MAX_POINTS + MAX_CUTS];
  size_t n = add_points (shape, projection->eye_m, points_m), n_seen = 0;

  for (size_t i = 0; i < n; i++)
    {
      points_m[i] = to_camera (projection, points_m[i]);
      if (points_m[i].z >= NEAR_M)
        seen[n_seen++] = to_frame (projection, points_m[i]);
    }
  if (n_seen == 0)
    return false;

  for (size_t i = 0; n_seen < n && i < n; i++)
    for (size_t j = 0; points_m[i].z >= NEAR_M && j < n; j++)
      if (points_m[j].z < NEAR_M && n_seen < MAX_POINTS + MAX_CUTS)
        {
          double t = (NEAR_M - points_m[i].z) / (points_m[j].z - points_m[i].z);
          LrVec3 cut_m = lr_vec3_along (points_m[i], lr_vec3_sub (points_m[j], points_m[i]), t);

          cut_m.z = NEAR_M;
          seen[n_seen++] = to_frame (projection, cut_m);
        }

  set_hull (seen, n_seen, silhouette);
  return silhouette->n >= 3;
}

/* Keeps what lies on one side of a line that is upright or level: sign times its coordinate at most sign times at */
static size_t
clip_side (const LrVec2 *in,
           size_t        n,
           bool          is_upright,
           double        sign,
           double        at,
           LrVec2       *out,
           size_t        max)
{
  size_t k = 0;

  for (size_t i = 0; i < n; i++)
    {
      LrVec2 a = in[i], b = in[i + 1 < n ? i + 1 : 0];
      double from = sign * ((is_upright ? a.x : a.y) - at), to = sign * ((is_upright ? b.x : b.y) - at);

      if (from <= 0.0 && k < max)
        out[k++] = a;
      if ((from <= 0.0) != (to <= 0.0) && k < max)
        {
          out[k] = lr_vec2_along (a, lr_vec2_sub (b, a), from / (from - to));
          if (is_upright)
            out[k].x = at;
          else
            out[k].y = at;
          k++;
        }
    }

  return k;
}

/**
 * lr_frame_clip:
 * @corner: corners of a polygon in the frame
 * @n: how many
 * @box: part of the frame
 * @corner_out: (out caller-allocates): what of the polygon lies in @box
 * @max: room in @corner_out, up to %LR_SILHOUETTE_MAX
 *
 * Source: Sutherland and Hodgman, Reentrant Polygon Clipping, Communications of the ACM 17 (1974).
 *
 * Returns: how many corners are left
 */
size_t
lr_frame_clip (const LrVec2     *corner,
               size_t            n,
               const LrFrameBox *box,
               LrVec2           *corner_out,
               size_t            max)
{
  LrVec2 other[LR_SILHOUETTE_MAX];

  if (max > LR_SILHOUETTE_MAX)
    max = LR_SILHOUETTE_MAX;
  n = clip_side (corner, n, true, -1.0, box->x0, other, max);
  n = clip_side (other, n, true, 1.0, box->x1, corner_out, max);
  n = clip_side (corner_out, n, false, -1.0, box->y0, other, max);
  return clip_side (other, n, false, 1.0, box->y1, corner_out, max);
}

/**
 * lr_silhouette_clip:
 * @silhouette: (inout): a silhouette
 * @box: part of the frame
 *
 * Cuts away what lies outside @box.
 *
 * Returns: %FALSE if nothing is left
 */
bool
lr_silhouette_clip (LrSilhouette     *silhouette,
                    const LrFrameBox *box)
{
  LrFrameBox bounds = lr_silhouette_bounds (silhouette);
  LrSilhouette whole;

  if (bounds.x0 >= box->x0 && bounds.x1 <= box->x1 && bounds.y0 >= box->y0 && bounds.y1 <= box->y1)
    return silhouette->n >= 3;

  whole = *silhouette;
  silhouette->n = lr_frame_clip (whole.corner, whole.n, box, silhouette->corner, LR_SILHOUETTE_MAX);
  return silhouette->n >= 3 && lr_silhouette_area (silhouette) > 0.0;
}

/**
 * lr_silhouette_area:
 * @silhouette: a silhouette
 *
 * Returns: its area, the frame's being 1
 */
double
lr_silhouette_area (const LrSilhouette *silhouette)
{
  return fabs (lr_polygon_area_m2 (silhouette->corner, silhouette->n));
}

/**
 * lr_silhouette_contains:
 * @silhouette: a silhouette
 * @at: a place in the frame
 *
 * Returns: whether it covers that place
 */
bool
lr_silhouette_contains (const LrSilhouette *silhouette,
                        LrVec2              at)
{
  for (size_t i = 0; i < silhouette->n; i++)
    {
      LrVec2 a = silhouette->corner[i], b = silhouette->corner[i + 1 < silhouette->n ? i + 1 : 0];

      if (lr_vec2_cross (lr_vec2_sub (b, a), lr_vec2_sub (at, a)) < 0.0)
        return false;
    }

  return silhouette->n >= 3;
}

/**
 * lr_silhouette_bounds:
 * @silhouette: a silhouette
 *
 * Returns: the least box that holds it
 */
LrFrameBox
lr_silhouette_bounds (const LrSilhouette *silhouette)
{
  LrFrameBox bounds = { HUGE_VAL, -HUGE_VAL, HUGE_VAL, -HUGE_VAL };

  for (size_t i = 0; i < silhouette->n; i++)
    {
      LrVec2 at = silhouette->corner[i];

      /* without fmin(), which is a call: this is asked of every part */
      bounds.x0 = at.x < bounds.x0 ? at.x : bounds.x0;
      bounds.x1 = at.x > bounds.x1 ? at.x : bounds.x1;
      bounds.y0 = at.y < bounds.y0 ? at.y : bounds.y0;
      bounds.y1 = at.y > bounds.y1 ? at.y : bounds.y1;
    }
  return bounds;
}
