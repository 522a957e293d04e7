/* room_rows.c - rows in which walls and diagonals are typed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "room_rows.h"

#include <glib/gi18n-lib.h>

static const char *
text_of (GtkWidget *entry)
{
  return gtk_editable_get_text (GTK_EDITABLE (entry));
}

/**
 * lr_room_is_empty:
 * @entry: an entry
 *
 * Returns: whether nothing is typed in it
 */
gboolean
lr_room_is_empty (GtkWidget *entry)
{
  return *text_of (entry) == '\0';
}

/**
 * lr_room_name_field:
 * @field: a field
 * @format: its name for who does not see it, with "%u"
 * @number: of its row, from 1
 */
void
lr_room_name_field (GtkWidget  *field,
                    const char *format,
                    guint       number)
{
  g_autofree char *name = g_strdup_printf (format, number);

  gtk_accessible_update_property (GTK_ACCESSIBLE (field), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static GtkWidget *
make_label (const char *text,
            int         width_chars)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_width_chars (GTK_LABEL (label), width_chars);
  return label;
}

/**
 * lr_room_entry_new:
 * @width_chars: its width
 *
 * Returns: (transfer floating): an entry
 */
GtkWidget *
lr_room_entry_new (int width_chars)
{
  GtkWidget *entry = gtk_entry_new ();

  gtk_editable_set_width_chars (GTK_EDITABLE (entry), width_chars);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), width_chars);
  return entry;
}

static void
changed_cb (LrRoomRows *rows)
{
  rows->changed (rows->owner);
}

static void
entered_cb (LrRoomRows *rows,
            GtkWidget  *entry)
{
  rows->entered (rows->owner, entry);
}

/**
 * lr_room_rows_watch:
 * @rows: rows, which live in their owner: it outlives its children's signals
 * @entry: an entry
 *
 * The owner is told of changes in it, and of Enter.
 */
void
lr_room_rows_watch (LrRoomRows *rows,
                    GtkWidget  *entry)
{
  g_signal_connect_swapped (entry, "changed", G_CALLBACK (changed_cb), rows);
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (entered_cb), rows);
}

static void
name_wall (LrWallRow *row,
           guint      n)
{
  g_autofree char *number = g_strdup_printf ("%u", n);

  gtk_label_set_text (GTK_LABEL (row->number), number);
  lr_room_name_field (row->length_entry, _("Length of wall %u"), n);
  lr_room_name_field (row->side, _("Turn at the end of wall %u"), n);
  lr_room_name_field (row->angle_entry, _("Angle at the end of wall %u"), n);
  lr_room_name_field (row->remove, _("Remove wall %u"), n);
}

/* The row goes, and those below it count one less; one is left to type in */
static void
remove_wall (LrRoomRows *rows,
             LrWallRow  *row)
{
  guint at;

  if (rows->walls->len < 2 || !g_ptr_array_find (rows->walls, row, &at))
    return;

  gtk_widget_grab_focus (((LrWallRow *) g_ptr_array_index (rows->walls, at + 1 < rows->walls->len ? at + 1 : at - 1))->length_entry);
  gtk_box_remove (GTK_BOX (rows->walls_box), row->box);
  g_ptr_array_remove_index (rows->walls, at);
  for (guint i = at; i < rows->walls->len; i++)
    name_wall (g_ptr_array_index (rows->walls, i), i + 1);
  changed_cb (rows);
}

static LrWallRow *
row_of (LrRoomRows *rows,
        GtkWidget  *inside)
{
  for (guint i = 0; i < rows->walls->len; i++)
    {
      LrWallRow *row = g_ptr_array_index (rows->walls, i);

      if (gtk_widget_is_ancestor (inside, row->box))
        return row;
    }
  return NULL;
}

static void
remove_clicked_cb (LrRoomRows *rows,
                   GtkWidget  *button)
{
  remove_wall (rows, row_of (rows, button));
}

static gboolean
remove_key_cb (GtkEventControllerKey *controller,
               guint                  keyval,
               guint                  keycode,
               GdkModifierType        state,
               gpointer               data)
{
  GtkWidget *box = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (controller));

  if (keyval != GDK_KEY_Delete || (state & GDK_CONTROL_MASK) == 0)
    return FALSE;

  remove_wall (data, row_of (data, gtk_widget_get_first_child (box)));
  return TRUE;
}

static void
remove_by_keys (LrRoomRows *rows,
                LrWallRow  *row)
{
  GtkEventController *controller = gtk_event_controller_key_new ();

  gtk_event_controller_set_propagation_phase (controller, GTK_PHASE_CAPTURE);
  g_signal_connect (controller, "key-pressed", G_CALLBACK (remove_key_cb), rows);
  gtk_widget_add_controller (row->box, controller);
}

