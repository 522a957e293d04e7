/* canvas_drag.c - the pointer: taking in hand, moving, letting go
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Gestures only forward to the public functions, so that a test can drag without a pointer. While something is held, every
 * place that it may take becomes a preview of the document; letting go makes one step of the history.
 */

#include "config.h"

#include "canvas_private.h"

#include <glib/gi18n-lib.h>

/* A press that strays less than this is a click */
#define CLICK_PX 4.0

static const LrGrip grip_of_hit[] = {
  [LR_HIT_NOTHING]   = LR_GRIP_PAPER,
  [LR_HIT_ITEM]      = LR_GRIP_ITEM,
  [LR_HIT_TURN_KNOB] = LR_GRIP_TURN,
  [LR_HIT_SIZE_KNOB] = LR_GRIP_SIZE,
  [LR_HIT_PATH_KNOB] = LR_GRIP_POINT,
  [LR_HIT_CORNER]    = LR_GRIP_CORNER,
  [LR_HIT_WALL]      = LR_GRIP_WALL,
};

static LrHit
hit_at (LrCanvas *self,
        LrVec2    at)
{
  return lr_floor_hit (lr_document_get_study (self->document), lr_canvas_get_view (self), at);
}

static void
forget_drag (LrCanvas *self)
{
  g_clear_pointer (&self->drag.id, g_free);
  g_clear_pointer (&self->drag.refusal, g_free);
  self->drag.grip = LR_GRIP_NONE;
  self->drag.has_moved = FALSE;
  self->drag.snap.why = 0;
  g_clear_pointer (&self->hold_note, g_free);
}

/**
 * lr_canvas_drag_begin:
 * @self: the sheet
 * @at: where the button went down [px]
 * @state: modifiers held
 *
 * Takes the thing there in hand. A wall or a corner is held only when the room is in hand (a click on a wall takes it), so
 * that a room is not bent by chance; else the paper is.
 */
void
lr_canvas_drag_begin (LrCanvas        *self,
                      LrVec2           at,
                      GdkModifierType  state)
{
  LrCanvasDrag *drag = &self->drag;
  LrHit hit;

  g_return_if_fail (LR_IS_CANVAS (self));

  if (self->document == NULL)
    return;

  lr_canvas_drag_cancel (self);
  drag->press = at;
  drag->origin = self->view.origin;
  drag->grip = LR_GRIP_PAPER;
  if (self->tool != NULL)
    return;

  hit = hit_at (self, at);
  drag->grip = grip_of_hit[hit.type];
  drag->index = hit.index;
  drag->id = g_strdup (hit.id);
  if ((drag->grip == LR_GRIP_CORNER || drag->grip == LR_GRIP_WALL) && !self->has_room_in_hand)
    drag->grip = LR_GRIP_PAPER;

  drag->offset_m = lr_vec2_sub (lr_canvas_grip_point_m (self, at), lr_canvas_to_room (self, at));
  lr_document_point_at (self->document, NULL);
  if (drag->grip == LR_GRIP_ITEM)
    lr_document_select (self->document, drag->id);
}

/* The preview at this place; a refusal is kept and said only if the thing is let go there */
static void
preview_at (LrCanvas        *self,
            LrVec2           at,
            GdkModifierType  state)
{
  g_autoptr (GError) error = NULL;
  LrPlan *next = lr_canvas_grip_next (self, at, state, &error);

  g_clear_pointer (&self->drag.refusal, g_free);
  if (next != NULL)
    lr_document_preview (self->document, next);
  else if (error != NULL)
    self->drag.refusal = g_strdup (error->message);
}

/**
 * lr_canvas_drag_update:
 * @self: the sheet
 * @at: where the pointer is [px]
 * @state: modifiers held: Control frees the thing from every pull
 */
void
lr_canvas_drag_update (LrCanvas        *self,
                       LrVec2           at,
                       GdkModifierType  state)
{
  LrCanvasDrag *drag = &self->drag;

  g_return_if_fail (LR_IS_CANVAS (self));

  if (drag->grip == LR_GRIP_NONE)
    return;

  if (!drag->has_moved)
    {
      if (lr_vec2_distance (at, drag->press) < CLICK_PX)
        return;
      if (drag->grip != LR_GRIP_PAPER && !lr_canvas_may_edit (self))
        {
          forget_drag (self);
          return;
        }
      drag->has_moved = TRUE;
    }

  if (self->tool != NULL && self->tool->drag != NULL)
    self->tool->drag (self, drag->press, at, FALSE);
  else if (drag->grip == LR_GRIP_PAPER)
    lr_canvas_pan (self, lr_vec2_sub (lr_vec2_add (drag->origin, lr_vec2_sub (at, drag->press)), self->view.origin));
  else
    preview_at (self, at, state);
}

