/* test-silhouette.c - what a solid covers of the frame, and where a ray meets it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checked against points all over the solids, seen by 3 × 4 camera matrices P = K R [I | -C] in homogeneous coordinates
 * (Hartley and Zisserman, Multiple View Geometry, 2nd ed., chapter 6). From two metres on a silhouette may miss a curved edge
 * by a thousandth of the frame.
 */

#include "silhouette.h"

#include "check.h"

#define N_POINTS 2000
#define THOUSANDTH 1e-3

typedef struct
{
  double m[3][4];
} Camera;

/* K with the frame's upper left corner as the origin and its width and height as 1 */
static Camera
camera_matrix (LrVec3 c,
               double pan_rad,
               double tilt_rad,
               double half_width,
               double half_height)
{
  double cp = cos (pan_rad), sp = sin (pan_rad), ct = cos (tilt_rad), st = sin (tilt_rad);
  /* rows: right, down, ahead */
  const double r[3][3] = { { sp, -cp, 0.0 }, { st * cp, st * sp, -ct }, { ct * cp, ct * sp, st } };
  const double k[3][3] = { { 0.5 / half_width, 0.0, 0.5 }, { 0.0, 0.5 / half_height, 0.5 }, { 0.0, 0.0, 1.0 } };
  Camera camera = { 0 };

  for (int i = 0; i < 3; i++)
    {
      for (int j = 0; j < 3; j++)
        for (int l = 0; l < 3; l++)
          camera.m[i][j] += k[i][l] * r[l][j];
      camera.m[i][3] = -(camera.m[i][0] * c.x + camera.m[i][1] * c.y + camera.m[i][2] * c.z);
    }

  return camera;
}

static gboolean
see (const Camera *camera,
     LrVec3        p,
     LrVec2       *at)
{
  double x[3];

  for (int i = 0; i < 3; i++)
    x[i] = camera->m[i][0] * p.x + camera->m[i][1] * p.y + camera->m[i][2] * p.z + camera->m[i][3];
  *at = lr_vec2 (x[0] / x[2], x[1] / x[2]);
  return x[2] > 0.011;
}

static LrVec3
random_point_3 (double reach_m)
{
  return lr_vec2_raise (random_point (reach_m), g_test_rand_double_range (-reach_m, reach_m));
}

static LrVec3
random_unit (void)
{
  for (;;)
    {
      LrVec3 p = random_point_3 (1.0);
      double length = lr_vec3_length (p);

      if (length > 0.1 && length < 1.0)
        return lr_vec3_scale (p, 1.0 / length);
    }
}

/* A point on the surface, or in the solid where its hull is the same */
static LrVec3
point_of (const LrVolume *volume)
{
  LrVec3 u = random_unit (), sum = { 0.0, 0.0, 0.0 };
  double weights = 0.0;

  switch (volume->type)
    {
    case LR_VOLUME_BAR:
      return lr_vec3_along (volume->point_m[g_test_rand_bit ()], u, volume->radius_m);
    case LR_VOLUME_ELLIPSOID:
      return lr_vec3_along (lr_vec3_along (lr_vec3_along (volume->point_m[0], volume->point_m[1], u.x), volume->point_m[2], u.y),
                            volume->point_m[3], u.z);
    case LR_VOLUME_PRISM:
      if (volume->base.n == 0)
        return lr_vec2_raise (lr_vec2_add (volume->base.centre_m,
                                           lr_vec2_polar (g_test_rand_double_range (0, 2 * LR_PI), volume->base.radius_m)),
                              g_test_rand_bit () ? volume->bottom_m : volume->top_m);
      return lr_vec2_raise (volume->base.corner_m[(gsize) g_test_rand_int_range (0, (int) volume->base.n)],
                            g_test_rand_bit () ? volume->bottom_m : volume->top_m);
    case LR_VOLUME_HULL:
    default:
      for (gsize i = 0; i < volume->n; i++)
        {
          double weight = pow (g_test_rand_double (), 4.0);

          sum = lr_vec3_along (sum, volume->point_m[i], weight);
          weights += weight;
        }
      return g_test_rand_bit () ? volume->point_m[g_test_rand_int_range (0, (int) volume->n)]
                                : lr_vec3_scale (sum, 1.0 / weights);
    }
}

