/* test-exposure-advice.c - settings that make up for light, and sentences about ISO and shutter
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "fixture.h"
#include "remarks.h"

#include <string.h>

static LrRemarks *
judge (const LrPlan *plan)
{
  g_autoptr (LrStudy) study = lr_study_new (plan);

  return lr_remarks_new (study, LR_UNITS_METRIC);
}

static const LrCamera *
camera_of (const LrPlan *plan,
           const char   *id)
{
  return &lr_plan_find (plan, id)->camera;
}

/* Stops of light that it takes: N^2 2^ND / (t S), ISO 2720 */
static double
needed_stops (const LrCamera *camera)
{
  return 2.0 * log2 (camera->f_number) + camera->nd_stops - log2 (camera->shutter_s * camera->iso);
}

typedef struct
{
  const char *name, *key; /* of the remark */
  struct { const char *id, *key; double value; } edits[6];
  const char *sentence;   /* expected: of its remedy */
} AdviceCase;

#define NB "\u00a0"
#define MATCH "exposure-match:camera-2:camera-1"

/* B takes f/5.6, 1/50 s, ISO 1600; A f/2.8, 1/50 s, ISO 400: alike. Stops by hand; a density of 0.3 is a stop (ISO 5-2). What is set first:
 * common practice, no source */
static const AdviceCase advice_cases[] = {
  { "filter", MATCH, { { CAMERA_A, "iso", 100.0 } }, "Set B to a grey filter of 2 stops (density 0.6)." },
  { "variable-filter", MATCH, { { CAMERA_A, "iso", 125.0 } }, "Set B to a variable grey filter at 1.7 stops." },
  { "high-iso-first", MATCH, { { CAMERA_A, "iso", 100.0 }, { CAMERA_B, "iso", 3200.0 } }, "Set B to ISO 400." },
  { "native-kept", MATCH, { { CAMERA_A, "iso", 100.0 }, { CAMERA_B, "iso", 3200.0 }, { CAMERA_B, "native-iso", 3200.0 } },
    "Set B to a grey filter of 3 stops (density 0.9)." },
  { "to-native-first", MATCH, { { CAMERA_A, "iso", 100.0 }, { CAMERA_B, "iso", 3200.0 }, { CAMERA_B, "native-iso", 800.0 } },
    "Set B to ISO 800 and a grey filter of 1 stop (density 0.3)." },
  { "filter-off", MATCH, { { CAMERA_B, "iso", 400.0 }, { CAMERA_B, "nd-stops", 2.0 } }, "Set B to ISO 1600 without its grey filter." },
  { "part-of-a-stop", MATCH, { { CAMERA_A, "iso", 320.0 }, { CAMERA_B, "iso", 2000.0 } }, "Set B to ISO 1250." },
  { "noise", "native-iso:camera-1", { { CAMERA_A, "iso", 3200.0 }, { CAMERA_A, "native-iso", 800.0 }, { CAMERA_A, "nd-stops", 3.0 } },
    "Set A to its native ISO 800, and to a grey filter of 1 stop (density 0.3) for the light." },
  { "second-native", "native-iso:camera-1",
    { { CAMERA_A, "iso", 1600.0 }, { CAMERA_A, "native-iso", 500.0 }, { CAMERA_A, "second-native-iso", 4000.0 } },
    "Set A to its native ISO 4000, and to a variable grey filter at 1.3 stops for the light." },
  { "shutter", "shutter:camera-1", { { CAMERA_A, "shutter-s", 1.0 / 200.0 }, { CAMERA_A, "iso", 1600.0 } },
    "Set the shutter of A to 1/50" NB "s (180°), which suits mains of 50 Hz (a guess: no circuit is told); "
    "for the light set A to a grey filter of 2 stops (density 0.6)." },
};

static void
test_advice (gconstpointer data)
{
  const AdviceCase *c = data;
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrRemarks) remarks = NULL;
  const LrRemark *remark;

  for (guint i = 0; i < G_N_ELEMENTS (c->edits) && c->edits[i].id != NULL; i++)
    fixture_set (&plan, c->edits[i].id, c->edits[i].key, c->edits[i].value);
  remarks = judge (plan);
  remark = lr_remarks_find (remarks, c->key);
  g_assert_nonnull (remark);
  g_assert_nonnull (remark->remedy);
  g_assert_cmpstr (remark->remedy->sentence, ==, c->sentence);
}

