/* lists_run.c - the run sheet: what is done on the day, how long it takes and when
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "lists_dialog.h"

#include "list_page.h"
#include "run_edit.h"
#include "run_words.h"

#include <glib/gi18n-lib.h>

#define LIST "run"
#define MOST_MIN 1440.0
#define NEW_STEP_MIN 10

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

static const char *
key_of (GtkWidget *widget)
{
  return lr_list_line_get_key (lr_list_line_of (widget));
}

/* What the line was filled with: to be told from what is typed */
static void
set_shown (GtkWidget *widget,
           int        minutes)
{
  g_object_set_data (G_OBJECT (widget), "shown", GINT_TO_POINTER (minutes));
}

/* As long as estimated again when it is typed so: what the plan counts may change later. No time at all: left out */
static void
minutes_cb (GtkSpinButton *spin)
{
  GtkWidget *line = lr_list_line_of (GTK_WIDGET (spin));
  LrListPage *page = line != NULL && gtk_widget_get_root (GTK_WIDGET (spin)) != NULL ? page_of (line) : NULL;
  int minutes = gtk_spin_button_get_value_as_int (spin);
  int estimated = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (line), "estimated"));
  gboolean is_own = g_str_has_prefix (key_of (line), LR_RUN_OWN);
  g_autoptr (GError) error = NULL;
  LrPlan *next;

  if (page == NULL || minutes == GPOINTER_TO_INT (g_object_get_data (G_OBJECT (spin), "shown")))
    return;
  set_shown (GTK_WIDGET (spin), minutes);
  next = lr_plan_time_run_step (get_plan (page), key_of (line), !is_own && minutes == estimated ? 0 : minutes, &error);
  if (next != NULL)
    {
      g_autofree char *merge = g_strconcat ("run-minutes:", key_of (line), NULL);

      lr_document_commit_merge (lr_list_page_get_document (page), next, _("Minutes of a step"), merge);
    }
  else
    lr_document_say (lr_list_page_get_document (page), error->message);
  lr_list_page_refill (page);
}

static void
take_title (GtkWidget *entry)
{
  GtkWidget *line = lr_list_line_of (entry);
  LrListPage *page = line != NULL ? page_of (line) : NULL;
  const char *text = gtk_editable_get_text (GTK_EDITABLE (entry)), *shown = g_object_get_data (G_OBJECT (entry), "shown-text");
  const char *usual = line != NULL ? g_object_get_data (G_OBJECT (line), "usual") : NULL;
  g_autoptr (GError) error = NULL;
  LrPlan *next;

  if (page == NULL || g_strcmp0 (text, shown) == 0)
    return;
  next = lr_plan_name_run_step (get_plan (page), key_of (line), g_strcmp0 (text, usual) == 0 ? "" : text, &error);
  g_object_set_data_full (G_OBJECT (entry), "shown-text", g_strdup (text), g_free);
  lr_list_page_commit (page, next, _("Name of a step"), &error);
}

static void
leave_cb (GtkEventController *focus)
{
  take_title (gtk_event_controller_get_widget (focus));
}

static void
add_cb (GtkWidget *button)
{
  LrListPage *page = page_of (button);
  g_autoptr (GError) error = NULL;
  g_autofree char *key = NULL;
  LrPlan *next = lr_plan_add_run_step (get_plan (page), key_of (button), _("A step more"), NEW_STEP_MIN, &key, &error);

  g_object_set_data_full (G_OBJECT (page), "focus", g_strdup (key), g_free);
  lr_list_page_commit (page, next, _("Add a step"), &error);
}

/* One of the user's own goes; one of the plan's is left out, or comes back */
static void
drop_cb (GtkWidget *button)
{
  LrListPage *page = page_of (button);
  const LrPlan *plan = get_plan (page);
  const LrRunEntry *entry = lr_plan_find_run_step (plan, key_of (button));
  gboolean is_back = entry != NULL && entry->is_left_out;
  g_autoptr (GError) error = NULL;

  if (g_str_has_prefix (key_of (button), LR_RUN_OWN))
    lr_list_page_commit (page, lr_plan_remove_run_step (plan, key_of (button), &error), _("Remove a step"), &error);
  else
    lr_list_page_commit (page, lr_plan_leave_out_run_step (plan, key_of (button), !is_back, &error),
                         is_back ? _("Take a step back in") : _("Leave out a step"), &error);
}

/* --- Lines ---------------------------------------------------------------------------------------------------- */

static GtkWidget *
add_button (GtkWidget  *line,
            const char *name,
            GCallback   clicked)
{
  GtkWidget *button = gtk_button_new ();

  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_button_set_has_frame (GTK_BUTTON (button), FALSE);
  g_signal_connect (button, "clicked", clicked, NULL);
  lr_list_line_add (line, name, button, FALSE);
  return button;
}

static void
set_button (GtkWidget  *button,
            const char *icon,
            const char *title)
{
  gtk_button_set_icon_name (GTK_BUTTON (button), icon);
  gtk_widget_set_tooltip_text (button, title);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
}

