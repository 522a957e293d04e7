/* document_found.c - the set-up as planned beside the one as found, and what is offered on the sheet
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "document_private.h"

#include "plan_edit.h"

/**
 * lr_document_get_planned:
 *
 * The same plan as long as the set-up as planned does not change, whatever is done to the one shown.
 *
 * Returns: (transfer none) (nullable): a plan that shows the set-up as planned, of which the one shown is as found
 */
LrPlan *
lr_document_get_planned (LrDocument *self)
{
  const LrPlan *plan = lr_document_get_plan (self);
  const LrSetup *planned = lr_plan_planned (plan);

  if (planned == NULL || (self->planned != NULL && lr_plan_get_setup (self->planned) != planned))
    g_clear_pointer (&self->planned, lr_plan_unref);
  if (planned != NULL && self->planned == NULL)
    self->planned = lr_plan_show_setup (plan, planned->id, NULL);

  return self->planned;
}

/**
 * lr_document_get_shows_planned:
 *
 * Returns: whether the sheet shows where things were planned
 */
gboolean
lr_document_get_shows_planned (LrDocument *self)
{
  return !self->hides_planned;
}

/**
 * lr_document_set_shows_planned:
 * @shows_planned: whether the sheet shows where things were planned
 */
void
lr_document_set_shows_planned (LrDocument *self,
                               gboolean    shows_planned)
{
  if (self->hides_planned == !shows_planned)
    return;

  self->hides_planned = !shows_planned;
  lr_document_emit (self, LR_DOCUMENT_HAND);
}

/**
 * lr_document_offer:
 * @offer: (transfer full) (nullable): a plan; %NULL: nothing is offered
 *
 * Shows as a ghost what an edit would do, until the plan shown is another.
 */
void
lr_document_offer (LrDocument *self,
                   LrPlan     *offer)
{
  if (self->offer == NULL && offer == NULL)
    return;

  g_clear_pointer (&self->offer, lr_plan_unref);
  self->offer = offer;
  lr_document_emit (self, LR_DOCUMENT_HAND);
}
