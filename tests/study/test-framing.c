/* test-framing.c - joints at a camera's frame, and the room that the look has in it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "fixture.h"

/* Someone 1.70 m tall stands at the origin; a level 50 mm lens on 36.0 x 20.25 mm, 1.20 m high, in front */
static LrPlan *
make_standing (double away_m)
{
  LrPlan *plan = fixture_empty ();
  const char *subject = fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 0.0, 0.0);
  const char *camera = fixture_add (&plan, LR_ITEM_CAMERA, 0, 0.0, -away_m);

  fixture_set (&plan, subject, "posture", LR_POSTURE_STANDING);
  fixture_set (&plan, subject, "stature-mm", 1.70);
  fixture_set (&plan, subject, "facing-deg", -90.0 * LR_DEG);
  fixture_text (&plan, camera, "aims-at", "");
  fixture_set (&plan, camera, "facing-deg", 90.0 * LR_DEG);
  fixture_set (&plan, camera, "focal-mm", 0.05);
  fixture_set (&plan, camera, "focus-mm", 2.0);
  fixture_set (&plan, camera, "lens-height-mm", 1.2);
  return plan;
}

typedef struct
{
  const char *name;
  double      away_m;
  LrJoint     joint;
  double      above_m;
  const char *source;
} JointCase;

/* Focused at 2.00 m from the sensor, v = (2 - sqrt (4 - 8 0.05)) / 2 = 51.317 mm: the edge falls by 10.125 / 51.317 = 0.1973 a metre */
static const JointCase joint_cases[] = {
  { "elbow", 1.0, LR_JOINT_ELBOW, 0.0582, "elbow 1.0710 m; edge 1.20 - 0.1973 (1.0 - 0.0513) = 1.0128 m" },
  { "knee", 4.0, LR_JOINT_KNEE, 0.0636, "knee 0.4845 m; edge 1.20 - 0.1973 (4.0 - 0.0513) = 0.4209 m" },
};

static void
test_joint (gconstpointer data)
{
  const JointCase *c = data;
  g_autoptr (LrPlan) plan = make_standing (c->away_m);
  g_autoptr (LrStudy) study = lr_study_new (plan);
  const LrCameraReading *camera = fixture_camera (study, CAMERA_A);

  g_test_message ("by hand: %s", c->source);
  g_assert_cmpint (camera->joint.joint, ==, c->joint);
  assert_near (camera->joint.above_m, c->above_m, 5e-4);
}

typedef struct
{
  const char *name;
  double      partner_x_m;  /* in: to the right of a camera that looks along +y */
  double      across;
  gboolean    is_right;     /* expected */
  double      room;
} LookCase;

static const LookCase look_cases[] = {
  { "right", 0.6, 0.40, TRUE, 0.60 },
  { "left", -0.6, 0.40, FALSE, 0.40 },
  { "middle", 0.6, 0.50, TRUE, 0.50 },
};

static void
test_look (gconstpointer data)
{
  const LookCase *c = data;
  g_autoptr (LrPlan) plan = make_standing (2.0);
  g_autoptr (LrStudy) study = NULL;
  const LrCameraReading *camera;

  g_test_message ("by hand: the face is aimed at its share of the width");
  fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_INTERVIEWER, c->partner_x_m, -2.0);
  fixture_text (&plan, CAMERA_A, "aims-at", WENNA);
  fixture_set (&plan, CAMERA_A, "across-pct", c->across);
  study = lr_study_new (plan);
  camera = fixture_camera (study, CAMERA_A);
  g_assert_cmpint (camera->look_across > 0.0, ==, c->is_right);
  assert_near (camera->look_room, c->room, 1e-6);
}

/* Nobody to look at */
static void
test_alone (void)
{
  g_autoptr (LrPlan) plan = make_standing (2.0);
  g_autoptr (LrStudy) study = lr_study_new (plan);

  g_assert_true (isnan (fixture_camera (study, CAMERA_A)->look_across));
  g_assert_true (isnan (fixture_camera (study, CAMERA_A)->look_room));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/framing-readings/joint", joint_cases, test_joint);
  add_rows ("/framing-readings/look", look_cases, test_look);
  g_test_add_func ("/framing-readings/alone", test_alone);

  return g_test_run ();
}