/* Who turns right at the first corner walks with the room on the right: rows that are still empty follow */
static void
side_changed_cb (LrRoomRows *rows,
                 GParamSpec *spec,
                 GtkWidget  *side)
{
  guint selected = gtk_drop_down_get_selected (GTK_DROP_DOWN (side));

  for (guint i = 1; i < rows->walls->len && side == ((LrWallRow *) g_ptr_array_index (rows->walls, 0))->side; i++)
    {
      LrWallRow *row = g_ptr_array_index (rows->walls, i);

      if (lr_room_is_empty (row->length_entry))
        gtk_drop_down_set_selected (GTK_DROP_DOWN (row->side), selected);
    }
  changed_cb (rows);
}

/**
 * lr_room_rows_add_empty_wall:
 * @rows: rows
 *
 * Returns: (transfer none): a row that turns as the first one does
 */
LrWallRow *
lr_room_rows_add_empty_wall (LrRoomRows *rows)
{
  LrWallRow *first = rows->walls->len > 0 ? g_ptr_array_index (rows->walls, 0) : NULL;
  gboolean goes_right = first != NULL && gtk_drop_down_get_selected (GTK_DROP_DOWN (first->side)) == 1;

  return lr_room_rows_add_wall (rows, "", goes_right ? -LR_PI / 2.0 : LR_PI / 2.0);
}

/* L and R, which no length holds, turn the corner while its wall is typed */
static gboolean
turn_cb (GtkEventControllerKey *controller,
         guint                  keyval,
         guint                  keycode,
         GdkModifierType        state,
         gpointer               side)
{
  if ((state & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0)
    return FALSE;
  if (keyval == GDK_KEY_l || keyval == GDK_KEY_L)
    gtk_drop_down_set_selected (side, 0);
  else if (keyval == GDK_KEY_r || keyval == GDK_KEY_R)
    gtk_drop_down_set_selected (side, 1);
  else
    return FALSE;

  return TRUE;
}

static void
turn_by_keys (LrWallRow *row)
{
  GtkEventController *controller = gtk_event_controller_key_new ();

  gtk_event_controller_set_propagation_phase (controller, GTK_PHASE_CAPTURE);
  g_signal_connect (controller, "key-pressed", G_CALLBACK (turn_cb), row->side);
  gtk_widget_add_controller (row->length_entry, controller);
}

/* "90°", "85.72°": as exact as it takes to come back to the same corner */
static char *
format_turn (double turn_rad)
{
  double angle_deg = fabs (turn_rad) / LR_DEG;
  int decimals = fabs (angle_deg - round (angle_deg)) < 0.005 ? 0 : fabs (10.0 * angle_deg - round (10.0 * angle_deg)) < 0.05 ? 1 : 2;
  g_autofree char *number = lr_number_format (angle_deg, decimals);

  return g_strdup_printf ("%s°", number);
}

/**
 * lr_room_rows_add_wall:
 * @rows: rows
 * @length: what stands in it, or ""
 * @turn_rad: at its end [rad]
 *
 * Returns: (transfer none): the row
 */
LrWallRow *
lr_room_rows_add_wall (LrRoomRows *rows,
                       const char *length,
                       double      turn_rad)
{
  static const char *const sides[] = { N_("then left"), N_("then right"), NULL };
  const char *titles[] = { _(sides[0]), _(sides[1]), NULL };
  guint n = rows->walls->len + 1;
  LrWallRow *row = g_new0 (LrWallRow, 1);
  g_autofree char *angle = format_turn (turn_rad);

  row->number = make_label ("", 2);
  row->remove = gtk_button_new_from_icon_name ("list-remove-symbolic");
  row->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  row->length_entry = lr_room_entry_new (9);
  row->side = gtk_drop_down_new_from_strings (titles);
  row->angle_entry = lr_room_entry_new (5);
  gtk_widget_set_size_request (row->side, 112, -1); /* of one width, whichever way it turns */
  gtk_widget_set_hexpand (row->length_entry, TRUE);
  gtk_editable_set_text (GTK_EDITABLE (row->length_entry), length);
  gtk_editable_set_text (GTK_EDITABLE (row->angle_entry), angle);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (row->side), turn_rad < 0.0 ? 1 : 0);
  gtk_widget_set_focusable (row->remove, FALSE); /* not in the way of Tab: there is a key for it */
  gtk_widget_set_tooltip_text (row->remove, _("Remove this wall (Ctrl Delete)"));
  gtk_widget_add_css_class (row->remove, "flat");
  name_wall (row, n);

  gtk_box_append (GTK_BOX (row->box), row->number);
  gtk_box_append (GTK_BOX (row->box), row->length_entry);
  gtk_box_append (GTK_BOX (row->box), lr_room_unit_new (row->length_entry, rows->units));
  gtk_box_append (GTK_BOX (row->box), row->side);
  gtk_box_append (GTK_BOX (row->box), row->angle_entry);
  gtk_box_append (GTK_BOX (row->box), row->remove);
  gtk_box_append (GTK_BOX (rows->walls_box), row->box);
  g_ptr_array_add (rows->walls, row);

  lr_room_rows_watch (rows, row->length_entry);
  lr_room_rows_watch (rows, row->angle_entry);
  turn_by_keys (row);
  remove_by_keys (rows, row);
  g_signal_connect_swapped (row->remove, "clicked", G_CALLBACK (remove_clicked_cb), rows);
  g_signal_connect_swapped (row->side, "notify::selected", G_CALLBACK (side_changed_cb), rows);
  return row;
}

