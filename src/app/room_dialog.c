/* room_dialog.c - the room by tape: a rectangle, or wall by wall
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "room_dialog.h"

#include "app.h"
#include "room_walls.h"
#include "text.h"
#include "view.h"

#include <glib/gi18n-lib.h>

#define SKETCH_MARGIN_PX 22.0
#define NUMBER_PX 11.0

/* One wall of the walk */
typedef struct
{
  GtkWidget *box, *length_entry, *side, *angle_entry;
} Row;

struct _LrRoomDialog
{
  GtkWindow   parent_instance;

  LrDocument *document;
  GtkWidget  *make_button, *stack, *length_entry, *width_entry, *rows_box, *height_entry, *sketch, *status_label;
  GPtrArray  *rows;       /* of Row */
  LrVec2      start_m;
  double      heading_rad;
  LrRoomWalls walls;
};

G_DEFINE_FINAL_TYPE (LrRoomDialog, lr_room_dialog, GTK_TYPE_WINDOW)

static LrUnits
units_of (LrRoomDialog *self)
{
  return lr_document_get_units (self->document);
}

static const char *
text_of (GtkWidget *entry)
{
  return gtk_editable_get_text (GTK_EDITABLE (entry));
}

/* Marks the entry when it holds no length */
static gboolean
read_length (LrRoomDialog *self,
             GtkWidget    *entry,
             double       *length_m)
{
  gboolean is_length = lr_length_parse (text_of (entry), units_of (self), length_m) && *length_m > 0.0;

  if (is_length)
    gtk_widget_remove_css_class (entry, "error");
  else
    gtk_widget_add_css_class (entry, "error");
  return is_length;
}

static void
set_status (LrRoomDialog *self,
            const char   *format,
            guint         wall)
{
  lr_room_walls_clear (&self->walls);
  self->walls.status = g_strdup_printf (format, wall);
}

static void
read_rectangle (LrRoomDialog *self)
{
  double length_m, width_m;
  gboolean has_length = read_length (self, self->length_entry, &length_m);
  gboolean has_width = read_length (self, self->width_entry, &width_m);

  if (has_length && has_width)
    lr_room_walls_rectangle (&self->walls, length_m, width_m, units_of (self));
  else
    set_status (self, _("Write a length as 3.6, 360 cm or 11' 10\"."), 0);
}

/* FALSE when the row holds something that is no wall, or nothing */
static gboolean
read_row (LrRoomDialog  *self,
          Row           *row,
          LrTraverseLeg *leg)
{
  double angle_rad = NAN;
  gboolean has_angle = lr_angle_parse (text_of (row->angle_entry), &angle_rad) && fabs (angle_rad) < LR_PI;

  if (has_angle)
    gtk_widget_remove_css_class (row->angle_entry, "error");
  else
    gtk_widget_add_css_class (row->angle_entry, "error");

  leg->turn_rad = gtk_drop_down_get_selected (GTK_DROP_DOWN (row->side)) == 0 ? angle_rad : -angle_rad;
  return read_length (self, row->length_entry, &leg->length_m) && has_angle;
}

/* How many rows are walls of the walk: the empty ones after the last length are not */
static guint
count_rows (LrRoomDialog *self)
{
  guint n = self->rows->len;

  for (; n > 0; n--)
    {
      Row *row = g_ptr_array_index (self->rows, n - 1);

      if (*text_of (row->length_entry) != '\0')
        break;
      gtk_widget_remove_css_class (row->length_entry, "error");
    }
  return n;
}

static void
read_walls (LrRoomDialog *self)
{
  g_autoptr (GArray) legs = g_array_new (FALSE, FALSE, sizeof (LrTraverseLeg));
  guint n = count_rows (self);

  for (guint i = 0; i < n; i++)
    {
      Row *row = g_ptr_array_index (self->rows, i);
      LrTraverseLeg leg;

      if (!read_row (self, row, &leg))
        {
          set_status (self, _("Wall %u: write a length as 3.6, 360 cm or 11' 10\", and an angle under 180°."), i + 1);
          return;
        }
      g_array_append_val (legs, leg);
    }
  lr_room_walls_walk (&self->walls, &g_array_index (legs, LrTraverseLeg, 0), legs->len, self->start_m, self->heading_rad,
                      units_of (self));
}

static void
changed_cb (LrRoomDialog *self)
{
  double height_m;
  gboolean has_height = read_length (self, self->height_entry, &height_m);

  if (g_strcmp0 (gtk_stack_get_visible_child_name (GTK_STACK (self->stack)), "rectangle") == 0)
    read_rectangle (self);
  else
    read_walls (self);

  gtk_label_set_text (GTK_LABEL (self->status_label), self->walls.status);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "room.make", self->walls.is_room && has_height);
  gtk_widget_queue_draw (self->sketch);
}

