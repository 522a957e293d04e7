/* routing.h - the cheapest way over a floor: of a lead along walls, of a person to the door
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "polygon.h"

/* The floor, and what a metre of it counts. Lengths >= 0, the times >= 1 */
typedef struct
{
  const LrVec2    *room_m;     /* corners, anticlockwise; n_room 0: no walls */
  size_t           n_room;
  const LrOutline *blocks;     /* what it goes round; one that holds its beginning, or its end unless that is strict, counts for nothing */
  size_t           n_blocks;
  const LrOutline *zones;      /* where a metre counts zone_times as much */
  size_t           n_zones;
  double           clear_m;    /* it keeps so far from blocks; less where an end lies nearer */
  double           wall_m;     /* so far from a wall it turns a corner, or runs along it */
  double           band_m;     /* so near to a wall it lies along it, where a metre is a metre */
  double           open_times; /* what a metre elsewhere counts */
  double           zone_times;
  bool             is_round;      /* what is grown by clear_m gets round corners, to 1 in 100 of it: for the width of a way. Else they stay
                                     sharp and discs are octagons, which is quicker */
  bool             is_end_strict; /* what is near the far end is not left out: a way through a door, not to a thing beside others */
} LrRouteFloor;

typedef enum
{
  LR_ROUTE_FOUND,
  LR_ROUTE_NONE,     /* there is no way */
  LR_ROUTE_GIVEN_UP, /* not known: too many blocks stand in the way, or an input is not in its domain */
} LrRouteResult;

LrRouteResult lr_route_seek (const LrRouteFloor *floor, LrVec2 from_m, LrVec2 to_m, LrVec2 *path_m, size_t max, size_t *n);
/* Points from the one end to the other, both among them; @path_m has room for @max */
bool   lr_route_find (const LrRouteFloor *floor, LrVec2 from_m, LrVec2 to_m, LrVec2 *path_m, size_t max, size_t *n);
/* What a path counts: its length, more where it lies in the open or in zones */
double lr_route_cost_m (const LrRouteFloor *floor, const LrVec2 *path_m, size_t n);
double lr_route_length_m (const LrVec2 *path_m, size_t n);
/* Whether it crosses no wall and keeps as far from all blocks as lr_route_find () would */
bool   lr_route_is_free (const LrRouteFloor *floor, const LrVec2 *path_m, size_t n);
