/* wall_light.c - what falls on a wall from place to place
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Shadows of people and equipment, wall_shadows.h, lie over it on a finer net. What comes straight is looked at twice as finely as what
 * the room gives back, which changes slowly. Where furniture stands against the wall the room's light is not known: there it is the
 * wall's mean, for nobody sees it. A wall that the sun reaches is cut more finely yet, for that light has edges, those of people too.
 */

#include "wall_light.h"

#include "bounce.h"

#define FINER 2
#define FINER_IN_SUN 6
#define EDGE_POINTS 5
#define OFF_M 0.004

/* Between the middles of even cells; beyond the last it is theirs */
static double
between (const double *value,
         guint        n,
         guint        m,
         double       along,
         double       up)
{
  double x = CLAMP (along * n - 0.5, 0.0, n - 1.0), y = CLAMP (up * m - 0.5, 0.0, m - 1.0);
  guint i = (guint) x, j = (guint) y, right = MIN (i + 1, n - 1), above = MIN (j + 1, m - 1);
  double s = x - i, t = y - j;

  return (1.0 - t) * ((1.0 - s) * value[j * n + i] + s * value[j * n + right])
         + t * ((1.0 - s) * value[above * n + i] + s * value[above * n + right]);
}

/**
 * lr_wall_light_unshaded_lx:
 * @light: on a wall
 * @along: from its first corner, as a share of its length, 0 to 1
 * @up: from the floor, as a share of its height, 0 to 1
 *
 * Returns: what would fall there without shadows of people and equipment [lx]
 */
double
lr_wall_light_unshaded_lx (const LrWallLight *light,
                           double             along,
                           double             up)
{
  return between (light->lx, light->n, light->m, along, up);
}

/**
 * lr_wall_light_back_lx:
 * @light: on a wall
 * @along: from its first corner, as a share of its length, 0 to 1
 * @up: from the floor, as a share of its height, 0 to 1
 *
 * Returns: what the room gives back there [lx]
 */
double
lr_wall_light_back_lx (const LrWallLight *light,
                       double             along,
                       double             up)
{
  return between (light->back_lx, light->n, light->m, along, up);
}

/**
 * lr_wall_shade_left:
 * @shade: on a wall
 * @along: from its first corner, as a share of its length, 0 to 1
 * @up: from the floor, as a share of its height, 0 to 1
 *
 * Returns: the share of the light that is left there, 0 to 1
 */
double
lr_wall_shade_left (const LrWallShade *shade,
                    double             along,
                    double             up)
{
  double x, y, s, t;
  const double *at;
  guint i, j;

  if (shade->n < 2 || shade->m < 2 || !(along > shade->along0 && along < shade->along1 && up > shade->up0 && up < shade->up1))
    return 1.0;

  x = (along - shade->along0) / (shade->along1 - shade->along0) * (shade->n - 1);
  y = (up - shade->up0) / (shade->up1 - shade->up0) * (shade->m - 1);
  i = MIN ((guint) x, shade->n - 2);
  j = MIN ((guint) y, shade->m - 2);
  s = x - i;
  t = y - j;
  at = &shade->left[j * shade->n + i];
  return (1.0 - t) * (at[0] + s * (at[1] - at[0])) + t * (at[shade->n] + s * (at[shade->n + 1] - at[shade->n]));
}

/**
 * lr_wall_light_take_shade:
 * @light: on a wall, with a shade
 *
 * The darkest place may be in it.
 */
void
lr_wall_light_take_shade (LrWallLight *light)
{
  const LrWallShade *shade = &light->shade;

  for (guint i = 0; i < shade->n * shade->m; i++)
    {
      double along = shade->along0 + (shade->along1 - shade->along0) * (i % shade->n) / (shade->n - 1.0);
      double up = shade->up0 + (shade->up1 - shade->up0) * (i / shade->n) / (shade->m - 1.0);

      light->least_lx = fmin (light->least_lx, shade->left[i] * lr_wall_light_unshaded_lx (light, along, up));
    }
}

/**
 * lr_wall_light_lx:
 * @light: on a wall
 * @along: from its first corner, as a share of its length, 0 to 1
 * @up: from the floor, as a share of its height, 0 to 1
 *
 * Returns: what falls there [lx]
 */
