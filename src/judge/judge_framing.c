/* judge_framing.c - what the frame holds of the subject
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Headroom is judged from the close-up outwards: tighter shots crop the head on purpose. In shots wider than a medium
 * long one the air over the head says nothing, so only the least counts there.
 *
 * A tenth of headroom and eyes on the upper third agree around the medium close-up; wider, the headroom puts the eyes
 * higher. So the eyes may be anywhere between the place of the rule for a frame of that height and the third, and they are
 * only judged where the headroom is fine: one tilt is not two faults. Full and long shots are composed in other ways.
 */

#include "config.h"

#include "judge_parts.h"

#include <glib/gi18n-lib.h>

#define INTO_LENS_RAD (3.0 * LR_DEG) /* within it a look reads as into the lens: common practice, no source */
#define SPARE_SHARE 0.02
#define FURTHER_SHARE 0.03
#define EYES_DOWN (1.0 / 3.0)
#define ROUNDING 5e-4 /* of the aim in the file */

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

/**
 * lr_judge_has_eyes:
 * @camera: a camera
 *
 * Returns: whether it has a subject, with the eyes in its frame
 */
gboolean
lr_judge_has_eyes (const LrCameraReading *camera)
{
  return camera->has_subject && camera->eyes_across >= 0.0 && camera->eyes_across <= 1.0 && camera->eyes_down >= 0.0 && camera->eyes_down <= 1.0;
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
  gboolean is_framed = lr_judge_has_eyes (camera) && camera->framing.shot < LR_N_SHOTS;
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
    band = (Band) { 0.0, judge->limits[LR_LIMIT_HEADROOM_MAX_CLOSE] };
  else if (shot == LR_SHOT_MEDIUM_LONG)
    band.most = judge->limits[LR_LIMIT_HEADROOM_MAX_WIDE];
  else if (shot > LR_SHOT_MEDIUM_LONG)
    band.most = 1.0;
  return band;
}

/**
 * lr_judge_offer_tilt:
 * @judge: a judge
 * @remark: a remark, the one added last
 * @camera: a camera whose frame holds its subject's eyes
 * @eyes_down: share of the frame's height that is wanted above the eyes
 *
 * Offers "Tilt A until the eyes are 24 % down the frame." The aim goes down the frame with the eyes; a camera that aims at
 * nothing tilts.
 */
void
lr_judge_offer_tilt (LrJudge               *judge,
                     LrRemark              *remark,
                     const LrCameraReading *camera,
                     double                 eyes_down)
{
  double by = eyes_down - camera->eyes_down;
  const LrCamera *c = &camera->item->camera;
  const char *down = lr_say_share (judge, eyes_down);
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

/* The smallest tilt that helps, one a little farther, the place of the rule; and that with the camera a little nearer or
 * farther, where the tilts bring the lower edge to a joint */
static void
offer_tilts (LrJudge               *judge,
             LrRemark              *remark,
             const LrCameraReading *camera,
             double                 eyes_down)
{
  static const double scales[] = { 1.06, 0.94, 1.12, 0.88 };

  lr_judge_offer_tilt (judge, remark, camera, eyes_down);
  lr_judge_offer_tilt (judge, remark, camera, eyes_down + copysign (FURTHER_SHARE, eyes_down - camera->eyes_down));
  lr_judge_offer_tilt (judge, remark, camera, camera->eyes_rule);
  for (gsize i = 0; i < G_N_ELEMENTS (scales); i++)
    lr_judge_offer_refit (judge, remark, camera, scales[i]);
}

/* Returns whether it is fine */
static gboolean
judge_headroom (LrJudge               *judge,
                const LrCameraReading *camera)
{
  Band band = headroom_band (judge, camera->framing.shot);
  double headroom = camera->framing.headroom;
  gboolean is_little = headroom < band.least, is_much = headroom > band.most;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_HEADROOM, is_little || is_much ? LR_GRADE_MIND : LR_GRADE_FINE,
                                   camera->placed, NULL);
  const char *name, *subject, *share;
  double wanted;

  if (remark == NULL)
    return !is_little && !is_much;

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

  if (!is_little && !is_much)
    return TRUE;

  wanted = is_little ? fmin (band.least + SPARE_SHARE, 0.5 * (band.least + band.most))
                     : fmax (band.most - SPARE_SHARE, 0.5 * (band.least + band.most));
  offer_tilts (judge, remark, camera, camera->eyes_down + wanted - headroom);
  return FALSE;
}

