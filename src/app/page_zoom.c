/* page_zoom.c - a sheet of paper in a scrolled window: how large it is shown
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is in the middle stays there when it is zoomed by keys and buttons, what is under the pointer when by the wheel.
 */

#include "config.h"

#include "page_zoom.h"

#include <glib/gi18n-lib.h>

#define PX_PT (96.0 / 72.0)

static const double ratios[] = { 0.5, 0.75, 1.0, 1.5, 2.0, 3.0, 4.0 };

static double
fit_scale (const LrPageZoom *zoom,
           int               width_px,
           int               height_px)
{
  return MIN ((width_px - 2.0 * LR_PAGE_MARGIN_PX) / zoom->width_pt, (height_px - 2.0 * LR_PAGE_MARGIN_PX) / zoom->height_pt);
}

/**
 * lr_page_zoom_scale:
 * @zoom: a zoom whose sheet has a size
 * @width_px: of the drawing
 * @height_px: of the drawing
 *
 * Returns: pixels to a point
 */
double
lr_page_zoom_scale (const LrPageZoom *zoom,
                    int               width_px,
                    int               height_px)
{
  return zoom->zoom > 0.0 ? zoom->zoom * PX_PT : fit_scale (zoom, width_px, height_px);
}

/**
 * lr_page_zoom_text:
 *
 * Returns: (transfer full): how large it is shown
 */
char *
lr_page_zoom_text (const LrPageZoom *zoom)
{
  /* Translators: all of the sheet is seen */
  return zoom->zoom > 0.0 ? g_strdup_printf (_("%.0f %%"), 100.0 * zoom->zoom) : g_strdup (_("Fit"));
}

static GtkAdjustment *
get_adjustment (const LrPageZoom *zoom,
                gboolean          is_across)
{
  GtkScrolledWindow *scroller = GTK_SCROLLED_WINDOW (zoom->scroller);

  return is_across ? gtk_scrolled_window_get_hadjustment (scroller) : gtk_scrolled_window_get_vadjustment (scroller);
}

static void
set_content (LrPageZoom *zoom)
{
  double scale = zoom->zoom * PX_PT;
  gboolean is_whole = !(zoom->zoom > 0.0);

  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (zoom->area), is_whole ? 0 : (int) (scale * zoom->width_pt + 2.0 * LR_PAGE_MARGIN_PX));
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (zoom->area), is_whole ? 0 : (int) (scale * zoom->height_pt + 2.0 * LR_PAGE_MARGIN_PX));
  gtk_widget_queue_draw (zoom->area);
}

/* The place @at of the view [px] stays over the same place of the sheet; upper limits come with the next layout, so they are set here */
static void
keep_place (LrPageZoom *zoom,
            gboolean    is_across,
            double      at_px,
            double      ratio)
{
  GtkAdjustment *adjustment = get_adjustment (zoom, is_across);
  double page_px = gtk_adjustment_get_page_size (adjustment);
  double size_px = (is_across ? zoom->width_pt : zoom->height_pt) * zoom->zoom * PX_PT + 2.0 * LR_PAGE_MARGIN_PX;
  double place_px = gtk_adjustment_get_value (adjustment) + at_px;

  if (!(zoom->zoom > 0.0))
    return;
  gtk_adjustment_set_upper (adjustment, MAX (size_px, page_px));
  gtk_adjustment_set_value (adjustment, place_px * ratio - at_px);
}

static double
shown_scale (const LrPageZoom *zoom)
{
  return lr_page_zoom_scale (zoom, gtk_widget_get_width (zoom->area), gtk_widget_get_height (zoom->area));
}

static void
zoom_about (LrPageZoom *zoom,
            double      ratio,
            double      x_px,
            double      y_px)
{
  double before = shown_scale (zoom);

  zoom->zoom = ratio;
  set_content (zoom);
  if (before > 0.0)
    {
      keep_place (zoom, TRUE, x_px, ratio * PX_PT / before);
      keep_place (zoom, FALSE, y_px, ratio * PX_PT / before);
    }
}

/**
 * lr_page_zoom_to:
 * @zoom: a zoom
 * @ratio: 1 is as large as on paper; 0: all of it
 *
 * Shows it so large.
 */
void
lr_page_zoom_to (LrPageZoom *zoom,
                 double      ratio)
{
  zoom_about (zoom, ratio, 0.5 * gtk_widget_get_width (zoom->scroller), 0.5 * gtk_widget_get_height (zoom->scroller));
}