/* How many rows are walls of the walk: the empty ones after the last length are not */
static guint
count_walls (LrRoomRows *rows)
{
  guint n = rows->walls->len;

  for (; n > 0; n--)
    {
      LrWallRow *row = g_ptr_array_index (rows->walls, n - 1);

      if (!lr_room_is_empty (row->length_entry))
        break;
      lr_room_mark (row->length_entry, TRUE);
    }
  return n;
}

/* A question mark is a wall that cannot be taped: it comes out of the others */
static gboolean
read_wall (LrRoomRows   *rows,
           LrWallRow    *row,
           LrSurveyWall *wall)
{
  double angle_rad = NAN;
  gboolean has_angle = lr_angle_parse (text_of (row->angle_entry), &angle_rad) && fabs (angle_rad) < LR_PI;
  gboolean is_untaped = g_str_equal (text_of (row->length_entry), "?");

  lr_room_mark (row->angle_entry, has_angle);
  wall->turn_rad = gtk_drop_down_get_selected (GTK_DROP_DOWN (row->side)) == 0 ? angle_rad : -angle_rad;
  wall->length_m = NAN;
  if (is_untaped)
    lr_room_mark (row->length_entry, TRUE);
  return (is_untaped || lr_room_read_length (row->length_entry, rows->units, &wall->length_m)) && has_angle;
}

/**
 * lr_room_rows_read:
 * @rows: rows
 * @walls: (element-type LrSurveyWall): gets the walls
 * @diagonals: (element-type LrSurveyDiagonal): gets the diagonals
 * @fault: (out): a sentence for people
 *
 * Returns: %FALSE, with @fault written and the entry marked, if a row holds something else
 */
gboolean
lr_room_rows_read (LrRoomRows  *rows,
                   GArray      *walls,
                   GArray      *diagonals,
                   char       **fault)
{
  guint n = count_walls (rows);

  for (guint i = 0; i < n; i++)
    {
      LrSurveyWall wall;

      if (!read_wall (rows, g_ptr_array_index (rows->walls, i), &wall))
        {
          *fault = g_strdup_printf (_("Wall %u: write a length as 3.6, 360 cm or 11' 10\", and an angle under 180°."), i + 1);
          return FALSE;
        }
      g_array_append_val (walls, wall);
    }
  return lr_room_rows_read_diagonals (rows, diagonals, fault);
}

/**
 * lr_room_rows_init:
 * @rows: (out caller-allocates): in @owner
 * @walls_box: gets the rows of walls
 * @diagonals_box: gets the rows of diagonals
 * @owner: what is told
 * @changed: when something else is typed
 * @entered: when Enter is pressed in an entry
 */
void
lr_room_rows_init (LrRoomRows *rows,
                   GtkWidget  *walls_box,
                   GtkWidget  *diagonals_box,
                   GObject    *owner,
                   void      (*changed) (gpointer),
                   void      (*entered) (gpointer, GtkWidget *))
{
  *rows = (LrRoomRows) { .walls_box = walls_box, .diagonals_box = diagonals_box, .owner = owner, .changed = changed, .entered = entered };
  rows->walls = g_ptr_array_new_with_free_func (g_free);
  rows->diagonals = g_ptr_array_new_with_free_func (g_free);
}

/**
 * lr_room_rows_clear:
 * @rows: rows, whose widgets are gone
 */
void
lr_room_rows_clear (LrRoomRows *rows)
{
  g_clear_pointer (&rows->walls, g_ptr_array_unref);
  g_clear_pointer (&rows->diagonals, g_ptr_array_unref);
}
