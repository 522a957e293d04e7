/* test-checks.c - the contract of every check
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What each check holds against a plan is tested with the study; here that every check has its row, can be provoked, speaks
 * in figures with its limit, marks the sheet, and keeps its remedy's promise.
 */

#include "config.h"

#include "contract.h"
#include "provoke.h"

#include <string.h>

static void
test_table (void)
{
  for (LrCheck a = 0; a < LR_N_CHECKS; a++)
    {
      const LrCheckInfo *info = lr_check_info (a);
      guint n_provoked = 0;

      g_assert_nonnull (info->word);
      g_assert_nonnull (info->title);
      g_assert_nonnull (info->source);
      g_assert_cmpstr (info->source, !=, "");
      for (LrCheck b = 0; b < a; b++)
        g_assert_cmpstr (lr_check_info (b)->word, !=, info->word);
      if (info->limit != LR_N_LIMITS)
        g_assert_cmpstr (lr_limit_info (info->limit)->source, !=, "");
      for (gsize i = 0; i < n_provocations; i++)
        n_provoked += provocations[i].check == a;
      if (n_provoked == 0)
        g_error ("nothing provokes “%s”", info->word);
    }
}

/* Nothing but that nobody listens: the interview of the tests has no microphone */
static void
test_nothing_wrong (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrRemarks) remarks = lr_remarks_new (study, LR_UNITS_METRIC);

  for (guint i = 0; i < remarks->all->len; i++)
    {
      const LrRemark *remark = remarks->all->pdata[i];

      g_test_message ("%s", remark->text);
      g_assert_cmpint (remark->grade, ==, g_str_equal (remark->key, "missing:microphone") ? LR_GRADE_MIND : LR_GRADE_FINE);
    }
  g_assert_nonnull (lr_remarks_find (remarks, "missing:microphone"));
  g_assert_cmpuint (remarks->n[LR_GRADE_FINE] + 1, ==, remarks->all->len);
}

static void
ignore_element (GMarkupParseContext *context G_GNUC_UNUSED,
                const char          *element,
                const char         **names G_GNUC_UNUSED,
                const char         **values G_GNUC_UNUSED,
                gpointer             data,
                GError             **error G_GNUC_UNUSED)
{
  if (g_str_equal (element, "b"))
    (*(guint *) data)++;
  else
    g_assert_cmpstr (element, ==, "span");
}

/* Markup is well formed; returns how many figures it holds */
static guint
count_figures (const char *markup)
{
  static const GMarkupParser parser = { .start_element = ignore_element };
  g_autofree char *whole = g_strconcat ("<span>", markup, "</span>", NULL);
  g_autoptr (GError) error = NULL;
  guint n = 0;
  GMarkupParseContext *context = g_markup_parse_context_new (&parser, 0, &n, NULL);

  g_markup_parse_context_parse (context, whole, -1, &error);
  g_assert_no_error (error);
  g_markup_parse_context_end_parse (context, &error);
  g_assert_no_error (error);
  g_markup_parse_context_free (context);

  return n;
}

/* A figure and its unit hold together, a minus is one */
static void
check_typography (const char *text)
{
  g_assert_null (strchr (text, '\n'));
  g_assert_false (g_regex_match_simple ("[0-9] (m|cm|mm|%)( |[.,;:]|$)", text, 0, 0));
  g_assert_false (g_regex_match_simple ("(^| )-[0-9]", text, 0, 0));
  g_assert_null (strstr (text, "<b>"));
  g_assert_null (strstr (text, "nan"));
  g_assert_null (strstr (text, "  "));
}

static void
check_remark (const LrRemark *remark)
{
  const char *word = lr_check_info (remark->check)->word;

  g_assert_true (g_str_has_prefix (remark->key, word));
  g_assert_true (g_utf8_validate (remark->markup, -1, NULL));
  check_typography (remark->text);
  if (remark->check != LR_CHECK_MISSING)
    g_assert_cmpuint (count_figures (remark->markup), >=, 1);
  for (guint i = 0; i < remark->marks->len; i++)
    {
      const LrMark *mark = &g_array_index (remark->marks, LrMark, i);

      g_assert_true (isfinite (mark->a_m.x) && isfinite (mark->b_m.y) && isfinite (mark->to_rad));
      g_assert_cmpfloat (mark->from_rad, <=, mark->to_rad);
    }
}

