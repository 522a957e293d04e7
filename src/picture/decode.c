/* decode.c - from the bytes of a picture to its pixels
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sources: PNG (ISO/IEC 15948), 11.2.2, IHDR; JPEG (ITU-T T.81), B.1.1.3 and B.2.2, markers and frame header.
 */

#include "config.h"

#include "decode.h"

#include <gdk-pixbuf/gdk-pixbuf.h>
#include <math.h>
#include <string.h>
#ifdef LR_HAS_RSVG
#include <librsvg/rsvg.h>
#endif
#ifdef LR_HAS_POPPLER
#include <poppler.h>
#endif

/* What has no pixels of its own is drawn as fine as may be kept, and no finer than so many pixels to one of its units */
#define MOST_PER_UNIT 12.0

/* Sides in their own units */
#define LEAST_SIDE 1.0
#define MOST_SIDE 100000.0

static guint
read_16 (const guchar *p)
{
  return (guint) p[0] << 8 | p[1];
}

static gboolean
png_size (const guchar *data,
          gsize         length,
          guint        *width,
          guint        *height)
{
  if (length < 24 || memcmp (data + 12, "IHDR", 4) != 0)
    return FALSE;

  *width = read_16 (data + 16) << 16 | read_16 (data + 18);
  *height = read_16 (data + 20) << 16 | read_16 (data + 22);
  return TRUE;
}

/* The first frame header: SOF0 to SOF15 but DHT, JPG and DAC, which lie among them */
static gboolean
jpeg_size (const guchar *data,
           gsize         length,
           guint        *width,
           guint        *height)
{
  for (gsize at = 2; at + 9 <= length;)
    {
      guchar marker = data[at + 1];

      if (data[at] != 0xff)
        return FALSE;
      if (marker == 0xff)
        {
          at++;
          continue;
        }
      if (marker >= 0xc0 && marker <= 0xcf && marker != 0xc4 && marker != 0xc8 && marker != 0xcc)
        {
          *height = read_16 (data + at + 5);
          *width = read_16 (data + at + 7);
          return TRUE;
        }
      at += 2 + read_16 (data + at + 2);
    }
  return FALSE;
}

/**
 * lr_decode_size:
 * @data: (array length=length): a PNG or JPEG
 * @length: how many bytes
 * @width: (out): of the picture [px]
 * @height: (out): of the picture [px]
 *
 * Returns: %FALSE if it does not say so
 */
gboolean
lr_decode_size (const guchar *data,
                gsize         length,
                guint        *width,
                guint        *height)
{
  if (length > 2 && data[0] == 0xff)
    return jpeg_size (data, length, width, height);
  return png_size (data, length, width, height);
}

/* Pixels and their opacity, over white */
static void
copy_pixels (const GdkPixbuf *pixbuf,
             cairo_surface_t *surface)
{
  int width = gdk_pixbuf_get_width (pixbuf), height = gdk_pixbuf_get_height (pixbuf), n = gdk_pixbuf_get_n_channels (pixbuf);
  const guchar *from = gdk_pixbuf_read_pixels (pixbuf);
  guchar *to = cairo_image_surface_get_data (surface);

  cairo_surface_flush (surface);
  for (int y = 0; y < height; y++)
    {
      const guchar *in = from + (gsize) y * (gsize) gdk_pixbuf_get_rowstride (pixbuf);
      guint32 *out = (guint32 *) (gpointer) (to + (gsize) y * (gsize) cairo_image_surface_get_stride (surface));

      for (int x = 0; x < width; x++, in += n)
        {
          guint alpha = n == 4 ? in[3] : 255, white = 255 * (255 - alpha);

          out[x] = (in[0] * alpha + white + 127) / 255 << 16 | (in[1] * alpha + white + 127) / 255 << 8 | (in[2] * alpha + white + 127) / 255;
        }
    }
  cairo_surface_mark_dirty (surface);
}

static GdkPixbuf *
load_pixbuf (const char *media_type,
             GBytes     *bytes)
{
  g_autoptr (GdkPixbufLoader) loader = gdk_pixbuf_loader_new_with_mime_type (media_type, NULL);
  gboolean is_written = loader != NULL && gdk_pixbuf_loader_write_bytes (loader, bytes, NULL);
  gboolean is_whole = loader != NULL && gdk_pixbuf_loader_close (loader, NULL);
  GdkPixbuf *pixbuf = is_written && is_whole ? gdk_pixbuf_loader_get_pixbuf (loader) : NULL;

  return pixbuf != NULL ? gdk_pixbuf_apply_embedded_orientation (pixbuf) : NULL;
}

