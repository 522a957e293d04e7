/* lamp_file.c - a lamp's photometric file, as a plan keeps it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "lamp_file.h"

#include "plan.h"
#include "plan_json.h"

#include <glib/gi18n-lib.h>
#include <string.h>

typedef bool (*Reader) (const char *text, size_t length, LrPhotometry *photometry, LrPhotometryError *error);

static const struct
{
  const char *word, *title;
  Reader      read;
} formats[LR_N_LAMP_FORMATS] = {
  [LR_LAMP_FILE_IES] = { "ies", "LM-63", lr_photometry_read_ies },
  [LR_LAMP_FILE_LDT] = { "ldt", "EULUMDAT", lr_photometry_read_ldt },
};

static const char *const reasons[] = {
  [LR_PHOTOMETRY_NO_TILT] = N_("no line begins with TILT=, so it is no photometric file"),
  [LR_PHOTOMETRY_ENDS] = N_("the file ends before its last number"),
  [LR_PHOTOMETRY_NOT_A_NUMBER] = N_("there is no number where one must be"),
  [LR_PHOTOMETRY_COUNT] = N_("so many angles or lamps cannot be"),
  [LR_PHOTOMETRY_TYPE] = N_("its angles are of type A or B; only type C can be used"),
  [LR_PHOTOMETRY_UNITS] = N_("its units are neither feet nor metres"),
  [LR_PHOTOMETRY_ANGLES] = N_("the angles do not rise"),
  [LR_PHOTOMETRY_PLANES] = N_("the horizontal angles neither go all round nor fit a symmetry"),
  [LR_PHOTOMETRY_LEFT_OVER] = N_("more numbers follow than the file says: a wrong count, or decimal commas"),
  [LR_PHOTOMETRY_VALUE] = N_("a value is negative or too large"),
  [LR_PHOTOMETRY_MEMORY] = N_("there is not enough memory for it"),
};

static const struct { unsigned warning; const char *sentence; } doubts[] = {
  { LR_PHOTOMETRY_TILT_IGNORED, N_("How its output changes when it is tilted is left out.") },
  { LR_PHOTOMETRY_TEXT_AFTER, N_("Text behind its numbers is left out.") },
  { LR_PHOTOMETRY_SETS_IGNORED, N_("Of its sets of lamps the first counts.") },
  { LR_PHOTOMETRY_IS_DARK, N_("It gives no light at all.") },
};

/**
 * lr_lamp_format_word:
 * @format: a format
 *
 * Returns: (transfer none): what the file of a plan calls it
 */
const char *
lr_lamp_format_word (LrLampFormat format)
{
  return formats[format].word;
}

/**
 * lr_lamp_format_title:
 * @format: a format
 *
 * Returns: (transfer none): the name of its standard
 */
const char *
lr_lamp_format_title (LrLampFormat format)
{
  return formats[format].title;
}

static void
clear (gpointer data)
{
  LrLampFile *file = data;

  g_strfreev (file->lines);
  lr_photometry_clear (&file->photometry);
  g_clear_pointer (&file->unknown, json_object_unref);
}

/**
 * lr_lamp_file_ref:
 * @file: a file
 *
 * Returns: (transfer full): @file
 */
LrLampFile *
lr_lamp_file_ref (const LrLampFile *file)
{
  return g_atomic_rc_box_acquire ((gpointer) file);
}

/**
 * lr_lamp_file_unref:
 * @file: (transfer full): a file
 */
void
lr_lamp_file_unref (LrLampFile *file)
{
  g_atomic_rc_box_release_full (file, clear);
}

static gboolean
too_large (GError **error)
{
  g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_TOO_LARGE, _("the photometric file is larger than %d kB"), LR_LAMP_FILE_MAX_BYTES / 1024);
  return FALSE;
}

static gboolean
parse (LrLampFile  *file,
       gsize       *line,
       GError     **error)
{
  g_autofree char *text = g_strjoinv ("\n", file->lines);
  LrPhotometryError wrong = { 0 };

  if (strlen (text) > LR_LAMP_FILE_MAX_BYTES)
    return too_large (error);
  if (!formats[file->format].read (text, strlen (text), &file->photometry, &wrong))
    {
      /* at the end of a file the line behind its last one */
      *line = MIN (wrong.line, file->n_lines);
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE, _("line %u: %s"), (guint) MAX (*line, 1), _(reasons[wrong.reason]));
      return FALSE;
    }

  file->flux_lm = lr_photometry_flux_lm (&file->photometry);
  return TRUE;
}

