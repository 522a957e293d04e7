/* json_scan.h - the texts and numbers of JSON
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>

/* A text in the file, without its quotes */
typedef struct
{
  const char *start;
  gsize       length;
  gboolean    has_escapes;
} LrJsonText;

typedef struct
{
  gboolean is_integer; /* it has neither fraction nor exponent */
  gboolean fits;       /* into 64 bits or, if it is no integer, a double */
  gint64   integer;
  double   number;
} LrJsonNumber;

/* Each moves *p past what it scans. NULL, or what is wrong at *p, for people, translated. */
const char *lr_json_scan_text   (const char **p, LrJsonText *text);
const char *lr_json_scan_number (const char **p, LrJsonNumber *number);
void        lr_json_unescape    (const LrJsonText *text, GString *out); /* adds what the text says */
