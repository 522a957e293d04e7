/* test-boom.c - how a microphone hangs from a boom on a stand
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "fixture.h"

#include "boom.h"

typedef struct
{
  const char *name;
  double      tip_x_m, tip_y_m, tip_m, short_m; /* in: the post at 0, 0 */
  double      reach_m, post_m, slope, top_m;    /* expected */
} HangCase;

/* By hand from the sizes of boom.h and boom.c, which are common practice, no source: the arm's end .10 over the capsule, the post .04 over that
 * and at least 1 m, the weight .055 over the arm behind */
static const HangCase hang_cases[] = {
  { "nearly-level", 0.8, 0.6, 1.60, 0.5, 1.0, 1.74, -0.04, 1.74 + 0.02 + 0.055 },
  { "steep", 1.0, 0.0, 0.50, 0.7, 1.0, 1.00, -0.40, 1.00 + 0.28 + 0.055 },
  { "no-weight", 0.0, 2.0, 1.60, 0.0, 2.0, 1.74, -0.02, 1.74 + 0.012 },
  { "over-the-post", 0.0, 0.0, 1.60, 0.0, 0.0, 1.74, -0.40, 1.74 + 0.012 },
};

static void
test_hang (gconstpointer data)
{
  const HangCase *c = data;
  LrMicrophone microphone = { .tip_x_m = c->tip_x_m, .tip_y_m = c->tip_y_m, .tip_height_m = c->tip_m, .short_end_m = c->short_m };
  LrBoomHang hang;

  lr_boom_hang (lr_vec2 (0.0, 0.0), &microphone, &hang);
  assert_near (hang.reach_m, c->reach_m, 1e-12);
  assert_near (hang.post_m, c->post_m, 1e-12);
  assert_near (hang.slope, c->slope, 1e-12);
  assert_near (hang.top_m, c->top_m, 1e-12);
}

/* The post is higher than the capsule, and reaches the ceiling first */
static void
test_top (void)
{
  g_autoptr (LrPlan) plan = fixture_room (5.0, 4.0, 2.5);
  g_autoptr (LrStudy) study = NULL;
  const char *id = fixture_add (&plan, LR_ITEM_MICROPHONE, LR_MIC_BOOM, 3.0, 2.0);

  fixture_set (&plan, id, "tip-x-mm", 2.0);
  fixture_set (&plan, id, "tip-y-mm", 2.0);
  fixture_set (&plan, id, "tip-height-mm", 2.4);
  fixture_set (&plan, id, "short-end-mm", 0.0);
  study = lr_study_new (plan);
  assert_near (lr_study_find_placed (study, id)->top_m, 2.4 + 0.14 + 0.012, 1e-9);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/boom/hang", hang_cases, test_hang);
  g_test_add_func ("/boom/top", test_top);

  return g_test_run ();
}