/* A press that did not move: paper lets go of what is in hand, a wall is taken */
static void
click_at (LrCanvas        *self,
          LrVec2           at,
          GdkModifierType  state)
{
  LrHit hit;

  if (self->tool != NULL)
    {
      self->tool->click (self, at, state);
      return;
    }
  if (self->drag.grip != LR_GRIP_PAPER)
    return;

  hit = hit_at (self, at);
  lr_document_take_remark (self->document, NULL);
  lr_document_select (self->document, NULL);
  lr_canvas_take_wall (self, hit.type == LR_HIT_WALL ? hit.index : -1);
}

/**
 * lr_canvas_drag_end:
 * @self: the sheet
 * @at: where the button came up [px]
 * @state: modifiers held
 *
 * Makes one step of the history of what was moved.
 */
void
lr_canvas_drag_end (LrCanvas        *self,
                    LrVec2           at,
                    GdkModifierType  state)
{
  LrCanvasDrag *drag = &self->drag;

  g_return_if_fail (LR_IS_CANVAS (self));

  if (drag->grip == LR_GRIP_NONE)
    return;

  if (!drag->has_moved)
    click_at (self, at, state);
  else if (self->tool != NULL && self->tool->drag != NULL)
    self->tool->drag (self, drag->press, at, TRUE);
  else if (drag->grip != LR_GRIP_PAPER)
    {
      g_autofree char *what = lr_canvas_grip_title (self);

      if (drag->refusal != NULL)
        lr_document_say (self->document, drag->refusal);
      lr_document_end_preview (self->document, TRUE, what);
      lr_canvas_hold_end (self);
    }

  forget_drag (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/**
 * lr_canvas_drag_cancel:
 * @self: the sheet
 *
 * What was moved stands where it stood before; paper goes back too.
 */
void
lr_canvas_drag_cancel (LrCanvas *self)
{
  LrCanvasDrag *drag = &self->drag;

  g_return_if_fail (LR_IS_CANVAS (self));

  if (drag->grip == LR_GRIP_NONE)
    return;

  if (drag->has_moved && drag->grip == LR_GRIP_PAPER && (self->tool == NULL || self->tool->drag == NULL))
    lr_canvas_pan (self, lr_vec2_sub (drag->origin, self->view.origin));
  else if (drag->has_moved)
    lr_document_end_preview (self->document, FALSE, NULL);

  forget_drag (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/**
 * lr_canvas_is_dragging:
 * @self: the sheet
 *
 * Returns: whether something, not the paper, moves with the pointer
 */
gboolean
lr_canvas_is_dragging (LrCanvas *self)
{
  g_return_val_if_fail (LR_IS_CANVAS (self), FALSE);

  return self->drag.has_moved && self->drag.grip != LR_GRIP_PAPER;
}

static const char *cursor_of_hit[] = {
  [LR_HIT_NOTHING]   = NULL,
  [LR_HIT_ITEM]      = "pointer",
  [LR_HIT_TURN_KNOB] = "grab",
  [LR_HIT_SIZE_KNOB] = "crosshair",
  [LR_HIT_PATH_KNOB] = "crosshair",
  [LR_HIT_CORNER]    = "crosshair",
  [LR_HIT_WALL]      = "pointer",
};

/**
 * lr_canvas_hover:
 * @self: the sheet
 * @at: where the pointer is [px]
 * @state: modifiers held
 */
void
lr_canvas_hover (LrCanvas        *self,
                 LrVec2           at,
                 GdkModifierType  state)
{
  LrHit hit;
  const char *cursor;

  g_return_if_fail (LR_IS_CANVAS (self));

  self->pointer = at;
  self->has_pointer = TRUE;
  if (self->document == NULL || self->drag.grip != LR_GRIP_NONE)
    return;
  if (self->tool != NULL)
    {
      gtk_widget_set_cursor_from_name (GTK_WIDGET (self), "crosshair");
      self->tool->hover (self, at, state);
      return;
    }
  if (self->dropping != NULL)
    return;

  hit = hit_at (self, at);
  cursor = cursor_of_hit[hit.type];
  if (hit.type == LR_HIT_CORNER && !self->has_room_in_hand)
    cursor = NULL;
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), cursor);
  lr_document_point_at (self->document, hit.type == LR_HIT_ITEM ? hit.id : NULL);
}

/**
 * lr_canvas_click:
 * @self: the sheet
 * @at: where [px]
 * @n_press: 2 for a double click
 *
 * A double click on a wall or on its dimension asks for its length.
 */
void
lr_canvas_click (LrCanvas *self,
                 LrVec2    at,
                 int       n_press)
{
  LrHit hit;
  int wall;

  g_return_if_fail (LR_IS_CANVAS (self));

  if (self->document == NULL || n_press != 2 || self->tool != NULL)
    return;

  hit = hit_at (self, at);
  if (hit.type == LR_HIT_ITEM)
    return;
  wall = hit.type == LR_HIT_WALL ? hit.index : lr_canvas_wall_at (self, at);
  if (wall >= 0)
    {
      lr_canvas_drag_cancel (self);
      lr_canvas_ask_length (self, wall);
    }
}

static GdkModifierType
state_of (gpointer controller)
{
  return gtk_event_controller_get_current_event_state (controller);
}

static void
press_cb (LrCanvas   *self,
          double      x,
          double      y,
          GtkGesture *gesture)
{
  lr_canvas_drag_begin (self, lr_vec2 (x, y), state_of (gesture));
  lr_canvas_children_grab (self);
}

static void
drag_cb (LrCanvas   *self,
         double      dx,
         double      dy,
         GtkGesture *gesture)
{
  lr_canvas_drag_update (self, lr_vec2_add (self->drag.press, lr_vec2 (dx, dy)), state_of (gesture));
}

static void
release_cb (LrCanvas   *self,
            double      dx,
            double      dy,
            GtkGesture *gesture)
{
  lr_canvas_drag_end (self, lr_vec2_add (self->drag.press, lr_vec2 (dx, dy)), state_of (gesture));
}

static gboolean
double_click_cb (gpointer data)
{
  LrCanvas *self = data;

  self->drag.click_id = 0;
  lr_canvas_click (self, self->drag.press, 2);
  return G_SOURCE_REMOVE;
}

/* After the drag gesture has seen the same release, which would take the focus away from what a double click opens */
static void
click_cb (LrCanvas   *self,
          int         n_press,
          double      x,
          double      y,
          GtkGesture *gesture)
{
  if (n_press != 2)
    return;
  g_clear_handle_id (&self->drag.click_id, g_source_remove);
  self->drag.click_id = g_idle_add (double_click_cb, self);
}

static void
motion_cb (LrCanvas           *self,
           double              x,
           double              y,
           GtkEventController *motion)
{
  lr_canvas_hover (self, lr_vec2 (x, y), state_of (motion));
}

static void
leave_cb (LrCanvas *self)
{
  self->has_pointer = FALSE;
  if (self->document != NULL && self->drag.grip == LR_GRIP_NONE)
    lr_document_point_at (self->document, NULL);
}

/**
 * lr_canvas_drag_init:
 * @self: a canvas
 *
 * Adds press, drag and pointing.
 */
void
lr_canvas_drag_init (LrCanvas *self)
{
  GtkGesture *drag = gtk_gesture_drag_new ();
  GtkGesture *click = gtk_gesture_click_new ();
  GtkEventController *motion = gtk_event_controller_motion_new ();

  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (press_cb), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (drag_cb), self);
  g_signal_connect_swapped (drag, "drag-end", G_CALLBACK (release_cb), self);
  g_signal_connect_swapped (drag, "cancel", G_CALLBACK (lr_canvas_drag_cancel), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));

  g_signal_connect_swapped (click, "released", G_CALLBACK (click_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  gtk_gesture_group (drag, click);

  g_signal_connect_swapped (motion, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (leave_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
}

/**
 * lr_canvas_drag_clear:
 * @self: a canvas
 *
 * Ends a drag without a step.
 */
void
lr_canvas_drag_clear (LrCanvas *self)
{
  g_clear_handle_id (&self->drag.click_id, g_source_remove);
  forget_drag (self);
}
