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
  GtkWidget *box, *number, *length_entry, *side, *angle_entry, *remove;
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
LrWallRow     *lr_room_rows_add_empty_wall (LrRoomRows *rows);
LrDiagonalRow *lr_room_rows_add_diagonal (LrRoomRows *rows);
void           lr_room_rows_start_diagonal (LrRoomRows *rows);
/* Fills the last, empty row of diagonals, and makes another */
void           lr_room_rows_put_diagonal (LrRoomRows *rows, const LrSurveyDiagonal *diagonal);
/* What is typed; FALSE, with the sentence that says why, if a row holds something else */
gboolean       lr_room_rows_read         (LrRoomRows *rows, GArray *walls, GArray *diagonals, char **fault);
/* Pale, in the first empty row of diagonals: the one that would settle what the walls disagree about, or none */
void           lr_room_rows_suggest      (LrRoomRows *rows, const LrSurveyDoubt *doubt);
/* room_enter.c: what is typed after @entry; @n_round: with how many walls the walk goes round, G_MAXUINT if it does not */
void           lr_room_rows_enter        (LrRoomRows *rows, GtkWidget *entry, guint n_round, GtkWidget *after);

/* What both kinds of rows are made of */
gboolean       lr_room_is_empty          (GtkWidget *entry);
GtkWidget     *lr_room_entry_new         (int width_chars);
void           lr_room_name_field        (GtkWidget *field, const char *format, guint number);
/* The owner is told of changes and of Enter in the entry */
void           lr_room_rows_watch        (LrRoomRows *rows, GtkWidget *entry);
gboolean       lr_room_rows_read_diagonals (LrRoomRows *rows, GArray *diagonals, char **fault);

/* room_units.c */
void           lr_room_mark              (GtkWidget *entry, gboolean is_fine);
/* Marks the entry when it holds no length */
gboolean       lr_room_read_length       (GtkWidget *entry, LrUnits units, double *length_m);
/* (transfer floating): the unit of a bare number, to stand beside its entry */
GtkWidget     *lr_room_unit_new          (GtkWidget *entry, LrUnits units);
/* (transfer full) (nullable): about a bare number that is too much for a room */
char          *lr_room_question_lengths  (const GPtrArray *entries, LrUnits units);
/* Writes centimetres or inches behind what may be meant so */
void           lr_room_take_small_units  (const GPtrArray *entries, LrUnits units);
