/* canvas_zoom.c - nearer, further, along
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The wheel and a pinch zoom at the pointer: the place under it stays under it. The middle button pans, and so does a
 * drag on empty paper (canvas_drag.c).
 */

#include "config.h"

#include "canvas_private.h"

/* Line weights are made for this range [px/m] */
#define SCALE_MIN 15.0
#define SCALE_MAX 600.0

#define WHEEL_FACTOR 1.12
#define NOTCH_PX 40.0 /* of a touchpad, that count as a notch of the wheel */
#define STEP_FACTOR 1.25

/* One metre at 1:1, at the 96 px to the inch of a logical pixel */
#define PX_PER_M (96.0 / 0.0254)

/* Around a room that fits: space for its dimensions and labels; a small sheet gives less */
#define FIT_MARGIN_PX 96.0
#define LEAST_FIT_MARGIN_PX 80.0
#define FIT_MARGIN_SHARE 0.13
#define FIT_FOOT_PX 14.0 /* hints stand below the dimension */

/* What a key takes in hand is brought this far in from the edge */
#define SIGHT_MARGIN_PX 70.0

static LrVec2
middle (LrCanvas *self)
{
  return lr_vec2 (self->view.width / 2.0, self->view.height / 2.0);
}

static void
view_changed (LrCanvas *self)
{
  gtk_widget_queue_allocate (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_object_notify (G_OBJECT (self), "zoom-denominator");
}

/**
 * lr_canvas_get_denominator:
 * @self: the sheet
 *
 * Returns: the scale of the drawing as people say it: 37 for 1:37, at 96 px to the inch
 */
double
lr_canvas_get_denominator (LrCanvas *self)
{
  g_return_val_if_fail (LR_IS_CANVAS (self), 1.0);

  return PX_PER_M / self->view.scale;
}

/**
 * lr_canvas_clamp_scale:
 * @self: a canvas
 *
 * Brings its scale into the range that line weights are made for.
 */
void
lr_canvas_clamp_scale (LrCanvas *self)
{
  self->view.scale = CLAMP (self->view.scale, SCALE_MIN, SCALE_MAX);
}

static void
set_scale_at (LrCanvas *self,
              double    scale,
              LrVec2    at)
{
  LrVec2 place_m = lr_canvas_to_room (self, at);

  self->view.scale = CLAMP (scale, SCALE_MIN, SCALE_MAX);
  self->view.origin = lr_vec2 (at.x - place_m.x * self->view.scale, at.y + place_m.y * self->view.scale);
  self->fits = FALSE;
  lr_canvas_layers_moving (self);
  view_changed (self);
}

/**
 * lr_canvas_zoom_at:
 * @self: the sheet
 * @factor: > 1 nearer, < 1 further
 * @at: the place that stays where it is [px]
 */
void
lr_canvas_zoom_at (LrCanvas *self,
                   double    factor,
                   LrVec2    at)
{
  g_return_if_fail (LR_IS_CANVAS (self));
  g_return_if_fail (factor > 0.0);

  set_scale_at (self, self->view.scale * factor, at);
}

/**
 * lr_canvas_zoom_to:
 * @self: the sheet
 * @denominator: 50 for 1:50, > 0
 *
 * The middle stays where it is.
 */
void
lr_canvas_zoom_to (LrCanvas *self,
                   double    denominator)
{
  g_return_if_fail (LR_IS_CANVAS (self));
  g_return_if_fail (denominator > 0.0);

  set_scale_at (self, PX_PER_M / denominator, middle (self));
}

/**
 * lr_canvas_pan:
 * @self: the sheet
 * @by: how far the paper moves [px]
 */
void
lr_canvas_pan (LrCanvas *self,
               LrVec2    by)
{
  g_return_if_fail (LR_IS_CANVAS (self));

  self->view.origin = lr_vec2_add (self->view.origin, by);
  self->fits = FALSE;
  lr_canvas_layers_moving (self);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

/* How far one end of a line must move to lie between the margins */
static double
way_into_sight (double at,
                double size)
{
  return CLAMP (at, fmin (SIGHT_MARGIN_PX, size / 2.0), fmax (size - SIGHT_MARGIN_PX, size / 2.0)) - at;
}

/**
 * lr_canvas_show_place:
 * @self: a canvas
 * @at_m: a place in the room [m]
 *
 * Pans until the place is on the sheet.
 */
void
lr_canvas_show_place (LrCanvas *self,
                      LrVec2    at_m)
{
  LrVec2 at = lr_view_to_device (&self->view, at_m), by;

  if (self->view.width < 1.0 || self->view.height < 1.0)
    return;

  by = lr_vec2 (way_into_sight (at.x, self->view.width), way_into_sight (at.y, self->view.height));

  if (by.x != 0.0 || by.y != 0.0)
    lr_canvas_pan (self, lr_vec2 (round (by.x), round (by.y)));
}

/**
 * lr_canvas_place_room:
 * @self: a canvas
 *
 * After a change of size or plan the room fits the sheet, or keeps its middle.
 */
void
lr_canvas_place_room (LrCanvas *self)
{
  const LrRoom *room = lr_canvas_get_room (self);
  LrView *view = &self->view;

  if (room == NULL || view->width < 1.0 || view->height < 1.0)
    return;

  view->theme = lr_canvas_get_theme (self);
  if (room->n_corners > 0)
    lr_view_fit (view, lr_document_get_study (self->document),
                 CLAMP (FIT_MARGIN_SHARE * fmin (view->width, view->height), LEAST_FIT_MARGIN_PX, FIT_MARGIN_PX), FIT_FOOT_PX);
  else if (!lr_canvas_trace_fit (self))
    {
      view->scale = PX_PER_M / 50.0;
      view->origin = lr_vec2_sub (middle (self), lr_vec2 (2.5 * view->scale, -2.0 * view->scale));
    }

  view->scale = CLAMP (view->scale, SCALE_MIN, SCALE_MAX);
  /* whole pixels keep the walls sharp */
  view->origin = lr_vec2 (round (view->origin.x), round (view->origin.y));
  view_changed (self);
}

/**
 * lr_canvas_fit:
 * @self: the sheet
 *
 * Shows the whole room, and keeps showing it while the window is sized, until the next zoom or pan.
 */
void
lr_canvas_fit (LrCanvas *self)
{
  g_return_if_fail (LR_IS_CANVAS (self));

  self->fits = TRUE;
  lr_canvas_place_room (self);
}

/* Zooms at the pointer, or at the middle if it is elsewhere */
static gboolean
scroll_cb (GtkEventControllerScroll *scroll,
           double                    dx,
           double                    dy,
           LrCanvas                 *self)
{
  double notches = gtk_event_controller_scroll_get_unit (scroll) == GDK_SCROLL_UNIT_SURFACE ? dy / NOTCH_PX : dy;

  if (self->document == NULL)
    return GDK_EVENT_PROPAGATE;

  lr_canvas_zoom_at (self, pow (WHEEL_FACTOR, -notches), self->has_pointer ? self->pointer : middle (self));
  return GDK_EVENT_STOP;
}

static void
pinch_begin_cb (LrCanvas *self)
{
  self->zoom_start = self->view.scale;
}

static void
pinch_cb (LrCanvas   *self,
          double      factor,
          GtkGesture *pinch)
{
  LrVec2 at = middle (self);

  gtk_gesture_get_bounding_box_center (pinch, &at.x, &at.y);
  set_scale_at (self, self->zoom_start * factor, at);
}

static void
middle_begin_cb (LrCanvas *self)
{
  self->drag.origin = self->view.origin;
}

static void
middle_update_cb (LrCanvas *self,
                  double    dx,
                  double    dy)
{
  lr_canvas_pan (self, lr_vec2_sub (lr_vec2_add (self->drag.origin, lr_vec2 (dx, dy)), self->view.origin));
}

/**
 * lr_canvas_zoom_init:
 * @self: a canvas
 *
 * Adds wheel, pinch and drag on the paper.
 */
void
lr_canvas_zoom_init (LrCanvas *self)
{
  GtkEventController *scroll = gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_VERTICAL);
  GtkGesture *pinch = gtk_gesture_zoom_new ();
  GtkGesture *pan = gtk_gesture_drag_new ();

  g_signal_connect (scroll, "scroll", G_CALLBACK (scroll_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), scroll);

  g_signal_connect_swapped (pinch, "begin", G_CALLBACK (pinch_begin_cb), self);
  g_signal_connect_swapped (pinch, "scale-changed", G_CALLBACK (pinch_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (pinch));

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (pan), GDK_BUTTON_MIDDLE);
  g_signal_connect_swapped (pan, "drag-begin", G_CALLBACK (middle_begin_cb), self);
  g_signal_connect_swapped (pan, "drag-update", G_CALLBACK (middle_update_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (pan));
}

static void
zoom_in_action (GtkWidget  *widget,
                const char *name,
                GVariant   *parameter)
{
  LrCanvas *self = LR_CANVAS (widget);

  lr_canvas_zoom_at (self, STEP_FACTOR, middle (self));
}

static void
zoom_out_action (GtkWidget  *widget,
                 const char *name,
                 GVariant   *parameter)
{
  LrCanvas *self = LR_CANVAS (widget);

  lr_canvas_zoom_at (self, 1.0 / STEP_FACTOR, middle (self));
}

static void
zoom_fit_action (GtkWidget  *widget,
                 const char *name,
                 GVariant   *parameter)
{
  lr_canvas_fit (LR_CANVAS (widget));
}

static void
zoom_to_action (GtkWidget  *widget,
                const char *name,
                GVariant   *parameter)
{
  double denominator = g_variant_get_double (parameter);

  if (denominator > 0.0)
    lr_canvas_zoom_to (LR_CANVAS (widget), denominator);
}

/**
 * lr_canvas_zoom_install:
 * @klass: the class
 *
 * Installs the actions that zoom.
 */
void
lr_canvas_zoom_install (GtkWidgetClass *klass)
{
  gtk_widget_class_install_action (klass, "canvas.zoom-in", NULL, zoom_in_action);
  gtk_widget_class_install_action (klass, "canvas.zoom-out", NULL, zoom_out_action);
  gtk_widget_class_install_action (klass, "canvas.zoom-fit", NULL, zoom_fit_action);
  gtk_widget_class_install_action (klass, "canvas.zoom-to", "d", zoom_to_action);
}