double
lr_wall_light_lx (const LrWallLight *light,
                  double             along,
                  double             up)
{
  return lr_wall_light_unshaded_lx (light, along, up) * lr_wall_shade_left (&light->shade, along, up);
}

/* (transfer full): what the room gives back on each of a wall's cells */
static double *
given_back (const LrBounce      *bounce,
            const LrWallPatches *wall)
{
  double *lx = g_new0 (double, wall->n * wall->m);
  double sum_lx = 0.0;
  guint n_seen = 0;

  for (guint i = 0; i < wall->n * wall->m; i++)
    if (wall->patch[i] >= 0)
      {
        lx[i] = bounce->lux[wall->patch[i]] - bounce->direct_lx[wall->patch[i]];
        sum_lx += lx[i];
        n_seen++;
      }
  for (guint i = 0; n_seen > 0 && i < wall->n * wall->m; i++)
    if (wall->patch[i] < 0)
      lx[i] = sum_lx / n_seen;
  return lx;
}

/* From beams of the sun, or from all but those */
static double
straight_lx (const GArray       *sources,
             gboolean            is_sun,
             const LrLightShade *shade,
             LrVec3              at_m,
             LrVec3              normal)
{
  double lx = 0.0;

  for (guint i = 0; i < sources->len; i++)
    {
      const LrLightSource *source = &g_array_index (sources, LrLightSource, i);

      if (source->is_sun == is_sun)
        lx += lr_light_source_lx (&source->emitter, shade, at_m, normal, NULL, NULL);
    }
  return lx;
}

static void
sum_up (LrWallLight *light)
{
  double sum_lx = 0.0;

  light->least_lx = light->most_lx = light->lx[0];
  for (guint i = 0; i < light->n * light->m; i++)
    {
      light->least_lx = MIN (light->least_lx, light->lx[i]);
      light->most_lx = MAX (light->most_lx, light->lx[i]);
      sum_lx += light->lx[i];
    }
  light->mean_lx = sum_lx / (light->n * light->m);
}

typedef struct
{
  LrVec2 from_m, along, inward;
  double length_m, height_m;
} Place;

/* In a cell, by shares of its sides */
static LrVec3
place_in (const Place *place,
          guint        n,
          guint        m,
          guint        i,
          double       across,
          double       up)
{
  LrVec2 at_m = lr_vec2_along (place->from_m, place->along, place->length_m * (i % n + across) / n);

  return lr_vec2_raise (lr_vec2_along (at_m, place->inward, OFF_M), place->height_m * (i / n + up) / m);
}

/* Where a cell lies on an edge, how much of it is lit is found by many points */
static double
sun_in_cell_lx (const Place        *place,
                guint               n,
                guint               m,
                guint               i,
                const LrLightShade *shade,
                const GArray       *sources)
{
  LrVec3 normal = lr_vec2_raise (place->inward, 0.0);
  double corner_lx[4], lx = 0.0;

  for (int k = 0; k < 4; k++)
    corner_lx[k] = straight_lx (sources, TRUE, shade, place_in (place, n, m, i, k % 2, k / 2), normal);
  if (corner_lx[0] == corner_lx[1] && corner_lx[1] == corner_lx[2] && corner_lx[2] == corner_lx[3])
    return corner_lx[0];

  for (int k = 0; k < EDGE_POINTS * EDGE_POINTS; k++)
    lx += straight_lx (sources, TRUE, shade,
                       place_in (place, n, m, i, (k % EDGE_POINTS + 0.5) / EDGE_POINTS, (k / EDGE_POINTS + 0.5) / EDGE_POINTS), normal);
  return lx / (EDGE_POINTS * EDGE_POINTS);
}

/* On cells of their own, between which the rest of the light is known; the mean stays that of the rest, what the wall is outside the sun.
 * Nothing happens to a wall that it does not reach */
