/* list_line.c - a line of a list that is ticked: its box, what it says, what a list adds to it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "list_line.h"

#define KEY "lr-key"

/**
 * lr_list_label_new:
 * @css_class: (nullable): how it looks
 *
 * Returns: (transfer floating): a label that is broken where it must
 */
GtkWidget *
lr_list_label_new (const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0F);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

/**
 * lr_list_label_set:
 * @label: a label of a list
 * @markup: (nullable): what it says; it is out of sight without
 */
void
lr_list_label_set (GtkWidget  *label,
                   const char *markup)
{
  if (g_strcmp0 (gtk_label_get_label (GTK_LABEL (label)), markup != NULL ? markup : "") != 0 || !gtk_label_get_use_markup (GTK_LABEL (label)))
    gtk_label_set_markup (GTK_LABEL (label), markup != NULL ? markup : "");
  gtk_widget_set_visible (label, markup != NULL);
}

static void
point_cb (GtkEventController *motion)
{
  GtkWidget *line = gtk_event_controller_get_widget (motion);
  GtkWidget *page = gtk_widget_get_ancestor (line, LR_TYPE_LIST_PAGE);
  const char *item = g_object_get_data (G_OBJECT (line), "lr-item");

  if (page != NULL && item != NULL)
    lr_document_point_at (lr_list_page_get_document (LR_LIST_PAGE (page)), item);
}

static void
leave_cb (GtkEventController *motion)
{
  GtkWidget *page = gtk_widget_get_ancestor (gtk_event_controller_get_widget (motion), LR_TYPE_LIST_PAGE);

  if (page != NULL)
    lr_document_point_at (lr_list_page_get_document (LR_LIST_PAGE (page)), NULL);
}

/**
 * lr_list_line_new:
 * @key: its key
 *
 * Returns: (transfer floating): box, lead, text over its note
 */
GtkWidget *
lr_list_line_new (const char *key)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8), *texts = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *check = gtk_check_button_new (), *lead = lr_list_label_new ("numeric"), *text = lr_list_label_new (NULL), *note = lr_list_label_new ("note");
  GtkEventController *motion = gtk_event_controller_motion_new ();

  g_object_set_data_full (G_OBJECT (line), KEY, g_strdup (key), g_free);
  gtk_widget_add_css_class (line, "list-line");
  gtk_widget_set_valign (check, GTK_ALIGN_CENTER);
  gtk_widget_set_valign (lead, GTK_ALIGN_CENTER);
  gtk_widget_set_hexpand (texts, TRUE);
  gtk_widget_set_valign (texts, GTK_ALIGN_CENTER);
  gtk_label_set_wrap (GTK_LABEL (lead), FALSE);
  gtk_box_append (GTK_BOX (texts), text);
  gtk_box_append (GTK_BOX (texts), note);
  gtk_box_append (GTK_BOX (line), check);
  gtk_box_append (GTK_BOX (line), lead);
  gtk_box_append (GTK_BOX (line), texts);
  g_object_set_data (G_OBJECT (line), "lr-check", check);
  g_object_set_data (G_OBJECT (line), "lr-lead", lead);
  g_object_set_data (G_OBJECT (line), "lr-texts", texts);
  g_object_set_data (G_OBJECT (line), "lr-text", text);
  g_object_set_data (G_OBJECT (line), "lr-note", note);
  g_signal_connect (motion, "enter", G_CALLBACK (point_cb), NULL);
  g_signal_connect (motion, "leave", G_CALLBACK (leave_cb), NULL);
  gtk_widget_add_controller (line, motion);
  return line;
}

/**
 * lr_list_line_set:
 * @widget: a line
 * @line: what it says
 * @is_ticked: its box
 * @is_read_only: nothing can be ticked
 */
void
lr_list_line_set (GtkWidget        *widget,
                  const LrListLine *line,
                  gboolean          is_ticked,
                  gboolean          is_read_only)
{
  GtkWidget *check = lr_list_line_get (widget, "lr-check");
  g_autofree char *plain = NULL;

  g_object_set_data_full (G_OBJECT (check), LR_LIST_TICK, g_strdup (line->tick != NULL ? line->tick : line->key), g_free);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), is_ticked);
  gtk_widget_set_sensitive (check, line->has_box && !is_read_only);
  gtk_widget_set_opacity (check, line->has_box ? 1.0 : 0.0);
  lr_list_label_set (lr_list_line_get (widget, "lr-lead"), line->lead);
  lr_list_label_set (lr_list_line_get (widget, "lr-text"), line->markup);
  lr_list_label_set (lr_list_line_get (widget, "lr-note"), line->note);
  g_object_set_data_full (G_OBJECT (widget), "lr-item", g_strdup (line->item), g_free);
  if (line->markup != NULL && pango_parse_markup (line->markup, -1, 0, NULL, &plain, NULL, NULL))
    gtk_accessible_update_property (GTK_ACCESSIBLE (check), GTK_ACCESSIBLE_PROPERTY_LABEL, plain, -1);
}

/**
 * lr_list_line_add:
 * @line: a new line
 * @name: by which lr_list_line_get() finds it
 * @child: a widget
 * @is_instead: it takes the place of the text, and the note stands under it; else it comes at the line's end
 */
void
lr_list_line_add (GtkWidget  *line,
                  const char *name,
                  GtkWidget  *child,
                  gboolean    is_instead)
{
  if (is_instead)
    gtk_box_prepend (GTK_BOX (g_object_get_data (G_OBJECT (line), "lr-texts")), child);
  else
    gtk_box_append (GTK_BOX (line), child);
  g_object_set_data (G_OBJECT (line), name, child);
}

/**
 * lr_list_line_get:
 * @line: a line
 * @name: as given to lr_list_line_add()
 *
 * Returns: (transfer none) (nullable): the widget
 */
GtkWidget *
lr_list_line_get (GtkWidget  *line,
                  const char *name)
{
  return g_object_get_data (G_OBJECT (line), name);
}

/**
 * lr_list_line_get_key:
 * @line: a line
 *
 * Returns: (transfer none): its key
 */
const char *
lr_list_line_get_key (GtkWidget *line)
{
  return g_object_get_data (G_OBJECT (line), KEY);
}

/**
 * lr_list_line_of:
 * @child: what stands in a line
 *
 * Returns: (transfer none) (nullable): the line
 */
GtkWidget *
lr_list_line_of (GtkWidget *child)
{
  while (child != NULL && g_object_get_data (G_OBJECT (child), KEY) == NULL)
    child = gtk_widget_get_parent (child);
  return child;
}

/**
 * lr_list_entry_update_hint:
 * @entry: an entry of a line
 *
 * Tells the whole text when it is pointed at, as the entry may be too narrow.
 */
void
lr_list_entry_update_hint (GtkWidget *entry)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (entry));

  gtk_widget_set_tooltip_text (entry, text[0] != '\0' ? text : NULL);
}
