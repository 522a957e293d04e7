/* remark_line.c - the widgets that show one remark in the list
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A badge, the sentence in as many lines as it needs, and the button that mends. Bound to one row after another.
 */

#include "config.h"

#include "remark_line.h"

#include "badge.h"
#include "hint.h"
#include "line.h"

#include <glib/gi18n-lib.h>

#define LEAST_PX 32    /* of a remark in one line */
#define MOST_LINES 8

struct _LrRemarkLine
{
  LrDocument  *document; /* not owned: the list's panel holds it */
  LrRemarkRow *row;      /* bound to it; NULL: none */
  gulong       handler;
  gboolean     watches_focus;
  gboolean     is_held;  /* what lies under the pointer has just come there */

  GtkWidget   *box, *badge, *label, *mend;
};

static void
update_mend (LrRemarkLine *self)
{
  gtk_widget_set_sensitive (self->mend, self->row != NULL && !lr_remark_row_is_waiting (self->row) && !self->is_held);
}

static void
mend_cb (LrRemarkLine *self)
{
  g_autofree char *key = self->row != NULL ? g_strdup (lr_remark_row_get_key (self->row)) : NULL;

  if (key != NULL)
    lr_document_mend (self->document, key);
}

/* Pointing at a line lights up what it is about, until the pointer leaves the list */
static void
enter_cb (LrRemarkLine *self)
{
  if (self->row != NULL && self->document != NULL)
    lr_document_point_at_remark (self->document, lr_remark_row_get_key (self->row));
}

/* A click on a line, or coming to it by keyboard, takes it in hand */
static void
focus_cb (LrRemarkLine *self)
{
  if (self->row != NULL && self->document != NULL)
    lr_document_take_remark (self->document, lr_remark_row_get_key (self->row));
}

static void
show (LrRemarkLine *self)
{
  const char *remedy = lr_remark_row_get_remedy (self->row), *source = lr_remark_row_get_source (self->row);
  LrGrade grade = lr_remark_row_get_grade (self->row);
  g_autofree char *spoken = g_strdup_printf ("%s: %s", lr_grade_title (grade), lr_remark_row_get_text (self->row));
  g_autofree char *origin = source[0] != '\0' ? g_strdup_printf (_("The limit’s source: %s"), source) : NULL;

  lr_badge_show_grade (LR_BADGE (self->badge), grade);
  lr_line_set_markup (LR_LINE (self->label), lr_remark_row_get_markup (self->row));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->label), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  /* over the badge alone: a tooltip of the whole line would lie over the next one and its button */
  lr_hint_set (self->badge, origin);
  gtk_widget_set_visible (self->mend, remedy != NULL);
  update_mend (self);
  if (remedy != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (self->mend), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, remedy, -1);
}

/* The focus goes to the row that holds the line, or to its button */
static void
watch_focus (LrRemarkLine *self,
             GtkWidget    *row)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();

  self->watches_focus = TRUE;
  g_signal_connect_swapped (focus, "enter", G_CALLBACK (focus_cb), self);
  gtk_widget_add_controller (row, focus);
}

/**
 * lr_remark_line_new:
 *
 * Returns: (transfer full): a line that shows nothing yet
 */
LrRemarkLine *
lr_remark_line_new (void)
{
  LrRemarkLine *self = g_new0 (LrRemarkLine, 1);
  GtkEventController *motion = gtk_event_controller_motion_new ();

  self->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  self->badge = lr_badge_new ();
  self->label = g_object_new (LR_TYPE_LINE, "lines", MOST_LINES, "fits", TRUE, "width-chars", 20, NULL);
  gtk_widget_set_hexpand (self->label, TRUE);
  gtk_widget_set_valign (self->label, GTK_ALIGN_CENTER);
  self->mend = gtk_button_new_with_mnemonic (_("Mend"));
  gtk_widget_set_valign (self->mend, GTK_ALIGN_CENTER);
  g_signal_connect_swapped (self->mend, "clicked", G_CALLBACK (mend_cb), self);
  g_signal_connect_swapped (motion, "enter", G_CALLBACK (enter_cb), self);

  gtk_widget_set_size_request (self->box, -1, LEAST_PX);
  gtk_box_append (GTK_BOX (self->box), self->badge);
  gtk_box_append (GTK_BOX (self->box), self->label);
  gtk_box_append (GTK_BOX (self->box), self->mend);
  gtk_widget_add_controller (self->box, motion);
  return self;
}

/**
 * lr_remark_line_free:
 * @self: (transfer full): a line whose widgets go as well
 */
void
lr_remark_line_free (LrRemarkLine *self)
{
  g_free (self);
}

/**
 * lr_remark_line_get_widget:
 *
 * Returns: (transfer none): what holds its widgets, to be put in the list
 */
GtkWidget *
lr_remark_line_get_widget (LrRemarkLine *self)
{
  return self->box;
}

/**
 * lr_remark_line_bind:
 * @document: whose remark it is; outlives the line
 * @row: what it shows, and follows, until lr_remark_line_unbind(); its widget is in the list by now
 */
void
lr_remark_line_bind (LrRemarkLine *self,
                     LrDocument   *document,
                     LrRemarkRow  *row)
{
  if (!self->watches_focus)
    watch_focus (self, gtk_widget_get_parent (self->box));
  self->document = document;
  self->row = row;
  self->handler = g_signal_connect_swapped (row, "changed", G_CALLBACK (show), self);
  show (self);
}

/**
 * lr_remark_line_unbind:
 *
 * Follows nothing any more.
 */
void
lr_remark_line_unbind (LrRemarkLine *self)
{
  g_clear_signal_handler (&self->handler, self->row);
  self->row = NULL;
}

/**
 * lr_remark_line_hold:
 * @is_held: whether its button cannot be pressed for now
 */
void
lr_remark_line_hold (LrRemarkLine *self,
                     gboolean      is_held)
{
  self->is_held = is_held;
  update_mend (self);
}
