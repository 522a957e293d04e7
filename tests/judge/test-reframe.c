/* test-reframe.c - from the wanted picture back to the camera: what is promised is read from the plan that it makes
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "hall.h"

static void
assert_framed (const LrReframe *reframe,
               const LrPlan    *plan,
               LrShot           shot)
{
  g_autoptr (LrStudy) study = study_of (reframe, plan);
  const LrCameraReading *camera = first_camera (study);
  double height_m, eyes_down;

  g_assert_true (lr_shot_frame_height_m (shot, &camera->subject->body, &height_m, &eyes_down));
  g_assert_cmpint (camera->framing.shot, ==, shot);
  g_assert_cmpint (reframe->shot, ==, shot);
  assert_near (camera->eyes_down, eyes_down, 0.002);
  if (fabs (camera->lens_above_m) < 0.01) /* else the upright plane is not drawn to scale */
    assert_within (camera->framing.top_m - camera->framing.bottom_m, height_m, 0.06);
  assert_within (camera->subject->eyes_m.z - camera->framing.bottom_m, (1.0 - eyes_down) * height_m, 0.01);
  assert_within (reframe->distance_m, camera->distance_m, 1e-9);
  assert_near (camera->focus_m, camera->eyes_depth_m, 1e-5);
}

static const struct { const char *lens; double focal_m; } lenses[] = {
  { "lens-35", 0.035 }, { "lens-50", 0.050 }, { "lens-85", 0.085 }, { "", 0.024 }, { "", 0.135 },
};

/* Every size, of a seated and of a standing person, from level, above and below, through every lens: by the place it reads
 * back as the size that was asked for, or a figure says what is in the way */
static void
test_sizes_by_place (void)
{
  static const double lens_off_m[] = { 0.0, 0.35, -0.35 };
  int n_done = 0;

  for (LrPosture posture = LR_POSTURE_SEATED; posture <= LR_POSTURE_STANDING; posture++)
    for (gsize i = 0; i < G_N_ELEMENTS (lenses); i++)
      for (gsize j = 0; j < G_N_ELEMENTS (lens_off_m); j++)
        for (LrShot shot = LR_SHOT_EXTREME_CLOSE_UP; shot <= LR_SHOT_FULL; shot++)
          {
            g_autoptr (LrPlan) plan = make_hall (9.0, posture, lenses[i].lens, lenses[i].focal_m);
            const LrItem *item = lr_plan_find (plan, "camera-1");
            g_autoptr (LrStudy) study = NULL;
            g_autoptr (LrReframe) reframe = NULL;

            fixture_set (&plan, "camera-1", "lens-height-mm", item->camera.lens_height_m + lens_off_m[j]);
            study = lr_study_new (plan);
            reframe = lr_reframe_shot (study, first_camera (study), shot, LR_REFRAME_BY_PLACE, LR_UNITS_METRIC);
            g_test_message ("%s", reframe->sentence);
            if (reframe->is_possible)
              assert_framed (reframe, plan, shot);
            n_done += reframe->is_possible;
          }
  g_test_message ("%d of %d", n_done, 2 * 5 * 3 * 8);
  g_assert_cmpint (n_done, >=, 170);
}

/* The same by the lens, where none is named: whatever the focal length, the place stays */
static void
test_sizes_by_lens (void)
{
  for (LrPosture posture = LR_POSTURE_SEATED; posture <= LR_POSTURE_STANDING; posture++)
    for (LrShot shot = LR_SHOT_EXTREME_CLOSE_UP; shot <= LR_SHOT_FULL; shot++)
      {
        g_autoptr (LrPlan) plan = make_hall (3.0, posture, "", 0.05);
        g_autoptr (LrStudy) study = lr_study_new (plan);
        g_autoptr (LrReframe) reframe = lr_reframe_shot (study, first_camera (study), shot, LR_REFRAME_BY_LENS, LR_UNITS_METRIC);

        g_test_message ("%s", reframe->sentence);
        g_assert_true (reframe->is_possible);
        assert_framed (reframe, plan, shot);
        assert_near (reframe->distance_m, 3.0, 0.02);
      }
}