static void
random_volume (LrVolume *volume,
               int       type)
{
  LrVec3 at_m = random_point_3 (1.0), points_m[LR_VOLUME_MAX], u = random_unit (), v, w;
  LrOutline base;

  switch (type)
    {
    case 0:
      lr_volume_bar (volume, at_m, lr_vec3_along (at_m, u, g_test_rand_double_range (0.05, 2.0)),
                     g_test_rand_double_range (0.005, 0.03));
      break;
    case 1:
      v = lr_vec3_cross (u, random_unit ());
      v = lr_vec3_scale (v, 1.0 / lr_vec3_length (v));
      w = lr_vec3_cross (u, v);
      lr_volume_ellipsoid (volume, at_m, lr_vec3_scale (u, 0.10), lr_vec3_scale (v, 0.08), lr_vec3_scale (w, 0.12));
      break;
    case 2:
      base = lr_outline_box (lr_vec3_flat (at_m), g_test_rand_double_range (0.05, 1.0), g_test_rand_double_range (0.05, 1.0),
                             g_test_rand_double_range (0, 3));
      lr_volume_prism (volume, &base, at_m.z, at_m.z + g_test_rand_double_range (0.02, 1.0));
      break;
    default:
      for (gsize i = 0; i < LR_VOLUME_MAX; i++)
        points_m[i] = lr_vec3_along (at_m, random_unit (), 0.3);
      lr_volume_hull (volume, points_m, LR_VOLUME_MAX);
      break;
    }
}

/* The bounds are those of the points, and every point is in the silhouette but for the flats of a round edge */
static void
test_against_matrix (gconstpointer data)
{
  int type = GPOINTER_TO_INT (data), n_seen = 0;

  for (int i = 0; i < 600; i++)
    {
      double pan_rad = g_test_rand_double_range (-7, 7), tilt_rad = g_test_rand_double_range (-0.5, 0.5);
      double half_width = g_test_rand_double_range (0.15, 0.8), half_height = g_test_rand_double_range (0.15, 0.8);
      LrVec3 eye_m = random_point_3 (5.0);
      Camera matrix = camera_matrix (eye_m, pan_rad, tilt_rad, half_width, half_height);
      LrFrameBox bounds = { HUGE_VAL, -HUGE_VAL, HUGE_VAL, -HUGE_VAL }, found;
      LrProjection projection;
      LrSilhouette seen;
      LrVolume volume;
      LrVec2 at;

      lr_projection_look (eye_m, pan_rad, tilt_rad, half_width, half_height, &projection);
      random_volume (&volume, type);
      if (lr_vec3_dot (lr_vec3_sub (volume.centre_m, eye_m), projection.forward) < 2.0 + volume.reach_m
          || !lr_frame_may_hold (&projection, volume.centre_m, volume.reach_m, 0.0))
        continue;

      g_assert_true (lr_silhouette (&projection, &volume, &seen));
      for (int j = 0; j < N_POINTS; j++)
        {
          LrVec3 point_m = point_of (&volume);

          g_assert_cmpfloat (lr_vec3_length (lr_vec3_sub (point_m, volume.centre_m)), <=, volume.reach_m + 1e-9);
          g_assert_true (see (&matrix, point_m, &at));
          bounds.x0 = fmin (bounds.x0, at.x);
          bounds.x1 = fmax (bounds.x1, at.x);
          bounds.y0 = fmin (bounds.y0, at.y);
          bounds.y1 = fmax (bounds.y1, at.y);
        }

      if (bounds.x0 < -0.5 || bounds.x1 > 1.5 || bounds.y0 < -0.5 || bounds.y1 > 1.5)
        continue;

      found = lr_silhouette_bounds (&seen);
      assert_near (found.x0, bounds.x0, THOUSANDTH);
      assert_near (found.x1, bounds.x1, THOUSANDTH);
      assert_near (found.y0, bounds.y0, THOUSANDTH);
      assert_near (found.y1, bounds.y1, THOUSANDTH);
      n_seen++;
    }
  g_assert_cmpint (n_seen, >, 10);
}

