/* field_grid.c - fields with their labels, two pairs a row
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "field_grid.h"

#include "hint.h"

#include <glib/gi18n-lib.h>

#define LEAST_LABEL_CHARS 10 /* "From south" in one line, "wall" below it */

struct _LrFieldGrid
{
  GtkWidget  parent_instance;

  GtkWidget *grid;
  GPtrArray *fields;
  int        row, pair;  /* where the next one goes: pair 0 is the left, 1 the right half */
  LrField   *refused;    /* whose sentence is shown; NULL: none */
  GtkSizeGroup *labels[2]; /* of the left and the right half; may be NULL */
  GtkWidget *sentence;   /* in a row of its own under that field */
};

enum
{
  NUMBER,
  TEXT,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (LrFieldGrid, lr_field_grid, GTK_TYPE_WIDGET)

static void
number_cb (LrFieldGrid *self,
           double       value,
           gboolean     is_step,
           LrField     *field)
{
  g_signal_emit (self, signals[NUMBER], 0, field, value, is_step);
}

static void
text_cb (LrFieldGrid *self,
         const char  *text,
         LrField     *field)
{
  g_signal_emit (self, signals[TEXT], 0, field, text);
}

static int
row_of (LrFieldGrid *self,
        GtkWidget   *child)
{
  int row;

  gtk_grid_query_child (GTK_GRID (self->grid), child, NULL, &row, NULL, NULL);
  return row;
}

static void
take_sentence_out (LrFieldGrid *self)
{
  if (self->refused == NULL)
    return;

  gtk_grid_remove_row (GTK_GRID (self->grid), row_of (self, self->sentence)); /* and the sentence with it */
  self->row--;
  self->refused = NULL;
  self->sentence = NULL;
}

/* Why a field refuses what was typed is said right under it: elsewhere it may be out of sight */
static void
refused_cb (LrFieldGrid *self,
            const char  *sentence,
            LrField     *field)
{
  int row;

  if (sentence == NULL && self->refused != field)
    return;
  take_sentence_out (self);
  if (sentence == NULL)
    return;

  row = row_of (self, GTK_WIDGET (field)) + 1;
  self->refused = field;
  self->sentence = g_object_new (GTK_TYPE_LABEL, "label", sentence, "wrap", TRUE, "xalign", 0.0, "accessible-role",
                                 GTK_ACCESSIBLE_ROLE_ALERT, NULL);
  gtk_widget_add_css_class (self->sentence, "refused");
  gtk_grid_insert_row (GTK_GRID (self->grid), row);
  gtk_grid_attach (GTK_GRID (self->grid), self->sentence, 0, row, 4, 1);
  self->row++;
}

static void
lr_field_grid_dispose (GObject *object)
{
  LrFieldGrid *self = LR_FIELD_GRID (object);

  g_clear_pointer (&self->grid, gtk_widget_unparent);
  for (guint i = 0; i < G_N_ELEMENTS (self->labels); i++)
    g_clear_object (&self->labels[i]);
  g_clear_pointer (&self->fields, g_ptr_array_unref);
  G_OBJECT_CLASS (lr_field_grid_parent_class)->dispose (object);
}

static void
lr_field_grid_class_init (LrFieldGridClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_field_grid_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  signals[NUMBER] = g_signal_new ("number", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 3, LR_TYPE_FIELD,
                                  G_TYPE_DOUBLE, G_TYPE_BOOLEAN);
  signals[TEXT] = g_signal_new ("text", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 2, LR_TYPE_FIELD,
                                G_TYPE_STRING);
}

static void
lr_field_grid_init (LrFieldGrid *self)
{
  self->fields = g_ptr_array_new ();
  self->grid = gtk_grid_new ();
  gtk_grid_set_row_spacing (GTK_GRID (self->grid), 4);
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 5);
  gtk_widget_set_parent (self->grid, GTK_WIDGET (self));
}

/**
 * lr_field_grid_new:
 *
 * Returns: (transfer full): a grid without fields
 */
GtkWidget *
lr_field_grid_new (void)
{
  return g_object_new (LR_TYPE_FIELD_GRID, NULL);
}

/**
 * lr_field_grid_align:
 * @left: (nullable): of the labels of the left half
 * @right: (nullable): of the labels of the right half
 */
void
lr_field_grid_align (LrFieldGrid  *self,
                     GtkSizeGroup *left,
                     GtkSizeGroup *right)
{
  g_set_object (&self->labels[0], left);
  g_set_object (&self->labels[1], right);
}

