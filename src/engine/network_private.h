/* network_private.h - what the files of network.h share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "network.h"

/* Derivatives of one measure: up to three points' x and y */
typedef struct
{
  size_t n;
  size_t column[6];
  double by[6];
} LrNetRow;

static inline LrVec2
lr_net_way (const LrNetPoint *points,
            size_t            from,
            size_t            to)
{
  return lr_vec2_sub (points[to].at_m, points[from].at_m);
}

/* network_doubt.c */
LrNetRow lr_net_derive (const LrNetMeasure *measure, const LrNetPoint *points, const size_t *column, size_t n_unknown);
double   lr_net_spread (const LrNetSolution *solution, const LrNetRow *a, const LrNetRow *b);