/* Remedies for ISO and shutter leave the picture as bright as it was, to a third of a stop; and when two cameras are matched, they match to that */
static void
test_level_stays (void)
{
  static const double isos[] = { 100.0, 320.0, 640.0, 1250.0, 5000.0, 12800.0 }, natives[] = { 0.0, 160.0, 800.0, 3200.0 };
  static const double shutters[] = { 0.002, 0.01, 0.02, 0.06 }, filters[] = { 0.0, 1.0, 2.4, 6.0 };
  static const char *const keys[] = { "native-iso:camera-1", "shutter:camera-1" };
  g_autoptr (LrPlan) base = fixture_interview ();
  guint n_mended = 0;

  for (guint i = 0; i < 6 * 4 * 4 * 4; i++)
    {
      g_autoptr (LrPlan) plan = lr_plan_ref (base);
      g_autoptr (LrRemarks) remarks = NULL;
      const LrRemark *match;

      fixture_set (&plan, CAMERA_A, "iso", isos[i % 6]);
      fixture_set (&plan, CAMERA_A, "native-iso", natives[i / 6 % 4]);
      fixture_set (&plan, CAMERA_A, "shutter-s", shutters[i / 24 % 4]);
      fixture_set (&plan, CAMERA_A, "nd-stops", filters[i / 96]);
      remarks = judge (plan);
      for (guint k = 0; k < G_N_ELEMENTS (keys); k++)
        {
          const LrRemark *remark = lr_remarks_find (remarks, keys[k]);
          g_autoptr (LrPlan) mended = NULL;

          if (remark == NULL || remark->remedy == NULL)
            continue;
          mended = lr_remedy_apply (remark->remedy, plan, NULL);
          if (strstr (remark->remedy->sentence, "stops of light are missing") == NULL)
            assert_near (needed_stops (camera_of (mended, CAMERA_A)), needed_stops (camera_of (plan, CAMERA_A)), 0.35);
          n_mended++;
        }
      match = lr_remarks_find (remarks, MATCH);
      if (match->remedy != NULL)
        {
          g_autoptr (LrPlan) mended = lr_remedy_apply (match->remedy, plan, NULL);

          assert_near (needed_stops (camera_of (mended, CAMERA_B)), needed_stops (camera_of (mended, CAMERA_A)), 0.26);
          n_mended++;
        }
    }
  g_assert_cmpuint (n_mended, >, 100);
}

static double
clothes_step (double reflectance)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (LrLightLevels) levels = NULL;
  g_autoptr (LrRemarks) remarks = NULL;
  LrShares shares;

  fixture_set (&plan, "wenna", "clothing-reflectance-pct", reflectance);
  study = lr_study_new (plan);
  levels = lr_light_levels_new (plan, TRUE, NULL);
  remarks = lr_remarks_new_lit (study, levels, LR_UNITS_METRIC);
  g_assert_true (lr_light_levels_shares (levels, "camera-a", &shares));
  assert_near (fabs (log2 (shares.clothes / shares.background)), lr_remarks_find (remarks, "clothes:camera-a")->value, 1e-9);
  return log2 (shares.clothes / shares.background);
}

/* A matte surface is as bright as its reflectance times the light, Lambert: twice the reflectance is a stop */
static void
test_clothes (void)
{
  double dark = clothes_step (0.1), middle = clothes_step (0.2), light = clothes_step (0.4);

  assert_near (middle - dark, 1.0, 1e-6);
  assert_near (light - middle, 1.0, 1e-6);
}

