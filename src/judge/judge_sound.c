/* judge_sound.c - whether a voice stands out of noise and room, and whether one failure would lose it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Once for each talker, by the microphone that does best; the others are told in their Details. Not in trials: remedies for pictures do
 * not wait for it.
 */

#include "config.h"

#include "judge_parts.h"

#include "sound_switch.h"

#include <glib/gi18n-lib.h>

#define ON_VOICE_M 1.0      /* a microphone farther away is not on the voice; common practice, no source */
#define MOST_BLANKETS_M2 30.0 /* more than that is no evening's work; common practice, no source */

/* What is loudest: "fridge", or the room itself */
static const char *
say_noise (LrJudge            *judge,
           const LrNoiseLevel *noise)
{
  return noise->noise != NULL ? lr_say_title (judge, noise->noise) : _("the room itself");
}

/* Switches off what counts, the least of it that brings the voice over its limit */
static void
keep_switches (LrJudge                 *judge,
               LrRemark                *remark,
               const LrMicrophoneSound *microphone)
{
  gboolean *is_off = lr_sound_switch_off (microphone, judge->limits[LR_LIMIT_OVER_NOISE]);
  g_autoptr (GString) names = g_string_new (NULL);
  LrRemedy *remedy = lr_remedy_new ();
  double over_db = lr_sound_over_without (microphone, is_off);
  const char *figure = lr_say_db (judge, over_db);

  for (guint i = 0; i < microphone->noises->len; i++)
    if (is_off[i])
      {
        const LrPlaced *noise = lr_sound_noise (microphone, i)->noise;

        lr_remedy_change (remedy, noise->item, "is-off", TRUE);
        g_string_append_printf (names, "%s%s", names->len > 0 ? ", " : "", lr_say_title (judge, noise));
      }

  g_free (is_off);
  if (over_db >= judge->limits[LR_LIMIT_OVER_NOISE])
    {
      /* Translators: noises; by how much the voice is then over the rest */
      lr_remedy_say (remedy, figure, _("Have this switched off: %s; then it is <b>%s</b>."), names->str, figure);
      lr_judge_keep (judge, remark, remedy);
      return;
    }

  if (names->len > 0)
    lr_remark_say (remark, _("With this off it is <b>%s</b>: %s."), figure, names->str);
  else
    lr_remark_say (remark, _("Nothing that can be switched off would help."));
  lr_remedy_free (remedy);
}

static void
judge_noise (LrJudge                 *judge,
             const LrMicrophoneSound *microphone)
{
  double limit = judge->limits[LR_LIMIT_OVER_NOISE], least = judge->limits[LR_LIMIT_OVER_NOISE_LEAST], over_db = microphone->over_db;
  LrGrade grade = over_db < least ? LR_GRADE_FIX : over_db < limit ? LR_GRADE_MIND : LR_GRADE_FINE;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_NOISE, grade, microphone->talker, NULL);
  const LrNoiseLevel *loudest = lr_sound_noise (microphone, 0);
  const char *name, *talker;

  if (remark == NULL)
    return;

  name = lr_say_name (judge, microphone->placed);
  talker = lr_say_name (judge, microphone->talker);
  remark->value = over_db;
  remark->limit = grade == LR_GRADE_FIX ? least : limit;
  lr_remark_about (remark, microphone->placed);
  lr_remark_about (remark, loudest->noise);
  lr_remark_mark_point (remark, microphone->talker->at_m, lr_say_db (judge, over_db));
  if (loudest->noise != NULL)
    lr_remark_mark_line (remark, loudest->noise->at_m, lr_vec3_flat (microphone->capsule_m), lr_say_db (judge, loudest->level_db));
  if (grade == LR_GRADE_FINE)
    {
      /* Translators: a microphone, a person, a level difference, a noise */
      lr_remark_say (remark, _("%s hears %s <b>%s</b> over noise, of which the loudest is: %s."), name, talker, lr_say_db (judge, over_db),
                     say_noise (judge, loudest));
      return;
    }

  lr_remark_say (remark, _("%s hears %s only <b>%s</b> over noise; clean takes <b>%s</b>. Loudest: %s."), name, talker,
                 lr_say_db_off (judge, over_db, limit), lr_say_db (judge, limit), say_noise (judge, loudest));
  keep_switches (judge, remark, microphone);
}

/* "About 14 m² of blankets bring it down to 0.7 s." */
static void
say_blankets (LrJudge           *judge,
              LrRemark          *remark,
              const LrRoomSound *room)
{
  double limit_s = judge->limits[LR_LIMIT_REVERBERATION], area_m2;

  if (!lr_sound_blankets_m2 (judge->study, room, limit_s, &area_m2))
    return;
  if (area_m2 > MOST_BLANKETS_M2)
    lr_remark_say (remark, _("To bring it down to <b>%s</b> would take <b>%s</b> of heavy blankets: take another room, or come nearer."),
                   lr_say_seconds (judge, limit_s), lr_say_area (judge, area_m2));
  else
    lr_remark_say (remark, _("Some <b>%s</b> of heavy blankets or curtains in folds bring it down to <b>%s</b>."), lr_say_area (judge, area_m2),
                   lr_say_seconds (judge, limit_s));
}

