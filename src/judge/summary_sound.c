/* summary_sound.c - what is heard, in a few lines: for the Details
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What limits the sound comes first, then the parts of it. Each noise by itself is in the chart beside it.
 */

#include "config.h"

#include "summary_sound.h"

#include "boom_place.h"
#include "sound_switch.h"

#include <glib/gi18n-lib.h>

#define NO_BREAK "\u00a0"
#define LEAST_NEARER_M 0.05

static void
add_line (GString *text,
          char    *line)
{
  if (*line != '\0')
    g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "", line);
  g_free (line);
}

static double
limit_of (const LrStudy *study,
          LrLimit        limit)
{
  return study->plan->limits.value[limit];
}

/* (transfer full) */
static char *
noise_title (const LrNoiseLevel *level)
{
  return level->noise != NULL ? lr_item_title (level->noise->item) : g_strdup (_("the room itself"));
}

/* Which of noise and room make it miss its limits */
static char *
describe_limit (const LrStudy           *study,
                const LrRoomSound       *room,
                const LrMicrophoneSound *microphone)
{
  double noise_short_db = limit_of (study, LR_LIMIT_OVER_NOISE) - microphone->over_db;
  double room_short_db = limit_of (study, LR_LIMIT_OVER_ROOM) - microphone->direct_db;
  g_autofree char *loudest = noise_title (lr_sound_noise (microphone, 0));

  if (noise_short_db > 0.0 && room_short_db > 0.0)
    /* Translators: a noise */
    return g_strdup_printf (_("The room limits it, for it is too far from the mouth, and so does noise, most of it from: %s."), loudest);
  if (noise_short_db > 0.0)
    /* Translators: a noise */
    return g_strdup_printf (_("Noise limits it, most of it from: %s."), loudest);
  if (room_short_db > 0.0)
    return g_strdup (_("The room limits it: it is too far from the mouth."));
  if (room->mid_s > limit_of (study, LR_LIMIT_REVERBERATION))
    return g_strdup (_("It is near enough to stand out of a room that rings long."));

  return g_strdup (_("Neither noise nor room stands in the way."));
}

static char *
describe_held (const LrMicrophoneSound *microphone,
               LrUnits                  units)
{
  g_autofree char *distance = lr_length_format (microphone->distance_m, units), *name = lr_item_title (microphone->talker->item);
  double loss_db = -microphone->dull_db;

  if (microphone->placed->item->microphone.form == LR_MIC_LAVALIER)
    /* Translators: a distance, a person */
    return g_strdup_printf (_("Hangs %s from %s’s mouth, under the chin."), distance, name);
  if (loss_db < 0.5)
    /* Translators: a distance, a person, angles */
    return g_strdup_printf (_("%s from %s’s mouth, which is %.0f° off its axis, up to %.0f° as they lean."), distance, name,
                            microphone->off_axis_rad / LR_DEG, microphone->lean_off_axis_rad / LR_DEG);
  /* Translators: a distance, a person, angles, a level difference */
  return g_strdup_printf (_("%s from %s’s mouth, which is %.0f° off its axis, up to %.0f° as they lean: then it loses %.0f" NO_BREAK
                            "dB at 2" NO_BREAK "kHz."),
                          distance, name, microphone->off_axis_rad / LR_DEG, microphone->lean_off_axis_rad / LR_DEG, loss_db);
}

static char *
describe_levels (const LrMicrophoneSound *microphone)
{
  if (microphone->direct_db < 0.0)
    /* Translators: levels, dB(A) */
    return g_strdup_printf (_("Voice %.0f" NO_BREAK "dB, %.0f under what the room gives back of it, %.0f over noise."), microphone->voice_db,
                            -microphone->direct_db, microphone->over_db);
  /* Translators: levels, dB(A) */
  return g_strdup_printf (_("Voice %.0f" NO_BREAK "dB, %.0f over what the room gives back of it, %.0f over noise."), microphone->voice_db,
                          microphone->direct_db, microphone->over_db);
}

