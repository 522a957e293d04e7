/* found_pane.c - what is otherwise than planned, in a list beside the sheet
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * It stands where the Tray does, and follows the plan while it is seen. Pointing at a row, or coming to it by keyboard, points at
 * its thing; a row that is picked takes it in hand. Rows stay while their number does, so that a drag changes nothing but words.
 */

#include "config.h"

#include "found_pane.h"

#include "diff_words.h"

#include <glib/gi18n-lib.h>

#define WIDTH_PX 208
#define WIDTH_CHARS 20 /* of what wraps, at least */

struct _LrFoundPane
{
  GtkBox      parent_instance;

  LrDocument *document;
  LrPlanDiff *diff;      /* NULL: the set-up shown is as found of none */
  GtkWidget  *heading, *list;
};

G_DEFINE_FINAL_TYPE (LrFoundPane, lr_found_pane, GTK_TYPE_BOX)

static const LrDiff *
diff_at (LrFoundPane *self,
         int          index)
{
  return self->diff != NULL && index >= 0 && index < (int) self->diff->all->len ? &g_array_index (self->diff->all, LrDiff, index) : NULL;
}

/* Whose place on the sheet a row is about; (nullable) */
static const char *
id_at (LrFoundPane *self,
       int          index)
{
  const LrDiff *found = diff_at (self, index);

  return found != NULL && found->now != NULL ? found->now->id : NULL;
}

static GtkWidget *
row_label (LrFoundPane *self,
           guint        index)
{
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), (int) index);

  return row != NULL ? gtk_list_box_row_get_child (row) : NULL;
}

static GtkWidget *
new_label (const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0F);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (label), WIDTH_CHARS);
  gtk_label_set_max_width_chars (GTK_LABEL (label), WIDTH_CHARS);
  return label;
}

/* The first of each group stands under its title */
static void
header_cb (GtkListBoxRow *row,
           GtkListBoxRow *before,
           gpointer       data)
{
  LrFoundPane *self = data;
  const LrDiff *found = diff_at (self, gtk_list_box_row_get_index (row));
  const LrDiff *last = before != NULL ? diff_at (self, gtk_list_box_row_get_index (before)) : NULL;
  GtkWidget *label;

  if (found == NULL || (last != NULL && last->group == found->group))
    {
      gtk_list_box_row_set_header (row, NULL);
      return;
    }

  label = new_label (lr_diff_group_title (found->group));
  gtk_widget_add_css_class (label, "note");
  gtk_widget_add_css_class (label, "found-group");
  gtk_list_box_row_set_header (row, label);
}

/* What a row's controller is about, or NULL for the pointer that has left */
static void
point_at_row (GtkEventController *controller,
              gboolean            is_on)
{
  GtkWidget *row = gtk_event_controller_get_widget (controller);
  LrFoundPane *self = LR_FOUND_PANE (gtk_widget_get_ancestor (row, LR_TYPE_FOUND_PANE));

  if (self != NULL && self->document != NULL)
    lr_document_point_at (self->document, is_on ? id_at (self, gtk_list_box_row_get_index (GTK_LIST_BOX_ROW (row))) : NULL);
}

static void
enter_cb (GtkEventController *controller)
{
  point_at_row (controller, TRUE);
}

static void
leave_cb (GtkEventController *controller)
{
  point_at_row (controller, FALSE);
}

static void
append_row (LrFoundPane *self)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkEventController *motion = gtk_event_controller_motion_new (), *focus = gtk_event_controller_focus_new ();

  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), new_label (NULL));
  g_signal_connect (motion, "enter", G_CALLBACK (enter_cb), NULL);
  g_signal_connect (motion, "leave", G_CALLBACK (leave_cb), NULL);
  g_signal_connect (focus, "enter", G_CALLBACK (enter_cb), NULL);
  g_signal_connect (focus, "leave", G_CALLBACK (leave_cb), NULL);
  gtk_widget_add_controller (row, motion);
  gtk_widget_add_controller (row, focus);
  gtk_list_box_append (GTK_LIST_BOX (self->list), row);
}

static void
fill (LrFoundPane *self)
{
  guint n = self->diff != NULL ? self->diff->all->len : 0;
  GtkListBoxRow *spare;

  while ((spare = gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), (int) n)) != NULL)
    gtk_list_box_remove (GTK_LIST_BOX (self->list), GTK_WIDGET (spare));
  for (guint i = 0; i < n; i++)
    {
      const LrDiff *found = diff_at (self, (int) i);
      const char *advice = lr_diff_advice (self->diff, found);
      g_autofree char *told = lr_diff_markup (self->diff, found, lr_document_get_units (self->document));
      g_autofree char *markup = g_strjoin (*advice != '\0' ? " " : "", told, advice, NULL);

      if (row_label (self, i) == NULL)
        append_row (self);
      if (g_strcmp0 (gtk_label_get_label (GTK_LABEL (row_label (self, i))), markup) != 0)
        gtk_label_set_markup (GTK_LABEL (row_label (self, i)), markup);
    }
  gtk_list_box_invalidate_headers (GTK_LIST_BOX (self->list));
}

