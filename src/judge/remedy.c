/* remedy.c - edits that would mend
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A family offers one or more remedies, the best first. Each is tried (trial.c), and the first that passes is taken. So a remedy
 * never pushes a thing into another or trades one fault for the next.
 */

#include "config.h"

#include "judge_parts.h"

#include <glib/gi18n-lib.h>

/* Trials cost a study each; a set-up with very many things or faults gets fewer of them, so that judging stays quick */
#define MAX_TRIALS 32
#define TRIALS_TIMES_ITEMS 4000

typedef struct
{
  LrRemark *remark;
  guint     verdict;
  LrRemedy *remedy;
} LrOffer;

static void
clear_change (gpointer change)
{
  g_free ((char *) ((LrChange *) change)->id);
}

static void
free_laying (gpointer data)
{
  LrLaying *laying = data;

  g_free (laying->id);
  g_free (laying->socket);
  g_free (laying->feeds);
  g_free (laying->kit);
  g_free (laying->path_m);
  g_free (laying);
}

/**
 * lr_remedy_new:
 *
 * Returns: (transfer full): a remedy that changes nothing yet
 */
LrRemedy *
lr_remedy_new (void)
{
  LrRemedy *remedy = g_new0 (LrRemedy, 1);

  remedy->changes = g_array_new (FALSE, FALSE, sizeof (LrChange));
  g_array_set_clear_func (remedy->changes, clear_change);
  return remedy;
}

/**
 * lr_remedy_free:
 * @remedy: (transfer full): a remedy
 */
void
lr_remedy_free (LrRemedy *remedy)
{
  g_free (remedy->sentence);
  g_free (remedy->markup);
  g_free (remedy->short_figure);
  g_array_unref (remedy->changes);
  g_clear_pointer (&remedy->layings, g_ptr_array_unref);
  g_free (remedy);
}

/**
 * lr_remedy_lay:
 * @remedy: a remedy
 * @lead: (nullable): a lead; %NULL: a new one of the van, of the kit's entry that @laying names
 * @laying: how it is laid then
 *
 * Lays it another way.
 */
void
lr_remedy_lay (LrRemedy           *remedy,
               const LrItem       *lead,
               const LrLeadLaying *laying)
{
  LrLaying *copy = g_new0 (LrLaying, 1);

  copy->id = lead != NULL ? g_strdup (lead->id) : NULL;
  copy->socket = g_strdup (laying->socket);
  copy->feeds = g_strdup (laying->feeds);
  copy->kit = g_strdup (laying->kit);
  copy->path_m = g_memdup2 (laying->path_m, laying->n_path * sizeof *laying->path_m);
  copy->n_path = laying->n_path;
  if (remedy->layings == NULL)
    remedy->layings = g_ptr_array_new_with_free_func (free_laying);
  g_ptr_array_add (remedy->layings, copy);
}

/**
 * lr_remedy_change:
 * @remedy: a remedy
 * @item: what it changes
 * @key: (transfer none): a property, a literal
 * @value: its value then, in inside units
 */
void
lr_remedy_change (LrRemedy     *remedy,
                  const LrItem *item,
                  const char   *key,
                  double        value)
{
  LrChange change = { g_strdup (item->id), key, value };

  g_array_append_val (remedy->changes, change);
}

static gboolean
is_aimed (const LrItem *item)
{
  return (item->kind == LR_ITEM_CAMERA && item->camera.aims_at[0] != '\0')
         || (item->kind == LR_ITEM_LIGHT && item->light.aims_at[0] != '\0')
         || (item->kind == LR_ITEM_PERSON && item->person.looks_at[0] != '\0');
}

/**
 * lr_remedy_move:
 * @remedy: a remedy
 * @placed: what it moves
 * @to_m: where to [m]
 * @about_m: (nullable): round what it swings [m]
 *
 * A thing that looks or aims at nothing turns by as much as it swings round @about_m, so that it still faces it.
 */
