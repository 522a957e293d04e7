/* judge_framing.c - what the frame holds of the subject
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Headroom is judged from the close-up outwards: tighter shots crop the head on purpose. In shots wider than a medium
 * long one the air over the head says nothing, so only the least counts there.
 */

#include "config.h"

#include "judge_parts.h"

#include <glib/gi18n-lib.h>

#define SPARE_SHARE 0.02
#define EYES_DOWN (1.0 / 3.0)

static const char *const held[LR_N_SHOTS] = {
  [LR_SHOT_EXTREME_CLOSE_UP] = N_("a part of the face"),
  [LR_SHOT_BIG_CLOSE_UP] = N_("the face"),
  [LR_SHOT_CLOSE_UP] = N_("from the shoulders up"),
  [LR_SHOT_MEDIUM_CLOSE_UP] = N_("from the chest up"),
  [LR_SHOT_MEDIUM] = N_("from the waist up"),
  [LR_SHOT_MEDIUM_LONG] = N_("from the thighs up"),
  [LR_SHOT_THREE_QUARTER] = N_("from the knees up"),
  [LR_SHOT_FULL] = N_("from head to foot"),
  [LR_SHOT_LONG] = N_("with the room around"),
};

static gboolean
has_eyes (const LrCameraReading *camera)
{
  return camera->eyes_across >= 0.0 && camera->eyes_across <= 1.0 && camera->eyes_down >= 0.0 && camera->eyes_down <= 1.0;
}

static void
offer_aim (LrJudge               *judge,
           LrRemark              *remark,
           const LrCameraReading *camera)
{
  const LrProjection *p = &camera->projection;
  double pan_rad, tilt_rad;
  const char *turn;
  LrRemedy *remedy;

  if (camera->item->camera.aims_at[0] != '\0'
      || !lr_projection_aim (p->eye_m, camera->subject->eyes_m, 0.5, EYES_DOWN, p->half_width, p->half_height, &pan_rad,
                             &tilt_rad))
    return;

  turn = lr_say_angle (judge, fabs (lr_angle_wrap_rad (pan_rad - camera->pan_rad)));
  remedy = lr_remedy_new ();
  lr_remedy_change (remedy, camera->item, "facing-deg", pan_rad);
  lr_remedy_change (remedy, camera->item, "tilt-deg", tilt_rad);
  lr_remedy_say (remedy, turn,
                 _("Turn %s by <b>%s</b> to %s’s eyes."),
                 lr_say_name (judge, camera->placed), turn, lr_say_name (judge, camera->subject));
  lr_judge_offer (judge, remark, remedy);
}

static void
say_no_eyes (LrJudge               *judge,
             LrRemark              *remark,
             const LrCameraReading *camera)
{
  LrVec3 way = lr_vec3_sub (camera->subject->eyes_m, camera->projection.eye_m);
  double off_rad = acos (fmin (fmax (lr_vec3_dot (way, camera->projection.forward) / lr_vec3_length (way), -1.0), 1.0));

  lr_remark_say (remark,
                 _("%s’s eyes are not in %s’s frame: they lie <b>%s</b> off its axis, and it sees <b>%s × %s</b>."),
                 lr_say_name (judge, camera->subject), lr_say_name (judge, camera->placed),
                 lr_say_angle (judge, off_rad), lr_say_angle (judge, camera->angle_h_rad),
                 lr_say_angle (judge, camera->angle_v_rad));
  offer_aim (judge, remark, camera);
}

static void
judge_shot (LrJudge               *judge,
            const LrCameraReading *camera)
{
  gboolean is_cutaway = lr_judge_is_cutaway (judge, camera);
  gboolean is_framed = has_eyes (camera) && camera->framing.shot < LR_N_SHOTS;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_SHOT_SIZE, is_framed || is_cutaway ? LR_GRADE_FINE : LR_GRADE_FIX,
                                   camera->placed, NULL);
  const char *name, *subject;

  if (remark == NULL)
    return;

  name = lr_say_name (judge, camera->placed);
  subject = lr_say_name (judge, camera->subject);
  remark->value = 2.0 * camera->projection.half_width * camera->distance_m;
  lr_remark_about (remark, camera->subject);
  if (camera->n_wedge >= 3)
    lr_remark_mark_line (remark, camera->wedge_m[0], camera->wedge_m[1], NULL);
  lr_remark_mark_distance (remark, camera->placed->at_m, lr_vec3_flat (camera->subject->eyes_m),
                           lr_say_angle (judge, camera->angle_h_rad));

  if (is_cutaway)
    lr_remark_say (remark,
                   _("%s looks at something else: %s is not in its frame, <b>%s</b> wide."),
                   name, subject, lr_say_angle (judge, camera->angle_h_rad));
  else if (!is_framed)
    say_no_eyes (judge, remark, camera);
  else
    lr_remark_say (remark,
                   _("%s shows %s %s (<b>%s</b>): <b>%s × %s</b> at the eyes, <b>%s × %s</b> of view."),
                   name, subject, _(held[camera->framing.shot]), lr_shot_title (camera->framing.shot),
                   lr_say_plain (judge, camera->field_w_m), lr_say_length (judge, camera->field_h_m),
                   lr_say_angle (judge, camera->angle_h_rad), lr_say_angle (judge, camera->angle_v_rad));
}

