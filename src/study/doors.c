/* doors.c - the floor that a door needs
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study.h"

/* The quarter disc of the leaf, as a fan round its hinge with its arc drawn outside the true one, by 7 mm for 0.85 m */
static LrOutline
swing_fan (LrVec2 hinge_m,
           LrVec2 closed,
           LrVec2 into_room,
           double width_m)
{
  LrOutline fan = { .n = LR_OUTLINE_MAX };
  double step_rad = 0.5 * LR_PI / (LR_OUTLINE_MAX - 2);
  double radius_m = width_m / cos (0.5 * step_rad);
  gboolean is_left = lr_vec2_cross (closed, into_room) > 0.0;

  fan.corner_m[0] = hinge_m;
  for (int i = 0; i + 1 < LR_OUTLINE_MAX; i++)
    {
      double turn_rad = i * step_rad;
      LrVec2 way = lr_vec2_add (lr_vec2_scale (closed, cos (turn_rad)), lr_vec2_scale (into_room, sin (turn_rad)));

      fan.corner_m[is_left ? i + 1 : LR_OUTLINE_MAX - 1 - i] = lr_vec2_along (hinge_m, way, radius_m);
    }

  fan.centre_m = lr_vec2_along (hinge_m, lr_vec2_add (closed, into_room), 0.5 * width_m);
  for (size_t i = 0; i < fan.n; i++)
    fan.radius_m = fmax (fan.radius_m, lr_vec2_distance (fan.centre_m, fan.corner_m[i]));
  return fan;
}

/**
 * lr_study_door_floor:
 * @study: a study
 * @door: a door
 * @floor: (out): the floor that it needs
 *
 * Where the leaf swings in, the quarter disc round its hinge; else a strip before the opening, as deep as the
 * limit of the way out.
 *
 * Returns: %FALSE if the door's wall is not there
 */
gboolean
lr_study_door_floor (const LrStudy  *study,
                     const LrPlaced *door,
                     LrOutline      *floor)
{
  const LrItem *item = door->item;
  double clear_m = study->plan->limits.value[LR_LIMIT_WAY_OUT];
  LrVec2 from_m, along, inward, start_m;
  double length_m;

  if (!lr_room_wall (study->setup->room, item->wall, &from_m, &along, &length_m))
    return FALSE;

  inward = lr_vec2_left (along);
  start_m = lr_vec2_along (from_m, along, item->along_m);
  if (item->door.swing != LR_SWING_IN)
    *floor = lr_outline_box (lr_vec2_along (door->at_m, inward, 0.5 * clear_m),
                             clear_m, item->door.width_m, lr_vec2_angle_rad (inward));
  else if (item->door.hinge == LR_HINGE_START)
    *floor = swing_fan (start_m, along, inward, item->door.width_m);
  else
    *floor = swing_fan (lr_vec2_along (start_m, along, item->door.width_m), lr_vec2_scale (along, -1.0), inward,
                        item->door.width_m);
  return TRUE;
}
