/* judge_cut_eyes.c - eyes and looks across a cut
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * On one person the eyes stay at about the same height of the frame; that the look keeps its way is judged with the line of
 * action. On two people who look at each other, one looks left and the other right, and each look passes its lens at the
 * same height: then the two lens heights mirror each other, whoever sits higher. Common practice, without a source.
 */

#include "config.h"

#include "judge_parts.h"

#include <glib/gi18n-lib.h>

#define SPARE_SHARE 0.02

/* Wider shots are cut to for the room */
static gboolean
is_for_face (const LrCameraReading *camera)
{
  return lr_judge_has_eyes (camera) && camera->framing.shot >= LR_SHOT_BIG_CLOSE_UP
         && camera->framing.shot <= LR_SHOT_MEDIUM_LONG;
}

static void
say_still (LrJudge             *judge,
           LrRemark            *remark,
           const LrPairReading *pair,
           const char          *step)
{
  const char *a = lr_say_name (judge, pair->a->placed), *b = lr_say_name (judge, pair->b->placed);
  const char *subject = lr_say_name (judge, pair->b->subject);
  const char *limit = lr_say_limit (judge, LR_LIMIT_CUT_EYES);

  if (pair->is_same_look)
    lr_remark_say (remark,
                   _("From %s to %s, %s’s eyes stay within <b>%s</b> of the height, <b>%s</b> is the most, and look the same way, "
                     "<b>%s</b> and <b>%s</b> past the lens."),
                   a, b, subject, step, limit, lr_say_angle (judge, fabs (pair->a->gaze_rad)),
                   lr_say_angle (judge, fabs (pair->b->gaze_rad)));
  else
    lr_remark_say (remark,
                   _("From %s to %s, %s’s eyes stay within <b>%s</b> of the height; <b>%s</b> is the most."),
                   a, b, subject, step, limit);
}

static void
judge_pair (LrJudge             *judge,
            const LrPairReading *pair)
{
  double limit = judge->limits[LR_LIMIT_CUT_EYES], step = fabs (pair->eyes_step);
  gboolean is_jump = step > limit;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_CUT_EYELINE, is_jump ? LR_GRADE_MIND : LR_GRADE_FINE, pair->a->placed,
                                   pair->b->placed);
  double wanted = copysign (fmax (limit - SPARE_SHARE, 0.5 * limit), pair->eyes_step);
  const char *share;

  if (remark == NULL)
    return;

  share = is_jump ? lr_say_share_off (judge, step, limit) : lr_say_share (judge, step);
  remark->value = step;
  remark->limit = limit;
  lr_remark_mark_first (remark, pair->b->placed);
  lr_remark_about (remark, pair->b->subject);
  lr_remark_mark_line (remark, pair->b->subject->at_m, pair->a->placed->at_m, NULL);
  lr_remark_mark_line (remark, pair->b->subject->at_m, pair->b->placed->at_m, share);

  if (!is_jump)
    {
      say_still (judge, remark, pair, share);
      return;
    }

  lr_remark_say (remark,
                 _("From %s to %s, %s’s eyes jump by <b>%s</b> of the frame’s height; <b>%s</b> is the most."),
                 lr_say_name (judge, pair->a->placed), lr_say_name (judge, pair->b->placed),
                 lr_say_name (judge, pair->b->subject), share, lr_say_share (judge, limit));
  lr_judge_offer_tilt (judge, remark, pair->b, pair->a->eyes_down + wanted);
  lr_judge_offer_tilt (judge, remark, pair->a, pair->b->eyes_down - wanted);
  lr_judge_offer_tilt (judge, remark, pair->b, pair->b->eyes_rule);
  lr_judge_offer_tilt (judge, remark, pair->a, pair->a->eyes_rule);
}

/* The height at which the look passes the lens as it passes the other camera's */
static double
mirrored_height_m (const LrCameraReading *camera,
                   const LrCameraReading *other)
{
  LrVec3 eyes_m = camera->subject->eyes_m;
  double flat_m = lr_vec2_distance (lr_vec3_flat (eyes_m), lr_vec3_flat (camera->projection.eye_m));

  return eyes_m.z + flat_m * tan (camera->lens_up_rad + camera->gaze_up_rad - other->gaze_up_rad);
}

