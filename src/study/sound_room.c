/* sound_room.c - how long the room rings
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sabine's time holds for hard rooms; where the surfaces take up more than a fifth, Eyring's is used, which is never longer. Both
 * take the air in, at 20 °C and half of full humidity. A window counts as glass, whatever its blind; a door as wood; a person as one on a
 * chair; soft seats by the floor that they take; hard furniture for nothing, and what it covers of the floor is left in: it throws the
 * sound about and takes up little (common practice, no source).
 */

#include "sound_parts.h"

#include "materials.h"
#include "reverberation.h"
#include "sound_levels.h"

#define MOST_SABINE 0.2
#define MOST_ABSORPTION 0.99 /* of surfaces: tables print more than 1 for what has edges */
#define CELSIUS 20.0
#define HUMIDITY 0.5
#define BARE 0.1             /* walls that flutter take up no more, from 1 to 4 kHz */
#define FLUTTER_M 2.5        /* and are farther apart */
#define PARALLEL_COS -0.999
#define MOST_HALF_WAVES 6
#define TOGETHER 0.05        /* of their frequency, two waves sound as one; common practice, no source */
#define VOICE_FROM_HZ 80.0   /* a deep voice; common practice, no source */

typedef struct
{
  double bands_m2[LR_N_SOUND_PARTS][LR_N_BANDS];
} Absorption;

static void
add (Absorption   *absorption,
     LrSoundPart   part,
     double        amount,
     const double *coefficients)
{
  for (int band = 0; band < LR_N_BANDS; band++)
    absorption->bands_m2[part][band] += amount * coefficients[band];
}

static void
add_thing (Absorption  *absorption,
           LrSoundPart  part,
           double       amount,
           LrSoundThing thing)
{
  add (absorption, part, amount, lr_material_of_thing (thing)->absorption);
}

static void
add_furniture (Absorption        *absorption,
               const LrFurniture *furniture)
{
  gboolean is_soft = furniture->cover == LR_COVER_SOFT || (furniture->cover == LR_COVER_USUAL && furniture->form == LR_FURNITURE_SOFA);

  if (furniture->form == LR_FURNITURE_CHAIR)
    add_thing (absorption, LR_SOUND_FURNITURE, 1.0, is_soft ? LR_THING_SOFT_CHAIR : LR_THING_WOODEN_CHAIR);
  else if (is_soft)
    add_thing (absorption, LR_SOUND_FURNITURE, furniture->length_m * furniture->width_m, LR_THING_SOFT_SEATS);
}

/* Returns what the item takes of the walls [m²] */
static double
add_item (Absorption   *absorption,
          const LrItem *item)
{
  double area_m2 = 0.0;

  switch ((int) item->kind)
    {
    case LR_ITEM_WINDOW:
      area_m2 = item->window.width_m * fmax (item->window.head_m - item->window.sill_m, 0.0);
      add_thing (absorption, LR_SOUND_OPENINGS, area_m2, LR_THING_WINDOW);
      break;
    case LR_ITEM_DOOR:
      area_m2 = item->door.width_m * item->door.height_m;
      add_thing (absorption, LR_SOUND_OPENINGS, area_m2, LR_THING_DOOR);
      break;
    case LR_ITEM_PERSON:
      add_thing (absorption, LR_SOUND_PEOPLE, 1.0, LR_THING_PERSON);
      break;
    case LR_ITEM_FURNITURE:
      add_furniture (absorption, &item->furniture);
      break;
    case LR_ITEM_PANEL:
      if (item->panel.form == LR_PANEL_BACKDROP)
        add_thing (absorption, LR_SOUND_FURNITURE, item->panel.width_m * item->panel.height_m, LR_THING_CLOTH);
      break;
    default:
      break;
    }

  return area_m2;
}

static double
walls_m2 (const LrRoom *room)
{
  double around_m = 0.0, length_m;

  for (int wall = 0; lr_room_wall (room, wall, NULL, NULL, &length_m); wall++)
    around_m += length_m;

  return around_m * room->height_m;
}

static void
find_times (LrRoomSound      *sound,
            const Absorption *absorption)
{
  static const double centres_hz[LR_N_BANDS] = { 125, 250, 500, 1000, 2000, 4000 };

  for (int band = 0; band < LR_N_BANDS; band++)
    {
      double surfaces_m2 = 0.0, objects_m2 = 0.0, air_db_m = 0.0;

      for (int part = 0; part < LR_N_SOUND_PARTS; part++)
        *(part < LR_SOUND_PEOPLE ? &surfaces_m2 : &objects_m2) += absorption->bands_m2[part][band];
      surfaces_m2 = fmin (surfaces_m2, MOST_ABSORPTION * sound->surface_m2);
      lr_air_loss_db_m (centres_hz[band], CELSIUS, HUMIDITY, &air_db_m);
      sound->sabine_s[band] = sound->eyring_s[band] = NAN;
      lr_reverberation_sabine_s (sound->volume_m3, surfaces_m2 + objects_m2, air_db_m, &sound->sabine_s[band]);
      lr_reverberation_eyring_s (sound->volume_m3, sound->surface_m2, surfaces_m2, objects_m2, air_db_m, &sound->eyring_s[band]);
    }
  for (int part = 0; part < LR_N_SOUND_PARTS; part++)
    {
      sound->part_m2[part] = LR_SOUND_MID (absorption->bands_m2[part]);
      sound->mean_absorption += part < LR_SOUND_PEOPLE ? sound->part_m2[part] / sound->surface_m2 : 0.0;
    }
  sound->is_eyring = sound->mean_absorption > MOST_SABINE;
  sound->mid_s = sound->is_eyring ? LR_SOUND_MID (sound->eyring_s) : LR_SOUND_MID (sound->sabine_s);
}

