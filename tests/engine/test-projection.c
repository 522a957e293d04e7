/* test-projection.c - from the room to the frame
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checked against 4 × 4 homogeneous matrices, the way computer graphics does it (Foley, van Dam,
 * Feiner & Hughes, Computer Graphics: Principles and Practice, 2nd ed., chapters 5 and 6, from
 * memory), and against the angles by which a camera is panned and tilted to move a face in the
 * frame.
 */

#include "projection.h"

#include "check.h"

typedef struct
{
  double m[4][4];
} Matrix;

static Matrix
times (Matrix a,
       Matrix b)
{
  Matrix c = { 0 };

  for (int i = 0; i < 4; i++)
    for (int j = 0; j < 4; j++)
      for (int k = 0; k < 4; k++)
        c.m[i][j] += a.m[i][k] * b.m[k][j];

  return c;
}

/* Clip space with x right, y up, from a room with z up: move the lens to the origin, undo the pan
 * about z and the tilt about the camera's right, name the axes anew, divide by the depth */
static Matrix
camera_matrix (LrVec3 eye_m,
               double pan_rad,
               double tilt_rad,
               double half_width,
               double half_height)
{
  double cp = cos (pan_rad), sp = sin (pan_rad), ct = cos (tilt_rad), st = sin (tilt_rad);
  Matrix move = { { { 1, 0, 0, -eye_m.x }, { 0, 1, 0, -eye_m.y }, { 0, 0, 1, -eye_m.z }, { 0, 0, 0, 1 } } };
  Matrix pan = { { { cp, sp, 0, 0 }, { -sp, cp, 0, 0 }, { 0, 0, 1, 0 }, { 0, 0, 0, 1 } } };
  Matrix tilt = { { { ct, 0, st, 0 }, { 0, 1, 0, 0 }, { -st, 0, ct, 0 }, { 0, 0, 0, 1 } } };
  Matrix name = { { { 0, -1, 0, 0 }, { 0, 0, 1, 0 }, { -1, 0, 0, 0 }, { 0, 0, 0, 1 } } };
  Matrix divide = { { { 1 / half_width, 0, 0, 0 }, { 0, 1 / half_height, 0, 0 }, { 0, 0, 1, 0 }, { 0, 0, -1, 0 } } };

  return times (divide, times (name, times (tilt, times (pan, move))));
}

static LrFramePoint
seen_by_matrix (Matrix matrix,
                LrVec3 point_m)
{
  const double in[4] = { point_m.x, point_m.y, point_m.z, 1.0 };
  double out[4] = { 0 };

  for (int i = 0; i < 4; i++)
    for (int k = 0; k < 4; k++)
      out[i] += matrix.m[i][k] * in[k];

  return (LrFramePoint) { 0.5 + 0.5 * out[0] / out[3], 0.5 - 0.5 * out[1] / out[3], out[3] };
}

static LrVec3
random_point_3 (double reach_m)
{
  return lr_vec2_raise (random_point (reach_m), g_test_rand_double_range (-reach_m, reach_m));
}

static void
test_against_matrix (void)
{
  int n_seen = 0;

  for (int i = 0; i < 5000; i++)
    {
      LrVec3 eye_m = random_point_3 (5.0), point_m = random_point_3 (5.0);
      double pan_rad = g_test_rand_double_range (-7.0, 7.0), tilt_rad = g_test_rand_double_range (-1.5, 1.5);
      double half_width = g_test_rand_double_range (0.05, 2.0), half_height = g_test_rand_double_range (0.05, 2.0);
      Matrix matrix = camera_matrix (eye_m, pan_rad, tilt_rad, half_width, half_height);
      LrFramePoint place, expected = seen_by_matrix (matrix, point_m);
      LrProjection projection;

      lr_projection_look (eye_m, pan_rad, tilt_rad, half_width, half_height, &projection);
      if (expected.depth_m < 1e-3)
        continue;

      g_assert_true (lr_projection_point (&projection, point_m, &place));
      assert_near (place.across, expected.across, 1e-9 * (1.0 + fabs (expected.across)));
      assert_near (place.down, expected.down, 1e-9 * (1.0 + fabs (expected.down)));
      assert_near (place.depth_m, expected.depth_m, 1e-12);
      n_seen++;
    }
  g_assert_cmpint (n_seen, >, 1000);
}

typedef struct
{
  const char *name;
  double      pan_deg, tilt_deg;
  LrVec3      point_m;      /* the lens at (0, 0, 1), half a picture 0.5 wide and 0.25 high at 1 m */
  double      across, down; /* expected */
} PlaceCase;

