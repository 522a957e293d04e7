/* json_scan.c - the texts and numbers of JSON
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Source: RFC 8259, The JavaScript Object Notation (JSON) Data Interchange Format, sections 6 and 7.
 */

#include "config.h"

#include "json_scan.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* Four hexadecimal digits, or -1 */
static int
hex_value (const char *digits)
{
  int value = 0;

  for (int i = 0; i < 4; i++)
    {
      if (!g_ascii_isxdigit (digits[i]))
        return -1;
      value = value * 16 + g_ascii_xdigit_value (digits[i]);
    }

  return value;
}

/* The character that "\uXXXX", or a pair of them, stands for, and how long that is; -1 for half a pair */
static int
unicode_value (const char *escape,
               gsize      *length)
{
  int first = hex_value (escape + 2), second;

  *length = 6;
  if (first < 0xd800 || first > 0xdfff)
    return first;
  if (first > 0xdbff || escape[6] != '\\' || escape[7] != 'u')
    return -1;
  second = hex_value (escape + 8);
  if (second < 0xdc00 || second > 0xdfff)
    return -1;
  *length = 12;

  return 0x10000 + (first - 0xd800) * 0x400 + (second - 0xdc00);
}

static const char *
scan_escape (const char **p)
{
  char c = (*p)[1];
  gsize length = 2;

  if (c == 'u')
    {
      int value = unicode_value (*p, &length);

      if (value < 0)
        return _("“\\u” is not followed by a character’s four digits");
      if (value == 0)
        return _("a text holds the character 0");
    }
  else if (c == '\0' || strchr ("\"\\/bfnrt", c) == NULL)
    return _("a backslash is followed by a character that cannot be escaped");
  *p += length;

  return NULL;
}

/**
 * lr_json_scan_text:
 * @p: (inout): at the opening quote of a text
 * @text: (out caller-allocates): where the text is
 *
 * The character 0, which would end a C string, counts as wrong.
 *
 * Returns: (nullable): what is wrong at @p, or %NULL, with @p behind the closing quote
 */
const char *
lr_json_scan_text (const char **p,
                   LrJsonText  *text)
{
  text->start = ++*p;
  text->has_escapes = FALSE;
  while (**p != '"')
    {
      const char *fault = NULL;

      if ((guchar) **p < 0x20)
        return _("a text holds a control character or is not closed");
      if (**p != '\\')
        {
          ++*p;
          continue;
        }
      fault = scan_escape (p);
      if (fault != NULL)
        return fault;
      text->has_escapes = TRUE;
    }
  text->length = (gsize) ((*p)++ - text->start);

  return NULL;
}

/**
 * lr_json_unescape:
 * @text: a text that was scanned
 * @out: gets what the text says
 */
void
lr_json_unescape (const LrJsonText *text,
                  GString          *out)
{
  static const char letters[] = "bfnrt", meanings[] = "\b\f\n\r\t";
  const char *end = text->start + text->length;

  if (!text->has_escapes)
    {
      g_string_append_len (out, text->start, (gssize) text->length);
      return;
    }

  for (const char *p = text->start; p < end;)
    {
      gsize length = 2;

      if (*p != '\\')
        {
          g_string_append_c (out, *p++);
          continue;
        }
      if (p[1] == 'u')
        g_string_append_unichar (out, (gunichar) unicode_value (p, &length));
      else
        {
          const char *letter = strchr (letters, p[1]);

          g_string_append_c (out, letter != NULL ? meanings[letter - letters] : p[1]);
        }
      p += length;
    }
}

static gboolean
skip_digits (const char **p)
{
  if (!g_ascii_isdigit (**p))
    return FALSE;
  while (g_ascii_isdigit (**p))
    ++*p;

  return TRUE;
}

/* Past a number by the grammar */
static const char *
skip_number (const char **p,
             gboolean    *is_integer)
{
  *is_integer = TRUE;
  if (**p == '-')
    ++*p;
  if (**p == '0')
    ++*p;
  else if (!skip_digits (p))
    return _("a value is expected");
  if (**p == '.')
    {
      *is_integer = FALSE;
      ++*p;
      if (!skip_digits (p))
        return _("a digit is expected");
    }
  if (**p == 'e' || **p == 'E')
    {
      *is_integer = FALSE;
      ++*p;
      if (**p == '+' || **p == '-')
        ++*p;
      if (!skip_digits (p))
        return _("a digit is expected");
    }

  return NULL;
}

static gboolean
get_integer (const char *start,
             const char *end,
             gint64     *integer)
{
  g_autofree char *digits = NULL;
  gint64 sum = 0;

  /* Up to 18 characters fit 64 bits */
  if (end - start > 18)
    {
      digits = g_strndup (start, (gsize) (end - start));
      return g_ascii_string_to_signed (digits, 10, G_MININT64, G_MAXINT64, integer, NULL);
    }

  for (const char *p = *start == '-' ? start + 1 : start; p < end; p++)
    sum = sum * 10 + (*p - '0');
  *integer = *start == '-' ? -sum : sum;

  return TRUE;
}

/**
 * lr_json_scan_number:
 * @p: (inout): where a number should begin
 * @number: (out caller-allocates): the number
 *
 * Returns: (nullable): what is wrong at @p, or %NULL, with @p behind the number, which still may not fit
 */
const char *
lr_json_scan_number (const char   **p,
                     LrJsonNumber  *number)
{
  const char *start = *p;
  const char *fault = skip_number (p, &number->is_integer);

  if (fault != NULL)
    return fault;

  if (number->is_integer)
    number->fits = get_integer (start, *p, &number->integer);
  else
    {
      number->number = g_ascii_strtod (start, NULL);
      number->fits = isfinite (number->number);
    }

  return NULL;
}
