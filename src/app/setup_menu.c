/* setup_menu.c - the drop-down of set-ups in the header bar
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "main_window_private.h"

#include "ask.h"
#include "compare_dialog.h"
#include "plan_edit.h"

#include <glib/gi18n-lib.h>

/* @next as one step; refused edits are told. @error is looked at only here: arguments are evaluated in any order, and the one that makes
 * @next sets it */
static void
commit (LrMainWindow   *self,
        LrPlan     *next,
        const char *what,
        GError    **error)
{
  if (next == NULL)
    lr_document_say (self->document, (*error)->message);
  else
    lr_document_commit (self->document, next, what);
}

/* Looking from one to the other and back is one step */
static void
show_setup (LrMainWindow   *self,
            const char *id)
{
  g_autoptr (GError) error = NULL;
  LrPlan *next = lr_plan_show_setup (lr_document_get_committed (self->document), id, &error);

  if (next == NULL)
    lr_document_say (self->document, error->message);
  else
    lr_document_commit_merge (self->document, next, _("Show another set-up"), "setup");
}

static void
show_setup_cb (GSimpleAction *action,
               GVariant      *parameter,
               gpointer       data)
{
  show_setup (data, g_variant_get_string (parameter, NULL));
}

static void
step_setup_cb (GSimpleAction *action,
               GVariant      *parameter,
               gpointer       data)
{
  LrMainWindow *self = data;
  const LrPlan *plan = lr_document_get_committed (self->document);
  guint n = plan->setups->len;
  guint by = g_str_equal (g_action_get_name (G_ACTION (action)), "next-setup") ? 1 : n - 1;
  const LrSetup *setup = g_ptr_array_index (plan->setups, (plan->shown + by) % n);

  if (n > 1)
    show_setup (self, setup->id);
}

static void
copy_named_cb (const char *name,
               gpointer    data)
{
  LrMainWindow *self = data;
  g_autoptr (GError) error = NULL;

  commit (self, lr_plan_copy_setup (lr_document_get_committed (self->document), name, &error), _("Copy the set-up"), &error);
}

static void
rename_named_cb (const char *name,
                 gpointer    data)
{
  LrMainWindow *self = data;
  g_autoptr (GError) error = NULL;

  commit (self, lr_plan_rename_setup (lr_document_get_committed (self->document), name, &error), _("Rename the set-up"), &error);
}

static void
new_named_cb (const char *name,
              gpointer    data)
{
  LrMainWindow *self = data;
  g_autoptr (GError) error = NULL;

  commit (self, lr_plan_new_setup (lr_document_get_committed (self->document), name, &error), _("New set-up"), &error);
}

static void
copy_setup_cb (GSimpleAction *action,
               GVariant      *parameter,
               gpointer       data)
{
  LrMainWindow *self = data;
  /* Translators: name offered for the copy of a set-up */
  g_autofree char *name = g_strdup_printf (_("%s, copy"), lr_plan_get_setup (lr_document_get_plan (self->document))->name);

  lr_ask_text (GTK_WINDOW (self), _("Copy the set-up"), _("Name of the copy"), _("_Copy"), name,
               copy_named_cb, self);
}

static void
rename_setup_cb (GSimpleAction *action,
                 GVariant      *parameter,
                 gpointer       data)
{
  LrMainWindow *self = data;

  lr_ask_text (GTK_WINDOW (self), _("Rename the set-up"), _("Name of this set-up"), _("_Rename"),
               lr_plan_get_setup (lr_document_get_plan (self->document))->name, rename_named_cb, self);
}

static void
new_setup_cb (GSimpleAction *action,
              GVariant      *parameter,
              gpointer       data)
{
  lr_ask_text (GTK_WINDOW (data), _("New set-up"), _("Name of the new set-up, an empty room to start with"), _("_Make it"),
               _("Another room"), new_named_cb, data);
}

