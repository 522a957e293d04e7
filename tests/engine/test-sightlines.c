/* test-sightlines.c - the line of action, the look and the angle between cameras
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Expected values: atan2 of the coordinates, worked apart from this program to 0.02 degrees.
 */

#include "sightlines.h"

#include "check.h"

typedef struct
{
  const char *name;
  LrVec3      subject_m, lens_m, interviewer_m; /* in */
  double      gaze_deg, eyeline_deg;            /* expected */
} GazeCase;

static const GazeCase gaze_cases[] = {
  { "right", { 0.0, 0.0, 1.20 }, { 0.0, 2.0, 1.20 }, { 0.35, 2.0, 1.20 }, -9.93, 0.0 },
  { "lens-above", { 0.0, 0.0, 1.20 }, { 0.0, 2.0, 1.30 }, { 0.5, 1.6, 1.25 }, -17.35, -1.15 },
  { "left", { 0.0, 0.0, 1.16 }, { 0.0, 1.8, 1.16 }, { -0.6, 1.5, 1.21 }, 21.80, 1.77 },
};

static void
test_gaze (gconstpointer data)
{
  const GazeCase *c = data;
  double to_interviewer_rad = lr_elevation_rad (c->subject_m, c->interviewer_m);
  double to_lens_rad = lr_elevation_rad (c->subject_m, c->lens_m);
  double gaze_rad = NAN;

  g_test_message ("atan2 (v × g, v · g) and atan2 (z, hypot (x, y)), by hand");
  g_assert_true (lr_gaze_rad (lr_vec3_flat (c->subject_m), lr_vec3_flat (c->interviewer_m), lr_vec3_flat (c->lens_m),
                              &gaze_rad));
  assert_near (gaze_rad / LR_DEG, c->gaze_deg, 0.02);
  assert_near ((to_interviewer_rad - to_lens_rad) / LR_DEG, c->eyeline_deg, 0.02);
}

typedef struct
{
  const char *name;
  LrVec2      b_m;                           /* in; subject (0, 0), interviewer (0.5, 2.0), camera A (0, 2.2) */
  LrSide      side;                          /* expected */
  double      cross_m2, angle_deg, gaze_deg; /* of B */
} LayoutCase;

static const LayoutCase layout_cases[] = {
  { "same-side", { -1.4, 1.6 }, LR_SIDE_LEFT, 3.60, 41.19, 55.22 },
  { "line-crossed", { 1.6, 1.4 }, LR_SIDE_RIGHT, -2.50, 48.81, 34.78 },
  { "too-near", { -0.8, 2.1 }, LR_SIDE_LEFT, 2.65, 20.85, 34.89 },
};

static void
test_layout (gconstpointer data)
{
  const LayoutCase *c = data;
  LrVec2 subject_m = { 0.0, 0.0 }, interviewer_m = { 0.5, 2.0 }, a_m = { 0.0, 2.2 };
  double angle_rad = NAN, gaze_rad = NAN, distance_m = NAN, margin_rad = NAN;

  g_test_message ("sign of (I - S) × (C - S), the 180 degree rule; angles by hand");
  g_assert_cmpint (lr_line_side (subject_m, interviewer_m, a_m), ==, LR_SIDE_LEFT);
  g_assert_cmpint (lr_line_side (subject_m, interviewer_m, c->b_m), ==, c->side);
  g_assert_true (lr_camera_angle_rad (subject_m, a_m, c->b_m, &angle_rad));
  assert_near (angle_rad / LR_DEG, c->angle_deg, 0.02);
  g_assert_true (lr_gaze_rad (subject_m, interviewer_m, a_m, &gaze_rad));
  assert_near (fabs (gaze_rad) / LR_DEG, 14.04, 0.02);
  g_assert_true (lr_gaze_rad (subject_m, interviewer_m, c->b_m, &gaze_rad));
  assert_near (fabs (gaze_rad) / LR_DEG, c->gaze_deg, 0.02);
  g_assert_true (gaze_rad * c->side < 0.0);
  g_assert_true (lr_line_margin_rad (subject_m, interviewer_m, c->b_m, &margin_rad));
  assert_near (margin_rad / LR_DEG, c->gaze_deg, 0.02);
  g_assert_true (lr_line_distance_m (subject_m, interviewer_m, c->b_m, &distance_m));
  assert_near (distance_m * hypot (0.5, 2.0), fabs (c->cross_m2), 1e-9);
}

