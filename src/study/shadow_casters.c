/* shadow_casters.c - what of a lamp people and equipment cover, seen from a place
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The solids that a lens sees of a thing, and a person's neck. Most of them are nowhere near the beam: balls and axes tell that quickly.
 */

#include "shadow_casters.h"

#include "cast.h"
#include "intruders.h"

#define POINT_SIZE_M 0.1     /* common practice, no source */
#define BEFORE_LAMP_M 0.02
#define NECK_RADIUS_M 0.058  /* about 0.36 m round, from memory */

typedef struct
{
  const LrPlaced *placed;
  guint  first, n;           /* of the solids */
  LrVec3 centre_m;           /* a ball that holds it */
  double reach_m;
} Thing;

/* From a place on the wall to a lamp */
typedef struct
{
  LrVec3     way;            /* unit */
  double     away_m, radius_m; /* to the lamp's middle; a ball round it holds it */
  LrLampView view;
} Beam;

/**
 * lr_light_source_size_m:
 * @source: what gives light
 *
 * Returns: the side of what shines of a lamp that is taken as a point [m]
 */
double
lr_light_source_size_m (const LrLightSource *source)
{
  const LrItem *item = source->placed->item;

  if (item->kind == LR_ITEM_HOUSE_LIGHT)
    return 2.0 * LR_FIXTURE_RADIUS_M;

  return item->kind == LR_ITEM_LIGHT && item->light.width_m > 0.0 ? item->light.width_m : POINT_SIZE_M;
}

/* Which the shapes of a person lack, for a lens seldom sees past it */
static void
add_neck (LrShadowCasters *casters,
          const LrPlaced  *person,
          Thing           *thing)
{
  const LrBody *body = &person->body;
  LrVolume neck;

  lr_volume_bar (&neck, lr_vec2_raise (person->at_m, body->shoulder_m - NECK_RADIUS_M),
                 lr_vec2_raise (person->at_m, body->crown_m - 0.7 * body->head_height_m), NECK_RADIUS_M);
  g_array_append_val (casters->solids, neck);
  thing->n++;
}

static void
add_thing (LrShadowCasters *casters,
           const LrStudy   *study,
           const LrPlaced  *placed)
{
  Thing thing = { .placed = placed, .first = casters->solids->len };
  LrIntruder intruder = { 0 };

  lr_intruder_shapes (study, placed, &intruder);
  thing.n = intruder.n;
  if (thing.n == 0)
    return;

  g_array_append_vals (casters->solids, intruder.shape, intruder.n);
  if (placed->item->kind == LR_ITEM_PERSON)
    add_neck (casters, placed, &thing);
  for (guint i = 0; i < intruder.n; i++)
    thing.centre_m = lr_vec3_along (thing.centre_m, intruder.shape[i].centre_m, 1.0 / intruder.n);
  for (guint i = 0; i < intruder.n; i++)
    thing.reach_m = fmax (thing.reach_m, lr_vec3_length (lr_vec3_sub (intruder.shape[i].centre_m, thing.centre_m)) + intruder.shape[i].reach_m);
  g_array_append_val (casters->things, thing);
}

/**
 * lr_shadow_casters_new:
 * @study: a study
 *
 * Returns: (transfer full): what throws shadows in it
 */
LrShadowCasters *
lr_shadow_casters_new (const LrStudy *study)
{
  LrShadowCasters *casters = g_new0 (LrShadowCasters, 1);

  casters->solids = g_array_new (FALSE, FALSE, sizeof (LrVolume));
  casters->things = g_array_new (FALSE, TRUE, sizeof (Thing));
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);
      LrItemKind kind = placed->item->kind;

      if ((kind == LR_ITEM_PERSON && placed->body.stature_m > 0.0) || kind == LR_ITEM_LIGHT || kind == LR_ITEM_CAMERA
          || (kind == LR_ITEM_MICROPHONE && placed->item->microphone.form != LR_MIC_LAVALIER))
        add_thing (casters, study, placed);
    }
  return casters;
}

/**
 * lr_shadow_casters_free:
 * @casters: (transfer full) (nullable): what throws shadows
 */
void
lr_shadow_casters_free (LrShadowCasters *casters)
{
  if (casters == NULL)
    return;

  g_array_unref (casters->things);
  g_array_unref (casters->solids);
  g_free (casters);
}

/**
 * lr_shadow_casters_n:
 * @casters: what throws shadows
 *
 * Returns: how many things
 */
guint
lr_shadow_casters_n (const LrShadowCasters *casters)
{
  return casters->things->len;
}

/**
 * lr_shadow_caster:
 * @casters: what throws shadows
 * @index: of a thing
 *
 * Returns: (transfer none): the thing
 */
const LrPlaced *
lr_shadow_caster (const LrShadowCasters *casters,
                  guint                  index)
{
  return g_array_index (casters->things, Thing, index).placed;
}

/* Quick: whether the ball comes into the beam from a lamp of some radius to the place */
static gboolean
may_cover (const Thing *thing,
           LrVec3       at_m,
           const Beam  *beam)
{
  LrVec3 to_m = lr_vec3_sub (thing->centre_m, at_m);
  double along_m = lr_vec3_dot (to_m, beam->way), reach_m;

  if (along_m < -thing->reach_m || along_m > beam->away_m + thing->reach_m)
    return FALSE;

  reach_m = thing->reach_m + beam->radius_m * CLAMP ((along_m + thing->reach_m) / beam->away_m, 0.0, 1.0);
  return lr_vec3_dot (to_m, to_m) - along_m * along_m < reach_m * reach_m;
}

