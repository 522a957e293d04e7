/* found_dialog.c - what is otherwise than planned, in a list
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * It stays open beside the sheet and follows the plan. A row that is picked takes its thing in hand. Rows stay while their
 * number does, so that a drag changes nothing but words.
 */

#include "config.h"

#include "found_dialog.h"

#include "beside.h"
#include "diff_words.h"

#include <glib/gi18n-lib.h>

struct _LrFoundDialog
{
  GtkWindow   parent_instance;

  LrDocument *document;
  LrPlanDiff *diff;      /* NULL: the set-up shown is as found of none */
  GtkWidget  *heading, *list, *scroller;
};

G_DEFINE_FINAL_TYPE (LrFoundDialog, lr_found_dialog, GTK_TYPE_WINDOW)

static const LrDiff *
diff_at (LrFoundDialog *self,
         int            index)
{
  return self->diff != NULL && index >= 0 && index < (int) self->diff->all->len ? &g_array_index (self->diff->all, LrDiff, index) : NULL;
}

static GtkWidget *
row_label (LrFoundDialog *self,
           guint          index)
{
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), (int) index);

  return row != NULL ? gtk_list_box_row_get_child (row) : NULL;
}

static GtkWidget *
new_label (const char *markup)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_markup (GTK_LABEL (label), markup);
  gtk_label_set_xalign (GTK_LABEL (label), 0.0F);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_set_margin_start (label, 12);
  gtk_widget_set_margin_end (label, 12);
  gtk_widget_set_margin_top (label, 4);
  gtk_widget_set_margin_bottom (label, 4);
  return label;
}

/* The first of each group stands under its title */
static void
header_cb (GtkListBoxRow *row,
           GtkListBoxRow *before,
           gpointer       data)
{
  LrFoundDialog *self = data;
  const LrDiff *found = diff_at (self, gtk_list_box_row_get_index (row));
  const LrDiff *last = before != NULL ? diff_at (self, gtk_list_box_row_get_index (before)) : NULL;
  GtkWidget *label;

  if (found == NULL || (last != NULL && last->group == found->group))
    {
      gtk_list_box_row_set_header (row, NULL);
      return;
    }

  label = new_label ("");
  gtk_label_set_text (GTK_LABEL (label), lr_diff_group_title (found->group));
  gtk_widget_add_css_class (label, "panel-title");
  gtk_list_box_row_set_header (row, label);
}

static void
remove_rows (LrFoundDialog *self)
{
  GtkListBoxRow *row;

  while ((row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), 0)) != NULL)
    gtk_list_box_remove (GTK_LIST_BOX (self->list), GTK_WIDGET (row));
}

static void
fill (LrFoundDialog *self)
{
  guint n = self->diff != NULL ? self->diff->all->len : 0;
  gboolean has_rows = n > 0 && row_label (self, n - 1) != NULL && row_label (self, n) == NULL;

  if (!has_rows)
    remove_rows (self);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *markup = lr_diff_markup (self->diff, diff_at (self, (int) i), lr_document_get_units (self->document));
      GtkWidget *label = has_rows ? row_label (self, i) : NULL;

      if (label == NULL)
        gtk_list_box_append (GTK_LIST_BOX (self->list), new_label (markup));
      else if (g_strcmp0 (gtk_label_get_label (GTK_LABEL (label)), markup) != 0)
        gtk_label_set_markup (GTK_LABEL (label), markup);
    }
  gtk_list_box_invalidate_headers (GTK_LIST_BOX (self->list));
}

static char *
say_heading (const LrPlanDiff *diff)
{
  if (diff == NULL)
    return g_strdup (_("This set-up is as found of no other. “As found…” in the menu of set-ups makes one of it that is."));
  if (diff->all->len == 0)
    return g_strdup_printf (_("“%s” is as “%s” was planned."), diff->now->name, diff->was->name);

  /* Translators: how many differences; names of the set-up as found and as planned */
  return g_strdup_printf (ngettext ("%u difference: “%s” against “%s”", "%u differences: “%s” against “%s”", diff->all->len),
                          diff->all->len, diff->now->name, diff->was->name);
}

