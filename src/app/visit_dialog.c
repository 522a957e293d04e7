/* visit_dialog.c - what is asked and noted on a visit to the place, on one screen
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The place, people and what the room itself is like on the left; what feeds, lights and disturbs it on the right.
 */

#include "config.h"

#include "visit_dialog.h"

#include "app.h"
#include "beside.h"
#include "contacts.h"
#include "details_materials.h"
#include "details_rows.h"
#include "plan_edit.h"
#include "visit_things.h"

#include <glib/gi18n-lib.h>

static const char *const location_keys[] = { "=name", "=address", "=access", "=permission", NULL };
static const char *const room_keys[] = {
  "height-mm", "north-deg", "background-db", "reverberation-s", "=full-load-rule", NULL
};
static const LrItemKind kinds[] = { LR_ITEM_CIRCUIT, LR_ITEM_HOUSE_LIGHT, LR_ITEM_NOISE };
static const char *const surface_names[] = { "walls", "floor", "ceiling" };
static const char *const surface_titles[] = { N_("Walls"), N_("Floor"), N_("Ceiling") };
static const char *const surface_keys[] = { "material", "reflectance-pct" };

struct _LrVisitDialog
{
  GtkWindow   parent_instance;

  LrDocument *document;
  GtkWidget  *location_grid, *room_grid, *surface_grid, *contacts;
  GtkWidget  *things[G_N_ELEMENTS (kinds)];
};

G_DEFINE_FINAL_TYPE (LrVisitDialog, lr_visit_dialog, GTK_TYPE_WINDOW)

static void update (LrVisitDialog *self);

static const LrPlan *
get_plan (LrVisitDialog *self)
{
  return lr_document_get_committed (self->document);
}

static void
commit (LrVisitDialog *self,
        LrPlan        *next,
        const char    *what,
        GError       **error)
{
  if (!lr_document_try (self->document, next, what, NULL, error))
    update (self);
}

/* Of which surface a field is */
static const char *
surface_of (LrField *field)
{
  return g_object_get_data (G_OBJECT (field), "surface");
}

static void
location_text_cb (LrVisitDialog *self,
             LrField       *field,
             const char    *text)
{
  const LrProp *prop = lr_field_get_prop (field);
  g_autoptr (GError) error = NULL;

  commit (self, lr_plan_set_location_text (get_plan (self), prop->key, text, &error), _(prop->label), &error);
}

static void
surface_number_cb (LrVisitDialog *self,
                   LrField       *field,
                   double         value)
{
  g_autofree char *key = g_strdup_printf ("%s.%s", surface_of (field), lr_field_get_prop (field)->key);
  g_autoptr (GError) error = NULL;

  commit (self, lr_plan_set_room (get_plan (self), key, value, &error), _("Surfaces"), &error);
}

static void
surface_text_cb (LrVisitDialog *self,
                 LrField       *field,
                 const char    *text)
{
  if (!lr_details_name_surface (self->document, surface_of (field), text))
    update (self);
}

static void
material_chosen_cb (guint       index,
                    const char *title,
                    gpointer    field)
{
  LrVisitDialog *self = LR_VISIT_DIALOG (gtk_widget_get_ancestor (field, LR_TYPE_VISIT_DIALOG));

  surface_text_cb (self, field, title);
}

static void
room_number_cb (LrVisitDialog *self,
                LrField       *field,
                double         value)
{
  const LrProp *prop = lr_field_get_prop (field);
  g_autoptr (GError) error = NULL;

  commit (self, lr_plan_set_room (get_plan (self), prop->key, value, &error), _(prop->label), &error);
}

static void
room_text_cb (LrVisitDialog *self,
              LrField       *field,
              const char    *text)
{
  const LrProp *prop = lr_field_get_prop (field);
  g_autoptr (GError) error = NULL;

  commit (self, lr_plan_set_room_text (get_plan (self), prop->key, text, &error), _(prop->label), &error);
}

