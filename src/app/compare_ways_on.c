/* compare_ways_on.c - where other rooms would stand: how they come there
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "compare_ways_on.h"

#include <glib/gi18n-lib.h>

#define GAP_PX 8

static void
run_cb (GtkWidget *button)
{
  GtkWindow *dialog = GTK_WINDOW (gtk_widget_get_root (button)), *parent = gtk_window_get_transient_for (dialog);
  const char *action = g_object_get_data (G_OBJECT (button), "action");

  if (parent != NULL)
    g_action_group_activate_action (G_ACTION_GROUP (parent), action, NULL);
  gtk_window_close (dialog);
}

static GtkWidget *
make_way_on (const char *label,
             const char *action)
{
  GtkWidget *button = gtk_button_new_with_mnemonic (label);

  g_object_set_data (G_OBJECT (button), "action", (gpointer) action);
  g_signal_connect (button, "clicked", G_CALLBACK (run_cb), NULL);
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  return button;
}

/**
 * lr_compare_ways_on_new:
 *
 * Returns: (transfer floating): what is said beside a room that is alone, with buttons for actions of the window that the dialog belongs to
 */
GtkWidget *
lr_compare_ways_on_new (void)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, GAP_PX);
  GtkWidget *text = gtk_label_new (_("One room has nothing to be held against. Each candidate room is a set-up of its own: make one for the next room, "
                                     "or copy this one to try the same set elsewhere. Its figures then stand beside these."));

  gtk_label_set_wrap (GTK_LABEL (text), TRUE);
  gtk_label_set_xalign (GTK_LABEL (text), 0.0F);
  gtk_label_set_max_width_chars (GTK_LABEL (text), 52);
  gtk_widget_set_valign (column, GTK_ALIGN_CENTER);
  gtk_widget_set_margin_start (column, 2 * GAP_PX);
  gtk_box_append (GTK_BOX (column), text);
  gtk_box_append (GTK_BOX (column), make_way_on (_("_New set-up for another room…"), "new-setup"));
  gtk_box_append (GTK_BOX (column), make_way_on (_("_Copy this set-up…"), "copy-setup"));
  return column;
}