/* What is cut at the plane of the lens holds every point before it, and all of it lies in the frame that it is cut by */
static void
test_across_the_lens (void)
{
  static const LrFrameBox frame = { 0.0, 1.0, 0.0, 1.0 };
  LrProjection projection;
  Camera matrix = camera_matrix (lr_vec3 (0, 0, 1.2), 0.3, 0.05, 0.36, 0.2025);
  int n_in = 0;

  lr_projection_look (lr_vec3 (0, 0, 1.2), 0.3, 0.05, 0.36, 0.2025, &projection);
  for (int i = 0; i < 200; i++)
    {
      LrVec3 from_m = lr_vec3 (-1.0, g_test_rand_double_range (-0.3, 0.3), 1.5);
      LrVec3 to_m = lr_vec3 (2.0, g_test_rand_double_range (-0.5, 1.5), g_test_rand_double_range (0.8, 1.6));
      LrSilhouette seen;
      LrVolume volume;

      lr_volume_bar (&volume, from_m, to_m, 0.012);
      if (!lr_silhouette (&projection, &volume, &seen) || !lr_silhouette_clip (&seen, &frame))
        seen.n = 0;
      for (gsize j = 0; j < seen.n; j++)
        {
          g_assert_cmpfloat (seen.corner[j].x, >=, 0.0);
          g_assert_cmpfloat (seen.corner[j].x, <=, 1.0);
          g_assert_cmpfloat (seen.corner[j].y, >=, 0.0);
          g_assert_cmpfloat (seen.corner[j].y, <=, 1.0);
        }
      for (int j = 0; j <= 1000; j++)
        {
          LrVec2 at;

          if (!see (&matrix, lr_vec3_along (from_m, lr_vec3_sub (to_m, from_m), j / 1000.0), &at)
              || at.x <= 0.0 || at.x >= 1.0 || at.y <= 0.0 || at.y >= 1.0)
            continue;

          n_in++;
          g_assert_true (lr_silhouette_contains (&seen, at));
        }
    }
  g_assert_cmpint (n_in, >, 1000);
}

static void
test_behind (void)
{
  LrProjection projection;
  LrSilhouette seen = { .n = 77 };
  LrVolume volume;

  lr_projection_look (lr_vec3 (0, 0, 1), 0.0, 0.0, 0.4, 0.3, &projection);
  lr_volume_bar (&volume, lr_vec3 (-2, -1, 1), lr_vec3 (-1, 1, 1), 0.02);
  g_assert_false (lr_silhouette (&projection, &volume, &seen));
  g_assert_cmpuint (seen.n, ==, 77);
  g_assert_false (lr_frame_may_hold (&projection, volume.centre_m, volume.reach_m, 0.0));
  g_assert_false (lr_frame_may_hold (&projection, lr_vec3 (NAN, 0, 0), 1.0, 0.0));
}

