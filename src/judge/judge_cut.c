/* judge_cut.c - whether two cameras on one person can be cut against each other
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Seen from the subject they stand 30 degrees apart, or their sizes differ clearly; with neither, the picture seems to
 * jump (Corrigan and White, The Film Experience; two sizes are common practice).
 */

#include "config.h"

#include "judge_parts.h"

#include <glib/gi18n-lib.h>

#define SPARE_RAD (2.0 * LR_DEG)
#define STEP_RAD (6.0 * LR_DEG) /* of the search past the limit */
#define MOST_RAD (75.0 * LR_DEG)
#define SAME_SIZE 1.05 /* heads that differ by less look the same */

static gboolean
is_passed (const LrJudge       *judge,
           const LrPairReading *pair,
           double               angle_rad)
{
  return angle_rad >= judge->limits[LR_LIMIT_CUT_ANGLE] || (double) pair->steps >= judge->limits[LR_LIMIT_CUT_STEPS];
}

/**
 * lr_judge_keeps_cuts:
 * @judge: a judge
 * @camera: a camera
 * @to_m: where it might stand, as far from its subject as now [m]
 *
 * Returns: whether every cut that passes now would pass then
 */
gboolean
lr_judge_keeps_cuts (const LrJudge         *judge,
                     const LrCameraReading *camera,
                     LrVec2                 to_m)
{
  for (guint i = 0; i < judge->study->pairs->len; i++)
    {
      const LrPairReading *pair = &g_array_index (judge->study->pairs, LrPairReading, i);
      const LrCameraReading *other = pair->a == camera ? pair->b : pair->a;
      double angle_rad;

      if ((pair->a == camera || pair->b == camera) && is_passed (judge, pair, pair->angle_rad)
          && lr_camera_angle_rad (camera->subject->at_m, other->placed->at_m, to_m, &angle_rad)
          && !is_passed (judge, pair, angle_rad))
        return FALSE;
    }

  return TRUE;
}

static gboolean
keeps_side (const LrJudge         *judge,
            const LrCameraReading *camera,
            LrVec2                 to_m)
{
  return !camera->is_on_study_line || camera->side == LR_SIDE_ON_LINE
         || lr_line_side (judge->study->line_from_m, judge->study->line_to_m, to_m) == camera->side;
}

/* Both ways round from A, the shorter first, then farther and farther; B stays on its side of the line of action, and
 * clear of other cameras */
static void
offer_places (LrJudge             *judge,
              LrRemark            *remark,
              const LrPairReading *pair)
{
  const LrPlaced *b = pair->b->placed;
  LrVec2 head_m = pair->b->subject->at_m;
  LrVec2 to_a = lr_vec2_sub (pair->a->placed->at_m, head_m), to_b = lr_vec2_sub (b->at_m, head_m);
  double at_rad = lr_angle_wrap_rad (lr_vec2_angle_rad (to_b) - lr_vec2_angle_rad (to_a));
  double side = at_rad >= 0.0 ? 1.0 : -1.0;
  double wanted_rad = judge->limits[LR_LIMIT_CUT_ANGLE] + SPARE_RAD;

  for (; wanted_rad <= MOST_RAD && !judge->is_moving; wanted_rad += STEP_RAD)
    for (int i = 0; i < 2; i++, side = -side)
      {
        LrVec2 to_m = lr_vec2_add (head_m, lr_vec2_rotate (to_b, side * wanted_rad - at_rad));

        if (keeps_side (judge, pair->b, to_m) && lr_judge_keeps_cuts (judge, pair->b, to_m))
          lr_judge_offer_move (judge, remark, b, to_m, &head_m, lr_say_angle (judge, wanted_rad));
      }
}

static void
say_passed (LrJudge             *judge,
            LrRemark            *remark,
            const LrPairReading *pair,
            gboolean             is_apart)
{
  const char *a = lr_say_name (judge, pair->a->placed), *b = lr_say_name (judge, pair->b->placed);
  const char *subject = lr_say_name (judge, pair->b->subject);
  const char *angle = lr_say_angle (judge, pair->angle_rad);
  const char *limit = lr_say_limit (judge, LR_LIMIT_CUT_ANGLE);
  const char *ratio = lr_say_number (judge, pair->size_ratio, 1);

  if (is_apart && pair->size_ratio >= SAME_SIZE)
    lr_remark_say (remark,
                   _("Seen from %s, %s stands <b>%s</b> round from %s; <b>%s</b> makes a cut. Heads differ in "
                     "size by <b>%s</b> times."),
                   subject, b, angle, a, limit, ratio);
  else if (is_apart)
    lr_remark_say (remark,
                   _("Seen from %s, %s stands <b>%s</b> round from %s; <b>%s</b> makes a cut."),
                   subject, b, angle, a, limit);
  else
    lr_remark_say (remark,
                   _("Seen from %s, %s stands only <b>%s</b> round from %s, but heads differ in size by "
                     "<b>%s</b> times: the cut passes."),
                   subject, b, angle, a, ratio);
}

static void
judge_pair (LrJudge             *judge,
            const LrPairReading *pair)
{
  double limit_rad = judge->limits[LR_LIMIT_CUT_ANGLE];
  gboolean is_fine = is_passed (judge, pair, pair->angle_rad);
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_CUT, is_fine ? LR_GRADE_FINE : LR_GRADE_FIX, pair->a->placed,
                                   pair->b->placed);
  LrVec2 head_m;
  const char *angle;

  if (remark == NULL)
    return;

  head_m = pair->b->subject->at_m;
  angle = is_fine ? lr_say_angle (judge, pair->angle_rad) : lr_say_angle_off (judge, pair->angle_rad, limit_rad);
  remark->value = pair->angle_rad;
  remark->limit = limit_rad;
  lr_remark_mark_first (remark, pair->b->placed);
  lr_remark_about (remark, pair->b->subject);
  lr_remark_mark_line (remark, head_m, pair->a->placed->at_m, NULL);
  lr_remark_mark_line (remark, head_m, pair->b->placed->at_m, NULL);
  lr_remark_mark_arc (remark, head_m, pair->a->placed->at_m, pair->b->placed->at_m, angle);

  if (is_fine)
    {
      say_passed (judge, remark, pair, pair->angle_rad >= limit_rad);
      return;
    }

  lr_remark_say (remark,
                 _("Seen from %s, %s stands only <b>%s</b> round from %s; under <b>%s</b> the cut jumps."),
                 lr_say_name (judge, pair->b->subject), lr_say_name (judge, pair->b->placed), angle,
                 lr_say_name (judge, pair->a->placed), lr_say_angle (judge, limit_rad));
  offer_places (judge, remark, pair);
}

/**
 * lr_judge_cut:
 * @judge: a judge
 *
 * Every two cameras on one person.
 */
void
lr_judge_cut (LrJudge *judge)
{
  for (guint i = 0; i < judge->study->pairs->len; i++)
    {
      const LrPairReading *pair = &g_array_index (judge->study->pairs, LrPairReading, i);

      if (isfinite (pair->angle_rad) && !lr_judge_is_cutaway (judge, pair->a) && !lr_judge_is_cutaway (judge, pair->b))
        judge_pair (judge, pair);
    }
}