static void
judge_reverberation (LrJudge                 *judge,
                     const LrRoomSound       *room,
                     const LrMicrophoneSound *microphone)
{
  double limit_s = judge->limits[LR_LIMIT_REVERBERATION], limit_db = judge->limits[LR_LIMIT_OVER_ROOM];
  gboolean is_long = room->mid_s > limit_s, is_far = microphone->direct_db < limit_db;
  LrRemark *remark = lr_judge_add (judge, LR_CHECK_REVERBERATION, is_long || is_far ? LR_GRADE_MIND : LR_GRADE_FINE, microphone->talker, NULL);
  const char *name, *talker, *time, *over;

  if (remark == NULL)
    return;

  name = lr_say_name (judge, microphone->placed);
  talker = lr_say_name (judge, microphone->talker);
  time = lr_say_seconds (judge, room->mid_s);
  over = lr_say_db (judge, microphone->direct_db);
  remark->value = is_far ? microphone->direct_db : room->mid_s;
  remark->limit = is_far ? limit_db : limit_s;
  lr_remark_about (remark, microphone->placed);
  lr_remark_mark_distance (remark, lr_vec3_flat (microphone->mouth_m), lr_vec3_flat (microphone->capsule_m), over);
  if (is_far)
    lr_remark_say (remark, _("%s hears %s only <b>%s</b> over the room, which rings <b>%s</b>; under <b>%s</b> a voice sounds far "
                             "away. Come nearer."),
                   name, talker, lr_say_db_off (judge, microphone->direct_db, limit_db), time, lr_say_db (judge, limit_db));
  else if (is_long)
    lr_remark_say (remark, _("The room rings <b>%s</b>, over <b>%s</b>; %s still hears %s <b>%s</b> over it."),
                   lr_say_seconds_off (judge, room->mid_s, limit_s), lr_say_seconds (judge, limit_s), name, talker, over);
  else
    lr_remark_say (remark, _("The room rings <b>%s</b>; %s hears %s <b>%s</b> over it."), time, name, talker, over);
  if (is_long)
    say_blankets (judge, remark, room);
}

static void
judge_second (LrJudge        *judge,
              const LrSound  *sound,
              const LrPlaced *talker)
{
  LrRemark *remark;
  guint n = 0;

  for (guint i = 0; i < sound->microphones->len; i++)
    n += lr_sound_microphone (sound, i)->talker == talker && lr_sound_microphone (sound, i)->distance_m <= ON_VOICE_M;
  if (talker->item->person.role != LR_ROLE_SUBJECT)
    return;

  remark = lr_judge_add (judge, LR_CHECK_SECOND_MICROPHONE, n < 2 ? LR_GRADE_MIND : LR_GRADE_FINE, talker, NULL);
  if (remark == NULL)
    return;

  remark->value = n;
  remark->limit = 2.0;
  lr_remark_mark_point (remark, talker->at_m, NULL);
  if (n >= 2)
    lr_remark_say (remark, _("<b>%u</b> microphones are within reach of %s’s voice: if one fails, the other has it."), n,
                   lr_say_name (judge, talker));
  else
    lr_remark_say (remark,
                   ngettext ("<b>%u</b> microphone is within <b>%s</b> of %s’s mouth; a second one, into a recorder or a track of its own, saves "
                             "the take when it fails.",
                             "<b>%u</b> microphones are within <b>%s</b> of %s’s mouth; two, each into a recorder or a track of its own, save "
                             "the take when one fails.", n),
                   n, lr_say_length (judge, ON_VOICE_M), lr_say_name (judge, talker));
}

static gboolean
is_first (const LrSound *sound,
          guint          index)
{
  for (guint i = 0; i < index; i++)
    if (lr_sound_microphone (sound, i)->talker == lr_sound_microphone (sound, index)->talker)
      return FALSE;
  return TRUE;
}

/**
 * lr_judge_sound:
 * @judge: a judge
 *
 * Noise, room and a second microphone for each who speaks into one; then each microphone by itself. Nothing without a room or microphones.
 */
void
lr_judge_sound (LrJudge *judge)
{
  const LrSound *sound;

  if (judge->is_trial)
    return;

  sound = lr_study_sound (judge->study);
  for (guint i = 0; i < sound->microphones->len; i++)
    {
      const LrPlaced *talker = lr_sound_microphone (sound, i)->talker;

      if (!is_first (sound, i))
        continue;
      judge_noise (judge, lr_sound_best (sound, talker, TRUE));
      judge_reverberation (judge, &sound->room, lr_sound_best (sound, talker, FALSE));
      judge_second (judge, sound, talker);
    }
  lr_judge_microphones (judge);
}
