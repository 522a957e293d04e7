/* test-optics.c - the thin lens
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Published angle and depth of field tables are in ../reference/optics.tsv. The values here were
 * worked from the equations that are named beside them, apart from this program; those of more than
 * six digits with 30-digit decimal arithmetic.
 */

#include "optics.h"

#include "check.h"

/* The focus that has its subject s from the lens */
static LrFocus
focus_from_lens (double focal_m,
                 double subject_m)
{
  LrFocus focus;

  g_assert_true (lr_focus_at (focal_m, subject_m + focal_m * subject_m / (subject_m - focal_m), &focus));
  assert_within (focus.subject_m, subject_m, 1e-12);
  return focus;
}

typedef struct
{
  const char *name;
  double      focal_mm, distance_mm, width_mm;                 /* in */
  double      subject_mm, image_mm, magnification, angle_deg, field_mm; /* expected */
  double      tolerance;                                       /* relative */
  const char *source;
} FocusCase;

static const FocusCase focus_cases[] = {
  { "50-at-1-m", 50.0, 1000.0, 36.0, 947.21, 52.79, 0.05573, 37.66, 646.0, 1e-3,
    "s = (q + sqrt (q^2 - 4 f q)) / 2, Hecht ch. 5" },
  { "85-at-1.5-m", 85.0, 1500.0, 36.0, 1409.55, 90.45, 0.06417, 22.51, 561.0, 1e-3,
    "s = (q + sqrt (q^2 - 4 f q)) / 2, Hecht ch. 5" },
  { "50-at-2-m", 50.0, 2000.0, 36.0, 1948.68329805051380, 51.31670194948620, 0.0263340389897240,
    38.65796488617562, 1367.05197459637, 1e-11, "the same with 30 digits" },
  { "unit", 50.0, 200.0, 36.0, 100.0, 100.0, 1.0, 20.407947443463367, 36.0, 1e-11, "closed form: q = 4 f, 1:1" },
};

static void
test_focus (gconstpointer data)
{
  const FocusCase *c = data;
  LrFocus focus;
  double angle_rad = NAN, field_m = NAN;

  g_test_message ("%s", c->source);
  g_assert_true (lr_focus_at (c->focal_mm * 1e-3, c->distance_mm * 1e-3, &focus));
  g_assert_true (lr_field_angle_rad (c->width_mm * 1e-3, c->focal_mm * 1e-3, focus.magnification, &angle_rad));
  g_assert_true (lr_field_extent_m (c->width_mm * 1e-3, &focus, focus.subject_m, &field_m));
  assert_within (focus.subject_m * 1e3, c->subject_mm, c->tolerance);
  assert_within (focus.image_m * 1e3, c->image_mm, c->tolerance);
  assert_within (focus.magnification, c->magnification, c->tolerance);
  assert_within (angle_rad / LR_DEG, c->angle_deg, c->tolerance);
  assert_within (field_m * 1e3, c->field_mm, c->tolerance);
}

/* The lens equation itself, over all that a lens can do */
static void
test_focus_equation (void)
{
  for (int i = 0; i < 1000; i++)
    {
      double focal_m = exp (g_test_rand_double_range (log (1e-3), log (2.0)));
      double distance_m = 4.0 * focal_m * exp (g_test_rand_double_range (0.0, log (1e6)));
      LrFocus focus;

      g_assert_true (lr_focus_at (focal_m, distance_m, &focus));
      assert_within (1.0 / focus.subject_m + 1.0 / focus.image_m, 1.0 / focal_m, 1e-12);
      assert_within (focus.subject_m + focus.image_m, distance_m, 1e-12);
      assert_within (focus.magnification * (focus.subject_m - focal_m), focal_m, 1e-9);
      g_assert_cmpfloat (focus.magnification, <=, 1.0 + 1e-12);
    }
}

