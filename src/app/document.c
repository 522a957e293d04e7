/* document.c - what a window shows: a plan, what is computed from it, and what is in hand
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is shown is a preview while there is one, else the history's current plan. Whenever the plan shown is another, study
 * and remarks are made anew before anyone is told, so that no listener ever meets numbers of another plan.
 */

#include "config.h"

#include "document.h"

#include "history.h"
#include "plan_reader.h"
#include "plan_writer.h"

#include <gio/gio.h>
#include <glib/gi18n-lib.h>

#define MERGE_WITHIN_US G_USEC_PER_SEC

struct _LrDocument
{
  GObject    parent_instance;

  LrHistory  history;
  LrPlan    *preview;  /* may be NULL */
  LrStudy   *study;
  LrRemarks *remarks;

  char      *path;     /* may be NULL */
  char      *etag;     /* of the file as read or written by us; may be NULL */
  LrPlan    *saved;    /* what the file holds; NULL: nothing saved */

  char      *selected, *pointed, *remark_key;
  LrPlan    *ghost;    /* made when asked for */
  LrUnits    units;
  guint      shown;
};

enum
{
  CHANGED,
  HAND,
  HISTORY,
  MESSAGE,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (LrDocument, lr_document, G_TYPE_OBJECT)

static void
emit (LrDocument *self,
      guint       signal)
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
study_again (LrDocument *self)
{
  g_clear_pointer (&self->ghost, lr_plan_unref);
  g_clear_pointer (&self->remarks, lr_remarks_free);
  g_clear_pointer (&self->study, lr_study_free);
  self->study = lr_study_new (lr_document_get_plan (self));
  self->remarks = lr_remarks_new (self->study, self->units);
}

/* The plan shown is another: compute, let go of what is no longer there, tell */
static void
show_plan (LrDocument *self)
{
  gboolean has_hand_changed;

  study_again (self);
  has_hand_changed = drop_missing_id (self, &self->selected);
  has_hand_changed |= drop_missing_id (self, &self->pointed);
  if (self->preview == NULL && self->remark_key != NULL
      && lr_remarks_find (self->remarks, self->remark_key) == NULL)
    {
      g_clear_pointer (&self->remark_key, g_free);
      has_hand_changed = TRUE;
    }

  emit (self, CHANGED);
  if (has_hand_changed)
    emit (self, HAND);
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
        show_plan (self);
      return;
    }

  if (!merge_into_last (self, next, merge_key))
    lr_history_push (&self->history, next, what, merge_key);
  show_plan (self);
  emit (self, HISTORY);
}

/* Entity tag of the file at @path, or NULL if there is none */
static char *
read_etag (const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GFileInfo) info = g_file_query_info (file, G_FILE_ATTRIBUTE_ETAG_VALUE, G_FILE_QUERY_INFO_NONE, NULL, NULL);

  return info != NULL ? g_strdup (g_file_info_get_etag (info)) : NULL;
}

static void
set_path (LrDocument *self,
          const char *path)
{
  g_autofree char *copy = g_strdup (path);

  g_free (self->path);
  g_free (self->etag);
  self->path = g_steal_pointer (&copy);
  self->etag = self->path != NULL ? read_etag (self->path) : NULL;
}

/* One step, @plan (transfer full), nothing in hand */
static void
start_history (LrDocument *self,
               LrPlan     *plan,
               gboolean    is_saved)
{
  g_clear_pointer (&self->preview, lr_plan_unref);
  g_clear_pointer (&self->saved, lr_plan_unref);
  g_clear_pointer (&self->selected, g_free);
  g_clear_pointer (&self->pointed, g_free);
  g_clear_pointer (&self->remark_key, g_free);
  lr_history_restart (&self->history, plan);
  if (is_saved)
    self->saved = lr_plan_ref (plan);
}

static void
lr_document_finalize (GObject *object)
{
  LrDocument *self = LR_DOCUMENT (object);

  g_clear_pointer (&self->ghost, lr_plan_unref);
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
  G_OBJECT_CLASS (lr_document_parent_class)->finalize (object);
}

