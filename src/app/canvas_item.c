/* canvas_item.c - a thing on the sheet as the keyboard and assistive technology meet it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "canvas_item.h"

struct _LrCanvasItem
{
  GtkWidget    parent_instance;
  char        *id, *name, *description;
  gboolean     is_selected;
  GdkRectangle box;
};

enum
{
  TAKEN,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (LrCanvasItem, lr_canvas_item, GTK_TYPE_WIDGET)

static void
focus_in_cb (LrCanvasItem *self)
{
  g_signal_emit (self, signals[TAKEN], 0);
}

static void
select_action (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  gtk_widget_grab_focus (widget);
  g_signal_emit (widget, signals[TAKEN], 0);
}

static void
lr_canvas_item_finalize (GObject *object)
{
  LrCanvasItem *self = LR_CANVAS_ITEM (object);

  g_free (self->id);
  g_free (self->name);
  g_free (self->description);
  G_OBJECT_CLASS (lr_canvas_item_parent_class)->finalize (object);
}

static void
lr_canvas_item_class_init (LrCanvasItemClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = lr_canvas_item_finalize;

  signals[TAKEN] = g_signal_new ("taken", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_install_action (widget_class, "item.select", NULL, select_action);
  gtk_widget_class_set_css_name (widget_class, "thing");
}

static void
lr_canvas_item_init (LrCanvasItem *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();

  g_signal_connect_swapped (focus, "enter", G_CALLBACK (focus_in_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_can_target (GTK_WIDGET (self), FALSE);
}

/**
 * lr_canvas_item_new:
 * @id: of the item that it stands for
 *
 * Returns: (transfer floating): its widget
 */
GtkWidget *
lr_canvas_item_new (const char *id)
{
  LrCanvasItem *self = g_object_new (LR_TYPE_CANVAS_ITEM, "accessible-role", GTK_ACCESSIBLE_ROLE_IMG, NULL);

  self->id = g_strdup (id);
  return GTK_WIDGET (self);
}

/**
 * lr_canvas_item_get_id:
 * @self: an item of the sheet
 *
 * Returns: (transfer none): id of the thing
 */
const char *
lr_canvas_item_get_id (LrCanvasItem *self)
{
  return self->id;
}

/**
 * lr_canvas_item_set_words:
 * @self: the thing
 * @name: "Camera B"
 * @description: where it stands, and what is wrong with it
 *
 * What assistive technology reads; it is told only of what is another.
 */
void
lr_canvas_item_set_words (LrCanvasItem *self,
                          const char   *name,
                          const char   *description)
{
  if (g_strcmp0 (self->name, name) != 0)
    {
      g_free (self->name);
      self->name = g_strdup (name);
      gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
    }
  if (g_strcmp0 (self->description, description) != 0)
    {
      g_free (self->description);
      self->description = g_strdup (description);
      gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, description, -1);
    }
}

/**
 * lr_canvas_item_set_selected:
 * @self: an item of the sheet
 * @is_selected: whether it is in hand
 *
 * Tells assistive technology whether the thing is in hand.
 */
void
lr_canvas_item_set_selected (LrCanvasItem *self,
                             gboolean      is_selected)
{
  if (self->is_selected == is_selected)
    return;

  self->is_selected = is_selected;
  gtk_accessible_update_state (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_STATE_SELECTED, is_selected, -1);
}

/**
 * lr_canvas_item_set_box:
 * @self: an item of the sheet
 * @box: in pixels of the sheet
 *
 * Tells where the thing is.
 */
void
lr_canvas_item_set_box (LrCanvasItem       *self,
                        const GdkRectangle *box)
{
  self->box = *box;
}

/**
 * lr_canvas_item_get_box:
 * @self: an item of the sheet
 *
 * Returns: where the thing is, in pixels of the sheet
 */
GdkRectangle
lr_canvas_item_get_box (LrCanvasItem *self)
{
  return self->box;
}
