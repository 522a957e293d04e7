/* boom.h - how a microphone hangs from a boom on a stand
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "item.h"

#define LR_BOOM_ARM_RADIUS_M 0.012
#define LR_BOOM_WEIGHT_HALF_M 0.055 /* across and up */
#define LR_BOOM_WEIGHT_M 0.16       /* along the arm */

/* The arm rests on the post, slopes evenly from end to end, and has its weight behind */
typedef struct
{
  double arm_rad;  /* its direction in plan */
  double reach_m;  /* from the post to over the capsule, in plan */
  double short_m;  /* from the post back to its end, in plan */
  double post_m;   /* height of the post */
  double slope;    /* rise of the arm a metre, towards the capsule */
  double top_m;    /* height of what is highest of all */
} LrBoomHang;

void lr_boom_hang (LrVec2 at_m, const LrMicrophone *microphone, LrBoomHang *hang);
