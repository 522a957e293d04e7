/* frame_answers.c - does what a choice of the popover asks for, or says why not
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "frame_private.h"

#include <glib/gi18n-lib.h>

/**
 * lr_frame_get_camera:
 *
 * Returns: (transfer none) (nullable): the camera that is framed
 */
const LrCameraReading *
lr_frame_get_camera (LrFramePopover *self)
{
  return lr_study_find_camera (lr_document_get_study (self->document), self->camera);
}

/**
 * lr_frame_offer:
 * @instead: (transfer full) (nullable): what the button does from now on; %NULL: nothing
 */
void
lr_frame_offer (LrFramePopover *self,
                LrReframe      *instead)
{
  g_clear_pointer (&self->offered, lr_reframe_free);
  self->offered = instead;
  gtk_stack_set_visible_child (GTK_STACK (self->offer), instead != NULL ? self->instead : self->no_offer);
  if (instead != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (self->instead), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, instead->sentence, -1);
}

/**
 * lr_frame_say:
 * @sentence: (nullable): the answer; %NULL: nothing was asked yet
 */
void
lr_frame_say (LrFramePopover *self,
              const char     *sentence)
{
  gtk_label_set_label (GTK_LABEL (self->sentence),
                       sentence != NULL ? sentence : _("What is chosen is done at once, and can be undone."));
}

static char *
step_title (LrFramePopover *self)
{
  const LrCameraReading *camera = lr_frame_get_camera (self);
  g_autofree char *title = camera != NULL ? lr_item_title (camera->item) : g_strdup ("");

  /* Translators: a step of the history: "Frame Camera B" */
  return g_strdup_printf (_("Frame %s"), title);
}

/**
 * lr_frame_do:
 * @reframe: (transfer full): an edit
 *
 * Does it, or says why not and offers what comes nearest.
 */
void
lr_frame_do (LrFramePopover *self,
             LrReframe      *reframe)
{
  g_autofree char *sentence = g_strdup (reframe->sentence), *title = step_title (self);
  g_autoptr (LrReframe) owned = reframe;
  GError *error = NULL;
  LrPlan *next;

  if (lr_document_get_plan (self->document)->is_read_only)
    {
      lr_frame_say (self, _("This plan can only be looked at: it was made by a newer version of Lookroom."));
      return;
    }

  lr_frame_offer (self, reframe->is_possible ? NULL : g_steal_pointer (&reframe->instead));
  if (reframe->is_possible && !reframe->is_as_now)
    {
      next = lr_reframe_apply (reframe, lr_document_get_committed (self->document), &error);
      if (next != NULL)
        lr_document_commit (self->document, next, title);
      else
        {
          g_free (sentence);
          sentence = g_strdup (error->message);
          g_clear_error (&error);
        }
    }
  lr_frame_say (self, sentence);
}

/**
 * lr_frame_do_instead:
 *
 * Does what is offered in place of what could not be done.
 */
void
lr_frame_do_instead (LrFramePopover *self)
{
  if (self->offered != NULL)
    lr_frame_do (self, g_steal_pointer (&self->offered));
}
