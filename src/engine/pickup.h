/* pickup.h - how a microphone's pattern and place favour one source over another
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Direct sound only: the room's reverberation is another matter.
 */

#pragma once

#include "vec.h"

typedef struct
{
  LrVec3 capsule_m;
  LrVec3 axis;       /* of length 1: where it is most sensitive */
  double omni_share; /* first-order pattern: share + (1 - share) cos: 1 omni, .5 cardioid, .3 narrow */
} LrPickup;

/* Level [dB] of a source at from_m against the same source at reference_m */
bool lr_pickup_level_db (const LrPickup *pickup, LrVec3 from_m, LrVec3 reference_m, double *level_db);
/* Where, on the level plane of the centre and in a direction from it, the level against the centre first falls to level_db < 0;
 * at most reach_m */
bool lr_pickup_contour_m (const LrPickup *pickup, LrVec3 centre_m, LrVec2 direction, double level_db, double reach_m,
                          double *distance_m);