static void
contacts_changed_cb (LrVisitDialog *self)
{
  g_autoptr (GError) error = NULL;
  gsize n;
  const LrContact *contacts = lr_contacts_get (LR_CONTACTS (self->contacts), &n);

  commit (self, lr_plan_set_contacts (get_plan (self), contacts, n, &error), _("People to call"), &error);
}

/* Filling in */

static void
update (LrVisitDialog *self)
{
  const LrLocation *location = lr_plan_get_setup (get_plan (self))->location;
  const LrRoom *room = lr_plan_get_setup (get_plan (self))->room;
  const LrSurface *surfaces[] = { &room->walls, &room->floor, &room->ceiling };

  lr_field_grid_show (LR_FIELD_GRID (self->location_grid), location);
  lr_field_grid_show (LR_FIELD_GRID (self->room_grid), room);
  for (guint i = 0; i < lr_field_grid_get_n (LR_FIELD_GRID (self->surface_grid)); i++)
    lr_field_show (lr_field_grid_get (LR_FIELD_GRID (self->surface_grid), i), surfaces[i / G_N_ELEMENTS (surface_keys)]);
  lr_contacts_set (LR_CONTACTS (self->contacts), location->contacts, location->n_contacts);
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    lr_visit_things_update (LR_VISIT_THINGS (self->things[i]));
}

/* Making */

static GtkWidget *
make_surface_grid (LrVisitDialog *self,
                   GtkSizeGroup  *left)
{
  GtkWidget *grid = lr_field_grid_new ();

  /* materials have long names: their fields take what the labels beside them leave */
  lr_field_grid_align (LR_FIELD_GRID (grid), left, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (surface_names); i++)
    for (guint k = 0; k < G_N_ELEMENTS (surface_keys); k++)
      {
        const LrProp *prop = lr_prop_table_find (lr_surface_table (), surface_keys[k]);
        LrField *field = lr_field_grid_add (LR_FIELD_GRID (grid), prop, k == 0 ? _(surface_titles[i]) : NULL,
                                            lr_document_get_units (self->document), FALSE);

        g_object_set_data (G_OBJECT (field), "surface", (gpointer) surface_names[i]);
        lr_details_offer_usual (field);
        if (k == 0)
          lr_details_offer_materials (field, surface_names[i], material_chosen_cb);
      }

  return grid;
}

static GtkWidget *
make_grid (LrVisitDialog     *self,
           const LrPropTable *table,
           const char *const *keys,
           GtkSizeGroup      *left,
           GtkSizeGroup      *right)
{
  GtkWidget *grid = lr_field_grid_new ();

  lr_field_grid_align (LR_FIELD_GRID (grid), left, right);
  lr_details_add_fields (LR_FIELD_GRID (grid), table, keys, lr_document_get_units (self->document));

  return grid;
}

static void
connect_grid (LrVisitDialog *self,
              GtkWidget     *grid,
              GCallback      number,
              GCallback      text)
{
  if (number != NULL)
    g_signal_connect_object (grid, "number", number, self, G_CONNECT_SWAPPED);
  g_signal_connect_object (grid, "text", text, self, G_CONNECT_SWAPPED);
}

static void
make_left (LrVisitDialog *self,
           GtkBox        *column)
{
  g_autoptr (GtkSizeGroup) left = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL), right = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);

  self->location_grid = make_grid (self, lr_location_table (), location_keys, left, right);
  self->contacts = g_object_new (LR_TYPE_CONTACTS, NULL);
  self->room_grid = make_grid (self, lr_room_table (), room_keys, left, right);
  self->surface_grid = make_surface_grid (self, left);

  gtk_box_append (column, lr_visit_title_new (_("The place")));
  gtk_box_append (column, self->location_grid);
  gtk_box_append (column, lr_visit_title_new (_("People to call")));
  gtk_box_append (column, self->contacts);
  gtk_box_append (column, lr_visit_title_new (_("The room")));
  gtk_box_append (column, self->room_grid);
  gtk_box_append (column, self->surface_grid);
  connect_grid (self, self->location_grid, NULL, G_CALLBACK (location_text_cb));
  connect_grid (self, self->room_grid, G_CALLBACK (room_number_cb), G_CALLBACK (room_text_cb));
  connect_grid (self, self->surface_grid, G_CALLBACK (surface_number_cb), G_CALLBACK (surface_text_cb));
  g_signal_connect_object (self->contacts, "changed", G_CALLBACK (contacts_changed_cb), self, G_CONNECT_SWAPPED);
}

