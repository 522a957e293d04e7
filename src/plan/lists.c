/* lists.c - people to call at a location; questions of a job, what the user made of its run sheet
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

#define LIST(of_, owner_, key_, table_, type_, rows_, n_, is_optional_) \
  { of_, key_, table_, sizeof (type_), G_STRUCT_OFFSET (type_, unknown), G_STRUCT_OFFSET (owner_, rows_), G_STRUCT_OFFSET (owner_, n_), \
    is_optional_ }

static const LrListInfo lists[LR_N_LISTS] = {
  [LR_LIST_CONTACTS] = LIST (LR_LISTS_OF_LOCATION, LrLocation, "contacts", lr_contact_table, LrContact, contacts, n_contacts, FALSE),
  [LR_LIST_QUESTIONS] = LIST (LR_LISTS_OF_JOB, LrJob, "questions", lr_question_table, LrQuestion, questions, n_questions, TRUE),
  [LR_LIST_RUN] = LIST (LR_LISTS_OF_JOB, LrJob, "run", lr_run_table, LrRunEntry, run, n_run, TRUE),
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
 * lr_list_info:
 * @list: which
 *
 * Returns: (transfer none): what it is called and where it stands
 */
const LrListInfo *
lr_list_info (LrList list)
{
  return &lists[list];
}

static gpointer
row_of (LrList   list,
        gpointer rows,
        gsize    index)
{
  return (char *) rows + index * lists[list].size;
}

/**
 * lr_list_get:
 * @owner: what has the list
 * @list: which
 * @n: (out): how many rows
 *
 * Returns: (transfer none) (nullable): its first row
 */
gpointer
lr_list_get (gconstpointer  owner,
             LrList         list,
             gsize         *n)
{
  *n = *(const gsize *) ((const char *) owner + lists[list].n_offset);

  return *(gpointer const *) ((const char *) owner + lists[list].rows_offset);
}

static void
put_list (gpointer owner,
          LrList   list,
          gpointer rows,
          gsize    n)
{
  *(gsize *) ((char *) owner + lists[list].n_offset) = n;
  *(gpointer *) ((char *) owner + lists[list].rows_offset) = rows;
}

/**
 * lr_list_unknown_of:
 * @list: which
 * @row: one of its rows
 *
 * Returns: (transfer none): where it keeps the members that this version does not know
 */
JsonObject **
lr_list_unknown_of (LrList   list,
                    gpointer row)
{
  return (JsonObject **) ((char *) row + lists[list].unknown_offset);
}

static void
clear_list (gpointer owner,
            LrList   list)
{
  gsize n;
  gpointer rows = lr_list_get (owner, list, &n);

  for (gsize i = 0; i < n; i++)
    {
      lr_prop_table_clear (lists[list].table (), row_of (list, rows, i));
      g_clear_pointer (lr_list_unknown_of (list, row_of (list, rows, i)), json_object_unref);
    }
  g_free (rows);
  put_list (owner, list, NULL, 0);
}

/**
 * lr_list_set:
 * @owner: a fresh owner of the list
 * @list: which
 * @rows: (array length=n): its rows; their texts are not %NULL
 * @n: how many
 *
 * Replaces what it has by copies of @rows.
 */
void
lr_list_set (gpointer       owner,
             LrList         list,
             gconstpointer  rows,
             gsize          n)
{
  gpointer copies = g_memdup2 (rows, n * lists[list].size);

  for (gsize i = 0; i < n; i++)
    {
      JsonObject **unknown = lr_list_unknown_of (list, row_of (list, copies, i));

      lr_prop_table_copy (lists[list].table (), row_of (list, copies, i), row_of (list, (gpointer) rows, i));
      *unknown = lr_json_dup_object (*unknown);
    }
  clear_list (owner, list);
  put_list (owner, list, copies, n);
}

/**
 * lr_list_make:
 * @owner: a fresh owner of the list
 * @list: which
 * @n: how many rows
 *
 * Replaces what it has by rows that say nothing.
 *
 * Returns: (transfer none) (nullable): the first of them
 */
gpointer
lr_list_make (gpointer owner,
              LrList   list,
              gsize    n)
{
  gpointer rows = g_malloc0 (n * lists[list].size);

  for (gsize i = 0; i < n; i++)
    lr_prop_table_init (lists[list].table (), row_of (list, rows, i));
  clear_list (owner, list);
  put_list (owner, list, rows, n);

  return rows;
}

/**
 * lr_lists_copy:
 * @of: what @to and @from are
 * @to: a copy, byte by byte, of @from
 * @from: what it was copied from
 *
 * Gives @to lists of its own.
 */
void
lr_lists_copy (LrListsOf     of,
               gpointer      to,
               gconstpointer from)
{
  for (LrList list = 0; list < LR_N_LISTS; list++)
    if (lists[list].of == of)
      {
        gsize n;
        gconstpointer rows = lr_list_get (from, list, &n);

        put_list (to, list, NULL, 0);
        lr_list_set (to, list, rows, n);
      }
}

/**
 * lr_lists_clear:
 * @of: what @owner is
 * @owner: a fresh owner, or one that nobody holds any more
 *
 * Empties its lists.
 */
void
lr_lists_clear (LrListsOf of,
                gpointer  owner)
{
  for (LrList list = 0; list < LR_N_LISTS; list++)
    if (lists[list].of == of)
      clear_list (owner, list);
}

static gboolean
is_same_list (LrList        list,
              gconstpointer a,
              gconstpointer b)
{
  gsize n_a, n_b;
  gpointer rows_a = lr_list_get (a, list, &n_a), rows_b = lr_list_get (b, list, &n_b);

  if (n_a != n_b)
    return FALSE;
  for (gsize i = 0; i < n_a; i++)
    {
      gpointer row_a = row_of (list, rows_a, i), row_b = row_of (list, rows_b, i);

      if (!lr_prop_table_equal (lists[list].table (), row_a, row_b)
          || !lr_json_objects_equal (*lr_list_unknown_of (list, row_a), *lr_list_unknown_of (list, row_b)))
        return FALSE;
    }

  return TRUE;
}

/**
 * lr_lists_equal:
 * @of: what @a and @b are
 * @a: an owner
 * @b: another
 *
 * Returns: whether their lists are the same
 */
gboolean
lr_lists_equal (LrListsOf     of,
                gconstpointer a,
                gconstpointer b)
{
  for (LrList list = 0; list < LR_N_LISTS; list++)
    if (lists[list].of == of && !is_same_list (list, a, b))
      return FALSE;

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