/* A zoom is set exactly, and says where it ends */
static void
test_zoom_end (void)
{
  g_autoptr (LrPlan) plan = make_hall (3.0, LR_POSTURE_SEATED, "lens-50", 0.05);
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (LrReframe) medium = NULL, close = NULL;

  make_zoom (&plan, 0.024, 0.080);
  study = lr_study_new (plan);
  medium = lr_reframe_shot (study, first_camera (study), LR_SHOT_MEDIUM, LR_REFRAME_BY_LENS, LR_UNITS_METRIC);
  g_assert_true (medium->is_possible);
  g_assert_null (medium->lens);
  assert_framed (medium, plan, LR_SHOT_MEDIUM);

  close = lr_reframe_shot (study, first_camera (study), LR_SHOT_BIG_CLOSE_UP, LR_REFRAME_BY_LENS, LR_UNITS_METRIC);
  g_test_message ("%s", close->sentence);
  g_assert_false (close->is_possible);
  g_assert_nonnull (close->instead);
  g_assert_nonnull (strstr (close->instead->sentence, "85"));
}

/* Of primes the one that comes nearest is put on, if it makes the size */
static void
test_prime (void)
{
  g_autoptr (LrPlan) plan = make_hall (3.2, LR_POSTURE_SEATED, "lens-50", 0.05);
  g_autoptr (LrStudy) study = lr_study_new (plan), after = NULL;
  g_autoptr (LrReframe) reframe = lr_reframe_shot (study, first_camera (study), LR_SHOT_MEDIUM, LR_REFRAME_BY_LENS, LR_UNITS_METRIC);

  g_test_message ("%s", reframe->sentence);
  g_assert_true (reframe->is_possible);
  g_assert_cmpstr (reframe->lens, ==, "lens-85");
  after = study_of (reframe, plan);
  g_assert_cmpint (first_camera (after)->framing.shot, ==, LR_SHOT_MEDIUM);
  assert_near (first_camera (after)->focal_m, 0.085, 1e-9);
}

/* A person 3 m from the east wall of a room: the camera's legs are 0.48 m from its middle, with a gap
 * turned to the wall half of that, cos 60 degrees: so it ends at 2.76 m */
static void
test_wall_ends_it (void)
{
  g_autoptr (LrPlan) plan = fixture_room (6.0, 5.0, 2.7);
  const char *person = fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 3.0 - LR_EYES_AHEAD_M, 2.5);
  const char *camera = fixture_add (&plan, LR_ITEM_CAMERA, 0, 5.0, 2.5);
  g_autoptr (LrStudy) study = NULL, after = NULL;
  g_autoptr (LrReframe) reframe = NULL;

  fixture_text (&plan, camera, "aims-at", person);
  fixture_set (&plan, person, "facing-deg", 0.0);
  study = lr_study_new (plan);
  reframe = lr_reframe_shot (study, first_camera (study), LR_SHOT_FULL, LR_REFRAME_BY_PLACE, LR_UNITS_METRIC);
  g_test_message ("%s", reframe->sentence);
  g_assert_false (reframe->is_possible);
  g_assert_nonnull (strstr (reframe->sentence, "the east wall ends it at 2.76"));
  g_assert_nonnull (reframe->instead);
  g_assert_cmpint (reframe->instead->shot, <, LR_SHOT_FULL);
  g_assert_nonnull (strstr (reframe->sentence, lr_shot_title (reframe->instead->shot)));
  g_assert_cmpfloat (reframe->instead->distance_m, <, 2.765);
  after = study_of (reframe->instead, plan);
  g_assert_cmpint (first_camera (after)->framing.shot, ==, reframe->instead->shot);
}

