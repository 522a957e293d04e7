/* setting_out.h - a place on the floor by tape
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <stddef.h>
#include "vec.h"

typedef struct
{
  double from_p_m, from_q_m; /* lengths of the two tapes */
  double crossing_rad;       /* angle between them at the point, in [0, pi]; poor under 30 and over 150 degrees */
} LrTapePair;

/* Two-tape readings of a point from the known points p and q */
bool lr_tape_pair (LrVec2 p_m, LrVec2 q_m, LrVec2 point_m, LrTapePair *tapes);
/* The point left of p to q (side > 0) or right of it (side < 0) at the two lengths; false when the tapes do not meet */
bool lr_tape_meet (LrVec2 p_m, LrVec2 q_m, double from_p_m, double from_q_m, int side, LrVec2 *point_m);
/* The two corners of a room from which the points are best taped: the largest worst crossing angle. false for n < 2 */
bool lr_tape_corners (const LrVec2 *corners_m, size_t n, const LrVec2 *points_m, size_t n_points, size_t *p, size_t *q);
