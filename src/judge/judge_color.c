/* judge_color.c - the whites of the sources, and the cameras' white balance
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * In reciprocal megakelvin, in which steps that look alike are alike.
 */

#include "config.h"

#include "judge_parts.h"

#include "color.h"

#include <glib/gi18n-lib.h>

#define COUNTS 0.2     /* of the light on a cheek, from which a source's white is seen there */
#define STEP_K 50.0

static double
mired (double kelvin)
{
  return 1e6 / kelvin;
}

static void
judge_balance (LrJudge               *judge,
               const LrCameraReading *camera,
               const LrFaceLight     *face)
{
  double set_k = camera->item->camera.white_balance_k, off = mired (face->mixed_k) - mired (set_k), limit = judge->limits[LR_LIMIT_WHITE_OFF];
  gboolean is_off = fabs (off) > limit;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_WHITE_BALANCE, is_off ? LR_GRADE_MIND : LR_GRADE_FINE, camera->placed, NULL);
  const char *name, *subject, *mixed, *set;
  LrRemedy *remedy;

  if (remark == NULL)
    return;

  name = lr_say_name (judge, camera->placed);
  subject = lr_say_name (judge, camera->subject);
  mixed = lr_say_number (judge, STEP_K * round (face->mixed_k / STEP_K), 0);
  set = lr_say_number (judge, set_k, 0);
  remark->value = fabs (off);
  remark->limit = limit;
  lr_remark_about (remark, camera->subject);
  lr_remark_mark_outline (remark, &camera->placed->footprint, NULL);
  if (!is_off)
    {
      lr_remark_say (remark, _("%s is balanced for <b>%s</b> K; the light on %s’s face is <b>%s</b> K."), name, set, subject, mixed);
      return;
    }

  lr_remark_say (remark, off > 0.0 ? _("%s is balanced for <b>%s</b> K, but the light on %s’s face is <b>%s</b> K: the face comes out warm.")
                                   : _("%s is balanced for <b>%s</b> K, but the light on %s’s face is <b>%s</b> K: the face comes out cold."),
                 name, set, subject, mixed);
  remedy = lr_remedy_new ();
  lr_remedy_change (remedy, camera->item, "white-balance-k", STEP_K * round (face->mixed_k / STEP_K));
  lr_remedy_say (remedy, mixed, _("Set %s to <b>%s</b> K."), name, mixed);
  lr_judge_keep (judge, remark, remedy);
}

/* K; 0: it gives no white of its own */
static double
kelvin_of (const LrItem *item)
{
  switch (item->kind)
    {
    case LR_ITEM_LIGHT:
      return item->light.color_temperature_k;
    case LR_ITEM_HOUSE_LIGHT:
      return item->house_light.color_temperature_k;
    case LR_ITEM_WINDOW:
      return LR_OVERCAST_K;
    case LR_ITEM_PERSON:
    case LR_ITEM_CAMERA:
    case LR_ITEM_MICROPHONE:
    case LR_ITEM_PANEL:
    case LR_ITEM_LEAD:
    case LR_ITEM_FURNITURE:
    case LR_ITEM_DOOR:
    case LR_ITEM_SOCKET:
    case LR_ITEM_CIRCUIT:
    case LR_ITEM_NOISE:
    case LR_ITEM_LENS:
    case LR_N_ITEM_KINDS:
    default:
      return 0.0;
    }
}

static gboolean
counts (const LrJudge     *judge,
        const LrFaceLight *face,
        const LrItem      *source)
{
  const LrFacePoint cheeks[] = { face->lit, face->shadow };

  for (gsize i = 0; i < G_N_ELEMENTS (cheeks); i++)
    if (lr_light_levels_source_lx (judge->levels, source->id, face->person->item->id, cheeks[i])
        > COUNTS * lr_lux_all (face->at[cheeks[i]]))
      return TRUE;
  return FALSE;
}

static void
judge_mixed (LrJudge           *judge,
             const LrPlaced    *person,
             const LrFaceLight *face)
{
  const LrPlaced *warm = NULL, *cold = NULL;
  double apart, limit = judge->limits[LR_LIMIT_MIXED_WHITES];
  LrRemark *remark;

  for (guint i = 0; i < judge->study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (judge->study->placed, LrPlaced, i);

      if (!(kelvin_of (placed->item) > 0.0) || !counts (judge, face, placed->item))
        continue;
      if (warm == NULL || kelvin_of (placed->item) < kelvin_of (warm->item))
        warm = placed;
      if (cold == NULL || kelvin_of (placed->item) > kelvin_of (cold->item))
        cold = placed;
    }
  if (warm == NULL || warm == cold)
    return;

  apart = mired (kelvin_of (warm->item)) - mired (kelvin_of (cold->item));
  remark = lr_judge_add (judge, LR_CHECK_MIXED_WHITES, apart > limit ? LR_GRADE_MIND : LR_GRADE_FINE, person, NULL);
  if (remark == NULL)
    return;

  remark->value = apart;
  remark->limit = limit;
  lr_remark_about (remark, warm);
  lr_remark_about (remark, cold);
  lr_remark_mark_line (remark, person->at_m, warm->at_m, NULL);
  lr_remark_mark_line (remark, person->at_m, cold->at_m, NULL);
  lr_remark_say (remark, _("On %s’s face %s (<b>%s</b> K) meets %s (<b>%s</b> K), <b>%s</b> MK⁻¹ apart."), lr_say_name (judge, person),
                 lr_say_name (judge, warm), lr_say_number (judge, kelvin_of (warm->item), 0), lr_say_name (judge, cold),
                 lr_say_number (judge, kelvin_of (cold->item), 0), lr_say_number (judge, apart, 0));
  if (apart > limit)
    lr_remark_say (remark, _("A filter of <b>−%s</b> MK⁻¹ on %s would match them."), lr_say_number (judge, apart, 0), lr_say_name (judge, warm));
}

/**
 * lr_judge_color:
 * @judge: a judge
 *
 * White balance, and whites that meet on one face.
 */
void
lr_judge_color (LrJudge *judge)
{
  const LrPlaced *last = NULL;

  if (judge->levels == NULL || !lr_light_levels_is_whole (judge->levels))
    return;

  for (guint i = 0; i < judge->study->cameras->len; i++)
    {
      const LrCameraReading *camera = lr_judge_camera (judge, i);
      const LrFaceLight *face = camera->has_subject ? lr_light_levels_face (judge->levels, camera->subject->item->id) : NULL;

      if (face == NULL || !isfinite (face->mixed_k) || lr_judge_is_cutaway (judge, camera))
        continue;
      judge_balance (judge, camera, face);
      if (camera->subject != last)
        judge_mixed (judge, camera->subject, face);
      last = camera->subject;
    }
}
