/* plan_migrate.h - from older formats of the file to this one
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <json-glib/json-glib.h>

/* Brings the tree of a file of @version, 1 to LR_PLAN_VERSION, to LR_PLAN_VERSION */
gboolean lr_plan_migrate (JsonObject *root, int version, GError **error);
