/* test-summary.c - one thing in a sentence or two
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Figures are held against those of the study, whose own tests check them.
 */

#include "summary.h"

#include "fixture.h"
#include "light_readings.h"
#include "plan_edit.h"
#include "plan_reader.h"

static LrStudy *
study_example (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "examples", "loft.lookroom", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) plan = lr_plan_read (path, &error);

  g_assert_no_error (error);
  return lr_study_new (plan);
}

static void
assert_says (const char *sentence,
             double      number,
             int         decimals)
{
  g_autofree char *text = g_strdup_printf ("%.*f", decimals, number);

  g_test_message ("%s in “%s”", text, sentence);
  g_assert_nonnull (strstr (sentence, text));
}

static void
test_camera (void)
{
  g_autoptr (LrStudy) study = study_example ();

  for (guint i = 0; i < study->cameras->len; i++)
    {
      const LrCameraReading *camera = &g_array_index (study->cameras, LrCameraReading, i);
      g_autofree char *text = lr_item_summary (study, NULL, camera->item->id, LR_UNITS_METRIC);

      assert_says (text, camera->field_w_m, 2);
      assert_says (text, camera->field_h_m, 2);
      assert_says (text, camera->behind_m, 2);
      assert_says (text, 100.0 * camera->blur_share, 1);
    }
}

/* 36.0 x 20.25 mm to a square keeps 20.25 of 36 mm, 56 %; 50 mm at f/2.8 is 70 mm at f/3.9 with 1.4: by hand */
static void
test_cut (void)
{
  g_autoptr (LrStudy) study = study_example ();
  LrChange aspect = { "camera-a", "aspect", LR_ASPECT_1_1 };
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) cut = lr_plan_change (study->plan, &aspect, 1, &error);
  g_autoptr (LrPlan) plan = lr_plan_set_kit_number (cut, lr_plan_find (cut, "camera-a")->camera.lens, "converter", 1.4, &error);
  g_autoptr (LrStudy) changed = lr_study_new (plan);
  g_autofree char *before = lr_item_summary (study, NULL, "camera-a", LR_UNITS_METRIC);
  g_autofree char *after = lr_item_summary (changed, NULL, "camera-a", LR_UNITS_METRIC);
  g_autofree char *title_before = lr_camera_lens_title (lr_study_find_camera (study, "camera-a"));
  g_autofree char *title_after = lr_camera_lens_title (lr_study_find_camera (changed, "camera-a"));

  g_assert_no_error (error);
  g_assert_null (strstr (before, "delivers"));
  g_assert_nonnull (strstr (after, "Records 36.0 × 20.3 mm, delivers 20.3 × 20.3, 56 % of the width."));
  g_assert_nonnull (strstr (after, "Its converter makes it 70 mm at f/3.9."));
  g_assert_cmpstr (title_before, ==, "50 mm");
  g_assert_cmpstr (title_after, ==, "50 mm × 1.4");
}

/* Whatever it is, in both units it is valid text without a hole in it */
static void
test_all (void)
{
  g_autoptr (LrStudy) study = study_example ();

  for (guint i = 0; i < study->placed->len; i++)
    for (int units = LR_UNITS_METRIC; units <= LR_UNITS_IMPERIAL; units++)
      {
        const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);
        g_autofree char *text = lr_item_summary (study, NULL, placed->item->id, (LrUnits) units);

        g_test_message ("%s: %s", placed->item->id, text);
        g_assert_true (g_utf8_validate (text, -1, NULL));
        g_assert_null (strstr (text, "(null)"));
        g_assert_null (strstr (text, "nan"));
        g_assert_true (text[0] == '\0' || g_str_has_suffix (text, "."));
      }
}

/* From either corner of its wall, by hand: the example's east wall is 4.45 m long, the door .85 m wide and .35 m from its start */
static void
test_on_wall (void)
{
  g_autoptr (LrStudy) study = study_example ();
  g_autofree char *text = lr_item_summary (study, NULL, "door-1", LR_UNITS_METRIC);

  g_assert_cmpstr (text, ==, "On the east wall, 0.35\302\240m from the south wall and 3.25\302\240m from the north-east wall.");
}

