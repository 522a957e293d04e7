/* domain.h - what a function of the engine accepts
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <math.h>
#include <stdbool.h>

/* Finite and greater than 0 */
static inline bool
lr_is_positive (double x)
{
  return isfinite (x) && x > 0.0;
}

/* Finite and not less than 0 */
static inline bool
lr_is_at_least_zero (double x)
{
  return isfinite (x) && x >= 0.0;
}
