/* document_hand.c - what is in hand: the thing, the remark, the units and what is shown on the sheet
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "document_private.h"

#include <glib/gi18n-lib.h>

/* Returns whether *field is another now */
static gboolean
take_string (char       **field,
             const char  *value)
{
  char *copy;

  if (g_strcmp0 (*field, value) == 0)
    return FALSE;

  copy = g_strdup (value);
  g_free (*field);
  *field = copy;
  return TRUE;
}

/**
 * lr_document_get_selected:
 *
 * Returns: (transfer none) (nullable): id of the thing in hand
 */
const char *
lr_document_get_selected (LrDocument *self)
{
  return self->selected;
}

/**
 * lr_document_select:
 * @id: (nullable): of an item in the set-up shown; others select nothing
 */
void
lr_document_select (LrDocument *self,
                    const char *id)
{
  if (id != NULL && lr_plan_find (lr_document_get_plan (self), id) == NULL)
    id = NULL;

  if (take_string (&self->selected, id))
    lr_document_emit (self, LR_DOCUMENT_HAND);
}

/**
 * lr_document_get_pointed:
 *
 * Returns: (transfer none) (nullable): id of the thing under the pointer
 */
const char *
lr_document_get_pointed (LrDocument *self)
{
  return self->pointed;
}

/**
 * lr_document_point_at:
 * @id: (nullable): of the thing under the pointer
 */
void
lr_document_point_at (LrDocument *self,
                      const char *id)
{
  if (take_string (&self->pointed, id))
    lr_document_emit (self, LR_DOCUMENT_HAND);
}

/**
 * lr_document_get_remark:
 *
 * Returns: (transfer none) (nullable): the remark in hand, until the next "changed"
 */
const LrRemark *
lr_document_get_remark (LrDocument *self)
{
  return self->remark_key != NULL ? lr_remarks_find (self->remarks, self->remark_key) : NULL;
}

static void
set_remark (LrDocument *self,
            const char *key)
{
  const LrRemark *remark = key != NULL ? lr_remarks_find (self->remarks, key) : NULL;

  self->is_remark_fine = remark != NULL && remark->grade == LR_GRADE_FINE;
  if (!take_string (&self->remark_key, key))
    return;

  g_clear_pointer (&self->ghost, lr_plan_unref);
  lr_document_emit (self, LR_DOCUMENT_HAND);
}

/**
 * lr_document_take_remark:
 * @key: (nullable): of a remark; %NULL: none is in hand
 */
void
lr_document_take_remark (LrDocument *self,
                         const char *key)
{
  self->is_remark_pointed = FALSE;
  g_clear_pointer (&self->kept_remark, g_free);
  set_remark (self, key);
}

/**
 * lr_document_point_at_remark:
 * @key: (nullable): of a remark under the pointer; %NULL: there is none any more
 *
 * It is in hand as long as it is pointed at; then the one that was taken before is again.
 */
void
lr_document_point_at_remark (LrDocument *self,
                             const char *key)
{
  g_autofree char *kept = NULL;

  if (key != NULL)
    {
      if (!self->is_remark_pointed)
        take_string (&self->kept_remark, self->remark_key);
      self->is_remark_pointed = TRUE;
      set_remark (self, key);
      return;
    }
  if (!self->is_remark_pointed)
    return;

  kept = g_steal_pointer (&self->kept_remark);
  lr_document_take_remark (self, kept != NULL && lr_remarks_find (self->remarks, kept) != NULL ? kept : NULL);
}

/**
 * lr_document_get_ghost:
 *
 * Returns: (transfer none) (nullable): the plan shown with the remedy of the remark in hand applied; without a remark what is offered
 */
LrPlan *
lr_document_get_ghost (LrDocument *self)
{
  const LrRemark *remark = lr_document_get_remark (self);

  if (remark == NULL || remark->remedy == NULL)
    return remark == NULL ? self->offer : NULL;

  if (self->ghost == NULL)
    self->ghost = lr_remedy_apply (remark->remedy, lr_document_get_plan (self), NULL);
  return self->ghost;
}

/**
 * lr_document_mend:
 * @key: of a remark with a remedy
 *
 * Applies the remedy as one step of the history.
 */
void
lr_document_mend (LrDocument *self,
                  const char *key)
{
  const LrRemark *remark = lr_remarks_find (self->remarks, key);
  g_autoptr (GError) error = NULL;
  g_autofree char *what = NULL;
  LrPlan *next;

  if (remark == NULL || remark->remedy == NULL)
    return;

  next = lr_remedy_apply (remark->remedy, lr_document_get_committed (self), &error);
  if (next == NULL)
    {
      lr_document_say (self, error->message);
      return;
    }

  what = g_strdup_printf (_("Mend: %s"), remark->remedy->sentence);
  lr_document_commit (self, next, what);
}

/**
 * lr_document_get_units:
 *
 * Returns: how lengths are read and written
 */
LrUnits
lr_document_get_units (LrDocument *self)
{
  return self->units;
}

/**
 * lr_document_set_units:
 * @units: how lengths are read and written; remarks are worded anew
 */
void
lr_document_set_units (LrDocument *self,
                       LrUnits     units)
{
  if (self->units == units)
    return;

  self->units = units;
  lr_document_show_plan (self);
}

/**
 * lr_document_get_shown:
 *
 * Returns: the families (LrShow) that are drawn on the sheet
 */
guint
lr_document_get_shown (LrDocument *self)
{
  return self->shown;
}

/**
 * lr_document_set_shown:
 * @shown: families (LrShow) to draw on the sheet
 */
void
lr_document_set_shown (LrDocument *self,
                       guint       shown)
{
  if (self->shown == shown)
    return;

  self->shown = shown;
  lr_document_emit (self, LR_DOCUMENT_HAND);
}

/**
 * lr_document_get_sun_minute:
 *
 * Returns: the minute of the day whose sun the sheet shows; 0: the middle of the shoot
 */
int
lr_document_get_sun_minute (LrDocument *self)
{
  return self->sun_minute;
}

/**
 * lr_document_set_sun_minute:
 * @minute: since midnight, by the clocks of the place
 */
void
lr_document_set_sun_minute (LrDocument *self,
                            int         minute)
{
  if (self->sun_minute == minute)
    return;

  self->sun_minute = minute;
  lr_document_emit (self, LR_DOCUMENT_HAND);
}

/**
 * lr_document_get_frame_lines:
 *
 * Returns: what (LrFrameLines) the viewfinders show over and around the frame
 */
guint
lr_document_get_frame_lines (LrDocument *self)
{
  return self->frame_lines;
}

/**
 * lr_document_set_frame_lines:
 * @lines: what (LrFrameLines) the viewfinders show over and around the frame
 */
void
lr_document_set_frame_lines (LrDocument *self,
                             guint       lines)
{
  if (self->frame_lines == lines)
    return;

  self->frame_lines = lines;
  lr_document_emit (self, LR_DOCUMENT_HAND);
}

/**
 * lr_document_get_holds_framing:
 *
 * Returns: whether a camera that is moved on the sheet keeps the size of its subject by its lens
 */
gboolean
lr_document_get_holds_framing (LrDocument *self)
{
  return self->holds_framing;
}

/**
 * lr_document_set_holds_framing:
 * @holds_framing: whether it does from now on
 */
void
lr_document_set_holds_framing (LrDocument *self,
                               gboolean    holds_framing)
{
  self->holds_framing = holds_framing;
}
