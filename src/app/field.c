/* field.c - the widget that shows and takes one property
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A field shows what the plan holds and never holds state of its own but what is being typed. A text that was not touched is
 * never read back, so a shown value may be rounder than the one in the plan without changing it.
 */

#include "config.h"

#include "field.h"

#include "date_parse.h"
#include "drop_down.h"
#include "field_presets.h"
#include "prop_text.h"

#include <glib/gi18n-lib.h>

#define BIG_STEP 10.0
#define LEAST_CHARS 6    /* "12.34 m" in tabular figures */

struct _LrField
{
  GtkWidget     parent_instance;

  const LrProp *prop;
  LrUnits       units;
  double        offset;     /* shown = value - offset */
  double        value;      /* as in the plan */
  char         *shown;      /* the text that the entry had when nothing was typed yet */
  char        **ids;        /* of a drop-down's rows; NULL: they are a choice's values */
  gboolean      is_setting; /* the plan, not the user, changes the widget */
  gboolean      is_refused;

  GtkWidget    *child;      /* GtkEntry, GtkDropDown or GtkCheckButton */
};

enum
{
  NUMBER,
  TEXT,
  REFUSED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (LrField, lr_field, GTK_TYPE_WIDGET)

static gboolean
is_text (LrField *self)
{
  return self->prop->type == LR_PROP_TEXT;
}

static void
set_refused (LrField    *self,
             const char *sentence)
{
  if (self->is_refused == (sentence != NULL) && sentence == NULL)
    return;

  self->is_refused = sentence != NULL;
  if (self->is_refused)
    gtk_widget_add_css_class (self->child, "error");
  else
    gtk_widget_remove_css_class (self->child, "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->child), GTK_ACCESSIBLE_STATE_INVALID,
                               self->is_refused ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
  gtk_widget_set_tooltip_text (self->child, sentence);
  g_signal_emit (self, signals[REFUSED], 0, sentence);
}

/* The entry shows @text, and nothing is typed in it */
static void
show_text (LrField    *self,
           const char *text)
{
  if (g_strcmp0 (self->shown, text) != 0)
    {
      g_free (self->shown);
      self->shown = g_strdup (text);
    }
  if (!g_str_equal (gtk_editable_get_text (GTK_EDITABLE (self->child)), self->shown))
    {
      self->is_setting = TRUE;
      gtk_editable_set_text (GTK_EDITABLE (self->child), self->shown);
      self->is_setting = FALSE;
    }
  /* forgets what was typed: from here on undo is the plan's */
  gtk_editable_set_enable_undo (GTK_EDITABLE (self->child), FALSE);
  gtk_editable_set_enable_undo (GTK_EDITABLE (self->child), TRUE);
  set_refused (self, NULL);
}

static void
show_number (LrField *self)
{
  gboolean is_given = lr_prop_is_given (self->prop, self->value);
  g_autofree char *text =
    is_given ? lr_prop_text_format (self->prop, self->value - self->offset, self->units) : g_strdup ("");

  show_text (self, text);
}

/* The range is that of the value, and what is typed counts from the offset */
static gboolean
parse (LrField     *self,
       const char  *text,
       double      *value,
       GError     **error)
{
  LrProp shifted = *self->prop;

  shifted.min -= self->offset;
  shifted.max -= self->offset;
  if (!lr_prop_text_parse (&shifted, text, self->units, value, error))
    return FALSE;

  *value += self->offset;
  return TRUE;
}

static gboolean
take_number (LrField    *self,
             const char *text)
{
  g_autoptr (GError) error = NULL;
  double value;

  if (!parse (self, text, &value, &error))
    {
      set_refused (self, error->message);
      return FALSE;
    }

  set_refused (self, NULL);
  if (value != self->value && (lr_prop_is_given (self->prop, value) || lr_prop_is_given (self->prop, self->value)))
    g_signal_emit (self, signals[NUMBER], 0, value, FALSE);
  show_number (self);
  return TRUE;
}

static gboolean
take_text (LrField    *self,
           const char *text)
{
  g_autofree char *stripped = g_strstrip (g_strdup (text));
  g_autoptr (GError) error = NULL;
  g_autofree char *kept = lr_prop_text_take (self->prop, stripped, &error);

  /* what is not understood stays to be mended */
  if (kept == NULL)
    {
      set_refused (self, error->message);
      return FALSE;
    }

  g_free (self->shown);
  self->shown = g_strdup (kept);
  g_signal_emit (self, signals[TEXT], 0, kept);
  show_text (self, self->shown);
  return TRUE;
}

/**
 * lr_field_has_typed_text:
 *
 * Returns: whether something is typed that was not taken yet
 */
gboolean
lr_field_has_typed_text (LrField *self)
{
  return self->child != NULL && GTK_IS_ENTRY (self->child) && g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (self->child)), self->shown) != 0;
}

/**
 * lr_field_take:
 *
 * Returns: %FALSE if what is typed was refused
 */
