/* visit_things.c - things of one kind, as they are noted on a visit: each with its fields, one more, one less
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What stands in the room is found on the sheet as well, where it is put in its place; a new one comes to a free place.
 */

#include "config.h"

#include "visit_things.h"

#include "details_rows.h"
#include "placing.h"
#include "plan_edit.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  LrItemKind         kind;
  const char        *title, *add;
  const char *const *keys;
} Section;

static const char *const circuit_keys[] = { "=name", "volts-v", "amps-a", "known-load-w", NULL };
static const char *const house_light_keys[] = { "=name", "color-temperature-k", "is-on", "can-switch-off", "may-flicker", NULL };
static const char *const noise_keys[] = { "=name", "level-db", "can-switch-off", "is-off", "=when", NULL };

static const Section sections[] = {
  { LR_ITEM_CIRCUIT, N_("Circuits"), N_("Add a circuit"), circuit_keys },
  { LR_ITEM_HOUSE_LIGHT, N_("House lights"), N_("Add a house light"), house_light_keys },
  { LR_ITEM_NOISE, N_("Noises"), N_("Add a noise"), noise_keys },
};

struct _LrVisitThings
{
  GtkBox         parent_instance;

  const Section *section;
  LrDocument    *document;
  GtkWidget     *things; /* a box for each: a row with its title, and a grid of fields */
  GtkSizeGroup  *left, *right; /* of labels */
  char          *shown;  /* the ids that there are boxes for, one a line */
};

G_DEFINE_FINAL_TYPE (LrVisitThings, lr_visit_things, GTK_TYPE_BOX)

static const LrPlan *
get_plan (LrVisitThings *self)
{
  return lr_document_get_committed (self->document);
}

static void
commit (LrVisitThings *self,
        LrPlan        *next,
        const char    *what,
        GError       **error)
{
  if (!lr_document_try (self->document, next, what, NULL, error))
    lr_visit_things_update (self);
}

/* Of the thing that a widget is of */
static const char *
id_of (gpointer widget)
{
  return g_object_get_data (widget, "id");
}

static void
set_id (gpointer    widget,
        const char *id)
{
  g_object_set_data_full (widget, "id", g_strdup (id), g_free);
}

static void
number_cb (LrVisitThings *self,
           LrField       *field,
           double         value)
{
  const LrProp *prop = lr_field_get_prop (field);
  g_autoptr (GError) error = NULL;

  commit (self, lr_plan_change (get_plan (self), &(LrChange) { id_of (field), prop->key, value }, 1, &error), _(prop->label), &error);
}

static void
text_cb (LrVisitThings *self,
         LrField       *field,
         const char    *text)
{
  const LrProp *prop = lr_field_get_prop (field);
  g_autoptr (GError) error = NULL;

  commit (self, lr_plan_change_text (get_plan (self), id_of (field), prop->key, text, &error), _(prop->label), &error);
}

static void
remove_cb (LrVisitThings *self,
           GtkWidget     *button)
{
  g_autofree char *what = g_strdup (gtk_widget_get_tooltip_text (button));
  g_autoptr (GError) error = NULL;

  commit (self, lr_plan_remove (get_plan (self), id_of (button), &error), what, &error);
}

static void
add_cb (LrVisitThings *self)
{
  g_autoptr (LrItem) item = lr_item_new_usual (self->section->kind, 0, "");
  g_autoptr (GError) error = NULL;
  /* without a room side by side */
  LrVec2 at_m = lr_vec2 (0.6 * lr_plan_get_setup (get_plan (self))->items->len, 0.0);
  double facing_rad = 0.0;
  GtkWidget *box;

  lr_placing_find (lr_document_get_study (self->document), item, &at_m, &facing_rad);
  commit (self, lr_plan_add (get_plan (self), item, at_m, facing_rad, NULL, &error), _(self->section->add), &error);
  /* on to its first field */
  box = gtk_widget_get_last_child (self->things);
  if (box != NULL)
    gtk_widget_grab_focus (GTK_WIDGET (lr_field_grid_get (LR_FIELD_GRID (gtk_widget_get_last_child (box)), 0)));
}

/* Making */

/**
 * lr_visit_title_new:
 * @title: for people
 *
 * Returns: (transfer full): a row with it
 */
GtkWidget *
lr_visit_title_new (const char *title)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6), *label = gtk_label_new (title);

  gtk_widget_add_css_class (label, "panel-title");
  gtk_label_set_xalign (GTK_LABEL (label), 0.0F);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_box_append (GTK_BOX (row), label);

  return row;
}

