/* test-softness.c - edges in a viewfinder's picture are as soft as the lens makes them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A pole before an even wall is drawn, and the width of its edge measured as one measures an edge on a chart: from 10 % to
 * 90 % of the step. What it must be is computed here, from the thin lens.
 */

#include "config.h"

#include <stdlib.h>

#include "picture.h"

#define PICTURE_WIDTH 940
#define SENSOR_M 0.036
#define POLE_M 0.44

/* The chord of a disc of radius 1 that has a tenth of it to one side lies .6870 from the middle (circular segment, closed
 * form): from 10 % to 90 % an edge takes that share of the disc */
#define SHARE_10_90 0.6870

typedef struct
{
  const char *name;
  double      focal_m, f_number, focus_m, pole_m; /* from the sensor plane to the sharp plane; from the lens to the pole */
} EdgeCase;

static const EdgeCase edges[] = {
  { "35-behind", 0.035, 1.4, 1.5, 4.0 },
  { "50-behind", 0.050, 1.4, 2.0, 4.0 },
  { "50-far-behind", 0.050, 2.0, 1.5, 6.0 },
  { "85-behind", 0.085, 2.8, 2.5, 4.5 },
  { "85-before", 0.085, 2.8, 5.0, 3.0 },
};

/* f^2 |x - s| / (N (s - f) x), where s + v is the focus distance and 1/f = 1/s + 1/v, which gives s by a quadratic. Source:
 * thin lens, closed form */
static double
disc_m (const EdgeCase *c)
{
  double f = c->focal_m, d = c->focus_m;
  double s = 0.5 * (d + sqrt (d * d - 4.0 * d * f));

  return f * f * fabs (c->pole_m - s) / (c->f_number * (s - f) * c->pole_m);
}

/* Where a row of lumas passes a level on its way from @from to @to [px] */
static double
crossing (const double *row,
          int           from,
          int           to,
          double        level)
{
  for (int x = from; x < to; x++)
    if ((row[x] - level) * (row[x + 1] - level) <= 0.0 && row[x] != row[x + 1])
      return x + (level - row[x]) / (row[x + 1] - row[x]);

  g_assert_not_reached ();
}

static void
read_row (const Picture *picture,
          double        *row)
{
  for (int x = 0; x < picture->width; x++)
    {
      guint32 color = pixel (picture, (x + 0.5) / picture->width, 0.5);

      row[x] = ((color >> 16 & 0xff) + (color >> 8 & 0xff) + (color & 0xff)) / 3.0;
    }
}

