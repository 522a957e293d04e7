/* sound.c - how the room answers, and what each microphone hears of voice, room and noises
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "sound_parts.h"

#include "sound_levels.h"

static void
clear_microphone (gpointer microphone)
{
  g_array_unref (((LrMicrophoneSound *) microphone)->noises);
}

static LrSound *
read_sound (const LrStudy *study)
{
  LrSound *sound = g_new0 (LrSound, 1);

  sound->microphones = g_array_new (FALSE, FALSE, sizeof (LrMicrophoneSound));
  g_array_set_clear_func (sound->microphones, clear_microphone);
  sound->has_room = study->setup->room->n_corners >= 3;
  if (!sound->has_room)
    return sound;

  lr_sound_read_room (study, &sound->room);
  lr_sound_read_microphones (study, sound);
  return sound;
}

/**
 * lr_study_sound:
 * @study: a study
 *
 * Computed when first asked for.
 *
 * Returns: (transfer none): what is heard in it
 */
const LrSound *
lr_study_sound (const LrStudy *study)
{
  if (*study->sound == NULL)
    *study->sound = read_sound (study);

  return *study->sound;
}

/**
 * lr_sound_free:
 * @sound: (transfer full) (nullable): sound
 */
void
lr_sound_free (LrSound *sound)
{
  if (sound == NULL)
    return;

  g_array_unref (sound->microphones);
  g_free (sound);
}

/**
 * lr_sound_find:
 * @sound: sound of a study
 * @microphone: id of an item
 *
 * Returns: (transfer none) (nullable): what it hears; %NULL if nobody speaks into it
 */
const LrMicrophoneSound *
lr_sound_find (const LrSound *sound,
               const char    *microphone)
{
  for (guint i = 0; i < sound->microphones->len; i++)
    if (g_str_equal (lr_sound_microphone (sound, i)->placed->item->id, microphone))
      return lr_sound_microphone (sound, i);

  return NULL;
}

/**
 * lr_sound_best:
 * @sound: sound of a study
 * @talker: a person
 * @over_noise: whether the voice over the noise counts, and not over the room
 *
 * Returns: (transfer none) (nullable): the best of those that the person speaks into
 */
const LrMicrophoneSound *
lr_sound_best (const LrSound  *sound,
               const LrPlaced *talker,
               gboolean        over_noise)
{
  const LrMicrophoneSound *best = NULL;

  for (guint i = 0; i < sound->microphones->len; i++)
    {
      const LrMicrophoneSound *microphone = lr_sound_microphone (sound, i);

      if (microphone->talker == talker
          && (best == NULL || (over_noise ? microphone->over_db > best->over_db : microphone->direct_db > best->direct_db)))
        best = microphone;
    }

  return best;
}

/**
 * lr_sound_level_at_db:
 * @sound: sound of a study
 * @noise: a noise
 * @away_m: from it [m], > 0
 *
 * What was read at 1 m in a room holds the room's answer, so that it hardly falls with the distance; without a room it falls by 6 dB each time
 * that the distance doubles. Source: Kuttruff, Room Acoustics, chapter 5.
 *
 * Returns: what a meter reads there [dB]
 */
double
lr_sound_level_at_db (const LrSound *sound,
                      const LrNoise *noise,
                      double         away_m)
{
  double power_db, both_db[2];

  if (!sound->has_room || !lr_level_power_db (noise->level_db, 1.0, 1.0, sound->room.absorption_m2, &power_db)
      || !lr_level_direct_db (power_db, away_m, 1.0, &both_db[0]) || !lr_level_diffuse_db (power_db, sound->room.absorption_m2, &both_db[1]))
    return noise->level_db - 20.0 * log10 (away_m);

  return lr_level_sum_db (both_db, G_N_ELEMENTS (both_db));
}

/**
 * lr_sound_over_without:
 * @microphone: a microphone
 * @is_off: (array): by index of its noises, whether it is off
 *
 * Returns: voice over what is left of noise [dB]
 */
double
lr_sound_over_without (const LrMicrophoneSound *microphone,
                       const gboolean          *is_off)
{
  double sum = 0.0;

  for (guint i = 0; i < microphone->noises->len; i++)
    if (!is_off[i])
      sum += pow (10.0, 0.1 * lr_sound_noise (microphone, i)->level_db);

  return microphone->voice_db - 10.0 * log10 (sum);
}