static void
test_provoked (gconstpointer data)
{
  const Provocation *p = data;
  g_autoptr (LrPlan) plan = provoke (p);
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrRemarks) remarks = provoked_remarks (p, study, LR_UNITS_METRIC);
  const LrRemark *remark = lr_remarks_find (remarks, p->remark);

  g_assert_nonnull (remark);
  g_test_message ("%s", remark->text);
  g_assert_cmpint (remark->check, ==, p->check);
  g_assert_cmpint (remark->grade, ==, p->grade);
  g_assert_cmpint (remark->remedy != NULL, ==, p->is_mended);
  if (p->check != LR_CHECK_MISSING)
    {
      g_assert_cmpuint (remark->marks->len, >, 0);
      g_assert_true (isfinite (remark->value));
      if (p->check != LR_CHECK_TAPE) /* which is about the room */
        {
          g_assert_nonnull (remark->ids[0]);
          g_assert_cmpint (lr_remarks_worst_for (remarks, remark->ids[0]), <=, p->grade);
        }
    }
  for (guint i = 0; i < remarks->all->len; i++)
    check_remark (remarks->all->pdata[i]);
}

/* A steep, very wide camera holds the eyes, though its lower edge looks past straight down: 20.25 mm of height over 2 mm of
 * focal length are 79 degrees each way (atan h / 2 f); tilted down by more than 11, no upright plane bounds its frame */
static void
test_steep_view (void)
{
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (LrRemarks) remarks = NULL;
  const LrRemark *remark;

  fixture_set (&plan, CAMERA_A, "focal-mm", 0.002);
  study = lr_study_new (plan);
  remarks = lr_remarks_new (study, LR_UNITS_METRIC);
  remark = lr_remarks_find (remarks, "shot-size:camera-1");

  g_assert_cmpfloat (fixture_camera (study, CAMERA_A)->eyes_down, >, 0.0);
  g_assert_cmpfloat (fixture_camera (study, CAMERA_A)->eyes_down, <, 1.0);
  g_assert_nonnull (remark);
  g_assert_cmpint (remark->grade, ==, LR_GRADE_FINE);
  g_assert_null (strstr (remark->text, "not in"));
  g_assert_cmpint (fixture_camera (study, CAMERA_A)->framing.shot, ==, LR_SHOT_LONG);
}

/* The figure judged lies on the wrong side of its limit, unless the rule has none or it is a count of things */
static void
test_figure (gconstpointer data)
{
  const Provocation *p = data;
  g_autoptr (LrPlan) plan = provoke (p);
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrRemarks) remarks = provoked_remarks (p, study, LR_UNITS_METRIC);
  const LrRemark *remark = lr_remarks_find (remarks, p->remark);

  g_assert_nonnull (remark);
  if (isfinite (remark->value) && isfinite (remark->limit))
    g_assert_cmpfloat (fabs (remark->value - remark->limit), >, 0.0);
}

/* With the remedy applied the same check is fine, or has nothing left to say, and what it moves is in no other thing's way */
static void
test_mended (gconstpointer data)
{
  const Provocation *p = data;
  g_autoptr (LrPlan) plan = provoke (p), mended = NULL;
  g_autoptr (LrStudy) study = lr_study_new (plan), after = NULL;
  g_autoptr (LrRemarks) remarks = provoked_remarks (p, study, LR_UNITS_METRIC), left = NULL;
  g_autoptr (GError) error = NULL;
  const LrRemark *remark = lr_remarks_find (remarks, p->remark);

  g_assert_nonnull (remark);
  if (remark->remedy == NULL)
    return;

  g_assert_cmpuint (count_figures (remark->remedy->markup), >=, 1);
  g_assert_true (g_str_has_suffix (remark->text, remark->remedy->sentence));
  g_assert_nonnull (remark->remedy->short_figure);
  mended = lr_remedy_apply (remark->remedy, plan, &error);
  g_assert_no_error (error);
  after = lr_study_new (mended);
  left = provoked_remarks (p, after, LR_UNITS_METRIC);
  contract_check (remark, remarks, left);
}

