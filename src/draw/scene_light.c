/* scene_light.c - how the set's lights fall in a viewfinder picture
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The picture shows where light comes from, not how much: levels are numbers, and stand elsewhere.
 */

#include "scene_light.h"

/**
 * lr_light_lamp:
 * @light: a placed light
 *
 * Returns: where its lamp is [m]
 */
LrVec3
lr_light_lamp (const LrPlaced *light)
{
  return lr_vec2_raise (light->at_m, light->item->light.lamp_height_m);
}

/**
 * lr_light_aim:
 * @study: a study
 * @light: a placed light
 * @facing_rad: (out): the direction of its axis in plan [rad]
 * @tilt_rad: (out): of its axis, above the horizontal [rad]
 */
void
lr_light_aim (const LrStudy  *study,
              const LrPlaced *light,
              double         *facing_rad,
              double         *tilt_rad)
{
  const LrLight *lamp = &light->item->light;
  const LrPlaced *target = lr_study_find_placed (study, lamp->aims_at);

  *facing_rad = light->facing_rad;
  *tilt_rad = lamp->tilt_rad;
  if (target != NULL && target != light)
    {
      double away_m = lr_vec2_distance (light->at_m, lr_vec3_flat (target->point_m));
      double to_m = lamp->aim_height_m > 0.0 ? lamp->aim_height_m : target->point_m.z;

      *tilt_rad = atan2 (to_m - lamp->lamp_height_m, fmax (away_m, 1e-3));
    }
}

static const LrPlaced *
find_job (const LrScene *scene,
          LrLightJob     job)
{
  for (guint i = 0; i < scene->study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (scene->study->placed, LrPlaced, i);

      if (placed->item->kind == LR_ITEM_LIGHT && placed->item->light.job == (int) job && placed->item->light.dim > 0.0)
        return placed;
    }

  return NULL;
}

static LrVec3
towards (LrVec3 from_m,
         LrVec3 to_m,
         LrVec3 fallback)
{
  LrVec3 way = lr_vec3_sub (to_m, from_m);
  double length_m = lr_vec3_length (way);

  return length_m > 0.05 ? lr_vec3_scale (way, 1.0 / length_m) : fallback;
}

/* Without a key, the light that every drawing has: from the upper left of the picture */
static LrVec3
drawn_light (const LrCameraReading *camera)
{
  const LrProjection *p = &camera->projection;
  LrVec3 sum = lr_vec3_along (lr_vec3_scale (p->right, -0.55), p->up, 0.45);

  sum = lr_vec3_along (sum, p->forward, -0.70);
  return lr_vec3_scale (sum, 1.0 / lr_vec3_length (sum));
}

static gboolean
has_fill (const LrScene *scene)
{
  if (find_job (scene, LR_JOB_FILL) != NULL)
    return TRUE;

  for (guint i = 0; i < scene->study->placed->len; i++)
    {
      const LrItem *item = g_array_index (scene->study->placed, LrPlaced, i).item;

      if (item->kind == LR_ITEM_PANEL && item->panel.form == LR_PANEL_REFLECTOR)
        return TRUE;
    }

  return FALSE;
}

static void
light_people (LrScene               *scene,
              const LrCameraReading *camera,
              LrVec3                 subject_m)
{
  LrModelling *modelling = &scene->modelling;
  LrVec3 fallback = drawn_light (camera);
  const LrPlaced *key = find_job (scene, LR_JOB_KEY);
  const LrPlaced *back = find_job (scene, LR_JOB_BACK);

  modelling->key = key != NULL ? towards (subject_m, lr_light_lamp (key), fallback) : fallback;
  modelling->ambient_share = has_fill (scene) || key == NULL ? 0.42 : 0.32;
  modelling->key_share = 1.0 - modelling->ambient_share + 0.12;
  modelling->has_back = back != NULL;
  if (back != NULL)
    modelling->back = towards (subject_m, lr_light_lamp (back), fallback);
}

/* Where an axis meets a wall, under the ceiling and above the floor */
static gboolean
meet_wall (const LrRoom *room,
           LrVec3        from_m,
           double        facing_rad,
           double        tilt_rad,
           LrVec3       *at_m)
{
  LrRayHit hit;

  if (room->n_corners < 3
      || !lr_polygon_contains (room->corners_m, room->n_corners, lr_vec3_flat (from_m))
      || !lr_polygon_ray (room->corners_m, room->n_corners, lr_vec3_flat (from_m), lr_vec2_polar (facing_rad, 1.0),
                          &hit))
    return FALSE;

  *at_m = lr_vec2_raise (hit.at_m, CLAMP (from_m.z + hit.distance_m * tan (tilt_rad), 0.0, room->height_m));
  return TRUE;
}

/* A light meant for the wall makes a pool there; else the set's light spills behind the subject */
static void
light_wall (LrScene               *scene,
            const LrCameraReading *camera,
            LrVec3                 subject_m)
{
  const LrRoom *room = scene->study->setup->room;
  const LrPlaced *wall_light = find_job (scene, LR_JOB_WALL);
  LrPool *pool = &scene->pool;
  double facing_rad, tilt_rad;

  if (wall_light != NULL)
    {
      lr_light_aim (scene->study, wall_light, &facing_rad, &tilt_rad);
      pool->has_pool = meet_wall (room, lr_light_lamp (wall_light), facing_rad, tilt_rad, &pool->at_m);
      pool->radius_m = 1.7;
      pool->gain = 0.68;
    }
  else if (camera->has_subject)
    {
      facing_rad = lr_vec2_angle_rad (lr_vec2_sub (lr_vec3_flat (subject_m), lr_vec3_flat (scene->eye_m)));
      pool->has_pool = meet_wall (room, subject_m, facing_rad, 0.05, &pool->at_m);
      pool->radius_m = 1.9;
      pool->gain = 0.26;
    }
}

/**
 * lr_scene_light:
 * @scene: a scene without solids
 * @camera: whose picture it is
 */
void
lr_scene_light (LrScene               *scene,
                const LrCameraReading *camera)
{
  LrVec3 subject_m = lr_vec3_along (scene->eye_m, camera->projection.forward, 2.0);

  if (camera->subject != NULL)
    subject_m = camera->subject->eyes_m;

  light_people (scene, camera, subject_m);
  light_wall (scene, camera, subject_m);
}
