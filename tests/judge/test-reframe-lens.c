/* test-reframe-lens.c - what the lenses of the kit can do: held framing, the wheel, converters, the table
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "hall.h"

typedef struct
{
  const char *name;
  double      focal_mm, distance_m, to_m; /* in, from the sensor plane */
  double      focal_then_mm;              /* expected */
} HoldCase;

/* Source: thin lens at constant magnification m: the distance from the sensor plane is f (1 + m)^2 / m, so f2 = f1 D2 / D1 */
static const HoldCase hold_cases[] = {
  { "35-mm-from-1.5-to-3-m", 35.0, 1.5, 3.0, 70.0 },
  { "50-mm-from-2-to-1.2-m", 50.0, 2.0, 1.2, 30.0 },
};

static void
test_hold (gconstpointer data)
{
  const HoldCase *c = data;
  g_autoptr (LrPlan) plan = make_hall (c->distance_m, LR_POSTURE_SEATED, "", 0.001 * c->focal_mm);
  g_autoptr (LrStudy) before = lr_study_new (plan), moved = NULL, after = NULL;
  g_autoptr (LrReframe) reframe = NULL;

  fixture_set (&plan, "camera-1", "x-mm", 1.0 + c->distance_m - c->to_m);
  moved = lr_study_new (plan);
  reframe = lr_reframe_hold (moved, "camera-1", lr_reframe_held_m (first_camera (before)), LR_UNITS_METRIC);
  g_test_message ("f2 = f1 D2 / D1: %s", reframe->sentence);
  g_assert_true (reframe->is_possible);
  assert_within (reframe->focal_m, 0.001 * c->focal_then_mm, SHARE);
  after = study_of (reframe, plan);
  assert_within (first_camera (after)->field_w_m, first_camera (before)->field_w_m, SHARE);
  assert_within (first_camera (after)->magnification, first_camera (before)->magnification, 2.0 * SHARE);
}

/* At the end of a zoom the value stays there and the sentence says so; a prime is changed for the nearest at hand */
static void
test_hold_ends (void)
{
  g_autoptr (LrPlan) plan = make_hall (2.0, LR_POSTURE_SEATED, "lens-50", 0.05);
  g_autoptr (LrStudy) before = lr_study_new (plan), moved = NULL, zoomed = NULL;
  g_autoptr (LrReframe) prime = NULL, zoom = NULL;

  fixture_set (&plan, "camera-1", "x-mm", 1.0 + 2.0 - 3.3);
  fixture_set (&plan, "person-1", "x-mm", 5.0);
  fixture_set (&plan, "camera-1", "x-mm", 5.0 - LR_EYES_AHEAD_M - 3.3);
  moved = lr_study_new (plan);
  prime = lr_reframe_hold (moved, "camera-1", lr_reframe_held_m (first_camera (before)), LR_UNITS_METRIC);
  g_test_message ("%s", prime->sentence);
  g_assert_cmpstr (prime->lens, ==, "lens-85");
  g_assert_nonnull (strstr (prime->sentence, "3 % larger")); /* 85 for 82.5 mm */

  make_zoom (&plan, 0.024, 0.070);
  zoomed = lr_study_new (plan);
  zoom = lr_reframe_hold (zoomed, "camera-1", lr_reframe_held_m (first_camera (before)), LR_UNITS_METRIC);
  g_test_message ("%s", zoom->sentence);
  g_assert_false (zoom->is_possible);
  g_assert_null (zoom->lens);
  assert_near (zoom->focal_m, 0.070, 1e-9);
  g_assert_nonnull (strstr (zoom->sentence, "the lens ends at 70"));
}

static void
test_wheel (void)
{
  g_autoptr (LrPlan) plan = make_hall (3.0, LR_POSTURE_SEATED, "lens-50", 0.05);
  g_autoptr (LrStudy) study = lr_study_new (plan), zoomed = NULL, after = NULL;
  g_autoptr (LrReframe) longer = lr_reframe_zoom (study, first_camera (study), 1.0, LR_UNITS_METRIC);
  g_autoptr (LrReframe) shorter = lr_reframe_zoom (study, first_camera (study), -1.0, LR_UNITS_METRIC);
  g_autoptr (LrReframe) zoom = NULL, end = NULL;

  g_assert_cmpstr (longer->lens, ==, "lens-85");
  g_assert_cmpstr (shorter->lens, ==, "lens-35");
  after = study_of (longer, plan);
  end = lr_reframe_zoom (after, first_camera (after), 1.0, LR_UNITS_METRIC);
  g_assert_false (end->is_possible);
  g_clear_pointer (&end, lr_reframe_free);

  make_zoom (&plan, 0.024, 0.0505);
  zoomed = lr_study_new (plan);
  zoom = lr_reframe_zoom (zoomed, first_camera (zoomed), -1.0, LR_UNITS_METRIC);
  g_assert_null (zoom->lens);
  g_assert_cmpfloat (zoom->focal_m, <, 0.05);
  end = lr_reframe_zoom (zoomed, first_camera (zoomed), 3.0, LR_UNITS_METRIC);
  assert_near (end->focal_m, 0.0505, 1e-9);
}