static GtkWidget *
make_grid (LrVisitThings *self,
           const LrItem  *item)
{
  GtkWidget *grid = lr_field_grid_new ();

  lr_field_grid_align (LR_FIELD_GRID (grid), self->left, self->right);
  for (const char *const *key = self->section->keys; *key != NULL; key++)
    {
      gboolean is_wide = (*key)[0] == '=';
      const LrProp *prop = lr_item_find_prop (item->kind, *key + (is_wide ? 1 : 0));
      LrField *field = lr_field_grid_add (LR_FIELD_GRID (grid), prop, NULL, lr_document_get_units (self->document), is_wide);

      set_id (field, item->id);
      lr_details_offer_usual (field);
    }
  g_signal_connect_object (grid, "number", G_CALLBACK (number_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (grid, "text", G_CALLBACK (text_cb), self, G_CONNECT_SWAPPED);

  return grid;
}

static GtkWidget *
make_thing (LrVisitThings *self,
            const LrItem  *item)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4), *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *label = gtk_label_new (""), *button = gtk_button_new_from_icon_name ("user-trash-symbolic");

  gtk_label_set_xalign (GTK_LABEL (label), 0.0F);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_button_set_has_frame (GTK_BUTTON (button), FALSE);
  set_id (button, item->id);
  g_signal_connect_object (button, "clicked", G_CALLBACK (remove_cb), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (row), label);
  gtk_box_append (GTK_BOX (row), button);
  gtk_box_append (GTK_BOX (box), row);
  gtk_box_append (GTK_BOX (box), make_grid (self, item));

  return box;
}

static char *
join_ids (LrVisitThings *self)
{
  const LrSetup *setup = lr_plan_get_setup (get_plan (self));
  GString *ids = g_string_new (NULL);

  for (guint i = 0; i < setup->items->len; i++)
    if (((const LrItem *) setup->items->pdata[i])->kind == self->section->kind)
      g_string_append_printf (ids, "%s\n", ((const LrItem *) setup->items->pdata[i])->id);

  return g_string_free (ids, FALSE);
}

static void
make_things (LrVisitThings *self)
{
  const LrSetup *setup = lr_plan_get_setup (get_plan (self));
  g_autofree char *ids = join_ids (self);
  GtkWidget *child;

  if (g_strcmp0 (ids, self->shown) == 0)
    return;

  while ((child = gtk_widget_get_first_child (self->things)) != NULL)
    gtk_box_remove (GTK_BOX (self->things), child);
  for (guint i = 0; i < setup->items->len; i++)
    if (((const LrItem *) setup->items->pdata[i])->kind == self->section->kind)
      gtk_box_append (GTK_BOX (self->things), make_thing (self, setup->items->pdata[i]));
  g_free (self->shown);
  self->shown = g_steal_pointer (&ids);
}

static void
update_thing (GtkWidget    *box,
              const LrItem *item)
{
  GtkWidget *row = gtk_widget_get_first_child (box), *button = gtk_widget_get_last_child (row);
  LrFieldGrid *grid = LR_FIELD_GRID (gtk_widget_get_last_child (box));
  g_autofree char *title = lr_item_title (item);
  /* Translators: a thing, as its title has it */
  g_autofree char *spoken = g_strdup_printf (_("Remove %s"), title);

  gtk_label_set_text (GTK_LABEL (gtk_widget_get_first_child (row)), title);
  gtk_widget_set_tooltip_text (button, spoken);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  lr_field_grid_show (grid, item);
}

/**
 * lr_visit_things_update:
 *
 * Shows the plan as it is now; what is being typed stays.
 */
void
lr_visit_things_update (LrVisitThings *self)
{
  make_things (self);
  for (GtkWidget *box = gtk_widget_get_first_child (self->things); box != NULL; box = gtk_widget_get_next_sibling (box))
    {
      LrField *field = lr_field_grid_get (LR_FIELD_GRID (gtk_widget_get_last_child (box)), 0);
      const LrItem *item = lr_setup_find (lr_plan_get_setup (get_plan (self)), id_of (field));

      if (item != NULL)
        update_thing (box, item);
    }
}

static void
lr_visit_things_dispose (GObject *object)
{
  LrVisitThings *self = LR_VISIT_THINGS (object);

  g_clear_object (&self->document);
  g_clear_object (&self->left);
  g_clear_object (&self->right);
  g_clear_pointer (&self->shown, g_free);

  G_OBJECT_CLASS (lr_visit_things_parent_class)->dispose (object);
}

static void
lr_visit_things_class_init (LrVisitThingsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lr_visit_things_dispose;
}

static void
lr_visit_things_init (LrVisitThings *self)
{
  self->things = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);
}

/**
 * lr_visit_things_new:
 * @document: what they are noted in
 * @kind: what they are
 * @left: of the labels in the left halves of the fields
 * @right: of those in the right halves
 *
 * Returns: (transfer full): their part of the form
 */
GtkWidget *
lr_visit_things_new (LrDocument   *document,
                     LrItemKind    kind,
                     GtkSizeGroup *left,
                     GtkSizeGroup *right)
{
  LrVisitThings *self = g_object_new (LR_TYPE_VISIT_THINGS, "orientation", GTK_ORIENTATION_VERTICAL, "spacing", 6, NULL);
  GtkWidget *row, *button;

  self->section = sections;
  while (self->section->kind != kind)
    self->section++;
  self->document = g_object_ref (document);
  self->left = g_object_ref (left);
  self->right = g_object_ref (right);
  row = lr_visit_title_new (_(self->section->title));
  button = gtk_button_new_with_label (_(self->section->add));
  g_signal_connect_object (button, "clicked", G_CALLBACK (add_cb), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (row), button);
  gtk_box_append (GTK_BOX (self), row);
  gtk_box_append (GTK_BOX (self), self->things);

  return GTK_WIDGET (self);
}
