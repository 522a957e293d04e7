/* test-comparison.c - what is best in each row, and when nothing is
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Verdicts are a contract, not a computation: they are tried on every row with figures that are set by hand.
 */

#include "fixture.h"

#include "comparison_words.h"
#include "remarks.h"

#include <string.h>

/* Three rooms of which nothing is known */
static LrComparison *
blank_comparison (guint n)
{
  static const char *const names[] = { "Loft", "Office", "Hall" };
  g_autoptr (LrPlan) plan = fixture_room (5.0, 4.0, 2.5);
  LrComparison *comparison;

  for (guint i = 0; i < n; i++)
    {
      LrPlan *next = i == 0 ? lr_plan_rename_setup (plan, names[0], NULL) : lr_plan_copy_setup (plan, names[i], NULL);

      g_assert_nonnull (next);
      lr_plan_unref (plan);
      plan = next;
    }
  comparison = lr_comparison_new (plan);
  for (guint i = 0; i < n; i++)
    for (int row = 0; row < LR_N_COMPARES; row++)
      g_array_index (comparison->rooms, LrRoomFigures, i).figure[row] = (LrFigure) { LR_NOT_NOTED, NAN };

  return comparison;
}

static void
put (LrComparison *comparison,
     guint         room,
     int           row,
     LrKnown       known,
     double        value)
{
  g_array_index (comparison->rooms, LrRoomFigures, room).figure[row] = (LrFigure) { known, value };
}

static const LrComparedRow *
row_of (const LrCompared *compared,
        int               row)
{
  const LrComparedRow *found = compared->rows->pdata[row];

  g_assert_cmpint (found->row, ==, row);
  return found;
}

static guint
count_best (const LrComparedRow *row,
            guint                n)
{
  guint best = 0;

  for (guint i = 0; i < n; i++)
    best += row->is_best[i] ? 1 : 0;
  return best;
}

/* Of 40 in whatever unit: what differs by less than can be told */
static double
tie_at (const LrCompareInfo *info,
        double               low)
{
  return fmax (info->tie, info->tie_share * low / (1.0 - info->tie_share));
}

static LrCompared *
compare_two (LrComparison *comparison,
             int           row,
             double        a,
             double        b)
{
  put (comparison, 0, row, LR_KNOWN, a);
  put (comparison, 1, row, LR_KNOWN, b);
  return lr_compared_new (comparison, LR_UNITS_METRIC);
}

static void
test_ties (void)
{
  for (int row = 0; row < LR_N_COMPARES; row++)
    {
      g_autoptr (LrComparison) comparison = blank_comparison (2);
      const LrCompareInfo *info = lr_compare_info (row);
      double low = 40.0, tie = tie_at (info, low);
      g_autoptr (LrCompared) same = compare_two (comparison, row, low, low), within = compare_two (comparison, row, low, low + 0.99 * tie);
      g_autoptr (LrCompared) over = compare_two (comparison, row, low, low + 1.02 * tie);
      guint winner = info->is_less_better ? 0 : 1;

      g_test_message ("%s: %s / %s / %s", info->key, row_of (same, row)->why, row_of (within, row)->why, row_of (over, row)->why);
      g_assert_cmpint (row_of (same, row)->verdict, ==, LR_VERDICT_ALIKE);
      g_assert_cmpuint (count_best (row_of (same, row), 2), ==, 0);
      g_assert_cmpint (row_of (within, row)->verdict, ==, LR_VERDICT_ALIKE);
      g_assert_cmpuint (count_best (row_of (within, row), 2), ==, 0);
      g_assert_cmpint (row_of (over, row)->verdict, ==, LR_VERDICT_BEST);
      g_assert_true (row_of (over, row)->is_best[winner]);
      g_assert_false (row_of (over, row)->is_best[1 - winner]);
      /* the reason names the one that it is held against */
      g_assert_nonnull (strstr (row_of (over, row)->why, winner == 0 ? "Office" : "Loft"));
    }
}

