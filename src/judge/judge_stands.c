/* judge_stands.c - what keeps stands upright, and the sandbag that settles it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All are asked what push at the head tips them, booms as well what holds over what tips. Straight stands are told together: one trip to
 * the van brings all the bags.
 */

#include "config.h"

#include "judge_parts.h"
#include "power_readings.h"

#include <glib/gi18n-lib.h>

#define ROUNDING 1e-6

/* Figures on an assumed mass say so */
static void
say_usual (LrJudge              *judge,
           LrRemark             *remark,
           const LrStandReading *stand)
{
  if (stand->usual_kg > 0.0)
    lr_remark_say (remark, _("Its stand is taken as <b>%s</b>: weigh yours."), lr_say_mass (judge, stand->usual_kg));
}

/* The same of all that a boom is made of */
static void
say_usual_boom (LrJudge              *judge,
                LrRemark             *remark,
                const LrStandReading *stand)
{
  const struct { const char *what; double taken_kg; } parts[] = {
    { _("stand"), stand->usual_kg }, { _("arm"), stand->usual_arm_kg }, { _("microphone"), stand->usual_capsule_kg },
  };
  g_autoptr (GString) text = g_string_new (NULL);

  if (!(stand->usual_arm_kg > 0.0 || stand->usual_capsule_kg > 0.0))
    {
      say_usual (judge, remark, stand);
      return;
    }

  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (parts[i].taken_kg > 0.0)
      g_string_append_printf (text, "%s%s\u00a0<b>%s\u00a0kg</b>", text->len > 0 ? ", " : "", parts[i].what,
                              lr_say_number (judge, parts[i].taken_kg, parts[i].taken_kg < 1.0 ? 2 : 0));
  /* Translators: parts of a boom with the usual masses that are taken for them */
  lr_remark_say (remark, _("Taken as usual: %s; weigh yours."), text->str);
}

static void
say_reach (LrJudge              *judge,
           LrRemark             *remark,
           const LrStandReading *stand,
           double                limit)
{
  LrVec2 tip_m;

  lr_remark_mark_outline (remark, &stand->placed->footprint, NULL);
  if (stand->reach_m <= stand->edge_m)
    {
      lr_remark_say (remark, _("%s reaches <b>%s</b> out, not past its legs."), lr_say_title (judge, stand->placed),
                     lr_say_length (judge, stand->reach_m));
      if (!isfinite (stand->gap.factor))
        return;
    }
  tip_m = lr_vec2_add (stand->placed->at_m, lr_vec2_polar (stand->placed->facing_rad, stand->reach_m));
  lr_remark_mark_line (remark, stand->placed->at_m, tip_m, lr_say_length (judge, stand->reach_m));
  if (stand->reach_m > stand->edge_m)
    lr_remark_say (remark, _("%s reaches <b>%s</b> out: its arm over a gap between two legs, what holds it is <b>%s</b> times what tips it."),
                   lr_say_title (judge, stand->placed), lr_say_length (judge, stand->reach_m),
                   lr_say_number (judge, fmin (stand->gap.factor, 99.0), 2));
  else
    lr_remark_say (remark, _("What holds it is <b>%s</b> times what tips it."), lr_say_number (judge, fmin (stand->gap.factor, 99.0), 2));
  lr_remark_say (remark, stand->gap.factor < 1.0 ? _("It falls; the limit is <b>%s</b>.") : _("The limit is <b>%s</b>."),
                 lr_say_number (judge, limit, 1));
  if (stand->gap.factor < limit - ROUNDING && stand->leg.factor >= limit)
    lr_remark_say (remark, _("With a leg under the arm it is <b>%s</b>."), lr_say_number (judge, fmin (stand->leg.factor, 99.0), 1));
}

static void
judge_boom (LrJudge              *judge,
            const LrStandReading *stand)
{
  double limit = judge->limits[LR_LIMIT_STAND_FACTOR], limit_n = judge->limits[LR_LIMIT_STAND_PUSH], bag_kg = lr_stand_whole_bag_kg (stand->wanted_bag_kg);
  gboolean is_weak = stand->push_n < limit_n - ROUNDING, leans = stand->gap.factor < limit - ROUNDING;
  LrGrade grade = !leans && !is_weak ? LR_GRADE_FINE : stand->gap.factor < 1.0 ? LR_GRADE_FIX : LR_GRADE_MIND;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_STAND, grade, stand->placed, NULL);
  LrRemedy *remedy;

  if (remark == NULL)
    return;

  remark->value = is_weak && !leans ? stand->push_n : stand->gap.factor;
  remark->limit = is_weak && !leans ? limit_n : limit;
  say_reach (judge, remark, stand, limit);
  if (is_weak && stand->gap.factor >= 1.0)
    lr_remark_say (remark, _("It tips when it is nudged with <b>%s\u00a0N</b> at its head; <b>%s\u00a0N</b> is the limit."),
                   lr_say_number (judge, stand->push_n, 1), lr_say_number (judge, limit_n, 0));
  say_usual_boom (judge, remark, stand);
  if (grade == LR_GRADE_FINE)
    return;

  remedy = lr_remedy_new ();
  lr_remedy_change (remedy, stand->placed->item, "bag-kg", bag_kg);
  lr_remedy_say (remedy, lr_say_mass (judge, bag_kg), _("Hang a sandbag of <b>%s</b> on it, clear of the floor."), lr_say_mass (judge, bag_kg));
  lr_judge_keep (judge, remark, remedy);
}

