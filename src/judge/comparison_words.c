/* comparison_words.c - candidate rooms side by side: what is best in each row, and why
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "comparison_words.h"

#include <glib/gi18n-lib.h>

#define MOST_SAID 3          /* rows that differ most */
#define LEAST_TIMES 1.2      /* a smaller difference is not called one; common practice, no source */

static guint
n_rooms (const LrComparison *comparison)
{
  return comparison->rooms->len;
}

static const LrFigure *
figure_of (const LrComparison *comparison,
           LrCompare           row,
           guint               index)
{
  return &lr_comparison_room (comparison, index)->figure[row];
}

static const char *
name_of (const LrComparison *comparison,
         guint               index)
{
  return lr_comparison_room (comparison, index)->setup->name;
}

/* "A", "A and B", "A, B and C"; (transfer full) */
static char *
join (const GPtrArray *words)
{
  GString *all = g_string_new (words->len > 0 ? words->pdata[0] : "");

  for (guint i = 1; i < words->len; i++)
    {
      /* Translators: between the last two of a list, and between the others */
      g_string_append (all, i + 1 == words->len ? _(" and ") : _(", "));
      g_string_append (all, words->pdata[i]);
    }
  return g_string_free (all, FALSE);
}

/* What is best */

static gboolean
is_alike (const LrCompareInfo *info,
          double               a,
          double               b)
{
  return fabs (a - b) <= fmax (info->tie, info->tie_share * fmax (fabs (a), fabs (b))) + 1e-9;
}

static gboolean
is_better (const LrCompareInfo *info,
           double               a,
           double               b)
{
  return info->is_less_better ? a < b : a > b;
}

/* The known ones that are best and worst; FALSE: fewer than two are known */
static gboolean
find_ends (const LrComparison *comparison,
           LrCompare           row,
           guint              *best,
           guint              *worst)
{
  const LrCompareInfo *info = lr_compare_info (row);
  guint n = 0;

  for (guint i = 0; i < n_rooms (comparison); i++)
    {
      const LrFigure *figure = figure_of (comparison, row, i);

      if (figure->known != LR_KNOWN)
        continue;
      if (n == 0 || is_better (info, figure->value, figure_of (comparison, row, *best)->value))
        *best = i;
      if (n == 0 || is_better (info, figure_of (comparison, row, *worst)->value, figure->value))
        *worst = i;
      n++;
    }

  return n > 1;
}

static double
times_apart (const LrCompareInfo *info,
             double               a,
             double               b)
{
  double low = fmin (a, b) + info->base, high = fmax (a, b) + info->base;

  if (info->db_twice > 0.0)
    return pow (2.0, (high - low) / info->db_twice);
  return low > 0.0 ? high / low : (double) NAN;
}

/* Why */

/* Those that are as good as the best, and the best of the others */
static void
sort_out (const LrComparison *comparison,
          LrComparedRow      *row,
          guint               best,
          guint              *n_winners,
          guint              *next)
{
  const LrCompareInfo *info = lr_compare_info (row->row);
  double best_value = figure_of (comparison, row->row, best)->value;

  *next = n_rooms (comparison);
  for (guint i = 0; i < n_rooms (comparison); i++)
    {
      const LrFigure *figure = figure_of (comparison, row->row, i);

      if (figure->known != LR_KNOWN)
        continue;
      row->is_best[i] = is_alike (info, figure->value, best_value);
      if (row->is_best[i])
        (*n_winners)++;
      else if (*next == n_rooms (comparison) || is_better (info, figure->value, figure_of (comparison, row->row, *next)->value))
        *next = i;
    }
}

/* Of those that are as good as the best the one that is nearest to the next is told: no more is sure */
static double
least_win (const LrComparison  *comparison,
           const LrComparedRow *row,
           guint                next)
{
  double next_value = figure_of (comparison, row->row, next)->value, least = HUGE_VAL;

  for (guint i = 0; i < n_rooms (comparison); i++)
    if (row->is_best[i])
      least = fmin (least, fabs (figure_of (comparison, row->row, i)->value - next_value));

  return least;
}

static char *
say_difference (const LrCompareInfo *info,
                double               difference,
                LrUnits              units)
{
  return info->format_difference != NULL ? info->format_difference (difference, units) : info->format (difference, units);
}

static void
say_best (const LrComparison  *comparison,
          const LrComparedRow *row,
          guint                n_winners,
          guint                next,
          LrUnits              units,
          GString             *why)
{
  const LrCompareInfo *info = lr_compare_info (row->row);
  g_autofree char *difference = say_difference (info, least_win (comparison, row, next), units);

  if (n_winners > 1)
    /* Translators: how many set-ups are best; what follows is "3 m² more than Office" */
    g_string_append_printf (why, _("%u alike, "), n_winners);
  g_string_append_printf (why, _(info->better), difference, name_of (comparison, next));
}

static guint
count_known (const LrComparison *comparison,
             LrCompare           row)
{
  guint n = 0;

  for (guint i = 0; i < n_rooms (comparison); i++)
    n += figure_of (comparison, row, i)->known == LR_KNOWN;

  return n;
}

