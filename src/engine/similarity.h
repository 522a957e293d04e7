/* similarity.h - from a picture to the floor: turned, sized, moved, and nothing else
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "vec.h"

/* q = origin + scale R(turn) p */
typedef struct
{
  double scale;    /* > 0: metres per unit of the picture */
  double turn_rad; /* anticlockwise */
  LrVec2 origin_m; /* where the picture's 0, 0 lies */
} LrSimilarity;

LrVec2 lr_similarity_apply  (const LrSimilarity *similarity, LrVec2 point);
LrVec2 lr_similarity_invert (const LrSimilarity *similarity, LrVec2 at_m);
/* The one that takes p to p_m and q to q_m; false, with nothing written, unless both pairs lie apart */
bool   lr_similarity_from_pairs (LrVec2 p, LrVec2 q, LrVec2 p_m, LrVec2 q_m, LrSimilarity *similarity);
/* @before so resized that p and q of the picture lie that far apart; p stays where it is. @is_straightened: turned about p, by
 * the least that makes the line from p to q level or upright */
bool   lr_similarity_scaled (const LrSimilarity *before, LrVec2 p, LrVec2 q, double distance_m, bool is_straightened, LrSimilarity *similarity);
/* Turned about a place on the floor, which stays where it is */
LrSimilarity lr_similarity_turned (const LrSimilarity *before, LrVec2 about_m, double by_rad);
/* By how much a line in that direction must be turned to be level or upright, in [-pi/4, pi/4] */
double lr_straighten_rad (LrVec2 direction);
