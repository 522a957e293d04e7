/* list_page.h - a list that is ticked: lines in groups, that follow the document
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A list fills its page anew whenever the plan is another (not while something is dragged, nor while it is out of sight):
 * lines are known by their keys, and one that was there before stays the same widget, with its focus. Ticks are kept in
 * the plan, by the list's word and the line's key.
 */

#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define LR_TYPE_LIST_PAGE (lr_list_page_get_type ())
G_DECLARE_FINAL_TYPE (LrListPage, lr_list_page, LR, LIST_PAGE, GtkWidget)

/* Says what is in the list by the functions below, in order */
typedef void (*LrListFill) (LrListPage *page, LrDocument *document);

/* @list: its word, "packing" */
GtkWidget  *lr_list_page_new   (LrDocument *document, const char *list, LrListFill fill);
LrDocument *lr_list_page_get_document (LrListPage *self); /* (transfer none) */
/* Above the lines: for the list's own buttons */
GtkWidget  *lr_list_page_get_bar (LrListPage *self);
/* Fills it again soon */
void        lr_list_page_refill (LrListPage *self);
/* What a list commits: says the error's sentence when @next is NULL, and shows what the plan has */
void        lr_list_page_commit (LrListPage *self, LrPlan *next, const char *what, GError **error);

/* While it is filled: */
void        lr_list_page_group (LrListPage *self, const char *title);
void        lr_list_page_say   (LrListPage *self, const char *key, const char *markup);

typedef struct
{
  const char *key;
  const char *tick;   /* by what it is ticked, see lr_tick_key(); NULL: its key */
  gboolean    has_box;
  const char *lead;   /* (nullable): markup of a narrow column, "2 ×" */
  const char *markup; /* what it is; (nullable) where the list puts a widget of its own there */
  const char *note;   /* (nullable): markup, small, under it */
  const char *item;   /* (nullable): id of the thing that it is about: pointing at the line points at it */
} LrListLine;

/* Returns (transfer none): the line's widget; @is_new (out, optional): it was not there before */
GtkWidget  *lr_list_page_line  (LrListPage *self, const LrListLine *line, gboolean *is_new);
/* Of a new line: a widget of the list's own at its end, or instead of its text; told apart by @name later on */
void        lr_list_line_add   (GtkWidget *line, const char *name, GtkWidget *child, gboolean is_instead);
GtkWidget  *lr_list_line_get   (GtkWidget *line, const char *name); /* (transfer none) (nullable) */
const char *lr_list_line_get_key (GtkWidget *line);
/* What an entry has no room for is told when it is pointed at */
void        lr_list_entry_update_hint (GtkWidget *entry);
/* The line that @child stands in, and the page */
GtkWidget  *lr_list_line_of    (GtkWidget *child);
