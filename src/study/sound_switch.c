/* sound_switch.c - what switching noises off, or hanging blankets, would win
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "sound_switch.h"

#include "materials.h"
#include "reverberation.h"
#include "sound_parts.h"

#define LEAST_WIN_DB 1.0 /* less is not heard; common practice, no source */

/**
 * lr_sound_switch_off:
 * @microphone: a microphone
 * @wanted_db: voice over noise
 *
 * All that can go, but for those that are not needed: the quietest stay on first, as long as the voice is so far over the rest, or where that
 * is out of reach as long as they take less than a decibel of what all win together.
 *
 * Returns: (transfer full) (array): by index of its noises, whether to switch it off
 */
gboolean *
lr_sound_switch_off (const LrMicrophoneSound *microphone,
                     double                   wanted_db)
{
  gboolean *is_off = g_new0 (gboolean, microphone->noises->len);
  double all_db, enough_db;

  if (microphone->over_db >= wanted_db)
    return is_off;

  for (guint i = 0; i < microphone->noises->len; i++)
    {
      const LrNoiseLevel *level = lr_sound_noise (microphone, i);

      is_off[i] = level->noise != NULL && level->noise->item->noise.can_switch_off;
    }
  all_db = lr_sound_over_without (microphone, is_off);
  enough_db = fmin (wanted_db, all_db - LEAST_WIN_DB);
  for (guint i = microphone->noises->len; i-- > 0;)
    if (is_off[i])
      {
        is_off[i] = FALSE;
        is_off[i] = lr_sound_over_without (microphone, is_off) < enough_db;
      }

  return is_off;
}

/**
 * lr_sound_over_with:
 * @study: a study
 * @noise: one that is off in the plan
 * @with_db: (out): voice over noise with it on
 * @without_db: (out): as planned
 *
 * Returns: %FALSE, with nothing written, when no microphone hears the subject
 */
gboolean
lr_sound_over_with (const LrStudy  *study,
                    const LrPlaced *noise,
                    double         *with_db,
                    double         *without_db)
{
  const LrSound *sound = lr_study_sound (study);
  const LrMicrophoneSound *best = study->subject != NULL ? lr_sound_best (sound, study->subject, TRUE) : NULL;
  double on_db;

  if (best == NULL)
    return FALSE;

  on_db = lr_sound_noise_db (&sound->room, best, noise);
  *without_db = best->over_db;
  *with_db = best->voice_db - 10.0 * log10 (pow (10.0, 0.1 * best->noise_db) + pow (10.0, 0.1 * on_db));
  return TRUE;
}

/**
 * lr_sound_blankets_m2:
 * @study: a study
 * @room: how its room answers
 * @time_s: how long it may ring [s]
 * @area_m2: (out): of heavy drapes in folds [m²]
 *
 * `dA / (a_new - a_covered)`, Sabine's formula turned round, at middle frequencies.
 *
 * Source: closed form; coefficients from the table of materials.
 *
 * Returns: %FALSE, with @area_m2 untouched, when it rings no longer, or its walls are as soft
 */
gboolean
lr_sound_blankets_m2 (const LrStudy     *study,
                      const LrRoomSound *room,
                      double             time_s,
                      double            *area_m2)
{
  double wanted_m2, gain = LR_SOUND_MID (lr_material_find ("drape-heavy-folds")->absorption) - LR_SOUND_MID (study->setup->room->walls.absorption);

  if (!lr_reverberation_area_m2 (room->volume_m3, time_s, &wanted_m2) || wanted_m2 <= room->absorption_m2 || gain < 0.1)
    return FALSE;

  *area_m2 = (wanted_m2 - room->absorption_m2) / gain;
  return TRUE;
}
