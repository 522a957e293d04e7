/* room_dialog.c - the room by tape: a rectangle, or wall by wall with diagonals
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All that is typed is solved anew at each key. Enter goes on through the whole of it: wall by wall, from the last wall to the
 * diagonals, from an empty diagonal to the ceiling, the compass, and the room.
 */

#include "config.h"

#include "room_dialog.h"

#include "app.h"
#include "polygon.h"
#include "room_rows.h"
#include "room_sketch.h"
#include "survey_words.h"

#include <glib/gi18n-lib.h>

struct _LrRoomDialog
{
  GtkWindow   parent_instance;

  LrDocument *document;
  GtkWidget  *make_button, *stack, *length_entry, *width_entry, *scroller, *rows_box, *diagonals_box, *height_entry;
  GtkWidget  *facing_entry, *bearing_entry, *sketch, *status_label, *small_button;
  LrRoomRows  rows;
  LrVec2      start_m;
  double      heading_rad;
  GArray     *walls, *diagonals; /* as typed: of LrSurveyWall and LrSurveyDiagonal */
  LrSurvey   *survey;            /* of them; NULL while they are none */
  guint       show_focus_id;
};

G_DEFINE_FINAL_TYPE (LrRoomDialog, lr_room_dialog, GTK_TYPE_WINDOW)

static LrUnits
units_of (LrRoomDialog *self)
{
  return lr_document_get_units (self->document);
}

static const LrRoom *
room_of (LrRoomDialog *self)
{
  return lr_plan_get_setup (lr_document_get_committed (self->document))->room;
}

static const char *
text_of (GtkWidget *entry)
{
  return gtk_editable_get_text (GTK_EDITABLE (entry));
}

static gboolean
is_rectangle (LrRoomDialog *self)
{
  return g_strcmp0 (gtk_stack_get_visible_child_name (GTK_STACK (self->stack)), "rectangle") == 0;
}

/* Two walls that are taped, and two that come out */
static gboolean
read_rectangle (LrRoomDialog *self,
                char        **fault)
{
  /* walked as the room was, whose first wall it begins with */
  double turn_rad = room_of (self)->counts_clockwise ? -0.5 * LR_PI : 0.5 * LR_PI;
  LrSurveyWall walls[4] = { { NAN, turn_rad }, { NAN, turn_rad }, { NAN, turn_rad }, { NAN, turn_rad } };
  gboolean has_length = lr_room_read_length (self->length_entry, units_of (self), &walls[0].length_m);
  gboolean has_width = lr_room_read_length (self->width_entry, units_of (self), &walls[1].length_m);

  if (!has_length || !has_width)
    {
      *fault = g_strdup (_("Write a length as 3.6, 360 cm or 11' 10\"."));
      return FALSE;
    }
  g_array_append_vals (self->walls, walls, G_N_ELEMENTS (walls));
  return TRUE;
}

static gboolean
is_room (LrRoomDialog *self)
{
  const GArray *corners_m = self->survey != NULL ? self->survey->corners_m : NULL;

  return corners_m != NULL && (self->survey->state == LR_SURVEY_ROUND || self->survey->state == LR_SURVEY_OPEN)
         && lr_polygon_is_simple (&g_array_index (corners_m, LrVec2, 0), corners_m->len)
         && fabs (lr_polygon_area_m2 (&g_array_index (corners_m, LrVec2, 0), corners_m->len)) > 0.01;
}

/* Which wall the compass looks at, and what it reads; FALSE if nothing is written, or nothing that makes sense */
static gboolean
read_bearing (LrRoomDialog *self,
              guint        *wall,
              double       *bearing_rad)
{
  const char *facing = text_of (self->facing_entry);
  const char *bearing = text_of (self->bearing_entry);
  guint n = self->survey != NULL ? self->survey->corners_m->len : 0;
  guint64 number = 0;
  gboolean has_wall = g_ascii_string_to_unsigned (facing, 10, 1, MAX (n, 1), &number, NULL);
  gboolean has_bearing = lr_angle_parse (bearing, bearing_rad) && fabs (*bearing_rad) <= 2.0 * LR_PI + 1e-9;

  lr_room_mark (self->facing_entry, has_wall || *bearing == '\0');
  lr_room_mark (self->bearing_entry, has_bearing || *bearing == '\0');
  *wall = (guint) number - 1;
  return has_wall && has_bearing;
}

