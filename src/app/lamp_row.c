/* lamp_row.c - a light's photometric file: which it is, what it says, another one, none
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "lamp_row.h"

#include "app.h"
#include "plan_edit.h"
#include "read_file.h"
#include "summary.h"

#include <glib/gi18n-lib.h>

struct _LrLampRow
{
  GtkWidget   parent_instance;

  LrDocument *document;
  char       *light;      /* id of the one that is shown; NULL: none */
  LrLampFile *shown;      /* its file then; NULL: none */
  GtkFileChooserNative *chooser; /* while it is open */

  GtkWidget  *box, *name, *choose, *remove, *facts, *doubts, *refused;
};

G_DEFINE_FINAL_TYPE (LrLampRow, lr_lamp_row, GTK_TYPE_WIDGET)

static void
show_text (GtkWidget  *label,
           const char *text)
{
  if (g_strcmp0 (gtk_label_get_label (GTK_LABEL (label)), text != NULL ? text : "") != 0)
    gtk_label_set_label (GTK_LABEL (label), text != NULL ? text : "");
  gtk_widget_set_visible (label, text != NULL && text[0] != '\0');
}

static void
show_refusal (LrLampRow  *self,
              const char *sentence)
{
  show_text (self->refused, sentence);
  if (sentence != NULL)
    gtk_widget_add_css_class (self->refused, "refused");
  else
    gtk_widget_remove_css_class (self->refused, "refused");
}

static void
commit (LrLampRow    *self,
        LrPlan       *next,
        const LrItem *light)
{
  g_autofree char *title = lr_item_title (light);
  g_autofree char *what = g_strdup_printf (_("%s: %s"), title, _(lr_item_find_prop (LR_ITEM_LIGHT, "photometric-file")->label));

  lr_document_commit (self->document, next, what);
}

static char *
dup_display_name (GFile *file)
{
  g_autofree char *base = g_file_get_basename (file);

  return base != NULL ? g_filename_display_name (base) : g_strdup ("");
}

/**
 * lr_lamp_row_take_file:
 * @file: a photometric file
 *
 * The light that is shown gets it as one undo step. If it cannot be, the reason stands in the row, and nothing has changed.
 */
void
lr_lamp_row_take_file (LrLampRow *self,
                       GFile     *file)
{
  LrPlan *plan = self->document != NULL ? lr_document_get_committed (self->document) : NULL, *next = NULL;
  const LrItem *light = plan != NULL && self->light != NULL ? lr_plan_find (plan, self->light) : NULL;
  g_autofree char *name = dup_display_name (file);
  g_autoptr (LrItem) held = light != NULL ? lr_item_ref (light) : NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = NULL;

  if (held == NULL)
    return;

  bytes = lr_read_file (file, LR_LAMP_FILE_MAX_BYTES, &error);
  if (bytes != NULL)
    next = lr_plan_set_lamp_file (plan, held->id, name, g_bytes_get_data (bytes, NULL) != NULL ? g_bytes_get_data (bytes, NULL) : "",
                                  g_bytes_get_size (bytes), &error);
  if (next == NULL)
    {
      /* Translators: a file's name, and why it cannot be used: "line 14: the angles do not rise" */
      g_autofree char *sentence = g_strdup_printf (_("“%s” cannot be used: %s."), name, error->message);

      show_refusal (self, sentence);
      return;
    }

  show_refusal (self, NULL);
  commit (self, next, held);
}

static void
response_cb (GtkNativeDialog *dialog,
             int              response,
             LrLampRow       *self)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));

  if (response == GTK_RESPONSE_ACCEPT && file != NULL)
    lr_lamp_row_take_file (self, file);
  g_clear_object (&self->chooser);
}

static void
add_filters (GtkFileChooser *chooser)
{
  g_autoptr (GtkFileFilter) lamps = gtk_file_filter_new (), all = gtk_file_filter_new ();

  gtk_file_filter_set_name (lamps, _("Photometric files (IES, LDT)"));
  gtk_file_filter_add_suffix (lamps, "ies");
  gtk_file_filter_add_suffix (lamps, "ldt");
  gtk_file_chooser_add_filter (chooser, lamps);
  gtk_file_filter_set_name (all, _("All files"));
  gtk_file_filter_add_pattern (all, "*");
  gtk_file_chooser_add_filter (chooser, all);
}

