/* test-set-refit.c - the smallest move of the whole set that mends the most
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is found is held against brute force: every move of a coarse grid over the whole room leaves at least as much to fix,
 * and of a fine grid within what was found no smaller move is as good. Both count by remarks that are made for people, not
 * by the search's own trials.
 */

#include "fixture.h"

#include "power_readings.h"
#include "remarks.h"
#include "set_refit.h"

#include <string.h>

/* A small room with an interviewed person, a camera and a lamp, which is fine; pillars come in its way */
static LrPlan *
small_set (void)
{
  LrPlan *plan = fixture_room (5.0, 4.0, 2.6);
  const char *subject = fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 1.6, 2.0);
  const char *asker = fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_INTERVIEWER, 3.4, 1.6);
  const char *camera = fixture_add (&plan, LR_ITEM_CAMERA, 0, 3.6, 2.6);

  fixture_text (&plan, subject, "looks-at", asker);
  fixture_text (&plan, asker, "looks-at", subject);
  fixture_text (&plan, camera, "aims-at", subject);
  fixture_set (&plan, camera, "lens-height-mm", 1.17);
  fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 2.2, 3.2);

  return plan;
}

/* So long along x and wide, which must stay */
static void
add_pillar (LrPlan **plan,
            double   x_m,
            double   y_m,
            double   length_m,
            double   width_m)
{
  const char *id = fixture_add (plan, LR_ITEM_FURNITURE, LR_FURNITURE_BOX, x_m, y_m);

  fixture_set (plan, id, "length-mm", length_m);
  fixture_set (plan, id, "width-mm", width_m);
  fixture_set (plan, id, "height-mm", 0.6);
  fixture_set (plan, id, "is-fixed", TRUE);
}

static void
find (LrPlan **plan)
{
  LrPlan *found = lr_plan_copy_found (*plan, "As found", NULL);

  g_assert_nonnull (found);
  lr_plan_unref (*plan);
  *plan = found;
}

static void
set_wall (LrPlan **plan,
          int      wall,
          double   length_m)
{
  LrPlan *next = lr_plan_set_wall_length (*plan, wall, length_m, NULL);

  g_assert_nonnull (next);
  lr_plan_unref (*plan);
  *plan = next;
}

static LrPlan *
pillar_at_camera (void)
{
  LrPlan *plan = small_set ();

  add_pillar (&plan, 3.6, 2.9, 0.4, 0.4);
  return plan;
}

static LrPlan *
room_shorter (void)
{
  LrPlan *plan = small_set ();

  find (&plan);
  set_wall (&plan, 0, 3.75);
  return plan;
}

static LrPlan *
two_pillars (void)
{
  LrPlan *plan = small_set ();

  add_pillar (&plan, 3.4, 2.9, 0.3, 0.3);
  add_pillar (&plan, 2.4, 0.6, 1.2, 0.8);
  return plan;
}

/* As people are told, and as the panel counts while no levels of light are known */
static guint
n_fix_told (const LrPlan *plan)
{
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrRemarks) remarks = lr_remarks_new (study, LR_UNITS_METRIC);

  return remarks->n[LR_GRADE_FIX];
}

static LrSetScore
score_of (const LrPlan *plan,
          LrVec2        by_m,
          double        turn_rad)
{
  const LrSetMove move = { by_m, turn_rad };
  g_autoptr (LrPlan) moved = lr_set_refit_apply (plan, &move, NULL);

  return moved != NULL ? lr_set_score (moved) : (LrSetScore) { G_MAXUINT, 0 };
}

static guint
new_minds (LrSetScore before,
           LrSetScore after)
{
  return after.n_mind > before.n_mind ? after.n_mind - before.n_mind : 0;
}

static void
assert_no_better (const LrPlan     *plan,
                  const LrSetRefit *refit,
                  LrVec2            by_m,
                  double            turn_rad)
{
  const LrSetMove move = { by_m, turn_rad };
  LrSetScore score = score_of (plan, by_m, turn_rad);
  guint n_new = new_minds (refit->before, refit->after);

  g_test_message ("%.2f %.2f %.0f: %u to fix, %u to mind", by_m.x, by_m.y, turn_rad / LR_DEG, score.n_fix, score.n_mind);
  g_assert_cmpuint (score.n_fix, >=, refit->after.n_fix);
  if (score.n_fix == refit->after.n_fix && new_minds (refit->before, score) <= n_new)
    g_assert_cmpfloat (lr_set_move_farthest_m (plan, &move), >=, refit->farthest_m - 1e-6);
}

