/* tape_error.h - how good a taped length is
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

/* One standard deviation of a taped length: survey.c tells the sources */
#define LR_TAPE_SD_M 0.004
#define LR_TAPE_SD_PER_M 0.0002

static inline double
lr_tape_sd_m (double length_m)
{
  return LR_TAPE_SD_M + LR_TAPE_SD_PER_M * length_m;
}