static void
check_same_marks (const GArray *a,
                  const GArray *b)
{
  g_assert_cmpuint (a->len, ==, b->len);
  for (guint i = 0; i < a->len; i++)
    {
      const LrMark *mark = &g_array_index (a, LrMark, i), *other = &g_array_index (b, LrMark, i);

      g_assert_cmpint (mark->type, ==, other->type);
      g_assert_cmpfloat (mark->a_m.x, ==, other->a_m.x);
      g_assert_cmpfloat (mark->b_m.y, ==, other->b_m.y);
      g_assert_cmpstr (mark->figure, ==, other->figure);
    }
}

/* What is said while the plan moves is what is said at rest, less the sentence of the remedy */
static void
check_moving (const LrRemark *moving,
              const LrRemark *resting)
{
  g_assert_cmpstr (moving->key, ==, resting->key);
  g_assert_cmpint (moving->check, ==, resting->check);
  g_assert_cmpint (moving->grade, ==, resting->grade);
  g_assert_true (g_strv_equal ((const char *const *) moving->ids, (const char *const *) resting->ids));
  g_assert_true (moving->value == resting->value || (isnan (moving->value) && isnan (resting->value)));
  g_assert_true (moving->limit == resting->limit || (isnan (moving->limit) && isnan (resting->limit)));
  check_same_marks (moving->marks, resting->marks);
  g_assert_null (moving->remedy);
  if (resting->remedy == NULL)
    g_assert_cmpstr (moving->markup, ==, resting->markup);
  else
    {
      g_autofree char *told = g_strconcat (moving->markup, " ", resting->remedy->markup, NULL);

      g_assert_cmpstr (told, ==, resting->markup);
    }
}

/* The same remarks with the same words, figures and marks, in the same order; only remedies are missing */
static void
test_moving (gconstpointer data)
{
  const Provocation *p = data;
  g_autoptr (LrPlan) plan = provoke (p);
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrLightLevels) levels = provoked_levels (p, study);
  g_autoptr (LrRemarks) resting = lr_remarks_new_lit (study, levels, LR_UNITS_METRIC);
  g_autoptr (LrRemarks) moving = lr_remarks_new_moving (study, levels, LR_UNITS_METRIC);

  g_assert_true (moving->is_moving);
  g_assert_false (resting->is_moving);
  g_assert_cmpuint (moving->all->len, ==, resting->all->len);
  for (LrGrade grade = 0; grade < LR_N_GRADES; grade++)
    g_assert_cmpuint (moving->n[grade], ==, resting->n[grade]);
  for (guint i = 0; i < resting->all->len; i++)
    check_moving (moving->all->pdata[i], resting->all->pdata[i]);
}

/* Every sentence can be said in feet and inches too */
static void
test_imperial (gconstpointer data)
{
  const Provocation *p = data;
  g_autoptr (LrPlan) plan = provoke (p);
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrRemarks) remarks = provoked_remarks (p, study, LR_UNITS_IMPERIAL);

  g_assert_nonnull (lr_remarks_find (remarks, p->remark));
  for (guint i = 0; i < remarks->all->len; i++)
    {
      const LrRemark *remark = remarks->all->pdata[i];

      check_remark (remark);
      g_assert_false (g_regex_match_simple ("[0-9]\u00a0c?m\\b", remark->text, 0, 0));
    }
}

/* A boom by Wenna's head, whose middle is at 3, 3 and whose crown is some 1.3 m up, from a post at 3.4, 5 */
typedef struct
{
  const char *name;
  double      x_m, y_m, height_m; /* in: its tip */
  gboolean    is_said;            /* expected */
  LrGrade     grade;
} HeadCase;

