/* judge_light.c - whether faces and walls come out where they are wanted
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Only of levels that hold what the room gives back: without it every shadow side would be told too dark.
 */

#include "config.h"

#include "relight.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  LrJudge         *judge;
  const LrRelight *relight;  /* NULL: no advice, for the plan does not rest */
  const LrCameraReading *camera;
  guint            view;     /* of the camera, in it */
  LrShares         shares;
} Shot;

/* The camera alone where that harms nothing; else lamps; else all cameras, with lamps if need be; else the key's place, or a noisy ISO */
static void
mend_face (const Shot *shot,
           LrRemark   *remark,
           double      over_stops)
{
  LrJudge *judge = shot->judge;
  const LrRelight *relight = shot->relight;
  guint view = shot->view;

  if (relight == NULL || view == relight->n_views)
    {
      lr_judge_keep_compensation (judge, remark, shot->camera, -over_stops);
      return;
    }
  if (lr_judge_keep_exposure (judge, remark, relight, view, -over_stops)
      || lr_judge_keep_dims (judge, remark, relight, view, LR_RELIGHT_FACE, 0.0)
      || lr_judge_keep_all_exposures (judge, remark, relight, view)
      || lr_judge_keep_dims (judge, remark, relight, view, LR_RELIGHT_FACE, LR_RELIGHT_QUIET_ISO))
    return;
  if (!lr_judge_offer_light_move (judge, remark, relight, view, LR_RELIGHT_FACE)
      && lr_judge_keep_dims (judge, remark, relight, view, LR_RELIGHT_FACE, LR_RELIGHT_MOST_ISO))
    return;
  lr_judge_offer_exposure (judge, remark, relight, view, -over_stops);
}

static void
judge_face (const Shot *shot)
{
  LrJudge *judge = shot->judge;
  const LrCameraReading *camera = shot->camera;
  double wanted = lr_plan_face_level (judge->study->plan), limit = judge->limits[LR_LIMIT_FACE_LEVEL_OFF];
  double over_stops = log2 (shot->shares.face / lr_share_of_signal (wanted));
  gboolean is_burnt = shot->shares.face >= 1.0, is_off = fabs (over_stops) > limit;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_FACE_LEVEL, is_burnt ? LR_GRADE_FIX : is_off ? LR_GRADE_MIND : LR_GRADE_FINE, camera->placed,
                                   NULL);
  const char *name, *subject, *level, *stops;

  if (remark == NULL)
    return;

  name = lr_say_name (judge, camera->placed);
  subject = lr_say_name (judge, camera->subject);
  level = lr_say_share (judge, lr_signal_of_share (shot->shares.face));
  stops = lr_say_number (judge, fabs (over_stops), 1);
  remark->value = fabs (over_stops);
  remark->limit = limit;
  lr_remark_about (remark, camera->subject);
  lr_remark_mark_point (remark, camera->subject->at_m, level);
  if (is_burnt)
    lr_remark_say (remark, _("The lit side of %s’s face is burnt out in %s, <b>%s</b> stops over the <b>%s</b> that are wanted."), subject, name,
                   stops, lr_say_share (judge, wanted));
  else if (is_off)
    lr_remark_say (remark,
                   over_stops > 0.0
                     ? _("The lit side of %s’s face comes out at <b>%s</b> in %s, <b>%s</b> stops over the <b>%s</b> that are wanted.")
                     : _("The lit side of %s’s face comes out at <b>%s</b> in %s, <b>%s</b> stops under the <b>%s</b> that are wanted."),
                   subject, level, name, stops, lr_say_share (judge, wanted));
  else
    lr_remark_say (remark, _("The lit side of %s’s face comes out at about <b>%s</b> in %s."), subject, level, name);
  if (is_off || is_burnt)
    mend_face (shot, remark, over_stops);
}

/* Nearly as bright as the face, or brighter */
static void
say_bright_walls (const Shot *shot,
                  LrRemark   *remark,
                  double      under_stops)
{
  LrJudge *judge = shot->judge;
  const char *name = lr_say_name (judge, shot->camera->placed), *subject = lr_say_name (judge, shot->camera->subject);
  const char *stops = lr_say_number (judge, fabs (under_stops), 1);

  if (fabs (under_stops) < 0.05)
    lr_remark_say (remark, _("The walls in %s are on average as bright as %s’s face, within <b>0.1</b> stops, and draw the eye."), name, subject);
  else if (under_stops < 0.0)
    lr_remark_say (remark, _("The walls in %s are on average <b>%s</b> stops brighter than %s’s face, and draw the eye."), name, stops, subject);
  else
    lr_remark_say (remark, _("The walls in %s are on average only <b>%s</b> stops darker than %s’s face, and draw the eye."), name, stops,
                   subject);
}

static void
say_walls (const Shot *shot,
           LrRemark   *remark,
           double      under_stops,
           double      over_stops)
{
  LrJudge *judge = shot->judge;
  const char *name = lr_say_name (judge, shot->camera->placed), *level = lr_say_share (judge, lr_signal_of_share (shot->shares.background));
  double wanted = lr_plan_wall_level (judge->study->plan);
  const char *stops = lr_say_number (judge, fabs (over_stops), 1);

  if (remark->grade == LR_GRADE_FINE)
    lr_remark_say (remark, _("The walls in %s come out at about <b>%s</b>, <b>%s</b> stops darker than the lit side of %s’s face."), name, level,
                   lr_say_number (judge, under_stops, 1), lr_say_name (judge, shot->camera->subject));
  else if (under_stops < judge->limits[LR_LIMIT_WALL_UNDER_FACE])
    say_bright_walls (shot, remark, under_stops);
  else
    lr_remark_say (remark, over_stops > 0.0 ? _("The walls in %s come out at <b>%s</b>, <b>%s</b> stops over the <b>%s</b> that are wanted.")
                                            : _("The walls in %s come out at <b>%s</b>, <b>%s</b> stops under the <b>%s</b> that are wanted."),
                   name, level, stops, lr_say_share (judge, wanted));
}