gboolean
lr_field_take (LrField *self)
{
  g_autofree char *text = NULL;

  if (!lr_field_has_typed_text (self))
    {
      if (self->child != NULL && GTK_IS_ENTRY (self->child))
        set_refused (self, NULL);
      return TRUE;
    }

  text = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->child)));
  return is_text (self) ? take_text (self, text) : take_number (self, text);
}

static void
activate_cb (LrField *self)
{
  if (lr_field_take (self))
    gtk_editable_select_region (GTK_EDITABLE (self->child), 0, -1);
}

static void
leave_cb (LrField *self)
{
  lr_field_take (self);
}

static void
step (LrField *self,
      double   by)
{
  double value = lr_prop_quantise (self->prop, self->value + by * lr_prop_text_step (self->prop, self->units));

  if (lr_prop_accepts (self->prop, value))
    g_signal_emit (self, signals[NUMBER], 0, value, TRUE);
}

static gboolean
key_cb (GtkEventControllerKey *controller,
        guint                  keyval,
        guint                  keycode,
        GdkModifierType        state,
        LrField               *self)
{
  double size = (state & GDK_SHIFT_MASK) != 0 ? BIG_STEP : 1.0;

  if (keyval == GDK_KEY_Escape && (lr_field_has_typed_text (self) || self->is_refused))
    {
      show_text (self, self->shown);
      return GDK_EVENT_STOP;
    }
  if ((keyval == GDK_KEY_Up || keyval == GDK_KEY_Down) && (state & GDK_ALT_MASK) != 0)
    {
      lr_field_presets_open (GTK_ENTRY (self->child));
      return GDK_EVENT_STOP;
    }
  if (is_text (self) || (keyval != GDK_KEY_Up && keyval != GDK_KEY_Down))
    return GDK_EVENT_PROPAGATE;

  if (lr_field_take (self))
    step (self, keyval == GDK_KEY_Up ? size : -size);
  return GDK_EVENT_STOP;
}

static void
selected_cb (LrField *self)
{
  guint selected = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->child));

  if (self->is_setting || selected == GTK_INVALID_LIST_POSITION)
    return;

  if (self->ids != NULL)
    g_signal_emit (self, signals[TEXT], 0, self->ids[selected]);
  else
    g_signal_emit (self, signals[NUMBER], 0, (double) selected, FALSE);
}

static void
toggled_cb (LrField *self)
{
  if (!self->is_setting)
    g_signal_emit (self, signals[NUMBER], 0, gtk_check_button_get_active (GTK_CHECK_BUTTON (self->child)) ? 1.0 : 0.0, FALSE);
}

static GtkWidget *
make_entry (LrField *self)
{
  GtkWidget *entry = gtk_entry_new ();
  GtkEventController *focus = gtk_event_controller_focus_new (), *key = gtk_event_controller_key_new ();

  gtk_editable_set_width_chars (GTK_EDITABLE (entry), LEAST_CHARS);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), 10);
  gtk_editable_set_text (GTK_EDITABLE (entry), "");
  gtk_event_controller_set_propagation_phase (key, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (activate_cb), self);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (leave_cb), self);
  g_signal_connect (key, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (entry, focus);
  gtk_widget_add_controller (entry, key);
  if (!is_text (self))
    gtk_widget_add_css_class (entry, "numeric");
  return entry;
}

static GtkWidget *
make_drop_down (LrField *self)
{
  g_autoptr (GPtrArray) titles = g_ptr_array_new ();
  GtkWidget *drop_down = lr_drop_down_new ();

  for (const LrChoice *choice = self->prop->choices; choice != NULL && choice->word != NULL; choice++)
    g_ptr_array_add (titles, _(choice->label));
  g_ptr_array_add (titles, NULL);
  lr_drop_down_set_titles (GTK_DROP_DOWN (drop_down), (const char *const *) titles->pdata);
  g_signal_connect_swapped (drop_down, "notify::selected", G_CALLBACK (selected_cb), self);
  return drop_down;
}

static GtkWidget *
make_check_button (LrField *self)
{
  GtkWidget *button = gtk_check_button_new_with_label (_(self->prop->label));

  g_signal_connect_swapped (button, "toggled", G_CALLBACK (toggled_cb), self);
  return button;
}

static gboolean
lr_field_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (LR_FIELD (widget)->child);
}

static void
lr_field_dispose (GObject *object)
{
  LrField *self = LR_FIELD (object);

  g_clear_pointer (&self->child, gtk_widget_unparent);
  g_clear_pointer (&self->shown, g_free);
  g_clear_pointer (&self->ids, g_strfreev);
  G_OBJECT_CLASS (lr_field_parent_class)->dispose (object);
}

