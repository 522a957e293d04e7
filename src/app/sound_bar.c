/* sound_bar.c - what a microphone hears of voice, room and noises
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "sound_bar.h"

#include "badge.h"
#include "sound_chart.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define LEAST_WIDTH_PX 260

struct _LrSoundBar
{
  GtkWidget    parent_instance;

  LrSoundChart chart;
};

G_DEFINE_FINAL_TYPE (LrSoundBar, lr_sound_bar, GTK_TYPE_WIDGET)

static void
lr_sound_bar_snapshot (GtkWidget   *widget,
                       GtkSnapshot *snapshot)
{
  LrSoundBar *self = LR_SOUND_BAR (widget);
  int width_px = gtk_widget_get_width (widget);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width_px, (float) gtk_widget_get_height (widget)));

  lr_sound_chart_draw (cr, lr_theme_get (lr_widget_get_theme_id (widget)), &self->chart, width_px);
  cairo_destroy (cr);
}

static void
lr_sound_bar_measure (GtkWidget      *widget,
                      GtkOrientation  orientation,
                      int             for_size G_GNUC_UNUSED,
                      int            *minimum,
                      int            *natural,
                      int            *minimum_baseline,
                      int            *natural_baseline)
{
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL
                          ? LEAST_WIDTH_PX
                          : (int) ceil (lr_sound_chart_height (lr_theme_get (LR_THEME_LIGHT), &LR_SOUND_BAR (widget)->chart));
  *minimum_baseline = *natural_baseline = -1;
}

static void
lr_sound_bar_css_changed (GtkWidget         *widget,
                          GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (lr_sound_bar_parent_class)->css_changed (widget, change);
  gtk_widget_queue_draw (widget);
}

static void
lr_sound_bar_class_init (LrSoundBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->snapshot = lr_sound_bar_snapshot;
  widget_class->measure = lr_sound_bar_measure;
  widget_class->css_changed = lr_sound_bar_css_changed;
  gtk_widget_class_set_css_name (widget_class, "levels");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
lr_sound_bar_init (LrSoundBar *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

/**
 * lr_sound_bar_show:
 * @document: whose sound it is
 * @microphone: (nullable): id of a microphone
 */
void
lr_sound_bar_show (LrSoundBar *self,
                   LrDocument *document,
                   const char *microphone)
{
  LrSoundChart chart;
  gboolean has_sound = microphone != NULL && lr_sound_chart_read (&chart, lr_document_get_study (document), microphone);
  gboolean is_as_high;
  g_autofree char *words = NULL;

  gtk_widget_set_visible (GTK_WIDGET (self), has_sound);
  if (!has_sound)
    return;

  is_as_high = chart.n == self->chart.n;
  self->chart = chart;
  words = lr_sound_chart_words (&chart);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _("What it hears"), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  words, -1);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), _("How loud it hears each, in dB(A), right to some 3 dB. Where all noise together is wanted is "
                                                    "shaded"));
  if (is_as_high)
    gtk_widget_queue_draw (GTK_WIDGET (self));
  else
    gtk_widget_queue_resize (GTK_WIDGET (self));
}
