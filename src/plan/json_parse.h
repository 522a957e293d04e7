/* json_strict.h - is this text JSON?
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>

/* Whether @text (NUL-terminated, valid UTF-8) is one JSON value as RFC 8259 has it, no deeper than @max_depth, without
 * repeated names and without numbers that a double or a 64-bit integer cannot hold */
gboolean lr_json_check     (const char *text, guint max_depth, GError **error);
/* The line, from 1, on which the value at @path ("setups[0].name") begins in a text that passed the check; 0: not there */
guint    lr_json_find_line (const char *text, const char *path);
