/* comparison_words.c - candidate rooms side by side: the table, and what is told of it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "comparison_private.h"

#include <glib/gi18n-lib.h>

#define MOST_SAID 3          /* rows that differ most */
#define LEAST_TIMES 1.2      /* a smaller difference is not called one; common practice, no source */

static LrComparedRow *
row_new (const LrComparison *comparison,
         LrCompare           compare,
         LrUnits             units)
{
  const LrCompareInfo *info = lr_compare_info (compare);
  LrComparedRow *row = g_new0 (LrComparedRow, 1);
  guint n = n_rooms (comparison);

  row->row = compare;
  row->title = _(info->title);
  row->meaning = _(info->meaning);
  row->is_best = g_new0 (gboolean, n);
  row->texts = g_new0 (char *, n + 1);
  row->details = g_new0 (char *, n + 1);
  for (guint i = 0; i < n; i++)
    {
      row->texts[i] = lr_compare_text (lr_comparison_room (comparison, i), compare, units);
      row->details[i] = lr_compare_detail (comparison, lr_comparison_room (comparison, i), compare, units);
    }
  lr_compare_judge_row (comparison, row, units);

  return row;
}

static void
row_free (gpointer data)
{
  LrComparedRow *row = data;

  g_free (row->is_best);
  g_strfreev (row->texts);
  g_strfreev (row->details);
  g_free (row->why);
  g_free (row);
}

/* Which rows differ most */

static int
compare_times (gconstpointer a,
               gconstpointer b)
{
  const LrComparedRow *x = *(const LrComparedRow *const *) a, *y = *(const LrComparedRow *const *) b;

  return x->times < y->times ? 1 : x->times > y->times ? -1 : (int) x->row - (int) y->row;
}

static char *
say_times (const LrCompared    *compared,
           const LrComparedRow *row,
           LrUnits              units)
{
  const LrCompareInfo *info = lr_compare_info (row->row);
  guint best = 0, worst = 0;
  g_autofree char *from = NULL, *to = NULL;
  double a, b;

  lr_compare_ends (compared->comparison, row->row, &best, &worst);
  a = figure_of (compared->comparison, row->row, best)->value;
  b = figure_of (compared->comparison, row->row, worst)->value;
  from = info->format (fmin (a, b), units);
  to = info->format (fmax (a, b), units);
  /* Translators: a row of the table, its least and its greatest figure */
  return g_strdup_printf (_("%s (%s to %s)"), _(info->brief), from, to);
}

/* What hangs on the room comes before what hangs on the set in it, and much before little */
static GPtrArray *
find_telling (const LrCompared *compared,
              gboolean         *is_much)
{
  GPtrArray *much = g_ptr_array_new (), *little = g_ptr_array_new (), *of_set = g_ptr_array_new (), *chosen;

  for (guint i = 0; i < compared->rows->len; i++)
    {
      LrComparedRow *row = compared->rows->pdata[i];

      if (row->verdict == LR_VERDICT_BEST)
        g_ptr_array_add (row->row == LR_COMPARE_FIX || row->row == LR_COMPARE_MIND ? of_set : row->times >= LEAST_TIMES ? much : little, row);
    }
  *is_much = much->len > 0;
  chosen = g_ptr_array_ref (much->len > 0 ? much : little->len > 0 ? little : of_set);
  g_ptr_array_unref (much);
  g_ptr_array_unref (little);
  g_ptr_array_unref (of_set);
  g_ptr_array_sort (chosen, compare_times);

  return chosen;
}

static guint
count_verdicts (const LrCompared *compared,
                LrVerdictType     verdict)
{
  guint n = 0;

  for (guint i = 0; i < compared->rows->len; i++)
    n += ((const LrComparedRow *) compared->rows->pdata[i])->verdict == verdict;

  return n;
}

static char *
say_summary (const LrCompared *compared,
             LrUnits           units)
{
  g_autoptr (GPtrArray) rows = NULL, words = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *list = NULL;
  gboolean is_much;

  if (n_rooms (compared->comparison) < 2)
    return g_strdup (_("There is one room only: add another set-up, or copy this one, to compare."));
  if (count_verdicts (compared, LR_VERDICT_FEW) == compared->rows->len)
    return g_strdup (_("Nothing is known of two of them yet: draw the rooms, and note what was seen on the visit."));

  rows = find_telling (compared, &is_much);
  if (rows->len == 0)
    return g_strdup (_("Nothing that is known of two of them tells them apart."));

  for (guint i = 0; i < MIN (rows->len, MOST_SAID); i++)
    g_ptr_array_add (words, say_times (compared, rows->pdata[i], units));
  list = lr_compare_join (words);
  /* Translators: rows of the table with their least and greatest figures */
  return g_strdup_printf (is_much ? _("They differ most in %s.") : _("They differ by little, most in %s."), list);
}

