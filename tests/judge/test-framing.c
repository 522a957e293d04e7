/* test-framing.c - frames made by the rule draw no remark
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rule (a tenth of headroom, or the eyes a third down) and the checks are common practice, without a source; here they are held
 * to each other: what *Frame as* proposes must not be found fault with, and no remedy may ask for what the next remark undoes.
 */

#include "fixture.h"

#include "optics.h"
#include "remarks.h"

static const LrCheck framing_checks[] = {
  LR_CHECK_SHOT_SIZE, LR_CHECK_HEADROOM, LR_CHECK_EYES_PLACE, LR_CHECK_LOOK_ROOM, LR_CHECK_JOINT, LR_CHECK_CUT_EYELINE,
};

/* Stature, posture and lens of a run */
typedef struct
{
  const char *name;
  double      stature_m;
  gboolean    is_seated;
  double      focal_m;
  double      lens_above_m; /* the subject's eyes */
} RuleCase;

static const RuleCase rule_cases[] = {
  { "seated", 1.70, TRUE, 0.05, 0.0 },
  { "seated-short", 1.525, TRUE, 0.05, 0.0 },   /* 5th percentile of women in ANSUR II */
  { "seated-tall", 1.87, TRUE, 0.05, 0.0 },     /* 95th of men */
  { "seated-long-lens", 1.70, TRUE, 0.135, 0.0 },
  { "seated-from-above", 1.70, TRUE, 0.085, 0.1 },
  { "seated-from-under", 1.70, TRUE, 0.085, -0.1 },
  { "standing", 1.70, FALSE, 0.05, 0.0 },
  { "standing-short", 1.525, FALSE, 0.05, 0.0 },
  { "standing-tall", 1.87, FALSE, 0.05, 0.0 },
  { "standing-long-lens", 1.70, FALSE, 0.135, 0.0 },
};

static const RuleCase mending_cases[] = {
  { "seated", 1.70, TRUE, 0.05, 0.0 },
  { "standing", 1.70, FALSE, 0.085, 0.0 },
};

#define NEAREST_M 0.7
#define IMAGE_HEIGHT_M 0.02025
#define TURN_RAD (35.0 * LR_DEG)

/* A camera in the direction from the subject's eyes that frames the shot by the rule, with the look into two thirds of its width; FALSE:
 * no one films a face from so near, and the throat and the chin are at different distances */
static gboolean
frame_by_rule (LrPlan        **plan,
               const RuleCase *c,
               const LrPlaced *subject,
               double          bearing_rad,
               LrShot          shot)
{
  double height_m, eyes_down, distance_m;
  const char *id;
  LrVec2 at_m;

  g_assert_true (lr_shot_frame_height_m (shot, &subject->body, &height_m, &eyes_down));
  g_assert_true (lr_distance_for_field_m (IMAGE_HEIGHT_M, height_m, c->focal_m, &distance_m));
  if (distance_m < NEAREST_M)
    return FALSE;

  at_m = lr_vec2_add (lr_vec3_flat (subject->eyes_m), lr_vec2_polar (bearing_rad, distance_m));
  id = fixture_add (plan, LR_ITEM_CAMERA, 0, at_m.x, at_m.y);
  fixture_text (plan, id, "aims-at", WENNA);
  fixture_set (plan, id, "sensor-width-mm", IMAGE_HEIGHT_M * 16.0 / 9.0);
  fixture_set (plan, id, "sensor-height-mm", IMAGE_HEIGHT_M);
  fixture_set (plan, id, "focal-mm", c->focal_m);
  fixture_set (plan, id, "lens-height-mm", subject->eyes_m.z + c->lens_above_m);
  fixture_set (plan, id, "across-pct", 2.0 / 3.0); /* the look goes to the left */
  fixture_set (plan, id, "down-pct", eyes_down);
  return TRUE;
}

