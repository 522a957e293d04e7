/* test-background.c - what stands behind the subject
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The lens is at (1, 3), looks level along +x at eyes 2 m before it, and a wall is 3 m behind them: positions in
 * millimetres, so to 0.1 %.
 */

#include "fixture.h"

/* v = 51.282 mm: thin lens, 50 mm, s = 2 m */
#define V_M 0.051

static LrPlan *
make_axis (double depth_m)
{
  LrPlan *plan = fixture_room (6.0, depth_m, 2.7);
  const char *person = fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 3.0 + LR_EYES_AHEAD_M, 3.0);
  const char *camera = fixture_add (&plan, LR_ITEM_CAMERA, 0, 1.0 - V_M, 3.0);

  fixture_set (&plan, person, "facing-deg", LR_PI);
  fixture_set (&plan, person, "eye-height-mm", 1.2);
  fixture_set (&plan, camera, "lens-height-mm", 1.2);
  fixture_set (&plan, camera, "down-pct", 0.5);
  fixture_text (&plan, camera, "aims-at", person);
  return plan;
}

static void
test_wall (void)
{
  g_autoptr (LrPlan) plan = make_axis (6.0);
  g_autoptr (LrStudy) study = lr_study_new (plan);
  const LrCameraReading *camera = fixture_camera (study, "camera-1");

  g_test_message ("thin lens: 50 mm, s 2 m: field 1.404 m; similar triangles: x 5/2 and 2/5; blur at f/2.8 of a point at "
                  "5 m: 0.2747 mm, 0.763 %% of 36 mm: by hand");
  g_assert_cmpint (camera->behind, ==, LR_BEHIND_WALL);
  g_assert_cmpint (camera->behind_wall, ==, 1);
  g_assert_null (camera->behind_item);
  assert_within (camera->field_w_m, 1.404, 1e-3);
  assert_within (camera->separation_m, 3.0, 1e-3);
  assert_within (camera->behind_m, 5.051, 1e-3);
  assert_within (camera->behind_field_w_m, 3.510, 1e-3);
  assert_within (camera->size_ratio, 0.400, 1e-3);
  assert_within (camera->blur_m, 0.2747e-3, 2e-3);
  assert_within (camera->blur_share, 0.00763, 2e-3);
  assert_near (camera->behind_at_m.x, 6.0, 1e-6);
  assert_near (camera->behind_at_m.z, 1.2, 1e-3);
}

typedef struct
{
  const char *name;
  LrItemKind  kind;
  int         form;
  double      x_m;             /* in: at y 3 */
  const char *low_key, *high_key;
  double      low_m, high_m;   /* 0: as it is */
  gboolean    is_hit;          /* expected */
  double      separation_m;    /* by hand: the near face, from eyes at x 3 */
} ThingCase;

/* Furniture in its usual size turned so that its depth lies along x */
static const ThingCase thing_cases[] = {
  { "table-is-too-low", LR_ITEM_FURNITURE, LR_FURNITURE_TABLE, 5.0, NULL, "height-mm", 0, 0.74, FALSE, 3.0 },
  { "cabinet", LR_ITEM_FURNITURE, LR_FURNITURE_BOX, 5.0, NULL, "height-mm", 0, 2.0, TRUE, 1.5 },
  { "picture", LR_ITEM_FURNITURE, LR_FURNITURE_BOX, 5.0, "bottom-mm", "height-mm", 1.0, 1.6, TRUE, 1.5 },
  { "shelf-over-the-axis", LR_ITEM_FURNITURE, LR_FURNITURE_BOX, 5.0, "bottom-mm", "height-mm", 1.5, 1.8, FALSE, 3.0 },
  { "before-the-subject", LR_ITEM_FURNITURE, LR_FURNITURE_BOX, 2.0, NULL, "height-mm", 0, 2.0, FALSE, 3.0 },
  { "backdrop", LR_ITEM_PANEL, LR_PANEL_BACKDROP, 4.5, NULL, NULL, 0, 0, TRUE, 1.48 },
  { "reflector-over-the-axis", LR_ITEM_PANEL, LR_PANEL_REFLECTOR, 4.5, "bottom-mm", NULL, 1.3, 0, FALSE, 3.0 },
  { "light-is-too-thin", LR_ITEM_LIGHT, LR_LIGHT_PANEL, 4.5, NULL, NULL, 0, 0, FALSE, 3.0 },
  { "another-person", LR_ITEM_PERSON, LR_ROLE_OTHER, 5.0, "eye-height-mm", NULL, 1.25, 0, TRUE, 1.75 },
};

static void
test_thing (gconstpointer data)
{
  const ThingCase *c = data;
  g_autoptr (LrPlan) plan = make_axis (6.0);
  g_autoptr (LrStudy) study = NULL;
  const LrCameraReading *camera;
  const char *id = fixture_add (&plan, c->kind, c->form, c->x_m, 3.0);

  if (c->kind == LR_ITEM_FURNITURE)
    {
      fixture_set (&plan, id, "length-mm", 1.0);
      fixture_set (&plan, id, "width-mm", 1.0);
    }
  if (c->high_key != NULL)
    fixture_set (&plan, id, c->high_key, c->high_m);
  if (c->low_key != NULL)
    fixture_set (&plan, id, c->low_key, c->low_m);
  study = lr_study_new (plan);
  camera = fixture_camera (study, "camera-1");
  g_assert_cmpint (camera->behind, ==, c->is_hit ? LR_BEHIND_ITEM : LR_BEHIND_WALL);
  if (c->is_hit)
    g_assert_cmpstr (camera->behind_item->item->id, ==, id);
  assert_near (camera->separation_m, c->separation_m, 0.002);
}

