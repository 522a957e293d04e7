/* journal.h - every edit is kept beside the plan's file, for the day when the program is killed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "document.h"

typedef struct _LrJournal LrJournal;

/* What a program that was killed left behind */
typedef struct
{
  LrPlan *plan;
  char   *path;       /* of the plan's own file; "" for none */
  gint64  when_unix_s;
  char   *journal_path;
} LrLeftover;

LrJournal *lr_journal_new     (LrDocument *document);
/* The journal stays where it is: it may still be needed */
void       lr_journal_free    (LrJournal *journal);
/* All is saved: there is nothing to recover */
void       lr_journal_settle  (LrJournal *journal);
/* The user has decided what becomes of the changes: nothing is left behind */
void       lr_journal_finish  (LrJournal *journal);
/* Writes what has not been written yet */
void       lr_journal_flush   (LrJournal *journal);

GPtrArray *lr_journal_find_leftovers (void); /* (transfer full): of LrLeftover; journals that are in use are not among them */
void       lr_leftover_discard (const LrLeftover *leftover);
