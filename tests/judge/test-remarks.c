/* test-remarks.c - remarks of the loft, their words, their order, and remedies over random plans
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "contract.h"
#include "fixture.h"
#include "plan_writer.h"
#include "remarks.h"

#include <string.h>

static LrRemarks *
judge (const LrPlan *plan,
       LrUnits       units)
{
  g_autoptr (LrStudy) study = lr_study_new (plan);

  return lr_remarks_new (study, units);
}

typedef struct
{
  const char *name, *example, *key;
  LrUnits     units;
  LrGrade     grade;
  const char *markup;
} SentenceCase;

#define NB "\u00a0"

/* Source of the figures: as in the study's test of the loft, by hand. From 22.04 to 32 degrees at 2.599 m from the middle of the
 * head is a chord of 2 x 2.599 x sin 4.98 = 0.451 m; 2 log2 (5.6 / 2.8) = 2 stops */
static const SentenceCase sentence_cases[] = {
  { "cut", "loft", "cut:camera-a:camera-b", LR_UNITS_METRIC, LR_GRADE_FIX,
    "Seen from Wenna, B stands only <b>22°</b> round from A; under <b>30°</b> the cut jumps. "
    "Move B <b>0.45" NB "m</b> towards the north wall, to <b>32°</b>." },
  { "cut-imperial", "loft", "cut:camera-a:camera-b", LR_UNITS_IMPERIAL, LR_GRADE_FIX,
    "Seen from Wenna, B stands only <b>22°</b> round from A; under <b>30°</b> the cut jumps. "
    "Move B <b>1′" NB "6″</b> towards the north wall, to <b>32°</b>." },
  { "depth", "loft", "depth-of-field:camera-b", LR_UNITS_METRIC, LR_GRADE_MIND,
    "B is sharp over <b>13" NB "cm</b>, from <b>2.47</b> to <b>2.60" NB "m</b>. If Wenna leans in by <b>7" NB "cm</b> the eyes go "
    "soft. Stop B down to <b>f/5.6</b>, and set it to ISO <b>800</b> without its grey filter for the light." },
  { "gaze", "loft", "gaze:camera-a", LR_UNITS_METRIC, LR_GRADE_FINE,
    "Wenna looks <b>18°</b> past A, between <b>8°</b> and <b>20°</b>." },
  { "distance", "loft", "face-distance:camera-a", LR_UNITS_METRIC, LR_GRADE_FINE,
    "A is <b>2.14" NB "m</b> from Wenna’s eyes: the nose is drawn <b>9" NB "%</b> larger than the ears." },
};

static void
test_sentence (gconstpointer data)
{
  const SentenceCase *c = data;
  g_autoptr (LrPlan) plan = fixture_example (c->example);
  g_autoptr (LrRemarks) remarks = judge (plan, c->units);
  const LrRemark *remark = lr_remarks_find (remarks, c->key);

  g_assert_nonnull (remark);
  g_assert_cmpint (remark->grade, ==, c->grade);
  g_assert_cmpstr (remark->markup, ==, c->markup);
}

/* With the remedy B is 32 degrees round from A, on the same circle, and the check is fine */
static void
test_loft_mended (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft"), mended = NULL;
  g_autoptr (LrRemarks) remarks = judge (plan, LR_UNITS_METRIC), after = NULL;
  const LrRemark *cut = lr_remarks_find (remarks, "cut:camera-a:camera-b");
  g_autoptr (LrStudy) study = NULL;
  const LrPlaced *b;

  g_assert_cmpstr (cut->ids[0], ==, "camera-b");
  g_assert_cmpstr (cut->remedy->short_figure, ==, "0.45" NB "m");
  mended = lr_remedy_apply (cut->remedy, plan, NULL);
  study = lr_study_new (mended);
  after = lr_remarks_new (study, LR_UNITS_METRIC);
  b = lr_study_find_placed (study, "camera-b");
  assert_near (b->at_m.x, 2.6 + 2.5994 * 0.88198, 0.001); /* cos (32 - 3.883) degrees = 0.88198 */
  assert_near (b->at_m.y, 2.95 + 2.5994 * 0.47127, 0.001);
  assert_near (g_array_index (study->pairs, LrPairReading, 0).angle_rad / LR_DEG, 32.0, 0.03);
  g_assert_cmpint (lr_remarks_find (after, "cut:camera-a:camera-b")->grade, ==, LR_GRADE_FINE);
  g_assert_cmpuint (after->n[LR_GRADE_FIX], ==, 0);
}