typedef struct
{
  const char *name;
  double      field_m, behind_field_m, behind_m; /* in */
  double      across, down;                      /* of the eyes in the frame */
  double      lens_m;                            /* expected: from the lens to the eyes; NAN: not known */
} BackgroundCase;

/* Source: similar triangles, D = B Ws / (Wb - Ws), by hand */
static const BackgroundCase background_cases[] = {
  { "1-m-2.5-m-3-m", 1.0, 2.5, 3.0, 0.5, 0.5, 2.000 },
  { "0.94-m-2-m-2-m", 0.94, 2.0, 2.0, 0.5, 0.5, 1.774 },
  { "off-the-axis", 1.0, 2.5, 3.0, 0.61, 0.24, NAN }, /* the wall is not square to the axis then: what comes out is asked for */
  { "far-off-the-axis", 1.0, 1.8, 3.0, 0.3, 0.3, NAN },
};

/* The wall stands 4 m behind the end of the hall: the person stands B before it. The frame is first set to the field Ws */
static void
test_background (gconstpointer data)
{
  const BackgroundCase *c = data;
  double eyes_x_m = 20.0 - c->behind_m, q_m = 2.5;
  g_autoptr (LrPlan) plan = make_hall (3.0, LR_POSTURE_SEATED, "", 0.05), framed = NULL;
  g_autoptr (LrStudy) first = NULL, study = NULL, after = NULL;
  g_autoptr (LrReframe) reframe = NULL;
  const LrCameraReading *camera;
  double focal_m, lens_m;

  fixture_set (&plan, "person-1", "x-mm", eyes_x_m + LR_EYES_AHEAD_M);
  fixture_set (&plan, "camera-1", "x-mm", eyes_x_m - q_m);
  g_assert_true (lr_focal_for_field_m (0.036, c->field_m, q_m, &focal_m));
  fixture_set (&plan, "camera-1", "focal-mm", focal_m);
  fixture_set (&plan, "camera-1", "across-pct", c->across);
  fixture_set (&plan, "camera-1", "down-pct", c->down);
  study = lr_study_new (plan);
  assert_within (first_camera (study)->field_w_m, c->field_m, isnan (c->lens_m) ? 0.05 : SHARE);

  reframe = lr_reframe_background (study, first_camera (study), c->behind_field_m, LR_UNITS_METRIC);
  g_test_message ("D = B Ws / (Wb - Ws): %s", reframe->sentence);
  g_assert_true (reframe->is_possible);
  after = study_of (reframe, plan);
  camera = first_camera (after);
  assert_within (camera->behind_field_w_m, c->behind_field_m, SHARE);
  assert_within (camera->field_w_m, first_camera (study)->field_w_m, SHARE);
  assert_within (reframe->distance_m, camera->distance_m, 1e-9);
  lens_m = lr_vec3_length (lr_vec3_sub (camera->subject->eyes_m, camera->projection.eye_m));
  if (!isnan (c->lens_m))
    assert_within (lens_m, c->lens_m, SHARE);
}

/* What the kit cannot do, what the room cannot do, and what nothing can */
static void
test_background_refused (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrStudy) study = NULL, after = NULL;
  g_autoptr (LrReframe) kit = NULL, room = NULL, nothing = NULL;

  fixture_set (&plan, CAMERA_A, "down-pct", 0.26); /* off the limit between two names: the tilt changes a little with the distance */
  fixture_text (&plan, CAMERA_A, "lens", "lens-50");
  study = lr_study_new (plan);
  kit = lr_reframe_background (study, first_camera (study), 4.6, LR_UNITS_METRIC);
  g_test_message ("%s", kit->sentence);
  g_assert_false (kit->is_possible);
  g_assert_nonnull (kit->instead);
  after = study_of (kit->instead, plan);
  assert_within (first_camera (after)->field_w_m, first_camera (study)->field_w_m, 2.0 * SHARE);
  g_assert_cmpint (first_camera (after)->framing.shot, ==, first_camera (study)->framing.shot);

  room = lr_reframe_background (study, first_camera (study), first_camera (study)->field_w_m * 1.3, LR_UNITS_METRIC);
  g_test_message ("%s", room->sentence);
  g_assert_false (room->is_possible);
  g_assert_nonnull (strstr (room->sentence, "east wall"));

  nothing = lr_reframe_background (study, first_camera (study), 0.9 * first_camera (study)->field_w_m, LR_UNITS_METRIC);
  g_test_message ("%s", nothing->sentence);
  g_assert_false (nothing->is_possible);
  g_assert_null (nothing->instead);
}

