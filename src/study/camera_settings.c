/* camera_settings.c - what is set on the cameras, and the mains that it must suit
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study_parts.h"

#include "exposure.h"

#define HALF_HZ_VOLTS 160.0 /* under it the mains are taken to have 60 Hz, else 50; common practice, no source */
#define USUAL_HZ 50.0

/**
 * lr_study_mains:
 * @study: a study
 *
 * The location may tell the frequency. If it does not, the volts of the first circuit stand for it, which is wrong where 100 V have 50 Hz or 220 V
 * have 60: whoever uses a guess says so.
 *
 * Returns: the mains of the place
 */
LrMains
lr_study_mains (const LrStudy *study)
{
  double told_hz = study->setup->location->mains_hz;

  if (told_hz > 0.0)
    return (LrMains) { told_hz, LR_MAINS_TOLD, 0.0 };

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrItem *item = g_array_index (study->placed, LrPlaced, i).item;

      if (item->kind == LR_ITEM_CIRCUIT && item->circuit.volts_v > 0.0)
        return (LrMains) { item->circuit.volts_v < HALF_HZ_VOLTS ? 60.0 : 50.0, LR_MAINS_BY_VOLTS, item->circuit.volts_v };
    }
  return (LrMains) { USUAL_HZ, LR_MAINS_UNKNOWN, 0.0 };
}

/**
 * lr_camera_native_iso:
 * @camera: a camera
 *
 * Returns: of its native values the one that is nearest to what is set, in stops; 0: none is known
 */
double
lr_camera_native_iso (const LrCamera *camera)
{
  double first = camera->native_iso, second = camera->second_native_iso;

  if (!(first > 0.0) || !(second > 0.0))
    return fmax (first, second);

  return fabs (log2 (camera->iso / second)) < fabs (log2 (camera->iso / first)) ? second : first;
}

/**
 * lr_camera_over_native_stops:
 * @camera: a camera
 *
 * Returns: how far its ISO is set over the nearest native value, in stops; < 0: under it; NAN: none is known
 */
double
lr_camera_over_native_stops (const LrCamera *camera)
{
  double native = lr_camera_native_iso (camera);

  return native > 0.0 ? log2 (camera->iso / native) : (double) NAN;
}

/**
 * lr_camera_shutter_rad:
 * @camera: a camera
 *
 * Source: definition, exposure.h.
 *
 * Returns: the opening of a turning shutter that exposes as long [rad]; over a full turn the exposure is longer than a picture
 */
double
lr_camera_shutter_rad (const LrCamera *camera)
{
  double angle_rad = NAN;

  lr_shutter_rad (camera->shutter_s, camera->frame_rate_fps, &angle_rad);
  return angle_rad;
}
