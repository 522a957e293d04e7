/* file_actions.c - new, open, save, and the questions that go with them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "file_actions.h"

#include "app.h"
#include "ask.h"
#include "beside.h"
#include "my_kit.h"
#include "plan_reader.h"
#include "settings.h"
#include "main_window_private.h"

#include <glib/gi18n-lib.h>

#define SUFFIX ".lookroom"
#define EXAMPLE "loft" SUFFIX
#define N_RECENT 8

static void
remember_file (const char *path)
{
  g_autofree char *uri = g_filename_to_uri (path, NULL, NULL);

  lr_settings_set_last_file (path);
  if (uri != NULL)
    gtk_recent_manager_add_item (gtk_recent_manager_get_default (), uri);
}

static void
tell_error (LrMainWindow *self,
            const char   *what,
            const char *path,
            GError     *error)
{
  g_autofree char *name = g_filename_display_basename (path);
  g_autofree char *heading = g_strdup_printf (what, name);
  g_autofree char *place = g_strconcat (path, ": ", NULL);
  const char *why = error->message;

  /* the heading names the file already */
  if (g_str_has_prefix (why, place))
    why += strlen (place);
  lr_tell (GTK_WINDOW (self), heading, why);
}

/* @to may be the document's own path, which saving replaces */
static gboolean
save_to (LrMainWindow *self,
         const char   *to)
{
  g_autofree char *path = g_strdup (to);
  g_autoptr (GError) error = NULL;

  if (!lr_document_save (self->document, path, &error))
    {
      tell_error (self, _("“%s” was not saved"), path, error);
      return FALSE;
    }

  self->is_example = FALSE;
  remember_file (path);
  lr_journal_settle (self->journal);
  gtk_info_bar_set_revealed (GTK_INFO_BAR (self->recovered_bar), FALSE);
  return TRUE;
}

/* A file name that the plan's title suggests */
static char *
suggest_name (LrDocument *document)
{
  const LrJob *job = lr_document_get_plan (document)->job;
  g_autofree char *title = g_strdup (job->title[0] != '\0' ? job->title : _("New plan"));

  g_strdelimit (title, "/\\:*?\"<>|", '-');
  return g_strconcat (title, SUFFIX, NULL);
}

static void
add_filters (GtkFileChooser *chooser)
{
  g_autoptr (GtkFileFilter) plans = gtk_file_filter_new (), all = gtk_file_filter_new ();

  gtk_file_filter_set_name (plans, _("Plans"));
  gtk_file_filter_add_suffix (plans, "lookroom");
  gtk_file_chooser_add_filter (chooser, plans);
  gtk_file_filter_set_name (all, _("All files"));
  gtk_file_filter_add_pattern (all, "*");
  gtk_file_chooser_add_filter (chooser, all);
}

static char *
with_suffix (const char *path)
{
  g_autofree char *base = g_path_get_basename (path);

  return strchr (base, '.') != NULL ? g_strdup (path) : g_strconcat (path, SUFFIX, NULL);
}

static void
save_as_response_cb (GtkNativeDialog *dialog,
                     int              response,
                     LrMainWindow        *self)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  gboolean closes = g_object_get_data (G_OBJECT (dialog), "lr-closes") != NULL;

  if (response == GTK_RESPONSE_ACCEPT && file != NULL && g_file_peek_path (file) != NULL)
    {
      g_autofree char *path = with_suffix (g_file_peek_path (file));

      if (save_to (self, path) && closes)
        gtk_window_close (GTK_WINDOW (self));
    }
  g_object_unref (dialog);
}

static void
ask_where_to_save (LrMainWindow *self,
                   gboolean  closes)
{
  GtkFileChooserNative *dialog =
    gtk_file_chooser_native_new (_("Save the plan as"), GTK_WINDOW (self), GTK_FILE_CHOOSER_ACTION_SAVE, _("_Save"), _("_Cancel"));
  const char *path = lr_document_get_path (self->document);
  g_autofree char *name = suggest_name (self->document);

  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  add_filters (GTK_FILE_CHOOSER (dialog));
  if (path != NULL)
    {
      g_autoptr (GFile) file = g_file_new_for_path (path);

      gtk_file_chooser_set_file (GTK_FILE_CHOOSER (dialog), file, NULL);
    }
  else
    gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog), name);
  if (closes)
    g_object_set_data (G_OBJECT (dialog), "lr-closes", dialog);
  g_signal_connect (dialog, "response", G_CALLBACK (save_as_response_cb), self);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

static void
overwrite_answer_cb (int      choice,
                     gpointer data)
{
  LrMainWindow *self = data;

  if (choice == 1)
    ask_where_to_save (self, FALSE);
  else if (choice == 2)
    save_to (self, lr_document_get_path (self->document));
}

