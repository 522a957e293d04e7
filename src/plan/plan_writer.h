/* plan_writer.h - from a plan to a file
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "plan.h"

GBytes  *lr_plan_to_bytes (const LrPlan *plan);                              /* (transfer full): UTF-8 JSON, ends in a newline */
GBytes  *lr_kit_to_bytes  (GPtrArray *kit, GPtrArray *supplies);             /* (transfer full): the same of a kit alone */
/* Atomic; the file before it is kept as PATH~ */
gboolean lr_plan_write    (const LrPlan *plan, const char *path, GError **error);
