/* judge_clearances.c - booms over heads, lamps under the ceiling and beside curtains and cloth
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "boom.h"
#include "judge_parts.h"

#include <glib/gi18n-lib.h>

#define OVER_HEAD_M 0.30   /* so near to the middle of a head, seen from above, it hangs over it as it moves: common practice, no source */
#define CAPSULE_M 0.25     /* of the arm's end, where the microphone hangs under it */
#define BIG_LAMP_W 1000.0  /* lamps that want BIG_TIMES as much air to cloth: common practice, no source */
#define BIG_TIMES 2.0
#define SPARE_M 0.01

/* Booms over heads */

/* What of a boom is by a head */
typedef struct
{
  double   height_m; /* of its lower edge */
  double   beside_m; /* from the middle of the head, seen from above */
} Hanging;

/* A head as it is held; its middle is where the person is */
static gboolean
is_in_head (const LrPlaced *person,
            const Hanging  *hanging)
{
  return hanging->beside_m < 0.5 * person->body.head_depth_m + LR_BOOM_ARM_RADIUS_M && hanging->height_m < person->body.crown_m;
}

/* The arm where it is nearest in plan, or the microphone at its end: what is in the head, else what hangs lowest; FALSE: nothing is there */
static gboolean
hangs_there (const LrPlaced *boom,
             const LrPlaced *person,
             Hanging        *hanging)
{
  const LrMicrophone *mic = &boom->item->microphone;
  LrVec2 tip_m = lr_vec2 (mic->tip_x_m, mic->tip_y_m), nearest_m;
  Hanging arm, tip = { mic->tip_height_m, lr_vec2_distance (tip_m, person->at_m) };
  LrBoomHang hang;
  double out_m;

  arm.beside_m = lr_segment_distance_m (boom->at_m, tip_m, person->at_m, &nearest_m);
  if (arm.beside_m > OVER_HEAD_M)
    return FALSE;

  lr_boom_hang (boom->at_m, mic, &hang);
  out_m = lr_vec2_distance (boom->at_m, nearest_m);
  arm.height_m = out_m > hang.reach_m - CAPSULE_M ? mic->tip_height_m : hang.post_m + hang.slope * out_m - LR_BOOM_ARM_RADIUS_M;
  *hanging = tip.beside_m <= OVER_HEAD_M && tip.height_m < arm.height_m && !is_in_head (person, &arm) ? tip : arm;
  return TRUE;
}

static void
say_over_head (LrJudge        *judge,
               LrRemark       *remark,
               const LrPlaced *boom,
               const LrPlaced *person,
               const Hanging  *hanging)
{
  double limit_m = remark->limit, clear_m = remark->value;

  if (clear_m >= 0.0)
    lr_remark_say (remark, _("%s hangs <b>%s</b> over the head of %s; <b>%s</b> is the limit."), lr_say_title (judge, boom),
                   lr_say_small_off (judge, clear_m, limit_m), lr_say_name (judge, person), lr_say_small (judge, limit_m));
  else if (is_in_head (person, hanging))
    lr_remark_say (remark, _("%s hangs <b>%s</b> lower than the head of %s reaches; <b>%s</b> over it is the limit."),
                   lr_say_title (judge, boom), lr_say_small (judge, -clear_m), lr_say_name (judge, person), lr_say_small (judge, limit_m));
  else
    lr_remark_say (remark, _("%s hangs by the head of %s, <b>%s</b> from its middle and <b>%s</b> lower than it reaches: it is in the way of a "
                             "head that moves."),
                   lr_say_title (judge, boom), lr_say_name (judge, person), lr_say_small (judge, hanging->beside_m), lr_say_small (judge, -clear_m));
  if (person->item->person.posture == LR_POSTURE_SEATED && person->item->person.stature_m > hanging->height_m - limit_m)
    lr_remark_say (remark, _("Swing it aside before %s, <b>%s</b> tall, stands up."), lr_say_name (judge, person),
                   lr_say_length (judge, person->item->person.stature_m));
}

