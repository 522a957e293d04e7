/* remarks_panel.c - what would go wrong, what to know, what is fine, each in one line
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A remark takes as many lines as it needs: what Mend does is read before it is pressed. The list's model keeps one row object per
 * remark's key and changes it in place; only where the order of keys is another are rows taken out and put in. So selection, focus and
 * scrolling stay while every figure in the list runs with a drag. What would mend comes when the plan rests: till then a line keeps its
 * button, which cannot be pressed. Nor can any for a moment when lines have moved under the pointer: a hand that is about to press
 * would press another.
 */

#include "config.h"

#include "remarks_panel.h"

#include "app.h"
#include "badge.h"
#include "remark_line.h"
#include "remark_row.h"

#include <glib/gi18n-lib.h>

#define ROW_PX 38
#define SETTLES_MS 700    /* time to see that another line lies under the pointer */
#define LINE "lr-line"

struct _LrRemarksPanel
{
  GtkWidget   parent_instance;

  LrDocument *document;
  GListStore *rows;
  GtkSingleSelection *selection;
  GPtrArray  *lines;      /* LrRemarkLine, bound to a row */
  gboolean    is_updating;
  guint       settles;    /* source: lines have moved under the pointer; 0: long ago */

  GtkEventController *pointer;
  GtkWidget  *box, *filters, *stack, *scroller, *list, *nothing;
  GtkWidget  *buttons[LR_N_GRADES], *counts[LR_N_GRADES];
};

G_DEFINE_FINAL_TYPE (LrRemarksPanel, lr_remarks_panel, GTK_TYPE_WIDGET)

static void
hold_lines (LrRemarksPanel *self)
{
  for (guint i = 0; i < self->lines->len; i++)
    lr_remark_line_hold (self->lines->pdata[i], self->settles != 0);
}

static gboolean
settled_cb (gpointer data)
{
  LrRemarksPanel *self = data;

  self->settles = 0;
  hold_lines (self);
  return G_SOURCE_REMOVE;
}

/* Who works by keyboard has the focus on a button that does not move away */
static void
let_settle (LrRemarksPanel *self)
{
  if (!gtk_event_controller_motion_contains_pointer (GTK_EVENT_CONTROLLER_MOTION (self->pointer)))
    return;

  g_clear_handle_id (&self->settles, g_source_remove);
  self->settles = g_timeout_add (SETTLES_MS, settled_cb, self);
  hold_lines (self);
}

static gboolean
shows_grade (LrRemarksPanel *self,
             LrGrade         grade)
{
  return gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->buttons[grade]));
}

/* The remarks to list, in order; (transfer container) */
static GPtrArray *
collect_remarks (LrRemarksPanel *self)
{
  const LrRemarks *remarks = lr_document_get_remarks (self->document);
  GPtrArray *wanted = g_ptr_array_new ();

  for (guint i = 0; i < remarks->all->len; i++)
    {
      LrRemark *remark = g_ptr_array_index (remarks->all, i);

      if (shows_grade (self, remark->grade))
        g_ptr_array_add (wanted, remark);
    }
  return wanted;
}

static LrRemarkRow *
get_row (LrRemarksPanel *self,
         guint           index)
{
  LrRemarkRow *row = g_list_model_get_item (G_LIST_MODEL (self->rows), index);

  g_object_unref (row); /* the store holds it */
  return row;
}

static gboolean
is_row_of (LrRemarksPanel *self,
           guint           index,
           const LrRemark *remark)
{
  return g_str_equal (lr_remark_row_get_key (get_row (self, index)), remark->key);
}

/* How many rows at the start, and then at the end, have the keys that are wanted there */
static void
count_common (LrRemarksPanel *self,
              GPtrArray      *wanted,
              guint          *n_head,
              guint          *n_tail)
{
  guint n_rows = g_list_model_get_n_items (G_LIST_MODEL (self->rows)), n = MIN (n_rows, wanted->len);

  *n_head = *n_tail = 0;
  while (*n_head < n && is_row_of (self, *n_head, g_ptr_array_index (wanted, *n_head)))
    (*n_head)++;
  while (*n_tail < n - *n_head
         && is_row_of (self, n_rows - 1 - *n_tail, g_ptr_array_index (wanted, wanted->len - 1 - *n_tail)))
    (*n_tail)++;
}