/* The best there is may not win while it is known in part, or not at all */
static void
test_unknown (void)
{
  for (int row = 0; row < LR_N_COMPARES; row++)
    {
      g_autoptr (LrComparison) comparison = blank_comparison (3);
      const LrCompareInfo *info = lr_compare_info (row);
      double good = info->is_less_better ? 40.0 : 400.0, bad = info->is_less_better ? 400.0 : 40.0;
      g_autoptr (LrCompared) none = lr_compared_new (comparison, LR_UNITS_METRIC), one = NULL, part = NULL;

      g_assert_cmpint (row_of (none, row)->verdict, ==, LR_VERDICT_FEW);
      g_assert_cmpuint (count_best (row_of (none, row), 3), ==, 0);
      g_assert_cmpstr (row_of (none, row)->texts[0], ==, row == LR_COMPARE_WAY_OUT ? "not found out" : "not noted");

      put (comparison, 0, row, LR_KNOWN, good);
      one = lr_compared_new (comparison, LR_UNITS_METRIC);
      g_assert_cmpint (row_of (one, row)->verdict, ==, LR_VERDICT_FEW);
      g_assert_cmpuint (count_best (row_of (one, row), 3), ==, 0);
      g_assert_nonnull (strstr (row_of (one, row)->why, "Office and Hall"));

      put (comparison, 0, row, LR_KNOWN_PARTLY, good);
      put (comparison, 1, row, LR_KNOWN, bad);
      put (comparison, 2, row, LR_KNOWN, info->is_less_better ? 2.0 * bad : 0.5 * bad);
      part = lr_compared_new (comparison, LR_UNITS_METRIC);
      g_assert_cmpint (row_of (part, row)->verdict, ==, LR_VERDICT_BEST);
      g_assert_false (row_of (part, row)->is_best[0]);
      g_assert_true (row_of (part, row)->is_best[1]);
      g_assert_false (row_of (part, row)->is_best[2]);
      g_assert_nonnull (strstr (row_of (part, row)->why, "known in part: Loft"));
      g_assert_true (g_str_has_prefix (row_of (part, row)->texts[0], "about "));
    }
}

/* What was taken as usual may be the best of all and wins nothing */
static void
test_taken (void)
{
  for (int row = 0; row < LR_N_COMPARES; row++)
    {
      g_autoptr (LrComparison) comparison = blank_comparison (3);
      const LrCompareInfo *info = lr_compare_info (row);
      g_autoptr (LrCompared) compared = NULL;

      put (comparison, 0, row, LR_TAKEN, info->is_less_better ? 40.0 : 400.0);
      put (comparison, 1, row, LR_KNOWN, info->is_less_better ? 400.0 : 40.0);
      put (comparison, 2, row, LR_KNOWN, info->is_less_better ? 800.0 : 20.0);
      compared = lr_compared_new (comparison, LR_UNITS_METRIC);
      g_assert_false (row_of (compared, row)->is_best[0]);
      g_assert_true (row_of (compared, row)->is_best[1]);
      g_assert_nonnull (strstr (row_of (compared, row)->why, "not known: Loft"));
      g_assert_true (g_str_has_prefix (row_of (compared, row)->texts[0], "not noted ("));
    }
}

/* Being told as best or not must not hang on what nobody can tell: whatever three figures there are, in every row, a room that has a star is
 * better than each that has none by more than the tie, and no row of stars is given to all. A contract, tried on all triples of a grid that is
 * finer than the tie */
static void
test_equivalence (void)
{
  for (int row = 0; row < LR_N_COMPARES; row++)
    {
      g_autoptr (LrComparison) comparison = blank_comparison (3);
      const LrCompareInfo *info = lr_compare_info (row);
      double low = 40.0, step = 0.4 * tie_at (info, low);

      for (int k = 0; k < 6 * 6 * 6; k++)
        {
          const double values[] = { low + step * (k % 6), low + step * (k / 6 % 6), low + step * (k / 36) };
          g_autoptr (LrCompared) compared = NULL;
          const LrComparedRow *judged;

          for (guint i = 0; i < 3; i++)
            put (comparison, i, row, LR_KNOWN, values[i]);
          compared = lr_compared_new (comparison, LR_UNITS_METRIC);
          judged = row_of (compared, row);
          g_assert_cmpint (count_best (judged, 3) > 0, ==, judged->verdict == LR_VERDICT_BEST);
          g_assert_cmpuint (count_best (judged, 3), <, 3);
          for (guint i = 0; i < 9; i++)
            {
              double better = info->is_less_better ? values[i % 3] - values[i / 3] : values[i / 3] - values[i % 3];

              if (judged->is_best[i / 3] && !judged->is_best[i % 3])
                g_assert_cmpfloat (better, >, fmax (info->tie, info->tie_share * fmax (values[i / 3], values[i % 3])));
            }
        }
    }
}

