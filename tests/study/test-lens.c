/* test-lens.c - converters, modes and delivery aspects on a camera, and what is sharp through them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "fixture.h"

typedef struct
{
  const char *name;
  double      focal_mm, converter, crop;  /* in: on 36 mm by 24 mm times the crop, focused at infinity */
  double      angle_h_deg, angle_v_deg;   /* expected */
} AngleCase;

/* Source: photonstophotos.net, field of view table for 36 x 24 mm at the focal length that comes out, to 0.1 degree */
static const AngleCase angle_cases[] = {
  { "25-mm-doubled", 25.0, 2.0, 1.0, 39.6, 27.0 },
  { "25-mm-by-1.4", 25.0, 1.4, 1.0, 54.4, 37.8 },
  { "reducer", 100.0, 0.5, 1.0, 39.6, 27.0 },
  { "crop", 85.0, 1.0, 1.5, 23.9, 16.1 },
  { "crop-and-converter", 42.5, 2.0, 1.25, 23.9, 16.1 },
};

static void
test_angle (gconstpointer data)
{
  const AngleCase *c = data;
  g_autoptr (LrPlan) plan = fixture_empty ();
  g_autoptr (LrStudy) study = NULL;
  const LrCameraReading *camera;

  g_test_message ("photonstophotos.net, field of view table");
  fixture_add (&plan, LR_ITEM_CAMERA, 0, 0.0, 0.0);
  fixture_lens (&plan, CAMERA_A, 0.02, 0.2, c->converter);
  fixture_set (&plan, CAMERA_A, "focal-mm", 1e-3 * c->focal_mm);
  fixture_set (&plan, CAMERA_A, "sensor-width-mm", 0.036 * c->crop);
  fixture_set (&plan, CAMERA_A, "sensor-height-mm", 0.024 * c->crop);
  fixture_set (&plan, CAMERA_A, "sensor-crop", c->crop);
  study = lr_study_new (plan);
  camera = fixture_camera (study, CAMERA_A);
  assert_near (camera->angle_h_rad / LR_DEG, c->angle_h_deg, 0.05);
  assert_near (camera->angle_v_rad / LR_DEG, c->angle_v_deg, 0.05);
  assert_within (camera->focal_m, 1e-3 * c->focal_mm * c->converter, 1e-12);
  assert_within (camera->recorded.width_m, 0.036, 1e-9);
}

/* Source: insyncpubs.com, article 11, 50 mm at f/4, 0.030 mm, focused at 10 ft from the lens: 8 ft 9 in to 11 ft 8 in. A lens
 * of 25 mm at f/2 with a 2x converter behind it is that lens. */
static void
test_converter_depth (void)
{
  double s_m = 10.0 * 0.3048, v_m = 0.05 * s_m / (s_m - 0.05);
  g_autoptr (LrPlan) plan = fixture_face_to_face (s_m + v_m);
  g_autoptr (LrStudy) study = NULL;
  const LrCameraReading *camera;

  g_test_message ("printed depth of field table, insyncpubs.com article 11");
  fixture_lens (&plan, CAMERA_A, 0.02, 0.2, 2.0);
  fixture_set (&plan, CAMERA_A, "focal-mm", 0.025);
  fixture_set (&plan, CAMERA_A, "f-number", 2.0);
  fixture_set (&plan, CAMERA_A, "coc-mm", 0.00003);
  study = lr_study_new (plan);
  camera = fixture_camera (study, CAMERA_A);
  g_assert_cmpfloat (camera->f_number, ==, 4.0);
  assert_near ((camera->sharp_near_m - v_m) / 0.3048, 8.75, 0.6 / 12.0);
  assert_near ((camera->sharp_far_m - v_m) / 0.3048, 11.0 + 8.0 / 12.0, 0.6 / 12.0);
  assert_near (camera->sharp_depth_m / 0.3048, 2.0 + 11.0 / 12.0, 0.6 / 12.0);
  /* the eyes are in the plane of focus */
  assert_near (camera->sharp_front_m, camera->sharp_front_share * camera->sharp_depth_m, 1e-9);
}

/* Without a limit of its own a mode has that of the sensor that it acts as: 34.6 x 26.0 mm at a crop of 2 is 17.3 x 13.0 mm,
 * 0.0144 mm. Common practice, d/1500 to four places; a delivery aspect changes nothing. */
static void
test_mode_coc (void)
{
  g_autoptr (LrPlan) plan = fixture_empty ();
  g_autoptr (LrStudy) study = NULL;

  fixture_add (&plan, LR_ITEM_CAMERA, 0, 0.0, 0.0);
  fixture_set (&plan, CAMERA_A, "sensor-width-mm", 0.0346);
  fixture_set (&plan, CAMERA_A, "sensor-height-mm", 0.026);
  fixture_set (&plan, CAMERA_A, "sensor-crop", 2.0);
  fixture_set (&plan, CAMERA_A, "aspect", LR_ASPECT_1_1);
  study = lr_study_new (plan);
  assert_near (1000.0 * fixture_camera (study, CAMERA_A)->coc_m, 0.0144, 5.1e-5);
}

