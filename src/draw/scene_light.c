/* scene_light.c - how the set's lights fall in a viewfinder picture
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * With levels of light the picture is as bright, and as deep in shadow, as the camera would take it at its stop, shutter, ISO and
 * filter. Beyond some two stops it gets no darker and no brighter, for one must still see what is framed: the figures tell the rest.
 * People are modelled by the light on their own cheeks, furniture by that on its top and sides; equipment and people's chairs take the
 * mean light of the walls that are seen. Without levels, or
 * without a lamp and any other light, it is drawn as if it were lit well, from where the key stands; a set whose lamps are out is dark.
 */

#include "scene_light.h"

#define WRAP 0.25           /* a soft key, drawn */
#define LEAST_WRAP -0.2
#define MOST_WRAP 0.5
#define LEAST_LIGHT 0.22    /* a face is shown no darker and no brighter than this share of itself */
#define MOST_LIGHT 6.0
#define LEAST_THING 0.04    /* nor a thing */
#define LEAST_COSINE 0.2    /* a source that shines along a surface is not made out to be as bright as the sun */

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

/* As if the set were lit well */
static void
draw_light (LrScene               *scene,
            const LrCameraReading *camera,
            LrVec3                 subject_m)
{
  LrModelling *modelling = &scene->modelling;
  LrVec3 fallback = drawn_light (camera);
  const LrPlaced *key = find_job (scene, LR_JOB_KEY);
  const LrPlaced *back = find_job (scene, LR_JOB_BACK);

  modelling->key = key != NULL ? towards (subject_m, lr_light_lamp (key), fallback) : fallback;
  modelling->wrap = WRAP;
  modelling->ambient_share = has_fill (scene) || key == NULL ? 0.42 : 0.32;
  modelling->key_share = 1.0 - modelling->ambient_share + 0.12;
  modelling->back_share = back != NULL ? 0.40 : 0.0;
  if (back != NULL)
    modelling->back = towards (subject_m, lr_light_lamp (back), fallback);
  modelling->gain = 1.0;
  scene->light.gain = 1.0;
}

/**
 * lr_modelling_key:
 * @modelling: the light
 * @normal: of a surface, unit
 *
 * Source: Lambert's cosine law, softened at its end.
 *
 * Returns: how much of the key's light it takes, 0 to 1
 */
double
lr_modelling_key (const LrModelling *modelling,
                  LrVec3             normal)
{
  return fmax (0.0, (lr_vec3_dot (normal, modelling->key) + modelling->wrap) / (1.0 + modelling->wrap));
}

static LrVec3
way_of (const LrPlaced *person,
        double          side_rad,
        double          up_rad)
{
  return lr_vec2_raise (lr_vec2_polar (person->facing_rad + side_rad, cos (up_rad)), sin (up_rad));
}

/* Both cheeks at their levels, in shares of the brighter one. From all round comes what the shadow cheek has but for the key, and the key
 * reaches as far round as it shines on that cheek */
static void
model_face (LrModelling       *modelling,
            const LrFaceLight *face)
{
  double lit_lx = lr_lux_all (face->at[face->lit]), shadow_lx = lr_lux_all (face->at[face->shadow]);
  double fill_lx = fmin (face->fill_lx, lit_lx), reach = fmax (0.0, shadow_lx - fill_lx) / fmax (lit_lx - fill_lx, 1e-9), lit, shadow;

  if (face->key != NULL)
    modelling->key = way_of (face->person, face->key_side_rad, face->key_up_rad);
  lit = lr_vec3_dot (modelling->key, lr_light_probe_normal (face->person, face->lit));
  shadow = lr_vec3_dot (modelling->key, lr_light_probe_normal (face->person, face->shadow));
  modelling->wrap = reach < 0.95 ? CLAMP ((reach * lit - shadow) / (1.0 - reach), LEAST_WRAP, MOST_WRAP) : WRAP;
  modelling->ambient_share = fill_lx / lit_lx;
  modelling->key_share = (1.0 - modelling->ambient_share) / fmax (LEAST_COSINE, (lit + modelling->wrap) / (1.0 + modelling->wrap));
  modelling->back_share = 0.0;
  if (face->back != NULL)
    {
      modelling->back = way_of (face->person, face->back_side_rad, face->back_up_rad);
      modelling->back_share = face->back_lx / lit_lx
                              / fmax (LEAST_COSINE, lr_vec3_dot (modelling->back, lr_light_probe_normal (face->person, LR_FACE_BACK)));
    }
}

/**
 * lr_scene_model_person:
 * @scene: a scene
 * @person: somebody in it
 * @modelling: (inout): the light on them; left as it is if their levels are not known
 */
void
lr_scene_model_person (const LrScene  *scene,
                       const LrPlaced *person,
                       LrModelling    *modelling)
{
  const LrFaceLight *face = scene->light.levels != NULL ? lr_light_levels_face (scene->light.levels, person->item->id) : NULL;

  if (face == NULL || !(lr_lux_all (face->at[face->lit]) > 0.0))
    return;

  modelling->gain = CLAMP (scene->light.per_lx * lr_lux_all (face->at[face->lit]), LEAST_LIGHT, MOST_LIGHT);
  model_face (modelling, face);
}

