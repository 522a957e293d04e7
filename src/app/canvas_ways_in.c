/* canvas_ways_in.c - what an empty sheet offers
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "canvas_ways_in.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  const char *action, *title, *text;
} WayIn;

static const WayIn ways[] = {
  { "canvas.type-room", N_("Type the wall lengths"), N_("You have been there with a tape.") },
  { "canvas.draw-room", N_("Draw the room"), N_("Click corner after corner, or type as you go.") },
  { "canvas.trace-picture", N_("Trace a picture of a floor plan"), N_("A photo, a scan or a PDF: choose it, or drop it here.") },
};

static GtkWidget *
make_button (const WayIn *way)
{
  GtkWidget *button = gtk_button_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *title = gtk_label_new (_(way->title));
  GtkWidget *text = gtk_label_new (_(way->text));

  gtk_widget_add_css_class (title, "heading");
  gtk_widget_add_css_class (text, "dim-label");
  gtk_label_set_xalign (GTK_LABEL (title), 0.0F);
  gtk_label_set_xalign (GTK_LABEL (text), 0.0F);
  gtk_box_append (GTK_BOX (box), title);
  gtk_box_append (GTK_BOX (box), text);
  gtk_button_set_child (GTK_BUTTON (button), box);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), way->action);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, _(way->title),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, _(way->text), -1);
  return button;
}

/**
 * lr_canvas_ways_in_new:
 *
 * Returns: (transfer floating): the ways to make a room, one above the other
 */
GtkWidget *
lr_canvas_ways_in_new (void)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  GtkWidget *title = gtk_label_new (_("Where will you film?"));

  gtk_widget_add_css_class (box, "ways-in");
  gtk_widget_add_css_class (title, "title-4");
  gtk_widget_set_margin_bottom (title, 4);
  gtk_box_append (GTK_BOX (box), title);
  for (gsize i = 0; i < G_N_ELEMENTS (ways); i++)
    gtk_box_append (GTK_BOX (box), make_button (&ways[i]));
  return box;
}
