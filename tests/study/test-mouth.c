/* test-mouth.c - microphones by their distance from the mouth
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "fixture.h"

#include "study.h"

/* By hand: Wenna looks along (1.65, -0.65), so her mouth is at (2.674, 2.921); its height is 1.18 m less (0.936 - 0.898) of her
 * 1.59 m (figures of Drillis & Contini; the mouth's from memory); the capsule hangs at (2.93, 2.82, 1.70) */
static void
test_mouth (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrStudy) study = lr_study_new (plan);
  double distance_m = -1.0;
  const LrPlaced *person = lr_study_mouth_distance_m (study, lr_plan_find (plan, "microphone-1"), &distance_m);

  g_assert_true (person == lr_study_find_placed (study, "wenna"));
  g_assert_cmpfloat_with_epsilon (distance_m, 0.642, 0.001);
  g_assert_null (lr_study_mouth_distance_m (study, lr_plan_find (plan, "microphone-2"), &distance_m));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/mouth/loft", test_mouth);
  return g_test_run ();
}
