/* ask.c - questions and news that stand in a dialog of their own
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "ask.h"

#include <glib/gi18n-lib.h>

#define LEAST_CHARS 36
#define MOST_CHARS 56

typedef struct
{
  LrTextAnswer   text_answer;
  LrChoiceAnswer choice_answer;
  gpointer       data;
  GtkWidget     *entry;
} Question;

static GtkWidget *
new_label (const char *text,
           const char *style)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0.0F);
  gtk_label_set_width_chars (GTK_LABEL (label), LEAST_CHARS);
  gtk_label_set_max_width_chars (GTK_LABEL (label), MOST_CHARS);
  if (style != NULL)
    gtk_widget_add_css_class (label, style);
  return label;
}

static GtkWidget *
make_dialog (GtkWindow  *parent,
             const char *title,
             const char *question,
             const char *detail)
{
  GtkWidget *dialog = g_object_new (GTK_TYPE_DIALOG, "transient-for", parent, "modal", TRUE, "destroy-with-parent", TRUE,
                                    "resizable", FALSE, "title", title, NULL);
  GtkWidget *area = gtk_dialog_get_content_area (GTK_DIALOG (dialog));

  gtk_widget_add_css_class (dialog, "ask");
  gtk_box_set_spacing (GTK_BOX (area), 8);
  gtk_box_append (GTK_BOX (area), new_label (question, detail != NULL ? "panel-title" : NULL));
  if (detail != NULL)
    gtk_box_append (GTK_BOX (area), new_label (detail, NULL));
  return dialog;
}

/* Enter takes the last one */
static void
set_default (GtkWidget *dialog,
             int        response)
{
  GtkWidget *button = gtk_dialog_get_widget_for_response (GTK_DIALOG (dialog), response);

  gtk_dialog_set_default_response (GTK_DIALOG (dialog), response);
  gtk_widget_add_css_class (button, "suggested-action");
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
 * @title: of the dialog
 * @question: what the text is
 * @verb: label of the button that takes it, with a mnemonic
 * @text: to begin with
 * @answer: called with what was typed, unless it is empty or refused
 *
 * Asks for a short text.
 */
void
lr_ask_text (GtkWindow    *parent,
             const char   *title,
             const char   *question,
             const char   *verb,
             const char   *text,
             LrTextAnswer  answer,
             gpointer      data)
{
  GtkWidget *dialog = make_dialog (parent, title, question, NULL), *entry = gtk_entry_new ();
  Question *state = g_new0 (Question, 1);

  state->text_answer = answer;
  state->data = data;
  state->entry = entry;
  gtk_dialog_add_buttons (GTK_DIALOG (dialog), _("_Cancel"), GTK_RESPONSE_CANCEL, verb, GTK_RESPONSE_ACCEPT, NULL);
  set_default (dialog, GTK_RESPONSE_ACCEPT);
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  gtk_entry_set_activates_default (GTK_ENTRY (entry), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, question, -1);
  gtk_box_append (GTK_BOX (gtk_dialog_get_content_area (GTK_DIALOG (dialog))), entry);
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
 * @title: of the dialog
 * @question: one sentence
 * @detail: (nullable): another
 * @verbs: labels of the buttons, with mnemonics, the last is the one that Enter takes
 * @answer: called with the index of the button, or -1 when the dialog was closed
 */
void
lr_ask_choice (GtkWindow         *parent,
               const char        *title,
               const char        *question,
               const char        *detail,
               const char *const *verbs,
               LrChoiceAnswer     answer,
               gpointer           data)
{
  GtkWidget *dialog = make_dialog (parent, title, question, detail);
  Question *state = g_new0 (Question, 1);
  int n = 0;

  state->choice_answer = answer;
  state->data = data;
  for (; verbs[n] != NULL; n++)
    gtk_dialog_add_button (GTK_DIALOG (dialog), verbs[n], n);
  set_default (dialog, n - 1);
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
  GtkWidget *dialog = make_dialog (parent, "Lookroom", what, why);

  gtk_dialog_add_button (GTK_DIALOG (dialog), _("_Close"), GTK_RESPONSE_CLOSE);
  set_default (dialog, GTK_RESPONSE_CLOSE);
  g_signal_connect (dialog, "response", G_CALLBACK (gtk_window_destroy), NULL);
  gtk_window_present (GTK_WINDOW (dialog));
}