static void
judge_eyes_place (LrJudge               *judge,
                  const LrCameraReading *camera)
{
  double tolerance = judge->limits[LR_LIMIT_EYES_THIRD];
  Band band = { fmin (camera->eyes_rule, EYES_DOWN) - tolerance, EYES_DOWN + tolerance };
  double eyes_down = camera->eyes_down;
  gboolean is_high = eyes_down < band.least, is_low = eyes_down > band.most;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_EYES_PLACE, is_high || is_low ? LR_GRADE_MIND : LR_GRADE_FINE,
                                   camera->placed, NULL);
  const char *name, *subject, *share, *rule;

  if (remark == NULL)
    return;

  name = lr_say_name (judge, camera->placed);
  subject = lr_say_name (judge, camera->subject);
  share = is_high || is_low ? lr_say_share_off (judge, eyes_down, is_high ? band.least : band.most)
                            : lr_say_share (judge, eyes_down);
  rule = lr_say_share (judge, camera->eyes_rule);
  remark->value = eyes_down;
  remark->limit = is_high ? band.least : band.most;
  lr_remark_about (remark, camera->subject);
  lr_remark_mark_distance (remark, camera->placed->at_m, camera->subject->at_m, share);

  if (is_low)
    lr_remark_say (remark,
                   _("In %s, %s’s eyes are <b>%s</b> down the frame, under the upper third; a shot so wide has them at <b>%s</b>."),
                   name, subject, share, rule);
  else if (is_high)
    lr_remark_say (remark,
                   _("In %s, %s’s eyes are only <b>%s</b> down the frame; a shot so wide has them at <b>%s</b>."),
                   name, subject, share, rule);
  else
    lr_remark_say (remark,
                   _("In %s, %s’s eyes are <b>%s</b> down the frame; the upper third is <b>%s</b>, little headroom puts them at "
                     "<b>%s</b>."),
                   name, subject, share, lr_say_share (judge, EYES_DOWN), rule);

  if (is_high || is_low)
    offer_tilts (judge, remark, camera, is_high ? band.least + SPARE_SHARE : band.most - SPARE_SHARE);
}

/* A pan turns the shoulders and the crown in the frame a little, which may want a tilt as well */
static void
offer_pan_and_tilt (LrJudge               *judge,
                    LrRemark              *remark,
                    const LrCameraReading *camera,
                    double                 room)
{
  double across = camera->look_across > 0.0 ? 1.0 - room : room;
  const LrCamera *c = &camera->item->camera;
  const char *share = lr_say_share (judge, room);
  LrRemedy *remedy;

  if (c->aims_at[0] == '\0')
    return;

  remedy = lr_remedy_new ();
  lr_remedy_change (remedy, camera->item, "across-pct", c->across + across - camera->eyes_across);
  lr_remedy_change (remedy, camera->item, "down-pct", c->down + camera->eyes_rule - camera->eyes_down);
  lr_remedy_say (remedy, share,
                 _("Pan %s until <b>%s</b> of the frame is ahead of the face, and tilt it until the eyes are <b>%s</b> down."),
                 lr_say_name (judge, camera->placed), share, lr_say_share (judge, camera->eyes_rule));
  lr_judge_offer (judge, remark, remedy);
}