static void
lr_field_class_init (LrFieldClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_field_dispose;
  widget_class->grab_focus = lr_field_grab_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  /* not PRESENTATION: GTK 4.8 hides what such a widget holds, the entry itself, from assistive technology */
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  signals[NUMBER] = g_signal_new ("number", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 2, G_TYPE_DOUBLE,
                                  G_TYPE_BOOLEAN);
  signals[TEXT] = g_signal_new ("text", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[REFUSED] = g_signal_new ("refused", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
lr_field_init (LrField *self)
{
  self->shown = g_strdup ("");
}

/**
 * lr_field_new:
 * @prop: what it shows; outlives it
 * @units: how lengths are read and written
 *
 * Returns: (transfer full): an entry, a drop-down or a check button
 */
GtkWidget *
lr_field_new (const LrProp *prop,
              LrUnits       units)
{
  LrField *self = g_object_new (LR_TYPE_FIELD, NULL);

  self->prop = prop;
  self->units = units;
  if (prop->type == LR_PROP_FLAG)
    self->child = make_check_button (self);
  else if (prop->type == LR_PROP_CHOICE || prop->type == LR_PROP_REF)
    self->child = make_drop_down (self);
  else
    self->child = make_entry (self);
  gtk_widget_set_parent (self->child, GTK_WIDGET (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->child), GTK_ACCESSIBLE_PROPERTY_LABEL, _(prop->label), -1);
  return GTK_WIDGET (self);
}

/**
 * lr_field_get_prop:
 *
 * Returns: (transfer none): the property that it shows
 */
const LrProp *
lr_field_get_prop (LrField *self)
{
  return self->prop;
}

/**
 * lr_field_set_offset:
 * @offset: what the field calls 0, in inside units: the west wall's x
 */
void
lr_field_set_offset (LrField *self,
                     double   offset)
{
  self->offset = offset;
}

/**
 * lr_field_set_number:
 * @value: of the plan; text that is being typed stays
 */
void
lr_field_set_number (LrField *self,
                     double   value)
{
  gboolean is_typing = lr_field_has_typed_text (self);

  self->value = value;
  self->is_setting = TRUE;
  if (GTK_IS_CHECK_BUTTON (self->child))
    gtk_check_button_set_active (GTK_CHECK_BUTTON (self->child), value != 0.0);
  else if (GTK_IS_DROP_DOWN (self->child))
    gtk_drop_down_set_selected (GTK_DROP_DOWN (self->child), (guint) value);
  else if (!is_typing)
    show_number (self);
  self->is_setting = FALSE;
}

static guint
find_id (LrField    *self,
         const char *id)
{
  for (guint i = 0; self->ids != NULL && self->ids[i] != NULL; i++)
    if (g_str_equal (self->ids[i], id))
      return i;
  return GTK_INVALID_LIST_POSITION;
}

/**
 * lr_field_set_text:
 * @text: of the plan, or the id of the item that it names; text that is being typed stays
 */
void
lr_field_set_text (LrField    *self,
                   const char *text)
{
  if (GTK_IS_DROP_DOWN (self->child))
    {
      self->is_setting = TRUE;
      gtk_drop_down_set_selected (GTK_DROP_DOWN (self->child), find_id (self, text));
      self->is_setting = FALSE;
    }
  else if (!lr_field_has_typed_text (self))
    show_text (self, text);
}

/**
 * lr_field_set_placeholder:
 * @text: what the empty field means
 */
void
lr_field_set_placeholder (LrField    *self,
                          const char *text)
{
  if (GTK_IS_ENTRY (self->child) && g_strcmp0 (gtk_entry_get_placeholder_text (GTK_ENTRY (self->child)), text) != 0)
    gtk_entry_set_placeholder_text (GTK_ENTRY (self->child), text);
}

static void
preset_chosen_cb (guint       index,
                  const char *text,
                  gpointer    data)
{
  LrField *self = data;

  gtk_editable_set_text (GTK_EDITABLE (self->child), text);
  lr_field_take (self);
  gtk_widget_grab_focus (self->child);
}

/**
 * lr_field_set_presets:
 * @values: standard values, in inside units; those out of range are left out
 * @n: how many
 */
void
lr_field_set_presets (LrField      *self,
                      const double *values,
                      gsize         n)
{
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);

  for (gsize i = 0; i < n; i++)
    if (lr_prop_accepts (self->prop, values[i]))
      g_ptr_array_add (texts, lr_prop_text_format (self->prop, values[i], self->units));
  g_ptr_array_add (texts, NULL);
  lr_field_presets_attach (GTK_ENTRY (self->child), (const char *const *) texts->pdata, preset_chosen_cb, self);
}

/**
 * lr_field_set_options:
 * @ids: what may be named
 * @titles: how each is called
 */
void
lr_field_set_options (LrField           *self,
                      const char *const *ids,
                      const char *const *titles)
{
  if (self->ids == NULL || !g_strv_equal ((const char *const *) self->ids, ids))
    {
      g_strfreev (self->ids);
      self->ids = g_strdupv ((char **) ids);
    }
  self->is_setting = TRUE;
  lr_drop_down_set_titles (GTK_DROP_DOWN (self->child), titles);
  self->is_setting = FALSE;
}
