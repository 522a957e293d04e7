/* compare_dialog.c - candidate rooms side by side
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Small plans to one scale stay at the top; the table of figures below them scrolls. Columns are as wide in both. What needs the levels of
 * light is worked out in another thread, room by room, and comes into the table when it is known.
 */

#include "config.h"

#include "compare_dialog.h"

#include "compare_row.h"
#include "compare_ways_on.h"
#include "hint.h"
#include "plan_edit.h"
#include "small_plan.h"

#include <glib/gi18n-lib.h>

#define FEW_ROOMS 3
#define FEW_ROOM_PX 210
#define MANY_ROOM_PX 140
#define PLAN_HEIGHT_PX 136
#define MOST_WIDTH_PX 1250
#define LEAST_HEIGHT_PX 680
#define MOST_HEIGHT_PX 960
#define PARENT_SHOWS_PX 80   /* of the window that it belongs to, over and under it */
#define GAP_PX 8
#define WAYS_ON_PX 360       /* of how another room comes there */

struct _LrCompareDialog
{
  GtkWindow     parent_instance;

  LrDocument   *document;
  LrComparison *comparison;
  LrCompared   *compared;
  LrPlan       *seen;        /* that they are of */
  GtkWidget    *content;     /* made anew with them */
  GtkWidget    *scroller, *foot; /* in it: what changes when levels come */
  GCancellable *working;     /* on levels of light; (nullable) */
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

static gboolean
is_shown (LrCompareDialog *self,
          const LrSetup   *setup)
{
  return g_str_equal (lr_plan_get_setup (lr_document_get_committed (self->document))->id, setup->id);
}

/* Under the names, if any of them has one: the plans stay in line */
static GtkWidget *
make_subtitle (LrCompareDialog *self,
               guint            index)
{
  g_autofree char *text = lr_compare_subtitle (lr_comparison_room (self->comparison, index));
  GtkWidget *label;

  if (self->compared->left_out[0] == '\0')
    return NULL;

  label = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (label), 0.0F);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_MIDDLE);
  gtk_widget_set_tooltip_text (label, text);
  gtk_widget_add_css_class (label, "compare-detail");
  return label;
}

static GtkWidget *
make_room (LrCompareDialog *self,
           guint            index)
{
  const LrSetup *setup = lr_comparison_room (self->comparison, index)->setup;
  GtkWidget *subtitle = make_subtitle (self, index);
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4), *name = gtk_label_new (setup->name);

  gtk_label_set_xalign (GTK_LABEL (name), 0.0F);
  /* set-ups differ in how their names end */
  gtk_label_set_ellipsize (GTK_LABEL (name), PANGO_ELLIPSIZE_MIDDLE);
  gtk_widget_set_tooltip_text (name, setup->name);
  gtk_widget_add_css_class (name, "panel-title");
  gtk_widget_set_size_request (column, room_px (self), -1);
  gtk_widget_set_hexpand (column, TRUE);
  gtk_box_append (GTK_BOX (column), name);
  if (subtitle != NULL)
    gtk_box_append (GTK_BOX (column), subtitle);
  gtk_box_append (GTK_BOX (column), make_plan (self, index));
  gtk_box_append (GTK_BOX (column), make_button (self, setup, is_shown (self, setup)));
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
  gtk_widget_add_css_class (label, "compare-detail");
  return label;
}

static GtkWidget *
make_head (LrCompareDialog *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, GAP_PX), *why;

  gtk_widget_add_css_class (head, "compare-head");
  gtk_box_append (GTK_BOX (head),
                  make_note (_("All plans to one scale, over a grid of 1 m. Dashed: the longest free line. Thin: from camera to subject."), LR_COMPARE_TITLE_PX));
  for (guint i = 0; i < self->comparison->rooms->len; i++)
    gtk_box_append (GTK_BOX (head), make_room (self, i));
  if (self->comparison->rooms->len < 2)
    why = lr_compare_ways_on_new ();
  else
    why = make_note (_("The star is the best in its row, of what is known, and the reason stands beside it. Which room is best in all is yours "
                       "to choose."),
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
make_list (LrCompareDialog *self)
{
  GtkWidget *list = gtk_list_box_new ();

  gtk_widget_add_css_class (list, "plain");
  gtk_widget_add_css_class (list, "compare");
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (list), GTK_SELECTION_NONE);
  gtk_list_box_set_header_func (GTK_LIST_BOX (list), heading_cb, NULL, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (list), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Rooms compared"), -1);
  for (guint i = 0; i < self->compared->rows->len; i++)
    gtk_list_box_append (GTK_LIST_BOX (list), lr_compare_row_new (self->compared, self->compared->rows->pdata[i], room_px (self)));
  return list;
}

static GtkWidget *
make_table (LrCompareDialog *self)
{
  self->scroller = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scroller), make_list (self));
  gtk_widget_set_vexpand (self->scroller, TRUE);
  return self->scroller;
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

