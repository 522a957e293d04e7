/* comparison_verdict.c - what is best in a row of the table of rooms, and why
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Figures in order, those next to each other that differ by no more than can be told are of one group, and the first group is best: each of
 * it is better than each of the others by more than can be told, and none is left out for a difference that nobody could tell. Where
 * such steps lead from the best to the worst, none is best.
 */

#include "config.h"

#include "comparison_private.h"

#include <glib/gi18n-lib.h>

/**
 * lr_compare_join:
 * @words: (element-type utf8): some words
 *
 * Returns: (transfer full): "A", "A and B", "A, B and C"; "" for none
 */
char *
lr_compare_join (const GPtrArray *words)
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

static gboolean
is_alike (const LrCompareInfo *info,
          double               a,
          double               b)
{
  return fabs (a - b) <= fmax (info->tie, info->tie_share * fmax (fabs (a), fabs (b))) + 1e-9;
}

typedef struct
{
  guint  index;     /* of the room */
  double value;
  double rank;      /* the less the better */
} Place;

static int
compare_places (gconstpointer a,
                gconstpointer b)
{
  const Place *x = a, *y = b;

  return x->rank < y->rank ? -1 : x->rank > y->rank ? 1 : (int) x->index - (int) y->index;
}

/* Those that are known, the best first; (transfer full) (element-type Place) */
static GArray *
place_rooms (const LrComparison *comparison,
             LrCompare           row)
{
  GArray *places = g_array_new (FALSE, FALSE, sizeof (Place));
  double sign = lr_compare_info (row)->is_less_better ? 1.0 : -1.0;

  for (guint i = 0; i < n_rooms (comparison); i++)
    {
      const LrFigure *figure = figure_of (comparison, row, i);
      Place place = { i, figure->value, sign * figure->value };

      if (figure->known == LR_KNOWN)
        g_array_append_val (places, place);
    }
  g_array_sort (places, compare_places);

  return places;
}

static const Place *
place_at (const GArray *places,
          guint         at)
{
  return &g_array_index (places, Place, at);
}

/* How many are of the first group */
static guint
count_winners (const GArray        *places,
               const LrCompareInfo *info)
{
  guint n = 1;

  while (n < places->len && is_alike (info, place_at (places, n - 1)->value, place_at (places, n)->value))
    n++;

  return n;
}

/**
 * lr_compare_ends:
 * @comparison: a comparison
 * @row: which figure
 * @best: (out): index of the room whose figure is best of those that are known
 * @worst: (out): of the room whose figure is worst
 *
 * Returns: %FALSE, with both untouched, if fewer than two are known
 */
gboolean
lr_compare_ends (const LrComparison *comparison,
                 LrCompare           row,
                 guint              *best,
                 guint              *worst)
{
  g_autoptr (GArray) places = place_rooms (comparison, row);

  if (places->len < 2)
    return FALSE;

  *best = place_at (places, 0)->index;
  *worst = place_at (places, places->len - 1)->index;
  return TRUE;
}

/* As a factor; HUGE_VAL: from nothing to something */
static double
times_apart (const LrCompareInfo *info,
             double               a,
             double               b)
{
  double low = fmin (a, b) + info->base, high = fmax (a, b) + info->base;

  if (info->db_twice > 0.0)
    return pow (2.0, (high - low) / info->db_twice);
  return low > 0.0 ? high / low : high > 0.0 ? HUGE_VAL : 1.0;
}

static char *
say_difference (const LrCompareInfo *info,
                double               difference,
                LrUnits              units)
{
  return info->format_difference != NULL ? info->format_difference (difference, units) : info->format (difference, units);
}

/* Of those that are as good as the best the one that is nearest to the next is told: no more is sure */
static void
say_best (const LrComparison  *comparison,
          const LrComparedRow *row,
          const GArray        *places,
          guint                n_winners,
          LrUnits              units,
          GString             *why)
{
  const LrCompareInfo *info = lr_compare_info (row->row);
  const Place *last = place_at (places, n_winners - 1), *next = place_at (places, n_winners);
  g_autofree char *difference = say_difference (info, fabs (last->value - next->value), units);

  if (n_winners > 1)
    /* Translators: how many set-ups are best; what follows is "3 m² more than Office" */
    g_string_append_printf (why, _("%u alike, "), n_winners);
  g_string_append_printf (why, _(info->better), difference, name_of (comparison, next->index));
}

