/* screenshot.c - the whole screen as a PNG, once nothing on it moves
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * screenshot FILE [BEFORE]: takes pictures until some that follow each other are the same and are another than the picture
 * BEFORE, and keeps that. Exit code 1 when this does not come in time.
 */

#include <X11/Xlib.h>
#include <X11/Xutil.h>
#include <cairo.h>
#include <glib.h>
#include <string.h>

#define BETWEEN_US 50000
#define N_STILL 3
#define LIMIT_US (10 * G_USEC_PER_SEC)

/* (transfer full): the root window with all that is over it; 32 bits a pixel, as Xvfb keeps a depth of 24 */
static XImage *
take (Display *display)
{
  XWindowAttributes root;
  XImage *image;

  XGetWindowAttributes (display, DefaultRootWindow (display), &root);
  image = XGetImage (display, DefaultRootWindow (display), 0, 0, (unsigned) root.width, (unsigned) root.height, AllPlanes, ZPixmap);
  g_assert_nonnull (image);
  g_assert_cmpint (image->bits_per_pixel, ==, 32);
  return image;
}

static gboolean
is_same (const XImage *a,
         const XImage *b)
{
  return memcmp (a->data, b->data, (gsize) a->bytes_per_line * (gsize) a->height) == 0;
}

/* Whether the picture that was kept earlier shows this; its fourth byte means nothing */
static gboolean
shows (cairo_surface_t *kept,
       const XImage    *image)
{
  const guint32 *pixels = (const guint32 *) (gpointer) cairo_image_surface_get_data (kept);

  if (cairo_image_surface_get_width (kept) != image->width || cairo_image_surface_get_height (kept) != image->height
      || cairo_image_surface_get_stride (kept) != image->bytes_per_line)
    return FALSE;

  for (gsize i = 0; i < (gsize) image->width * (gsize) image->height; i++)
    if (((pixels[i] ^ ((const guint32 *) (gpointer) image->data)[i]) & 0xffffff) != 0)
      return FALSE;
  return TRUE;
}

static XImage *
take_still (Display         *display,
            cairo_surface_t *before)
{
  gint64 end_us = g_get_monotonic_time () + LIMIT_US;
  XImage *last = take (display);
  int n_same = 1;

  while (g_get_monotonic_time () < end_us)
    {
      XImage *now;

      g_usleep (BETWEEN_US);
      now = take (display);
      n_same = is_same (last, now) ? n_same + 1 : 1;
      XDestroyImage (last);
      last = now;
      if (n_same >= N_STILL && (before == NULL || !shows (before, now)))
        return now;
    }
  XDestroyImage (last);
  return NULL;
}

static cairo_status_t
save (XImage     *image,
      const char *file)
{
  cairo_surface_t *surface = cairo_image_surface_create_for_data ((unsigned char *) image->data, CAIRO_FORMAT_RGB24, image->width,
                                                                  image->height, image->bytes_per_line);
  cairo_status_t status = cairo_surface_write_to_png (surface, file);

  cairo_surface_destroy (surface);
  return status;
}

int
main (int    argc,
      char **argv)
{
  Display *display = XOpenDisplay (NULL);
  cairo_surface_t *before;
  cairo_status_t status;
  XImage *image;

  if (argc < 2 || argc > 3 || display == NULL)
    {
      g_printerr ("usage: screenshot FILE [BEFORE], with a display\n");
      return 2;
    }

  before = argc == 3 ? cairo_image_surface_create_from_png (argv[2]) : NULL;
  image = take_still (display, before);
  if (image == NULL)
    {
      g_printerr ("screenshot: the screen does not come to rest, or shows what it showed before\n");
      return 1;
    }
  status = save (image, argv[1]);
  XDestroyImage (image);
  g_clear_pointer (&before, cairo_surface_destroy);
  XCloseDisplay (display);
  if (status != CAIRO_STATUS_SUCCESS)
    g_printerr ("screenshot: %s: %s\n", argv[1], cairo_status_to_string (status));
  return status == CAIRO_STATUS_SUCCESS ? 0 : 1;
}