/* Returns whether it was saved at once; else a question is open */
static gboolean
save (LrMainWindow *self,
      gboolean  closes)
{
  static const char *const verbs[] = { N_("_Cancel"), N_("Save a _copy…"), N_("_Write over it"), NULL };
  const char *labels[] = { _(verbs[0]), _(verbs[1]), _(verbs[2]), NULL };
  const char *path = lr_document_get_path (self->document);

  if (path == NULL)
    {
      ask_where_to_save (self, closes);
      return FALSE;
    }
  if (lr_document_changed_on_disk (self->document))
    {
      g_autofree char *name = g_filename_display_basename (path);
      g_autofree char *question = g_strdup_printf (_("Another program has changed “%s” since it was opened here"), name);

      lr_ask_choice (GTK_WINDOW (self), _("Changed on disk"), question, _("Writing over it loses what was changed there."), labels,
                     overwrite_answer_cb, self);
      return FALSE;
    }
  return save_to (self, path);
}

static void
closing_answer_cb (int      choice,
                   gpointer data)
{
  LrMainWindow *self = data;

  if (choice == 1)
    {
      self->may_close = TRUE;
      gtk_window_close (GTK_WINDOW (self));
    }
  else if (choice == 2 && save (self, TRUE))
    gtk_window_close (GTK_WINDOW (self));
}

/**
 * lr_main_window_ask_before_closing:
 *
 * Asks what becomes of the changes; closes the window once they are saved or dropped.
 */
void
lr_main_window_ask_before_closing (LrMainWindow *self)
{
  const char *labels[] = { _("_Stay here"), _("Close _without saving"), _("_Save"), NULL };
  const char *title = gtk_label_get_label (GTK_LABEL (self->title_label));
  g_autofree char *question = g_strdup_printf (_("Save the changes to “%s”?"), title);

  lr_ask_choice (GTK_WINDOW (self), _("Changes not saved"), question, NULL, labels, closing_answer_cb, self);
}

/**
 * lr_main_window_revert:
 *
 * Shows what the file holds, or an empty plan when there is no file.
 */
void
lr_main_window_revert (LrMainWindow *self)
{
  g_autofree char *path = g_strdup (lr_document_get_path (self->document)), *trouble = NULL;
  g_autoptr (GError) error = NULL;

  if (path == NULL)
    lr_document_reset (self->document, lr_my_kit_new_plan (&trouble), NULL);
  else if (!lr_document_open (self->document, path, &error))
    tell_error (self, _("“%s” could not be opened"), path, error);
  if (trouble != NULL)
    lr_main_window_say (self, trouble);
}

static LrMainWindow *
window_for_path (LrMainWindow *self,
                 const char   *path)
{
  GList *windows = gtk_application_get_windows (gtk_window_get_application (GTK_WINDOW (self)));

  for (GList *l = windows; l != NULL; l = l->next)
    if (LR_IS_MAIN_WINDOW (l->data) && g_strcmp0 (lr_document_get_path (LR_MAIN_WINDOW (l->data)->document), path) == 0)
      return l->data;
  return NULL;
}

/**
 * lr_main_window_open_path:
 * @path: of a plan file
 *
 * Opens it here if nobody has worked in this window, else in a window of its own. A file that is open already is shown.
 */
void
lr_main_window_open_path (LrMainWindow *self,
                     const char   *path)
{
  g_autofree char *full = g_canonicalize_filename (path, NULL);
  LrMainWindow *window = window_for_path (self, full);
  g_autoptr (GError) error = NULL;
  gboolean is_new = FALSE;

  if (window == NULL)
    {
      is_new = !lr_main_window_is_pristine (self);
      window = is_new ? LR_MAIN_WINDOW (lr_main_window_new (gtk_window_get_application (GTK_WINDOW (self)))) : self;
      if (!lr_document_open (window->document, full, &error))
        {
          if (is_new)
            gtk_window_destroy (GTK_WINDOW (window));
          tell_error (self, _("“%s” could not be opened"), full, error);
          return;
        }
      window->is_example = FALSE;
      remember_file (full);
      if (lr_document_get_plan (window->document)->is_read_only)
        lr_main_window_say (window, _("This plan was made by a newer version of Lookroom: it can be looked at and printed, "
                                      "but not changed."));
    }
  gtk_window_present (GTK_WINDOW (window));
}

/**
 * lr_main_window_open_example:
 *
 * Shows the finished example as a plan without a file: nothing that is done to it touches the example.
 *
 * Returns: %FALSE if it is not there
 */
gboolean
lr_main_window_open_example (LrMainWindow *self)
{
  static const char *const folders[] = { LR_EXAMPLES_DIR, LR_DATA_DIR "/examples", NULL };

  for (gsize i = 0; folders[i] != NULL; i++)
    {
      g_autofree char *path = g_build_filename (folders[i], EXAMPLE, NULL);
      LrPlan *plan = lr_plan_read (path, NULL);

      if (plan != NULL)
        {
          lr_document_reset (self->document, plan, NULL);
          self->is_example = TRUE;
          return TRUE;
        }
    }
  return FALSE;
}