/* What comes nearest shows nearest to what was asked, by the kit's own table of lenses: it is no further off than any other that
 * can stand, and when it is the lens that is on, nothing is offered */
static void
test_background_nearest (void)
{
  const double shares[] = { 1.5, 1.8, 2.1, 2.4, 2.7, 3.0 };

  for (gsize i = 0; i < G_N_ELEMENTS (shares); i++)
    {
      g_autoptr (LrPlan) plan = make_hall (3.0, LR_POSTURE_SEATED, "lens-50", 0.05);
      g_autoptr (LrStudy) study = NULL;
      g_autoptr (LrReframe) reframe = NULL;
      g_autoptr (GPtrArray) rows = NULL;
      double wanted_m, miss = HUGE_VAL;

      fixture_set (&plan, "person-1", "x-mm", 16.0);
      fixture_set (&plan, "camera-1", "x-mm", 13.0);
      study = lr_study_new (plan);
      wanted_m = shares[i] * first_camera (study)->field_w_m;
      reframe = lr_reframe_background (study, first_camera (study), wanted_m, LR_UNITS_METRIC);
      rows = lr_reframe_lenses (study, first_camera (study), LR_UNITS_METRIC);
      for (guint j = 0; j < rows->len; j++)
        {
          const LrReframe *row = g_ptr_array_index (rows, j);

          if (row->is_possible)
            miss = fmin (miss, fabs (log (row->behind_field_w_m / wanted_m)));
        }

      g_test_message ("%s", reframe->sentence);
      g_assert_false (reframe->is_possible);
      if (reframe->instead != NULL)
        {
          g_assert_false (reframe->instead->is_as_now);
          assert_near (fabs (log (reframe->instead->behind_field_w_m / wanted_m)), miss, 2.0 * SHARE);
        }
      else
        assert_near (fabs (log (first_camera (study)->behind_field_w_m / wanted_m)), miss, 2.0 * SHARE);
    }
}

static void
test_focus (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrStudy) study = lr_study_new (plan), behind = NULL;
  const LrCameraReading *camera = fixture_camera (study, CAMERA_B);
  g_autoptr (LrReframe) eyes = lr_reframe_focus (study, camera, WENNA, LR_UNITS_METRIC);
  g_autoptr (LrReframe) wall = lr_reframe_focus (study, camera, NULL, LR_UNITS_METRIC);
  g_autoptr (LrReframe) back = lr_reframe_focus (study, fixture_camera (study, CAMERA_A), CAMERA_A, LR_UNITS_METRIC);

  g_test_message ("%s\n%s\n%s", eyes->sentence, wall->sentence, back->sentence);
  g_assert_true (eyes->is_possible);
  g_assert_true (eyes->is_as_now);
  g_assert_true (wall->is_possible);
  behind = study_of (wall, plan);
  camera = fixture_camera (behind, CAMERA_B);
  assert_near (camera->focus_m, fixture_camera (study, CAMERA_B)->behind_m, 0.001);
  assert_near (camera->blur_m, 0.0, 1e-6);
  g_assert_cmpfloat (camera->sharp_near_m, <, camera->behind_m);
  g_assert_cmpfloat (camera->sharp_far_m, >, camera->behind_m);
  g_assert_false (back->is_possible);
  g_assert_true (lr_reframe_is_focused (behind, camera, NULL));
  g_assert_false (lr_reframe_is_focused (behind, camera, WENNA));
  g_assert_true (lr_reframe_is_focused (study, fixture_camera (study, CAMERA_B), WENNA));
}