static void
update (LrFoundDialog *self)
{
  LrPlan *planned = lr_document_get_planned (self->document);
  LrPlanDiff *diff = planned != NULL ? lr_plan_diff_new (planned, lr_document_get_plan (self->document)) : NULL;
  g_autofree char *heading = say_heading (diff);

  lr_plan_diff_free (self->diff);
  self->diff = diff;
  gtk_label_set_text (GTK_LABEL (self->heading), heading);
  gtk_widget_set_visible (self->scroller, diff != NULL && diff->all->len > 0);
  fill (self);
}

static void
activated_cb (LrFoundDialog *self,
              GtkListBoxRow *row)
{
  const LrDiff *found = diff_at (self, gtk_list_box_row_get_index (row));

  lr_document_select (self->document, found != NULL && found->now != NULL ? found->now->id : NULL);
}

static GtkWidget *
make_foot (void)
{
  GtkWidget *foot = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12), *check, *button;

  check = gtk_check_button_new_with_mnemonic (_("Show _planned places"));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (check), "win.show-planned");
  gtk_widget_set_hexpand (check, TRUE);
  gtk_widget_set_tooltip_text (check, _("On the sheet, in broken outlines, with an arrow to where things are now"));
  button = gtk_button_new_with_mnemonic (_("Re_fit the set"));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.refit-set");
  gtk_widget_set_tooltip_text (button, _("Find the smallest move of the whole set that leaves the fewest to fix; it is shown before it is made"));
  gtk_box_append (GTK_BOX (foot), check);
  gtk_box_append (GTK_BOX (foot), button);
  return foot;
}

static void
make (LrFoundDialog *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);

  self->heading = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (self->heading), TRUE);
  gtk_label_set_xalign (GTK_LABEL (self->heading), 0.0F);
  self->list = gtk_list_box_new ();
  gtk_list_box_set_header_func (GTK_LIST_BOX (self->list), header_cb, self, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Differences to the plan"), -1);
  self->scroller = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_has_frame (GTK_SCROLLED_WINDOW (self->scroller), TRUE);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scroller), self->list);
  gtk_widget_set_vexpand (self->scroller, TRUE);
  gtk_widget_set_margin_top (box, 12);
  gtk_widget_set_margin_bottom (box, 12);
  gtk_widget_set_margin_start (box, 12);
  gtk_widget_set_margin_end (box, 12);
  gtk_box_append (GTK_BOX (box), self->heading);
  gtk_box_append (GTK_BOX (box), self->scroller);
  gtk_box_append (GTK_BOX (box), make_foot ());
  gtk_window_set_titlebar (GTK_WINDOW (self), gtk_header_bar_new ());
  gtk_window_set_child (GTK_WINDOW (self), box);
  g_signal_connect_object (self->list, "row-activated", G_CALLBACK (activated_cb), self, G_CONNECT_SWAPPED);
}

static void
lr_found_dialog_dispose (GObject *object)
{
  LrFoundDialog *self = LR_FOUND_DIALOG (object);

  g_clear_pointer (&self->diff, lr_plan_diff_free);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (lr_found_dialog_parent_class)->dispose (object);
}

static void
lr_found_dialog_class_init (LrFoundDialogClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lr_found_dialog_dispose;
  gtk_widget_class_add_binding_action (GTK_WIDGET_CLASS (klass), GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
lr_found_dialog_init (LrFoundDialog *self)
{
}

/**
 * lr_found_dialog_words:
 *
 * Returns: (transfer full): its heading and rows, one a line
 */
char *
lr_found_dialog_words (LrFoundDialog *self)
{
  GString *text = g_string_new (gtk_label_get_text (GTK_LABEL (self->heading)));

  for (guint i = 0; row_label (self, i) != NULL; i++)
    g_string_append_printf (text, "\n%s", gtk_label_get_text (GTK_LABEL (row_label (self, i))));
  return g_string_free (text, FALSE);
}

/**
 * lr_found_dialog_new:
 * @parent: the window that it belongs to, whose actions it offers
 * @document: whose set-up shown is compared
 *
 * Returns: (transfer none): the dialog; GTK holds it until it is closed
 */
GtkWidget *
lr_found_dialog_new (GtkWindow  *parent,
                     LrDocument *document)
{
  LrFoundDialog *self = g_object_new (LR_TYPE_FOUND_DIALOG, "transient-for", parent, "destroy-with-parent", TRUE,
                                      "default-width", 460, "default-height", 420, NULL);

  self->document = g_object_ref (document);
  lr_beside_bind (GTK_WINDOW (self), parent, document, _("Differences to the plan"));
  make (self);
  update (self);
  g_signal_connect_object (document, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}
