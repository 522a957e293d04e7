/* bench-study.c - how long it takes to study and judge a plan
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Prints one line a row: milliseconds, and the ratio to a fixed loop of arithmetic that runs in the same program, so that
 * rows of different machines can be compared. Budgets: 0.2 ms for the typical plan (2 people, 3 cameras, 5 lights, 3
 * microphones, 15 pieces of furniture, 8 corners), 10 ms for 1,000 items, growing no worse than n log n.
 */

#include "plan_edit.h"
#include "remarks.h"

#include <math.h>

#define N_CALIBRATION 200000 /* about a millisecond of square roots */
#define N_ROUNDS 7

static volatile double sink;

typedef void (*Work) (gconstpointer data);

static void
calibrate (gconstpointer data G_GNUC_UNUSED)
{
  double x = 1.0;

  for (int i = 0; i < N_CALIBRATION; i++)
    x = sqrt (x + (double) i);
  sink = x;
}

static void
study_alone (gconstpointer data)
{
  lr_study_free (lr_study_new (data));
}

static void
study_and_judge (gconstpointer data)
{
  g_autoptr (LrStudy) study = lr_study_new (data);
  g_autoptr (LrRemarks) remarks = lr_remarks_new (study, LR_UNITS_METRIC);

  sink = remarks->all->len;
}

/* The best of several rounds, each long enough for the clock [ms] */
static double
time_ms (Work          work,
         gconstpointer data)
{
  double best_ms = HUGE_VAL;

  for (int round = 0; round < N_ROUNDS; round++)
    {
      gint64 start_us = g_get_monotonic_time (), now_us;
      int n = 0;

      do
        {
          work (data);
          n++;
          now_us = g_get_monotonic_time ();
        }
      while (now_us - start_us < 30000);
      best_ms = fmin (best_ms, 0.001 * (double) (now_us - start_us) / n);
    }
  return best_ms;
}

static LrPlan *
add (LrPlan     *plan,
     LrItemKind  kind,
     int         form,
     double      x_m,
     double      y_m,
     char      **id)
{
  g_autoptr (LrItem) item = lr_item_new_usual (kind, form, "new");
  g_autoptr (GError) error = NULL;
  LrPlan *next = lr_plan_add (plan, item, lr_vec2 (x_m, y_m), 0.0, id, &error);

  g_assert_no_error (error);
  lr_plan_unref (plan);
  return next;
}

static LrPlan *
point_at (LrPlan     *plan,
          const char *id,
          const char *key,
          const char *at)
{
  g_autoptr (GError) error = NULL;
  LrPlan *next = lr_plan_change_text (plan, id, key, at, &error);

  g_assert_no_error (error);
  lr_plan_unref (plan);
  return next;
}

/* Eight corners, as a room with a bay */
static LrPlan *
make_room (double scale)
{
  static const LrVec2 corners_m[] = { { 0, 0 }, { 7, 0 }, { 7, 2 }, { 8, 2 }, { 8, 4 }, { 7, 4 }, { 7, 6 }, { 0, 6 } };
  LrVec2 scaled_m[G_N_ELEMENTS (corners_m)];
  g_autoptr (LrPlan) empty = lr_plan_new_empty ();
  LrPlan *plan;

  for (guint i = 0; i < G_N_ELEMENTS (corners_m); i++)
    scaled_m[i] = lr_vec2_scale (corners_m[i], scale);
  plan = lr_plan_set_corners (empty, scaled_m, G_N_ELEMENTS (scaled_m), NULL);
  g_assert_nonnull (plan);
  return plan;
}

/* Two people and three cameras; B stands too near to A, so that a remedy is tried */
static LrPlan *
add_sight (LrPlan *plan)
{
  static const LrVec2 cameras_m[] = { { 4.81, 2.80 }, { 5.07, 3.76 }, { 3.9, 4.5 } };
  g_autofree char *subject = NULL, *interviewer = NULL;

  plan = add (plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 2.6, 2.95, &subject);
  plan = add (plan, LR_ITEM_PERSON, LR_ROLE_INTERVIEWER, 4.2, 2.0, &interviewer);
  plan = point_at (plan, subject, "looks-at", interviewer);
  plan = point_at (plan, interviewer, "looks-at", subject);
  for (guint i = 0; i < G_N_ELEMENTS (cameras_m); i++)
    {
      g_autofree char *id = NULL;

      plan = add (plan, LR_ITEM_CAMERA, 0, cameras_m[i].x, cameras_m[i].y, &id);
      plan = point_at (plan, id, "aims-at", subject);
    }
  return plan;
}