typedef struct
{
  const char *name;
  LrPlan   *(*make) (void);
  LrSetRefitState state;
} Case;

static const Case cases[] = {
  { "pillar", pillar_at_camera, LR_SET_REFIT_FOUND },
  { "shorter", room_shorter, LR_SET_REFIT_FOUND },
  { "two-pillars", two_pillars, LR_SET_REFIT_FOUND },
};

static double
outside_m (const LrStudy *study,
           const char    *id)
{
  for (guint i = 0; i < study->clashes->len; i++)
    {
      const LrClash *clash = &g_array_index (study->clashes, LrClash, i);

      if (clash->type == LR_CLASH_OUTSIDE && g_str_equal (clash->a->item->id, id))
        return clash->depth_m;
    }
  return 0.0;
}

/* Nothing is pushed through a wall for the sake of fewer sentences; under the plan's limit nothing is outside */
static void
assert_none_farther_out (const LrPlan *before,
                         const LrPlan *after)
{
  g_autoptr (LrStudy) was = lr_study_new (before), now = lr_study_new (after);

  for (guint i = 0; i < now->placed->len; i++)
    {
      const char *id = g_array_index (now->placed, LrPlaced, i).item->id;

      g_assert_cmpfloat (outside_m (now, id), <=, fmax (outside_m (was, id), after->limits.value[LR_LIMIT_OVERLAP]) + 0.011);
    }
}

static void
test_brute_force (gconstpointer data)
{
  const Case *c = data;
  g_autoptr (LrPlan) plan = c->make ();
  gint64 start_us = g_get_monotonic_time ();
  g_autoptr (LrSetRefit) refit = lr_set_refit_new (plan, LR_UNITS_METRIC, NULL);
  double fine_m = 0.05, fine_rad = 5.0 * LR_DEG;
  int n_fine = (int) floor (refit->farthest_m / fine_m);

  g_test_message ("%.0f ms, %u trials, %.3f m: %s", (double) (g_get_monotonic_time () - start_us) / 1000.0, refit->n_trials,
                  refit->farthest_m, refit->offer);
  g_assert_cmpint (refit->state, ==, c->state);
  g_assert_cmpuint (refit->before.n_fix, ==, n_fix_told (plan));
  g_assert_cmpuint (refit->after.n_fix, ==, n_fix_told (refit->plan));
  g_assert_cmpuint (refit->after.n_fix, <, refit->before.n_fix);
  assert_none_farther_out (plan, refit->plan);

  for (int x = -9; x <= 9; x++)
    for (int y = -7; y <= 7; y++)
      for (int k = 0; k < 8; k++)
        assert_no_better (plan, refit, lr_vec2 (0.5 * x, 0.5 * y), k * 45.0 * LR_DEG);
  for (int x = -n_fine; x <= n_fine; x++)
    for (int y = -n_fine; y <= n_fine; y++)
      for (int k = -8; k <= 8; k++)
        {
          const LrSetMove move = { lr_vec2 (fine_m * x, fine_m * y), k * fine_rad };

          if (lr_set_move_farthest_m (plan, &move) < refit->farthest_m - 0.005)
            assert_no_better (plan, refit, move.by_m, move.turn_rad);
        }
}

/* The same each time, and the plan that it offers is the move applied */
static void
test_steady (void)
{
  g_autoptr (LrPlan) plan = two_pillars ();
  g_autoptr (LrSetRefit) one = lr_set_refit_new (plan, LR_UNITS_METRIC, NULL), two = lr_set_refit_new (plan, LR_UNITS_METRIC, NULL);
  g_autoptr (LrPlan) applied = lr_set_refit_apply (plan, &one->move, NULL);

  g_assert_true (lr_plan_equal (one->plan, two->plan));
  g_assert_true (lr_plan_equal (one->plan, applied));
  g_assert_nonnull (strstr (one->done, "became"));
}

static void
test_fine (void)
{
  g_autoptr (LrPlan) plan = small_set ();
  g_autoptr (LrPlan) empty = fixture_empty ();
  g_autoptr (LrSetRefit) refit = lr_set_refit_new (plan, LR_UNITS_METRIC, NULL), none = lr_set_refit_new (empty, LR_UNITS_METRIC, NULL);

  g_assert_cmpint (refit->state, ==, LR_SET_REFIT_FINE);
  g_assert_null (refit->plan);
  g_assert_cmpfloat (refit->farthest_m, ==, 0.0);
  g_assert_cmpint (none->state, ==, LR_SET_REFIT_NO_SET);
}

