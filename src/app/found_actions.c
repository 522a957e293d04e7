/* found_actions.c - as found: making such a set-up, its differences, and refitting the set
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A move of the set is looked for in another thread, given up when the plan changes, and shown as a ghost with a bar over the
 * sheet before it is made.
 */

#include "config.h"

#include "main_window_private.h"

#include "ask.h"
#include "plan_edit.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  GWeakRef window;
  LrPlan  *plan;
  LrUnits  units;
} Work;

enum { RESPONSE_APPLY = 1, RESPONSE_LEAVE };

/* Differences */

/* The pane stands in the place of the Tray while a set-up as found is shown, if it is wanted */
static void
update_pane (LrMainWindow *self)
{
  GtkWidget *pane = GTK_WIDGET (self->found_pane), *tray = GTK_WIDGET (self->tray);
  gboolean is_shown = self->shows_differences && lr_document_get_planned (self->document) != NULL;

  if (gtk_widget_get_visible (pane) == is_shown)
    return;

  gtk_widget_set_visible (tray, !is_shown);
  gtk_widget_set_visible (pane, is_shown);
}

static void
show_differences (LrMainWindow *self,
                  gboolean      are_shown)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self), "differences");

  self->shows_differences = are_shown;
  g_simple_action_set_state (G_SIMPLE_ACTION (action), g_variant_new_boolean (are_shown));
  update_pane (self);
}

static void
differences_cb (GSimpleAction *action,
                GVariant      *state,
                gpointer       data)
{
  LrMainWindow *self = data;

  show_differences (self, g_variant_get_boolean (state));
  if (!self->shows_differences || !gtk_widget_child_focus (GTK_WIDGET (self->found_pane), GTK_DIR_TAB_FORWARD))
    gtk_widget_grab_focus (GTK_WIDGET (self->canvas));
}

/* As found */

static void
find_named_cb (const char *name,
               gpointer    data)
{
  LrMainWindow *self = data;
  g_autoptr (GError) error = NULL;
  LrPlan *next = lr_plan_copy_found (lr_document_get_committed (self->document), name, &error);

  if (next == NULL)
    lr_document_say (self->document, error->message);
  else
    {
      lr_document_commit (self->document, next, _("As found"));
      show_differences (self, TRUE);
    }
}

static gboolean
has_name (const LrPlan *plan,
          const char   *name)
{
  for (guint i = 0; i < plan->setups->len; i++)
    if (g_str_equal (((const LrSetup *) g_ptr_array_index (plan->setups, i))->name, name))
      return TRUE;
  return FALSE;
}

/* Where @word stands in @name, in letters of either case, as an offset in characters; -1: nowhere */
static glong
find_word (const char *name,
           const char *word)
{
  g_autofree char *folded_word = g_utf8_casefold (word, -1);
  glong n = g_utf8_strlen (word, -1), last = g_utf8_strlen (name, -1) - n;

  for (glong i = 0; i <= last; i++)
    {
      g_autofree char *part = g_utf8_substring (name, i, i + n), *folded = g_utf8_casefold (part, -1);

      if (g_str_equal (folded, folded_word))
        return i;
    }
  return -1;
}

/* "Loft, as planned" is "Loft, as found" then, and "As planned (loft)" "As found (loft)"; others get that behind them */
static char *
found_name (const char *planned)
{
  /* Translators: what the name of a set-up may have in it */
  const char *word = _("as planned");
  glong at = find_word (planned, word);
  g_autofree char *start = NULL;

  if (at < 0)
    /* Translators: name offered for a set-up as found */
    return g_strdup_printf (_("%s, as found"), planned);

  start = g_utf8_substring (planned, 0, at);
  return g_strconcat (start, at == 0 ? _("As found") : _("as found"), g_utf8_offset_to_pointer (planned, at + g_utf8_strlen (word, -1)), NULL);
}

/* With a number if there is one already */
static char *
free_name (const LrPlan *plan)
{
  g_autofree char *first = found_name (lr_plan_get_setup (plan)->name);
  char *name = g_strdup (first);

  for (guint i = 2; has_name (plan, name); i++)
    {
      g_free (name);
      name = g_strdup_printf ("%s %u", first, i);
    }
  return name;
}

static void
as_found_cb (GSimpleAction *action,
             GVariant      *parameter,
             gpointer       data)
{
  LrMainWindow *self = data;
  g_autofree char *name = free_name (lr_document_get_plan (self->document));

  lr_ask_text (GTK_WINDOW (self), _("As found"), _("Name of the copy that is to become the room as it is"), _("_Make it"), name,
               find_named_cb, self);
}

static void
show_planned_cb (GSimpleAction *action,
                 GVariant      *state,
                 gpointer       data)
{
  LrMainWindow *self = data;

  g_simple_action_set_state (action, state);
  lr_document_set_shows_planned (self->document, g_variant_get_boolean (state));
}

/* Refit */

static void
give_up (LrMainWindow *self)
{
  if (self->refitting != NULL)
    g_cancellable_cancel (self->refitting);
  g_clear_object (&self->refitting);
  g_clear_pointer (&self->refit, lr_set_refit_free);
}

static void
hide_bar (LrMainWindow *self)
{
  if (gtk_info_bar_get_revealed (GTK_INFO_BAR (self->refit_bar)))
    gtk_widget_grab_focus (GTK_WIDGET (self->canvas));
  gtk_info_bar_set_revealed (GTK_INFO_BAR (self->refit_bar), FALSE);
}

