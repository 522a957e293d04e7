/* canvas_trace.c - the picture of a floor plan under the room: brought, decoded, shown
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The plan has the bytes; what they look like is found out once, while the window goes on, and kept here as long as the plan shown
 * has the same picture. Its scale begins as a guess, which the scale tool mends (trace_scale.c).
 */

#include "config.h"

#include "canvas_private.h"

#include <glib/gi18n-lib.h>

#include "picture_load.h"
#include "read_file.h"

/* Until a length of it is known, the longer side of a picture is so long [m] */
#define GUESSED_SIDE_M 10.0

/* Where there is a room, the picture is this much longer than it */
#define GUESSED_SHARE 1.25

#define MARGIN_PX 36.0

typedef struct
{
  LrCanvas      *canvas;
  LrPictureFile *file;
  char          *name;
} Import;

static void
free_import (Import *import)
{
  g_object_unref (import->canvas);
  lr_picture_file_unref (import->file);
  g_free (import->name);
  g_free (import);
}

static int
page_of (const LrRoom *room)
{
  return MAX (room->underlay_page, 1);
}

/* Takes @picture, which is what @file looks like; both may be NULL */
static void
keep (LrCanvas            *self,
      const LrPictureFile *file,
      int                  page,
      LrUnderlay          *picture)
{
  LrPictureFile *before = self->trace.of;

  if (self->trace.loading != NULL)
    g_cancellable_cancel (self->trace.loading);
  g_clear_object (&self->trace.loading);
  g_clear_pointer (&self->trace.picture, lr_underlay_unref);
  self->trace.of = file != NULL ? lr_picture_file_ref (file) : NULL;
  self->trace.page = page;
  self->trace.picture = picture;
  g_clear_pointer (&before, lr_picture_file_unref);
  self->view.underlay = picture;
  lr_canvas_layers_invalidate (self);
}

static void
loaded_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  g_autoptr (LrCanvas) self = data;
  g_autoptr (GError) error = NULL;
  LrUnderlay *picture = lr_picture_load_finish (result, &error);

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;

  g_clear_object (&self->trace.loading);
  if (picture == NULL)
    {
      /* Translators: why the picture of a floor plan is not to be seen: "is damaged" */
      g_autofree char *sentence = g_strdup_printf (_("The picture of the floor plan %s."), error->message);

      if (self->document != NULL)
        lr_document_say (self->document, sentence);
      return;
    }
  keep (self, self->trace.of, self->trace.page, picture);
  if (self->fits && self->document != NULL)
    lr_canvas_place_room (self);
}

/**
 * lr_canvas_trace_sync:
 * @self: a canvas with a document
 *
 * The plan shown is another: finds out what its picture looks like, unless that is known.
 */
void
lr_canvas_trace_sync (LrCanvas *self)
{
  const LrRoom *room = lr_canvas_get_room (self);
  int page = page_of (room);

  if ((room->underlay == NULL || room->underlay_is_hidden) && self->tool != NULL && self->tool->needs_picture)
    lr_canvas_leave_tool (self);
  if (room->underlay == self->trace.of && (room->underlay == NULL || page == self->trace.page))
    return;

  keep (self, room->underlay, page, NULL);
  if (room->underlay == NULL)
    return;
  self->trace.loading = g_cancellable_new ();
  lr_picture_load (room->underlay, page, self->trace.loading, loaded_cb, g_object_ref (self));
}

/**
 * lr_canvas_trace_clear:
 * @self: a canvas
 *
 * Lets go of the picture and of what is under way.
 */
