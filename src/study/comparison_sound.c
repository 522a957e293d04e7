/* comparison_sound.c - how loud a room is by itself, and how long it rings
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Noise is what an ear that hears all round would have where the subject's head is, whether a microphone is there or not. Surfaces whose
 * absorption is as the program has it for all rooms were not noted.
 */

#include "comparison_parts.h"

#include "sound_levels.h"
#include "sound_parts.h"

#define EAR_HEIGHT_M 1.2 /* seated, in the middle of an empty room; common practice, no source */

static gboolean
is_noted (const LrSurface *surface)
{
  LrSurface usual = { .material = NULL };

  lr_prop_table_init (lr_surface_table (), &usual);
  for (int band = 0; band < LR_N_BANDS; band++)
    if (fabs (surface->absorption[band] - usual.absorption[band]) > 1e-9)
      {
        lr_prop_table_clear (lr_surface_table (), &usual);
        return TRUE;
      }
  lr_prop_table_clear (lr_surface_table (), &usual);

  return FALSE;
}

static void
compare_reverberation (LrRoomFigures     *figures,
                       const LrRoomSound *sound)
{
  const LrRoom *room = figures->setup->room;
  int n_noted = is_noted (&room->walls) + is_noted (&room->floor) + is_noted (&room->ceiling);

  figures->is_reverberation_measured = sound->is_measured;
  if (isfinite (sound->mid_s) && (sound->is_measured || n_noted > 0))
    figures->figure[LR_COMPARE_REVERBERATION] = (LrFigure) { sound->is_measured || n_noted == 3 ? LR_KNOWN : LR_KNOWN_PARTLY, sound->mid_s };
}

/* What gives back most is what is hung or covered first */
static void
find_hard_part (LrRoomFigures     *figures,
                const LrRoomSound *sound)
{
  double floor_m2 = figures->study->room_area_m2, openings_m2 = figures->windows_m2, areas_m2[LR_SOUND_PEOPLE];

  for (guint i = 0; i < figures->setup->items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (figures->setup->items, i);

      if (item->kind == LR_ITEM_DOOR)
        openings_m2 += item->door.width_m * item->door.height_m;
    }
  areas_m2[LR_SOUND_WALLS] = fmax (sound->surface_m2 - 2.0 * floor_m2 - openings_m2, 0.0);
  areas_m2[LR_SOUND_FLOOR] = areas_m2[LR_SOUND_CEILING] = floor_m2;
  areas_m2[LR_SOUND_OPENINGS] = openings_m2;
  figures->hard_m2 = 0.0;
  for (int part = 0; part < LR_SOUND_PEOPLE; part++)
    if (areas_m2[part] - sound->part_m2[part] > figures->hard_m2)
      {
        figures->hard_m2 = areas_m2[part] - sound->part_m2[part];
        figures->hard_part = (LrSoundPart) part;
      }
}

static LrMicrophoneSound
ear_of (const LrStudy *study)
{
  const LrRoom *room = study->setup->room;
  LrMicrophoneSound ear = { .pattern = { 1.0, 0.0 }, .axis = { 0.0, 0.0, 1.0 } };

  ear.capsule_m = study->subject != NULL ? study->subject->eyes_m
                                         : lr_vec2_raise (lr_polygon_centroid_m (room->corners_m, room->n_corners), EAR_HEIGHT_M);
  return ear;
}

/* The room itself and the noises that are on */
static void
compare_noise (LrRoomFigures     *figures,
               const LrRoomSound *sound)
{
  const LrStudy *study = figures->study;
  LrMicrophoneSound ear = ear_of (study);
  double all[2] = { sound->background_db, 0.0 }, quiet[2] = { sound->background_db, 0.0 }, loudest_db = -HUGE_VAL;
  guint n = 0;
  LrKnown known = sound->is_background_measured ? LR_KNOWN : LR_KNOWN_PARTLY;

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *noise = &g_array_index (study->placed, LrPlaced, i);

      if (noise->item->kind != LR_ITEM_NOISE || noise->item->noise.is_off)
        continue;
      n++;
      all[1] = lr_sound_noise_db (sound, &ear, noise);
      if (all[1] > loudest_db)
        {
          loudest_db = all[1];
          figures->loudest = noise->item;
        }
      quiet[1] = all[1];
      all[0] = lr_level_sum_db (all, 2);
      if (noise->item->noise.can_switch_off)
        continue;
      quiet[0] = lr_level_sum_db (quiet, 2);
    }

  figures->is_background_measured = sound->is_background_measured;
  if (!sound->is_background_measured && n == 0)
    return;
  figures->figure[LR_COMPARE_NOISE] = (LrFigure) { known, all[0] };
  figures->figure[LR_COMPARE_QUIET] = (LrFigure) { known, quiet[0] };
}

/**
 * lr_compare_sound:
 * @figures: of a room that is drawn, with its windows
 *
 * Fills those of noise and reverberation.
 */
void
lr_compare_sound (LrRoomFigures *figures)
{
  const LrSound *sound = lr_study_sound (figures->study);

  if (!sound->has_room)
    return;

  compare_reverberation (figures, &sound->room);
  find_hard_part (figures, &sound->room);
  compare_noise (figures, &sound->room);
}