void
lr_remedy_move (LrRemedy       *remedy,
                const LrPlaced *placed,
                LrVec2          to_m,
                const LrVec2   *about_m)
{
  lr_remedy_change (remedy, placed->item, "x-mm", to_m.x);
  lr_remedy_change (remedy, placed->item, "y-mm", to_m.y);

  if (about_m != NULL && !is_aimed (placed->item))
    {
      double turn_rad = lr_vec2_angle_rad (lr_vec2_sub (to_m, *about_m))
                        - lr_vec2_angle_rad (lr_vec2_sub (placed->at_m, *about_m));

      lr_remedy_change (remedy, placed->item, "facing-deg", lr_angle_wrap_rad (placed->item->facing_rad + turn_rad));
    }
}

/**
 * lr_judge_offer:
 * @judge: a judge
 * @remark: a remark, the one added last
 * @remedy: (transfer full): what would mend it
 *
 * Of several for one remark the first that passes its trial is kept; none while the plan moves.
 */
void
lr_judge_offer (LrJudge  *judge,
                LrRemark *remark,
                LrRemedy *remedy)
{
  LrOffer offer = { remark, judge->verdicts->len - 1, remedy };

  if (judge->is_moving)
    {
      lr_remedy_free (remedy);
      return;
    }

  if (judge->offers == NULL)
    judge->offers = g_array_new (FALSE, FALSE, sizeof (LrOffer));
  g_array_append_val (judge->offers, offer);
}

static guint
count_trials (const LrJudge *judge)
{
  return MIN (MAX_TRIALS, TRIALS_TIMES_ITEMS / MAX (judge->study->placed->len, 1));
}

/**
 * lr_judge_may_offer:
 * @judge: a judge
 * @remark: a remark, the one added last
 *
 * Each remark before it that has an offer and is tried before it takes one of the trials at least.
 *
 * Returns: whether an offer for it may be tried
 */
gboolean
lr_judge_may_offer (const LrJudge  *judge,
                    const LrRemark *remark)
{
  const LrRemark *last = NULL;
  guint n_before = 0;

  if (judge->is_moving || judge->study->plan->is_read_only)
    return FALSE;

  for (guint i = 0; judge->offers != NULL && i < judge->offers->len; i++)
    {
      const LrRemark *other = g_array_index (judge->offers, LrOffer, i).remark;

      n_before += other != last && other != remark && other->grade <= remark->grade;
      last = other;
    }
  return n_before < count_trials (judge);
}

static LrRemedy *
make_move (LrJudge        *judge,
           const LrPlaced *placed,
           LrVec2          to_m,
           const LrVec2   *about_m,
           const char     *to)
{
  LrRemedy *remedy = lr_remedy_new ();
  LrVec2 way = lr_vec2_sub (to_m, placed->at_m);
  const char *length = lr_say_length (judge, lr_vec2_length (way));
  const char *name = lr_say_name (judge, placed);

  lr_remedy_move (remedy, placed, to_m, about_m);
  if (to != NULL)
    /* Translators: "Move B 0.46 m towards the north wall, to 32°." */
    lr_remedy_say (remedy, length, _("Move %s <b>%s</b> %s, to <b>%s</b>."), name, length,
                   lr_say_towards (judge, way), to);
  else
    /* Translators: "Move B 0.46 m towards the north wall." */
    lr_remedy_say (remedy, length, _("Move %s <b>%s</b> %s."), name, length, lr_say_towards (judge, way));

  return remedy;
}

/**
 * lr_judge_offer_move:
 * @judge: a judge
 * @remark: a remark, the one added last
 * @placed: what moves
 * @to_m: where to [m]
 * @about_m: (nullable): round what it swings [m]
 * @to: (nullable): the figure that it comes to: "32°"
 *
 * Offers "Move B 0.46 m towards the north wall, to 32°.", unless that place is taken. Every move is tried: whatever moves may take its
 * lead, its light or what it hides along.
 */
