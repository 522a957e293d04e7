/* sound_microphones.c - what each microphone hears of voice, room and noises
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A boom points at the upper chest, so that a talker who leans stays in its pickup; a microphone on a stand points at the mouth, one on a
 * camera with it (common practice, no source). A noise is known by what a meter reads 1 m from it in this room, which holds the room's
 * answer already; beyond a wall it counts as if the wall were not there, for that is how it was read.
 */

#include "sound_parts.h"

#include "sound_levels.h"

#define CHEST_UNDER_MOUTH_M 0.25
#define UNDER_CHIN_DB -3.0     /* common practice, no source */
#define LEAST_NOISE_M 0.25
/* How far a talker's mouth goes as he sits and speaks: forward, back, to either side; common practice, no source */
#define LEAN_FORWARD_M 0.15
#define LEAN_BACK_M 0.10
#define LEAN_ASIDE_M 0.12

/* Who speaks into it; (nullable) */
static const LrPlaced *
find_talker (const LrStudy *study,
             const LrItem  *item)
{
  const LrMicrophone *microphone = &item->microphone;
  const LrCameraReading *camera;
  const LrPlaced *talker;

  if (microphone->form == LR_MIC_CAMERA)
    {
      camera = lr_study_find_camera (study, microphone->mounted_on);
      return camera != NULL ? camera->subject : NULL;
    }

  talker = lr_study_find_placed (study, microphone->form == LR_MIC_LAVALIER ? microphone->worn_by : microphone->aims_at);
  return talker != NULL && talker->item->kind == LR_ITEM_PERSON ? talker : NULL;
}

static void
find_place (const LrStudy     *study,
            LrMicrophoneSound *sound)
{
  const LrMicrophone *microphone = &sound->placed->item->microphone;
  const LrCameraReading *camera;

  sound->mouth_m = lr_vec3 (sound->talker->eyes_m.x, sound->talker->eyes_m.y, sound->talker->body.mouth_m);
  sound->capsule_m = sound->placed->point_m;
  switch ((LrMicForm) microphone->form)
    {
    case LR_MIC_LAVALIER:
      sound->axis = lr_vec3_way (sound->capsule_m, sound->mouth_m);
      break;
    case LR_MIC_CAMERA:
      camera = lr_study_find_camera (study, microphone->mounted_on);
      sound->axis = camera->projection.forward;
      break;
    case LR_MIC_STAND:
      sound->axis = lr_vec3_way (sound->capsule_m, sound->mouth_m);
      break;
    case LR_MIC_BOOM:
    default:
      sound->axis = lr_vec3_way (sound->capsule_m, lr_vec3_along (sound->mouth_m, lr_vec3 (0.0, 0.0, -1.0), CHEST_UNDER_MOUTH_M));
      break;
    }
}

static double
angle_between (LrVec3 a,
               LrVec3 b)
{
  return acos (fmax (-1.0, fmin (1.0, lr_vec3_dot (a, b))));
}

/**
 * lr_sound_pattern_db:
 * @microphone: whose place, axis and pattern are known
 * @from_m: where a sound comes from [m]
 * @frequency_hz: its frequency
 *
 * Returns: its level against the same sound on the axis [dB]
 */
double
lr_sound_pattern_db (const LrMicrophoneSound *microphone,
                     LrVec3                   from_m,
                     double                   frequency_hz)
{
  double level_db = 0.0;

  lr_pattern_level_db (&microphone->pattern, angle_between (microphone->axis, lr_vec3_way (microphone->capsule_m, from_m)), frequency_hz,
                       &level_db);
  return level_db;
}

/* The worst angle and the dullest voice as the talker leans; worn microphones go with him */
static void
read_lean (LrMicrophoneSound *sound)
{
  static const LrVec2 leans_m[] = { { 0.0, 0.0 }, { LEAN_FORWARD_M, 0.0 }, { -LEAN_BACK_M, 0.0 }, { 0.0, LEAN_ASIDE_M }, { 0.0, -LEAN_ASIDE_M } };

  sound->lean_off_axis_rad = 0.0;
  sound->dull_db = 0.0;
  if (sound->placed->item->microphone.form == LR_MIC_LAVALIER)
    return;

  for (gsize i = 0; i < G_N_ELEMENTS (leans_m); i++)
    {
      LrVec2 by_m = lr_vec2_rotate (leans_m[i], sound->talker->facing_rad);
      LrVec3 mouth_m = lr_vec3 (sound->mouth_m.x + by_m.x, sound->mouth_m.y + by_m.y, sound->mouth_m.z);

      sound->lean_off_axis_rad = fmax (sound->lean_off_axis_rad, angle_between (sound->axis, lr_vec3_way (sound->capsule_m, mouth_m)));
      sound->dull_db = fmin (sound->dull_db, lr_sound_pattern_db (sound, mouth_m, LR_SOUND_DULL_HZ));
    }
}

