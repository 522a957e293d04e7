/* light_levels.c - what light reaches faces, clothes and the wall behind them, and how it comes out
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The key is what gives the brighter cheek most. Fill is all that the other cheek gets but the key's straight light: other lamps and
 * what the room gives back, of the key too. The ratio is of the two cheeks with everything counted: key side to shadow side,
 * (K + F) : F where no fill reaches one cheek alone.
 */

#include "light_levels_private.h"

#include "bounce.h"
#include "color.h"
#include "power_readings.h"

#define SHADOW_POINTS 2000 /* on a wall */

static LrLux
lux_of (const LrLightLevels *self,
        guint                probe)
{
  LrLux lux = { 0.0, self->bounced_lx != NULL ? self->bounced_lx[probe] : (double) NAN };

  for (guint i = 0; i < self->sources->len; i++)
    lux.direct_lx += lr_levels_direct_lx (self, probe, i);
  return lux;
}

/* The source that gives most straight to a probe; n: nothing does */
static guint
brightest_on (const LrLightLevels *self,
              guint                probe)
{
  guint best = self->sources->len;

  for (guint i = 0; i < self->sources->len; i++)
    if (lr_levels_direct_lx (self, probe, i) > (best < self->sources->len ? lr_levels_direct_lx (self, probe, best) : 0.0))
      best = i;
  return best;
}

static gboolean
is_sun (const LrLightLevels *self,
        guint                index)
{
  return index < self->sources->len && g_array_index (self->sources, LrLightSource, index).is_sun;
}

/* Where a source is from somebody's eyes; %NULL: nothing gives light there */
static const LrPlaced *
read_way (const LrLightLevels *self,
          const LrPlaced      *person,
          guint                index,
          double              *side_rad,
          double              *up_rad)
{
  const LrLightSource *source;
  LrVec3 way;

  *side_rad = *up_rad = NAN;
  if (index == self->sources->len)
    return NULL;

  source = &g_array_index (self->sources, LrLightSource, index);
  way = lr_emitter_way (&source->emitter, person->eyes_m);
  *side_rad = lr_angle_wrap_rad (lr_vec2_angle_rad (lr_vec3_flat (way)) - person->facing_rad);
  *up_rad = atan2 (way.z, lr_vec2_length (lr_vec3_flat (way)));
  return source->placed;
}

/* On the plane of the face a shadow goes away from the light: by sin (side) cos (up) aside and sin (up) down */
static double
nose_under_rad (const LrFaceLight *face)
{
  if (face->key == NULL || fabs (face->key_side_rad) > 0.5 * LR_PI)
    return NAN;

  return atan2 (sin (face->key_up_rad), fabs (sin (face->key_side_rad)) * cos (face->key_up_rad));
}

static void
read_key (const LrLightLevels *self,
          LrFaceLight         *face,
          guint                lit_probe,
          guint                shadow_probe)
{
  guint key = brightest_on (self, lit_probe);

  face->key = read_way (self, face->person, key, &face->key_side_rad, &face->key_up_rad);
  face->key_is_sun = is_sun (self, key);
  face->nose_under_rad = nose_under_rad (face);
  face->fill_lx = lr_lux_all (face->at[face->shadow]);
  if (face->key == NULL)
    return;

  face->key_lx = lr_levels_direct_lx (self, lit_probe, key);
  face->fill_lx -= lr_levels_direct_lx (self, shadow_probe, key);
}

static double
mixed_k (const LrLightLevels *self,
         guint                probe)
{
  g_autofree double *kelvin = g_new (double, self->sources->len + 1), *lux = g_new (double, self->sources->len + 1);
  LrChromaticity white;
  double mixed = NAN;

  for (guint i = 0; i < self->sources->len; i++)
    {
      kelvin[i] = g_array_index (self->sources, LrLightSource, i).kelvin;
      lux[i] = lr_levels_direct_lx (self, probe, i);
    }
  if (lr_mix_white (kelvin, lux, self->sources->len, &white))
    lr_correlated_k (white, &mixed);
  return mixed;
}

