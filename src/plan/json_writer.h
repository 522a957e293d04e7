/* json_writer.h - printing JSON to be read by people
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two spaces a level, one member a line; lists of numbers or points stand on one line while that is short. Numbers are
 * written here and nowhere else, in their shortest form.
 */

#pragma once

#include <json-glib/json-glib.h>

typedef struct
{
  GString *text;
  guint    depth;
  gboolean needs_comma;
} LrJsonWriter;

/* @key is NULL for the root and for elements of lists */
void lr_json_begin        (LrJsonWriter *writer, const char *key, char bracket); /* '{' or '[' */
void lr_json_end          (LrJsonWriter *writer, char bracket);                  /* '}' or ']' */
void lr_json_write_text   (LrJsonWriter *writer, const char *key, const char *text);
void lr_json_write_number (LrJsonWriter *writer, const char *key, double value, int decimals);
void lr_json_write_flag   (LrJsonWriter *writer, const char *key, gboolean flag);
/* Pairs of numbers: [[x, y], ...] */
void lr_json_write_pairs  (LrJsonWriter *writer, const char *key, const double *pairs, gsize n_pairs, int decimals);
void lr_json_write_members (LrJsonWriter *writer, JsonObject *object);           /* (nullable): its members */
