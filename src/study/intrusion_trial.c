/* intrusion_trial.c - whether a thing would be in a picture if it were changed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "intrusions_private.h"

/* Whether a part of the thing is in the frame, or over it by less */
static gboolean
is_in_frame (const LrProjection *projection,
             const LrPlaced     *placed,
             const LrIntruder   *intruder,
             double              above)
{
  for (guint i = 0; i < intruder->n; i++)
    {
      gboolean is_over = intruder->part[i] == LR_INTRUDER_ARM || intruder->part[i] == LR_INTRUDER_CAPSULE;
      LrFrameBox box = { 0.0, 1.0, is_over && lr_intruder_is_boom (placed) ? -above : 0.0, 1.0 };
      LrSilhouette seen;

      if (lr_frame_may_hold (projection, intruder->shape[i].centre_m, intruder->shape[i].reach_m, is_over ? above : 0.0)
          && lr_silhouette (projection, &intruder->shape[i], &seen) && lr_silhouette_clip (&seen, &box))
        return TRUE;
    }

  return FALSE;
}

/**
 * lr_study_would_intrude:
 * @study: a study
 * @item: one of its items, changed
 * @above: how far over the frame a boom must pass, share of its height
 *
 * Returns: whether any camera but itself would see it
 */
gboolean
lr_study_would_intrude (const LrStudy *study,
                        const LrItem  *item,
                        double         above)
{
  LrIntruder intruder = { 0 };
  LrPlaced placed;
  LrVec3 centre_m;
  double reach_m;

  lr_study_place_item (study, item, &placed);
  if (!lr_intruder_ball (study, &placed, &centre_m, &reach_m))
    return FALSE;

  for (guint i = 0; i < study->cameras->len; i++)
    {
      const LrCameraReading *camera = &g_array_index (study->cameras, LrCameraReading, i);

      if (g_str_equal (camera->item->id, item->id) || !lr_projection_is_known (&camera->projection)
          || !lr_frame_may_hold (&camera->projection, centre_m, reach_m, above))
        continue;
      if (intruder.n == 0)
        lr_intruder_shapes (study, &placed, &intruder);
      if (is_in_frame (&camera->projection, &placed, &intruder, above))
        return TRUE;
    }

  return FALSE;
}