static gboolean
bearing_is_fine (LrRoomDialog *self)
{
  guint wall;
  double bearing_rad;

  return *text_of (self->bearing_entry) == '\0' || read_bearing (self, &wall, &bearing_rad);
}

static void
solve (LrRoomDialog *self,
       char        **status)
{
  gboolean has_all;

  g_clear_pointer (&self->survey, lr_survey_free);
  g_array_set_size (self->walls, 0);
  g_array_set_size (self->diagonals, 0);
  has_all = is_rectangle (self) ? read_rectangle (self, status)
                                : lr_room_rows_read (&self->rows, self->walls, self->diagonals, status);
  if (!has_all)
    return;

  self->survey = lr_survey_new (&g_array_index (self->walls, LrSurveyWall, 0), self->walls->len,
                                &g_array_index (self->diagonals, LrSurveyDiagonal, 0), self->diagonals->len,
                                self->start_m, self->heading_rad);
  *status = is_rectangle (self) && is_room (self) ? lr_survey_say_size (self->survey, units_of (self))
                                                  : lr_survey_say (self->survey, units_of (self));
}

/* What the compass reads at the wall, as north is now */
static void
update_bearing (LrRoomDialog *self)
{
  const char *facing = text_of (self->facing_entry);
  guint n = self->survey != NULL ? self->survey->corners_m->len : 0;
  g_autofree char *bearing = NULL;
  guint64 number = 0;

  if (is_room (self) && g_ascii_string_to_unsigned (facing, 10, 1, n, &number, NULL))
    bearing = lr_angle_format (lr_bearing_of_wall (&g_array_index (self->survey->corners_m, LrVec2, 0), n, (guint) number - 1,
                                                   room_of (self)->north_rad));
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->bearing_entry), bearing);
}

/* All entries of lengths that count now; (transfer full) */
static GPtrArray *
list_lengths (LrRoomDialog *self)
{
  GPtrArray *entries = g_ptr_array_new ();

  if (is_rectangle (self))
    {
      g_ptr_array_add (entries, self->length_entry);
      g_ptr_array_add (entries, self->width_entry);
    }
  for (guint i = 0; i < self->rows.walls->len && !is_rectangle (self); i++)
    g_ptr_array_add (entries, ((LrWallRow *) g_ptr_array_index (self->rows.walls, i))->length_entry);
  for (guint i = 0; i < self->rows.diagonals->len && !is_rectangle (self); i++)
    g_ptr_array_add (entries, ((LrDiagonalRow *) g_ptr_array_index (self->rows.diagonals, i))->length_entry);
  g_ptr_array_add (entries, self->height_entry);
  return entries;
}

/* What a bare number that is too much for a room asks, before what comes of it all */
static void
show_status (LrRoomDialog *self,
             const char   *status)
{
  g_autoptr (GPtrArray) entries = list_lengths (self);
  g_autofree char *question = lr_room_question_lengths (entries, units_of (self));
  g_autofree char *both = question != NULL ? g_strconcat (question, "\n", status, NULL) : g_strdup (status);

  gtk_widget_set_visible (self->small_button, question != NULL);
  gtk_label_set_markup (GTK_LABEL (self->status_label), both);
}

static void
changed_cb (LrRoomDialog *self)
{
  g_autofree char *status = NULL;
  double height_m;
  gboolean has_height = lr_room_read_length (self->height_entry, units_of (self), &height_m);

  if (self->rows.walls == NULL || self->document == NULL)
    return;

  solve (self, &status);
  lr_room_rows_suggest (&self->rows, self->survey != NULL && self->survey->doubts->len > 0
                                       ? &g_array_index (self->survey->doubts, LrSurveyDoubt, 0) : NULL);
  update_bearing (self);
  show_status (self, status);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "room.make", is_room (self) && has_height && bearing_is_fine (self));
  gtk_widget_queue_draw (self->sketch);
}

