/* light_sources.c - everything that gives light in a study
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What emits stands before the stand as the symbols draw it. A house light is a point that shines downwards as a matte one would.
 * A window without a blind is a matte panel of the mean luminance that is seen through it, under the sky of the job, half-way between the
 * first and the last minute of the shoot: what stands before it outside is not known, so it is an upper end. A clear sky is far from even:
 * its share of an upright face is summed for each window by its bearing to the sun, but into the room it shines from all of the window
 * alike, not more from the sun's side. The ground before the window gives back a fifth, and lies in the sun unless the wall is turned away
 * from it. Under a clear sky the sun itself is a second source through the same window: parallel light, with the disc's half degree
 * left out, so edges are sharper than they come out (by 9 mm for each metre), and with glass that takes as much at any angle. What daylight
 * is reckoned with are means: at one time it may be half or twice as much.
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
/* Upright to level illuminance under CIE's overcast sky (ISO 15469) */
#define OVERCAST_UPRIGHT 0.396
#define GROUND 0.2       /* reflectance; an upright face sees it for half of its view (common practice, no source) */

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
  if (!(dim > 0.0) || !lr_lamp_shines (light->item))
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

/* Half-way through the shoot */
typedef struct
{
  LrSky  sky;
  LrVec3 way;          /* to the sun */
  double altitude_rad; /* of it */
  double level_lx;     /* on level ground, from the sky; 0: at night, or nobody knows when and where */
  double sun_lx;       /* on a face turned to it; 0: clouds */
} Daylight;

static Daylight
get_daylight (const LrStudy *study)
{
  Daylight day = { .sky = (LrSky) study->plan->job->sky };

  if (!lr_study_sun_way (study, lr_study_light_minute (study), &day.way))
    return day;

  day.altitude_rad = asin (day.way.z);
  day.level_lx = day.sky == LR_SKY_CLEAR ? lr_sky_clear_lx (day.altitude_rad) : lr_sky_overcast_lx (day.altitude_rad);
  day.sun_lx = day.sky == LR_SKY_CLEAR ? lr_sun_direct_normal_lx (day.altitude_rad) : 0.0;
  return day;
}

/* On the pane from outside, from sky and ground */
static double
upright_lx (const Daylight *day,
            LrVec2          outward)
{
  LrVec2 to_sun = lr_vec3_flat (day->way);
  double sun_level_lx = lr_vec2_dot (to_sun, outward) > 0.0 ? day->sun_lx * day->way.z : 0.0, share = OVERCAST_UPRIGHT;

  if (day->sky == LR_SKY_CLEAR)
    share = lr_sky_upright_share (day->sky, day->altitude_rad, lr_vec2_angle_rad (outward) - lr_vec2_angle_rad (to_sun));
  return share * day->level_lx + 0.5 * GROUND * (day->level_lx + sun_level_lx);
}

/* What both lights of a window come through. FALSE: its blind is down */
static gboolean
get_opening (const LrStudy  *study,
             const LrPlaced *placed,
             LrEmitter      *emitter)
{
  LrSunOpening opening;
  LrEmitter e = { .up = { 0.0, 0.0, 1.0 }, .lobe = { .power = 1.0 } };

  if (!lr_sun_opening (study, placed, &opening))
    return FALSE;

  e.axis = lr_vec2_raise (opening.inward, 0.0);
  e.right = lr_vec2_raise (lr_vec2_scale (opening.along, -1.0), 0.0);
  e.width_m = opening.width_m;
  e.height_m = opening.head_m - opening.sill_m;
  e.at_m = lr_vec2_raise (lr_vec2_along (opening.at_m, opening.along, 0.5 * e.width_m), 0.5 * (opening.sill_m + opening.head_m));
  *emitter = e;
  return TRUE;
}

static void
add_window (GArray         *sources,
            const LrStudy  *study,
            const LrPlaced *placed,
            const Daylight *day)
{
  LrEmitter opening;
  LrLightSource sky = { .placed = placed, .kelvin = day->sky == LR_SKY_CLEAR ? LR_CLEAR_SKY_K : LR_OVERCAST_K };
  LrLightSource sun = { .placed = placed, .is_sun = TRUE };
  LrVec2 outward;

  if (!(day->level_lx > 0.0) || !get_opening (study, placed, &opening))
    return;

  outward = lr_vec2_scale (lr_vec3_flat (opening.axis), -1.0);
  sky.emitter = opening;
  sky.emitter.shape = LR_EMITTER_RECTANGLE;
  sky.emitter.candela = LR_GLASS_SHARE * upright_lx (day, outward) / LR_PI * opening.width_m * opening.height_m;
  g_array_append_val (sources, sky);
  if (!(day->sun_lx > 0.0) || !(lr_vec2_dot (lr_vec3_flat (day->way), outward) > 0.0))
    return;

  sun.kelvin = lr_sun_kelvin (day->altitude_rad);
  sun.emitter = opening;
  sun.emitter.shape = LR_EMITTER_BEAM;
  sun.emitter.axis = lr_vec3_scale (day->way, -1.0);
  sun.emitter.parallel_lx = LR_GLASS_SHARE * day->sun_lx;
  g_array_append_val (sources, sun);
}

/**
 * lr_light_sources:
 * @study: a study
 *
 * Under a clear sky a window is two: the sky through it, then the sun.
 *
 * Returns: (transfer full) (element-type LrLightSource): what gives light
 */
GArray *
lr_light_sources (const LrStudy *study)
{
  GArray *sources = g_array_new (FALSE, FALSE, sizeof (LrLightSource));
  const Daylight day = get_daylight (study);

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
        add_window (sources, study, source.placed, &day);
      if (is_lit)
        g_array_append_val (sources, source);
    }
  return sources;
}

/**
 * lr_light_spares:
 * @study: a study
 *
 * Returns: (transfer full) (element-type LrLightSource): the lights of the kit that are dimmed to nothing, as they would shine at full
 */
GArray *
lr_light_spares (const LrStudy *study)
{
  GArray *spares = g_array_new (FALSE, FALSE, sizeof (LrLightSource));

  for (guint i = 0; i < study->placed->len; i++)
    {
      LrLightSource spare = { .placed = &g_array_index (study->placed, LrPlaced, i) };
      const LrItem *item = spare.placed->item;

      if (item->kind != LR_ITEM_LIGHT || item->light.dim > 0.0 || !lr_lamp_shines (item))
        continue;
      spare.emitter = lr_light_emitter_of (study, spare.placed);
      spare.kelvin = item->light.color_temperature_k;
      g_array_append_val (spares, spare);
    }
  return spares;
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
  LrVec3 entry_m;

  if (!lr_emitter_lx (emitter, point_m, normal, &lux) || !(lux > 0.0))
    seen = lux = 0.0;
  else if (shade != NULL && emitter->shape == LR_EMITTER_POINT)
    seen = lr_light_shade_is_clear (shade, point_m, emitter->at_m, of) ? 1.0 : 0.0;
  else if (shade != NULL && emitter->shape == LR_EMITTER_BEAM)
    seen = lr_beam_entry (emitter, point_m, &entry_m) && lr_light_shade_is_clear (shade, point_m, entry_m, of) ? 1.0 : 0.0;
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