void
lr_judge_offer_move (LrJudge        *judge,
                     LrRemark       *remark,
                     const LrPlaced *placed,
                     LrVec2          to_m,
                     const LrVec2   *about_m,
                     const char     *to)
{
  if (judge->is_moving)
    return;

  /* A place that is taken needs no trial */
  if (!placed->has_footprint || lr_study_is_clear_by_legs (judge->study, placed, to_m, judge->limits[LR_LIMIT_OVERLAP]))
    lr_judge_offer (judge, remark, make_move (judge, placed, to_m, about_m, to));
}

static void
keep (LrRemark *remark,
      LrRemedy *remedy)
{
  remark->remedy = remedy;
  lr_remark_say (remark, "%s", remedy->markup);
}

/**
 * lr_judge_keep:
 * @judge: a judge
 * @remark: a remark
 * @remedy: (transfer full): what mends it
 *
 * Gives the remark a remedy that needs no trial, unless the plan moves.
 */
void
lr_judge_keep (LrJudge  *judge,
               LrRemark *remark,
               LrRemedy *remedy)
{
  if (judge->is_moving || judge->study->plan->is_read_only)
    lr_remedy_free (remedy);
  else
    keep (remark, remedy);
}

/**
 * lr_judge_drop_offers:
 * @judge: a judge that has asked every family
 *
 * Forgets all offers: nobody will ask for remedies.
 */
void
lr_judge_drop_offers (LrJudge *judge)
{
  for (guint i = 0; judge->offers != NULL && i < judge->offers->len; i++)
    g_clear_pointer (&g_array_index (judge->offers, LrOffer, i).remedy, lr_remedy_free);
  g_clear_pointer (&judge->offers, g_array_unref);
}

/**
 * lr_judge_try_offers:
 * @judge: a judge that has asked every family
 *
 * Tries all offers, those for a Fix first, and lets each remark say the remedy that it keeps.
 */
void
lr_judge_try_offers (LrJudge *judge)
{
  guint n_left = count_trials (judge);

  for (LrGrade grade = LR_GRADE_FIX; judge->offers != NULL && grade <= LR_GRADE_MIND; grade++)
    for (guint i = 0; i < judge->offers->len; i++)
      {
        LrOffer *offer = &g_array_index (judge->offers, LrOffer, i);

        if (offer->remark->grade != grade || offer->remark->remedy != NULL || n_left == 0)
          continue;

        n_left--;
        if (lr_judge_try (judge, offer->remedy, &g_array_index (judge->verdicts, LrVerdict, offer->verdict)))
          keep (offer->remark, g_steal_pointer (&offer->remedy));
      }

  lr_judge_drop_offers (judge);
}

/* @plan is taken over */
static LrPlan *
apply_laying (LrPlan          *plan,
              const LrLaying  *laying,
              GError         **error)
{
  const LrLeadLaying how = { laying->socket, laying->feeds, laying->id != NULL ? laying->kit : NULL, laying->path_m, laying->n_path };
  g_autoptr (LrPlan) before = plan;
  g_autofree char *id = g_strdup (laying->id);
  g_autoptr (LrPlan) with = id != NULL ? lr_plan_ref (before)
                                       : lr_plan_add_from_kit (before, laying->kit, laying->path_m[0], 0.0, &id, error);

  return with != NULL ? lr_plan_lay_lead (with, id, &how, error) : NULL;
}

/**
 * lr_remedy_apply:
 * @remedy: a remedy
 * @plan: the plan that it was made for, or one since
 * @error: return location
 *
 * Returns: (transfer full) (nullable): the plan with the remedy applied
 */
LrPlan *
lr_remedy_apply (const LrRemedy  *remedy,
                 const LrPlan    *plan,
                 GError         **error)
{
  LrPlan *next = lr_plan_change (plan, (const LrChange *) (gpointer) remedy->changes->data, remedy->changes->len, error);

  for (guint i = 0; next != NULL && remedy->layings != NULL && i < remedy->layings->len; i++)
    next = apply_laying (next, g_ptr_array_index (remedy->layings, i), error);

  return next;
}
