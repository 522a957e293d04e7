/* clear_frame.c - the smallest move that takes equipment out of every picture
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A boom is raised, a lamp that hangs in from above too; anything else moves sideways, or to the nearest of a few places
 * round it that stand clear. The move is tried like any remedy.
 */

#include "config.h"

#include "judge_parts.h"

#include "intrusions.h"

#include <glib/gi18n-lib.h>

#define UNDER_CEILING_M 0.10
#define RAISE_STEP_M 0.02
#define MAX_RAISES 20
#define N_WAYS 8
#define ROUNDING_M 0.001
/* Each search looks at a few dozen places; a set-up with very many things or faults gets fewer of them */
#define MAX_SEARCHES 8
#define SEARCHES_TIMES_ITEMS 600

static double
round_up (double length_m,
          double step_m)
{
  return step_m * ceil (length_m / step_m - 1e-9);
}

static gboolean
may_search (LrJudge *judge)
{
  guint most = MIN (MAX_SEARCHES, 1 + SEARCHES_TIMES_ITEMS / MAX (judge->study->placed->len, 1));

  return !judge->is_moving && !judge->study->plan->is_read_only && judge->n_searches++ < most;
}

/* The lowest height of the tip, in whole centimetres, from which the boom clears every frame by its margin */
static gboolean
offer_raise_boom (LrJudge           *judge,
                  LrRemark          *remark,
                  const LrIntrusion *intrusion,
                  LrItem            *item)
{
  const LrRoom *room = judge->study->setup->room;
  double by_m = isfinite (intrusion->clearance) ? 0.01 : fmax (intrusion->move_m[LR_BORDER_TOP], 0.01);
  double height_m = round_up (item->microphone.tip_height_m + by_m, 0.01), mouth_m = NAN;
  double margin = judge->limits[LR_LIMIT_BOOM_MARGIN];
  const LrPlaced *speaker;
  LrRemedy *remedy;
  const char *height;

  item->microphone.tip_height_m = height_m;
  for (int i = 0; i < MAX_RAISES && lr_study_would_intrude (judge->study, item, margin + 0.002); i++)
    item->microphone.tip_height_m = height_m += RAISE_STEP_M;
  if (lr_study_would_intrude (judge->study, item, margin + 0.002)
      || (room->n_corners >= 3 && height_m + 0.14 > room->height_m - UNDER_CEILING_M))
    return FALSE;

  remedy = lr_remedy_new ();
  height = lr_say_length (judge, height_m);
  lr_remedy_change (remedy, intrusion->placed->item, "tip-height-mm", height_m);
  speaker = lr_study_mouth_distance_m (judge->study, item, &mouth_m);
  if (speaker != NULL)
    lr_remedy_say (remedy, height, _("Raise its tip to <b>%s</b>; it is then <b>%s</b> from %s’s mouth."), height,
                   lr_say_length (judge, mouth_m), lr_say_name (judge, speaker));
  else
    lr_remedy_say (remedy, height, _("Raise its tip to <b>%s</b>."), height);
  lr_judge_keep (judge, remark, remedy);
  return TRUE;
}

static gboolean
offer_raise_lamp (LrJudge           *judge,
                  LrRemark          *remark,
                  const LrIntrusion *intrusion,
                  LrItem            *item)
{
  const LrRoom *room = judge->study->setup->room;
  double height_m = round_up (item->light.lamp_height_m + intrusion->move_m[LR_BORDER_TOP] + LR_CLEAR_SPARE_M, 0.01);
  LrRemedy *remedy;
  const char *height;

  item->light.lamp_height_m = height_m;
  if ((room->n_corners >= 3 && height_m + 0.5 * item->light.height_m > room->height_m - UNDER_CEILING_M)
      || lr_study_would_intrude (judge->study, item, 0.0))
    return FALSE;

  remedy = lr_remedy_new ();
  height = lr_say_length (judge, height_m);
  lr_remedy_change (remedy, intrusion->placed->item, "lamp-height-mm", height_m);
  lr_remedy_say (remedy, height, _("Raise its lamp to <b>%s</b>."), height);
  lr_judge_keep (judge, remark, remedy);
  return TRUE;
}

