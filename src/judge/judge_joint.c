/* judge_joint.c - a frame that ends at a joint
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Neck, elbow and knee. The waist is none: a medium shot ends there by its name, and the elbow is a hand's breadth above it.
 * The joints' heights are those of an average body, true to a few centimetres; arms that rest on a table are higher.
 */

#include "config.h"

#include "judge_parts.h"

#include <glib/gi18n-lib.h>

#define SPARE_M 0.01
#define NEAR_LIMITS 4.0 /* farther off, an edge that is clear of all joints has nothing to say */

/* Scales the frame about the eyes: by the lens, if it zooms so far, or by the way to the subject */
static void
offer_scale (LrJudge               *judge,
             LrRemark              *remark,
             const LrCameraReading *camera,
             double                 scale)
{
  const LrLens *lens = lr_judge_mounted_lens (judge, camera);
  double focal_m = round (1000.0 * camera->item->camera.focal_m / scale) / 1000.0;
  LrVec2 eyes_m = lr_vec3_flat (camera->subject->eyes_m);
  LrVec2 way = lr_vec2_sub (camera->placed->at_m, eyes_m);

  if (lens != NULL && focal_m >= lens->focal_min_m && focal_m <= lens->focal_max_m)
    {
      LrRemedy *remedy = lr_remedy_new ();
      const char *focal = lr_say_focal (judge, focal_m);

      lr_remedy_change (remedy, camera->item, "focal-mm", focal_m);
      lr_remedy_say (remedy, focal, _("Zoom %s to <b>%s</b>."), lr_say_name (judge, camera->placed), focal);
      lr_judge_offer (judge, remark, remedy);
    }
  lr_judge_offer_move (judge, remark, camera->placed, lr_vec2_along (eyes_m, way, scale), NULL, NULL);
}

/**
 * lr_judge_offer_refit:
 * @judge: a judge
 * @remark: a remark, the one added last
 * @camera: a camera whose frame holds its subject's eyes
 * @scale: of the frame's height, > 0
 *
 * Offers "Move A 0.12 m towards the west wall and tilt it until the eyes are 25 % down the frame." for what a tilt alone does
 * not mend: the lower edge would come to a joint.
 */
void
lr_judge_offer_refit (LrJudge               *judge,
                      LrRemark              *remark,
                      const LrCameraReading *camera,
                      double                 scale)
{
  const LrPlaced *placed = camera->placed;
  LrVec2 eyes_m = lr_vec3_flat (camera->subject->eyes_m);
  LrVec2 to_m = lr_vec2_along (eyes_m, lr_vec2_sub (placed->at_m, eyes_m), scale);
  LrVec2 way = lr_vec2_sub (to_m, placed->at_m);
  const char *length = lr_say_length (judge, lr_vec2_length (way)), *down;
  LrRemedy *remedy;
  double eyes_down;

  if (camera->item->camera.aims_at[0] == '\0'
      || !lr_eyes_down_for_height (&camera->subject->body, scale * camera->field_h_m, &eyes_down)
      || !lr_study_is_clear (judge->study, placed, to_m, judge->limits[LR_LIMIT_OVERLAP]))
    return;

  down = lr_say_share (judge, eyes_down);
  remedy = lr_remedy_new ();
  lr_remedy_move (remedy, placed, to_m, NULL);
  lr_remedy_change (remedy, camera->item, "down-pct", camera->item->camera.down + eyes_down - camera->eyes_down);
  /* Translators: "Move A 0.12 m towards the west wall and tilt it until the eyes are 25 % down the frame." */
  lr_remedy_say (remedy, length, _("Move %s <b>%s</b> %s and tilt it until the eyes are <b>%s</b> down the frame."),
                 lr_say_name (judge, placed), length, lr_say_towards (judge, way), down);
  lr_judge_offer (judge, remark, remedy);
}