/* Source: proportions by hand */
static const PlaceCase place_cases[] = {
  { "centre", 0.0, 0.0, { 4.0, 0.0, 1.0 }, 0.5, 0.5 },
  { "left-edge", 0.0, 0.0, { 4.0, 2.0, 1.0 }, 0.0, 0.5 },
  { "right-edge", 0.0, 0.0, { 4.0, -2.0, 1.0 }, 1.0, 0.5 },
  { "upper-edge", 0.0, 0.0, { 4.0, 0.0, 2.0 }, 0.5, 0.0 },
  { "lower-left", 0.0, 0.0, { 4.0, 1.0, 0.5 }, 0.25, 0.75 },
  { "panned", 90.0, 0.0, { 1.0, 4.0, 1.0 }, 0.75, 0.5 },
  { "tilted-up", 0.0, 45.0, { 3.0, 0.0, 4.0 }, 0.5, 0.5 },
  { "tilted-down", 0.0, -45.0, { 3.0, 0.0, -2.0 }, 0.5, 0.5 },
  { "outside", 0.0, 0.0, { 1.0, 1.5, 1.0 }, -1.0, 0.5 },
};

static void
test_place (gconstpointer data)
{
  const PlaceCase *c = data;
  LrProjection projection;
  LrFramePoint place;

  g_test_message ("proportions by hand");
  lr_projection_look (lr_vec3 (0.0, 0.0, 1.0), c->pan_deg * LR_DEG, c->tilt_deg * LR_DEG, 0.5, 0.25, &projection);
  g_assert_true (lr_projection_point (&projection, c->point_m, &place));
  assert_near (place.across, c->across, 1e-12);
  assert_near (place.down, c->down, 1e-12);
}

/* Right, up and forward are of length 1, square to each other and right-handed, and right stays
 * level */
static void
test_axes (void)
{
  for (int i = 0; i < 200; i++)
    {
      LrProjection p;
      LrVec3 back;

      lr_projection_look (lr_vec3 (0.0, 0.0, 0.0), g_test_rand_double_range (-4.0, 4.0),
                          g_test_rand_double_range (-1.5, 1.5), 1.0, 1.0, &p);
      back = lr_vec3_cross (p.right, p.up);
      assert_near (lr_vec3_length (lr_vec3_add (back, p.forward)), 0.0, 1e-12);
      assert_near (lr_vec3_length (p.right), 1.0, 1e-12);
      assert_near (lr_vec3_length (p.up), 1.0, 1e-12);
      assert_near (lr_vec3_dot (p.right, p.up), 0.0, 1e-12);
      g_assert_cmpfloat (p.right.z, ==, 0.0);
      g_assert_cmpfloat (p.up.z, >, 0.0);
    }
}

static void
test_ray (void)
{
  for (int i = 0; i < 1000; i++)
    {
      double across = g_test_rand_double_range (-0.5, 1.5), down = g_test_rand_double_range (-0.5, 1.5);
      LrVec3 eye_m = random_point_3 (3.0), ray;
      LrProjection projection;
      LrFramePoint place;

      lr_projection_look (eye_m, g_test_rand_double_range (-4.0, 4.0), g_test_rand_double_range (-1.5, 1.5), 0.4, 0.3,
                          &projection);
      ray = lr_projection_ray (&projection, across, down);
      assert_near (lr_vec3_length (ray), 1.0, 1e-12);
      g_assert_true (lr_projection_point (&projection, lr_vec3_along (eye_m, ray, 2.5), &place));
      assert_near (place.across, across, 1e-10);
      assert_near (place.down, down, 1e-10);
    }
}

typedef struct
{
  const char *name;
  double      across, down;                    /* in: where the face shall be */
  double      width_mm, height_mm, focal_mm;
  double      pan_deg, tilt_deg;               /* expected; the face is straight ahead, level with the lens */
} AimCase;

/* Source: pan atan ((p - 0.5) w' / f), tilt down atan ((0.5 - y) h' / f), worked apart from this
 * program */
static const AimCase aim_cases[] = {
  { "left-third", 1.0 / 3.0, 0.5, 36.0, 20.25, 50.0, -6.84, 0.0 },
  { "four-thirds-0.38", 0.38, 0.5, 17.3, 9.73, 25.0, -4.75, 0.0 },
  { "upper-third", 0.5, 1.0 / 3.0, 36.0, 20.25, 50.0, 0.0, -3.86 },
  { "four-thirds-0.306", 0.5, 0.306, 17.3, 9.73, 25.0, 0.0, -4.32 },
};

static void
test_aim (gconstpointer data)
{
  const AimCase *c = data;
  double half_width = 0.5 * c->width_mm / c->focal_mm, half_height = 0.5 * c->height_mm / c->focal_mm;
  double pan_rad = NAN, tilt_rad = NAN;

  g_test_message ("pan atan ((p - 0.5) w' / f), tilt down atan ((0.5 - y) h' / f), pinhole");
  g_assert_true (lr_projection_aim (lr_vec3 (0.0, 0.0, 1.2), lr_vec3 (2.0, 0.0, 1.2), c->across, c->down,
                                    half_width, half_height, &pan_rad, &tilt_rad));
  assert_near (pan_rad / LR_DEG, c->pan_deg, 0.02);
  assert_near (tilt_rad / LR_DEG, c->tilt_deg, 0.02);
}

