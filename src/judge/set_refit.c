/* set_refit.c - the smallest move of the whole set that mends the most
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Coarse to fine: each level has a grid of moves and turns, finer than the one before and, once something was found, no
 * farther out than that. A level is walked from the smallest move on, so that the first that leaves nothing to fix and
 * nothing new to mind is the smallest of its grid. At the end the move is made smaller step by step. All of it is the same
 * each time.
 */

#include "config.h"

#include "set_refit_private.h"

#include "diff_words.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdlib.h>

#define MAX_CANDIDATES 100000 /* of a level; some hundreds are tried, others are seen at a glance to be no better */

typedef struct
{
  double step_m, turn_rad;
  guint  max_trials;
} Level;

static const Level levels[] = {
  { 0.50, 30.0 * LR_DEG, 1000 },
  { 0.25, 15.0 * LR_DEG, 800 },
  { 0.10, 5.0 * LR_DEG, 800 },
  { 0.05, 5.0 * LR_DEG, 600 },
};

static const Level steps[] = {
  { 0.05, 2.0 * LR_DEG, 0 }, { 0.02, 1.0 * LR_DEG, 0 }, { 0.01, 1.0 * LR_DEG, 0 },
};

typedef struct
{
  LrSetMove move;
  double    farthest_m;
  guint     order;
} Candidate;

static int
compare (gconstpointer a,
         gconstpointer b)
{
  const Candidate *x = a, *y = b;

  if (x->farthest_m != y->farthest_m)
    return x->farthest_m < y->farthest_m ? -1 : 1;

  return x->order < y->order ? -1 : 1;
}

static gboolean
is_over (const LrSetSearch *search)
{
  return g_cancellable_is_cancelled (search->cancellable);
}

static gboolean
has_found (const LrSetSearch *search)
{
  return search->best.farthest_m > 0.0;
}

/* Nothing to fix that a move could mend, nothing new to mind: only a smaller move is better */
static gboolean
is_clean (const LrSetSearch *search)
{
  return search->best.n_fix <= search->n_within && search->best.n_new_mind == 0;
}

static void
add_turns (const LrSetSearch *search,
           const Level       *level,
           LrVec2             by_m,
           GArray            *candidates)
{
  int n = (int) floor (LR_PI / level->turn_rad + 1e-9);

  for (int k = -n + 1; k <= n; k++)
    {
      Candidate candidate = { .move = { by_m, k * level->turn_rad }, .order = candidates->len };

      candidate.farthest_m = lr_set_search_farthest_m (search, &candidate.move);
      if (candidate.farthest_m > 0.0 && (!has_found (search) || candidate.farthest_m < search->best.farthest_m))
        g_array_append_val (candidates, candidate);
    }
}

static void
add_place (const LrSetSearch *search,
           const Level       *level,
           int                i,
           int                j,
           GArray            *candidates)
{
  const LrRoom *room = lr_plan_get_setup (search->plan)->room;
  LrVec2 by_m = lr_vec2 (i * level->step_m, j * level->step_m);

  if (has_found (search) && lr_vec2_length (by_m) >= search->best.farthest_m)
    return;
  if (lr_polygon_contains (room->corners_m, room->n_corners, lr_vec2_add (search->about_m, by_m)))
    add_turns (search, level, by_m, candidates);
}

/* Keeps the smallest moves; the farthest of them, or no end while there are fewer */
static double
keep_smallest (GArray *candidates)
{
  g_array_sort (candidates, compare);
  if (candidates->len < MAX_CANDIDATES)
    return HUGE_VAL;

  g_array_set_size (candidates, MAX_CANDIDATES);
  return g_array_index (candidates, Candidate, MAX_CANDIDATES - 1).farthest_m;
}

/* Whole steps from where the set is, as long as what it is turned about stays in the room. Ring by ring, for a hall has more than can be tried:
 * something moves at least as far as the middle that the set is turned about, so that rings beyond the farthest kept have nothing smaller */
static GArray *
make_candidates (const LrSetSearch *search,
                 const Level       *level)
{
  const LrRoom *room = lr_plan_get_setup (search->plan)->room;
  GArray *candidates = g_array_new (FALSE, FALSE, sizeof (Candidate));
  double reach_m, bound_m = HUGE_VAL;
  LrVec2 low_m, high_m;

  lr_polygon_bounds (room->corners_m, room->n_corners, &low_m, &high_m);
  reach_m = fmax (fmax (high_m.x - search->about_m.x, search->about_m.x - low_m.x), fmax (high_m.y - search->about_m.y, search->about_m.y - low_m.y));
  for (int ring = 0; ring * level->step_m <= fmin (reach_m, bound_m) && !is_over (search); ring++)
    {
      for (int k = -ring; k <= ring; k++)
        {
          add_place (search, level, k, -ring, candidates);
          if (ring > 0)
            add_place (search, level, k, ring, candidates);
          if (ABS (k) < ring)
            {
              add_place (search, level, -ring, k, candidates);
              add_place (search, level, ring, k, candidates);
            }
        }
      if (candidates->len >= 2 * MAX_CANDIDATES)
        bound_m = keep_smallest (candidates);
    }
  keep_smallest (candidates);

  return candidates;
}

static void
walk (LrSetSearch *search,
      const Level *level)
{
  g_autoptr (GArray) candidates = make_candidates (search, level);
  guint n_last = search->n_trials + level->max_trials;

  for (guint i = 0; i < candidates->len && search->n_trials < n_last && !is_over (search); i++)
    {
      const Candidate *candidate = &g_array_index (candidates, Candidate, i);

      if (is_clean (search) && candidate->farthest_m >= search->best.farthest_m)
        return;
      lr_set_search_try (search, &candidate->move);
    }
}