/* Source: what hangs over a head is over it; 30 cm round it and 15 cm over it: common practice, no source */
static const HeadCase head_cases[] = {
  { "before-the-face", 3.48, 2.90, 1.10, FALSE, LR_GRADE_FINE },
  { "beside", 3.24, 3.10, 1.10, TRUE, LR_GRADE_MIND },
  { "through", 3.00, 3.00, 1.10, TRUE, LR_GRADE_FIX },
  { "just-over", 3.10, 3.00, 1.42, TRUE, LR_GRADE_MIND },
  { "well-over", 3.10, 3.00, 1.80, TRUE, LR_GRADE_FINE },
};

static void
test_head (gconstpointer data)
{
  const HeadCase *c = data;
  g_autoptr (LrPlan) plan = fixture_interview ();
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (LrRemarks) remarks = NULL;
  const char *boom = fixture_add (&plan, LR_ITEM_MICROPHONE, LR_MIC_BOOM, 3.4, 5.0);
  const LrRemark *remark;

  fixture_set (&plan, boom, "tip-x-mm", c->x_m);
  fixture_set (&plan, boom, "tip-y-mm", c->y_m);
  fixture_set (&plan, boom, "tip-height-mm", c->height_m);
  study = lr_study_new (plan);
  remarks = lr_remarks_new (study, LR_UNITS_METRIC);
  remark = lr_remarks_find (remarks, "head-clear:microphone-1:person-1");
  g_assert_cmpint (remark != NULL, ==, c->is_said);
  if (remark == NULL)
    return;
  g_test_message ("%s", remark->text);
  g_assert_cmpint (remark->grade, ==, c->grade);
  check_remark (remark);
}

/* Hanging a boom where it hears best needs its bag in the same go: with the remedy applied its stand is fine */
static void
test_boom_with_bag (void)
{
  g_autoptr (LrPlan) plan = fixture_interview (), mended = NULL;
  g_autoptr (LrStudy) study = NULL, after = NULL;
  g_autoptr (LrRemarks) remarks = NULL, left = NULL;
  const char *boom = fixture_add (&plan, LR_ITEM_MICROPHONE, LR_MIC_BOOM, 3.3, 5.3);
  const LrRemark *remark;

  fixture_text (&plan, boom, "aims-at", WENNA);
  fixture_set (&plan, boom, "tip-x-mm", 3.3);
  fixture_set (&plan, boom, "tip-y-mm", 4.6);
  fixture_set (&plan, boom, "tip-height-mm", 1.7);
  fixture_set (&plan, boom, "bag-kg", 6.0);
  study = lr_study_new (plan);
  remarks = lr_remarks_new (study, LR_UNITS_METRIC);
  g_assert_cmpint (lr_remarks_find (remarks, "stand:microphone-1")->grade, ==, LR_GRADE_FINE);
  remark = lr_remarks_find (remarks, "boom-place:microphone-1");
  g_assert_nonnull (remark);
  g_assert_nonnull (remark->remedy);
  g_test_message ("%s", remark->text);
  g_assert_nonnull (strstr (remark->text, "sandbag"));
  mended = lr_remedy_apply (remark->remedy, plan, NULL);
  g_assert_nonnull (mended);
  after = lr_study_new (mended);
  left = lr_remarks_new (after, LR_UNITS_METRIC);
  g_assert_cmpint (lr_remarks_find (left, "boom-place:microphone-1")->grade, ==, LR_GRADE_FINE);
  g_assert_cmpint (lr_remarks_find (left, "stand:microphone-1")->grade, ==, LR_GRADE_FINE);
}

/* What is said of ways that are no fault, and that none is fine while one is not known */
typedef struct
{
  const char *name;
  double      door_m;       /* in */
  guint       n_pillars;
  const char *key;
  LrGrade     grade;
  const char *said;         /* expected; NULL: there is no such remark */
} WaySaid;

