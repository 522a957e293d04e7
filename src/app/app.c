/* app.c - the program with a window
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "app.h"

#include "file_actions.h"
#include "journal.h"
#include "settings.h"
#include "shortcuts.h"
#include "main_window_private.h"

#include <glib/gi18n-lib.h>
#ifdef __GLIBC__
#include <malloc.h>
#endif

struct _LrApp
{
  GtkApplication parent_instance;

  gboolean has_recovered;
};

G_DEFINE_FINAL_TYPE (LrApp, lr_app, GTK_TYPE_APPLICATION)

/* A full repaint allocates and frees pictures of the window's size. Returned to the system each time, their pages are faulted
 * in again for every frame, which costs several times the drawing. */
static void
keep_large_blocks (void)
{
#ifdef __GLIBC__
  mallopt (M_MMAP_THRESHOLD, 32 << 20);
  mallopt (M_TRIM_THRESHOLD, 512 << 20);
#endif
}

static LrMainWindow *
get_window (LrApp *self)
{
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (self)); l != NULL; l = l->next)
    if (LR_IS_MAIN_WINDOW (l->data))
      return l->data;

  return LR_MAIN_WINDOW (lr_main_window_new (GTK_APPLICATION (self)));
}

/* Over what was saved, or over an empty plan, as one step: undo goes back to it */
static void
recover (LrApp            *self,
         const LrLeftover *leftover)
{
  LrMainWindow *window = LR_MAIN_WINDOW (lr_main_window_new (GTK_APPLICATION (self)));
  g_autoptr (GDateTime) when = g_date_time_new_from_unix_local (leftover->when_unix_s);
  /* Translators: strftime's letters: day of the week, day, month, hour, minute */
  g_autofree char *time = when != NULL ? g_date_time_format (when, _("%a %-d %b, %H:%M")) : g_strdup ("?");
  g_autofree char *sentence =
    g_strdup_printf (_("Lookroom was ended before this plan was saved. This is how it stood on %s."), time);

  if (leftover->path[0] == '\0' || !lr_document_open (window->document, leftover->path, NULL))
    lr_document_reset (window->document, lr_plan_new_empty (), NULL);
  lr_document_commit (window->document, lr_plan_ref (leftover->plan), _("Recover"));
  lr_journal_flush (window->journal);
  lr_leftover_discard (leftover);

  lr_main_window_show_recovered (window, sentence);
  gtk_window_present (GTK_WINDOW (window));
}

/* Once a run, before anything else is shown */
static void
recover_all (LrApp *self)
{
  g_autoptr (GPtrArray) leftovers = NULL;

  if (self->has_recovered)
    return;

  self->has_recovered = TRUE;
  leftovers = lr_journal_find_leftovers ();
  for (guint i = 0; i < leftovers->len; i++)
    recover (self, g_ptr_array_index (leftovers, i));
}

/* What was open last, or the finished example */
static void
lr_app_activate (GApplication *application)
{
  LrApp *self = LR_APP (application);
  g_autofree char *last = NULL;
  LrMainWindow *window;

  recover_all (self);
  if (gtk_application_get_windows (GTK_APPLICATION (self)) != NULL)
    {
      gtk_window_present (GTK_WINDOW (get_window (self)));
      return;
    }

  window = get_window (self);
  last = lr_settings_dup_last_file ();
  if (last[0] == '\0' || !g_file_test (last, G_FILE_TEST_IS_REGULAR) || !lr_document_open (window->document, last, NULL))
    lr_main_window_open_example (window);
  gtk_window_present (GTK_WINDOW (window));
}

static void
lr_app_open (GApplication  *application,
             GFile        **files,
             int            n_files,
             const char    *hint)
{
  LrApp *self = LR_APP (application);

  recover_all (self);
  for (int i = 0; i < n_files; i++)
    {
      LrMainWindow *window = get_window (self);

      gtk_window_present (GTK_WINDOW (window));
      if (g_file_peek_path (files[i]) != NULL)
        lr_main_window_open_path (window, g_file_peek_path (files[i]));
    }
}

