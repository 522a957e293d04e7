/* room_enter.c - Enter goes through the rows of a room: wall by wall, then the diagonals, then on
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "room_rows.h"

static const char *
text_of (GtkWidget *entry)
{
  return gtk_editable_get_text (GTK_EDITABLE (entry));
}

static gboolean
enter_wall (LrRoomRows *rows,
            GtkWidget  *entry,
            guint       n_round)
{
  GPtrArray *walls = rows->walls;

  for (guint i = 0; i < walls->len; i++)
    {
      LrWallRow *row = g_ptr_array_index (walls, i), *next;

      if (row->length_entry != entry && row->angle_entry != entry)
        continue;
      if (*text_of (row->length_entry) == '\0' || i + 1 >= n_round)
        {
          lr_room_rows_start_diagonal (rows);
          return TRUE;
        }
      if (i + 1 == walls->len)
        lr_room_rows_add_empty_wall (rows);
      next = g_ptr_array_index (walls, i + 1);
      gtk_widget_grab_focus (next->length_entry);
      return TRUE;
    }
  return FALSE;
}

static void
enter_diagonal (LrRoomRows *rows,
                GtkWidget  *entry,
                GtkWidget  *after)
{
  for (guint i = 0; i < rows->diagonals->len; i++)
    {
      LrDiagonalRow *row = g_ptr_array_index (rows->diagonals, i);

      if (*text_of (entry) == '\0' && (row->from_entry == entry || row->length_entry == entry))
        gtk_widget_grab_focus (after);
      else if (row->from_entry == entry)
        gtk_widget_grab_focus (row->to_entry);
      else if (row->to_entry == entry)
        gtk_widget_grab_focus (row->length_entry);
      else if (row->length_entry == entry)
        lr_room_rows_start_diagonal (rows);
      else
        continue;
      return;
    }
}

/**
 * lr_room_rows_enter:
 * @rows: rows
 * @entry: where Enter was pressed
 * @n_round: with how many walls the walk goes round; %G_MAXUINT if it does not
 * @after: what follows the diagonals
 *
 * What is typed next gets the focus.
 */
void
lr_room_rows_enter (LrRoomRows *rows,
                    GtkWidget  *entry,
                    guint       n_round,
                    GtkWidget  *after)
{
  if (!enter_wall (rows, entry, n_round))
    enter_diagonal (rows, entry, after);
}
