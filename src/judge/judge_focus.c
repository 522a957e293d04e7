/* judge_focus.c - whether the eyes are sharp, and how far the head may move
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * At the same framing the depth of field hardly depends on the focal length, so a small one is something to know
 * and not a fault: nobody holds the focus of a camera that runs alone. Eyes outside it are a fault.
 */

#include "config.h"

#include "judge_parts.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  double total_m, front_m;
} Depth;

static Depth
depth_of (const LrCameraReading *camera)
{
  return (Depth) { camera->sharp_far_m - camera->sharp_near_m, camera->eyes_depth_m - camera->sharp_near_m };
}

static gboolean
is_comfortable (const LrJudge *judge,
                Depth          depth)
{
  return depth.total_m >= judge->limits[LR_LIMIT_DEPTH_COMFORT] && depth.front_m >= judge->limits[LR_LIMIT_DEPTH_FRONT];
}

/* Along the axis, by which the zone is told */
static void
mark_depth (LrRemark              *remark,
            const LrCameraReading *camera,
            const char            *figure)
{
  LrVec2 at_m = camera->placed->at_m, way = lr_vec2_polar (camera->pan_rad, cos (camera->tilt_rad));
  double far_m = isfinite (camera->sharp_far_m) ? camera->sharp_far_m : 2.0 * camera->distance_m;

  lr_remark_mark_distance (remark, lr_vec2_along (at_m, way, camera->sharp_near_m), lr_vec2_along (at_m, way, far_m), figure);
}

/* A lens left on "the eyes" follows the person; one that is set by hand is set to their distance */
static void
offer_focus (LrJudge               *judge,
             LrRemark              *remark,
             const LrCameraReading *camera)
{
  const LrPlaced *target = lr_study_find_placed (judge->study, camera->item->camera.aims_at);
  const char *distance = lr_say_length (judge, camera->eyes_depth_m);
  LrRemedy *remedy = lr_remedy_new ();

  lr_remedy_change (remedy, camera->item, "focus-mm",
                    target == NULL || target == camera->subject ? 0.0 : camera->eyes_depth_m);
  lr_remedy_say (remedy, distance,
                 _("Focus %s on the eyes, at <b>%s</b>."),
                 lr_say_name (judge, camera->placed), distance);
  lr_judge_offer (judge, remark, remedy);
}

/* The next stop that is deep enough, and the light that it takes */
static void
offer_stop_down (LrJudge               *judge,
                 LrRemark              *remark,
                 const LrCameraReading *camera)
{
  const LrCamera *c = &camera->item->camera;
  const LrLens *lens = lr_judge_mounted_lens (judge, camera);
  double most = lens != NULL ? lens->f_number_max : 22.0;
  double f_number = c->f_number;
  const char *stop;
  LrRemedy *remedy;

  do
    {
      LrSharpRange range;

      f_number = lr_nominal_stop (f_number + 0.01, FALSE);
      if (f_number > most || !lr_sharp_range (camera->focal_m, f_number * camera->converter, camera->coc_m, &camera->focus, &range))
        return;
      if (is_comfortable (judge, (Depth) { range.far_m - range.near_m, camera->eyes_depth_m - range.near_m }))
        break;
    }
  while (f_number < most);

  stop = lr_say_stop (judge, f_number);
  remedy = lr_remedy_new ();
  lr_remedy_change (remedy, camera->item, "f-number", f_number);
  lr_remedy_say (remedy, stop, _("Stop %s down to <b>%s</b>, and set it to %s for the light."), lr_say_name (judge, camera->placed), stop,
                 lr_judge_compensate (judge, remedy, camera, 2.0 * log2 (f_number / c->f_number)));
  lr_judge_offer (judge, remark, remedy);
}

static void
say_soft_eyes (LrJudge               *judge,
               LrRemark              *remark,
               const LrCameraReading *camera)
{
  const char *name = lr_say_name (judge, camera->placed), *subject = lr_say_name (judge, camera->subject);
  const char *distance = lr_say_length (judge, camera->eyes_depth_m);

  remark->value = camera->eyes_depth_m;
  remark->limit = camera->eyes_depth_m < camera->sharp_near_m ? camera->sharp_near_m : camera->sharp_far_m;
  if (isfinite (camera->sharp_far_m))
    lr_remark_say (remark,
                   _("%s is sharp from <b>%s</b> to <b>%s</b>, but %s’s eyes are at <b>%s</b>: they are soft."),
                   name, lr_say_plain (judge, camera->sharp_near_m), lr_say_length (judge, camera->sharp_far_m),
                   subject, distance);
  else
    lr_remark_say (remark,
                   _("%s is sharp from <b>%s</b> on, but %s’s eyes are at <b>%s</b>: they are soft."),
                   name, lr_say_length (judge, camera->sharp_near_m), subject, distance);
  offer_focus (judge, remark, camera);
}