/* The next usual ratio from what is shown; all of it where it would be smaller than that */
static double
next_ratio (const LrPageZoom *zoom,
            int               by)
{
  double now = shown_scale (zoom) / PX_PT, whole = fit_scale (zoom, gtk_widget_get_width (zoom->scroller),
                                                              gtk_widget_get_height (zoom->scroller)) / PX_PT;

  if (by > 0)
    {
      for (gsize i = 0; i < G_N_ELEMENTS (ratios); i++)
        if (ratios[i] > now * 1.01)
          return ratios[i];
      return ratios[G_N_ELEMENTS (ratios) - 1];
    }
  for (gsize i = G_N_ELEMENTS (ratios); i-- > 0;)
    if (ratios[i] < now * 0.99)
      return ratios[i] > whole ? ratios[i] : 0.0;
  return 0.0;
}

/**
 * lr_page_zoom_step:
 * @zoom: a zoom
 * @by: 1 larger, -1 smaller
 *
 * Shows it larger or smaller.
 */
void
lr_page_zoom_step (LrPageZoom *zoom,
                   int         by)
{
  lr_page_zoom_to (zoom, next_ratio (zoom, by));
}

/**
 * lr_page_zoom_set_size:
 * @zoom: a zoom
 * @width_pt: of the sheet
 * @height_pt: of the sheet
 *
 * What sheet is shown.
 */
void
lr_page_zoom_set_size (LrPageZoom *zoom,
                       double      width_pt,
                       double      height_pt)
{
  zoom->width_pt = width_pt;
  zoom->height_pt = height_pt;
  set_content (zoom);
}

static gboolean
wheel_cb (GtkEventControllerScroll *scroll,
          double                    dx G_GNUC_UNUSED,
          double                    dy,
          LrPageZoom               *zoom)
{
  GdkEvent *event = gtk_event_controller_get_current_event (GTK_EVENT_CONTROLLER (scroll));
  double x = 0.5 * gtk_widget_get_width (zoom->scroller), y = 0.5 * gtk_widget_get_height (zoom->scroller), root_x, root_y;
  graphene_point_t at;

  if ((gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (scroll)) & GDK_CONTROL_MASK) == 0 || dy == 0.0)
    return FALSE;
  if (event != NULL && gdk_event_get_position (event, &root_x, &root_y))
    {
      double off_x, off_y;
      GtkNative *native = gtk_widget_get_native (zoom->scroller);

      gtk_native_get_surface_transform (native, &off_x, &off_y);
      if (gtk_widget_compute_point (GTK_WIDGET (native), zoom->scroller,
                                    &GRAPHENE_POINT_INIT ((float) (root_x - off_x), (float) (root_y - off_y)), &at))
        {
          x = (double) at.x;
          y = (double) at.y;
        }
    }
  zoom_about (zoom, next_ratio (zoom, dy < 0.0 ? 1 : -1), x, y);
  gtk_widget_activate_action (zoom->scroller, "page.zoomed", NULL);
  return TRUE;
}

static void
pan_begin_cb (GtkGestureDrag *drag G_GNUC_UNUSED,
              double          x G_GNUC_UNUSED,
              double          y G_GNUC_UNUSED,
              LrPageZoom     *zoom)
{
  zoom->pan_x = gtk_adjustment_get_value (get_adjustment (zoom, TRUE));
  zoom->pan_y = gtk_adjustment_get_value (get_adjustment (zoom, FALSE));
}

static void
pan_cb (GtkGestureDrag *drag G_GNUC_UNUSED,
        double          dx,
        double          dy,
        LrPageZoom     *zoom)
{
  gtk_adjustment_set_value (get_adjustment (zoom, TRUE), zoom->pan_x - dx);
  gtk_adjustment_set_value (get_adjustment (zoom, FALSE), zoom->pan_y - dy);
}

/**
 * lr_page_zoom_init:
 * @zoom: (out): a zoom, showing all of it
 * @scroller: a scrolled window
 * @area: the drawing area in it
 *
 * Lets wheel and pointer do what they do.
 */
void
lr_page_zoom_init (LrPageZoom *zoom,
                   GtkWidget  *scroller,
                   GtkWidget  *area)
{
  GtkEventController *wheel = gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_VERTICAL | GTK_EVENT_CONTROLLER_SCROLL_DISCRETE);
  GtkGesture *drag = gtk_gesture_drag_new ();

  *zoom = (LrPageZoom) { .scroller = scroller, .area = area, .width_pt = 1.0, .height_pt = 1.0 };
  gtk_event_controller_set_propagation_phase (wheel, GTK_PHASE_CAPTURE);
  g_signal_connect (wheel, "scroll", G_CALLBACK (wheel_cb), zoom);
  gtk_widget_add_controller (scroller, wheel);
  g_signal_connect (drag, "drag-begin", G_CALLBACK (pan_begin_cb), zoom);
  g_signal_connect (drag, "drag-update", G_CALLBACK (pan_cb), zoom);
  gtk_widget_add_controller (scroller, GTK_EVENT_CONTROLLER (drag));
}