/* Fix, then Mind, then Fine; within each in the order of the checks, and the same every time */
static void
test_order (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("bare-office");
  g_autoptr (LrRemarks) remarks = judge (plan, LR_UNITS_METRIC), again = judge (plan, LR_UNITS_METRIC);
  guint n[LR_N_GRADES] = { 0 };

  g_assert_cmpuint (remarks->all->len, ==, again->all->len);
  for (guint i = 0; i < remarks->all->len; i++)
    {
      const LrRemark *remark = remarks->all->pdata[i];

      n[remark->grade]++;
      g_assert_cmpstr (remark->text, ==, ((LrRemark *) again->all->pdata[i])->text);
      if (i > 0)
        g_assert_cmpint (((LrRemark *) remarks->all->pdata[i - 1])->grade, <=, remark->grade);
      for (guint j = 0; j < i; j++)
        g_assert_cmpstr (((LrRemark *) remarks->all->pdata[j])->key, !=, remark->key);
    }
  for (LrGrade grade = 0; grade < LR_N_GRADES; grade++)
    {
      g_assert_cmpuint (n[grade], ==, remarks->n[grade]);
      g_assert_cmpuint (n[grade], >, 0);
    }
}

/* A standing interviewer over a seated subject: the lens cannot be level with the eyes and with the look, so one remedy at most
 * sets its height */
static void
test_one_way (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("bare-office");
  g_autoptr (LrRemarks) remarks = judge (plan, LR_UNITS_METRIC);
  guint n_heights = 0;

  g_assert_cmpint (lr_remarks_find (remarks, "eyeline:camera-a")->grade, ==, LR_GRADE_MIND);
  for (guint i = 0; i < remarks->all->len; i++)
    {
      const LrRemark *remark = remarks->all->pdata[i];

      for (guint j = 0; remark->remedy != NULL && j < remark->remedy->changes->len; j++)
        {
          const LrChange *change = &g_array_index (remark->remedy->changes, LrChange, j);

          n_heights += g_str_equal (change->id, "camera-a") && g_str_equal (change->key, "lens-height-mm");
        }
    }
  g_assert_cmpuint (n_heights, ==, 1);
}

/* A remark marks the first thing that it is about: the one that would be moved */
static void
test_worst (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrRemarks) remarks = judge (plan, LR_UNITS_METRIC);

  g_assert_cmpint (lr_remarks_worst_for (remarks, "camera-b"), ==, LR_GRADE_FIX);
  g_assert_cmpint (lr_remarks_worst_for (remarks, "camera-a"), !=, LR_GRADE_FIX);
  g_assert_cmpint (lr_remarks_worst_for (remarks, "wenna"), ==, LR_GRADE_MIND); /* the sun */
  g_assert_cmpint (lr_remarks_worst_for (remarks, "ines"), ==, LR_GRADE_FINE);
  g_assert_cmpint (lr_remarks_worst_for (remarks, "nobody"), ==, LR_GRADE_FINE);
}

/* The sun is told by window, with its minutes, and as surely as the sky of the job has it; minutes are held against rays elsewhere. Half a
 * blind is offered where it is enough, all of it where it is not, cloth where there is none */
