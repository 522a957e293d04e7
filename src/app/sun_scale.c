/* sun_scale.c - the time of day whose sun the sheet shows
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * From sunrise to sunset of the day of the shoot, which are told at its ends, with the first and the last minute of the shoot marked.
 * Without a date or a place on the earth it says what is missing.
 */

#include "config.h"

#include "sun_scale.h"

#include "sun_readings.h"
#include "view.h"

#include <glib/gi18n-lib.h>
#include <math.h>

struct _LrSunScale
{
  GtkWidget   parent_instance;

  LrDocument *document;
  const LrJob *job;           /* whose day the scale has, and whose sun; compared, not read */
  const LrLocation *location;
  gboolean    is_known, is_setting;

  GtkWidget  *box, *time, *scale, *missing;
};

G_DEFINE_FINAL_TYPE (LrSunScale, lr_sun_scale, GTK_TYPE_WIDGET)

static char *
format_minute (int minute)
{
  return g_strdup_printf ("%d:%02d", minute / 60, minute % 60);
}

static void
show_time (LrSunScale *self)
{
  int minute = (int) round (gtk_range_get_value (GTK_RANGE (self->scale)));
  g_autofree char *text = format_minute (minute);

  gtk_label_set_label (GTK_LABEL (self->time), text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->scale), GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, text, -1);
}

static void
moved_cb (LrSunScale *self)
{
  show_time (self);
  if (!self->is_setting)
    lr_document_set_sun_minute (self->document, (int) round (gtk_range_get_value (GTK_RANGE (self->scale))));
}

static void
mark (LrSunScale *self,
      const char *time,
      int         first,
      int         last)
{
  int minute;

  if (lr_minute_parse (time, &minute) && minute > first && minute < last)
    gtk_scale_add_mark (GTK_SCALE (self->scale), minute, GTK_POS_BOTTOM, time);
}

/* Translators: when the sun comes up, and when it goes down; (transfer full) */
static char *
say_end (const char *format,
         int         minute)
{
  g_autofree char *time = format_minute (minute);

  return g_strdup_printf (format, time);
}

/* The day of the job */
static void
take_day (LrSunScale *self)
{
  const LrStudy *study = lr_document_get_study (self->document);
  const LrJob *job = study->plan->job;
  int first, last, middle = lr_study_light_minute (study);
  g_autofree char *rise = NULL, *set = NULL;

  self->job = job;
  self->location = study->setup->location;
  self->is_known = lr_study_sun_up (study, &first, &last);
  gtk_widget_set_visible (self->scale, self->is_known);
  gtk_widget_set_visible (self->time, self->is_known);
  gtk_widget_set_visible (self->missing, !self->is_known);
  if (!self->is_known)
    return;

  self->is_setting = TRUE;
  gtk_range_set_range (GTK_RANGE (self->scale), first, last);
  gtk_scale_clear_marks (GTK_SCALE (self->scale));
  rise = say_end (_("up %s"), first);
  set = say_end (_("down %s"), last);
  gtk_scale_add_mark (GTK_SCALE (self->scale), first, GTK_POS_BOTTOM, rise);
  gtk_scale_add_mark (GTK_SCALE (self->scale), last, GTK_POS_BOTTOM, set);
  mark (self, job->time_roll, first, last);
  mark (self, job->time_wrap, first, last);
  if (lr_document_get_sun_minute (self->document) > 0)
    gtk_range_set_value (GTK_RANGE (self->scale), lr_document_get_sun_minute (self->document));
  else
    gtk_range_set_value (GTK_RANGE (self->scale), middle >= 0 ? middle : LR_DAY_MIN / 2);
  self->is_setting = FALSE;
  show_time (self);
}

static void
update (LrSunScale *self)
{
  gboolean is_shown = (lr_document_get_shown (self->document) & LR_SHOW_SUN) != 0;
  const LrPlan *plan = lr_document_get_plan (self->document);

  gtk_widget_set_visible (GTK_WIDGET (self), is_shown);
  if (is_shown && (self->job != plan->job || self->location != lr_plan_get_setup (plan)->location))
    take_day (self);
}

static void
lr_sun_scale_dispose (GObject *object)
{
  LrSunScale *self = LR_SUN_SCALE (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (lr_sun_scale_parent_class)->dispose (object);
}

static void
lr_sun_scale_class_init (LrSunScaleClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_sun_scale_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "sunscale");
}

static void
lr_sun_scale_init (LrSunScale *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  self->time = gtk_label_new (NULL);
  self->scale = gtk_scale_new_with_range (GTK_ORIENTATION_HORIZONTAL, 0.0, LR_DAY_MIN, 1.0);
  self->missing = gtk_label_new (_("Give the date, the time zone, latitude and longitude in Details, under Job, to see where the sun comes in."));
  gtk_widget_set_margin_start (self->box, 14);
  gtk_widget_set_margin_end (self->box, 40); /* for half of what is written under the end */
  gtk_label_set_width_chars (GTK_LABEL (self->time), 5);
  gtk_widget_add_css_class (self->time, "numeric");
  gtk_label_set_wrap (GTK_LABEL (self->missing), TRUE);
  gtk_label_set_xalign (GTK_LABEL (self->missing), 0.0f);
  gtk_widget_add_css_class (self->missing, "note");
  gtk_widget_set_hexpand (self->scale, TRUE);
  gtk_scale_set_draw_value (GTK_SCALE (self->scale), FALSE);
  gtk_scale_set_has_origin (GTK_SCALE (self->scale), FALSE); /* a time, not an amount */
  gtk_range_set_increments (GTK_RANGE (self->scale), 5.0, 30.0);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->scale), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Time of day"), -1);
  g_signal_connect_swapped (self->scale, "value-changed", G_CALLBACK (moved_cb), self);
  gtk_box_append (GTK_BOX (self->box), self->time);
  gtk_box_append (GTK_BOX (self->box), self->scale);
  gtk_box_append (GTK_BOX (self->box), self->missing);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

/**
 * lr_sun_scale_set_document:
 * @document: whose sun it is about; once
 */
void
lr_sun_scale_set_document (LrSunScale *self,
                           LrDocument *document)
{
  g_return_if_fail (self->document == NULL);

  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "hand", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  update (self);
}
