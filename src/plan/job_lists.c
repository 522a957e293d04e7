/* job_lists.c - lists of a job: people to call, questions, what the user made of the run sheet
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reader, writer, edits and copies go through one description of each.
 */

#include "config.h"

#include "plan_private.h"

#include "plan_json.h"
#include "prop_rows.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define ROW_OWNER LrContact

static const LrProp contact_rows[] = {
  TEXT ("role", N_("Role"), role),
  TEXT ("name", N_("Name"), name),
  TEXT ("phone", N_("Telephone"), phone),
};

#undef ROW_OWNER
#define ROW_OWNER LrQuestion

static const LrProp question_rows[] = {
  TEXT ("id", NULL, id),
  TEXT ("text", N_("Question"), text),
  TEXT_OR_NONE ("note", N_("Note"), note),
};

#undef ROW_OWNER
#define ROW_OWNER LrRunEntry

static const LrProp run_rows[] = {
  TEXT ("key", NULL, key),
  TEXT_OR_NONE ("title", N_("Step"), title),
  TEXT_OR_NONE ("after", NULL, after),
  ROW ("minutes", N_("Minutes"), LR_PROP_COUNT, minutes, .max = 1440.0, .is_optional = TRUE),
  FLAG_IF_SET ("is-left-out", N_("Left out"), is_left_out),
};

static const LrPropTable contact_table = TABLE (contact_rows);
static const LrPropTable question_table = TABLE (question_rows);
static const LrPropTable run_table = TABLE (run_rows);

#define LIST(key_, table_, type_, rows_, n_, is_optional_) \
  { key_, table_, sizeof (type_), G_STRUCT_OFFSET (type_, unknown), G_STRUCT_OFFSET (LrJob, rows_), G_STRUCT_OFFSET (LrJob, n_), is_optional_ }

static const LrJobListInfo lists[LR_N_JOB_LISTS] = {
  [LR_JOB_CONTACTS] = LIST ("contacts", lr_contact_table, LrContact, contacts, n_contacts, FALSE),
  [LR_JOB_QUESTIONS] = LIST ("questions", lr_question_table, LrQuestion, questions, n_questions, TRUE),
  [LR_JOB_RUN] = LIST ("run", lr_run_table, LrRunEntry, run, n_run, TRUE),
};

/**
 * lr_contact_table:
 *
 * Returns: (transfer none): the members of a contact
 */
const LrPropTable *
lr_contact_table (void)
{
  return &contact_table;
}

/**
 * lr_question_table:
 *
 * Returns: (transfer none): the members of a question
 */
const LrPropTable *
lr_question_table (void)
{
  return &question_table;
}

/**
 * lr_run_table:
 *
 * Returns: (transfer none): the members of what the user made of a step of the day
 */
const LrPropTable *
lr_run_table (void)
{
  return &run_table;
}

/**
 * lr_job_list_info:
 * @list: which
 *
 * Returns: (transfer none): what it is called and where it stands
 */
const LrJobListInfo *
lr_job_list_info (LrJobList list)
{
  return &lists[list];
}

static gpointer
row_of (LrJobList list,
        gpointer  rows,
        gsize     index)
{
  return (char *) rows + index * lists[list].size;
}

/**
 * lr_job_get_list:
 * @job: a job
 * @list: which
 * @n: (out): how many rows
 *
 * Returns: (transfer none) (nullable): its first row
 */
gpointer
lr_job_get_list (const LrJob *job,
                 LrJobList    list,
                 gsize       *n)
{
  *n = *(const gsize *) ((const char *) job + lists[list].n_offset);

  return *(gpointer const *) ((const char *) job + lists[list].rows_offset);
}

static void
put_list (LrJob     *job,
          LrJobList  list,
          gpointer   rows,
          gsize      n)
{
  *(gsize *) ((char *) job + lists[list].n_offset) = n;
  *(gpointer *) ((char *) job + lists[list].rows_offset) = rows;
}

/**
 * lr_job_unknown_of:
 * @list: which
 * @row: one of its rows
 *
 * Returns: (transfer none): where it keeps the members that this version does not know
 */
JsonObject **
lr_job_unknown_of (LrJobList list,
                   gpointer  row)
{
  return (JsonObject **) ((char *) row + lists[list].unknown_offset);
}