/* A long label takes two lines before a figure is cut short */
static GtkWidget *
make_label (const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 1.0f);
  gtk_label_set_justify (GTK_LABEL (label), GTK_JUSTIFY_RIGHT);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_natural_wrap_mode (GTK_LABEL (label), GTK_NATURAL_WRAP_NONE);
  gtk_label_set_width_chars (GTK_LABEL (label), (int) MIN (g_utf8_strlen (text, -1), LEAST_LABEL_CHARS));
  gtk_widget_add_css_class (label, "field-label");
  return label;
}

static void
attach (LrFieldGrid *self,
        GtkWidget   *field,
        const char  *label,
        gboolean     is_wide)
{
  gboolean has_own_label = lr_field_get_prop (LR_FIELD (field))->type == LR_PROP_FLAG;
  /* what is beside a check box is too long for half a row */
  gboolean has_row = is_wide || has_own_label;
  int column = has_row ? 0 : 2 * self->pair;

  if (has_row && self->pair == 1)
    self->row++;
  gtk_widget_set_hexpand (field, TRUE);
  gtk_widget_set_valign (field, GTK_ALIGN_CENTER);
  gtk_grid_attach (GTK_GRID (self->grid), field, column + 1, self->row, has_row ? 3 : 1, 1);
  if (!has_own_label)
    {
      GtkWidget *title = make_label (label);

      gtk_grid_attach (GTK_GRID (self->grid), title, column, self->row, 1, 1);
      if (self->labels[column / 2] != NULL)
        gtk_size_group_add_widget (self->labels[column / 2], title);
    }

  self->pair = has_row ? 0 : 1 - self->pair;
  if (self->pair == 0)
    self->row++;
}

/**
 * lr_field_grid_add:
 * @prop: outlives the grid
 * @label: (nullable): instead of the label of @prop
 * @units: how lengths are read and written
 * @is_wide: whether it takes a row of its own
 *
 * Returns: (transfer none): the field
 */
LrField *
lr_field_grid_add (LrFieldGrid  *self,
                   const LrProp *prop,
                   const char   *label,
                   LrUnits       units,
                   gboolean      is_wide)
{
  GtkWidget *field = lr_field_new (prop, units), *child = gtk_widget_get_first_child (field);

  g_signal_connect_object (field, "number", G_CALLBACK (number_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (field, "text", G_CALLBACK (text_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (field, "refused", G_CALLBACK (refused_cb), self, G_CONNECT_SWAPPED);
  attach (self, field, label != NULL ? label : _(prop->label), is_wide);
  if (label != NULL) /* it is spoken of by what stands beside it */
    gtk_accessible_update_property (GTK_ACCESSIBLE (child), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  if (GTK_IS_EDITABLE (child))
    lr_hint_when_cut (field, GTK_EDITABLE (child));
  g_ptr_array_add (self->fields, field);
  return LR_FIELD (field);
}

/**
 * lr_field_grid_clear:
 *
 * Takes all fields out.
 */
void
lr_field_grid_clear (LrFieldGrid *self)
{
  GtkWidget *child;

  g_ptr_array_set_size (self->fields, 0);
  self->refused = NULL;
  self->sentence = NULL;
  while ((child = gtk_widget_get_first_child (self->grid)) != NULL)
    gtk_grid_remove (GTK_GRID (self->grid), child);
  self->row = self->pair = 0;
}

/**
 * lr_field_grid_get_n:
 *
 * Returns: how many fields it has
 */
guint
lr_field_grid_get_n (LrFieldGrid *self)
{
  return self->fields->len;
}

/**
 * lr_field_grid_get:
 * @index: below lr_field_grid_get_n()
 *
 * Returns: (transfer none): that field, in the order in which they were added
 */
LrField *
lr_field_grid_get (LrFieldGrid *self,
                   guint        index)
{
  return g_ptr_array_index (self->fields, index);
}

/**
 * lr_field_show:
 * @owner: a thing that has the property
 *
 * Sets the field to what @owner has.
 */
void
lr_field_show (LrField       *self,
               gconstpointer  owner)
{
  const LrProp *prop = lr_field_get_prop (self);

  if (lr_prop_is_text (prop))
    lr_field_set_text (self, lr_prop_get_text (prop, owner));
  else
    lr_field_set_number (self, lr_prop_get_number (prop, owner));
}

/**
 * lr_field_grid_show:
 * @owner: a thing that has the properties of all of its fields
 */
void
lr_field_grid_show (LrFieldGrid   *self,
                    gconstpointer  owner)
{
  for (guint i = 0; i < lr_field_grid_get_n (self); i++)
    lr_field_show (lr_field_grid_get (self, i), owner);
}
