/* test-paint.c - perspective, order and softness of a viewfinder picture
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <string.h>

#include "paint.h"

#define WIDTH 470.0
#define N_RANDOM 400

typedef struct
{
  const char *name;
  LrVec3      eye_m;
  double      pan_deg, tilt_deg, angle_deg; /* horizontal angle of view */
} View;

static const View views[] = {
  { "level", { 4.81, 2.80, 1.20 }, 176.0, 0.0, 39.6 },
  { "down", { 0.0, 0.0, 2.4 }, 30.0, -35.0, 39.6 },
  { "up", { 1.0, -2.0, 0.3 }, -100.0, 40.0, 60.0 },
  { "wide", { 3.0, 3.0, 1.5 }, 10.0, 5.0, 112.6 },
  { "long", { -3.0, 5.0, 1.2 }, -45.0, -2.0, 10.3 },
};

static void
init_reading (const View      *view,
              LrItem          *item,
              LrCameraReading *camera)
{
  double half = tan (0.5 * view->angle_deg * LR_DEG);

  memset (camera, 0, sizeof *camera);
  lr_projection_look (view->eye_m, view->pan_deg * LR_DEG, view->tilt_deg * LR_DEG, half, half * 9.0 / 16.0,
                      &camera->projection);
  camera->item = item;
  camera->focal_m = 0.05;
  camera->f_number = 2.8;
  camera->area = (LrSensorArea) { 0.036, 0.02025 };
  camera->focus_m = 2.0;
}

/* By a 4 x 4 matrix on homogeneous coordinates: move, turn, turn, project. Source: the general form of a perspective
 * transformation (Foley, van Dam, Feiner, Hughes, Computer Graphics, chapter 6, from memory). */
static void
multiply (const double m[4][4],
          const double in[4],
          double       out[4])
{
  for (int i = 0; i < 4; i++)
    out[i] = m[i][0] * in[0] + m[i][1] * in[1] + m[i][2] * in[2] + m[i][3] * in[3];
}

static gboolean
by_matrix (const View *view,
           LrVec3      at_m,
           double     *x,
           double     *y)
{
  double p = view->pan_deg * LR_DEG, t = view->tilt_deg * LR_DEG;
  double half = tan (0.5 * view->angle_deg * LR_DEG);
  const double move[4][4] = { { 1, 0, 0, -view->eye_m.x }, { 0, 1, 0, -view->eye_m.y }, { 0, 0, 1, -view->eye_m.z },
                              { 0, 0, 0, 1 } };
  /* So that the camera looks along +x, level */
  const double pan[4][4] = { { cos (p), sin (p), 0, 0 }, { -sin (p), cos (p), 0, 0 }, { 0, 0, 1, 0 }, { 0, 0, 0, 1 } };
  const double tilt[4][4] = { { cos (t), 0, sin (t), 0 }, { 0, 1, 0, 0 }, { -sin (t), 0, cos (t), 0 }, { 0, 0, 0, 1 } };
  /* x to the right is -y, down is -z; w is the depth */
  const double project[4][4] = {
    { 0.5 * WIDTH, -0.5 * WIDTH / half, 0, 0 },
    { 0.5 * WIDTH * 9.0 / 16.0, 0, -0.5 * WIDTH / half, 0 },
    { 0, 0, 0, 1 },
    { 1, 0, 0, 0 },
  };
  double a[4] = { at_m.x, at_m.y, at_m.z, 1.0 }, b[4];

  multiply (move, a, b);
  multiply (pan, b, a);
  multiply (tilt, a, b);
  multiply (project, b, a);
  *x = a[0] / a[3];
  *y = a[1] / a[3];
  return a[3] > 0.0;
}

