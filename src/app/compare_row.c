/* compare_row.c - a row of the table of rooms
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is best has a star and bold figures; a row takes the focus as a whole and is spoken as one sentence.
 */

#include "config.h"

#include "compare_row.h"

#include <glib/gi18n-lib.h>

static GtkWidget *
make_label (const char *text,
            const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0F);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  /* the column is as wide as it is told to be, whatever stands in it */
  gtk_label_set_width_chars (GTK_LABEL (label), 1);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 1);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_set_valign (label, GTK_ALIGN_START);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

/* The star keeps its place where there is none */
static GtkWidget *
make_star (gboolean is_best)
{
  GtkWidget *star = gtk_image_new_from_icon_name ("starred-symbolic");

  gtk_image_set_pixel_size (GTK_IMAGE (star), 12);
  gtk_widget_set_valign (star, GTK_ALIGN_START);
  gtk_widget_add_css_class (star, "best-mark");
  gtk_widget_set_opacity (star, is_best ? 1.0 : 0.0);
  return star;
}

static GtkWidget *
make_cell (const LrComparedRow *row,
           guint                index,
           gboolean             has_figure,
           int                  room_px)
{
  GtkWidget *cell = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4), *lines = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gboolean is_best = row->is_best[index];

  gtk_widget_set_size_request (cell, room_px, -1);
  gtk_box_append (GTK_BOX (cell), make_star (is_best));
  gtk_box_append (GTK_BOX (lines), make_label (row->texts[index], is_best ? "best" : has_figure ? "numeric" : "no-figure"));
  if (row->details[index][0] != '\0')
    gtk_box_append (GTK_BOX (lines), make_label (row->details[index], "compare-detail"));
  gtk_widget_set_hexpand (lines, TRUE);
  gtk_box_append (GTK_BOX (cell), lines);
  return cell;
}

/**
 * lr_compare_row_new:
 * @compared: a table
 * @row: one of its rows
 * @room_px: width of a room's column [px]
 *
 * Returns: (transfer floating): a row for a list box
 */
GtkWidget *
lr_compare_row_new (const LrCompared    *compared,
                    const LrComparedRow *row,
                    int                  room_px)
{
  GtkWidget *list_row = gtk_list_box_row_new (), *cells = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *title = make_label (row->title, NULL), *why = make_label (row->why, "compare-detail");
  g_autofree char *sentence = lr_compared_sentence (compared, row);

  gtk_widget_set_size_request (title, LR_COMPARE_TITLE_PX, -1);
  gtk_widget_set_hexpand (title, FALSE);
  gtk_widget_set_size_request (why, LR_COMPARE_WHY_PX, -1);
  gtk_box_append (GTK_BOX (cells), title);
  for (guint i = 0; i < compared->comparison->rooms->len; i++)
    gtk_box_append (GTK_BOX (cells), make_cell (row, i, lr_figure_is_told (&lr_comparison_room (compared->comparison, i)->figure[row->row]), room_px));
  gtk_box_append (GTK_BOX (cells), why);

  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (list_row), cells);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (list_row), FALSE);
  gtk_widget_set_tooltip_text (list_row, row->meaning);
  gtk_accessible_update_property (GTK_ACCESSIBLE (list_row), GTK_ACCESSIBLE_PROPERTY_LABEL, sentence, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  row->meaning, -1);
  g_object_set_data (G_OBJECT (list_row), "compare", GINT_TO_POINTER (row->row));
  return list_row;
}

/**
 * lr_compare_row_get:
 * @row: made by lr_compare_row_new()
 *
 * Returns: what it shows
 */
LrCompare
lr_compare_row_get (GtkWidget *row)
{
  return (LrCompare) GPOINTER_TO_INT (g_object_get_data (G_OBJECT (row), "compare"));
}

/**
 * lr_compare_heading_new:
 * @row: what the row below shows
 *
 * Returns: (transfer floating) (nullable): the title of a family of rows that begins there
 */
GtkWidget *
lr_compare_heading_new (LrCompare row)
{
  const char *group = lr_compare_group (row);
  GtkWidget *label;

  if (group == NULL)
    return NULL;

  label = gtk_label_new (group);
  gtk_label_set_xalign (GTK_LABEL (label), 0.0F);
  gtk_widget_add_css_class (label, "panel-title");
  gtk_widget_add_css_class (label, "compare-group");
  return label;
}