/* The row that has this key already, or a new one; (transfer full) */
static LrRemarkRow *
row_for_remark (LrRemarksPanel *self,
                const LrRemark *remark)
{
  guint n_rows = g_list_model_get_n_items (G_LIST_MODEL (self->rows));

  for (guint i = 0; i < n_rows; i++)
    if (is_row_of (self, i, remark))
      return g_object_ref (get_row (self, i));
  return lr_remark_row_new (remark);
}

/* Returns: whether another remark than before is the first */
static gboolean
splice_rows (LrRemarksPanel *self,
             GPtrArray      *wanted)
{
  guint n_rows = g_list_model_get_n_items (G_LIST_MODEL (self->rows)), n_head, n_tail;
  g_autoptr (GPtrArray) added = g_ptr_array_new_with_free_func (g_object_unref);

  count_common (self, wanted, &n_head, &n_tail);
  if (n_head + n_tail == n_rows && n_rows == wanted->len)
    return FALSE;

  for (guint i = n_head; i < wanted->len - n_tail; i++)
    g_ptr_array_add (added, row_for_remark (self, g_ptr_array_index (wanted, i)));
  g_list_store_splice (self->rows, n_head, n_rows - n_head - n_tail, added->pdata, added->len);
  let_settle (self);
  return n_head == 0;
}

/* The list stays with the lines that it shows, so that what comes in above them would not be seen. Who is in the list by keyboard
 * keeps the place. */
static void
show_first (LrRemarksPanel *self)
{
  if (gtk_widget_get_focus_child (self->list) == NULL && g_list_model_get_n_items (G_LIST_MODEL (self->rows)) > 0)
    gtk_widget_activate_action (self->list, "list.scroll-to-item", "u", 0);
}

static void
update_counts (LrRemarksPanel *self)
{
  const LrRemarks *remarks = lr_document_get_remarks (self->document);

  for (int grade = 0; grade < LR_N_GRADES; grade++)
    {
      g_autofree char *count = g_strdup_printf ("%u", remarks->n[grade]);

      if (g_str_equal (gtk_label_get_label (GTK_LABEL (self->counts[grade])), count))
        continue;

      gtk_label_set_label (GTK_LABEL (self->counts[grade]), count);
      gtk_accessible_update_property (GTK_ACCESSIBLE (self->buttons[grade]), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, count, -1);
    }
}

static void
update_nothing (LrRemarksPanel *self)
{
  const LrRemarks *remarks = lr_document_get_remarks (self->document);
  gboolean is_empty = g_list_model_get_n_items (G_LIST_MODEL (self->rows)) == 0;
  gboolean is_hidden = is_empty && remarks->all->len > remarks->n[LR_GRADE_FINE];

  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), is_empty ? "nothing" : "list");
  if (is_empty)
    gtk_label_set_label (GTK_LABEL (self->nothing), is_hidden ? _("What there is to fix or mind is folded away.")
                                                              : _("Nothing to fix, nothing to mind."));
}

/* The remark in hand, wherever it was taken */
static void
update_selection (LrRemarksPanel *self)
{
  const LrRemark *remark = lr_document_get_remark (self->document);
  guint n_rows = g_list_model_get_n_items (G_LIST_MODEL (self->rows)), at = GTK_INVALID_LIST_POSITION;

  for (guint i = 0; i < n_rows && remark != NULL; i++)
    if (is_row_of (self, i, remark))
      at = i;
  if (gtk_single_selection_get_selected (self->selection) != at)
    gtk_single_selection_set_selected (self->selection, at);
}

