/* plan_edit_lists.c - changing lists, and what is ticked
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "plan_edit_private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* Whether what a row says can be kept */
static gboolean
check_row (const LrPropTable  *table,
           gconstpointer       row,
           GError            **error)
{
  for (gsize i = 0; i < table->n_props; i++)
    {
      const LrProp *prop = &table->props[i];

      if (lr_prop_is_text (prop) ? !lr_edit_check_text (prop->label != NULL ? _(prop->label) : prop->key, lr_prop_get_text (prop, row), error)
                                 : !lr_edit_check_number (prop, lr_prop_get_number (prop, row), error))
        return FALSE;
    }

  return TRUE;
}

/* Puts copies of @rows into @owner, which is fresh */
static gboolean
put_rows (gpointer        owner,
          LrList          list,
          gconstpointer   rows,
          gsize           n,
          GError        **error)
{
  const LrListInfo *info = lr_list_info (list);

  for (gsize i = 0; i < n; i++)
    if (!check_row (info->table (), (const char *) rows + i * info->size, error))
      return FALSE;
  lr_list_set (owner, list, rows, n);

  return TRUE;
}

static LrPlan *
set_list (const LrPlan   *plan,
          LrList          list,
          gconstpointer   rows,
          gsize           n,
          GError        **error)
{
  g_autoptr (LrPlan) next = lr_edit_begin_job (plan, error);

  return next != NULL && put_rows (next->job, list, rows, n, error) ? g_steal_pointer (&next) : NULL;
}

/* A file that has a key twice cannot be read. Always NULL */
static LrPlan *
refuse_twice (const char  *key,
              GError     **error)
{
  g_set_error (error, LR_PLAN_ERROR, LR_PLAN_ERROR_REFUSED, _("“%s” would stand in the list twice, or has no name."), key);
  return NULL;
}

/**
 * lr_plan_set_contacts:
 * @plan: a plan
 * @contacts: (array length=n): whom to call; texts are not %NULL
 * @n: how many
 * @error: return location
 *
 * At the location of the shown set-up.
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_contacts (const LrPlan     *plan,
                      const LrContact  *contacts,
                      gsize             n,
                      GError          **error)
{
  LrLocation *location;
  g_autoptr (LrPlan) next = lr_edit_begin_location (plan, &location, error);

  return next != NULL && put_rows (location, LR_LIST_CONTACTS, contacts, n, error) ? g_steal_pointer (&next) : NULL;
}

/**
 * lr_plan_set_questions:
 * @plan: a plan
 * @questions: (array length=n): in their order; texts are not %NULL; one whose id is "" gets one; no other is there twice
 * @n: how many
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_questions (const LrPlan      *plan,
                       const LrQuestion  *questions,
                       gsize              n,
                       GError           **error)
{
  g_autoptr (LrPlan) next = set_list (plan, LR_LIST_QUESTIONS, questions, n, error);
  g_autoptr (GHashTable) ids = g_hash_table_new (g_str_hash, g_str_equal);
  guint number = 1;

  if (next == NULL)
    return NULL;

  for (gsize i = 0; i < n; i++)
    if (questions[i].id[0] != '\0' && !g_hash_table_add (ids, questions[i].id))
      return refuse_twice (questions[i].id, error);
  for (gsize i = 0; i < n; i++)
    {
      char **id = &next->job->questions[i].id;

      while ((*id)[0] == '\0' || (questions[i].id[0] == '\0' && g_hash_table_contains (ids, *id)))
        {
          g_free (*id);
          *id = g_strdup_printf ("q%u", number++);
        }
    }

  return g_steal_pointer (&next);
}

/**
 * lr_plan_set_run:
 * @plan: a plan
 * @entries: (array length=n): what differs from the run sheet that the plan gives; texts are not %NULL
 * @n: how many
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_run (const LrPlan      *plan,
                 const LrRunEntry  *entries,
                 gsize              n,
                 GError           **error)
{
  g_autoptr (GHashTable) keys = g_hash_table_new (g_str_hash, g_str_equal);

  for (gsize i = 0; i < n; i++)
    if (entries[i].key[0] == '\0' || !g_hash_table_add (keys, entries[i].key))
      return refuse_twice (entries[i].key, error);

  return set_list (plan, LR_LIST_RUN, entries, n, error);
}

static int
compare_words (gconstpointer a,
               gconstpointer b)
{
  return strcmp (*(char *const *) a, *(char *const *) b);
}

static void
take_ticks (LrJob     *job,
            GPtrArray *words)
{
  g_ptr_array_sort (words, compare_words);
  g_ptr_array_add (words, NULL);
  g_strfreev (job->ticks);
  job->ticks = (char **) g_ptr_array_steal (words, NULL);
}

/* Whether two ticks are of the same line, whatever it said when each was made */
static gboolean
is_same_line (const char *a,
              const char *b)
{
  gsize length = strcspn (a, LR_TICK_FIGURES);

  return strcspn (b, LR_TICK_FIGURES) == length && strncmp (a, b, length) == 0;
}

/**
 * lr_plan_set_ticked:
 * @plan: a plan
 * @list: word of a list, "packing"; without a slash
 * @line: key of a line in it, or what lr_tick_key() made of that
 * @is_ticked: whether its box is to be ticked
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan
 */
LrPlan *
lr_plan_set_ticked (const LrPlan  *plan,
                    const char    *list,
                    const char    *line,
                    gboolean       is_ticked,
                    GError       **error)
{
  g_autofree char *tick = g_strdup_printf ("%s/%s", list, line);
  g_autoptr (LrPlan) next = lr_edit_begin_job (plan, error);
  g_autoptr (GPtrArray) words = g_ptr_array_new ();

  if (next == NULL || !lr_edit_check_text (list, tick, error))
    return NULL;
  for (char **word = plan->job->ticks; *word != NULL; word++)
    if (!is_same_line (*word, tick))
      g_ptr_array_add (words, g_strdup (*word));
  if (is_ticked)
    g_ptr_array_add (words, g_steal_pointer (&tick));
  take_ticks (next->job, words);

  return g_steal_pointer (&next);
}

/**
 * lr_plan_clear_ticks:
 * @plan: a plan
 * @list: word of a list, "packing"
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan, with no line of @list ticked
 */
LrPlan *
lr_plan_clear_ticks (const LrPlan  *plan,
                     const char    *list,
                     GError       **error)
{
  g_autofree char *prefix = g_strconcat (list, "/", NULL);
  g_autoptr (LrPlan) next = lr_edit_begin_job (plan, error);
  g_autoptr (GPtrArray) words = g_ptr_array_new ();

  if (next == NULL)
    return NULL;
  for (char **word = plan->job->ticks; *word != NULL; word++)
    if (!g_str_has_prefix (*word, prefix))
      g_ptr_array_add (words, g_strdup (*word));
  take_ticks (next->job, words);

  return g_steal_pointer (&next);
}