/* The figures of one sentence add up as they are written: in whole centimetres or half inches */
static const char *
say_total (LrJudge               *judge,
           const LrCameraReading *camera)
{
  double step_m = judge->units == LR_UNITS_METRIC ? 0.01 : 0.0127;

  if (!isfinite (camera->sharp_far_m))
    return "";

  return lr_say_small (judge, step_m * (round (camera->sharp_far_m / step_m) - round (camera->sharp_near_m / step_m)));
}

static void
say_depth (LrJudge               *judge,
           LrRemark              *remark,
           const LrCameraReading *camera,
           Depth                  depth)
{
  const char *name = lr_say_name (judge, camera->placed), *subject = lr_say_name (judge, camera->subject);
  const char *total = say_total (judge, camera), *front = lr_say_small (judge, depth.front_m);
  const char *near = lr_say_plain (judge, camera->sharp_near_m), *far = lr_say_length (judge, camera->sharp_far_m);

  remark->value = depth.total_m;
  remark->limit = judge->limits[LR_LIMIT_DEPTH_COMFORT];
  if (!isfinite (depth.total_m))
    lr_remark_say (remark, _("%s is sharp from <b>%s</b> on, <b>%s</b> in front of %s’s eyes."), name,
                   lr_say_length (judge, camera->sharp_near_m), front, subject);
  else if (depth.total_m < judge->limits[LR_LIMIT_DEPTH_LEAST])
    lr_remark_say (remark,
                   _("%s is sharp over only <b>%s</b>, from <b>%s</b> to <b>%s</b>; under <b>%s</b> only a "
                     "focus that follows the eyes holds."),
                   name, total, near, far, lr_say_limit (judge, LR_LIMIT_DEPTH_LEAST));
  else if (depth.front_m < judge->limits[LR_LIMIT_DEPTH_FRONT])
    lr_remark_say (remark,
                   _("%s is sharp over <b>%s</b>, from <b>%s</b> to <b>%s</b>. If %s leans in by <b>%s</b> the "
                     "eyes go soft."),
                   name, total, near, far, subject, front);
  else if (depth.total_m < judge->limits[LR_LIMIT_DEPTH_COMFORT])
    lr_remark_say (remark,
                   _("%s is sharp over <b>%s</b>, from <b>%s</b> to <b>%s</b>; with <b>%s</b> %s may move at ease."),
                   name, total, near, far, lr_say_limit (judge, LR_LIMIT_DEPTH_COMFORT), subject);
  else
    lr_remark_say (remark,
                   _("%s is sharp over <b>%s</b>, from <b>%s</b> to <b>%s</b>, <b>%s</b> of it in front of %s’s eyes."),
                   name, total, near, far, front, subject);

  if (!is_comfortable (judge, depth))
    offer_stop_down (judge, remark, camera);
}

static void
judge_depth (LrJudge               *judge,
             const LrCameraReading *camera)
{
  Depth depth = depth_of (camera);
  gboolean is_soft = camera->eyes_depth_m < camera->sharp_near_m || camera->eyes_depth_m > camera->sharp_far_m;
  LrGrade grade = is_soft ? LR_GRADE_FIX : is_comfortable (judge, depth) ? LR_GRADE_FINE : LR_GRADE_MIND;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_DEPTH_OF_FIELD, grade, camera->placed, NULL);

  if (remark == NULL)
    return;

  lr_remark_about (remark, camera->subject);
  mark_depth (remark, camera, isfinite (depth.total_m) ? say_total (judge, camera) : NULL);
  if (is_soft)
    say_soft_eyes (judge, remark, camera);
  else
    say_depth (judge, remark, camera, depth);
}

/**
 * lr_judge_focus:
 * @judge: a judge
 *
 * Eyes in focus, and the depth of field.
 */
void
lr_judge_focus (LrJudge *judge)
{
  for (guint i = 0; i < judge->study->cameras->len; i++)
    {
      const LrCameraReading *camera = lr_judge_camera (judge, i);

      if (camera->has_subject && isfinite (camera->sharp_near_m) && !lr_judge_is_cutaway (judge, camera))
        judge_depth (judge, camera);
    }
}
