/* light_levels_told.c - what is told of levels of light once they are known
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "light_levels_private.h"

#define SHOWS 0.005 /* of a level: half a per cent is a third of a step of 8 bits at the usual level of a face */

/**
 * lr_lux_round:
 * @lux: a level, >= 0 [lx]
 *
 * Returns: the same to two figures
 */
double
lr_lux_round (double lux)
{
  double step = pow (10.0, floor (log10 (fmax (lux, 1e-3))) - 1.0);

  return step * round (lux / step);
}

/**
 * lr_lux_all:
 * @lux: on a small face
 *
 * Returns: what comes straight and what the room gives back, as far as it is known [lx]
 */
double
lr_lux_all (LrLux lux)
{
  return lux.direct_lx + (isnan (lux.bounced_lx) ? 0.0 : lux.bounced_lx);
}

/**
 * lr_light_levels_get_plan:
 * @levels: levels
 *
 * Returns: (transfer none): the plan that they are of
 */
const LrPlan *
lr_light_levels_get_plan (const LrLightLevels *levels)
{
  return levels->study->plan;
}

/**
 * lr_light_levels_is_whole:
 * @levels: levels
 *
 * Returns: whether what the room gives back is in them
 */
gboolean
lr_light_levels_is_whole (const LrLightLevels *levels)
{
  return levels->bounced_lx != NULL;
}

/**
 * lr_light_levels_is_settled:
 * @levels: levels
 *
 * Returns: whether what the room gives back is in them, and was computed for their own plan
 */
gboolean
lr_light_levels_is_settled (const LrLightLevels *levels)
{
  return lr_light_levels_is_whole (levels) && levels->before == NULL;
}

/**
 * lr_light_levels_get_settled:
 * @levels: levels
 *
 * Returns: (transfer none) (nullable): those from which they have what the room gives back, or @levels; %NULL: it is not known
 */
LrLightLevels *
lr_light_levels_get_settled (LrLightLevels *levels)
{
  return lr_light_levels_is_settled (levels) ? levels : levels->before;
}

/**
 * lr_light_levels_shine_alike:
 * @levels: levels
 * @other: others
 *
 * Returns: whether all sources give the same to faces, within what shows, and the room's share is of the same levels
 */
gboolean
lr_light_levels_shine_alike (LrLightLevels *levels,
                             LrLightLevels *other)
{
  if (levels == other)
    return TRUE;
  if (lr_light_levels_get_settled (levels) != lr_light_levels_get_settled (other) || levels->faces->len != other->faces->len)
    return FALSE;

  for (guint i = 0; i < levels->faces->len; i++)
    {
      const LrFaceLight *face = &g_array_index (levels->faces, LrFaceLight, i), *face_other = &g_array_index (other->faces, LrFaceLight, i);

      if (!g_str_equal (face->person->item->id, face_other->person->item->id))
        return FALSE;
      for (LrFacePoint point = 0; point < LR_N_FACE_POINTS; point++)
        if (fabs (face->at[point].direct_lx - face_other->at[point].direct_lx) > SHOWS * lr_lux_all (face->at[point]))
          return FALSE;
    }
  return TRUE;
}

/**
 * lr_light_levels_n_sources:
 * @levels: levels
 *
 * Returns: how many things give light
 */
guint
lr_light_levels_n_sources (const LrLightLevels *levels)
{
  return levels->sources->len;
}

/**
 * lr_light_levels_source:
 * @levels: levels
 * @index: of a source
 *
 * Returns: (transfer none): what it is
 */
const LrLightSource *
lr_light_levels_source (const LrLightLevels *levels,
                        guint                index)
{
  return &g_array_index (levels->sources, LrLightSource, index);
}

/**
 * lr_light_levels_lx_of:
 * @levels: levels
 * @index: of a source
 * @person: id of a person
 * @point: of them
 *
 * Returns: what it gives straight there [lx]; 0: nothing, or they are not there
 */
double
lr_light_levels_lx_of (const LrLightLevels *levels,
                       guint                index,
                       const char          *person,
                       LrFacePoint          point)
{
  for (guint i = 0; i < levels->probes->len; i++)
    {
      const LrLightProbe *probe = &g_array_index (levels->probes, LrLightProbe, i);

      if (probe->type == LR_PROBE_FACE && probe->point == point && g_str_equal (probe->placed->item->id, person))
        return lr_levels_direct_lx (levels, i, index);
    }
  return 0.0;
}

/**
 * lr_light_levels_face:
 * @levels: levels
 * @person: (nullable): id of a person
 *
 * Returns: (transfer none) (nullable): what reaches their face
 */
