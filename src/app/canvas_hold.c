/* canvas_hold.c - a camera that is moved while the framing is held
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The subject keeps their size: a zoom is set to it, up to its end, and a prime is changed for the lens at hand that comes
 * nearest, which is what a shooter does who walks back with the camera. What is off is said when the camera is let go.
 */

#include "config.h"

#include "canvas_private.h"

#include "reframe.h"

/* Always against the committed plan, so that a drag there and back ends with the lens that it began with */
static LrReframe *
hold (LrCanvas   *self,
      LrPlan     *next,
      const char *id)
{
  g_autoptr (LrStudy) before = lr_study_new_trial (lr_document_get_committed (self->document));
  g_autoptr (LrStudy) moved = lr_study_new_trial (next);
  const LrCameraReading *camera = lr_study_find_camera (before, id);

  return camera != NULL ? lr_reframe_hold (moved, camera, lr_document_get_units (self->document)) : NULL;
}

LrPlan *
lr_canvas_hold_framing (LrCanvas   *self,
                        LrPlan     *next,
                        const char *id)
{
  g_autoptr (LrReframe) held = NULL;
  LrPlan *plan;

  g_clear_pointer (&self->hold_note, g_free);
  if (next == NULL || !lr_document_get_holds_framing (self->document))
    return next;

  held = hold (self, next, id);
  plan = held != NULL ? lr_reframe_apply (held, next, NULL) : NULL;
  if (plan == NULL)
    return next;

  if (!held->is_possible)
    self->hold_note = g_strdup (held->sentence);
  lr_plan_unref (next);
  return plan;
}

void
lr_canvas_hold_end (LrCanvas *self)
{
  if (self->hold_note != NULL)
    lr_document_say (self->document, self->hold_note);
  g_clear_pointer (&self->hold_note, g_free);
}