static void
test_room (void)
{
  g_autoptr (LrStudy) study = study_example ();
  g_autofree char *metric = lr_room_summary (study, LR_UNITS_METRIC), *imperial = lr_room_summary (study, LR_UNITS_IMPERIAL);
  g_autoptr (LrPlan) empty = lr_plan_new_empty ();
  g_autoptr (LrStudy) nothing = lr_study_new (empty);
  g_autofree char *none = lr_room_summary (nothing, LR_UNITS_METRIC);

  /* 7.20 × 5.40 less the cut corner of .95 × .95 / 2 */
  assert_says (metric, 7.2 * 5.4 - 0.5 * 0.95 * 0.95, 1);
  assert_says (imperial, (7.2 * 5.4 - 0.5 * 0.95 * 0.95) / (0.3048 * 0.3048), 0);
  g_assert_cmpstr (none, ==, "");
}

/* What the lamp gives at its aim, to two figures; nothing stands between in the example */
static void
test_light (void)
{
  g_autoptr (LrStudy) study = study_example ();
  g_autofree char *text = lr_item_summary (study, NULL, "light-1", LR_UNITS_METRIC);
  LrLightAt at;
  double step;

  g_assert_true (lr_light_at_aim (study, lr_study_find_placed (study, "light-1"), &at));
  step = pow (10.0, floor (log10 (at.lux)) - 1.0);
  assert_says (text, step * round (at.lux / step), 0);
  g_assert_null (strstr (text, "hidden"));
}

/* What comes straight from lamps adds up (Grassmann: illuminances are additive): theirs and the windows' are the whole that the levels have.
 * The wall light gives the walls more than the face, the key the face more than the walls */
static void
test_spill (void)
{
  static const char *const sources[] = { "light-1", "light-2", "light-3", "window-1", "window-2", "house-light-1", "house-light-2" };
  g_autoptr (LrStudy) study = study_example ();
  g_autoptr (LrLightLevels) levels = lr_light_levels_new (study->plan, FALSE, NULL);
  g_autofree char *key = lr_item_summary (study, levels, "light-1", LR_UNITS_METRIC), *wall = lr_item_summary (study, levels, "light-3", LR_UNITS_METRIC);
  double sum_lx = 0.0;

  for (guint i = 0; i < G_N_ELEMENTS (sources); i++)
    {
      double lx = lr_light_levels_spill_lx (levels, sources[i], "camera-a");

      sum_lx += isnan (lx) ? 0.0 : lx;
    }
  g_assert_cmpfloat_with_epsilon (sum_lx, lr_light_levels_background (levels, "camera-a")->mean.direct_lx, 1e-6);
  g_assert_true (isnan (lr_light_levels_spill_lx (levels, "light-9", "camera-a")));
  g_test_message ("%s\n%s", key, wall);
  g_assert_nonnull (strstr (key, "the walls that A sees"));
  g_assert_nonnull (strstr (key, "stops less"));
  g_assert_null (strstr (wall, "stops less"));
}

/* Without hours nobody knows how bright it is outside, and the window says so; with the blind down it does not matter */
static void
test_window (void)
{
  g_autoptr (LrStudy) study = study_example (), no_hours = NULL;
  g_autoptr (LrPlan) plan = NULL;
  g_autofree char *known = lr_item_summary (study, NULL, "window-2", LR_UNITS_METRIC), *unknown = NULL, *down = NULL;
  GError *error = NULL;

  plan = lr_plan_set_job (study->plan, "time-wrap", "", &error);
  g_assert_no_error (error);
  no_hours = lr_study_new (plan);
  unknown = lr_item_summary (no_hours, NULL, "window-2", LR_UNITS_METRIC);
  down = lr_item_summary (no_hours, NULL, "window-1", LR_UNITS_METRIC);
  g_assert_null (strstr (known, "dark"));
  g_assert_nonnull (strstr (unknown, "counts as dark"));
  g_assert_null (strstr (down, "dark"));
}

