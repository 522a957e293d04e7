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

static gboolean
is_empty (GtkWidget *entry)
{
  return *text_of (entry) == '\0';
}

/**
 * lr_room_mark:
 * @entry: an entry
 * @is_fine: whether what it holds can be taken
 */
void
lr_room_mark (GtkWidget *entry,
              gboolean   is_fine)
{
  if (is_fine)
    gtk_widget_remove_css_class (entry, "error");
  else
    gtk_widget_add_css_class (entry, "error");
}

/**
 * lr_room_read_length:
 * @entry: an entry
 * @units: of a bare number
 * @length_m: (out): what it holds [m], > 0
 *
 * Returns: %FALSE, with the entry marked, if it holds no length
 */
gboolean
lr_room_read_length (GtkWidget *entry,
                     LrUnits    units,
                     double    *length_m)
{
  gboolean is_length = lr_length_parse (text_of (entry), units, length_m) && *length_m > 0.0;

  lr_room_mark (entry, is_length);
  return is_length;
}

static void
name_field (GtkWidget  *field,
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

static GtkWidget *
make_entry (int width_chars)
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

/* The rows live in their owner, which outlives its children's signals */
static void
watch (LrRoomRows *rows,
       GtkWidget  *entry)
{
  g_signal_connect_swapped (entry, "changed", G_CALLBACK (changed_cb), rows);
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (entered_cb), rows);
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
  g_autofree char *number = g_strdup_printf ("%u", n), *angle = format_turn (turn_rad);

  row->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  row->length_entry = make_entry (9);
  row->side = gtk_drop_down_new_from_strings (titles);
  row->angle_entry = make_entry (5);
  gtk_widget_set_size_request (row->side, 112, -1); /* of one width, whichever way it turns */
  gtk_widget_set_hexpand (row->length_entry, TRUE);
  gtk_editable_set_text (GTK_EDITABLE (row->length_entry), length);
  gtk_editable_set_text (GTK_EDITABLE (row->angle_entry), angle);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (row->side), turn_rad < 0.0 ? 1 : 0);
  name_field (row->length_entry, _("Length of wall %u"), n);
  name_field (row->side, _("Turn at the end of wall %u"), n);
  name_field (row->angle_entry, _("Angle at the end of wall %u"), n);

  gtk_box_append (GTK_BOX (row->box), make_label (number, 2));
  gtk_box_append (GTK_BOX (row->box), row->length_entry);
  gtk_box_append (GTK_BOX (row->box), row->side);
  gtk_box_append (GTK_BOX (row->box), row->angle_entry);
  gtk_box_append (GTK_BOX (rows->walls_box), row->box);
  g_ptr_array_add (rows->walls, row);

  watch (rows, row->length_entry);
  watch (rows, row->angle_entry);
  turn_by_keys (row);
  g_signal_connect_swapped (row->side, "notify::selected", G_CALLBACK (changed_cb), rows);
  return row;
}

/**
 * lr_room_rows_add_diagonal:
 * @rows: rows
 *
 * Returns: (transfer none): an empty row
 */
LrDiagonalRow *
lr_room_rows_add_diagonal (LrRoomRows *rows)
{
  guint n = rows->diagonals->len + 1;
  LrDiagonalRow *row = g_new0 (LrDiagonalRow, 1);

  row->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  row->from_entry = make_entry (3);
  row->to_entry = make_entry (3);
  row->length_entry = make_entry (9);
  gtk_widget_set_hexpand (row->length_entry, TRUE);
  name_field (row->from_entry, _("Diagonal %u: from corner"), n);
  name_field (row->to_entry, _("Diagonal %u: to corner"), n);
  name_field (row->length_entry, _("Length of diagonal %u"), n);

  /* Translators: "corner 1 to 4", with a field for each */
  gtk_box_append (GTK_BOX (row->box), gtk_label_new (_("corner")));
  gtk_box_append (GTK_BOX (row->box), row->from_entry);
  /* Translators: between two fields: "corner 1 to 4" */
  gtk_box_append (GTK_BOX (row->box), gtk_label_new (C_("corner to corner", "to")));
  gtk_box_append (GTK_BOX (row->box), row->to_entry);
  gtk_box_append (GTK_BOX (row->box), row->length_entry);
  gtk_box_append (GTK_BOX (rows->diagonals_box), row->box);
  g_ptr_array_add (rows->diagonals, row);

  watch (rows, row->from_entry);
  watch (rows, row->to_entry);
  watch (rows, row->length_entry);
  return row;
}

/**
 * lr_room_rows_start_diagonal:
 * @rows: rows
 *
 * The next diagonal is in hand: the first row without a length, or one more.
 */