/* The line has no ends: behind the subject and behind the interviewer the same holds */
static void
test_unbounded (void)
{
  LrVec2 s = { 1.0, 1.0 }, i = { 3.0, 1.0 };
  double margin_rad, distance_m;

  g_test_message ("closed form: a line along x");
  g_assert_cmpint (lr_line_side (s, i, lr_vec2 (9.0, 1.2)), ==, LR_SIDE_LEFT);
  g_assert_cmpint (lr_line_side (s, i, lr_vec2 (-9.0, 1.2)), ==, LR_SIDE_LEFT);
  g_assert_cmpint (lr_line_side (s, i, lr_vec2 (-9.0, 0.8)), ==, LR_SIDE_RIGHT);
  g_assert_cmpint (lr_line_side (s, i, lr_vec2 (7.0, 1.0)), ==, LR_SIDE_ON_LINE);
  g_assert_cmpint (lr_line_side (s, i, s), ==, LR_SIDE_ON_LINE);
  g_assert_cmpint (lr_line_side (s, s, i), ==, LR_SIDE_ON_LINE);
  g_assert_true (lr_line_margin_rad (s, i, lr_vec2 (0.0, 2.0), &margin_rad));
  assert_near (margin_rad, 45.0 * LR_DEG, 1e-12);
  g_assert_true (lr_line_margin_rad (s, i, lr_vec2 (1.0, -4.0), &margin_rad));
  assert_near (margin_rad, 90.0 * LR_DEG, 1e-12);
  g_assert_true (lr_line_distance_m (s, i, lr_vec2 (-30.0, -1.5), &distance_m));
  assert_near (distance_m, 2.5, 1e-12);
}

typedef struct
{
  const char *name;
  double      from_deg, margin_deg;
  LrSide      side;
  double      to_deg; /* expected place of the camera, anticlockwise from the line */
} MendCase;

/* Source: the line along +x from the subject; places by hand */
static const MendCase mend_cases[] = {
  { "just-over", -3.0, 10.0, LR_SIDE_LEFT, 10.0 },
  { "over-behind", -175.0, 10.0, LR_SIDE_LEFT, 170.0 },
  { "far-over", -80.0, 15.0, LR_SIDE_LEFT, 15.0 },
  { "too-near", 4.0, 10.0, LR_SIDE_LEFT, 10.0 },
  { "to-the-right", 20.0, 5.0, LR_SIDE_RIGHT, -5.0 },
  { "to-the-right-behind", 170.0, 5.0, LR_SIDE_RIGHT, -175.0 },
  { "on-the-line", 0.0, 12.0, LR_SIDE_RIGHT, -12.0 },
  { "square", -100.0, 90.0, LR_SIDE_LEFT, 90.0 },
  { "nothing-wrong", 35.0, 10.0, LR_SIDE_LEFT, 35.0 },
};

static void
test_mend (gconstpointer data)
{
  const MendCase *c = data;
  LrVec2 subject_m = { 2.0, -1.0 }, interviewer_m = { 3.5, -1.0 };
  LrVec2 camera_m = lr_vec2_add (subject_m, lr_vec2_polar (c->from_deg * LR_DEG, 2.4));
  LrVec2 moved_m;

  g_test_message ("closed form: places on the circle by hand");
  g_assert_true (lr_line_mend (subject_m, interviewer_m, camera_m, c->side, c->margin_deg * LR_DEG, &moved_m));
  assert_near_2 (moved_m, lr_vec2_add (subject_m, lr_vec2_polar (c->to_deg * LR_DEG, 2.4)), 1e-6);
}

typedef struct
{
  LrVec2 subject_m, interviewer_m, a_m, b_m;
  LrSide side;
  double limit_rad;
  bool   is_angle;
} Scene;

static bool
scene_is_right (const Scene *scene,
                LrVec2       b_m)
{
  double angle_rad;

  if (scene->side != LR_SIDE_ON_LINE && lr_line_side (scene->subject_m, scene->interviewer_m, b_m) != scene->side)
    return false;

  if (scene->is_angle)
    g_assert_true (lr_camera_angle_rad (scene->subject_m, scene->a_m, b_m, &angle_rad));
  else
    g_assert_true (lr_line_margin_rad (scene->subject_m, scene->interviewer_m, b_m, &angle_rad));
  return angle_rad >= scene->limit_rad;
}

static LrVec2
turned (const Scene *scene,
        double       angle_rad)
{
  return lr_vec2_add (scene->subject_m, lr_vec2_rotate (lr_vec2_sub (scene->b_m, scene->subject_m), angle_rad));
}