static gboolean
is_bare (const LrRoom *room)
{
  return room->walls.absorption[3] < BARE && room->walls.absorption[4] < BARE && room->walls.absorption[5] < BARE;
}

/* The first two walls that face each other over more than 2.5 m and overlap in plan; walls are all of one material */
static void
find_flutter (const LrRoom *room,
              LrRoomSound  *sound)
{
  LrVec2 from_m, along, other_from_m, other_along;
  double length_m, other_length_m;

  sound->flutter_wall = -1;
  for (int i = 0; is_bare (room) && lr_room_wall (room, i, &from_m, &along, &length_m); i++)
    for (int j = i + 1; lr_room_wall (room, j, &other_from_m, &other_along, &other_length_m); j++)
      {
        LrVec2 way = lr_vec2_sub (other_from_m, from_m);
        double apart_m = lr_vec2_cross (along, way), far_m = lr_vec2_dot (along, way), near_m = far_m - other_length_m;

        if (lr_vec2_dot (along, other_along) > PARALLEL_COS || apart_m < FLUTTER_M || fmin (far_m, length_m) - fmax (near_m, 0.0) < 1.0
            || !lr_flutter (apart_m, room->walls.absorption[4], room->walls.absorption[4], &sound->flutter))
          continue;
        sound->flutter_wall = i;
        return;
      }
}

/* The lowest that waves along two sides have together, over a deep voice and where single waves are heard */
static double
find_crowded_hz (const LrRoomSound *sound)
{
  double least_hz = NAN;

  for (int i = 0; i < 3; i++)
    for (int k = i + 1; k < 3; k++)
      for (int m = 1; m <= MOST_HALF_WAVES; m++)
        for (int n = 1; n <= MOST_HALF_WAVES; n++)
          {
            double a_hz = m * sound->modes_hz[i], b_hz = n * sound->modes_hz[k], both_hz = 0.5 * (a_hz + b_hz);

            if (fabs (a_hz - b_hz) < TOGETHER * both_hz && both_hz > VOICE_FROM_HZ && both_hz < sound->schroeder_hz
                && !(both_hz >= least_hz))
              least_hz = both_hz;
          }
  return least_hz;
}

static void
find_modes (const LrRoom *room,
            LrRoomSound  *sound)
{
  LrVec2 low, high;
  double sides_m[3];

  lr_polygon_bounds (room->corners_m, room->n_corners, &low, &high);
  sides_m[0] = high.x - low.x;
  sides_m[1] = high.y - low.y;
  sides_m[2] = room->height_m;
  for (int i = 0; i < 3; i++)
    {
      int half_waves[3] = { i == 0, i == 1, i == 2 };

      sound->modes_hz[i] = NAN;
      lr_room_mode_hz (sides_m, half_waves, &sound->modes_hz[i]);
    }
  sound->crowded_hz = find_crowded_hz (sound);
}

/**
 * lr_sound_read_room:
 * @study: a study whose room has corners
 * @sound: (out caller-allocates): how the room answers
 *
 * Source: Kuttruff, Room Acoustics, chapter 5; EN 12354-6:2003; the table of materials has its own.
 */
void
lr_sound_read_room (const LrStudy *study,
                    LrRoomSound   *sound)
{
  const LrRoom *room = study->setup->room;
  double floor_m2 = study->room_area_m2, all_walls_m2 = walls_m2 (room), openings_m2 = 0.0;
  Absorption absorption = { 0 };

  *sound = (LrRoomSound) { .volume_m3 = floor_m2 * room->height_m, .surface_m2 = 2.0 * floor_m2 + all_walls_m2 };
  for (guint i = 0; i < study->setup->items->len; i++)
    openings_m2 += add_item (&absorption, study->setup->items->pdata[i]);
  add (&absorption, LR_SOUND_WALLS, fmax (all_walls_m2 - openings_m2, 0.0), room->walls.absorption);
  add (&absorption, LR_SOUND_FLOOR, floor_m2, room->floor.absorption);
  add (&absorption, LR_SOUND_CEILING, floor_m2, room->ceiling.absorption);
  find_times (sound, &absorption);

  sound->is_measured = room->reverberation_s > 0.0;
  if (sound->is_measured)
    sound->mid_s = room->reverberation_s;
  lr_reverberation_area_m2 (sound->volume_m3, sound->mid_s, &sound->absorption_m2);
  sound->is_background_measured = room->background_db != 0.0;
  sound->background_db = sound->is_background_measured ? room->background_db : study->plan->limits.value[LR_LIMIT_BACKGROUND];
  sound->voice_db = study->plan->limits.value[LR_LIMIT_VOICE];
  lr_critical_distance_m (LR_VOICE_DIRECTIVITY, sound->absorption_m2, &sound->critical_m);
  lr_schroeder_hz (sound->mid_s, sound->volume_m3, &sound->schroeder_hz);
  find_modes (room, sound);
  find_flutter (room, sound);
}