static LrPlan *
make_typical (void)
{
  static const LrVec2 lights_m[] = { { 3.3, 1.2 }, { 1.4, 4.6 }, { 1.6, 0.7 }, { 5.9, 0.9 }, { 6.2, 4.6 } };
  static const LrVec2 microphones_m[] = { { 2.6, 4.7 }, { 5.6, 2.0 }, { 6.3, 3.0 } };
  LrPlan *plan = add_sight (make_room (1.0));

  for (guint i = 0; i < G_N_ELEMENTS (lights_m); i++)
    plan = add (plan, LR_ITEM_LIGHT, LR_LIGHT_PANEL, lights_m[i].x, lights_m[i].y, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (microphones_m); i++)
    plan = add (plan, LR_ITEM_MICROPHONE, LR_MIC_STAND, microphones_m[i].x, microphones_m[i].y, NULL);
  for (int i = 0; i < 15; i++)
    plan = add (plan, LR_ITEM_FURNITURE, LR_FURNITURE_CHAIR, i < 12 ? 0.4 + 0.55 * i : 6.5, i < 12 ? 5.6 : 0.4 + 0.55 * (i - 12), NULL);

  return plan;
}

/* The same sight among stands and furniture on a grid, so wide that hardly anything touches */
static LrPlan *
make_large (int n_items)
{
  double scale = sqrt (n_items / 28.0);
  int n_columns = (int) ceil (sqrt (n_items));
  LrPlan *plan = add_sight (make_room (fmax (scale, 1.0)));

  for (int i = 0; i < n_items - 5; i++)
    {
      double x_m = 0.5 + (7.0 * scale - 1.0) * (i % n_columns) / n_columns;
      double y_m = 0.5 + (6.0 * scale - 1.0) * (i / n_columns) / n_columns;

      plan = i % 3 == 0 ? add (plan, LR_ITEM_LIGHT, LR_LIGHT_PANEL, x_m, y_m, NULL)
                        : add (plan, LR_ITEM_FURNITURE, LR_FURNITURE_CHAIR, x_m, y_m, NULL);
    }
  return plan;
}

static void
print_row (const char *name,
           double      ms,
           double      calibration_ms,
           double      budget_ms)
{
  if (budget_ms > 0.0)
    g_print ("%-44s %8.4f ms %8.3f x loop   budget %.1f ms: %s\n", name, ms, ms / calibration_ms, budget_ms,
             ms <= budget_ms ? "kept" : "EXCEEDED");
  else
    g_print ("%-44s %8.4f ms %8.3f x loop\n", name, ms, ms / calibration_ms);
}

int
main (void)
{
  double loop_ms = time_ms (calibrate, NULL);
  g_autoptr (LrPlan) typical = make_typical ();
  static const int sizes[] = { 125, 250, 500, 1000 };
  double before_ms = 0.0;

  print_row ("loop: 200,000 square roots", loop_ms, loop_ms, 0.0);
  print_row ("study, typical plan", time_ms (study_alone, typical), loop_ms, 0.0);
  print_row ("study and judge, typical plan", time_ms (study_and_judge, typical), loop_ms, 0.2);

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      g_autoptr (LrPlan) plan = make_large (sizes[i]);
      g_autofree char *alone = g_strdup_printf ("study, %d items", sizes[i]);
      g_autofree char *both = g_strdup_printf ("study and judge, %d items", sizes[i]);
      double ms = time_ms (study_and_judge, plan);

      print_row (alone, time_ms (study_alone, plan), loop_ms, 0.0);
      print_row (both, ms, loop_ms, sizes[i] == 1000 ? 10.0 : 0.0);
      if (before_ms > 0.0)
        g_print ("%-44s %8.2f times, n log n is %.2f\n", "  twice the items take", ms / before_ms,
                 2.0 * log (sizes[i]) / log (sizes[i - 1]));
      before_ms = ms;
    }

  return 0;
}
