/* viewfinders.c - what two cameras see, one above the other, because they will be cut against each other
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "viewfinders.h"

#include "finder.h"

#include <glib/gi18n-lib.h>

#define N_FINDERS 2

struct _LrViewfinders
{
  GtkWidget   parent_instance;

  LrDocument *document;
  GtkWidget  *finders[N_FINDERS];
  int         turn;       /* whose picture is painted next while something moves */
  guint       tick;       /* paints what is due when nothing moves any more */
  int         n_waited;   /* frames */
};

G_DEFINE_FINAL_TYPE (LrViewfinders, lr_viewfinders, GTK_TYPE_WIDGET)

static gboolean
is_shown_by_other (LrViewfinders *self,
                   int            index,
                   const char    *id)
{
  for (int i = 0; i < N_FINDERS; i++)
    if (i != index && g_strcmp0 (lr_finder_get_camera (LR_FINDER (self->finders[i])), id) == 0)
      return TRUE;
  return FALSE;
}

/* A finder whose camera is gone, or that never had one, takes the first that no other one shows */
static const char *
choose_camera (LrViewfinders *self,
               int            index)
{
  const LrStudy *study = lr_document_get_study (self->document);
  const char *id = lr_finder_get_camera (LR_FINDER (self->finders[index]));

  if (id != NULL && lr_study_find_camera (study, id) != NULL)
    return id;

  for (guint i = 0; i < study->cameras->len; i++)
    {
      const char *candidate = g_array_index (study->cameras, LrCameraReading, i).item->id;

      if (!is_shown_by_other (self, index, candidate))
        return candidate;
    }
  return NULL;
}

static void
update_pictures (LrViewfinders *self)
{
  for (int i = 0; i < N_FINDERS; i++)
    lr_finder_update_picture (LR_FINDER (self->finders[i]));
}

static gboolean
tick_cb (GtkWidget     *widget,
         GdkFrameClock *clock,
         gpointer       data)
{
  LrViewfinders *self = LR_VIEWFINDERS (widget);

  if (self->n_waited++ == 0)
    return G_SOURCE_CONTINUE;

  self->tick = 0;
  update_pictures (self);
  return G_SOURCE_REMOVE;
}

/* While something moves, each frame paints one picture at the most: two cost more than a frame has time for */
static void
update_one_picture (LrViewfinders *self)
{
  lr_finder_update_picture (LR_FINDER (self->finders[self->turn]));
  self->turn = (self->turn + 1) % N_FINDERS;
  self->n_waited = 0;
  if (self->tick == 0)
    self->tick = gtk_widget_add_tick_callback (GTK_WIDGET (self), tick_cb, NULL, NULL);
}

static void
changed_cb (LrViewfinders *self)
{
  guint n_cameras = lr_document_get_study (self->document)->cameras->len;

  for (int i = 0; i < N_FINDERS; i++)
    {
      LrFinder *finder = LR_FINDER (self->finders[i]);
      const char *id = choose_camera (self, i);

      /* one invitation to place a camera at a time */
      gtk_widget_set_visible (self->finders[i], (guint) i <= n_cameras);

      if (g_strcmp0 (id, lr_finder_get_camera (finder)) != 0)
        lr_finder_set_camera (finder, id);
      else
        lr_finder_update (finder);
    }

  if (lr_document_has_preview (self->document))
    update_one_picture (self);
  else
    update_pictures (self);
}

static void
lr_viewfinders_dispose (GObject *object)
{
  LrViewfinders *self = LR_VIEWFINDERS (object);

  if (self->tick != 0)
    gtk_widget_remove_tick_callback (GTK_WIDGET (self), self->tick);
  self->tick = 0;
  for (int i = 0; i < N_FINDERS; i++)
    g_clear_pointer (&self->finders[i], gtk_widget_unparent);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (lr_viewfinders_parent_class)->dispose (object);
}

static void
lr_viewfinders_class_init (LrViewfindersClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_viewfinders_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "viewfinders");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lr_viewfinders_init (LrViewfinders *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 4);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Viewfinders"), -1);
}

/**
 * lr_viewfinders_set_document:
 * @document: whose cameras are shown; once
 */
void
lr_viewfinders_set_document (LrViewfinders *self,
                             LrDocument    *document)
{
  g_return_if_fail (self->document == NULL);

  self->document = g_object_ref (document);
  for (int i = 0; i < N_FINDERS; i++)
    {
      self->finders[i] = lr_finder_new (document);
      gtk_widget_set_parent (self->finders[i], GTK_WIDGET (self));
    }
  g_signal_connect_object (document, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  changed_cb (self);
}

/**
 * lr_viewfinders_set_max_height:
 * @max_height_px: no picture is higher than that [px]
 */
void
lr_viewfinders_set_max_height (LrViewfinders *self,
                               int            max_height_px)
{
  for (int i = 0; i < N_FINDERS; i++)
    if (self->finders[i] != NULL)
      lr_finder_set_max_height (LR_FINDER (self->finders[i]), max_height_px);
}
