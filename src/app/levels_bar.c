/* levels_bar.c - how face, clothes and walls come out in a camera
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "levels_bar.h"

#include "badge.h"
#include "levels.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define LEAST_WIDTH_PX 220

struct _LrLevelsBar
{
  GtkWidget parent_instance;

  LrLevels  levels;
};

G_DEFINE_FINAL_TYPE (LrLevelsBar, lr_levels_bar, GTK_TYPE_WIDGET)

static void
lr_levels_bar_snapshot (GtkWidget   *widget,
                        GtkSnapshot *snapshot)
{
  LrLevelsBar *self = LR_LEVELS_BAR (widget);
  int width_px = gtk_widget_get_width (widget);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width_px, (float) gtk_widget_get_height (widget)));

  lr_levels_draw (cr, lr_theme_get (lr_widget_get_theme_id (widget)), &self->levels, width_px);
  cairo_destroy (cr);
}

static void
lr_levels_bar_measure (GtkWidget      *widget,
                       GtkOrientation  orientation,
                       int             for_size,
                       int            *minimum,
                       int            *natural,
                       int            *minimum_baseline,
                       int            *natural_baseline)
{
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? LEAST_WIDTH_PX
                                                                  : (int) ceil (lr_levels_height (lr_theme_get (LR_THEME_LIGHT)));
  *minimum_baseline = *natural_baseline = -1;
}

static void
lr_levels_bar_css_changed (GtkWidget         *widget,
                           GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (lr_levels_bar_parent_class)->css_changed (widget, change);
  gtk_widget_queue_draw (widget);
}

static void
lr_levels_bar_class_init (LrLevelsBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->snapshot = lr_levels_bar_snapshot;
  widget_class->measure = lr_levels_bar_measure;
  widget_class->css_changed = lr_levels_bar_css_changed;
  gtk_widget_class_set_css_name (widget_class, "levels");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
lr_levels_bar_init (LrLevelsBar *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

/**
 * lr_levels_bar_show:
 * @document: whose levels they are
 * @camera: (nullable): id of a camera
 */
void
lr_levels_bar_show (LrLevelsBar *self,
                    LrDocument  *document,
                    const char  *camera)
{
  LrLevels levels;
  gboolean has_levels = camera != NULL
                        && lr_levels_read (&levels, lr_document_get_levels (document), lr_document_get_plan (document), camera);
  g_autofree char *words = NULL;

  gtk_widget_set_visible (GTK_WIDGET (self), has_levels);
  if (!has_levels)
    return;

  self->levels = levels;
  words = lr_levels_words (&levels);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Levels"), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  words, -1);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), _("How bright it comes out, per cent of full signal: right to half a stop at best. "
                                                    "Where face and walls are wanted is shaded"));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
