/* plan_reader.h - from a file to a plan
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "plan.h"

#define LR_MAX_FILE_BYTES (64 * 1024 * 1024)
#define LR_MAX_NESTING 64

LrPlan *lr_plan_read      (const char *path, GError **error);              /* (transfer full) (nullable) */
LrPlan *lr_plan_read_data (const char *data, gsize length, GError **error);