/* What is typed without a click goes into the first length */
static void
start_typing (LrRoomDialog *self)
{
  LrWallRow *first = g_ptr_array_index (self->rows.walls, 0);

  gtk_widget_grab_focus (is_rectangle (self) ? self->length_entry : first->length_entry);
}

static void
page_changed_cb (LrRoomDialog *self)
{
  changed_cb (self);
  start_typing (self);
}

/* Enter */

static void
entered (gpointer   owner,
         GtkWidget *entry)
{
  LrRoomDialog *self = owner;
  gboolean goes_round = self->survey != NULL && self->survey->state == LR_SURVEY_ROUND && !self->survey->has_closing_wall;

  lr_room_rows_enter (&self->rows, entry, goes_round ? self->survey->n_walls : G_MAXUINT, self->height_entry);
}

static void
height_entered_cb (LrRoomDialog *self)
{
  gtk_widget_grab_focus (self->bearing_entry);
}

/* Actions */

static void
add_wall_action (GtkWidget  *widget,
                 const char *name,
                 GVariant   *parameter)
{
  gtk_widget_grab_focus (lr_room_rows_add_empty_wall (&LR_ROOM_DIALOG (widget)->rows)->length_entry);
}

static void
small_units_action (GtkWidget  *widget,
                    const char *name,
                    GVariant   *parameter)
{
  LrRoomDialog *self = LR_ROOM_DIALOG (widget);
  g_autoptr (GPtrArray) entries = list_lengths (self);

  lr_room_take_small_units (entries, units_of (self));
  start_typing (self); /* the button that was pressed is gone */
}

static void
move_to_origin (GArray *corners_m)
{
  LrVec2 low_m, high_m;

  lr_polygon_bounds (&g_array_index (corners_m, LrVec2, 0), corners_m->len, &low_m, &high_m);
  for (guint i = 0; i < corners_m->len; i++)
    g_array_index (corners_m, LrVec2, i) = lr_vec2_sub (g_array_index (corners_m, LrVec2, i), low_m);
}

/* The next plan, with all that is typed; (transfer full) (nullable) */
static LrPlan *
make_plan (LrRoomDialog *self,
           double        height_m,
           GError      **error)
{
  LrPlan *committed = lr_document_get_committed (self->document);
  GArray *corners_m = self->survey->corners_m;
  g_autoptr (LrPlan) room = NULL;
  g_autoptr (LrPlan) high = NULL;
  double bearing_rad;
  guint wall;

  if (lr_plan_get_setup (committed)->items->len == 0)
    move_to_origin (corners_m);
  room = lr_survey_make_room (self->survey, &g_array_index (self->walls, LrSurveyWall, 0),
                              &g_array_index (self->diagonals, LrSurveyDiagonal, 0), self->diagonals->len, committed, error);
  high = room != NULL ? lr_plan_set_room (room, "height-mm", height_m, error) : NULL;
  if (high == NULL || !read_bearing (self, &wall, &bearing_rad))
    return g_steal_pointer (&high);
  return lr_plan_set_room (high, "north-deg",
                           lr_north_by_wall (&g_array_index (corners_m, LrVec2, 0), corners_m->len, wall, bearing_rad), error);
}

static void
make_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  LrRoomDialog *self = LR_ROOM_DIALOG (widget);
  g_autoptr (GError) error = NULL;
  double height_m;
  LrPlan *next;

  if (!is_room (self) || !lr_room_read_length (self->height_entry, units_of (self), &height_m) || !bearing_is_fine (self))
    return;

  next = make_plan (self, height_m, &error);
  if (next == NULL)
    {
      gtk_label_set_text (GTK_LABEL (self->status_label), error->message);
      return;
    }

  lr_document_commit (self->document, next, _("Type the wall lengths"));
  gtk_window_close (GTK_WINDOW (self));
}