static LrDecodeResult
decode_pixels (const char       *media_type,
               GBytes           *bytes,
               LrDecodedHead    *head,
               cairo_surface_t **surface)
{
  g_autoptr (GdkPixbuf) whole = NULL;
  gsize length;
  const guchar *data = g_bytes_get_data (bytes, &length);
  guint width, height;
  double by;

  if (!lr_decode_size (data, length, &width, &height) || width == 0 || height == 0)
    return LR_DECODE_BROKEN;
  if ((double) width * height > LR_PICTURE_MAX_PIXELS)
    return LR_DECODE_PIXELS;
  whole = load_pixbuf (media_type, bytes);
  if (whole == NULL)
    return LR_DECODE_BROKEN;

  head->natural_width = gdk_pixbuf_get_width (whole);
  head->natural_height = gdk_pixbuf_get_height (whole);
  by = sqrt (LR_DECODED_MAX_PIXELS / (head->natural_width * head->natural_height));
  if (by < 1.0)
    {
      GdkPixbuf *smaller = gdk_pixbuf_scale_simple (whole, (int) fmax (1.0, floor (head->natural_width * by)),
                                                    (int) fmax (1.0, floor (head->natural_height * by)), GDK_INTERP_BILINEAR);

      if (smaller == NULL)
        return LR_DECODE_PIXELS;
      g_object_unref (whole);
      whole = smaller;
    }
  *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, gdk_pixbuf_get_width (whole), gdk_pixbuf_get_height (whole));
  if (cairo_surface_status (*surface) != CAIRO_STATUS_SUCCESS)
    return LR_DECODE_PIXELS;
  copy_pixels (whole, *surface);
  return LR_DECODE_OK;
}

#if defined(LR_HAS_RSVG) || defined(LR_HAS_POPPLER)
static cairo_surface_t *
new_paper (int       width,
           int       height,
           cairo_t **cr)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);

  *cr = cairo_create (surface);
  cairo_set_source_rgb (*cr, 1.0, 1.0, 1.0);
  cairo_paint (*cr);
  return surface;
}

/* Paper for what has no pixels of its own; NULL: its size is none */
static cairo_surface_t *
new_sheet (const LrDecodedHead *head,
           cairo_t            **cr,
           double              *by)
{
  double width = head->natural_width, height = head->natural_height;

  if (!(width >= LEAST_SIDE && width <= MOST_SIDE && height >= LEAST_SIDE && height <= MOST_SIDE))
    return NULL;

  *by = fmin (sqrt (LR_DECODED_MAX_PIXELS / (width * height)), MOST_PER_UNIT);
  return new_paper ((int) fmin (fmax (1.0, floor (width * *by)), 32000.0), (int) fmin (fmax (1.0, floor (height * *by)), 32000.0), cr);
}
#endif

#ifdef LR_HAS_RSVG
static gboolean
svg_size (RsvgHandle *handle,
          double     *width,
          double     *height)
{
  RsvgLength length;
  RsvgRectangle box;
  gboolean has_width, has_height, has_box;

  if (rsvg_handle_get_intrinsic_size_in_pixels (handle, width, height))
    return TRUE;
  rsvg_handle_get_intrinsic_dimensions (handle, &has_width, &length, &has_height, &length, &has_box, &box);
  *width = box.width;
  *height = box.height;
  return has_box;
}

static LrDecodeResult
decode_svg (GBytes           *bytes,
            LrDecodedHead    *head,
            cairo_surface_t **surface)
{
  gsize length;
  const guint8 *data = g_bytes_get_data (bytes, &length);
  RsvgHandle *handle = rsvg_handle_new_from_data (data, length, NULL);
  g_autoptr (GObject) owner = (GObject *) handle; /* the library has no autoptr of its own */
  RsvgRectangle viewport = { 0.0, 0.0, 0.0, 0.0 };
  gboolean is_drawn;
  cairo_t *cr;
  double by;

  if (handle == NULL)
    return LR_DECODE_BROKEN;
  rsvg_handle_set_dpi (handle, 96.0);
  if (!svg_size (handle, &head->natural_width, &head->natural_height))
    return LR_DECODE_BROKEN;
  *surface = new_sheet (head, &cr, &by);
  if (*surface == NULL)
    return LR_DECODE_BROKEN;

  viewport.width = cairo_image_surface_get_width (*surface);
  viewport.height = cairo_image_surface_get_height (*surface);
  is_drawn = rsvg_handle_render_document (handle, cr, &viewport, NULL);
  cairo_destroy (cr);
  return is_drawn ? LR_DECODE_OK : LR_DECODE_BROKEN;
}
#endif

