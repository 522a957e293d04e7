/* test-preroll.c - checks before rolling have the plan's numbers
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "fixture.h"

#include "preroll.h"
#include "run_words.h"

#include <string.h>

static GPtrArray *
checks_of (const LrPlan *plan,
           gboolean      is_lit)
{
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrRemarks) remarks = lr_remarks_new (study, LR_UNITS_METRIC);
  LrLightLevels *levels = is_lit ? lr_light_levels_new (plan, FALSE, NULL) : NULL;
  GPtrArray *checks = lr_preroll_new (study, levels, remarks, LR_UNITS_METRIC);

  g_clear_pointer (&levels, lr_light_levels_unref);
  return checks;
}

/* (transfer full) (nullable): the line without markup */
static char *
line_of (const GPtrArray *checks,
         const char      *key)
{
  for (guint i = 0; i < checks->len; i++)
    {
      const LrPrerollCheck *check = g_ptr_array_index (checks, i);

      if (strcmp (check->key, key) == 0)
        return lr_markup_to_text (check->markup);
    }
  return NULL;
}

static void
assert_says (const GPtrArray *checks,
             const char      *key,
             const char      *words)
{
  g_autofree char *line = line_of (checks, key);

  g_assert_nonnull (line);
  g_test_message ("%s", line);
  g_assert_nonnull (strstr (line, words));
}

/* Numbers that are set are told as they are set. 180° at 25 pictures: 1/50 s; three stops: density 0.9 (log10 8 = 0.903) */
static void
test_numbers (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (GPtrArray) checks = NULL;

  fixture_set (&plan, CAMERA_A, "frame-rate-fps", 25.0);
  fixture_set (&plan, CAMERA_A, "shutter-s", 0.02);
  fixture_set (&plan, CAMERA_A, "iso", 1234.0);
  fixture_set (&plan, CAMERA_A, "white-balance-k", 4300.0);
  fixture_set (&plan, CAMERA_A, "nd-stops", 3.0);
  checks = checks_of (plan, FALSE);
  assert_says (checks, "shutter:" CAMERA_A, "25 pictures a second, shutter 1/50");
  assert_says (checks, "shutter:" CAMERA_A, "180°");
  assert_says (checks, "exposure:" CAMERA_A, "1234");
  assert_says (checks, "exposure:" CAMERA_A, "4300");
  assert_says (checks, "exposure:" CAMERA_A, "0.9 (3 stops)");
  assert_says (checks, "tone", "30");
  assert_says (checks, "focus:" CAMERA_A, "Wenna");
}

/* Keys are each there once, groups in their order, all lines parse */
static void
test_order (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (GPtrArray) checks = checks_of (plan, TRUE);
  g_autoptr (GHashTable) keys = g_hash_table_new (g_str_hash, g_str_equal);
  int group = 0;

  for (guint i = 0; i < checks->len; i++)
    {
      LrPrerollCheck *check = g_ptr_array_index (checks, i);
      g_autofree char *markup = g_strdup_printf ("<x>%s</x>", check->markup);
      g_autoptr (GMarkupParseContext) context = g_markup_parse_context_new (&(GMarkupParser) { NULL }, 0, NULL, NULL);

      g_assert_true (g_hash_table_add (keys, check->key));
      g_assert_cmpint ((int) check->group, >=, group);
      g_assert_true (g_markup_parse_context_parse (context, markup, -1, NULL));
      group = (int) check->group;
    }
  assert_says (checks, "level:camera-a", "expected");
  assert_says (checks, "glasses:wenna", "glasses");
}

/* What will go wrong is told first; what is not there is not looked at */
static void
test_follows (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (GPtrArray) before = checks_of (plan, FALSE), after = NULL;
  g_autofree char *glasses = line_of (before, "glasses:" WENNA), *none = NULL;

  g_assert_null (glasses);
  g_assert_cmpint (((const LrPrerollCheck *) g_ptr_array_index (before, 0))->group, !=, LR_PREROLL_OPEN);
  fixture_set (&plan, WENNA, "has-glasses", 1.0);
  fixture_move (&plan, CAMERA_B, 3.0, 3.05); /* in Wenna's lap */
  after = checks_of (plan, FALSE);
  assert_says (after, "glasses:" WENNA, "glasses");
  g_assert_cmpint (((const LrPrerollCheck *) g_ptr_array_index (after, 0))->group, ==, LR_PREROLL_OPEN);
  none = line_of (after, "peaks");
  g_assert_null (none); /* no microphone */
}

static const char *
tick_of (const GPtrArray *checks,
         const char      *key)
{
  for (guint i = 0; i < checks->len; i++)
    {
      const LrPrerollCheck *check = g_ptr_array_index (checks, i);

      if (strcmp (check->key, key) == 0)
        return check->tick;
    }
  return NULL;
}