/* Its probes stand one after the other from @first */
static void
read_face (LrLightLevels *self,
           guint          first)
{
  LrFaceLight face = { .person = g_array_index (self->probes, LrLightProbe, first).placed };
  double left_lx, right_lx;

  for (LrFacePoint point = 0; point < LR_N_FACE_POINTS; point++)
    face.at[point] = lux_of (self, first + point);
  left_lx = lr_lux_all (face.at[LR_FACE_LEFT]);
  right_lx = lr_lux_all (face.at[LR_FACE_RIGHT]);
  face.lit = left_lx >= right_lx ? LR_FACE_LEFT : LR_FACE_RIGHT;
  face.shadow = left_lx >= right_lx ? LR_FACE_RIGHT : LR_FACE_LEFT;
  face.ratio_stops = log2 (fmax (left_lx, right_lx) / fmin (left_lx, right_lx));
  face.back_lx = face.at[LR_FACE_BACK].direct_lx;
  face.back = read_way (self, face.person, brightest_on (self, first + LR_FACE_BACK), &face.back_side_rad, &face.back_up_rad);
  face.back_is_sun = is_sun (self, brightest_on (self, first + LR_FACE_BACK));
  face.mixed_k = mixed_k (self, first + face.lit);
  read_key (self, &face, first + face.lit, first + face.shadow);
  g_array_append_val (self->faces, face);
}

/* Its probes stand one after the other from @first */
static void
read_thing (LrLightLevels *self,
            guint          first)
{
  LrThingLight light = { .thing = g_array_index (self->probes, LrLightProbe, first).placed };

  for (LrThingSide side = 0; side < LR_N_THING_SIDES; side++)
    light.lx[side] = lr_lux_all (lux_of (self, first + side));
  g_array_append_val (self->things, light);
}

static void
read_background (LrLightLevels  *self,
                 const LrPlaced *camera)
{
  LrBackLight back = { .camera = camera, .mean = { 0.0, self->bounced_lx != NULL ? 0.0 : (double) NAN }, .least_lx = HUGE_VAL };
  double given_lx = 0.0, all_lx = 0.0;

  for (guint i = 0; i < self->probes->len; i++)
    {
      const LrLightProbe *probe = &g_array_index (self->probes, LrLightProbe, i);
      LrLux lux;

      if (probe->type != LR_PROBE_BACKGROUND || probe->placed != camera)
        continue;
      lux = lux_of (self, i);
      back.n++;
      back.mean.direct_lx += lux.direct_lx;
      back.mean.bounced_lx += lux.bounced_lx;
      back.least_lx = fmin (back.least_lx, lr_lux_all (lux));
      back.most_lx = fmax (back.most_lx, lr_lux_all (lux));
      given_lx += probe->reflectance * lr_lux_all (lux);
      all_lx += lr_lux_all (lux);
    }
  if (back.n == 0)
    back.least_lx = 0.0;
  else
    {
      back.mean.direct_lx /= back.n;
      back.mean.bounced_lx /= back.n;
      back.reflectance = all_lx > 0.0 ? given_lx / all_lx : self->study->setup->room->walls.reflectance;
    }
  g_array_append_val (self->backs, back);
}

static void
light_probes (LrLightLevels      *self,
              const LrLightShade *shade)
{
  self->direct_lx = g_new0 (double, self->probes->len * self->sources->len + 1);
  for (guint i = 0; i < self->probes->len; i++)
    for (guint j = 0; j < self->sources->len; j++)
      {
        const LrLightProbe *probe = &g_array_index (self->probes, LrLightProbe, i);

        self->direct_lx[i * self->sources->len + j] =
          lr_light_source_lx (&g_array_index (self->sources, LrLightSource, j).emitter, shade, probe->at_m, probe->normal, probe->of, NULL);
      }
}

/* A probe's light of each source alone, and what the room gives it of all */
static double
read_alone (LrLightLevels      *self,
            const LrBounce     *bounce,
            const LrLightShade *shade,
            guint               index)
{
  const LrLightProbe *probe = &g_array_index (self->probes, LrLightProbe, index);
  double *alone_lx = &self->alone_lx[index * bounce->n_alone];
  double bounced_lx = lr_bounce_each_lx (bounce, shade, probe->at_m, probe->normal, probe->of, alone_lx);

  for (guint j = 0; j < bounce->n_alone; j++)
    alone_lx[j] += j < self->sources->len
                     ? lr_levels_direct_lx (self, index, j)
                     : lr_light_source_lx (&g_array_index (self->spares, LrLightSource, j - self->sources->len).emitter, shade, probe->at_m,
                                           probe->normal, probe->of, NULL);
  return bounced_lx;
}

