/* test-placed.c - where things stand and what room they take
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "fixture.h"

typedef struct
{
  const char *name;
  LrPosture   posture;
  double      stature_m, seat_m, measured_m; /* in */
  double      eyes_m, tolerance_m;           /* expected */
  const char *source;
} EyesCase;

static const EyesCase eyes_cases[] = {
  { "woman-p50-seated", LR_POSTURE_SEATED, 1.626, 0.45, 0.0, 1.198, 0.003,
    "ANSUR II, women p50: eye height sitting 748 mm above the seat" },
  { "man-p50-seated", LR_POSTURE_SEATED, 1.755, 0.45, 0.0, 1.254, 0.003,
    "ANSUR II, men p50: eye height sitting 804 mm above the seat" },
  { "standing", LR_POSTURE_STANDING, 1.755, 0.45, 0.0, 1.6427, 0.0005, "Winter, figure 4.1: 0.936 of stature" },
  { "measured", LR_POSTURE_SEATED, 1.7, 0.45, 1.234, 1.234, 1e-9, "as measured" },
};

static void
test_eyes (gconstpointer data)
{
  const EyesCase *c = data;
  g_autoptr (LrPlan) plan = fixture_empty ();
  g_autoptr (LrStudy) study = NULL;
  const char *id = fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 1.0, 2.0);

  g_test_message ("%s", c->source);
  fixture_set (&plan, id, "posture", c->posture);
  fixture_set (&plan, id, "stature-mm", c->stature_m);
  fixture_set (&plan, id, "seat-height-mm", c->seat_m);
  fixture_set (&plan, id, "facing-deg", LR_PI / 2);
  if (c->measured_m > 0.0)
    fixture_set (&plan, id, "eye-height-mm", c->measured_m);
  study = lr_study_new (plan);
  assert_near (study->subject->eyes_m.z, c->eyes_m, c->tolerance_m);
  assert_near (study->subject->eyes_m.x, 1.0, 1e-9);
  assert_near (study->subject->eyes_m.y, 2.0 + LR_EYES_AHEAD_M, 1e-9);
  assert_near (study->subject->point_m.z, study->subject->eyes_m.z, 1e-12);
}

typedef struct
{
  const char *name;
  LrItemKind  kind;
  int         form;
  double      facing_deg;
  gboolean    has_footprint; /* expected: at (2, 3) in the item's usual size */
  LrVec2      inside_m, outside_m;
} FootprintCase;

/* Source: our drawn symbols: seated -.29 .. +.63 by +-.26 about the head; tripod r .48; the sizes of the kinds' tables */
static const FootprintCase footprint_cases[] = {
  { "seated-legs", LR_ITEM_PERSON, LR_ROLE_SUBJECT, 0.0, TRUE, { 2.62, 3.25 }, { 2.64, 3.0 } },
  { "seated-back", LR_ITEM_PERSON, LR_ROLE_SUBJECT, 90.0, TRUE, { 1.75, 2.72 }, { 2.0, 2.70 } },
  { "tripod", LR_ITEM_CAMERA, 0, 0.0, TRUE, { 2.33, 3.33 }, { 2.35, 3.35 } },
  { "backdrop", LR_ITEM_PANEL, LR_PANEL_BACKDROP, 0.0, TRUE, { 2.34, 3.45 }, { 2.36, 3.0 } },
  { "lavalier", LR_ITEM_MICROPHONE, LR_MIC_LAVALIER, 0.0, FALSE, { 0, 0 }, { 2.0, 3.0 } },
  { "house-light", LR_ITEM_HOUSE_LIGHT, 0, 0.0, FALSE, { 0, 0 }, { 2.0, 3.0 } },
  { "noise", LR_ITEM_NOISE, 0, 0.0, FALSE, { 0, 0 }, { 2.0, 3.0 } },
};

static void
test_footprint (gconstpointer data)
{
  const FootprintCase *c = data;
  g_autoptr (LrPlan) plan = fixture_empty ();
  g_autoptr (LrStudy) study = NULL;
  const LrPlaced *placed;
  const char *id = fixture_add (&plan, c->kind, c->form, 2.0, 3.0);

  fixture_set (&plan, id, "facing-deg", c->facing_deg * LR_DEG);
  study = lr_study_new (plan);
  placed = lr_study_find_placed (study, id);
  g_assert_cmpint (placed->has_footprint, ==, c->has_footprint);
  if (c->has_footprint)
    g_assert_true (lr_outline_contains (&placed->footprint, c->inside_m));
  g_assert_false (placed->has_footprint && lr_outline_contains (&placed->footprint, c->outside_m));
}

