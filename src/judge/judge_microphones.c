/* judge_microphones.c - how each microphone is held to the voice
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "judge_parts.h"

#include "boom_place.h"
#include "power_readings.h"

#include <glib/gi18n-lib.h>

#define NEAR_BEST_M 0.05       /* so near to the best place it hangs there */
#define MOST_ASIDE_RAD (75.0 * LR_DEG) /* over the head or beside it a voice is dull; common practice, no source */
#define FAR_ANYHOW_M 1.0       /* over this no frame excuses it; common practice, no source */
#define FAR_OFF_M 1.5          /* what is farther away is not aimed at a mouth; common practice, no source */

static void
judge_off_axis (LrJudge                 *judge,
                const LrMicrophoneSound *microphone)
{
  double limit = judge->limits[LR_LIMIT_OFF_AXIS], loss_db = -microphone->dull_db;
  gboolean is_dull = loss_db > limit, is_boom = microphone->placed->item->microphone.form == LR_MIC_BOOM;
  LrRemark *remark;
  const char *name, *talker, *angle;

  if (microphone->placed->item->microphone.form == LR_MIC_LAVALIER || microphone->distance_m > FAR_OFF_M)
    return;

  remark = lr_judge_add (judge, LR_CHECK_OFF_AXIS, is_dull ? LR_GRADE_MIND : LR_GRADE_FINE, microphone->placed, NULL);
  if (remark == NULL)
    return;

  name = lr_say_name (judge, microphone->placed);
  talker = lr_say_name (judge, microphone->talker);
  angle = lr_say_angle (judge, microphone->lean_off_axis_rad);
  remark->value = loss_db;
  remark->limit = limit;
  lr_remark_about (remark, microphone->talker);
  lr_remark_mark_line (remark, lr_vec3_flat (microphone->capsule_m), lr_vec3_flat (microphone->mouth_m), angle);
  if (is_dull)
    lr_remark_say (remark, _("As %s leans, the mouth comes up to <b>%s</b> off the axis of %s and loses <b>%s</b> at 2 kHz; over <b>%s</b> it "
                             "is plainly duller. %s"),
                   talker, angle, name, lr_say_db_off (judge, loss_db, limit), lr_say_db (judge, limit),
                   is_boom ? _("Hang it farther to the front, or aim lower.") : _("Stand it more to the front."));
  else
    lr_remark_say (remark, _("As %s leans, the mouth stays within <b>%s</b> of the axis of %s and loses no more than <b>%s</b> dB at 2 kHz."),
                   talker, angle, name, lr_say_number (judge, loss_db, 1));
}

static const char *
say_face (LrJudge             *judge,
          const LrCombReading *comb)
{
  const LrRoom *room = judge->study->setup->room;

  if (comb->item != NULL)
    return lr_say_title (judge, comb->item);
  if (comb->wall >= 0)
    return lr_wall_title (room, comb->wall);

  return comb->at_m.z < 0.5 * room->height_m ? _("floor") : _("ceiling");
}

static void
judge_comb (LrJudge                 *judge,
            const LrMicrophoneSound *microphone)
{
  const LrCombReading *reading = &microphone->comb;
  double limit = judge->limits[LR_LIMIT_COMB];
  gboolean is_heard = microphone->has_comb && reading->comb.share > limit;
  LrRemark *remark;
  const char *face, *name, *talker, *share, *notch;

  if (!microphone->has_comb || microphone->distance_m > FAR_OFF_M)
    return;
  remark = lr_judge_add (judge, LR_CHECK_COMB, is_heard ? LR_GRADE_MIND : LR_GRADE_FINE, microphone->placed, NULL);
  if (remark == NULL)
    return;

  face = say_face (judge, reading);
  name = lr_say_name (judge, microphone->placed);
  talker = lr_say_name (judge, microphone->talker);
  share = lr_say_share_off (judge, reading->comb.share, limit);
  notch = lr_say_number (judge, 10.0 * round (0.1 * reading->comb.notch_hz), 0);
  remark->value = reading->comb.share;
  remark->limit = limit;
  lr_remark_about (remark, microphone->talker);
  lr_remark_about (remark, reading->item);
  lr_remark_mark_line (remark, lr_vec3_flat (microphone->mouth_m), lr_vec3_flat (reading->at_m), NULL);
  lr_remark_mark_line (remark, lr_vec3_flat (reading->at_m), lr_vec3_flat (microphone->capsule_m), share);
  if (!is_heard)
    {
      /* Translators: floor, ceiling, a wall or a table; a person; a microphone; a share; hertz */
      lr_remark_say (remark, _("Of the hard faces round %s the %s throws most of %s’s voice back into it, <b>%s</b>, first notch <b>%s</b> Hz: "
                               "too little to color it."),
                     name, face, talker, share, notch);
      return;
    }

  lr_remark_say (remark, _("The %s throws <b>%s</b> of %s’s voice back into %s, <b>%s</b> ms late: it sounds hollow, first notch <b>%s</b> Hz."),
                 face, share, talker, name, lr_say_number (judge, 1000.0 * reading->comb.delay_s, 1), notch);
  if (reading->item != NULL)
    {
      LrRemedy *remedy = lr_remedy_new ();

      lr_remedy_change (remedy, reading->item->item, "cover", LR_COVER_SOFT);
      lr_remedy_say (remedy, share, _("Lay a blanket over the %s; it throws <b>%s</b> back now."), face, share);
      lr_judge_keep (judge, remark, remedy);
    }
  else
    lr_remark_say (remark, _("Lay or hang a blanket there."));
}

