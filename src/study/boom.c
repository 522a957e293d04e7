/* boom.c - how a microphone hangs from a boom on a stand
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The plan holds where the capsule is; the rest is common practice, no source: the capsule hangs 10 cm under the arm's end, the
 * post is 4 cm higher than that, and never lower than a metre.
 */

#include "boom.h"

#include <math.h>

#define HANGS_M 0.10
#define POST_OVER_M 0.04
#define LEAST_POST_M 1.0
#define LEAST_REACH_M 0.1

/**
 * lr_boom_hang:
 * @at_m: foot of the post [m]
 * @microphone: whose form is a boom
 * @hang: (out caller-allocates): post and arm
 */
void
lr_boom_hang (LrVec2              at_m,
              const LrMicrophone *microphone,
              LrBoomHang         *hang)
{
  LrVec2 reach = lr_vec2_sub (lr_vec2 (microphone->tip_x_m, microphone->tip_y_m), at_m);
  double end_m = microphone->tip_height_m + HANGS_M, behind_m;

  hang->arm_rad = lr_vec2_angle_rad (reach);
  hang->reach_m = lr_vec2_length (reach);
  hang->short_m = microphone->short_end_m;
  hang->post_m = fmax (LEAST_POST_M, end_m + POST_OVER_M);
  hang->slope = (end_m - hang->post_m) / fmax (hang->reach_m, LEAST_REACH_M);
  behind_m = hang->post_m - hang->slope * hang->short_m;
  hang->top_m = fmax (hang->post_m + LR_BOOM_ARM_RADIUS_M, behind_m + (hang->short_m > 0.0 ? LR_BOOM_WEIGHT_HALF_M : LR_BOOM_ARM_RADIUS_M));
}
