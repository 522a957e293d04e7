/* document.c - what a window shows: a plan, what is computed from it, and what is in hand
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is shown is a preview while there is one, else the history's current plan. Whenever the plan shown is another, study
 * and remarks are made anew before anyone is told, so that no listener ever meets numbers of another plan. While a preview moves its
 * remarks are without remedies; these come when it rests for a moment or becomes a step of the history.
 */

#include "config.h"

#include "document_private.h"

#include "viewfinder.h"

#include <glib/gi18n-lib.h>

#define MERGE_WITHIN_US G_USEC_PER_SEC

static guint signals[LR_N_DOCUMENT_SIGNALS];

G_DEFINE_FINAL_TYPE (LrDocument, lr_document, G_TYPE_OBJECT)

/**
 * lr_document_emit:
 * @signal: one without an argument
 *
 * Tells everyone.
 */
void
lr_document_emit (LrDocument      *self,
                  LrDocumentSignal signal)
{
  g_signal_emit (self, signals[signal], 0);
}

/* An id is kept only while the plan shown has it */
static gboolean
drop_missing_id (LrDocument  *self,
                 char       **id)
{
  if (*id == NULL || lr_plan_find (lr_document_get_plan (self), *id) != NULL)
    return FALSE;

  g_clear_pointer (id, g_free);
  return TRUE;
}

static void
judge_again (LrDocument *self,
             gboolean    is_moving)
{
  g_clear_pointer (&self->ghost, lr_plan_unref);
  g_clear_pointer (&self->offer, lr_plan_unref);
  g_clear_pointer (&self->remarks, lr_remarks_free);
  self->remarks = is_moving ? lr_remarks_new_moving (self->study, self->levels, self->units)
                            : lr_remarks_new_lit (self->study, self->levels, self->units);
}

/* A preview that is kept is a plan that was studied already */
static void
study_again (LrDocument *self)
{
  LrPlan *plan = lr_document_get_plan (self);

  if (self->study == NULL || self->study->plan != plan)
    {
      g_clear_pointer (&self->study, lr_study_free);
      self->study = lr_study_new (plan);
    }
  lr_document_light_again (self);
  judge_again (self, self->preview != NULL && self->rest_source != 0);
}

/* What was to mend and is fine now is no longer what one looks at */
static gboolean
is_remark_over (LrDocument *self)
{
  const LrRemark *remark = lr_remarks_find (self->remarks, self->remark_key);

  return remark == NULL || (remark->grade == LR_GRADE_FINE && !self->is_remark_fine);
}

/**
 * lr_document_show_plan:
 * @self: a document
 *
 * The plan shown is another: computes, lets go of what is no longer there, tells everyone.
 */
void
lr_document_show_plan (LrDocument *self)
{
  gboolean has_hand_changed;

  study_again (self);
  has_hand_changed = drop_missing_id (self, &self->selected);
  has_hand_changed |= drop_missing_id (self, &self->pointed);
  if (self->preview == NULL && self->remark_key != NULL && is_remark_over (self))
    {
      g_clear_pointer (&self->remark_key, g_free);
      has_hand_changed = TRUE;
    }

  lr_document_emit (self, LR_DOCUMENT_CHANGED);
  if (has_hand_changed)
    lr_document_emit (self, LR_DOCUMENT_HAND);
}

/**
 * lr_document_take_levels:
 * @levels: (transfer full): of light in the plan shown
 *
 * Judges anew with them and tells everyone. A remark in hand stays, unless it is gone.
 */
void
lr_document_take_levels (LrDocument    *self,
                         LrLightLevels *levels)
{
  gboolean has_hand_changed = FALSE;

  g_clear_pointer (&self->levels, lr_light_levels_unref);
  self->levels = levels;
  judge_again (self, FALSE);
  if (self->preview == NULL && self->remark_key != NULL && is_remark_over (self))
    {
      g_clear_pointer (&self->remark_key, g_free);
      has_hand_changed = TRUE;
    }

  lr_document_emit (self, LR_DOCUMENT_LIT);
  if (has_hand_changed)
    lr_document_emit (self, LR_DOCUMENT_HAND);
}

/**
 * lr_document_rest:
 * @self: a document
 *
 * The plan shown has not changed for a moment: what would mend its remarks is looked for, if it was left out, and everyone is told.
 */
