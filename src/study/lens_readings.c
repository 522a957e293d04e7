/* lens_readings.c - what a camera's lens and mode do with light, before anyone stands in front of it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rings of a lens show its marked focal length and f-number. An optic between lens and body leaves the entrance pupil,
 * f / N, as it is and makes f longer by its factor, so N rises by the same; light meets the effective ones. Where the lens
 * can focus stays. (Ray, Applied Photographic Optics, on teleconverters; closed form.)
 */

#include "study_parts.h"

static double
aspect_of (const LrCamera *camera)
{
  switch ((LrAspect) camera->aspect)
    {
    case LR_ASPECT_16_9:
      return 16.0 / 9.0;
    case LR_ASPECT_9_16:
      return 9.0 / 16.0;
    case LR_ASPECT_1_1:
      return 1.0;
    case LR_ASPECT_4_5:
      return 4.0 / 5.0;
    case LR_ASPECT_239:
      return 2.39;
    case LR_ASPECT_SENSOR:
    default:
      return camera->squeeze * camera->sensor_width_m / camera->sensor_height_m;
    }
}

static double
converter_of (const LrStudy  *study,
              const LrCamera *camera)
{
  const LrKitEntry *entry = lr_plan_find_kit (study->plan, camera->lens);

  return entry != NULL && entry->item->kind == LR_ITEM_LENS ? entry->item->lens.converter : 1.0;
}

/**
 * lr_study_read_glass:
 * @study: a study
 * @reading: of a camera, whose item is known
 *
 * Fills the effective focal length and f-number, the part of the sensor that the mode records and the part of that which
 * is delivered.
 */
void
lr_study_read_glass (const LrStudy   *study,
                     LrCameraReading *reading)
{
  const LrCamera *camera = &reading->item->camera;

  reading->converter = converter_of (study, camera);
  reading->focal_m = camera->focal_m * reading->converter;
  reading->f_number = camera->f_number * reading->converter;
  reading->focus.image_m = reading->focal_m;

  reading->image_aspect = aspect_of (camera);
  reading->recorded = (LrSensorArea) { camera->sensor_width_m / camera->sensor_crop,
                                       camera->sensor_height_m / camera->sensor_crop };
  lr_sensor_area (reading->recorded.width_m, reading->recorded.height_m, camera->squeeze, reading->image_aspect,
                  &reading->area);
  reading->width_share = reading->area.width_m / reading->recorded.width_m;
}

/**
 * lr_study_read_sharpness:
 * @study: a study
 * @reading: of a camera, whose focus and distance are known
 *
 * Fills what is sharp, and how much of it a head may use that sways. The hyperfocal distance is from the sensor plane, with the
 * image where it is then: f H / (H - f) = f + N c behind the lens.
 */
void
lr_study_read_sharpness (const LrStudy   *study,
                         LrCameraReading *reading)
{
  double comfort_m = study->plan->limits.value[LR_LIMIT_DEPTH_COMFORT];
  LrSharpRange range;

  reading->sharp_near_m = reading->sharp_far_m = reading->hyperfocal_m = NAN;
  reading->sharp_depth_m = reading->sharp_front_m = reading->sharp_front_share = reading->f_number_for_depth = NAN;
  lr_close_focus_stops (reading->magnification, &reading->close_stops);
  reading->coc_m = reading->item->camera.coc_m;
  if (!(reading->coc_m > 0.0))
    lr_coc_default_m (reading->recorded.width_m, reading->recorded.height_m, &reading->coc_m);
  if (!lr_sharp_range (reading->focal_m, reading->f_number, reading->coc_m, &reading->focus, &range))
    return;

  reading->sharp_near_m = range.near_m;
  reading->sharp_far_m = range.far_m;
  reading->hyperfocal_m = range.hyperfocal_m + reading->focal_m + reading->f_number * reading->coc_m;
  reading->sharp_depth_m = range.far_m - range.near_m;
  reading->sharp_front_m = reading->eyes_depth_m - range.near_m;
  reading->sharp_front_share = (reading->focus_m - range.near_m) / reading->sharp_depth_m;
  if (lr_f_number_for_depth (reading->focal_m, reading->coc_m, &reading->focus, comfort_m, &reading->f_number_for_depth))
    reading->f_number_for_depth /= reading->converter;
}

/**
 * lr_camera_blur_at_m:
 * @camera: a reading
 * @distance_m: of a plane, from the sensor plane along the axis [m]; HUGE_VAL for infinity
 * @disc_m: (out): diameter of the image of a point there, on the sensor [m]
 * @share: (out): of the width of the delivered picture, when it is shown
 *
 * Through an anamorphic lens the disc is upright: @disc_m is its height, and @share that height once the squeeze is
 * undone; across, it takes 1/squeeze of it.
 *
 * Source: lr_blur_disc_m(); the share by definition.
 *
 * Returns: %FALSE, with the outputs untouched, if the lens has no focus or the plane is not in front of it
 */
gboolean
lr_camera_blur_at_m (const LrCameraReading *camera,
                     double                 distance_m,
                     double                *disc_m,
                     double                *share)
{
  double its_disc_m;

  if (!lr_blur_disc_m (camera->focal_m, camera->f_number, &camera->focus, distance_m - camera->focus.image_m, &its_disc_m))
    return FALSE;

  *disc_m = its_disc_m;
  *share = its_disc_m / (camera->item->camera.squeeze * camera->area.width_m);
  return TRUE;
}
