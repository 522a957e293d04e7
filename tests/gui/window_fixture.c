/* window_fixture.c - a whole window with the example in it, and ways to find what it holds
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "window_fixture.h"

#include "app.h"
#include "field.h"
#include "file_actions.h"

GtkApplication *app;

static gboolean
timeout_cb (gpointer data)
{
  *(gboolean *) data = TRUE;
  return G_SOURCE_REMOVE;
}

/* Lets the main loop run for a while: two frames and what waits for idle time */
void
settle (void)
{
  gboolean is_over = FALSE;

  g_timeout_add (60, timeout_cb, &is_over);
  while (!is_over)
    g_main_context_iteration (NULL, TRUE);
}

LrMainWindow *
open_example (void)
{
  LrMainWindow *window = LR_MAIN_WINDOW (lr_main_window_new (app));

  g_assert_true (lr_main_window_open_example (window));
  gtk_window_set_default_size (GTK_WINDOW (window), 1600, 1000);
  gtk_window_present (GTK_WINDOW (window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  settle ();
  return window;
}

/* Without a question, and nothing of it stays */
void
close_window (LrMainWindow *window)
{
  gpointer watched = window;

  g_object_add_weak_pointer (G_OBJECT (window), &watched);
  window->may_close = TRUE;
  gtk_window_close (GTK_WINDOW (window));
  settle ();
  g_assert_null (watched);
}

GtkWidget *
find (GtkWidget     *root,
      Match          match,
      gconstpointer  data)
{
  if (match (root, data))
    return root;

  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find (child, match, data);

      if (found != NULL)
        return found;
    }
  return NULL;
}

gboolean
is_field_of (GtkWidget     *widget,
             gconstpointer  key)
{
  return LR_IS_FIELD (widget) && gtk_widget_get_mapped (widget) && g_str_equal (lr_field_get_prop (LR_FIELD (widget))->key, key);
}

gboolean
is_entry (GtkWidget     *widget,
          gconstpointer  data)
{
  return GTK_IS_ENTRY (widget);
}

gboolean
is_drop_down (GtkWidget     *widget,
              gconstpointer  data)
{
  return GTK_IS_DROP_DOWN (widget);
}

/* The entry of the property @key in Details */
GtkWidget *
entry_of (LrMainWindow *window,
          const char   *key)
{
  GtkWidget *field = find (GTK_WIDGET (window->details), is_field_of, key);

  g_assert_nonnull (field);
  return find (field, is_entry, NULL);
}

void
type (GtkWidget  *entry,
      const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  g_signal_emit_by_name (entry, "activate");
}

const LrItem *
get_item (LrMainWindow *window,
          const char   *id)
{
  return lr_plan_find (lr_document_get_plan (window->document), id);
}

void
activate (LrMainWindow *window,
          const char   *action)
{
  g_action_group_activate_action (G_ACTION_GROUP (window), action, NULL);
}

void
window_tests_init (int    *argc,
                   char ***argv)
{
  g_autoptr (GError) error = NULL;

  g_setenv ("XDG_CACHE_HOME", g_get_tmp_dir (), TRUE);
  gtk_test_init (argc, argv, NULL);
  /* sizes that are on their way to others make two pictures of one state differ */
  g_object_set (gtk_settings_get_default (), "gtk-enable-animations", FALSE, NULL);
  app = lr_app_new (G_APPLICATION_NON_UNIQUE);
  g_application_register (G_APPLICATION (app), NULL, &error);
  g_assert_no_error (error);
  g_application_hold (G_APPLICATION (app));
}

GtkWindow *
window_beside (void)
{
  GListModel *toplevels = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (toplevels); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (toplevels, i);

      if (!LR_IS_MAIN_WINDOW (window) && gtk_window_get_transient_for (window) != NULL)
        return window;
    }
  return NULL;
}
