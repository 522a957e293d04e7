/* decode.h - from the bytes of a picture to its pixels
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * This runs in a program of its own, lookroom-picture, which may use a limited memory and time: what a stranger's file does to a
 * decoder it does not do to the plan that is open. It is given the bytes and writes an LrDecodedHead and the pixels.
 */

#pragma once

#include <cairo.h>
#include <glib.h>

#define LR_DECODED_MAGIC 0x4c525031 /* and so the order of bytes */
#define LR_DECODED_MAX_PIXELS 8000000.0   /* of what is kept: 32 MB. A page of A4 at 280 dpi has as many */
#define LR_PICTURE_MAX_PIXELS 64000000.0  /* of a file that is opened at all */

typedef enum
{
  LR_DECODE_OK       = 0,
  LR_DECODE_USAGE    = 2,
  LR_DECODE_BROKEN   = 3, /* not what it says it is, or damaged */
  LR_DECODE_PIXELS   = 4, /* too many */
  LR_DECODE_CANNOT   = 5, /* this program was built without a reader for it */
  LR_DECODE_NO_PAGE  = 6, /* it has fewer */
} LrDecodeResult;

typedef struct
{
  guint32 magic, width, height, n_pages; /* of the pixels: rows of width 32-bit pixels of cairo's RGB24 */
  double  natural_width, natural_height; /* of the picture, in its own pixels; of a PDF in points */
} LrDecodedHead;

/* @media_type: "image/png", ... @page: from 1. @surface (out, transfer full): opaque RGB24, on white */
LrDecodeResult lr_decode (const char *media_type, GBytes *bytes, int page, LrDecodedHead *head, cairo_surface_t **surface);
/* Width and height that a PNG or JPEG says it has; FALSE: it does not */
gboolean       lr_decode_size (const guchar *data, gsize length, guint *width, guint *height);