static char *
say_heading (const LrPlanDiff *diff)
{
  if (diff == NULL)
    return g_strdup ("");
  if (diff->all->len == 0)
    /* Translators: name of the set-up as planned */
    return g_strdup_printf (_("All is as in “%s”. Double-click a wall to type its length, or click it and drag it: what stands at it "
                              "goes along."), diff->was->name);

  /* Translators: how many differences; name of the set-up as planned */
  return g_strdup_printf (ngettext ("%u difference to “%s”", "%u differences to “%s”", diff->all->len), diff->all->len, diff->was->name);
}

static void
update (LrFoundPane *self)
{
  g_autofree char *heading = NULL;
  LrPlan *planned;

  if (self->document == NULL || !gtk_widget_get_visible (GTK_WIDGET (self)))
    return;

  planned = lr_document_get_planned (self->document);
  lr_plan_diff_free (self->diff);
  self->diff = planned != NULL ? lr_plan_diff_new (planned, lr_document_get_plan (self->document)) : NULL;
  heading = say_heading (self->diff);
  if (g_strcmp0 (gtk_label_get_label (GTK_LABEL (self->heading)), heading) != 0)
    gtk_label_set_label (GTK_LABEL (self->heading), heading);
  fill (self);
}

static void
activated_cb (LrFoundPane   *self,
              GtkListBoxRow *row)
{
  g_autofree char *id = g_strdup (id_at (self, gtk_list_box_row_get_index (row)));

  lr_document_select (self->document, id);
}

static GtkWidget *
make_head (void)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0), *title = gtk_label_new (_("Differences"));
  GtkWidget *close = gtk_button_new_from_icon_name ("window-close-symbolic");

  gtk_label_set_xalign (GTK_LABEL (title), 0.0F);
  gtk_widget_set_hexpand (title, TRUE);
  gtk_widget_add_css_class (title, "panel-title");
  gtk_button_set_has_frame (GTK_BUTTON (close), FALSE);
  gtk_widget_add_css_class (close, "small");
  gtk_widget_set_tooltip_text (close, _("Back to the kit"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (close), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Close the differences"), -1);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (close), "win.differences");
  gtk_widget_add_css_class (head, "tray-head");
  gtk_box_append (GTK_BOX (head), title);
  gtk_box_append (GTK_BOX (head), close);
  return head;
}

static GtkWidget *
make_foot (void)
{
  GtkWidget *foot = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6), *check, *button;

  check = gtk_check_button_new_with_mnemonic (_("Show _planned places"));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (check), "win.show-planned");
  gtk_widget_set_tooltip_text (check, _("On the sheet, in broken outlines, with an arrow to where things are now"));
  button = gtk_button_new_with_mnemonic (_("Re_fit the set"));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.refit-set");
  gtk_widget_set_tooltip_text (button, _("Find the smallest move of the whole set that leaves the fewest to fix; it is shown before it is made"));
  gtk_box_append (GTK_BOX (foot), check);
  gtk_box_append (GTK_BOX (foot), button);
  return foot;
}

static GtkWidget *
make_list (LrFoundPane *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();

  self->list = gtk_list_box_new ();
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (self->list), GTK_SELECTION_NONE);
  gtk_list_box_set_header_func (GTK_LIST_BOX (self->list), header_cb, self, NULL);
  gtk_widget_add_css_class (self->list, "plain");
  gtk_widget_add_css_class (self->list, "found");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Differences to the plan"), -1);
  g_signal_connect_swapped (self->list, "row-activated", G_CALLBACK (activated_cb), self);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), self->list);
  gtk_widget_set_vexpand (scroller, TRUE);
  return scroller;
}

static void
lr_found_pane_dispose (GObject *object)
{
  LrFoundPane *self = LR_FOUND_PANE (object);

  g_clear_pointer (&self->diff, lr_plan_diff_free);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (lr_found_pane_parent_class)->dispose (object);
}

static void
lr_found_pane_class_init (LrFoundPaneClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_found_pane_dispose;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "win.differences", NULL);
}

static void
lr_found_pane_init (LrFoundPane *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
  gtk_widget_set_size_request (GTK_WIDGET (self), WIDTH_PX, -1);
  gtk_widget_add_css_class (GTK_WIDGET (self), "tray");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Differences"), -1);
  self->heading = new_label (NULL);
  gtk_widget_add_css_class (self->heading, "tray-head");
  gtk_box_append (GTK_BOX (self), make_head ());
  gtk_box_append (GTK_BOX (self), self->heading);
  gtk_box_append (GTK_BOX (self), make_list (self));
  gtk_box_append (GTK_BOX (self), make_foot ());
  g_signal_connect (self, "notify::visible", G_CALLBACK (update), NULL);
}

/**
 * lr_found_pane_set_document:
 * @document: whose set-up shown is held against the one planned; once
 */
void
lr_found_pane_set_document (LrFoundPane *self,
                            LrDocument  *document)
{
  g_return_if_fail (self->document == NULL);

  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  update (self);
}

/**
 * lr_found_pane_words:
 *
 * Returns: (transfer full): its heading and rows, one a line
 */
char *
lr_found_pane_words (LrFoundPane *self)
{
  GString *text = g_string_new (gtk_label_get_text (GTK_LABEL (self->heading)));

  for (guint i = 0; row_label (self, i) != NULL; i++)
    g_string_append_printf (text, "\n%s", gtk_label_get_text (GTK_LABEL (row_label (self, i))));
  return g_string_free (text, FALSE);
}
