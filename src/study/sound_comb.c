/* sound_comb.c - the hard face that throws most of a voice back into its microphone
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One mirror image of the mouth in each wall, in floor and ceiling, and in each table top that the way there and on meets. What comes
 * back is weaker by its longer way, by the face, by the pattern, and as the talker does not speak that way. A worn microphone hears the
 * mouth from so near that nothing compares.
 */

#include "sound_parts.h"

#include "sound_levels.h"

#define TABLE_ABSORPTION 0.05 /* wood, bare; common practice, no source */
#define LEAST_DELAY_S 3e-4
#define MOST_DELAY_S 10e-3

typedef struct
{
  LrVec3          image_m; /* the mouth's */
  double          absorption;
  LrVec3          at_m;
  int             wall;
  const LrPlaced *item;
} Face;

static double
amplitude (double level_db)
{
  return pow (10.0, 0.05 * level_db);
}

static LrVec3
ahead_of (const LrMicrophoneSound *microphone)
{
  return lr_vec2_raise (lr_vec2_polar (microphone->talker->facing_rad, 1.0), 0.0);
}

static double
spoken_db (const LrMicrophoneSound *microphone,
           LrVec3                   to_m)
{
  return lr_voice_turned_db (acos (fmax (-1.0, fmin (1.0, lr_vec3_dot (ahead_of (microphone), lr_vec3_way (microphone->mouth_m, to_m))))));
}

/* Keeps the face if it throws back more than the best so far */
static void
weigh (const LrMicrophoneSound *microphone,
       const Face              *face,
       LrCombReading           *best,
       gboolean                *has_best)
{
  double reflected_m = lr_vec3_length (lr_vec3_sub (face->image_m, microphone->capsule_m)), kept;
  LrComb comb;

  kept = sqrt (1.0 - fmin (face->absorption, 1.0))
         * amplitude (lr_sound_pattern_db (microphone, face->image_m, LR_SOUND_PATTERN_HZ)
                      - lr_sound_pattern_db (microphone, microphone->mouth_m, LR_SOUND_PATTERN_HZ))
         * amplitude (spoken_db (microphone, face->at_m) - spoken_db (microphone, microphone->capsule_m));
  kept = fmin (kept, 1.0);
  if (!lr_comb (microphone->distance_m, reflected_m, 1.0 - kept * kept, &comb) || comb.delay_s < LEAST_DELAY_S || comb.delay_s > MOST_DELAY_S
      || (*has_best && comb.share <= best->comb.share))
    return;

  *has_best = TRUE;
  *best = (LrCombReading) { comb, face->at_m, face->wall, face->item };
}

static double
mid (const LrSurface *surface)
{
  return LR_SOUND_MID (surface->absorption);
}

/* Over a level face; where the way meets it */
static Face
level_face (const LrMicrophoneSound *microphone,
            double                   height_m,
            double                   absorption)
{
  LrVec3 mouth_m = microphone->mouth_m, capsule_m = microphone->capsule_m;
  double up_m = fabs (mouth_m.z - height_m), down_m = fabs (capsule_m.z - height_m);
  double along = up_m / fmax (up_m + down_m, 1e-6);

  return (Face) {
    .image_m = lr_vec3 (mouth_m.x, mouth_m.y, 2.0 * height_m - mouth_m.z),
    .absorption = absorption,
    .at_m = lr_vec3 (mouth_m.x + along * (capsule_m.x - mouth_m.x), mouth_m.y + along * (capsule_m.y - mouth_m.y), height_m),
    .wall = -1,
  };
}

static void
weigh_walls (const LrRoom            *room,
             const LrMicrophoneSound *microphone,
             LrCombReading           *best,
             gboolean                *has_best)
{
  LrVec2 from_m, along;
  double length_m;

  for (int wall = 0; lr_room_wall (room, wall, &from_m, &along, &length_m); wall++)
    {
      LrVec2 inward = lr_vec2_left (along), mouth_m = lr_vec3_flat (microphone->mouth_m), capsule_m = lr_vec3_flat (microphone->capsule_m), at_m;
      double mouth_off_m = lr_vec2_dot (inward, lr_vec2_sub (mouth_m, from_m)), capsule_off_m = lr_vec2_dot (inward, lr_vec2_sub (capsule_m, from_m));
      double share = mouth_off_m / fmax (mouth_off_m + capsule_off_m, 1e-6), on_m;
      Face face = { .absorption = mid (&room->walls), .wall = wall };

      if (mouth_off_m <= 0.0 || capsule_off_m <= 0.0)
        continue;
      at_m = lr_vec2_along (lr_vec2_add (mouth_m, lr_vec2_scale (lr_vec2_sub (capsule_m, mouth_m), share)), inward,
                            -(mouth_off_m + share * (capsule_off_m - mouth_off_m)));
      on_m = lr_vec2_dot (along, lr_vec2_sub (at_m, from_m));
      if (on_m < 0.0 || on_m > length_m)
        continue;
      face.image_m = lr_vec2_raise (lr_vec2_along (mouth_m, inward, -2.0 * mouth_off_m), microphone->mouth_m.z);
      face.at_m = lr_vec2_raise (at_m, microphone->mouth_m.z + share * (microphone->capsule_m.z - microphone->mouth_m.z));
      weigh (microphone, &face, best, has_best);
    }
}

/* Its top is bare, under mouth and capsule, and so wide that the voice meets it */
static gboolean
is_table (const LrPlaced          *placed,
          const LrMicrophoneSound *microphone)
{
  const LrFurniture *furniture = &placed->item->furniture;

  return placed->item->kind == LR_ITEM_FURNITURE && furniture->cover != LR_COVER_SOFT && furniture->form != LR_FURNITURE_SOFA
         && furniture->form != LR_FURNITURE_CHAIR && furniture->form != LR_FURNITURE_RADIATOR && furniture->height_m < microphone->mouth_m.z
         && furniture->height_m < microphone->capsule_m.z;
}

/**
 * lr_sound_read_comb:
 * @study: a study
 * @microphone: whose place, axis, pattern and distance are known
 * @comb: (out caller-allocates): the strongest reflection within 10 ms
 *
 * Returns: %FALSE, with @comb untouched, when there is none, or the microphone is worn
 */
gboolean
lr_sound_read_comb (const LrStudy           *study,
                    const LrMicrophoneSound *microphone,
                    LrCombReading           *comb)
{
  const LrRoom *room = study->setup->room;
  gboolean has_best = FALSE;
  Face face;

  if (microphone->placed->item->microphone.form == LR_MIC_LAVALIER)
    return FALSE;

  face = level_face (microphone, 0.0, mid (&room->floor));
  weigh (microphone, &face, comb, &has_best);
  if (room->height_m > fmax (microphone->capsule_m.z, microphone->mouth_m.z))
    {
      face = level_face (microphone, room->height_m, mid (&room->ceiling));
      weigh (microphone, &face, comb, &has_best);
    }
  weigh_walls (room, microphone, comb, &has_best);
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);

      if (!is_table (placed, microphone))
        continue;
      face = level_face (microphone, placed->item->furniture.height_m, TABLE_ABSORPTION);
      face.item = placed;
      if (lr_outline_contains (&placed->footprint, lr_vec3_flat (face.at_m)))
        weigh (microphone, &face, comb, &has_best);
    }

  return has_best;
}