static void
draw_sketch (GtkDrawingArea *area,
             cairo_t        *cr,
             int             width,
             int             height,
             gpointer        data)
{
  LrRoomDialog *self = data;

  lr_room_sketch_draw (GTK_WIDGET (area), cr, width, height, self->survey, self->diagonals);
}

/* What was taped, or the walls as they are drawn, so that a room can be corrected */
static void
fill_from_room (LrRoomDialog *self,
                const LrRoom *room)
{
  g_autoptr (GArray) walls = NULL, diagonals = NULL;
  gboolean has_notes = lr_survey_read_notes (room, &walls, &diagonals);
  LrVec2 along;

  for (int i = 0; i < (int) room->n_corners; i++)
    {
      g_autofree char *length = NULL;
      LrVec2 here, next;
      double length_m;

      lr_room_wall (room, i, NULL, &here, &length_m);
      lr_room_wall (room, (i + 1) % (int) room->n_corners, NULL, &next, NULL);
      if (has_notes)
        length_m = g_array_index (walls, LrSurveyWall, i).length_m;
      length = isnan (length_m) ? g_strdup ("?") : has_notes ? lr_length_format_exact (length_m, units_of (self))
                                                             : lr_length_format (length_m, units_of (self));
      lr_room_rows_add_wall (&self->rows, length,
                             has_notes ? g_array_index (walls, LrSurveyWall, i).turn_rad
                                       : lr_angle_wrap_rad (lr_vec2_angle_rad (next) - lr_vec2_angle_rad (here)));
    }
  for (guint i = 0; has_notes && i < diagonals->len; i++)
    lr_room_rows_put_diagonal (&self->rows, &g_array_index (diagonals, LrSurveyDiagonal, i));
  if (has_notes)
    lr_survey_find_start (room, &self->start_m, &self->heading_rad);
  else
    {
      lr_room_wall (room, 0, &self->start_m, &along, NULL);
      self->heading_rad = lr_vec2_angle_rad (along);
    }
  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), "walls");
}

/* Beside the entries that are always there */
static void
show_units (LrRoomDialog *self)
{
  GtkWidget *grid = gtk_widget_get_parent (self->length_entry);

  gtk_grid_attach (GTK_GRID (grid), lr_room_unit_new (self->length_entry, units_of (self)), 2, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), lr_room_unit_new (self->width_entry, units_of (self)), 2, 1, 1, 1);
  gtk_box_append (GTK_BOX (gtk_widget_get_parent (self->height_entry)), lr_room_unit_new (self->height_entry, units_of (self)));
  gtk_button_set_label (GTK_BUTTON (self->small_button), units_of (self) == LR_UNITS_IMPERIAL ? _("Read bare numbers as _inches")
                                                                                               : _("Read bare numbers as _centimetres"));
}

static void
fill (LrRoomDialog *self)
{
  const LrRoom *room = room_of (self);
  g_autofree char *length = lr_length_format (5.0, units_of (self)), *width = lr_length_format (4.0, units_of (self));
  g_autofree char *height = lr_length_format (room->height_m, units_of (self));

  self->rows.units = units_of (self);
  show_units (self);
  gtk_editable_set_text (GTK_EDITABLE (self->length_entry), length);
  gtk_editable_set_text (GTK_EDITABLE (self->width_entry), width);
  gtk_editable_set_text (GTK_EDITABLE (self->height_entry), height);
  lr_room_rows_add_diagonal (&self->rows);
  if (room->n_corners > 0)
    fill_from_room (self, room);
  else
    for (int i = 0; i < 4; i++)
      lr_room_rows_add_empty_wall (&self->rows);
  changed_cb (self);
}

