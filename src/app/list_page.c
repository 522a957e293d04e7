/* list_page.c - a list that is ticked: lines in groups, that follow the document
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "list_page.h"

#include "list_line.h"
#include "plan_edit.h"

#include <glib/gi18n-lib.h>

struct _LrListPage
{
  GtkWidget    parent_instance;

  LrDocument  *document;
  char        *list;
  LrListFill   fill;
  GtkWidget   *column, *bar, *count, *untick, *lines;
  GtkSizeGroup *leads;
  GHashTable  *known;      /* key to widget (not held) */
  GHashTable  *seen;       /* set of widgets, while it is filled */
  GtkWidget   *last;       /* of those that were put in their place */
  guint        n_boxes, n_ticked, source;
  gboolean     is_stale, is_setting;
};

G_DEFINE_FINAL_TYPE (LrListPage, lr_list_page, GTK_TYPE_WIDGET)

/* --- Ticks ---------------------------------------------------------------------------------------------------- */

static void
ticked_cb (LrListPage     *self,
           GtkCheckButton *check)
{
  const LrPlan *plan = lr_document_get_committed (self->document);
  gboolean is_ticked = gtk_check_button_get_active (check);
  const char *tick = g_object_get_data (G_OBJECT (check), LR_LIST_TICK);
  g_autoptr (GError) error = NULL;
  LrPlan *next;

  if (self->is_setting || is_ticked == lr_plan_is_ticked (plan, self->list, tick))
    return;

  next = lr_plan_set_ticked (plan, self->list, tick, is_ticked, &error);
  lr_list_page_commit (self, next, is_ticked ? _("Tick a line") : _("Untick a line"), &error);
}

static void
untick_cb (LrListPage *self)
{
  g_autoptr (GError) error = NULL;
  LrPlan *next = lr_plan_clear_ticks (lr_document_get_committed (self->document), self->list, &error);

  lr_list_page_commit (self, next, _("Untick all"), &error);
}

static void
update_count (LrListPage *self)
{
  /* Translators: of the lines of a list */
  g_autofree char *text = g_strdup_printf (_("%u of %u ticked"), self->n_ticked, self->n_boxes);

  gtk_label_set_label (GTK_LABEL (self->count), text);
  gtk_widget_set_visible (self->count, self->n_boxes > 0);
  gtk_widget_set_visible (self->untick, self->n_ticked > 0);
}

/* --- Lines ---------------------------------------------------------------------------------------------------- */

static GtkWidget *
make_line (LrListPage *self,
           const char *key)
{
  GtkWidget *line = lr_list_line_new (key);

  gtk_size_group_add_widget (self->leads, lr_list_line_get (line, "lr-lead"));
  g_signal_connect_object (lr_list_line_get (line, "lr-check"), "toggled", G_CALLBACK (ticked_cb), self, G_CONNECT_SWAPPED);
  return line;
}

/* Behind those that were put in their place before */
static void
put_in_place (LrListPage *self,
              GtkWidget  *widget)
{
  GtkWidget *before = gtk_widget_get_prev_sibling (widget);

  if (before != self->last)
    gtk_box_reorder_child_after (GTK_BOX (self->lines), widget, self->last);
  self->last = widget;
  g_hash_table_add (self->seen, widget);
}

/* (transfer none): of that key, made by @make if need be */
static GtkWidget *
take_widget (LrListPage   *self,
             const char   *key,
             GtkWidget  *(*make) (LrListPage *self, const char *key),
             gboolean     *is_new)
{
  GtkWidget *widget = g_hash_table_lookup (self->known, key);

  *is_new = widget == NULL;
  if (widget == NULL)
    {
      widget = make (self, key);
      gtk_box_append (GTK_BOX (self->lines), widget);
      g_hash_table_insert (self->known, g_strdup (key), widget);
    }
  put_in_place (self, widget);
  return widget;
}

/**
 * lr_list_page_line:
 * @self: a page that is being filled
 * @line: what it says
 * @is_new: (out) (optional): it was not there before
 *
 * Returns: (transfer none): its widget
 */
GtkWidget *
lr_list_page_line (LrListPage       *self,
                   const LrListLine *line,
                   gboolean         *is_new)
{
  const LrPlan *plan = lr_document_get_plan (self->document);
  const char *tick = line->tick != NULL ? line->tick : line->key;
  gboolean was_made, is_ticked = line->has_box && lr_plan_is_ticked (plan, self->list, tick);
  GtkWidget *widget = take_widget (self, line->key, make_line, &was_made);

  lr_list_line_set (widget, line, is_ticked, plan->is_read_only);
  self->n_boxes += line->has_box ? 1 : 0;
  self->n_ticked += is_ticked ? 1 : 0;
  if (is_new != NULL)
    *is_new = was_made;
  return widget;
}

static GtkWidget *
make_group (LrListPage *self,
            const char *key)
{
  GtkWidget *label = lr_list_label_new ("panel-title");

  gtk_widget_set_margin_top (label, 12);
  gtk_widget_set_margin_bottom (label, 2);
  return label;
}

/**
 * lr_list_page_group:
 * @self: a page that is being filled
 * @title: translated, plain text
 */
void
lr_list_page_group (LrListPage *self,
                    const char *title)
{
  g_autofree char *key = g_strconcat ("group:", title, NULL);
  gboolean is_new;

  gtk_label_set_label (GTK_LABEL (take_widget (self, key, make_group, &is_new)), title);
}

static GtkWidget *
make_sentence (LrListPage *self,
               const char *key)
{
  GtkWidget *label = lr_list_label_new (NULL);

  gtk_widget_set_margin_top (label, 4);
  gtk_widget_set_margin_bottom (label, 4);
  return label;
}

