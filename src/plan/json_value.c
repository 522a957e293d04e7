/* json_value.c - taking values out of JSON, and saying where they were wrong
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "json_value.h"

#include "json_parse.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

static void
append_path (GString           *path,
             const LrJsonPlace *place)
{
  if (place->up == NULL)
    return;
  append_path (path, place->up);
  if (place->name == NULL)
    g_string_append_printf (path, "[%u]", place->index);
  else
    g_string_append_printf (path, "%s%s", path->len > 0 ? "." : "", place->name);
}

static char *
dup_path (const LrJsonPlace *place)
{
  GString *path = g_string_new (NULL);

  append_path (path, place);

  return g_string_free (path, FALSE);
}

/* Of the value or, if it is missing, of what it is missing in */
static guint
find_line (const LrJsonPlace *place)
{
  const LrJsonPlace *root = place;
  guint line = 0;

  while (root->up != NULL)
    root = root->up;
  for (; place != NULL && line == 0 && root->text != NULL; place = place->up)
    {
      g_autofree char *path = dup_path (place);

      line = lr_json_find_line (root->text, path);
    }

  return line;
}

/**
 * lr_json_fail:
 * @place: where
 * @code: an #LrPlanError
 * @error: return location
 * @format: what is wrong, going on from the path: "is 7, outside 1 to 5"
 * @...: its arguments
 *
 * Returns: %FALSE, with an error that names path and line
 */
gboolean
lr_json_fail (const LrJsonPlace  *place,
              int                 code,
              GError            **error,
              const char         *format,
              ...)
{
  g_autofree char *path = dup_path (place);
  guint line = find_line (place);
  g_autofree char *what = NULL;
  va_list args;

  va_start (args, format);
  what = g_strdup_vprintf (format, args);
  va_end (args);

  if (line > 0)
    /* Translators: path in the file, what is wrong there, line */
    g_set_error (error, LR_PLAN_ERROR, code, _("%s %s (line %u)"), *path != '\0' ? path : _("the file"), what, line);
  else
    g_set_error (error, LR_PLAN_ERROR, code, "%s %s", *path != '\0' ? path : _("the file"), what);

  return FALSE;
}

static const char *
type_for_people (JsonNode *node)
{
  GType type = JSON_NODE_HOLDS_VALUE (node) ? json_node_get_value_type (node) : G_TYPE_INVALID;

  if (JSON_NODE_HOLDS_OBJECT (node))
    return _("an object");
  if (JSON_NODE_HOLDS_ARRAY (node))
    return _("a list");
  if (type == G_TYPE_STRING)
    return _("a text");
  if (type == G_TYPE_BOOLEAN)
    return _("true or false");

  return type == G_TYPE_INVALID ? _("null") : _("a number");
}

static gboolean
wrong_type (const LrJsonPlace  *place,
            JsonNode           *node,
            const char         *wanted,
            GError            **error)
{
  return lr_json_fail (place, LR_PLAN_ERROR_VALUE, error, _("is %s, not %s"), type_for_people (node), wanted);
}

static gboolean
is_value (JsonNode *node,
          GType     type)
{
  return JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == type;
}

static gboolean
is_number (JsonNode *node)
{
  return is_value (node, G_TYPE_INT64) || is_value (node, G_TYPE_DOUBLE);
}

/**
 * lr_json_get_object:
 * @place: where
 * @node: a value
 * @error: return location
 *
 * Returns: (transfer none) (nullable): the object that @node holds
 */
JsonObject *
lr_json_get_object (const LrJsonPlace  *place,
                    JsonNode           *node,
                    GError            **error)
{
  if (JSON_NODE_HOLDS_OBJECT (node))
    return json_node_get_object (node);
  wrong_type (place, node, _("an object"), error);

  return NULL;
}

/**
 * lr_json_get_array:
 * @place: where
 * @node: a value
 * @error: return location
 *
 * Returns: (transfer none) (nullable): the list that @node holds
 */
JsonArray *
lr_json_get_array (const LrJsonPlace  *place,
                   JsonNode           *node,
                   GError            **error)
{
  if (JSON_NODE_HOLDS_ARRAY (node))
    return json_node_get_array (node);
  wrong_type (place, node, _("a list"), error);

  return NULL;
}

