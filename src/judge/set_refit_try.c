/* set_refit_try.c - what a move of the set comes to
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A move is given up as soon as what was counted so far is worse than the best: first by what would stand outside the room,
 * then by what would stand in each other, then by all that a trial of a remedy judges, then by what stands in the pictures.
 * Only then are leads laid anew and everything is judged. What is counted early is a part of what is counted last.
 */

#include "config.h"

#include "set_refit_private.h"

#include "lead_laying.h"

#include <math.h>

#define FARTHER_M 0.01 /* out of the room; a tape tells a centimetre */

/* Everything that hangs on how leads lie, which is known when they are laid anew */
static gboolean
is_of_leads (LrCheck check)
{
  return check >= LR_CHECK_LEAD_LENGTH && check <= LR_CHECK_REEL;
}

static LrSetScore
count (const GArray *verdicts,
       gboolean      has_leads)
{
  LrSetScore score = { 0, 0 };

  for (guint i = 0; i < verdicts->len; i++)
    {
      const LrVerdict *verdict = &g_array_index (verdicts, LrVerdict, i);

      if (!has_leads && is_of_leads (verdict->check))
        continue;
      score.n_fix += verdict->grade == LR_GRADE_FIX;
      score.n_mind += verdict->grade == LR_GRADE_MIND;
    }

  return score;
}

/* Looks, distances, lenses and cuts: people and cameras among themselves */
static gboolean
is_within_set (LrCheck check)
{
  switch ((int) check)
    {
    case LR_CHECK_BACKGROUND_SEEN:
    case LR_CHECK_BACKGROUND_DISTANCE:
    case LR_CHECK_BACKGROUND_BLUR:
      return FALSE;
    case LR_CHECK_CEILING:
    case LR_CHECK_SHUTTER:
    case LR_CHECK_EXPOSURE_MATCH:
    case LR_CHECK_NATIVE_ISO:
    case LR_CHECK_CIRCUIT:
    case LR_CHECK_OUTLETS:
    case LR_CHECK_STAND:
    case LR_CHECK_MISSING:
      return TRUE;
    default:
      return check <= LR_CHECK_REVERSE;
    }
}

static guint
count_within (const GArray *verdicts)
{
  guint n = 0;

  for (guint i = 0; i < verdicts->len; i++)
    {
      const LrVerdict *verdict = &g_array_index (verdicts, LrVerdict, i);

      n += verdict->grade == LR_GRADE_FIX && is_within_set (verdict->check);
    }

  return n;
}

static LrSetScore
score_plan (const LrPlan *plan,
            guint        *n_within)
{
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (GArray) verdicts = g_array_new (FALSE, FALSE, sizeof (LrVerdict));
  g_autoptr (GPtrArray) remarks = g_ptr_array_new_with_free_func ((GDestroyNotify) lr_remark_free);
  LrJudge judge = {
    .study = study,
    .limits = plan->limits.value,
    .units = LR_UNITS_METRIC,
    .verdicts = verdicts,
    .remarks = remarks,
    .words = g_string_chunk_new (4096), .is_moving = TRUE,
  };

  lr_judge_all (&judge);
  g_string_chunk_free (judge.words);
  if (n_within != NULL)
    *n_within = count_within (verdicts);

  return count (verdicts, TRUE);
}

/**
 * lr_set_score:
 * @plan: a plan
 *
 * Returns: how much is to fix and to mind, as it is told while no levels of light are known
 */
LrSetScore
lr_set_score (const LrPlan *plan)
{
  return score_plan (plan, NULL);
}

static gboolean
moves_along (const LrSetup *setup,
             const LrItem  *item)
{
  return lr_item_kind_info (item->kind)->place == LR_PLACE_FLOOR && *lr_item_carrier (item) == '\0'
         && lr_setup_goes_with (setup, item, NULL) == LR_GOES_SET;
}

/* Places of what goes with the set, boom tips too; and what it is turned about */
static GArray *
find_places (const LrPlan *plan,
             LrVec2       *about_m)
{
  const LrSetup *setup = lr_plan_get_setup (plan);
  const LrItem *subject = lr_setup_find_role (setup, LR_ROLE_SUBJECT);
  GArray *places = g_array_new (FALSE, FALSE, sizeof (LrVec2));
  LrVec2 sum_m = { 0.0, 0.0 };

  for (guint i = 0; i < setup->items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (setup->items, i);

      if (!moves_along (setup, item))
        continue;
      g_array_append_val (places, item->at_m);
      sum_m = lr_vec2_add (sum_m, item->at_m);
    }
  *about_m = places->len > 0 ? lr_vec2_scale (sum_m, 1.0 / places->len) : sum_m;
  if (subject != NULL && moves_along (setup, subject))
    *about_m = subject->at_m;

  return places;
}