void
lr_canvas_trace_clear (LrCanvas *self)
{
  if (self->trace.importing != NULL)
    g_cancellable_cancel (self->trace.importing);
  g_clear_object (&self->trace.importing);
  if (self->trace.chooser != NULL)
    gtk_native_dialog_destroy (GTK_NATIVE_DIALOG (self->trace.chooser));
  g_clear_object (&self->trace.chooser);
  if (self->trace.loading != NULL)
    g_cancellable_cancel (self->trace.loading);
  g_clear_object (&self->trace.loading);
  self->view.underlay = NULL;
  g_clear_pointer (&self->trace.picture, lr_underlay_unref);
  g_clear_pointer (&self->trace.of, lr_picture_file_unref);
  g_clear_pointer (&self->trace.popover, gtk_widget_unparent);
}

/**
 * lr_canvas_get_underlay:
 * @self: the sheet
 *
 * Returns: (transfer none) (nullable): what the picture under the room looks like, once that is known
 */
LrUnderlay *
lr_canvas_get_underlay (LrCanvas *self)
{
  g_return_val_if_fail (LR_IS_CANVAS (self), NULL);

  return self->trace.picture;
}

/**
 * lr_canvas_trace_lies:
 * @self: a canvas
 * @lies: (out): how the picture lies on the floor
 *
 * Returns: whether there is a picture that can be seen
 */
gboolean
lr_canvas_trace_lies (LrCanvas     *self,
                      LrSimilarity *lies)
{
  const LrRoom *room = lr_canvas_get_room (self);

  return room != NULL && self->trace.picture != NULL && !room->underlay_is_hidden && lr_room_underlay (room, lies);
}

static void
grow (LrVec2        *low,
      LrVec2        *high,
      const LrVec2  *points_m,
      gsize          n)
{
  for (gsize i = 0; i < n; i++)
    {
      *low = lr_vec2 (fmin (low->x, points_m[i].x), fmin (low->y, points_m[i].y));
      *high = lr_vec2 (fmax (high->x, points_m[i].x), fmax (high->y, points_m[i].y));
    }
}

/**
 * lr_canvas_trace_fit:
 * @self: a canvas
 *
 * Shows the whole picture.
 *
 * Returns: %FALSE if there is none to be seen
 */
gboolean
lr_canvas_trace_fit (LrCanvas *self)
{
  LrView *view = &self->view;
  LrVec2 corners_m[4], low, high;
  LrSimilarity lies;

  if (view->width < 1.0 || view->height < 1.0 || !lr_canvas_trace_lies (self, &lies))
    return FALSE;

  lr_underlay_corners (self->trace.picture, &lies, corners_m);
  low = high = corners_m[0];
  grow (&low, &high, corners_m, 4);
  view->scale = fmin (fmax (view->width - 2.0 * MARGIN_PX, 1.0) / fmax (high.x - low.x, 0.01),
                      fmax (view->height - 2.0 * MARGIN_PX, 1.0) / fmax (high.y - low.y, 0.01));
  lr_canvas_clamp_scale (self);
  view->origin = lr_vec2 (round (0.5 * (view->width - (low.x + high.x) * view->scale)),
                          round (0.5 * (view->height + (low.y + high.y) * view->scale)));
  return TRUE;
}

/* Where a picture lies whose scale nobody knows: about the room, or about 0, 0 */
static LrSimilarity
guess (const LrRoom     *room,
       const LrUnderlay *picture)
{
  double width_px, height_px;
  LrSimilarity lies = { .scale = 1.0 };
  LrVec2 low, high;

  lr_underlay_get_size (picture, &width_px, &height_px);
  lies.scale = CLAMP (GUESSED_SIDE_M / fmax (width_px, height_px), 1e-5, 10.0);
  if (room->n_corners == 0)
    return lies;

  low = high = room->corners_m[0];
  grow (&low, &high, room->corners_m, room->n_corners);
  lies.scale = CLAMP (GUESSED_SHARE * fmax (high.x - low.x, high.y - low.y) / fmax (width_px, height_px), 1e-5, 10.0);
  lies.origin_m = lr_vec2 (0.5 * (low.x + high.x - lies.scale * width_px), 0.5 * (low.y + high.y - lies.scale * height_px));
  return lies;
}