/**
 * lr_json_get_text:
 * @place: where
 * @node: a value
 * @error: return location
 *
 * Returns: (transfer none) (nullable): the text that @node holds
 */
const char *
lr_json_get_text (const LrJsonPlace  *place,
                  JsonNode           *node,
                  GError            **error)
{
  if (is_value (node, G_TYPE_STRING))
    return json_node_get_string (node);
  wrong_type (place, node, _("a text"), error);

  return NULL;
}

static char *
dup_number (double value)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];

  return g_strdup (g_ascii_formatd (buffer, sizeof buffer, "%.10g", value));
}

static gboolean
get_number (const LrJsonPlace  *place,
            JsonNode           *node,
            const LrProp       *prop,
            double             *value,
            GError            **error)
{
  g_autofree char *number = NULL, *min = NULL, *max = NULL;
  double file_value;

  if (!is_number (node))
    return wrong_type (place, node, _("a number"), error);

  file_value = json_node_get_double (node);
  *value = lr_prop_from_file (prop, file_value);
  if (lr_prop_accepts (prop, *value) && (prop->type != LR_PROP_COUNT || file_value == round (file_value)))
    return TRUE;

  number = dup_number (file_value);
  min = dup_number (lr_prop_to_file (prop, prop->min));
  max = dup_number (lr_prop_to_file (prop, prop->max));
  if (prop->type == LR_PROP_COUNT)
    return lr_json_fail (place, LR_PLAN_ERROR_VALUE, error, _("is %s, not a whole number from %s to %s"), number, min, max);

  return lr_json_fail (place, LR_PLAN_ERROR_VALUE, error, _("is %s, outside %s to %s"), number, min, max);
}

static gboolean
get_choice (const LrJsonPlace  *place,
            JsonNode           *node,
            const LrProp       *prop,
            double             *value,
            GError            **error)
{
  const char *word = lr_json_get_text (place, node, error);
  g_autoptr (GString) words = NULL;

  if (word == NULL)
    return FALSE;
  *value = lr_prop_find_choice (prop, word);
  if (*value >= 0.0)
    return TRUE;

  words = g_string_new (NULL);
  for (const LrChoice *choice = prop->choices; choice->word != NULL; choice++)
    g_string_append_printf (words, "%s%s", words->len > 0 ? ", " : "", choice->word);

  return lr_json_fail (place, LR_PLAN_ERROR_VALUE, error, _("is “%s”, not one of %s"), word, words->str);
}

/**
 * lr_json_get_prop:
 * @place: where
 * @node: a value
 * @prop: a row
 * @owner: a fresh struct
 * @error: return location
 *
 * Writes the value into the field of @owner that @prop describes.
 *
 * Returns: %FALSE, with nothing written, if the value is of another type or out of range
 */
gboolean
lr_json_get_prop (const LrJsonPlace  *place,
                  JsonNode           *node,
                  const LrProp       *prop,
                  gpointer            owner,
                  GError            **error)
{
  double value = 0.0;
  const char *text;

  switch (prop->type)
    {
    case LR_PROP_TEXT:
    case LR_PROP_REF:
      text = lr_json_get_text (place, node, error);
      if (text == NULL)
        return FALSE;
      lr_prop_put_text (prop, owner, text);
      return TRUE;
    case LR_PROP_FLAG:
      if (!is_value (node, G_TYPE_BOOLEAN))
        return wrong_type (place, node, _("true or false"), error);
      value = json_node_get_boolean (node);
      break;
    case LR_PROP_CHOICE:
      if (!get_choice (place, node, prop, &value, error))
        return FALSE;
      break;
    case LR_PROP_LENGTH:
    case LR_PROP_FINE_LENGTH:
    case LR_PROP_ANGLE:
    case LR_PROP_SHARE:
    case LR_PROP_NUMBER:
    case LR_PROP_COUNT:
    default:
      if (!get_number (place, node, prop, &value, error))
        return FALSE;
    }
  lr_prop_put_number (prop, owner, value);

  return TRUE;
}