/* No turn smaller than this one mends the scene: tried in steps of half a degree and just short
 * of it */
static void
assert_smallest (const Scene *scene,
                 double       turn_rad)
{
  double short_rad = fabs (turn_rad) - 1e-6;

  for (double try_rad = 0.0; try_rad < short_rad; try_rad += 0.5 * LR_DEG)
    {
      g_assert_false (scene_is_right (scene, turned (scene, try_rad)));
      g_assert_false (scene_is_right (scene, turned (scene, -try_rad)));
    }

  g_assert_false (scene_is_right (scene, turned (scene, short_rad)));
  g_assert_false (scene_is_right (scene, turned (scene, -short_rad)));
}

static Scene
random_scene (bool is_angle)
{
  static const LrSide sides[] = { LR_SIDE_LEFT, LR_SIDE_RIGHT, LR_SIDE_ON_LINE };
  Scene scene = { .is_angle = is_angle };

  scene.subject_m = random_point (5.0);
  scene.interviewer_m = random_point (5.0);
  scene.a_m = random_point (5.0);
  scene.b_m = random_point (5.0);
  scene.side = sides[g_test_rand_int_range (0, is_angle ? 3 : 2)];
  scene.limit_rad = g_test_rand_double_range (1.0, is_angle ? 180.0 : 90.0) * LR_DEG;
  return scene;
}

static void
test_mend_property (void)
{
  for (int i = 0; i < 1000; i++)
    {
      Scene scene = random_scene (false);
      double turn_rad;
      LrVec2 moved_m;

      g_assert_true (lr_line_mend (scene.subject_m, scene.interviewer_m, scene.b_m, scene.side, scene.limit_rad,
                                   &moved_m));
      assert_within (lr_vec2_distance (scene.subject_m, moved_m), lr_vec2_distance (scene.subject_m, scene.b_m), 1e-12);
      g_assert_true (scene_is_right (&scene, moved_m));
      g_assert_true (lr_camera_angle_rad (scene.subject_m, scene.b_m, moved_m, &turn_rad));
      if (turn_rad > 1e-6)
        assert_smallest (&scene, turn_rad);
      else
        assert_near_2 (moved_m, scene.b_m, 1e-5);
    }
}

/* Where the mend says that there is no place, no place of the circle will do */
static void
assert_hopeless (const Scene *scene)
{
  for (double try_rad = 0.0; try_rad < 2.0 * LR_PI; try_rad += 0.5 * LR_DEG)
    g_assert_false (scene_is_right (scene, turned (scene, try_rad)));
}

static void
test_angle_mend_property (void)
{
  for (int i = 0; i < 1000; i++)
    {
      Scene scene = random_scene (true);
      double turn_rad;
      LrVec2 moved_m;

      if (!lr_camera_angle_mend (scene.subject_m, scene.interviewer_m, scene.a_m, scene.b_m, scene.limit_rad,
                                 scene.side, &moved_m))
        {
          assert_hopeless (&scene);
          continue;
        }

      assert_within (lr_vec2_distance (scene.subject_m, moved_m), lr_vec2_distance (scene.subject_m, scene.b_m), 1e-12);
      g_assert_true (scene_is_right (&scene, moved_m));
      g_assert_true (lr_camera_angle_rad (scene.subject_m, scene.b_m, moved_m, &turn_rad));
      if (turn_rad > 1e-6)
        assert_smallest (&scene, turn_rad);
    }
}

/* Layout with 20.85 degrees between the cameras: B goes away from A to 30 degrees, on its side
 * of the line */
static void
test_angle_mend (void)
{
  LrVec2 s = { 0.0, 0.0 }, i = { 0.5, 2.0 }, a = { 0.0, 2.2 }, b = { -0.8, 2.1 }, moved_m;

  g_test_message ("by hand: B at 90 + 30 degrees, hypot (0.8, 2.1) m from the subject");
  g_assert_true (lr_camera_angle_mend (s, i, a, b, 30.0 * LR_DEG, LR_SIDE_LEFT, &moved_m));
  assert_near_2 (moved_m, lr_vec2_polar (120.0 * LR_DEG, hypot (0.8, 2.1)), 1e-6);
  g_assert_true (lr_camera_angle_mend (s, i, a, b, 20.0 * LR_DEG, LR_SIDE_LEFT, &moved_m));
  g_assert_true (moved_m.x == b.x && moved_m.y == b.y);

  /* A at 90 degrees, the line from 75.96 to 255.96: no left place is 170 degrees from A */
  moved_m.x = UNTOUCHED;
  g_assert_false (lr_camera_angle_mend (s, i, a, b, 170.0 * LR_DEG, LR_SIDE_LEFT, &moved_m));
  g_assert_cmpfloat (moved_m.x, ==, UNTOUCHED);
}