/* A square of half the frame each way, by hand */
static void
test_area (void)
{
  static const LrFrameBox frame = { 0.0, 1.0, 0.0, 1.0 }, left = { 0.0, 0.5, 0.0, 1.0 };
  const LrVec3 corners_m[] = { { 2, 0.5, 0.5 }, { 2, -0.5, 0.5 }, { 2, -0.5, 1.5 }, { 2, 0.5, 1.5 } };
  LrProjection projection;
  LrSilhouette seen;
  LrVolume volume;

  lr_projection_look (lr_vec3 (0, 0, 1), 0.0, 0.0, 0.5, 0.5, &projection);
  lr_volume_hull (&volume, corners_m, 4);
  g_assert_true (lr_silhouette (&projection, &volume, &seen));
  assert_near (lr_silhouette_area (&seen), 0.25, 1e-12);
  g_assert_true (lr_silhouette_clip (&seen, &frame));
  assert_near (lr_silhouette_area (&seen), 0.25, 1e-12);
  g_assert_true (lr_silhouette_clip (&seen, &left));
  assert_near (lr_silhouette_area (&seen), 0.125, 1e-12);
  g_assert_true (lr_silhouette_contains (&seen, lr_vec2 (0.4, 0.4)));
  g_assert_false (lr_silhouette_contains (&seen, lr_vec2 (0.6, 0.4)));
}

typedef struct
{
  const char *name;
  int         type;
  LrVec3      from_m, way;
  double      enter_m; /* NAN: passes by */
} RayCase;

/* Source: by hand. A bar along y through (2, 0, 1), radius .1; a ball .5 about (2, 0, 1); a box 2 ± .5, ± .5, 0 to 2 */
static const RayCase ray_cases[] = {
  { "bar", 0, { 0, 0, 1 }, { 1, 0, 0 }, 1.9 },
  { "over-the-bar", 0, { 0, 0, 1.2 }, { 1, 0, 0 }, NAN },
  { "beside-the-bar", 0, { 0, 3, 1 }, { 1, 0, 0 }, NAN },
  { "ball", 1, { 0, 0, 1 }, { 1, 0, 0 }, 1.5 },
  { "away-from-the-ball", 1, { 0, 0, 1 }, { -1, 0, 0 }, NAN },
  { "in-the-ball", 1, { 2, 0, 1 }, { 1, 0, 0 }, 0.0 },
  { "box", 2, { 0, 0, 1 }, { 1, 0, 0 }, 1.5 },
  { "box-from-above", 2, { 0, 0, 4 }, { 0.70710678118654752, 0, -0.70710678118654752 }, 2.8284271247461901 },
  { "over-the-box", 2, { 0, 0, 2.1 }, { 1, 0, 0 }, NAN },
};

static void
test_ray (gconstpointer data)
{
  const RayCase *c = data;
  LrOutline base = lr_outline_box (lr_vec2 (2, 0), 1.0, 1.0, 0.0);
  double enter_m = UNTOUCHED;
  LrVolume volume;

  if (c->type == 0)
    lr_volume_bar (&volume, lr_vec3 (2, -1, 1), lr_vec3 (2, 1, 1), 0.1);
  else if (c->type == 1)
    lr_volume_ellipsoid (&volume, lr_vec3 (2, 0, 1), lr_vec3 (0.5, 0, 0), lr_vec3 (0, 0.5, 0), lr_vec3 (0, 0, 0.5));
  else
    lr_volume_prism (&volume, &base, 0.0, 2.0);

  g_assert_cmpint (lr_volume_ray (&volume, c->from_m, c->way, &enter_m), ==, isfinite (c->enter_m));
  assert_near (enter_m, isfinite (c->enter_m) ? c->enter_m : UNTOUCHED, 1e-9);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_data_func ("/silhouette/matrix/bar", GINT_TO_POINTER (0), test_against_matrix);
  g_test_add_data_func ("/silhouette/matrix/ellipsoid", GINT_TO_POINTER (1), test_against_matrix);
  g_test_add_data_func ("/silhouette/matrix/prism", GINT_TO_POINTER (2), test_against_matrix);
  g_test_add_data_func ("/silhouette/matrix/hull", GINT_TO_POINTER (3), test_against_matrix);
  g_test_add_func ("/silhouette/across-the-lens", test_across_the_lens);
  g_test_add_func ("/silhouette/behind", test_behind);
  g_test_add_func ("/silhouette/area", test_area);
  add_rows ("/silhouette/ray", ray_cases, test_ray);
  return g_test_run ();
}