/* Nothing helps where one thing alone cannot be had: a lens that nobody has */
static void
test_no_help (void)
{
  g_autoptr (LrPlan) plan = small_set ();
  g_autoptr (LrSetRefit) refit = NULL;
  gint64 start_us;

  /* the camera looks over everybody's head: only another height mends that */
  fixture_set (&plan, "camera-1", "lens-height-mm", 6.0);
  start_us = g_get_monotonic_time ();
  refit = lr_set_refit_new (plan, LR_UNITS_METRIC, NULL);
  g_test_message ("%.0f ms, %u trials: %s", (double) (g_get_monotonic_time () - start_us) / 1000.0, refit->n_trials, refit->done);
  g_assert_cmpint (refit->state, ==, LR_SET_REFIT_NO_HELP);
  g_assert_null (refit->plan);
  g_assert_cmpuint (refit->before.n_fix, >, 0);
}

static void
test_cancel (void)
{
  g_autoptr (LrPlan) plan = two_pillars ();
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();

  g_cancellable_cancel (cancellable);
  g_assert_null (lr_set_refit_new (plan, LR_UNITS_METRIC, cancellable));
}

/* A hall has far more places than are tried: of 80 by 60 m some 138 million moves at the finest, which would take gigabytes */
static void
test_hall (void)
{
  g_autoptr (LrPlan) plan = fixture_room (80.0, 60.0, 2.6);
  g_autoptr (LrSetRefit) refit = NULL;

  /* two in one chair: no move of both mends that */
  fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 40.0, 30.0);
  fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_INTERVIEWER, 40.1, 30.0);
  g_test_timer_start ();
  refit = lr_set_refit_new (plan, LR_UNITS_METRIC, NULL);
  g_test_message ("%.2f s, %u trials: %s", g_test_timer_elapsed (), refit->n_trials, refit->offer);
  g_assert_cmpint (refit->state, ==, LR_SET_REFIT_NO_HELP);
}

/* The loft, found with a pillar where camera B was planned: what goes with the set goes as one, and leads still reach their lamps */
static void
test_loft (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrSetRefit) refit = NULL;
  g_autoptr (LrStudy) study = NULL;
  LrVec2 camera_m = lr_plan_find (plan, "camera-b")->at_m;
  gint64 start_us;
  double was_m, now_m;

  find (&plan);
  add_pillar (&plan, camera_m.x, camera_m.y, 0.3, 0.3);
  start_us = g_get_monotonic_time ();
  refit = lr_set_refit_new (plan, LR_UNITS_METRIC, NULL);
  g_test_message ("%.0f ms, %u trials: %u, %u to fix, %u, %u to mind: %s", (double) (g_get_monotonic_time () - start_us) / 1000.0,
                  refit->n_trials, refit->before.n_fix, refit->after.n_fix, refit->before.n_mind, refit->after.n_mind, refit->offer);
  g_assert_cmpint (refit->state, ==, LR_SET_REFIT_FOUND);
  g_assert_cmpuint (refit->after.n_fix, <, refit->before.n_fix);
  was_m = lr_vec2_distance (lr_plan_find (plan, "camera-a")->at_m, camera_m);
  now_m = lr_vec2_distance (lr_plan_find (refit->plan, "camera-a")->at_m, lr_plan_find (refit->plan, "camera-b")->at_m);
  assert_near (was_m, now_m, 2e-3);

  study = lr_study_new (refit->plan);
  for (guint i = 0; i < lr_plan_get_setup (plan)->items->len; i++)
    {
      const LrItem *item = lr_plan_get_setup (plan)->items->pdata[i];
      LrLeadPower lead;

      if (item->kind == LR_ITEM_LEAD && lr_study_lead (study, lr_plan_find (refit->plan, item->id), &lead))
        g_assert_cmpfloat (lead.plug_off_m, <=, 0.1);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/set-refit/brute-force", cases, test_brute_force);
  g_test_add_func ("/set-refit/steady", test_steady);
  g_test_add_func ("/set-refit/fine", test_fine);
  g_test_add_func ("/set-refit/no-help", test_no_help);
  g_test_add_func ("/set-refit/cancel", test_cancel);
  g_test_add_func ("/set-refit/hall", test_hall);
  g_test_add_func ("/set-refit/loft", test_loft);

  return g_test_run ();
}