typedef struct
{
  const char *name;
  double      extent_mm, focal_mm, subject_mm, plane_mm; /* in, from the lens */
  double      field_mm, tolerance;                       /* expected, relative */
  const char *source;
} FieldCase;

static const FieldCase field_cases[] = {
  { "full-frame-50", 36.0, 50.0, 2000.0, 2000.0, 1404.0, 1e-3, "W = w (s - f) / f" },
  { "four-thirds-25", 17.3, 25.0, 1500.0, 1500.0, 1020.7, 1e-3, "W = w (s - f) / f" },
  { "right-angle", 2e-3, 1e-3, 2000.0, 2000.0, 4000.0, 1e-3,
    "Wikipedia, Dolly zoom: 90 degrees show 4 m at 2 m (focused as good as at infinity by f = 1 mm)" },
  { "background", 36.0, 50.0, 2000.0, 5000.0, 3510.0, 1e-9, "similar triangles: 1404 mm × 5/2" },
};

static void
test_field (gconstpointer data)
{
  const FieldCase *c = data;
  LrFocus focus = focus_from_lens (c->focal_mm * 1e-3, c->subject_mm * 1e-3);
  double field_m = NAN;

  g_test_message ("%s", c->source);
  g_assert_true (lr_field_extent_m (c->extent_mm * 1e-3, &focus, c->plane_mm * 1e-3, &field_m));
  assert_within (field_m * 1e3, c->field_mm, c->tolerance);
}

typedef struct
{
  const char *name;
  double      focal_mm, f_number, coc_mm, subject_mm;       /* in, from the lens */
  double      hyperfocal_mm, near_mm, far_mm;               /* expected, from the lens; 0 = not given */
  double      tolerance;                                    /* relative */
} SharpCase;

/* Source: Greenleaf, Photographic Optics (1950), worked apart from this program */
static const SharpCase sharp_cases[] = {
  { "50-f8-3m", 50.0, 8.0, 0.03, 3000.0, 10467.0, 2338.0, 4185.0, 1e-3 },
  { "50-f2.8-2m", 50.0, 2.8, 0.0288, 2000.0, 31052.0, 1881.6, 2134.2, 1e-3 },
  { "85-f2-2m", 85.0, 2.0, 0.0288, 2000.0, 0.0, 1969.9, 2031.0, 2e-3 },
  { "25-f2.8-1.5m", 25.0, 2.8, 0.0144, 1500.0, 0.0, 1369.7, 1657.7, 1e-3 },
  { "past-hyperfocal", 24.0, 8.0, 0.0288, 3000.0, 2524.0, 0.0, HUGE_VAL, 1e-3 },
};

static void
test_sharp (gconstpointer data)
{
  const SharpCase *c = data;
  LrFocus focus = focus_from_lens (c->focal_mm * 1e-3, c->subject_mm * 1e-3);
  LrSharpRange range;

  g_test_message ("Greenleaf, Photographic Optics (1950), with the + f");
  g_assert_true (lr_sharp_range (c->focal_mm * 1e-3, c->f_number, c->coc_mm * 1e-3, &focus, &range));
  if (c->hyperfocal_mm > 0.0)
    assert_within (range.hyperfocal_m * 1e3, c->hyperfocal_mm, c->tolerance);
  if (c->near_mm > 0.0)
    assert_within ((range.near_m - focus.image_m) * 1e3, c->near_mm, c->tolerance);
  if (isinf (c->far_mm))
    g_assert_cmpfloat (range.far_m, ==, HUGE_VAL);
  else
    assert_within ((range.far_m - focus.image_m) * 1e3, c->far_mm, c->tolerance);
}

