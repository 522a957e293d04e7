/* canvas_tools.c - the mode that the sheet is in, and how it commits what was done
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "canvas_private.h"

#include <glib/gi18n-lib.h>

/**
 * lr_canvas_set_hint:
 * @self: a canvas
 * @hint: (nullable): what can be done now; %NULL: nothing is said
 *
 * Says at the foot of the sheet what can be done now.
 */
void
lr_canvas_set_hint (LrCanvas   *self,
                    const char *hint)
{
  gtk_label_set_text (GTK_LABEL (self->hint), hint != NULL ? hint : "");
  gtk_widget_set_visible (self->hint, hint != NULL);
}

/**
 * lr_canvas_set_tool:
 * @self: a canvas
 * @tool: (nullable): what the pointer does next
 * @data: of the tool
 *
 * The tool before is left.
 */
void
lr_canvas_set_tool (LrCanvas           *self,
                    const LrCanvasTool *tool,
                    gpointer            data)
{
  const LrCanvasTool *before = self->tool;

  self->tool = NULL;
  if (before != NULL)
    before->leave (self);
  self->tool = tool;
  self->tool_data = data;

  if (self->ways_in != NULL)
    lr_canvas_update_ways_in (self);
  if (self->hint != NULL)
    gtk_widget_queue_draw (GTK_WIDGET (self));
}

/**
 * lr_canvas_leave_tool:
 * @self: the sheet
 *
 * Back to the plain hand; what the tool had not finished is dropped.
 */
void
lr_canvas_leave_tool (LrCanvas *self)
{
  g_return_if_fail (LR_IS_CANVAS (self));

  if (self->tool == NULL)
    return;
  lr_canvas_set_tool (self, NULL, NULL);
  lr_canvas_set_hint (self, NULL);
}

/**
 * lr_canvas_has_tool:
 * @self: the sheet
 *
 * Returns: whether a room is being drawn or a thing put on a wall
 */
gboolean
lr_canvas_has_tool (LrCanvas *self)
{
  g_return_val_if_fail (LR_IS_CANVAS (self), FALSE);

  return self->tool != NULL;
}

/**
 * lr_canvas_may_edit:
 * @self: a canvas
 *
 * Returns: %FALSE, and says so, for a plan that can only be looked at
 */
gboolean
lr_canvas_may_edit (LrCanvas *self)
{
  if (self->document == NULL)
    return FALSE;
  if (!lr_document_get_plan (self->document)->is_read_only)
    return TRUE;

  lr_document_say (self->document, _("This plan can only be looked at: it was made by a newer version of Lookroom."));
  return FALSE;
}

/**
 * lr_canvas_commit:
 * @self: a canvas
 * @next: (transfer full) (nullable): the plan that an edit returned
 * @error: (transfer full) (nullable): why there is none
 * @what: title of the step
 * @merge_key: (nullable): makes one step of several in a row
 *
 * Makes a step of the history, or says the error.
 *
 * Returns: whether there was a plan
 */
gboolean
lr_canvas_commit (LrCanvas   *self,
                  LrPlan     *next,
                  GError     *error,
                  const char *what,
                  const char *merge_key)
{
  if (next == NULL)
    {
      lr_document_say (self->document, error != NULL ? error->message : _("That cannot be done."));
      g_clear_error (&error);
      return FALSE;
    }

  if (merge_key != NULL)
    lr_document_commit_merge (self->document, next, what, merge_key);
  else
    lr_document_commit (self->document, next, what);
  return TRUE;
}

/**
 * lr_canvas_title_of:
 * @self: a canvas
 * @format: a translated title with one %s
 * @id: of a thing
 *
 * Returns: (transfer full): "Move camera B"
 */
char *
lr_canvas_title_of (LrCanvas   *self,
                    const char *format,
                    const char *id)
{
  const LrItem *item = lr_plan_find (lr_document_get_plan (self->document), id);
  g_autofree char *title = item != NULL ? lr_item_title (item) : g_strdup ("");

  return g_strdup_printf (format, title);
}