static void
say_reverse (LrJudge                *judge,
             LrRemark               *remark,
             const LrReverseReading *reverse,
             gboolean                is_off)
{
  const char *a = lr_say_name (judge, reverse->a->placed), *b = lr_say_name (judge, reverse->b->placed);
  const char *limit = lr_say_limit (judge, LR_LIMIT_EYELINE_ELEVATION);
  double step_rad = fabs (reverse->gaze_up_step_rad);
  const char *step = is_off ? lr_say_angle_off (judge, step_rad, judge->limits[LR_LIMIT_EYELINE_ELEVATION])
                            : lr_say_angle (judge, step_rad);

  lr_remark_mark_distance (remark, reverse->a->placed->at_m, reverse->b->placed->at_m, step);
  if (!reverse->is_opposed)
    lr_remark_say (remark,
                   _("%s and %s look to the same side in %s and %s, <b>%s</b> and <b>%s</b> past the lens: cut, they seem to look at "
                     "someone else."),
                   lr_say_name (judge, reverse->a->subject), lr_say_name (judge, reverse->b->subject), a, b,
                   lr_say_angle (judge, fabs (reverse->a->gaze_rad)), lr_say_angle (judge, fabs (reverse->b->gaze_rad)));
  else if (is_off)
    lr_remark_say (remark,
                   _("From %s to %s the look shifts by <b>%s</b> up or down; up to <b>%s</b> the two seem to look at each other."),
                   a, b, step, limit);
  else
    lr_remark_say (remark,
                   _("%s and %s show looks that meet, <b>%s</b> and <b>%s</b> past the lens and <b>%s</b> apart in height; up to "
                     "<b>%s</b> seems right."),
                   a, b, lr_say_angle (judge, fabs (reverse->a->gaze_rad)),
                   lr_say_angle (judge, fabs (reverse->b->gaze_rad)), step, limit);
}

/* On the study's line a camera on the other side is said to have crossed it: that is enough */
static gboolean
is_line_crossed (const LrReverseReading *reverse)
{
  return reverse->a->is_on_study_line && reverse->b->is_on_study_line && !reverse->is_opposed;
}

static void
judge_reverse (LrJudge                *judge,
               const LrReverseReading *reverse)
{
  double limit_rad = judge->limits[LR_LIMIT_EYELINE_ELEVATION];
  gboolean is_off = fabs (reverse->gaze_up_step_rad) > limit_rad;
  LrGrade grade = !reverse->is_opposed ? LR_GRADE_FIX : is_off ? LR_GRADE_MIND : LR_GRADE_FINE;
  LrRemark *remark;

  if (is_line_crossed (reverse))
    return;

  remark = lr_judge_add (judge, LR_CHECK_REVERSE, grade, reverse->a->placed, reverse->b->placed);
  if (remark == NULL)
    return;

  remark->value = fabs (reverse->gaze_up_step_rad);
  remark->limit = limit_rad;
  lr_remark_mark_first (remark, reverse->b->placed);
  say_reverse (judge, remark, reverse, is_off);
  if (reverse->is_opposed && is_off)
    {
      lr_judge_offer_lens_height (judge, remark, reverse->b, mirrored_height_m (reverse->b, reverse->a));
      lr_judge_offer_lens_height (judge, remark, reverse->a, mirrored_height_m (reverse->a, reverse->b));
    }
}

/**
 * lr_judge_cut_eyes:
 * @judge: a judge
 *
 * The eyes of one person in two cameras, and the looks of two people in their cameras.
 */
void
lr_judge_cut_eyes (LrJudge *judge)
{
  for (guint i = 0; i < judge->study->pairs->len; i++)
    {
      const LrPairReading *pair = &g_array_index (judge->study->pairs, LrPairReading, i);

      if (is_for_face (pair->a) && is_for_face (pair->b))
        judge_pair (judge, pair);
    }

  for (guint i = 0; i < judge->study->reverses->len; i++)
    {
      const LrReverseReading *reverse = &g_array_index (judge->study->reverses, LrReverseReading, i);

      if (!lr_judge_is_cutaway (judge, reverse->a) && !lr_judge_is_cutaway (judge, reverse->b))
        judge_reverse (judge, reverse);
    }
}