static void
test_place (gconstpointer data)
{
  const View *view = data;
  g_autoptr (LrItem) item = lr_item_new (LR_ITEM_CAMERA, "a");
  LrCameraReading camera;
  LrPainter painter;
  GRand *rand = g_rand_new_with_seed (7);
  int n_seen = 0;

  init_reading (view, item, &camera);
  lr_painter_init (&painter, NULL, &camera, WIDTH);
  g_assert_cmpfloat_with_epsilon (painter.height, WIDTH * 9.0 / 16.0, 1e-9);

  for (int i = 0; i < N_RANDOM; i++)
    {
      LrVec3 at_m = { g_rand_double_range (rand, -6.0, 8.0), g_rand_double_range (rand, -6.0, 8.0),
                      g_rand_double_range (rand, 0.0, 3.0) };
      double x, y;
      LrVec2 at;

      if (!by_matrix (view, at_m, &x, &y))
        {
          g_assert_false (lr_painter_place (&painter, at_m, &at));
          continue;
        }

      g_assert_true (lr_painter_place (&painter, at_m, &at));
      if (fabs (x) > 2.0 * WIDTH || fabs (y) > 2.0 * WIDTH)
        continue;
      g_assert_cmpfloat_with_epsilon (at.x, x, 0.001 * WIDTH);
      g_assert_cmpfloat_with_epsilon (at.y, y, 0.001 * WIDTH);
      n_seen++;
    }

  g_rand_free (rand);
  g_assert_cmpint (n_seen, >, 10);
}

/* A floor that runs under the lens: what is left of it is in front of the near plane, and its far corners are where they were */
static void
test_near_plane (void)
{
  const LrVec3 floor_m[4] = { { -5, -1, 0 }, { 5, -1, 0 }, { 5, 1, 0 }, { -5, 1, 0 } };
  const LrVec3 behind_m[3] = { { -5, -1, 0 }, { -2, -1, 0 }, { -3, 1, 2 } };
  g_autoptr (LrItem) item = lr_item_new (LR_ITEM_CAMERA, "a");
  LrCameraReading camera;
  LrPainter painter;
  LrPatch patch;
  LrVec2 at;

  init_reading (&(View) { "", { 0, 0, 1.2 }, 0, 0, 60 }, item, &camera);
  lr_painter_init (&painter, NULL, &camera, WIDTH);

  g_assert_true (lr_painter_project (&painter, floor_m, 4, &patch));
  g_assert_cmpuint (patch.n, ==, 4);
  g_assert_true (lr_painter_place (&painter, floor_m[1], &at));
  g_assert_cmpfloat_with_epsilon (patch.at[1].x, at.x, 1e-9);
  /* Cut 0.08 m ahead of a lens 1.2 m up: 1.2 / 0.08 below the axis, in units of the depth */
  g_assert_cmpfloat_with_epsilon (patch.at[0].y,
                                  0.5 * painter.height + 1.2 / LR_NEAR_M * 0.5 * WIDTH / tan (30.0 * LR_DEG), 1e-6);
  g_assert_false (lr_painter_project (&painter, behind_m, 3, &patch));
}

/* Against counting points of a disc */
static void
test_soft_share (void)
{
  enum { N = 600 };

  for (double t = -1.2; t <= 1.2; t += 0.1)
    {
      int n = 0, n_beyond = 0;

      for (int i = 0; i < N; i++)
        for (int j = 0; j < N; j++)
          {
            double x = 2.0 * (i + 0.5) / N - 1.0, y = 2.0 * (j + 0.5) / N - 1.0;

            if (x * x + y * y > 1.0)
              continue;
            n++;
            n_beyond += x > t;
          }
      g_assert_cmpfloat_with_epsilon (lr_soft_share (t), (double) n_beyond / n, 0.003);
    }
}

/* The layers of a ramp add up to the share of the disc in the middle of each step */
static void
test_soft_levels (void)
{
  for (guint n = 2; n <= 14; n++)
    {
      double left = 1.0;

      for (guint i = 0; i < n; i++)
        {
          double offset, alpha;

          lr_soft_level (i, n, 1.0, &offset, &alpha);
          left *= 1.0 - alpha;
          g_assert_cmpfloat (alpha, >, 0.0);
          if (i + 1 < n)
            g_assert_cmpfloat_with_epsilon (1.0 - left, lr_soft_share (offset - 1.0 / n), 1e-12);
        }
      g_assert_cmpfloat_with_epsilon (left, 0.0, 1e-12);
    }
}

