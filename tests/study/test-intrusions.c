/* test-intrusions.c - what stands in a picture that should not
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How far a thing reaches in is recomputed with the homogeneous camera matrix P = K R [I | -C] (Hartley and Zisserman,
 * Multiple View Geometry, 2nd ed., chapter 6) from points all over the thing, and must agree within a thousandth of the frame.
 */

#include "frame_matrix.h"

#define THOUSANDTH 1e-3

/* A round bar with half balls for ends */
static void
note_bar (Reach                 *reach,
          const LrCameraReading *camera,
          LrVec3                 a,
          LrVec3                 b,
          double                 radius_m)
{
  for (int i = 0; i <= 400; i++)
    for (int j = 0; j < 24; j++)
      for (int k = 0; k < 12; k++)
        {
          double turn = 2.0 * LR_PI * j / 24, lift = LR_PI * (k / 11.0 - 0.5);
          LrVec3 out = { radius_m * cos (turn) * cos (lift), radius_m * sin (turn) * cos (lift), radius_m * sin (lift) };

          note (reach, camera, lr_vec3_add (lr_vec3_along (a, lr_vec3_sub (b, a), i / 400.0), out));
        }
}

static void
assert_reach (const LrIntrusion *intrusion,
              const Reach       *reach)
{
  g_assert_nonnull (intrusion);
  g_assert_false (intrusion->is_partly_hidden);
  assert_near (intrusion->reach[LR_BORDER_LEFT], reach->left, THOUSANDTH);
  assert_near (intrusion->reach[LR_BORDER_RIGHT], reach->right, THOUSANDTH);
  assert_near (intrusion->reach[LR_BORDER_TOP], reach->top, THOUSANDTH);
  assert_near (intrusion->reach[LR_BORDER_BOTTOM], reach->bottom, THOUSANDTH);
}

/* A capsule that hangs straight down from its tip: 19 cm long, 4 cm thick; its arm 10 cm over it */
static LrPlan *
boom_plan (double tip_height_m)
{
  LrPlan *plan = fixture_interview ();
  const char *id = fixture_add (&plan, LR_ITEM_MICROPHONE, LR_MIC_BOOM, 3.3, 4.9);

  fixture_set (&plan, id, "tip-x-mm", 3.3);
  fixture_set (&plan, id, "tip-y-mm", 2.95);
  fixture_set (&plan, id, "tip-height-mm", tip_height_m);
  return plan;
}

static void
test_boom (void)
{
  g_autoptr (LrPlan) plan = boom_plan (1.45), raised = NULL;
  g_autoptr (LrStudy) study = lr_study_new (plan), after = NULL;
  const LrIntrusion *intrusion = find (study, CAMERA_A, "microphone-1");
  Reach reach = { 0 };

  note_bar (&reach, fixture_camera (study, CAMERA_A), lr_vec3 (3.3, 2.95, 1.55), lr_vec3 (3.3, 2.95, 1.36), 0.020);
  assert_reach (intrusion, &reach);
  g_assert_cmpint (intrusion->edge, ==, LR_BORDER_TOP);
  g_assert_true (intrusion->is_cut);
  g_assert_cmpint (intrusion->part, ==, LR_INTRUDER_CAPSULE);

  /* raised by what it says it just leaves the frame */
  raised = boom_plan (1.45 + intrusion->move_m[LR_BORDER_TOP] + 0.002);
  after = lr_study_new (raised);
  intrusion = find (after, CAMERA_A, "microphone-1");
  g_assert_nonnull (intrusion);
  g_assert_cmpfloat (intrusion->clearance, >=, 0.0);
  g_assert_cmpfloat (intrusion->clearance, <, 0.006);
}

static void
test_clearance (void)
{
  g_autoptr (LrPlan) plan = boom_plan (1.60);
  g_autoptr (LrStudy) study = lr_study_new (plan);
  const LrIntrusion *intrusion = find (study, CAMERA_A, "microphone-1");
  LrVec2 lowest;

  g_assert_nonnull (intrusion);
  g_assert_true (see (fixture_camera (study, CAMERA_A), lr_vec3 (3.3, 2.95, 1.60 - 0.09 - 0.02), &lowest));
  assert_near (intrusion->clearance, -lowest.y, THOUSANDTH);
}

