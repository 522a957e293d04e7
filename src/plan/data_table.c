/* data_table.c - the tables in data that are part of the program
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * They are compiled in. They are ours: what is missing in them is a mistake of this program.
 */

#include "config.h"

#include "data_table.h"

#include "plan-data.h"

#define DATA_PATH "/io/github/lookroom/Lookroom/data/"

/**
 * lr_data_table_read:
 * @name: of a file in data
 *
 * Returns: (transfer full): what it holds
 */
JsonObject *
lr_data_table_read (const char *name)
{
  g_autofree char *path = g_strconcat (DATA_PATH, name, NULL);
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GError) error = NULL;
  gsize length;
  const char *text;

  bytes = g_resource_lookup_data (lr_plan_data_get_resource (), path, G_RESOURCE_LOOKUP_FLAGS_NONE, &error);
  if (bytes == NULL)
    g_error ("%s: %s", name, error->message);
  text = g_bytes_get_data (bytes, &length);
  if (!json_parser_load_from_data (parser, text, (gssize) length, &error))
    g_error ("%s: %s", name, error->message);

  return json_object_ref (json_node_get_object (json_parser_get_root (parser)));
}

/**
 * lr_data_table_rows:
 * @table: a table
 * @key: of one of its lists
 * @row_size: of an element of the array
 * @add: appends the row of an object to the array, which is its data
 *
 * Returns: (transfer full): the rows
 */
GArray *
lr_data_table_rows (JsonObject       *table,
                    const char       *key,
                    guint             row_size,
                    JsonArrayForeach  add)
{
  GArray *rows = g_array_new (FALSE, FALSE, row_size);

  json_array_foreach_element (json_object_get_array_member (table, key), add, rows);
  return rows;
}

/**
 * lr_data_table_text:
 * @row: an object of a table
 * @key: of a text in it
 *
 * Returns: (transfer none): the text, which lives for ever
 */
const char *
lr_data_table_text (JsonObject *row,
                    const char *key)
{
  return g_intern_string (json_object_get_string_member (row, key));
}