static void
lr_room_dialog_dispose (GObject *object)
{
  LrRoomDialog *self = LR_ROOM_DIALOG (object);

  g_clear_handle_id (&self->show_focus_id, g_source_remove);
  gtk_widget_dispose_template (GTK_WIDGET (object), LR_TYPE_ROOM_DIALOG);
  lr_room_rows_clear (&self->rows);
  g_clear_pointer (&self->walls, g_array_unref);
  g_clear_pointer (&self->diagonals, g_array_unref);
  g_clear_pointer (&self->survey, lr_survey_free);
  g_clear_object (&self->document);

  G_OBJECT_CLASS (lr_room_dialog_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, LrRoomDialog, make_button);
  gtk_widget_class_bind_template_child (widget_class, LrRoomDialog, stack);
  gtk_widget_class_bind_template_child (widget_class, LrRoomDialog, length_entry);
  gtk_widget_class_bind_template_child (widget_class, LrRoomDialog, width_entry);
  gtk_widget_class_bind_template_child (widget_class, LrRoomDialog, scroller);
  gtk_widget_class_bind_template_child (widget_class, LrRoomDialog, rows_box);
  gtk_widget_class_bind_template_child (widget_class, LrRoomDialog, diagonals_box);
  gtk_widget_class_bind_template_child (widget_class, LrRoomDialog, height_entry);
  gtk_widget_class_bind_template_child (widget_class, LrRoomDialog, facing_entry);
  gtk_widget_class_bind_template_child (widget_class, LrRoomDialog, bearing_entry);
  gtk_widget_class_bind_template_child (widget_class, LrRoomDialog, sketch);
  gtk_widget_class_bind_template_child (widget_class, LrRoomDialog, status_label);
  gtk_widget_class_bind_template_child (widget_class, LrRoomDialog, small_button);
  gtk_widget_class_bind_template_callback (widget_class, changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, height_entered_cb);
}

static void
lr_room_dialog_class_init (LrRoomDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_room_dialog_dispose;

  gtk_widget_class_set_template_from_resource (widget_class, LR_RESOURCE_PATH "/ui/room-dialog.ui");
  bind_children (widget_class);
  gtk_widget_class_install_action (widget_class, "room.make", NULL, make_action);
  gtk_widget_class_install_action (widget_class, "room.add-wall", NULL, add_wall_action);
  gtk_widget_class_install_action (widget_class, "room.small-units", NULL, small_units_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Return, GDK_CONTROL_MASK, "room.make", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_KP_Enter, GDK_CONTROL_MASK, "room.make", NULL);
}

/* The row in hand comes into sight, once it is laid out */
static gboolean
show_focus_cb (gpointer data)
{
  LrRoomDialog *self = data;
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));
  GtkWidget *view = self->scroller != NULL ? gtk_scrolled_window_get_child (GTK_SCROLLED_WINDOW (self->scroller)) : NULL;
  GtkWidget *content = view != NULL ? gtk_widget_get_first_child (view) : NULL;
  graphene_rect_t box;

  self->show_focus_id = 0;
  if (focus != NULL && content != NULL && gtk_widget_is_ancestor (focus, content) && gtk_widget_compute_bounds (focus, content, &box))
    gtk_adjustment_clamp_page (gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->scroller)), (double) box.origin.y - 6.0,
                               (double) (box.origin.y + box.size.height) + 6.0);
  return G_SOURCE_REMOVE;
}

static void
rows_grew_cb (LrRoomDialog *self)
{
  if (self->show_focus_id == 0)
    self->show_focus_id = g_idle_add (show_focus_cb, self);
}

static void
lr_room_dialog_init (LrRoomDialog *self)
{
  self->walls = g_array_new (FALSE, FALSE, sizeof (LrSurveyWall));
  self->diagonals = g_array_new (FALSE, FALSE, sizeof (LrSurveyDiagonal));
  gtk_widget_init_template (GTK_WIDGET (self));
  lr_room_rows_init (&self->rows, self->rows_box, self->diagonals_box, G_OBJECT (self), (void (*) (gpointer)) changed_cb, entered);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self->sketch), draw_sketch, self, NULL);
  g_signal_connect_object (gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->scroller)), "notify::upper",
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