#ifdef LR_HAS_POPPLER
static LrDecodeResult
draw_page (PopplerPage      *page,
           LrDecodedHead    *head,
           cairo_surface_t **surface)
{
  cairo_t *cr;
  double by;

  poppler_page_get_size (page, &head->natural_width, &head->natural_height);
  *surface = new_sheet (head, &cr, &by);
  if (*surface == NULL)
    return LR_DECODE_BROKEN;

  cairo_scale (cr, cairo_image_surface_get_width (*surface) / head->natural_width,
               cairo_image_surface_get_height (*surface) / head->natural_height);
  poppler_page_render (page, cr);
  cairo_destroy (cr);
  return LR_DECODE_OK;
}

static LrDecodeResult
decode_pdf (GBytes           *bytes,
            int               number,
            LrDecodedHead    *head,
            cairo_surface_t **surface)
{
  PopplerDocument *document = poppler_document_new_from_bytes (bytes, NULL, NULL);
  g_autoptr (GObject) document_owner = (GObject *) document, page_owner = NULL; /* the library has no autoptr of its own */
  PopplerPage *page;

  if (document == NULL)
    return LR_DECODE_BROKEN;
  head->n_pages = (guint32) poppler_document_get_n_pages (document);
  if (number > (int) head->n_pages)
    return LR_DECODE_NO_PAGE;

  page = poppler_document_get_page (document, number - 1);
  page_owner = (GObject *) page;
  return page != NULL ? draw_page (page, head, surface) : LR_DECODE_BROKEN;
}
#endif

static LrDecodeResult
decode (const char       *media_type,
        GBytes           *bytes,
        int               page G_GNUC_UNUSED, /* without poppler */
        LrDecodedHead    *head,
        cairo_surface_t **surface)
{
  if (strcmp (media_type, "image/png") == 0 || strcmp (media_type, "image/jpeg") == 0)
    return decode_pixels (media_type, bytes, head, surface);
#ifdef LR_HAS_RSVG
  if (strcmp (media_type, "image/svg+xml") == 0)
    return decode_svg (bytes, head, surface);
#endif
#ifdef LR_HAS_POPPLER
  if (strcmp (media_type, "application/pdf") == 0)
    return decode_pdf (bytes, page, head, surface);
#endif
  return LR_DECODE_CANNOT;
}

/**
 * lr_decode:
 * @media_type: what the bytes are: "image/png"
 * @bytes: a file
 * @page: of a PDF, from 1
 * @head: (out): sizes
 * @surface: (out) (transfer full): the picture, opaque, on white
 *
 * Returns: %LR_DECODE_OK; else @surface is not written
 */
LrDecodeResult
lr_decode (const char       *media_type,
           GBytes           *bytes,
           int               page,
           LrDecodedHead    *head,
           cairo_surface_t **surface)
{
  cairo_surface_t *found = NULL;
  LrDecodeResult result;

  *head = (LrDecodedHead) { .magic = LR_DECODED_MAGIC, .n_pages = 1 };
  if (page < 1)
    return LR_DECODE_NO_PAGE;

  result = decode (media_type, bytes, page, head, &found);
  if (result == LR_DECODE_OK && cairo_surface_status (found) != CAIRO_STATUS_SUCCESS)
    result = LR_DECODE_PIXELS;
  if (result != LR_DECODE_OK)
    {
      g_clear_pointer (&found, cairo_surface_destroy);
      return result;
    }

  cairo_surface_flush (found);
  head->width = (guint32) cairo_image_surface_get_width (found);
  head->height = (guint32) cairo_image_surface_get_height (found);
  *surface = found;
  return LR_DECODE_OK;
}