typedef struct
{
  double least, most;
} Band;

static Band
headroom_band (const LrJudge *judge,
               LrShot         shot)
{
  Band band = { judge->limits[LR_LIMIT_HEADROOM_MIN], judge->limits[LR_LIMIT_HEADROOM_MAX] };

  if (shot <= LR_SHOT_CLOSE_UP)
    band.least = 0.0;
  if (shot >= LR_SHOT_THREE_QUARTER)
    band.most = 1.0;
  return band;
}

/* The aim goes down the frame as the headroom grows; a camera that aims at nothing tilts */
static void
offer_tilt (LrJudge               *judge,
            LrRemark              *remark,
            const LrCameraReading *camera,
            double                 wanted)
{
  double by = wanted - camera->framing.headroom;
  const LrCamera *c = &camera->item->camera;
  const char *down = lr_say_share (judge, camera->eyes_down + by);
  LrRemedy *remedy = lr_remedy_new ();

  if (c->aims_at[0] != '\0')
    lr_remedy_change (remedy, camera->item, "down-pct", c->down + by);
  else
    lr_remedy_change (remedy, camera->item, "tilt-deg", camera->tilt_rad + by * camera->angle_v_rad);
  lr_remedy_say (remedy, down,
                 _("Tilt %s until the eyes are <b>%s</b> down the frame."),
                 lr_say_name (judge, camera->placed), down);
  lr_judge_offer (judge, remark, remedy);
}

static void
judge_headroom (LrJudge               *judge,
                const LrCameraReading *camera)
{
  Band band = headroom_band (judge, camera->framing.shot);
  double headroom = camera->framing.headroom;
  gboolean is_little = headroom < band.least, is_much = headroom > band.most;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_HEADROOM, is_little || is_much ? LR_GRADE_MIND : LR_GRADE_FINE,
                                   camera->placed, NULL);
  const char *name, *subject, *share;

  if (remark == NULL)
    return;

  name = lr_say_name (judge, camera->placed);
  subject = lr_say_name (judge, camera->subject);
  share = is_little || is_much ? lr_say_share_off (judge, fabs (headroom), is_little ? band.least : band.most)
                               : lr_say_share (judge, fabs (headroom));
  remark->value = headroom;
  remark->limit = is_little ? band.least : band.most;
  lr_remark_about (remark, camera->subject);
  lr_remark_mark_distance (remark, camera->placed->at_m, camera->subject->at_m, share);

  if (is_little && headroom < 0.0)
    lr_remark_say (remark,
                   _("%s cuts off the top of %s’s head, by <b>%s</b> of the frame."),
                   name, subject, share);
  else if (is_little)
    lr_remark_say (remark,
                   _("%s leaves only <b>%s</b> of the frame above %s’s head; <b>%s</b> is the least."),
                   name, share, subject, lr_say_share (judge, band.least));
  else if (is_much)
    lr_remark_say (remark,
                   _("%s leaves <b>%s</b> of the frame above %s’s head; <b>%s</b> is the most."),
                   name, share, subject, lr_say_share (judge, band.most));
  else
    lr_remark_say (remark,
                   _("%s leaves <b>%s</b> of the frame above %s’s head, between <b>%s</b> and <b>%s</b>."),
                   name, share, subject, lr_say_share (judge, band.least), lr_say_share (judge, band.most));

  if (is_little || is_much)
    offer_tilt (judge, remark, camera, is_little ? fmin (band.least + SPARE_SHARE, 0.5 * (band.least + band.most))
                                                 : fmax (band.most - SPARE_SHARE, 0.5 * (band.least + band.most)));
}

/**
 * lr_judge_framing:
 * @judge: a judge
 *
 * Shot sizes and headroom.
 */
void
lr_judge_framing (LrJudge *judge)
{
  for (guint i = 0; i < judge->study->cameras->len; i++)
    {
      const LrCameraReading *camera = lr_judge_camera (judge, i);

      if (!camera->has_subject)
        continue;

      judge_shot (judge, camera);
      if (has_eyes (camera) && camera->framing.shot >= LR_SHOT_CLOSE_UP && camera->framing.shot < LR_N_SHOTS)
        judge_headroom (judge, camera);
    }
}