/* At the limits the blur is the circle of confusion; a third of the depth is in front of H / 3 */
static void
test_sharp_identities (void)
{
  LrFocus focus = focus_from_lens (0.001, 0.001 * 0.001 / (8.0 * 1e-7) / 3.0);
  LrSharpRange range;
  double disc_m;

  g_test_message ("closed form: (s - Dn) / (Df - Dn) = (H - s) / (2 (H - f)), a third at s = H / 3 for a short lens");
  g_assert_true (lr_sharp_range (0.001, 8.0, 1e-7, &focus, &range));
  assert_within ((focus.subject_m + focus.image_m - range.near_m) / (range.far_m - range.near_m), 1.0 / 3.0, 1e-2);

  for (int i = 0; i < 1000; i++)
    {
      double focal_m = g_test_rand_double_range (0.008, 0.3), f_number = g_test_rand_double_range (0.9, 32.0);
      double coc_m = g_test_rand_double_range (3e-6, 5e-5);

      focus = focus_from_lens (focal_m, g_test_rand_double_range (2.0 * focal_m, 20.0));
      g_assert_true (lr_sharp_range (focal_m, f_number, coc_m, &focus, &range));
      g_assert_true (lr_blur_disc_m (focal_m, f_number, &focus, range.near_m - focus.image_m, &disc_m));
      assert_within (disc_m, coc_m, 1e-9);
      g_assert_true (lr_blur_disc_m (focal_m, f_number, &focus, range.far_m - focus.image_m, &disc_m));
      if (focus.subject_m < range.hyperfocal_m)
        assert_within (disc_m, coc_m, 1e-8);
      else
        g_assert_cmpfloat (disc_m, <=, coc_m * (1.0 + 1e-9));
      g_assert_cmpfloat (range.near_m, <, focus.subject_m + focus.image_m);
      g_assert_cmpfloat (range.far_m, >, focus.subject_m + focus.image_m);
    }
}

typedef struct
{
  const char *name;
  double      focal_mm, f_number, subject_mm, point_mm; /* in, from the lens */
  double      disc_mm;                                  /* expected */
  const char *source;
} BlurCase;

static const BlurCase blur_cases[] = {
  { "85-f1.4", 85.0, 1.4, 3000.0, 5000.0, 0.708, "b = f^2 / (N (s - f)) |x - s| / x, worked by hand" },
  { "50-f2.8", 50.0, 2.8, 2000.0, 5000.0, 0.2747, "b = f^2 / (N (s - f)) |x - s| / x, worked by hand" },
  { "infinity", 50.0, 2.8, 2000.0, HUGE_VAL, 0.4579, "b = f m / N" },
  { "in-focus", 50.0, 2.8, 2000.0, 2000.0, 0.0, "closed form" },
};

static void
test_blur (gconstpointer data)
{
  const BlurCase *c = data;
  LrFocus focus = focus_from_lens (c->focal_mm * 1e-3, c->subject_mm * 1e-3);
  double disc_m = NAN;

  g_test_message ("%s", c->source);
  g_assert_true (lr_blur_disc_m (c->focal_mm * 1e-3, c->f_number, &focus, c->point_mm * 1e-3, &disc_m));
  assert_near (disc_m * 1e3, c->disc_mm, 2e-3 * c->disc_mm + 1e-12);
}

/* The cone of light from the aperture to the image of the point, cut by the sensor: another way
 * to the same disc */
static void
test_blur_by_rays (void)
{
  for (int i = 0; i < 1000; i++)
    {
      double focal_m = g_test_rand_double_range (0.01, 0.2), f_number = g_test_rand_double_range (1.0, 22.0);
      double point_m = g_test_rand_double_range (2.0 * focal_m, 30.0);
      double image_m = 1.0 / (1.0 / focal_m - 1.0 / point_m);
      double disc_m;
      LrFocus focus = focus_from_lens (focal_m, g_test_rand_double_range (2.0 * focal_m, 10.0));

      g_assert_true (lr_blur_disc_m (focal_m, f_number, &focus, point_m, &disc_m));
      assert_near (disc_m, focal_m / f_number * fabs (image_m - focus.image_m) / image_m, 1e-12);
    }
}

