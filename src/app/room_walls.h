/* room_walls.h - wall lengths as they are typed, and the room that they make
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "plan_edit.h"
#include "traverse.h"
#include "units.h"

typedef struct
{
  GArray  *corners_m;  /* of LrVec2; empty when no room comes of it */
  gboolean is_room;    /* can be made */
  gboolean has_closing_wall; /* the last wall was not typed */
  char    *status;     /* a sentence for people: what comes out, or what is wrong */
} LrRoomWalls;

void lr_room_walls_clear     (LrRoomWalls *walls);
void lr_room_walls_rectangle (LrRoomWalls *walls, double length_m, double width_m, LrUnits units);
/* @start_m, @heading_rad: where the first wall starts and where it goes */
void lr_room_walls_walk      (LrRoomWalls *walls, const LrTraverseLeg *legs, gsize n, LrVec2 start_m, double heading_rad, LrUnits units);
