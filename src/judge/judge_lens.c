/* judge_lens.c - what the lens can do, and the perspective of the face
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "judge_parts.h"

#include <glib/gi18n-lib.h>

#define FOCAL_ROUNDING_M 6e-5 /* half a tenth of a millimetre, and a little */
#define SPARE_M 0.05
#define FOCUS_SPARE_M 0.005 /* places are held to a millimetre, and the tilt lifts the sensor a little */

/**
 * lr_judge_mounted_lens:
 * @judge: a judge
 * @camera: a camera
 *
 * Returns: (transfer none) (nullable): the lens in the kit that is on it
 */
const LrLens *
lr_judge_mounted_lens (const LrJudge         *judge,
                       const LrCameraReading *camera)
{
  const LrKitEntry *entry = lr_plan_find_kit (judge->study->plan, camera->item->camera.lens);

  return entry != NULL && entry->item->kind == LR_ITEM_LENS ? &entry->item->lens : NULL;
}

/**
 * lr_nominal_stop:
 * @f_number: any f-number
 * @is_wider: whether to go to the wider side
 *
 * What is printed on lenses, in thirds of a stop: whole stops as in ISO 517, thirds common practice.
 *
 * Returns: the stop that is equal to @f_number or next to it
 */
double
lr_nominal_stop (double   f_number,
                 gboolean is_wider)
{
  static const double stops[] = {
    1.0, 1.1, 1.2, 1.4, 1.6, 1.8, 2.0, 2.2, 2.5, 2.8, 3.2, 3.5, 4.0, 4.5, 5.0, 5.6, 6.3, 7.1, 8.0, 9.0, 10.0, 11.0, 13.0, 14.0,
    16.0, 18.0, 20.0, 22.0, 25.0, 29.0, 32.0,
  };
  double wider = stops[0];

  for (guint i = 0; i < G_N_ELEMENTS (stops); i++)
    {
      if (stops[i] > f_number + 1e-9)
        return is_wider ? wider : stops[i];
      wider = stops[i];
      if (fabs (stops[i] - f_number) < 1e-9)
        return wider;
    }

  return wider;
}

/**
 * lr_lens_has_focal:
 * @lens: (nullable): a lens of the kit; %NULL: one that is not named has all
 * @focal_m: as marked on the ring [m]
 *
 * A ring is set to a tenth of a millimetre at best: half of one more or less is the same.
 *
 * Returns: whether it can be set to it
 */
gboolean
lr_lens_has_focal (const LrLens *lens,
                   double        focal_m)
{
  return lens == NULL || (focal_m >= lens->focal_min_m - FOCAL_ROUNDING_M && focal_m <= lens->focal_max_m + FOCAL_ROUNDING_M);
}

/* Back along the line from the eyes; with the lens that keeps the framing, if the mounted one does */
static void
offer_step_back (LrJudge               *judge,
                 LrRemark              *remark,
                 const LrCameraReading *camera)
{
  double wanted_m = judge->limits[LR_LIMIT_NATURAL_DISTANCE] + SPARE_M;
  double up_m = camera->sensor_m.z - camera->subject->eyes_m.z;
  LrVec2 eyes_m = lr_vec3_flat (camera->subject->eyes_m);
  LrVec2 way = lr_vec2_sub (camera->placed->at_m, eyes_m);
  double extent_m = camera->item->camera.squeeze * camera->area.width_m;
  const char *name = lr_say_name (judge, camera->placed), *distance = lr_say_length (judge, wanted_m);
  LrRemedy *remedy;
  double focal_m = 0.0, ring_m;

  if (lr_vec2_length (way) < 1e-3 || wanted_m <= fabs (up_m))
    return;

  remedy = lr_remedy_new ();
  way = lr_vec2_scale (way, sqrt (wanted_m * wanted_m - up_m * up_m) / lr_vec2_length (way));
  lr_remedy_move (remedy, camera->placed, lr_vec2_add (eyes_m, way), NULL);
  ring_m = lr_focal_for_field_m (extent_m, camera->field_w_m, wanted_m, &focal_m)
               ? 0.001 * round (1000.0 * focal_m / camera->converter) : 0.0;
  if (ring_m > 0.0 && lr_lens_has_focal (lr_judge_mounted_lens (judge, camera), ring_m))
    {
      lr_remedy_change (remedy, camera->item, "focal-mm", ring_m);
      lr_remedy_say (remedy, distance,
                     _("Take %s back to <b>%s</b> and keep the shot with <b>%s</b>."),
                     name, distance, lr_say_focal (judge, ring_m));
    }
  else
    lr_remedy_say (remedy, distance, _("Take %s back to <b>%s</b>; the shot gets wider."), name, distance);
  lr_judge_offer (judge, remark, remedy);
}