/* The wall behind is 3 m off, but the room has a corner that stands in the way at x 5 */
static void
test_concave (void)
{
  static const LrVec2 corners_m[] = { { 0, 0 }, { 6, 0 }, { 6, 2 }, { 5, 2 }, { 5, 6 }, { 0, 6 } };
  g_autoptr (LrPlan) whole = make_axis (6.0);
  g_autoptr (LrPlan) plan = lr_plan_set_corners (whole, corners_m, G_N_ELEMENTS (corners_m), NULL);
  g_autoptr (LrStudy) study = lr_study_new (plan);

  g_assert_cmpint (fixture_camera (study, "camera-1")->behind, ==, LR_BEHIND_WALL);
  g_assert_cmpint (fixture_camera (study, "camera-1")->behind_wall, ==, 3);
  assert_near (fixture_camera (study, "camera-1")->separation_m, 2.0, 0.002);
}

/* A window in the wall behind is named; beside it the wall is */
static void
test_window (void)
{
  g_autoptr (LrPlan) plan = make_axis (6.0);
  g_autoptr (LrStudy) study = NULL, aside = NULL;
  const char *id = fixture_add (&plan, LR_ITEM_WINDOW, 0, 6.0, 3.0);

  study = lr_study_new (plan);
  g_assert_cmpint (fixture_camera (study, "camera-1")->behind, ==, LR_BEHIND_ITEM);
  g_assert_cmpstr (fixture_camera (study, "camera-1")->behind_item->item->id, ==, id);

  fixture_set (&plan, id, "sill-mm", 1.3);
  aside = lr_study_new (plan);
  g_assert_cmpint (fixture_camera (aside, "camera-1")->behind, ==, LR_BEHIND_WALL);
}

typedef struct
{
  const char *name;
  double      tilt_deg;
  LrBehind    behind;     /* expected */
  double      at_x_m;     /* by hand: the lens at (1, 3, 1.2) under a ceiling of 2.7 m */
} SteepCase;

static const SteepCase steep_cases[] = {
  { "floor", -17.0, LR_BEHIND_FLOOR, 1.0 + 1.2 / 0.305731 },
  { "ceiling", 20.0, LR_BEHIND_CEILING, 1.0 + 1.5 / 0.363970 },
  { "wall", -10.0, LR_BEHIND_WALL, 6.0 },
};

static void
test_steep (gconstpointer data)
{
  const SteepCase *c = data;
  g_autoptr (LrPlan) plan = make_axis (6.0);
  g_autoptr (LrStudy) study = NULL;

  g_test_message ("tan 17 = 0.305731, tan 20 = 0.363970");
  fixture_text (&plan, "camera-1", "aims-at", "");
  fixture_set (&plan, "camera-1", "facing-deg", 0.0);
  fixture_set (&plan, "camera-1", "tilt-deg", c->tilt_deg * LR_DEG);
  study = lr_study_new (plan);
  g_assert_cmpint (fixture_camera (study, "camera-1")->behind, ==, c->behind);
  assert_near (fixture_camera (study, "camera-1")->behind_at_m.x, c->at_x_m, 0.005);
}

/* Ws 0.94, Wb 2.0, B 2 ask for 1.774 m from the lens: similar triangles by hand; and what is asked for comes out */
static void
test_refit (void)
{
  LrCameraReading camera = { 0 };
  LrItem *item = lr_item_new (LR_ITEM_CAMERA, "c");
  LrRefit refit;
  double field_m, distance_m;

  camera.item = item;
  camera.has_subject = TRUE;
  camera.area.width_m = 0.036;
  camera.field_w_m = 0.94;
  camera.separation_m = 2.0;
  camera.distance_m = camera.eyes_depth_m = 3.0; /* eyes on the axis */
  g_assert_true (lr_camera_refit (&camera, 2.0, &refit));
  assert_near (refit.distance_m - refit.focal_m * (1.0 + 0.036 / 0.94), 1.774, 0.001);
  g_assert_true (lr_camera_behind_with_focal (&camera, refit.focal_m, &field_m, &distance_m));
  assert_near (field_m, 2.0, 1e-9);
  assert_near (distance_m, refit.distance_m, 1e-9);
  g_assert_false (lr_camera_refit (&camera, 0.9, &refit));
  lr_item_unref (item);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/background/wall", test_wall);
  add_rows ("/background/thing", thing_cases, test_thing);
  g_test_add_func ("/background/concave", test_concave);
  g_test_add_func ("/background/window", test_window);
  add_rows ("/background/steep", steep_cases, test_steep);
  g_test_add_func ("/background/refit", test_refit);

  return g_test_run ();
}