static char *
say_left_out (const LrComparison *comparison)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();
  g_autofree char *list = NULL;

  for (guint i = 0; i < n_rooms (comparison); i++)
    {
      const LrSetup *planned = lr_comparison_room (comparison, i)->planned;

      if (planned != NULL && !g_ptr_array_find (names, planned->name, NULL))
        g_ptr_array_add (names, planned->name);
    }
  if (comparison->n_left_out == 0 || names->len == 0)
    return g_strdup ("");

  list = lr_compare_join (names);
  /* Translators: names of set-ups, which others are as found of */
  return g_strdup_printf (ngettext ("%s stands here as found; see Differences to the plan.",
                                    "%s stand here as found; see Differences to the plan.", names->len), list);
}

static char *
say_undrawn (const LrComparison *comparison)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();
  g_autofree char *list = NULL;

  for (guint i = 0; i < n_rooms (comparison); i++)
    if (figure_of (comparison, LR_COMPARE_AREA, i)->known == LR_NO_ROOM)
      g_ptr_array_add (names, (gpointer) name_of (comparison, i));
  if (names->len == 0)
    return g_strdup ("");

  list = lr_compare_join (names);
  /* Translators: names of set-ups */
  return g_strdup_printf (ngettext ("%s is not drawn yet.", "%s are not drawn yet.", names->len), list);
}

/* How one gets into one of the rooms and who allows it, as noted on the visit; "" for nothing */
static char *
say_way_in (const LrLocation *location)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new_with_free_func (g_free);

  if (location->access[0] != '\0')
    g_ptr_array_add (words, g_strdup_printf (_("Way in: %s"), location->access));
  if (location->permission[0] != '\0')
    g_ptr_array_add (words, g_strdup_printf (_("Permission: %s"), location->permission));
  g_ptr_array_add (words, NULL);

  return g_strjoinv ("; ", (char **) words->pdata);
}

/* (transfer full) of what it is given */
static char *
in_one_line (char *text)
{
  return g_strdelimit (text, "\n\r\t", ' ');
}

/* A line for each room; once for all if they are the same */
static char *
say_places (const LrComparison *comparison)
{
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *first = n_rooms (comparison) > 0 ? say_way_in (lr_comparison_room (comparison, 0)->setup->location) : g_strdup ("");
  gboolean is_same = TRUE;

  for (guint i = 0; i < n_rooms (comparison); i++)
    {
      g_autofree char *way_in = say_way_in (lr_comparison_room (comparison, i)->setup->location);

      is_same &= g_str_equal (way_in, first);
      if (way_in[0] != '\0')
        /* Translators: the name of a set-up, and how one gets in there, as noted on the visit */
        g_ptr_array_add (lines, in_one_line (g_strdup_printf (_("%s: %s"), name_of (comparison, i), way_in)));
    }
  if (is_same)
    return in_one_line (g_steal_pointer (&first));
  g_ptr_array_add (lines, NULL);

  return g_strjoinv ("\n", (char **) lines->pdata);
}

/**
 * lr_compared_new:
 * @comparison: (transfer none): a comparison, which must outlive what is returned
 * @units: how lengths are written
 *
 * Returns: (transfer full): the table in words
 */
LrCompared *
lr_compared_new (const LrComparison *comparison,
                 LrUnits             units)
{
  LrCompared *compared = g_new0 (LrCompared, 1);

  compared->comparison = comparison;
  compared->rows = g_ptr_array_new_with_free_func (row_free);
  for (int row = 0; row < LR_N_COMPARES; row++)
    g_ptr_array_add (compared->rows, row_new (comparison, (LrCompare) row, units));
  compared->summary = say_summary (compared, units);
  compared->undrawn = say_undrawn (comparison);
  compared->left_out = say_left_out (comparison);
  compared->places = say_places (comparison);

  return compared;
}

/**
 * lr_compared_free:
 * @compared: (transfer full) (nullable): a table
 */
void
lr_compared_free (LrCompared *compared)
{
  if (compared == NULL)
    return;

  g_ptr_array_unref (compared->rows);
  g_free (compared->summary);
  g_free (compared->undrawn);
  g_free (compared->left_out);
  g_free (compared->places);
  g_free (compared);
}

/**
 * lr_compare_subtitle:
 * @room: figures of a room
 *
 * Returns: (transfer full): what its set-up is as found of, "" if it is not
 */
char *
lr_compare_subtitle (const LrRoomFigures *room)
{
  /* Translators: the name of a set-up */
  return room->planned != NULL ? g_strdup_printf (_("as found of %s"), room->planned->name) : g_strdup ("");
}

/**
 * lr_compared_sentence:
 * @compared: a table
 * @row: one of its rows
 *
 * Returns: (transfer full): all that the row shows, for who hears it
 */
char *
lr_compared_sentence (const LrCompared    *compared,
                      const LrComparedRow *row)
{
  GString *text = g_string_new (row->title);

  for (guint i = 0; i < n_rooms (compared->comparison); i++)
    {
      g_string_append_printf (text, "%s%s %s", i == 0 ? ": " : "; ", name_of (compared->comparison, i), row->texts[i]);
      if (row->details[i][0] != '\0')
        g_string_append_printf (text, " (%s)", row->details[i]);
      if (row->is_best[i])
        g_string_append (text, _(", best"));
    }
  if (row->why[0] != '\0')
    g_string_append_printf (text, ". %s", row->why);
  g_string_append_c (text, '.');

  return g_string_free (text, FALSE);
}
