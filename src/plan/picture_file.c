/* picture_file.c - the picture of a floor plan that lies under a room, as a plan keeps it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a file is, its first bytes tell and not its name. Sources: PNG (ISO/IEC 15948), 5.2; JPEG (ITU-T T.81), B.1.1.3, SOI and
 * the marker that follows; PDF (ISO 32000-1), 7.5.2, and that readers take its header within the first 1024 bytes; SVG is XML
 * whose root is svg.
 */

#include "config.h"

#include "picture_file.h"

#include "plan.h"
#include "plan_json.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define HEAD_BYTES 1024
#define XML_HEAD_BYTES 8192

static gboolean
is_png (const char *data,
        gsize       length)
{
  static const char signature[] = "\x89PNG\r\n\x1a\n";

  return length > sizeof signature - 1 && memcmp (data, signature, sizeof signature - 1) == 0;
}

static gboolean
is_jpeg (const char *data,
         gsize       length)
{
  return length > 3 && memcmp (data, "\xff\xd8\xff", 3) == 0;
}

static gboolean
is_pdf (const char *data,
        gsize       length)
{
  return g_strstr_len (data, (gssize) MIN (length, HEAD_BYTES), "%PDF-") != NULL;
}

/* After a byte order mark, the first element that is no declaration, comment or instruction */
static gboolean
is_svg (const char *data,
        gsize       length)
{
  g_autofree char *head = g_strndup (data, MIN (length, XML_HEAD_BYTES));
  const char *p = g_str_has_prefix (head, "\xef\xbb\xbf") ? head + 3 : head;

  for (p += strspn (p, " \t\r\n"); *p == '<' && (p[1] == '?' || p[1] == '!'); p += strspn (p, " \t\r\n"))
    {
      const char *end = g_str_has_prefix (p, "<!--") ? "-->" : p[1] == '?' ? "?>" : ">";
      const char *found = strstr (p, end);

      if (found == NULL)
        return FALSE;
      p = found + strlen (end);
    }

  return g_str_has_prefix (p, "<svg") || (*p == '<' && strstr (p, ":svg") != NULL && strcspn (p, " \t\r\n>") >= (gsize) (strstr (p, ":svg") - p));
}

static const struct
{
  const char *word, *title;
  gboolean  (*is_one) (const char *data, gsize length);
} types[LR_N_PICTURE_TYPES] = {
  [LR_PICTURE_PNG] = { "image/png", "PNG", is_png },
  [LR_PICTURE_JPEG] = { "image/jpeg", "JPEG", is_jpeg },
  [LR_PICTURE_SVG] = { "image/svg+xml", "SVG", is_svg },
  [LR_PICTURE_PDF] = { "application/pdf", "PDF", is_pdf },
};

/**
 * lr_picture_type_word:
 * @type: a type
 *
 * Returns: (transfer none): its media type, as the file of a plan has it
 */
const char *
lr_picture_type_word (LrPictureType type)
{
  return types[type].word;
}

/**
 * lr_picture_type_title:
 * @type: a type
 *
 * Returns: (transfer none): what people call it
 */
const char *
lr_picture_type_title (LrPictureType type)
{
  return types[type].title;
}

static void
clear (gpointer data)
{
  LrPictureFile *file = data;

  g_clear_pointer (&file->bytes, g_bytes_unref);
  g_clear_pointer (&file->unknown, json_object_unref);
}

/**
 * lr_picture_file_ref:
 * @file: a file
 *
 * Returns: (transfer full): @file
 */
LrPictureFile *
lr_picture_file_ref (const LrPictureFile *file)
{
  return g_atomic_rc_box_acquire ((gpointer) file);
}

/**
 * lr_picture_file_unref:
 * @file: (transfer full): a file
 */
void
lr_picture_file_unref (LrPictureFile *file)
{
  g_atomic_rc_box_release_full (file, clear);
}

static gboolean
check_size (gsize    length,
            GError **error)
{
  if (length <= LR_PICTURE_MAX_BYTES)
    return TRUE;

  g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_TOO_LARGE, _("the picture is larger than %d MB; save it smaller, or as JPEG"),
               LR_PICTURE_MAX_BYTES / (1024 * 1024));
  return FALSE;
}

/**
 * lr_picture_file_new:
 * @type: what the bytes are said to be
 * @bytes: (transfer full): a file
 * @unknown: (transfer full) (nullable): members beside them
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the file, if its first bytes are those of the type
 */
LrPictureFile *
lr_picture_file_new (LrPictureType   type,
                     GBytes         *bytes,
                     JsonObject     *unknown,
                     GError        **error)
{
  g_autoptr (LrPictureFile) file = g_atomic_rc_box_new0 (LrPictureFile);
  gsize length;
  const char *data = g_bytes_get_data (bytes, &length);

  file->type = type;
  file->bytes = bytes;
  file->unknown = unknown;
  if (!check_size (length, error))
    return NULL;
  if (length == 0 || !types[type].is_one (data, length))
    {
      /* Translators: a kind of file: PNG */
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE, _("this is no %s"), types[type].title);
      return NULL;
    }

  return g_steal_pointer (&file);
}

/**
 * lr_picture_file_new_from_data:
 * @data: (array length=length): the bytes of a file
 * @length: how many
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the file
 */
LrPictureFile *
lr_picture_file_new_from_data (const char  *data,
                               gsize        length,
                               GError     **error)
{
  if (!check_size (length, error))
    return NULL;
  for (int i = 0; length > 0 && i < LR_N_PICTURE_TYPES; i++)
    if (types[i].is_one (data, length))
      return lr_picture_file_new (i, g_bytes_new (data, length), NULL, error);

  g_set_error_literal (error, LR_PLAN_ERROR, LR_PLAN_ERROR_VALUE, _("it is no PNG, JPEG, SVG or PDF"));
  return NULL;
}

/**
 * lr_picture_file_equal:
 * @a: (nullable): a file
 * @b: (nullable): another
 *
 * Returns: whether both hold the same bytes
 */
gboolean
lr_picture_file_equal (const LrPictureFile *a,
                       const LrPictureFile *b)
{
  if (a == b)
    return TRUE;

  return a != NULL && b != NULL && a->type == b->type && g_bytes_equal (a->bytes, b->bytes) && lr_json_objects_equal (a->unknown, b->unknown);
}

/**
 * lr_base64_line_is_good:
 * @line: a line
 * @is_last: whether it is the last one, which alone may be padded
 *
 * RFC 4648, section 4: four characters stand for three bytes, and at the end "=" for what is missing. g_base64_decode() passes over
 * what does not belong there.
 *
 * Returns: whether the line is whole groups of the alphabet
 */
gboolean
lr_base64_line_is_good (const char *line,
                        gboolean    is_last)
{
  gsize length = strlen (line), padded = 0;

  while (is_last && padded < 2 && padded < length && line[length - 1 - padded] == '=')
    padded++;
  for (gsize i = 0; i + padded < length; i++)
    if (!g_ascii_isalnum (line[i]) && line[i] != '+' && line[i] != '/')
      return FALSE;

  return length > 0 && length % 4 == 0;
}
