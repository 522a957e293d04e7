/* grab.c - what a widget paints, as pixels
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "grab.h"

cairo_surface_t *
grab (GtkWidget *widget)
{
  int width_px = gtk_widget_get_width (widget), height_px = gtk_widget_get_height (widget);
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width_px, height_px);
  g_autoptr (GdkPaintable) paintable = gtk_widget_paintable_new (widget);
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  GskRenderNode *node;
  cairo_t *cr;

  gdk_paintable_snapshot (paintable, snapshot, width_px, height_px);
  node = gtk_snapshot_free_to_node (snapshot);
  g_assert_nonnull (node);
  cr = cairo_create (image);
  gsk_render_node_draw (node, cr);
  cairo_destroy (cr);
  gsk_render_node_unref (node);
  cairo_surface_flush (image);
  return image;
}

guint
n_different (cairo_surface_t *a,
             cairo_surface_t *b)
{
  const guint32 *pixels_a = (const guint32 *) (gpointer) cairo_image_surface_get_data (a);
  const guint32 *pixels_b = (const guint32 *) (gpointer) cairo_image_surface_get_data (b);
  gsize n = (gsize) cairo_image_surface_get_stride (a) / 4 * (gsize) cairo_image_surface_get_height (a);
  guint n_others = 0;

  g_assert_cmpint (cairo_image_surface_get_width (a), ==, cairo_image_surface_get_width (b));
  g_assert_cmpint (cairo_image_surface_get_height (a), ==, cairo_image_surface_get_height (b));
  for (gsize i = 0; i < n; i++)
    n_others += pixels_a[i] != pixels_b[i];
  return n_others;
}