typedef struct
{
  const char *name;
  double      width, height, squeeze, aspect; /* in, any unit */
  double      cut_width, cut_height;          /* expected */
  double      tolerance;
  const char *source;
} AreaCase;

static const AreaCase area_cases[] = {
  { "full-frame", 36.0, 24.0, 1.0, 16.0 / 9.0, 36.0, 20.25, 1e-9, "36 × 9/16" },
  { "four-thirds", 17.3, 13.0, 1.0, 16.0 / 9.0, 17.3, 9.73, 5e-3, "17.3 × 9/16" },
  { "three-perf", 24.89, 13.87, 1.0, 16.0 / 9.0, 24.66, 13.87, 5e-3, "13.87 × 16/9" },
  { "upright", 1920.0, 1080.0, 1.0, 9.0 / 16.0, 607.5, 1080.0, 1e-9, "1080 × 9/16" },
  { "square", 1920.0, 1080.0, 1.0, 1.0, 1080.0, 1080.0, 1e-9, "closed form" },
  { "four-to-five", 1920.0, 1080.0, 1.0, 0.8, 864.0, 1080.0, 1e-9, "1080 × 4/5" },
  { "wide", 1920.0, 1080.0, 1.0, 2.39, 1920.0, 803.3, 0.5, "1920 / 2.39" },
  { "squeezed-whole", 22.0, 18.59, 2.0, 2.0 * 22.0 / 18.59, 22.0, 18.59, 1e-9,
    "35 mm anamorphic camera aperture, 2.367:1" },
  { "squeezed-narrow", 22.0, 18.59, 2.0, 16.0 / 9.0, 16.5244, 18.59, 1e-3, "18.59 × 16/9 / 2" },
  { "squeezed-projection", 0.825, 0.690, 2.0, 2.391304, 0.825, 0.690, 1e-6,
    "35 mm anamorphic projection aperture 0.825 in × 0.690 in, 2.391:1" },
  { "squeezed-low", 36.0, 20.25, 4.0 / 3.0, 2.0, 30.375, 20.25, 1e-9, "20.25 × 2 × 3/4" },
};

static void
test_area (gconstpointer data)
{
  const AreaCase *c = data;
  LrSensorArea area;

  g_test_message ("%s", c->source);
  g_assert_true (lr_sensor_area (c->width, c->height, c->squeeze, c->aspect, &area));
  assert_near (area.width_m, c->cut_width, c->tolerance);
  assert_near (area.height_m, c->cut_height, c->tolerance);
  assert_within (c->squeeze * area.width_m / area.height_m, c->aspect, 1e-12);
}

/* 2.367:1 through a squeeze of 2 sees 47.50 degrees at 50 mm; cropping to 16:9 loses 15.6 % and
 * 25.1 % of the area */
static void
test_area_uses (void)
{
  LrSensorArea area;
  double angle_rad;

  g_test_message ("2 atan (2 × 22 / 100); 1 - 20.25/24; 1 - 9.73/13");
  g_assert_true (lr_sensor_area (0.022, 0.01859, 2.0, 2.367, &area));
  g_assert_true (lr_field_angle_rad (2.0 * area.width_m, 0.050, 0.0, &angle_rad));
  assert_within (angle_rad / LR_DEG, 47.50, 1e-3);
  g_assert_true (lr_sensor_area (36.0, 24.0, 1.0, 16.0 / 9.0, &area));
  assert_near (1.0 - area.width_m * area.height_m / (36.0 * 24.0), 0.156, 5e-4);
  g_assert_true (lr_sensor_area (17.3, 13.0, 1.0, 16.0 / 9.0, &area));
  assert_near (1.0 - area.width_m * area.height_m / (17.3 * 13.0), 0.251, 5e-4);
}

typedef struct
{
  const char *name;
  double      width_mm, field_mm, coc_mm, depth_mm; /* in: any focal length */
  double      f_number;                             /* expected */
  double      rounding;                             /* relative */
} StopCase;

