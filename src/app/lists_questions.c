/* lists_questions.c - questions and notes: typed, put in order, ticked when they are asked
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "lists_dialog.h"

#include "list_page.h"
#include "plan_edit.h"

#include <glib/gi18n-lib.h>

#define LIST "questions"

static LrListPage *
page_of (GtkWidget *widget)
{
  return LR_LIST_PAGE (gtk_widget_get_ancestor (widget, LR_TYPE_LIST_PAGE));
}

static const LrPlan *
get_plan (LrListPage *page)
{
  return lr_document_get_committed (lr_list_page_get_document (page));
}

/* -1: there is none of that id */
static int
find_question (const LrPlan *plan,
               const char   *id)
{
  for (gsize i = 0; i < plan->job->n_questions; i++)
    if (g_str_equal (plan->job->questions[i].id, id))
      return (int) i;
  return -1;
}

/* (element-type LrQuestion): as the plan has them, to be changed; texts are the plan's */
static GArray *
copy_questions (const LrPlan *plan)
{
  GArray *questions = g_array_new (FALSE, TRUE, sizeof (LrQuestion));

  if (plan->job->n_questions > 0)
    g_array_append_vals (questions, plan->job->questions, (guint) plan->job->n_questions);
  return questions;
}

static void
commit (LrListPage *page,
        GArray     *questions,
        const char *what)
{
  g_autoptr (GError) error = NULL;
  LrPlan *next = lr_plan_set_questions (get_plan (page), (const LrQuestion *) (gpointer) questions->data, questions->len, &error);

  lr_list_page_commit (page, next, what, &error);
}

/* --- Typing --------------------------------------------------------------------------------------------------- */

static void
take (GtkWidget *entry)
{
  GtkWidget *line = lr_list_line_of (entry);
  LrListPage *page = line != NULL ? page_of (line) : NULL;
  gboolean is_note = line != NULL && entry == lr_list_line_get (line, "note");
  g_autoptr (GArray) questions = NULL;
  g_autofree char *text = NULL;
  LrQuestion *question;
  char **place;
  int index;

  if (page == NULL || (index = find_question (get_plan (page), lr_list_line_get_key (line))) < 0)
    return;
  questions = copy_questions (get_plan (page));
  question = &g_array_index (questions, LrQuestion, index);
  place = is_note ? &question->note : &question->text;
  text = g_strdup (gtk_editable_get_text (GTK_EDITABLE (entry)));
  if (g_str_equal (*place, text))
    return;
  *place = text;
  commit (page, questions, is_note ? _("Note") : _("Question"));
}

static void
leave_cb (GtkEventController *focus)
{
  take (gtk_event_controller_get_widget (focus));
}

static void
add_after (LrListPage *page,
           int         index)
{
  g_autoptr (GArray) questions = copy_questions (get_plan (page));
  LrQuestion question = { .id = (char *) "", .text = (char *) "", .note = (char *) "" };

  g_array_insert_val (questions, (guint) index, question);
  g_object_set_data (G_OBJECT (page), "focus", GINT_TO_POINTER (index + 1));
  commit (page, questions, _("Add a question"));
}

static void
add_cb (GtkWidget *button)
{
  LrListPage *page = page_of (button);

  add_after (page, (int) get_plan (page)->job->n_questions);
}

/* Enter: what was typed is taken, and there is a new line to go on */
static void
activate_cb (GtkWidget *entry)
{
  GtkWidget *line = lr_list_line_of (entry);
  LrListPage *page = page_of (entry);
  int index;

  take (entry);
  index = find_question (get_plan (page), lr_list_line_get_key (line));
  if (index >= 0 && entry == lr_list_line_get (line, "text") && gtk_editable_get_text (GTK_EDITABLE (entry))[0] != '\0')
    add_after (page, index + 1);
}

/* --- Order ---------------------------------------------------------------------------------------------------- */

static void
move (GtkWidget *widget,
      int        by)
{
  GtkWidget *line = lr_list_line_of (widget);
  LrListPage *page = page_of (widget);
  g_autoptr (GArray) questions = copy_questions (get_plan (page));
  int index = find_question (get_plan (page), lr_list_line_get_key (line)), to = index + by;
  LrQuestion moved;

  if (index < 0 || to < 0 || to >= (int) questions->len)
    return;
  moved = g_array_index (questions, LrQuestion, index);
  g_array_remove_index (questions, (guint) index);
  g_array_insert_val (questions, (guint) to, moved);
  commit (page, questions, _("Move a question"));
}

static void
up_cb (GtkWidget *button)
{
  move (button, -1);
}

static void
down_cb (GtkWidget *button)
{
  move (button, 1);
}

static void
remove_cb (GtkWidget *button)
{
  LrListPage *page = page_of (button);
  g_autoptr (GArray) questions = copy_questions (get_plan (page));
  int index = find_question (get_plan (page), lr_list_line_get_key (lr_list_line_of (button)));

  if (index < 0)
    return;
  g_array_remove_index (questions, (guint) index);
  commit (page, questions, _("Remove a question"));
}