static void
say_alike (const LrComparison  *comparison,
           const LrComparedRow *row,
           const GArray        *places,
           LrUnits              units,
           GString             *why)
{
  const LrCompareInfo *info = lr_compare_info (row->row);
  g_autofree char *tie = say_difference (info, info->tie, units), *within = g_strdup_printf (_(info->within), tie);

  if (row->verdict == LR_VERDICT_NO_STEP)
    /* Translators: what cannot be told apart: "3 dB, as sound can be foretold" */
    g_string_append_printf (why, _("no clear best: from one to the next within %s"), within);
  else if (row->times > 1.0 + 1e-9)
    /* Translators: what cannot be told apart: "3 dB, as sound can be foretold" */
    g_string_append_printf (why, _("no real difference: within %s"), within);
  else if (places->len < n_rooms (comparison))
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
    {
      LrKnown known = figure_of (comparison, row, i)->known;

      if (known != LR_KNOWN && known != LR_NO_ROOM && known != LR_AWAITED)
        g_ptr_array_add (known == LR_KNOWN_PARTLY ? partly : missing, (gpointer) name_of (comparison, i));
    }

  for (int part = 0; part < 2; part++)
    {
      const GPtrArray *names = part == 0 ? missing : partly;
      g_autofree char *list = lr_compare_join (names);

      if (names->len == 0)
        continue;
      if (why->len > 0)
        g_string_append (why, "; ");
      /* Translators: names of set-ups */
      g_string_append_printf (why, part == 0 ? _("not known: %s") : _("known in part: %s"), list);
    }
}

/* Or will be soon */
static gboolean
is_known_at_all (const LrComparison *comparison,
                 LrCompare           row)
{
  for (guint i = 0; i < n_rooms (comparison); i++)
    if (lr_figure_is_told (figure_of (comparison, row, i)) || figure_of (comparison, row, i)->known == LR_AWAITED)
      return TRUE;

  return FALSE;
}

static void
judge_places (const LrComparison *comparison,
              LrComparedRow      *row,
              const GArray       *places,
              LrUnits             units,
              GString            *why)
{
  const LrCompareInfo *info = lr_compare_info (row->row);
  double best = place_at (places, 0)->value, worst = place_at (places, places->len - 1)->value;
  guint n_winners = count_winners (places, info);

  row->times = times_apart (info, best, worst);
  row->verdict = n_winners < places->len ? LR_VERDICT_BEST : is_alike (info, best, worst) ? LR_VERDICT_ALIKE : LR_VERDICT_NO_STEP;
  if (row->verdict != LR_VERDICT_BEST)
    {
      say_alike (comparison, row, places, units, why);
      return;
    }

  for (guint i = 0; i < n_winners; i++)
    row->is_best[place_at (places, i)->index] = TRUE;
  say_best (comparison, row, places, n_winners, units, why);
}

/**
 * lr_compare_judge_row:
 * @comparison: a comparison
 * @row: one of its rows, with room for what is best
 * @units: how lengths are written
 *
 * Fills verdict, what is best, why, and how far best and worst are apart.
 */
void
lr_compare_judge_row (const LrComparison *comparison,
                      LrComparedRow      *row,
                      LrUnits             units)
{
  g_autoptr (GArray) places = place_rooms (comparison, row->row);
  g_autoptr (GString) why = g_string_new (NULL);

  row->verdict = LR_VERDICT_FEW;
  row->times = NAN;
  if (places->len > 1)
    judge_places (comparison, row, places, units, why);
  if (n_rooms (comparison) > 1)
    {
      if (is_known_at_all (comparison, row->row))
        say_unknown (comparison, row->row, why);
      else
        g_string_append (why, _("not known of any"));
    }
  row->why = g_strdup (why->str);
}
