/* test-boom-place.c - where a boom hangs best, what it hides and what balances it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "fixture.h"

#include "boom_place.h"
#include "intrusions.h"

static const char *
add_boom (LrPlan **plan)
{
  const char *id = fixture_add (plan, LR_ITEM_MICROPHONE, LR_MIC_BOOM, 3.3, 4.9);

  fixture_text (plan, id, "aims-at", WENNA);
  fixture_set (plan, id, "tip-x-mm", 3.6);
  fixture_set (plan, id, "tip-y-mm", 2.9);
  fixture_set (plan, id, "tip-height-mm", 2.3);
  return id;
}

/* It is out of every frame by its margin, over and before the mouth, and nearer than it was; a few centimetres nearer along the same way it
 * is in a picture, unless it is as near as any boom may be */
static void
test_best (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  const char *id = add_boom (&plan);
  g_autoptr (LrStudy) study = lr_study_new (plan), after = NULL;
  const LrMicrophoneSound *boom = lr_sound_find (lr_study_sound (study), id);
  LrVec3 tip_m = { NAN, NAN, NAN }, way;
  double away_m, up_rad;
  g_autoptr (LrItem) nearer = NULL;

  g_assert_true (lr_boom_best_place (study, boom, 0.05, &tip_m));
  way = lr_vec3_way (boom->mouth_m, tip_m);
  away_m = lr_vec3_length (lr_vec3_sub (tip_m, boom->mouth_m));
  up_rad = asin (way.z);
  g_assert_cmpfloat (away_m, <, boom->distance_m);
  g_assert_cmpfloat (up_rad / LR_DEG, >, 28.0);
  g_assert_cmpfloat (up_rad / LR_DEG, <, 63.0);

  nearer = lr_item_copy (boom->placed->item);
  nearer->microphone.tip_x_m = tip_m.x;
  nearer->microphone.tip_y_m = tip_m.y;
  nearer->microphone.tip_height_m = tip_m.z;
  g_assert_false (lr_study_would_intrude (study, nearer, 0.05));
  nearer->microphone.tip_x_m -= 0.08 * way.x;
  nearer->microphone.tip_y_m -= 0.08 * way.y;
  nearer->microphone.tip_height_m -= 0.08 * way.z;
  g_assert_true (away_m < 0.32 || lr_study_would_intrude (study, nearer, 0.05));

  fixture_set (&plan, id, "tip-x-mm", tip_m.x);
  fixture_set (&plan, id, "tip-y-mm", tip_m.y);
  fixture_set (&plan, id, "tip-height-mm", tip_m.z);
  after = lr_study_new (plan);
  g_assert_cmpfloat (lr_sound_find (lr_study_sound (after), id)->direct_db, >, boom->direct_db + 1.0);
}

/* A bar of 6 cm half way between a face and a disc of 0.34 m across hides 12 cm of it across its middle: of a chord's length. Outside the
 * way it hides nothing (similar triangles) */
static void
test_hides (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  const char *id = add_boom (&plan), *lamp = fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 4.2, 1.4);
  g_autoptr (LrStudy) study = NULL;
  const LrPlaced *person;

  study = lr_study_new (plan);
  g_assert_cmpfloat (lr_boom_hides (lr_study_find_placed (study, id), lr_study_find_placed (study, lamp), lr_study_find_placed (study, WENNA)), ==, 0.0);
  person = lr_study_find_placed (study, WENNA);
  fixture_set (&plan, id, "tip-x-mm", 0.5 * (person->eyes_m.x + 4.2));
  fixture_set (&plan, id, "tip-y-mm", 0.5 * (person->eyes_m.y + 1.4));
  fixture_set (&plan, id, "tip-height-mm", 0.5 * (person->eyes_m.z + 2.2));
  lr_study_free (g_steal_pointer (&study));
  study = lr_study_new (plan);
  {
    double hidden = lr_boom_hides (lr_study_find_placed (study, id), lr_study_find_placed (study, lamp), lr_study_find_placed (study, WENNA));

    g_assert_cmpfloat (hidden, >, 0.15);
    g_assert_cmpfloat (hidden, <, 0.60);
  }
}

/* An even arm of 0.8 kg with 1.788 m before the post and 0.55 m behind, 0.35 kg at its end: (0.35 x 1.788 + 0.8 x 0.619) / 0.55 = 2.04 kg, by
 * the lever */
static void
test_weight (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrStudy) study = lr_study_new (plan);
  double weight_kg = NAN;

  g_assert_true (lr_boom_weight_kg (lr_study_find_placed (study, "microphone-1"), &weight_kg));
  assert_near (weight_kg, 2.04, 0.01);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/boom-place/best", test_best);
  g_test_add_func ("/boom-place/hides", test_hides);
  g_test_add_func ("/boom-place/weight", test_weight);
  return g_test_run ();
}
