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

/* How far a point that two lengths give may be off: the ellipse of one standard deviation */
typedef struct
{
  double major_m, minor_m; /* its half axes */
  double major_rad;        /* direction of the longer one, in (-pi/2, pi/2] */
  double point_m;          /* mean error of the point: root of the sum of the squares of both */
} LrFixError;

/* Two-tape readings of a point from the known points p and q */
bool lr_tape_pair (LrVec2 p_m, LrVec2 q_m, LrVec2 point_m, LrTapePair *tapes);
/* The point left of p to q (side > 0) or right of it (side < 0) at the two lengths; false when the tapes do not meet */
bool lr_tape_meet (LrVec2 p_m, LrVec2 q_m, double from_p_m, double from_q_m, int side, LrVec2 *point_m);
/* What errors of two lengths do to the point that they give; each is measured along its direction, of length 1 */
bool lr_fix_error (LrVec2 along_a, double sd_a_m, LrVec2 along_b, double sd_b_m, LrFixError *error);
