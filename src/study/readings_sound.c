/* readings_sound.c - what is heard, in the readings
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "readings_private.h"

#include "sound.h"

static void
add_bands (JsonBuilder  *builder,
           const char   *key,
           const double *bands)
{
  json_builder_set_member_name (builder, key);
  json_builder_begin_array (builder);
  for (int i = 0; i < LR_N_BANDS; i++)
    json_builder_add_double_value (builder, isfinite (bands[i]) ? bands[i] : 0.0);
  json_builder_end_array (builder);
}

static void
add_noises (JsonBuilder             *builder,
            const LrMicrophoneSound *microphone)
{
  json_builder_set_member_name (builder, "noises");
  json_builder_begin_array (builder);
  for (guint i = 0; i < microphone->noises->len; i++)
    {
      const LrNoiseLevel *level = lr_sound_noise (microphone, i);

      json_builder_begin_object (builder);
      lr_readings_add_text (builder, "noise", lr_readings_id_of (level->noise));
      lr_readings_add_number (builder, "level-db", level->level_db);
      lr_readings_add_number (builder, "win-db", level->win_db);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

static void
add_microphone (JsonBuilder             *builder,
                const LrMicrophoneSound *microphone)
{
  json_builder_begin_object (builder);
  lr_readings_add_text (builder, "microphone", microphone->placed->item->id);
  lr_readings_add_text (builder, "talker", microphone->talker->item->id);
  lr_readings_add_number (builder, "distance-m", microphone->distance_m);
  lr_readings_add_degrees (builder, "off-axis-deg", microphone->off_axis_rad);
  lr_readings_add_degrees (builder, "off-mouth-deg", microphone->off_mouth_rad);
  lr_readings_add_degrees (builder, "lean-off-axis-deg", microphone->lean_off_axis_rad);
  lr_readings_add_number (builder, "lean-2-khz-db", microphone->dull_db);
  lr_readings_add_number (builder, "voice-db", microphone->voice_db);
  lr_readings_add_number (builder, "reverberant-db", microphone->reverberant_db);
  lr_readings_add_number (builder, "over-room-db", microphone->direct_db);
  lr_readings_add_number (builder, "noise-db", microphone->noise_db);
  lr_readings_add_number (builder, "over-noise-db", microphone->over_db);
  lr_readings_add_number (builder, "over-noise-all-off-db", microphone->quiet_over_db);
  lr_readings_add_number (builder, "notch-hz", microphone->has_comb ? microphone->comb.comb.notch_hz : (double) NAN);
  lr_readings_add_number (builder, "reflection-share", microphone->has_comb ? microphone->comb.comb.share : (double) NAN);
  add_noises (builder, microphone);
  json_builder_end_object (builder);
}

static void
add_resonances (JsonBuilder       *builder,
                const LrRoomSound *room)
{
  gboolean has_flutter = room->flutter_wall >= 0;

  json_builder_set_member_name (builder, "modes-hz");
  json_builder_begin_array (builder);
  for (gsize i = 0; i < G_N_ELEMENTS (room->modes_hz); i++)
    json_builder_add_double_value (builder, isfinite (room->modes_hz[i]) ? room->modes_hz[i] : 0.0);
  json_builder_end_array (builder);
  lr_readings_add_number (builder, "crowded-hz", room->crowded_hz);
  if (has_flutter)
    lr_readings_add_count (builder, "flutter-wall", room->flutter_wall);
  else
    lr_readings_add_text (builder, "flutter-wall", NULL);
  lr_readings_add_number (builder, "flutter-period-ms", has_flutter ? 1000.0 * room->flutter.period_s : (double) NAN);
  lr_readings_add_number (builder, "flutter-ring-s", has_flutter ? room->flutter.ring_s : (double) NAN);
}

/**
 * lr_readings_add_sound:
 * @builder: within the object of readings
 * @study: a study
 *
 * Adds "sound", if there is a room.
 */
void
lr_readings_add_sound (JsonBuilder   *builder,
                       const LrStudy *study)
{
  const LrSound *sound = lr_study_sound (study);

  if (!sound->has_room)
    return;

  json_builder_set_member_name (builder, "sound");
  json_builder_begin_object (builder);
  lr_readings_add_number (builder, "volume-m3", sound->room.volume_m3);
  lr_readings_add_number (builder, "surface-m2", sound->room.surface_m2);
  add_bands (builder, "sabine-s", sound->room.sabine_s);
  add_bands (builder, "eyring-s", sound->room.eyring_s);
  lr_readings_add_flag (builder, "is-eyring", sound->room.is_eyring);
  lr_readings_add_flag (builder, "is-measured", sound->room.is_measured);
  lr_readings_add_number (builder, "reverberation-s", sound->room.mid_s);
  lr_readings_add_number (builder, "absorption-m2", sound->room.absorption_m2);
  lr_readings_add_number (builder, "critical-m", sound->room.critical_m);
  lr_readings_add_number (builder, "schroeder-hz", sound->room.schroeder_hz);
  lr_readings_add_number (builder, "background-db", sound->room.background_db);
  add_resonances (builder, &sound->room);
  json_builder_set_member_name (builder, "microphones");
  json_builder_begin_array (builder);
  for (guint i = 0; i < sound->microphones->len; i++)
    add_microphone (builder, lr_sound_microphone (sound, i));
  json_builder_end_array (builder);
  json_builder_end_object (builder);
}