/* The light on the walls, and the shadows on it; FALSE: cancelled */
static gboolean
find_shadows (LrLightLevels      *self,
              const LrBounce     *bounce,
              const LrLightShade *shade,
              GCancellable       *cancellable)
{
  g_autoptr (LrLightShade) fixed = lr_light_shade_new_fixed (self->study);
  LrShadowTask task = { .study = self->study, .sources = self->sources, .shade = shade, .fixed = fixed, .most_points = SHADOW_POINTS };

  task.walls = self->walls = lr_wall_lights (bounce, self->study, fixed, shade, self->sources, cancellable);
  if (self->walls == NULL)
    return FALSE;

  self->shadows = lr_wall_shadows (&task, cancellable);
  if (self->shadows != NULL)
    self->escapes = lr_shadow_escapes (&task, self->shadows, cancellable);
  return self->escapes != NULL;
}

/* FALSE: cancelled */
static gboolean
bounce_probes (LrLightLevels      *self,
               const LrLightShade *shade,
               GCancellable       *cancellable)
{
  g_autoptr (LrBounce) bounce = lr_bounce_solve (self->study, shade, self->sources, cancellable);

  if (bounce == NULL)
    return !g_cancellable_is_cancelled (cancellable);

  self->spares = lr_light_spares (self->study);
  if (!lr_bounce_solve_alone (bounce, shade, self->spares, cancellable))
    return FALSE;

  self->bounced_lx = g_new0 (double, self->probes->len + 1);
  self->alone_lx = g_new0 (double, self->probes->len * bounce->n_alone + 1);
  for (guint i = 0; i < self->probes->len; i++)
    {
      if (g_cancellable_is_cancelled (cancellable))
        return FALSE;
      self->bounced_lx[i] = read_alone (self, bounce, shade, i);
    }
  if (!find_shadows (self, bounce, shade, cancellable))
    return FALSE;
  self->map = lr_level_map_new (self->study, shade, self->sources, bounce, cancellable);
  return self->map != NULL;
}

static LrLightLevels *
begin (const LrPlan  *plan,
       gboolean       has_things,
       LrLightShade **shade)
{
  LrLightLevels *self = g_new0 (LrLightLevels, 1);

  g_atomic_ref_count_init (&self->ref_count);
  self->study = lr_study_new_trial (plan);
  *shade = lr_light_shade_new (self->study);
  self->sources = lr_light_sources (self->study);
  self->probes = lr_light_probes (self->study, *shade);
  if (has_things)
    lr_light_add_furniture (self->study, self->probes);
  self->faces = g_array_new (FALSE, FALSE, sizeof (LrFaceLight));
  self->backs = g_array_new (FALSE, FALSE, sizeof (LrBackLight));
  self->things = g_array_new (FALSE, FALSE, sizeof (LrThingLight));
  self->ways = g_array_new (FALSE, FALSE, sizeof (LrWayOut));
  light_probes (self, *shade);
  return self;
}

static void
tell (LrLightLevels *self)
{
  for (guint i = 0; i < self->probes->len; i++)
    {
      const LrLightProbe *probe = &g_array_index (self->probes, LrLightProbe, i);

      if (probe->type == LR_PROBE_FACE && probe->point == 0)
        read_face (self, i);
      else if (probe->type == LR_PROBE_THING && probe->side == 0)
        read_thing (self, i);
    }
  for (guint i = 0; i < self->study->cameras->len; i++)
    read_background (self, g_array_index (self->study->cameras, LrCameraReading, i).placed);
}

/**
 * lr_light_levels_new:
 * @plan: a plan, held
 * @has_bounces: whether what the room gives back is wanted too, which takes some tenths of a second
 * @cancellable: (nullable): ends it early
 *
 * May run in any thread.
 *
 * Returns: (transfer full) (nullable): the levels; %NULL when it was cancelled
 */
LrLightLevels *
lr_light_levels_new (const LrPlan *plan,
                     gboolean      has_bounces,
                     GCancellable *cancellable)
{
  g_autoptr (LrLightShade) shade = NULL;
  LrLightLevels *self = begin (plan, has_bounces, &shade);

  if (has_bounces && !bounce_probes (self, shade, cancellable))
    {
      lr_light_levels_unref (self);
      return NULL;
    }

  tell (self);
  if (has_bounces)
    lr_study_ways_out (self->study, self->ways);
  return self;
}

/* The number of a probe among those of its person, its camera or its thing, which stand one after the other, by that of the one before */
static guint
next_index (const LrLightLevels *levels,
            guint                probe,
            guint                index)
{
  const LrLightProbe *now = &g_array_index (levels->probes, LrLightProbe, probe), *last = probe > 0 ? now - 1 : NULL;

  return last != NULL && last->type == now->type && last->placed == now->placed ? index + 1 : 0;
}