static void
test_edge (gconstpointer data)
{
  const EdgeCase *c = data;
  g_autoptr (LrPlan) plan = fixture_room (8.0, 6.0, 2.7);
  const char *camera = fixture_add (&plan, LR_ITEM_CAMERA, 0, 0.5, 3.0);
  const char *pole = fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_BOX, 0.0, 0.0);
  double row[PICTURE_WIDTH], expected_px, measured_px, lens_m, low, high;
  LrFramePoint middle, side;
  Picture picture;

  fixture_text (&plan, camera, "aims-at", "");
  fixture_set (&plan, camera, "facing-deg", 0.0);
  fixture_set (&plan, camera, "focal-mm", c->focal_m);
  fixture_set (&plan, camera, "f-number", c->f_number);
  fixture_set (&plan, camera, "focus-mm", c->focus_m);
  fixture_set (&plan, camera, "lens-height-mm", 1.3);
  {
    g_autoptr (LrStudy) study = lr_study_new (plan);

    lens_m = fixture_camera (study, camera)->projection.eye_m.x;
  }
  fixture_move (&plan, pole, lens_m + c->pole_m + 0.5 * POLE_M, 3.0);
  fixture_set (&plan, pole, "length-mm", POLE_M);
  fixture_set (&plan, pole, "width-mm", POLE_M);
  fixture_set (&plan, pole, "height-mm", 2.7);
  fixture_set (&plan, pole, "reflectance-pct", 0.05);

  picture = picture_draw (plan, camera, &(LrViewfinderStyle) { .width = PICTURE_WIDTH });
  read_row (&picture, row);
  middle = place (plan, camera, lr_vec3 (lens_m + c->pole_m, 3.0, 1.3));
  side = place (plan, camera, lr_vec3 (lens_m + c->pole_m, 3.0 + 0.5 * POLE_M, 1.3));
  expected_px = SHARE_10_90 * disc_m (c) / SENSOR_M * PICTURE_WIDTH;
  g_assert_cmpfloat (expected_px, >, 6.0); /* wide enough to be measured, and the pole wider */
  g_assert_cmpfloat (2.0 * (middle.across - side.across) * PICTURE_WIDTH, >, 1.5 * expected_px);

  low = row[(int) (middle.across * PICTURE_WIDTH)];
  high = row[4];
  g_assert_cmpfloat (high - low, >, 40.0);
  measured_px = crossing (row, 4, PICTURE_WIDTH / 2, low + 0.1 * (high - low))
                - crossing (row, 4, PICTURE_WIDTH / 2, low + 0.9 * (high - low));
  g_test_message ("%s: %.2f px drawn, %.2f px by the thin lens", c->name, measured_px, expected_px);
  g_assert_cmpfloat_with_epsilon (measured_px, expected_px, 0.06 * expected_px + 0.75);
  /* and in its middle on the edge */
  g_assert_cmpfloat_with_epsilon (crossing (row, 4, PICTURE_WIDTH / 2, 0.5 * (low + high)) + 0.5, side.across * PICTURE_WIDTH,
                                  0.04 * expected_px + 0.6);
  free_picture (&picture);
}

static cairo_surface_t *
draw_format (const LrStudy  *study,
             guint           camera,
             cairo_format_t  format,
             int             scale)
{
  LrViewfinderStyle style = { .width = 470, .is_plain = TRUE };
  cairo_surface_t *surface = cairo_image_surface_create (format, 470 * scale, 264 * scale);
  cairo_t *cr;

  cairo_surface_set_device_scale (surface, scale, scale);
  cr = cairo_create (surface);
  lr_viewfinder_draw (cr, study, &g_array_index (study->cameras, LrCameraReading, camera), &style);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

/* Edges and shades are computed pixel by pixel on an opaque picture, and painted in layers on any other: they look the same,
 * also where a pixel of the window is four of the screen */
static void
test_pixels_and_layers (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrStudy) study = lr_study_new (plan);

  for (guint camera = 0; camera < 2; camera++)
    for (int scale = 1; scale <= 2; scale++)
      {
        cairo_surface_t *pixels = draw_format (study, camera, CAIRO_FORMAT_RGB24, scale);
        cairo_surface_t *layers = draw_format (study, camera, CAIRO_FORMAT_ARGB32, scale);
        const guint8 *a = cairo_image_surface_get_data (pixels), *b = cairo_image_surface_get_data (layers);
        gsize n_bytes = (gsize) cairo_image_surface_get_stride (pixels) * 264 * scale, n = 0, n_off = 0, sum = 0;

        for (gsize i = 0; i < n_bytes; i++)
          if (i % 4 != 3) /* the fourth byte is alpha, or unused */
            {
              guint off = (guint) abs (a[i] - b[i]);

              n++;
              n_off += off > 24;
              sum += off;
            }
        g_test_message ("mean %.3f of 255, %.3f %% by more than 24", (double) sum / (double) n, 100.0 * (double) n_off / (double) n);
        g_assert_cmpfloat ((double) sum / (double) n, <, 1.2);
        g_assert_cmpfloat ((double) n_off / (double) n, <, 0.005);
        cairo_surface_destroy (pixels);
        cairo_surface_destroy (layers);
      }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/softness/edge", edges, test_edge);
  g_test_add_func ("/softness/pixels-and-layers", test_pixels_and_layers);

  return g_test_run ();
}
