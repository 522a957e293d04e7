/* visit_dialog.c - what is asked and noted on a visit to the place, on one screen
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Access, permission, people, surfaces and house lights on the left; circuits and noises on the right. What stands in the
 * room is found on the sheet as well, where it is put in its place; a new one comes to the middle of the room.
 */

#include "config.h"

#include "visit_dialog.h"

#include "app.h"
#include "contacts.h"
#include "details_materials.h"
#include "details_rows.h"
#include "plan_edit.h"
#include "polygon.h"

#include <glib/gi18n-lib.h>

/* A list of things of one kind */
typedef struct
{
  LrItemKind         kind;
  const char        *title, *add;
  const char *const *keys;
  gboolean           is_left;
} Section;

static const char *const circuit_keys[] = { "name", "volts-v", "amps-a", "known-load-w", NULL };
static const char *const house_light_keys[] = { "name", "color-temperature-k", "is-on", "can-switch-off", "may-flicker", NULL };
static const char *const noise_keys[] = { "name", "level-db", "can-switch-off", "is-off", "=when", NULL };

static const Section sections[] = {
  { LR_ITEM_CIRCUIT, N_("Circuits"), N_("Add a circuit"), circuit_keys, FALSE },
  { LR_ITEM_HOUSE_LIGHT, N_("House lights"), N_("Add a house light"), house_light_keys, TRUE },
  { LR_ITEM_NOISE, N_("Noises"), N_("Add a noise"), noise_keys, FALSE },
};

static const char *const location_keys[] = { "=address", "=access", "=permission", NULL };
static const char *const surface_names[] = { "walls", "floor", "ceiling" };
static const char *const surface_titles[] = { N_("Walls"), N_("Floor"), N_("Ceiling") };
static const char *const surface_keys[] = { "material", "reflectance-pct", NULL };

struct _LrVisitDialog
{
  GtkWindow   parent_instance;

