/* test-cameras.c - what a camera sees, against published tables and hand calculations
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Positions are held to a millimetre, which the tolerances allow for.
 */

#include "fixture.h"

typedef struct
{
  const char *name;
  double      focal_mm;                 /* in: 36 mm by 24 mm, focused at infinity */
  double      angle_h_deg, angle_v_deg; /* expected */
} AngleCase;

/* Source: photonstophotos.net, field of view table, 36 x 24 mm, to 0.1 degree */
static const AngleCase angle_cases[] = {
  { "35-mm", 35.0, 54.4, 37.8 },
  { "50-mm", 50.0, 39.6, 27.0 },
  { "85-mm", 85.0, 23.9, 16.1 },
};

static void
test_angle (gconstpointer data)
{
  const AngleCase *c = data;
  g_autoptr (LrPlan) plan = fixture_empty ();
  g_autoptr (LrStudy) study = NULL;
  const char *id = fixture_add (&plan, LR_ITEM_CAMERA, 0, 0.0, 0.0);

  g_test_message ("photonstophotos.net, field of view table");
  fixture_set (&plan, id, "focal-mm", 0.001 * c->focal_mm);
  fixture_set (&plan, id, "sensor-height-mm", 0.024);
  study = lr_study_new (plan);
  assert_near (fixture_camera (study, id)->angle_h_rad / LR_DEG, c->angle_h_deg, 0.05);
  assert_near (fixture_camera (study, id)->angle_v_rad / LR_DEG, c->angle_v_deg, 0.05);
  g_assert_false (fixture_camera (study, id)->has_subject);
}

typedef struct
{
  const char *name;
  double      focal_mm, distance_m;              /* in: from the sensor plane */
  double      magnification, angle_deg, field_m; /* expected */
} FieldCase;

/* Source: the Gaussian lens formula solved by hand for s + v = q (Hecht, Optics, ch. 5); 36 mm wide */
static const FieldCase field_cases[] = {
  { "50-mm-at-1-m", 50.0, 1.0, 0.05573, 37.66, 0.6460 },
  { "85-mm-at-1.5-m", 85.0, 1.5, 0.06417, 22.51, 0.5610 },
};

static void
test_field (gconstpointer data)
{
  const FieldCase *c = data;
  g_autoptr (LrPlan) plan = fixture_face_to_face (c->distance_m);
  g_autoptr (LrStudy) study = NULL;
  const LrCameraReading *camera;

  g_test_message ("thin lens, datum at the sensor plane, by hand");
  fixture_set (&plan, "camera-1", "focal-mm", 0.001 * c->focal_mm);
  study = lr_study_new (plan);
  camera = fixture_camera (study, "camera-1");
  assert_near (camera->distance_m, c->distance_m, 1e-9);
  assert_near (camera->focus_m, c->distance_m, 1e-9);
  assert_within (camera->magnification, c->magnification, 1e-3);
  assert_near (camera->angle_h_rad / LR_DEG, c->angle_deg, 0.01);
  assert_within (camera->field_w_m, c->field_m, 1e-3);
  assert_within (camera->field_h_m, c->field_m * 2.0 / 3.0, 1e-3);
  assert_near (camera->eyes_across, 0.5, 1e-9);
  assert_near (camera->eyes_down, 0.5, 1e-9);
}

typedef struct
{
  const char *name;
  double      f_number, coc_mm;    /* in: 50 mm, focused at 10 ft from the lens */
  double      near_ft, far_ft;     /* expected, from the lens */
} DepthCase;

/* Source: insyncpubs.com, article 11: printed 8 ft 9 in to 11 ft 8 in, and 9 ft 2 in to 11 ft 0 in, to an inch */
static const DepthCase depth_cases[] = {
  { "0.030-mm", 4.0, 0.030, 8.75, 11.0 + 8.0 / 12.0 },
  { "0.019-mm", 4.0, 0.019, 9.0 + 2.0 / 12.0, 11.0 },
};