void
lr_document_rest (LrDocument *self)
{
  if (!self->remarks->is_moving)
    return;

  judge_again (self, FALSE);
  lr_document_emit (self, LR_DOCUMENT_JUDGED);
}

static gboolean
may_edit (LrDocument *self)
{
  if (!lr_document_get_committed (self)->is_read_only)
    return TRUE;

  lr_document_say (self, _("This plan was made by a newer version of Lookroom. It can be looked at and printed, but not changed."));
  return FALSE;
}

/* A step that a file holds stays as it is */
static gboolean
merge_into_last (LrDocument *self,
                 LrPlan     *next,
                 const char *merge_key)
{
  return lr_history_get_plan (&self->history) != self->saved
         && lr_history_merge (&self->history, next, merge_key, MERGE_WITHIN_US);
}

static void
commit (LrDocument *self,
        LrPlan     *next,
        const char *what,
        const char *merge_key)
{
  gboolean had_preview = self->preview != NULL;

  g_clear_pointer (&self->preview, lr_plan_unref);
  if (next == NULL || lr_plan_equal (next, lr_document_get_committed (self)) || !may_edit (self))
    {
      g_clear_pointer (&next, lr_plan_unref);
      if (had_preview)
        lr_document_show_plan (self);
      return;
    }

  if (!merge_into_last (self, next, merge_key))
    lr_history_push (&self->history, next, what, merge_key);
  lr_document_show_plan (self);
  lr_document_emit (self, LR_DOCUMENT_HISTORY);
}

static void
lr_document_finalize (GObject *object)
{
  LrDocument *self = LR_DOCUMENT (object);

  lr_document_light_clear (self);
  g_clear_pointer (&self->ghost, lr_plan_unref);
  g_clear_pointer (&self->offer, lr_plan_unref);
  g_clear_pointer (&self->planned, lr_plan_unref);
  g_clear_pointer (&self->remarks, lr_remarks_free);
  g_clear_pointer (&self->study, lr_study_free);
  g_clear_pointer (&self->preview, lr_plan_unref);
  g_clear_pointer (&self->saved, lr_plan_unref);
  lr_history_clear (&self->history);
  g_free (self->path);
  g_free (self->etag);
  g_free (self->selected);
  g_free (self->pointed);
  g_free (self->remark_key);
  g_free (self->kept_remark);
  G_OBJECT_CLASS (lr_document_parent_class)->finalize (object);
}

