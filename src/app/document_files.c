/* document_files.c - a document's file: opened, saved, held against what is on disk
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "document_private.h"

#include "plan_reader.h"
#include "plan_writer.h"

#include <gio/gio.h>

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
  lr_document_light_clear (self);
  self->sun_minute = 0;
  lr_history_restart (&self->history, plan);
  if (is_saved)
    self->saved = lr_plan_ref (plan);
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
  lr_document_show_plan (self);
  lr_document_emit (self, LR_DOCUMENT_HAND);
  lr_document_emit (self, LR_DOCUMENT_HISTORY);
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
  lr_document_emit (self, LR_DOCUMENT_HISTORY);
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
  lr_document_show_plan (self);
  lr_document_emit (self, LR_DOCUMENT_HAND);
  lr_document_emit (self, LR_DOCUMENT_HISTORY);
}

/**
 * lr_document_get_path:
 *
 * Returns: (transfer none) (nullable): path of its file; %NULL for a plan without one
 */
const char *
lr_document_get_path (LrDocument *self)
{
  return self->path;
}

/**
 * lr_document_has_changes:
 *
 * Looking at another set-up is no change, though a file that is saved then opens with that one.
 *
 * Returns: whether the committed plan differs from what was opened or saved last
 */
gboolean
lr_document_has_changes (LrDocument *self)
{
  return self->saved == NULL || !lr_plan_says_the_same (self->saved, lr_document_get_committed (self));
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