static LrMainWindow *
window_to_fill (LrMainWindow *self)
{
  return lr_main_window_is_pristine (self) ? self : LR_MAIN_WINDOW (lr_main_window_new (gtk_window_get_application (GTK_WINDOW (self))));
}

static void
new_cb (GSimpleAction *action,
        GVariant      *parameter,
        gpointer       data)
{
  LrMainWindow *window = window_to_fill (data);
  g_autofree char *trouble = NULL;

  lr_document_reset (window->document, lr_my_kit_new_plan (&trouble), NULL);
  window->is_example = FALSE;
  gtk_window_present (GTK_WINDOW (window));
  if (trouble != NULL)
    lr_main_window_say (window, trouble);
}

static void
example_cb (GSimpleAction *action,
            GVariant      *parameter,
            gpointer       data)
{
  LrMainWindow *window = window_to_fill (data);

  if (!lr_main_window_open_example (window))
    lr_main_window_say (window, _("The example is not installed."));
  gtk_window_present (GTK_WINDOW (window));
}

static void
open_response_cb (GtkNativeDialog *dialog,
                  int              response,
                  LrMainWindow        *self)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));

  if (response == GTK_RESPONSE_ACCEPT && file != NULL && g_file_peek_path (file) != NULL)
    lr_main_window_open_path (self, g_file_peek_path (file));
  g_object_unref (dialog);
}

static void
open_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       data)
{
  GtkFileChooserNative *dialog =
    gtk_file_chooser_native_new (_("Open a plan"), GTK_WINDOW (data), GTK_FILE_CHOOSER_ACTION_OPEN, _("_Open"), _("_Cancel"));

  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  add_filters (GTK_FILE_CHOOSER (dialog));
  g_signal_connect (dialog, "response", G_CALLBACK (open_response_cb), data);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

static void
open_recent_cb (GSimpleAction *action,
                GVariant      *parameter,
                gpointer       data)
{
  lr_main_window_open_path (data, g_variant_get_string (parameter, NULL));
}

static void
save_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       data)
{
  lr_beside_take_typed (data);
  save (data, FALSE);
}

static void
save_as_cb (GSimpleAction *action,
            GVariant      *parameter,
            gpointer       data)
{
  lr_beside_take_typed (data);
  ask_where_to_save (data, FALSE);
}

/* The menu of plans opened lately, made when the menu is */
static void
fill_recent_cb (GtkMenuButton *button,
                gpointer       data)
{
  LrMainWindow *self = data;
  GList *items = gtk_recent_manager_get_items (gtk_recent_manager_get_default ());
  int n = 0;

  g_menu_remove_all (self->recent_menu);
  for (GList *l = items; l != NULL && n < N_RECENT; l = l->next)
    {
      g_autofree char *path = g_filename_from_uri (gtk_recent_info_get_uri (l->data), NULL, NULL);
      g_autofree char *label = path != NULL ? g_filename_display_basename (path) : NULL;
      g_autoptr (GMenuItem) item = NULL;

      if (path == NULL || !g_str_has_suffix (path, SUFFIX) || !gtk_recent_info_exists (l->data))
        continue;

      item = g_menu_item_new (label, NULL);
      g_menu_item_set_action_and_target (item, "win.open-recent", "s", path);
      g_menu_append_item (self->recent_menu, item);
      n++;
    }
  if (n == 0)
    g_menu_append (self->recent_menu, _("None yet"), "win.nothing");
  g_list_free_full (items, (GDestroyNotify) gtk_recent_info_unref);

  if (gtk_menu_button_get_menu_model (button) == NULL)
    gtk_menu_button_set_menu_model (button, G_MENU_MODEL (self->main_menu));
}

static const GActionEntry entries[] = {
  { "new", new_cb, NULL, NULL, NULL, { 0 } },
  { "example", example_cb, NULL, NULL, NULL, { 0 } },
  { "open", open_cb, NULL, NULL, NULL, { 0 } },
  { "open-recent", open_recent_cb, "s", NULL, NULL, { 0 } },
  { "save", save_cb, NULL, NULL, NULL, { 0 } },
  { "save-as", save_as_cb, NULL, NULL, NULL, { 0 } },
};

/**
 * lr_main_window_add_file_actions:
 *
 * Adds the actions that make, open and save plans, and the menu of those opened lately.
 */
void
lr_main_window_add_file_actions (LrMainWindow *self)
{
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  gtk_menu_button_set_create_popup_func (GTK_MENU_BUTTON (self->menu_button), fill_recent_cb, self, NULL);
}
