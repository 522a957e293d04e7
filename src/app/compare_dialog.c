/* compare_dialog.c - candidate rooms side by side
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Small plans to one scale stay at the top; the table of figures below them scrolls. Columns are as wide in both.
 */

#include "config.h"

#include "compare_dialog.h"

#include "compare_row.h"
#include "hint.h"
#include "plan_edit.h"
#include "small_plan.h"

#include <glib/gi18n-lib.h>

#define FEW_ROOMS 3
#define FEW_ROOM_PX 210
#define MANY_ROOM_PX 124
#define PLAN_HEIGHT_PX 136
#define MOST_WIDTH_PX 1250
#define GAP_PX 8

struct _LrCompareDialog
{
  GtkWindow     parent_instance;

  LrDocument   *document;
  LrComparison *comparison;
  LrCompared   *compared;
  LrPlan       *seen;        /* that they are of */
  GtkWidget    *content;     /* made anew with them */
};

G_DEFINE_FINAL_TYPE (LrCompareDialog, lr_compare_dialog, GTK_TYPE_WINDOW)

static int
room_px (LrCompareDialog *self)
{
  return self->comparison->rooms->len <= FEW_ROOMS ? FEW_ROOM_PX : MANY_ROOM_PX;
}

/* The plans */

static void
draw_cb (GtkDrawingArea *area,
         cairo_t        *cr,
         int             width,
         int             height,
         gpointer        data)
{
  LrCompareDialog *self = g_object_get_data (G_OBJECT (area), "dialog");
  const LrRoomFigures *room = lr_comparison_room (self->comparison, GPOINTER_TO_UINT (data));
  GdkRGBA color;

  gtk_style_context_get_color (gtk_widget_get_style_context (GTK_WIDGET (area)), &color);
  lr_small_plan_draw (cr, room, lr_theme_get (color.red + color.green + color.blue > 1.5F ? LR_THEME_DARK : LR_THEME_LIGHT),
                      lr_small_plan_scale (self->comparison, width, height), width, height);
}

static GtkWidget *
make_plan (LrCompareDialog *self,
           guint            index)
{
  const LrSetup *setup = lr_comparison_room (self->comparison, index)->setup;
  GtkWidget *overlay = gtk_overlay_new ();
  GtkWidget *area = g_object_new (GTK_TYPE_DRAWING_AREA, "accessible-role", GTK_ACCESSIBLE_ROLE_IMG, NULL);
  /* Translators: the name of a set-up */
  g_autofree char *spoken = g_strdup_printf (_("Plan of %s"), setup->name);

  g_object_set_data (G_OBJECT (area), "dialog", self);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (area), draw_cb, GUINT_TO_POINTER (index), NULL);
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (area), PLAN_HEIGHT_PX);
  gtk_widget_set_hexpand (area, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (area), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  gtk_overlay_set_child (GTK_OVERLAY (overlay), area);
  if (setup->room->n_corners < 3)
    {
      GtkWidget *nothing = gtk_label_new (_("Room not drawn yet"));

      gtk_label_set_wrap (GTK_LABEL (nothing), TRUE);
      gtk_label_set_justify (GTK_LABEL (nothing), GTK_JUSTIFY_CENTER);
      gtk_widget_add_css_class (nothing, "note");
      gtk_widget_set_halign (nothing, GTK_ALIGN_CENTER);
      gtk_widget_set_valign (nothing, GTK_ALIGN_CENTER);
      gtk_overlay_add_overlay (GTK_OVERLAY (overlay), nothing);
    }
  return overlay;
}

static void
show_cb (LrCompareDialog *self,
         GtkWidget       *button)
{
  g_autoptr (GError) error = NULL;
  LrPlan *next = lr_plan_show_setup (lr_document_get_committed (self->document), g_object_get_data (G_OBJECT (button), "setup"), &error);

  if (next == NULL)
    lr_document_say (self->document, error->message);
  else
    lr_document_commit_merge (self->document, next, _("Show another set-up"), "setup");
  gtk_window_close (GTK_WINDOW (self));
}

