/* pair_readings.c - two cameras on one subject, as the cut will show them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The angle between them is measured at the middle of the subject's head: that is the point that is taped, and round
 * which a tripod is carried.
 */

#include "study_parts.h"

#include <stdlib.h>

static gboolean
is_framed (const LrCameraReading *camera)
{
  return camera->framing.shot != LR_N_SHOTS;
}

static void
read_pair (LrStudy               *study,
           const LrCameraReading *a,
           const LrCameraReading *b)
{
  LrPairReading pair = { .a = a, .b = b, .angle_rad = NAN, .size_ratio = NAN };

  if (!a->has_subject || a->subject != b->subject)
    return;

  lr_camera_angle_rad (a->subject->at_m, a->placed->at_m, b->placed->at_m, &pair.angle_rad);
  if (is_framed (a) && is_framed (b))
    {
      pair.steps = lr_shot_steps (a->framing.shot, b->framing.shot);
      pair.size_ratio = fmax (a->field_h_m / b->field_h_m, b->field_h_m / a->field_h_m);
    }
  pair.is_same_side = (int) a->side * (int) b->side >= 0;
  g_array_append_val (study->pairs, pair);
}

/**
 * lr_study_read_pairs:
 * @study: a study whose cameras are read
 *
 * Fills one reading for every two cameras that look at the same person.
 */
void
lr_study_read_pairs (LrStudy *study)
{
  study->pairs = g_array_new (FALSE, FALSE, sizeof (LrPairReading));
  for (guint i = 0; i < study->cameras->len; i++)
    for (guint j = i + 1; j < study->cameras->len; j++)
      read_pair (study, &g_array_index (study->cameras, LrCameraReading, i),
                 &g_array_index (study->cameras, LrCameraReading, j));
}
