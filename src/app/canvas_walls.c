/* canvas_walls.c - the room in hand: its walls' lengths, corners added and taken away
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "canvas_private.h"

#include <glib/gi18n-lib.h>

#include "room_dialog.h"

/* How far outside a wall its dimension may stand */
#define DIMENSION_PX 56.0

/* The band of a cut wall */
#define BAND_M 0.14

static gboolean
room_is_drawn (LrCanvas *self)
{
  const LrRoom *room = lr_canvas_get_room (self);

  return room != NULL && room->n_corners > 0;
}

/**
 * lr_canvas_wall_at:
 * @self: a canvas
 * @at: a place on it [px]
 *
 * Returns: the wall or its dimension there; -1 for none
 */
int
lr_canvas_wall_at (LrCanvas *self,
                   LrVec2    at)
{
  const LrRoom *room = lr_canvas_get_room (self);
  LrVec2 at_m = lr_canvas_to_room (self, at);
  double best_m = BAND_M + DIMENSION_PX / self->view.scale;
  int best = -1;

  for (int i = 0; i < (int) room->n_corners; i++)
    {
      LrVec2 from_m, along, way_m;
      double length_m, along_m, out_m;

      if (!lr_room_wall (room, i, &from_m, &along, &length_m))
        continue;
      way_m = lr_vec2_sub (at_m, from_m);
      along_m = lr_vec2_dot (way_m, along);
      out_m = -lr_vec2_cross (along, way_m);
      if (out_m >= 0.0 && out_m < best_m && along_m >= 0.0 && along_m <= length_m)
        {
          best_m = out_m;
          best = i;
        }
    }
  return best;
}

/**
 * lr_canvas_take_wall:
 * @self: a canvas
 * @wall: index of a wall; -1 lets the room go
 *
 * Takes a wall in hand.
 */
void
lr_canvas_take_wall (LrCanvas *self,
                     int       wall)
{
  gboolean has_room = wall >= 0 && !lr_document_get_plan (self->document)->is_read_only;

  if (self->has_room_in_hand == has_room && self->wall_in_hand == wall)
    return;

  self->has_room_in_hand = has_room;
  self->wall_in_hand = has_room ? wall : -1;
  lr_canvas_set_hint (self, has_room ? _("Drag a corner or this wall. Double-click the wall to type its length.") : NULL);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static int
asked_wall (GtkWidget *entry)
{
  return GPOINTER_TO_INT (g_object_get_data (G_OBJECT (entry), "wall"));
}

static void
length_typed_cb (GtkEntry *entry,
                 LrCanvas *self)
{
  g_autofree char *what = g_strdup (_("Set the length of a wall"));
  GError *error = NULL;
  double length_m;
  LrPlan *next;

  if (!lr_length_parse (gtk_editable_get_text (GTK_EDITABLE (entry)), lr_document_get_units (self->document), &length_m))
    {
      gtk_widget_add_css_class (GTK_WIDGET (entry), "error");
      return;
    }

  next = lr_plan_set_wall_length (lr_document_get_committed (self->document), asked_wall (GTK_WIDGET (entry)), length_m,
                                  &error);
  if (lr_canvas_commit (self, next, error, what, NULL))
    gtk_popover_popdown (GTK_POPOVER (self->length_popover));
}

static void
length_changed_cb (GtkWidget *entry)
{
  gtk_widget_remove_css_class (entry, "error");
}

static void
closed_cb (LrCanvas *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self));
}

static GtkWidget *
make_length_popover (LrCanvas *self)
{
  GtkWidget *popover = gtk_popover_new (), *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *label = gtk_label_new_with_mnemonic (_("_Length")), *entry = gtk_entry_new ();

  gtk_label_set_mnemonic_widget (GTK_LABEL (label), entry);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 9);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), 9);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Length of the wall"), -1);
  g_signal_connect (entry, "activate", G_CALLBACK (length_typed_cb), self);
  g_signal_connect (entry, "changed", G_CALLBACK (length_changed_cb), NULL);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), entry);
  gtk_popover_set_child (GTK_POPOVER (popover), box);
  g_object_set_data (G_OBJECT (popover), "entry", entry);
  g_signal_connect_object (popover, "closed", G_CALLBACK (closed_cb), self, G_CONNECT_SWAPPED);
  gtk_widget_set_parent (popover, GTK_WIDGET (self));
  return popover;
}

/**
 * lr_canvas_ask_length:
 * @self: a canvas
 * @wall: index of a wall
 *
 * Asks for the length of a wall beside it.
 */
