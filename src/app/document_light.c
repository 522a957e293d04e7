/* document_light.c - levels of light for the plan shown, what the room gives back from another thread
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What comes straight from the sources is computed at once. What the room gives back takes some tenths of a second, so it is begun
 * when the plan has rested for a moment and given up when it changes again. Until it comes it is as it was in an earlier plan, or not
 * known, and lr_light_levels_is_settled() says so.
 */

#include "config.h"

#include "document_private.h"

#define REST_MS 60

/* A window that is still to be painted needs the processor itself; should nobody say that it was, the light comes all the same */
#define STARTING_MS 2000

typedef struct
{
  GWeakRef document;
  LrPlan  *plan;
} Work;

static void
work_free (gpointer data)
{
  Work *work = data;

  g_weak_ref_clear (&work->document);
  lr_plan_unref (work->plan);
  g_free (work);
}

static void
work_in_thread (GTask        *task,
                gpointer      source G_GNUC_UNUSED,
                gpointer      data,
                GCancellable *cancellable)
{
  const Work *work = data;
  LrLightLevels *levels = lr_light_levels_new (work->plan, TRUE, cancellable);

  g_task_return_pointer (task, levels, (GDestroyNotify) lr_light_levels_unref);
}

static void
done_cb (GObject      *source G_GNUC_UNUSED,
         GAsyncResult *result,
         gpointer      data G_GNUC_UNUSED)
{
  Work *work = g_task_get_task_data (G_TASK (result));
  g_autoptr (LrDocument) self = g_weak_ref_get (&work->document);
  LrLightLevels *levels = g_task_propagate_pointer (G_TASK (result), NULL);

  if (levels == NULL)
    return;
  if (self == NULL || lr_document_get_plan (self) != work->plan)
    {
      lr_light_levels_unref (levels);
      return;
    }

  lr_document_take_levels (self, levels);
}

static gboolean
begin_cb (gpointer data)
{
  LrDocument *self = data;
  Work *work = g_new0 (Work, 1);
  g_autoptr (GTask) task = NULL;

  self->rest_source = 0;
  self->solving = g_cancellable_new ();
  g_weak_ref_init (&work->document, self);
  work->plan = lr_plan_ref (lr_document_get_plan (self));
  task = g_task_new (NULL, self->solving, done_cb, NULL);
  g_task_set_task_data (task, work, work_free);
  g_task_run_in_thread (task, work_in_thread);
  lr_document_rest (self);
  return G_SOURCE_REMOVE;
}

static void
give_up (LrDocument *self)
{
  g_clear_handle_id (&self->rest_source, g_source_remove);
  if (self->solving != NULL)
    g_cancellable_cancel (self->solving);
  g_clear_object (&self->solving);
}

/* A frame that is still to be painted goes first */
static void
wait_for_rest (LrDocument *self)
{
  g_clear_handle_id (&self->rest_source, g_source_remove);
  self->rest_source = g_timeout_add_full (G_PRIORITY_DEFAULT_IDLE, self->is_starting ? STARTING_MS : REST_MS, begin_cb, self, NULL);
}

/* A preview that is kept stays the plan that is waited for or worked on */
static gboolean
is_lit_already (LrDocument *self)
{
  return self->levels != NULL && lr_light_levels_get_plan (self->levels) == lr_document_get_plan (self)
         && (self->rest_source != 0 || self->solving != NULL || lr_light_levels_is_settled (self->levels));
}

/**
 * lr_document_light_again:
 * @self: a document that shows another plan
 */
void
lr_document_light_again (LrDocument *self)
{
  LrLightLevels *straight;

  if (is_lit_already (self))
    return;

  give_up (self);
  straight = lr_light_levels_new_straight (lr_document_get_plan (self), self->levels);
  g_clear_pointer (&self->levels, lr_light_levels_unref);
  self->levels = straight;
  wait_for_rest (self);
}

/**
 * lr_document_set_starting:
 * @is_starting: whether a window is still to be painted for the first time, which the room's light waits for
 */
void
lr_document_set_starting (LrDocument *self,
                          gboolean    is_starting)
{
  if (self->is_starting == is_starting)
    return;

  self->is_starting = is_starting;
  if (self->rest_source != 0)
    wait_for_rest (self);
}

/**
 * lr_document_light_clear:
 * @self: a document that goes
 */
void
lr_document_light_clear (LrDocument *self)
{
  give_up (self);
  g_clear_pointer (&self->levels, lr_light_levels_unref);
}

/**
 * lr_document_get_levels:
 *
 * Returns: (transfer none): levels of light of the plan shown, until the next "changed" or "lit"
 */
LrLightLevels *
lr_document_get_levels (LrDocument *self)
{
  return self->levels;
}

/**
 * lr_document_has_current_levels:
 *
 * Returns: whether all of them is of the plan shown
 */
gboolean
lr_document_has_current_levels (LrDocument *self)
{
  return self->levels != NULL && lr_light_levels_is_settled (self->levels)
         && lr_light_levels_get_plan (self->levels) == lr_document_get_plan (self);
}