static void
test_depth (gconstpointer data)
{
  const DepthCase *c = data;
  double s_m = 10.0 * 0.3048, v_m = 0.05 * s_m / (s_m - 0.05);
  g_autoptr (LrPlan) plan = fixture_face_to_face (s_m + v_m);
  g_autoptr (LrStudy) study = NULL;
  const LrCameraReading *camera;

  g_test_message ("printed depth of field table, insyncpubs.com article 11");
  fixture_set (&plan, "camera-1", "f-number", c->f_number);
  fixture_set (&plan, "camera-1", "coc-mm", 0.001 * c->coc_mm);
  study = lr_study_new (plan);
  camera = fixture_camera (study, "camera-1");
  assert_near ((camera->sharp_near_m - v_m) / 0.3048, c->near_ft, 0.6 / 12.0);
  assert_near ((camera->sharp_far_m - v_m) / 0.3048, c->far_ft, 0.6 / 12.0);
}

/* Past the hyperfocal distance everything behind is sharp: 24 mm, f/8, 0.0288 mm: H = 2.524 m, by hand */
static void
test_infinity (void)
{
  g_autoptr (LrPlan) plan = fixture_face_to_face (3.1);
  g_autoptr (LrStudy) study = NULL;

  fixture_set (&plan, "camera-1", "focal-mm", 0.024);
  fixture_set (&plan, "camera-1", "f-number", 8.0);
  fixture_set (&plan, "camera-1", "coc-mm", 0.0000288);
  study = lr_study_new (plan);
  g_assert_cmpfloat (fixture_camera (study, "camera-1")->sharp_far_m, ==, HUGE_VAL);
  assert_within (fixture_camera (study, "camera-1")->hyperfocal_m, 2.524 + 0.024 + 8.0 * 0.0288e-3, 1e-6); /* f H / (H - f) = f + N c */
}

typedef struct
{
  const char *name;
  double      lens_z_m;                      /* in: the lens at (0, 2), the subject's eyes at (0, 0) */
  LrVec3      interviewer_m;                 /* eyes */
  double      gaze_deg, up_deg, lens_up_deg; /* expected */
} GazeCase;

/* Source: atan2 of the coordinates by hand; vertical angles as elevations, also by hand */
static const GazeCase gaze_cases[] = {
  { "right", 1.20, { 0.35, 2.0, 1.20 }, -9.93, 0.0, 0.0 },
  { "lens-above", 1.30, { 0.5, 1.6, 1.25 }, -17.35, -1.15, 2.86 },
};

/* People's eyes are ahead of the middle of the head, towards whom they look */
static const char *
add_eyes (LrPlan **plan,
          LrRole   role,
          LrVec3   eyes_m,
          LrVec2   towards_m)
{
  LrVec2 way = lr_vec2_sub (towards_m, lr_vec3_flat (eyes_m));
  LrVec2 head_m = lr_vec2_along (lr_vec3_flat (eyes_m), way, -LR_EYES_AHEAD_M / lr_vec2_length (way));
  const char *id = fixture_add (plan, LR_ITEM_PERSON, role, head_m.x, head_m.y);

  fixture_set (plan, id, "eye-height-mm", eyes_m.z);
  return id;
}