static void
lr_document_class_init (LrDocumentClass *klass)
{
  GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = lr_document_finalize;

  signals[CHANGED] = g_signal_new ("changed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[HAND] = g_signal_new ("hand", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[HISTORY] = g_signal_new ("history", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[MESSAGE] = g_signal_new ("message", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
lr_document_init (LrDocument *self)
{
  LrPlan *plan = lr_plan_new_empty ();

  lr_history_init (&self->history, plan);
  self->saved = lr_plan_ref (plan);
  self->shown = LR_SHOW_SIGHT;
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
  show_plan (self);
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
  g_signal_emit (self, signals[MESSAGE], 0, sentence);
}

static void
walk_history (LrDocument *self,
              int         by)
{
  if (!lr_history_go (&self->history, by))
    return;

  g_clear_pointer (&self->preview, lr_plan_unref);
  show_plan (self);
  emit (self, HISTORY);
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

/**
 * lr_document_open:
 * @path: of a plan file
 *
 * Returns: %FALSE with @error set and the document untouched, if the file cannot be read as a plan
 */
gboolean
lr_document_open (LrDocument  *self,
                  const char  *path,
                  GError     **error)
{
  LrPlan *plan = lr_plan_read (path, error);

  if (plan == NULL)
    return FALSE;

  start_history (self, plan, TRUE);
  set_path (self, path);
  show_plan (self);
  emit (self, HAND);
  emit (self, HISTORY);
  return TRUE;
}

/**
 * lr_document_save:
 * @path: (nullable): where to; %NULL: its own path
 *
 * Writes the committed plan; a preview is not saved.
 *
 * Returns: %FALSE with @error set, if nothing was written
 */
gboolean
lr_document_save (LrDocument  *self,
                  const char  *path,
                  GError     **error)
{
  LrPlan *plan = lr_document_get_committed (self);

  if (path == NULL)
    path = self->path;
  g_return_val_if_fail (path != NULL, FALSE);

  if (!lr_plan_write (plan, path, error))
    return FALSE;

  lr_plan_ref (plan);
  g_clear_pointer (&self->saved, lr_plan_unref);
  self->saved = plan;
  set_path (self, path);
  emit (self, HISTORY);
  return TRUE;
}

/**
 * lr_document_reset:
 * @plan: (transfer full): what to show with a new history
 * @path: (nullable): its file; %NULL: untitled
 *
 * A plan without a file counts as unchanged until it is edited. One with a file is held against that file: a recovered
 * plan that differs from it has changes.
 */
void
lr_document_reset (LrDocument *self,
                   LrPlan     *plan,
                   const char *path)
{
  g_autoptr (LrPlan) on_disk = path != NULL ? lr_plan_read (path, NULL) : NULL;

  start_history (self, plan, path == NULL || (on_disk != NULL && lr_plan_equal (plan, on_disk)));
  set_path (self, path);
  show_plan (self);
  emit (self, HAND);
  emit (self, HISTORY);
}

const char *
lr_document_get_path (LrDocument *self)
{
  return self->path;
}

/**
 * lr_document_has_changes:
 *
 * Returns: whether the committed plan differs from what was opened or saved last
 */
gboolean
lr_document_has_changes (LrDocument *self)
{
  return self->saved == NULL || !lr_plan_equal (self->saved, lr_document_get_committed (self));
}

/**
 * lr_document_changed_on_disk:
 *
 * Returns: whether the file is another than the one that was read or written last; a file that is gone is not
 */
gboolean
lr_document_changed_on_disk (LrDocument *self)
{
  g_autofree char *etag = self->path != NULL ? read_etag (self->path) : NULL;

  return etag != NULL && g_strcmp0 (etag, self->etag) != 0;
}

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
    emit (self, HAND);
}

const char *
lr_document_get_pointed (LrDocument *self)
{
  return self->pointed;
}

void
lr_document_point_at (LrDocument *self,
                      const char *id)
{
  if (take_string (&self->pointed, id))
    emit (self, HAND);
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

/**
 * lr_document_take_remark:
 * @key: (nullable): of a remark; %NULL: none is in hand
 */
void
lr_document_take_remark (LrDocument *self,
                         const char *key)
{
  if (!take_string (&self->remark_key, key))
    return;

  g_clear_pointer (&self->ghost, lr_plan_unref);
  emit (self, HAND);
}

/**
 * lr_document_get_ghost:
 *
 * Returns: (transfer none) (nullable): the plan shown with the remedy of the remark in hand applied
 */
LrPlan *
lr_document_get_ghost (LrDocument *self)
{
  const LrRemark *remark = lr_document_get_remark (self);

  if (remark == NULL || remark->remedy == NULL)
    return NULL;

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
  show_plan (self);
}

guint
lr_document_get_shown (LrDocument *self)
{
  return self->shown;
}

void
lr_document_set_shown (LrDocument *self,
                       guint       shown)
{
  if (self->shown == shown)
    return;

  self->shown = shown;
  emit (self, HAND);
}