/* Its post, three legs and lamp, .3 m square, that looks along x; the lens sees the post's side */
static void
test_stand (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  const char *id = fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 1.4, 4.0);
  g_autoptr (LrStudy) study = NULL;
  const LrCameraReading *camera;
  double top_m, r;
  Reach reach = { 0 };

  study = lr_study_new (plan);
  camera = fixture_camera (study, CAMERA_A);
  top_m = lr_study_find_placed (study, id)->item->light.lamp_height_m;
  r = lr_study_find_placed (study, id)->item->light.stand_radius_m;
  note_bar (&reach, camera, lr_vec3 (1.4, 4.0, 0.3 * fmin (1.1 * r, 0.6 * (top_m - 0.05))), lr_vec3 (1.4, 4.0, top_m - 0.05), 0.015);
  for (int i = 0; i < 3; i++)
    {
      double a = LR_PI / 3.0 + i * 2.0 * LR_PI / 3.0;

      note_bar (&reach, camera, lr_vec3 (1.4, 4.0, fmin (1.1 * r, 0.6 * (top_m - 0.05))),
                lr_vec3 (1.4 + r * cos (a), 4.0 + r * sin (a), 0.02), 0.011);
    }
  for (int i = 0; i < 8; i++)
    note (&reach, camera, lr_vec3 (1.4 + (i & 1 ? 0.04 : -0.03), 4.0 + (i & 2 ? 0.15 : -0.15), top_m + (i & 4 ? 0.15 : -0.15)));
  assert_reach (find (study, CAMERA_A, id), &reach);
  g_assert_null (find (study, CAMERA_B, id));
}

/* Four corners, by the matrix; the share of the frame by the shoelace formula */
static void
test_window (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  const char *id = fixture_add (&plan, LR_ITEM_WINDOW, 0, 0.0, 3.7);
  g_autoptr (LrStudy) study = NULL, dark = NULL;
  const LrIntrusion *intrusion;
  const LrItem *item;
  LrVec2 corner[4];
  double share = 0.0;
  Reach reach = { 0 };

  fixture_set (&plan, id, "width-mm", 0.4);
  fixture_set (&plan, id, "sill-mm", 1.3);
  fixture_set (&plan, id, "head-mm", 1.7);
  study = lr_study_new (plan);
  item = lr_study_find_placed (study, id)->item;
  intrusion = find (study, CAMERA_A, id);
  for (int i = 0; i < 4; i++) /* round it */
    {
      LrVec3 corner_m = { 0.0, 6.0 - item->along_m - (i == 1 || i == 2 ? 0.4 : 0.0), i >= 2 ? 1.7 : 1.3 };

      note (&reach, fixture_camera (study, CAMERA_A), corner_m);
      g_assert_true (see (fixture_camera (study, CAMERA_A), corner_m, &corner[i]));
    }
  for (int i = 0; i < 4; i++)
    share += 0.5 * (corner[i].x * corner[(i + 1) % 4].y - corner[i].y * corner[(i + 1) % 4].x);
  assert_reach (intrusion, &reach);
  assert_within (intrusion->share, fabs (share), 1e-6);
  g_assert_false (intrusion->is_cut);

  fixture_set (&plan, id, "blind", LR_BLIND_DOWN);
  dark = lr_study_new (plan);
  g_assert_null (find (dark, CAMERA_A, id));
}

typedef struct
{
  const char *name;
  LrItemKind  kind;
  int         form;
  double      x_m, y_m;
  gboolean    is_found; /* in A */
  double      focal_m;  /* of A; 0: 50 mm */
  struct { const char *key; double value; } set[3];
} PlaceCase;

/* Source: by hand, on the sheet: A at (5.6, 3.2) looks at Wenna at (3, 3) and sees 19.8° to either side */
static const PlaceCase place_cases[] = {
  { "behind-the-lens", LR_ITEM_LIGHT, LR_LIGHT_PANEL, 7.0, 3.2, FALSE, 0, { { 0 } } },
  { "beside-the-frame", LR_ITEM_LIGHT, LR_LIGHT_PANEL, 3.6, 1.0, FALSE, 0, { { 0 } } },
  { "beside-the-subject", LR_ITEM_LIGHT, LR_LIGHT_PANEL, 2.6, 3.7, TRUE, 0, { { 0 } } },
  { "before-the-wall-behind-the-person", LR_ITEM_LIGHT, LR_LIGHT_POINT, 2.3, 2.95, FALSE, 0.085,
    { { "lamp-height-mm", 0.85 }, { "stand-radius-mm", 0.0 }, { "beam-deg", 0.1 } } },
  { "the-same-with-its-lamp-over-the-head", LR_ITEM_LIGHT, LR_LIGHT_POINT, 2.3, 2.95, TRUE, 0.085,
    { { "lamp-height-mm", 1.5 }, { "stand-radius-mm", 0.0 }, { "beam-deg", 0.1 } } },
  { "reflector", LR_ITEM_PANEL, LR_PANEL_REFLECTOR, 2.2, 4.0, TRUE, 0, { { 0 } } },
  { "backdrop", LR_ITEM_PANEL, LR_PANEL_BACKDROP, 1.0, 2.9, FALSE, 0, { { 0 } } },
  { "lavalier", LR_ITEM_MICROPHONE, LR_MIC_LAVALIER, 3.0, 3.0, FALSE, 0, { { 0 } } },
  { "cabinet-behind", LR_ITEM_FURNITURE, LR_FURNITURE_CABINET, 1.0, 3.0, FALSE, 0, { { 0 } } },
  { "chair-that-she-sits-on", LR_ITEM_FURNITURE, LR_FURNITURE_CHAIR, 3.0, 3.0, FALSE, 0, { { 0 } } },
  { "table-beside-her", LR_ITEM_FURNITURE, LR_FURNITURE_TABLE, 3.2, 4.6, FALSE, 0, { { 0 } } },
  { "box-before-her", LR_ITEM_FURNITURE, LR_FURNITURE_BOX, 4.0, 3.1, TRUE, 0, { { "height-mm", 1.2 } } },
};