  LrDocument *document;
  GtkWidget  *location_grid, *surface_grid, *contacts;
  GtkWidget  *boxes[G_N_ELEMENTS (sections)]; /* of a grid for each thing */
  char       *shown[G_N_ELEMENTS (sections)]; /* the ids that there are grids for, one a line */
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

/* What a grid is of: a thing's id, or a surface's name before its keys */
static const char *
owner_of (LrField *field)
{
  return g_object_get_data (G_OBJECT (field), "owner");
}

static void
set_owner (LrField    *field,
           const char *owner)
{
  g_object_set_data_full (G_OBJECT (field), "owner", g_strdup (owner), g_free);
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
  g_autofree char *key = g_strdup_printf ("%s.%s", owner_of (field), lr_field_get_prop (field)->key);
  g_autoptr (GError) error = NULL;

  commit (self, lr_plan_set_room (get_plan (self), key, value, &error), _("Surfaces"), &error);
}

static void
surface_text_cb (LrVisitDialog *self,
                 LrField       *field,
                 const char    *text)
{
  if (!lr_details_name_surface (self->document, owner_of (field), text))
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
item_number_cb (LrVisitDialog *self,
                LrField       *field,
                double         value)
{
  const LrProp *prop = lr_field_get_prop (field);
  g_autoptr (GError) error = NULL;

  commit (self, lr_plan_change (get_plan (self), &(LrChange) { owner_of (field), prop->key, value }, 1, &error), _(prop->label), &error);
}

static void
item_text_cb (LrVisitDialog *self,
              LrField       *field,
              const char    *text)
{
  const LrProp *prop = lr_field_get_prop (field);
  g_autoptr (GError) error = NULL;

  commit (self, lr_plan_change_text (get_plan (self), owner_of (field), prop->key, text, &error), _(prop->label), &error);
}

static void
contacts_changed_cb (LrVisitDialog *self)
{
  g_autoptr (GError) error = NULL;
  gsize n;
  const LrContact *contacts = lr_contacts_get (LR_CONTACTS (self->contacts), &n);

  commit (self, lr_plan_set_contacts (get_plan (self), contacts, n, &error), _("People to call"), &error);
}

static void
add_cb (LrVisitDialog *self,
        GtkWidget     *button)
{
  const Section *section = g_object_get_data (G_OBJECT (button), "section");
  const LrRoom *room = lr_plan_get_setup (get_plan (self))->room;
  LrVec2 middle_m = room->n_corners > 0 ? lr_polygon_centroid_m (room->corners_m, room->n_corners) : lr_vec2 (0.0, 0.0);
  g_autoptr (LrItem) item = lr_item_new_usual (section->kind, 0, "");
  g_autoptr (GError) error = NULL;

  commit (self, lr_plan_add (get_plan (self), item, middle_m, 0.0, NULL, &error), _(section->add), &error);
}

/* Filling in */

/* What is being typed stays */
static void
set_field (LrField       *field,
           gconstpointer  owner)
{
  if (!lr_field_has_typed_text (field))
    lr_field_show (field, owner);
}

static LrField *
add_field (LrVisitDialog *self,
           GtkWidget     *grid,
           const LrProp  *prop,
           const char    *label,
           const char    *owner,
           gboolean       is_wide)
{
  LrField *field = lr_field_grid_add (LR_FIELD_GRID (grid), prop, label, lr_document_get_units (self->document), is_wide);
  const double *values;
  gsize n = lr_details_presets (prop->key, &values);

  set_owner (field, owner);
  if (n > 0)
    lr_field_set_presets (field, values, n);
  return field;
}

static GtkWidget *
make_item_grid (LrVisitDialog *self,
                const Section *section,
                const LrItem  *item)
{
  GtkWidget *grid = lr_field_grid_new ();
  const LrItemKindInfo *info = lr_item_kind_info (item->kind);

  for (const char *const *key = section->keys; *key != NULL; key++)
    {
      gboolean is_wide = (*key)[0] == '=';
      const LrProp *prop = lr_prop_table_find (&info->table, *key + (is_wide ? 1 : 0));

      if (prop == NULL)
        prop = lr_prop_table_find (lr_item_common_table (info->place), *key + (is_wide ? 1 : 0));
      if (prop != NULL)
        /* a thing with a tag is known by it */
        add_field (self, grid, prop, key == section->keys && item->tag[0] != '\0' ? item->tag : NULL, item->id, is_wide);
    }
  g_signal_connect_object (grid, "number", G_CALLBACK (item_number_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (grid, "text", G_CALLBACK (item_text_cb), self, G_CONNECT_SWAPPED);
  return grid;
}

static char *
join_ids (const LrSetup *setup,
          LrItemKind     kind)
{
  GString *ids = g_string_new (NULL);

  for (guint i = 0; i < setup->items->len; i++)
    if (((const LrItem *) setup->items->pdata[i])->kind == kind)
      g_string_append_printf (ids, "%s\n", ((const LrItem *) setup->items->pdata[i])->id);
  return g_string_free (ids, FALSE);
}

static void
make_section (LrVisitDialog *self,
              guint          index)
{
  const LrSetup *setup = lr_plan_get_setup (get_plan (self));
  g_autofree char *ids = join_ids (setup, sections[index].kind);
  GtkWidget *child;

  if (g_strcmp0 (ids, self->shown[index]) == 0)
    return;

  while ((child = gtk_widget_get_first_child (self->boxes[index])) != NULL)
    gtk_box_remove (GTK_BOX (self->boxes[index]), child);
  for (guint i = 0; i < setup->items->len; i++)
    if (((const LrItem *) setup->items->pdata[i])->kind == sections[index].kind)
      gtk_box_append (GTK_BOX (self->boxes[index]), make_item_grid (self, &sections[index], setup->items->pdata[i]));
  g_free (self->shown[index]);
  self->shown[index] = g_steal_pointer (&ids);
}

static void
update_section (LrVisitDialog *self,
                guint          index)
{
  make_section (self, index);
  for (GtkWidget *grid = gtk_widget_get_first_child (self->boxes[index]); grid != NULL; grid = gtk_widget_get_next_sibling (grid))
    for (guint i = 0; i < lr_field_grid_get_n (LR_FIELD_GRID (grid)); i++)
      {
        LrField *field = lr_field_grid_get (LR_FIELD_GRID (grid), i);
        const LrItem *item = lr_setup_find (lr_plan_get_setup (get_plan (self)), owner_of (field));

        if (item != NULL)
          set_field (field, item);
      }
}

static void
update (LrVisitDialog *self)
{
  const LrRoom *room = lr_plan_get_setup (get_plan (self))->room;
  const LrLocation *location = lr_plan_get_setup (get_plan (self))->location;
  const LrSurface *surfaces[] = { &room->walls, &room->floor, &room->ceiling };

  for (guint i = 0; i < lr_field_grid_get_n (LR_FIELD_GRID (self->location_grid)); i++)
    set_field (lr_field_grid_get (LR_FIELD_GRID (self->location_grid), i), location);
  for (guint i = 0; i < lr_field_grid_get_n (LR_FIELD_GRID (self->surface_grid)); i++)
    set_field (lr_field_grid_get (LR_FIELD_GRID (self->surface_grid), i), surfaces[i / (G_N_ELEMENTS (surface_keys) - 1)]);
  lr_contacts_set (LR_CONTACTS (self->contacts), location->contacts, location->n_contacts);
  for (guint i = 0; i < G_N_ELEMENTS (sections); i++)
    update_section (self, i);
}

/* Making */

static GtkWidget *
add_title (GtkWidget  *column,
           const char *title)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6), *label = gtk_label_new (title);

  gtk_widget_add_css_class (label, "panel-title");
  gtk_label_set_xalign (GTK_LABEL (label), 0.0F);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_box_append (GTK_BOX (row), label);
  gtk_box_append (GTK_BOX (column), row);
  return row;
}

static void
make_left (LrVisitDialog *self,
           GtkWidget     *column)
{
  self->location_grid = lr_field_grid_new ();
  self->surface_grid = lr_field_grid_new ();
  self->contacts = g_object_new (LR_TYPE_CONTACTS, NULL);
  for (const char *const *key = location_keys; *key != NULL; key++)
    add_field (self, self->location_grid, lr_prop_table_find (lr_location_table (), *key + 1), NULL, "", TRUE);
  for (guint i = 0; i < G_N_ELEMENTS (surface_names); i++)
    for (const char *const *key = surface_keys; *key != NULL; key++)
      {
        LrField *field = add_field (self, self->surface_grid, lr_prop_table_find (lr_surface_table (), *key),
                                    key == surface_keys ? _(surface_titles[i]) : NULL, surface_names[i], FALSE);

        if (key == surface_keys)
          lr_details_offer_materials (field, material_chosen_cb);
      }

  add_title (column, _("Access and permission"));
  gtk_box_append (GTK_BOX (column), self->location_grid);
  add_title (column, _("People to call"));
  gtk_box_append (GTK_BOX (column), self->contacts);
  add_title (column, _("Surfaces"));
  gtk_box_append (GTK_BOX (column), self->surface_grid);
  g_signal_connect_object (self->location_grid, "text", G_CALLBACK (location_text_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->surface_grid, "text", G_CALLBACK (surface_text_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->surface_grid, "number", G_CALLBACK (surface_number_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->contacts, "changed", G_CALLBACK (contacts_changed_cb), self, G_CONNECT_SWAPPED);
}

static void
make_sections (LrVisitDialog *self,
               GtkWidget     *left,
               GtkWidget     *right)
{
  for (guint i = 0; i < G_N_ELEMENTS (sections); i++)
    {
      GtkWidget *column = sections[i].is_left ? left : right;
      GtkWidget *row = add_title (column, _(sections[i].title)), *button = gtk_button_new_with_label (_(sections[i].add));

      g_object_set_data (G_OBJECT (button), "section", (gpointer) &sections[i]);
      g_signal_connect_object (button, "clicked", G_CALLBACK (add_cb), self, G_CONNECT_SWAPPED);
      gtk_box_append (GTK_BOX (row), button);
      self->boxes[i] = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
      gtk_box_append (GTK_BOX (column), self->boxes[i]);
    }
}

static GtkWidget *
make_column (GtkWidget *columns)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);

  gtk_widget_set_hexpand (column, TRUE);
  gtk_widget_set_size_request (column, 420, -1);
  gtk_box_append (GTK_BOX (columns), column);
  return column;
}

static void
make (LrVisitDialog *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new (), *columns = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 24), *left, *right;

  gtk_window_set_titlebar (GTK_WINDOW (self), gtk_header_bar_new ());
  gtk_box_set_homogeneous (GTK_BOX (columns), TRUE);
  gtk_widget_set_margin_top (columns, 12);
  gtk_widget_set_margin_bottom (columns, 12);
  gtk_widget_set_margin_start (columns, 12);
  gtk_widget_set_margin_end (columns, 12);
  left = make_column (columns);
  right = make_column (columns);
  make_left (self, left);
  make_sections (self, left, right);
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
  for (guint i = 0; i < G_N_ELEMENTS (sections); i++)
    g_clear_pointer (&self->shown[i], g_free);

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
  return GTK_WIDGET (self);
}
