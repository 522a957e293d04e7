/* boom.h - how a microphone hangs from a boom on a stand
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "item.h"

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
