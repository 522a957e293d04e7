/* test-decode.c - from the bytes of a picture to its pixels
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The pictures are drawn here, by cairo and gdk-pixbuf, or written byte by byte: an invented room of 400 by 300 pixels whose lower
 * left quarter is black. Skipped where the library for a kind was not there when the program was built.
 */

#include "decode.h"

#include <cairo-pdf.h>
#include <gdk-pixbuf/gdk-pixbuf.h>
#include <string.h>

#define WIDTH 400
#define HEIGHT 300

static cairo_status_t
append_cb (void                *data,
           const unsigned char *bytes,
           unsigned int         length)
{
  g_byte_array_append (data, bytes, length);
  return CAIRO_STATUS_SUCCESS;
}

static void
draw_room (cairo_t *cr)
{
  cairo_rectangle (cr, 0.0, HEIGHT / 2.0, WIDTH / 2.0, HEIGHT / 2.0);
  cairo_set_source_rgb (cr, 0.0, 0.0, 0.0);
  cairo_fill (cr);
}

/* Its paper is transparent, as a program that exports drawings leaves it */
static GBytes *
make_png (int width,
          int height)
{
  GByteArray *bytes = g_byte_array_new ();
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  cairo_t *cr = cairo_create (surface);

  cairo_scale (cr, width / (double) WIDTH, height / (double) HEIGHT);
  draw_room (cr);
  cairo_destroy (cr);
  cairo_surface_write_to_png_stream (surface, append_cb, bytes);
  cairo_surface_destroy (surface);
  return g_byte_array_free_to_bytes (bytes);
}

/* On paper, for JPEG has no transparency */
static GBytes *
make_jpeg (void)
{
  g_autoptr (GdkPixbuf) pixbuf = gdk_pixbuf_new (GDK_COLORSPACE_RGB, FALSE, 8, WIDTH, HEIGHT);
  g_autoptr (GdkPixbuf) quarter = gdk_pixbuf_new_subpixbuf (pixbuf, 0, HEIGHT / 2, WIDTH / 2, HEIGHT / 2);
  char *data;
  gsize length;

  gdk_pixbuf_fill (pixbuf, 0xffffffff);
  gdk_pixbuf_fill (quarter, 0x000000ff);
  g_assert_true (gdk_pixbuf_save_to_buffer (pixbuf, &data, &length, "jpeg", NULL, "quality", "95", NULL));
  return g_bytes_new_take (data, length);
}

/* The same with an Exif block that says: turn it by 90° to the right (orientation 6 of Exif 2.3, 4.6.4, from memory) */
static GBytes *
make_turned_jpeg (void)
{
  static const guint8 exif[] = {
    0xff, 0xe1, 0, 34, 'E', 'x', 'i', 'f', 0, 0, 'M', 'M', 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0, 0, 0, 0, 0,
  };
  g_autoptr (GBytes) plain = make_jpeg ();
  GByteArray *bytes = g_byte_array_new ();
  gsize length;
  const guint8 *data = g_bytes_get_data (plain, &length);

  g_byte_array_append (bytes, data, 2);
  g_byte_array_append (bytes, exif, sizeof exif);
  g_byte_array_append (bytes, data + 2, (guint) length - 2);
  return g_byte_array_free_to_bytes (bytes);
}

