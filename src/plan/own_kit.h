/* own_kit.h - the user's own kit, which is kept between jobs
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A plain file with the lists that a plan has: kit and supplies. Saved all or nothing. A file that cannot be read as one is told and
 * never written over.
 */

#pragma once

#include "plan.h"

typedef struct
{
  GPtrArray  *entries;   /* of LrKitEntry */
  GPtrArray  *supplies;  /* of LrSupply */
} LrOwnKit;

/* (transfer full) (nullable): %NULL without an error when there is no file */
LrOwnKit *lr_own_kit_read  (const char *path, GError **error);
void      lr_own_kit_free  (LrOwnKit *kit);
/* Makes the folder if need be; refuses, with the reason, where a file stands that is no kit of this version */
gboolean  lr_own_kit_write (const LrPlan *plan, const char *path, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrOwnKit, lr_own_kit_free)