/* A check is ticked for its figures: another ISO opens it again; other units, levels that come later, and another camera do not */
static void
test_ticks (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (GPtrArray) before = checks_of (plan, FALSE), lit = checks_of (plan, TRUE), after = NULL;
  g_autoptr (GPtrArray) feet = lr_preroll_new (study, NULL, NULL, LR_UNITS_IMPERIAL);

  for (guint i = 0; i < feet->len; i++)
    {
      const LrPrerollCheck *check = g_ptr_array_index (feet, i);

      g_assert_cmpstr (check->tick, ==, tick_of (before, check->key));
      if (tick_of (lit, check->key) != NULL)
        g_assert_cmpstr (check->tick, ==, tick_of (lit, check->key));
    }
  fixture_set (&plan, CAMERA_A, "iso", 1234.0);
  after = checks_of (plan, FALSE);
  g_assert_cmpstr (tick_of (after, "exposure:" CAMERA_A), !=, tick_of (before, "exposure:" CAMERA_A));
  g_assert_cmpstr (tick_of (after, "exposure:" CAMERA_B), ==, tick_of (before, "exposure:" CAMERA_B));
  g_assert_cmpstr (tick_of (after, "water"), ==, "water");
}

/* What is listed to be switched off is off when it is rolled: the voice is told over what is left then, as in a plan where it is off */
static void
test_noise_off (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (GPtrArray) before = checks_of (plan, FALSE), after = NULL;
  g_autofree char *asked = line_of (before, "microphone:microphone-1"), *off = NULL;
  const char *figure;

  g_assert_nonnull (asked);
  g_assert_true (g_str_has_suffix (asked, "expected, once all is off that can be."));
  for (guint i = 0; i < lr_plan_get_setup (plan)->items->len; i++)
    {
      const LrItem *item = lr_plan_get_setup (plan)->items->pdata[i];

      if (item->kind == LR_ITEM_NOISE)
        fixture_set (&plan, item->id, "is-off", 1.0);
    }
  after = checks_of (plan, FALSE);
  off = line_of (after, "microphone:microphone-1");
  figure = strstr (asked, "voice");
  g_test_message ("%s\n%s", asked, off);
  g_assert_cmpint (strncmp (strstr (off, "voice"), figure, strcspn (figure, ",")), ==, 0);
}

/* Escaped wherever a name stands */
static void
test_names (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (GPtrArray) checks = NULL;

  fixture_text (&plan, WENNA, "name", "<Wenna & co>");
  fixture_text (&plan, WENNA, "clothing", "a <b>");
  checks = checks_of (plan, FALSE);
  assert_says (checks, "clothes:" WENNA, "<Wenna & co> wears a <b>:");
}

/* The day of the example is too short by an estimate; with more time nothing is said */
static void
test_run_notes (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrPlan) early = lr_plan_set_job (plan, "time-in", "06:00", NULL);
  g_autoptr (LrPlan) shorter = lr_plan_set_job (early, "time-wrap", "11:00", NULL);
  g_autoptr (LrStudy) study = lr_study_new (plan), wide = lr_study_new (shorter);
  g_autoptr (LrRunSheet) sheet = lr_run_sheet_new (study), wide_sheet = lr_run_sheet_new (wide);
  g_autoptr (GPtrArray) notes = lr_run_notes (sheet), wide_notes = lr_run_notes (wide_sheet);
  g_autofree char *hours = lr_duration_format (150), *minutes = lr_duration_format (45), *whole = lr_duration_format (120);

  g_autofree char *heading = lr_run_heading (sheet, LR_RUN_RIG), *roll = lr_run_heading (sheet, LR_RUN_ROLL);

  g_assert_true (g_str_has_prefix (heading, "Before rolling: 2 h"));
  g_assert_null (strstr (heading, "planned")); /* the note tells it */
  g_assert_cmpstr (roll, ==, "Rolling: 1 h 30 min"); /* the interview has what is left */
  g_assert_cmpuint (notes->len, >, 0);
  g_assert_nonnull (strstr (g_ptr_array_index (notes, 0), "longer than the <b>1 h 30 min</b> planned before rolling"));
  g_assert_cmpuint (wide_notes->len, ==, 0);
  g_assert_cmpstr (hours, ==, "2 h 30 min");
  g_assert_cmpstr (minutes, ==, "45 min");
  g_assert_cmpstr (whole, ==, "2 h");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/preroll/numbers", test_numbers);
  g_test_add_func ("/preroll/order", test_order);
  g_test_add_func ("/preroll/follows", test_follows);
  g_test_add_func ("/preroll/ticks", test_ticks);
  g_test_add_func ("/preroll/noise-off", test_noise_off);
  g_test_add_func ("/preroll/names", test_names);
  g_test_add_func ("/preroll/run-notes", test_run_notes);

  return g_test_run ();
}
