/* test-run-sheet.c - steps of the day, their minutes and their times
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "fixture.h"

#include "run_edit.h"
#include "run_sheet.h"

#include <string.h>

static void
take (LrPlan **plan,
      LrPlan  *next)
{
  g_assert_nonnull (next);
  lr_plan_unref (*plan);
  *plan = next;
}

static void
set_times (LrPlan     **plan,
           const char  *in,
           const char  *roll,
           const char  *wrap,
           const char  *out)
{
  const char *const keys[] = { "time-in", "time-roll", "time-wrap", "time-out" }, *const times[] = { in, roll, wrap, out };

  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    take (plan, lr_plan_set_job (*plan, keys[i], times[i], NULL));
}

static LrRunSheet *
sheet_of (const LrPlan *plan)
{
  g_autoptr (LrStudy) study = lr_study_new (plan);

  return lr_run_sheet_new (study);
}

static const LrRunStep *
find_step (const LrRunSheet *sheet,
           const char       *key)
{
  for (guint i = 0; i < sheet->steps->len; i++)
    if (strcmp (((const LrRunStep *) g_ptr_array_index (sheet->steps, i))->key, key) == 0)
      return g_ptr_array_index (sheet->steps, i);
  return NULL;
}

static int
rig_min (const LrPlan *plan)
{
  g_autoptr (LrRunSheet) sheet = sheet_of (plan);

  return sheet->span[LR_RUN_RIG].needed_min;
}

/* Two cameras, three lamps, a boom and a lavalier for one person: to come in 20, set out 15, cameras 25, light 30, sound 15, try 10, sit
 * down 10, and a fifth more: 150; to strike and leave 45, to copy the media 10. Common practice, no source: within a fifth */
static void
test_usual (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrRunSheet) sheet = sheet_of (plan);

  g_test_message ("common practice, no source; rig %d, strike %d", sheet->span[LR_RUN_RIG].needed_min, sheet->span[LR_RUN_STRIKE].needed_min);
  assert_within (sheet->span[LR_RUN_RIG].needed_min, 150.0, 0.2);
  assert_within (sheet->span[LR_RUN_STRIKE].needed_min, 55.0, 0.2);
  g_assert_cmpint (sheet->span[LR_RUN_RIG].planned_min, ==, 90);
  g_assert_cmpint (sheet->span[LR_RUN_ROLL].planned_min, ==, 90);
  /* what is left until wrap is the interview's */
  g_assert_cmpint (sheet->span[LR_RUN_ROLL].needed_min, ==, 90);
}

/* Each thing that is brought takes time; nothing is estimated twice under one key */
static void
test_counts (void)
{
  static const struct { LrItemKind kind; int form; } things[] = {
    { LR_ITEM_CAMERA, 0 }, { LR_ITEM_LIGHT, 0 }, { LR_ITEM_MICROPHONE, LR_MIC_BOOM }, { LR_ITEM_MICROPHONE, LR_MIC_LAVALIER },
    { LR_ITEM_PANEL, 0 }, { LR_ITEM_PERSON, LR_ROLE_SUBJECT },
  };
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (GHashTable) keys = g_hash_table_new (g_str_hash, g_str_equal);
  g_autoptr (LrRunSheet) sheet = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (things); i++)
    {
      int before = rig_min (plan);

      fixture_add (&plan, things[i].kind, things[i].form, 1.0 + 0.3 * (double) i, 5.0);
      g_assert_cmpint (rig_min (plan), >, before);
    }
  sheet = sheet_of (plan);
  for (guint i = 0; i < sheet->steps->len; i++)
    g_assert_true (g_hash_table_add (keys, ((LrRunStep *) g_ptr_array_index (sheet->steps, i))->key));
}

/* Steps follow each other without gaps from the times of the job; a part's minutes are those of its steps */
static void
check_chain (const LrRunSheet *sheet)
{
  for (int part = 0; part < LR_N_RUN_PARTS; part++)
    {
      int at = sheet->span[part].from, sum = 0;

      for (guint i = 0; i < sheet->steps->len; i++)
        {
          const LrRunStep *step = g_ptr_array_index (sheet->steps, i);

          if ((int) step->part != part || step->is_left_out)
            continue;
          if (at >= 0)
            g_assert_cmpint (step->from, ==, at);
          g_assert_cmpint (step->to - step->from, ==, step->minutes);
          at = step->to;
          sum += step->minutes;
        }
      g_assert_cmpint (sum, ==, sheet->span[part].needed_min);
    }
}