typedef struct
{
  const char *name;
  double      width_mm, height_mm, squeeze; /* in */
  LrAspect    aspect;
  double      kept_pct, area_width_mm, area_height_mm, aspect_shown; /* expected */
  double      tolerance;                    /* of the per cent and the aspect */
  const char *source;
} CutCase;

static const CutCase cut_cases[] = {
  { "16:9-whole", 36.0, 20.25, 1.0, LR_ASPECT_16_9, 100.0, 36.0, 20.25, 16.0 / 9.0, 0.01, "closed form" },
  { "16:9-to-9:16", 36.0, 20.25, 1.0, LR_ASPECT_9_16, 31.6, 11.39, 20.25, 9.0 / 16.0, 0.05, "(9/16) / (16/9), by hand" },
  { "16:9-to-1:1", 36.0, 20.25, 1.0, LR_ASPECT_1_1, 56.3, 20.25, 20.25, 1.0, 0.06, "1 / (16/9), by hand" },
  { "16:9-to-4:5", 36.0, 20.25, 1.0, LR_ASPECT_4_5, 45.0, 16.2, 20.25, 0.8, 0.05, "(4/5) / (16/9), by hand" },
  { "16:9-to-2.39", 36.0, 20.25, 1.0, LR_ASPECT_239, 100.0, 36.0, 15.06, 2.39, 0.01, "36 / 2.39, by hand" },
  { "3:2-to-16:9", 36.0, 24.0, 1.0, LR_ASPECT_16_9, 100.0, 36.0, 20.25, 16.0 / 9.0, 0.01, "36 x 9/16" },
  { "4:3-to-16:9", 17.3, 13.0, 1.0, LR_ASPECT_16_9, 100.0, 17.3, 9.73, 16.0 / 9.0, 0.01, "17.3 x 9/16" },
  { "squeezed-as-recorded", 22.0, 18.59, 2.0, LR_ASPECT_SENSOR, 100.0, 22.0, 18.59, 2.367, 0.001,
    "35 mm anamorphic camera aperture 0.866 x 0.732 in, 2 x 22 / 18.59" },
  { "squeezed-4/3", 36.0, 20.25, 4.0 / 3.0, LR_ASPECT_SENSOR, 100.0, 36.0, 20.25, 2.370, 0.001, "4/3 x 36 / 20.25" },
  { "squeezed-to-16:9", 22.0, 18.59, 2.0, LR_ASPECT_16_9, 75.1, 16.52, 18.59, 16.0 / 9.0, 0.05,
    "18.59 x 16/9 / 2 = 16.52 of 22, by hand" },
  { "squeezed-to-2.39", 22.0, 18.59, 2.0, LR_ASPECT_239, 100.0, 22.0, 18.41, 2.39, 0.01, "2 x 22 / 2.39 = 18.41, by hand" },
  { "squeezed-to-1:1", 22.0, 18.59, 2.0, LR_ASPECT_1_1, 42.25, 9.295, 18.59, 1.0, 0.01, "18.59 / 2 of 22, by hand" },
};

static void
test_cut (gconstpointer data)
{
  const CutCase *c = data;
  g_autoptr (LrPlan) plan = fixture_face_to_face (2.0);
  g_autoptr (LrStudy) study = NULL;
  const LrCameraReading *camera;

  g_test_message ("%s", c->source);
  fixture_set (&plan, CAMERA_A, "sensor-width-mm", 1e-3 * c->width_mm);
  fixture_set (&plan, CAMERA_A, "sensor-height-mm", 1e-3 * c->height_mm);
  fixture_set (&plan, CAMERA_A, "squeeze", c->squeeze);
  fixture_set (&plan, CAMERA_A, "aspect", c->aspect);
  study = lr_study_new (plan);
  camera = fixture_camera (study, CAMERA_A);
  assert_near (100.0 * camera->width_share, c->kept_pct, c->tolerance);
  assert_near (1e3 * camera->area.width_m, c->area_width_mm, 0.01);
  assert_near (1e3 * camera->area.height_m, c->area_height_mm, 0.01);
  assert_near (camera->image_aspect, c->aspect_shown, c->tolerance);
  assert_within (camera->field_w_m / camera->field_h_m, c->aspect_shown, 1e-3);
  /* What is cut away was seen: the fields are in the proportion of the areas */
  assert_within (camera->field_w_m / camera->recorded_field_w_m, c->area_width_mm / c->width_mm, 1e-3);
  assert_within (camera->field_h_m / camera->recorded_field_h_m, c->area_height_mm / c->height_mm, 1e-3);
}

/* 36 mm wide, 50 mm at 1 m shows 0.6460 m (thin lens solved by hand for s + v = q, Hecht, Optics, ch. 5); of a square cut
 * from 24 mm, two thirds are delivered */
static void
test_cut_field (void)
{
  g_autoptr (LrPlan) plan = fixture_face_to_face (1.0);
  g_autoptr (LrStudy) study = NULL;

  fixture_set (&plan, CAMERA_A, "aspect", LR_ASPECT_1_1);
  study = lr_study_new (plan);
  assert_within (fixture_camera (study, CAMERA_A)->recorded_field_w_m, 0.6460, 1e-3);
  assert_within (fixture_camera (study, CAMERA_A)->field_w_m, 0.6460 * 2.0 / 3.0, 1e-3);
}

