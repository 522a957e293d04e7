/* plan_reader.c - from a file to a plan
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * In three steps: the bytes are fetched, at most LR_MAX_FILE_BYTES; json_parse.c makes a tree of them; the tree is read
 * through the property tables. Whatever is wrong, the error is one sentence that names the file, the place in it and the
 * line.
 */

#include "config.h"

#include "plan_reader_private.h"

#include "json_parse.h"
#include "plan_migrate.h"

#include <errno.h>
#include <gio/gio.h>
#include <glib/gi18n-lib.h>
#include <string.h>

/* The limits */

static gboolean
read_limits (const LrJsonPlace  *root,
             JsonNode           *node,
             LrPlan             *plan,
             GError            **error)
{
  LrJsonPlace place = { .up = root, .name = "limits" };
  JsonObject *object = lr_json_get_object (&place, node, error);
  const char *known[LR_N_LIMITS + 1] = { NULL };

  if (object == NULL)
    return FALSE;

  for (int i = 0; i < LR_N_LIMITS; i++)
    {
      const LrProp *prop = &lr_limit_info (i)->prop;
      LrJsonPlace at = { .up = &place, .name = prop->key };
      JsonNode *member = json_object_get_member (object, prop->key);
      union { double number; int count; } value = { 0.0 }; /* whichever the row wants */

      known[i] = prop->key;
      if (member == NULL)
        continue;
      if (!lr_json_get_prop (&at, member, prop, &value, error))
        return FALSE;
      plan->limits.value[i] = lr_prop_get_number (prop, &value);
      plan->limits.is_set[i] = TRUE;
    }

  return lr_json_get_rows (&place, object, NULL, 0, known, &plan->unknown_limits, error);
}

/**
 * lr_read_word:
 * @at: where it stands, by its name in @object
 * @object: an object
 * @error: return location
 *
 * Returns: (transfer none) (nullable): a text that may not be missing; %NULL: it is, or is no text
 */
const char *
lr_read_word (const LrJsonPlace  *at,
              JsonObject         *object,
              GError            **error)
{
  JsonNode *node = json_object_get_member (object, at->name);

  if (node != NULL)
    return lr_json_get_text (at, node, error);

  lr_json_fail (at, LR_PLAN_ERROR_VALUE, error, _("is missing"));
  return NULL;
}

/* The set-ups */

static gboolean
check_setup_id (const LrJsonPlace  *place,
                const LrPlan       *plan,
                const LrSetup      *setup,
                GError            **error)
{
  LrJsonPlace at = { .up = place, .name = "id" };

  if (*setup->id == '\0')
    return lr_json_fail (&at, LR_PLAN_ERROR_VALUE, error, _("is missing or empty"));
  for (guint i = 0; i < plan->setups->len; i++)
    if (strcmp (((const LrSetup *) plan->setups->pdata[i])->id, setup->id) == 0)
      return lr_json_fail (&at, LR_PLAN_ERROR_REFERENCE, error, _("is “%s”, which is taken already"), setup->id);

  return TRUE;
}

static gboolean
read_setups (const LrJsonPlace  *root,
             JsonNode           *node,
             LrPlan             *plan,
             GHashTable         *kit_ids,
             GError            **error)
{
  LrJsonPlace place = { .up = root, .name = "setups" };
  JsonArray *array = node != NULL ? lr_json_get_array (&place, node, error) : NULL;

  if (node != NULL && array == NULL)
    return FALSE;
  if (array == NULL || json_array_get_length (array) == 0)
    return lr_json_fail (&place, LR_PLAN_ERROR_FORMAT, error, _("is missing or empty; a plan has at least one set-up"));

  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      LrJsonPlace at = { .up = &place, .index = i };
      g_autoptr (LrSetup) setup = lr_read_setup (&at, json_array_get_element (array, i), plan->setups, kit_ids, error);

      if (setup == NULL || !check_setup_id (&at, plan, setup, error))
        return FALSE;
      g_ptr_array_add (plan->setups, g_steal_pointer (&setup));
    }

  return TRUE;
}

static const LrSetup *
find_setup (const LrPlan *plan,
            const char   *id)
{
  for (guint i = 0; i < plan->setups->len; i++)
    if (strcmp (((const LrSetup *) plan->setups->pdata[i])->id, id) == 0)
      return plan->setups->pdata[i];

  return NULL;
}

/* Whether a set-up is, by one or by many, as found of itself */
static gboolean
is_found_of_itself (const LrPlan  *plan,
                    const LrSetup *setup)
{
  const LrSetup *planned = find_setup (plan, setup->found_of);

  for (guint i = 0; i < plan->setups->len && planned != NULL && planned != setup; i++)
    planned = find_setup (plan, planned->found_of);

  return planned == setup;
}