/* The face of the example: its key to the right of the look, a shadow side, and how far apart they are, as the levels have them */
static void
test_face (void)
{
  g_autoptr (LrStudy) study = study_example ();
  g_autoptr (LrLightLevels) levels = lr_light_levels_new (study->plan, TRUE, NULL);
  g_autofree char *text = lr_item_summary (study, levels, "wenna", LR_UNITS_METRIC);
  g_autofree char *stops = g_strdup_printf ("%.1f stops less", lr_light_levels_face (levels, "wenna")->ratio_stops);

  g_test_message ("%s", text);
  g_assert_nonnull (strstr (text, "L1"));
  g_assert_nonnull (strstr (text, "to the right of the look"));
  g_assert_nonnull (strstr (text, stops));
  /* 45.0 to the right and 20.9 up, by hand: atan (tan 20.9 / sin 45.0) = 28.4 */
  g_assert_nonnull (strstr (text, "nose falls to their left, 28°"));
}

typedef struct
{
  const char *name, *text, *words; /* words expected, in front of which stands the flux */
} LampCase;

#define LAMP "TILT=NONE\n1 -1 1 3 "
#define LDT(width) \
  "s\n1\n4\n4\n90\n3\n30\nr\nd\n1\nd\n2026\n600\n300\n50\n600\n" width "\n0\n0\n0\n0\n100\n100\n1\n0\n1\n1\nLED\n1000\n5600\n95\n60\n1\n1\n1\n1\n1\n1\n1\n1\n1\n1\n" \
  "0\n90\n180\n270\n0\n30\n60\n1000\n0\n0\n1000\n1000\n0\n"

/* By hand: between two angles half and a tenth lie where the straight line has them. A small panel takes 60 W. In EULUMDAT the plane of C0 is
 * across the length, which lies level: the first row is upright */
static const LampCase lamp_cases[] = {
  { "round", LAMP "1 1 2 0 0 0\n1 1 60\n0 40 80\n0\n1000 500 0\n", " by its file, beam 80°, field 144°, from 0.30\u00a0m × 0.30\u00a0m." },
  { "power", LAMP "1 1 2 0 0 0\n1 1 100\n0 40 80\n0\n1000 500 0\n",
    ", field 144°, from 0.30\u00a0m × 0.30\u00a0m. It was measured at 100\u00a0W; here it takes 60\u00a0W." },
  { "oblong", LAMP "2 1 2 0.2 1.2 0\n1 1 60\n0 30 60\n0 90\n1000 0 0\n1000 1000 0\n",
    " by its file, beam 30° × 90°, field 54° × 114°, from 1.20\u00a0m × 0.20\u00a0m." },
  { "ldt", LDT ("200"), " by its file, beam 90° × 30°, field 114° × 54°, from 0.60\u00a0m × 0.20\u00a0m." },
  { "upwards", LAMP "1 1 2 0 0 0\n1 1 60\n90 135 180\n0\n0 500 500\n", " by its file, none of it straight ahead, from 0.30\u00a0m × 0.30\u00a0m." },
};

static void
test_lamp_file (gconstpointer data)
{
  const LampCase *c = data;
  g_autoptr (LrPlan) empty = fixture_room (4.0, 3.0, 2.5), plan = NULL;
  const char *id = fixture_add (&empty, LR_ITEM_LIGHT, LR_LIGHT_PANEL, 1.0, 1.0);
  g_autoptr (GError) error = NULL;
  g_autofree char *words = NULL, *flux = NULL;

  g_assert_null (lr_lamp_file_words (lr_plan_find (empty, id), LR_UNITS_METRIC));
  plan = lr_plan_set_lamp_file (empty, id, "lamp", c->text, strlen (c->text), &error);
  g_assert_no_error (error);
  words = lr_lamp_file_words (lr_plan_find (plan, id), LR_UNITS_METRIC);
  flux = g_strdup_printf ("%.0f\u00a0lm by its file, ", lr_plan_find (plan, id)->lamp_file->flux_lm);
  g_assert_true (g_str_has_prefix (words, flux));
  if (!g_str_has_suffix (words, c->words))
    g_error ("“%s” does not end in “%s”", words, c->words);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/summary/camera", test_camera);
  g_test_add_func ("/summary/cut", test_cut);
  g_test_add_func ("/summary/all", test_all);
  g_test_add_func ("/summary/on-wall", test_on_wall);
  g_test_add_func ("/summary/room", test_room);
  g_test_add_func ("/summary/light", test_light);
  g_test_add_func ("/summary/spill", test_spill);
  g_test_add_func ("/summary/window", test_window);
  g_test_add_func ("/summary/face", test_face);
  add_rows ("/summary/lamp-file", lamp_cases, test_lamp_file);
  return g_test_run ();
}
