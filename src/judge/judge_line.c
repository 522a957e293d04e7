/* judge_line.c - the line of action: on which side of it the cameras stand, and how far from it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Cameras on the two sides of the line show the subject looking in two directions, and a cut between them
 * looks as if the subject had turned round (Katz, Film Directing Shot by Shot). The main camera decides the side.
 */

#include "config.h"

#include "judge_parts.h"

#include <glib/gi18n-lib.h>

/* What a remedy keeps clear of a limit, so that a careless centimetre does not undo it */
#define SPARE_RAD (2.0 * LR_DEG)
#define STEP_RAD (5.0 * LR_DEG) /* of the search past the limit */

static LrVec2
eyes_of (const LrCameraReading *camera)
{
  return lr_vec3_flat (camera->subject->eyes_m);
}

static LrVec2
partner_of (const LrJudge         *judge,
            const LrCameraReading *camera)
{
  const LrStudy *study = judge->study;

  return camera->subject == study->subject ? study->line_to_m : study->line_from_m;
}

/* The main camera of those that look along the study's line */
static const LrCameraReading *
leader (const LrJudge *judge)
{
  for (guint i = 0; i < judge->study->cameras->len; i++)
    {
      const LrCameraReading *camera = lr_judge_camera (judge, i);

      if (camera->is_on_study_line && camera->side != LR_SIDE_ON_LINE)
        return camera;
    }

  return NULL;
}

/* The smallest move first, then farther and farther round, for there another camera may be in the cut, or a thing in the way */
static void
offer_way_back (LrJudge               *judge,
                LrRemark              *remark,
                const LrCameraReading *main_camera,
                const LrCameraReading *camera)
{
  LrVec2 eyes_m = eyes_of (camera), partner_m = partner_of (judge, camera), to_m;
  LrSide own_side = camera->subject == judge->study->subject ? main_camera->side : (LrSide) -(int) main_camera->side;
  double margin_rad = judge->limits[LR_LIMIT_LINE_MARGIN] + SPARE_RAD;

  for (; margin_rad <= 0.5 * LR_PI && !judge->is_moving; margin_rad += STEP_RAD)
    if (lr_line_mend (eyes_m, partner_m, camera->placed->at_m, own_side, margin_rad, &to_m)
        && lr_judge_keeps_cuts (judge, camera, to_m))
      lr_judge_offer_move (judge, remark, camera->placed, to_m, &eyes_m, NULL);
}

static void
judge_side (LrJudge               *judge,
            const LrCameraReading *main_camera,
            const LrCameraReading *camera)
{
  gboolean is_over = (int) camera->side * (int) main_camera->side < 0;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_LINE_SIDE, is_over ? LR_GRADE_FIX : LR_GRADE_FINE, camera->placed,
                                   NULL);
  const char *name, *main_name, *distance;

  if (remark == NULL)
    return;

  name = lr_say_name (judge, camera->placed);
  main_name = lr_say_name (judge, main_camera->placed);
  distance = lr_say_length (judge, camera->line_distance_m);
  remark->value = is_over ? -camera->line_distance_m : camera->line_distance_m;
  remark->limit = 0.0;
  lr_remark_about (remark, main_camera->placed);
  lr_remark_mark_line (remark, judge->study->line_from_m, judge->study->line_to_m, NULL);
  lr_remark_mark_point (remark, camera->placed->at_m, distance);

  if (!is_over)
    {
      lr_remark_say (remark,
                     _("%s stands on %s’s side of the line of action, <b>%s</b> from it."),
                     name, main_name, distance);
      return;
    }

  lr_remark_say (remark,
                 _("%s has crossed the line of action by <b>%s</b>: cut against %s, %s would look the other way."),
                 name, distance, main_name, lr_say_name (judge, camera->subject));
  offer_way_back (judge, remark, main_camera, camera);
}

static void
offer_margin (LrJudge               *judge,
              LrRemark              *remark,
              const LrCameraReading *main_camera,
              const LrCameraReading *camera)
{
  double margin_rad = fmin (judge->limits[LR_LIMIT_LINE_MARGIN] + SPARE_RAD, 0.5 * LR_PI);
  LrVec2 eyes_m = eyes_of (camera), partner_m = partner_of (judge, camera), to_m;
  LrSide side = camera->side;

  if (side == LR_SIDE_ON_LINE)
    side = main_camera != NULL ? main_camera->side : LR_SIDE_LEFT;
  if (camera->subject != judge->study->subject)
    side = (LrSide) -(int) side;
  if (lr_line_mend (eyes_m, partner_m, camera->placed->at_m, side, margin_rad, &to_m))
    lr_judge_offer_move (judge, remark, camera->placed, to_m, &eyes_m, lr_say_angle (judge, margin_rad));
}

static void
judge_margin (LrJudge               *judge,
              const LrCameraReading *main_camera,
              const LrCameraReading *camera)
{
  double limit_rad = judge->limits[LR_LIMIT_LINE_MARGIN];
  gboolean is_near = camera->line_margin_rad < limit_rad;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_LINE_MARGIN, is_near ? LR_GRADE_MIND : LR_GRADE_FINE, camera->placed,
                                   NULL);
  const char *name, *angle, *limit;

  if (remark == NULL)
    return;

  name = lr_say_name (judge, camera->placed);
  angle = is_near ? lr_say_angle_off (judge, camera->line_margin_rad, limit_rad)
                  : lr_say_angle (judge, camera->line_margin_rad);
  limit = lr_say_angle (judge, limit_rad);
  remark->value = camera->line_margin_rad;
  remark->limit = limit_rad;
  lr_remark_mark_line (remark, judge->study->line_from_m, judge->study->line_to_m, NULL);
  lr_remark_mark_line (remark, eyes_of (camera), camera->placed->at_m, angle);

  if (!is_near)
    {
      lr_remark_say (remark,
                     _("%s keeps <b>%s</b> off the line of action; <b>%s</b> is the least."),
                     name, angle, limit);
      return;
    }

  lr_remark_say (remark,
                 _("%s stands <b>%s</b> off the line of action; under <b>%s</b> it is soon crossed."),
                 name, angle, limit);
  offer_margin (judge, remark, main_camera, camera);
}

/**
 * lr_judge_line:
 * @judge: a judge
 *
 * Sides of the line of action, and distances from it.
 */
void
lr_judge_line (LrJudge *judge)
{
  const LrCameraReading *main_camera = leader (judge);

  for (guint i = 0; i < judge->study->cameras->len; i++)
    {
      const LrCameraReading *camera = lr_judge_camera (judge, i);

      if (!camera->is_on_study_line || lr_judge_is_cutaway (judge, camera))
        continue;

      if (main_camera != NULL && camera != main_camera)
        judge_side (judge, main_camera, camera);
      judge_margin (judge, main_camera, camera);
    }
}