static GBytes *
make_pdf (int n_pages)
{
  GByteArray *bytes = g_byte_array_new ();
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (append_cb, bytes, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (surface);

  for (int i = 0; i < n_pages; i++)
    {
      if (i == n_pages - 1)
        draw_room (cr);
      cairo_show_page (cr);
    }
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return g_byte_array_free_to_bytes (bytes);
}

static GBytes *
make_text (const char *text)
{
  return g_bytes_new (text, strlen (text));
}

#define SVG_RECT "<rect x='0' y='150' width='200' height='150'/></svg>"
#define SVG "<svg xmlns='http://www.w3.org/2000/svg' width='400' height='300'>" SVG_RECT
#define SVG_BOX "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 400 300'>" SVG_RECT

static guint32
pixel (cairo_surface_t *surface,
       double           x_share,
       double           y_share)
{
  const guchar *data = cairo_image_surface_get_data (surface);
  gsize x = (gsize) (x_share * cairo_image_surface_get_width (surface)), y = (gsize) (y_share * cairo_image_surface_get_height (surface));

  return ((const guint32 *) (gconstpointer) (data + y * (gsize) cairo_image_surface_get_stride (surface)))[x] & 0xffffff;
}

/* Dark in one quarter and light in the others; a JPEG is not exact */
static void
assert_room (cairo_surface_t *surface,
             gboolean         is_turned)
{
  for (int x = 0; x < 2; x++)
    for (int y = 0; y < 2; y++)
      {
        gboolean is_dark = is_turned ? x == 0 && y == 0 : x == 0 && y == 1;
        guint32 is = pixel (surface, 0.25 + 0.5 * x, 0.25 + 0.5 * y);

        for (int channel = 0; channel < 24; channel += 8)
          if (is_dark)
            g_assert_cmpuint (is >> channel & 0xff, <, 8);
          else
            g_assert_cmpuint (is >> channel & 0xff, >, 247);
      }
}

/* Takes @bytes */
static void
check (const char *media_type,
       GBytes     *bytes,
       int         page,
       gboolean    is_turned)
{
  cairo_surface_t *surface = NULL;
  LrDecodedHead head;
  LrDecodeResult result = lr_decode (media_type, bytes, page, &head, &surface);

  g_bytes_unref (bytes);
  if (result == LR_DECODE_CANNOT)
    {
      g_test_skip ("built without a reader for it");
      return;
    }
  g_assert_cmpint (result, ==, LR_DECODE_OK);
  g_assert_cmpfloat_with_epsilon (head.natural_width, is_turned ? HEIGHT : WIDTH, 1e-6);
  g_assert_cmpfloat_with_epsilon (head.natural_height, is_turned ? WIDTH : HEIGHT, 1e-6);
  g_assert_cmpint (cairo_image_surface_get_format (surface), ==, CAIRO_FORMAT_RGB24);
  g_assert_cmpuint (head.width, ==, cairo_image_surface_get_width (surface));
  g_assert_cmpfloat ((double) head.width * head.height, <=, LR_DECODED_MAX_PIXELS);
  assert_room (surface, is_turned);
  cairo_surface_destroy (surface);
}

static void
test_png (void)
{
  check ("image/png", make_png (WIDTH, HEIGHT), 1, FALSE);
}

static void
test_jpeg (void)
{
  check ("image/jpeg", make_jpeg (), 1, FALSE);
}

/* What was left below is left above, and what was wide is high */
static void
test_turned_jpeg (void)
{
  check ("image/jpeg", make_turned_jpeg (), 1, TRUE);
}

static void
test_svg (void)
{
  check ("image/svg+xml", make_text (SVG), 1, FALSE);
  check ("image/svg+xml", make_text (SVG_BOX), 1, FALSE);
}

static void
test_pdf (void)
{
  check ("application/pdf", make_pdf (1), 1, FALSE);
  check ("application/pdf", make_pdf (3), 3, FALSE);
}

/* More pixels than are kept: it is made smaller, and says how large it was */
static void
test_large (void)
{
  g_autoptr (GBytes) bytes = make_png (5000, 3750);
  cairo_surface_t *surface = NULL;
  LrDecodedHead head;

  g_assert_cmpint (lr_decode ("image/png", bytes, 1, &head, &surface), ==, LR_DECODE_OK);
  g_assert_cmpfloat (head.natural_width, ==, 5000.0);
  g_assert_cmpuint (head.width, ==, 3265); /* sides of 4 to 3 whose product is the 8 million that are kept: 3265.99 x 2449.49 */
  g_assert_cmpuint (head.height, ==, 2449);
  assert_room (surface, FALSE);
  cairo_surface_destroy (surface);
}

/* (transfer full): a PNG that says that it is so wide and high */
static GBytes *
claim (guint32 width,
       guint32 height)
{
  g_autoptr (GBytes) png = make_png (8, 8);
  gsize length;
  guint8 *data = g_memdup2 (g_bytes_get_data (png, &length), g_bytes_get_size (png));

  length = g_bytes_get_size (png);
  width = GUINT32_TO_BE (width);
  height = GUINT32_TO_BE (height);
  memcpy (data + 16, &width, 4);
  memcpy (data + 20, &height, 4);
  return g_bytes_new_take (data, length);
}

static void
refuse (const char     *media_type,
        GBytes         *bytes,
        int             page,
        LrDecodeResult  expected)
{
  cairo_surface_t *surface = NULL;
  LrDecodedHead head;
  LrDecodeResult result = lr_decode (media_type, bytes, page, &head, &surface);

  g_bytes_unref (bytes);
  g_assert_null (surface);
  if (result != LR_DECODE_CANNOT)
    g_assert_cmpint (result, ==, expected);
}

static void
test_refused (void)
{
  g_autoptr (GBytes) png = make_png (WIDTH, HEIGHT), jpeg = make_jpeg ();

  refuse ("image/png", claim (60000, 60000), 1, LR_DECODE_PIXELS);
  refuse ("image/png", claim (0xffffffff, 0xffffffff), 1, LR_DECODE_PIXELS);
  refuse ("image/png", claim (0, 4), 1, LR_DECODE_BROKEN);
  refuse ("image/png", claim (40, 40), 1, LR_DECODE_BROKEN); /* another checksum */
  refuse ("image/png", make_text (""), 1, LR_DECODE_BROKEN);
  refuse ("image/png", g_bytes_new_from_bytes (jpeg, 0, g_bytes_get_size (jpeg)), 1, LR_DECODE_BROKEN);
  refuse ("image/jpeg", make_text ("\xff\xd8\xff"), 1, LR_DECODE_BROKEN);
  refuse ("image/jpeg", make_text ("\xff\xd8\xff\xe0\xff\xff\xff\xff\xff\xff\xff"), 1, LR_DECODE_BROKEN);
  refuse ("image/svg+xml", make_text ("<svg"), 1, LR_DECODE_BROKEN);
  refuse ("image/svg+xml", make_text ("<svg xmlns='http://www.w3.org/2000/svg' width='1e9' height='1e9'/>"), 1, LR_DECODE_BROKEN);
  refuse ("image/svg+xml", make_text ("<svg xmlns='http://www.w3.org/2000/svg' width='0' height='5'/>"), 1, LR_DECODE_BROKEN);
  refuse ("application/pdf", make_text ("%PDF-1.7\nnothing"), 1, LR_DECODE_BROKEN);
  refuse ("application/pdf", make_pdf (1), 2, LR_DECODE_NO_PAGE);
  refuse ("application/pdf", make_pdf (1), 0, LR_DECODE_NO_PAGE);
  refuse ("image/gif", make_text ("GIF89a"), 1, LR_DECODE_CANNOT);
}

/* Whatever bytes are wrong or missing, it comes back, with a picture or without */
static void
test_damaged (void)
{
  const struct { const char *media_type; GBytes *bytes; } files[] = {
    { "image/png", make_png (40, 30) }, { "image/jpeg", make_jpeg () }, { "image/svg+xml", make_text (SVG) }, { "application/pdf", make_pdf (1) },
  };

  for (gsize f = 0; f < G_N_ELEMENTS (files); f++)
    {
      for (int i = 0; i < (f < 2 ? 60 : 12); i++)
        {
          gsize length = g_bytes_get_size (files[f].bytes);
          guint8 *data = g_memdup2 (g_bytes_get_data (files[f].bytes, NULL), length);
          gsize kept = i % 3 == 0 ? (gsize) g_test_rand_int_range (1, (gint32) length) : length;
          g_autoptr (GBytes) damaged = NULL;
          cairo_surface_t *surface = NULL;
          LrDecodedHead head;
          guint width, height;

          for (int k = 0; k < 4 && i % 3 != 0; k++)
            data[g_test_rand_int_range (0, (gint32) length)] ^= (guint8) g_test_rand_int_range (1, 256);
          lr_decode_size (data, kept, &width, &height);
          damaged = g_bytes_new_take (data, kept);
          if (lr_decode (files[f].media_type, damaged, 1, &head, &surface) == LR_DECODE_OK)
            {
              g_assert_cmpfloat ((double) head.width * head.height, <=, LR_DECODED_MAX_PIXELS);
              cairo_surface_destroy (surface);
            }
        }
      g_bytes_unref (files[f].bytes);
    }
}

/* What the libraries say of a damaged file is no fault of this program */
static GLogWriterOutput
be_silent (GLogLevelFlags   level,
           const GLogField *fields,
           gsize            n_fields,
           gpointer         data)
{
  return G_LOG_WRITER_HANDLED;
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_log_set_always_fatal (G_LOG_FATAL_MASK);
  g_log_set_writer_func (be_silent, NULL, NULL);

  g_test_add_func ("/decode/png", test_png);
  g_test_add_func ("/decode/jpeg", test_jpeg);
  g_test_add_func ("/decode/turned-jpeg", test_turned_jpeg);
  g_test_add_func ("/decode/svg", test_svg);
  g_test_add_func ("/decode/pdf", test_pdf);
  g_test_add_func ("/decode/large", test_large);
  g_test_add_func ("/decode/refused", test_refused);
  g_test_add_func ("/decode/damaged", test_damaged);

  return g_test_run ();
}