static void
judge_face (LrJudge               *judge,
            const LrCameraReading *camera)
{
  double limit_m = judge->limits[LR_LIMIT_NATURAL_DISTANCE];
  gboolean is_near = camera->distance_m < limit_m;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_FACE_DISTANCE, is_near ? LR_GRADE_MIND : LR_GRADE_FINE, camera->placed,
                                   NULL);
  const char *name, *subject, *distance, *larger, *limit;

  if (remark == NULL)
    return;

  name = lr_say_name (judge, camera->placed);
  subject = lr_say_name (judge, camera->subject);
  distance = is_near ? lr_say_length_off (judge, camera->distance_m, limit_m)
                     : lr_say_length (judge, camera->distance_m);
  larger = lr_say_share (judge, camera->face_ratio - 1.0);
  limit = lr_say_length (judge, limit_m);
  remark->value = camera->distance_m;
  remark->limit = limit_m;
  lr_remark_about (remark, camera->subject);
  lr_remark_mark_distance (remark, camera->placed->at_m, lr_vec3_flat (camera->subject->eyes_m), distance);

  if (!is_near)
    {
      lr_remark_say (remark,
                     _("%s is <b>%s</b> from %s’s eyes: the nose is drawn <b>%s</b> larger than the ears."),
                     name, distance, subject, larger);
      return;
    }

  lr_remark_say (remark,
                 _("%s is only <b>%s</b> from %s’s eyes: the nose is drawn <b>%s</b> larger than the ears. "
                   "From <b>%s</b> on a face looks natural."),
                 name, distance, subject, larger, limit);
  offer_step_back (judge, remark, camera);
}

static void
offer_setting (LrJudge               *judge,
               LrRemark              *remark,
               const LrCameraReading *camera,
               const char            *key,
               double                 value,
               const char            *figure)
{
  LrRemedy *remedy = lr_remedy_new ();

  lr_remedy_change (remedy, camera->item, key, value);
  lr_remedy_say (remedy, figure, _("Set %s to <b>%s</b>."), lr_say_name (judge, camera->placed), figure);
  lr_judge_offer (judge, remark, remedy);
}

static void
say_focal (LrJudge               *judge,
           LrRemark              *remark,
           const LrCameraReading *camera,
           const LrLens          *lens)
{
  double focal_m = camera->item->camera.focal_m;
  double nearest_m = fmin (fmax (focal_m, lens->focal_min_m), lens->focal_max_m);
  const char *name = lr_say_name (judge, camera->placed);

  remark->value = focal_m;
  remark->limit = nearest_m;
  if (lens->focal_max_m - lens->focal_min_m < 1e-6)
    lr_remark_say (remark,
                   _("%s is set to <b>%s</b>, but its lens is a <b>%s</b>."),
                   name, lr_say_focal (judge, focal_m), lr_say_focal (judge, nearest_m));
  else
    lr_remark_say (remark, _("%s is set to <b>%s</b>, but its lens goes from <b>%s</b> to <b>%s</b>."), name,
                   lr_say_focal (judge, focal_m), lr_say_focal (judge, lens->focal_min_m),
                   lr_say_focal (judge, lens->focal_max_m));
  offer_setting (judge, remark, camera, "focal-mm", nearest_m, lr_say_focal (judge, nearest_m));
}