/* A camera that aims at nothing turns; the face goes to the left of the frame as it turns to the right */
static void
offer_pan (LrJudge               *judge,
           LrRemark              *remark,
           const LrCameraReading *camera,
           double                 room)
{
  double across = camera->look_across > 0.0 ? 1.0 - room : room;
  double by = across - camera->eyes_across;
  const LrCamera *c = &camera->item->camera;
  const char *share = lr_say_share (judge, room);
  LrRemedy *remedy = lr_remedy_new ();

  if (c->aims_at[0] != '\0')
    lr_remedy_change (remedy, camera->item, "across-pct", c->across + by);
  else
    lr_remedy_change (remedy, camera->item, "facing-deg",
                      lr_angle_wrap_rad (camera->pan_rad + by * camera->angle_h_rad));
  lr_remedy_say (remedy, share,
                 _("Pan %s until <b>%s</b> of the frame is ahead of the face."),
                 lr_say_name (judge, camera->placed), share);
  lr_judge_offer (judge, remark, remedy);
}

/* A look into the lens has no side */
static gboolean
has_look_room (const LrCameraReading *camera)
{
  return camera->is_looking && isfinite (camera->look_room)
         && fabs (camera->gaze_rad) >= INTO_LENS_RAD;
}

static void
judge_look_room (LrJudge               *judge,
                 const LrCameraReading *camera)
{
  double least = judge->limits[LR_LIMIT_LOOK_ROOM_MIN], usual = judge->limits[LR_LIMIT_LOOK_ROOM_USUAL];
  double room = camera->look_room;
  gboolean is_short = room < least - ROUNDING;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_LOOK_ROOM, is_short ? LR_GRADE_MIND : LR_GRADE_FINE, camera->placed,
                                   NULL);
  const char *name, *subject, *share;

  if (remark == NULL)
    return;

  name = lr_say_name (judge, camera->placed);
  subject = lr_say_name (judge, camera->subject);
  share = is_short ? lr_say_share_off (judge, room, least) : lr_say_share (judge, room);
  remark->value = room;
  remark->limit = least;
  lr_remark_about (remark, camera->subject);
  lr_remark_mark_distance (remark, camera->placed->at_m, lr_vec3_flat (camera->subject->eyes_m), share);

  if (is_short)
    lr_remark_say (remark,
                   _("%s is short-sided: only <b>%s</b> of its width is ahead of %s’s face; <b>%s</b> is the least."),
                   name, share, subject, lr_say_share (judge, least));
  else
    lr_remark_say (remark,
                   _("In %s, <b>%s</b> of the width is ahead of %s’s face; <b>%s</b> is usual, <b>%s</b> the least."),
                   name, share, subject, lr_say_share (judge, usual), lr_say_share (judge, least));

  if (is_short)
    {
      offer_pan (judge, remark, camera, fmax (usual, least));
      offer_pan (judge, remark, camera, least + SPARE_SHARE);
      offer_pan_and_tilt (judge, remark, camera, fmax (usual, least));
      offer_pan_and_tilt (judge, remark, camera, least + SPARE_SHARE);
    }
}

static void
judge_frame (LrJudge               *judge,
             const LrCameraReading *camera)
{
  LrShot shot = camera->framing.shot;
  gboolean is_fine = TRUE;

  if (shot >= LR_SHOT_CLOSE_UP)
    is_fine = judge_headroom (judge, camera);
  if (shot < LR_SHOT_BIG_CLOSE_UP || shot > LR_SHOT_THREE_QUARTER)
    return;

  if (is_fine)
    judge_eyes_place (judge, camera);
  if (has_look_room (camera))
    judge_look_room (judge, camera);
}

/**
 * lr_judge_framing:
 * @judge: a judge
 *
 * Shot sizes, headroom, the eyes' place and the room that the look has.
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
      if (lr_judge_has_eyes (camera) && camera->framing.shot < LR_N_SHOTS)
        judge_frame (judge, camera);
    }
}
