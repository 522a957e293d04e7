/* details_job.c - the job: when, where, for whom, what the place is asked for, whom to call
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is folded away is not kept up.
 */

#include "config.h"

#include "details_job.h"

#include "app.h"
#include "asks.h"
#include "contacts.h"
#include "details_rows.h"
#include "plan_edit.h"

#include <glib/gi18n-lib.h>

struct _LrDetailsJob
{
  GtkWidget   parent_instance;

  LrDocument *document;
  LrUnits     units;          /* that the fields were made for */
  char       *shown_requests; /* as the plan has them, one a line */

  GtkWidget  *box, *job_grid, *location_grid, *requests, *requests_view, *asks, *contacts, *contacts_editor;
};

G_DEFINE_FINAL_TYPE (LrDetailsJob, lr_details_job, GTK_TYPE_WIDGET)

static const char *const job_keys[] = {
  "=title", "=subtitle", "=client", "date", "time-zone", "time-in", "time-roll", "time-wrap", "time-out", "=sky", "owner", "created-by",
  "approved-by", "identification", "revision", "issued", "=notes", NULL
};
static const char *const location_keys[] = {
  "=name", "=address", "latitude-deg", "longitude-deg", "mains-hz", "=access", "=permission", NULL
};

static const LrJob *
get_job (LrDetailsJob *self)
{
  return lr_document_get_plan (self->document)->job;
}

static const LrLocation *
get_location (LrDetailsJob *self)
{
  return lr_plan_get_setup (lr_document_get_plan (self->document))->location;
}

static const LrPlan *
get_base (LrDetailsJob *self)
{
  return lr_document_get_committed (self->document);
}

static GtkTextBuffer *
get_buffer (LrDetailsJob *self)
{
  return gtk_text_view_get_buffer (GTK_TEXT_VIEW (self->requests_view));
}

static void
update_requests (LrDetailsJob *self)
{
  g_autofree char *text = g_strjoinv ("\n", get_job (self)->requests);
  g_autoptr (GPtrArray) asks = lr_asks_new (lr_document_get_study (self->document), self->units);
  g_autofree char *made = lr_asks_made_text (asks);

  gtk_widget_set_visible (self->asks, *made != '\0');
  if (g_strcmp0 (made, gtk_label_get_text (GTK_LABEL (self->asks))) != 0)
    gtk_label_set_text (GTK_LABEL (self->asks), made);
  if (g_strcmp0 (text, self->shown_requests) == 0)
    return;

  g_free (self->shown_requests);
  self->shown_requests = g_strdup (text);
  gtk_text_buffer_set_text (get_buffer (self), text, -1);
}

static gboolean
is_open (GtkWidget *expander)
{
  return gtk_expander_get_expanded (GTK_EXPANDER (expander));
}

static void
make_fields (LrDetailsJob *self)
{
  LrFieldGrid *job = LR_FIELD_GRID (self->job_grid), *location = LR_FIELD_GRID (self->location_grid);
  LrUnits units = lr_document_get_units (self->document);

  if (lr_field_grid_get_n (job) > 0 && units == self->units)
    return;

  self->units = units;
  lr_field_grid_clear (job);
  lr_field_grid_clear (location);
  lr_details_add_fields (job, lr_job_table (), job_keys, units);
  lr_details_add_fields (location, lr_location_table (), location_keys, units);
}

/**
 * lr_details_job_update:
 *
 * Shows the plan that the document shows now.
 */
void
lr_details_job_update (LrDetailsJob *self)
{
  make_fields (self);
  lr_field_grid_show (LR_FIELD_GRID (self->job_grid), get_job (self));
  lr_field_grid_show (LR_FIELD_GRID (self->location_grid), get_location (self));
  if (is_open (self->requests))
    update_requests (self);
  if (is_open (self->contacts))
    lr_contacts_set (LR_CONTACTS (self->contacts_editor), get_location (self)->contacts, get_location (self)->n_contacts);
}

static void
commit (LrDetailsJob *self,
        LrPlan       *next,
        const char   *what,
        const char   *merge_key,
        GError      **error)
{
  if (!lr_document_try (self->document, next, what, merge_key, error))
    lr_details_job_update (self);
}

static void
job_number_cb (LrDetailsJob *self,
               LrField       *field,
               double         value,
               gboolean       is_step)
{
  const LrProp *prop = lr_field_get_prop (field);
  g_autoptr (GError) error = NULL;

  commit (self, lr_plan_set_job_number (get_base (self), prop->key, value, &error), _(prop->label), is_step ? prop->key : NULL,
          &error);
}

static void
job_text_cb (LrDetailsJob *self,
             LrField       *field,
             const char    *text)
{
  const LrProp *prop = lr_field_get_prop (field);
  g_autoptr (GError) error = NULL;

  commit (self, lr_plan_set_job (get_base (self), prop->key, text, &error), _(prop->label), NULL, &error);
}