/* Who sits beside the picture is not focused on: the plane through them would be sharp where nobody is */
static void
test_focus_beside (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrReframe) ines = lr_reframe_focus (study, fixture_camera (study, CAMERA_A), INES, LR_UNITS_METRIC);

  g_test_message ("%s", ines->sentence);
  g_assert_false (ines->is_possible);
  g_assert_nonnull (strstr (ines->sentence, "not in the picture"));
}

/* What is under the pointer stays under it: of a camera that aims and of one that does not */
static void
test_turn (void)
{
  for (int aims = 0; aims < 2; aims++)
    {
      g_autoptr (LrPlan) plan = make_hall (3.0, LR_POSTURE_SEATED, "", 0.05);
      g_autoptr (LrStudy) study = NULL, after = NULL;
      g_autoptr (LrReframe) turn = NULL;
      const LrCameraReading *camera;
      LrVec2 from;

      if (!aims)
        {
          fixture_text (&plan, "camera-1", "aims-at", "");
          fixture_set (&plan, "camera-1", "facing-deg", 0.1);
          fixture_set (&plan, "camera-1", "tilt-deg", -0.05);
        }
      study = lr_study_new (plan);
      camera = first_camera (study);
      from = lr_vec2 (camera->eyes_across, camera->eyes_down);
      turn = lr_reframe_turn (study, camera, from, lr_vec2 (from.x - 0.2, from.y - 0.15));
      after = study_of (turn, plan);
      assert_near (first_camera (after)->eyes_across, from.x - 0.2, aims ? 0.002 : 0.006); /* of a tenth of a degree */
      assert_near (first_camera (after)->eyes_down, from.y - 0.15, aims ? 0.002 : 0.006);
    }
}

/* Squeezed and upright pictures are framed by what they show */
static void
test_aspects (void)
{
  for (LrAspect aspect = LR_ASPECT_SENSOR; aspect <= LR_ASPECT_239; aspect++)
    for (double squeeze = 1.0; squeeze < 2.0; squeeze += 0.5)
      {
        g_autoptr (LrPlan) plan = make_hall (6.0, LR_POSTURE_SEATED, "", 0.05);
        g_autoptr (LrStudy) study = NULL;
        g_autoptr (LrReframe) reframe = NULL;

        fixture_set (&plan, "camera-1", "aspect", aspect);
        fixture_set (&plan, "camera-1", "squeeze", squeeze);
        study = lr_study_new (plan);
        reframe = lr_reframe_shot (study, first_camera (study), LR_SHOT_MEDIUM_CLOSE_UP, LR_REFRAME_BY_PLACE, LR_UNITS_METRIC);
        g_test_message ("%s", reframe->sentence);
        g_assert_true (reframe->is_possible);
        assert_framed (reframe, plan, LR_SHOT_MEDIUM_CLOSE_UP);
      }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reframe/sizes-by-place", test_sizes_by_place);
  g_test_add_func ("/reframe/sizes-by-lens", test_sizes_by_lens);
  g_test_add_func ("/reframe/zoom-end", test_zoom_end);
  g_test_add_func ("/reframe/prime", test_prime);
  g_test_add_func ("/reframe/wall-ends-it", test_wall_ends_it);
  add_rows ("/reframe/background", background_cases, test_background);
  g_test_add_func ("/reframe/background-refused", test_background_refused);
  g_test_add_func ("/reframe/background-nearest", test_background_nearest);
  g_test_add_func ("/reframe/aspects", test_aspects);
  g_test_add_func ("/reframe/focus", test_focus);
  g_test_add_func ("/reframe/focus-beside", test_focus_beside);
  g_test_add_func ("/reframe/turn", test_turn);

  return g_test_run ();
}
