/* refit.c - from the wanted picture back to the lens and the place of the camera
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Closed forms along the axis, for one subject and a plane behind it that is square to the axis. Where the camera stands
 * above or below the eyes, or turns as it moves, they are a first guess. Distances that are told are by tape, from the middle of the
 * sensor plane to the eyes: where these keep their place in the frame, tape and depth stay in proportion.
 */

#include "study_parts.h"

#include "perspective.h"

static double
width_extent_m (const LrCameraReading *reading)
{
  return reading->item->camera.squeeze * reading->area.width_m;
}

static double
tape_m (const LrCameraReading *camera,
        double                 depth_m)
{
  return depth_m * camera->distance_m / camera->eyes_depth_m;
}

/**
 * lr_camera_refit:
 * @camera: a reading with a subject and something behind it
 * @behind_field_w_m: width of the background that is wanted [m], > the field at the subject
 * @refit: (out): the focal length, effective, and the distance from the sensor plane to the eyes that show it
 *
 * The framing of the subject stays: the field at the eyes keeps its width. Assumes that the camera moves along
 * its axis and that the background is a plane square to it.
 *
 * Source: similar triangles, see lr_distance_for_background_m(); the thin lens.
 *
 * Returns: %FALSE, with @refit untouched, if there is nothing behind the subject or no such place
 */
gboolean
lr_camera_refit (const LrCameraReading *camera,
                 double                 behind_field_w_m,
                 LrRefit               *refit)
{
  double lens_m, m, focal_m;

  if (!camera->has_subject
      || !lr_distance_for_background_m (camera->field_w_m, behind_field_w_m, camera->separation_m, &lens_m))
    return FALSE;

  /* s = f (1 + m) / m, and the sensor plane lies f (1 + m) behind the lens */
  m = width_extent_m (camera) / camera->field_w_m;
  focal_m = lens_m * m / (1.0 + m);
  *refit = (LrRefit) { focal_m, tape_m (camera, lens_m + focal_m * (1.0 + m)) };
  return TRUE;
}

/**
 * lr_camera_behind_with_focal:
 * @camera: a reading with a subject and something behind it
 * @focal_m: another focal length, effective [m], > 0
 * @behind_field_w_m: (out): width of background that the same framing shows through it [m]
 * @distance_m: (out): from the sensor plane to the eyes then [m]
 *
 * The inverse of lr_camera_refit().
 *
 * Returns: %FALSE, with the outputs untouched, if there is nothing behind the subject
 */
gboolean
lr_camera_behind_with_focal (const LrCameraReading *camera,
                             double                 focal_m,
                             double                *behind_field_w_m,
                             double                *distance_m)
{
  double m, lens_m, extent_m;

  if (!camera->has_subject || !(focal_m > 0.0))
    return FALSE;

  m = width_extent_m (camera) / camera->field_w_m;
  lens_m = focal_m * (1.0 + m) / m;
  if (!lr_background_extent_m (camera->field_w_m, lens_m, camera->separation_m, &extent_m))
    return FALSE;

  *behind_field_w_m = extent_m;
  *distance_m = tape_m (camera, lens_m + focal_m * (1.0 + m));
  return TRUE;
}