static void
location_number_cb (LrDetailsJob *self,
                    LrField      *field,
                    double        value,
                    gboolean      is_step)
{
  const LrProp *prop = lr_field_get_prop (field);
  g_autoptr (GError) error = NULL;

  commit (self, lr_plan_set_location (get_base (self), prop->key, value, &error), _(prop->label), is_step ? prop->key : NULL, &error);
}

static void
location_text_cb (LrDetailsJob *self,
                  LrField      *field,
                  const char   *text)
{
  const LrProp *prop = lr_field_get_prop (field);
  g_autoptr (GError) error = NULL;

  commit (self, lr_plan_set_location_text (get_base (self), prop->key, text, &error), _(prop->label), NULL, &error);
}

static void
requests_leave_cb (LrDetailsJob *self)
{
  GtkTextIter start, end;
  g_autofree char *text = NULL;
  g_auto (GStrv) lines = NULL;
  g_autoptr (GPtrArray) requests = g_ptr_array_new ();
  g_autoptr (GError) error = NULL;

  if (self->document == NULL || self->shown_requests == NULL)
    return;

  gtk_text_buffer_get_bounds (get_buffer (self), &start, &end);
  text = gtk_text_buffer_get_text (get_buffer (self), &start, &end, FALSE);
  if (g_strcmp0 (text, self->shown_requests) == 0)
    return;

  lines = g_strsplit (text, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    if (g_strstrip (lines[i])[0] != '\0')
      g_ptr_array_add (requests, lines[i]);
  g_ptr_array_add (requests, NULL);
  commit (self, lr_plan_set_requests (get_base (self), (const char *const *) requests->pdata, &error), _("Requests to the place"),
          NULL, &error);
}

static void
contacts_changed_cb (LrDetailsJob *self)
{
  g_autoptr (GError) error = NULL;
  gsize n;
  const LrContact *contacts = lr_contacts_get (LR_CONTACTS (self->contacts_editor), &n);

  commit (self, lr_plan_set_contacts (get_base (self), contacts, n, &error), _("People to call"), NULL, &error);
}

static void
lr_details_job_dispose (GObject *object)
{
  LrDetailsJob *self = LR_DETAILS_JOB (object);

  g_clear_object (&self->document);
  gtk_widget_dispose_template (GTK_WIDGET (object), LR_TYPE_DETAILS_JOB);
  g_clear_pointer (&self->shown_requests, g_free);
  G_OBJECT_CLASS (lr_details_job_parent_class)->dispose (object);
}

static void
lr_details_job_class_init (LrDetailsJobClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_details_job_dispose;
  g_type_ensure (LR_TYPE_FIELD_GRID);
  g_type_ensure (LR_TYPE_CONTACTS);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, LR_RESOURCE_PATH "/ui/details-job.ui");
  gtk_widget_class_bind_template_child (widget_class, LrDetailsJob, box);
  gtk_widget_class_bind_template_child (widget_class, LrDetailsJob, job_grid);
  gtk_widget_class_bind_template_child (widget_class, LrDetailsJob, location_grid);
  gtk_widget_class_bind_template_child (widget_class, LrDetailsJob, requests);
  gtk_widget_class_bind_template_child (widget_class, LrDetailsJob, requests_view);
  gtk_widget_class_bind_template_child (widget_class, LrDetailsJob, asks);
  gtk_widget_class_bind_template_child (widget_class, LrDetailsJob, contacts);
  gtk_widget_class_bind_template_child (widget_class, LrDetailsJob, contacts_editor);
}

static void
lr_details_job_init (LrDetailsJob *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();

  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_object (self->job_grid, "number", G_CALLBACK (job_number_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->job_grid, "text", G_CALLBACK (job_text_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->location_grid, "number", G_CALLBACK (location_number_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->location_grid, "text", G_CALLBACK (location_text_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (requests_leave_cb), self);
  gtk_widget_add_controller (self->requests_view, focus);
  g_signal_connect_object (self->contacts_editor, "changed", G_CALLBACK (contacts_changed_cb), self, G_CONNECT_SWAPPED);
}

/**
 * lr_details_job_set_document:
 * @document: whose job is shown; once. lr_details_job_update() tells of its changes
 */
void
lr_details_job_set_document (LrDetailsJob *self,
                             LrDocument   *document)
{
  GtkWidget *expanders[] = { self->requests, self->contacts };

  g_return_if_fail (self->document == NULL);

  self->document = g_object_ref (document);
  for (gsize i = 0; i < G_N_ELEMENTS (expanders); i++)
    g_signal_connect_object (expanders[i], "notify::expanded", G_CALLBACK (lr_details_job_update), self, G_CONNECT_SWAPPED);
}
