/* kit_menu.c - what may be added to a kit: the generic things, lenses by name, supports and supplies
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The action's target says what: "kit:ID" of the generic kit, "lens:ID" of the table of lenses, "supply:FORM" by number.
 */

#include "config.h"

#include "kit_menu.h"

#include "plan_edit.h"

#include <glib/gi18n-lib.h>
#include <stdlib.h>
#include <string.h>

#define ANY_LENS "lens-50"

static LrPlan *
add_of_kit (const LrPlan      *plan,
            const char        *id,
            const LrLensType  *type,
            GError           **error)
{
  g_autoptr (LrPlan) generic = lr_plan_new_empty (), added = NULL, named = NULL;
  const LrKitEntry *entry = lr_plan_find_kit (generic, id);
  g_autofree char *new_id = NULL;

  if (entry == NULL)
    return NULL;
  added = lr_plan_add_kit_entry (plan, entry, &new_id, error);
  if (added == NULL)
    return NULL;
  if (type != NULL)
    named = lr_plan_set_kit_lens (added, new_id, type, error);

  return type != NULL && named == NULL ? NULL : lr_plan_set_kit_count (type != NULL ? named : added, new_id, 1, error);
}

static void
add_cb (GSimpleAction *action,
        GVariant      *parameter,
        gpointer       data)
{
  LrListPage *page = data;
  const LrPlan *plan = lr_document_get_committed (lr_list_page_get_document (page));
  const char *what = g_variant_get_string (parameter, NULL), *name = strchr (what, ':');
  g_autoptr (GError) error = NULL;
  LrPlan *next = NULL;

  if (name == NULL)
    return;
  name++;
  if (g_str_has_prefix (what, "kit:"))
    next = add_of_kit (plan, name, NULL, &error);
  else if (g_str_has_prefix (what, "lens:") && lr_lens_type_find (name) != NULL)
    next = add_of_kit (plan, ANY_LENS, lr_lens_type_find (name), &error);
  else if (g_str_has_prefix (what, "supply:") && atoi (name) >= 0 && atoi (name) < LR_N_SUPPLY_FORMS)
    next = lr_plan_add_supply (plan, atoi (name), &error);
  if (next != NULL || error != NULL)
    lr_list_page_commit (page, next, _("Add to the kit"), &error);
}

static void
append (GMenu      *menu,
        const char *title,
        const char *what)
{
  g_autoptr (GMenuItem) item = g_menu_item_new (title, NULL);

  g_menu_item_set_action_and_target (item, "kit.add", "s", what);
  g_menu_append_item (menu, item);
}

static GMenu *
make_menu (void)
{
  GMenu *menu = g_menu_new ();
  g_autoptr (GMenu) things = g_menu_new (), lenses = g_menu_new (), supplies = g_menu_new ();
  g_autoptr (LrPlan) generic = lr_plan_new_empty ();
  gsize n;
  const LrLensType *types = lr_lens_types (&n);

  for (guint i = 0; i < generic->kit->len; i++)
    {
      const LrKitEntry *entry = generic->kit->pdata[i];
      g_autofree char *what = g_strconcat ("kit:", entry->item->id, NULL);

      if (entry->item->kind != LR_ITEM_LENS)
        append (things, entry->title, what);
    }
  for (gsize i = 0; i < n; i++)
    {
      g_autofree char *what = g_strconcat ("lens:", types[i].id, NULL);

      append (lenses, _(types[i].title), what);
    }
  for (int i = 0; i < LR_N_SUPPLY_FORMS; i++)
    {
      g_autofree char *what = g_strdup_printf ("supply:%d", i);

      append (supplies, lr_supply_form_title (i), what);
    }
  g_menu_append_section (menu, NULL, G_MENU_MODEL (things));
  g_menu_append_submenu (menu, _("Lens"), G_MENU_MODEL (lenses));
  g_menu_append_submenu (menu, _("Goes along"), G_MENU_MODEL (supplies));

  return menu;
}

/**
 * lr_kit_menu_new:
 * @page: whose document's kit it adds to
 *
 * Returns: (transfer floating): a menu button
 */
GtkWidget *
lr_kit_menu_new (LrListPage *page)
{
  static const GActionEntry entries[] = { { "add", add_cb, "s", NULL, NULL, { 0 } } };
  GtkWidget *button = gtk_menu_button_new ();
  g_autoptr (GSimpleActionGroup) group = g_simple_action_group_new ();
  g_autoptr (GMenu) menu = make_menu ();

  g_action_map_add_action_entries (G_ACTION_MAP (group), entries, G_N_ELEMENTS (entries), page);
  gtk_widget_insert_action_group (GTK_WIDGET (page), "kit", G_ACTION_GROUP (group));
  gtk_menu_button_set_label (GTK_MENU_BUTTON (button), _("_Add"));
  gtk_menu_button_set_use_underline (GTK_MENU_BUTTON (button), TRUE);
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (button), G_MENU_MODEL (menu));

  return button;
}