static void
clear_list (LrJob     *job,
            LrJobList  list)
{
  gsize n;
  gpointer rows = lr_job_get_list (job, list, &n);

  for (gsize i = 0; i < n; i++)
    {
      lr_prop_table_clear (lists[list].table (), row_of (list, rows, i));
      g_clear_pointer (lr_job_unknown_of (list, row_of (list, rows, i)), json_object_unref);
    }
  g_free (rows);
  put_list (job, list, NULL, 0);
}

/**
 * lr_job_set_list:
 * @job: a fresh job
 * @list: which
 * @rows: (array length=n): its rows; their texts are not %NULL
 * @n: how many
 *
 * Replaces what it has by copies of @rows.
 */
void
lr_job_set_list (LrJob         *job,
                 LrJobList      list,
                 gconstpointer  rows,
                 gsize          n)
{
  gpointer copies = g_memdup2 (rows, n * lists[list].size);

  for (gsize i = 0; i < n; i++)
    {
      JsonObject **unknown = lr_job_unknown_of (list, row_of (list, copies, i));

      lr_prop_table_copy (lists[list].table (), row_of (list, copies, i), row_of (list, (gpointer) rows, i));
      *unknown = lr_json_dup_object (*unknown);
    }
  clear_list (job, list);
  put_list (job, list, copies, n);
}

/**
 * lr_job_make_list:
 * @job: a fresh job
 * @list: which
 * @n: how many rows
 *
 * Replaces what it has by rows that say nothing.
 *
 * Returns: (transfer none) (nullable): the first of them
 */
gpointer
lr_job_make_list (LrJob     *job,
                  LrJobList  list,
                  gsize      n)
{
  gpointer rows = g_malloc0 (n * lists[list].size);

  for (gsize i = 0; i < n; i++)
    lr_prop_table_init (lists[list].table (), row_of (list, rows, i));
  clear_list (job, list);
  put_list (job, list, rows, n);

  return rows;
}

/**
 * lr_job_drop_lists:
 * @job: a copy, byte by byte, of another
 *
 * Lets go of the lists, which are the other's.
 */
void
lr_job_drop_lists (LrJob *job)
{
  for (int list = 0; list < LR_N_JOB_LISTS; list++)
    put_list (job, list, NULL, 0);
}

/**
 * lr_job_clear_lists:
 * @job: a fresh job, or one that nobody holds any more
 *
 * Empties its lists.
 */
void
lr_job_clear_lists (LrJob *job)
{
  for (int list = 0; list < LR_N_JOB_LISTS; list++)
    clear_list (job, list);
}

/**
 * lr_job_equal_lists:
 * @a: a job
 * @b: another
 *
 * Returns: whether their lists are the same
 */
gboolean
lr_job_equal_lists (const LrJob *a,
                    const LrJob *b)
{
  for (int list = 0; list < LR_N_JOB_LISTS; list++)
    {
      gsize n_a, n_b;
      gpointer rows_a = lr_job_get_list (a, list, &n_a), rows_b = lr_job_get_list (b, list, &n_b);

      if (n_a != n_b)
        return FALSE;
      for (gsize i = 0; i < n_a; i++)
        {
          gpointer row_a = row_of (list, rows_a, i), row_b = row_of (list, rows_b, i);

          if (!lr_prop_table_equal (lists[list].table (), row_a, row_b)
              || !lr_json_objects_equal (*lr_job_unknown_of (list, row_a), *lr_job_unknown_of (list, row_b)))
            return FALSE;
        }
    }

  return TRUE;
}

static char *
make_tick (const char *list,
           const char *line)
{
  return g_strdup_printf ("%s/%s", list, line);
}

/**
 * lr_tick_key:
 * @line: key of a line
 * @figures: what it says, in the same units and language on every desk; "": nothing that changes
 *
 * Returns: (transfer full): by what it is ticked
 */
char *
lr_tick_key (const char *line,
             const char *figures)
{
  return figures[0] != '\0' ? g_strconcat (line, LR_TICK_FIGURES, figures, NULL) : g_strdup (line);
}

/**
 * lr_plan_is_ticked:
 * @plan: a plan
 * @list: word of a list, "packing"
 * @line: key of a line in it
 *
 * Returns: whether its box is ticked
 */
gboolean
lr_plan_is_ticked (const LrPlan *plan,
                   const char   *list,
                   const char   *line)
{
  g_autofree char *tick = make_tick (list, line);

  return g_strv_contains ((const char *const *) plan->job->ticks, tick);
}
