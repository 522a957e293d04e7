/* json_writer.c - printing JSON to be read by people
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * json-glib's generator prints 0.1 as 0.10000000000000001 and 1e22 as 1e+22.0, which it cannot read.
 */

#include "json_writer.h"

#include <math.h>
#include <string.h>

#define MAX_LINE 100

static void write_node (LrJsonWriter *writer,
                        const char   *key,
                        JsonNode     *node);

static void
append_escape (GString *out,
               char     c)
{
  switch (c)
    {
    case '"':
      g_string_append (out, "\\\"");
      break;
    case '\\':
      g_string_append (out, "\\\\");
      break;
    case '\n':
      g_string_append (out, "\\n");
      break;
    case '\t':
      g_string_append (out, "\\t");
      break;
    default:
      g_string_append_printf (out, "\\u%04x", (guint) (guchar) c);
    }
}

/* RFC 8259, section 7: quotes, backslashes and control characters are escaped, all else stands for itself */
static void
append_text (GString    *out,
             const char *text)
{
  const char *from = text;

  g_string_append_c (out, '"');
  for (const char *p = text;; p++)
    {
      if ((guchar) *p >= 0x20 && *p != '"' && *p != '\\')
        continue;
      g_string_append_len (out, from, p - from);
      if (*p == '\0')
        break;
      append_escape (out, *p);
      from = p + 1;
    }
  g_string_append_c (out, '"');
}

/* Out of an integer: ten times as quick as printf of a double. Exact up to 2^53 steps of the last decimal. */
static void
append_decimal (GString *out,
                double   value,
                int      decimals)
{
  static const double powers[] = { 1.0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9 };
  double steps = round (value * powers[decimals]);
  guint64 digits = (guint64) fabs (steps);
  char buffer[32], *start = buffer + sizeof buffer;

  g_return_if_fail (fabs (steps) < 9e15);

  for (; decimals > 0 && digits % 10 == 0; decimals--)
    digits /= 10;
  for (int i = 0; digits > 0 || i <= decimals; i++)
    {
      if (i == decimals && decimals > 0)
        *--start = '.';
      *--start = (char) ('0' + digits % 10);
      digits /= 10;
    }
  if (steps < 0.0)
    *--start = '-';
  g_string_append_len (out, start, buffer + sizeof buffer - start);
}

/* A double that is not ours: the fewest digits that read back as the same, and a sign that it is no integer */
static void
append_double (GString *out,
               double   value)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE], format[8];

  for (int digits = 1; digits <= 17; digits++)
    {
      g_snprintf (format, sizeof format, "%%.%dg", digits);
      g_ascii_formatd (buffer, sizeof buffer, format, value);
      if (g_ascii_strtod (buffer, NULL) == value)
        break;
    }
  g_string_append (out, buffer);
  if (strpbrk (buffer, ".e") == NULL)
    g_string_append (out, ".0");
}

static void
append_line (GString *out,
             guint    depth)
{
  static const char spaces[] = "                                ";

  g_string_append_c (out, '\n');
  for (guint n = 2 * depth; n > 0; n -= MIN (n, sizeof spaces - 1))
    g_string_append_len (out, spaces, MIN (n, sizeof spaces - 1));
}

/* Comma, line and key of what comes next */
static void
start (LrJsonWriter *writer,
       const char   *key)
{
  if (writer->needs_comma)
    g_string_append_c (writer->text, ',');
  if (writer->depth > 0)
    append_line (writer->text, writer->depth);
  if (key != NULL)
    {
      append_text (writer->text, key);
      g_string_append (writer->text, ": ");
    }
  writer->needs_comma = TRUE;
}

/**
 * lr_json_begin:
 * @writer: a writer
 * @key: (nullable): name of the member; %NULL for the root and for elements of lists
 * @bracket: '{' or '['
 *
 * Begins an object or a list.
 */
void
lr_json_begin (LrJsonWriter *writer,
               const char   *key,
               char          bracket)
{
  start (writer, key);
  g_string_append_c (writer->text, bracket);
  writer->depth++;
  writer->needs_comma = FALSE;
}

/**
 * lr_json_end:
 * @writer: a writer
 * @bracket: '}' or ']'
 *
 * Ends what was begun last; the end of the root is followed by a newline.
 */
void
lr_json_end (LrJsonWriter *writer,
             char          bracket)
{
  gboolean is_empty = !writer->needs_comma;

  writer->depth--;
  if (!is_empty)
    append_line (writer->text, writer->depth);
  g_string_append_c (writer->text, bracket);
  if (writer->depth == 0)
    g_string_append_c (writer->text, '\n');
  writer->needs_comma = TRUE;
}

/**
 * lr_json_write_text:
 * @writer: a writer
 * @key: (nullable): name of the member
 * @text: valid UTF-8
 */
void
lr_json_write_text (LrJsonWriter *writer,
                    const char   *key,
                    const char   *text)
{
  start (writer, key);
  append_text (writer->text, text);
}

/**
 * lr_json_write_number:
 * @writer: a writer
 * @key: (nullable): name of the member
 * @value: finite
 * @decimals: the most to write; trailing zeros are left out
 */