static void
update_rows (LrRemarksPanel *self)
{
  g_autoptr (GPtrArray) wanted = collect_remarks (self);
  gboolean is_moving = lr_document_get_remarks (self->document)->is_moving, has_new_first;

  self->is_updating = TRUE;
  has_new_first = splice_rows (self, wanted);
  for (guint i = 0; i < wanted->len; i++)
    lr_remark_row_set (get_row (self, i), g_ptr_array_index (wanted, i), is_moving);
  update_selection (self);
  self->is_updating = FALSE;
  if (has_new_first)
    show_first (self);

  update_counts (self);
  update_nothing (self);
}

static void
hand_cb (LrRemarksPanel *self)
{
  self->is_updating = TRUE;
  update_selection (self);
  self->is_updating = FALSE;
}

static void
selected_cb (LrRemarksPanel *self)
{
  LrRemarkRow *row = gtk_single_selection_get_selected_item (self->selection);

  if (!self->is_updating && row != NULL)
    lr_document_take_remark (self->document, lr_remark_row_get_key (row));
}

static void
leave_cb (LrRemarksPanel *self)
{
  if (self->document != NULL)
    lr_document_point_at_remark (self->document, NULL);
}

/* Enter or a double click takes the first thing that it is about in hand */
static void
activated_cb (LrRemarksPanel *self,
              guint           position)
{
  const LrRemark *remark =
    lr_remarks_find (lr_document_get_remarks (self->document), lr_remark_row_get_key (get_row (self, position)));

  if (remark != NULL && remark->ids[0] != NULL)
    {
      g_autofree char *id = g_strdup (remark->ids[0]);

      lr_document_select (self->document, id);
    }
}

static void
setup_cb (GtkSignalListItemFactory *factory,
          GtkListItem              *list_item,
          LrRemarksPanel           *self)
{
  LrRemarkLine *line = lr_remark_line_new ();

  g_object_set_data_full (G_OBJECT (list_item), LINE, line, (GDestroyNotify) lr_remark_line_free);
  gtk_list_item_set_child (list_item, lr_remark_line_get_widget (line));
}

static void
bind_cb (GtkSignalListItemFactory *factory,
         GtkListItem              *list_item,
         LrRemarksPanel           *self)
{
  LrRemarkLine *line = g_object_get_data (G_OBJECT (list_item), LINE);

  lr_remark_line_bind (line, self->document, gtk_list_item_get_item (list_item));
  lr_remark_line_hold (line, self->settles != 0);
  g_ptr_array_add (self->lines, line);
}

static void
unbind_cb (GtkSignalListItemFactory *factory,
           GtkListItem              *list_item,
           LrRemarksPanel           *self)
{
  LrRemarkLine *line = g_object_get_data (G_OBJECT (list_item), LINE);

  lr_remark_line_unbind (line);
  g_ptr_array_remove_fast (self->lines, line);
}

static GtkWidget *
make_filter (LrRemarksPanel *self,
             LrGrade         grade)
{
  GtkWidget *button = gtk_toggle_button_new (), *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  GtkWidget *badge = lr_badge_new (), *label = gtk_label_new (lr_grade_title (grade));

  self->counts[grade] = gtk_label_new ("");
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (self->counts[grade], "count");
  lr_badge_show_grade (LR_BADGE (badge), grade);
  gtk_box_append (GTK_BOX (box), badge);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), self->counts[grade]);
  gtk_button_set_child (GTK_BUTTON (button), box);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), grade != LR_GRADE_FINE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, lr_grade_title (grade), -1);
  gtk_box_append (GTK_BOX (self->filters), button);
  return button;
}

