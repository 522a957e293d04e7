/* boom_geometry.h - where a boom may hang, and what balances it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <stdbool.h>

/* Over a frame's upper edge, which rises edge_slope a metre from the lens away */
typedef struct
{
  double lens_m;      /* its height */
  double edge_slope;  /* tangent of the tilt and half the angle of view */
  double mouth_m;     /* its height */
  double away_m;      /* the mouth from the lens, along the floor, the way that the camera looks */
  double clear_m;     /* so much over the edge */
} LrBoomFrame;

/* How near to the mouth the capsule may come, when it hangs @up_rad over it, towards the camera; FALSE: the mouth is over the edge */
bool lr_boom_least_m (const LrBoomFrame *frame, double up_rad, double *distance_m);

/* An arm on a post, its middle @middle_m out, the capsule @reach_m; the weight sits @short_m behind */
bool lr_boom_counterweight_kg (double arm_kg, double middle_m, double capsule_kg, double reach_m, double short_m, double *weight_kg);