static GtkWidget *
make_button (LrCompareDialog *self,
             const LrSetup   *setup,
             gboolean         is_shown)
{
  GtkWidget *button = gtk_button_new_with_label (is_shown ? _("Shown now") : _("Show this one"));
  /* Translators: the name of a set-up */
  g_autofree char *spoken = g_strdup_printf (is_shown ? _("%s is shown now: back to it") : _("Show %s"), setup->name);

  g_object_set_data_full (G_OBJECT (button), "setup", g_strdup (setup->id), g_free);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  gtk_widget_add_css_class (button, "small");
  g_signal_connect_object (button, "clicked", G_CALLBACK (show_cb), self, G_CONNECT_SWAPPED);
  return button;
}

static GtkWidget *
make_room (LrCompareDialog *self,
           guint            index)
{
  const LrSetup *setup = lr_comparison_room (self->comparison, index)->setup;
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4), *name = gtk_label_new (setup->name);

  gtk_label_set_xalign (GTK_LABEL (name), 0.0F);
  /* set-ups differ in how their names end */
  gtk_label_set_ellipsize (GTK_LABEL (name), PANGO_ELLIPSIZE_MIDDLE);
  gtk_widget_set_tooltip_text (name, setup->name);
  gtk_widget_add_css_class (name, "panel-title");
  gtk_widget_set_size_request (column, room_px (self), -1);
  gtk_widget_set_hexpand (column, TRUE);
  gtk_box_append (GTK_BOX (column), name);
  gtk_box_append (GTK_BOX (column), make_plan (self, index));
  gtk_box_append (GTK_BOX (column), make_button (self, setup, index == lr_document_get_committed (self->document)->shown));
  return column;
}

/* Beside the plans stands what they have in common, and what the marks mean */
static GtkWidget *
make_note (const char *text,
           int         width_px)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0.0F);
  gtk_label_set_width_chars (GTK_LABEL (label), 1);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 1);
  gtk_widget_set_size_request (label, width_px, -1);
  gtk_widget_set_valign (label, GTK_ALIGN_END);
  gtk_widget_add_css_class (label, "note");
  return label;
}

static GtkWidget *
make_head (LrCompareDialog *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, GAP_PX), *why;

  gtk_widget_add_css_class (head, "compare-head");
  gtk_box_append (GTK_BOX (head),
                  make_note (_("All plans to one scale, over a grid of 1 m. Dashed: the longest free line."), LR_COMPARE_TITLE_PX));
  for (guint i = 0; i < self->comparison->rooms->len; i++)
    gtk_box_append (GTK_BOX (head), make_room (self, i));
  why = make_note (self->comparison->rooms->len > 1 ? _("The star is the best in its row, of what is known, and the reason stands beside it. "
                                                        "Which room is best in all is yours to choose.")
                                                    : "",
                   LR_COMPARE_WHY_PX);
  gtk_widget_set_hexpand (why, TRUE);
  gtk_box_append (GTK_BOX (head), why);
  return head;
}

/* The table */

static void
heading_cb (GtkListBoxRow *row,
            GtkListBoxRow *before,
            gpointer       data)
{
  if (gtk_list_box_row_get_header (row) == NULL)
    gtk_list_box_row_set_header (row, lr_compare_heading_new (lr_compare_row_get (GTK_WIDGET (row))));
}

static GtkWidget *
make_table (LrCompareDialog *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new (), *list = gtk_list_box_new ();

  gtk_widget_add_css_class (list, "plain");
  gtk_widget_add_css_class (list, "compare");
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (list), GTK_SELECTION_NONE);
  gtk_list_box_set_header_func (GTK_LIST_BOX (list), heading_cb, NULL, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (list), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Rooms compared"), -1);
  for (guint i = 0; i < self->compared->rows->len; i++)
    gtk_list_box_append (GTK_LIST_BOX (list), lr_compare_row_new (self->compared, self->compared->rows->pdata[i], room_px (self)));
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), list);
  gtk_widget_set_vexpand (scroller, TRUE);
  return scroller;
}