static void
say_stop (LrJudge               *judge,
          LrRemark              *remark,
          const LrCameraReading *camera,
          const LrLens          *lens)
{
  double f_number = camera->item->camera.f_number;
  double nearest = fmin (fmax (f_number, lens->f_number_min), lens->f_number_max);

  remark->value = f_number;
  remark->limit = nearest;
  lr_remark_say (remark, _("%s is set to <b>%s</b>, but its lens goes from <b>%s</b> to <b>%s</b>."),
                 lr_say_name (judge, camera->placed), lr_say_stop (judge, f_number),
                 lr_say_stop (judge, lens->f_number_min), lr_say_stop (judge, lens->f_number_max));
  offer_setting (judge, remark, camera, "f-number", nearest, lr_say_stop (judge, nearest));
}

/* The smallest move back from what it is focused on; a focus that was set by hand goes to the eyes, if they are far enough */
static void
offer_focus_back (LrJudge               *judge,
                  LrRemark              *remark,
                  const LrCameraReading *camera,
                  double                 nearest_m)
{
  const LrPlaced *target = lr_study_find_placed (judge->study, camera->item->camera.aims_at);
  const LrPlaced *on = target != NULL ? target : camera->subject;
  double wanted_m = nearest_m + FOCUS_SPARE_M, up_m;
  LrVec2 way;

  if (on == NULL)
    return;

  way = lr_vec2_sub (camera->placed->at_m, lr_vec3_flat (on->point_m));
  up_m = camera->sensor_m.z - on->point_m.z;
  if (camera->item->camera.focus_m > 0.0 && hypot (lr_vec2_length (way), up_m) >= nearest_m)
    {
      LrRemedy *remedy = lr_remedy_new ();
      const char *distance = lr_say_length (judge, hypot (lr_vec2_length (way), up_m));

      lr_remedy_change (remedy, camera->item, "focus-mm", 0.0);
      lr_remedy_say (remedy, distance, _("Focus %s on %s, at <b>%s</b>."), lr_say_name (judge, camera->placed),
                     lr_say_name (judge, on), distance);
      lr_judge_offer (judge, remark, remedy);
    }
  else if (!(camera->item->camera.focus_m > 0.0) && lr_vec2_length (way) > 1e-3 && wanted_m > fabs (up_m))
    {
      way = lr_vec2_scale (way, sqrt (wanted_m * wanted_m - up_m * up_m) / lr_vec2_length (way));
      lr_judge_offer_move (judge, remark, camera->placed, lr_vec2_add (lr_vec3_flat (on->point_m), way), NULL, NULL);
    }
}

static void
say_near (LrJudge               *judge,
          LrRemark              *remark,
          const LrCameraReading *camera,
          const LrLens          *lens)
{
  remark->value = camera->focus_m;
  remark->limit = lens->nearest_focus_m;
  lr_remark_say (remark,
                 _("%s is focused at <b>%s</b>, but its lens comes no nearer than <b>%s</b>."),
                 lr_say_name (judge, camera->placed), lr_say_length_off (judge, camera->focus_m, lens->nearest_focus_m),
                 lr_say_length (judge, lens->nearest_focus_m));
  offer_focus_back (judge, remark, camera, lens->nearest_focus_m);
}

static void
judge_range (LrJudge               *judge,
             const LrCameraReading *camera,
             const LrLens          *lens)
{
  const LrCamera *c = &camera->item->camera;
  gboolean is_focal = lr_lens_has_focal (lens, c->focal_m);
  gboolean is_stop = c->f_number >= lens->f_number_min - 1e-6 && c->f_number <= lens->f_number_max + 1e-6;
  gboolean is_near = camera->focus_m < lens->nearest_focus_m;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_LENS_RANGE,
                                   is_focal && is_stop && !is_near ? LR_GRADE_FINE : LR_GRADE_FIX, camera->placed, NULL);

  if (remark == NULL)
    return;

  lr_remark_mark_outline (remark, &camera->placed->footprint, NULL);
  if (!is_focal)
    say_focal (judge, remark, camera, lens);
  else if (!is_stop)
    say_stop (judge, remark, camera, lens);
  else if (is_near)
    say_near (judge, remark, camera, lens);
  else
    lr_remark_say (remark,
                   _("The lens of %s can do what it is set to: <b>%s</b> at <b>%s</b>, focused at <b>%s</b>."),
                   lr_say_name (judge, camera->placed), lr_say_focal (judge, c->focal_m), lr_say_stop (judge, c->f_number),
                   lr_say_length (judge, camera->focus_m));
}