/* Steps from the best towards less, as long as they are better */
static void
polish (LrSetSearch *search,
        const Level *step)
{
  gboolean is_better = TRUE;

  while (is_better && !is_over (search))
    {
      LrSetMove from = search->best.move;

      is_better = FALSE;
      for (int i = -1; i <= 1; i++)
        for (int j = -1; j <= 1; j++)
          for (int k = -1; k <= 1; k++)
            {
              LrSetMove move = { lr_vec2_add (from.by_m, lr_vec2 (i * step->step_m, j * step->step_m)), from.turn_rad + k * step->turn_rad };

              is_better = lr_set_search_try (search, &move) || is_better;
            }
    }
}

/* Words */

/* What still stands in the way; (transfer full) (nullable) */
static char *
first_fix (const LrPlan *plan,
           LrUnits       units)
{
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrRemarks) remarks = lr_remarks_new (study, units);
  const LrRemark *first = remarks->all->len > 0 ? g_ptr_array_index (remarks->all, 0) : NULL;

  return first != NULL && first->grade == LR_GRADE_FIX ? g_strdup (first->markup) : NULL;
}

static void
say_found (LrSetRefit *refit,
           LrUnits     units)
{
  const LrRoom *room = lr_plan_get_setup (refit->plan)->room;
  g_autofree char *now = lr_say_set_move (room, refit->move.by_m, refit->move.turn_rad, FALSE, units);
  g_autofree char *then = lr_say_set_move (room, refit->move.by_m, refit->move.turn_rad, TRUE, units);
  g_autofree char *left = refit->after.n_fix > 0 ? first_fix (refit->plan, units) : NULL;

  /* Translators: how the set would move: "Move the set 0.40 m towards the west wall", and how many remarks are to fix before and after */
  refit->offer = left == NULL ? g_strdup_printf (_("%s: <b>%u</b> to fix become <b>%u</b>."), now, refit->before.n_fix, refit->after.n_fix)
                              : g_strdup_printf (_("%s: <b>%u</b> to fix become <b>%u</b>. What stays: %s"), now, refit->before.n_fix,
                                                 refit->after.n_fix, left);
  /* Translators: how the set was moved, and how many remarks were to fix before and after */
  refit->done = g_strdup_printf (_("%s: <b>%u</b> to fix became <b>%u</b>."), then, refit->before.n_fix, refit->after.n_fix);
}

static void
say_why (LrSetRefit   *refit,
         const LrPlan *plan,
         LrUnits       units)
{
  g_autofree char *first = refit->state == LR_SET_REFIT_NO_HELP ? first_fix (plan, units) : NULL;

  if (refit->state == LR_SET_REFIT_FINE)
    refit->done = g_strdup (_("Nothing is to fix by place or picture: the set stays where it is."));
  else if (refit->state == LR_SET_REFIT_NO_SET)
    refit->done = g_strdup (_("There is no set to refit: it takes a room with walls, and people or gear in it."));
  else
    refit->done = g_strdup_printf (ngettext ("No move of the whole set helps: <b>%u</b> stays to fix. %s",
                                             "No move of the whole set helps: <b>%u</b> stay to fix. %s", refit->before.n_fix),
                                   refit->before.n_fix, first != NULL ? first : "");
  refit->offer = g_strdup (refit->done);
}

/**
 * lr_set_refit_new:
 * @plan: a plan
 * @units: how lengths are written
 * @cancellable: (nullable): gives it up
 *
 * Looks for the move. It takes some tenths of a second, in a hall some seconds. May be called from any thread.
 *
 * Returns: (transfer full) (nullable): what was found; %NULL: it was cancelled
 */
LrSetRefit *
lr_set_refit_new (const LrPlan *plan,
                  LrUnits       units,
                  GCancellable *cancellable)
{
  LrSetRefit *refit = g_new0 (LrSetRefit, 1);
  LrSetSearch search;

  lr_set_search_init (&search, plan, cancellable);
  refit->before = refit->after = search.before;
  refit->state = LR_SET_REFIT_NO_HELP;
  if (search.places->len == 0 || lr_plan_get_setup (plan)->room->n_corners < 3)
    refit->state = LR_SET_REFIT_NO_SET;
  else if (search.before.n_fix == 0)
    refit->state = LR_SET_REFIT_FINE;
  else if (!is_clean (&search))
    {
      for (gsize i = 0; i < G_N_ELEMENTS (levels); i++)
        walk (&search, &levels[i]);
      for (gsize i = 0; i < G_N_ELEMENTS (steps) && has_found (&search); i++)
        polish (&search, &steps[i]);
    }

  if (has_found (&search) && !is_over (&search))
    {
      refit->state = LR_SET_REFIT_FOUND;
      refit->move = search.best.move;
      refit->farthest_m = search.best.farthest_m;
      refit->plan = lr_set_refit_apply (plan, &refit->move, NULL);
      refit->after = lr_set_score (refit->plan);
      say_found (refit, units);
    }
  else
    say_why (refit, plan, units);
  refit->n_trials = search.n_trials;
  lr_set_search_clear (&search);

  if (is_over (&search))
    g_clear_pointer (&refit, lr_set_refit_free);
  return refit;
}

/**
 * lr_set_refit_free:
 * @refit: (transfer full) (nullable): what was found
 */
void
lr_set_refit_free (LrSetRefit *refit)
{
  if (refit == NULL)
    return;

  g_clear_pointer (&refit->plan, lr_plan_unref);
  g_free (refit->offer);
  g_free (refit->done);
  g_free (refit);
}
