/* judge_height.c - lens, subject's eyes and interviewer's eyes against each other
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "judge_parts.h"

#include <glib/gi18n-lib.h>

#define LEVEL_M 0.005 /* what a tape calls the same height */
#define LEVEL_RAD (0.5 * LR_DEG)

/* Seats that one can find: a deep sofa to a bar chair (common practice, no source) */
#define LOWEST_SEAT_M 0.35
#define HIGHEST_SEAT_M 0.80

static void
mark_height (LrRemark   *remark,
             LrVec2      a_m,
             LrVec2      b_m,
             const char *figure)
{
  lr_remark_mark_point (remark, a_m, NULL);
  lr_remark_mark_distance (remark, a_m, b_m, figure);
}

/**
 * lr_judge_offer_lens_height:
 * @judge: a judge
 * @remark: a remark, the one added last
 * @camera: a camera
 * @height_m: where its lens would be [m]
 *
 * Offers "Set the lens of B to 1.20 m."
 */
void
lr_judge_offer_lens_height (LrJudge               *judge,
                            LrRemark              *remark,
                            const LrCameraReading *camera,
                            double                 height_m)
{
  LrRemedy *remedy = lr_remedy_new ();
  const char *height = lr_say_length (judge, height_m);

  lr_remedy_change (remedy, camera->item, "lens-height-mm", height_m);
  lr_remedy_say (remedy, height,
                 _("Set the lens of %s to <b>%s</b>."),
                 lr_say_name (judge, camera->placed), height);
  lr_judge_offer (judge, remark, remedy);
}

static void
judge_lens (LrJudge               *judge,
            const LrCameraReading *camera)
{
  double limit_rad = judge->limits[LR_LIMIT_LENS_ELEVATION];
  gboolean is_off = fabs (camera->lens_up_rad) > limit_rad;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_LENS_HEIGHT, is_off ? LR_GRADE_MIND : LR_GRADE_FINE, camera->placed,
                                   NULL);
  const char *name, *subject, *height, *angle, *limit;

  if (remark == NULL)
    return;

  name = lr_say_name (judge, camera->placed);
  subject = lr_say_name (judge, camera->subject);
  height = lr_say_small (judge, fabs (camera->lens_above_m));
  angle = is_off ? lr_say_angle_off (judge, fabs (camera->lens_up_rad), limit_rad)
                 : lr_say_angle (judge, fabs (camera->lens_up_rad));
  limit = lr_say_angle (judge, limit_rad);
  remark->value = camera->lens_up_rad;
  remark->limit = limit_rad;
  lr_remark_about (remark, camera->subject);
  mark_height (remark, camera->placed->at_m, lr_vec3_flat (camera->subject->eyes_m), height);

  if (is_off && camera->lens_up_rad > 0.0)
    lr_remark_say (remark,
                   _("%s looks down on %s: its lens is <b>%s</b> above the eyes, <b>%s</b>; up to <b>%s</b> "
                     "seems level."),
                   name, subject, height, angle, limit);
  else if (is_off)
    lr_remark_say (remark,
                   _("%s looks up at %s: its lens is <b>%s</b> under the eyes, <b>%s</b>; up to <b>%s</b> seems level."),
                   name, subject, height, angle, limit);
  else if (fabs (camera->lens_above_m) < LEVEL_M)
    lr_remark_say (remark, _("The lens of %s is level with %s’s eyes, at <b>%s</b>."), name, subject,
                   lr_say_length (judge, camera->projection.eye_m.z));
  else if (camera->lens_above_m > 0.0)
    lr_remark_say (remark,
                   _("The lens of %s is <b>%s</b> above %s’s eyes, <b>%s</b>; up to <b>%s</b> seems level."),
                   name, height, subject, angle, limit);
  else
    lr_remark_say (remark,
                   _("The lens of %s is <b>%s</b> under %s’s eyes, <b>%s</b>; up to <b>%s</b> seems level."),
                   name, height, subject, angle, limit);

  if (is_off)
    lr_judge_offer_lens_height (judge, remark, camera, camera->subject->eyes_m.z);
}

