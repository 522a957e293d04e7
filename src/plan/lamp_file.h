/* lamp_file.h - a lamp's photometric file, as a plan keeps it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The text itself is kept, line by line, so that a plan needs no other file; it is parsed once. Reference counted (atomically), immutable
 * and shared by all copies of the light.
 */

#pragma once

#include <json-glib/json-glib.h>

#include "photometry.h"

#define LR_LAMP_FILE_KEY "photometry"           /* of a light, in the file of a plan */
#define LR_LAMP_FILE_MAX_BYTES (1024 * 1024) /* of text; what makers publish is a tenth of that */

typedef enum { LR_LAMP_FILE_IES, LR_LAMP_FILE_LDT, LR_N_LAMP_FORMATS } LrLampFormat;

typedef struct
{
  LrLampFormat format;
  char       **lines;        /* NULL-terminated, without their ends */
  gsize        n_lines;
  LrPhotometry photometry;
  double       flux_lm;
  JsonObject  *unknown;      /* members that this version does not know; may be NULL */
} LrLampFile;

/* The bytes of a file in either format; (transfer full) (nullable). The error: "line 14: the angles do not rise" */
LrLampFile *lr_lamp_file_new_from_data (const char *data, gsize length, GError **error);
/* (transfer full) @lines, @unknown (nullable). @line (out): the one that is wrong, from 1; 0: none of them */
LrLampFile *lr_lamp_file_new_from_lines (LrLampFormat format, char **lines, JsonObject *unknown, gsize *line, GError **error);
LrLampFile *lr_lamp_file_ref   (const LrLampFile *file);
void        lr_lamp_file_unref (LrLampFile *file);
gboolean    lr_lamp_file_equal (const LrLampFile *a, const LrLampFile *b); /* (nullable) both */

const char *lr_lamp_format_word  (LrLampFormat format); /* in the file of a plan */
const char *lr_lamp_format_title (LrLampFormat format); /* "LM-63", "EULUMDAT" */
/* What was read with a doubt, in words, translated; "": nothing; (transfer full) */
char       *lr_lamp_file_dup_doubts (const LrLampFile *file);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrLampFile, lr_lamp_file_unref)