/* The edge goes under the joint or over it, the nearer way first: by tilt, by size, by both */
static void
offer_clear (LrJudge               *judge,
             LrRemark              *remark,
             const LrCameraReading *camera)
{
  double clear_m = judge->limits[LR_LIMIT_JOINT] + SPARE_M;
  double above_m = camera->joint.above_m;
  double by_m[2] = { copysign (clear_m, above_m) - above_m, -copysign (clear_m, above_m) - above_m };
  double under_eyes_m = (1.0 - camera->eyes_down) * camera->field_h_m;

  for (int i = 0; i < 2; i++)
    lr_judge_offer_tilt (judge, remark, camera, camera->eyes_down - by_m[i] / camera->field_h_m);
  for (int i = 0; i < 2; i++)
    {
      offer_scale (judge, remark, camera, 1.0 + by_m[i] / under_eyes_m);
      lr_judge_offer_refit (judge, remark, camera, 1.0 + by_m[i] / under_eyes_m);
    }
}

static void
say_joint (LrJudge               *judge,
           LrRemark              *remark,
           const LrCameraReading *camera,
           gboolean               is_cut)
{
  static const char *const cut[LR_N_JOINTS] = {
    [LR_JOINT_NECK] = N_("The lower edge of %s cuts %s at the neck, <b>%s</b> from its middle; <b>%s</b> is the least."),
    [LR_JOINT_ELBOW] = N_("The lower edge of %s cuts %s at the elbows, <b>%s</b> from them; <b>%s</b> is the least."),
    [LR_JOINT_KNEE] = N_("The lower edge of %s cuts %s at the knees, <b>%s</b> from them; <b>%s</b> is the least."),
  };
  static const char *const clear[LR_N_JOINTS] = {
    [LR_JOINT_NECK] = N_("The lower edge of %s keeps off %s’s neck by <b>%s</b>; <b>%s</b> is the least."),
    [LR_JOINT_ELBOW] = N_("The lower edge of %s keeps off %s’s elbows by <b>%s</b>; <b>%s</b> is the least."),
    [LR_JOINT_KNEE] = N_("The lower edge of %s keeps off %s’s knees by <b>%s</b>; <b>%s</b> is the least."),
  };
  double limit_m = judge->limits[LR_LIMIT_JOINT], off_m = fabs (camera->joint.above_m);
  const char *name = lr_say_name (judge, camera->placed), *subject = lr_say_name (judge, camera->subject);
  const char *off = is_cut ? lr_say_small_off (judge, off_m, limit_m) : lr_say_small (judge, off_m);
  const char *limit = lr_say_small (judge, limit_m);

  lr_remark_mark_distance (remark, camera->placed->at_m, camera->subject->at_m, off);
  if (is_cut)
    lr_remark_say (remark, _(cut[camera->joint.joint]), name, subject, off, limit);
  else
    lr_remark_say (remark, _(clear[camera->joint.joint]), name, subject, off, limit);
}

static void
judge_joint (LrJudge               *judge,
             const LrCameraReading *camera)
{
  double limit_m = judge->limits[LR_LIMIT_JOINT], off_m = fabs (camera->joint.above_m);
  gboolean is_cut = off_m < limit_m;
  LrRemark *remark;

  if (off_m > NEAR_LIMITS * limit_m)
    return;

  remark = lr_judge_add (judge, LR_CHECK_JOINT, is_cut ? LR_GRADE_MIND : LR_GRADE_FINE, camera->placed, NULL);
  if (remark == NULL)
    return;

  remark->value = off_m;
  remark->limit = limit_m;
  lr_remark_about (remark, camera->subject);
  say_joint (judge, remark, camera, is_cut);
  if (is_cut)
    offer_clear (judge, remark, camera);
}

/**
 * lr_judge_joints:
 * @judge: a judge
 *
 * The joint at each frame's lower edge.
 */
void
lr_judge_joints (LrJudge *judge)
{
  for (guint i = 0; i < judge->study->cameras->len; i++)
    {
      const LrCameraReading *camera = lr_judge_camera (judge, i);

      if (camera->has_subject && lr_judge_has_eyes (camera) && camera->framing.shot >= LR_SHOT_BIG_CLOSE_UP
          && camera->framing.shot <= LR_SHOT_FULL && camera->joint.joint < LR_N_JOINTS)
        judge_joint (judge, camera);
    }
}
