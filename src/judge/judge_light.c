/* judge_light.c - whether faces and walls come out where they are wanted
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Only of levels that hold what the room gives back: without it every shadow side would be told too dark.
 */

#include "config.h"

#include "judge_parts.h"

#include <glib/gi18n-lib.h>

static void
judge_face (LrJudge               *judge,
            const LrCameraReading *camera,
            const LrShares        *shares)
{
  double wanted = judge->limits[LR_LIMIT_FACE_LEVEL], limit = judge->limits[LR_LIMIT_FACE_LEVEL_OFF];
  double over_stops = log2 (shares->face / lr_share_of_signal (wanted));
  gboolean is_burnt = shares->face >= 1.0, is_off = fabs (over_stops) > limit;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_FACE_LEVEL, is_burnt ? LR_GRADE_FIX : is_off ? LR_GRADE_MIND : LR_GRADE_FINE, camera->placed,
                                   NULL);
  const char *name, *subject, *level, *stops;

  if (remark == NULL)
    return;

  name = lr_say_name (judge, camera->placed);
  subject = lr_say_name (judge, camera->subject);
  level = lr_say_share (judge, lr_signal_of_share (shares->face));
  stops = lr_say_number (judge, fabs (over_stops), 1);
  remark->value = fabs (over_stops);
  remark->limit = limit;
  lr_remark_about (remark, camera->subject);
  lr_remark_mark_point (remark, camera->subject->at_m, level);
  if (is_burnt)
    lr_remark_say (remark, _("The lit side of %s’s face is burnt out in %s, <b>%s</b> stops over <b>%s</b>."), subject, name, stops,
                   lr_say_share (judge, wanted));
  else if (is_off)
    lr_remark_say (remark, over_stops > 0.0 ? _("The lit side of %s’s face comes out at <b>%s</b> in %s, <b>%s</b> stops over <b>%s</b>.")
                                            : _("The lit side of %s’s face comes out at <b>%s</b> in %s, <b>%s</b> stops under <b>%s</b>."),
                   subject, level, name, stops, lr_say_share (judge, wanted));
  else
    lr_remark_say (remark, _("The lit side of %s’s face comes out at about <b>%s</b> in %s."), subject, level, name);
  if (is_off || is_burnt)
    lr_judge_keep_compensation (judge, remark, camera, -over_stops);
}

static void
judge_wall (LrJudge               *judge,
            const LrCameraReading *camera,
            const LrShares        *shares)
{
  double under_stops = log2 (shares->face / shares->background), limit = judge->limits[LR_LIMIT_WALL_UNDER_FACE];
  gboolean is_bright = under_stops < limit;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_WALL_LEVEL, is_bright ? LR_GRADE_MIND : LR_GRADE_FINE, camera->placed, NULL);
  const char *name, *subject, *stops;

  if (remark == NULL)
    return;

  name = lr_say_name (judge, camera->placed);
  subject = lr_say_name (judge, camera->subject);
  stops = lr_say_number (judge, fabs (under_stops), 1);
  remark->value = under_stops;
  remark->limit = limit;
  lr_remark_about (remark, camera->subject);
  lr_remark_mark_distance (remark, lr_vec3_flat (camera->subject->eyes_m), lr_vec3_flat (camera->behind_at_m), NULL);
  if (!is_bright)
    lr_remark_say (remark, _("The walls in %s are on average <b>%s</b> stops darker than the lit side of %s’s face."), name, stops, subject);
  else if (fabs (under_stops) < 0.05)
    lr_remark_say (remark, _("The walls in %s are on average as bright as %s’s face, within <b>0.1</b> stops, and draw the eye."), name, subject);
  else if (under_stops < 0.0)
    lr_remark_say (remark, _("The walls in %s are on average <b>%s</b> stops brighter than %s’s face, and draw the eye."), name, stops, subject);
  else
    lr_remark_say (remark, _("The walls in %s are on average only <b>%s</b> stops darker than %s’s face, and draw the eye."), name, stops,
                   subject);
}

static void
say_ratio (LrJudge           *judge,
           LrRemark          *remark,
           const LrFaceLight *face,
           LrGrade            grade)
{
  const char *subject = lr_say_name (judge, face->person), *stops = lr_say_number (judge, face->ratio_stops, 1);
  const char *times = lr_say_number (judge, exp2 (face->ratio_stops), 1);

  if (grade == LR_GRADE_FINE)
    lr_remark_say (remark, _("The key side of %s’s face has <b>%s</b> stops over the shadow side, <b>%s</b> : 1, all light counted."), subject,
                   stops, times);
  else if (face->ratio_stops > judge->limits[LR_LIMIT_RATIO_MAX])
    lr_remark_say (remark, _("The shadow side of %s’s face is <b>%s</b> stops under the key side; past <b>%s</b> it goes dark. Fill it, from "
                             "near the lens or with a reflector."),
                   subject, stops, lr_say_number (judge, judge->limits[LR_LIMIT_RATIO_MAX], 1));
  else
    lr_remark_say (remark, _("The two sides of %s’s face are only <b>%s</b> stops apart; under <b>%s</b> it looks flat. Move the key round, or "
                             "take fill away."),
                   subject, stops, lr_say_number (judge, judge->limits[LR_LIMIT_RATIO_MIN], 1));
}

static void
judge_ratio (LrJudge           *judge,
             const LrPlaced    *person,
             const LrFaceLight *face)
{
  gboolean is_dark = face->ratio_stops > judge->limits[LR_LIMIT_RATIO_MAX], is_flat = face->ratio_stops < judge->limits[LR_LIMIT_RATIO_MIN];
  LrGrade grade = is_dark || is_flat ? LR_GRADE_MIND : LR_GRADE_FINE;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_KEY_RATIO, grade, person, NULL);

  if (remark == NULL)
    return;

  remark->value = face->ratio_stops;
  remark->limit = is_flat ? judge->limits[LR_LIMIT_RATIO_MIN] : judge->limits[LR_LIMIT_RATIO_MAX];
  lr_remark_mark_point (remark, person->at_m, NULL);
  say_ratio (judge, remark, face, grade);
}

/* Once for each who is before a camera */
static gboolean
is_first_of (const LrJudge *judge,
             guint          index)
{
  for (guint i = 0; i < index; i++)
    if (lr_judge_camera (judge, i)->has_subject && lr_judge_camera (judge, i)->subject == lr_judge_camera (judge, index)->subject)
      return FALSE;
  return TRUE;
}

/**
 * lr_judge_light:
 * @judge: a judge
 *
 * Levels of face and walls, and the face's two sides. Nothing where nothing gives light.
 */
void
lr_judge_light (LrJudge *judge)
{
  if (judge->levels == NULL || !lr_light_levels_is_whole (judge->levels) || lr_light_levels_n_sources (judge->levels) == 0)
    return;

  for (guint i = 0; i < judge->study->cameras->len; i++)
    {
      const LrCameraReading *camera = lr_judge_camera (judge, i);
      const LrFaceLight *face = camera->has_subject ? lr_light_levels_face (judge->levels, camera->subject->item->id) : NULL;
      LrShares shares;

      if (face == NULL || lr_judge_is_cutaway (judge, camera) || !lr_light_levels_shares (judge->levels, camera->item->id, &shares))
        continue;
      if (shares.face > 0.0)
        judge_face (judge, camera, &shares);
      if (shares.face > 0.0 && shares.background > 0.0)
        judge_wall (judge, camera, &shares);
      if (is_first_of (judge, i) && isfinite (face->ratio_stops))
        judge_ratio (judge, camera->subject, face);
    }
}
