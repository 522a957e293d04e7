/* plan_read_picture.c - the picture under a room from its JSON
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_reader_private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static gboolean
read_type (const LrJsonPlace  *place,
           JsonObject         *object,
           LrPictureType      *type,
           GError            **error)
{
  LrJsonPlace at = { .up = place, .name = "media-type" };
  const char *word = lr_read_word (&at, object, error);
  g_autoptr (GString) all = g_string_new (NULL);

  if (word == NULL)
    return FALSE;
  for (int i = 0; i < LR_N_PICTURE_TYPES; i++)
    {
      if (strcmp (lr_picture_type_word (i), word) == 0)
        {
          *type = i;
          return TRUE;
        }
      g_string_append_printf (all, "%s%s", i > 0 ? ", " : "", lr_picture_type_word (i));
    }

  return lr_json_fail (&at, LR_PLAN_ERROR_VALUE, error, _("is “%s”, not one of %s"), word, all->str);
}

/* (transfer full) (nullable) */
static GBytes *
read_lines (const LrJsonPlace  *place,
            JsonNode           *node,
            GError            **error)
{
  JsonArray *array = lr_json_get_array (place, node, error);
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  guint n = array != NULL ? json_array_get_length (array) : 0;

  for (guint i = 0; i < n; i++)
    {
      LrJsonPlace at = { .up = place, .index = i };
      const char *line = lr_json_get_text (&at, json_array_get_element (array, i), error);
      g_autofree guchar *decoded = NULL;
      gsize length;

      if (line == NULL)
        return NULL;
      if (!lr_base64_line_is_good (line, i + 1 == n))
        {
          lr_json_fail (&at, LR_PLAN_ERROR_VALUE, error, _("is no base64"));
          return NULL;
        }
      decoded = g_base64_decode (line, &length);
      g_byte_array_append (bytes, decoded, (guint) length);
      if (bytes->len > LR_PICTURE_MAX_BYTES)
        break; /* told with the whole */
    }

  return array != NULL ? g_byte_array_free_to_bytes (g_steal_pointer (&bytes)) : NULL;
}

/* The picture of a set-up that stands before this one in the file */
static gboolean
read_shared (const LrJsonPlace  *at,
             const char         *setup_id,
             GPtrArray          *before,
             LrRoom             *room,
             GError            **error)
{
  for (guint i = 0; i < before->len; i++)
    {
      const LrSetup *setup = before->pdata[i];

      if (strcmp (setup->id, setup_id) != 0)
        continue;
      if (setup->room->underlay == NULL)
        return lr_json_fail (at, LR_PLAN_ERROR_REFERENCE, error, _("names “%s”, which has no picture"), setup_id);
      room->underlay = lr_picture_file_ref (setup->room->underlay);
      return TRUE;
    }

  return lr_json_fail (at, LR_PLAN_ERROR_REFERENCE, error, _("names “%s”, which is no set-up before this one"), setup_id);
}

/**
 * lr_read_picture:
 * @place: where the room stands
 * @object: the room
 * @before: (element-type LrSetup): the set-ups before this one
 * @room: a fresh room
 * @error: return location
 *
 * Returns: %FALSE if the room has a picture that cannot be read; the error names the path and what is wrong there
 */
gboolean
lr_read_picture (const LrJsonPlace  *place,
                 JsonObject         *object,
                 GPtrArray          *before,
                 LrRoom             *room,
                 GError            **error)
{
  static const char *const known[] = { "media-type", "lines", NULL };
  LrJsonPlace at = { .up = place, .name = LR_PICTURE_KEY }, lines_at = { .up = &at, .name = "lines" };
  JsonNode *node = json_object_get_member (object, LR_PICTURE_KEY), *lines_node;
  LrPictureType type = LR_PICTURE_PNG;
  g_autoptr (GError) reason = NULL;
  JsonObject *unknown = NULL;
  GBytes *bytes;

  if (node == NULL)
    return TRUE;
  if (JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_STRING)
    return read_shared (&at, json_node_get_string (node), before, room, error);

  object = lr_json_get_object (&at, node, error);
  if (object == NULL || !read_type (&at, object, &type, error))
    return FALSE;
  lines_node = json_object_get_member (object, "lines");
  if (lines_node == NULL)
    return lr_json_fail (&lines_at, LR_PLAN_ERROR_VALUE, error, _("is missing"));
  bytes = read_lines (&lines_at, lines_node, error);
  if (bytes == NULL)
    return FALSE;
  if (!lr_json_get_rows (&at, object, NULL, 0, known, &unknown, error))
    {
      g_bytes_unref (bytes);
      return FALSE;
    }

  room->underlay = lr_picture_file_new (type, bytes, unknown, &reason);
  return room->underlay != NULL || lr_json_fail (&lines_at, reason->code, error, _("cannot be read as a picture: %s"), reason->message);
}