static void
quit_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       data)
{
  g_autoptr (GList) windows = g_list_copy (gtk_application_get_windows (data));

  for (GList *l = windows; l != NULL; l = l->next)
    if (LR_IS_MAIN_WINDOW (l->data))
      gtk_window_close (l->data);
}

static void
dark_cb (GSimpleAction *action,
         GVariant      *state,
         gpointer       data)
{
  g_simple_action_set_state (action, state);
  lr_settings_set_dark (g_variant_get_boolean (state));
  g_object_set (gtk_settings_get_default (), "gtk-application-prefer-dark-theme", g_variant_get_boolean (state), NULL);
}

/* The program's own icon, while it runs from where it was built */
static void
find_icons (void)
{
  GtkIconTheme *theme = gtk_icon_theme_get_for_display (gdk_display_get_default ());

  if (!gtk_icon_theme_has_icon (theme, LR_APP_ID))
    gtk_icon_theme_add_search_path (theme, LR_SOURCE_DATA_DIR "/icons");
}

static void
about_cb (GSimpleAction *action,
          GVariant      *parameter,
          gpointer       data)
{
  find_icons ();
  gtk_show_about_dialog (gtk_application_get_active_window (data),
                         "program-name", "Lookroom",
                         "version", LR_VERSION,
                         "comments", _("Plans sit-down interviews for one person who films alone"),
                         "license-type", GTK_LICENSE_GPL_3_0,
                         "logo-icon-name", LR_APP_ID,
                         NULL);
}

static const GActionEntry entries[] = {
  { "quit", quit_cb, NULL, NULL, NULL, { 0 } },
  { "dark", NULL, NULL, "false", dark_cb, { 0 } },
  { "about", about_cb, NULL, NULL, NULL, { 0 } },
};

static void
load_style (void)
{
  GdkDisplay *display = gdk_display_get_default ();
  g_autoptr (GtkCssProvider) provider = gtk_css_provider_new ();

  gtk_css_provider_load_from_resource (provider, LR_RESOURCE_PATH "/ui/lookroom.css");
  gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (provider), GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
}

static void
lr_app_startup (GApplication *application)
{
  G_APPLICATION_CLASS (lr_app_parent_class)->startup (application);

  g_action_map_add_action_entries (G_ACTION_MAP (application), entries, G_N_ELEMENTS (entries), application);
  lr_shortcuts_bind (GTK_APPLICATION (application));
  load_style ();
  gtk_window_set_default_icon_name (LR_APP_ID);
  if (lr_settings_get_dark ())
    g_action_group_change_action_state (G_ACTION_GROUP (application), "dark", g_variant_new_boolean (TRUE));
}

static void
lr_app_class_init (LrAppClass *klass)
{
  GApplicationClass *application_class = G_APPLICATION_CLASS (klass);

  application_class->startup = lr_app_startup;
  application_class->activate = lr_app_activate;
  application_class->open = lr_app_open;
}

static void
lr_app_init (LrApp *self)
{
}

/**
 * lr_app_new:
 * @flags: %G_APPLICATION_NON_UNIQUE in tests
 *
 * Returns: (transfer full): the application
 */
GtkApplication *
lr_app_new (GApplicationFlags flags)
{
  return g_object_new (LR_TYPE_APP, "application-id", LR_APP_ID, "flags", flags | G_APPLICATION_HANDLES_OPEN, NULL);
}

/**
 * lr_app_run:
 * @argc: of main()
 * @argv: of main(): files to open
 *
 * Returns: exit status
 */
int
lr_app_run (int    argc,
            char **argv)
{
  g_autoptr (GtkApplication) application = NULL;

  keep_large_blocks ();
  g_set_application_name ("Lookroom");
  application = lr_app_new (G_APPLICATION_DEFAULT_FLAGS);
  return g_application_run (G_APPLICATION (application), argc, argv);
}
