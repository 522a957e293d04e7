/* screenshot.c - the whole screen as a PNG, once nothing on it moves
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * screenshot FILE: takes pictures until two that follow each other are the same, and keeps that. Exit code 1 when the screen
 * does not come to rest in time.
 */

#include <X11/Xlib.h>
#include <X11/Xutil.h>
#include <cairo.h>
#include <glib.h>
#include <string.h>

#define BETWEEN_US 70000
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

static XImage *
take_still (Display *display)
{
  gint64 end_us = g_get_monotonic_time () + LIMIT_US;
  XImage *before = take (display);

  while (g_get_monotonic_time () < end_us)
    {
      XImage *now;

      g_usleep (BETWEEN_US);
      now = take (display);
      if (is_same (before, now))
        {
          XDestroyImage (before);
          return now;
        }
      XDestroyImage (before);
      before = now;
    }
  XDestroyImage (before);
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
  cairo_status_t status;
  XImage *image;

  if (argc != 2 || display == NULL)
    {
      g_printerr ("usage: screenshot FILE, with a display\n");
      return 2;
    }

  image = take_still (display);
  if (image == NULL)
    {
      g_printerr ("screenshot: the screen does not come to rest\n");
      return 1;
    }
  status = save (image, argv[1]);
  XDestroyImage (image);
  XCloseDisplay (display);
  if (status != CAIRO_STATUS_SUCCESS)
    g_printerr ("screenshot: %s: %s\n", argv[1], cairo_status_to_string (status));
  return status == CAIRO_STATUS_SUCCESS ? 0 : 1;
}
