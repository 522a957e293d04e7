/* own_kit.c - the user's own kit, which is kept between jobs
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Its kit and supplies are those of a plan, member by member, so what can be read in a plan can be read here.
 */

#include "config.h"

#include "own_kit.h"

#include "json_parse.h"
#include "plan_reader_private.h"
#include "plan_writer.h"
#include "save.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>

/**
 * lr_own_kit_free:
 * @kit: (transfer full): a kit
 */
void
lr_own_kit_free (LrOwnKit *kit)
{
  g_ptr_array_unref (kit->entries);
  g_ptr_array_unref (kit->supplies);
  g_free (kit);
}

static gboolean
check_format (const LrJsonPlace  *root,
              JsonObject         *object,
              GError            **error)
{
  LrProp prop = { .key = "version", .type = LR_PROP_COUNT, .min = 1.0, .max = 1e6 };
  LrJsonPlace at = { .up = root, .name = "version" };
  JsonNode *format = json_object_get_member (object, "format"), *node = json_object_get_member (object, "version");
  int version = 0;

  if (format == NULL || !JSON_NODE_HOLDS_VALUE (format) || g_strcmp0 (json_node_get_string (format), LR_KIT_FORMAT) != 0)
    return lr_json_fail (root, LR_PLAN_ERROR_FORMAT, error, _("is not a kit: its “format” is not “%s”"), LR_KIT_FORMAT);
  if (node == NULL)
    return lr_json_fail (root, LR_PLAN_ERROR_FORMAT, error, _("has no “version”"));
  if (!lr_json_get_prop (&at, node, &prop, &version, error))
    return FALSE;

  return version <= LR_KIT_VERSION
         || lr_json_fail (&at, LR_PLAN_ERROR_VERSION, error, _("is %d; this program knows version %d only"), version, LR_KIT_VERSION);
}

static LrOwnKit *
read_root (const LrJsonPlace  *root,
           JsonNode           *tree,
           GError            **error)
{
  g_autoptr (GHashTable) ids = g_hash_table_new (g_str_hash, g_str_equal);
  g_autoptr (LrOwnKit) kit = g_new0 (LrOwnKit, 1);
  JsonObject *object = JSON_NODE_HOLDS_OBJECT (tree) ? json_node_get_object (tree) : NULL;
  JsonNode *entries, *supplies;

  kit->entries = g_ptr_array_new_with_free_func ((GDestroyNotify) lr_kit_entry_unref);
  kit->supplies = lr_supplies_new ();
  if (object == NULL)
    {
      lr_json_fail (root, LR_PLAN_ERROR_FORMAT, error, _("is not a kit: it holds no object"));
      return NULL;
    }
  entries = json_object_get_member (object, "kit");
  supplies = json_object_get_member (object, "supplies");
  if (!check_format (root, object, error)
      || (entries != NULL && !lr_read_kit (root, entries, kit->entries, ids, error))
      || (supplies != NULL && !lr_read_supplies (root, supplies, kit->supplies, error)))
    return NULL;

  return g_steal_pointer (&kit);
}

static LrOwnKit *
read_data (const char  *data,
           gsize        length,
           GError     **error)
{
  g_autoptr (JsonNode) tree = NULL;
  LrJsonPlace root = { .text = data };

  if (length > LR_MAX_FILE_BYTES)
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_TOO_LARGE, _("the file is larger than %d MB"), LR_MAX_FILE_BYTES / (1024 * 1024));
      return NULL;
    }
  if (length == 0)
    {
      g_set_error_literal (error, LR_PLAN_ERROR, LR_PLAN_ERROR_SYNTAX, _("the file is empty"));
      return NULL;
    }
  if (!g_utf8_validate_len (data, length, NULL))
    {
      g_set_error_literal (error, LR_PLAN_ERROR, LR_PLAN_ERROR_SYNTAX, _("this is not UTF-8 text"));
      return NULL;
    }
  tree = lr_json_parse (data, LR_MAX_NESTING, error);

  return tree != NULL ? read_root (&root, tree, error) : NULL;
}

/**
 * lr_own_kit_read:
 * @path: of a file
 * @error: return location: one sentence that names the file and the place in it
 *
 * Returns: (transfer full) (nullable): the kit; %NULL without an error if there is no file
 */
LrOwnKit *
lr_own_kit_read (const char  *path,
                 GError     **error)
{
  g_autofree char *shown_path = g_filename_display_name (path), *data = NULL;
  g_autoptr (GError) failure = NULL;
  LrOwnKit *kit;
  gsize length;

  if (!g_file_get_contents (path, &data, &length, &failure))
    {
      if (!g_error_matches (failure, G_FILE_ERROR, G_FILE_ERROR_NOENT))
        g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_IO, _("%s: cannot be read: %s"), shown_path, failure->message);
      return NULL;
    }

  kit = read_data (data, length, error);
  if (kit == NULL)
    g_prefix_error (error, "%s: ", shown_path);

  return kit;
}

/**
 * lr_own_kit_write:
 * @plan: whose kit and supplies are kept
 * @path: of a file, which need not be there yet, nor its folder
 * @error: return location
 *
 * Either all of it is at @path afterwards or nothing has changed. What stands there and cannot be read as a kit is not written over.
 *
 * Returns: %FALSE if it could not be saved
 */
gboolean
lr_own_kit_write (const LrPlan  *plan,
                  const char    *path,
                  GError       **error)
{
  g_autofree char *shown_path = g_filename_display_name (path), *folder = g_path_get_dirname (path);
  g_autoptr (LrOwnKit) before = NULL;
  g_autoptr (GError) failure = NULL;
  g_autoptr (GBytes) bytes = NULL;
  gconstpointer data;
  gsize length;

  before = lr_own_kit_read (path, &failure);
  if (failure != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&failure));
      return FALSE;
    }
  if (g_mkdir_with_parents (folder, 0700) != 0)
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_IO, _("%s: cannot be written: %s"), shown_path, g_strerror (errno));
      return FALSE;
    }

  bytes = lr_kit_to_bytes (plan->kit, plan->supplies);
  data = g_bytes_get_data (bytes, &length);
  if (lr_save_bytes (path, data, length, error))
    return TRUE;
  g_prefix_error (error, "%s: ", shown_path);

  return FALSE;
}