static gboolean
key_cb (GtkEventController *controller,
        guint               key,
        guint               code,
        GdkModifierType     state)
{
  GtkWidget *line = gtk_event_controller_get_widget (controller);

  if ((state & GDK_ALT_MASK) == 0 || (key != GDK_KEY_Up && key != GDK_KEY_Down))
    return FALSE;
  take (gtk_root_get_focus (gtk_widget_get_root (line)) != NULL
          ? gtk_widget_get_ancestor (gtk_root_get_focus (gtk_widget_get_root (line)), GTK_TYPE_ENTRY) : NULL);
  move (line, key == GDK_KEY_Up ? -1 : 1);
  return TRUE;
}

/* --- Lines ---------------------------------------------------------------------------------------------------- */

static GtkWidget *
make_entry (const char *placeholder)
{
  GtkWidget *entry = gtk_entry_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  gtk_entry_set_placeholder_text (GTK_ENTRY (entry), placeholder);
  gtk_widget_set_hexpand (entry, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, placeholder, -1);
  g_signal_connect (entry, "activate", G_CALLBACK (activate_cb), NULL);
  g_signal_connect (focus, "leave", G_CALLBACK (leave_cb), NULL);
  gtk_widget_add_controller (entry, focus);
  return entry;
}

static void
add_button (GtkWidget  *line,
            const char *name,
            const char *icon,
            const char *title,
            GCallback   clicked)
{
  GtkWidget *button = gtk_button_new_from_icon_name (icon);

  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_set_tooltip_text (button, title);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
  gtk_button_set_has_frame (GTK_BUTTON (button), FALSE);
  g_signal_connect (button, "clicked", clicked, NULL);
  lr_list_line_add (line, name, button, FALSE);
}

static void
fill_new_line (GtkWidget *line)
{
  GtkWidget *text = make_entry (_("Question")), *note = make_entry (_("Note"));
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_widget_add_css_class (note, "small");
  lr_list_line_add (line, "note", note, TRUE);
  lr_list_line_add (line, "text", text, TRUE);
  add_button (line, "up", "go-up-symbolic", _("Earlier (Alt Up)"), G_CALLBACK (up_cb));
  add_button (line, "down", "go-down-symbolic", _("Later (Alt Down)"), G_CALLBACK (down_cb));
  add_button (line, "remove", "user-trash-symbolic", _("Remove the question"), G_CALLBACK (remove_cb));
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), NULL);
  gtk_widget_add_controller (line, keys);
}

/* What is being typed stays */
static void
set_entry (GtkWidget  *entry,
           const char *text)
{
  GtkWidget *focus = gtk_widget_get_root (entry) != NULL ? gtk_root_get_focus (gtk_widget_get_root (entry)) : NULL;

  if (!g_str_equal (gtk_editable_get_text (GTK_EDITABLE (entry)), text) && (focus == NULL || !gtk_widget_is_ancestor (focus, entry)))
    gtk_editable_set_text (GTK_EDITABLE (entry), text);
  lr_list_entry_update_hint (entry);
}

static void
fill (LrListPage *page,
      LrDocument *document)
{
  const LrPlan *plan = lr_document_get_plan (document);
  int focus = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (page), "focus"));

  g_object_set_data (G_OBJECT (page), "focus", NULL);
  if (plan->job->n_questions == 0)
    lr_list_page_say (page, "none", _("What will be asked, in its order. On paper each question has lines to write on."));
  for (gsize i = 0; i < plan->job->n_questions; i++)
    {
      const LrQuestion *question = &plan->job->questions[i];
      g_autofree char *number = g_strdup_printf ("%" G_GSIZE_FORMAT, i + 1);
      const LrListLine line = { .key = question->id, .has_box = TRUE, .lead = number };
      gboolean is_new;
      GtkWidget *widget = lr_list_page_line (page, &line, &is_new);

      if (is_new)
        fill_new_line (widget);
      set_entry (lr_list_line_get (widget, "text"), question->text);
      set_entry (lr_list_line_get (widget, "note"), question->note);
      gtk_widget_set_sensitive (lr_list_line_get (widget, "up"), i > 0);
      gtk_widget_set_sensitive (lr_list_line_get (widget, "down"), i + 1 < plan->job->n_questions);
      if (focus == (int) i + 1)
        gtk_widget_grab_focus (lr_list_line_get (widget, "text"));
    }
}

/**
 * lr_lists_questions_new:
 * @document: whose questions
 *
 * Returns: (transfer floating): the page
 */
GtkWidget *
lr_lists_questions_new (LrDocument *document)
{
  GtkWidget *page = lr_list_page_new (document, LIST, fill), *button = gtk_button_new_with_label (_("Add a question"));

  gtk_box_append (GTK_BOX (lr_list_page_get_bar (LR_LIST_PAGE (page))), button);
  g_signal_connect (button, "clicked", G_CALLBACK (add_cb), NULL);
  return page;
}