static void
test_elevation (void)
{
  LrVec3 eye_m = { 1.0, 2.0, 1.2 };

  g_test_message ("closed form: 3-4-5 triangles");
  assert_near (tan (lr_elevation_rad (eye_m, lr_vec3 (4.0, 6.0, 2.2))), 0.2, 1e-12);
  assert_near (tan (lr_elevation_rad (eye_m, lr_vec3 (4.0, 6.0, 0.2))), -0.2, 1e-12);
  assert_near (lr_elevation_rad (eye_m, lr_vec3 (1.0, 2.0, 5.0)), 90.0 * LR_DEG, 1e-12);
  g_assert_cmpfloat (lr_elevation_rad (eye_m, eye_m), ==, 0.0);
}

static void
test_domain (void)
{
  LrVec2 s = { 0.0, 0.0 }, i = { 1.0, 0.0 }, a = { 0.0, 2.0 }, b = { 1.0, 2.0 };
  LrVec2 bad[] = { { 0.0, 0.0 }, { NAN, 1.0 }, { 1.0, HUGE_VAL } };
  LrVec2 moved_m = { UNTOUCHED, UNTOUCHED };
  double out = UNTOUCHED;

  for (size_t n = 0; n < G_N_ELEMENTS (bad); n++)
    {
      g_assert_false (lr_line_margin_rad (s, bad[n], a, &out));
      g_assert_false (lr_line_margin_rad (s, i, bad[n], &out));
      g_assert_false (lr_line_distance_m (s, bad[n], a, &out));
      g_assert_false (lr_gaze_rad (s, bad[n], a, &out));
      g_assert_false (lr_gaze_rad (s, i, bad[n], &out));
      g_assert_false (lr_camera_angle_rad (s, bad[n], b, &out));
      g_assert_false (lr_camera_angle_rad (s, a, bad[n], &out));
      g_assert_false (lr_line_mend (s, bad[n], a, LR_SIDE_LEFT, 0.1, &moved_m));
      g_assert_false (lr_line_mend (s, i, bad[n], LR_SIDE_LEFT, 0.1, &moved_m));
      g_assert_false (lr_camera_angle_mend (s, bad[n], a, b, 0.5, LR_SIDE_LEFT, &moved_m));
      g_assert_false (lr_camera_angle_mend (s, i, bad[n], b, 0.5, LR_SIDE_LEFT, &moved_m));
      g_assert_false (lr_camera_angle_mend (s, i, a, bad[n], 0.5, LR_SIDE_LEFT, &moved_m));
    }
  g_assert_false (lr_line_distance_m (s, i, bad[1], &out));

  for (size_t n = 0; n < G_N_ELEMENTS (not_positive); n++)
    {
      g_assert_false (lr_line_mend (s, i, a, LR_SIDE_LEFT, not_positive[n], &moved_m));
      g_assert_false (lr_camera_angle_mend (s, i, a, b, not_positive[n], LR_SIDE_LEFT, &moved_m));
    }
  g_assert_false (lr_line_mend (s, i, a, LR_SIDE_ON_LINE, 0.1, &moved_m));
  g_assert_false (lr_line_mend (s, i, a, LR_SIDE_LEFT, 91.0 * LR_DEG, &moved_m));
  g_assert_false (lr_camera_angle_mend (s, i, a, b, 181.0 * LR_DEG, LR_SIDE_LEFT, &moved_m));
  g_assert_cmpfloat (out, ==, UNTOUCHED);
  g_assert_cmpfloat (moved_m.x, ==, UNTOUCHED);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/sightlines/gaze", gaze_cases, test_gaze);
  add_rows ("/sightlines/layout", layout_cases, test_layout);
  add_rows ("/sightlines/mend", mend_cases, test_mend);
  g_test_add_func ("/sightlines/unbounded", test_unbounded);
  g_test_add_func ("/sightlines/mend-property", test_mend_property);
  g_test_add_func ("/sightlines/angle-mend", test_angle_mend);
  g_test_add_func ("/sightlines/angle-mend-property", test_angle_mend_property);
  g_test_add_func ("/sightlines/elevation", test_elevation);
  g_test_add_func ("/sightlines/domain", test_domain);

  return g_test_run ();
}