static void
say (LrMainWindow *self,
     const char   *markup,
     gboolean      has_offer)
{
  gtk_label_set_markup (GTK_LABEL (self->refit_label), markup);
  gtk_widget_set_visible (self->refit_apply, has_offer);
  gtk_info_bar_set_revealed (GTK_INFO_BAR (self->refit_bar), TRUE);
}

static void
tell (LrMainWindow *self,
      const char   *markup)
{
  g_autofree char *text = lr_markup_to_text (markup);

  lr_document_say (self->document, text);
}

static void
work_free (gpointer data)
{
  Work *work = data;

  g_weak_ref_clear (&work->window);
  lr_plan_unref (work->plan);
  g_free (work);
}

static void
work_in_thread (GTask        *task,
                gpointer      source G_GNUC_UNUSED,
                gpointer      data,
                GCancellable *cancellable)
{
  const Work *work = data;

  g_task_return_pointer (task, lr_set_refit_new (work->plan, work->units, cancellable), (GDestroyNotify) lr_set_refit_free);
}

static void
refitted_cb (GObject      *source G_GNUC_UNUSED,
             GAsyncResult *result,
             gpointer      data G_GNUC_UNUSED)
{
  Work *work = g_task_get_task_data (G_TASK (result));
  g_autoptr (LrMainWindow) self = g_weak_ref_get (&work->window);
  g_autoptr (LrSetRefit) refit = g_task_propagate_pointer (G_TASK (result), NULL);

  if (refit == NULL || self == NULL || self->document == NULL || lr_document_get_plan (self->document) != work->plan)
    return;

  g_clear_object (&self->refitting);
  if (refit->state != LR_SET_REFIT_FOUND)
    {
      hide_bar (self);
      tell (self, refit->done);
      return;
    }

  lr_document_take_remark (self->document, NULL);
  lr_document_offer (self->document, lr_plan_ref (refit->plan));
  say (self, refit->offer, TRUE);
  gtk_widget_grab_focus (self->refit_apply);
  self->refit = g_steal_pointer (&refit);
}

static void
refit_cb (GSimpleAction *action,
          GVariant      *parameter,
          gpointer       data)
{
  LrMainWindow *self = data;
  Work *work = g_new0 (Work, 1);
  g_autoptr (GTask) task = NULL;

  give_up (self);
  g_weak_ref_init (&work->window, self);
  work->plan = lr_plan_ref (lr_document_get_plan (self->document));
  work->units = lr_document_get_units (self->document);
  self->refitting = g_cancellable_new ();
  task = g_task_new (NULL, self->refitting, refitted_cb, NULL);
  g_task_set_task_data (task, work, work_free);
  say (self, _("Looking for the smallest move of the set that mends the most…"), FALSE);
  g_task_run_in_thread (task, work_in_thread);
}

static void
response_cb (LrMainWindow *self,
             int           response)
{
  g_autoptr (LrSetRefit) refit = g_steal_pointer (&self->refit);

  give_up (self);
  hide_bar (self);
  lr_document_offer (self->document, NULL);
  if (response != RESPONSE_APPLY || refit == NULL)
    return;

  lr_document_commit (self->document, lr_plan_ref (refit->plan), _("Refit the set"));
  tell (self, refit->done);
}

static const GActionEntry entries[] = {
  { "as-found", as_found_cb, NULL, NULL, NULL, { 0 } },
  { "differences", NULL, NULL, "false", differences_cb, { 0 } },
  { "refit-set", refit_cb, NULL, NULL, NULL, { 0 } },
  { "show-planned", NULL, NULL, "true", show_planned_cb, { 0 } },
};

/**
 * lr_main_window_add_found_actions:
 *
 * Adds the actions of set-ups as found.
 */
void
lr_main_window_add_found_actions (LrMainWindow *self)
{
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  g_signal_connect_swapped (self->refit_bar, "response", G_CALLBACK (response_cb), self);
}

static void
set_enabled (LrMainWindow *self,
             const char   *name,
             gboolean      is_enabled)
{
  g_simple_action_set_enabled (G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (self), name)), is_enabled);
}

/* On the sheet itself, so that nobody takes it for the plan */
static void
update_mark (LrMainWindow *self,
             const char   *name,
             gboolean      is_found)
{
  /* Translators: mark on the sheet: name of a set-up as found */
  g_autofree char *text = find_word (name, _("as found")) < 0 ? g_strdup_printf (_("As found: %s"), name) : g_strdup (name);

  if (g_strcmp0 (gtk_button_get_label (GTK_BUTTON (self->found_mark)), text) != 0)
    gtk_button_set_label (GTK_BUTTON (self->found_mark), text);
  gtk_widget_set_visible (self->found_mark, is_found);
}

/**
 * lr_main_window_update_found:
 *
 * The plan shown is another: what was offered for the one before is over.
 */
void
lr_main_window_update_found (LrMainWindow *self)
{
  const LrPlan *plan = lr_document_get_plan (self->document);
  gboolean is_found = lr_plan_planned (plan) != NULL;

  give_up (self);
  hide_bar (self);
  set_enabled (self, "as-found", !plan->is_read_only);
  set_enabled (self, "refit-set", !plan->is_read_only);
  set_enabled (self, "differences", is_found);
  set_enabled (self, "show-planned", is_found);
  update_mark (self, lr_plan_get_setup (plan)->name, is_found);
  update_pane (self);
}

/**
 * lr_main_window_clear_found:
 *
 * Gives up what is looked for.
 */
void
lr_main_window_clear_found (LrMainWindow *self)
{
  give_up (self);
}