typedef struct
{
  const char *name;
  double      focal_m, f_number, focus_m, at_m; /* from the sensor; from the lens */
} BlurCase;

static const BlurCase blur_cases[] = {
  { "wall-behind", 0.050, 2.8, 2.14, 4.50 },
  { "far", 0.085, 2.8, 2.54, 1e6 },
  { "before", 0.085, 2.0, 2.54, 0.80 },
  { "in-focus", 0.050, 2.8, 2.00, 0.0 },
};

/* f^2 |x - s| / (N (s - f) x), s from 1/f = 1/s + 1/v and s + v, by bisection. Source: thin lens, closed form */
static void
test_blur (gconstpointer data)
{
  const BlurCase *c = data;
  g_autoptr (LrItem) item = lr_item_new (LR_ITEM_CAMERA, "a");
  double low = 2.0 * c->focal_m, high = c->focus_m, s, x, expected;
  LrCameraReading camera;
  LrPainter painter;

  init_reading (&views[0], item, &camera);
  camera.focal_m = c->focal_m;
  camera.f_number = c->f_number;
  camera.focus_m = c->focus_m;
  lr_painter_init (&painter, NULL, &camera, WIDTH);

  for (int i = 0; i < 100; i++)
    {
      s = 0.5 * (low + high);
      if (s + 1.0 / (1.0 / c->focal_m - 1.0 / s) < c->focus_m)
        low = s;
      else
        high = s;
    }
  x = c->at_m > 0.0 ? c->at_m : s;
  expected = c->focal_m * c->focal_m * fabs (x - s) / (c->f_number * (s - c->focal_m) * x) / 0.036 * WIDTH;

  g_assert_cmpfloat_with_epsilon (2.0 * lr_painter_blur (&painter, x), expected, 1e-6 * WIDTH);
}

/* How dark a row of the picture is across an upright edge at x = 150 of something black on white */
static void
draw_edge (double  radius,
           double *coverage)
{
  g_autoptr (LrItem) item = lr_item_new (LR_ITEM_CAMERA, "a");
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 300, 169);
  cairo_t *cr = cairo_create (surface);
  LrPatch patch = { .n = 4, .at = { { 150, -300 }, { 700, -300 }, { 700, 600 }, { 150, 600 } } };
  LrCameraReading camera;
  LrPainter painter;
  const guint8 *row;

  init_reading (&views[0], item, &camera);
  lr_painter_init (&painter, cr, &camera, 300.0);
  for (guint i = 0; i < 4; i++)
    patch.radius[i] = radius;

  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  cairo_paint (cr);
  lr_paint_patch (&painter, &patch, (LrColor) { 0.0, 0.0, 0.0 }, 1.0);
  cairo_surface_flush (surface);
  row = cairo_image_surface_get_data (surface) + 80 * cairo_image_surface_get_stride (surface);
  for (int x = 0; x < 300; x++)
    coverage[x] = 1.0 - row[4 * x] / 255.0;

  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

/* The ramp is as wide as the disc, in its middle on the edge, and as steep as the disc makes it */
static void
test_edge (void)
{
  static const double radii[] = { 2.0, 4.0, 8.0, 16.0, 32.0 };

  for (guint i = 0; i < G_N_ELEMENTS (radii); i++)
    {
      double coverage[300], sum = 0.0, first = -1.0, last = -1.0;
      double half_step = radii[i] < 3.0 ? 0.20 : 0.13;

      draw_edge (radii[i], coverage);
      for (int x = 0; x < 300; x++)
        {
          sum += coverage[x];
          if (coverage[x] > 0.004 && first < 0.0)
            first = x;
          if (coverage[x] < 0.996)
            last = x + 1;
          g_assert_cmpfloat_with_epsilon (coverage[x], lr_soft_share ((150.0 - (x + 0.5)) / radii[i]), half_step);
        }

      g_assert_cmpfloat_with_epsilon (sum, 150.0, 0.02 * radii[i] + 0.6);          /* its middle */
      g_assert_cmpfloat_with_epsilon (last - first, 2.0 * radii[i], 0.25 * radii[i] + 1.0); /* its width */
    }
}