static void
add_sun (LrWallLight        *light,
         const Place        *place,
         const LrLightShade *shade,
         const GArray       *sources)
{
  guint n = light->n / FINER * FINER_IN_SUN, m = light->m / FINER * FINER_IN_SUN;
  g_autofree double *lx = g_new (double, n * m), *sun_lx = g_new (double, n * m), *back_lx = g_new (double, n * m);

  for (guint i = 0; i < n * m; i++)
    {
      sun_lx[i] = sun_in_cell_lx (place, n, m, i, shade, sources);
      light->full_sun_lx = MAX (light->full_sun_lx, sun_lx[i]);
    }
  if (!(light->full_sun_lx > 0.0))
    return;

  for (guint i = 0; i < n * m; i++)
    {
      double s = (i % n + 0.5) / n, t = (i / n + 0.5) / m;

      back_lx[i] = between (light->back_lx, light->n, light->m, s, t);
      lx[i] = sun_lx[i] + between (light->lx, light->n, light->m, s, t);
      light->most_lx = MAX (light->most_lx, lx[i]);
    }
  g_free (light->lx);
  g_free (light->back_lx);
  light->lx = g_steal_pointer (&lx);
  light->back_lx = g_steal_pointer (&back_lx);
  light->sun_lx = g_steal_pointer (&sun_lx);
  light->n = n;
  light->m = m;
}

static gboolean
has_sun (const GArray *sources,
         LrVec2        inward)
{
  for (guint i = 0; i < sources->len; i++)
    if (g_array_index (sources, LrLightSource, i).is_sun
        && lr_vec2_dot (lr_vec3_flat (g_array_index (sources, LrLightSource, i).emitter.axis), inward) < 0.0)
      return TRUE;
  return FALSE;
}

static void
light_wall (LrWallLight         *light,
            const LrWallPatches *wall,
            const double         *back_lx,
            const LrRoom        *room,
            int                  index,
            const LrLightShade  *shade,
            const LrLightShade  *sun_shade,
            const GArray        *sources)
{
  Place place = { .height_m = room->height_m };

  lr_room_wall (room, index, &place.from_m, &place.along, &place.length_m);
  place.inward = lr_vec2_left (place.along);
  for (guint i = 0; i < light->n * light->m; i++)
    {
      double s = (i % light->n + 0.5) / light->n, t = (i / light->n + 0.5) / light->m;

      light->back_lx[i] = between (back_lx, wall->n, wall->m, s, t);
      light->lx[i] = light->back_lx[i]
                     + straight_lx (sources, FALSE, shade, place_in (&place, light->n, light->m, i, 0.5, 0.5), lr_vec2_raise (place.inward, 0.0));
    }
  sum_up (light);
  if (has_sun (sources, place.inward))
    add_sun (light, &place, sun_shade, sources);
}

static void
clear_cb (gpointer data)
{
  g_free (((LrWallLight *) data)->lx);
  g_free (((LrWallLight *) data)->sun_lx);
  g_free (((LrWallLight *) data)->back_lx);
  g_free (((LrWallLight *) data)->shade.left);
}

/**
 * lr_wall_lights:
 * @bounce: the room, solved
 * @study: its study
 * @shade: what stands in the way, without people and equipment
 * @sun_shade: what stands in the sun's way, of which there are no shadows apart
 * @sources: (element-type LrLightSource): what gives light
 * @cancellable: (nullable): looked at between walls
 *
 * Returns: (transfer full) (element-type LrWallLight) (nullable): the light on each wall of the room, in its order; %NULL when cancelled
 */
GArray *
lr_wall_lights (const LrBounce     *bounce,
                const LrStudy      *study,
                const LrLightShade *shade,
                const LrLightShade *sun_shade,
                const GArray       *sources,
                GCancellable       *cancellable)
{
  GArray *lights = g_array_new (FALSE, FALSE, sizeof (LrWallLight));

  g_array_set_clear_func (lights, clear_cb);
  for (guint i = 0; i < bounce->walls->len; i++)
    {
      const LrWallPatches *wall = &g_array_index (bounce->walls, LrWallPatches, i);
      LrWallLight light = { .n = FINER * wall->n, .m = FINER * wall->m };
      g_autofree double *back_lx = given_back (bounce, wall);

      if (g_cancellable_is_cancelled (cancellable))
        {
          g_array_unref (lights);
          return NULL;
        }
      light.lx = g_new0 (double, MAX (1, light.n * light.m));
      light.back_lx = g_new0 (double, MAX (1, light.n * light.m));
      if (wall->n > 0)
        light_wall (&light, wall, back_lx, study->setup->room, (int) i, shade, sun_shade, sources);
      g_array_append_val (lights, light);
    }
  return lights;
}