const LrFaceLight *
lr_light_levels_face (const LrLightLevels *levels,
                      const char          *person)
{
  for (guint i = 0; person != NULL && i < levels->faces->len; i++)
    {
      const LrFaceLight *face = &g_array_index (levels->faces, LrFaceLight, i);

      if (g_str_equal (face->person->item->id, person))
        return face;
    }
  return NULL;
}

/**
 * lr_light_levels_thing:
 * @levels: levels
 * @furniture: id of a piece of furniture
 *
 * Returns: (transfer none) (nullable): what reaches its sides
 */
const LrThingLight *
lr_light_levels_thing (const LrLightLevels *levels,
                       const char          *furniture)
{
  if (levels->before != NULL)
    return lr_light_levels_thing (levels->before, furniture);

  for (guint i = 0; i < levels->things->len; i++)
    {
      const LrThingLight *thing = &g_array_index (levels->things, LrThingLight, i);

      if (g_str_equal (thing->thing->item->id, furniture))
        return thing;
    }
  return NULL;
}

/**
 * lr_light_levels_background:
 * @levels: levels
 * @camera: (nullable): id of a camera
 *
 * Returns: (transfer none) (nullable): what reaches the walls that it sees
 */
const LrBackLight *
lr_light_levels_background (const LrLightLevels *levels,
                            const char          *camera)
{
  for (guint i = 0; camera != NULL && i < levels->backs->len; i++)
    {
      const LrBackLight *back = &g_array_index (levels->backs, LrBackLight, i);

      if (g_str_equal (back->camera->item->id, camera))
        return back;
    }
  return NULL;
}

/**
 * lr_light_levels_source_lx:
 * @levels: levels
 * @source: id of a light, a house light or a window
 * @person: id of a person
 * @point: of them
 *
 * A window gives the sky's light and the sun's.
 *
 * Returns: what it gives straight there [lx]; 0: nothing, or one of them is not there
 */
double
lr_light_levels_source_lx (const LrLightLevels *levels,
                           const char          *source,
                           const char          *person,
                           LrFacePoint          point)
{
  double lux = 0.0;

  for (guint j = 0; j < levels->sources->len; j++)
    if (g_str_equal (g_array_index (levels->sources, LrLightSource, j).placed->item->id, source))
      lux += lr_light_levels_lx_of (levels, j, person, point);
  return lux;
}

/**
 * lr_light_levels_spill_lx:
 * @levels: levels
 * @source: id of a light, a house light or a window
 * @camera: id of a camera
 *
 * Returns: what it gives straight to the walls that the camera sees, in the mean [lx]; NAN: no wall is seen, or one of them is not there
 */
double
lr_light_levels_spill_lx (const LrLightLevels *levels,
                          const char          *source,
                          const char          *camera)
{
  double sum_lx = 0.0;
  gboolean is_there = FALSE;
  guint n = 0;

  for (guint j = 0; j < levels->sources->len; j++)
    {
      if (!g_str_equal (g_array_index (levels->sources, LrLightSource, j).placed->item->id, source))
        continue;
      is_there = TRUE;
      n = 0;
      for (guint i = 0; i < levels->probes->len; i++)
        {
          const LrLightProbe *probe = &g_array_index (levels->probes, LrLightProbe, i);

          if (probe->type != LR_PROBE_BACKGROUND || !g_str_equal (probe->placed->item->id, camera))
            continue;
          sum_lx += lr_levels_direct_lx (levels, i, j);
          n++;
        }
    }
  return is_there && n > 0 ? sum_lx / n : (double) NAN;
}

static double
share_of (const LrExposure *exposure,
          double            lux,
          double            reflectance)
{
  double share = NAN;

  lr_exposure_share (exposure, lux, reflectance, &share);
  return share;
}

static LrExposure
exposure_of (const LrCameraReading *camera)
{
  const LrCamera *set = &camera->item->camera;

  return (LrExposure) { camera->f_number, set->shutter_s, set->iso, set->nd_stops + fmax (0.0, camera->close_stops) };
}

/**
 * lr_light_levels_share_per_lx:
 * @levels: levels
 * @camera: id of a camera
 *
 * Source: exposure.h.
 *
 * Returns: share of the white that the camera takes, of a surface that reflects all, by its light [1/lx]; NAN: it is not there, or its
 *   exposure is not known
 */
double
lr_light_levels_share_per_lx (const LrLightLevels *levels,
                              const char          *camera)
{
  const LrCameraReading *reading = lr_study_find_camera (levels->study, camera);
  LrExposure exposure;

  if (reading == NULL)
    return NAN;

  exposure = exposure_of (reading);
  return share_of (&exposure, 1.0, 1.0);
}