static void
imported_cb (GObject      *source,
             GAsyncResult *result,
             gpointer      data)
{
  Import *import = data;
  LrCanvas *self = import->canvas;
  g_autoptr (GError) error = NULL;
  LrUnderlay *picture = lr_picture_load_finish (result, &error);
  LrSimilarity lies;
  LrPlan *next;

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED) || self->document == NULL)
    {
      g_clear_pointer (&picture, lr_underlay_unref);
      free_import (import);
      return;
    }

  g_clear_object (&self->trace.importing);
  lr_canvas_set_hint (self, NULL);
  if (picture == NULL)
    {
      /* Translators: a file's name, and what is wrong with it: "is damaged" */
      g_autofree char *sentence = g_strdup_printf (_("“%s” %s."), import->name, error->message);

      lr_document_say (self->document, sentence);
      free_import (import);
      return;
    }

  lies = guess (lr_plan_get_setup (lr_document_get_committed (self->document))->room, picture);
  keep (self, import->file, 1, picture);
  g_clear_error (&error);
  next = lr_plan_set_underlay (lr_document_get_committed (self->document), import->file, import->name, &lies, &error);
  free_import (import);
  if (!lr_canvas_commit (self, next, g_steal_pointer (&error), _("Lay a picture under the room"), NULL))
    {
      lr_canvas_trace_sync (self);
      return;
    }
  self->fits = FALSE;
  lr_canvas_trace_fit (self);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
  g_object_notify (G_OBJECT (self), "zoom-denominator");
  lr_canvas_trace_scale (self);
}

/**
 * lr_canvas_trace_file:
 * @self: the sheet
 * @file: a picture of a floor plan
 *
 * Lays it under the room as one step, as soon as it is known what it looks like, and starts the scale tool. If it cannot be used,
 * that is said, and nothing has changed.
 */
void
lr_canvas_trace_file (LrCanvas *self,
                      GFile    *file)
{
  g_autofree char *base = g_file_get_basename (file), *name = base != NULL ? g_filename_display_name (base) : g_strdup ("");
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = NULL;
  LrPictureFile *picture = NULL;
  Import *import;

  g_return_if_fail (LR_IS_CANVAS (self));

  if (!lr_canvas_may_edit (self))
    return;

  bytes = lr_read_file (file, LR_PICTURE_MAX_BYTES, &error);
  if (bytes != NULL)
    picture = lr_picture_file_new_from_data (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), &error);
  if (picture == NULL)
    {
      /* Translators: a file's name, and why it cannot be used: "it is no PNG, JPEG, SVG or PDF" */
      g_autofree char *sentence = g_strdup_printf (_("“%s” cannot be used: %s."), name, error->message);

      lr_document_say (self->document, sentence);
      return;
    }

  lr_canvas_drag_cancel (self);
  lr_canvas_leave_tool (self);
  if (self->trace.importing != NULL)
    g_cancellable_cancel (self->trace.importing);
  g_clear_object (&self->trace.importing);
  self->trace.importing = g_cancellable_new ();
  import = g_new0 (Import, 1);
  import->canvas = g_object_ref (self);
  import->file = picture;
  import->name = g_steal_pointer (&name);
  lr_canvas_set_hint (self, _("The picture is being read…"));
  lr_picture_load (picture, 1, self->trace.importing, imported_cb, import);
}

static void
response_cb (GtkNativeDialog *dialog,
             int              response,
             LrCanvas        *self)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));

  g_clear_object (&self->trace.chooser);
  if (response == GTK_RESPONSE_ACCEPT && file != NULL)
    lr_canvas_trace_file (self, file);
}