/* 5.06 and 4.81 m are alike, and so are 4.81 and 4.79: none of the three is best; 4.50 m are less than all of them */
static void
test_steps (void)
{
  g_autoptr (LrComparison) three = blank_comparison (3), apart = blank_comparison (3);
  g_autoptr (LrCompared) alike = NULL, step = NULL;

  put (three, 0, LR_COMPARE_BACKGROUND, LR_KNOWN, 5.06);
  put (three, 1, LR_COMPARE_BACKGROUND, LR_KNOWN, 4.81);
  put (three, 2, LR_COMPARE_BACKGROUND, LR_KNOWN, 4.79);
  alike = lr_compared_new (three, LR_UNITS_METRIC);
  g_assert_cmpint (row_of (alike, LR_COMPARE_BACKGROUND)->verdict, ==, LR_VERDICT_NO_STEP);
  g_assert_cmpuint (count_best (row_of (alike, LR_COMPARE_BACKGROUND), 3), ==, 0);
  g_assert_cmpstr (row_of (alike, LR_COMPARE_BACKGROUND)->why, ==, "no clear best: from one to the next within 0.25 m");

  put (apart, 0, LR_COMPARE_BACKGROUND, LR_KNOWN, 5.06);
  put (apart, 1, LR_COMPARE_BACKGROUND, LR_KNOWN, 4.50);
  put (apart, 2, LR_COMPARE_BACKGROUND, LR_KNOWN, 4.81);
  step = lr_compared_new (apart, LR_UNITS_METRIC);
  g_assert_true (row_of (step, LR_COMPARE_BACKGROUND)->is_best[0] && row_of (step, LR_COMPARE_BACKGROUND)->is_best[2]);
  g_assert_cmpstr (row_of (step, LR_COMPARE_BACKGROUND)->why, ==, "2 alike, 0.31 m deeper than Office");
}

/* As many as the checks say with the light known, which the window and the check command say too; nothing without the light */
static void
test_counts (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrComparison) comparison = lr_comparison_new (plan), dark = lr_comparison_new (plan);
  g_autoptr (LrLightLevels) levels = lr_light_levels_new (lr_comparison_room (comparison, 0)->study->plan, TRUE, NULL);
  g_autoptr (LrRemarks) remarks = lr_remarks_new_lit (lr_comparison_room (comparison, 0)->study, levels, LR_UNITS_METRIC);
  const LrFigure *figures = lr_comparison_room (comparison, 0)->figure;

  g_assert_cmpint (figures[LR_COMPARE_FIX].known, ==, LR_AWAITED);
  lr_comparison_judge (comparison, 0, levels, LR_UNITS_METRIC);
  g_assert_false (lr_comparison_is_awaited (comparison, 0));
  g_assert_cmpint (figures[LR_COMPARE_FIX].known, ==, LR_KNOWN);
  assert_near (figures[LR_COMPARE_FIX].value, remarks->n[LR_GRADE_FIX], 1e-9);
  assert_near (figures[LR_COMPARE_MIND].value, remarks->n[LR_GRADE_MIND], 1e-9);
  lr_comparison_judge (dark, 0, NULL, LR_UNITS_METRIC);
  g_assert_cmpint (lr_comparison_room (dark, 0)->figure[LR_COMPARE_FIX].known, ==, LR_NOT_NOTED);
  g_assert_false (lr_comparison_is_awaited (dark, 0));
}