/* The height at which the lens lies on the way of the look, if that were turned round to it */
static double
height_on_look_m (const LrCameraReading *camera)
{
  LrVec3 eyes_m = camera->subject->eyes_m;
  double flat_m = lr_vec2_distance (lr_vec3_flat (eyes_m), lr_vec3_flat (camera->projection.eye_m));

  return eyes_m.z + flat_m * tan (camera->gaze_up_rad + camera->lens_up_rad);
}

/* Whether the lens would be level with the subject's eyes there: else it is the one looked at who sits too high or too low, and
 * two remarks would send the lens two ways */
static gboolean
is_level_on_look (const LrJudge         *judge,
                  const LrCameraReading *camera)
{
  return fabs (camera->gaze_up_rad + camera->lens_up_rad) <= judge->limits[LR_LIMIT_LENS_ELEVATION];
}

static void
judge_eyeline (LrJudge               *judge,
               const LrCameraReading *camera)
{
  double limit_rad = judge->limits[LR_LIMIT_EYELINE_ELEVATION];
  gboolean is_off = fabs (camera->gaze_up_rad) > limit_rad;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_EYELINE, is_off ? LR_GRADE_MIND : LR_GRADE_FINE, camera->placed, NULL);
  const char *name, *subject, *angle, *limit;

  if (remark == NULL)
    return;

  name = lr_say_name (judge, camera->placed);
  subject = lr_say_name (judge, camera->subject);
  angle = is_off ? lr_say_angle_off (judge, fabs (camera->gaze_up_rad), limit_rad)
                 : lr_say_angle (judge, fabs (camera->gaze_up_rad));
  limit = lr_say_angle (judge, limit_rad);
  remark->value = camera->gaze_up_rad;
  remark->limit = limit_rad;
  lr_remark_about (remark, camera->subject);
  mark_height (remark, camera->placed->at_m, lr_vec3_flat (camera->subject->eyes_m), angle);

  if (fabs (camera->gaze_up_rad) < LEVEL_RAD)
    lr_remark_say (remark,
                   _("In %s, %s’s look is level with the lens; up to <b>%s</b> off seems so."),
                   name, subject, limit);
  else if (camera->gaze_up_rad > 0.0)
    lr_remark_say (remark,
                   _("In %s, %s looks <b>%s</b> above the lens; up to <b>%s</b> seems level."),
                   name, subject, angle, limit);
  else
    lr_remark_say (remark,
                   _("In %s, %s looks <b>%s</b> under the lens; up to <b>%s</b> seems level."),
                   name, subject, angle, limit);
  if (is_off && is_level_on_look (judge, camera))
    lr_judge_offer_lens_height (judge, remark, camera, height_on_look_m (camera));
}

/* A seat carries measured eyes along */
static LrRemedy *
set_seat (const LrPlaced *person,
          double          seat_height_m)
{
  const LrPerson *p = &person->item->person;
  LrRemedy *remedy = lr_remedy_new ();

  lr_remedy_change (remedy, person->item, "seat-height-mm", seat_height_m);
  if (p->eye_height_m > 0.0)
    lr_remedy_change (remedy, person->item, "eye-height-mm", p->eye_height_m + seat_height_m - p->seat_height_m);
  return remedy;
}

/* On a chair, and on a chair of the right height. A person on foot sits down: seated eyes are then 0.459 of the stature
 * above the seat (ANSUR II), as the body's file has it. */