/* Source: DoF = 2 N c (1 + m) / m^2 by hand, which is as good as (DoF / 2 s)^2 is small: at the same framing every lens
 * takes the same stop, from farther away ever more nearly. 0.940 m is the width of a medium close-up. */
static const StopCase stop_cases[] = {
  { "36-mm-quarter-metre", 36.0, 940.0, 0.0288, 250.0, 6.1, 0.01 },
  { "36-mm-114-mm", 36.0, 940.0, 0.0288, 114.0, 2.8, 0.01 },
  { "24.6-mm-158-mm", 24.6, 940.0, 0.0188, 158.0, 2.8, 0.01 },
};

static void
test_stop_for_depth (gconstpointer data)
{
  const StopCase *c = data;
  const double focal_mm[] = { 35.0, 50.0, 85.0, 135.0 };

  g_test_message ("DoF = 2 N c (1 + m) / m^2, by hand");
  for (size_t i = 0; i < G_N_ELEMENTS (focal_mm); i++)
    {
      double m = c->width_mm / c->field_mm, f_number = NAN;
      LrFocus focus = focus_from_lens (focal_mm[i] * 1e-3, focal_mm[i] * 1e-3 * (1.0 + m) / m);

      g_assert_true (lr_f_number_for_depth (focal_mm[i] * 1e-3, c->coc_mm * 1e-3, &focus, c->depth_mm * 1e-3, &f_number));
      assert_within (f_number, c->f_number, c->rounding + pow (0.5e-3 * c->depth_mm / focus.subject_m, 2.0));
    }
}

/* There and back through Greenleaf's limits */
static void
test_stop_inverse (void)
{
  for (int i = 0; i < 1000; i++)
    {
      double focal_m = g_test_rand_double_range (0.01, 0.2), coc_m = g_test_rand_double_range (3e-6, 5e-5);
      double depth_m = exp (g_test_rand_double_range (log (0.01), log (20.0))), f_number = NAN;
      LrFocus focus = focus_from_lens (focal_m, g_test_rand_double_range (2.0 * focal_m, 10.0));
      LrSharpRange range;

      g_assert_true (lr_f_number_for_depth (focal_m, coc_m, &focus, depth_m, &f_number));
      g_assert_true (lr_sharp_range (focal_m, f_number, coc_m, &focus, &range));
      assert_within (range.far_m - range.near_m, depth_m, 1e-9);
    }
}

/* m 0.05573 and 0.10 lose 0.156 and 0.275 stop; m 1 loses two: 2 log2 (1 + m), by hand */
static void
test_close_focus (void)
{
  double stops = NAN;

  g_assert_true (lr_close_focus_stops (0.05573, &stops));
  assert_near (stops, 0.156, 0.0006);
  g_assert_true (lr_close_focus_stops (0.10, &stops));
  assert_near (stops, 0.275, 0.0006);
  g_assert_true (lr_close_focus_stops (1.0, &stops));
  assert_near (stops, 2.0, 1e-12);
  g_assert_true (lr_close_focus_stops (0.0, &stops));
  g_assert_cmpfloat (stops, ==, 0.0);
  stops = UNTOUCHED;
  g_assert_false (lr_close_focus_stops (-0.1, &stops));
  g_assert_false (lr_close_focus_stops (NAN, &stops));
  g_assert_false (lr_close_focus_stops (HUGE_VAL, &stops));
  g_assert_cmpfloat (stops, ==, UNTOUCHED);
}

typedef struct
{
  const char *name;
  double      width_mm, height_mm, coc_mm;
} CocCase;