/* 30 and 32 dB are as good as each other, and at least 8 better than 40: no more is sure */
static void
test_two_winners (void)
{
  g_autoptr (LrComparison) comparison = blank_comparison (3);
  g_autoptr (LrCompared) compared = NULL;
  const LrComparedRow *row;

  put (comparison, 0, LR_COMPARE_NOISE, LR_KNOWN, 30.0);
  put (comparison, 1, LR_COMPARE_NOISE, LR_KNOWN, 40.0);
  put (comparison, 2, LR_COMPARE_NOISE, LR_KNOWN, 32.0);
  compared = lr_compared_new (comparison, LR_UNITS_METRIC);
  row = row_of (compared, LR_COMPARE_NOISE);
  g_assert_true (row->is_best[0] && row->is_best[2] && !row->is_best[1]);
  g_assert_cmpstr (row->why, ==, "2 alike, 8\u00a0dB quieter than Office");
  assert_near (row->times, 2.0, 1e-9); /* 10 dB are twice as loud: Stevens, from memory */
}

/* Ties are what the task of a row can tell: 3 dB, a fifth, 20 minutes */
static void
test_limits (void)
{
  static const struct { LrCompare row; double a, b; LrVerdictType verdict; } cases[] = {
    { LR_COMPARE_NOISE, 30.0, 33.0, LR_VERDICT_ALIKE },     { LR_COMPARE_NOISE, 30.0, 33.2, LR_VERDICT_BEST },
    { LR_COMPARE_REVERBERATION, 0.5, 0.6, LR_VERDICT_ALIKE }, { LR_COMPARE_REVERBERATION, 0.5, 0.61, LR_VERDICT_BEST },
    { LR_COMPARE_SUN, 0.0, 20.0, LR_VERDICT_ALIKE },        { LR_COMPARE_SUN, 0.0, 21.0, LR_VERDICT_BEST },
    { LR_COMPARE_EXITS, 1.0, 2.0, LR_VERDICT_BEST },        { LR_COMPARE_CEILING, 2.50, 2.55, LR_VERDICT_ALIKE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (LrComparison) comparison = blank_comparison (2);
      g_autoptr (LrCompared) compared = compare_two (comparison, cases[i].row, cases[i].a, cases[i].b);

      g_assert_cmpint (row_of (compared, cases[i].row)->verdict, ==, cases[i].verdict);
    }
}

/* Which differ most is told, which room is best is not */
static void
test_summary (void)
{
  g_autoptr (LrComparison) comparison = blank_comparison (2), alone = blank_comparison (1);
  g_autoptr (LrCompared) nothing = lr_compared_new (comparison, LR_UNITS_METRIC), single = lr_compared_new (alone, LR_UNITS_METRIC);
  g_autoptr (LrCompared) compared = NULL, little = NULL, none = NULL;

  g_assert_true (g_str_has_prefix (nothing->summary, "Nothing is known"));
  g_assert_true (g_str_has_prefix (single->summary, "There is one room only"));
  g_assert_cmpstr (row_of (single, LR_COMPARE_AREA)->why, ==, "");
  put (comparison, 0, LR_COMPARE_CEILING, LR_KNOWN, 2.5);
  put (comparison, 1, LR_COMPARE_CEILING, LR_KNOWN, 2.6);
  little = lr_compared_new (comparison, LR_UNITS_METRIC);
  g_assert_cmpstr (little->summary, ==, "They differ by little, most in ceiling (2.50\u00a0m to 2.60\u00a0m).");
  put (comparison, 1, LR_COMPARE_CEILING, LR_KNOWN, 2.52);
  none = lr_compared_new (comparison, LR_UNITS_METRIC);
  g_assert_cmpstr (none->summary, ==, "Nothing that is known of two of them tells them apart.");
  put (comparison, 0, LR_COMPARE_REVERBERATION, LR_KNOWN, 0.4);
  put (comparison, 1, LR_COMPARE_REVERBERATION, LR_KNOWN, 1.2);
  put (comparison, 0, LR_COMPARE_AREA, LR_KNOWN, 20.0);
  put (comparison, 1, LR_COMPARE_AREA, LR_KNOWN, 30.0);
  compared = lr_compared_new (comparison, LR_UNITS_METRIC);
  g_assert_cmpstr (compared->summary, ==,
                   "They differ most in reverberation (0.40\u00a0s to 1.20\u00a0s) and floor area (20.0\u00a0m² to 30.0\u00a0m²).");
}

/* What is spoken of a row has every name, figure and mark; 20 m² are 215 square feet */
static void
test_sentence (void)
{
  g_autoptr (LrComparison) comparison = blank_comparison (2);
  g_autoptr (LrCompared) compared = compare_two (comparison, LR_COMPARE_AREA, 20.0, 10.0), feet = lr_compared_new (comparison, LR_UNITS_IMPERIAL);
  g_autofree char *sentence = lr_compared_sentence (compared, row_of (compared, LR_COMPARE_AREA));

  g_assert_cmpstr (sentence, ==, "Floor area: Loft 20.0\u00a0m², best; Office 10.0\u00a0m². 10.0\u00a0m² more than Office.");
  g_assert_cmpstr (row_of (feet, LR_COMPARE_AREA)->texts[0], ==, "215\u00a0sq ft");
}

/* One room is not drawn: that is told once, not in every row */
static void
test_undrawn (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrComparison) comparison = NULL;
  g_autoptr (LrCompared) compared = NULL;
  LrPlan *next = lr_plan_new_setup (plan, "Hall", NULL);

  lr_plan_unref (plan);
  plan = next;
  comparison = lr_comparison_new (plan);
  compared = lr_compared_new (comparison, LR_UNITS_METRIC);
  g_assert_cmpstr (compared->undrawn, ==, "Hall is not drawn yet.");
  for (int row = 0; row < LR_N_COMPARES; row++)
    {
      g_assert_cmpstr (row_of (compared, row)->texts[1], ==, "room not drawn");
      g_assert_null (strstr (row_of (compared, row)->why, "Hall"));
      g_assert_cmpint (row_of (compared, row)->verdict, ==, LR_VERDICT_FEW);
    }
}

