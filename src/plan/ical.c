/* ical.c - lines of a calendar file
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Source: RFC 5545, Internet Calendaring and Scheduling Core Object Specification, 3.1 (content lines), 3.3.5 (dates with
 * times), 3.3.11 (text).
 */

#include "config.h"

#include "ical.h"

#include <string.h>

/* Whether the octet goes on a character that began before it */
static gboolean
is_inside (char octet)
{
  return ((guchar) octet & 0xc0) == 0x80;
}

/**
 * lr_ical_add:
 * @file: gets the line
 * @name: of the property, with its parameters
 * @value: as it stands in the file, UTF-8
 *
 * Adds a content line. One that is longer than 75 octets is folded: a line break and a space, which count as nothing. No character is
 * cut in two.
 */
void
lr_ical_add (GString    *file,
             const char *name,
             const char *value)
{
  g_autofree char *line = g_strconcat (name, ":", value, NULL);
  gsize length = strlen (line), at = 0, room = LR_ICAL_LINE_OCTETS;

  while (length - at > room)
    {
      gsize n = room;

      while (n > 1 && is_inside (line[at + n]))
        n--;
      g_string_append_len (file, line + at, (gssize) n);
      g_string_append (file, "\r\n ");
      at += n;
      room = LR_ICAL_LINE_OCTETS - 1; /* the space is one */
    }
  g_string_append (file, line + at);
  g_string_append (file, "\r\n");
}

/**
 * lr_ical_escape:
 * @text: UTF-8
 *
 * Returns: (transfer full): the same as a value of the type TEXT: backslash, semicolon, comma and line break are escaped; other control
 *   characters but the tab have no place in it and are left out
 */
char *
lr_ical_escape (const char *text)
{
  GString *escaped = g_string_new (NULL);

  for (const char *c = text; *c != '\0'; c++)
    if (*c == '\\' || *c == ';' || *c == ',')
      g_string_append_printf (escaped, "\\%c", *c);
    else if (*c == '\n' || (*c == '\r' && c[1] != '\n'))
      g_string_append (escaped, "\\n");
    else if (*c == '\t' || !g_ascii_iscntrl (*c))
      g_string_append_c (escaped, *c);

  return g_string_free (escaped, FALSE);
}

/**
 * lr_ical_add_text:
 * @file: gets the line
 * @name: of the property, with its parameters
 * @text: its value; nothing is added for ""
 */
void
lr_ical_add_text (GString    *file,
                  const char *name,
                  const char *text)
{
  g_autofree char *escaped = lr_ical_escape (text);

  if (escaped[0] != '\0')
    lr_ical_add (file, name, escaped);
}

/**
 * lr_ical_utc:
 * @unix_s: seconds since 1970
 *
 * Returns: (transfer full): "19980119T070000Z"
 */
char *
lr_ical_utc (gint64 unix_s)
{
  g_autoptr (GDateTime) time = g_date_time_new_from_unix_utc (unix_s);

  return time != NULL ? g_date_time_format (time, "%Y%m%dT%H%M%SZ") : g_strdup ("19700101T000000Z");
}