static void
test_times (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrRunSheet) timed = NULL, back = NULL, none = NULL;
  const LrRunStep *last;

  set_times (&plan, "22:00", "23:30", "00:30", "01:15");
  timed = sheet_of (plan);
  check_chain (timed);
  /* past midnight goes on counting */
  g_assert_cmpint (timed->span[LR_RUN_RIG].from, ==, 22 * 60);
  g_assert_cmpint (timed->span[LR_RUN_ROLL].to, ==, 24 * 60 + 30);
  g_assert_cmpint (timed->span[LR_RUN_STRIKE].planned_min, ==, 45);

  set_times (&plan, "", "14:00", "", "");
  back = sheet_of (plan);
  last = find_step (back, "reserve");
  g_assert_cmpint (last->to, ==, 14 * 60); /* back from the time that it must be done at */
  g_assert_cmpint (back->span[LR_RUN_RIG].planned_min, ==, -1);
  g_assert_cmpint (find_step (back, "interview")->from, ==, 14 * 60);
  g_assert_cmpint (find_step (back, "load-out")->to, >, 14 * 60);

  set_times (&plan, "", "", "", "");
  none = sheet_of (plan);
  for (guint i = 0; i < none->steps->len; i++)
    g_assert_cmpint (((const LrRunStep *) g_ptr_array_index (none->steps, i))->from, ==, -1);
}

static int
reserve_min (const LrPlan *plan)
{
  g_autoptr (LrRunSheet) sheet = sheet_of (plan);

  return find_step (sheet, "reserve")->minutes;
}

static int
above_reserve_min (const LrPlan *plan)
{
  return rig_min (plan) - reserve_min (plan);
}

/* A fifth of what is done before it, of what the user made of that too: closed form. The interview has what the others leave it until wrap */
static void
test_rest (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrRunSheet) sheet = NULL, own = NULL;

  set_times (&plan, "08:00", "11:00", "12:30", "13:00");
  take (&plan, lr_plan_time_run_step (plan, "try", 111, NULL));
  take (&plan, lr_plan_time_run_step (plan, "inserts", 30, NULL));
  g_assert_cmpint (reserve_min (plan), ==, (int) lround (0.2 * above_reserve_min (plan)));
  sheet = sheet_of (plan);
  g_assert_cmpint (find_step (sheet, "interview")->minutes, ==, 90 - 30 - 3);
  take (&plan, lr_plan_time_run_step (plan, "reserve", 7, NULL));
  take (&plan, lr_plan_time_run_step (plan, "interview", 20, NULL));
  own = sheet_of (plan);
  g_assert_cmpint (find_step (own, "reserve")->minutes, ==, 7);
  g_assert_cmpint (find_step (own, "reserve")->estimated_min, ==, find_step (sheet, "reserve")->estimated_min);
  g_assert_cmpint (find_step (own, "interview")->minutes, ==, 20);
  g_assert_cmpint (find_step (own, "interview")->estimated_min, ==, 57);
}

static void
test_entries (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autofree char *tea = NULL, *cake = NULL, *first = NULL;
  g_autoptr (LrRunSheet) sheet = NULL;
  int before = above_reserve_min (plan), sound;

  set_times (&plan, "08:00", "11:00", "12:00", "13:00");
  take (&plan, lr_plan_add_run_step (plan, "set-out", "Tea", 10, &tea, NULL));
  take (&plan, lr_plan_add_run_step (plan, tea, "Cake", 5, &cake, NULL));
  take (&plan, lr_plan_add_run_step (plan, "", "Drive", 30, &first, NULL));
  g_assert_cmpint (reserve_min (plan), ==, (int) lround (0.2 * above_reserve_min (plan)));
  g_assert_cmpint (rig_min (plan), ==, above_reserve_min (plan) + reserve_min (plan));
  g_assert_cmpint (above_reserve_min (plan), ==, before + 45);
  take (&plan, lr_plan_time_run_step (plan, "try", 25, NULL));
  take (&plan, lr_plan_name_run_step (plan, "try", "Dry run", NULL));
  sheet = sheet_of (plan);
  check_chain (sheet);
  g_assert_cmpstr (((const LrRunStep *) g_ptr_array_index (sheet->steps, 0))->title, ==, "Drive");
  for (guint i = 0; i + 2 < sheet->steps->len; i++)
    if (strcmp (((const LrRunStep *) g_ptr_array_index (sheet->steps, i))->key, "set-out") == 0)
      {
        g_assert_cmpstr (((const LrRunStep *) g_ptr_array_index (sheet->steps, i + 1))->title, ==, "Tea");
        g_assert_cmpstr (((const LrRunStep *) g_ptr_array_index (sheet->steps, i + 2))->title, ==, "Cake");
      }
  g_assert_cmpstr (find_step (sheet, "try")->title, ==, "Dry run");
  g_assert_cmpint (find_step (sheet, "try")->minutes, ==, 25);
  g_assert_cmpint (find_step (sheet, "try")->estimated_min, ==, 10);

  sound = above_reserve_min (plan);
  take (&plan, lr_plan_leave_out_run_step (plan, "try", TRUE, NULL));
  g_assert_cmpint (above_reserve_min (plan), ==, sound - 25);
  g_assert_cmpint (reserve_min (plan), ==, (int) lround (0.2 * (sound - 25)));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/run-sheet/usual", test_usual);
  g_test_add_func ("/run-sheet/counts", test_counts);
  g_test_add_func ("/run-sheet/times", test_times);
  g_test_add_func ("/run-sheet/rest", test_rest);
  g_test_add_func ("/run-sheet/entries", test_entries);

  return g_test_run ();
}