/* Against the face, and against the level that the set-up wants, if it wants one */
static void
judge_wall (const Shot *shot)
{
  LrJudge *judge = shot->judge;
  const LrCameraReading *camera = shot->camera;
  double under_stops = log2 (shot->shares.face / shot->shares.background), wanted = lr_plan_wall_level (judge->study->plan);
  double over_stops = isnan (wanted) ? 0.0 : log2 (shot->shares.background / lr_share_of_signal (wanted));
  double face_stops = log2 (shot->shares.face / lr_share_of_signal (lr_plan_face_level (judge->study->plan)));
  /* with a face that is off and mended, walls that are off the same way come along */
  gboolean comes_along = fabs (face_stops) > judge->limits[LR_LIMIT_FACE_LEVEL_OFF] && face_stops * over_stops > 0.0;
  gboolean draws = under_stops < judge->limits[LR_LIMIT_WALL_UNDER_FACE];
  gboolean is_off = fabs (over_stops) > judge->limits[LR_LIMIT_WALL_LEVEL_OFF]
                    && !(comes_along && fabs (over_stops - face_stops) <= judge->limits[LR_LIMIT_WALL_LEVEL_OFF]);
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_WALL_LEVEL, draws || is_off ? LR_GRADE_MIND : LR_GRADE_FINE, camera->placed, NULL);

  if (remark == NULL)
    return;

  remark->value = draws ? under_stops : fabs (over_stops);
  remark->limit = draws ? judge->limits[LR_LIMIT_WALL_UNDER_FACE] : judge->limits[LR_LIMIT_WALL_LEVEL_OFF];
  lr_remark_about (remark, camera->subject);
  lr_remark_mark_distance (remark, lr_vec3_flat (camera->subject->eyes_m), lr_vec3_flat (camera->behind_at_m), NULL);
  say_walls (shot, remark, under_stops, over_stops);
  if (remark->grade != LR_GRADE_FINE && shot->relight != NULL
      && !lr_judge_keep_dims (judge, remark, shot->relight, shot->view, LR_RELIGHT_WALLS, 0.0)
      && !lr_judge_keep_dims (judge, remark, shot->relight, shot->view, LR_RELIGHT_WALLS, LR_RELIGHT_QUIET_ISO)
      && !lr_judge_keep_dims (judge, remark, shot->relight, shot->view, LR_RELIGHT_WALLS, LR_RELIGHT_MOST_ISO))
    lr_judge_offer_light_move (judge, remark, shot->relight, shot->view, LR_RELIGHT_WALLS);
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
judge_ratio (const Shot        *shot,
             const LrFaceLight *face)
{
  LrJudge *judge = shot->judge;
  const LrPlaced *person = shot->camera->subject;
  gboolean is_dark = face->ratio_stops > judge->limits[LR_LIMIT_RATIO_MAX], is_flat = face->ratio_stops < judge->limits[LR_LIMIT_RATIO_MIN];
  LrGrade grade = is_dark || is_flat ? LR_GRADE_MIND : LR_GRADE_FINE;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_KEY_RATIO, grade, person, NULL);

  if (remark == NULL)
    return;

  remark->value = face->ratio_stops;
  remark->limit = is_flat ? judge->limits[LR_LIMIT_RATIO_MIN] : judge->limits[LR_LIMIT_RATIO_MAX];
  lr_remark_mark_point (remark, person->at_m, NULL);
  say_ratio (judge, remark, face, grade);
  if (grade != LR_GRADE_FINE && shot->relight != NULL
      && !lr_judge_keep_dims (judge, remark, shot->relight, shot->view, LR_RELIGHT_RATIO, 0.0))
    lr_judge_offer_light_move (judge, remark, shot->relight, shot->view, LR_RELIGHT_RATIO);
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
 * Levels of face and walls, and the face's two sides. Nothing where there are no lights.
 */
void
lr_judge_light (LrJudge *judge)
{
  LrRelight relight;
  gboolean has_relight;

  if (judge->levels == NULL || !lr_light_levels_is_whole (judge->levels))
    return;

  has_relight = lr_relight_init (&relight, judge);
  for (guint i = 0; i < judge->study->cameras->len; i++)
    {
      Shot shot = { .judge = judge, .relight = has_relight ? &relight : NULL, .camera = lr_judge_camera (judge, i) };
      const LrFaceLight *face = shot.camera->has_subject ? lr_light_levels_face (judge->levels, shot.camera->subject->item->id) : NULL;

      if (face == NULL || lr_judge_is_cutaway (judge, shot.camera) || lr_judge_unlit (judge, shot.camera, shot.relight, is_first_of (judge, i))
          || !lr_light_levels_shares (judge->levels, shot.camera->item->id, &shot.shares))
        continue;
      shot.view = has_relight ? lr_relight_find (&relight, shot.camera) : 0;
      if (shot.shares.face > 0.0)
        judge_face (&shot);
      if (shot.shares.face > 0.0 && shot.shares.background > 0.0)
        judge_wall (&shot);
      if (is_first_of (judge, i) && isfinite (face->ratio_stops))
        judge_ratio (&shot, face);
    }
}
