/* light_sources.c - everything that gives light in a study
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What emits stands before the stand as the symbols draw it. A house light is a point that shines downwards as a matte one would.
 * A window without a blind is a matte panel of the sky's mean luminance over it, under a closed cover of cloud, half-way between the
 * first and the last minute of the shoot: what stands before it outside is not known, so it is an upper end.
 *
 * Past what stands between, a soft source gives what its parts give that are seen: 4 by 4 of them, and where they differ 8 by 8.
 */

#include "light_sources.h"

#include "intruders.h"
#include "lamp_output.h"
#include "sun_readings.h"

#define COARSE 4
#define FINE 8
/* Of the emitting face before the lamp's joint, as drawn */
#define WIDE_AHEAD_M 0.16
#define PANEL_AHEAD_M 0.04
#define POINT_AHEAD_M 0.065
/* Upright to level illuminance under CIE's overcast sky (ISO 15469), 0.396, with a tenth of it off the ground of 0.2 */
#define UPRIGHT_SHARE 0.496
#define GLASS_SHARE 0.8 /* through two clear panes; common practice, no source */

/**
 * lr_light_ahead_m:
 * @light: a light
 *
 * Returns: how far before its stand it emits [m]
 */
double
lr_light_ahead_m (const LrLight *light)
{
  switch ((LrLightForm) light->form)
    {
    case LR_LIGHT_WIDE:
      return WIDE_AHEAD_M;
    case LR_LIGHT_PANEL:
      return PANEL_AHEAD_M;
    case LR_LIGHT_POINT:
    default:
      return POINT_AHEAD_M;
    }
}

/**
 * lr_light_emitter_of:
 * @study: a study
 * @light: a light of it
 *
 * Returns: what emits undimmed, in its place; it holds on to the light's photometric file no longer than the plan does
 */
LrEmitter
lr_light_emitter_of (const LrStudy  *study,
                     const LrPlaced *light)
{
  const LrLight *l = &light->item->light;
  double tilt_rad = lr_light_tilt_rad (study, light), cf = cos (light->facing_rad), sf = sin (light->facing_rad);
  double ct = cos (tilt_rad), st = sin (tilt_rad);
  LrEmitter e = {
    .axis = { ct * cf, ct * sf, st }, .right = { sf, -cf, 0.0 }, .up = { -st * cf, -st * sf, ct },
  };

  lr_lamp_emit (light->item, &e);
  e.at_m = lr_vec3_along (lr_vec2_raise (light->at_m, l->lamp_height_m), e.axis, lr_light_ahead_m (l));
  return e;
}

/**
 * lr_light_emitter:
 * @study: a study
 * @light: a light of it
 * @emitter: (out): what emits, as it is dimmed
 *
 * Returns: %FALSE, with @emitter untouched, if the light has no output
 */
gboolean
lr_light_emitter (const LrStudy  *study,
                  const LrPlaced *light,
                  LrEmitter      *emitter)
{
  LrEmitter e = lr_light_emitter_of (study, light);
  double dim = light->item->light.dim;

  e.candela *= dim;
  e.share *= dim;
  if (!(e.table != NULL ? e.share * light->item->lamp_file->flux_lm > 0.0 : e.candela > 0.0))
    return FALSE;

  *emitter = e;
  return TRUE;
}

static gboolean
get_house_light (const LrPlaced *placed,
                 LrEmitter      *emitter)
{
  const LrHouseLight *lamp = &placed->item->house_light;
  LrEmitter e = {
    .shape = LR_EMITTER_POINT, .axis = { 0.0, 0.0, -1.0 }, .right = { 1.0, 0.0, 0.0 }, .up = { 0.0, 1.0, 0.0 }, .lobe = { .power = 1.0 },
  };

  if (!lamp->is_on || !(lamp->output_lm > 0.0) || !lr_candela_of_lumen (lamp->output_lm, &e.lobe, &e.candela))
    return FALSE;

  e.at_m = lr_vec2_raise (placed->at_m, lamp->height_m);
  *emitter = e;
  return TRUE;
}

/* On a level outside, half-way through the shoot; 0: at night, or nobody knows when and where */
static double
overcast_lx (const LrStudy *study)
{
  const LrJob *job = study->plan->job;
  LrSunPlace sun;
  int from, to;

  if (!lr_minute_parse (job->time_roll, &from) || !lr_minute_parse (job->time_wrap, &to)
      || !lr_study_sun_at (study, (from + to) / 2, &sun) || !(sun.altitude_rad > 0.0))
    return 0.0;

  return lr_sky_overcast_lx (sun.altitude_rad);
}

