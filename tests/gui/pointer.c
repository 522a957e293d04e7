/* pointer.c - a real pointer and keyboard, by the X server's own test extension
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "pointer.h"

#include <X11/extensions/XTest.h>
#include <gdk/x11/gdkx.h>

#define STEPS 10
#define STEP_MS 20

static Display *
display_of (GtkWidget *widget)
{
  return gdk_x11_display_get_xdisplay (gtk_widget_get_display (widget));
}

/* From the widget to the root window, which holds real pixels */
static void
to_root (GtkWidget *widget,
         LrVec2     at,
         int       *root_x,
         int       *root_y)
{
  GtkNative *native = gtk_widget_get_native (widget);
  GdkSurface *surface = gtk_native_get_surface (native);
  int scale = gtk_widget_get_scale_factor (widget);
  double off_x, off_y;
  graphene_point_t place;
  Window child;

  g_assert_true (gtk_widget_compute_point (widget, GTK_WIDGET (native), &GRAPHENE_POINT_INIT ((float) at.x, (float) at.y),
                                           &place));
  gtk_native_get_surface_transform (native, &off_x, &off_y);
  XTranslateCoordinates (display_of (widget), gdk_x11_surface_get_xid (surface),
                         DefaultRootWindow (display_of (widget)), (int) ((place.x + (float) off_x) * (float) scale),
                         (int) ((place.y + (float) off_y) * (float) scale), root_x, root_y, &child);
}

void
pointer_move (GtkWidget *widget,
              LrVec2     at)
{
  int x, y;

  to_root (widget, at, &x, &y);
  XTestFakeMotionEvent (display_of (widget), -1, x, y, 0);
  XFlush (display_of (widget));
}

void
pointer_button (GtkWidget *widget,
                guint      button,
                gboolean   is_down)
{
  XTestFakeButtonEvent (display_of (widget), button, is_down, 0);
  XFlush (display_of (widget));
}

void
pointer_key (GtkWidget *widget,
             guint      keyval)
{
  KeyCode code = XKeysymToKeycode (display_of (widget), keyval);

  XTestFakeKeyEvent (display_of (widget), code, True, 0);
  XTestFakeKeyEvent (display_of (widget), code, False, 0);
  XFlush (display_of (widget));
}

void
pointer_chord (GtkWidget *widget,
               guint      held,
               guint      keyval)
{
  KeyCode code = XKeysymToKeycode (display_of (widget), held);

  XTestFakeKeyEvent (display_of (widget), code, True, 0);
  pointer_key (widget, keyval);
  XTestFakeKeyEvent (display_of (widget), code, False, 0);
  XFlush (display_of (widget));
}

static gboolean
timeout_cb (gpointer data)
{
  *(gboolean *) data = TRUE;
  return G_SOURCE_REMOVE;
}

void
pointer_wait (guint ms)
{
  gboolean is_over = FALSE;

  g_timeout_add (ms, timeout_cb, &is_over);
  while (!is_over)
    g_main_context_iteration (NULL, TRUE);
}

void
pointer_drag (GtkWidget *widget,
              guint      button,
              LrVec2     from,
              LrVec2     to)
{
  pointer_move (widget, from);
  pointer_wait (STEP_MS);
  pointer_button (widget, button, TRUE);
  pointer_wait (STEP_MS);
  for (int i = 1; i <= STEPS; i++)
    {
      pointer_move (widget, lr_vec2_along (from, lr_vec2_sub (to, from), (double) i / STEPS));
      pointer_wait (STEP_MS);
    }
  pointer_button (widget, button, FALSE);
  pointer_wait (STEP_MS);
}