/**
 * lr_scene_enter:
 * @scene: a scene
 * @furniture: what is added next
 *
 * What it shows on its surfaces is as bright as the brightest of its sides.
 */
void
lr_scene_enter (LrScene        *scene,
                const LrPlaced *furniture)
{
  double most_lx = 0.0;

  scene->here = scene->light.levels != NULL ? lr_light_levels_thing (scene->light.levels, furniture->item->id) : NULL;
  if (scene->here == NULL)
    return;

  for (LrThingSide side = 0; side < LR_N_THING_SIDES; side++)
    most_lx = fmax (most_lx, scene->here->lx[side]);
  scene->light.gain = CLAMP (scene->light.per_lx * most_lx, LEAST_THING, MOST_LIGHT) / LR_WALLS_SHARE;
}

/**
 * lr_scene_light_here:
 * @scene: a scene that was entered, with levels
 * @normal: of a surface, unit
 *
 * Between two sides by the squares of the cosines, which add up to one.
 *
 * Returns: how a white surface comes out, 1 the picture's white
 */
double
lr_scene_light_here (const LrScene *scene,
                     LrVec3         normal)
{
  const LrThingLight *here = scene->here;
  LrVec2 ahead = lr_vec2_polar (here->thing->facing_rad, 1.0), flat = lr_vec3_flat (normal);
  double x = lr_vec2_dot (flat, ahead), y = lr_vec2_dot (flat, lr_vec2_left (ahead));
  double under_lx = 0.5 * fmin (fmin (here->lx[LR_THING_AHEAD], here->lx[LR_THING_BACK]), fmin (here->lx[LR_THING_LEFT], here->lx[LR_THING_RIGHT]));
  double lx = x * x * here->lx[x > 0.0 ? LR_THING_AHEAD : LR_THING_BACK] + y * y * here->lx[y > 0.0 ? LR_THING_LEFT : LR_THING_RIGHT]
              + normal.z * normal.z * (normal.z > 0.0 ? here->lx[LR_THING_TOP] : under_lx);

  return CLAMP (scene->light.per_lx * lx, LEAST_THING, MOST_LIGHT);
}

/* There are lamps, and none of them gives light, nor does anything else */
static gboolean
is_out (const LrScene       *scene,
        const LrLightLevels *levels)
{
  if (lr_light_levels_n_sources (levels) > 0)
    return FALSE;

  for (guint i = 0; i < scene->study->placed->len; i++)
    if (g_array_index (scene->study->placed, LrPlaced, i).item->kind == LR_ITEM_LIGHT)
      return TRUE;
  return FALSE;
}

static void
put_out (LrScene *scene)
{
  scene->light.gain = scene->modelling.gain = LEAST_LIGHT;
  scene->modelling.key_share = scene->modelling.back_share = 0.0;
}

/* Of the walls that the camera sees, or of all [lx] */
static double
mean_of_walls (const LrScene       *scene,
               const LrLightLevels *levels)
{
  const LrBackLight *back = lr_light_levels_background (levels, scene->camera->item->id);
  double sum_lx = 0.0;
  int n = 0;

  if (back != NULL && back->n > 0)
    return lr_lux_all (back->mean);
  for (gsize i = 0; i < scene->study->setup->room->n_corners; i++)
    {
      const LrWallLight *light = lr_light_levels_wall (levels, (int) i);

      if (light != NULL)
        {
          sum_lx += light->mean_lx;
          n++;
        }
    }
  return n > 0 ? sum_lx / n : 0.0;
}

static void
light_truly (LrScene               *scene,
             const LrCameraReading *camera,
             const LrLightLevels   *levels)
{
  LrPictureLight *light = &scene->light;
  double per_lx = lr_light_levels_share_per_lx (levels, camera->item->id), walls_lx = mean_of_walls (scene, levels);
  const LrFaceLight *face = camera->has_subject ? lr_light_levels_face (levels, camera->subject->item->id) : NULL;
  double most_lx = face != NULL ? lr_lux_all (face->at[face->lit]) : walls_lx / LR_WALLS_SHARE;

  if (!isfinite (per_lx) || !(per_lx > 0.0) || !(most_lx > 0.0))
    return;

  per_lx = CLAMP (per_lx * most_lx, LEAST_LIGHT, MOST_LIGHT) / most_lx;
  *light = (LrPictureLight) { levels, per_lx, per_lx * walls_lx / LR_WALLS_SHARE };
  scene->modelling.gain = face != NULL ? per_lx * most_lx : light->gain;
  if (face != NULL)
    model_face (&scene->modelling, face);
}

/**
 * lr_scene_light:
 * @scene: a scene without solids
 * @camera: whose picture it is
 * @levels: (nullable): of light in the plan
 */
void
lr_scene_light (LrScene               *scene,
                const LrCameraReading *camera,
                const LrLightLevels   *levels)
{
  LrVec3 subject_m = lr_vec3_along (scene->eye_m, camera->projection.forward, 2.0);

  if (camera->subject != NULL)
    subject_m = camera->subject->eyes_m;

  draw_light (scene, camera, subject_m);
  if (levels == NULL || !lr_light_levels_is_whole (levels))
    return;
  if (lr_light_levels_n_sources (levels) > 0)
    light_truly (scene, camera, levels);
  else if (is_out (scene, levels))
    put_out (scene);
}
