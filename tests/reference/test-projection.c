/* test-projection.c - cameras of a plan against the matrix of a camera
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * P = K [R | t] with t = -R C and x = P X (Hartley and Zisserman, Multiple View Geometry in Computer Vision, 2nd ed., chapter
 * 6, "Camera models", from memory): camera axes x to the right, y down, z ahead; K holds the image distance in pixels across
 * and down, and the middle of the picture. Matrices are multiplied out here; nothing of the program's geometry is used.
 */

#include "config.h"

#include "fixture.h"

#define WIDTH_PX 1920.0
#define TOLERANCE 0.001 /* of the frame's width: what a picture promises */
#define CLOSE 1e-6      /* and what the arithmetic should keep */

typedef struct
{
  const char *name;
  double      focal_m, sensor_w_m, sensor_h_m, squeeze;
  LrAspect    aspect;
  double      cut_w_m, cut_h_m; /* part of the sensor that is delivered, by hand */
  double      pan_deg, tilt_deg, focus_m;
} CameraCase;

/* 24 × 18 mm squeezed by 2 is 2.667:1 when shown: 2.39:1 takes 21.51 mm of its width */
static const CameraCase cameras[] = {
  { "level", 0.050, 0.036, 0.02025, 1.0, LR_ASPECT_16_9, 0.036, 0.02025, 0.0, 0.0, 2.5 },
  { "panned", 0.035, 0.036, 0.024, 1.0, LR_ASPECT_16_9, 0.036, 0.02025, 137.0, 0.0, 2.0 },
  { "tilted-down", 0.024, 0.036, 0.024, 1.0, LR_ASPECT_SENSOR, 0.036, 0.024, -60.0, -35.0, 1.2 },
  { "tilted-up", 0.085, 0.036, 0.024, 1.0, LR_ASPECT_4_5, 0.0192, 0.024, 20.0, 50.0, 3.0 },
  { "upright-frame", 0.050, 0.036, 0.024, 1.0, LR_ASPECT_9_16, 0.0135, 0.024, -170.0, 12.0, 4.0 },
  { "squeezed", 0.050, 0.024, 0.018, 2.0, LR_ASPECT_SENSOR, 0.024, 0.018, 75.0, -8.0, 3.0 },
  { "squeezed-cut", 0.075, 0.024, 0.018, 2.0, LR_ASPECT_239, 0.02151, 0.018, -100.0, 25.0, 2.2 },
  { "near", 0.100, 0.036, 0.024, 1.0, LR_ASPECT_1_1, 0.024, 0.024, 45.0, -20.0, 0.6 },
};

static void
times_3 (double out[3][3],
         double a[3][3],
         double b[3][3])
{
  for (int i = 0; i < 3; i++)
    for (int j = 0; j < 3; j++)
      {
        out[i][j] = 0.0;
        for (int k = 0; k < 3; k++)
          out[i][j] += a[i][k] * b[k][j];
      }
}

/* From the room, z up, to the camera's axes: undo the pan about z, then the tilt about y, then name the axes anew */
static void
rotation (double pan_rad,
          double tilt_rad,
          double out[3][3])
{
  double cp = cos (pan_rad), sp = sin (pan_rad), ct = cos (tilt_rad), st = sin (tilt_rad);
  double pan[3][3] = { { cp, sp, 0 }, { -sp, cp, 0 }, { 0, 0, 1 } };
  double tilt[3][3] = { { ct, 0, st }, { 0, 1, 0 }, { -st, 0, ct } };
  double name[3][3] = { { 0, -1, 0 }, { 0, 0, -1 }, { 1, 0, 0 } };
  double panned_tilted[3][3];

  times_3 (panned_tilted, tilt, pan);
  times_3 (out, name, panned_tilted);
}

/* s + v is the focus distance and 1/f = 1/s + 1/v. Source: thin lens, closed form */
static double
image_distance_m (double focal_m,
                  double focus_m)
{
  return 0.5 * (focus_m - sqrt (focus_m * focus_m - 4.0 * focus_m * focal_m));
}

typedef struct
{
  double r[3][3], centre_m[3], p[3][4];
  double across_px, down_px, middle_x_px, middle_y_px; /* of K */
  double height_px;
} Matrix;