static void
choose_cb (LrLampRow *self)
{
  GtkWindow *window = GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self)));

  if (self->chooser != NULL)
    return;

  self->chooser = gtk_file_chooser_native_new (_("Photometric file of the lamp"), window, GTK_FILE_CHOOSER_ACTION_OPEN, _("_Use"), _("_Cancel"));
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  add_filters (GTK_FILE_CHOOSER (self->chooser));
  g_signal_connect_object (self->chooser, "response", G_CALLBACK (response_cb), self, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

static void
remove_cb (LrLampRow *self)
{
  LrPlan *plan = lr_document_get_committed (self->document), *next;
  const LrItem *light = self->light != NULL ? lr_plan_find (plan, self->light) : NULL;
  g_autoptr (LrItem) held = light != NULL ? lr_item_ref (light) : NULL;
  g_autoptr (GError) error = NULL;

  if (held == NULL)
    return;

  next = lr_plan_set_lamp_file (plan, held->id, "", NULL, 0, &error);
  if (next == NULL)
    {
      show_refusal (self, error->message);
      return;
    }

  gtk_widget_grab_focus (self->choose); /* the button that was pressed goes away */
  commit (self, next, held);
}

/* What was said of a file goes with the next light or file */
static void
remember (LrLampRow    *self,
          const LrItem *light)
{
  gboolean is_same = light != NULL && g_strcmp0 (self->light, light->id) == 0 && self->shown == light->lamp_file;

  if (is_same)
    return;

  show_refusal (self, NULL);
  g_free (self->light);
  g_clear_pointer (&self->shown, lr_lamp_file_unref);
  self->light = light != NULL ? g_strdup (light->id) : NULL;
  self->shown = light != NULL && light->lamp_file != NULL ? lr_lamp_file_ref (light->lamp_file) : NULL;
}

static void
show_name (LrLampRow    *self,
           const LrItem *light)
{
  const char *file_name = light->light.photometric_file;
  const char *name = file_name[0] != '\0' ? file_name : light->lamp_file != NULL ? lr_lamp_format_title (light->lamp_file->format) : _("none");

  gtk_label_set_label (GTK_LABEL (self->name), name);
  gtk_widget_set_tooltip_text (self->name, name);
}

/**
 * lr_lamp_row_show:
 * @document: whose light it is
 * @item: (nullable): what is in hand
 */
void
lr_lamp_row_show (LrLampRow    *self,
                  LrDocument   *document,
                  const LrItem *item)
{
  const LrItem *light = item != NULL && item->kind == LR_ITEM_LIGHT ? item : NULL;
  gboolean may_edit = !lr_document_get_plan (document)->is_read_only;
  g_autofree char *facts = NULL, *doubts = NULL;

  g_set_object (&self->document, document);
  gtk_widget_set_visible (GTK_WIDGET (self), light != NULL);
  remember (self, light);
  if (light == NULL)
    return;

  if (light->lamp_file != NULL)
    {
      facts = lr_lamp_file_words (light, lr_document_get_units (document));
      doubts = lr_lamp_file_dup_doubts (light->lamp_file);
    }
  else if (light->light.photometric_file[0] != '\0')
    doubts = g_strdup (_("The plan has only its name: choose it again."));
  show_name (self, light);
  show_text (self->facts, facts);
  show_text (self->doubts, doubts);
  gtk_widget_set_sensitive (self->choose, may_edit);
  gtk_widget_set_sensitive (self->remove, may_edit);
  gtk_widget_set_visible (self->remove, light->lamp_file != NULL || light->light.photometric_file[0] != '\0');
}

static void
lr_lamp_row_dispose (GObject *object)
{
  LrLampRow *self = LR_LAMP_ROW (object);

  if (self->chooser != NULL)
    gtk_native_dialog_destroy (GTK_NATIVE_DIALOG (self->chooser));
  g_clear_object (&self->chooser);
  g_clear_object (&self->document);
  g_clear_pointer (&self->light, g_free);
  g_clear_pointer (&self->shown, lr_lamp_file_unref);
  gtk_widget_dispose_template (GTK_WIDGET (object), LR_TYPE_LAMP_ROW);
  G_OBJECT_CLASS (lr_lamp_row_parent_class)->dispose (object);
}

static void
lr_lamp_row_class_init (LrLampRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_lamp_row_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "lamp");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class, LR_RESOURCE_PATH "/ui/lamp-row.ui");
  gtk_widget_class_bind_template_child (widget_class, LrLampRow, box);
  gtk_widget_class_bind_template_child (widget_class, LrLampRow, name);
  gtk_widget_class_bind_template_child (widget_class, LrLampRow, choose);
  gtk_widget_class_bind_template_child (widget_class, LrLampRow, remove);
  gtk_widget_class_bind_template_child (widget_class, LrLampRow, facts);
  gtk_widget_class_bind_template_child (widget_class, LrLampRow, doubts);
  gtk_widget_class_bind_template_child (widget_class, LrLampRow, refused);
  gtk_widget_class_bind_template_callback (widget_class, choose_cb);
  gtk_widget_class_bind_template_callback (widget_class, remove_cb);
}

static void
lr_lamp_row_init (LrLampRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Photometric file"), -1);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}