static void
remove_setup_cb (GSimpleAction *action,
                 GVariant      *parameter,
                 gpointer       data)
{
  LrMainWindow *self = data;
  g_autoptr (GError) error = NULL;

  g_autofree char *name = g_strdup (lr_plan_get_setup (lr_document_get_committed (self->document))->name);
  LrPlan *next = lr_plan_remove_setup (lr_document_get_committed (self->document), &error);
  g_autofree char *said = NULL;

  if (next != NULL)
    /* Translators: names of the set-up that is gone, and of the one that is shown now */
    said = g_strdup_printf (_("“%s” is removed, with all that stood in it; “%s” is shown. Undo brings it back."), name,
                            lr_plan_get_setup (next)->name);
  commit (self, next, _("Remove the set-up"), &error);
  if (said != NULL)
    lr_document_say (self->document, said);
}

static void
move_setup_cb (GSimpleAction *action,
               GVariant      *parameter,
               gpointer       data)
{
  LrMainWindow *self = data;
  g_autoptr (GError) error = NULL;
  int by = g_str_equal (g_action_get_name (G_ACTION (action)), "setup-later") ? 1 : -1;
  LrPlan *next = lr_plan_move_setup (lr_document_get_committed (self->document), by, &error);

  if (next == NULL)
    lr_document_say (self->document, error->message);
  else
    lr_document_commit_merge (self->document, next, _("Move the set-up in the list"), "move-setup");
}

static void
compare_cb (GSimpleAction *action,
            GVariant      *parameter,
            gpointer       data)
{
  LrMainWindow *self = data;

  gtk_window_present (GTK_WINDOW (lr_compare_dialog_new (GTK_WINDOW (self), self->document)));
}

static const GActionEntry entries[] = {
  { "setup", show_setup_cb, "s", "''", NULL, { 0 } },
  { "next-setup", step_setup_cb, NULL, NULL, NULL, { 0 } },
  { "previous-setup", step_setup_cb, NULL, NULL, NULL, { 0 } },
  { "new-setup", new_setup_cb, NULL, NULL, NULL, { 0 } },
  { "copy-setup", copy_setup_cb, NULL, NULL, NULL, { 0 } },
  { "rename-setup", rename_setup_cb, NULL, NULL, NULL, { 0 } },
  { "remove-setup", remove_setup_cb, NULL, NULL, NULL, { 0 } },
  { "setup-earlier", move_setup_cb, NULL, NULL, NULL, { 0 } },
  { "setup-later", move_setup_cb, NULL, NULL, NULL, { 0 } },
  { "compare", compare_cb, NULL, NULL, NULL, { 0 } },
};

/* The other set-ups, each a target of @action */
static void
append_others (GMenu        *menu,
               const char   *label,
               const char   *action,
               const LrPlan *plan)
{
  g_autoptr (GMenu) others = g_menu_new ();

  for (guint i = 0; i < plan->setups->len; i++)
    {
      const LrSetup *setup = g_ptr_array_index (plan->setups, i);
      g_autoptr (GMenuItem) item = g_menu_item_new (setup->name, NULL);

      if (i == plan->shown)
        continue;
      g_menu_item_set_action_and_target (item, action, "s", setup->id);
      g_menu_append_item (others, item);
    }
  g_menu_append_submenu (menu, label, G_MENU_MODEL (others));
}

static GMenu *
make_menu (const LrPlan *plan)
{
  GMenu *menu = g_menu_new ();
  g_autoptr (GMenu) setups = g_menu_new (), edits = g_menu_new (), choice = g_menu_new (), found = g_menu_new ();

  for (guint i = 0; i < plan->setups->len; i++)
    {
      const LrSetup *setup = g_ptr_array_index (plan->setups, i);
      g_autoptr (GMenuItem) item = g_menu_item_new (setup->name, NULL);

      g_menu_item_set_action_and_target (item, "win.setup", "s", setup->id);
      g_menu_append_item (setups, item);
    }
  g_menu_append (edits, _("_Copy this set-up…"), "win.copy-setup");
  g_menu_append (edits, _("_New set-up…"), "win.new-setup");
  g_menu_append (edits, _("_Rename…"), "win.rename-setup");
  g_menu_append (edits, _("Move _earlier"), "win.setup-earlier");
  g_menu_append (edits, _("Move _later"), "win.setup-later");
  g_menu_append (edits, _("Re_move"), "win.remove-setup");
  g_menu_append (choice, _("Compare r_ooms…"), "win.compare");
  if (plan->setups->len > 1)
    {
      append_others (choice, _("Copy the _thing in hand to set-up"), "win.copy-item-to", plan);
      append_others (choice, _("Copy people and _gear to set-up"), "win.copy-set-to", plan);
    }
  g_menu_append (found, _("_As found…"), "win.as-found");
  g_menu_append (found, _("_Differences to the plan"), "win.differences");
  g_menu_append (found, _("Show _planned places"), "win.show-planned");
  g_menu_append (found, _("Re_fit the set"), "win.refit-set");
  g_menu_append_section (menu, NULL, G_MENU_MODEL (setups));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (choice));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (edits));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (found));
  return menu;
}

