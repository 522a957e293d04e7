/* canvas_drop.c - things from the Tray
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * While a thing hovers over the sheet it is a preview: it stands in the room and every reading counts it. Leaving takes it
 * away; dropping makes it one step of the history.
 */

#include "config.h"

#include "canvas_private.h"

#include <glib/gi18n-lib.h>

#include "placing.h"

static LrPlan *
bring (LrCanvas      *self,
       const char    *what,
       const LrVec2  *at_m,
       char         **id,
       GError       **error)
{
  g_autoptr (LrStudy) study = lr_study_new (lr_document_get_committed (self->document));

  return lr_placing_bring (study, what, at_m, lr_document_get_selected (self->document), id, error);
}

static LrVec2
drop_place_m (LrCanvas *self,
              LrVec2    at)
{
  LrVec2 at_m = lr_canvas_to_room (self, at);
  double step_m = lr_snap_step_m (self->view.scale);

  return lr_vec2 (lr_snap_value (at_m.x, step_m), lr_snap_value (at_m.y, step_m));
}

/**
 * lr_canvas_drop_motion:
 * @self: the sheet
 * @what: "kit:ID" or "room:WORD"
 * @at: where it hovers [px]
 *
 * Returns: whether it may be dropped there
 */
gboolean
lr_canvas_drop_motion (LrCanvas   *self,
                       const char *what,
                       LrVec2      at)
{
  LrVec2 at_m;
  g_autofree char *id = NULL;
  LrPlan *next;

  g_return_val_if_fail (LR_IS_CANVAS (self), FALSE);

  if (self->document == NULL || lr_document_get_plan (self->document)->is_read_only)
    return FALSE;

  at_m = drop_place_m (self, at);
  next = bring (self, what, &at_m, &id, NULL);
  if (next == NULL)
    {
      lr_canvas_drop_leave (self);
      return FALSE;
    }

  g_free (self->dropping);
  self->dropping = g_steal_pointer (&id);
  lr_document_preview (self->document, next);
  return TRUE;
}

/**
 * lr_canvas_drop_leave:
 * @self: the sheet
 *
 * The thing that hovered is gone again.
 */
void
lr_canvas_drop_leave (LrCanvas *self)
{
  g_return_if_fail (LR_IS_CANVAS (self));

  if (self->dropping == NULL)
    return;
  g_clear_pointer (&self->dropping, g_free);
  lr_document_end_preview (self->document, FALSE, NULL);
}

/* Commits, takes the thing in hand and gives the sheet the focus */
static gboolean
take_in (LrCanvas *self,
         LrPlan   *next,
         GError   *error,
         char     *id)
{
  g_autofree char *new_id = id;
  const LrItem *item = next != NULL && id != NULL ? lr_plan_find (next, id) : NULL;
  g_autofree char *title = item != NULL ? lr_item_title (item) : NULL;
  g_autofree char *what = g_strdup_printf (_("Place %s"), title != NULL ? title : "");

  if (!lr_canvas_commit (self, next, error, what, NULL))
    return FALSE;

  lr_document_select (self->document, new_id);
  lr_canvas_children_grab (self);
  return TRUE;
}

/**
 * lr_canvas_drop:
 * @self: the sheet
 * @what: "kit:ID" or "room:WORD"
 * @at: where it is dropped [px]
 *
 * Returns: whether it is in the room now
 */
gboolean
lr_canvas_drop (LrCanvas   *self,
                const char *what,
                LrVec2      at)
{
  LrVec2 at_m;
  char *id = NULL;
  GError *error = NULL;
  LrPlan *next;

  g_return_val_if_fail (LR_IS_CANVAS (self), FALSE);

  if (!lr_canvas_may_edit (self))
    return FALSE;

  lr_canvas_drop_leave (self);
  at_m = drop_place_m (self, at);
  next = bring (self, what, &at_m, &id, &error);
  return take_in (self, next, error, id);
}

/**
 * lr_canvas_place:
 * @self: the sheet
 * @what: "kit:ID" or "room:WORD"
 *
 * Brings the thing to a place that makes sense and takes it in hand.
 *
 * Returns: whether it is in the room now
 */
gboolean
lr_canvas_place (LrCanvas   *self,
                 const char *what)
{
  char *id = NULL;
  GError *error = NULL;
  LrPlan *next;

  g_return_val_if_fail (LR_IS_CANVAS (self), FALSE);

  if (!lr_canvas_may_edit (self))
    return FALSE;

  lr_canvas_drag_cancel (self);
  lr_canvas_leave_tool (self);
  next = bring (self, what, NULL, &id, &error);
  return take_in (self, next, error, id);
}

static GdkDragAction
motion_cb (LrCanvas      *self,
           double         x,
           double         y,
           GtkDropTarget *target)
{
  const GValue *value = gtk_drop_target_get_value (target);

  if (value == NULL || !G_VALUE_HOLDS_STRING (value))
    return GDK_ACTION_COPY; /* a file is looked at when it is dropped */
  return lr_canvas_drop_motion (self, g_value_get_string (value), lr_vec2 (x, y)) ? GDK_ACTION_COPY : 0;
}

/* A picture of a floor plan; of several the first */
static gboolean
drop_files (LrCanvas          *self,
            const GdkFileList *list)
{
  g_autoptr (GSList) files = gdk_file_list_get_files ((GdkFileList *) list);

  if (files == NULL || !lr_canvas_may_edit (self))
    return FALSE;
  lr_canvas_trace_file (self, files->data);
  return TRUE;
}

static gboolean
drop_cb (LrCanvas      *self,
         const GValue  *value,
         double         x,
         double         y,
         GtkDropTarget *target)
{
  if (G_VALUE_HOLDS (value, GDK_TYPE_FILE_LIST))
    return drop_files (self, g_value_get_boxed (value));
  return G_VALUE_HOLDS_STRING (value) && lr_canvas_drop (self, g_value_get_string (value), lr_vec2 (x, y));
}

/**
 * lr_canvas_drop_init:
 * @self: a canvas
 *
 * Takes what is dragged out of the Tray, and pictures of floor plans from elsewhere.
 */
void
lr_canvas_drop_init (LrCanvas *self)
{
  GtkDropTarget *target = gtk_drop_target_new (G_TYPE_STRING, GDK_ACTION_COPY);

  gtk_drop_target_set_gtypes (target, (GType[]) { GDK_TYPE_FILE_LIST, G_TYPE_STRING }, 2);
  gtk_drop_target_set_preload (target, TRUE);
  g_signal_connect_swapped (target, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect_swapped (target, "leave", G_CALLBACK (lr_canvas_drop_leave), self);
  g_signal_connect_swapped (target, "drop", G_CALLBACK (drop_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (target));
}