/* Source: a 1500th of the diagonal, by hand, to four places */
static const CocCase coc_cases[] = {
  { "36x24", 36.0, 24.0, 0.0288 },      { "24.89x18.66", 24.89, 18.66, 0.0207 },
  { "24.6x13.8", 24.6, 13.8, 0.0188 },  { "23.6x15.6", 23.6, 15.6, 0.0189 },
  { "17.3x13", 17.3, 13.0, 0.0144 },    { "12.52x7.41", 12.52, 7.41, 0.0097 },
  { "9.59x5.39", 9.59, 5.39, 0.0073 },  { "6.17x4.55", 6.17, 4.55, 0.0051 },
};

static void
test_coc (gconstpointer data)
{
  const CocCase *c = data;
  double coc_m = NAN;

  g_test_message ("common practice, d/1500 to four places");
  g_assert_true (lr_coc_default_m (c->width_mm * 1e-3, c->height_mm * 1e-3, &coc_m));
  assert_near (coc_m * 1e3, c->coc_mm, 5.1e-5);
}

/* Focal length, distance and field: any two give the third back */
static void
test_inverses (void)
{
  for (int i = 0; i < 2000; i++)
    {
      double extent_m = g_test_rand_double_range (0.004, 0.06);
      double focal_m = g_test_rand_double_range (0.006, 0.4);
      double distance_m = 4.0 * focal_m * g_test_rand_double_range (1.0 + 1e-6, 100.0);
      double field_m, back_m;
      LrFocus focus;

      g_assert_true (lr_focus_at (focal_m, distance_m, &focus));
      g_assert_true (lr_field_extent_m (extent_m, &focus, focus.subject_m, &field_m));
      g_assert_true (lr_focal_for_field_m (extent_m, field_m, distance_m, &back_m));
      assert_within (back_m, focal_m, 1e-12);
      g_assert_true (lr_distance_for_field_m (extent_m, field_m, focal_m, &back_m));
      assert_within (back_m, distance_m, 1e-12);

      g_assert_true (lr_focus_at (focal_m, back_m, &focus));
      g_assert_true (lr_field_extent_m (extent_m, &focus, focus.subject_m, &back_m));
      assert_within (back_m, field_m, 1e-9);
    }
}

static void
test_domain_lens (void)
{
  LrFocus focus = { .subject_m = UNTOUCHED };
  double out = UNTOUCHED;

  for (size_t i = 0; i < G_N_ELEMENTS (not_positive); i++)
    {
      double bad = not_positive[i];

      g_assert_false (lr_focus_at (bad, 1.0, &focus));
      g_assert_false (lr_focus_at (0.05, bad, &focus));
      g_assert_false (lr_field_angle_rad (bad, 0.05, 0.0, &out));
      g_assert_false (lr_field_angle_rad (0.036, bad, 0.0, &out));
      if (bad != 0.0)
        g_assert_false (lr_field_angle_rad (0.036, 0.05, bad, &out));
      g_assert_false (lr_coc_default_m (bad, 0.024, &out));
      g_assert_false (lr_coc_default_m (0.036, bad, &out));
      g_assert_false (lr_focal_for_field_m (bad, 1.0, 2.0, &out));
      g_assert_false (lr_focal_for_field_m (0.036, bad, 2.0, &out));
      g_assert_false (lr_focal_for_field_m (0.036, 1.0, bad, &out));
      g_assert_false (lr_distance_for_field_m (bad, 1.0, 0.05, &out));
      g_assert_false (lr_distance_for_field_m (0.036, bad, 0.05, &out));
      g_assert_false (lr_distance_for_field_m (0.036, 1.0, bad, &out));
    }

  g_assert_false (lr_focus_at (0.05, 0.1999, &focus)); /* nearer than 4 f nothing is sharp */
  g_assert_false (lr_focal_for_field_m (0.036, 0.035, 2.0, &out)); /* larger than life */
  g_assert_false (lr_distance_for_field_m (0.036, 0.035, 0.05, &out));
  g_assert_cmpfloat (focus.subject_m, ==, UNTOUCHED);
  g_assert_cmpfloat (out, ==, UNTOUCHED);
}