/* A zoom that is free in the kit goes on from a prime notch by notch, also from within its range */
static void
test_wheel_to_a_zoom (void)
{
  g_autoptr (LrPlan) plan = make_hall (3.0, LR_POSTURE_SEATED, "lens-85", 0.085);
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (LrReframe) longer = NULL, shorter = NULL;

  make_zoom (&plan, 0.024, 0.105);
  study = lr_study_new (plan);
  longer = lr_reframe_zoom (study, first_camera (study), 1.0, LR_UNITS_METRIC);
  g_test_message ("%s", longer->sentence);
  g_assert_true (longer->is_possible);
  g_assert_cmpstr (longer->lens, ==, "lens-50");
  g_assert_cmpfloat (longer->focal_m, >, 0.086);
  g_assert_cmpfloat (longer->focal_m, <, 0.092);

  shorter = lr_reframe_zoom (study, first_camera (study), -1.0, LR_UNITS_METRIC);
  g_assert_cmpstr (shorter->lens, ==, "lens-50");
  g_assert_cmpfloat (shorter->focal_m, <, 0.084);
  g_assert_cmpfloat (shorter->focal_m, >, 0.079);
}

/* No lens is shorter than a millimetre: to hold a field of 10 m from 20 cm is not said to be done */
static void
test_hold_without_lens (void)
{
  g_autoptr (LrPlan) plan = make_hall (18.0, LR_POSTURE_STANDING, "", 0.002);
  g_autoptr (LrStudy) before = lr_study_new (plan), moved = NULL;
  g_autoptr (LrReframe) held = NULL;

  fixture_set (&plan, "camera-1", "x-mm", 18.5);
  moved = lr_study_new (plan);
  held = lr_reframe_hold (moved, "camera-1", lr_reframe_held_m (first_camera (before)), LR_UNITS_METRIC);
  g_assert_nonnull (held);
  g_test_message ("%s", held->sentence);
  g_assert_false (held->is_possible);
}

/* An optic that doubles the focal length: the ring is set to half, and the camera stands where the effective length asks */
static void
test_converter (void)
{
  g_autoptr (LrPlan) plan = make_hall (3.0, LR_POSTURE_SEATED, "lens-50", 0.05);
  g_autoptr (LrStudy) plain = lr_study_new (plan), study = NULL, after = NULL;
  g_autoptr (LrReframe) without = lr_reframe_shot (plain, first_camera (plain), LR_SHOT_MEDIUM, LR_REFRAME_BY_PLACE, LR_UNITS_METRIC);
  g_autoptr (LrReframe) place = NULL, lens = NULL;

  make_zoom (&plan, 0.012, 0.060);
  ((LrItem *) lr_plan_find_kit (plan, "lens-50")->item)->lens.converter = 2.0;
  fixture_set (&plan, "camera-1", "focal-mm", 0.025);
  study = lr_study_new (plan);
  place = lr_reframe_shot (study, first_camera (study), LR_SHOT_MEDIUM, LR_REFRAME_BY_PLACE, LR_UNITS_METRIC);
  g_assert_true (place->is_possible);
  assert_within (place->distance_m, without->distance_m, SHARE);

  lens = lr_reframe_shot (study, first_camera (study), LR_SHOT_MEDIUM, LR_REFRAME_BY_LENS, LR_UNITS_METRIC);
  g_test_message ("%s", lens->sentence);
  g_assert_true (lens->is_possible);
  after = study_of (lens, plan);
  g_assert_cmpint (first_camera (after)->framing.shot, ==, LR_SHOT_MEDIUM);
  assert_within (first_camera (after)->focal_m, 2.0 * lens->focal_m, 1e-9);
  assert_within (first_camera (after)->focal_m, 0.05 * 3.0 / without->distance_m, 0.02); /* f2 = f1 D2 / D1, but for the tilt */
}

/* The table is what the plan then reads: the same field, for each lens its own distance, more of the wall through a shorter one */
static void
test_lenses (void)
{
  g_autoptr (LrPlan) plan = make_hall (3.0, LR_POSTURE_SEATED, "lens-50", 0.05);
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (GPtrArray) rows = lr_reframe_lenses (study, first_camera (study), LR_UNITS_METRIC);
  double behind_m = HUGE_VAL, distance_m = 0.0;

  g_assert_cmpuint (rows->len, ==, 3);
  for (guint i = 0; i < rows->len; i++)
    {
      const LrReframe *row = g_ptr_array_index (rows, i);
      g_autoptr (LrStudy) after = study_of (row, plan);

      g_test_message ("%s", row->sentence);
      g_assert_true (row->is_possible || row->distance_m > 3.5);
      assert_within (first_camera (after)->field_w_m, first_camera (study)->field_w_m, SHARE);
      assert_within (first_camera (after)->distance_m, row->distance_m, 1e-9);
      assert_within (row->distance_m / row->focal_m, 3.0 / 0.05, 2.0 * SHARE); /* f2 = f1 D2 / D1 */
      g_assert_cmpfloat (row->behind_field_w_m, <, behind_m);
      g_assert_cmpfloat (row->distance_m, >, distance_m);
      behind_m = row->behind_field_w_m;
      distance_m = row->distance_m;
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/reframe/hold", hold_cases, test_hold);
  g_test_add_func ("/reframe/hold-ends", test_hold_ends);
  g_test_add_func ("/reframe/lenses", test_lenses);
  g_test_add_func ("/reframe/converter", test_converter);
  g_test_add_func ("/reframe/wheel", test_wheel);
  g_test_add_func ("/reframe/wheel-to-a-zoom", test_wheel_to_a_zoom);
  g_test_add_func ("/reframe/hold-without-lens", test_hold_without_lens);

  return g_test_run ();
}
