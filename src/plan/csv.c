/* csv.c - tables for spreadsheets
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * RFC 4180: rows end in CR LF; a field with a comma, a quote, CR or LF stands in quotes, and a quote in it is doubled. Decimal
 * points and minus signs are those of ASCII in every locale.
 */

#include "csv.h"

#include <math.h>
#include <string.h>

/* A row has begun unless nothing was written, or its end: a quoted field that ends in CR LF ends in a quote */
static gboolean
is_row_begun (const GString *csv)
{
  return csv->len > 0 && csv->str[csv->len - 1] != '\n';
}

static void
begin_field (GString *csv)
{
  if (is_row_begun (csv))
    g_string_append_c (csv, ',');
}

/* Quoted where RFC 4180 wants it */
static void
add_plain (GString    *csv,
           const char *text)
{
  if (strpbrk (text, ",\"\r\n") == NULL)
    {
      g_string_append (csv, text);
      return;
    }

  g_string_append_c (csv, '"');
  for (; *text != '\0'; text++)
    {
      if (*text == '"')
        g_string_append_c (csv, '"');
      g_string_append_c (csv, *text);
    }
  g_string_append_c (csv, '"');
}

/**
 * lr_csv_add:
 * @csv: a table
 * @text: (nullable): of a field; the first of a row must not be empty
 *
 * Adds a field to the last row. One that a spreadsheet would take for a formula gets an apostrophe before it: the text may be a stranger's.
 */
void
lr_csv_add (GString    *csv,
            const char *text)
{
  begin_field (csv);
  if (text == NULL)
    return;
  if (text[0] != '\0' && strchr ("=+-@\t\r", text[0]) != NULL)
    {
      g_autofree char *plain = g_strconcat ("'", text, NULL);

      add_plain (csv, plain);
    }
  else
    add_plain (csv, text);
}

/**
 * lr_csv_add_number:
 * @csv: a table
 * @value: a number
 * @decimals: how many, 0 to 9
 *
 * Adds a field to the last row; an empty one if the number is not finite.
 */
void
lr_csv_add_number (GString *csv,
                   double   value,
                   int      decimals)
{
  char format[8], text[64];

  begin_field (csv);
  if (!isfinite (value))
    return;

  g_snprintf (format, sizeof format, "%%.%df", CLAMP (decimals, 0, 9));
  add_plain (csv, g_ascii_formatd (text, sizeof text, format, value));
}

/**
 * lr_csv_end_row:
 * @csv: a table
 *
 * Ends the last row.
 */
void
lr_csv_end_row (GString *csv)
{
  g_string_append (csv, "\r\n");
}