/**
 * lr_lamp_file_new_from_lines:
 * @format: what it is
 * @lines: (transfer full) (array zero-terminated=1): valid UTF-8
 * @unknown: (transfer full) (nullable): members beside them
 * @line: (out): the line that is wrong, from 1; 0 when it is none of them
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the file; the error names line and reason
 */
LrLampFile *
lr_lamp_file_new_from_lines (LrLampFormat   format,
                             char         **lines,
                             JsonObject    *unknown,
                             gsize         *line,
                             GError       **error)
{
  LrLampFile *file = g_atomic_rc_box_new0 (LrLampFile);

  *line = 0;
  file->format = format;
  file->lines = lines;
  file->n_lines = g_strv_length (lines);
  file->unknown = unknown;
  for (gsize i = 0; i < file->n_lines; i++)
    if (strpbrk (lines[i], "\r\n") != NULL)
      {
        *line = i + 1;
        g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE, _("line %u: it holds the end of a line"), (guint) *line);
        lr_lamp_file_unref (file);
        return NULL;
      }
  if (!parse (file, line, error))
    g_clear_pointer (&file, lr_lamp_file_unref);

  return file;
}

/* UTF-8 without a byte order mark; older files hold Latin-1. What ends a C string is a space to the readers too */
static char *
dup_text (const char *data,
          gsize       length)
{
  static const char byte_order_mark[] = "\xef\xbb\xbf";
  g_autofree char *bytes = g_strndup (data, length);
  char *text;

  for (gsize i = 0; i < length; i++)
    bytes[i] = data[i] == '\0' ? ' ' : data[i];
  text = g_utf8_validate_len (bytes, length, NULL) ? g_steal_pointer (&bytes)
                                                   : g_convert (bytes, (gssize) length, "UTF-8", "ISO-8859-1", NULL, NULL, NULL);
  if (text != NULL && g_str_has_prefix (text, byte_order_mark))
    memmove (text, text + strlen (byte_order_mark), strlen (text) - strlen (byte_order_mark) + 1);

  return text;
}

/* At "\n", "\r\n" and "\r", as the readers count lines */
static char **
split_lines (const char *text)
{
  GPtrArray *lines = g_ptr_array_new ();

  while (*text != '\0')
    {
      gsize length = strcspn (text, "\r\n");

      g_ptr_array_add (lines, g_strndup (text, length));
      text += length;
      if (text[0] == '\r' && text[1] == '\n')
        text++;
      if (*text != '\0')
        text++;
    }
  g_ptr_array_add (lines, NULL);

  return (char **) g_ptr_array_free (lines, FALSE);
}

/* Only LM-63 has such a line */
static LrLampFormat
guess_format (char **lines)
{
  for (gsize i = 0; lines[i] != NULL; i++)
    if (g_str_has_prefix (lines[i] + strspn (lines[i], " \t"), "TILT"))
      return LR_LAMP_FILE_IES;

  return lines[0] == NULL ? LR_LAMP_FILE_IES : LR_LAMP_FILE_LDT;
}

/**
 * lr_lamp_file_new_from_data:
 * @data: (array length=length): the bytes of a file
 * @length: how many
 * @error: return location
 *
 * Its format is told from what it holds, not from its name.
 *
 * Returns: (transfer full) (nullable): the file; the error names line and reason
 */
LrLampFile *
lr_lamp_file_new_from_data (const char  *data,
                            gsize        length,
                            GError     **error)
{
  g_autofree char *text = NULL;
  char **lines;
  gsize line;

  if (length > LR_LAMP_FILE_MAX_BYTES)
    {
      too_large (error);
      return NULL;
    }

  text = dup_text (data, length);
  lines = split_lines (text != NULL ? text : "");
  return lr_lamp_file_new_from_lines (guess_format (lines), lines, NULL, &line, error);
}

/**
 * lr_lamp_file_equal:
 * @a: (nullable): a file
 * @b: (nullable): another
 *
 * Returns: whether both hold the same text
 */
gboolean
lr_lamp_file_equal (const LrLampFile *a,
                    const LrLampFile *b)
{
  if (a == b)
    return TRUE;

  return a != NULL && b != NULL && a->format == b->format && g_strv_equal ((const char *const *) a->lines, (const char *const *) b->lines)
         && lr_json_objects_equal (a->unknown, b->unknown);
}

/**
 * lr_lamp_file_dup_doubts:
 * @file: a file
 *
 * Returns: (transfer full): sentences about what was read with a doubt, translated; "" when there is none
 */
char *
lr_lamp_file_dup_doubts (const LrLampFile *file)
{
  GString *text = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (doubts); i++)
    if (file->photometry.warnings & doubts[i].warning)
      g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "", _(doubts[i].sentence));

  return g_string_free (text, FALSE);
}
