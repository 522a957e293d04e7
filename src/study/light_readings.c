/* light_readings.c - what each light gives where it matters
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What emits stands before the stand as the symbols draw it. Of a soft source a face sees what is not hidden by people, furniture
 * and panels, by rays to the middles of 4 by 4 equal parts of it.
 */

#include "light_readings.h"

#include "intruders.h"

#define PARTS 4
/* Of the emitting face before the lamp's joint, as drawn */
#define WIDE_AHEAD_M 0.16
#define PANEL_AHEAD_M 0.04
#define POINT_AHEAD_M 0.065
#define MOST_BEAM_RAD (178.0 * LR_DEG)
#define NEAR_LIGHT_M 0.05 /* what is nearer to the lamp is part of it */

static double
ahead_m (const LrLight *light)
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

/* With so much flux out of its front */
static gboolean
make_emitter (const LrStudy  *study,
              const LrPlaced *light,
              double          lumen,
              LrEmitter      *emitter)
{
  const LrLight *l = &light->item->light;
  double tilt_rad = lr_light_tilt_rad (study, light), cf = cos (light->facing_rad), sf = sin (light->facing_rad);
  double ct = cos (tilt_rad), st = sin (tilt_rad);
  LrEmitter e = {
    .shape = l->form == LR_LIGHT_POINT || !(l->width_m > 0.0 && l->height_m > 0.0) ? LR_EMITTER_POINT : LR_EMITTER_RECTANGLE,
    .axis = { ct * cf, ct * sf, st }, .right = { sf, -cf, 0.0 }, .up = { -st * cf, -st * sf, ct },
    .width_m = l->width_m, .height_m = l->height_m, .lobe = 1.0,
  };

  if (l->beam_rad > 0.0)
    lr_beam_lobe (MIN (l->beam_rad, MOST_BEAM_RAD), &e.lobe);
  if (!lr_candela_of_lumen (lumen, e.lobe, &e.candela))
    return FALSE;

  e.at_m = lr_vec3_along (lr_vec2_raise (light->at_m, l->lamp_height_m), e.axis, ahead_m (l));
  *emitter = e;
  return TRUE;
}

/**
 * lr_light_emitter:
 * @study: a study
 * @light: a light of it
 * @emitter: (out): what emits, as it is dimmed
 *
 * The lumens of the plan are those that leave the front as it is used, spread over the beam as a power of the cosine. Without a beam
 * it is Lambertian.
 *
 * Returns: %FALSE, with @emitter untouched, if the light has no output
 */
gboolean
lr_light_emitter (const LrStudy  *study,
                  const LrPlaced *light,
                  LrEmitter      *emitter)
{
  double lumen = light->item->light.output_lm * light->item->light.dim;

  return lumen > 0.0 && make_emitter (study, light, lumen, emitter);
}

/**
 * lr_light_stop_m:
 * @study: a study
 * @light: a light of it
 * @aim_m: along its axis from over its stand to its aim [m]
 * @stops: how many stops more than there
 * @along_m: (out): along its axis from over its stand [m]
 *
 * Its output does not matter. Near a wide source the level rises slower than by the distance law, and ends at its face.
 *
 * Returns: %FALSE, with @along_m untouched, if the level is nowhere on the axis
 */
gboolean
lr_light_stop_m (const LrStudy  *study,
                 const LrPlaced *light,
                 double          aim_m,
                 int             stops,
                 double         *along_m)
{
  double before_m = ahead_m (&light->item->light), lux, from_m;
  LrEmitter emitter;

  if (!make_emitter (study, light, 1.0, &emitter) || !lr_emitter_axis_lx (&emitter, aim_m - before_m, &lux)
      || !lr_emitter_distance_m (&emitter, lux * exp2 (stops), &from_m))
    return FALSE;

  *along_m = before_m + from_m;
  return TRUE;
}

/* Quick: whether a ray of length 1 passes through the ball that holds it */
static gboolean
may_meet (const LrVolume *shape,
          LrVec3          from_m,
          LrVec3          way)
{
  LrVec3 to_m = lr_vec3_sub (shape->centre_m, from_m);
  double along_m = lr_vec3_dot (to_m, way);

  return lr_vec3_dot (to_m, to_m) - along_m * along_m < shape->reach_m * shape->reach_m;
}