/* From f/2.8 to f/5.6 are two stops: at ISO 6400 and without a filter one of them is missing, with three stops of filter none is */
static void
test_short (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrRemarks) remarks = NULL, filtered = NULL;

  fixture_set (&plan, CAMERA_B, "f-number", 2.8);
  fixture_set (&plan, CAMERA_B, "iso", 6400.0);
  remarks = judge (plan);
  g_assert_cmpstr (lr_remarks_find (remarks, "depth-of-field:camera-2")->remedy->sentence, ==,
                   "Stop B down to f/5.6, and set it to ISO 12800 (1.0 stops of light are missing) for the light.");
  fixture_set (&plan, CAMERA_B, "nd-stops", 3.0);
  filtered = judge (plan);
  g_assert_cmpstr (lr_remarks_find (filtered, "depth-of-field:camera-2")->remedy->sentence, ==,
                   "Stop B down to f/5.6, and set it to a grey filter of 1 stop (density 0.3) for the light.");
}

typedef struct
{
  const char *name;
  double      volts_v, told_hz;
  LrGrade     grade;
  const char *text;  /* expected: a part of the remark */
} FlickerCase;

/* 25 pictures a second and a fiftieth: on 50 Hz two whole pulses, on 60 Hz 2.4; 100 V have either, from memory */
static const FlickerCase flicker_cases[] = {
  { "guessed-50", 230.0, 0.0, LR_GRADE_FINE, "Lamps on mains of 50 Hz (guessed from 230 V) do not flicker in A" },
  { "guessed-60", 100.0, 0.0, LR_GRADE_FIX, "may flicker in A on mains of 60 Hz (guessed from 100 V): pictures differ by up to 13" NB "%. "
                                            "Set the shutter of A to 1/60" NB "s (150°)." },
  { "told-50", 100.0, 50.0, LR_GRADE_FINE, "Lamps on mains of 50 Hz do not flicker in A" },
  { "told-60", 230.0, 60.0, LR_GRADE_FIX, "on mains of 60 Hz: pictures" },
};

static void
test_flicker (gconstpointer data)
{
  const FlickerCase *c = data;
  g_autoptr (LrPlan) plan = fixture_interview (), told = NULL;
  g_autoptr (LrRemarks) remarks = NULL;
  const LrRemark *remark;
  const char *lamp = fixture_add (&plan, LR_ITEM_HOUSE_LIGHT, 0, 4.0, 3.0);

  fixture_set (&plan, lamp, "is-on", 1.0);
  fixture_set (&plan, lamp, "may-flicker", 1.0);
  fixture_set (&plan, fixture_add (&plan, LR_ITEM_CIRCUIT, 0, 0.0, 0.0), "volts-v", c->volts_v);
  told = lr_plan_set_location (plan, "mains-hz", c->told_hz, NULL);
  g_assert_nonnull (told);
  remarks = judge (told);
  remark = lr_remarks_find (remarks, "flicker:camera-1:house-light-1");
  g_test_message ("%s", remark->text);
  g_assert_cmpint (remark->grade, ==, c->grade);
  g_assert_nonnull (strstr (remark->text, c->text));
  /* 360 degrees x 25 / 50, by hand */
  g_assert_cmpstr (lr_remarks_find (remarks, "shutter:camera-1")->text, ==, "The shutter of A, 1/50" NB "s, is open for 180° at 25 fps.");
}

typedef struct
{
  const char *name;
  double      warm_k, cold_k;
  const char *text;   /* expected: the end of the remark */
} FilterCase;

/* 3200 to 5600 K is -133.9 by definition; published of filters: a full blue, -137, takes 3200 to 5700 K, and a full orange, +159, 5600 to about
 * 2950 K: so a full orange does not take 5600 to 3200 K */
static const FilterCase filter_cases[] = {
  { "3200-5600", 3200.0, 5600.0,
    "A blue filter of −134 MK⁻¹ (a full blue has −137) on L1 would match them, or an orange one of +134 MK⁻¹ on L2." },
  { "2950-5600", 2950.0, 5600.0,
    "A blue filter of −160 MK⁻¹ on L1 would match them, or an orange one of +160 MK⁻¹ (a full orange has +159) on L2." },
  { "4000-5600", 4000.0, 5600.0, "A blue filter of −71 MK⁻¹ on L1 would match them, or an orange one of +71 MK⁻¹ on L2." },
};

