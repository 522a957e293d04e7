/* plan_migrate.c - from older formats of the file to this one
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each step changes the tree of one version into that of the next, so that the reader knows only the newest. To change
 * the format: raise LR_PLAN_VERSION, add a step here and a file of the old version to the tests.
 */

#include "plan_migrate.h"

#include "plan.h"

typedef gboolean (*MigrateFunc) (JsonObject *root, GError **error);

/* [n]: from version n to n + 1. There has been one version only. */
static const MigrateFunc steps[LR_PLAN_VERSION] = {
  [0] = NULL,
};

/**
 * lr_plan_migrate:
 * @root: the root object of a file, changed in place
 * @version: the file's version, 1 to %LR_PLAN_VERSION
 * @error: return location
 *
 * Returns: %FALSE if a step finds the tree unfit
 */
gboolean
lr_plan_migrate (JsonObject  *root,
                 int          version,
                 GError     **error)
{
  for (int v = version; v < LR_PLAN_VERSION; v++)
    if (!steps[v] (root, error))
      return FALSE;

  return TRUE;
}
