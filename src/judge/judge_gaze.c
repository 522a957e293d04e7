/* judge_gaze.c - how far past the lens the subject looks
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Under about 3 degrees a look reads as into the lens (Horstmann & Linke, Perception 2021: a cone 5.2 degrees
 * across); the bands beyond are common practice: 3 to 8 seems to just miss it, 8 to 20 is the usual interview, over that
 * it feels detached; a second camera may go on to 60.
 */

#include "config.h"

#include "judge_parts.h"

#include <glib/gi18n-lib.h>

#define SPARE_RAD (2.0 * LR_DEG)

typedef struct
{
  double least_rad, most_rad;
} Band;

static Band
band_of (const LrJudge         *judge,
         const LrCameraReading *camera)
{
  return (Band) { judge->limits[LR_LIMIT_GAZE_MIN],
                  judge->limits[camera->is_main ? LR_LIMIT_GAZE_MAX : LR_LIMIT_GAZE_MAX_SECOND] };
}

/* A place of @point_m on its circle round @centre_m that is turned by @turn_rad */
static LrVec2
turned (LrVec2 centre_m,
        LrVec2 point_m,
        double turn_rad)
{
  return lr_vec2_add (centre_m, lr_vec2_rotate (lr_vec2_sub (point_m, centre_m), turn_rad));
}

/* The main camera waits for the interviewer to move, for the framing hangs on it; other cameras move themselves */
static void
offer_turns (LrJudge               *judge,
             LrRemark              *remark,
             const LrCameraReading *camera,
             double                 wanted_rad)
{
  const LrPlaced *partner = camera->subject == judge->study->subject ? judge->study->interviewer : judge->study->subject;
  LrVec2 head_m = camera->subject->at_m, eyes_m = lr_vec3_flat (camera->subject->eyes_m);
  double turn_rad = copysign (wanted_rad, camera->gaze_rad) - camera->gaze_rad;
  const char *to = lr_say_angle (judge, wanted_rad);

  if (camera->is_main && camera->is_on_study_line && partner == judge->study->interviewer)
    lr_judge_offer_move (judge, remark, partner, turned (head_m, partner->at_m, turn_rad), &head_m, to);
  lr_judge_offer_move (judge, remark, camera->placed, turned (eyes_m, camera->placed->at_m, -turn_rad), &eyes_m, to);
}

static void
judge_look (LrJudge               *judge,
            const LrCameraReading *camera)
{
  Band band = band_of (judge, camera);
  double gaze_rad = fabs (camera->gaze_rad);
  gboolean is_under = gaze_rad < band.least_rad, is_over = gaze_rad > band.most_rad;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_GAZE, is_under || is_over ? LR_GRADE_MIND : LR_GRADE_FINE,
                                   camera->placed, NULL);
  LrVec2 eyes_m, lens_m;
  const char *subject, *name, *angle, *least, *most;

  if (remark == NULL)
    return;

  eyes_m = lr_vec3_flat (camera->subject->eyes_m);
  lens_m = lr_vec3_flat (camera->projection.eye_m);
  subject = lr_say_name (judge, camera->subject);
  name = lr_say_name (judge, camera->placed);
  angle = is_under || is_over ? lr_say_angle_off (judge, gaze_rad, is_under ? band.least_rad : band.most_rad)
                              : lr_say_angle (judge, gaze_rad);
  least = lr_say_angle (judge, band.least_rad);
  most = lr_say_angle (judge, band.most_rad);
  remark->value = gaze_rad;
  remark->limit = is_under ? band.least_rad : band.most_rad;
  lr_remark_about (remark, camera->subject);
  lr_remark_mark_line (remark, eyes_m, lens_m, NULL);
  lr_remark_mark_arc (remark, eyes_m, lens_m,
                      lr_vec2_add (eyes_m, lr_vec2_rotate (lr_vec2_sub (lens_m, eyes_m), camera->gaze_rad)), angle);

  if (is_under)
    lr_remark_say (remark,
                   _("%s looks only <b>%s</b> past %s; under <b>%s</b> the look seems to just miss the lens."),
                   subject, angle, name, least);
  else if (is_over && camera->is_main)
    lr_remark_say (remark,
                   _("%s looks <b>%s</b> past %s; over <b>%s</b> the look feels detached."),
                   subject, angle, name, most);
  else if (is_over)
    lr_remark_say (remark,
                   _("%s looks <b>%s</b> past %s; over <b>%s</b> the face turns into a profile."),
                   subject, angle, name, most);
  else
    lr_remark_say (remark,
                   _("%s looks <b>%s</b> past %s, between <b>%s</b> and <b>%s</b>."),
                   subject, angle, name, least, most);

  if (is_under || is_over)
    offer_turns (judge, remark, camera, is_under ? fmin (band.least_rad + SPARE_RAD, band.most_rad)
                                                 : fmax (band.most_rad - SPARE_RAD, band.least_rad));
}

/**
 * lr_judge_gaze:
 * @judge: a judge
 *
 * The look past each lens.
 */
void
lr_judge_gaze (LrJudge *judge)
{
  for (guint i = 0; i < judge->study->cameras->len; i++)
    {
      const LrCameraReading *camera = lr_judge_camera (judge, i);

      if (camera->is_looking && !lr_judge_is_cutaway (judge, camera))
        judge_look (judge, camera);
    }
}
