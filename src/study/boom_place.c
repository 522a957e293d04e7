/* boom_place.c - where a boom hangs best, and what light it takes from a face
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Places lie 30 to 60 degrees over the mouth, for the trade's 45, and up to 40 to its sides. On each way the frames' upper edges tell how
 * near it may come; the nearest ones are then tried against the whole of the boom.
 */

#include "boom_place.h"

#include "boom.h"
#include "boom_geometry.h"
#include "intrusions_private.h"
#include "sound_levels.h"
#include "study_parts.h"

#define NEAREST_M 0.30      /* no nearer: it hangs before a face that leans; common practice, no source */
#define FARTHEST_M 1.5
#define LONGEST_ARM_M 3.0   /* common practice, no source */
#define UNDER_CEILING_M 0.24
#define STEP_M 0.02
#define MAX_STEPS 12
#define CAPSULE_REACH_M 0.09 /* before the capsule's middle: what is drawn of it */
#define CAPSULE_RADIUS_M 0.03

typedef struct
{
  LrVec3 way;
  double least_m; /* from the mouth */
  double level_db; /* of the voice there, against straight ahead at 1 m */
} Place;

static const double ups_deg[] = { 45.0, 37.0, 53.0, 30.0, 60.0 };
static const double asides_deg[] = { 0.0, 20.0, -20.0, 40.0, -40.0 };
#define N_PLACES (G_N_ELEMENTS (ups_deg) * G_N_ELEMENTS (asides_deg))

/* How far out the way leaves the frame by its upper edge; 0 if it starts over it; HUGE_VAL if it does not */
static double
leaves_m (const LrProjection *projection,
          LrVec3              mouth_m,
          LrVec3              way,
          double              margin)
{
  LrVec3 from = lr_vec3_sub (mouth_m, projection->eye_m);
  double slope = projection->half_height * (1.0 + 2.0 * margin);
  double over = lr_vec3_dot (from, projection->up) - slope * lr_vec3_dot (from, projection->forward);
  double rise = lr_vec3_dot (way, projection->up) - slope * lr_vec3_dot (way, projection->forward);

  if (over >= 0.0)
    return 0.0;

  return rise > 1e-6 ? -over / rise : HUGE_VAL;
}

static Place
place_at (const LrStudy           *study,
          const LrMicrophoneSound *boom,
          double                   margin,
          double                   up_rad,
          double                   aside_rad)
{
  LrVec2 flat = lr_vec2_polar (boom->talker->facing_rad + aside_rad, cos (up_rad));
  LrVec3 ahead = lr_vec2_raise (lr_vec2_polar (boom->talker->facing_rad, 1.0), 0.0);
  Place place = { .way = lr_vec2_raise (flat, sin (up_rad)), .least_m = NEAREST_M };

  for (guint i = 0; i < study->cameras->len; i++)
    {
      const LrCameraReading *camera = &g_array_index (study->cameras, LrCameraReading, i);

      if (lr_projection_is_known (&camera->projection))
        place.least_m = fmax (place.least_m, leaves_m (&camera->projection, boom->mouth_m, place.way, margin));
    }
  place.level_db = -20.0 * log10 (place.least_m) + lr_voice_turned_db (acos (fmin (1.0, lr_vec3_dot (ahead, place.way))));
  return place;
}

static int
compare_places (gconstpointer a,
                gconstpointer b)
{
  double over_db = ((const Place *) b)->level_db - ((const Place *) a)->level_db;

  return over_db > 0.0 ? 1 : over_db < 0.0 ? -1 : 0;
}

static gboolean
may_hang (const LrStudy  *study,
          const LrPlaced *boom,
          LrVec3          tip_m)
{
  const LrRoom *room = study->setup->room;

  return lr_vec2_distance (boom->at_m, lr_vec3_flat (tip_m)) <= LONGEST_ARM_M && tip_m.z + UNDER_CEILING_M <= room->height_m
         && lr_polygon_contains (room->corners_m, room->n_corners, lr_vec3_flat (tip_m));
}

/* Whether it would hide a light from the face */
static gboolean
is_in_light (const LrStudy  *study,
             const LrItem   *item,
             const LrPlaced *talker)
{
  LrPlaced placed;

  lr_study_place_item (study, item, &placed);
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *light = &g_array_index (study->placed, LrPlaced, i);

      if (light->item->kind == LR_ITEM_LIGHT && light->item->light.dim > 0.0 && lr_boom_hides (&placed, light, talker) >= LR_BOOM_MOST_HIDDEN)
        return TRUE;
    }

  return FALSE;
}

/* To whole centimetres outwards along the way */
static LrVec3
tip_at (const LrMicrophoneSound *boom,
        const Place             *place,
        double                   away_m)
{
  LrVec3 tip_m = lr_vec3_along (boom->mouth_m, place->way, away_m);

  return lr_vec3 (0.01 * round (100.0 * tip_m.x), 0.01 * round (100.0 * tip_m.y), 0.01 * ceil (100.0 * tip_m.z - 1e-6));
}

/**
 * lr_boom_best_place:
 * @study: a study with a room
 * @boom: a boom that somebody speaks into
 * @margin: so far over each frame, of its height
 * @tip_m: (out): where its capsule would hang [m]
 *
 * Source: closed form, similar triangles; the angle is common practice, no source.
 *
 * Returns: %FALSE, with @tip_m untouched, when there is no such place
 */
