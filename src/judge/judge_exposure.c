/* judge_exposure.c - whether cameras are exposed alike, and at the ISO that they are made for
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "judge_parts.h"

#include <glib/gi18n-lib.h>

/* How much light it takes to come out alike, in stops */
static double
needed_stops (const LrCameraReading *camera)
{
  const LrCamera *c = &camera->item->camera;

  return 2.0 * log2 (camera->f_number) + c->nd_stops - log2 (c->shutter_s * c->iso);
}

/* How far the face comes out from where it is wanted; 0: not known, so that the other camera follows the first */
static double
face_off_stops (const LrJudge         *judge,
                const LrCameraReading *camera)
{
  LrShares shares;

  if (judge->levels == NULL || !lr_light_levels_is_whole (judge->levels)
      || !lr_light_levels_shares (judge->levels, camera->item->id, &shares) || !(shares.face > 0.0))
    return 0.0;

  return fabs (log2 (shares.face / lr_share_of_signal (lr_plan_face_level (judge->study->plan))));
}

static void
judge_match (LrJudge               *judge,
             const LrCameraReading *a,
             const LrCameraReading *b)
{
  double darker = needed_stops (b) - needed_stops (a), limit = judge->limits[LR_LIMIT_EXPOSURE_MATCH];
  gboolean is_off = fabs (darker) > limit;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_EXPOSURE_MATCH, is_off ? LR_GRADE_MIND : LR_GRADE_FINE, b->placed, a->placed);
  const char *name_a, *name_b, *stops;

  if (remark == NULL)
    return;

  name_a = lr_say_name (judge, a->placed);
  name_b = lr_say_name (judge, b->placed);
  stops = lr_say_number (judge, fabs (darker), 1);
  remark->value = fabs (darker);
  remark->limit = limit;
  lr_remark_mark_outline (remark, &b->placed->footprint, NULL);
  if (!is_off)
    {
      lr_remark_say (remark, _("%s and %s are exposed alike, within <b>%s</b> stops."), name_a, name_b, stops);
      return;
    }

  lr_remark_say (remark, darker > 0.0 ? _("%s is set <b>%s</b> stops darker than %s, which shows in a cut.")
                                      : _("%s is set <b>%s</b> stops brighter than %s, which shows in a cut."),
                 name_b, stops, name_a);
  if (face_off_stops (judge, a) > face_off_stops (judge, b))
    lr_judge_keep_compensation (judge, remark, a, -darker);
  else
    lr_judge_keep_compensation (judge, remark, b, darker);
}

static void
judge_native (LrJudge               *judge,
              const LrCameraReading *camera)
{
  double over_stops = lr_camera_over_native_stops (&camera->item->camera), limit = judge->limits[LR_LIMIT_NATIVE_ISO], missing_stops;
  gboolean is_off = fabs (over_stops) > limit + 1e-6;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_NATIVE_ISO, is_off ? LR_GRADE_MIND : LR_GRADE_FINE, camera->placed, NULL);
  const char *name, *iso, *native, *stops;

  if (remark == NULL)
    return;

  name = lr_say_name (judge, camera->placed);
  iso = lr_say_number (judge, camera->item->camera.iso, 0);
  native = lr_say_number (judge, lr_camera_native_iso (&camera->item->camera), 0);
  stops = lr_say_number (judge, fabs (over_stops), 1);
  remark->value = fabs (over_stops);
  remark->limit = limit;
  lr_remark_mark_outline (remark, &camera->placed->footprint, NULL);
  if (!is_off)
    {
      if (fabs (over_stops) < 0.05)
        lr_remark_say (remark, _("%s is set to ISO <b>%s</b>, a native value of it."), name, iso);
      else
        lr_remark_say (remark, over_stops > 0.0 ? _("%s is set to ISO <b>%s</b>, <b>%s</b> stops over its native ISO <b>%s</b>.")
                                                : _("%s is set to ISO <b>%s</b>, <b>%s</b> stops under its native ISO <b>%s</b>."),
                       name, iso, stops, native);
      return;
    }

  lr_remark_say (remark, over_stops > 0.0 ? _("%s is set to ISO <b>%s</b>, <b>%s</b> stops over its native ISO <b>%s</b>: noise shows.")
                                          : _("%s is set to ISO <b>%s</b>, <b>%s</b> stops under its native ISO <b>%s</b>: highlights "
                                              "burn out sooner."),
                 name, iso, stops, native);
  missing_stops = lr_judge_offer_native_iso (judge, remark, camera);
  if (missing_stops > 0.0)
    lr_remark_say (remark, _("At its native ISO, without a filter, it takes <b>%s</b> stops more light."), lr_say_number (judge, missing_stops, 1));
}

/**
 * lr_judge_exposure:
 * @judge: a judge
 *
 * Settings of the cameras against each other and against what each is made for.
 */
void
lr_judge_exposure (LrJudge *judge)
{
  for (guint i = 1; i < judge->study->cameras->len; i++)
    judge_match (judge, lr_judge_camera (judge, 0), lr_judge_camera (judge, i));
  for (guint i = 0; i < judge->study->cameras->len; i++)
    if (lr_camera_native_iso (&lr_judge_camera (judge, i)->item->camera) > 0.0)
      judge_native (judge, lr_judge_camera (judge, i));
}