/* Whether the menu made last still tells the truth */
static gboolean
menu_is_current (LrMainWindow     *self,
                 const LrPlan *plan)
{
  g_autoptr (GString) names = g_string_new (NULL);
  const char *last = g_object_get_data (G_OBJECT (self->setup_button), "lr-names");

  for (guint i = 0; i < plan->setups->len; i++)
    {
      const LrSetup *setup = g_ptr_array_index (plan->setups, i);

      g_string_append_printf (names, "%s\n%s\n%d\n", setup->id, setup->name, i == plan->shown);
    }
  if (g_strcmp0 (names->str, last) == 0)
    return TRUE;

  g_object_set_data_full (G_OBJECT (self->setup_button), "lr-names", g_strdup (names->str), g_free);
  return FALSE;
}

/* When the drop-down opens, so that no edit has to wait for it */
static void
open_menu_cb (GtkMenuButton *button,
              gpointer       data)
{
  LrMainWindow *self = data;
  const LrPlan *plan = lr_document_get_plan (self->document);

  if (!menu_is_current (self, plan))
    {
      g_autoptr (GMenu) menu = make_menu (plan);

      gtk_menu_button_set_menu_model (button, G_MENU_MODEL (menu));
    }
}

/**
 * lr_main_window_add_setup_actions:
 *
 * Adds the actions of set-ups.
 */
void
lr_main_window_add_setup_actions (LrMainWindow *self)
{
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  gtk_menu_button_set_create_popup_func (GTK_MENU_BUTTON (self->setup_button), open_menu_cb, self, NULL);
}

/**
 * lr_main_window_update_setups:
 *
 * Makes the drop-down's button show the set-up that is shown.
 */
void
lr_main_window_update_setups (LrMainWindow *self)
{
  const LrPlan *plan = lr_document_get_plan (self->document);
  const LrSetup *setup = lr_plan_get_setup (plan);
  GAction *shown = g_action_map_lookup_action (G_ACTION_MAP (self), "setup");
  GAction *removal = g_action_map_lookup_action (G_ACTION_MAP (self), "remove-setup");
  GAction *earlier = g_action_map_lookup_action (G_ACTION_MAP (self), "setup-earlier");
  GAction *later = g_action_map_lookup_action (G_ACTION_MAP (self), "setup-later");

  if (g_strcmp0 (gtk_label_get_label (GTK_LABEL (self->setup_label)), setup->name) != 0)
    {
      /* Translators: name of the button that shows which set-up is shown */
      g_autofree char *spoken = g_strdup_printf (_("Set-up: %s"), setup->name);

      gtk_label_set_label (GTK_LABEL (self->setup_label), setup->name);
      gtk_accessible_update_property (GTK_ACCESSIBLE (self->setup_button), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
    }
  g_simple_action_set_state (G_SIMPLE_ACTION (shown), g_variant_new_string (setup->id));
  g_simple_action_set_enabled (G_SIMPLE_ACTION (removal), plan->setups->len > 1 && !plan->is_read_only);
  g_simple_action_set_enabled (G_SIMPLE_ACTION (earlier), plan->shown > 0 && !plan->is_read_only);
  g_simple_action_set_enabled (G_SIMPLE_ACTION (later), plan->shown + 1 < plan->setups->len && !plan->is_read_only);
}