static void
make_right (LrVisitDialog *self,
            GtkBox        *column)
{
  g_autoptr (GtkSizeGroup) left = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL), right = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      self->things[i] = lr_visit_things_new (self->document, kinds[i], left, right);
      gtk_box_append (column, self->things[i]);
    }
}

static GtkBox *
make_column (GtkWidget *columns)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);

  gtk_widget_set_hexpand (column, TRUE);
  gtk_widget_set_size_request (column, 420, -1);
  gtk_box_append (GTK_BOX (columns), column);
  return GTK_BOX (column);
}

static void
make (LrVisitDialog *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new (), *columns = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 24);

  gtk_window_set_titlebar (GTK_WINDOW (self), gtk_header_bar_new ());
  gtk_box_set_homogeneous (GTK_BOX (columns), TRUE);
  gtk_widget_set_margin_top (columns, 12);
  gtk_widget_set_margin_bottom (columns, 12);
  gtk_widget_set_margin_start (columns, 12);
  gtk_widget_set_margin_end (columns, 12);
  make_left (self, make_column (columns));
  make_right (self, make_column (columns));
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), columns);
  gtk_window_set_child (GTK_WINDOW (self), scroller);
  gtk_widget_set_sensitive (columns, !get_plan (self)->is_read_only);
}

/* What is still being typed is taken first; what is refused keeps the window open, with the reason under it */
static gboolean
lr_visit_dialog_close_request (GtkWindow *window)
{
  GtkWidget *focus = gtk_window_get_focus (window);
  GtkWidget *field = focus != NULL ? gtk_widget_get_ancestor (focus, LR_TYPE_FIELD) : NULL;

  if (field != NULL && lr_field_has_typed_text (LR_FIELD (field)) && !lr_field_take (LR_FIELD (field)))
    return TRUE;
  gtk_window_set_focus (window, NULL);
  return GTK_WINDOW_CLASS (lr_visit_dialog_parent_class)->close_request (window);
}

static void
lr_visit_dialog_dispose (GObject *object)
{
  LrVisitDialog *self = LR_VISIT_DIALOG (object);

  g_clear_object (&self->document);

  G_OBJECT_CLASS (lr_visit_dialog_parent_class)->dispose (object);
}

static void
lr_visit_dialog_class_init (LrVisitDialogClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lr_visit_dialog_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = lr_visit_dialog_close_request;
  gtk_widget_class_add_binding_action (GTK_WIDGET_CLASS (klass), GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
lr_visit_dialog_init (LrVisitDialog *self)
{
}

/**
 * lr_visit_dialog_new:
 * @parent: (nullable): the window that it belongs to
 * @document: what is noted in
 *
 * Returns: (transfer none): the dialog; GTK holds it until it is closed
 */
GtkWidget *
lr_visit_dialog_new (GtkWindow  *parent,
                     LrDocument *document)
{
  LrVisitDialog *self = g_object_new (LR_TYPE_VISIT_DIALOG, "transient-for", parent, "modal", TRUE, "title", _("The visit"),
                                      "default-width", 960, "default-height", 800, NULL);

  self->document = g_object_ref (document);
  make (self);
  update (self);
  g_signal_connect_object (document, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  lr_beside_bind (GTK_WINDOW (self), parent, document, _("The visit"));
  return GTK_WIDGET (self);
}