static void
make_list (LrRemarksPanel *self)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  GtkEventController *motion = gtk_event_controller_motion_new ();

  self->rows = g_list_store_new (LR_TYPE_REMARK_ROW);
  self->selection = gtk_single_selection_new (G_LIST_MODEL (g_object_ref (self->rows)));
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  gtk_single_selection_set_can_unselect (self->selection, TRUE);
  gtk_single_selection_set_selected (self->selection, GTK_INVALID_LIST_POSITION);
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), self);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), self);
  g_signal_connect (factory, "unbind", G_CALLBACK (unbind_cb), self);
  gtk_list_view_set_factory (GTK_LIST_VIEW (self->list), factory);
  gtk_list_view_set_model (GTK_LIST_VIEW (self->list), GTK_SELECTION_MODEL (self->selection));
  g_object_unref (factory);
  g_signal_connect_object (self->selection, "notify::selected-item", G_CALLBACK (selected_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_swapped (self->list, "activate", G_CALLBACK (activated_cb), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (leave_cb), self);
  gtk_widget_add_controller (self->list, motion);
}

/* What is folded away is not looked at */
static void
fold_cb (LrRemarksPanel *self)
{
  const LrRemark *remark = lr_document_get_remark (self->document);

  if (remark != NULL && !shows_grade (self, remark->grade))
    lr_document_take_remark (self->document, NULL);
  update_rows (self);
}

static void
lr_remarks_panel_dispose (GObject *object)
{
  LrRemarksPanel *self = LR_REMARKS_PANEL (object);

  if (self->list != NULL)
    gtk_list_view_set_model (GTK_LIST_VIEW (self->list), NULL);
  gtk_widget_dispose_template (GTK_WIDGET (object), LR_TYPE_REMARKS_PANEL);
  g_clear_handle_id (&self->settles, g_source_remove);
  g_clear_object (&self->selection);
  g_clear_object (&self->rows);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (lr_remarks_panel_parent_class)->dispose (object);
}

static void
lr_remarks_panel_finalize (GObject *object)
{
  g_ptr_array_unref (LR_REMARKS_PANEL (object)->lines);
  G_OBJECT_CLASS (lr_remarks_panel_parent_class)->finalize (object);
}

static void
lr_remarks_panel_class_init (LrRemarksPanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_remarks_panel_dispose;
  G_OBJECT_CLASS (klass)->finalize = lr_remarks_panel_finalize;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class, LR_RESOURCE_PATH "/ui/remarks.ui");
  gtk_widget_class_bind_template_child (widget_class, LrRemarksPanel, box);
  gtk_widget_class_bind_template_child (widget_class, LrRemarksPanel, filters);
  gtk_widget_class_bind_template_child (widget_class, LrRemarksPanel, stack);
  gtk_widget_class_bind_template_child (widget_class, LrRemarksPanel, scroller);
  gtk_widget_class_bind_template_child (widget_class, LrRemarksPanel, list);
  gtk_widget_class_bind_template_child (widget_class, LrRemarksPanel, nothing);
}

static void
lr_remarks_panel_init (LrRemarksPanel *self)
{
  self->lines = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Remarks"), -1);
  self->pointer = gtk_event_controller_motion_new ();
  gtk_widget_add_controller (self->list, self->pointer);
  for (int grade = 0; grade < LR_N_GRADES; grade++)
    self->buttons[grade] = make_filter (self, (LrGrade) grade);
  make_list (self);
  lr_remarks_panel_set_rows (self, 4);
}

/**
 * lr_remarks_panel_set_document:
 * @document: whose remarks are listed; once
 */
void
lr_remarks_panel_set_document (LrRemarksPanel *self,
                               LrDocument     *document)
{
  g_return_if_fail (self->document == NULL);

  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (update_rows), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "lit", G_CALLBACK (update_rows), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "judged", G_CALLBACK (update_rows), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "hand", G_CALLBACK (hand_cb), self, G_CONNECT_SWAPPED);
  for (int grade = 0; grade < LR_N_GRADES; grade++)
    g_signal_connect_object (self->buttons[grade], "toggled", G_CALLBACK (fold_cb), self, G_CONNECT_SWAPPED);
  update_rows (self);
}

/**
 * lr_remarks_panel_set_rows:
 * @n_rows: lines shown without scrolling
 */
void
lr_remarks_panel_set_rows (LrRemarksPanel *self,
                           int             n_rows)
{
  gtk_widget_set_size_request (self->scroller, -1, n_rows * ROW_PX);
}