gboolean
lr_boom_best_place (const LrStudy           *study,
                    const LrMicrophoneSound *boom,
                    double                   margin,
                    LrVec3                  *tip_m)
{
  g_autoptr (LrItem) item = lr_item_copy (boom->placed->item);
  Place places[N_PLACES];
  gsize n = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (ups_deg); i++)
    for (gsize k = 0; k < G_N_ELEMENTS (asides_deg); k++)
      places[n++] = place_at (study, boom, margin + 0.002, ups_deg[i] * LR_DEG, asides_deg[k] * LR_DEG);
  qsort (places, n, sizeof (Place), compare_places);

  for (gsize i = 0; i < n && places[i].least_m <= FARTHEST_M; i++)
    for (int step = 0; step <= MAX_STEPS; step++)
      {
        LrVec3 at_m = tip_at (boom, &places[i], places[i].least_m + step * STEP_M);

        item->microphone.tip_x_m = at_m.x;
        item->microphone.tip_y_m = at_m.y;
        item->microphone.tip_height_m = at_m.z;
        if (!may_hang (study, boom->placed, at_m) || lr_study_would_intrude (study, item, margin + 0.002) || is_in_light (study, item, boom->talker))
          continue;
        *tip_m = at_m;
        return TRUE;
      }

  return FALSE;
}

/* Share of a round emitter that a bar hides from a point, both thrown from there on the emitter's plane */
static double
bar_hides (LrVec3 eye_m,
           LrVec3 lamp_m,
           double lamp_radius_m,
           LrVec3 from_m,
           LrVec3 to_m,
           double bar_radius_m)
{
  LrVec3 ray = lr_vec3_way (eye_m, lamp_m), bar = lr_vec3_sub (to_m, from_m), across, start = lr_vec3_sub (from_m, eye_m);
  double lamp_away_m = lr_vec3_length (lr_vec3_sub (lamp_m, eye_m)), bar_m = lr_vec3_length (bar), along, depth_m, off_m, half_m, length_m;
  LrVec3 nearest;

  if (bar_m < 1e-6)
    return 0.0;

  /* where along the bar it comes nearest to the ray */
  across = lr_vec3_sub (bar, lr_vec3_scale (ray, lr_vec3_dot (bar, ray)));
  if (lr_vec3_dot (across, across) < 1e-9)
    return 0.0;
  along = fmax (0.0, fmin (1.0, -lr_vec3_dot (start, across) / lr_vec3_dot (across, across)));
  nearest = lr_vec3_along (start, bar, along);
  depth_m = lr_vec3_dot (nearest, ray);
  if (depth_m < 0.05 || depth_m > lamp_away_m - 0.05)
    return 0.0;

  off_m = lr_vec3_length (lr_vec3_sub (nearest, lr_vec3_scale (ray, depth_m))) * lamp_away_m / depth_m;
  half_m = bar_radius_m * lamp_away_m / depth_m;
  /* its round ends make up a disc as wide as it is */
  length_m = lr_vec3_length (across) * lamp_away_m / depth_m + 0.5 * LR_PI * half_m;
  if (off_m - half_m >= lamp_radius_m)
    return 0.0;

  return fmin (1.0, (fmin (off_m + half_m, lamp_radius_m) - fmax (off_m - half_m, -lamp_radius_m))
                      * fmin (length_m, 2.0 * sqrt (fmax (lamp_radius_m * lamp_radius_m - off_m * off_m, 0.0)))
                      / (LR_PI * lamp_radius_m * lamp_radius_m));
}

/**
 * lr_boom_hides:
 * @boom: a boom
 * @light: a light
 * @person: a person
 *
 * Arm and capsule as bars, the emitter as a disc of its area, seen from between the eyes.
 *
 * Source: closed form, similar triangles.
 *
 * Returns: part of the light that they take from the face, 0 .. 1
 */
double
lr_boom_hides (const LrPlaced *boom,
               const LrPlaced *light,
               const LrPlaced *person)
{
  const LrMicrophone *microphone = &boom->item->microphone;
  const LrLight *lamp = &light->item->light;
  LrVec3 lamp_m = lr_vec2_raise (light->at_m, lamp->lamp_height_m), tip_m = boom->point_m, end_m, chest_m, way;
  double radius_m = fmax (sqrt (lamp->width_m * lamp->height_m / LR_PI), 0.02);
  LrBoomHang hang;

  lr_boom_hang (boom->at_m, microphone, &hang);
  end_m = lr_vec3 (tip_m.x, tip_m.y, hang.post_m + hang.slope * hang.reach_m);
  chest_m = lr_vec3 (person->eyes_m.x, person->eyes_m.y, person->body.mouth_m - 0.25);
  way = lr_vec3_way (tip_m, chest_m);
  return fmin (1.0, bar_hides (person->eyes_m, lamp_m, radius_m, lr_vec2_raise (boom->at_m, hang.post_m), end_m, LR_BOOM_ARM_RADIUS_M)
                      + bar_hides (person->eyes_m, lamp_m, radius_m, lr_vec3_along (tip_m, way, -0.10),
                                   lr_vec3_along (tip_m, way, CAPSULE_REACH_M), CAPSULE_RADIUS_M));
}

/**
 * lr_boom_weight_kg:
 * @boom: a boom
 * @weight_kg: (out): what balances it at the end of its arm behind the post [kg]
 *
 * The arm is even along its length, what hangs behind included.
 *
 * Source: closed form, the lever.
 *
 * Returns: %FALSE, with @weight_kg untouched, when it has no arm behind
 */
gboolean
lr_boom_weight_kg (const LrPlaced *boom,
                   double         *weight_kg)
{
  const LrMicrophone *microphone = &boom->item->microphone;
  LrBoomHang hang;

  lr_boom_hang (boom->at_m, microphone, &hang);
  return lr_boom_counterweight_kg (microphone->arm_mass_kg, 0.5 * (hang.reach_m - hang.short_m), microphone->capsule_mass_kg, hang.reach_m,
                                   hang.short_m, weight_kg);
}
