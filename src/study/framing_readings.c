/* framing_readings.c - how a camera's frame holds its subject: joints at its edge, the side of the look
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The look is that of the eyes to the eyes of whom they look at, as it runs across this frame: the same look goes left in one
 * camera and right in another.
 */

#include "study_parts.h"

static void
read_look_room (const LrPlaced  *partner,
                LrCameraReading *reading)
{
  LrVec3 look = lr_vec3_sub (partner->eyes_m, reading->subject->eyes_m);
  double length_m = lr_vec3_length (look);

  if (!(length_m > 0.0))
    return;

  reading->look_across = lr_vec3_dot (look, reading->projection.right) / length_m;
  lr_look_room (reading->eyes_across, reading->look_across, &reading->look_room);
}

/**
 * lr_study_read_framing:
 * @study: a study
 * @reading: (inout): a camera with a subject, whose field and look are read
 *
 * Fills the joint, the place of the eyes by the rule, and the room that the look has.
 */
void
lr_study_read_framing (const LrStudy   *study,
                       LrCameraReading *reading)
{
  const LrPlaced *subject = reading->subject;
  const LrPlaced *partner = lr_study_find_partner (study, subject);

  reading->joint = (LrJointCut) { LR_N_JOINTS, NAN };
  reading->eyes_rule = reading->look_across = reading->look_room = NAN;
  lr_joint_cut (&subject->body, subject->at_m, subject->facing_rad, &reading->projection, &reading->joint);
  lr_eyes_down_for_height (&subject->body, reading->field_h_m, &reading->eyes_rule);
  if (partner != NULL)
    read_look_room (partner, reading);
}