static void
read_voice (const LrRoomSound *room,
            LrMicrophoneSound *sound)
{
  gboolean is_worn = sound->placed->item->microphone.form == LR_MIC_LAVALIER;
  LrVec3 ahead = lr_vec2_raise (lr_vec2_polar (sound->talker->facing_rad, 1.0), 0.0);
  double power_db = 0.0, diffuse_db = 0.0, index_db = 0.0, factor;

  sound->distance_m = fmax (lr_vec3_length (lr_vec3_sub (sound->capsule_m, sound->mouth_m)), 0.02);
  sound->off_axis_rad = angle_between (sound->axis, lr_vec3_way (sound->capsule_m, sound->mouth_m));
  sound->off_mouth_rad = angle_between (ahead, lr_vec3_way (sound->mouth_m, sound->capsule_m));
  sound->voice_db = room->voice_db - 20.0 * log10 (sound->distance_m) + lr_sound_pattern_db (sound, sound->mouth_m, LR_SOUND_PATTERN_HZ)
                    + (is_worn ? UNDER_CHIN_DB : lr_voice_turned_db (sound->off_mouth_rad));

  lr_pattern_directivity (&sound->pattern, LR_SOUND_PATTERN_HZ, &index_db, &factor);
  lr_level_free_power_db (room->voice_db, 1.0, LR_VOICE_DIRECTIVITY, &power_db);
  lr_level_diffuse_db (power_db, room->absorption_m2, &diffuse_db);
  sound->reverberant_db = diffuse_db - index_db;
  sound->direct_db = sound->voice_db - sound->reverberant_db;
}

/**
 * lr_sound_noise_db:
 * @room: how the room answers
 * @sound: a microphone whose place, axis and pattern are known
 * @noise: a noise, as if it were on
 *
 * Returns: what the microphone hears of it [dB]
 */
double
lr_sound_noise_db (const LrRoomSound       *room,
                   const LrMicrophoneSound *sound,
                   const LrPlaced          *noise)
{
  LrVec3 at_m = lr_vec2_raise (noise->at_m, noise->item->noise.height_m);
  double away_m = fmax (lr_vec3_length (lr_vec3_sub (at_m, sound->capsule_m)), LEAST_NOISE_M), power_db = 0.0, levels_db[2] = { 0.0, 0.0 };
  double index_db = 0.0, factor;

  lr_level_power_db (noise->item->noise.level_db, 1.0, 1.0, room->absorption_m2, &power_db);
  lr_level_direct_db (power_db, away_m, 1.0, &levels_db[0]);
  lr_level_diffuse_db (power_db, room->absorption_m2, &levels_db[1]);
  levels_db[0] += lr_sound_pattern_db (sound, at_m, LR_SOUND_PATTERN_HZ);
  lr_pattern_directivity (&sound->pattern, LR_SOUND_PATTERN_HZ, &index_db, &factor);
  levels_db[1] -= index_db;
  return lr_level_sum_db (levels_db, 2);
}

static int
compare_levels (gconstpointer a,
                gconstpointer b)
{
  double over_db = ((const LrNoiseLevel *) b)->level_db - ((const LrNoiseLevel *) a)->level_db;

  return over_db > 0.0 ? 1 : over_db < 0.0 ? -1 : 0;
}

static void
read_noises (const LrStudy     *study,
             const LrRoomSound *room,
             LrMicrophoneSound *sound)
{
  double index_db = 0.0, factor, sum = 0.0, quiet = 0.0;
  LrNoiseLevel background;

  lr_pattern_directivity (&sound->pattern, LR_SOUND_PATTERN_HZ, &index_db, &factor);
  background = (LrNoiseLevel) { NULL, room->background_db - index_db, 0.0 };
  sound->noises = g_array_new (FALSE, FALSE, sizeof (LrNoiseLevel));
  g_array_append_val (sound->noises, background);
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *noise = &g_array_index (study->placed, LrPlaced, i);
      LrNoiseLevel level = { noise, 0.0, 0.0 };

      if (noise->item->kind != LR_ITEM_NOISE || noise->item->noise.is_off)
        continue;
      level.level_db = lr_sound_noise_db (room, sound, noise);
      g_array_append_val (sound->noises, level);
    }
  g_array_sort (sound->noises, compare_levels);

  for (guint i = 0; i < sound->noises->len; i++)
    {
      const LrNoiseLevel *level = lr_sound_noise (sound, i);
      double energy = pow (10.0, 0.1 * level->level_db);

      sum += energy;
      quiet += level->noise == NULL || !level->noise->item->noise.can_switch_off ? energy : 0.0;
    }
  for (guint i = 0; i < sound->noises->len; i++)
    {
      LrNoiseLevel *level = &g_array_index (sound->noises, LrNoiseLevel, i);
      double left = sum - pow (10.0, 0.1 * level->level_db);

      level->win_db = left > 1e-9 * sum ? 10.0 * log10 (sum / left) : HUGE_VAL;
    }
  sound->noise_db = 10.0 * log10 (sum);
  sound->over_db = sound->voice_db - sound->noise_db;
  sound->quiet_over_db = sound->voice_db - 10.0 * log10 (quiet);
}

/**
 * lr_sound_read_microphones:
 * @study: a study
 * @sound: sound whose room is read
 *
 * Reads the first %LR_MAX_SOUND_MICROPHONES that somebody speaks into.
 */
void
lr_sound_read_microphones (const LrStudy *study,
                           LrSound       *sound)
{
  for (guint i = 0; i < study->placed->len && sound->microphones->len < LR_MAX_SOUND_MICROPHONES; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);
      LrMicrophoneSound microphone = { .placed = placed };

      if (placed->item->kind != LR_ITEM_MICROPHONE)
        continue;
      microphone.talker = find_talker (study, placed->item);
      if (microphone.talker == NULL)
        continue;

      microphone.pattern = (LrPattern) { placed->item->microphone.omni_share, placed->item->microphone.tube_m };
      find_place (study, &microphone);
      read_lean (&microphone);
      read_voice (&sound->room, &microphone);
      read_noises (study, &sound->room, &microphone);
      microphone.has_comb = lr_sound_read_comb (study, &microphone, &microphone.comb);
      g_array_append_val (sound->microphones, microphone);
    }
}
