/* test-pairs.c - two cameras on one person
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "fixture.h"

typedef struct
{
  const char *name;
  LrVec2      b_m;        /* in: heads of subject (0, 0) and interviewer (0.5, 2.0), camera A (0, 2.2) */
  LrSide      side;       /* expected, of B; A's is left */
  double      angle_deg;
} LayoutCase;

/* Source: cross products and atan2 of the coordinates, by hand */
static const LayoutCase layout_cases[] = {
  { "same-side", { -1.4, 1.6 }, LR_SIDE_LEFT, 41.19 },
  { "line-crossed", { 1.6, 1.4 }, LR_SIDE_RIGHT, 48.81 },
  { "too-near", { -0.8, 2.1 }, LR_SIDE_LEFT, 20.85 },
};

static LrPlan *
make_layout (LrVec2 b_m)
{
  LrPlan *plan = fixture_empty ();
  const char *subject = fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 0.0, 0.0);
  const char *interviewer = fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_INTERVIEWER, 0.5, 2.0);

  fixture_text (&plan, subject, "looks-at", interviewer);
  fixture_text (&plan, interviewer, "looks-at", subject);
  fixture_text (&plan, fixture_add (&plan, LR_ITEM_CAMERA, 0, 0.0, 2.2), "aims-at", subject);
  fixture_text (&plan, fixture_add (&plan, LR_ITEM_CAMERA, 0, b_m.x, b_m.y), "aims-at", subject);
  return plan;
}

static void
test_layout (gconstpointer data)
{
  const LayoutCase *c = data;
  g_autoptr (LrPlan) plan = make_layout (c->b_m);
  g_autoptr (LrStudy) study = lr_study_new (plan);
  const LrPairReading *pair = &g_array_index (study->pairs, LrPairReading, 0);

  g_assert_cmpuint (study->pairs->len, ==, 1);
  g_assert_true (pair->a->is_main);
  g_assert_cmpint (pair->a->side, ==, LR_SIDE_LEFT);
  g_assert_cmpint (pair->b->side, ==, c->side);
  g_assert_cmpint (pair->is_same_side, ==, c->side == LR_SIDE_LEFT);
  assert_near (pair->angle_rad / LR_DEG, c->angle_deg, 0.01);
  g_assert_cmpint (pair->is_same_look, ==, c->side == LR_SIDE_LEFT);
  g_assert_cmpuint (study->reverses->len, ==, 0);
}

/* The interviewer's own camera stands on the same side of the same line, and makes no pair with the subject's */
static void
test_reverse (void)
{
  g_autoptr (LrPlan) plan = make_layout (lr_vec2 (-1.4, 0.3));
  g_autoptr (LrStudy) study = NULL;

  fixture_text (&plan, "camera-2", "aims-at", "person-2");
  study = lr_study_new (plan);
  g_assert_cmpuint (study->pairs->len, ==, 0);
  g_assert_true (fixture_camera (study, "camera-2")->is_on_study_line);
  g_assert_cmpint (fixture_camera (study, "camera-2")->side, ==, LR_SIDE_LEFT);
}

/* Mirrored about the middle of the line of action, by hand: with the heads of (0, 0) and (0, 2) and the cameras at (-0.6, 2.2) and
 * (-0.6, -0.2), both looks pass their lenses by the same angle, one to the left of its frame and one to the right. With one
 * lens 0.2 m higher, 2.0 m away in plan from the eyes (0.08 m ahead of the head, hypot (0.6, 2.12) = 2.203 m): atan (0.2 / 2.203)
 * is 5.19 degrees, less what the image distance takes */