/* What the room gave back there, most likely from @hint on; NAN: there was no such probe */
static double
bounced_before_lx (const LrLightLevels *before,
                   const LrLightProbe  *probe,
                   guint                index,
                   const guint         *index_before,
                   guint                hint)
{
  for (guint k = 0, n = before->probes->len; k < n; k++)
    {
      guint i = (hint + k) % n;
      const LrLightProbe *other = &g_array_index (before->probes, LrLightProbe, i);

      if (other->type == probe->type && index_before[i] == index && g_str_equal (other->placed->item->id, probe->placed->item->id))
        return before->bounced_lx[i];
    }
  return NAN;
}

static double
mean_bounced_lx (const LrLightLevels *levels)
{
  double sum_lx = 0.0;

  for (guint i = 0; i < levels->probes->len; i++)
    sum_lx += levels->bounced_lx[i];
  return sum_lx / MAX (levels->probes->len, 1);
}

/* A camera that has just come in gets the mean of what was given back. A person gets nothing, and then nobody: a face is told in
 * figures */
static void
take_over (LrLightLevels *self,
           LrLightLevels *before)
{
  g_autofree double *bounced_lx = g_new0 (double, self->probes->len + 1);
  g_autofree guint *index_before = g_new (guint, before->probes->len + 1);

  for (guint i = 0; i < before->probes->len; i++)
    index_before[i] = next_index (before, i, i > 0 ? index_before[i - 1] : 0);
  for (guint i = 0, index = 0; i < self->probes->len; i++)
    {
      index = next_index (self, i, index);
      bounced_lx[i] = bounced_before_lx (before, &g_array_index (self->probes, LrLightProbe, i), index, index_before, i);
      if (isnan (bounced_lx[i]) && g_array_index (self->probes, LrLightProbe, i).type == LR_PROBE_FACE)
        return;
      if (isnan (bounced_lx[i]))
        bounced_lx[i] = mean_bounced_lx (before);
    }
  self->bounced_lx = g_steal_pointer (&bounced_lx);
  self->before = lr_light_levels_ref (before);
}

/**
 * lr_light_levels_new_straight:
 * @plan: a plan, held
 * @before: (nullable): levels of a plan before it
 *
 * Takes a millisecond or so. What comes straight is of @plan. What the room gives back is as it was in the last settled levels, for each
 * person and each place on a wall, or not known; furniture and shadows are as they were.
 *
 * Returns: (transfer full): the levels
 */
LrLightLevels *
lr_light_levels_new_straight (const LrPlan  *plan,
                              LrLightLevels *before)
{
  g_autoptr (LrLightShade) shade = NULL;
  LrLightLevels *self = begin (plan, FALSE, &shade);

  before = before != NULL ? lr_light_levels_get_settled (before) : NULL;
  if (before != NULL)
    take_over (self, before);
  tell (self);
  return self;
}

/**
 * lr_light_levels_ways:
 * @levels: levels
 *
 * Returns: (transfer none) (element-type LrWayOut): the narrowest way out and wheelchairs' ways
 */
const GArray *
lr_light_levels_ways (const LrLightLevels *levels)
{
  return levels->before != NULL ? levels->before->ways : levels->ways;
}

/**
 * lr_light_levels_ref:
 * @levels: levels
 *
 * Returns: (transfer full): the same
 */
LrLightLevels *
lr_light_levels_ref (LrLightLevels *levels)
{
  g_atomic_ref_count_inc (&levels->ref_count);
  return levels;
}

/**
 * lr_light_levels_unref:
 * @levels: (transfer full): levels
 */
void
lr_light_levels_unref (LrLightLevels *levels)
{
  if (!g_atomic_ref_count_dec (&levels->ref_count))
    return;

  g_clear_pointer (&levels->before, lr_light_levels_unref);
  g_clear_pointer (&levels->walls, g_array_unref);
  g_clear_pointer (&levels->shadows, g_array_unref);
  g_clear_pointer (&levels->escapes, g_array_unref);
  g_clear_pointer (&levels->map, lr_level_map_free);
  g_array_unref (levels->ways);
  g_array_unref (levels->backs);
  g_array_unref (levels->faces);
  g_array_unref (levels->things);
  g_array_unref (levels->probes);
  g_array_unref (levels->sources);
  g_clear_pointer (&levels->spares, g_array_unref);
  g_free (levels->alone_lx);
  g_free (levels->direct_lx);
  g_free (levels->bounced_lx);
  lr_study_free (levels->study);
  g_free (levels);
}