static const WaySaid ways_said[] = {
  { "wide", 1.0, 0, "way-out", LR_GRADE_FINE, "0.92\u00a0m or more is clear all the way from each seat" },
  { "by-a-door", 0.85, 0, "wheelchair:person-1", LR_GRADE_FINE,
    "narrowest: 0.85\u00a0m, where a door may be 0.82\u00a0m. The rest has 0.90\u00a0m or more" },
  { "by-a-wide-door", 1.0, 0, "wheelchair:person-1", LR_GRADE_FINE, "0.90\u00a0m or more all the way" },
  { "not-known", 1.0, 238, "way-out:person-1", LR_GRADE_MIND, "The ways of Wenna and 1 other are not known to be 0.92\u00a0m wide" },
  { "none-fine", 1.0, 238, "way-out", LR_GRADE_FINE, NULL },
  { "wheelchair-not-known", 1.0, 238, "wheelchair:person-1", LR_GRADE_MIND, "try it" },
};

static void
test_way_said (gconstpointer data)
{
  const WaySaid *c = data;
  g_autoptr (LrPlan) plan = fixture_room (48.0, 8.0, 2.5);
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (LrLightLevels) levels = NULL;
  g_autoptr (LrRemarks) remarks = NULL;
  const char *wenna = fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 1.0, 4.0);
  const LrRemark *remark;

  fixture_text (&plan, wenna, "name", "Wenna");
  fixture_set (&plan, wenna, "uses-wheelchair", 1.0);
  fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_INTERVIEWER, 1.0, 2.0);
  fixture_set (&plan, fixture_add (&plan, LR_ITEM_DOOR, 0, 48.0, 4.0), "width-mm", c->door_m);
  for (guint i = 0; i < c->n_pillars; i++)
    {
      const char *pillar = fixture_add (&plan, LR_ITEM_FURNITURE, LR_FURNITURE_CYLINDER, 4.0 + 1.2 * (i / 7),
                                        0.7 + 1.1 * (i % 7) + 0.3 * (i / 7 % 2));

      fixture_set (&plan, pillar, "length-mm", 0.5);
      fixture_set (&plan, pillar, "width-mm", 0.5);
    }
  study = lr_study_new (plan);
  levels = lr_light_levels_new (plan, TRUE, NULL);
  remarks = lr_remarks_new_lit (study, levels, LR_UNITS_METRIC);
  remark = lr_remarks_find (remarks, c->key);
  if (c->said == NULL)
    {
      g_assert_null (remark);
      return;
    }
  g_assert_nonnull (remark);
  g_test_message ("%s", remark->text);
  g_assert_cmpint (remark->grade, ==, c->grade);
  g_assert_nonnull (strstr (remark->text, c->said));
  check_remark (remark);
}

/* A key outlives a nudge of what it is about */
static void
test_key (void)
{
  const Provocation *p = &provocations[0];
  g_autoptr (LrPlan) plan = provoke (p);
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (LrRemarks) remarks = NULL;

  fixture_set (&plan, CAMERA_B, "x-mm", 4.9);
  study = lr_study_new (plan);
  remarks = provoked_remarks (p, study, LR_UNITS_METRIC);
  g_assert_nonnull (lr_remarks_find (remarks, p->remark));
  g_assert_null (lr_remarks_find (remarks, "line-side"));
  g_assert_null (lr_remarks_find (remarks, NULL));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/checks/table", test_table);
  g_test_add_func ("/checks/nothing-wrong", test_nothing_wrong);
  g_test_add_func ("/checks/key", test_key);
  g_test_add_func ("/checks/steep-view", test_steep_view);
  g_test_add_func ("/checks/boom-with-bag", test_boom_with_bag);
  add_rows ("/checks/head", head_cases, test_head);
  add_rows ("/checks/ways-said", ways_said, test_way_said);
  for (gsize i = 0; i < n_provocations; i++)
    {
      static const struct { const char *path; GTestDataFunc func; } tests[] = {
        { "/checks/provoked", test_provoked }, { "/checks/figure", test_figure },
        { "/checks/mended", test_mended }, { "/checks/imperial", test_imperial }, { "/checks/moving", test_moving },
      };

      for (guint j = 0; j < G_N_ELEMENTS (tests); j++)
        {
          g_autofree char *path = g_strdup_printf ("%s/%s", tests[j].path, provocations[i].name);

          g_test_add_data_func (path, &provocations[i], tests[j].func);
        }
    }

  return g_test_run ();
}
