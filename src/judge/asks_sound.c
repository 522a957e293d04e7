/* asks_sound.c - what the place is asked to keep quiet
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the plan counts on being off is asked for; and of what is on, the least that brings each voice over its limit. Not more: a place
 * that is asked for everything does nothing.
 */

#include "config.h"

#include "asks.h"

#include "sound_switch.h"
#include "sun_readings.h"

#include <glib/gi18n-lib.h>

/* Before the roll: time to hear whether it is quiet; common practice, no source */
#define BEFORE_MIN 10

/* "09:50"; "" when the job has no such time. (transfer full) */
static char *
minutes_before (const char *time,
                int         minutes)
{
  int minute;

  if (!lr_minute_parse (time, &minute))
    return g_strdup ("");

  minute = (minute - minutes + LR_DAY_MIN) % LR_DAY_MIN;
  return g_strdup_printf ("%02d:%02d", minute / 60, minute % 60);
}

static void
ask_off (GPtrArray      *asks,
         const LrStudy  *study,
         const LrPlaced *noise,
         const char     *reason)
{
  const LrJob *job = study->plan->job;
  g_autofree char *from = minutes_before (job->time_roll, BEFORE_MIN), *to = minutes_before (job->time_wrap, 0);
  g_autofree char *name = lr_item_title_first (noise->item);
  /* Translators: a noise that is to be switched off */
  g_autofree char *text = g_strdup_printf (_("%s off, on again after"), name);

  lr_asks_add (asks, noise->item, text, reason, from, to);
}

/* With this one on, or off, and all the others as the plan has them */
static char *
say_gain (double with_db,
          double without_db)
{
  /* Translators: levels of a voice over noise */
  return g_strdup_printf (_("≈\u00a0%.0f\u00a0dB over noise, not %.0f"), without_db, with_db);
}

/* What is off in the plan: how far the voice would come down with it on */
static void
ask_for_planned (GPtrArray     *asks,
                 const LrStudy *study)
{
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);
      double with_db, without_db;
      g_autofree char *reason = NULL;

      if (placed->item->kind != LR_ITEM_NOISE || !placed->item->noise.is_off || !placed->item->noise.can_switch_off)
        continue;
      reason = lr_sound_over_with (study, placed, &with_db, &without_db) && without_db - with_db >= 0.5 ? say_gain (with_db, without_db)
                                                                                                     : g_strdup (_("quiet for the recording"));
      ask_off (asks, study, placed, reason);
    }
}

static void
ask_for_rest (GPtrArray     *asks,
              const LrStudy *study)
{
  const LrSound *sound = lr_study_sound (study);
  const LrMicrophoneSound *best = study->subject != NULL ? lr_sound_best (sound, study->subject, TRUE) : NULL;
  g_autofree gboolean *is_off = NULL, *is_one = NULL;

  if (best == NULL || best->over_db >= study->plan->limits.value[LR_LIMIT_OVER_NOISE])
    return;

  is_off = lr_sound_switch_off (best, study->plan->limits.value[LR_LIMIT_OVER_NOISE]);
  is_one = g_new0 (gboolean, best->noises->len);
  for (guint i = 0; i < best->noises->len; i++)
    if (is_off[i])
      {
        double with_db = lr_sound_over_without (best, is_one);
        g_autofree char *reason = NULL;

        is_one[i] = TRUE;
        reason = say_gain (with_db, lr_sound_over_without (best, is_one));
        ask_off (asks, study, lr_sound_noise (best, i)->noise, reason);
      }
}

/**
 * lr_asks_add_sound:
 * @asks: requests
 * @study: a study
 * @units: how lengths are written
 *
 * Adds what is to be switched off, and when.
 */
void
lr_asks_add_sound (GPtrArray     *asks,
                   const LrStudy *study,
                   LrUnits        units G_GNUC_UNUSED)
{
  if (!lr_study_sound (study)->has_room)
    return;

  ask_for_planned (asks, study);
  ask_for_rest (asks, study);
}