static void
test_mirrored (void)
{
  g_autoptr (LrPlan) plan = make_layout (lr_vec2 (-0.6, -0.2));
  g_autoptr (LrStudy) study = NULL, raised = NULL;
  const LrReverseReading *reverse;

  fixture_move (&plan, "person-2", 0.0, 2.0);
  fixture_move (&plan, "camera-1", -0.6, 2.2);
  fixture_text (&plan, "camera-2", "aims-at", "person-2");
  fixture_set (&plan, "person-1", "eye-height-mm", 1.2);
  fixture_set (&plan, "person-2", "eye-height-mm", 1.2);
  fixture_set (&plan, "camera-1", "lens-height-mm", 1.2);
  fixture_set (&plan, "camera-2", "lens-height-mm", 1.2);
  study = lr_study_new (plan);
  g_assert_cmpuint (study->pairs->len, ==, 0);
  g_assert_cmpuint (study->reverses->len, ==, 1);
  reverse = &g_array_index (study->reverses, LrReverseReading, 0);
  g_assert_true (reverse->is_opposed);
  assert_near (reverse->gaze_step_rad, 0.0, 1e-9);
  assert_near (reverse->gaze_up_step_rad, 0.0, 1e-9);
  assert_near (reverse->size_ratio, 1.0, 1e-9);

  fixture_set (&plan, "camera-2", "lens-height-mm", 1.4);
  raised = lr_study_new (plan);
  reverse = &g_array_index (raised->reverses, LrReverseReading, 0);
  assert_near (reverse->gaze_up_step_rad / LR_DEG, -5.19, 0.15);

  /* On the other side of the line both look left */
  fixture_move (&plan, "camera-2", 0.6, -0.2);
  lr_study_free (g_steal_pointer (&raised));
  raised = lr_study_new (plan);
  g_assert_false (g_array_index (raised->reverses, LrReverseReading, 0).is_opposed);
}

/* The sizes of heads go with the heights of the fields: 85 mm against 50 mm from the same place is 1.7 but for the closeness
 * of focus, 1 + m, which changes it by under 2 % */
static void
test_sizes (void)
{
  g_autoptr (LrPlan) plan = make_layout (lr_vec2 (0.0, 2.2));
  g_autoptr (LrStudy) study = NULL;
  const LrPairReading *pair;

  fixture_set (&plan, "camera-2", "focal-mm", 0.085);
  study = lr_study_new (plan);
  pair = &g_array_index (study->pairs, LrPairReading, 0);
  assert_within (pair->size_ratio, 1.7, 0.04);
  assert_near (pair->angle_rad, 0.0, 1e-9);
  g_assert_cmpint (pair->steps, ==, 1);
}

/* Nobody to look at: no line, no gaze, but still an angle between the cameras */
static void
test_no_partner (void)
{
  g_autoptr (LrPlan) plan = make_layout (lr_vec2 (-1.4, 1.6));
  g_autoptr (LrPlan) alone = lr_plan_remove (plan, "person-2", NULL);
  g_autoptr (LrStudy) study = lr_study_new (alone);

  g_assert_false (study->has_line);
  g_assert_false (fixture_camera (study, "camera-1")->is_looking);
  g_assert_true (isnan (fixture_camera (study, "camera-1")->gaze_rad));
  g_assert_cmpint (fixture_camera (study, "camera-1")->side, ==, LR_SIDE_ON_LINE);
  assert_near (g_array_index (study->pairs, LrPairReading, 0).angle_rad / LR_DEG, 41.19, 0.01);
}

/* Along its path: 3, 4 and 5 m */
static void
test_leads (void)
{
  g_autoptr (LrPlan) plan = fixture_room (8.0, 8.0, 2.5);
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (LrItem) lead = lr_item_new (LR_ITEM_LEAD, "lead");
  static const LrVec2 path_m[] = { { 1.0, 1.0 }, { 4.0, 1.0 }, { 4.0, 5.0 }, { 1.0, 1.0 } };
  LrPlan *next;

  lead->n_path = G_N_ELEMENTS (path_m);
  lead->path_m = g_memdup2 (path_m, sizeof path_m);
  next = lr_plan_add (plan, lead, path_m[0], 0.0, NULL, NULL);
  g_assert_nonnull (next);
  study = lr_study_new (next);
  g_assert_cmpuint (study->leads->len, ==, 1);
  assert_near (g_array_index (study->leads, LrLeadReading, 0).length_m, 12.0, 1e-9);
  lr_plan_unref (next);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/pairs/layout", layout_cases, test_layout);
  g_test_add_func ("/pairs/reverse", test_reverse);
  g_test_add_func ("/pairs/mirrored", test_mirrored);
  g_test_add_func ("/pairs/sizes", test_sizes);
  g_test_add_func ("/pairs/no-partner", test_no_partner);
  g_test_add_func ("/pairs/leads", test_leads);

  return g_test_run ();
}