/**
 * lr_list_page_say:
 * @self: a page that is being filled
 * @key: of the sentence
 * @markup: what it says
 */
void
lr_list_page_say (LrListPage *self,
                  const char *key,
                  const char *markup)
{
  g_autofree char *own = g_strconcat ("say:", key, NULL);
  gboolean is_new;

  lr_list_label_set (take_widget (self, own, make_sentence, &is_new), markup);
}

/* --- Filling -------------------------------------------------------------------------------------------------- */

static gboolean
remove_unseen_cb (gpointer key,
                  gpointer widget,
                  gpointer data)
{
  LrListPage *self = data;

  if (g_hash_table_contains (self->seen, widget))
    return FALSE;
  gtk_box_remove (GTK_BOX (self->lines), widget);
  return TRUE;
}

static void
refill (LrListPage *self)
{
  self->is_stale = FALSE;
  self->is_setting = TRUE;
  self->last = NULL;
  self->n_boxes = self->n_ticked = 0;
  g_hash_table_remove_all (self->seen);
  self->fill (self, self->document);
  g_hash_table_foreach_remove (self->known, remove_unseen_cb, self);
  self->is_setting = FALSE;
  update_count (self);
}

static gboolean
refill_cb (gpointer data)
{
  LrListPage *self = data;

  self->source = 0;
  if (self->is_stale && gtk_widget_get_mapped (GTK_WIDGET (self)) && !lr_document_has_preview (self->document))
    refill (self);
  return G_SOURCE_REMOVE;
}

/**
 * lr_list_page_refill:
 *
 * Fills it again before the next picture, if it is in sight and nothing is dragged; else when that is so.
 */
void
lr_list_page_refill (LrListPage *self)
{
  self->is_stale = TRUE;
  if (self->source == 0)
    self->source = g_idle_add_full (GTK_PRIORITY_RESIZE - 1, refill_cb, self, NULL);
}

/**
 * lr_list_page_commit:
 * @next: (transfer full) (nullable): what an edit returned
 * @what: title of the step
 * @error: of the edit; looked at only here
 */
void
lr_list_page_commit (LrListPage  *self,
                     LrPlan      *next,
                     const char  *what,
                     GError     **error)
{
  if (next != NULL)
    lr_document_commit (self->document, next, what);
  else
    lr_document_say (self->document, (*error)->message);
  lr_list_page_refill (self);
}

/**
 * lr_list_page_get_document:
 *
 * Returns: (transfer none): what it is a list of
 */
LrDocument *
lr_list_page_get_document (LrListPage *self)
{
  return self->document;
}

/**
 * lr_list_page_get_bar:
 *
 * Returns: (transfer none): a box above the lines
 */
GtkWidget *
lr_list_page_get_bar (LrListPage *self)
{
  return self->bar;
}

static void
lr_list_page_map (GtkWidget *widget)
{
  LrListPage *self = LR_LIST_PAGE (widget);

  if (self->is_stale)
    refill (self);
  GTK_WIDGET_CLASS (lr_list_page_parent_class)->map (widget);
}

static void
lr_list_page_dispose (GObject *object)
{
  LrListPage *self = LR_LIST_PAGE (object);

  g_clear_handle_id (&self->source, g_source_remove);
  self->is_setting = TRUE;
  g_clear_pointer (&self->column, gtk_widget_unparent);
  g_clear_object (&self->document);
  g_clear_object (&self->leads);
  g_clear_pointer (&self->list, g_free);
  g_clear_pointer (&self->known, g_hash_table_unref);
  g_clear_pointer (&self->seen, g_hash_table_unref);
  G_OBJECT_CLASS (lr_list_page_parent_class)->dispose (object);
}

static void
lr_list_page_class_init (LrListPageClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lr_list_page_dispose;
  GTK_WIDGET_CLASS (klass)->map = lr_list_page_map;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
lr_list_page_init (LrListPage *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new (), *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  self->known = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  self->seen = g_hash_table_new (NULL, NULL);
  self->leads = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  self->column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  self->count = lr_list_label_new ("note");
  self->untick = gtk_button_new_with_label (_("Untick all"));
  self->lines = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  gtk_label_set_wrap (GTK_LABEL (self->count), FALSE);
  gtk_widget_add_css_class (head, "list-head");
  gtk_widget_add_css_class (self->lines, "list-lines");
  gtk_widget_set_hexpand (self->bar, TRUE);
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), self->lines);
  gtk_box_append (GTK_BOX (head), self->bar);
  gtk_box_append (GTK_BOX (head), self->count);
  gtk_box_append (GTK_BOX (head), self->untick);
  gtk_box_append (GTK_BOX (self->column), head);
  gtk_box_append (GTK_BOX (self->column), scroller);
  gtk_widget_set_parent (self->column, GTK_WIDGET (self));
  g_signal_connect_object (self->untick, "clicked", G_CALLBACK (untick_cb), self, G_CONNECT_SWAPPED);
}

/**
 * lr_list_page_new:
 * @document: what it is a list of
 * @list: its word, by which ticks are kept
 * @fill: says what is in it
 *
 * Returns: (transfer floating): a page
 */
GtkWidget *
lr_list_page_new (LrDocument *document,
                  const char *list,
                  LrListFill  fill)
{
  LrListPage *self = g_object_new (LR_TYPE_LIST_PAGE, NULL);

  self->document = g_object_ref (document);
  self->list = g_strdup (list);
  self->fill = fill;
  self->is_stale = TRUE;
  g_signal_connect_object (document, "changed", G_CALLBACK (lr_list_page_refill), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "lit", G_CALLBACK (lr_list_page_refill), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}