/* The sandbag that it would want with its tip there; 0: what hangs there is enough */
static double
bag_for_kg (LrJudge        *judge,
            const LrPlaced *boom,
            LrVec3          tip_m)
{
  LrPlaced there = *boom;
  LrItem item = *boom->item;
  LrStandReading stand;

  there.item = &item;
  item.microphone.tip_x_m = tip_m.x;
  item.microphone.tip_y_m = tip_m.y;
  item.microphone.tip_height_m = tip_m.z;
  if (!lr_study_stand (judge->study, &there, &stand) || stand.wanted_bag_kg <= stand.bag_kg)
    return 0.0;

  return lr_stand_whole_bag_kg (stand.wanted_bag_kg);
}

static void
keep_boom (LrJudge                 *judge,
           LrRemark                *remark,
           const LrMicrophoneSound *boom,
           LrVec3                   tip_m,
           double                   best_m)
{
  const LrItem *item = boom->placed->item;
  LrRemedy *remedy = lr_remedy_new ();
  const char *distance = lr_say_length (judge, best_m);
  double bag_kg = bag_for_kg (judge, boom->placed, tip_m);

  lr_remedy_change (remedy, item, "tip-x-mm", tip_m.x);
  lr_remedy_change (remedy, item, "tip-y-mm", tip_m.y);
  lr_remedy_change (remedy, item, "tip-height-mm", tip_m.z);
  if (bag_kg > 0.0)
    {
      lr_remedy_change (remedy, item, "bag-kg", bag_kg);
      lr_remedy_say (remedy, distance, _("Hang its tip <b>%s</b> before and over the mouth, at <b>%s</b>: out of every frame, and a sandbag of "
                                         "<b>%s</b> on its stand."),
                     distance, lr_say_length (judge, tip_m.z), lr_say_mass (judge, bag_kg));
    }
  else
    lr_remedy_say (remedy, distance, _("Hang its tip <b>%s</b> before and over the mouth, at <b>%s</b>: out of every frame."), distance,
                   lr_say_length (judge, tip_m.z));
  lr_judge_keep (judge, remark, remedy);
}