/* What the gain of switching off rests on */
static char *
describe_background (const LrRoomSound *room)
{
  if (room->is_background_measured)
    return g_strdup ("");
  /* Translators: a level, dB(A) */
  return g_strdup_printf (_("Nobody measured the quiet room: it is taken as %.0f" NO_BREAK "dB."), room->background_db);
}

static char *
describe_quiet (const LrMicrophoneSound *microphone)
{
  if (microphone->quiet_over_db - microphone->over_db < 0.5)
    return g_strdup ("");
  return g_strdup_printf (_("With all off that can be: %.0f" NO_BREAK "dB over noise."), microphone->quiet_over_db);
}

static char *
describe_comb (const LrStudy           *study,
               const LrMicrophoneSound *microphone)
{
  const LrCombReading *comb = &microphone->comb;
  g_autofree char *face = NULL;

  if (!microphone->has_comb)
    return g_strdup ("");

  face = comb->item != NULL  ? lr_item_title (comb->item->item)
         : comb->wall >= 0 ? g_strdup (lr_wall_title (study->setup->room, comb->wall))
                           : g_strdup (comb->at_m.z < 0.5 * study->setup->room->height_m ? _("floor") : _("ceiling"));
  /* Translators: a face, a per cent number, milliseconds, hertz, decibels */
  return g_strdup_printf (_("The strongest reflection, by the %s: %.0f" NO_BREAK "%% of the voice, %.1f" NO_BREAK "ms late; first notch %.0f" NO_BREAK
                            "Hz, %.1f" NO_BREAK "dB deep."),
                          face, 100.0 * comb->comb.share, 1000.0 * comb->comb.delay_s, comb->comb.notch_hz, -comb->comb.notch_db);
}

static char *
describe_boom (const LrPlaced *boom,
               LrUnits         units)
{
  const LrMicrophone *microphone = &boom->item->microphone;
  g_autofree char *reach = lr_length_format (lr_vec2_distance (boom->at_m, lr_vec2 (microphone->tip_x_m, microphone->tip_y_m)), units);
  double weight_kg;

  if (microphone->form != LR_MIC_BOOM)
    return g_strdup ("");
  if (!lr_boom_weight_kg (boom, &weight_kg))
    return g_strdup_printf (_("Reaches %s, with nothing behind the post to balance it."), reach);
  /* Translators: a length, a mass */
  return g_strdup_printf (_("Reaches %s; %.1f" NO_BREAK "kg at the short end balance it. Bag a leg as well."), reach, weight_kg);
}

/* How near the frames would let it come; "" where it hangs there */
static char *
describe_best (const LrStudy           *study,
               const LrMicrophoneSound *boom,
               LrUnits                  units)
{
  g_autofree char *distance = NULL, *height = NULL;
  double best_m;
  LrVec3 tip_m;

  if (boom->placed->item->microphone.form != LR_MIC_BOOM
      || !lr_boom_best_place (study, boom, study->plan->limits.value[LR_LIMIT_BOOM_MARGIN], &tip_m))
    return g_strdup ("");
  best_m = lr_vec3_length (lr_vec3_sub (tip_m, boom->mouth_m));
  if (best_m > boom->distance_m - LEAST_NEARER_M)
    return g_strdup ("");

  distance = lr_length_format (best_m, units);
  height = lr_length_format (tip_m.z, units);
  /* Translators: a distance and a height */
  return g_strdup_printf (_("Every frame would let it hang %s before and over the mouth, at %s."), distance, height);
}

/**
 * lr_microphone_sound_summary:
 * @study: a study
 * @microphone: a microphone
 * @units: how lengths are written
 *
 * Returns: (transfer full): what it hears, on several lines; "" without a room or when nobody speaks into it
 */