static gboolean
get_window (const LrStudy  *study,
            const LrPlaced *placed,
            double          level_lx,
            LrEmitter      *emitter)
{
  const LrItem *item = placed->item;
  double head_m = item->window.blind == LR_BLIND_HALF ? 0.5 * (item->window.sill_m + item->window.head_m) : item->window.head_m;
  double length_m, luminance = UPRIGHT_SHARE * GLASS_SHARE * level_lx / LR_PI;
  LrVec2 from_m, along, inward;
  LrEmitter e = { .shape = LR_EMITTER_RECTANGLE, .up = { 0.0, 0.0, 1.0 }, .lobe = { .power = 1.0 } };

  if (item->window.blind == LR_BLIND_DOWN || !(level_lx > 0.0) || !lr_room_wall (study->setup->room, item->wall, &from_m, &along, &length_m))
    return FALSE;

  inward = lr_vec2_left (along);
  e.axis = lr_vec2_raise (inward, 0.0);
  e.right = lr_vec2_raise (lr_vec2_scale (along, -1.0), 0.0);
  e.width_m = item->window.width_m;
  e.height_m = head_m - item->window.sill_m;
  e.at_m = lr_vec2_raise (lr_vec2_along (from_m, along, item->along_m + 0.5 * item->window.width_m), 0.5 * (item->window.sill_m + head_m));
  e.candela = luminance * e.width_m * e.height_m;
  *emitter = e;
  return e.width_m > 0.0 && e.height_m > 0.0;
}

/**
 * lr_light_sources:
 * @study: a study
 *
 * Returns: (transfer full) (element-type LrLightSource): what gives light, but for the sun itself
 */
GArray *
lr_light_sources (const LrStudy *study)
{
  GArray *sources = g_array_new (FALSE, FALSE, sizeof (LrLightSource));
  double level_lx = overcast_lx (study);

  for (guint i = 0; i < study->placed->len; i++)
    {
      LrLightSource source = { .placed = &g_array_index (study->placed, LrPlaced, i) };
      const LrItem *item = source.placed->item;
      gboolean is_lit = FALSE;

      if (item->kind == LR_ITEM_LIGHT)
        {
          is_lit = lr_light_emitter (study, source.placed, &source.emitter);
          source.kelvin = item->light.color_temperature_k;
        }
      else if (item->kind == LR_ITEM_HOUSE_LIGHT)
        {
          is_lit = get_house_light (source.placed, &source.emitter);
          source.kelvin = item->house_light.color_temperature_k;
        }
      else if (item->kind == LR_ITEM_WINDOW)
        {
          is_lit = get_window (study, source.placed, level_lx, &source.emitter);
          source.kelvin = LR_OVERCAST_K;
        }
      if (is_lit)
        g_array_append_val (sources, source);
    }
  return sources;
}

/* Of the light of parts by parts of it, those that are seen, each by what it would give */
static double
seen_share (const LrEmitter    *emitter,
            const LrLightShade *shade,
            LrVec3              point_m,
            LrVec3              normal,
            const LrPlaced     *of,
            int                 parts)
{
  double all = 0.0, seen = 0.0;

  for (int i = 0; i < parts * parts; i++)
    {
      double x = ((i % parts + 0.5) / parts - 0.5) * emitter->width_m, y = ((i / parts + 0.5) / parts - 0.5) * emitter->height_m;
      LrVec3 part_m = lr_vec3_along (lr_vec3_along (emitter->at_m, emitter->right, x), emitter->up, y);
      double given = lr_emitter_part_lx (emitter, part_m, point_m, normal);

      if (!(given > 0.0) || (emitter->shape == LR_EMITTER_DISC && hypot (x, y) > 0.5 * emitter->width_m))
        continue;
      all += given;
      if (lr_light_shade_is_clear (shade, point_m, part_m, of))
        seen += given;
    }
  return all > 0.0 ? seen / all : 0.0;
}

/**
 * lr_light_source_lx:
 * @emitter: a source
 * @shade: (nullable): what stands in the way
 * @point_m: a small face [m]
 * @normal: of it, of length 1
 * @of: (nullable): the thing that the face belongs to, which does not stand in its own way
 * @share: (out) (optional): the part of the light that comes through; 0 where there would be none
 *
 * Returns: what it gives the face [lx]
 */
double
lr_light_source_lx (const LrEmitter    *emitter,
                    const LrLightShade *shade,
                    LrVec3              point_m,
                    LrVec3              normal,
                    const LrPlaced     *of,
                    double             *share)
{
  double lux = 0.0, seen = 1.0;

  if (!lr_emitter_lx (emitter, point_m, normal, &lux) || !(lux > 0.0))
    seen = lux = 0.0;
  else if (shade != NULL && emitter->shape == LR_EMITTER_POINT)
    seen = lr_light_shade_is_clear (shade, point_m, emitter->at_m, of) ? 1.0 : 0.0;
  else if (shade != NULL)
    {
      seen = seen_share (emitter, shade, point_m, normal, of, COARSE);
      if (seen > 0.0 && seen < 1.0)
        seen = seen_share (emitter, shade, point_m, normal, of, FINE);
    }

  if (share != NULL)
    *share = seen;
  return lux * seen;
}
