/* room_rows.h - rows in which walls and diagonals are typed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "survey.h"
#include "units.h"

/* One wall: its length, and how the corner at its end turns */
typedef struct
{
  GtkWidget *box, *length_entry, *side, *angle_entry;
} LrWallRow;

/* One diagonal: from a corner to another */
typedef struct
{
  GtkWidget *box, *from_entry, *to_entry, *length_entry;
} LrDiagonalRow;

typedef struct
{
  GtkWidget *walls_box, *diagonals_box;
  GPtrArray *walls;      /* of LrWallRow */
  GPtrArray *diagonals;  /* of LrDiagonalRow */
  LrUnits    units;
  GObject   *owner;
  void     (*changed) (gpointer owner);
  void     (*entered) (gpointer owner, GtkWidget *entry); /* Enter was pressed in it */
} LrRoomRows;

void           lr_room_rows_init         (LrRoomRows *rows, GtkWidget *walls_box, GtkWidget *diagonals_box, GObject *owner,
                                          void (*changed) (gpointer), void (*entered) (gpointer, GtkWidget *));
void           lr_room_rows_clear        (LrRoomRows *rows);
LrWallRow     *lr_room_rows_add_wall     (LrRoomRows *rows, const char *length, double turn_rad);
LrDiagonalRow *lr_room_rows_add_diagonal (LrRoomRows *rows);
void           lr_room_rows_start_diagonal (LrRoomRows *rows);
/* Fills the last, empty row of diagonals, and makes another */
void           lr_room_rows_put_diagonal (LrRoomRows *rows, const LrSurveyDiagonal *diagonal);
/* What is typed; FALSE, with the sentence that says why, if a row holds something else */
gboolean       lr_room_rows_read         (LrRoomRows *rows, GArray *walls, GArray *diagonals, char **fault);
/* Pale, in the first empty row of diagonals: the one that would settle what the walls disagree about, or none */
void           lr_room_rows_suggest      (LrRoomRows *rows, const LrSurveyDoubt *doubt);
void           lr_room_mark              (GtkWidget *entry, gboolean is_fine);
/* Marks the entry when it holds no length */
gboolean       lr_room_read_length       (GtkWidget *entry, LrUnits units, double *length_m);