void
lr_canvas_ask_length (LrCanvas *self,
                      int       wall)
{
  LrVec2 from_m, along, middle;
  double length_m;
  g_autofree char *text = NULL;
  GtkWidget *entry;

  if (!lr_canvas_may_edit (self) || !lr_room_wall (lr_canvas_get_room (self), wall, &from_m, &along, &length_m))
    return;

  if (self->length_popover == NULL)
    self->length_popover = make_length_popover (self);
  lr_document_select (self->document, NULL);
  lr_canvas_take_wall (self, wall);

  entry = g_object_get_data (G_OBJECT (self->length_popover), "entry");
  text = lr_length_format (length_m, lr_document_get_units (self->document));
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  gtk_editable_select_region (GTK_EDITABLE (entry), 0, -1);
  g_object_set_data (G_OBJECT (entry), "wall", GINT_TO_POINTER (wall));
  middle = lr_view_to_device (&self->view, lr_vec2_along (from_m, along, length_m / 2.0));
  gtk_popover_set_pointing_to (GTK_POPOVER (self->length_popover),
                               &(GdkRectangle) { (int) CLAMP (middle.x, 0.0, self->view.width),
                                                 (int) CLAMP (middle.y, 0.0, self->view.height), 1, 1 });
  gtk_popover_popup (GTK_POPOVER (self->length_popover));
  gtk_widget_grab_focus (entry);
}

static void
set_corners (LrCanvas     *self,
             const GArray *corners_m,
             const char   *what)
{
  GError *error = NULL;
  LrPlan *next = lr_plan_set_corners (lr_document_get_committed (self->document), &g_array_index (corners_m, LrVec2, 0),
                                      corners_m->len, &error);

  lr_canvas_commit (self, next, error, what, NULL);
}

static GArray *
copy_corners (const LrRoom *room)
{
  GArray *corners_m = g_array_new (FALSE, FALSE, sizeof (LrVec2));

  g_array_append_vals (corners_m, room->corners_m, (guint) room->n_corners);
  return corners_m;
}

static void
add_corner_action (GtkWidget  *widget,
                   const char *name,
                   GVariant   *parameter)
{
  LrCanvas *self = LR_CANVAS (widget);
  int wall = g_variant_get_int32 (parameter);
  g_autoptr (GArray) corners_m = NULL;
  LrVec2 from_m, along, middle_m;
  double length_m;

  if (!lr_canvas_may_edit (self) || !lr_room_wall (lr_canvas_get_room (self), wall, &from_m, &along, &length_m))
    return;

  corners_m = copy_corners (lr_canvas_get_room (self));
  middle_m = lr_vec2_along (from_m, along, length_m / 2.0);
  g_array_insert_val (corners_m, (guint) wall + 1, middle_m);
  set_corners (self, corners_m, _("Add a corner"));
}

static void
remove_corner_action (GtkWidget  *widget,
                      const char *name,
                      GVariant   *parameter)
{
  LrCanvas *self = LR_CANVAS (widget);
  int corner = g_variant_get_int32 (parameter);
  g_autoptr (GArray) corners_m = NULL;

  if (!room_is_drawn (self) || corner < 0 || (gsize) corner >= lr_canvas_get_room (self)->n_corners
      || !lr_canvas_may_edit (self))
    return;

  corners_m = copy_corners (lr_canvas_get_room (self));
  g_array_remove_index (corners_m, (guint) corner);
  set_corners (self, corners_m, _("Remove a corner"));
}

static void
wall_length_action (GtkWidget  *widget,
                    const char *name,
                    GVariant   *parameter)
{
  lr_canvas_ask_length (LR_CANVAS (widget), g_variant_get_int32 (parameter));
}

static void
draw_room_action (GtkWidget  *widget,
                  const char *name,
                  GVariant   *parameter)
{
  lr_canvas_draw_room (LR_CANVAS (widget));
}

static void
type_room_action (GtkWidget  *widget,
                  const char *name,
                  GVariant   *parameter)
{
  LrCanvas *self = LR_CANVAS (widget);
  GtkRoot *root = gtk_widget_get_root (widget);

  if (!lr_canvas_may_edit (self))
    return;
  lr_canvas_leave_tool (self);
  gtk_window_present (GTK_WINDOW (lr_room_dialog_new (GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, self->document)));
}

static void
put_on_wall_action (GtkWidget  *widget,
                    const char *name,
                    GVariant   *parameter)
{
  static const LrItemKind kinds[] = { LR_ITEM_DOOR, LR_ITEM_WINDOW, LR_ITEM_SOCKET };
  const char *word = g_variant_get_string (parameter, NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (strcmp (lr_item_kind_info (kinds[i])->word, word) == 0)
      lr_canvas_put_on_wall (LR_CANVAS (widget), kinds[i]);
}

/**
 * lr_canvas_walls_install:
 * @klass: the class
 *
 * Installs the actions of walls and corners.
 */
void
lr_canvas_walls_install (GtkWidgetClass *klass)
{
  gtk_widget_class_install_action (klass, "canvas.draw-room", NULL, draw_room_action);
  gtk_widget_class_install_action (klass, "canvas.type-room", NULL, type_room_action);
  gtk_widget_class_install_action (klass, "canvas.put-on-wall", "s", put_on_wall_action);
  gtk_widget_class_install_action (klass, "canvas.wall-length", "i", wall_length_action);
  gtk_widget_class_install_action (klass, "canvas.add-corner", "i", add_corner_action);
  gtk_widget_class_install_action (klass, "canvas.remove-corner", "i", remove_corner_action);
}