static void
test_sun (void)
{
  static const struct { LrSky sky; const char *roll; int blind; const char *words, *mended; } cases[] = {
    { LR_SKY_OVERCAST, "10:00", LR_BLIND_UP, "If it shines, the sun comes through window 2: on Wenna’s face 10:00 to 10:24", "half down by 10:00" },
    { LR_SKY_CLEAR, "10:00", LR_BLIND_UP, "The sun comes through window 2: on Wenna’s face 10:00 to 10:24", "half down by 10:00" },
    { LR_SKY_CLEAR, "08:30", LR_BLIND_UP, "on Wenna’s face 09:08 to 10:24, on the clothes 08:53 to", "Let down the blind of window 2 by 08:53" },
    { LR_SKY_CLEAR, "10:00", LR_BLIND_NONE, "on Wenna’s face 10:00 to 10:24", "Cover window 2 by 10:00" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (LrPlan) whole = fixture_example ("loft"), begun = lr_plan_set_job (whole, "time-roll", cases[i].roll, NULL);
      g_autoptr (LrPlan) plan = lr_plan_set_job_number (begun, "sky", cases[i].sky, NULL);
      g_autoptr (LrRemarks) remarks = NULL;
      const LrRemark *remark;

      fixture_set (&plan, "window-2", "blind", cases[i].blind);
      remarks = judge (plan, LR_UNITS_METRIC);
      remark = lr_remarks_find (remarks, "sun:wenna:window-2");
      g_assert_nonnull (remark);
      g_test_message ("%s | %s", remark->text, remark->remedy->sentence);
      g_assert_nonnull (strstr (remark->text, cases[i].words));
      g_assert_nonnull (strstr (remark->remedy->sentence, cases[i].mended));
      g_assert_null (lr_remarks_find (remarks, "sun:wenna")); /* nothing reaches them */
    }
}

/* What people write is shown as they wrote it */
/* A subject nearer than the 0.80 m at which the lens begins to focus: the camera goes back by what is missing, to a centimetre,
 * and on its own line from the eyes. A converter behind the lens leaves its nearest focus as it is. */
static void
test_too_near (void)
{
  for (double converter = 1.0; converter < 2.5; converter++)
    {
      g_autoptr (LrPlan) plan = fixture_interview (), mended = NULL;
      g_autoptr (LrRemarks) remarks = NULL;
      g_autoptr (LrStudy) before = NULL, after = NULL;
      g_autoptr (GError) error = NULL;
      g_autoptr (LrPlan) converted = lr_plan_set_kit_number (plan, "lens-85", "converter", converter, &error);
      const LrRemark *remark;

      g_assert_no_error (error);
      fixture_text (&converted, CAMERA_B, "lens", "lens-85");
      fixture_move (&converted, CAMERA_B, 3.45, 3.55);
      before = lr_study_new (converted);
      remarks = lr_remarks_new (before, LR_UNITS_METRIC);
      remark = lr_remarks_find (remarks, "lens-range:" CAMERA_B);
      g_assert_nonnull (remark);
      g_assert_cmpint (remark->grade, ==, LR_GRADE_FIX);
      g_assert_nonnull (remark->remedy);
      mended = lr_remedy_apply (remark->remedy, converted, &error);
      g_assert_no_error (error);
      after = lr_study_new (mended);
      g_assert_cmpfloat (fixture_camera (before, CAMERA_B)->distance_m, <, 0.8);
      g_assert_cmpfloat (fixture_camera (after, CAMERA_B)->distance_m, >=, 0.8);
      g_assert_cmpfloat (fixture_camera (after, CAMERA_B)->distance_m, <, 0.81);
      assert_near (fixture_camera (after, CAMERA_B)->line_margin_rad, fixture_camera (before, CAMERA_B)->line_margin_rad, 0.002);
    }
}

static void
test_names (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrRemarks) remarks = NULL;
  const LrRemark *gaze;

  fixture_text (&plan, WENNA, "name", "W<b>&\"%s’");
  remarks = judge (plan, LR_UNITS_METRIC);
  gaze = lr_remarks_find (remarks, "gaze:camera-1");
  g_assert_true (g_str_has_prefix (gaze->text, "W<b>&\"%s’ looks "));
  g_assert_true (g_str_has_prefix (gaze->markup, "W&lt;b&gt;&amp;&quot;%s’ looks "));
}