static void
add_filters (GtkFileChooser *chooser)
{
  static const char *const suffixes[] = { "png", "jpg", "jpeg", "svg", "pdf" };
  g_autoptr (GtkFileFilter) pictures = gtk_file_filter_new (), all = gtk_file_filter_new ();

#ifdef LR_HAS_POPPLER
  gtk_file_filter_set_name (pictures, _("Pictures (PNG, JPEG, SVG, PDF)"));
#else
  gtk_file_filter_set_name (pictures, _("Pictures (PNG, JPEG, SVG; this Lookroom was built without PDF)"));
#endif
  for (gsize i = 0; i < G_N_ELEMENTS (suffixes); i++)
    gtk_file_filter_add_suffix (pictures, suffixes[i]);
  gtk_file_chooser_add_filter (chooser, pictures);
  gtk_file_filter_set_name (all, _("All files"));
  gtk_file_filter_add_pattern (all, "*");
  gtk_file_chooser_add_filter (chooser, all);
}

static void
trace_picture_action (GtkWidget  *widget,
                      const char *name,
                      GVariant   *parameter)
{
  LrCanvas *self = LR_CANVAS (widget);
  GtkRoot *root = gtk_widget_get_root (widget);

  if (self->trace.chooser != NULL || !lr_canvas_may_edit (self))
    return;

  self->trace.chooser = gtk_file_chooser_native_new (_("Picture of a floor plan"), GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL,
                                                     GTK_FILE_CHOOSER_ACTION_OPEN, _("_Use"), _("_Cancel"));
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->trace.chooser), TRUE);
  add_filters (GTK_FILE_CHOOSER (self->trace.chooser));
  g_signal_connect_object (self->trace.chooser, "response", G_CALLBACK (response_cb), self, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->trace.chooser));
}

static void
scale_picture_action (GtkWidget  *widget,
                      const char *name,
                      GVariant   *parameter)
{
  lr_canvas_trace_scale (LR_CANVAS (widget));
}

static void
move_picture_action (GtkWidget  *widget,
                     const char *name,
                     GVariant   *parameter)
{
  lr_canvas_trace_move (LR_CANVAS (widget));
}

/* Shown or hidden, the other way round */
static void
show_picture_action (GtkWidget  *widget,
                     const char *name,
                     GVariant   *parameter)
{
  LrCanvas *self = LR_CANVAS (widget);
  const LrRoom *room = lr_canvas_get_room (self);
  GError *error = NULL;
  LrPlan *next;

  if (room == NULL || room->underlay == NULL || !lr_canvas_may_edit (self))
    return;

  lr_canvas_drag_cancel (self);
  next = lr_plan_set_room (lr_document_get_committed (self->document), "underlay-is-hidden", !room->underlay_is_hidden, &error);
  lr_canvas_commit (self, next, error, room->underlay_is_hidden ? _("Show the picture") : _("Hide the picture"), NULL);
}

static void
remove_picture_action (GtkWidget  *widget,
                       const char *name,
                       GVariant   *parameter)
{
  LrCanvas *self = LR_CANVAS (widget);
  const LrRoom *room = lr_canvas_get_room (self);
  GError *error = NULL;
  LrPlan *next;

  if (room == NULL || room->underlay == NULL || !lr_canvas_may_edit (self))
    return;

  lr_canvas_drag_cancel (self);
  lr_canvas_leave_tool (self);
  next = lr_plan_set_underlay (lr_document_get_committed (self->document), NULL, "", NULL, &error);
  lr_canvas_commit (self, next, error, _("Remove the picture"), NULL);
}

/**
 * lr_canvas_trace_install:
 * @klass: the class
 *
 * Installs the actions of the picture under the room.
 */
void
lr_canvas_trace_install (GtkWidgetClass *klass)
{
  gtk_widget_class_install_action (klass, "canvas.trace-picture", NULL, trace_picture_action);
  gtk_widget_class_install_action (klass, "canvas.scale-picture", NULL, scale_picture_action);
  gtk_widget_class_install_action (klass, "canvas.move-picture", NULL, move_picture_action);
  gtk_widget_class_install_action (klass, "canvas.show-picture", NULL, show_picture_action);
  gtk_widget_class_install_action (klass, "canvas.remove-picture", NULL, remove_picture_action);
}