typedef struct
{
  const char *name;
  double      focal_mm, f_number, subject_mm, point_mm; /* in: from the lens; 36 mm wide */
  double      squeeze;
  double      disc_mm, share_pct;                       /* expected */
  const char *source;
} BlurCase;

static const BlurCase blur_cases[] = {
  { "85-f1.4", 85.0, 1.4, 3000.0, 5000.0, 1.0, 0.708, 1.97,
    "b = f^2 / (N (s - f)) |x - s| / x by hand; the same figures are worked in computergraphics.stackexchange" },
  { "50-f2.8", 50.0, 2.8, 2000.0, 5000.0, 1.0, 0.2747, 0.763, "b = f^2 / (N (s - f)) |x - s| / x by hand" },
  { "50-f2.8-infinity", 50.0, 2.8, 2000.0, HUGE_VAL, 1.0, 0.4579, 1.272, "b = f m / N by hand" },
  { "50-f2.8-in-front", 50.0, 2.8, 2000.0, 1000.0, 1.0, 0.4579, 1.272, "|x - s| / x is 1 again at half the distance" },
  { "50-f2.8-squeezed", 50.0, 2.8, 2000.0, 5000.0, 2.0, 0.2747, 0.3815,
    "the pupil f/N seen in the plane of focus, 17.857 x 0.6 = 10.71 mm, of a field of 2 x 1404 mm" },
};

static void
test_blur (gconstpointer data)
{
  const BlurCase *c = data;
  double s_m = 1e-3 * c->subject_mm, f_m = 1e-3 * c->focal_mm, v_m = f_m * s_m / (s_m - f_m);
  g_autoptr (LrPlan) plan = fixture_face_to_face (s_m + v_m);
  g_autoptr (LrStudy) study = NULL;
  double disc_m = NAN, share = NAN;

  g_test_message ("%s", c->source);
  fixture_set (&plan, CAMERA_A, "focal-mm", f_m);
  fixture_set (&plan, CAMERA_A, "f-number", c->f_number);
  fixture_set (&plan, CAMERA_A, "squeeze", c->squeeze);
  study = lr_study_new (plan);
  g_assert_true (lr_camera_blur_at_m (fixture_camera (study, CAMERA_A), 1e-3 * c->point_mm + v_m, &disc_m, &share));
  assert_within (1e3 * disc_m, c->disc_mm, 2e-3);
  assert_within (100.0 * share, c->share_pct, 3e-3);
}

/* Nothing to say of a plane behind the lens, or without a focus */
static void
test_blur_domain (void)
{
  g_autoptr (LrPlan) plan = fixture_face_to_face (2.0), near = fixture_face_to_face (0.1);
  g_autoptr (LrStudy) study = lr_study_new (plan), near_study = lr_study_new (near);
  double disc_m = -1.0, share = -1.0;

  g_assert_false (lr_camera_blur_at_m (fixture_camera (study, CAMERA_A), 0.02, &disc_m, &share));
  g_assert_false (lr_camera_blur_at_m (fixture_camera (study, CAMERA_A), NAN, &disc_m, &share));
  g_assert_false (lr_camera_blur_at_m (fixture_camera (near_study, CAMERA_A), 2.0, &disc_m, &share));
  g_assert_cmpfloat (disc_m, ==, -1.0);
  g_assert_cmpfloat (share, ==, -1.0);
}

/* 50 mm, f/2.8, 0.0288 mm, 2 m from the lens: 252.6 mm in all, 47 % of it in front (Greenleaf's formulas by hand); for
 * 250 mm, the depth that is comfortable without being told another, the stop is a hundredth less than the 2.8 that is set */
static void
test_depth (void)
{
  double v_m = 0.05 * 2.0 / 1.95;
  g_autoptr (LrPlan) plan = fixture_face_to_face (2.0 + v_m);
  g_autoptr (LrStudy) study = NULL;
  const LrCameraReading *camera;

  fixture_set (&plan, CAMERA_A, "coc-mm", 0.0000288);
  study = lr_study_new (plan);
  camera = fixture_camera (study, CAMERA_A);
  assert_within (camera->sharp_depth_m, 0.2526, 4e-3); /* the place is held to a millimetre */
  assert_near (camera->sharp_front_share, 0.47, 0.005);
  assert_within (camera->f_number_for_depth, 2.8 * 250.0 / 252.6, 4e-3);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/lens/angle", angle_cases, test_angle);
  g_test_add_func ("/lens/converter-depth", test_converter_depth);
  g_test_add_func ("/lens/mode-coc", test_mode_coc);
  add_rows ("/lens/cut", cut_cases, test_cut);
  g_test_add_func ("/lens/cut-field", test_cut_field);
  add_rows ("/lens/blur", blur_cases, test_blur);
  g_test_add_func ("/lens/blur-domain", test_blur_domain);
  g_test_add_func ("/lens/depth", test_depth);

  return g_test_run ();
}