/* A set-up as found names the one as planned */
static gboolean
check_found (const LrJsonPlace  *root,
             const LrPlan       *plan,
             GError            **error)
{
  LrJsonPlace list = { .up = root, .name = "setups" };

  for (guint i = 0; i < plan->setups->len; i++)
    {
      const LrSetup *setup = plan->setups->pdata[i];
      LrJsonPlace of = { .up = &list, .index = i }, at = { .up = &of, .name = "found-of" };

      if (*setup->found_of == '\0')
        continue;
      if (is_found_of_itself (plan, setup))
        return lr_json_fail (&at, LR_PLAN_ERROR_REFERENCE, error, _("names “%s”, which it cannot name"), setup->found_of);
      if (find_setup (plan, setup->found_of) == NULL)
        return lr_json_fail (&at, LR_PLAN_ERROR_REFERENCE, error, _("names “%s”, which is not there"), setup->found_of);
    }

  return TRUE;
}

static gboolean
read_shown (const LrJsonPlace  *root,
            JsonNode           *node,
            LrPlan             *plan,
            GError            **error)
{
  LrJsonPlace place = { .up = root, .name = "shown" };
  const char *id = lr_json_get_text (&place, node, error);

  if (id == NULL)
    return FALSE;
  for (guint i = 0; i < plan->setups->len; i++)
    if (strcmp (((const LrSetup *) plan->setups->pdata[i])->id, id) == 0)
      {
        plan->shown = i;
        return TRUE;
      }

  return lr_json_fail (&place, LR_PLAN_ERROR_REFERENCE, error, _("names “%s”, which is not there"), id);
}

/* The root */

static gboolean
read_version (const LrJsonPlace  *root,
              JsonObject         *object,
              int                *version,
              GError            **error)
{
  LrProp prop = { .key = "version", .type = LR_PROP_COUNT, .min = 1.0, .max = 1e6 };
  LrJsonPlace format_place = { .up = root, .name = "format" }, place = { .up = root, .name = "version" };
  JsonNode *format = json_object_get_member (object, "format"), *node = json_object_get_member (object, "version");

  if (format == NULL)
    return lr_json_fail (root, LR_PLAN_ERROR_FORMAT, error, _("is not a plan: it has no “format”"));
  if (!JSON_NODE_HOLDS_VALUE (format) || g_strcmp0 (json_node_get_string (format), LR_PLAN_FORMAT) != 0)
    return lr_json_fail (&format_place, LR_PLAN_ERROR_FORMAT, error, _("is not “%s”: this is not a plan"), LR_PLAN_FORMAT);
  if (node == NULL)
    return lr_json_fail (root, LR_PLAN_ERROR_FORMAT, error, _("has no “version”"));

  return lr_json_get_prop (&place, node, &prop, version, error);
}

static gboolean
read_members (const LrJsonPlace  *root,
              JsonObject         *object,
              LrPlan             *plan,
              GError            **error)
{
  static const char *const known[] = { "format", "version", "job", "limits", "kit", "supplies", "shown", "setups", NULL };
  g_autoptr (GHashTable) kit_ids = g_hash_table_new (g_str_hash, g_str_equal);
  JsonNode *job = json_object_get_member (object, "job"), *limits = json_object_get_member (object, "limits");
  JsonNode *kit = json_object_get_member (object, "kit"), *setups = json_object_get_member (object, "setups");
  JsonNode *shown = json_object_get_member (object, "shown"), *supplies = json_object_get_member (object, "supplies");

  return lr_json_get_rows (root, object, NULL, 0, known, &plan->unknown, error)
         && (job == NULL || lr_read_job (root, job, plan->job, error))
         && (limits == NULL || read_limits (root, limits, plan, error))
         && (kit == NULL || lr_read_kit (root, kit, plan->kit, kit_ids, error))
         && (supplies == NULL || lr_read_supplies (root, supplies, plan->supplies, error))
         && read_setups (root, setups, plan, kit_ids, error) && check_found (root, plan, error)
         && (shown == NULL || read_shown (root, shown, plan, error));
}

