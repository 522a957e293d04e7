/* finder_hand.c - the hand on a viewfinder's picture: drag to pan and tilt, wheel to zoom, arrow keys
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A drag takes what is under the pointer along: each place of the pointer makes a plan from the committed one and shows it as
 * a preview; letting go makes one step of the history, Escape none. The wheel sets the lens unless the column that holds the
 * picture is being scrolled: a picture that slides under the pointer then is not meant.
 */

#include "config.h"

#include "finder_hand.h"

#include "reframe.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define KEY "lr-finder-hand"
#define CLICK_PX 4.0
#define SCROLL_REST_US (600 * G_TIME_SPAN_MILLISECOND)
#define KEY_SHARE 0.02      /* of the frame, that a key pans or tilts */
#define FINE_KEY_SHARE 0.005
#define STEP (1.0 - 1e-6)   /* of a wheel; a smooth one sends parts */
#define NOTCH_PX 40.0       /* of a touchpad, that count as a notch */

typedef struct
{
  LrFinderPicture *picture;
  LrDocument *document;
  GtkGesture *drag;
  LrStudy    *start;       /* of the committed plan at the press; NULL: nothing is dragged */
  char       *camera;      /* id, while it is dragged */
  LrVec2      press;       /* in the picture, 0..1 */
  gboolean    has_moved;
  double      scrolled;    /* parts of a step */
  gint64      column_us;   /* when the column was scrolled last */
  GtkAdjustment *column;   /* not held */
} Hand;

static const LrCameraReading *
get_reading (Hand *hand)
{
  return lr_study_find_camera (lr_document_get_study (hand->document), lr_finder_picture_get_camera (hand->picture));
}

static gboolean
may_edit (Hand *hand)
{
  if (!lr_document_get_plan (hand->document)->is_read_only)
    return TRUE;

  lr_document_say (hand->document, _("This plan can only be looked at: it was made by a newer version of Lookroom."));
  return FALSE;
}

static char *
title_of (const char   *format,
          const LrItem *item)
{
  g_autofree char *title = lr_item_title (item);

  return g_strdup_printf (format, title);
}

/* Does it as one step with those of its kind just before; says why it cannot be. Takes @reframe */
static void
commit (Hand       *hand,
        LrReframe  *reframe,
        const char *what,
        const char *merge_key)
{
  g_autoptr (LrReframe) owned = reframe;
  GError *error = NULL;
  LrPlan *next;

  if (!reframe->is_possible)
    {
      lr_document_say (hand->document, reframe->sentence);
      return;
    }

  next = lr_reframe_apply (reframe, lr_document_get_committed (hand->document), &error);
  if (next == NULL)
    {
      lr_document_say (hand->document, error->message);
      g_clear_error (&error);
      return;
    }
  lr_document_commit_merge (hand->document, next, what, merge_key);
  if (reframe->lens != NULL) /* a hand that turns a ring does not expect another lens */
    lr_document_say (hand->document, reframe->sentence);
}

static gboolean
to_frame (Hand   *hand,
          double  x,
          double  y,
          LrVec2 *place)
{
  graphene_rect_t area;

  if (!lr_finder_picture_get_area (hand->picture, &area) || area.size.width < 1.0f || area.size.height < 1.0f)
    return FALSE;

  *place = lr_vec2 ((x - (double) area.origin.x) / (double) area.size.width,
                    (y - (double) area.origin.y) / (double) area.size.height);
  return TRUE;
}

static void
forget_drag (Hand *hand)
{
  g_clear_pointer (&hand->start, lr_study_free);
  g_clear_pointer (&hand->camera, g_free);
  hand->has_moved = FALSE;
}

static void
drag_begin_cb (Hand   *hand,
               double  x,
               double  y)
{
  const LrCameraReading *camera = get_reading (hand);

  forget_drag (hand);
  if (camera == NULL || lr_document_has_preview (hand->document) || !to_frame (hand, x, y, &hand->press))
    return;

  hand->camera = g_strdup (camera->item->id);
  hand->start = lr_study_new_trial (lr_document_get_committed (hand->document));
}