static void
test_domain_sharp (void)
{
  LrFocus focus = focus_from_lens (0.05, 2.0);
  LrSharpRange range = { .near_m = UNTOUCHED };
  LrSensorArea area = { .width_m = UNTOUCHED };
  double out = UNTOUCHED;

  for (size_t i = 0; i < G_N_ELEMENTS (not_positive); i++)
    {
      double bad = not_positive[i];
      LrFocus bad_focus = { bad, 0.05, 0.02 };

      g_assert_false (lr_sharp_range (bad, 2.8, 3e-5, &focus, &range));
      g_assert_false (lr_sharp_range (0.05, bad, 3e-5, &focus, &range));
      g_assert_false (lr_sharp_range (0.05, 2.8, bad, &focus, &range));
      g_assert_false (lr_sharp_range (0.05, 2.8, 3e-5, &bad_focus, &range));
      g_assert_false (lr_f_number_for_depth (bad, 3e-5, &focus, 0.25, &out));
      g_assert_false (lr_f_number_for_depth (0.05, bad, &focus, 0.25, &out));
      g_assert_false (lr_f_number_for_depth (0.05, 3e-5, &bad_focus, 0.25, &out));
      g_assert_false (lr_f_number_for_depth (0.05, 3e-5, &focus, bad, &out));
      g_assert_false (lr_blur_disc_m (bad, 2.8, &focus, 3.0, &out));
      g_assert_false (lr_blur_disc_m (0.05, bad, &focus, 3.0, &out));
      g_assert_false (lr_blur_disc_m (0.05, 2.8, &bad_focus, 3.0, &out));
      if (bad != HUGE_VAL)
        g_assert_false (lr_blur_disc_m (0.05, 2.8, &focus, bad, &out));
      g_assert_false (lr_field_extent_m (bad, &focus, 2.0, &out));
      g_assert_false (lr_field_extent_m (0.036, &bad_focus, 2.0, &out));
      g_assert_false (lr_field_extent_m (0.036, &focus, bad, &out));
      g_assert_false (lr_sensor_area (bad, 24.0, 1.0, 1.5, &area));
      g_assert_false (lr_sensor_area (36.0, bad, 1.0, 1.5, &area));
      g_assert_false (lr_sensor_area (36.0, 24.0, bad, 1.5, &area));
      g_assert_false (lr_sensor_area (36.0, 24.0, 1.0, bad, &area));
    }

  g_assert_false (lr_sharp_range (2.5, 2.8, 3e-5, &focus, &range)); /* a subject nearer than f */
  g_assert_cmpfloat (range.near_m, ==, UNTOUCHED);
  g_assert_cmpfloat (area.width_m, ==, UNTOUCHED);
  g_assert_cmpfloat (out, ==, UNTOUCHED);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/optics/focus", focus_cases, test_focus);
  add_rows ("/optics/field", field_cases, test_field);
  add_rows ("/optics/sharp", sharp_cases, test_sharp);
  add_rows ("/optics/blur", blur_cases, test_blur);
  add_rows ("/optics/stop-for-depth", stop_cases, test_stop_for_depth);
  g_test_add_func ("/optics/stop-inverse", test_stop_inverse);
  g_test_add_func ("/optics/close-focus", test_close_focus);
  add_rows ("/optics/area", area_cases, test_area);
  add_rows ("/optics/coc", coc_cases, test_coc);
  g_test_add_func ("/optics/focus-equation", test_focus_equation);
  g_test_add_func ("/optics/sharp-identities", test_sharp_identities);
  g_test_add_func ("/optics/blur-by-rays", test_blur_by_rays);
  g_test_add_func ("/optics/area-uses", test_area_uses);
  g_test_add_func ("/optics/inverses", test_inverses);
  g_test_add_func ("/optics/domain-lens", test_domain_lens);
  g_test_add_func ("/optics/domain-sharp", test_domain_sharp);

  return g_test_run ();
}
