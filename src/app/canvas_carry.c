/* canvas_carry.c - copying things, here or into another set-up
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What somebody wears, or a camera carries, goes with them. What was copied is kept as the plan that it was in, so that it can be pasted
 * when it is gone, or in another plan.
 */

#include "config.h"

#include "canvas_private.h"

#include "plan_edit.h"

#include <glib/gi18n-lib.h>

/* Beside the thing, where it comes into the same set-up */
static const LrVec2 paste_by_m = { 0.30, -0.30 };

static LrPlan *
committed (LrCanvas *self)
{
  return lr_document_get_committed (self->document);
}

/* (transfer full): the thing and what it carries */
static GPtrArray *
with_carried (const LrSetup *setup,
              const char    *id)
{
  GPtrArray *ids = g_ptr_array_new_with_free_func (g_free);

  g_ptr_array_add (ids, g_strdup (id));
  for (guint i = 0; i < setup->items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (setup->items, i);

      if (g_strcmp0 (lr_item_carrier (item), id) == 0)
        g_ptr_array_add (ids, g_strdup (item->id));
    }
  return ids;
}

/* (transfer full): people and gear, all that is not the room's */
static GPtrArray *
whole_set (const LrSetup *setup)
{
  GPtrArray *ids = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < setup->items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (setup->items, i);

      if (!lr_item_kind_info (item->kind)->is_of_room)
        g_ptr_array_add (ids, g_strdup (item->id));
    }
  return ids;
}

static const char *
name_of_setup (const LrPlan *plan,
               const char   *id)
{
  for (guint i = 0; i < plan->setups->len; i++)
    if (g_str_equal (((const LrSetup *) plan->setups->pdata[i])->id, id))
      return ((const LrSetup *) plan->setups->pdata[i])->name;

  return id;
}

/**
 * lr_canvas_carry_clear:
 * @self: a canvas
 *
 * Forgets what was copied.
 */
void
lr_canvas_carry_clear (LrCanvas *self)
{
  g_clear_pointer (&self->carried_from, lr_plan_unref);
  g_clear_pointer (&self->carried, g_ptr_array_unref);
}

/**
 * lr_canvas_copy:
 * @self: a canvas
 *
 * Keeps what is in hand for lr_canvas_paste().
 */
void
lr_canvas_copy (LrCanvas *self)
{
  const char *id = self->document != NULL ? lr_document_get_selected (self->document) : NULL;
  g_autofree char *said = NULL;

  if (id == NULL || lr_plan_find (committed (self), id) == NULL)
    return;

  lr_canvas_carry_clear (self);
  self->carried_from = lr_plan_ref (committed (self));
  self->carried = with_carried (lr_plan_get_setup (self->carried_from), id);
  /* Translators: a thing: "Camera A" */
  said = lr_canvas_title_of (self, _("%s is copied: paste it here or in another set-up."), id);
  lr_document_say (self->document, said);
}

/**
 * lr_canvas_can_paste:
 * @self: a canvas
 *
 * Returns: whether something was copied
 */
gboolean
lr_canvas_can_paste (LrCanvas *self)
{
  return self->carried != NULL;
}

/**
 * lr_canvas_paste:
 * @self: a canvas
 *
 * Puts what was copied into the set-up that is shown, at its place in the room, or beside the thing where that is; and takes it in hand.
 */
void
lr_canvas_paste (LrCanvas *self)
{
  g_autoptr (GPtrArray) new_ids = g_ptr_array_new_with_free_func (g_free);
  GError *error = NULL;
  const LrSetup *from;
  gboolean is_here;
  LrPlan *next;

  if (self->document == NULL || self->carried == NULL)
    return;
  lr_canvas_drag_cancel (self);
  if (!lr_canvas_may_edit (self))
    return;

  from = lr_plan_get_setup (self->carried_from);
  is_here = g_str_equal (from->id, lr_plan_get_setup (committed (self))->id);
  next = lr_plan_paste (committed (self), from, (const char *const *) self->carried->pdata, self->carried->len,
                        is_here ? paste_by_m : lr_vec2 (0.0, 0.0), new_ids, &error);
  if (lr_canvas_commit (self, next, error, _("Paste"), NULL))
    lr_document_select (self->document, new_ids->pdata[0]);
}

static void
copy_to (LrCanvas   *self,
         GPtrArray  *ids,
         const char *what,
         const char *to)
{
  const char *name = name_of_setup (committed (self), to);
  GError *error = NULL;
  g_autofree char *said = NULL;
  LrPlan *next;

  /* Translators: a thing, and the name of a set-up */
  said = g_strdup_printf (_("%s: copied to “%s”."), what, name);
  next = lr_plan_copy_items (committed (self), (const char *const *) ids->pdata, ids->len, to, &error);
  if (lr_canvas_commit (self, next, error, _("Copy to another set-up"), NULL))
    lr_document_say (self->document, said);
}

static void
copy_item_to_action (GtkWidget  *widget,
                     const char *name,
                     GVariant   *parameter)
{
  LrCanvas *self = LR_CANVAS (widget);
  const char *id = self->document != NULL ? lr_document_get_selected (self->document) : NULL;
  g_autoptr (GPtrArray) ids = NULL;
  g_autofree char *what = NULL;

  lr_canvas_drag_cancel (self);
  if (id == NULL || lr_plan_find (committed (self), id) == NULL || !lr_canvas_may_edit (self))
    return;

  ids = with_carried (lr_plan_get_setup (committed (self)), id);
  what = lr_item_title (lr_plan_find (committed (self), id));
  copy_to (self, ids, what, g_variant_get_string (parameter, NULL));
}

static void
copy_set_to_action (GtkWidget  *widget,
                    const char *name,
                    GVariant   *parameter)
{
  LrCanvas *self = LR_CANVAS (widget);
  g_autoptr (GPtrArray) ids = NULL;

  if (self->document == NULL)
    return;
  lr_canvas_drag_cancel (self);
  if (!lr_canvas_may_edit (self))
    return;

  ids = whole_set (lr_plan_get_setup (committed (self)));
  if (ids->len == 0)
    {
      lr_document_say (self->document, _("There are no people and no gear in this set-up."));
      return;
    }
  copy_to (self, ids, _("People and gear"), g_variant_get_string (parameter, NULL));
}

static void
copy_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  lr_canvas_copy (LR_CANVAS (widget));
}

static void
paste_action (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  lr_canvas_paste (LR_CANVAS (widget));
}

/**
 * lr_canvas_carry_install:
 * @klass: the class
 *
 * Installs the actions that copy.
 */
void
lr_canvas_carry_install (GtkWidgetClass *klass)
{
  gtk_widget_class_install_action (klass, "canvas.copy", NULL, copy_action);
  gtk_widget_class_install_action (klass, "canvas.paste", NULL, paste_action);
  gtk_widget_class_install_action (klass, "canvas.copy-item-to", "s", copy_item_to_action);
  gtk_widget_class_install_action (klass, "canvas.copy-set-to", "s", copy_set_to_action);
}