static void
offer_seat (LrJudge  *judge,
            LrRemark *remark)
{
  const LrPlaced *interviewer = judge->study->interviewer;
  const LrPerson *p = &interviewer->item->person;
  double seat_m = p->seat_height_m - judge->study->eyes_level_m;
  gboolean is_standing = p->posture == LR_POSTURE_STANDING;
  const char *name = lr_say_name (judge, interviewer);
  const char *height;
  LrRemedy *remedy;

  if (is_standing)
    {
      LrBodyInput seated = { p->stature_m, true, p->seat_height_m, 0.0 };
      LrBody body;

      if (p->eye_height_m > 0.0 || !lr_body (&seated, &body))
        return;
      seat_m = p->seat_height_m + judge->study->subject->eyes_m.z - body.eyes_m;
    }

  if (seat_m < LOWEST_SEAT_M || seat_m > HIGHEST_SEAT_M)
    return;

  height = lr_say_length (judge, seat_m);
  remedy = set_seat (interviewer, seat_m);
  if (is_standing)
    {
      lr_remedy_change (remedy, interviewer->item, "posture", LR_POSTURE_SEATED);
      lr_remedy_say (remedy, height, _("Let %s sit, on a seat of <b>%s</b>."), name, height);
    }
  else
    lr_remedy_say (remedy, height, _("Set %s’s seat to <b>%s</b>."), name, height);
  lr_judge_offer (judge, remark, remedy);
}

static void
judge_eyes (LrJudge *judge)
{
  const LrStudy *study = judge->study;
  double limit_m = judge->limits[LR_LIMIT_EYES_LEVEL];
  gboolean is_off = fabs (study->eyes_level_m) > limit_m;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_EYES_LEVEL, is_off ? LR_GRADE_MIND : LR_GRADE_FINE,
                                   study->interviewer, NULL);
  const char *interviewer, *subject, *height, *limit;

  if (remark == NULL)
    return;

  interviewer = lr_say_name (judge, study->interviewer);
  subject = lr_say_name (judge, study->subject);
  height = is_off ? lr_say_small_off (judge, fabs (study->eyes_level_m), limit_m)
                  : lr_say_small (judge, fabs (study->eyes_level_m));
  limit = lr_say_small (judge, limit_m);
  remark->value = study->eyes_level_m;
  remark->limit = limit_m;
  lr_remark_about (remark, study->subject);
  mark_height (remark, study->line_to_m, study->line_from_m, height);

  if (is_off && study->eyes_level_m > 0.0)
    lr_remark_say (remark,
                   _("%s’s eyes are <b>%s</b> above %s’s, who looks up; <b>%s</b> is the most."),
                   interviewer, height, subject, limit);
  else if (is_off)
    lr_remark_say (remark,
                   _("%s’s eyes are <b>%s</b> under %s’s, who looks down; <b>%s</b> is the most."),
                   interviewer, height, subject, limit);
  else if (fabs (study->eyes_level_m) < LEVEL_M)
    lr_remark_say (remark, _("%s’s eyes are level with %s’s, at <b>%s</b>."), interviewer, subject,
                   lr_say_length (judge, study->subject->eyes_m.z));
  else if (study->eyes_level_m >= 0.0)
    lr_remark_say (remark,
                   _("%s’s eyes are <b>%s</b> above %s’s; <b>%s</b> is the most."),
                   interviewer, height, subject, limit);
  else
    lr_remark_say (remark,
                   _("%s’s eyes are <b>%s</b> under %s’s; <b>%s</b> is the most."),
                   interviewer, height, subject, limit);

  if (is_off)
    offer_seat (judge, remark);
}

/**
 * lr_judge_height:
 * @judge: a judge
 *
 * Each lens against the eyes and the look, and the interviewer's eyes against the subject's.
 */
void
lr_judge_height (LrJudge *judge)
{
  for (guint i = 0; i < judge->study->cameras->len; i++)
    {
      const LrCameraReading *camera = lr_judge_camera (judge, i);

      if (!camera->has_subject || lr_judge_is_cutaway (judge, camera))
        continue;

      judge_lens (judge, camera);
      if (camera->is_looking)
        judge_eyeline (judge, camera);
    }

  if (isfinite (judge->study->eyes_level_m))
    judge_eyes (judge);
}