char *
lr_microphone_sound_summary (const LrStudy  *study,
                             const LrPlaced *microphone,
                             LrUnits         units)
{
  const LrSound *sound = lr_study_sound (study);
  const LrMicrophoneSound *heard = lr_sound_find (sound, microphone->item->id);
  GString *text = g_string_new (NULL);

  if (heard != NULL)
    {
      add_line (text, describe_limit (study, &sound->room, heard));
      add_line (text, describe_levels (heard));
      add_line (text, describe_quiet (heard));
      add_line (text, describe_background (&sound->room));
      add_line (text, describe_held (heard, units));
      add_line (text, describe_best (study, heard, units));
      add_line (text, describe_comb (study, heard));
    }
  add_line (text, describe_boom (microphone, units));

  return g_string_free (text, FALSE);
}

/**
 * lr_noise_sound_summary:
 * @study: a study
 * @noise: a noise
 *
 * Returns: (transfer full): what each microphone hears of it, and what switching it off would win; "" if none does
 */
char *
lr_noise_sound_summary (const LrStudy  *study,
                        const LrPlaced *noise)
{
  const LrSound *sound = lr_study_sound (study);
  GString *text = g_string_new (NULL);
  double with_db, without_db;

  for (guint i = 0; i < sound->microphones->len; i++)
    {
      const LrMicrophoneSound *microphone = lr_sound_microphone (sound, i);

      for (guint k = 0; k < microphone->noises->len; k++)
        if (lr_sound_noise (microphone, k)->noise == noise)
          {
            const LrNoiseLevel *level = lr_sound_noise (microphone, k);

            /* Translators: a microphone's tag, levels */
            add_line (text, g_strdup_printf (_("%s hears it at %.0f" NO_BREAK "dB, %.0f under the voice. Off, it wins %.1f" NO_BREAK "dB: %.0f"
                                               NO_BREAK "dB over noise instead of %.0f."),
                                             microphone->placed->item->tag, level->level_db, microphone->voice_db - level->level_db,
                                             level->win_db, microphone->over_db + level->win_db, microphone->over_db));
          }
    }
  if (noise->item->noise.is_off && lr_sound_over_with (study, noise, &with_db, &without_db))
    add_line (text, g_strdup_printf (_("Off, as the plan counts on, the voice is %.0f" NO_BREAK "dB over noise; on, it would be %.0f."), without_db,
                                     with_db));

  return g_string_free (text, FALSE);
}

static char *
describe_time (const LrRoomSound *room)
{
  const double *bands = room->is_eyring ? room->eyring_s : room->sabine_s;
  /* Translators: reverberation times from 125 Hz to 4 kHz */
  g_autofree char *all = g_strdup_printf (_("125" NO_BREAK "Hz %.1f, 250 %.1f, 500 %.1f, 1" NO_BREAK "kHz %.1f, 2" NO_BREAK "kHz %.1f, 4" NO_BREAK
                                            "kHz %.1f" NO_BREAK "s"),
                                          bands[0], bands[1], bands[2], bands[3], bands[4], bands[5]);

  if (room->is_measured)
    return g_strdup_printf (_("Rings %.1f" NO_BREAK "s, as measured; computed: %s."), room->mid_s, all);
  if (room->is_eyring)
    /* Translators: times, a per cent number, a time */
    return g_strdup_printf (_("Rings %.1f" NO_BREAK "s (%s), give or take a fifth. By Eyring, for its surfaces take up %.0f" NO_BREAK
                              "%% of the sound, over 20: Sabine would say %.1f" NO_BREAK "s."),
                            room->mid_s, all, 100.0 * room->mean_absorption, 0.5 * (room->sabine_s[2] + room->sabine_s[3]));
  return g_strdup_printf (_("Rings %.1f" NO_BREAK "s (%s), give or take a fifth. By Sabine, for its surfaces take up %.0f" NO_BREAK
                            "%% of the sound, under 20; Eyring would say %.1f" NO_BREAK "s."),
                          room->mid_s, all, 100.0 * room->mean_absorption, 0.5 * (room->eyring_s[2] + room->eyring_s[3]));
}

