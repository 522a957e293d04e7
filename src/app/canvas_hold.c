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

static void
keep_plan (LrPlan **place,
           LrPlan  *plan)
{
  LrPlan *old = *place;

  *place = plan != NULL ? lr_plan_ref (plan) : NULL;
  g_clear_pointer (&old, lr_plan_unref);
}

/* What is held is what the committed plan shows, so that a drag there and back ends with the lens that it began with; but where
 * that plan is the outcome of the move before, it is what was held then: with primes the size would drift away in many small
 * moves */
static void
find_held (LrCanvas   *self,
           const char *id)
{
  LrPlan *committed = lr_document_get_committed (self->document);

  if (g_strcmp0 (self->held_camera, id) != 0 || (committed != self->held_from && committed != self->held_to))
    {
      g_autoptr (LrStudy) study = lr_study_new_trial (committed);
      const LrCameraReading *camera = lr_study_find_camera (study, id);

      self->held_m = camera != NULL ? lr_reframe_held_m (camera) : (double) NAN;
      g_free (self->held_camera);
      self->held_camera = g_strdup (id);
    }
  keep_plan (&self->held_from, committed);
}

static gboolean
is_camera (const LrPlan *plan,
           const char   *id)
{
  const LrItem *item = lr_plan_find (plan, id);

  return item != NULL && item->kind == LR_ITEM_CAMERA;
}

static LrReframe *
hold (LrCanvas   *self,
      LrPlan     *next,
      const char *id)
{
  g_autoptr (LrStudy) moved = lr_study_new_trial (next);

  find_held (self, id);
  return lr_reframe_hold (moved, id, self->held_m, lr_document_get_units (self->document));
}

/**
 * lr_canvas_hold_framing:
 * @self: a canvas
 * @next: (transfer full) (nullable): a plan in which a thing stands elsewhere
 * @id: the thing
 *
 * Returns: (transfer full) (nullable): @next, and if framing is held and the thing is a camera, with the focal length that keeps
 *   its subject's size
 */
LrPlan *
lr_canvas_hold_framing (LrCanvas   *self,
                        LrPlan     *next,
                        const char *id)
{
  g_autoptr (LrReframe) held = NULL;
  LrPlan *plan;

  g_clear_pointer (&self->hold_note, g_free);
  if (!lr_document_get_holds_framing (self->document))
    {
      lr_canvas_forget_held (self);
      return next;
    }
  if (next == NULL || !is_camera (next, id))
    return next;

  held = hold (self, next, id);
  plan = held != NULL ? lr_reframe_apply (held, next, NULL) : NULL;
  if (plan == NULL)
    return next;

  keep_plan (&self->held_to, plan);
  if (!held->is_possible)
    self->hold_note = g_strdup (held->sentence);
  lr_plan_unref (next);
  return plan;
}

/**
 * lr_canvas_forget_held:
 * @self: a canvas
 */
void
lr_canvas_forget_held (LrCanvas *self)
{
  keep_plan (&self->held_from, NULL);
  keep_plan (&self->held_to, NULL);
  g_clear_pointer (&self->held_camera, g_free);
  g_clear_pointer (&self->hold_note, g_free);
}

/**
 * lr_canvas_hold_end:
 * @self: a canvas on which a move is over
 *
 * Says what the lens could not hold.
 */
void
lr_canvas_hold_end (LrCanvas *self)
{
  if (self->hold_note != NULL)
    lr_document_say (self->document, self->hold_note);
  g_clear_pointer (&self->hold_note, g_free);
}