/* Whether what is between them stays as it is when the set moves */
static gboolean
all_go_along (const LrSetup *setup)
{
  for (guint i = 0; i < setup->items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (setup->items, i);
      gboolean is_asked = item->kind == LR_ITEM_PERSON || item->kind == LR_ITEM_CAMERA || item->kind == LR_ITEM_LIGHT;

      if (is_asked && lr_setup_goes_with (setup, item, NULL) != LR_GOES_SET)
        return FALSE;
    }

  return TRUE;
}

/**
 * lr_set_search_init:
 * @search: (out): a search
 * @plan: a plan
 * @cancellable: (nullable): gives it up
 *
 * The best there is to begin with is to leave the set where it is.
 */
void
lr_set_search_init (LrSetSearch  *search,
                    const LrPlan *plan,
                    GCancellable *cancellable)
{
  *search = (LrSetSearch) { .plan = plan, .cancellable = cancellable, .n_trials = 1 };
  search->places = find_places (plan, &search->about_m);
  search->study = lr_study_new_trial (plan);
  search->before = score_plan (plan, &search->n_within);
  if (!all_go_along (lr_plan_get_setup (plan)))
    search->n_within = 0;
  search->best.n_fix = search->before.n_fix;
}

/**
 * lr_set_search_clear:
 * @search: a search
 */
void
lr_set_search_clear (LrSetSearch *search)
{
  g_clear_pointer (&search->study, lr_study_free);
  g_array_unref (search->places);
}

static LrVec2
moved (LrVec2           at_m,
       LrVec2           about_m,
       const LrSetMove *move)
{
  return lr_vec2_add (lr_vec2_add (about_m, lr_vec2_rotate (lr_vec2_sub (at_m, about_m), move->turn_rad)), move->by_m);
}

/**
 * lr_set_search_farthest_m:
 * @search: a search
 * @move: a move
 *
 * Returns: how far the farthest thing of the set goes [m]
 */
double
lr_set_search_farthest_m (const LrSetSearch *search,
                          const LrSetMove   *move)
{
  double farthest_m = 0.0;

  for (guint i = 0; i < search->places->len; i++)
    {
      LrVec2 at_m = g_array_index (search->places, LrVec2, i);

      farthest_m = fmax (farthest_m, lr_vec2_distance (moved (at_m, search->about_m, move), at_m));
    }

  return farthest_m;
}

/**
 * lr_set_move_farthest_m:
 * @plan: a plan
 * @move: a move of its set
 *
 * Returns: how far the farthest thing of the set goes [m]
 */
double
lr_set_move_farthest_m (const LrPlan    *plan,
                        const LrSetMove *move)
{
  LrSetSearch search = { .plan = plan };
  double farthest_m;

  search.places = find_places (plan, &search.about_m);
  farthest_m = lr_set_search_farthest_m (&search, move);
  lr_set_search_clear (&search);

  return farthest_m;
}

static LrPlan *
move_set (const LrPlan     *plan,
          const LrSetMove  *move,
          GError          **error)
{
  LrVec2 about_m;

  g_array_unref (find_places (plan, &about_m));

  return lr_plan_move_set (plan, about_m, move->turn_rad, move->by_m, error);
}

/* Leads go along the walls from their sockets to where their loads are now; one that finds no way stays as it was taken along */
static LrPlan *
lay_leads (LrPlan        *plan,
           const LrStudy *study)
{
  const GPtrArray *items = lr_plan_get_setup (plan)->items;
  g_autoptr (LrPlan) first = lr_plan_ref (plan); /* its items are walked over */

  for (guint i = 0; i < items->len; i++)
    {
      const LrItem *lead = g_ptr_array_index (items, i);
      LrLeadLaying laying = { NULL };
      LrLeadWay way;
      LrPlan *laid;

      if (lead->kind != LR_ITEM_LEAD || lead->n_path == 0 || lr_setup_goes_with (lr_plan_get_setup (first), lead, NULL) != LR_GOES_SET
          || !lr_lead_find_way (study, lead, &way))
        continue;
      laying.path_m = way.path_m;
      laying.n_path = way.n_path;
      laid = lr_plan_lay_lead (plan, lead->id, &laying, NULL);
      if (laid == NULL)
        continue;
      lr_plan_unref (plan);
      plan = laid;
    }

  return plan;
}

/**
 * lr_set_refit_apply:
 * @plan: a plan
 * @move: how its set moves
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the next plan, with the set moved as one and its leads laid anew
 */
