/* beam.h - parallel light through an opening of a room's wall, and what it falls on
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Seen from above a beam is cut into strips by the corners that it passes: each runs from the opening to one wall. Within a strip places
 * are s, 0 to 1 across it, and the path from the opening [m].
 */

#pragma once

#include "polygon.h"

#define LR_BEAM_STRIPS 12
#define LR_BEAM_CORNERS 16 /* no patch has more */

typedef struct
{
  LrVec2 from_m[2];   /* on the opening, at s 0 and 1 */
  LrVec2 direction;   /* of the light, of length 1 */
  double path_m[2];   /* to the wall */
  size_t edge;        /* that wall */
} LrBeamStrip;

/* What comes through between two heights, falling by @fall for each metre of its path */
typedef struct
{
  double sill_m, head_m, fall;
} LrBeamHeights;

/* Returns their number */
size_t lr_beam_strips (const LrVec2 *room_m, size_t n, LrVec2 a_m, LrVec2 b_m, LrVec2 direction, LrBeamStrip strips[LR_BEAM_STRIPS]);
/* What a strip lets fall on a level, and on its wall. Returns the corners; 0: nothing */
size_t lr_beam_on_level (const LrBeamStrip *strip, const LrBeamHeights *heights, double level_m, LrVec2 corner_m[LR_BEAM_CORNERS]);
size_t lr_beam_on_wall  (const LrBeamStrip *strip, const LrBeamHeights *heights, LrVec3 corner_m[LR_BEAM_CORNERS]);
/* What two convex polygons, @by anticlockwise, have in common, in place of the first. Returns the corners */
size_t lr_convex_common (LrVec2 corner_m[LR_BEAM_CORNERS], size_t n, const LrVec2 *by_m, size_t n_by);
