/* mouth.c - microphones against the mouth that they aim at
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study_parts.h"

/**
 * lr_study_mouth_distance_m:
 * @study: a study
 * @microphone: a microphone of its set-up that aims at a person
 * @distance_m: (out): from the capsule to the person's mouth [m]
 *
 * The mouth is under the eyes, at the height of the body's table.
 *
 * Source: closed form.
 *
 * Returns: (transfer none) (nullable): the person; %NULL, with @distance_m untouched, when it aims at nobody, is worn or rides on a camera
 */
const LrPlaced *
lr_study_mouth_distance_m (const LrStudy *study,
                           const LrItem  *microphone,
                           double        *distance_m)
{
  const LrMicrophone *m = &microphone->microphone;
  /* one that is worn or rides on a camera has no tip of its own */
  const LrPlaced *person = m->form != LR_MIC_LAVALIER && m->form != LR_MIC_CAMERA ? lr_study_find_placed (study, m->aims_at) : NULL;
  LrVec3 mouth_m;

  if (person == NULL || person->item->kind != LR_ITEM_PERSON)
    return NULL;

  mouth_m = lr_vec3 (person->eyes_m.x, person->eyes_m.y, person->body.mouth_m);
  *distance_m = lr_vec3_length (lr_vec3_sub (lr_vec3 (m->tip_x_m, m->tip_y_m, m->tip_height_m), mouth_m));
  return person;
}