static void
say_alike (const LrCompareInfo *info,
           const LrComparison  *comparison,
           const LrComparedRow *row,
           LrUnits              units,
           GString             *why)
{
  g_autofree char *tie = say_difference (info, info->tie, units), *within = g_strdup_printf (_(info->within), tie);

  if (row->times > 1.0 + 1e-9)
    /* Translators: what cannot be told apart: "3 dB, as sound can be foretold" */
    g_string_append_printf (why, _("no real difference: within %s"), within);
  else if (count_known (comparison, row->row) < n_rooms (comparison))
    g_string_append (why, _("the same where it is known"));
  else
    g_string_append (why, n_rooms (comparison) == 2 ? _("both the same") : _("all the same"));
}

/* What is not known, or in part, may be better yet. Of a room that is not drawn nothing is known, which is said once for all rows */
static void
say_unknown (const LrComparison *comparison,
             LrCompare           row,
             GString            *why)
{
  g_autoptr (GPtrArray) missing = g_ptr_array_new (), partly = g_ptr_array_new ();

  for (guint i = 0; i < n_rooms (comparison); i++)
    if (figure_of (comparison, row, i)->known != LR_KNOWN && figure_of (comparison, row, i)->known != LR_NO_ROOM)
      g_ptr_array_add (figure_of (comparison, row, i)->known == LR_KNOWN_PARTLY ? partly : missing, (gpointer) name_of (comparison, i));

  for (int part = 0; part < 2; part++)
    {
      const GPtrArray *names = part == 0 ? missing : partly;
      g_autofree char *list = join (names);

      if (names->len == 0)
        continue;
      if (why->len > 0)
        g_string_append (why, "; ");
      /* Translators: names of set-ups */
      g_string_append_printf (why, part == 0 ? _("not known: %s") : _("known in part: %s"), list);
    }
}

static gboolean
is_known_at_all (const LrComparison *comparison,
                 LrCompare           row)
{
  for (guint i = 0; i < n_rooms (comparison); i++)
    if (isfinite (figure_of (comparison, row, i)->value))
      return TRUE;

  return FALSE;
}

static void
judge_row (const LrComparison *comparison,
           LrComparedRow      *row,
           LrUnits             units)
{
  const LrCompareInfo *info = lr_compare_info (row->row);
  g_autoptr (GString) why = g_string_new (NULL);
  guint best = 0, worst = 0, n_winners = 0, next;

  row->verdict = LR_VERDICT_FEW;
  row->times = NAN;
  if (find_ends (comparison, row->row, &best, &worst))
    {
      double best_value = figure_of (comparison, row->row, best)->value, worst_value = figure_of (comparison, row->row, worst)->value;

      row->times = times_apart (info, best_value, worst_value);
      row->verdict = is_alike (info, best_value, worst_value) ? LR_VERDICT_ALIKE : LR_VERDICT_BEST;
      if (row->verdict == LR_VERDICT_ALIKE)
        say_alike (info, comparison, row, units, why);
      else
        {
          sort_out (comparison, row, best, &n_winners, &next);
          say_best (comparison, row, n_winners, next, units, why);
        }
    }
  if (n_rooms (comparison) > 1)
    {
      if (is_known_at_all (comparison, row->row))
        say_unknown (comparison, row->row, why);
      else
        g_string_append (why, _("not known of any"));
    }
  row->why = g_strdup (why->str);
}

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
  judge_row (comparison, row, units);

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

  find_ends (compared->comparison, row->row, &best, &worst);
  a = figure_of (compared->comparison, row->row, best)->value;
  b = figure_of (compared->comparison, row->row, worst)->value;
  from = info->format (fmin (a, b), units);
  to = info->format (fmax (a, b), units);
  /* Translators: a row of the table, its least and its greatest figure */
  return g_strdup_printf (_("%s (%s to %s)"), _(info->brief), from, to);
}

static char *
say_summary (const LrCompared *compared,
             LrUnits           units)
{
  g_autoptr (GPtrArray) rows = g_ptr_array_new (), words = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *list = NULL;
  guint n_few = 0;

  if (n_rooms (compared->comparison) < 2)
    return g_strdup (_("There is one set-up only: add another, or copy this one, to compare."));

  for (guint i = 0; i < compared->rows->len; i++)
    {
      LrComparedRow *row = compared->rows->pdata[i];

      n_few += row->verdict == LR_VERDICT_FEW ? 1 : 0;
      if (row->verdict == LR_VERDICT_BEST && row->times >= LEAST_TIMES)
        g_ptr_array_add (rows, row);
    }
  if (n_few == compared->rows->len)
    return g_strdup (_("Nothing is known of two of them yet: draw the rooms, and note what was seen on the visit."));
  if (rows->len == 0)
    return g_strdup (_("They differ in nothing by much."));

  g_ptr_array_sort (rows, compare_times);
  for (guint i = 0; i < MIN (rows->len, MOST_SAID); i++)
    g_ptr_array_add (words, say_times (compared, rows->pdata[i], units));
  list = join (words);
  /* Translators: rows of the table with their least and greatest figures */
  return g_strdup_printf (_("They differ most in %s."), list);
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

  list = join (names);
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
  g_free (compared->places);
  g_free (compared);
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
