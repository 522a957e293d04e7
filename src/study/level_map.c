/* level_map.c - how much light there is from place to place over the floor
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A face that is moved about the room meets this light on its bright side. What the room gives back comes from everywhere and is taken
 * as its mean on four upright faces, and on fewer points.
 */

#include "level_map.h"

#include "bounce.h"

#define STEP_M 0.3
#define MOST_POINTS 900
#define SIDES 8             /* ways that a face is turned, to find the brightest */
#define BACK_SIDES 4
#define COARSER 3           /* of the net, for what the room gives back */
#define USUAL_HEIGHT_M 1.2  /* of eyes, seated (common practice, no source) */
#define AT_PERSON_M 0.35    /* nearer than that one measures in front of the person, not in their shadow */

static double
height_of_eyes (const LrStudy *study)
{
  for (guint i = 0; i < study->cameras->len; i++)
    {
      const LrCameraReading *camera = &g_array_index (study->cameras, LrCameraReading, i);

      if (camera->has_subject)
        return camera->subject->eyes_m.z;
    }
  return USUAL_HEIGHT_M;
}

static LrLevelMap *
lay_net (const LrStudy *study)
{
  const LrRoom *room = study->setup->room;
  LrVec2 low, high;
  LrLevelMap *map = g_new0 (LrLevelMap, 1);

  lr_polygon_bounds (room->corners_m, room->n_corners, &low, &high);
  map->step_m = fmax (STEP_M, sqrt ((high.x - low.x) * (high.y - low.y) / MOST_POINTS));
  map->n = 2 + (guint) ((high.x - low.x) / map->step_m);
  map->m = 2 + (guint) ((high.y - low.y) / map->step_m);
  map->from_m = lr_vec2 (0.5 * (low.x + high.x - (map->n - 1) * map->step_m), 0.5 * (low.y + high.y - (map->m - 1) * map->step_m));
  map->height_m = fmin (height_of_eyes (study), 0.95 * room->height_m);
  map->lx = g_new (double, map->n * map->m);
  return map;
}

static LrVec2
point_of (const LrLevelMap *map,
          guint             i)
{
  return lr_vec2 (map->from_m.x + map->step_m * (i % map->n), map->from_m.y + map->step_m * (i / map->n));
}

/* Whom one would measure the light of there; %NULL: nobody. FALSE: there is no place for a face */
static gboolean
is_free (const LrStudy     *study,
         LrVec2             at_m,
         double             height_m,
         const LrPlaced   **person)
{
  const LrRoom *room = study->setup->room;

  *person = NULL;
  if (!lr_polygon_contains (room->corners_m, room->n_corners, at_m))
    return FALSE;
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);

      if (placed->item->kind == LR_ITEM_FURNITURE && placed->bottom_m < height_m && placed->top_m > height_m
          && lr_outline_contains (&placed->footprint, at_m))
        return FALSE;
      if (placed->item->kind == LR_ITEM_PERSON && lr_vec2_distance (placed->at_m, at_m) < AT_PERSON_M)
        *person = placed;
    }
  return TRUE;
}

static double
brightest_lx (const GArray       *sources,
              const LrLightShade *shade,
              LrVec3              at_m,
              const LrPlaced     *person)
{
  double most_lx = 0.0;

  for (int k = 0; k < SIDES; k++)
    {
      LrVec3 normal = lr_vec2_raise (lr_vec2_polar (2.0 * LR_PI * k / SIDES, 1.0), 0.0);
      double lx = 0.0;

      for (guint i = 0; i < sources->len; i++)
        lx += lr_light_source_lx (&g_array_index (sources, LrLightSource, i).emitter, shade, at_m, normal, person, NULL);
      most_lx = fmax (most_lx, lx);
    }
  return most_lx;
}

static double
given_back_lx (const LrBounce     *bounce,
               const LrLightShade *shade,
               LrVec3              at_m,
               const LrPlaced     *person)
{
  double lx = 0.0;

  for (int k = 0; k < BACK_SIDES; k++)
    lx += lr_bounce_lx (bounce, shade, at_m, lr_vec2_raise (lr_vec2_polar (2.0 * LR_PI * k / BACK_SIDES, 1.0), 0.0), person);
  return lx / BACK_SIDES;
}

