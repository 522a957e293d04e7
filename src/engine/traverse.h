/* traverse.h - a walk along the walls, from lengths and turns to corners
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <stddef.h>
#include "vec.h"

typedef struct
{
  double length_m;
  double turn_rad; /* at its end; > 0 to the left */
} LrTraverseLeg;

/* Points of the walk from 0, 0, the first leg along +x: n + 1 of them, the last where it ends. false unless all are finite
 * and the lengths > 0 */
bool   lr_traverse_walk  (const LrTraverseLeg *legs, size_t n, LrVec2 *points_m);
/* How far its end misses its start [m] */
double lr_traverse_gap_m (const LrVec2 *points_m, size_t n);
/* Closes it: the gap is shared out along the walk by length */
void   lr_traverse_close (LrVec2 *points_m, size_t n);