/* The matrix puts the point where it was asked for */
static void
test_aim_property (void)
{
  int n_aimed = 0;

  for (int i = 0; i < 5000; i++)
    {
      LrVec3 from_m = random_point_3 (4.0), at_m = random_point_3 (4.0);
      double across = g_test_rand_double_range (-0.2, 1.2), down = g_test_rand_double_range (-0.2, 1.2);
      double half_width = g_test_rand_double_range (0.05, 1.5), half_height = g_test_rand_double_range (0.05, 1.0);
      double pan_rad, tilt_rad;
      LrFramePoint place;

      if (!lr_projection_aim (from_m, at_m, across, down, half_width, half_height, &pan_rad, &tilt_rad))
        {
          /* Refused only where it is steep, as nothing in an interview is */
          g_assert_cmpfloat (fabs (lr_vec3_sub (at_m, from_m).z), >,
                             0.4 * lr_vec2_distance (lr_vec3_flat (from_m), lr_vec3_flat (at_m)));
          continue;
        }

      place = seen_by_matrix (camera_matrix (from_m, pan_rad, tilt_rad, half_width, half_height), at_m);
      g_assert_cmpfloat (place.depth_m, >, 0.0);
      assert_near (place.across, across, 1e-6);
      assert_near (place.down, down, 1e-6);
      g_assert_cmpfloat (fabs (tilt_rad), <=, 0.5 * LR_PI);
      g_assert_cmpfloat (fabs (pan_rad), <=, LR_PI);
      n_aimed++;
    }
  g_assert_cmpint (n_aimed, >, 4000);
}

static void
test_domain (void)
{
  LrVec3 from_m = { 0.0, 0.0, 1.0 }, at_m = { 2.0, 0.0, 1.0 };
  double pan_rad = UNTOUCHED, tilt_rad = UNTOUCHED;
  LrFramePoint place = { .across = UNTOUCHED };
  LrProjection projection;

  for (size_t i = 0; i < G_N_ELEMENTS (not_positive); i++)
    {
      double bad = not_positive[i];

      g_assert_false (lr_projection_aim (from_m, at_m, 0.5, 0.5, bad, 0.2, &pan_rad, &tilt_rad));
      g_assert_false (lr_projection_aim (from_m, at_m, 0.5, 0.5, 0.3, bad, &pan_rad, &tilt_rad));
      if (isfinite (bad))
        continue;
      g_assert_false (lr_projection_aim (from_m, at_m, bad, 0.5, 0.3, 0.2, &pan_rad, &tilt_rad));
      g_assert_false (lr_projection_aim (from_m, at_m, 0.5, bad, 0.3, 0.2, &pan_rad, &tilt_rad));
      g_assert_false (lr_projection_aim (from_m, lr_vec3 (bad, 0.0, 1.0), 0.5, 0.5, 0.3, 0.2, &pan_rad, &tilt_rad));
      g_assert_false (lr_projection_aim (from_m, lr_vec3 (1.0, 0.0, bad), 0.5, 0.5, 0.3, 0.2, &pan_rad, &tilt_rad));
    }
  g_assert_false (lr_projection_aim (from_m, lr_vec3 (0.0, 0.0, 3.0), 0.5, 0.5, 0.3, 0.2, &pan_rad, &tilt_rad));
  g_assert_false (lr_projection_aim (from_m, from_m, 0.5, 0.5, 0.3, 0.2, &pan_rad, &tilt_rad));

  lr_projection_look (from_m, 0.0, 0.0, 0.3, 0.2, &projection);
  g_assert_false (lr_projection_point (&projection, from_m, &place));
  g_assert_false (lr_projection_point (&projection, lr_vec3 (0.0, 1.0, 1.0), &place));
  g_assert_false (lr_projection_point (&projection, lr_vec3 (-1.0, 0.0, 1.0), &place));
  g_assert_false (lr_projection_point (&projection, lr_vec3 (NAN, 0.0, 1.0), &place));
  g_assert_cmpfloat (place.across, ==, UNTOUCHED);
  g_assert_cmpfloat (pan_rad, ==, UNTOUCHED);
  g_assert_cmpfloat (tilt_rad, ==, UNTOUCHED);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/projection/place", place_cases, test_place);
  add_rows ("/projection/aim", aim_cases, test_aim);
  g_test_add_func ("/projection/against-matrix", test_against_matrix);
  g_test_add_func ("/projection/axes", test_axes);
  g_test_add_func ("/projection/ray", test_ray);
  g_test_add_func ("/projection/aim-property", test_aim_property);
  g_test_add_func ("/projection/domain", test_domain);

  return g_test_run ();
}