static void
preview_turn (Hand   *hand,
              LrVec2  at)
{
  const LrCameraReading *camera = lr_study_find_camera (hand->start, hand->camera);
  g_autoptr (LrReframe) turn = camera != NULL ? lr_reframe_turn (hand->start, camera, hand->press, at) : NULL;
  LrPlan *next = turn != NULL ? lr_reframe_apply (turn, hand->start->plan, NULL) : NULL;

  if (next != NULL)
    lr_document_preview (hand->document, next);
}

static void
end_drag (Hand     *hand,
          gboolean  keep)
{
  const LrItem *item = hand->start != NULL ? lr_plan_find (hand->start->plan, hand->camera) : NULL;

  if (hand->has_moved && item != NULL)
    {
      g_autofree char *what = title_of (_("Pan %s"), item);

      lr_document_end_preview (hand->document, keep, what);
    }
  gtk_widget_set_cursor_from_name (GTK_WIDGET (hand->picture), "grab");
  forget_drag (hand);
}

static void
drag_update_cb (Hand   *hand,
                double  dx,
                double  dy)
{
  double x, y;
  LrVec2 at;

  if (hand->start == NULL)
    return;
  if (hand->start->plan != lr_document_get_committed (hand->document)) /* a key has changed it since the press */
    {
      end_drag (hand, FALSE);
      return;
    }
  if (!hand->has_moved)
    {
      if (hypot (dx, dy) < CLICK_PX)
        return;
      if (!may_edit (hand))
        {
          forget_drag (hand);
          return;
        }
      hand->has_moved = TRUE;
      gtk_widget_set_cursor_from_name (GTK_WIDGET (hand->picture), "grabbing");
    }

  gtk_gesture_drag_get_start_point (GTK_GESTURE_DRAG (hand->drag), &x, &y);
  if (to_frame (hand, x + dx, y + dy, &at))
    preview_turn (hand, at);
}

static void
drag_end_cb (Hand   *hand,
             double  dx,
             double  dy)
{
  end_drag (hand, TRUE);
}

static void
cancel_cb (Hand *hand)
{
  end_drag (hand, FALSE);
}

static void
zoom (Hand   *hand,
      double  steps)
{
  const LrCameraReading *camera = get_reading (hand);
  g_autofree char *what = NULL, *key = NULL;

  if (camera == NULL || hand->start != NULL || lr_document_has_preview (hand->document) || !may_edit (hand))
    return;

  what = title_of (_("Zoom %s"), camera->item);
  key = g_strconcat ("zoom:", camera->item->id, NULL);
  commit (hand, lr_reframe_zoom (lr_document_get_study (hand->document), camera, steps, lr_document_get_units (hand->document)),
          what, key);
}

static void
column_cb (LrFinderPicture *picture)
{
  Hand *hand = g_object_get_data (G_OBJECT (picture), KEY);

  hand->column_us = g_get_monotonic_time ();
}

static gboolean
scroll_cb (GtkEventControllerScroll *scroll,
           double                    dx,
           double                    dy,
           Hand                     *hand)
{
  double steps;

  if (g_get_monotonic_time () - hand->column_us < SCROLL_REST_US)
    return GDK_EVENT_PROPAGATE;

  hand->scrolled -= gtk_event_controller_scroll_get_unit (scroll) == GDK_SCROLL_UNIT_SURFACE ? dy / NOTCH_PX : dy;
  steps = trunc (hand->scrolled / STEP);
  if (steps != 0.0)
    {
      hand->scrolled -= steps;
      zoom (hand, steps);
    }
  return GDK_EVENT_STOP;
}

static void
pan (Hand   *hand,
     LrVec2  by)
{
  const LrCameraReading *camera = get_reading (hand);
  LrVec2 middle = { 0.5, 0.5 };
  g_autofree char *what = NULL, *key = NULL;

  if (camera == NULL || hand->start != NULL || lr_document_has_preview (hand->document) || !may_edit (hand))
    return;

  what = title_of (_("Pan %s"), camera->item);
  key = g_strconcat ("pan:", camera->item->id, NULL);
  commit (hand, lr_reframe_turn (lr_document_get_study (hand->document), camera, middle, lr_vec2_sub (middle, by)), what, key);
}

