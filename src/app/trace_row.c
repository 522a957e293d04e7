/* trace_row.c - the picture of a floor plan under the room: which it is, how it is shown, how it lies, none
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Its buttons name actions of the window; the sheet does what they say.
 */

#include "config.h"

#include "trace_row.h"

#include "app.h"
#include "field_grid.h"
#include "plan_edit.h"

#include <glib/gi18n-lib.h>

struct _LrTraceRow
{
  GtkWidget   parent_instance;

  LrDocument *document;
  LrUnits     units;      /* that the fields were made for */
  gboolean    is_pdf;     /* they have the page */
  gboolean    is_setting; /* the check button follows the plan */

  GtkWidget  *box, *name, *choose, *held, *is_shown, *scale, *move, *grid, *facts;
};

G_DEFINE_FINAL_TYPE (LrTraceRow, lr_trace_row, GTK_TYPE_WIDGET)

static const char *const keys[] = { "underlay-dim-pct", "underlay-turn-deg", "underlay-x-mm", "underlay-y-mm", "underlay-page" };

static const LrRoom *
get_room (LrTraceRow *self)
{
  return lr_plan_get_setup (lr_document_get_plan (self->document))->room;
}

static void
set_number (LrTraceRow *self,
            const char *key,
            double      value,
            const char *what,
            const char *merge_key)
{
  g_autoptr (GError) error = NULL;
  LrPlan *next = lr_plan_set_room (lr_document_get_committed (self->document), key, value, &error);

  if (next != NULL)
    lr_document_commit_merge (self->document, next, what, merge_key);
  else
    {
      lr_document_say (self->document, error->message);
      lr_trace_row_show (self, self->document);
    }
}

static void
number_cb (LrTraceRow *self,
           LrField    *field,
           double      value,
           gboolean    is_step)
{
  const LrProp *prop = lr_field_get_prop (field);

  set_number (self, prop->key, value, _(prop->label), is_step ? prop->key : NULL);
}

static void
shown_cb (LrTraceRow *self)
{
  gboolean is_shown = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->is_shown));

  if (self->document == NULL || self->is_setting)
    return;
  set_number (self, "underlay-is-hidden", !is_shown, is_shown ? _("Show the picture") : _("Hide the picture"), NULL);
}

static void
make_fields (LrTraceRow *self)
{
  LrUnits units = lr_document_get_units (self->document);
  gboolean is_pdf = get_room (self)->underlay->type == LR_PICTURE_PDF;
  LrFieldGrid *grid = LR_FIELD_GRID (self->grid);

  if (lr_field_grid_get_n (grid) > 0 && units == self->units && is_pdf == self->is_pdf)
    return;

  self->units = units;
  self->is_pdf = is_pdf;
  lr_field_grid_clear (grid);
  for (gsize i = 0; i < G_N_ELEMENTS (keys) - (is_pdf ? 0 : 1); i++)
    lr_field_grid_add (grid, lr_prop_table_find (lr_room_table (), keys[i]), NULL, units, FALSE);
}

static void
show_facts (LrTraceRow *self)
{
  const LrRoom *room = get_room (self);
  g_autofree char *text = NULL;

  if (room->underlay_is_guessed)
    text = g_strdup (_("Not to scale yet: press Scale and give it a length that you know."));
  else if (room->underlay->type == LR_PICTURE_PDF)
    /* Translators: of the paper of a PDF; 1:50 */
    text = g_strdup_printf (_("The paper at 1:%.1f. It is not printed on the page."), room->underlay_scale / (0.0254 / 72.0));
  else
    text = g_strdup_printf (_("A pixel is %.1f mm. It is not printed on the page."), 1000.0 * room->underlay_scale);
  gtk_label_set_label (GTK_LABEL (self->facts), text);
  if (room->underlay_is_guessed)
    gtk_widget_add_css_class (self->facts, "refused");
  else
    gtk_widget_remove_css_class (self->facts, "refused");
}

/**
 * lr_trace_row_show:
 * @document: whose room it is
 *
 * Shows the plan that the document shows now.
 */
void
lr_trace_row_show (LrTraceRow *self,
                   LrDocument *document)
{
  const LrRoom *room;
  LrFieldGrid *grid = LR_FIELD_GRID (self->grid);

  g_set_object (&self->document, document);
  room = get_room (self);
  gtk_widget_set_visible (self->held, room->underlay != NULL);
  gtk_widget_set_visible (self->name, room->underlay != NULL);
  gtk_button_set_label (GTK_BUTTON (self->choose), room->underlay != NULL ? _("Another…") : _("Trace a picture of a floor plan…"));
  gtk_widget_set_hexpand (self->choose, room->underlay == NULL);
  if (room->underlay == NULL)
    return;

  gtk_label_set_label (GTK_LABEL (self->name), room->underlay_file[0] != '\0' ? room->underlay_file : lr_picture_type_title (room->underlay->type));
  gtk_widget_set_tooltip_text (self->name, room->underlay_file);
  self->is_setting = TRUE;
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->is_shown), !room->underlay_is_hidden);
  self->is_setting = FALSE;
  gtk_widget_set_sensitive (self->scale, !room->underlay_is_hidden);
  gtk_widget_set_sensitive (self->move, !room->underlay_is_hidden);
  make_fields (self);
  for (guint i = 0; i < lr_field_grid_get_n (grid); i++)
    {
      LrField *field = lr_field_grid_get (grid, i);

      lr_field_set_number (field, lr_prop_get_number (lr_field_get_prop (field), room));
    }
  show_facts (self);
}

static void
lr_trace_row_dispose (GObject *object)
{
  LrTraceRow *self = LR_TRACE_ROW (object);

  g_clear_object (&self->document);
  gtk_widget_dispose_template (GTK_WIDGET (object), LR_TYPE_TRACE_ROW);
  G_OBJECT_CLASS (lr_trace_row_parent_class)->dispose (object);
}

static void
lr_trace_row_class_init (LrTraceRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_trace_row_dispose;
  g_type_ensure (LR_TYPE_FIELD_GRID);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class, LR_RESOURCE_PATH "/ui/trace-row.ui");
  gtk_widget_class_bind_template_child (widget_class, LrTraceRow, box);
  gtk_widget_class_bind_template_child (widget_class, LrTraceRow, name);
  gtk_widget_class_bind_template_child (widget_class, LrTraceRow, choose);
  gtk_widget_class_bind_template_child (widget_class, LrTraceRow, held);
  gtk_widget_class_bind_template_child (widget_class, LrTraceRow, is_shown);
  gtk_widget_class_bind_template_child (widget_class, LrTraceRow, scale);
  gtk_widget_class_bind_template_child (widget_class, LrTraceRow, move);
  gtk_widget_class_bind_template_child (widget_class, LrTraceRow, grid);
  gtk_widget_class_bind_template_child (widget_class, LrTraceRow, facts);
  gtk_widget_class_bind_template_callback (widget_class, shown_cb);
}

static void
lr_trace_row_init (LrTraceRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Picture of a floor plan"), -1);
  g_signal_connect_object (self->grid, "number", G_CALLBACK (number_cb), self, G_CONNECT_SWAPPED);
}