/* The first length is in hand, to be typed over */
static void
start_typing (LrRoomDialog *self)
{
  Row *first = g_ptr_array_index (self->rows, 0);

  if (g_strcmp0 (gtk_stack_get_visible_child_name (GTK_STACK (self->stack)), "rectangle") == 0)
    gtk_widget_grab_focus (self->length_entry);
  else
    gtk_widget_grab_focus (first->length_entry);
}

static void
page_changed_cb (LrRoomDialog *self)
{
  changed_cb (self);
  start_typing (self);
}

static void
name_field (GtkWidget  *field,
            const char *format,
            guint       wall)
{
  g_autofree char *name = g_strdup_printf (format, wall);

  gtk_accessible_update_property (GTK_ACCESSIBLE (field), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static void next_row_cb (LrRoomDialog *self, GtkWidget *entry);

static Row *
add_row (LrRoomDialog *self,
         const char   *length,
         double        turn_rad)
{
  static const char *sides[] = { N_("then left"), N_("then right"), NULL };
  const char *titles[] = { _(sides[0]), _(sides[1]), NULL };
  guint n = self->rows->len + 1;
  Row *row = g_new0 (Row, 1);
  g_autofree char *number = g_strdup_printf ("%u", n), *angle = lr_angle_format (fabs (turn_rad));
  GtkWidget *label = gtk_label_new (number);

  row->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  row->length_entry = gtk_entry_new ();
  row->side = gtk_drop_down_new_from_strings (titles);
  row->angle_entry = gtk_entry_new ();
  gtk_label_set_width_chars (GTK_LABEL (label), 2);
  gtk_editable_set_width_chars (GTK_EDITABLE (row->length_entry), 9);
  gtk_editable_set_width_chars (GTK_EDITABLE (row->angle_entry), 5);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (row->angle_entry), 5);
  gtk_widget_set_hexpand (row->length_entry, TRUE);
  gtk_editable_set_text (GTK_EDITABLE (row->length_entry), length);
  gtk_editable_set_text (GTK_EDITABLE (row->angle_entry), angle);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (row->side), turn_rad < 0.0 ? 1 : 0);
  name_field (row->length_entry, _("Length of wall %u"), n);
  name_field (row->side, _("Turn at the end of wall %u"), n);
  name_field (row->angle_entry, _("Angle at the end of wall %u"), n);

  gtk_box_append (GTK_BOX (row->box), label);
  gtk_box_append (GTK_BOX (row->box), row->length_entry);
  gtk_box_append (GTK_BOX (row->box), row->side);
  gtk_box_append (GTK_BOX (row->box), row->angle_entry);
  gtk_box_append (GTK_BOX (self->rows_box), row->box);
  g_ptr_array_add (self->rows, row);

  g_signal_connect_object (row->length_entry, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (row->angle_entry, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (row->side, "notify::selected", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (row->length_entry, "activate", G_CALLBACK (next_row_cb), self, G_CONNECT_SWAPPED);
  return row;
}

/* Enter goes to the next wall, and makes one after the last; in an empty one it makes the room */
static void
next_row_cb (LrRoomDialog *self,
             GtkWidget    *entry)
{
  if (*text_of (entry) == '\0')
    {
      gtk_widget_activate_action (GTK_WIDGET (self), "room.make", NULL);
      return;
    }

  for (guint i = 0; i < self->rows->len; i++)
    {
      Row *row = g_ptr_array_index (self->rows, i);

      if (row->length_entry != entry)
        continue;
      if (i + 1 == self->rows->len)
        add_row (self, "", LR_PI / 2.0);
      row = g_ptr_array_index (self->rows, i + 1);
      gtk_widget_grab_focus (row->length_entry);
      return;
    }
}

static void
add_wall_action (GtkWidget  *widget,
                 const char *name,
                 GVariant   *parameter)
{
  gtk_widget_grab_focus (add_row (LR_ROOM_DIALOG (widget), "", LR_PI / 2.0)->length_entry);
}

static void
move_to_origin (GArray *corners_m)
{
  LrVec2 least_m = lr_vec2 (HUGE_VAL, HUGE_VAL);

  for (guint i = 0; i < corners_m->len; i++)
    {
      least_m.x = fmin (least_m.x, g_array_index (corners_m, LrVec2, i).x);
      least_m.y = fmin (least_m.y, g_array_index (corners_m, LrVec2, i).y);
    }
  for (guint i = 0; i < corners_m->len; i++)
    g_array_index (corners_m, LrVec2, i) = lr_vec2_sub (g_array_index (corners_m, LrVec2, i), least_m);
}

static void
make_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  LrRoomDialog *self = LR_ROOM_DIALOG (widget);
  LrPlan *committed = lr_document_get_committed (self->document);
  g_autoptr (LrPlan) next = NULL;
  g_autoptr (GError) error = NULL;
  double height_m;
  LrPlan *whole;

  if (!self->walls.is_room || !read_length (self, self->height_entry, &height_m))
    return;

  if (lr_plan_get_setup (committed)->items->len == 0)
    move_to_origin (self->walls.corners_m);
  next = lr_plan_set_corners (committed, &g_array_index (self->walls.corners_m, LrVec2, 0), self->walls.corners_m->len, &error);
  whole = next != NULL ? lr_plan_set_room (next, "height-mm", height_m, &error) : NULL;
  if (whole == NULL)
    {
      gtk_label_set_text (GTK_LABEL (self->status_label), error->message);
      return;
    }

  lr_document_commit (self->document, whole, _("Type the wall lengths"));
  gtk_window_close (GTK_WINDOW (self));
}

/* Scale and origin that show all corners in the sketch */
static void
fit_sketch (const GArray *corners_m,
            double        width,
            double        height,
            LrView       *view)
{
  LrVec2 least_m = lr_vec2 (HUGE_VAL, HUGE_VAL), most_m = lr_vec2 (-HUGE_VAL, -HUGE_VAL);

  for (guint i = 0; i < corners_m->len; i++)
    {
      LrVec2 corner_m = g_array_index (corners_m, LrVec2, i);

      least_m = lr_vec2 (fmin (least_m.x, corner_m.x), fmin (least_m.y, corner_m.y));
      most_m = lr_vec2 (fmax (most_m.x, corner_m.x), fmax (most_m.y, corner_m.y));
    }
  view->scale = fmin ((width - 2.0 * SKETCH_MARGIN_PX) / fmax (most_m.x - least_m.x, 0.1),
                      (height - 2.0 * SKETCH_MARGIN_PX) / fmax (most_m.y - least_m.y, 0.1));
  view->origin = lr_vec2 (width / 2.0 - view->scale * (least_m.x + most_m.x) / 2.0,
                          height / 2.0 + view->scale * (least_m.y + most_m.y) / 2.0);
}

static void
sketch_wall (LrRoomDialog *self,
             cairo_t      *cr,
             const LrView *view,
             guint         i)
{
  const GArray *corners_m = self->walls.corners_m;
  LrTextStyle style = { .size = NUMBER_PX, .align = LR_ALIGN_CENTRE };
  LrVec2 a = lr_view_to_device (view, g_array_index (corners_m, LrVec2, i));
  LrVec2 b = lr_view_to_device (view, g_array_index (corners_m, LrVec2, (i + 1) % corners_m->len));
  gboolean is_closing = self->walls.has_closing_wall && i + 1 == corners_m->len;
  LrVec2 out = lr_vec2_left (lr_vec2_sub (b, a)); /* device: y runs down, so this is the walker's right */
  g_autofree char *number = g_strdup_printf ("%u", i + 1);
  double length = lr_vec2_length (out);

  lr_theme_set_line (cr, view->theme, LR_LINE_WALL, is_closing ? LR_DASH_SHORT : LR_DASH_SOLID);
  lr_theme_set_color (cr, is_closing ? view->theme->in_hand : view->theme->ink, 1.0);
  cairo_move_to (cr, a.x, a.y);
  cairo_line_to (cr, b.x, b.y);
  cairo_stroke (cr);
  if (length < 1.0)
    return;
  lr_theme_set_color (cr, view->theme->ink2, 1.0);
  lr_text_draw (cr, view->theme, &style, (a.x + b.x) / 2.0 + 12.0 * out.x / length,
                (a.y + b.y) / 2.0 + 12.0 * out.y / length + NUMBER_PX / 3.0, number);
}

static void
draw_sketch (GtkDrawingArea *area,
             cairo_t        *cr,
             int             width,
             int             height,
             gpointer        data)
{
  LrRoomDialog *self = data;
  LrView view = { 0 };
  GdkRGBA color;

  if (self->walls.corners_m == NULL || self->walls.corners_m->len < 2)
    return;

  gtk_style_context_get_color (gtk_widget_get_style_context (GTK_WIDGET (area)), &color);
  view.theme = lr_theme_get (color.red + color.green + color.blue > 1.5F ? LR_THEME_DARK : LR_THEME_LIGHT);
  fit_sketch (self->walls.corners_m, width, height, &view);
  for (guint i = 0; i < self->walls.corners_m->len; i++)
    sketch_wall (self, cr, &view, i);
}

/* The walls as they are now, so that a room can be corrected */
static void
fill_from_room (LrRoomDialog *self,
                const LrRoom *room)
{
  for (int i = 0; i < (int) room->n_corners; i++)
    {
      g_autofree char *length = NULL;
      LrVec2 along, next_along;
      double length_m;

      lr_room_wall (room, i, NULL, &along, &length_m);
      lr_room_wall (room, (i + 1) % (int) room->n_corners, NULL, &next_along, NULL);
      length = lr_length_format (length_m, units_of (self));
      add_row (self, length, lr_angle_wrap_rad (lr_vec2_angle_rad (next_along) - lr_vec2_angle_rad (along)));
      if (i == 0)
        self->heading_rad = lr_vec2_angle_rad (along);
    }
  self->start_m = room->corners_m[0];
  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), "walls");
}

