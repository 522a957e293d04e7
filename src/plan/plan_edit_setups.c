/* plan_edit_setups.c - showing, copying, naming, moving and removing set-ups
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_edit_private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* Index of the set-up with that id or, if there is none, with that name; the number of set-ups if there is neither */
static guint
find_setup (const LrPlan *plan,
            const char   *id_or_name)
{
  for (guint i = 0; i < plan->setups->len; i++)
    if (strcmp (((const LrSetup *) plan->setups->pdata[i])->id, id_or_name) == 0)
      return i;
  for (guint i = 0; i < plan->setups->len; i++)
    if (strcmp (((const LrSetup *) plan->setups->pdata[i])->name, id_or_name) == 0)
      return i;

  return plan->setups->len;
}

static gboolean
check_name (const LrPlan  *plan,
            const char    *name,
            GError       **error)
{
  if (!lr_edit_check_text (_("Name"), name, error))
    return FALSE;
  if (*name == '\0')
    {
      g_set_error_literal (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED, _("A set-up needs a name."));
      return FALSE;
    }
  if (find_setup (plan, name) < plan->setups->len)
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED, _("There is a set-up “%s” already."), name);
      return FALSE;
    }

  return TRUE;
}

/**
 * lr_plan_show_setup:
 * @plan: a plan; it may be one that can only be read
 * @id_or_name: which set-up; an id goes before a name
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan, which shows that set-up
 */
LrPlan *
lr_plan_show_setup (const LrPlan  *plan,
                    const char    *id_or_name,
                    GError       **error)
{
  guint index = find_setup (plan, id_or_name);
  LrPlan *next;

  if (index == plan->setups->len)
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("There is no set-up “%s”."), id_or_name);
      return NULL;
    }

  next = lr_plan_copy (plan);
  next->shown = index;

  return next;
}

static char *
dup_free_setup_id (const LrPlan *plan)
{
  for (guint i = 1;; i++)
    {
      char *id = g_strdup_printf ("setup-%u", i);

      if (find_setup (plan, id) == plan->setups->len)
        return id;
      g_free (id);
    }
}

/* Puts @setup (transfer full) behind the shown one and shows it */
static void
insert_setup (LrPlan  *plan,
              LrSetup *setup)
{
  plan->shown++;
  g_ptr_array_insert (plan->setups, (int) plan->shown, setup);
}

/**
 * lr_plan_copy_setup:
 * @plan: a plan
 * @name: of the copy; no set-up has it yet
 * @error: return location
 *
 * The copy of the shown set-up stands behind it and is shown. It shares everything in it until it is changed.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_copy_setup (const LrPlan  *plan,
                    const char    *name,
                    GError       **error)
{
  g_autoptr (LrPlan) next = lr_edit_begin (plan, NULL, error);
  LrSetup *copy;

  if (next == NULL || !check_name (plan, name, error))
    return NULL;

  copy = lr_setup_copy (lr_plan_get_setup (plan));
  g_free (copy->id);
  copy->id = dup_free_setup_id (plan);
  g_free (copy->name);
  copy->name = g_strdup (name);
  insert_setup (next, copy);

  return g_steal_pointer (&next);
}

/**
 * lr_plan_copy_found:
 * @plan: a plan
 * @name: of the copy; no set-up has it yet
 * @error: return location
 *
 * As lr_plan_copy_setup(); the copy says that it is as found of the one that was shown.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_copy_found (const LrPlan  *plan,
                    const char    *name,
                    GError       **error)
{
  LrPlan *next = lr_plan_copy_setup (plan, name, error);

  if (next != NULL)
    {
      /* Fresh: the copy was made a moment ago */
      LrSetup *copy = next->setups->pdata[next->shown];

      g_free (copy->found_of);
      copy->found_of = g_strdup (lr_plan_get_setup (plan)->id);
    }

  return next;
}

