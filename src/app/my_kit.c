/* my_kit.c - the user's own kit, from which new plans begin
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "my_kit.h"

#include "plan_edit.h"

#include <glib/gi18n-lib.h>

/**
 * lr_my_kit_dup_path:
 *
 * Returns: (transfer full): the file in the user's data directory
 */
char *
lr_my_kit_dup_path (void)
{
  return g_build_filename (g_get_user_data_dir (), "lookroom", "kit.json", NULL);
}

/**
 * lr_my_kit_new_plan:
 * @trouble: (out) (transfer full) (nullable): what is wrong with the file, a sentence
 *
 * Returns: (transfer full): an empty plan with the user's own kit; with the generic one if none is kept or it cannot be read
 */
LrPlan *
lr_my_kit_new_plan (char **trouble)
{
  g_autofree char *path = lr_my_kit_dup_path ();
  g_autoptr (LrPlan) empty = lr_plan_new_empty ();
  g_autoptr (GError) error = NULL;
  g_autoptr (LrOwnKit) kit = lr_own_kit_read (path, &error);

  /* Translators: what is wrong with the file of the user's kit */
  *trouble = error != NULL ? g_strdup_printf (_("Your own kit could not be read, so this plan begins with the generic one. %s."), error->message)
                           : NULL;

  return kit != NULL ? lr_plan_begin_with_kit (empty, kit->entries, kit->supplies) : g_steal_pointer (&empty);
}
