/* test-sound-chart.c - what a microphone hears, on a scale of decibels
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "sound_chart.h"

#include "plan_edit.h"
#include "plan_reader.h"

#include <string.h>

static LrStudy *
study_example (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "examples", "loft.lookroom", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) plan = lr_plan_read (path, &error);

  g_assert_no_error (error);
  return lr_study_new (plan);
}

/* Voice and room first, then noises, the loudest first; the figures are those of the study, whose own tests check them */
static void
test_rows (void)
{
  g_autoptr (LrStudy) study = study_example ();
  const LrMicrophoneSound *heard = lr_sound_find (lr_study_sound (study), "microphone-1");
  g_autofree char *words = NULL;
  LrSoundChart chart;

  g_assert_true (lr_sound_chart_read (&chart, study, "microphone-1"));
  g_assert_cmpuint (chart.n, ==, 2 + heard->noises->len);
  g_assert_cmpint (chart.rows[0].kind, ==, LR_SOUND_ROW_VOICE);
  g_assert_cmpfloat (chart.rows[0].level_db, ==, heard->voice_db);
  g_assert_cmpint (chart.rows[1].kind, ==, LR_SOUND_ROW_ROOM);
  for (guint i = 3; i < chart.n; i++)
    g_assert_cmpfloat (chart.rows[i].level_db, <=, chart.rows[i - 1].level_db);
  g_assert_cmpfloat (heard->voice_db - chart.wanted_db, ==, study->plan->limits.value[LR_LIMIT_OVER_NOISE]);
  words = lr_sound_chart_words (&chart);
  g_assert_nonnull (strstr (words, "fridge"));
  g_assert_nonnull (strstr (words, "off: +"));
  g_assert_false (lr_sound_chart_read (&chart, study, "camera-a"));
}

/* More noises than rows: the faintest are left out; a long name is cut; what is drawn stays within its height */
static void
test_many (void)
{
  g_autoptr (LrStudy) first = study_example (), study = NULL;
  g_autoptr (LrPlan) plan = lr_plan_ref (first->plan);
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  const LrTheme *theme = lr_theme_get (LR_THEME_LIGHT);
  g_autofree char *words = NULL, *more = NULL;
  double x, y, width, height;
  LrSoundChart chart;

  for (int i = 0; i < 12; i++)
    {
      g_autoptr (LrItem) item = lr_item_new (LR_ITEM_NOISE, "new");
      g_autofree char *id = NULL;
      g_autoptr (LrPlan) with = lr_plan_add (plan, item, lr_vec2 (1.0 + 0.2 * i, 1.0), 0.0, &id, NULL);
      LrPlan *named = lr_plan_change_text (with, id, "name", "ventilation over the passage to the yard", NULL);

      g_assert_nonnull (named);
      lr_plan_unref (plan);
      plan = named;
    }
  study = lr_study_new (plan);
  g_assert_true (lr_sound_chart_read (&chart, study, "microphone-2"));
  g_assert_cmpuint (chart.n, ==, LR_SOUND_CHART_MAX_ROWS);
  g_assert_cmpuint (chart.n_more, ==, 2 + lr_sound_find (lr_study_sound (study), "microphone-2")->noises->len - LR_SOUND_CHART_MAX_ROWS);
  words = lr_sound_chart_words (&chart);
  more = g_strdup_printf ("; and %u fainter ones", chart.n_more);
  g_assert_true (g_str_has_suffix (words, more));
  lr_sound_chart_draw (cr, theme, &chart, 400.0);
  cairo_recording_surface_ink_extents (surface, &x, &y, &width, &height);
  g_assert_cmpfloat (width, >, 300.0);
  g_assert_cmpfloat (y, >=, -1.0);
  g_assert_cmpfloat (y + height, <=, lr_sound_chart_height (theme, &chart) + 1.0);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sound-chart/rows", test_rows);
  g_test_add_func ("/sound-chart/many", test_many);
  return g_test_run ();
}
