/* room_diagonals.c - rows in which diagonals are typed
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
  row->from_entry = lr_room_entry_new (3);
  row->to_entry = lr_room_entry_new (3);
  row->length_entry = lr_room_entry_new (9);
  gtk_widget_set_hexpand (row->length_entry, TRUE);
  lr_room_name_field (row->from_entry, _("Diagonal %u: from corner"), n);
  lr_room_name_field (row->to_entry, _("Diagonal %u: to corner"), n);
  lr_room_name_field (row->length_entry, _("Length of diagonal %u"), n);

  /* Translators: "corner 1 to 4", with a field for each */
  gtk_box_append (GTK_BOX (row->box), gtk_label_new (_("corner")));
  gtk_box_append (GTK_BOX (row->box), row->from_entry);
  /* Translators: between two fields: "corner 1 to 4" */
  gtk_box_append (GTK_BOX (row->box), gtk_label_new (C_("corner to corner", "to")));
  gtk_box_append (GTK_BOX (row->box), row->to_entry);
  gtk_box_append (GTK_BOX (row->box), row->length_entry);
  gtk_box_append (GTK_BOX (row->box), lr_room_unit_new (row->length_entry, rows->units));
  gtk_box_append (GTK_BOX (rows->diagonals_box), row->box);
  g_ptr_array_add (rows->diagonals, row);

  lr_room_rows_watch (rows, row->from_entry);
  lr_room_rows_watch (rows, row->to_entry);
  lr_room_rows_watch (rows, row->length_entry);
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

      if (lr_room_is_empty (row->length_entry))
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
  gboolean all_empty = lr_room_is_empty (row->from_entry) && lr_room_is_empty (row->to_entry) && lr_room_is_empty (row->length_entry);

  if (all_empty)
    {
      lr_room_mark (row->from_entry, TRUE);
      lr_room_mark (row->to_entry, TRUE);
      lr_room_mark (row->length_entry, TRUE);
    }
  return all_empty;
}

/**
 * lr_room_rows_read_diagonals:
 * @rows: rows
 * @diagonals: (element-type LrSurveyDiagonal): gets the diagonals
 * @fault: (out): a sentence for people
 *
 * Returns: %FALSE, with @fault written and the entry marked, if a row holds something else
 */
gboolean
lr_room_rows_read_diagonals (LrRoomRows *rows,
                             GArray     *diagonals,
                             char      **fault)
{
  for (guint i = 0; i < rows->diagonals->len; i++)
    {
      LrDiagonalRow *row = g_ptr_array_index (rows->diagonals, i);
      LrSurveyDiagonal diagonal = { 0 };
      gboolean has_from, has_to;

      /* one that is being typed is not wrong yet */
      if (is_row_empty (row) || lr_room_is_empty (row->length_entry))
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
