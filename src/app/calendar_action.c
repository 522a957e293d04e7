/* calendar_action.c - the call times saved as a calendar file
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "calendar_action.h"

#include "ask.h"
#include "calendar.h"
#include "save.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static char *
make_text (LrDocument  *document,
           GError     **error)
{
  return lr_calendar_text (lr_document_get_study (document), g_get_real_time () / G_USEC_PER_SEC, error);
}

static void
say_where (LrDocument *document,
           const char *path)
{
  g_autofree char *name = g_filename_display_name (path);
  /* Translators: name of a file with its folder */
  g_autofree char *sentence = g_strdup_printf (_("The call times are saved as “%s”."), name);

  lr_document_say (document, sentence);
}

static void
response_cb (GtkNativeDialog *dialog,
             int              response)
{
  LrDocument *document = g_object_get_data (G_OBJECT (dialog), "document");
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  g_autoptr (GError) error = NULL;

  if (response == GTK_RESPONSE_ACCEPT && file != NULL && g_file_peek_path (file) != NULL)
    {
      g_autofree char *text = make_text (document, &error);

      if (text == NULL || !lr_save_bytes (g_file_peek_path (file), text, strlen (text), &error))
        lr_tell (gtk_native_dialog_get_transient_for (dialog), _("The calendar was not saved"), error->message);
      else
        say_where (document, g_file_peek_path (file));
    }
  g_object_unref (dialog);
}

/**
 * lr_calendar_save:
 * @window: that it is asked from
 * @document: whose call times
 *
 * Asks where to save them; what is missing for a calendar is told first.
 */
void
lr_calendar_save (GtkWindow  *window,
                  LrDocument *document)
{
  const LrJob *job = lr_document_get_plan (document)->job;
  g_autofree char *title = g_strdelimit (g_strdup (job->title[0] != '\0' ? job->title : _("Plan")), "/\\:*?\"<>|", '-');
  g_autofree char *name = g_strconcat (title, ".ics", NULL), *text = NULL;
  g_autoptr (GError) error = NULL;
  GtkFileChooserNative *dialog;

  text = make_text (document, &error);
  if (text == NULL)
    {
      lr_tell (window, _("There is no calendar yet"), error->message);
      return;
    }

  dialog = gtk_file_chooser_native_new (_("Save the call times as a calendar"), window, GTK_FILE_CHOOSER_ACTION_SAVE, _("_Save"), _("_Cancel"));
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog), name);
  g_object_set_data_full (G_OBJECT (dialog), "document", g_object_ref (document), g_object_unref);
  g_signal_connect (dialog, "response", G_CALLBACK (response_cb), NULL);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}