static void
lr_document_class_init (LrDocumentClass *klass)
{
  GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = lr_document_finalize;

  signals[LR_DOCUMENT_CHANGED] = g_signal_new ("changed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[LR_DOCUMENT_HAND] = g_signal_new ("hand", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[LR_DOCUMENT_LIT] = g_signal_new ("lit", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[LR_DOCUMENT_JUDGED] = g_signal_new ("judged", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[LR_DOCUMENT_HISTORY] = g_signal_new ("history", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[LR_DOCUMENT_MESSAGE] = g_signal_new ("message", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
lr_document_init (LrDocument *self)
{
  LrPlan *plan = lr_plan_new_empty ();

  lr_history_init (&self->history, plan);
  self->saved = lr_plan_ref (plan);
  self->shown = LR_SHOW_SIGHT;
  self->frame_lines = LR_FRAME_ALL_LINES;
  study_again (self);
}

/**
 * lr_document_new:
 *
 * Returns: (transfer full): a document that shows an empty plan, without a file
 */
LrDocument *
lr_document_new (void)
{
  return g_object_new (LR_TYPE_DOCUMENT, NULL);
}

/**
 * lr_document_get_plan:
 *
 * Returns: (transfer none): the plan shown: the preview while there is one, else the committed plan
 */
LrPlan *
lr_document_get_plan (LrDocument *self)
{
  return self->preview != NULL ? self->preview : lr_history_get_plan (&self->history);
}

/**
 * lr_document_get_study:
 *
 * Returns: (transfer none): the numbers of the plan shown, until the next "changed"
 */
LrStudy *
lr_document_get_study (LrDocument *self)
{
  return self->study;
}

/**
 * lr_document_get_remarks:
 *
 * Returns: (transfer none): the judgements on the plan shown, until the next "changed"
 */
LrRemarks *
lr_document_get_remarks (LrDocument *self)
{
  return self->remarks;
}

/**
 * lr_document_commit:
 * @next: (transfer full) (nullable): the plan that an edit returned; %NULL changes nothing
 * @what: title of the step, "Move camera B"
 *
 * Makes @next the current plan as one step of the history. A plan equal to the current one makes no step.
 */
void
lr_document_commit (LrDocument *self,
                    LrPlan     *next,
                    const char *what)
{
  commit (self, next, what, NULL);
}

/**
 * lr_document_commit_merge:
 * @next: (transfer full) (nullable): the plan that an edit returned
 * @what: title of the step
 * @merge_key: commits with the same key in a row, each under a second after the last, are one step
 */
void
lr_document_commit_merge (LrDocument *self,
                          LrPlan     *next,
                          const char *what,
                          const char *merge_key)
{
  commit (self, next, what, merge_key);
}

/**
 * lr_document_try:
 * @next: (transfer full) (nullable): the plan that an edit returned; %NULL if it was refused
 * @what: title of the step
 * @merge_key: (nullable): as above
 * @error: why it was refused; by reference, since the call that makes @next may be evaluated after the others
 *
 * Commits @next, or says why there is none.
 *
 * Returns: %FALSE if it was refused
 */
gboolean
lr_document_try (LrDocument *self,
                 LrPlan     *next,
                 const char *what,
                 const char *merge_key,
                 GError    **error)
{
  if (next == NULL)
    {
      lr_document_say (self, (*error)->message);
      return FALSE;
    }

  commit (self, next, what, merge_key);
  return TRUE;
}

/**
 * lr_document_preview:
 * @next: (transfer full) (nullable): a plan made from the committed one; %NULL changes nothing
 *
 * Shows @next without a step of the history.
 */
void
lr_document_preview (LrDocument *self,
                     LrPlan     *next)
{
  if (next == NULL || lr_document_get_committed (self)->is_read_only)
    {
      g_clear_pointer (&next, lr_plan_unref);
      return;
    }

  g_clear_pointer (&self->preview, lr_plan_unref);
  self->preview = next;
  lr_document_show_plan (self);
}

/**
 * lr_document_end_preview:
 * @keep: whether the preview becomes a step of the history
 * @what: (nullable): title of that step
 */
void
lr_document_end_preview (LrDocument *self,
                         gboolean    keep,
                         const char *what)
{
  if (self->preview == NULL)
    return;

  commit (self, keep ? lr_plan_ref (self->preview) : NULL, what, NULL);
}

/**
 * lr_document_has_preview:
 *
 * Returns: whether the plan shown is not in the history
 */
gboolean
lr_document_has_preview (LrDocument *self)
{
  return self->preview != NULL;
}

/**
 * lr_document_get_committed:
 *
 * Returns: (transfer none): the plan of the history's current step, whatever preview is shown
 */
LrPlan *
lr_document_get_committed (LrDocument *self)
{
  return lr_history_get_plan (&self->history);
}

/**
 * lr_document_say:
 * @sentence: one translated sentence for the user
 *
 * Emits "message", which the window shows as a notice.
 */
void
lr_document_say (LrDocument *self,
                 const char *sentence)
{
  g_signal_emit (self, signals[LR_DOCUMENT_MESSAGE], 0, sentence);
}

static void
walk_history (LrDocument *self,
              int         by)
{
  if (!lr_history_go (&self->history, by))
    return;

  g_clear_pointer (&self->preview, lr_plan_unref);
  lr_document_show_plan (self);
  lr_document_emit (self, LR_DOCUMENT_HISTORY);
}

/**
 * lr_document_undo:
 *
 * Takes back the last step; while there is a preview, that alone.
 */
void
lr_document_undo (LrDocument *self)
{
  if (self->preview != NULL)
    lr_document_end_preview (self, FALSE, NULL);
  else
    walk_history (self, -1);
}

/**
 * lr_document_redo:
 *
 * Does the step again that was taken back last.
 */
void
lr_document_redo (LrDocument *self)
{
  walk_history (self, 1);
}

/**
 * lr_document_get_undo_title:
 *
 * Returns: (transfer none) (nullable): what undo would take back; %NULL when there is nothing
 */
const char *
lr_document_get_undo_title (LrDocument *self)
{
  return lr_history_get_title (&self->history, -1);
}

/**
 * lr_document_get_redo_title:
 *
 * Returns: (transfer none) (nullable): what redo would do again; %NULL when there is nothing
 */
const char *
lr_document_get_redo_title (LrDocument *self)
{
  return lr_history_get_title (&self->history, 1);
}