/* Of the points between those that were looked at: evenly from the nearest to the next. @back_lx: NAN where nothing is known */
static double
between_lx (const LrLevelMap *map,
            const double     *back_lx,
            guint             i)
{
  double sum_lx = 0.0, sum = 0.0;

  for (int dy = 1 - COARSER; dy < COARSER; dy++)
    for (int dx = 1 - COARSER; dx < COARSER; dx++)
      {
        int x = (int) (i % map->n) + dx, y = (int) (i / map->n) + dy;
        double weight = (COARSER - ABS (dx)) * (COARSER - ABS (dy));

        if (x < 0 || y < 0 || x >= (int) map->n || y >= (int) map->m || isnan (back_lx[y * (int) map->n + x]))
          continue;
        sum_lx += weight * back_lx[y * (int) map->n + x];
        sum += weight;
      }
  return sum > 0.0 ? sum_lx / sum : (double) NAN;
}

/**
 * lr_level_map_new:
 * @study: a study of a room
 * @shade: what stands in the way
 * @sources: (element-type LrLightSource): what gives light
 * @bounce: the room, solved
 * @cancellable: (nullable): looked at between points
 *
 * Returns: (transfer full) (nullable): the map; %NULL when cancelled
 */
LrLevelMap *
lr_level_map_new (const LrStudy      *study,
                  const LrLightShade *shade,
                  const GArray       *sources,
                  const LrBounce     *bounce,
                  GCancellable       *cancellable)
{
  g_autoptr (LrLevelMap) map = lay_net (study);
  g_autofree double *back_lx = g_new (double, map->n * map->m);

  for (guint i = 0; i < map->n * map->m; i++)
    {
      LrVec3 at_m = lr_vec2_raise (point_of (map, i), map->height_m);
      const LrPlaced *person;

      map->lx[i] = back_lx[i] = NAN;
      if (g_cancellable_is_cancelled (cancellable))
        return NULL;
      if (!is_free (study, lr_vec3_flat (at_m), map->height_m, &person))
        continue;
      map->lx[i] = brightest_lx (sources, shade, at_m, person);
      if (i % map->n % COARSER == 1 && i / map->n % COARSER == 1)
        back_lx[i] = given_back_lx (bounce, shade, at_m, person);
    }
  for (guint i = 0; i < map->n * map->m; i++)
    {
      double lx = isnan (back_lx[i]) ? between_lx (map, back_lx, i) : back_lx[i];

      if (isnan (lx) && !isnan (map->lx[i])) /* a narrow place without any of the fewer points */
        lx = given_back_lx (bounce, shade, lr_vec2_raise (point_of (map, i), map->height_m), NULL);
      map->lx[i] += lx;
    }
  return g_steal_pointer (&map);
}

/**
 * lr_level_map_free:
 * @map: (transfer full) (nullable): a map
 */
void
lr_level_map_free (LrLevelMap *map)
{
  if (map == NULL)
    return;

  g_free (map->lx);
  g_free (map);
}

/**
 * lr_level_map_lx:
 * @map: a map
 * @at_m: a place on the floor [m]
 *
 * Returns: the light over it [lx]; NAN: it is not known there
 */
double
lr_level_map_lx (const LrLevelMap *map,
                 LrVec2            at_m)
{
  double x = (at_m.x - map->from_m.x) / map->step_m, y = (at_m.y - map->from_m.y) / map->step_m;
  const double *at;
  guint i, j;

  if (!(x >= 0.0) || !(y >= 0.0) || !(x <= map->n - 1.0) || !(y <= map->m - 1.0))
    return NAN;

  i = MIN ((guint) x, map->n - 2);
  j = MIN ((guint) y, map->m - 2);
  x -= i;
  y -= j;
  at = &map->lx[j * map->n + i];
  return (1.0 - y) * ((1.0 - x) * at[0] + x * at[1]) + y * ((1.0 - x) * at[map->n] + x * at[map->n + 1]);
}