static void
test_gaze (gconstpointer data)
{
  const GazeCase *c = data;
  g_autoptr (LrPlan) plan = fixture_empty ();
  g_autoptr (LrStudy) study = NULL;
  const LrCameraReading *camera;
  const char *subject = add_eyes (&plan, LR_ROLE_SUBJECT, lr_vec3 (0.0, 0.0, 1.2), lr_vec3_flat (c->interviewer_m));
  const char *interviewer = add_eyes (&plan, LR_ROLE_INTERVIEWER, c->interviewer_m, lr_vec2 (0.0, 0.0));
  const char *id = fixture_add (&plan, LR_ITEM_CAMERA, 0, 0.0, 2.051);

  g_test_message ("atan2 by hand; the lens 51 mm ahead of the tripod's centre");
  fixture_text (&plan, subject, "looks-at", interviewer);
  fixture_text (&plan, interviewer, "looks-at", subject);
  fixture_text (&plan, id, "aims-at", subject);
  fixture_set (&plan, id, "lens-height-mm", c->lens_z_m);
  study = lr_study_new (plan);
  camera = fixture_camera (study, id);
  assert_near (camera->projection.eye_m.y, 2.0, 0.001);
  assert_near (camera->gaze_rad / LR_DEG, c->gaze_deg, 0.05);
  assert_near (camera->gaze_up_rad / LR_DEG, c->up_deg, 0.05);
  assert_near (camera->lens_up_rad / LR_DEG, c->lens_up_deg, 0.05);
  assert_near (camera->lens_above_m, c->lens_z_m - 1.2, 1e-9);
  g_assert_cmpint (camera->side, ==, LR_SIDE_LEFT);
  g_assert_true (camera->is_on_study_line);
}

/* A medium close-up of 1.70 m: F 0.529 m, headroom 10 %, eyes 30.6 % down, 50 mm on 20.25 mm from 1.356 m before the lens:
 * the rule of framing.c and the thin lens, by hand. The tilt changes them by under a hundredth. */
static void
test_shot (void)
{
  g_autoptr (LrPlan) plan = fixture_face_to_face (1.356 + 0.0519);
  g_autoptr (LrStudy) study = NULL;
  const LrCameraReading *camera;

  fixture_set (&plan, "person-1", "stature-mm", 1.7);
  fixture_set (&plan, "camera-1", "sensor-height-mm", 0.02025);
  fixture_set (&plan, "camera-1", "down-pct", 0.306);
  study = lr_study_new (plan);
  camera = fixture_camera (study, "camera-1");
  g_assert_cmpint (camera->framing.shot, ==, LR_SHOT_MEDIUM_CLOSE_UP);
  assert_near (camera->framing.top_m - camera->framing.bottom_m, 0.529, 0.006);
  assert_near (camera->framing.headroom, 0.10, 0.01);
  assert_near (camera->framing.eyes_down, 0.306, 1e-4);
  assert_near (camera->eyes_down, 0.306, 1e-4);
  assert_near (camera->tilt_rad / LR_DEG, -atan ((0.5 - 0.306) * 20.25 / 51.9) / LR_DEG, 0.05);
}

/* 50 mm on 36 mm: an aim 33.3 % across is atan (6.012 / v) = 6.685 degrees off the axis, and the lens, swung aside by v sin pan,
 * sees the eyes 0.17 degrees to the other side: 6.5185 degrees of pan. The sharp plane is square to the axis, q = 2.051 cos pan
 * = 2.0377 m from the sensor plane, so that v = 51.291 mm. Solved round by round by another program. */
static void
test_across (void)
{
  g_autoptr (LrPlan) plan = fixture_face_to_face (2.051);
  g_autoptr (LrStudy) study = NULL;
  const LrCameraReading *camera;

  fixture_set (&plan, "camera-1", "across-pct", 1.0 / 3.0);
  study = lr_study_new (plan);
  camera = fixture_camera (study, "camera-1");
  assert_near (camera->eyes_across, 0.333, 1e-4); /* the file holds tenths of a per cent */
  assert_near (camera->pan_rad / LR_DEG, -6.5185, 0.0005);
  assert_near (camera->distance_m, 2.051, 1e-9);
  assert_near (camera->eyes_depth_m, 2.037741, 1e-5);
  assert_near (camera->focus_m, camera->eyes_depth_m, 1e-6);
  assert_near (lr_vec2_distance (lr_vec3_flat (camera->projection.eye_m), lr_vec2 (0.0, 0.0)), 0.051291, 1e-6);
}

/* A camera that aims at nothing, tilted down: the lens stands v before the sensor plane along the axis, at its height, and v is what
 * the thin lens asks for at the depth of the eyes: 1 / f = 1 / v + 1 / (q - v) */