static LrPlan *
read_root (const LrJsonPlace  *root,
           JsonNode           *node,
           GError            **error)
{
  g_autoptr (LrPlan) plan = lr_plan_alloc ();
  JsonObject *object;

  if (node == NULL || !JSON_NODE_HOLDS_OBJECT (node))
    {
      lr_json_fail (root, LR_PLAN_ERROR_FORMAT, error, _("is not a plan: it holds no object"));
      return NULL;
    }
  object = json_node_get_object (node);
  if (!read_version (root, object, &plan->version, error))
    return NULL;
  plan->is_read_only = plan->version > LR_PLAN_VERSION;
  if (!plan->is_read_only)
    {
      if (!lr_plan_migrate (object, plan->version, error))
        return NULL;
      plan->version = LR_PLAN_VERSION;
    }

  return read_members (root, object, plan, error) ? g_steal_pointer (&plan) : NULL;
}

/* The bytes */

static gboolean
check_text (const char  *data,
            gsize        length,
            GError     **error)
{
  const char *bad;
  guint line = 1;

  if (length > LR_MAX_FILE_BYTES)
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_TOO_LARGE, _("the file is larger than %d MB"),
                   LR_MAX_FILE_BYTES / (1024 * 1024));
      return FALSE;
    }
  if (length == 0)
    {
      g_set_error_literal (error, LR_PLAN_ERROR, LR_PLAN_ERROR_SYNTAX, _("the file is empty"));
      return FALSE;
    }
  if (g_utf8_validate_len (data, length, &bad))
    return TRUE;

  for (const char *p = data; p < bad; p++)
    line += *p == '\n';
  g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_SYNTAX, _("line %u: this is not UTF-8 text"), line);

  return FALSE;
}

/**
 * lr_plan_read_data:
 * @data: (array length=length): the bytes of a file
 * @length: how many
 * @error: return location
 *
 * A byte order mark is skipped. Of a newer version what is known must be valid; the plan may then only be read.
 *
 * Returns: (transfer full) (nullable): the plan
 */
LrPlan *
lr_plan_read_data (const char  *data,
                   gsize        length,
                   GError     **error)
{
  static const char byte_order_mark[] = "\xef\xbb\xbf";
  g_autofree char *text = NULL;
  g_autoptr (JsonNode) tree = NULL;
  LrJsonPlace root = { .up = NULL };

  if (!check_text (data, length, error))
    return NULL;

  text = g_strndup (data, length);
  root.text = g_str_has_prefix (text, byte_order_mark) ? text + strlen (byte_order_mark) : text;
  tree = lr_json_parse (root.text, LR_MAX_NESTING, error);

  return tree != NULL ? read_root (&root, tree, error) : NULL;
}

/* GIO's own sentence names the file a second time */
static const char *
reason (const GError *error)
{
  static const struct { int code, number; } causes[] = {
    { G_IO_ERROR_NOT_FOUND, ENOENT }, { G_IO_ERROR_PERMISSION_DENIED, EACCES }, { G_IO_ERROR_IS_DIRECTORY, EISDIR },
    { G_IO_ERROR_NOT_DIRECTORY, ENOTDIR }, { G_IO_ERROR_TOO_MANY_LINKS, ELOOP }, { G_IO_ERROR_FILENAME_TOO_LONG, ENAMETOOLONG },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (causes); i++)
    if (g_error_matches (error, G_IO_ERROR, causes[i].code))
      return g_strerror (causes[i].number);

  return error->message;
}

/* At most one byte more than a plan may have */
static GByteArray *
read_bytes (const char  *path,
            GError     **error)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GFileInputStream) stream = g_file_read (file, NULL, error);
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  gsize n_read = 0;
  guint before;

  if (stream == NULL)
    return NULL;
  do
    {
      before = bytes->len;
      g_byte_array_set_size (bytes, before + 256 * 1024);
      if (!g_input_stream_read_all (G_INPUT_STREAM (stream), bytes->data + before, bytes->len - before, &n_read, NULL,
                                    error))
        return NULL;
      g_byte_array_set_size (bytes, before + (guint) n_read);
    }
  while (n_read > 0 && bytes->len <= LR_MAX_FILE_BYTES);

  return g_steal_pointer (&bytes);
}

/**
 * lr_plan_read:
 * @path: of a file
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the plan
 */
LrPlan *
lr_plan_read (const char  *path,
              GError     **error)
{
  g_autofree char *shown_path = g_filename_display_name (path);
  g_autoptr (GError) io_error = NULL;
  g_autoptr (GByteArray) bytes = read_bytes (path, &io_error);
  LrPlan *plan;

  if (bytes == NULL)
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_IO, _("%s: cannot be read: %s"), shown_path, reason (io_error));
      return NULL;
    }

  plan = lr_plan_read_data ((const char *) bytes->data, bytes->len, error);
  if (plan == NULL)
    g_prefix_error (error, "%s: ", shown_path);

  return plan;
}
