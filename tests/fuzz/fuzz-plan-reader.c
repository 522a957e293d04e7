/* fuzz-plan-reader.c - any bytes give a plan or an error, and a plan that was read survives saving
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Build with -Dfuzz=true and clang, run in a folder of its own with the examples as seeds:
 *   fuzz-plan-reader corpus ../examples ../tests/data -max_len=65536
 */

#include "plan_reader.h"
#include "plan_writer.h"

#include <stdint.h>

int LLVMFuzzerTestOneInput (const uint8_t *data,
                            size_t         length);

int
LLVMFuzzerTestOneInput (const uint8_t *data,
                        size_t         length)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) plan = lr_plan_read_data ((const char *) data, length, &error);
  g_autoptr (LrPlan) again = NULL;
  g_autoptr (GBytes) first = NULL, second = NULL;

  g_assert ((plan == NULL) == (error != NULL));
  if (plan == NULL)
    {
      g_assert (error->domain == LR_PLAN_ERROR);
      return 0;
    }

  first = lr_plan_to_bytes (plan);
  again = lr_plan_read_data (g_bytes_get_data (first, NULL), g_bytes_get_size (first), &error);
  g_assert_no_error (error);
  second = lr_plan_to_bytes (again);
  g_assert (g_bytes_equal (first, second));
  g_assert (lr_plan_equal (plan, again));

  return 0;
}