/* Quick: the same for a solid; of a bar by how near its axis comes to the beam's */
static gboolean
may_be_between (const LrVolume *shape,
                const Beam     *beam)
{
  LrVec3 from_m = beam->view.projection.eye_m, way = beam->way, axis, start;
  double aa, aw, as, ws, least, along, t, off_m, reach_m = shape->reach_m, over_m;

  if (shape->type != LR_VOLUME_BAR)
    {
      start = lr_vec3_sub (shape->centre_m, from_m);
      t = lr_vec3_dot (start, way);
      over_m = reach_m + beam->radius_m * CLAMP ((t + reach_m) / beam->away_m, 0.0, 1.0);
      return t > -reach_m && lr_vec3_dot (start, start) - t * t < over_m * over_m;
    }

  axis = lr_vec3_sub (shape->point_m[1], shape->point_m[0]);
  start = lr_vec3_sub (shape->point_m[0], from_m);
  aa = lr_vec3_dot (axis, axis);
  aw = lr_vec3_dot (axis, way);
  as = lr_vec3_dot (axis, start);
  ws = lr_vec3_dot (way, start);
  least = aa - aw * aw;
  along = least > 1e-9 * aa ? CLAMP ((aw * ws - as) / least, 0.0, 1.0) : 0.0;
  t = CLAMP (ws + along * aw, 0.0, beam->away_m);
  off_m = lr_vec3_length (lr_vec3_sub (lr_vec3_along (start, axis, along), lr_vec3_scale (way, t)));
  return off_m < shape->radius_m + beam->radius_m;
}

/* The silhouettes of a thing's solids that stand between; returns how many */
static guint
get_silhouettes (const LrShadowCasters *casters,
                 const Thing           *thing,
                 const Beam            *beam,
                 LrSilhouette          *silhouettes,
                 guint                  most,
                 LrVec3                *past_m)
{
  const LrLampView *view = &beam->view;
  double best = 0.0;
  guint n = 0;

  for (guint i = 0; i < thing->n && n < most; i++)
    {
      const LrVolume *shape = &g_array_index (casters->solids, LrVolume, thing->first + i);
      double depth_m = lr_vec3_dot (lr_vec3_sub (shape->centre_m, view->projection.eye_m), view->projection.forward), area;

      if (depth_m > view->away_m - BEFORE_LAMP_M || !may_be_between (shape, beam) || !lr_silhouette (&view->projection, shape, &silhouettes[n])
          || !lr_silhouette_clip (&silhouettes[n], &view->box))
        continue;
      area = lr_silhouette_area (&silhouettes[n]);
      if (area > best)
        {
          best = area;
          *past_m = shape->centre_m;
        }
      n++;
    }
  return n;
}

/* A lamp does not stand in its own light */
static gboolean
may_throw (const LrPlaced *source,
           const LrPlaced *thing,
           const char     *about)
{
  return thing != source && (about == NULL || g_str_equal (source->item->id, about) || g_str_equal (thing->item->id, about));
}

/**
 * lr_shadow_covered:
 * @casters: what throws shadows
 * @source: a lamp
 * @index: its number, for the losses
 * @about: (nullable): id of a thing, if only what it covers or what is covered of its light is asked for
 * @at_m: a place on a wall [m]
 * @normal: of it, unit
 * @losses: (inout): room for %LR_MOST_LOSSES; one is added for each thing that covers some of it, its share of the lamp as lx
 * @n_losses: (inout): how many
 *
 * Returns: the share of the lamp that they cover together, 0 to 1
 */
double
lr_shadow_covered (const LrShadowCasters *casters,
                   const LrLightSource   *source,
                   guint                  index,
                   const char            *about,
                   LrVec3                 at_m,
                   LrVec3                 normal,
                   LrShadowLoss          *losses,
                   guint                 *n_losses)
{
  const LrEmitter *lamp = &source->emitter;
  double size_m = lr_light_source_size_m (source);
  Beam beam = { .radius_m = lamp->shape == LR_EMITTER_POINT ? 0.71 * size_m : 0.5 * hypot (lamp->width_m, lamp->height_m) };
  LrVec3 way = lr_vec3_sub (lamp->at_m, at_m);
  LrSilhouette silhouettes[LR_COVER_MAX];
  guint n = 0, first = *n_losses;

  beam.away_m = lr_vec3_length (way);
  if (beam.away_m < 0.05 || lr_vec3_dot (way, normal) <= 0.0)
    return 0.0;

  beam.way = lr_vec3_scale (way, 1.0 / beam.away_m);
  for (guint i = 0; i < casters->things->len && *n_losses < LR_MOST_LOSSES; i++)
    {
      const Thing *thing = &g_array_index (casters->things, Thing, i);
      LrShadowLoss loss = { .source = index, .thing = i };
      guint k;

      if (!may_throw (source->placed, thing->placed, about) || !may_cover (thing, at_m, &beam))
        continue;
      if (beam.view.away_m <= 0.0 && !lr_lamp_view (lamp, size_m, at_m, &beam.view))
        return 0.0;
      k = get_silhouettes (casters, thing, &beam, silhouettes + n, LR_COVER_MAX - n, &loss.past_m);
      if (k == 0)
        continue;
      loss.lx = lr_lamp_covered (&beam.view, silhouettes + n, k);
      losses[(*n_losses)++] = loss;
      n += k;
    }

  if (*n_losses == first)
    return 0.0;

  return *n_losses - first == 1 ? losses[first].lx : lr_lamp_covered (&beam.view, silhouettes, n);
}