/* "L1 2 kg, L2 5 kg", and the changes */
static char *
bag_all (LrJudge      *judge,
         const GArray *weak,
         LrRemedy     *remedy)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < weak->len; i++)
    {
      const LrStandReading *stand = &g_array_index (weak, LrStandReading, i);
      double bag_kg = lr_stand_whole_bag_kg (stand->wanted_bag_kg);

      lr_remedy_change (remedy, stand->placed->item, "bag-kg", bag_kg);
      g_string_append_printf (text, "%s%s\u00a0<b>%s</b>", i > 0 ? ", " : "", lr_say_name (judge, stand->placed), lr_say_mass (judge, bag_kg));
    }

  return g_string_free (text, FALSE);
}

static void
say_weak (LrJudge              *judge,
          const GArray         *weak,
          const LrStandReading *worst)
{
  double limit_n = judge->limits[LR_LIMIT_STAND_PUSH];
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_STAND, weak->len > 0 ? LR_GRADE_MIND : LR_GRADE_FINE, NULL, NULL);
  g_autofree char *bags = NULL;
  LrRemedy *remedy;

  if (remark == NULL)
    return;

  lr_remark_about (remark, worst->placed);
  remark->value = worst->push_n;
  remark->limit = limit_n;
  lr_remark_mark_outline (remark, &worst->placed->footprint, NULL);
  if (weak->len == 0)
    {
      lr_remark_say (remark, _("Of the straight stands %s tips first, pushed with <b>%s\u00a0N</b> at its head; <b>%s\u00a0N</b> is the limit."),
                     lr_say_title (judge, worst->placed), lr_say_number (judge, worst->push_n, 0), lr_say_number (judge, limit_n, 0));
      say_usual (judge, remark, worst);
      return;
    }

  for (guint i = 0; i < weak->len; i++)
    {
      const LrStandReading *stand = &g_array_index (weak, LrStandReading, i);

      lr_remark_about (remark, stand->placed);
      if (stand->placed != worst->placed)
        lr_remark_mark_outline (remark, &stand->placed->footprint, NULL);
    }
  lr_remark_say (remark, _("%s tips when it is nudged with <b>%s\u00a0N</b> at its head; <b>%s\u00a0N</b> is the limit."),
                 lr_say_title (judge, worst->placed), lr_say_number (judge, worst->push_n, 1), lr_say_number (judge, limit_n, 0));
  if (weak->len > 1)
    lr_remark_say (remark, _("It is the first of <b>%s</b> stands."), lr_say_number (judge, weak->len, 0));
  say_usual (judge, remark, worst);
  remedy = lr_remedy_new ();
  bags = bag_all (judge, weak, remedy);
  /* Translators: stands and the mass of each one's sandbag */
  lr_remedy_say (remedy, lr_say_mass (judge, lr_stand_whole_bag_kg (g_array_index (weak, LrStandReading, 0).wanted_bag_kg)),
                 ngettext ("Hang a sandbag on it: %s.", "Hang sandbags: %s.", weak->len), bags);
  lr_judge_keep (judge, remark, remedy);
}

/**
 * lr_judge_stands:
 * @judge: a judge
 *
 * Booms one by one, straight stands together.
 */
void
lr_judge_stands (LrJudge *judge)
{
  g_autoptr (GArray) weak = g_array_new (FALSE, FALSE, sizeof (LrStandReading));
  LrStandReading stand, worst = { .placed = NULL };

  for (guint i = 0; i < judge->study->placed->len; i++)
    {
      if (!lr_study_stand (judge->study, &g_array_index (judge->study->placed, LrPlaced, i), &stand))
        continue;
      if (stand.is_boom)
        {
          judge_boom (judge, &stand);
          continue;
        }
      if (worst.placed == NULL || stand.push_n < worst.push_n)
        worst = stand;
      if (stand.push_n < judge->limits[LR_LIMIT_STAND_PUSH] - ROUNDING)
        g_array_append_val (weak, stand);
    }

  if (worst.placed != NULL)
    say_weak (judge, weak, &worst);
}