static gboolean
try_place (LrJudge           *judge,
           LrRemark          *remark,
           const LrIntrusion *intrusion,
           LrItem            *item,
           LrVec2             to_m)
{
  const LrPlaced *placed = intrusion->placed;
  double strict_m = fmax (judge->limits[LR_LIMIT_OVERLAP] - ROUNDING_M, 0.0);

  item->at_m = lr_vec2 (0.001 * round (1000.0 * to_m.x), 0.001 * round (1000.0 * to_m.y));
  if (lr_study_would_intrude (judge->study, item, judge->limits[LR_LIMIT_BOOM_MARGIN])
      || !lr_study_is_clear (judge->study, placed, item->at_m, strict_m))
    return FALSE;

  lr_judge_offer_move (judge, remark, placed, item->at_m, NULL, NULL);
  return TRUE;
}

/* Sideways out of the frame, the shorter way first, then the nearest of a few places round it */
static void
offer_place (LrJudge           *judge,
             LrRemark          *remark,
             const LrIntrusion *intrusion,
             LrItem            *item)
{
  static const double rings[] = { 1.0, 1.5, 2.25, 3.5 };
  LrVec2 right = lr_vec3_flat (intrusion->camera->projection.right), at_m = intrusion->placed->at_m;
  double left_m = intrusion->move_m[LR_BORDER_LEFT] + LR_CLEAR_SPARE_M;
  double right_m = intrusion->move_m[LR_BORDER_RIGHT] + LR_CLEAR_SPARE_M;
  double first_rad = lr_vec2_angle_rad (right) + (left_m <= right_m ? LR_PI : 0.0);
  double least_m = fmin (left_m, right_m);

  for (guint i = 0; i < G_N_ELEMENTS (rings) && rings[i] * least_m <= LR_CLEAR_FARTHEST_M; i++)
    for (int j = 0; j < N_WAYS; j++)
      {
        double turn_rad = 2.0 * LR_PI / N_WAYS * ((j + 1) / 2) * (j % 2 ? 1.0 : -1.0);

        if (try_place (judge, remark, intrusion, item,
                       lr_vec2_add (at_m, lr_vec2_polar (first_rad + turn_rad, rings[i] * least_m))))
          return;
      }

  if (fmax (left_m, right_m) <= LR_CLEAR_FARTHEST_M)
    try_place (judge, remark, intrusion, item, lr_vec2_add (at_m, lr_vec2_polar (first_rad + LR_PI, fmax (left_m, right_m))));
}

/**
 * lr_judge_clear_frame:
 * @judge: a judge
 * @remark: a remark about equipment in a picture, the one added last
 * @intrusion: what it is about
 *
 * Gives the remark the smallest change that takes the thing out of every camera's picture and hits nothing.
 */
void
lr_judge_clear_frame (LrJudge           *judge,
                      LrRemark          *remark,
                      const LrIntrusion *intrusion)
{
  const LrItem *item = intrusion->placed->item;
  LrItem *changed;
  gboolean is_done = FALSE;

  if (!may_search (judge))
    return;

  changed = lr_item_copy (item);
  if (intrusion->part == LR_INTRUDER_ARM || intrusion->part == LR_INTRUDER_CAPSULE)
    {
      if (item->microphone.form == LR_MIC_BOOM)
        is_done = offer_raise_boom (judge, remark, intrusion, changed);
      changed->microphone.tip_height_m = item->microphone.tip_height_m;
    }
  else if (intrusion->part == LR_INTRUDER_HEAD && item->kind == LR_ITEM_LIGHT && intrusion->edge == LR_BORDER_TOP)
    {
      is_done = offer_raise_lamp (judge, remark, intrusion, changed);
      changed->light.lamp_height_m = item->light.lamp_height_m;
    }
  if (!is_done)
    offer_place (judge, remark, intrusion, changed);
  lr_item_unref (changed);
}