static gboolean
is_hidden (const GArray *blockers,
           LrVec3        from_m,
           LrVec3        to_m)
{
  LrVec3 way = lr_vec3_sub (to_m, from_m);
  double distance_m = lr_vec3_length (way), enter_m;

  way = lr_vec3_scale (way, 1.0 / fmax (distance_m, 1e-9));
  for (guint i = 0; i < blockers->len; i++)
    {
      const LrVolume *shape = &g_array_index (blockers, LrVolume, i);

      if (may_meet (shape, from_m, way) && lr_volume_ray (shape, from_m, way, &enter_m) && enter_m < distance_m - NEAR_LIGHT_M)
        return TRUE;
    }

  return FALSE;
}

/* What keeps light away, but for the thing that is lit */
static GArray *
collect_blockers (const LrStudy  *study,
                  const LrPlaced *of)
{
  GArray *blockers = g_array_new (FALSE, FALSE, sizeof (LrVolume));

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);
      LrVolume shapes[2];
      guint n = 0;

      if (placed == of)
        continue;
      if (placed->item->kind == LR_ITEM_FURNITURE)
        n = lr_furniture_slabs (placed, shapes);
      else if (placed->item->kind == LR_ITEM_PANEL)
        lr_panel_sheet (placed, &shapes[n++]);
      else if (placed->item->kind == LR_ITEM_PERSON && placed->body.stature_m > 0.0)
        {
          lr_person_head (placed, &shapes[n++]);
          lr_person_trunk (placed, &shapes[n++]);
        }
      g_array_append_vals (blockers, shapes, n);
    }

  return blockers;
}

static double
seen_share (const LrStudy   *study,
            const LrEmitter *emitter,
            LrVec3           point_m,
            const LrPlaced  *of)
{
  g_autoptr (GArray) blockers = collect_blockers (study, of);
  int parts = emitter->shape == LR_EMITTER_POINT ? 1 : PARTS, n_seen = 0;

  for (int i = 0; i < parts * parts; i++)
    {
      double x = ((i % parts + 0.5) / parts - 0.5) * emitter->width_m, y = ((i / parts + 0.5) / parts - 0.5) * emitter->height_m;
      LrVec3 part_m = parts == 1 ? emitter->at_m : lr_vec3_along (lr_vec3_along (emitter->at_m, emitter->right, x), emitter->up, y);

      n_seen += !is_hidden (blockers, point_m, part_m);
    }

  return (double) n_seen / (parts * parts);
}

/**
 * lr_light_at:
 * @study: a study
 * @light: a light of it
 * @point_m: where it shines [m]
 * @normal: of the face there, of length 1
 * @of: (nullable): what the face belongs to
 * @at: (out): what it gives
 *
 * Where some of a soft source is hidden, the rest gives in proportion: near the edge of a shadow the share is right to a sixteenth.
 *
 * Returns: %FALSE, with @at untouched, if the light has no output, or the place is in it
 */
gboolean
lr_light_at (const LrStudy  *study,
             const LrPlaced *light,
             LrVec3          point_m,
             LrVec3          normal,
             const LrPlaced *of,
             LrLightAt      *at)
{
  LrEmitter emitter;
  double lux, share;

  if (!lr_light_emitter (study, light, &emitter) || !lr_emitter_lx (&emitter, point_m, normal, &lux))
    return FALSE;

  share = lux > 0.0 ? seen_share (study, &emitter, point_m, of) : 0.0;
  *at = (LrLightAt) { lux * share, share };
  return TRUE;
}

/**
 * lr_light_at_aim:
 * @study: a study
 * @light: a light of it
 * @at: (out): what it gives at the eyes of the person, or the middle of the thing, that it aims at
 *
 * Returns: %FALSE, with @at untouched, if it aims at nothing or has no output
 */
gboolean
lr_light_at_aim (const LrStudy  *study,
                 const LrPlaced *light,
                 LrLightAt      *at)
{
  const LrPlaced *target = lr_study_find_placed (study, light->item->light.aims_at);
  LrEmitter emitter;
  LrVec3 way;

  if (target == NULL || target == light || !lr_light_emitter (study, light, &emitter))
    return FALSE;

  way = lr_vec3_sub (emitter.at_m, target->point_m);
  if (!(lr_vec3_length (way) > 1e-6))
    return FALSE;

  return lr_light_at (study, light, target->point_m, lr_vec3_scale (way, 1.0 / lr_vec3_length (way)), target, at);
}