static gboolean
get_point (const LrJsonPlace  *place,
           JsonNode           *node,
           LrVec2             *point_m,
           GError            **error)
{
  const LrPropTable *table = lr_item_common_table (LR_PLACE_FLOOR);
  JsonArray *pair = lr_json_get_array (place, node, error);
  double xy[2];

  if (pair == NULL)
    return FALSE;
  if (json_array_get_length (pair) != 2)
    return lr_json_fail (place, LR_PLAN_ERROR_VALUE, error, _("is not a pair of numbers [x, y]"));

  for (guint i = 0; i < 2; i++)
    {
      LrJsonPlace at = { .up = place, .index = i };

      if (!get_number (&at, json_array_get_element (pair, i), lr_prop_table_find (table, i == 0 ? "x-mm" : "y-mm"), &xy[i],
                       error))
        return FALSE;
    }
  *point_m = lr_vec2 (xy[0], xy[1]);

  return TRUE;
}

/**
 * lr_json_get_points:
 * @place: where
 * @node: a value: a list of pairs of millimetres
 * @max_points: the most points
 * @points_m: (out) (transfer full) (array length=n_points): the points [m]
 * @n_points: (out): how many
 * @error: return location
 *
 * Returns: %FALSE, with nothing written, if the value is not such a list
 */
gboolean
lr_json_get_points (const LrJsonPlace  *place,
                    JsonNode           *node,
                    gsize               max_points,
                    LrVec2            **points_m,
                    gsize              *n_points,
                    GError            **error)
{
  JsonArray *array = lr_json_get_array (place, node, error);
  guint n = array != NULL ? json_array_get_length (array) : 0;
  g_autofree LrVec2 *points = NULL;

  if (array == NULL)
    return FALSE;
  if (n > max_points)
    return lr_json_fail (place, LR_PLAN_ERROR_TOO_LARGE, error, _("has %u points; there may be at most %u"), n,
                         (guint) max_points);

  points = g_new (LrVec2, n);
  for (guint i = 0; i < n; i++)
    {
      LrJsonPlace at = { .up = place, .index = i };

      if (!get_point (&at, json_array_get_element (array, i), &points[i], error))
        return FALSE;
    }
  *points_m = g_steal_pointer (&points);
  *n_points = n;

  return TRUE;
}

static void
keep_unknown (JsonObject **unknown,
              const char  *name,
              JsonNode    *node)
{
  if (*unknown == NULL)
    *unknown = json_object_new ();
  json_object_set_member (*unknown, name, json_node_copy (node));
}

static gboolean
get_member (const LrJsonPlace  *place,
            JsonNode           *node,
            const LrJsonRows   *rows,
            gsize               n_rows,
            gboolean           *is_known,
            GError            **error)
{
  for (gsize i = 0; i < n_rows; i++)
    {
      const LrProp *prop = lr_prop_table_find (rows[i].table, place->name);

      if (prop == NULL)
        continue;
      *is_known = TRUE;
      return lr_json_get_prop (place, node, prop, rows[i].owner, error);
    }
  *is_known = FALSE;

  return TRUE;
}

/**
 * lr_json_get_rows:
 * @place: where
 * @object: an object
 * @rows: (array length=n_rows): tables, each with a fresh struct whose members have their fallbacks
 * @n_rows: how many
 * @known: (nullable) (array zero-terminated=1): names that the caller sees to
 * @unknown: (inout) (nullable): gets the members that have no row and are not in @known
 * @error: return location
 *
 * Writes every member that has a row.
 *
 * Returns: %FALSE if a value is of another type or out of range
 */
gboolean
lr_json_get_rows (const LrJsonPlace   *place,
                  JsonObject          *object,
                  const LrJsonRows    *rows,
                  gsize                n_rows,
                  const char *const   *known,
                  JsonObject         **unknown,
                  GError             **error)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *node;

  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &name, &node))
    {
      LrJsonPlace at = { .up = place, .name = name };
      gboolean is_known;

      if (!get_member (&at, node, rows, n_rows, &is_known, error))
        return FALSE;
      if (!is_known && (known == NULL || !g_strv_contains (known, name)))
        keep_unknown (unknown, name, node);
    }

  return TRUE;
}