static void
judge_head (LrJudge        *judge,
            const LrPlaced *boom,
            const LrPlaced *person)
{
  double limit_m = judge->limits[LR_LIMIT_HEAD_CLEAR], clear_m;
  LrGrade grade = LR_GRADE_MIND;
  LrRemark *remark;
  Hanging hanging;

  if (!hangs_there (boom, person, &hanging))
    return;
  clear_m = hanging.height_m - person->body.crown_m;
  if (clear_m >= limit_m - 1e-9)
    grade = LR_GRADE_FINE;
  else if (is_in_head (person, &hanging))
    grade = LR_GRADE_FIX;
  remark = lr_judge_add (judge, LR_CHECK_HEAD_CLEAR, grade, boom, person);
  if (remark == NULL)
    return;

  remark->value = clear_m;
  remark->limit = limit_m;
  lr_remark_mark_point (remark, person->at_m, lr_say_small (judge, clear_m));
  say_over_head (judge, remark, boom, person, &hanging);
  if (grade != LR_GRADE_FINE)
    {
      double to_m = boom->item->microphone.tip_height_m + limit_m - clear_m + SPARE_M;
      LrRemedy *remedy = lr_remedy_new ();

      lr_remedy_change (remedy, boom->item, "tip-height-mm", to_m);
      lr_remedy_say (remedy, lr_say_length (judge, to_m), _("Raise the microphone to <b>%s</b>."), lr_say_length (judge, to_m));
      lr_judge_offer (judge, remark, remedy);
    }
}

/* Lamps */

static gboolean
is_lamp (const LrPlaced *placed)
{
  return placed->item->kind == LR_ITEM_LIGHT && placed->item->light.power_w > 0.0;
}

static void
judge_under_ceiling (LrJudge        *judge,
                     const LrPlaced *lamp)
{
  double limit_m = judge->limits[LR_LIMIT_LAMP_CEILING], gap_m = judge->study->setup->room->height_m - lamp->top_m, to_m;
  LrRemark *remark;

  if (judge->study->setup->room->n_corners < 3 || gap_m < 0.0 || gap_m >= limit_m - 1e-9)
    return;
  remark = lr_judge_add (judge, LR_CHECK_LAMP_CLEAR, LR_GRADE_MIND, lamp, NULL);
  if (remark == NULL)
    return;

  remark->value = gap_m;
  remark->limit = limit_m;
  lr_remark_mark_outline (remark, &lamp->footprint, lr_say_small (judge, gap_m));
  lr_remark_say (remark, _("%s is <b>%s</b> under the ceiling; <b>%s</b> is the limit, if no more is marked on it."), lr_say_title (judge, lamp),
                 lr_say_small_off (judge, gap_m, limit_m), lr_say_small (judge, limit_m));
  to_m = lamp->item->light.lamp_height_m - (limit_m - gap_m) - SPARE_M;
  if (to_m > 0.0)
    {
      LrRemedy *remedy = lr_remedy_new ();

      lr_remedy_change (remedy, lamp->item, "lamp-height-mm", to_m);
      lr_remedy_say (remedy, lr_say_length (judge, to_m), _("Lower it to <b>%s</b>."), lr_say_length (judge, to_m));
      lr_judge_offer (judge, remark, remedy);
    }
}

/* Cloth in plan, from end to end, and between which heights; FALSE: it is none */
static gboolean
find_cloth (const LrPlaced *placed,
            LrVec2         *from_m,
            LrVec2         *to_m,
            double         *low_m,
            double         *high_m)
{
  LrVec2 across = lr_vec2_left (lr_vec2_polar (placed->facing_rad, 1.0));
  double half_m;

  if (placed->item->kind == LR_ITEM_WINDOW && placed->item->window.blind != LR_BLIND_NONE)
    half_m = 0.5 * placed->item->window.width_m;
  else if (placed->item->kind == LR_ITEM_PANEL && placed->item->panel.form == LR_PANEL_BACKDROP)
    half_m = 0.5 * placed->item->panel.width_m;
  else
    return FALSE;

  *from_m = lr_vec2_along (placed->at_m, across, -half_m);
  *to_m = lr_vec2_along (placed->at_m, across, half_m);
  *low_m = placed->item->kind == LR_ITEM_WINDOW ? placed->bottom_m : placed->item->panel.bottom_m;
  *high_m = placed->top_m;
  return TRUE;
}