static gboolean
key_cb (Hand            *hand,
        guint            keyval,
        guint            keycode,
        GdkModifierType  state)
{
  double by = state & GDK_SHIFT_MASK ? FINE_KEY_SHARE : KEY_SHARE;

  if (state & (GDK_CONTROL_MASK | GDK_ALT_MASK))
    return GDK_EVENT_PROPAGATE;
  switch (keyval)
    {
    case GDK_KEY_Left:
      pan (hand, lr_vec2 (-by, 0.0));
      return GDK_EVENT_STOP;
    case GDK_KEY_Right:
      pan (hand, lr_vec2 (by, 0.0));
      return GDK_EVENT_STOP;
    case GDK_KEY_Up:
      pan (hand, lr_vec2 (0.0, -by));
      return GDK_EVENT_STOP;
    case GDK_KEY_Down:
      pan (hand, lr_vec2 (0.0, by));
      return GDK_EVENT_STOP;
    case GDK_KEY_plus:
    case GDK_KEY_equal:
    case GDK_KEY_KP_Add:
      zoom (hand, 1.0);
      return GDK_EVENT_STOP;
    case GDK_KEY_minus:
    case GDK_KEY_KP_Subtract:
      zoom (hand, -1.0);
      return GDK_EVENT_STOP;
    case GDK_KEY_Escape:
      if (!hand->has_moved)
        return GDK_EVENT_PROPAGATE;
      /* first: the gesture tells its end when it is denied */
      end_drag (hand, FALSE);
      gtk_gesture_set_state (hand->drag, GTK_EVENT_SEQUENCE_DENIED);
      return GDK_EVENT_STOP;
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

static void
map_cb (Hand *hand)
{
  GtkWidget *scroller = gtk_widget_get_ancestor (GTK_WIDGET (hand->picture), GTK_TYPE_SCROLLED_WINDOW);

  if (scroller == NULL || hand->column != NULL)
    return;

  hand->column = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scroller));
  g_signal_connect_object (hand->column, "value-changed", G_CALLBACK (column_cb), hand->picture,
                           G_CONNECT_SWAPPED);
}

static void
hand_free (gpointer data)
{
  Hand *hand = data;

  forget_drag (hand);
  g_free (hand);
}

/**
 * lr_finder_hand_add:
 * @picture: of a camera
 * @document: whose plan it shows; outlives @picture
 *
 * Lets the hand change where the camera looks and its lens.
 */
void
lr_finder_hand_add (LrFinderPicture *picture,
                    LrDocument      *document)
{
  Hand *hand = g_new0 (Hand, 1);
  GtkWidget *widget = GTK_WIDGET (picture);
  GtkEventController *scroll = gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_VERTICAL);
  GtkEventController *keys = gtk_event_controller_key_new ();

  hand->picture = picture;
  hand->document = document;
  hand->drag = gtk_gesture_drag_new ();
  g_object_set_data_full (G_OBJECT (picture), KEY, hand, hand_free);

  g_signal_connect_swapped (hand->drag, "drag-begin", G_CALLBACK (drag_begin_cb), hand);
  g_signal_connect_swapped (hand->drag, "drag-update", G_CALLBACK (drag_update_cb), hand);
  g_signal_connect_swapped (hand->drag, "drag-end", G_CALLBACK (drag_end_cb), hand);
  g_signal_connect_swapped (hand->drag, "cancel", G_CALLBACK (cancel_cb), hand);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (hand->drag));
  g_signal_connect (scroll, "scroll", G_CALLBACK (scroll_cb), hand);
  gtk_widget_add_controller (widget, scroll);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), hand);
  gtk_widget_add_controller (widget, keys);
  g_signal_connect_swapped (widget, "map", G_CALLBACK (map_cb), hand);
  gtk_widget_set_cursor_from_name (widget, "grab");
}
