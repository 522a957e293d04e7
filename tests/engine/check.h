/* check.h - what the engine's tests share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "vec.h"

#include <glib.h>

/* What no length, angle or number of the engine may be */
static const double not_positive[] = { 0.0, -0.0, -1.0, NAN, HUGE_VAL, -HUGE_VAL };

/* A value that no function writes: outputs must still hold it after a refusal */
#define UNTOUCHED 12345.678

/* One test per row of a table whose rows begin with a name */
#define add_rows(path, rows, func)                                                        \
  G_STMT_START                                                                            \
    {                                                                                     \
      for (size_t add_row = 0; add_row < G_N_ELEMENTS (rows); add_row++)                  \
        {                                                                                 \
          g_autofree char *row_path = g_strdup_printf ("%s/%s", path, rows[add_row].name); \
                                                                                          \
          g_test_add_data_func (row_path, &rows[add_row], func);                          \
        }                                                                                 \
    }                                                                                     \
  G_STMT_END

#define assert_near(a, b, tolerance) g_assert_cmpfloat_with_epsilon (a, b, tolerance)

#define assert_near_2(a, b, tolerance)          \
  G_STMT_START                                  \
    {                                           \
      assert_near ((a).x, (b).x, tolerance);    \
      assert_near ((a).y, (b).y, tolerance);    \
    }                                           \
  G_STMT_END

/* Relative: |a - b| < share |b| */
#define assert_within(a, b, share) g_assert_cmpfloat_with_epsilon (a, b, (share) * fabs (b))

static inline LrVec2
random_point (double reach_m)
{
  double x = g_test_rand_double_range (-reach_m, reach_m);

  return lr_vec2 (x, g_test_rand_double_range (-reach_m, reach_m));
}