/**
 * lr_plan_new_setup:
 * @plan: a plan
 * @name: of the new set-up; no set-up has it yet
 * @error: return location
 *
 * A set-up without a room and without anything in it stands behind the shown one and is shown.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_new_setup (const LrPlan  *plan,
                   const char    *name,
                   GError       **error)
{
  g_autoptr (LrPlan) next = lr_edit_begin (plan, NULL, error);
  g_autofree char *id = NULL;

  if (next == NULL || !check_name (plan, name, error))
    return NULL;

  id = dup_free_setup_id (plan);
  insert_setup (next, lr_setup_new (id, name));

  return g_steal_pointer (&next);
}

/**
 * lr_plan_rename_setup:
 * @plan: a plan
 * @name: what the shown set-up should be called; no other has it
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_rename_setup (const LrPlan  *plan,
                      const char    *name,
                      GError       **error)
{
  LrSetup *setup;
  g_autoptr (LrPlan) next = lr_edit_begin (plan, &setup, error);

  if (next == NULL)
    return NULL;
  if (strcmp (setup->name, name) != 0)
    {
      if (!check_name (plan, name, error))
        return NULL;
      g_free (setup->name);
      setup->name = g_strdup (name);
    }

  return g_steal_pointer (&next);
}

/**
 * lr_plan_set_setup:
 * @plan: a plan
 * @key: a number of a set-up: "wall-level-pct"
 * @value: in inside units
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan, with what is wanted in its shown set-up
 */
LrPlan *
lr_plan_set_setup (const LrPlan  *plan,
                   const char    *key,
                   double         value,
                   GError       **error)
{
  LrSetup *setup;
  g_autoptr (LrPlan) next = lr_edit_begin (plan, &setup, error);
  const LrProp *prop = lr_prop_table_find (lr_setup_table (), key);

  if (next == NULL)
    return NULL;
  if (prop == NULL)
    {
      g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_NOT_FOUND, _("A set-up has no number “%s”."), key);
      return NULL;
    }
  if (!lr_edit_check_number (prop, value, error))
    return NULL;
  lr_prop_put_number (prop, setup, value);

  return g_steal_pointer (&next);
}

static void
forget_planned (LrPlan     *plan,
                const char *id)
{
  for (guint i = 0; i < plan->setups->len; i++)
    {
      LrSetup *setup = plan->setups->pdata[i], *copy;

      if (strcmp (setup->found_of, id) != 0)
        continue;
      copy = lr_setup_copy (setup);
      *copy->found_of = '\0';
      lr_setup_unref (setup);
      plan->setups->pdata[i] = copy;
    }
}

/**
 * lr_plan_remove_setup:
 * @plan: a plan
 * @error: return location
 *
 * Removes the shown set-up; the one before it, or else the first, is shown. The last one stays. What was as found of it is
 * a set-up like others.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_remove_setup (const LrPlan  *plan,
                      GError       **error)
{
  g_autoptr (LrPlan) next = lr_edit_begin (plan, NULL, error);

  if (next == NULL)
    return NULL;
  if (next->setups->len == 1)
    {
      g_set_error_literal (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED, _("A plan needs at least one set-up."));
      return NULL;
    }

  forget_planned (next, lr_plan_get_setup (next)->id);
  g_ptr_array_remove_index (next->setups, next->shown);
  if (next->shown > 0)
    next->shown--;

  return g_steal_pointer (&next);
}

/**
 * lr_plan_move_setup:
 * @plan: a plan
 * @by: places later in the list; < 0: earlier
 * @error: return location
 *
 * Moves the shown set-up, which stays shown, up to the ends of the list.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_move_setup (const LrPlan  *plan,
                    int            by,
                    GError       **error)
{
  g_autoptr (LrPlan) next = lr_edit_begin (plan, NULL, error);
  gint64 wanted;
  gpointer setup;

  if (next == NULL)
    return NULL;

  wanted = CLAMP ((gint64) next->shown + by, 0, (gint64) next->setups->len - 1);
  setup = g_ptr_array_steal_index (next->setups, next->shown);
  g_ptr_array_insert (next->setups, (int) wanted, setup);
  next->shown = (guint) wanted;

  return g_steal_pointer (&next);
}
