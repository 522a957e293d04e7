/* contacts.c - people to call: role, name, number
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One row of three entries each, and an empty one at the end; emptying a row takes it out.
 */

#include "config.h"

#include "contacts.h"

#include <glib/gi18n-lib.h>

#define N_COLUMNS 3

struct _LrContacts
{
  GtkWidget  parent_instance;

  GtkWidget *grid;
  GPtrArray *entries;   /* N_COLUMNS a row; not held */
  GArray    *contacts;  /* for lr_contacts_get(): texts belong to the entries */
  GPtrArray *unknown;   /* members of each row's contact that this version does not know; may be NULL */
  gboolean   is_setting;
};

static const char *const titles[N_COLUMNS] = { N_("Role"), N_("Name"), N_("Number") };

static guint changed_signal;

G_DEFINE_FINAL_TYPE (LrContacts, lr_contacts, GTK_TYPE_WIDGET)

static const char *
get_text (LrContacts *self,
          guint       index)
{
  return gtk_editable_get_text (g_ptr_array_index (self->entries, index));
}

static void
clear_object (gpointer object)
{
  g_clear_pointer ((JsonObject **) &object, json_object_unref);
}

static const char *
get_contact_text (const LrContact *contact,
                  guint            column)
{
  return column == 0 ? contact->role : column == 1 ? contact->name : contact->phone;
}

static void
take (LrContacts *self)
{
  if (!self->is_setting)
    g_signal_emit (self, changed_signal, 0);
}

static void
add_row (LrContacts *self)
{
  int row = (int) self->entries->len / N_COLUMNS;

  for (int i = 0; i < N_COLUMNS; i++)
    {
      GtkWidget *entry = gtk_entry_new ();
      GtkEventController *focus = gtk_event_controller_focus_new ();

      gtk_entry_set_placeholder_text (GTK_ENTRY (entry), _(titles[i]));
      gtk_editable_set_width_chars (GTK_EDITABLE (entry), 6);
      gtk_widget_set_hexpand (entry, TRUE);
      gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, _(titles[i]), -1);
      g_signal_connect_object (entry, "activate", G_CALLBACK (take), self, G_CONNECT_SWAPPED);
      g_signal_connect_object (focus, "leave", G_CALLBACK (take), self, G_CONNECT_SWAPPED);
      gtk_widget_add_controller (entry, focus);
      gtk_grid_attach (GTK_GRID (self->grid), entry, i, row, 1, 1);
      g_ptr_array_add (self->entries, entry);
    }
}

static void
set_rows (LrContacts *self,
          guint       n)
{
  while (self->entries->len / N_COLUMNS < n)
    add_row (self);
  while (self->entries->len / N_COLUMNS > n)
    {
      gtk_grid_remove_row (GTK_GRID (self->grid), (int) self->entries->len / N_COLUMNS - 1);
      g_ptr_array_set_size (self->entries, (int) self->entries->len - N_COLUMNS);
    }
}

static void
lr_contacts_dispose (GObject *object)
{
  LrContacts *self = LR_CONTACTS (object);

  self->is_setting = TRUE;
  g_clear_pointer (&self->grid, gtk_widget_unparent);
  g_clear_pointer (&self->entries, g_ptr_array_unref);
  g_clear_pointer (&self->contacts, g_array_unref);
  g_clear_pointer (&self->unknown, g_ptr_array_unref);
  G_OBJECT_CLASS (lr_contacts_parent_class)->dispose (object);
}

static void
lr_contacts_class_init (LrContactsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_contacts_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
lr_contacts_init (LrContacts *self)
{
  self->entries = g_ptr_array_new ();
  self->contacts = g_array_new (FALSE, FALSE, sizeof (LrContact));
  self->unknown = g_ptr_array_new_with_free_func (clear_object);
  self->grid = gtk_grid_new ();
  gtk_grid_set_row_spacing (GTK_GRID (self->grid), 4);
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 4);
  gtk_widget_set_parent (self->grid, GTK_WIDGET (self));
}

/**
 * lr_contacts_set:
 * @contacts: of the plan
 * @n: how many
 *
 * Shows them, and an empty row.
 */
void
lr_contacts_set (LrContacts      *self,
                 const LrContact *contacts,
                 gsize            n)
{
  self->is_setting = TRUE;
  set_rows (self, (guint) n + 1);
  g_ptr_array_set_size (self->unknown, 0);
  for (gsize i = 0; i < n; i++)
    g_ptr_array_add (self->unknown, contacts[i].unknown != NULL ? json_object_ref (contacts[i].unknown) : NULL);
  for (guint i = 0; i < self->entries->len; i++)
    {
      guint row = i / N_COLUMNS;
      const char *text = row < n ? get_contact_text (&contacts[row], i % N_COLUMNS) : "";

      if (!g_str_equal (get_text (self, i), text))
        gtk_editable_set_text (g_ptr_array_index (self->entries, i), text);
    }
  self->is_setting = FALSE;
}

/**
 * lr_contacts_get:
 * @n: (out): how many
 *
 * Returns: (transfer none): what is typed, without empty rows
 */
const LrContact *
lr_contacts_get (LrContacts *self,
                 gsize      *n)
{
  g_array_set_size (self->contacts, 0);
  for (guint i = 0; i < self->entries->len; i += N_COLUMNS)
    {
      guint row = i / N_COLUMNS;
      LrContact contact = {
        .role = (char *) get_text (self, i),
        .name = (char *) get_text (self, i + 1),
        .phone = (char *) get_text (self, i + 2),
        .unknown = row < self->unknown->len ? g_ptr_array_index (self->unknown, row) : NULL,
      };

      if (contact.role[0] != '\0' || contact.name[0] != '\0' || contact.phone[0] != '\0')
        g_array_append_val (self->contacts, contact);
    }
  *n = self->contacts->len;
  return (const LrContact *) (gpointer) self->contacts->data;
}