static void
fill_new_line (GtkWidget *line)
{
  GtkWidget *title = gtk_entry_new (), *minutes = gtk_spin_button_new_with_range (0.0, MOST_MIN, 1.0);
  GtkEventController *focus = gtk_event_controller_focus_new ();

  gtk_entry_set_has_frame (GTK_ENTRY (title), FALSE);
  gtk_widget_set_hexpand (title, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (title), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Step"), -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (minutes), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Minutes"), -1);
  gtk_widget_set_tooltip_text (minutes, _("Minutes"));
  gtk_widget_set_valign (minutes, GTK_ALIGN_CENTER);
  g_signal_connect (title, "activate", G_CALLBACK (take_title), NULL);
  g_signal_connect (focus, "leave", G_CALLBACK (leave_cb), NULL);
  gtk_widget_add_controller (title, focus);
  g_signal_connect (minutes, "value-changed", G_CALLBACK (minutes_cb), NULL);
  lr_list_line_add (line, "title", title, TRUE);
  lr_list_line_add (line, "minutes", minutes, FALSE);
  set_button (add_button (line, "add", G_CALLBACK (add_cb)), "document-new-symbolic", _("Add a step after this one"));
  add_button (line, "drop", G_CALLBACK (drop_cb));
}

static gboolean
has_focus (GtkWidget *widget)
{
  GtkWidget *focus = gtk_widget_get_root (widget) != NULL ? gtk_root_get_focus (gtk_widget_get_root (widget)) : NULL;

  return focus != NULL && (focus == widget || gtk_widget_is_ancestor (focus, widget));
}

static void
set_line (GtkWidget       *line,
          const LrRunStep *step)
{
  GtkWidget *title = lr_list_line_get (line, "title"), *minutes = lr_list_line_get (line, "minutes"), *drop = lr_list_line_get (line, "drop");
  const char *shown = g_object_get_data (G_OBJECT (title), "shown-text");

  g_object_set_data (G_OBJECT (line), "estimated", GINT_TO_POINTER (step->estimated_min));
  g_object_set_data_full (G_OBJECT (line), "usual", g_strdup (step->usual_title), g_free);
  /* what is being typed stays */
  if (!has_focus (title) || g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (title)), shown) == 0)
    {
      g_object_set_data_full (G_OBJECT (title), "shown-text", g_strdup (step->title), g_free);
      if (g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (title)), step->title) != 0)
        gtk_editable_set_text (GTK_EDITABLE (title), step->title);
      lr_list_entry_update_hint (title);
    }
  set_shown (minutes, step->minutes);
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (minutes), step->minutes);
  gtk_widget_set_sensitive (minutes, !step->is_left_out);
  gtk_widget_set_sensitive (title, !step->is_left_out);
  if (step->is_own)
    set_button (drop, "user-trash-symbolic", _("Remove the step"));
  else if (step->is_left_out)
    set_button (drop, "edit-undo-symbolic", _("Take the step back in"));
  else
    set_button (drop, "user-trash-symbolic", _("Leave the step out; it can be taken back in"));
}

static char *
note_of (const LrRunStep *step)
{
  g_autofree char *estimated = lr_duration_format (step->estimated_min);

  if (step->is_left_out)
    return g_strdup (_("left out"));
  if (step->is_own)
    return NULL;
  if (step->has_own_minutes)
    /* Translators: a duration */
    return g_strdup_printf (_("estimated %s"), estimated);
  return step->reason[0] != '\0' ? g_markup_escape_text (step->reason, -1) : NULL;
}

static void
add_step (LrListPage      *page,
          const LrRunStep *step)
{
  g_autofree char *from = lr_minute_format (step->from), *note = note_of (step);
  const LrListLine line = { .key = step->key, .has_box = !step->is_left_out, .lead = from, .note = note };
  gboolean is_new;
  GtkWidget *widget = lr_list_page_line (page, &line, &is_new);
  const char *focus = g_object_get_data (G_OBJECT (page), "focus");

  if (is_new)
    fill_new_line (widget);
  set_line (widget, step);
  if (g_strcmp0 (focus, step->key) == 0)
    {
      g_object_set_data (G_OBJECT (page), "focus", NULL);
      gtk_widget_grab_focus (lr_list_line_get (widget, "title"));
    }
}

static void
fill (LrListPage *page,
      LrDocument *document)
{
  g_autoptr (LrRunSheet) sheet = lr_run_sheet_new (lr_document_get_study (document));
  g_autoptr (GPtrArray) notes = lr_run_notes (sheet);
  int part = -1;

  lr_list_page_say (page, "how", _("Minutes are estimated from the plan, for one person; what you type counts instead."));
  for (guint i = 0; i < notes->len; i++)
    {
      g_autofree char *key = g_strdup_printf ("note-%u", i);

      lr_list_page_say (page, key, g_ptr_array_index (notes, i));
    }
  for (guint i = 0; i < sheet->steps->len; i++)
    {
      const LrRunStep *step = g_ptr_array_index (sheet->steps, i);

      if ((int) step->part != part)
        {
          g_autofree char *heading = lr_run_heading (sheet, step->part);

          part = (int) step->part;
          lr_list_page_group (page, heading);
        }
      add_step (page, step);
    }
}

/**
 * lr_lists_run_new:
 * @document: whose day
 *
 * Returns: (transfer floating): the page
 */
GtkWidget *
lr_lists_run_new (LrDocument *document)
{
  GtkWidget *page = lr_list_page_new (document, LIST, fill), *calendar = gtk_button_new_with_mnemonic (_("Call times as a _calendar…"));

  gtk_actionable_set_action_name (GTK_ACTIONABLE (calendar), "win.calendar");
  gtk_box_append (GTK_BOX (lr_list_page_get_bar (LR_LIST_PAGE (page))), calendar);
  return page;
}
