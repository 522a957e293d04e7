/* ical.h - lines of a calendar file by RFC 5545
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>

#define LR_ICAL_LINE_OCTETS 75 /* 3.1: at most, without the line break */

/* A content line, folded. @name with its parameters; @value as it stands in the file */
void  lr_ical_add      (GString *file, const char *name, const char *value);
/* The same with a value of the type TEXT, which is escaped; nothing for "" */
void  lr_ical_add_text (GString *file, const char *name, const char *text);
/* (transfer full): 3.3.11 */
char *lr_ical_escape   (const char *text);
/* (transfer full): 3.3.5, form 2: "19980119T070000Z" */
char *lr_ical_utc      (gint64 unix_s);