LrPlan *
lr_set_refit_apply (const LrPlan     *plan,
                    const LrSetMove  *move,
                    GError          **error)
{
  LrPlan *next = move_set (plan, move, error);
  g_autoptr (LrStudy) study = next != NULL ? lr_study_new_trial (next) : NULL;

  return next != NULL ? lay_leads (next, study) : NULL;
}

/* Whether a move that comes to at least so much may still be better than the best */
static gboolean
may_be_better (const LrSetSearch *search,
               LrSetScore         score,
               double             farthest_m)
{
  guint n_new_mind = score.n_mind > search->before.n_mind ? score.n_mind - search->before.n_mind : 0;

  if (score.n_fix != search->best.n_fix)
    return score.n_fix < search->best.n_fix;
  if (n_new_mind != search->best.n_new_mind)
    return n_new_mind < search->best.n_new_mind;

  return farthest_m < search->best.farthest_m - 1e-9;
}

static guint
n_outside (const LrSetSearch *search,
           const LrSetMove   *move)
{
  const LrRoom *room = lr_plan_get_setup (search->plan)->room;
  guint n = 0;

  for (guint i = 0; i < search->places->len; i++)
    n += !lr_polygon_contains (room->corners_m, room->n_corners,
                               moved (g_array_index (search->places, LrVec2, i), search->about_m, move));

  return n;
}

/* How far a thing reaches out of the room [m] */
static double
outside_m (const LrStudy *study,
           const char    *id)
{
  double farthest_m = 0.0;

  for (guint i = 0; i < study->clashes->len; i++)
    {
      const LrClash *clash = &g_array_index (study->clashes, LrClash, i);

      if (clash->type == LR_CLASH_OUTSIDE && g_str_equal (clash->a->item->id, id))
        farthest_m = fmax (farthest_m, clash->depth_m);
    }

  return farthest_m;
}

/* Fewer sentences are no gain where a thing goes farther out of the room for them */
static gboolean
leaves_room (const LrSetSearch *search,
             const LrStudy     *study)
{
  for (guint i = 0; i < study->clashes->len; i++)
    {
      const LrClash *clash = &g_array_index (study->clashes, LrClash, i);

      if (clash->type == LR_CLASH_OUTSIDE && lr_clash_grade (clash, study->plan->limits.value[LR_LIMIT_OVERLAP]) == LR_GRADE_FIX
          && clash->depth_m > outside_m (search->study, clash->a->item->id) + FARTHER_M)
        return TRUE;
    }

  return FALSE;
}

/* Judges a moved plan step by step; FALSE: it cannot be better */
static gboolean
passes_trial (LrSetSearch   *search,
              const LrStudy *study,
              double         farthest_m)
{
  g_autoptr (GArray) verdicts = g_array_new (FALSE, FALSE, sizeof (LrVerdict));
  LrJudge trial = { .study = study, .limits = study->plan->limits.value, .is_trial = TRUE, .verdicts = verdicts };

  lr_judge_room (&trial);
  if (!may_be_better (search, count (verdicts, FALSE), farthest_m))
    return FALSE;

  g_array_set_size (verdicts, 0);
  lr_judge_all (&trial);
  if (!may_be_better (search, count (verdicts, FALSE), farthest_m))
    return FALSE;

  lr_study_find_intrusions ((LrStudy *) study, NULL);
  lr_judge_intrusions (&trial);

  return may_be_better (search, count (verdicts, FALSE), farthest_m);
}

/**
 * lr_set_search_try:
 * @search: a search
 * @move: a move
 *
 * Returns: whether it is better than the best so far, and is that now
 */
gboolean
lr_set_search_try (LrSetSearch     *search,
                   const LrSetMove *move)
{
  double farthest_m = lr_set_search_farthest_m (search, move);
  g_autoptr (LrPlan) plan = NULL;
  g_autoptr (LrStudy) study = NULL;
  LrSetScore score = { n_outside (search, move), 0 };

  if (!may_be_better (search, score, farthest_m))
    return FALSE;
  plan = move_set (search->plan, move, NULL);
  if (plan == NULL)
    return FALSE;

  search->n_trials++;
  study = lr_study_new_trial (plan);
  if (leaves_room (search, study) || !passes_trial (search, study, farthest_m))
    return FALSE;

  plan = lay_leads (g_steal_pointer (&plan), study);
  score = lr_set_score (plan);
  if (!may_be_better (search, score, farthest_m))
    return FALSE;

  search->best = (LrSetTrial) { *move, score.n_fix, score.n_mind > search->before.n_mind ? score.n_mind - search->before.n_mind : 0,
                                farthest_m };
  return TRUE;
}