/* With one room the head says what the summary would */
static void
fill_foot (LrCompareDialog *self,
           GtkWidget       *foot)
{
  gtk_widget_add_css_class (foot, "compare-foot");
  if (self->comparison->rooms->len > 1)
    add_line (foot, self->compared->summary, "panel-title");
  add_line (foot, self->compared->undrawn, "note");
  add_line (foot, self->compared->left_out, "note");
  add_line (foot, self->compared->places, "note");
  gtk_widget_set_visible (foot, gtk_widget_get_first_child (foot) != NULL);
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
  self->foot = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  fill_foot (self, self->foot);
  gtk_box_append (GTK_BOX (page), self->foot);
  gtk_window_set_child (GTK_WINDOW (self), page);
  self->content = page;
}

/* What is worked out meanwhile */

/* The row in which the focus is, -1: none */
static int
focused_row (LrCompareDialog *self)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));

  return focus != NULL && GTK_IS_LIST_BOX_ROW (focus) ? gtk_list_box_row_get_index (GTK_LIST_BOX_ROW (focus)) : -1;
}

/* The table anew, with place and focus as they were; the plans stay */
static void
tell_anew (LrCompareDialog *self)
{
  GtkAdjustment *down = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->scroller));
  double at = gtk_adjustment_get_value (down);
  int row = focused_row (self);
  GtkWidget *list, *line;

  lr_compared_free (self->compared);
  self->compared = lr_compared_new (self->comparison, lr_document_get_units (self->document));
  list = make_list (self);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scroller), list);
  gtk_adjustment_set_value (down, at);
  if (row >= 0)
    gtk_widget_grab_focus (GTK_WIDGET (gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), row)));
  while ((line = gtk_widget_get_first_child (self->foot)) != NULL)
    gtk_box_remove (GTK_BOX (self->foot), line);
  fill_foot (self, self->foot);
}

static void
work_in_thread (GTask        *task,
                gpointer      source G_GNUC_UNUSED,
                gpointer      data,
                GCancellable *cancellable)
{
  g_task_return_pointer (task, lr_light_levels_new (data, TRUE, cancellable), (GDestroyNotify) lr_light_levels_unref);
}

static void work_on (LrCompareDialog *self);

static void
worked_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  LrCompareDialog *self = LR_COMPARE_DIALOG (source);
  GCancellable *cancellable = g_task_get_cancellable (G_TASK (result));
  LrLightLevels *levels = g_task_propagate_pointer (G_TASK (result), NULL);

  if (!g_cancellable_is_cancelled (cancellable) && levels != NULL)
    {
      lr_comparison_judge (self->comparison, GPOINTER_TO_UINT (data), levels, lr_document_get_units (self->document));
      work_on (self);
    }
  g_clear_pointer (&levels, lr_light_levels_unref);
}

/* One room after the other, and the table when all are known: it does not jump under the pointer */
static void
work_on (LrCompareDialog *self)
{
  for (guint i = 0; i < self->comparison->rooms->len; i++)
    {
      g_autoptr (GTask) task = NULL;

      if (!lr_comparison_is_awaited (self->comparison, i))
        continue;
      task = g_task_new (self, self->working, worked_cb, GUINT_TO_POINTER (i));
      g_task_set_task_data (task, lr_plan_ref (lr_comparison_room (self->comparison, i)->study->plan), (GDestroyNotify) lr_plan_unref);
      g_task_run_in_thread (task, work_in_thread);
      return;
    }
  tell_anew (self);
}

static void
give_up (LrCompareDialog *self)
{
  if (self->working != NULL)
    g_cancellable_cancel (self->working);
  g_clear_object (&self->working);
}

static void
update (LrCompareDialog *self)
{
  LrPlan *plan = lr_document_get_committed (self->document);
  LrComparison *before = self->comparison;

  if (plan == self->seen)
    return;

  give_up (self);
  if (self->content != NULL)
    gtk_window_set_child (GTK_WINDOW (self), NULL);
  g_clear_pointer (&self->compared, lr_compared_free);
  g_clear_pointer (&self->seen, lr_plan_unref);
  self->seen = lr_plan_ref (plan);
  self->comparison = lr_comparison_new (plan);
  lr_comparison_free (before);
  self->compared = lr_compared_new (self->comparison, lr_document_get_units (self->document));
  make (self);
  self->working = g_cancellable_new ();
  work_on (self);
}

static int
usual_width_px (LrCompareDialog *self)
{
  int n = (int) self->comparison->rooms->len;

  return MIN (MOST_WIDTH_PX, LR_COMPARE_TITLE_PX + (n < 2 ? WAYS_ON_PX : LR_COMPARE_WHY_PX) + n * (room_px (self) + GAP_PX) + 5 * GAP_PX);
}

/* As much of the table as fits without hiding the window that it belongs to */
static int
usual_height_px (GtkWindow *parent)
{
  int height = parent != NULL ? gtk_widget_get_height (GTK_WIDGET (parent)) : 0;

  return CLAMP (height - PARENT_SHOWS_PX, LEAST_HEIGHT_PX, MOST_HEIGHT_PX);
}

static void
lr_compare_dialog_dispose (GObject *object)
{
  LrCompareDialog *self = LR_COMPARE_DIALOG (object);

  give_up (self);
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
  gtk_window_set_default_size (GTK_WINDOW (self), usual_width_px (self), usual_height_px (parent));
  g_signal_connect_object (document, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}
