/* beside.c - windows that stay beside the main one, and its keys there
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The application's own keys work in its main windows alone. Of those a window beside gets the ones that are about the plan as a
 * whole; what is about the sheet, as zooming and copying the thing in hand, would change what is out of sight.
 */

#include "config.h"

#include "beside.h"

#include "shortcuts.h"

#include <glib/gi18n-lib.h>

/* Detailed names, as in the table of shortcuts */
static const char *const actions[] = { "win.save", "win.save-as", "win.undo", "win.redo", "window.close", "app.quit", NULL };
/* A window that these open could not be used before one that is modal is closed */
static const char *const openings[] = {
  "win.page", "win.print", "win.lists::", "win.compare", "win.differences", "win.show-shortcuts", NULL,
};

/**
 * lr_beside_take_typed:
 * @window: a window
 *
 * Fields take what is typed when they are left.
 */
void
lr_beside_take_typed (GtkWindow *window)
{
  GtkWidget *typed = gtk_window_get_focus (window);
  g_autoptr (GtkWidget) focus = GTK_IS_TEXT (typed) || GTK_IS_TEXT_VIEW (typed) ? g_object_ref (typed) : NULL;
  int from = 0, to = 0;

  if (focus == NULL)
    return;

  /* one who types on after saving finds the cursor where it was */
  if (GTK_IS_TEXT (focus) && !gtk_editable_get_selection_bounds (GTK_EDITABLE (focus), &from, &to))
    from = to = gtk_editable_get_position (GTK_EDITABLE (focus));
  gtk_window_set_focus (window, NULL);
  if (gtk_widget_get_root (focus) != GTK_ROOT (window))
    return;
  if (GTK_IS_TEXT (focus) && gtk_text_grab_focus_without_selecting (GTK_TEXT (focus)))
    gtk_editable_select_region (GTK_EDITABLE (focus), from, to);
  else
    gtk_window_set_focus (window, focus);
}

/* @data: detailed name of an action */
static gboolean
key_cb (GtkWidget *window,
        GVariant  *args G_GNUC_UNUSED,
        gpointer   data)
{
  const char *detailed = data;
  g_autofree char *name = NULL;
  g_autoptr (GVariant) target = NULL;

  lr_beside_take_typed (GTK_WINDOW (window));
  return g_action_parse_detailed_name (detailed, &name, &target, NULL) && gtk_widget_activate_action_variant (window, name, target);
}

static void
add_keys_of (GtkShortcutController *controller,
             const char *const     *names)
{
  for (; *names != NULL; names++)
    {
      g_auto (GStrv) keys = lr_shortcuts_keys (*names);

      for (guint i = 0; keys[i] != NULL; i++)
        gtk_shortcut_controller_add_shortcut (controller, gtk_shortcut_new (gtk_shortcut_trigger_parse_string (keys[i]),
                                                                            gtk_callback_action_new (key_cb, (gpointer) *names, NULL)));
    }
}

static void
add_keys (GtkWindow *window)
{
  GtkEventController *controller = gtk_shortcut_controller_new ();

  gtk_shortcut_controller_set_scope (GTK_SHORTCUT_CONTROLLER (controller), GTK_SHORTCUT_SCOPE_GLOBAL);
  add_keys_of (GTK_SHORTCUT_CONTROLLER (controller), actions);
  if (!gtk_window_get_modal (window))
    add_keys_of (GTK_SHORTCUT_CONTROLLER (controller), openings);
  gtk_widget_add_controller (GTK_WIDGET (window), controller);
}

static void
update_title (GtkWindow *window)
{
  LrDocument *document = g_object_get_data (G_OBJECT (window), "lr-beside-document");
  const char *title = g_object_get_data (G_OBJECT (window), "lr-beside-title");
  /* Translators: title of a window */
  g_autofree char *text = lr_document_has_changes (document) ? g_strdup_printf (_("%s · not saved"), title) : g_strdup (title);

  if (g_strcmp0 (gtk_window_get_title (window), text) != 0)
    gtk_window_set_title (window, text);
}

/**
 * lr_beside_bind:
 * @window: a window that stays beside
 * @parent: (nullable): the main window
 * @document: that both show
 * @title: of @window
 *
 * Lets @window do what @parent does with the plan as a whole, by keys and by the actions of its own buttons.
 */
void
lr_beside_bind (GtkWindow  *window,
                GtkWindow  *parent,
                LrDocument *document,
                const char *title)
{
  g_object_set_data_full (G_OBJECT (window), "lr-beside-document", g_object_ref (document), g_object_unref);
  g_object_set_data_full (G_OBJECT (window), "lr-beside-title", g_strdup (title), g_free);
  g_signal_connect_object (document, "changed", G_CALLBACK (update_title), window, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "history", G_CALLBACK (update_title), window, G_CONNECT_SWAPPED);
  update_title (window);
  if (parent == NULL || !G_IS_ACTION_GROUP (parent))
    return;

  gtk_widget_insert_action_group (GTK_WIDGET (window), "win", G_ACTION_GROUP (parent));
  /* the group holds its window, which is not destroyed before it is let go */
  g_signal_connect_object (parent, "unrealize", G_CALLBACK (gtk_window_destroy), window, G_CONNECT_SWAPPED);
  add_keys (window);
}
