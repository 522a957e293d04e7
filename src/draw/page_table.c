/* page_table.c - a table or a list of the page: what stands in it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "page_private.h"

static void
row_free (gpointer data)
{
  LrRow *row = data;

  g_free (row->tag);
  for (guint i = 0; i < LR_MAX_CELLS; i++)
    g_free (row->cell[i]);
  g_free (row->markup);
  g_free (row);
}

/**
 * lr_table_new:
 * @anchor: its name in the document's outline
 * @title: translated
 *
 * Returns: (transfer full): a list without rows; a table once it is given columns
 */
LrTable *
lr_table_new (const char *anchor,
              const char *title)
{
  LrTable *table = g_new0 (LrTable, 1);

  table->anchor = anchor;
  table->title = g_strdup (title);
  table->rows = g_ptr_array_new_with_free_func (row_free);
  table->feet = g_ptr_array_new_with_free_func (g_free);
  return table;
}

/**
 * lr_table_free:
 * @table: (transfer full) (nullable): a table
 */
void
lr_table_free (LrTable *table)
{
  if (table == NULL)
    return;

  g_free (table->title);
  g_free (table->note);
  g_ptr_array_unref (table->rows);
  g_ptr_array_unref (table->feet);
  g_free (table);
}

/**
 * lr_table_add:
 * @table: a table
 * @kind: of the row's tag
 * @tag: the tag, or "" for none
 *
 * Adds a row and shows it.
 *
 * Returns: (transfer none): the row, whose cells are to be filled with owned strings
 */
LrRow *
lr_table_add (LrTable    *table,
              LrItemKind  kind,
              const char *tag)
{
  LrRow *row = g_new0 (LrRow, 1);

  row->kind = kind;
  row->tag = g_strdup (tag);
  g_ptr_array_add (table->rows, row);
  table->n_shown = table->rows->len;
  return row;
}

/**
 * lr_table_add_sentence:
 * @table: a list
 * @grade: of the mark before it, when the list's bullets are grades
 * @markup: (transfer full): the sentence in Pango markup
 */
void
lr_table_add_sentence (LrTable *table,
                       LrGrade  grade,
                       char    *markup)
{
  LrRow *row = lr_table_add (table, LR_N_ITEM_KINDS, "");

  row->grade = grade;
  row->markup = markup;
}

/**
 * lr_page_more_text:
 * @n: how many were left out
 *
 * Returns: (transfer full): "and 3 more"
 */
char *
lr_page_more_text (guint n)
{
  return g_strdup_printf (ngettext ("and %u more", "and %u more", n), n);
}