/* The tripod stands at @x_m, @y_m; the lens is as far ahead of it as the image distance reaches in plan */
static void
init_matrix (const CameraCase *c,
             double            x_m,
             double            y_m,
             double            lens_height_m,
             Matrix           *m)
{
  double v_m = image_distance_m (c->focal_m, c->focus_m), ahead_m = v_m * cos (c->tilt_deg * LR_DEG);

  rotation (c->pan_deg * LR_DEG, c->tilt_deg * LR_DEG, m->r);
  m->centre_m[0] = x_m + ahead_m * cos (c->pan_deg * LR_DEG);
  m->centre_m[1] = y_m + ahead_m * sin (c->pan_deg * LR_DEG);
  m->centre_m[2] = lens_height_m;

  m->height_px = WIDTH_PX * c->cut_h_m / (c->squeeze * c->cut_w_m);
  m->across_px = WIDTH_PX * v_m / (c->squeeze * c->cut_w_m); /* squeezed on the sensor, and shown without it */
  m->down_px = m->height_px * v_m / c->cut_h_m;
  m->middle_x_px = 0.5 * WIDTH_PX;
  m->middle_y_px = 0.5 * m->height_px;

  for (int j = 0; j < 4; j++)
    {
      double rt[3];

      for (int i = 0; i < 3; i++)
        rt[i] = j < 3 ? m->r[i][j]
                      : -(m->r[i][0] * m->centre_m[0] + m->r[i][1] * m->centre_m[1] + m->r[i][2] * m->centre_m[2]);
      m->p[0][j] = m->across_px * rt[0] + m->middle_x_px * rt[2];
      m->p[1][j] = m->down_px * rt[1] + m->middle_y_px * rt[2];
      m->p[2][j] = rt[2];
    }
}

/* The point of the room seen at a pixel, at a depth: X = C + depth R' K^-1 (u, v, 1) */
static LrVec3
point_at (const Matrix *m,
          double        u_px,
          double        v_px,
          double        depth_m)
{
  double ray[3] = { (u_px - m->middle_x_px) / m->across_px, (v_px - m->middle_y_px) / m->down_px, 1.0 }, at_m[3];

  for (int i = 0; i < 3; i++)
    at_m[i] = m->centre_m[i] + depth_m * (m->r[0][i] * ray[0] + m->r[1][i] * ray[1] + m->r[2][i] * ray[2]);

  return lr_vec3 (at_m[0], at_m[1], at_m[2]);
}

static void
multiply (const Matrix *m,
          LrVec3        at_m,
          double       *u_px,
          double       *v_px,
          double       *depth_m)
{
  double x[3];

  for (int i = 0; i < 3; i++)
    x[i] = m->p[i][0] * at_m.x + m->p[i][1] * at_m.y + m->p[i][2] * at_m.z + m->p[i][3];

  *u_px = x[0] / x[2];
  *v_px = x[1] / x[2];
  *depth_m = x[2];
}

static void
test_camera (gconstpointer data)
{
  static const double shares[] = { -0.3, 0.0, 0.1, 1.0 / 3.0, 0.5, 0.61, 0.9, 1.0, 1.4 }, depths_m[] = { 0.35, 2.14, 9.0 };
  const CameraCase *c = data;
  const LrProjection *projection;
  g_autoptr (LrPlan) plan = fixture_room (8.0, 6.0, 2.7);
  g_autoptr (LrStudy) study = NULL;
  const char *id = fixture_add (&plan, LR_ITEM_CAMERA, 0, 3.1, 2.3);
  Matrix m;

  fixture_text (&plan, id, "aims-at", "");
  fixture_set (&plan, id, "focal-mm", c->focal_m);
  fixture_set (&plan, id, "sensor-width-mm", c->sensor_w_m);
  fixture_set (&plan, id, "sensor-height-mm", c->sensor_h_m);
  fixture_set (&plan, id, "squeeze", c->squeeze);
  fixture_set (&plan, id, "aspect", c->aspect);
  fixture_set (&plan, id, "facing-deg", c->pan_deg * LR_DEG);
  fixture_set (&plan, id, "tilt-deg", c->tilt_deg * LR_DEG);
  fixture_set (&plan, id, "focus-mm", c->focus_m);
  fixture_set (&plan, id, "lens-height-mm", 1.25);
  study = lr_study_new (plan);
  projection = &fixture_camera (study, id)->projection;
  init_matrix (c, 3.1, 2.3, 1.25, &m);

  for (guint i = 0; i < G_N_ELEMENTS (shares) * G_N_ELEMENTS (shares) * G_N_ELEMENTS (depths_m); i++)
    {
      double across = shares[i % 9], down = shares[i / 9 % 9], u_px, v_px, depth_m;
      LrVec3 at_m = point_at (&m, across * WIDTH_PX, down * m.height_px, depths_m[i / 81]);
      LrFramePoint place;

      multiply (&m, at_m, &u_px, &v_px, &depth_m);
      assert_near (u_px, across * WIDTH_PX, 1e-6); /* the matrix agrees with itself */
      g_assert_true (lr_projection_point (projection, at_m, &place));
      assert_near (place.across * WIDTH_PX, u_px, TOLERANCE * WIDTH_PX);
      assert_near (place.down * m.height_px, v_px, TOLERANCE * WIDTH_PX);
      assert_near (place.across * WIDTH_PX, u_px, CLOSE * WIDTH_PX);
      assert_near (place.down * m.height_px, v_px, CLOSE * WIDTH_PX);
      assert_near (place.depth_m, depth_m, 1e-9);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/reference/projection", cameras, test_camera);

  return g_test_run ();
}