static void
test_tilted (void)
{
  g_autoptr (LrPlan) plan = fixture_face_to_face (0.9);
  g_autoptr (LrStudy) study = NULL;
  const LrCameraReading *camera;
  LrVec3 way_m;
  double v_m, q_m;

  fixture_text (&plan, "camera-1", "aims-at", "");
  fixture_set (&plan, "camera-1", "focal-mm", 0.085);
  fixture_set (&plan, "camera-1", "tilt-deg", -31.0 * LR_DEG);
  fixture_set (&plan, "camera-1", "lens-height-mm", 1.7);
  study = lr_study_new (plan);
  camera = fixture_camera (study, "camera-1");
  way_m = lr_vec3_sub (camera->projection.eye_m, camera->sensor_m);
  v_m = lr_vec3_length (way_m);
  q_m = lr_vec3_dot (lr_vec3_sub (camera->subject->eyes_m, camera->sensor_m), camera->projection.forward);
  assert_near (camera->projection.eye_m.z, 1.7, 1e-9);
  assert_near (lr_vec3_dot (way_m, camera->projection.forward), v_m, 1e-6);
  assert_near (camera->focus_m, q_m, 1e-5);
  assert_near (1.0 / v_m + 1.0 / (q_m - v_m), 1.0 / 0.085, 1e-3);
}

/* An anamorphic 2.0 squeeze on 22.00 x 18.59 mm: 2.367 : 1, and 47.50 degrees at 50 mm: by hand */
static void
test_squeeze (void)
{
  g_autoptr (LrPlan) plan = fixture_empty ();
  g_autoptr (LrStudy) study = NULL;
  const char *id = fixture_add (&plan, LR_ITEM_CAMERA, 0, 0.0, 0.0);

  fixture_set (&plan, id, "sensor-width-mm", 0.022);
  fixture_set (&plan, id, "sensor-height-mm", 0.01859);
  fixture_set (&plan, id, "squeeze", 2.0);
  study = lr_study_new (plan);
  assert_near (fixture_camera (study, id)->image_aspect, 2.367, 0.001);
  assert_near (fixture_camera (study, id)->angle_h_rad / LR_DEG, 47.50, 0.01);
}

typedef struct
{
  const char *name;
  double      focal_mm, f_number, distance_m; /* in: from the sensor plane */
} ClosedCase;

static const ClosedCase near_cases[] = {
  { "nearer-than-four-focal-lengths", 85.0, 2.8, 0.33 },
  { "inside-the-head", 50.0, 2.8, 0.001 },
};

/* A camera that is dragged into the person's face gives no nonsense */
static void
test_too_near (gconstpointer data)
{
  const ClosedCase *c = data;
  g_autoptr (LrPlan) plan = fixture_face_to_face (c->distance_m);
  g_autoptr (LrStudy) study = NULL;
  const LrCameraReading *camera;

  fixture_set (&plan, "camera-1", "focal-mm", 0.001 * c->focal_mm);
  study = lr_study_new (plan);
  camera = fixture_camera (study, "camera-1");
  g_assert_true (isfinite (camera->distance_m));
  g_assert_true (isnan (camera->sharp_near_m));
  g_assert_true (isfinite (camera->angle_h_rad));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/cameras/angle", angle_cases, test_angle);
  add_rows ("/cameras/field", field_cases, test_field);
  add_rows ("/cameras/depth", depth_cases, test_depth);
  g_test_add_func ("/cameras/infinity", test_infinity);
  add_rows ("/cameras/gaze", gaze_cases, test_gaze);
  g_test_add_func ("/cameras/shot", test_shot);
  g_test_add_func ("/cameras/across", test_across);
  g_test_add_func ("/cameras/tilted", test_tilted);
  g_test_add_func ("/cameras/squeeze", test_squeeze);
  add_rows ("/cameras/too-near", near_cases, test_too_near);

  return g_test_run ();
}