/* The lens equation has no solution where the sensor is nearer to the subject than four focal lengths */
static gboolean
can_focus (const LrCameraReading *camera)
{
  return !isfinite (camera->focus_m) || isfinite (camera->focus.subject_m);
}

static void
judge_focus (LrJudge               *judge,
             const LrCameraReading *camera)
{
  double nearest_m = 4.0 * camera->focal_m;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_LENS_RANGE, LR_GRADE_FIX, camera->placed, NULL);

  if (remark == NULL)
    return;

  remark->value = camera->focus_m;
  remark->limit = nearest_m;
  lr_remark_mark_outline (remark, &camera->placed->footprint, NULL);
  lr_remark_say (remark,
                 _("%s is to be sharp at <b>%s</b>, but <b>%s</b> cannot be focused nearer than four times itself, <b>%s</b>: "
                   "its other figures do not hold."),
                 lr_say_name (judge, camera->placed), lr_say_length (judge, camera->focus_m),
                 lr_say_focal (judge, camera->focal_m), lr_say_length (judge, nearest_m));
  offer_focus_back (judge, remark, camera, nearest_m);
}

/* On two cameras at once: of the first, told with the second */
static void
judge_count (LrJudge               *judge,
             const LrCameraReading *camera)
{
  const LrKitEntry *entry = lr_plan_find_kit (judge->study->plan, camera->item->camera.lens);
  const LrCameraReading *first = NULL;
  LrRemark *remark;

  if (entry == NULL || lr_plan_kit_left (judge->study->plan, entry) >= 0)
    return;

  for (guint i = 0; first == NULL && lr_judge_camera (judge, i) != camera; i++)
    if (g_str_equal (lr_judge_camera (judge, i)->item->camera.lens, entry->item->id))
      first = lr_judge_camera (judge, i);
  remark = first != NULL ? lr_judge_add (judge, LR_CHECK_LENS_COUNT, LR_GRADE_FIX, first->placed, camera->placed) : NULL;
  if (remark == NULL)
    return;

  remark->value = entry->count - lr_plan_kit_left (judge->study->plan, entry);
  remark->limit = entry->count;
  lr_remark_mark_outline (remark, &first->placed->footprint, NULL);
  lr_remark_mark_outline (remark, &camera->placed->footprint, NULL);
  lr_remark_say (remark, _("%s and %s both have the same lens on, at <b>%s</b>, and the kit has <b>%s</b> of it."),
                 lr_say_name (judge, first->placed), lr_say_name (judge, camera->placed),
                 lr_say_focal (judge, camera->item->camera.focal_m), lr_say_number (judge, entry->count, 0));
}

/**
 * lr_judge_lens:
 * @judge: a judge
 *
 * Perspective of the face, and settings that the mounted lens does not have.
 */
void
lr_judge_lens (LrJudge *judge)
{
  for (guint i = 0; i < judge->study->cameras->len; i++)
    {
      const LrCameraReading *camera = lr_judge_camera (judge, i);
      const LrLens *lens = lr_judge_mounted_lens (judge, camera);

      if (camera->has_subject && isfinite (camera->face_ratio) && !lr_judge_is_cutaway (judge, camera))
        judge_face (judge, camera);
      if (!can_focus (camera))
        judge_focus (judge, camera);
      else if (lens != NULL)
        judge_range (judge, camera, lens);
      judge_count (judge, camera);
    }
}