void
lr_json_write_number (LrJsonWriter *writer,
                      const char   *key,
                      double        value,
                      int           decimals)
{
  start (writer, key);
  append_decimal (writer->text, value, decimals);
}

/**
 * lr_json_write_flag:
 * @writer: a writer
 * @key: (nullable): name of the member
 * @flag: true or false
 */
void
lr_json_write_flag (LrJsonWriter *writer,
                    const char   *key,
                    gboolean      flag)
{
  start (writer, key);
  g_string_append (writer->text, flag ? "true" : "false");
}

/* The list @line on the line that @writer is in, if that is not too long */
static gboolean
write_on_one_line (LrJsonWriter  *writer,
                   const char    *key,
                   const GString *line)
{
  gsize before = 2 * writer->depth + (key != NULL ? strlen (key) + 4 : 0);

  if (before + line->len > MAX_LINE)
    return FALSE;
  start (writer, key);
  g_string_append_len (writer->text, line->str, (gssize) line->len);

  return TRUE;
}

static void
append_pair (GString      *out,
             const double *pair,
             int           decimals)
{
  g_string_append_c (out, '[');
  append_decimal (out, pair[0], decimals);
  g_string_append (out, ", ");
  append_decimal (out, pair[1], decimals);
  g_string_append_c (out, ']');
}

/**
 * lr_json_write_pairs:
 * @writer: a writer
 * @key: (nullable): name of the member
 * @pairs: (array): two finite numbers a pair
 * @n_pairs: how many
 * @decimals: the most to write
 *
 * Writes a list of points, on one line if that is short, else one a line.
 */
void
lr_json_write_pairs (LrJsonWriter *writer,
                     const char   *key,
                     const double *pairs,
                     gsize         n_pairs,
                     int           decimals)
{
  g_autoptr (GString) line = g_string_new ("[");

  for (gsize i = 0; i < n_pairs; i++)
    {
      if (i > 0)
        g_string_append (line, ", ");
      append_pair (line, pairs + 2 * i, decimals);
    }
  g_string_append_c (line, ']');
  if (write_on_one_line (writer, key, line))
    return;

  lr_json_begin (writer, key, '[');
  for (gsize i = 0; i < n_pairs; i++)
    {
      start (writer, NULL);
      append_pair (writer->text, pairs + 2 * i, decimals);
    }
  lr_json_end (writer, ']');
}

static void
append_value (GString  *out,
              JsonNode *node)
{
  GType type = JSON_NODE_HOLDS_VALUE (node) ? json_node_get_value_type (node) : G_TYPE_INVALID;

  if (type == G_TYPE_STRING)
    append_text (out, json_node_get_string (node));
  else if (type == G_TYPE_INT64)
    g_string_append_printf (out, "%" G_GINT64_FORMAT, json_node_get_int (node));
  else if (type == G_TYPE_DOUBLE)
    append_double (out, json_node_get_double (node));
  else if (type == G_TYPE_BOOLEAN)
    g_string_append (out, json_node_get_boolean (node) ? "true" : "false");
  else
    g_string_append (out, "null");
}

/* Adds a list of numbers, or of such lists, as one line; FALSE if it holds anything else */
static gboolean
append_numbers (GString   *line,
                JsonArray *array)
{
  g_string_append_c (line, '[');
  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      JsonNode *node = json_array_get_element (array, i);
      GType type = JSON_NODE_HOLDS_VALUE (node) ? json_node_get_value_type (node) : G_TYPE_INVALID;

      if (i > 0)
        g_string_append (line, ", ");
      if (type == G_TYPE_INT64 || type == G_TYPE_DOUBLE)
        append_value (line, node);
      else if (!JSON_NODE_HOLDS_ARRAY (node) || !append_numbers (line, json_node_get_array (node)))
        return FALSE;
    }
  g_string_append_c (line, ']');

  return TRUE;
}

static void
write_array (LrJsonWriter *writer,
             const char   *key,
             JsonArray    *array)
{
  g_autoptr (GString) line = g_string_new (NULL);

  if (append_numbers (line, array) && write_on_one_line (writer, key, line))
    return;

  lr_json_begin (writer, key, '[');
  for (guint i = 0; i < json_array_get_length (array); i++)
    write_node (writer, NULL, json_array_get_element (array, i));
  lr_json_end (writer, ']');
}

static void
write_node (LrJsonWriter *writer,
            const char   *key,
            JsonNode     *node)
{
  if (JSON_NODE_HOLDS_OBJECT (node))
    {
      lr_json_begin (writer, key, '{');
      lr_json_write_members (writer, json_node_get_object (node));
      lr_json_end (writer, '}');
    }
  else if (JSON_NODE_HOLDS_ARRAY (node))
    write_array (writer, key, json_node_get_array (node));
  else
    {
      start (writer, key);
      append_value (writer->text, node);
    }
}

/**
 * lr_json_write_members:
 * @writer: a writer inside an object
 * @object: (nullable): whose members to write, in their order
 */
void
lr_json_write_members (LrJsonWriter *writer,
                       JsonObject   *object)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *node;

  if (object == NULL)
    return;

  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &name, &node))
    write_node (writer, name, node);
}