/* Each room has its own way in; what all share is told once */
static void
test_places (void)
{
  g_autoptr (LrPlan) plan = fixture_room (5.0, 4.0, 2.5);
  const char *steps[][2] = { { "access", "side door,\n12 steps" }, { NULL, "Other house" }, { "access", "lift" }, { "permission", "by word" } };
  const char *told[] = { "Way in: side door, 12 steps", NULL, NULL, NULL };
  g_autofree char *first = g_strdup (lr_plan_get_setup (plan)->name), *both = NULL;

  told[3] = both = g_strdup_printf ("%s: Way in: side door, 12 steps\nOther house: Way in: lift; Permission: by word", first);
  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    {
      LrPlan *next = steps[i][0] == NULL ? lr_plan_copy_setup (plan, steps[i][1], NULL)
                                         : lr_plan_set_location_text (plan, steps[i][0], steps[i][1], NULL);
      g_autoptr (LrComparison) comparison = lr_comparison_new (next);
      g_autoptr (LrCompared) compared = lr_compared_new (comparison, LR_UNITS_METRIC);

      lr_plan_unref (plan);
      plan = next;
      if (i <= 1)
        g_assert_cmpstr (compared->places, ==, told[0]); /* the copy is in the same place */
      else if (told[i] != NULL)
        g_assert_cmpstr (compared->places, ==, told[i]);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/comparison/ties", test_ties);
  g_test_add_func ("/comparison/unknown", test_unknown);
  g_test_add_func ("/comparison/taken", test_taken);
  g_test_add_func ("/comparison/equivalence", test_equivalence);
  g_test_add_func ("/comparison/steps", test_steps);
  g_test_add_func ("/comparison/counts", test_counts);
  g_test_add_func ("/comparison/two-winners", test_two_winners);
  g_test_add_func ("/comparison/limits", test_limits);
  g_test_add_func ("/comparison/summary", test_summary);
  g_test_add_func ("/comparison/sentence", test_sentence);
  g_test_add_func ("/comparison/places", test_places);
  g_test_add_func ("/comparison/undrawn", test_undrawn);

  return g_test_run ();
}