static void
judge_boom_place (LrJudge                 *judge,
                  const LrMicrophoneSound *boom)
{
  double limit = judge->limits[LR_LIMIT_BOOM_FAR], best_m = HUGE_VAL;
  gboolean is_far = boom->distance_m > limit, is_aside = boom->off_mouth_rad > MOST_ASIDE_RAD, has_best = FALSE, is_nearest;
  LrVec3 tip_m = { 0 };
  LrRemark *remark;
  const char *name, *talker, *distance, *angle;

  /* whether it is as near as it gets, or what would mend it */
  if (is_aside ? !judge->is_moving : is_far)
    has_best = lr_boom_best_place (judge->study, boom, judge->limits[LR_LIMIT_BOOM_MARGIN], &tip_m);
  if (has_best)
    best_m = lr_vec3_length (lr_vec3_sub (tip_m, boom->mouth_m));
  /* from where its post is: without a best place there is none that is nearer */
  is_nearest = !has_best || (!is_aside && boom->distance_m <= best_m + NEAR_BEST_M);
  if (is_far && !is_aside && has_best && is_nearest && boom->distance_m <= FAR_ANYHOW_M)
    is_far = FALSE;

  remark = lr_judge_add (judge, LR_CHECK_BOOM_PLACE, is_far || is_aside ? LR_GRADE_MIND : LR_GRADE_FINE, boom->placed, NULL);
  if (remark == NULL)
    return;

  name = lr_say_name (judge, boom->placed);
  talker = lr_say_name (judge, boom->talker);
  distance = is_far ? lr_say_length_off (judge, boom->distance_m, limit) : lr_say_length (judge, boom->distance_m);
  angle = lr_say_angle (judge, boom->off_mouth_rad);
  remark->value = is_aside ? boom->off_mouth_rad : boom->distance_m;
  remark->limit = is_aside ? MOST_ASIDE_RAD : limit;
  lr_remark_about (remark, boom->talker);
  lr_remark_mark_distance (remark, lr_vec3_flat (boom->mouth_m), lr_vec3_flat (boom->capsule_m), distance);
  if (is_aside)
    lr_remark_say (remark, _("Boom %s hangs <b>%s</b> off the way that %s’s mouth points, <b>%s</b> away: over the head or beside it a voice "
                             "is dull."),
                   name, angle, talker, distance);
  else if (is_far)
    lr_remark_say (remark, _("Boom %s hangs <b>%s</b> from %s’s mouth; over <b>%s</b> the room comes up."), name, distance, talker,
                   lr_say_length (judge, limit));
  else if (boom->distance_m > limit)
    lr_remark_say (remark, _("Boom %s hangs <b>%s</b> from %s’s mouth, as near as the frames let it."), name, distance, talker);
  else
    lr_remark_say (remark, _("Boom %s hangs <b>%s</b> from %s’s mouth, <b>%s</b> off the way that it points."), name, distance, talker, angle);
  if (is_far && !is_aside && is_nearest)
    lr_remark_say (remark, _("From where its stand is, nothing nearer keeps out of the frames: move the stand."));
  else if ((is_far || is_aside) && has_best)
    keep_boom (judge, remark, boom, tip_m, best_m);
}

/* Whether the boom stands between a light and a face */
static void
judge_boom_shadows (LrJudge                 *judge,
                    const LrMicrophoneSound *boom)
{
  for (guint i = 0; i < judge->study->placed->len; i++)
    {
      const LrPlaced *light = &g_array_index (judge->study->placed, LrPlaced, i);
      double hidden;
      LrRemark *remark;

      if (light->item->kind != LR_ITEM_LIGHT || !(light->item->light.dim > 0.0))
        continue;
      hidden = lr_boom_hides (boom->placed, light, boom->talker);
      if (hidden < LR_BOOM_MOST_HIDDEN)
        continue;
      remark = lr_judge_add (judge, LR_CHECK_BOOM_SHADOW, LR_GRADE_MIND, boom->placed, light);
      if (remark == NULL)
        continue;

      remark->value = hidden;
      remark->limit = LR_BOOM_MOST_HIDDEN;
      lr_remark_about (remark, boom->talker);
      lr_remark_mark_line (remark, light->at_m, boom->talker->at_m, lr_say_share (judge, hidden));
      lr_remark_say (remark, _("Boom %s hangs between %s and %s’s face and takes <b>%s</b> of that light: its shadow moves with it. Hang it to "
                               "the other side, or higher."),
                     lr_say_name (judge, boom->placed), lr_say_name (judge, light), lr_say_name (judge, boom->talker),
                     lr_say_share (judge, hidden));
    }
}

/**
 * lr_judge_microphones:
 * @judge: a judge, not of a trial
 *
 * The mouth off the axis, reflections, and where booms hang.
 */
void
lr_judge_microphones (LrJudge *judge)
{
  const LrSound *sound = lr_study_sound (judge->study);

  for (guint i = 0; i < sound->microphones->len; i++)
    {
      const LrMicrophoneSound *microphone = lr_sound_microphone (sound, i);

      judge_off_axis (judge, microphone);
      judge_comb (judge, microphone);
      if (microphone->placed->item->microphone.form != LR_MIC_BOOM)
        continue;
      judge_boom_place (judge, microphone);
      judge_boom_shadows (judge, microphone);
    }
}