static void
add_line (GtkWidget  *foot,
          const char *text,
          const char *css_class)
{
  GtkWidget *label;

  if (text[0] == '\0')
    return;

  label = gtk_label_new (text);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0.0F);
  gtk_widget_add_css_class (label, css_class);
  gtk_box_append (GTK_BOX (foot), label);
}

static GtkWidget *
make_foot (LrCompareDialog *self)
{
  GtkWidget *foot = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);

  gtk_widget_add_css_class (foot, "compare-foot");
  add_line (foot, self->compared->summary, "panel-title");
  add_line (foot, self->compared->undrawn, "note");
  add_line (foot, self->compared->places, "note");
  return foot;
}

static void
make (LrCompareDialog *self)
{
  GtkWidget *page = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *wide = gtk_scrolled_window_new ();
  GtkWidget *columns = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_box_append (GTK_BOX (columns), make_head (self));
  gtk_box_append (GTK_BOX (columns), make_table (self));
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (wide), GTK_POLICY_AUTOMATIC, GTK_POLICY_NEVER);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (wide), columns);
  gtk_widget_set_vexpand (wide, TRUE);
  gtk_box_append (GTK_BOX (page), wide);
  gtk_box_append (GTK_BOX (page), make_foot (self));
  gtk_window_set_child (GTK_WINDOW (self), page);
  self->content = page;
}

static void
update (LrCompareDialog *self)
{
  LrPlan *plan = lr_document_get_committed (self->document);
  LrComparison *before = self->comparison;

  if (plan == self->seen)
    return;

  if (self->content != NULL)
    gtk_window_set_child (GTK_WINDOW (self), NULL);
  g_clear_pointer (&self->compared, lr_compared_free);
  g_clear_pointer (&self->seen, lr_plan_unref);
  self->seen = lr_plan_ref (plan);
  self->comparison = lr_comparison_new (plan);
  lr_comparison_free (before);
  self->compared = lr_compared_new (self->comparison, lr_document_get_units (self->document));
  make (self);
}

static int
usual_width_px (LrCompareDialog *self)
{
  int n = (int) self->comparison->rooms->len;

  return MIN (MOST_WIDTH_PX, LR_COMPARE_TITLE_PX + LR_COMPARE_WHY_PX + n * (room_px (self) + GAP_PX) + 5 * GAP_PX);
}

static void
lr_compare_dialog_dispose (GObject *object)
{
  LrCompareDialog *self = LR_COMPARE_DIALOG (object);

  /* plans are drawn from the comparison */
  if (self->content != NULL)
    gtk_window_set_child (GTK_WINDOW (self), NULL);
  self->content = NULL;
  g_clear_pointer (&self->compared, lr_compared_free);
  g_clear_pointer (&self->comparison, lr_comparison_free);
  g_clear_pointer (&self->seen, lr_plan_unref);
  g_clear_object (&self->document);

  G_OBJECT_CLASS (lr_compare_dialog_parent_class)->dispose (object);
}

static void
lr_compare_dialog_class_init (LrCompareDialogClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lr_compare_dialog_dispose;
  gtk_widget_class_add_binding_action (GTK_WIDGET_CLASS (klass), GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
lr_compare_dialog_init (LrCompareDialog *self)
{
  gtk_window_set_titlebar (GTK_WINDOW (self), gtk_header_bar_new ());
}

/**
 * lr_compare_dialog_new:
 * @parent: (nullable): the window that it belongs to
 * @document: whose set-ups are compared
 *
 * Returns: (transfer none): the dialog; GTK holds it until it is closed
 */
GtkWidget *
lr_compare_dialog_new (GtkWindow  *parent,
                       LrDocument *document)
{
  LrCompareDialog *self = g_object_new (LR_TYPE_COMPARE_DIALOG, "transient-for", parent, "modal", TRUE, "title", _("Compare rooms"), NULL);

  self->document = g_object_ref (document);
  update (self);
  gtk_window_set_default_size (GTK_WINDOW (self), usual_width_px (self), 680);
  g_signal_connect_object (document, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}
