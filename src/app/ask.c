/* ask.c - questions and news that stand in a dialog of their own
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "ask.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  LrTextAnswer   text_answer;
  LrChoiceAnswer choice_answer;
  gpointer       data;
  GtkWidget     *entry;
} Question;

static GtkWidget *
make_dialog (GtkWindow  *parent,
             const char *question,
             const char *detail)
{
  GtkWidget *dialog = g_object_new (GTK_TYPE_MESSAGE_DIALOG, "transient-for", parent, "modal", TRUE,
                                    "destroy-with-parent", TRUE, "text", question, "secondary-text", detail, NULL);

  return dialog;
}

/* GTK 4.8 keeps the pointer to a parent that is destroyed before the last reference to its dialog is dropped: the button that
 * was pressed holds the dialog until after the answer, which may close the parent. */
static void
end_dialog (GtkDialog *dialog)
{
  gtk_window_set_transient_for (GTK_WINDOW (dialog), NULL);
  gtk_window_destroy (GTK_WINDOW (dialog));
}

static void
text_response_cb (GtkDialog *dialog,
                  int        response,
                  Question  *question)
{
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (question->entry))));

  end_dialog (dialog);
  if (response == GTK_RESPONSE_ACCEPT && text[0] != '\0')
    question->text_answer (text, question->data);
  g_free (question);
}

/**
 * lr_ask_text:
 * @question: what the text is
 * @verb: label of the button that takes it, with a mnemonic
 * @text: to begin with
 * @answer: called with what was typed, unless it is empty or refused
 *
 * Asks for a short text.
 */
void
lr_ask_text (GtkWindow    *parent,
             const char   *question,
             const char   *verb,
             const char   *text,
             LrTextAnswer  answer,
             gpointer      data)
{
  GtkWidget *dialog = make_dialog (parent, question, NULL), *entry = gtk_entry_new ();
  Question *state = g_new0 (Question, 1);

  state->text_answer = answer;
  state->data = data;
  state->entry = entry;
  gtk_dialog_add_buttons (GTK_DIALOG (dialog), _("_Cancel"), GTK_RESPONSE_CANCEL, verb, GTK_RESPONSE_ACCEPT, NULL);
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), GTK_RESPONSE_ACCEPT);
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  gtk_entry_set_activates_default (GTK_ENTRY (entry), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, question, -1);
  gtk_box_append (GTK_BOX (gtk_message_dialog_get_message_area (GTK_MESSAGE_DIALOG (dialog))), entry);
  gtk_widget_grab_focus (entry);
  g_signal_connect (dialog, "response", G_CALLBACK (text_response_cb), state);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
choice_response_cb (GtkDialog *dialog,
                    int        response,
                    Question  *question)
{
  end_dialog (dialog);
  question->choice_answer (response >= 0 ? response : -1, question->data);
  g_free (question);
}

/**
 * lr_ask_choice:
 * @question: one sentence
 * @detail: (nullable): another
 * @verbs: labels of the buttons, with mnemonics, the last is the one that Enter takes
 * @answer: called with the index of the button, or -1 when the dialog was closed
 */
void
lr_ask_choice (GtkWindow         *parent,
               const char        *question,
               const char        *detail,
               const char *const *verbs,
               LrChoiceAnswer     answer,
               gpointer           data)
{
  GtkWidget *dialog = make_dialog (parent, question, detail);
  Question *state = g_new0 (Question, 1);
  int n = 0;

  state->choice_answer = answer;
  state->data = data;
  for (; verbs[n] != NULL; n++)
    gtk_dialog_add_button (GTK_DIALOG (dialog), verbs[n], n);
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), n - 1);
  g_signal_connect (dialog, "response", G_CALLBACK (choice_response_cb), state);
  gtk_window_present (GTK_WINDOW (dialog));
}

/**
 * lr_tell:
 * @what: what could not be done
 * @why: (nullable): one sentence
 */
void
lr_tell (GtkWindow  *parent,
         const char *what,
         const char *why)
{
  GtkWidget *dialog = make_dialog (parent, what, why);

  gtk_dialog_add_button (GTK_DIALOG (dialog), _("_Close"), GTK_RESPONSE_CLOSE);
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), GTK_RESPONSE_CLOSE);
  g_signal_connect (dialog, "response", G_CALLBACK (gtk_window_destroy), NULL);
  gtk_window_present (GTK_WINDOW (dialog));
}