/* From the lamp's width to the cloth, and the cloth's nearest place */
static double
cloth_distance_m (const LrPlaced *lamp,
                  LrVec2          from_m,
                  LrVec2          to_m,
                  LrVec2         *nearest_m)
{
  LrVec2 across = lr_vec2_left (lr_vec2_polar (lamp->facing_rad, 1.0));
  double best_m = HUGE_VAL;

  for (int i = -1; i <= 1; i++)
    {
      LrVec2 near_m;
      double distance_m = lr_segment_distance_m (from_m, to_m, lr_vec2_along (lamp->at_m, across, 0.5 * i * lamp->item->light.width_m), &near_m);

      if (distance_m < best_m)
        {
          best_m = distance_m;
          *nearest_m = near_m;
        }
    }

  return best_m;
}

static void
judge_cloth (LrJudge        *judge,
             const LrPlaced *lamp,
             const LrPlaced *cloth)
{
  double limit_m = judge->limits[LR_LIMIT_LAMP_CLOTH] * (lamp->item->light.power_w >= BIG_LAMP_W ? BIG_TIMES : 1.0);
  double low_m, high_m, gap_m, half_m = 0.5 * lamp->item->light.height_m;
  LrVec2 from_m, to_m, nearest_m, away;
  LrRemark *remark;

  if (!find_cloth (cloth, &from_m, &to_m, &low_m, &high_m) || lamp->item->light.lamp_height_m + half_m < low_m
      || lamp->item->light.lamp_height_m - half_m > high_m)
    return;
  gap_m = cloth_distance_m (lamp, from_m, to_m, &nearest_m);
  if (gap_m >= limit_m - 1e-9)
    return;
  remark = lr_judge_add (judge, LR_CHECK_LAMP_CLEAR, LR_GRADE_MIND, lamp, cloth);
  if (remark == NULL)
    return;

  remark->value = gap_m;
  remark->limit = limit_m;
  lr_remark_mark_distance (remark, lamp->at_m, nearest_m, lr_say_small (judge, gap_m));
  lr_remark_say (remark, _("%s is <b>%s</b> from the cloth of %s; <b>%s</b> is the limit, if no more is marked on it."), lr_say_title (judge, lamp),
                 lr_say_small_off (judge, gap_m, limit_m), lr_say_title (judge, cloth), lr_say_small (judge, limit_m));
  away = lr_vec2_polar (cloth->facing_rad, 1.0);
  if (lr_vec2_dot (away, lr_vec2_sub (lamp->at_m, cloth->at_m)) < 0.0)
    away = lr_vec2_scale (away, -1.0);
  lr_judge_offer_move (judge, remark, lamp, lr_vec2_along (lamp->at_m, away, limit_m - gap_m + SPARE_M), NULL, NULL);
}

/* (transfer container): what is cloth: looked for once, for there may be very many lamps and things */
static GPtrArray *
list_cloths (const LrJudge *judge)
{
  GPtrArray *cloths = g_ptr_array_new ();
  LrVec2 from_m, to_m;
  double low_m, high_m;

  for (guint i = 0; i < judge->study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (judge->study->placed, LrPlaced, i);

      if (find_cloth (placed, &from_m, &to_m, &low_m, &high_m))
        g_ptr_array_add (cloths, (gpointer) placed);
    }

  return cloths;
}

static void
judge_lamp (LrJudge         *judge,
            const LrPlaced  *lamp,
            const GPtrArray *cloths)
{
  judge_under_ceiling (judge, lamp);
  for (guint i = 0; i < cloths->len; i++)
    judge_cloth (judge, lamp, g_ptr_array_index (cloths, i));
}

static void
judge_boom (LrJudge        *judge,
            const LrPlaced *boom)
{
  for (guint i = 0; i < judge->study->placed->len; i++)
    {
      const LrPlaced *person = &g_array_index (judge->study->placed, LrPlaced, i);

      if (person->item->kind == LR_ITEM_PERSON)
        judge_head (judge, boom, person);
    }
}

/**
 * lr_judge_clearances:
 * @judge: a judge
 *
 * What hangs over heads; lamps by ceilings and cloth.
 */
void
lr_judge_clearances (LrJudge *judge)
{
  g_autoptr (GPtrArray) cloths = list_cloths (judge);

  for (guint i = 0; i < judge->study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (judge->study->placed, LrPlaced, i);

      if (is_lamp (placed))
        judge_lamp (judge, placed, cloths);
      else if (placed->item->kind == LR_ITEM_MICROPHONE && placed->item->microphone.form == LR_MIC_BOOM)
        judge_boom (judge, placed);
    }
}