/* The user's limits count, not the defaults */
static void
test_limits (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrPlan) loose = lr_plan_set_limit (plan, LR_LIMIT_CUT_ANGLE, 20.0 * LR_DEG, NULL);
  g_autoptr (LrRemarks) remarks = judge (loose, LR_UNITS_METRIC);

  g_assert_cmpint (lr_remarks_find (remarks, "cut:camera-a:camera-b")->grade, ==, LR_GRADE_FINE);
}

/* An empty plan says what to do first, and judges nothing */
static void
test_empty (void)
{
  g_autoptr (LrPlan) plan = fixture_empty ();
  g_autoptr (LrRemarks) remarks = judge (plan, LR_UNITS_METRIC);

  g_assert_nonnull (lr_remarks_find (remarks, "missing:room"));
  g_assert_nonnull (lr_remarks_find (remarks, "missing:subject"));
  g_assert_nonnull (lr_remarks_find (remarks, "missing:camera"));
  g_assert_cmpuint (remarks->n[LR_GRADE_FIX], ==, 0);
  g_assert_cmpuint (remarks->all->len, ==, 3);
}

static void
test_json (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrRemarks) remarks = judge (plan, LR_UNITS_METRIC);
  g_autoptr (JsonNode) node = lr_remarks_to_json (remarks);
  JsonObject *root = json_node_get_object (node);
  JsonArray *all = json_object_get_array_member (root, "remarks");
  JsonObject *cut = json_array_get_object_element (all, 0);
  JsonArray *changes = json_object_get_array_member (json_object_get_object_member (cut, "remedy"), "changes");

  g_assert_cmpstr (json_object_get_string_member (root, "format"), ==, "lookroom-remarks");
  g_assert_cmpint (json_object_get_int_member (json_object_get_object_member (root, "counts"), "fix"), ==, 1);
  g_assert_cmpuint (json_array_get_length (all), ==, remarks->all->len);
  g_assert_cmpstr (json_object_get_string_member (cut, "check"), ==, "cut");
  g_assert_cmpstr (json_object_get_string_member (cut, "grade"), ==, "fix");
  assert_near (json_object_get_double_member (cut, "value-deg"), 22.04, 0.01);
  assert_near (json_object_get_double_member (cut, "limit-deg"), 30.0, 1e-9);
  g_assert_cmpstr (json_object_get_string_member (json_array_get_object_element (changes, 0), "key"), ==, "x-mm");
  assert_near (json_object_get_double_member (json_array_get_object_element (changes, 0), "value"), 4893.0, 1.0);
  g_assert_cmpstr (json_object_get_string_member (cut, "source"), !=, "");
}

static double
pick (double low,
      double high)
{
  return g_test_rand_double_range (low, high);
}

/* An interview that somebody has thrown into the room */
static LrPlan *
random_plan (void)
{
  LrPlan *plan = fixture_interview ();
  static const char *const all[] = { WENNA, INES, CAMERA_A, CAMERA_B };

  for (guint i = 0; i < G_N_ELEMENTS (all); i++)
    fixture_move (&plan, all[i], pick (0.5, 7.5), pick (0.5, 5.5));
  for (int i = 0; i < 4; i++)
    fixture_add (&plan, i % 2 ? LR_ITEM_LIGHT : LR_ITEM_FURNITURE, 0, pick (0.0, 8.0), pick (0.0, 6.0));
  fixture_set (&plan, CAMERA_A, "lens-height-mm", pick (0.6, 1.9));
  fixture_set (&plan, CAMERA_B, "f-number", pick (1.4, 8.0));
  fixture_set (&plan, CAMERA_B, "down-pct", pick (0.1, 0.6));
  fixture_set (&plan, INES, "eye-height-mm", pick (1.0, 1.5));
  return plan;
}

