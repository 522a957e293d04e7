/* json_parse.h - from text to a tree of JSON
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <json-glib/json-glib.h>

/* @text (NUL-terminated, valid UTF-8) as one JSON value as RFC 8259 has it, no deeper than @max_depth, without repeated names
 * and without numbers that a double or a 64-bit integer cannot hold; (transfer full) (nullable) */
JsonNode *lr_json_parse     (const char *text, guint max_depth, GError **error);
/* The line, from 1, on which the value at @path ("setups[0].name") begins in a text that was parsed; 0: not there */
guint     lr_json_find_line (const char *text, const char *path);
