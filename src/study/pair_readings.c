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

static double
size_ratio (const LrCameraReading *a,
            const LrCameraReading *b)
{
  return fmax (a->field_h_m / b->field_h_m, b->field_h_m / a->field_h_m);
}

static void
read_pair (LrStudy               *study,
           const LrCameraReading *a,
           const LrCameraReading *b)
{
  LrPairReading pair = { .a = a, .b = b, .angle_rad = NAN, .size_ratio = NAN, .eyes_step = NAN,
                         .gaze_step_rad = NAN, .gaze_up_step_rad = NAN };

  if (!a->has_subject || a->subject != b->subject)
    return;

  lr_camera_angle_rad (a->subject->at_m, a->placed->at_m, b->placed->at_m, &pair.angle_rad);
  if (is_framed (a) && is_framed (b))
    {
      pair.steps = lr_shot_steps (a->framing.shot, b->framing.shot);
      pair.size_ratio = size_ratio (a, b);
    }
  pair.is_same_side = (int) a->side * (int) b->side >= 0;
  pair.is_same_look = a->look_across * b->look_across > 0.0;
  pair.eyes_step = b->eyes_down - a->eyes_down;
  pair.gaze_step_rad = fabs (b->gaze_rad) - fabs (a->gaze_rad);
  pair.gaze_up_step_rad = b->gaze_up_rad - a->gaze_up_rad;
  g_array_append_val (study->pairs, pair);
}

/* They look at each other: each is the other's partner */
static void
read_reverse (LrStudy               *study,
              const LrCameraReading *a,
              const LrCameraReading *b)
{
  LrReverseReading reverse = { .a = a, .b = b, .size_ratio = NAN };

  if (!a->is_looking || !b->is_looking || a->subject == b->subject
      || lr_study_find_partner (study, a->subject) != b->subject || lr_study_find_partner (study, b->subject) != a->subject)
    return;

  if (is_framed (a) && is_framed (b))
    reverse.size_ratio = size_ratio (a, b);
  reverse.is_opposed = a->look_across * b->look_across < 0.0;
  reverse.gaze_step_rad = fabs (b->gaze_rad) - fabs (a->gaze_rad);
  reverse.gaze_up_step_rad = b->gaze_up_rad - a->gaze_up_rad;
  g_array_append_val (study->reverses, reverse);
}

/**
 * lr_study_read_pairs:
 * @study: a study whose cameras are read
 *
 * Fills one reading for every two cameras that look at the same person, and one for every two on two people who look at each
 * other.
 */
void
lr_study_read_pairs (LrStudy *study)
{
  study->pairs = g_array_new (FALSE, FALSE, sizeof (LrPairReading));
  study->reverses = g_array_new (FALSE, FALSE, sizeof (LrReverseReading));
  for (guint i = 0; i < study->cameras->len; i++)
    for (guint j = i + 1; j < study->cameras->len; j++)
      {
        const LrCameraReading *a = &g_array_index (study->cameras, LrCameraReading, i);
        const LrCameraReading *b = &g_array_index (study->cameras, LrCameraReading, j);

        read_pair (study, a, b);
        read_reverse (study, a, b);
      }
}