/* What is thinner than its disc lets light through: the middle of a strip has 1 - 2 share of it */
static void
test_thin_strip (void)
{
  g_autoptr (LrItem) item = lr_item_new (LR_ITEM_CAMERA, "a");
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 300, 169);
  cairo_t *cr = cairo_create (surface);
  LrPatch patch = { .n = 4, .at = { { 144, -300 }, { 156, -300 }, { 156, 600 }, { 144, 600 } },
                    .radius = { 20, 20, 20, 20 } };
  LrCameraReading camera;
  LrPainter painter;
  double middle;

  init_reading (&views[0], item, &camera);
  lr_painter_init (&painter, cr, &camera, 300.0);
  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  cairo_paint (cr);
  lr_paint_patch (&painter, &patch, (LrColor) { 0.0, 0.0, 0.0 }, 1.0);
  cairo_surface_flush (surface);
  middle = 1.0 - cairo_image_surface_get_data (surface)[80 * cairo_image_surface_get_stride (surface) + 4 * 150] / 255.0;
  g_assert_cmpfloat_with_epsilon (middle, 1.0 - 2.0 * lr_soft_share (6.0 / 20.0), 0.05);

  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static guint32
pixel_at (cairo_surface_t *surface,
          double           x,
          double           y)
{
  const guint8 *data = cairo_image_surface_get_data (surface);

  return *(const guint32 *) (const void *) (data + (gsize) y * cairo_image_surface_get_stride (surface) + 4 * (gsize) x) & 0xffffff;
}

/* At the middle of a cell a wall has the tone of the light on it: linear light by IEC 61966-2-1. Where a place of the wall is in the
 * picture is told by the homogeneous matrix above. The light falls by inverse squares from a place 1 m before the wall. */
