/* picture_file.h - the picture of a floor plan that lies under a room, as a plan keeps it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The bytes of the file itself are kept, so that a plan needs no other file; what they show is found out elsewhere. Reference
 * counted (atomically), immutable and shared by all rooms and plans that show it.
 */

#pragma once

#include <json-glib/json-glib.h>

#define LR_PICTURE_KEY "underlay-picture"            /* of a room, in the file of a plan */
#define LR_PICTURE_MAX_BYTES (6 * 1024 * 1024)       /* a photo of a telephone, a page of an architect */
#define LR_PICTURE_LINE_CHARS 76                     /* of base64, as RFC 2045 has it at most */

typedef enum { LR_PICTURE_PNG, LR_PICTURE_JPEG, LR_PICTURE_SVG, LR_PICTURE_PDF, LR_N_PICTURE_TYPES } LrPictureType;

typedef struct
{
  LrPictureType type;
  GBytes       *bytes;
  JsonObject   *unknown; /* members that this version does not know; may be NULL */
} LrPictureFile;

/* The bytes of a file of any of the types; (transfer full) (nullable) */
LrPictureFile *lr_picture_file_new_from_data (const char *data, gsize length, GError **error);
/* (transfer full) @bytes, @unknown (nullable): bytes that are said to be of @type */
LrPictureFile *lr_picture_file_new  (LrPictureType type, GBytes *bytes, JsonObject *unknown, GError **error);
LrPictureFile *lr_picture_file_ref   (const LrPictureFile *file);
void           lr_picture_file_unref (LrPictureFile *file);
gboolean       lr_picture_file_equal (const LrPictureFile *a, const LrPictureFile *b); /* (nullable) both */

const char    *lr_picture_type_word  (LrPictureType type); /* its media type: "image/png" */
const char    *lr_picture_type_title (LrPictureType type); /* "PNG" */

/* Strict base64 of RFC 4648, by lines */
gboolean       lr_base64_line_is_good (const char *line, gboolean is_last); /* its characters, and padding only at the end */

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrPictureFile, lr_picture_file_unref)