static void
fill (LrRoomDialog *self)
{
  const LrRoom *room = lr_plan_get_setup (lr_document_get_committed (self->document))->room;
  g_autofree char *length = lr_length_format (5.0, units_of (self)), *width = lr_length_format (4.0, units_of (self));
  g_autofree char *height = lr_length_format (room->height_m, units_of (self));

  gtk_editable_set_text (GTK_EDITABLE (self->length_entry), length);
  gtk_editable_set_text (GTK_EDITABLE (self->width_entry), width);
  gtk_editable_set_text (GTK_EDITABLE (self->height_entry), height);
  if (room->n_corners > 0)
    fill_from_room (self, room);
  else
    for (int i = 0; i < 4; i++)
      add_row (self, "", LR_PI / 2.0);
  changed_cb (self);
}

static void
lr_room_dialog_dispose (GObject *object)
{
  LrRoomDialog *self = LR_ROOM_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (object), LR_TYPE_ROOM_DIALOG);
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  lr_room_walls_clear (&self->walls);
  g_clear_object (&self->document);

  G_OBJECT_CLASS (lr_room_dialog_parent_class)->dispose (object);
}

static void
lr_room_dialog_class_init (LrRoomDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_room_dialog_dispose;

  gtk_widget_class_set_template_from_resource (widget_class, LR_RESOURCE_PATH "/ui/room-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, LrRoomDialog, make_button);
  gtk_widget_class_bind_template_child (widget_class, LrRoomDialog, stack);
  gtk_widget_class_bind_template_child (widget_class, LrRoomDialog, length_entry);
  gtk_widget_class_bind_template_child (widget_class, LrRoomDialog, width_entry);
  gtk_widget_class_bind_template_child (widget_class, LrRoomDialog, rows_box);
  gtk_widget_class_bind_template_child (widget_class, LrRoomDialog, height_entry);
  gtk_widget_class_bind_template_child (widget_class, LrRoomDialog, sketch);
  gtk_widget_class_bind_template_child (widget_class, LrRoomDialog, status_label);
  gtk_widget_class_bind_template_callback (widget_class, changed_cb);
  gtk_widget_class_install_action (widget_class, "room.make", NULL, make_action);
  gtk_widget_class_install_action (widget_class, "room.add-wall", NULL, add_wall_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static gboolean
show_last_row_cb (gpointer data)
{
  gtk_adjustment_set_value (data, gtk_adjustment_get_upper (data));
  return G_SOURCE_REMOVE;
}

/* A wall that is added below the edge comes into sight with the focus that it has, once it is laid out */
static void
rows_grew_cb (LrRoomDialog  *self,
              GParamSpec    *pspec,
              GtkAdjustment *adjustment)
{
  if (self->rows->len > 0 && gtk_widget_get_focus_child (self->rows_box) == gtk_widget_get_last_child (self->rows_box))
    g_idle_add_full (G_PRIORITY_DEFAULT_IDLE, show_last_row_cb, g_object_ref (adjustment), g_object_unref);
}

static void
lr_room_dialog_init (LrRoomDialog *self)
{
  GtkWidget *scroller;

  self->rows = g_ptr_array_new_with_free_func (g_free);
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self->sketch), draw_sketch, self, NULL);
  scroller = gtk_widget_get_ancestor (self->rows_box, GTK_TYPE_SCROLLED_WINDOW);
  g_signal_connect_object (gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scroller)), "notify::upper",
                           G_CALLBACK (rows_grew_cb), self, G_CONNECT_SWAPPED);
}

/**
 * lr_room_dialog_new:
 * @parent: (nullable): the window that it belongs to
 * @document: what gets the room
 *
 * Returns: (transfer none): the dialog; GTK holds it until it is closed
 */
GtkWidget *
lr_room_dialog_new (GtkWindow  *parent,
                    LrDocument *document)
{
  LrRoomDialog *self = g_object_new (LR_TYPE_ROOM_DIALOG, "transient-for", parent, NULL);

  self->document = g_object_ref (document);
  fill (self);
  g_signal_connect (self, "map", G_CALLBACK (start_typing), NULL);
  g_signal_connect_object (self->stack, "notify::visible-child", G_CALLBACK (page_changed_cb), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}
