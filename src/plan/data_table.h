/* data_table.h - the tables in data that are part of the program
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <json-glib/json-glib.h>

JsonObject *lr_data_table_read (const char *name); /* (transfer full) */
GArray     *lr_data_table_rows (JsonObject *table, const char *key, guint row_size, JsonArrayForeach add); /* (transfer full) */
const char *lr_data_table_text (JsonObject *row, const char *key); /* lives for ever */