static char *
describe_parts (const LrRoomSound *room)
{
  static const char *const names[LR_N_SOUND_PARTS] = {
    [LR_SOUND_WALLS] = N_("walls"), [LR_SOUND_FLOOR] = N_("floor"), [LR_SOUND_CEILING] = N_("ceiling"),
    [LR_SOUND_OPENINGS] = N_("windows and doors"), [LR_SOUND_PEOPLE] = N_("people"), [LR_SOUND_FURNITURE] = N_("furniture"),
  };
  g_autoptr (GString) parts = g_string_new (NULL);
  double sum = 0.0;

  for (int i = 0; i < LR_N_SOUND_PARTS; i++)
    sum += room->part_m2[i];
  for (int i = 0; i < LR_N_SOUND_PARTS && sum > 0.0; i++)
    if (room->part_m2[i] >= 0.01 * sum)
      g_string_append_printf (parts, "%s%s %.0f" NO_BREAK "%%", parts->len > 0 ? ", " : "", _(names[i]), 100.0 * room->part_m2[i] / sum);

  /* Translators: a list of parts of the room, each with a per cent number */
  return g_strdup_printf (_("What takes it up: %s."), parts->str);
}

static char *
describe_distance (const LrRoomSound *room,
                   LrUnits            units)
{
  g_autofree char *distance = lr_length_format (room->critical_m, units);

  /* Translators: a length, a frequency, three more */
  return g_strdup_printf (_("At %s a voice and the room’s answer are alike. Under %.0f" NO_BREAK "Hz it booms by single standing waves, from %.0f, "
                            "%.0f and %.0f" NO_BREAK "Hz."),
                          distance, room->schroeder_hz, room->modes_hz[0], room->modes_hz[1], room->modes_hz[2]);
}

/**
 * lr_room_voice_summary:
 * @study: a study
 *
 * Returns: (transfer full): which microphone hears the subject best, and what the requests to the place win; "" if none does
 */
char *
lr_room_voice_summary (const LrStudy *study)
{
  const LrSound *sound = lr_study_sound (study);
  const LrMicrophoneSound *best = study->subject != NULL ? lr_sound_best (sound, study->subject, TRUE) : NULL;
  g_autofree gboolean *is_off = NULL;
  double asked_db;

  if (!sound->has_room || !(sound->room.mid_s > 0.0) || best == NULL)
    return g_strdup ("");

  is_off = lr_sound_switch_off (best, limit_of (study, LR_LIMIT_OVER_NOISE));
  asked_db = lr_sound_over_without (best, is_off);
  /* Translators: a microphone's tag, levels */
  return asked_db - best->over_db < 0.5
           ? g_strdup_printf (_("%s hears the voice best, %.0f" NO_BREAK "dB over noise."), best->placed->item->tag, best->over_db)
           : g_strdup_printf (_("%s hears the voice best, %.0f" NO_BREAK "dB over noise; with what is asked for off, %.0f" NO_BREAK "dB."),
                              best->placed->item->tag, best->over_db, asked_db);
}

/**
 * lr_room_sound_summary:
 * @study: a study
 * @units: how lengths are written
 *
 * Returns: (transfer full): how the room answers, on several lines; "" without a room
 */
char *
lr_room_sound_summary (const LrStudy *study,
                       LrUnits        units)
{
  const LrSound *sound = lr_study_sound (study);
  const LrRoomSound *room = &sound->room;
  GString *text = g_string_new (NULL);

  if (!sound->has_room || !(room->mid_s > 0.0))
    return g_string_free (text, FALSE);

  add_line (text, describe_time (room));
  add_line (text, describe_parts (room));
  add_line (text, describe_distance (room, units));
  if (isfinite (room->crowded_hz))
    add_line (text, g_strdup_printf (_("Waves along two of its sides fall together at %.0f" NO_BREAK "Hz: keep the talker and the microphones out of "
                                       "the middle and off the walls."),
                                     room->crowded_hz));
  if (room->flutter_wall >= 0)
    /* Translators: a wall, a time */
    add_line (text, g_strdup_printf (_("A clap flutters between the %s and the one across, for %.1f" NO_BREAK "s: hang something soft on one."),
                                     lr_wall_title (study->setup->room, room->flutter_wall), room->flutter.ring_s));

  return g_string_free (text, FALSE);
}