static LrPlan *
make_people (const RuleCase *c)
{
  LrPlan *plan = fixture_room (60.0, 60.0, 20.0);

  fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_SUBJECT, 30.0, 30.0);
  fixture_add (&plan, LR_ITEM_PERSON, LR_ROLE_INTERVIEWER, 33.0, 30.0);
  fixture_text (&plan, WENNA, "looks-at", INES);
  fixture_set (&plan, WENNA, "stature-mm", c->stature_m);
  fixture_set (&plan, WENNA, "posture", c->is_seated ? LR_POSTURE_SEATED : LR_POSTURE_STANDING);
  return plan;
}

static void
assert_no_framing_remark (const LrPlan *plan)
{
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrRemarks) remarks = lr_remarks_new (study, LR_UNITS_METRIC);

  for (guint i = 0; i < remarks->all->len; i++)
    {
      const LrRemark *remark = remarks->all->pdata[i];

      for (gsize k = 0; k < G_N_ELEMENTS (framing_checks); k++)
        if (remark->check == framing_checks[k] && remark->grade != LR_GRADE_FINE)
          g_error ("%s", remark->text);
    }
}

static void
test_rule (gconstpointer data)
{
  const RuleCase *c = data;

  for (LrShot a = 0; a < LR_N_SHOTS; a++)
    for (LrShot b = a; b < LR_N_SHOTS; b++)
      {
        LrPlan *plan = make_people (c);
        g_autoptr (LrStudy) study = lr_study_new (plan);
        const LrPlaced *subject = lr_study_find_placed (study, WENNA);

        g_test_message ("%s and %s", lr_shot_title (a), lr_shot_title (b));
        if (frame_by_rule (&plan, c, subject, 0.5 * TURN_RAD, a) && frame_by_rule (&plan, c, subject, TURN_RAD, b))
          assert_no_framing_remark (plan);
        lr_plan_unref (plan);
      }
}

static const LrRemark *
find_mendable (const LrRemarks *remarks)
{
  for (guint i = 0; i < remarks->all->len; i++)
    {
      const LrRemark *remark = remarks->all->pdata[i];

      for (gsize k = 0; k < G_N_ELEMENTS (framing_checks); k++)
        if (remark->check == framing_checks[k] && remark->grade == LR_GRADE_MIND && remark->remedy != NULL)
          return remark;
    }

  return NULL;
}

/* Wherever the camera is tilted and panned to, mending one remark of the framing after the other ends, without any left */
static void
test_mending (gconstpointer data)
{
  const RuleCase *c = data;

  for (LrShot shot = LR_SHOT_CLOSE_UP; shot <= LR_SHOT_MEDIUM_LONG; shot++)
    for (double down = 0.1; down < 0.55; down += 0.1)
      for (double across = 0.2; across < 0.85; across += 0.15)
        {
          LrPlan *plan = make_people (c);
          g_autoptr (LrStudy) before = lr_study_new (plan);
          gboolean is_done = FALSE;

          g_test_message ("%s, eyes %.2f down, %.2f across", lr_shot_title (shot), down, across);
          frame_by_rule (&plan, c, lr_study_find_placed (before, WENNA), TURN_RAD, shot);
          fixture_set (&plan, CAMERA_A, "down-pct", down);
          fixture_set (&plan, CAMERA_A, "across-pct", across);
          for (int n = 0; !is_done; n++)
            {
              g_autoptr (LrStudy) study = lr_study_new (plan);
              g_autoptr (LrRemarks) remarks = lr_remarks_new (study, LR_UNITS_METRIC);
              const LrRemark *next = find_mendable (remarks);
              LrPlan *mended = next != NULL ? lr_remedy_apply (next->remedy, plan, NULL) : NULL;

              is_done = next == NULL;
              if (is_done)
                continue;

              g_assert_nonnull (mended);
              g_assert_cmpint (n, <, 4);
              lr_plan_unref (plan);
              plan = mended;
            }
          assert_no_framing_remark (plan);
          lr_plan_unref (plan);
        }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/judge-framing/rule", rule_cases, test_rule);
  add_rows ("/judge-framing/mending", mending_cases, test_mending);

  return g_test_run ();
}
