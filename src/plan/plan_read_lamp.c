/* plan_read_lamp.c - a light's photometric file from its JSON
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_reader_private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static gboolean
read_format (const LrJsonPlace  *place,
             JsonObject         *object,
             LrLampFormat       *format,
             GError            **error)
{
  LrJsonPlace at = { .up = place, .name = "format" };
  const char *word = lr_read_word (&at, object, error);

  if (word == NULL)
    return FALSE;
  for (int i = 0; i < LR_N_LAMP_FORMATS; i++)
    if (strcmp (lr_lamp_format_word (i), word) == 0)
      {
        *format = i;
        return TRUE;
      }

  return lr_json_fail (&at, LR_PLAN_ERROR_VALUE, error, _("is “%s”, not one of %s, %s"), word, lr_lamp_format_word (LR_LAMP_FILE_IES),
                       lr_lamp_format_word (LR_LAMP_FILE_LDT));
}

/* (transfer full) (nullable) */
static char **
read_lines (const LrJsonPlace  *place,
            JsonNode           *node,
            GError            **error)
{
  JsonArray *array = lr_json_get_array (place, node, error);
  g_auto (GStrv) lines = NULL;

  if (array == NULL)
    return NULL;

  lines = g_new0 (char *, json_array_get_length (array) + 1);
  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      LrJsonPlace at = { .up = place, .index = i };
      const char *line = lr_json_get_text (&at, json_array_get_element (array, i), error);

      if (line == NULL)
        return NULL;
      lines[i] = g_strdup (line);
    }

  return g_steal_pointer (&lines);
}

/**
 * lr_read_lamp_file:
 * @place: where the light stands
 * @object: the light
 * @item: a fresh item of its kind, or of any other
 * @error: return location
 *
 * Returns: %FALSE if a light has a photometric file that cannot be read; the error names the path and what is wrong there
 */
gboolean
lr_read_lamp_file (const LrJsonPlace  *place,
                   JsonObject         *object,
                   LrItem             *item,
                   GError            **error)
{
  static const char *const known[] = { "format", "lines", NULL };
  LrJsonPlace at = { .up = place, .name = LR_LAMP_FILE_KEY }, lines_at = { .up = &at, .name = "lines" }, line_at = { .up = &lines_at };
  JsonNode *node = item->kind == LR_ITEM_LIGHT ? json_object_get_member (object, LR_LAMP_FILE_KEY) : NULL, *lines_node;
  g_autoptr (GError) reason = NULL;
  LrLampFormat format = LR_LAMP_FILE_IES;
  JsonObject *unknown = NULL;
  char **lines;
  gsize line;

  if (node == NULL)
    return TRUE;
  object = lr_json_get_object (&at, node, error);
  if (object == NULL || !read_format (&at, object, &format, error))
    return FALSE;
  lines_node = json_object_get_member (object, "lines");
  if (lines_node == NULL)
    return lr_json_fail (&lines_at, LR_PLAN_ERROR_VALUE, error, _("is missing"));
  lines = read_lines (&lines_at, lines_node, error);
  if (lines == NULL)
    return FALSE;
  if (!lr_json_get_rows (&at, object, NULL, 0, known, &unknown, error))
    {
      g_strfreev (lines);
      return FALSE;
    }

  item->lamp_file = lr_lamp_file_new_from_lines (format, lines, unknown, &line, &reason);
  line_at.index = line > 0 ? (guint) line - 1 : 0;
  return item->lamp_file != NULL
         || lr_json_fail (line > 0 ? &line_at : &lines_at, reason->code, error, _("cannot be read as a photometric file: %s"), reason->message);
}

/**
 * lr_read_item_keys:
 * @kind: a kind
 *
 * Returns: (transfer none) (nullable) (array zero-terminated=1): members of an item that no table has
 */
const char *const *
lr_read_item_keys (LrItemKind kind)
{
  static const char *const path_keys[] = { "path", NULL }, *const light_keys[] = { LR_LAMP_FILE_KEY, NULL };

  return lr_item_kind_info (kind)->place == LR_PLACE_PATH ? path_keys : kind == LR_ITEM_LIGHT ? light_keys : NULL;
}