static double
facing_deg (const LrStudy *study,
            const char    *id)
{
  return lr_study_find_placed (study, id)->facing_rad / LR_DEG;
}

/* Who looks or aims at something turns to it: directions by hand */
static void
test_facing (void)
{
  g_autoptr (LrPlan) plan = fixture_empty ();
  g_autoptr (LrStudy) study = NULL;
  const char *a = fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 0.0, 0.0);
  const char *b = fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_INTERVIEWER, 2.0, 2.0);
  const char *light = fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_WIDE, -2.0 + 0.08 * M_SQRT1_2, 0.08 * M_SQRT1_2);
  const char *boom = fixture_add (&plan, LR_ITEM_MICROPHONE, LR_MIC_BOOM, 1.0, 1.0);
  const char *worn = fixture_add (&plan, LR_ITEM_MICROPHONE, LR_MIC_LAVALIER, 9.0, 9.0);

  fixture_text (&plan, a, "looks-at", b);
  fixture_set (&plan, b, "facing-deg", 30.0 * LR_DEG);
  fixture_text (&plan, light, "aims-at", a);
  fixture_set (&plan, boom, "tip-x-mm", 1.0);
  fixture_set (&plan, boom, "tip-y-mm", 0.0);
  fixture_text (&plan, worn, "worn-by", a);
  study = lr_study_new (plan);
  assert_near (facing_deg (study, a), 45.0, 1e-9);
  assert_near (facing_deg (study, b), 30.0, 1e-9);
  assert_near (facing_deg (study, light), 0.0, 0.05);
  assert_near (facing_deg (study, boom), -90.0, 1e-9);
  assert_near (facing_deg (study, worn), 45.0, 1e-9);
  assert_near (lr_vec2_distance (lr_vec3_flat (lr_study_find_placed (study, worn)->point_m), lr_vec2 (0, 0)), 0.115, 1e-9);
}

/* The look decides who stands at the other end of the line */
static void
test_partner (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrStudy) study = lr_study_new (plan), turned = NULL, alone = NULL;
  const char *other = fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_OTHER, 4.0, 1.0);

  g_assert_cmpstr (study->interviewer->item->id, ==, INES);
  g_assert_true (study->has_line);

  fixture_text (&plan, WENNA, "looks-at", other);
  turned = lr_study_new (plan);
  g_assert_cmpstr (turned->interviewer->item->id, ==, other);

  fixture_text (&plan, WENNA, "looks-at", "");
  alone = lr_study_new (plan);
  g_assert_cmpstr (alone->interviewer->item->id, ==, INES);
}

/* Doors and windows stand at the middle of their opening and face into the room: corners anticlockwise from 0, 0 */
static void
test_walls (void)
{
  g_autoptr (LrPlan) plan = fixture_room (5.0, 4.0, 2.5);
  g_autoptr (LrStudy) study = NULL;
  const char *door = fixture_add (&plan, LR_ITEM_DOOR, 0, 5.0, 2.0);

  fixture_set (&plan, door, "along-mm", 1.0);
  fixture_set (&plan, door, "width-mm", 0.8);
  study = lr_study_new (plan);
  assert_near (lr_study_find_placed (study, door)->at_m.x, 5.0, 1e-9);
  assert_near (lr_study_find_placed (study, door)->at_m.y, 1.4, 1e-9);
  assert_near (fabs (facing_deg (study, door)), 180.0, 1e-9);
  g_assert_false (lr_study_find_placed (study, door)->has_footprint);
  assert_near (study->room_area_m2, 20.0, 1e-9);
}

/* Nothing is there: nothing is computed, and nothing fails */
static void
test_nothing (void)
{
  g_autoptr (LrPlan) plan = fixture_empty ();
  g_autoptr (LrStudy) study = lr_study_new (plan);

  g_assert_cmpuint (study->placed->len, ==, 0);
  g_assert_null (study->subject);
  g_assert_null (study->interviewer);
  g_assert_false (study->has_line);
  g_assert_true (isnan (study->eyes_level_m));
  g_assert_true (isnan (study->room_area_m2));
  g_assert_null (lr_study_find_placed (study, "camera-1"));
  g_assert_null (lr_study_find_placed (study, NULL));
  g_assert_null (lr_study_find_camera (study, NULL));
}