void
lr_room_rows_start_diagonal (LrRoomRows *rows)
{
  for (guint i = 0; i < rows->diagonals->len; i++)
    {
      LrDiagonalRow *row = g_ptr_array_index (rows->diagonals, i);

      if (is_empty (row->length_entry))
        {
          gtk_widget_grab_focus (row->from_entry);
          return;
        }
    }
  gtk_widget_grab_focus (lr_room_rows_add_diagonal (rows)->from_entry);
}

/**
 * lr_room_rows_put_diagonal:
 * @rows: rows, the last of its diagonals empty
 * @diagonal: what was taped
 */
void
lr_room_rows_put_diagonal (LrRoomRows             *rows,
                           const LrSurveyDiagonal *diagonal)
{
  LrDiagonalRow *row = g_ptr_array_index (rows->diagonals, rows->diagonals->len - 1);
  g_autofree char *from = g_strdup_printf ("%u", diagonal->from + 1), *to = g_strdup_printf ("%u", diagonal->to + 1);
  g_autofree char *length = lr_length_format_exact (diagonal->length_m, rows->units);

  gtk_editable_set_text (GTK_EDITABLE (row->from_entry), from);
  gtk_editable_set_text (GTK_EDITABLE (row->to_entry), to);
  gtk_editable_set_text (GTK_EDITABLE (row->length_entry), length);
  lr_room_rows_add_diagonal (rows);
}

/* How many rows are walls of the walk: the empty ones after the last length are not */
static guint
count_walls (LrRoomRows *rows)
{
  guint n = rows->walls->len;

  for (; n > 0; n--)
    {
      LrWallRow *row = g_ptr_array_index (rows->walls, n - 1);

      if (!is_empty (row->length_entry))
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

/* Corners count from 1 */
static gboolean
read_corner (GtkWidget *entry,
             guint     *corner)
{
  guint64 number = 0;
  gboolean is_corner = g_ascii_string_to_unsigned (text_of (entry), 10, 1, LR_MAX_CORNERS, &number, NULL);

  lr_room_mark (entry, is_corner);
  if (is_corner)
    *corner = (guint) number - 1;
  return is_corner;
}

static gboolean
is_row_empty (LrDiagonalRow *row)
{
  gboolean all_empty = is_empty (row->from_entry) && is_empty (row->to_entry) && is_empty (row->length_entry);

  if (all_empty)
    {
      lr_room_mark (row->from_entry, TRUE);
      lr_room_mark (row->to_entry, TRUE);
      lr_room_mark (row->length_entry, TRUE);
    }
  return all_empty;
}

static gboolean
read_diagonals (LrRoomRows  *rows,
                GArray      *diagonals,
                char       **fault)
{
  for (guint i = 0; i < rows->diagonals->len; i++)
    {
      LrDiagonalRow *row = g_ptr_array_index (rows->diagonals, i);
      LrSurveyDiagonal diagonal = { 0 };
      gboolean has_from, has_to;

      /* one that is being typed is not wrong yet */
      if (is_row_empty (row) || is_empty (row->length_entry))
        continue;
      has_from = read_corner (row->from_entry, &diagonal.from);
      has_to = read_corner (row->to_entry, &diagonal.to);
      if (!lr_room_read_length (row->length_entry, rows->units, &diagonal.length_m) || !has_from || !has_to)
        {
          *fault = g_strdup_printf (_("Diagonal %u: write two corners and a length."), i + 1);
          return FALSE;
        }
      if (diagonals->len < LR_SURVEY_MAX_DIAGONALS)
        g_array_append_val (diagonals, diagonal);
    }
  return TRUE;
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
  return read_diagonals (rows, diagonals, fault);
}

/**
 * lr_room_rows_suggest:
 * @rows: rows
 * @doubt: (nullable): what is in doubt
 *
 * Shows the diagonal that would settle it, pale, where it would be typed.
 */
void
lr_room_rows_suggest (LrRoomRows          *rows,
                      const LrSurveyDoubt *doubt)
{
  gboolean has_one = doubt != NULL && doubt->n > 1 && doubt->has_settling && !doubt->is_within;
  g_autofree char *from = g_strdup_printf ("%u", has_one ? doubt->from + 1 : 0);
  g_autofree char *to = g_strdup_printf ("%u", has_one ? doubt->to + 1 : 0);

  for (guint i = 0; i < rows->diagonals->len; i++)
    {
      LrDiagonalRow *row = g_ptr_array_index (rows->diagonals, i);
      gboolean is_here = has_one && is_row_empty (row);

      gtk_entry_set_placeholder_text (GTK_ENTRY (row->from_entry), is_here ? from : NULL);
      gtk_entry_set_placeholder_text (GTK_ENTRY (row->to_entry), is_here ? to : NULL);
      has_one = has_one && !is_here;
    }
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