/* No remedy of any plan leaves its own remark standing, makes a Fix, or moves a thing into another's way */
static void
test_remedies (void)
{
  guint n_remedies = 0;

  for (int round = 0; round < 60; round++)
    {
      g_autoptr (LrPlan) plan = random_plan ();
      g_autoptr (LrRemarks) remarks = judge (plan, LR_UNITS_METRIC);

      for (guint i = 0; i < remarks->all->len; i++)
        {
          const LrRemark *remark = remarks->all->pdata[i];
          g_autoptr (LrPlan) mended = NULL;
          g_autoptr (LrRemarks) after = NULL;

          if (remark->remedy == NULL)
            continue;

          n_remedies++;
          g_assert_cmpint (remark->grade, !=, LR_GRADE_FINE);
          mended = lr_remedy_apply (remark->remedy, plan, NULL);
          g_assert_nonnull (mended);
          after = judge (mended, LR_UNITS_METRIC);
          contract_check (remark, remarks, after);
        }
    }
  g_test_message ("%u remedies applied", n_remedies);
  g_assert_cmpuint (n_remedies, >, 60);
}

/* A table over the lens hides a leg of a light from A, and stands in A's tripod: no remedy moves it so that the leg is seen */
static void
test_hiding (void)
{
  static const struct { const char *id; double x_m, y_m; } places[] = {
    { WENNA, 7.086, 4.351 }, { INES, 5.303, 1.887 }, { CAMERA_A, 0.514, 3.811 }, { CAMERA_B, 5.681, 2.497 },
  };
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrRemarks) remarks = NULL;
  const char *light;

  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    fixture_move (&plan, places[i].id, places[i].x_m, places[i].y_m);
  fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_TABLE, 0.621, 4.274);
  light = fixture_add (&plan, LR_ITEM_LIGHT, LR_LIGHT_WIDE, 2.961, 5.047);
  fixture_set (&plan, CAMERA_A, "lens-height-mm", 0.809);
  fixture_set (&plan, INES, "eye-height-mm", 1.376);
  remarks = judge (plan, LR_UNITS_METRIC);
  for (guint i = 0; i < remarks->all->len; i++)
    {
      const LrRemark *remark = remarks->all->pdata[i];
      g_autoptr (LrPlan) mended = remark->remedy != NULL ? lr_remedy_apply (remark->remedy, plan, NULL) : NULL;
      g_autoptr (LrRemarks) after = mended != NULL ? judge (mended, LR_UNITS_METRIC) : NULL;
      g_autofree char *key = g_strconcat ("in-frame:", light, ":", CAMERA_A, NULL);

      g_assert_cmpstr (remark->key, !=, key);
      g_assert_true (after == NULL || lr_remarks_find (after, key) == NULL);
    }
}

/* A plan of a newer version can only be read: nothing to mend with */
static void
test_read_only (void)
{
  g_autoptr (LrPlan) plan = fixture_example ("loft");
  g_autoptr (LrRemarks) remarks = NULL;

  plan->is_read_only = TRUE;
  remarks = judge (plan, LR_UNITS_METRIC);
  for (guint i = 0; i < remarks->all->len; i++)
    g_assert_null (((LrRemark *) remarks->all->pdata[i])->remedy);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/remarks/sentence", sentence_cases, test_sentence);
  g_test_add_func ("/remarks/loft-mended", test_loft_mended);
  g_test_add_func ("/remarks/order", test_order);
  g_test_add_func ("/remarks/hiding", test_hiding);
  g_test_add_func ("/remarks/one-way", test_one_way);
  g_test_add_func ("/remarks/worst", test_worst);
  g_test_add_func ("/remarks/sun", test_sun);
  g_test_add_func ("/remarks/too-near", test_too_near);
  g_test_add_func ("/remarks/names", test_names);
  g_test_add_func ("/remarks/limits", test_limits);
  g_test_add_func ("/remarks/empty", test_empty);
  g_test_add_func ("/remarks/json", test_json);
  g_test_add_func ("/remarks/remedies", test_remedies);
  g_test_add_func ("/remarks/read-only", test_read_only);

  return g_test_run ();
}