static void
test_place (gconstpointer data)
{
  const PlaceCase *c = data;
  g_autoptr (LrPlan) plan = fixture_interview ();
  const char *id = fixture_add (&plan, c->kind, c->form, c->x_m, c->y_m);
  g_autoptr (LrStudy) study = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (c->set) && c->set[i].key != NULL; i++)
    fixture_set (&plan, id, c->set[i].key, c->set[i].value);
  if (c->focal_m > 0.0)
    fixture_set (&plan, CAMERA_A, "focal-mm", c->focal_m);
  study = lr_study_new (plan);
  g_assert_cmpint (find (study, CAMERA_A, id) != NULL, ==, c->is_found);
}

/* The arm goes from behind the lens over it into the picture: every figure is one, every outline inside */
static void
test_across_the_lens (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  const char *id = fixture_add (&plan, LR_ITEM_MICROPHONE, LR_MIC_BOOM, 6.6, 3.3);
  g_autoptr (LrStudy) study = NULL;
  const LrIntrusion *intrusion;

  fixture_set (&plan, id, "tip-x-mm", 3.4);
  fixture_set (&plan, id, "tip-y-mm", 3.0);
  fixture_set (&plan, id, "tip-height-mm", 1.30);
  study = lr_study_new (plan);
  intrusion = find (study, CAMERA_A, id);
  g_assert_nonnull (intrusion);
  g_assert_cmpuint (intrusion->n_outlines, >=, 2);
  for (LrFrameBorder edge = 0; edge < LR_N_BORDERS; edge++)
    {
      g_assert_cmpfloat (intrusion->reach[edge], >, 0.0);
      g_assert_cmpfloat (intrusion->reach[edge], <=, 1.0);
      g_assert_true (isfinite (intrusion->move_m[edge]));
    }
  for (guint i = 0; i < intrusion->n_outlines; i++)
    {
      guint n;
      const LrVec2 *corner = lr_study_outline (study, intrusion, i, &n);

      g_assert_cmpuint (n, >=, 3);
      for (guint j = 0; j < n; j++)
        g_assert_true (corner[j].x >= 0.0 && corner[j].x <= 1.0 && corner[j].y >= 0.0 && corner[j].y <= 1.0);
    }
}

/* A box whose side lies in the upright plane through the lens and the middle of the head covers half of it */
static void
test_half_face (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  const char *id = fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_BOX, 4.3, 3.3);
  g_autoptr (LrStudy) study = NULL;
  const LrIntrusion *intrusion;

  fixture_set (&plan, CAMERA_A, "y-mm", 3.0);
  fixture_set (&plan, INES, "y-mm", 1.9);
  fixture_set (&plan, id, "length-mm", 0.4);
  fixture_set (&plan, id, "width-mm", 0.6);
  fixture_set (&plan, id, "height-mm", 1.6);
  study = lr_study_new (plan);
  intrusion = find (study, CAMERA_A, id);
  g_assert_nonnull (intrusion);
  assert_near (intrusion->face_share, 0.5, 0.07);
  g_assert_true (intrusion->is_nearer);
}

/* Where the study of a trial says nothing is seen, the study of the plan sees nothing */
static void
test_trial (void)
{
  int n_clear = 0, n_seen = 0;

  for (int i = 0; i < 200; i++)
    {
      g_autoptr (LrPlan) plan = fixture_interview ();
      const char *id = fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_WIDE, g_test_rand_double_range (0.5, 7.5),
                                    g_test_rand_double_range (0.5, 5.5));
      g_autoptr (LrStudy) study = lr_study_new (plan);
      gboolean would = lr_study_would_intrude (study, lr_study_find_placed (study, id)->item, 0.0);
      gboolean does = find (study, CAMERA_A, id) != NULL || find (study, CAMERA_B, id) != NULL;

      g_assert_true (would || !does);
      n_clear += !would;
      n_seen += does;
    }
  g_assert_cmpint (n_clear, >, 10);
  g_assert_cmpint (n_seen, >, 10);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/intrusions/boom", test_boom);
  g_test_add_func ("/intrusions/clearance", test_clearance);
  g_test_add_func ("/intrusions/stand", test_stand);
  g_test_add_func ("/intrusions/window", test_window);
  g_test_add_func ("/intrusions/across-the-lens", test_across_the_lens);
  g_test_add_func ("/intrusions/half-face", test_half_face);
  g_test_add_func ("/intrusions/trial", test_trial);
  add_rows ("/intrusions/place", place_cases, test_place);
  return g_test_run ();
}