static void
test_filter (gconstpointer data)
{
  const FilterCase *c = data;
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (LrLightLevels) levels = NULL;
  g_autoptr (LrRemarks) remarks = NULL;
  const double kelvin[] = { c->warm_k, c->cold_k }, y_m[] = { 1.4, 4.4 };

  for (guint i = 0; i < 2; i++)
    {
      const char *lamp = fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 4.2, y_m[i]);

      fixture_text (&plan, lamp, "aims-at", WENNA);
      fixture_set (&plan, lamp, "color-temperature-k", kelvin[i]);
    }
  study = lr_study_new (plan);
  levels = lr_light_levels_new (plan, TRUE, NULL);
  remarks = lr_remarks_new_lit (study, levels, LR_UNITS_METRIC);
  g_test_message ("%s", lr_remarks_find (remarks, "mixed-whites:person-1")->text);
  g_assert_true (g_str_has_suffix (lr_remarks_find (remarks, "mixed-whites:person-1")->text, c->text));
}

static char *
clothes_text (double reflectance,
              double iso)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (LrLightLevels) levels = NULL;
  g_autoptr (LrRemarks) remarks = NULL;

  fixture_set (&plan, "wenna", "clothing-reflectance-pct", reflectance);
  fixture_set (&plan, "camera-a", "iso", iso);
  study = lr_study_new (plan);
  levels = lr_light_levels_new (plan, TRUE, NULL);
  remarks = lr_remarks_new_lit (study, levels, LR_UNITS_METRIC);
  return g_strdup (lr_remarks_find (remarks, "clothes:camera-a")->text);
}

/* Clothes that the exposure spoils are not changed: at ISO 400 the face is right and they are at a tenth of white, so four stops more burn them;
 * cloth that reflects a hundredth is dark at any right exposure */
static void
test_spoilt (void)
{
  g_autofree char *exposure = clothes_text (0.2, 6400.0), *cloth = clothes_text (0.01, 400.0);

  g_assert_true (g_str_has_suffix (exposure, "Set the level of the face first: then they come out."));
  g_assert_true (g_str_has_suffix (cloth, "Ask for lighter clothes."));
}

/* The camera whose face is right stays; the one that is set wrong follows it */
static void
test_wrong_one_follows (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft"), mended = NULL;
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (LrLightLevels) levels = NULL, after = NULL;
  g_autoptr (LrRemarks) remarks = NULL;
  g_autoptr (GError) error = NULL;
  const LrRemark *remark;
  LrShares a, b;

  fixture_set (&plan, "camera-a", "iso", 1600.0);
  study = lr_study_new (plan);
  levels = lr_light_levels_new (plan, TRUE, NULL);
  remarks = lr_remarks_new_lit (study, levels, LR_UNITS_METRIC);
  remark = lr_remarks_find (remarks, "exposure-match:camera-b:camera-a");
  g_assert_nonnull (remark->remedy);
  mended = lr_remedy_apply (remark->remedy, plan, &error);
  g_assert_no_error (error);
  g_assert_true (lr_plan_find (mended, "camera-b") == lr_plan_find (plan, "camera-b"));
  after = lr_light_levels_new (mended, TRUE, NULL);
  g_assert_true (lr_light_levels_shares (after, "camera-a", &a) && lr_light_levels_shares (after, "camera-b", &b));
  g_assert_cmpfloat (fabs (log2 (a.face / b.face)), <, plan->limits.value[LR_LIMIT_EXPOSURE_MATCH]);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/exposure-advice/sentence", advice_cases, test_advice);
  g_test_add_func ("/exposure-advice/short", test_short);
  add_rows ("/exposure-advice/flicker", flicker_cases, test_flicker);
  add_rows ("/exposure-advice/filter", filter_cases, test_filter);
  g_test_add_func ("/exposure-advice/clothes", test_clothes);
  g_test_add_func ("/exposure-advice/spoilt", test_spoilt);
  g_test_add_func ("/exposure-advice/wrong-one-follows", test_wrong_one_follows);
  g_test_add_func ("/exposure-advice/level-stays", test_level_stays);
  return g_test_run ();
}