/**
 * lr_light_levels_wall:
 * @levels: levels
 * @wall: of the room
 *
 * Returns: (transfer none) (nullable): what falls on it; %NULL: @levels are not whole, or there is no such wall
 */
const LrWallLight *
lr_light_levels_wall (const LrLightLevels *levels,
                      int                  wall)
{
  const LrWallLight *light;

  if (levels->before != NULL)
    return lr_light_levels_wall (levels->before, wall);
  if (levels->walls == NULL || wall < 0 || (guint) wall >= levels->walls->len)
    return NULL;

  light = &g_array_index (levels->walls, LrWallLight, wall);
  return light->n > 0 ? light : NULL;
}

/**
 * lr_light_levels_shadows:
 * @levels: levels
 *
 * Returns: (transfer none) (element-type LrShadow) (nullable): shadows of people and equipment on walls that cameras see; %NULL: @levels
 *   are not whole
 */
const GArray *
lr_light_levels_shadows (const LrLightLevels *levels)
{
  return levels->before != NULL ? levels->before->shadows : levels->shadows;
}

/**
 * lr_light_levels_escapes:
 * @levels: levels
 * @shadow: one of their shadows
 *
 * Returns: (transfer none) (nullable): what helps against it and the same shadow in other pictures; %NULL: it was not looked for
 */
const LrShadowEscapes *
lr_light_levels_escapes (const LrLightLevels *levels,
                         const LrShadow      *shadow)
{
  if (levels->before != NULL)
    return lr_light_levels_escapes (levels->before, shadow);

  for (guint i = 0; levels->escapes != NULL && i < levels->escapes->len; i++)
    {
      const LrShadowEscapes *escapes = &g_array_index (levels->escapes, LrShadowEscapes, i);

      if (escapes->source == shadow->source && escapes->thing == shadow->thing)
        return escapes;
    }
  return NULL;
}

/**
 * lr_light_levels_shares:
 * @levels: levels
 * @camera: id of a camera
 * @shares: (out): what it makes of its subject's face and clothes and of the walls behind
 *
 * The light that is lost because the lens is focused near is counted; what it loses in its glass is not known.
 *
 * Source: exposure.h.
 *
 * Returns: %FALSE, with @shares untouched, if the camera is not there
 */
gboolean
lr_light_levels_shares (const LrLightLevels *levels,
                         const char          *camera,
                         LrShares           *shares)
{
  const LrCameraReading *reading = lr_study_find_camera (levels->study, camera);
  const LrBackLight *back = lr_light_levels_background (levels, camera);
  const LrFaceLight *face;
  LrExposure exposure;

  if (reading == NULL || back == NULL)
    return FALSE;

  exposure = exposure_of (reading);
  face = reading->has_subject ? lr_light_levels_face (levels, reading->subject->item->id) : NULL;
  *shares = (LrShares) { NAN, NAN, NAN, NAN };
  if (face != NULL)
    {
      const LrPerson *person = &face->person->item->person;

      shares->face = share_of (&exposure, lr_lux_all (face->at[face->lit]), person->skin_reflectance);
      shares->shadow = share_of (&exposure, lr_lux_all (face->at[face->shadow]), person->skin_reflectance);
      shares->clothes = share_of (&exposure, lr_lux_all (face->at[LR_FACE_CHEST]), person->clothing_reflectance);
    }
  if (back->n > 0)
    shares->background = share_of (&exposure, lr_lux_all (back->mean), back->reflectance);
  return TRUE;
}

/**
 * lr_light_levels_map:
 * @levels: levels
 *
 * Returns: (transfer none) (nullable): the light over the floor; %NULL: @levels are not whole
 */
const LrLevelMap *
lr_light_levels_map (const LrLightLevels *levels)
{
  return levels->before != NULL ? levels->before->map : levels->map;
}

/**
 * lr_light_levels_main_face:
 * @levels: levels
 *
 * Returns: (transfer none) (nullable): light on whom the first camera frames, else on the first person
 */
const LrFaceLight *
lr_light_levels_main_face (const LrLightLevels *levels)
{
  for (guint i = 0; i < levels->study->cameras->len; i++)
    {
      const LrCameraReading *camera = &g_array_index (levels->study->cameras, LrCameraReading, i);

      if (camera->has_subject)
        return lr_light_levels_face (levels, camera->subject->item->id);
    }
  return levels->faces->len > 0 ? &g_array_index (levels->faces, LrFaceLight, 0) : NULL;
}
