/* lists_dialog.c - the lists of a job, in one window beside the sheet
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A page is made when it is first looked at. The window does not block the other: what is ticked or pointed at here is
 * seen there at once, and the other way round.
 */

#include "config.h"

#include "lists_dialog.h"

#include "app.h"
#include "beside.h"

#include <glib/gi18n-lib.h>

#define LAST_PAGE "lr-lists-page" /* of the document */

typedef struct
{
  const char *name;   /* in the action's target */
  const char *title;  /* to be translated */
  GtkWidget *(*make) (LrDocument *document);
} Page;

static const Page pages[] = {
  { "run", N_("Run sheet"), lr_lists_run_new },
  { "checks", N_("Pre-roll checks"), lr_lists_checks_new },
  { "questions", N_("Questions"), lr_lists_questions_new },
  { "tape", N_("Tape positions"), lr_lists_tape_new },
  { "packing", N_("Packing"), lr_lists_packing_new },
  { "kit", N_("The kit"), lr_lists_kit_new },
};

struct _LrListsDialog
{
  GtkWindow   parent_instance;

  LrDocument *document;
  GtkWidget  *stack;
};

G_DEFINE_FINAL_TYPE (LrListsDialog, lr_lists_dialog, GTK_TYPE_WINDOW)

static void
make_shown (LrListsDialog *self)
{
  const char *name = gtk_stack_get_visible_child_name (GTK_STACK (self->stack));
  GtkWidget *shown = gtk_stack_get_visible_child (GTK_STACK (self->stack));

  for (gsize i = 0; name != NULL && i < G_N_ELEMENTS (pages); i++)
    if (g_str_equal (pages[i].name, name))
      {
        if (gtk_widget_get_first_child (shown) == NULL)
          {
            GtkWidget *page = pages[i].make (self->document);

            gtk_widget_set_hexpand (page, TRUE);
            gtk_widget_set_vexpand (page, TRUE);
            gtk_box_append (GTK_BOX (shown), page);
          }
        g_object_set_data (G_OBJECT (self->document), LAST_PAGE, (gpointer) pages[i].name);
      }
}

static void
fill_header (GtkWidget *header)
{
  static const struct { const char *icon, *action, *title; } buttons[] = {
    { "edit-undo-symbolic", "win.undo", N_("Undo") },
    { "edit-redo-symbolic", "win.redo", N_("Redo") },
  };
  GtkWidget *page = gtk_button_new_with_mnemonic (_("_Page…"));

  for (gsize i = 0; i < G_N_ELEMENTS (buttons); i++)
    {
      GtkWidget *button = gtk_button_new_from_icon_name (buttons[i].icon);

      gtk_actionable_set_action_name (GTK_ACTIONABLE (button), buttons[i].action);
      gtk_widget_set_tooltip_text (button, _(buttons[i].title));
      gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, _(buttons[i].title), -1);
      gtk_header_bar_pack_start (GTK_HEADER_BAR (header), button);
    }
  gtk_actionable_set_action_name (GTK_ACTIONABLE (page), "win.page");
  gtk_widget_set_tooltip_text (page, _("The plan on paper, with the lists that go along"));
  gtk_header_bar_pack_end (GTK_HEADER_BAR (header), page);
}

static void
lr_lists_dialog_dispose (GObject *object)
{
  LrListsDialog *self = LR_LISTS_DIALOG (object);

  if (self->document != NULL)
    lr_document_point_at (self->document, NULL);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (lr_lists_dialog_parent_class)->dispose (object);
}

/* What is still being typed is taken first */
static gboolean
lr_lists_dialog_close_request (GtkWindow *window)
{
  gtk_window_set_focus (window, NULL);
  return GTK_WINDOW_CLASS (lr_lists_dialog_parent_class)->close_request (window);
}

/* What is still being typed is taken too when one goes over to the sheet, and stays in hand */
static void
active_cb (GtkWindow *window)
{
  if (!gtk_window_is_active (window))
    lr_beside_take_typed (window);
}

static void
lr_lists_dialog_class_init (LrListsDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lr_lists_dialog_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = lr_lists_dialog_close_request;
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
lr_lists_dialog_init (LrListsDialog *self)
{
  GtkWidget *header = gtk_header_bar_new (), *columns = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWidget *sidebar = gtk_stack_sidebar_new ();

  self->stack = gtk_stack_new ();
  for (gsize i = 0; i < G_N_ELEMENTS (pages); i++)
    gtk_stack_add_titled (GTK_STACK (self->stack), gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), pages[i].name, _(pages[i].title));
  gtk_stack_sidebar_set_stack (GTK_STACK_SIDEBAR (sidebar), GTK_STACK (self->stack));
  gtk_widget_set_hexpand (self->stack, TRUE);
  gtk_box_append (GTK_BOX (columns), sidebar);
  gtk_box_append (GTK_BOX (columns), self->stack);
  fill_header (header);
  g_signal_connect (self, "notify::is-active", G_CALLBACK (active_cb), NULL);
  gtk_window_set_titlebar (GTK_WINDOW (self), header);
  gtk_window_set_child (GTK_WINDOW (self), columns);
}

static LrListsDialog *
find_dialog (LrDocument *document)
{
  GListModel *toplevels = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (toplevels); i++)
    {
      g_autoptr (GtkWidget) toplevel = g_list_model_get_item (toplevels, i);

      if (LR_IS_LISTS_DIALOG (toplevel) && LR_LISTS_DIALOG (toplevel)->document == document)
        return LR_LISTS_DIALOG (toplevel);
    }
  return NULL;
}

static LrListsDialog *
make_dialog (GtkWindow  *parent,
             LrDocument *document)
{
  LrListsDialog *self = g_object_new (LR_TYPE_LISTS_DIALOG, "transient-for", parent, "destroy-with-parent", TRUE,
                                      "default-width", 860, "default-height", 720, NULL);

  self->document = g_object_ref (document);
  lr_beside_bind (GTK_WINDOW (self), parent, document, _("Lists"));
  g_signal_connect_swapped (self->stack, "notify::visible-child", G_CALLBACK (make_shown), self);
  return self;
}

/**
 * lr_lists_dialog_show:
 * @parent: (nullable): the window that it belongs to
 * @document: whose lists
 * @page: name of one; "" or one that is not there: the last that was looked at
 *
 * Returns: (transfer none): the dialog; GTK holds it until it is closed
 */
GtkWidget *
lr_lists_dialog_show (GtkWindow  *parent,
                      LrDocument *document,
                      const char *page)
{
  LrListsDialog *self = find_dialog (document);
  const char *last = g_object_get_data (G_OBJECT (document), LAST_PAGE);

  if (self == NULL)
    self = make_dialog (parent, document);
  if (gtk_stack_get_child_by_name (GTK_STACK (self->stack), page) == NULL)
    page = last != NULL ? last : pages[0].name;
  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), page);
  make_shown (self);
  gtk_window_present (GTK_WINDOW (self));
  return GTK_WIDGET (self);
}