static void
test_wall_light (void)
{
  enum { N = 24, M = 11 };
  static const View view = { "aslant", { 0.5, 3.0, 1.3 }, -50.0, 8.0, 55.0 };
  /* the frame of a wall's face begins at the wall's second corner */
  const LrVec3 wall_m[] = { { 6.0, 0.0, 0.0 }, { 0.0, 0.0, 0.0 }, { 0.0, 0.0, 2.8 }, { 6.0, 0.0, 2.8 } };
  const LrColor color = { 0.4, 0.35, 0.3 };
  double lx[N * M], left[21 * 17];
  LrWallLight light = { .n = N, .m = M, .lx = lx, .least_lx = HUGE_VAL };
  g_autoptr (LrItem) item = lr_item_new (LR_ITEM_CAMERA, "a");
  LrScene scene = { .points = g_array_new (FALSE, FALSE, sizeof (LrVec3)) };
  LrFace face = { .n = 4, .normal = { 0.0, 1.0, 0.0 }, .color = color, .alpha = 1.0, .light = &light };
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 470, 265);
  cairo_surface_t *drawing = cairo_recording_surface_create (CAIRO_CONTENT_COLOR, &(cairo_rectangle_t) { 0, 0, 470, 265 });
  LrCameraReading camera;
  guint n_seen = 0, n_shaded = 0;

  for (guint i = 0; i < N * M; i++)
    {
      double along_m = 6.0 * (i % N + 0.5) / N - 2.6, up_m = 2.8 * (i / N + 0.5) / M - 1.4;

      lx[i] = 100.0 / (1.0 + along_m * along_m + up_m * up_m);
      light.least_lx = fmin (light.least_lx, lx[i]);
      light.most_lx = fmax (light.most_lx, lx[i]);
      light.mean_lx += lx[i] / (N * M);
    }
  /* a shadow of even depth with a half-shadow of a fifth of it round it, over part of the wall */
  light.shade = (LrWallShade) { .n = 21, .m = 17, .along0 = 0.3, .along1 = 0.6, .up0 = 0.3, .up1 = 0.7, .left = left };
  for (guint i = 0; i < 21 * 17; i++)
    left[i] = 1.0 - 0.7 * fmin (1.0, 0.25 * MIN (MIN (i % 21, 20 - i % 21), MIN (i / 21, 16 - i / 21)));
  lr_wall_light_take_shade (&light);
  g_array_append_vals (scene.points, wall_m, 4);
  init_reading (&view, item, &camera);
  camera.focus_m = 4.0;
  for (int is_drawn = 0; is_drawn < 2; is_drawn++)
    {
      cairo_t *cr = cairo_create (is_drawn ? drawing : image);
      LrPainter painter;
      LrPatch patch;

      lr_painter_init (&painter, cr, &camera, WIDTH);
      g_assert_true (lr_painter_project (&painter, wall_m, 4, &patch));
      lr_paint_wall (&painter, &scene, &face, &patch);
      cairo_destroy (cr);
      if (is_drawn)
        {
          cr = cairo_create (image);
          cairo_set_source_surface (cr, drawing, 0.0, 0.0);
          cairo_paint (cr);
          cairo_destroy (cr);
        }
      cairo_surface_flush (image);
      for (guint i = 0; i < N * M; i++)
        {
          /* the cell is counted from the wall's first corner, which is at x = 0 */
          LrVec3 at_m = { 6.0 * (i % N + 0.5) / N, 0.0, 2.8 * (i / N + 0.5) / M };
          double left_here = lr_wall_shade_left (&light.shade, (i % N + 0.5) / N, (i / N + 0.5) / M);
          LrColor tone = lr_tone_light (color, lx[i] * left_here / light.mean_lx);
          gboolean is_even = left_here > 0.999 || left_here < 0.301;
          int most = !is_even ? 16 : is_drawn || left_here < 1.0 ? 4 : 2; /* a patch's corners, in a picture; steps of a pixel's tone */
          double x, y;
          guint32 pixel;

          if (!by_matrix (&view, at_m, &x, &y) || x < 1.0 || x > WIDTH - 1.0 || y < 1.0 || y > 263.0)
            continue;
          pixel = pixel_at (image, x, y);
          n_seen++;
          n_shaded += left_here < 0.301;
          g_assert_cmpint (ABS ((int) (pixel >> 16) - (int) (255.0 * tone.r + 0.5)), <=, most);
          g_assert_cmpint (ABS ((int) (pixel & 0xff) - (int) (255.0 * tone.b + 0.5)), <=, most);
        }
    }

  g_assert_cmpuint (n_seen, >=, 60);
  g_assert_cmpuint (n_shaded, >=, 10);
  g_array_unref (scene.points);
  cairo_surface_destroy (drawing);
  cairo_surface_destroy (image);
}

static void
test_hull (void)
{
  LrVec2 points[] = { { 0, 0 }, { 1, 0 }, { 1, 1 }, { 0, 1 }, { 0.5, 0.5 }, { 0.5, 0.0 }, { 0.2, 0.9 } };
  guint n = lr_hull (points, G_N_ELEMENTS (points));

  g_assert_cmpuint (n, ==, 4);
  g_assert_cmpfloat_with_epsilon (lr_polygon_area_m2 (points, n), 1.0, 1e-12);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (views); i++)
    {
      g_autofree char *path = g_strconcat ("/paint/place/", views[i].name, NULL);

      g_test_add_data_func (path, &views[i], test_place);
    }
  g_test_add_func ("/paint/near-plane", test_near_plane);
  g_test_add_func ("/paint/soft-share", test_soft_share);
  g_test_add_func ("/paint/soft-levels", test_soft_levels);
  for (guint i = 0; i < G_N_ELEMENTS (blur_cases); i++)
    {
      g_autofree char *path = g_strconcat ("/paint/blur/", blur_cases[i].name, NULL);

      g_test_add_data_func (path, &blur_cases[i], test_blur);
    }
  g_test_add_func ("/paint/edge", test_edge);
  g_test_add_func ("/paint/thin-strip", test_thin_strip);
  g_test_add_func ("/paint/wall-light", test_wall_light);
  g_test_add_func ("/paint/hull", test_hull);

  return g_test_run ();
}