static void
test_titles (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrStudy) study = NULL;
  const char *light = fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 1.0, 1.0);
  const char *table = fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_TABLE, 7.0, 1.0);
  g_autofree char *light_title = NULL, *camera_title = NULL, *table_title = NULL, *person_title = NULL;

  fixture_text (&plan, table, "name", "drafting table");
  study = lr_study_new (plan);
  light_title = lr_item_title (lr_study_find_placed (study, light)->item);
  camera_title = lr_item_title (lr_study_find_placed (study, CAMERA_B)->item);
  table_title = lr_item_title (lr_study_find_placed (study, table)->item);
  person_title = lr_item_title (lr_study_find_placed (study, WENNA)->item);
  g_assert_cmpstr (light_title, ==, "L1 key");
  g_assert_cmpstr (camera_title, ==, "Camera B");
  g_assert_cmpstr (table_title, ==, "drafting table");
  g_assert_cmpstr (person_title, ==, "Wenna");
  g_assert_cmpstr (lr_shot_title (LR_SHOT_MEDIUM_CLOSE_UP), ==, "medium close-up");
  g_assert_cmpstr (lr_shot_title (LR_N_SHOTS), ==, "nobody in the frame");
}

/* A microphone on a camera goes with it and points where it looks; it is not moved by itself */
static void
test_on_camera (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  const char *id = fixture_add (&plan, LR_ITEM_MICROPHONE, LR_MIC_CAMERA, 1.0, 1.0);
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (GError) error = NULL;
  const LrPlaced *microphone, *camera;

  fixture_text (&plan, id, "mounted-on", CAMERA_B);
  study = lr_study_new (plan);
  microphone = lr_study_find_placed (study, id);
  camera = lr_study_find_placed (study, CAMERA_B);
  g_assert_false (microphone->has_footprint);
  assert_near (lr_vec2_distance (microphone->at_m, camera->at_m), 0.0, 1e-9);
  assert_near (microphone->facing_rad, camera->facing_rad, 1e-9);
  assert_near (microphone->point_m.z, camera->item->camera.lens_height_m + LR_CAMERA_MIC_ABOVE_M, 1e-9);
  g_assert_null (lr_plan_move (plan, id, lr_vec2 (2.0, 2.0), &error));
  g_assert_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED);
}

typedef struct
{
  const char *name;
  double      north_deg;   /* clockwise from up the sheet */
  const char *walls[4];    /* from the lowest, anticlockwise */
  const char *up;          /* towards what a move up the sheet goes */
} WindCase;

/* Source: a compass rose turned by hand */
static const WindCase wind_cases[] = {
  { "up", 0.0, { "south wall", "east wall", "north wall", "west wall" }, "towards the north wall" },
  { "quarter", 90.0, { "east wall", "north wall", "west wall", "south wall" }, "towards the west wall" },
  { "eighth", 45.0, { "south-east wall", "north-east wall", "north-west wall", "south-west wall" },
    "towards the north-west wall" },
  { "loft", 22.0, { "south wall", "east wall", "north wall", "west wall" }, "towards the north wall" },
};

static void
test_winds (gconstpointer data)
{
  const WindCase *c = data;
  g_autoptr (LrPlan) room = fixture_room (4.0, 3.0, 2.5);
  g_autoptr (LrPlan) plan = lr_plan_set_room (room, "north-deg", c->north_deg * LR_DEG, NULL);
  const LrRoom *turned = lr_plan_get_setup (plan)->room;

  for (int wall = 0; wall < 4; wall++)
    g_assert_cmpstr (lr_wall_title (turned, wall), ==, c->walls[wall]);
  g_assert_cmpstr (lr_wall_towards (turned, lr_vec2 (0.2, 1.0)), ==, c->up);
  g_assert_cmpstr (lr_wall_title (turned, 4), ==, "");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/placed/on-camera", test_on_camera);
  add_rows ("/placed/eyes", eyes_cases, test_eyes);
  add_rows ("/placed/footprint", footprint_cases, test_footprint);
  g_test_add_func ("/placed/facing", test_facing);
  g_test_add_func ("/placed/partner", test_partner);
  g_test_add_func ("/placed/walls", test_walls);
  g_test_add_func ("/placed/nothing", test_nothing);
  g_test_add_func ("/placed/titles", test_titles);
  add_rows ("/placed/winds", wind_cases, test_winds);

  return g_test_run ();
}
