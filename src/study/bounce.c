/* bounce.c - light that the room gives back
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Walls, floor and ceiling are cut into patches of about the same size, as many as the time allows; furniture and panels have one or a
 * few a side. The sun has sharp edges and is looked at on many points of each patch; other light at its middle. What stands on the floor
 * or against a wall covers the patches under and behind it. People are in the way, and give nothing back. Reflection is matte everywhere.
 */

#include "bounce.h"

#include "intruders.h"
#include "silhouette.h"
#include "wall_surface.h"

#define WANTED_PATCHES 700
#define LEAST_SIDE_M 0.25
#define SUN_CUTS 4         /* of the sides of half a patch */
#define OFF_M 0.004        /* a patch's middle off its surface, so that a solid's own side does not stand in its way */

typedef struct
{
  const LrStudy *study;
  GArray        *patches;
  GArray        *walls;   /* LrWallPatches */
  GArray        *covers;  /* LrVolume: furniture */
  double         side_m;
} Cutter;

/* Whether a solid stands there */
static gboolean
is_covered (const Cutter *cutter,
            LrVec3        at_m)
{
  for (guint i = 0; i < cutter->covers->len; i++)
    {
      const LrVolume *cover = &g_array_index (cutter->covers, LrVolume, i);

      if (at_m.z > cover->bottom_m - 0.02 && at_m.z < cover->top_m && lr_outline_contains (&cover->base, lr_vec3_flat (at_m)))
        return TRUE;
    }
  return FALSE;
}

/* Returns its number; -1: it is too small or covered */
static int
add_patch (Cutter       *cutter,
           const LrVec3 *corner_m,
           gsize         n,
           double        reflectance,
           gboolean      may_be_covered)
{
  LrPatch patch;
  LrVec3 off_m;

  if (!lr_patch_init (&patch, corner_m, n, reflectance) || patch.area_m2 < 1e-4)
    return -1;

  off_m = lr_vec3_along (patch.middle_m, patch.normal, 0.02);
  if (may_be_covered && is_covered (cutter, off_m))
    return -1;

  patch.middle_m = lr_vec3_along (patch.middle_m, patch.normal, OFF_M);
  g_array_append_val (cutter->patches, patch);
  return (int) cutter->patches->len - 1;
}

static guint
count_parts (double length_m,
             double side_m)
{
  return (guint) fmax (1.0, round (length_m / side_m));
}

static void
cut_wall (Cutter *cutter,
          int     wall)
{
  const LrRoom *room = cutter->study->setup->room;
  LrWallPatches cut = { 0, 0, NULL };
  LrVec2 from_m, along;
  double length_m;

  if (lr_room_wall (room, wall, &from_m, &along, &length_m))
    {
      cut.n = count_parts (length_m, cutter->side_m);
      cut.m = count_parts (room->height_m, cutter->side_m);
      cut.patch = g_new (int, cut.n * cut.m);
    }
  for (guint i = 0; i < cut.n * cut.m; i++)
    {
      double x0 = length_m * (i % cut.n) / cut.n, x1 = length_m * (i % cut.n + 1) / cut.n;
      double z0 = room->height_m * (i / cut.n) / cut.m, z1 = room->height_m * (i / cut.n + 1) / cut.m;
      LrVec2 a = lr_vec2_along (from_m, along, x0), b = lr_vec2_along (from_m, along, x1);
      /* walls go anticlockwise: seen from inside, along goes to the left */
      LrVec3 corner_m[4] = { lr_vec2_raise (b, z0), lr_vec2_raise (a, z0), lr_vec2_raise (a, z1), lr_vec2_raise (b, z1) };

      cut.patch[i] = add_patch (cutter, corner_m, 4, lr_wall_reflectance (cutter->study, wall, 0.5 * (x0 + x1), 0.5 * (z0 + z1)), TRUE);
    }
  g_array_append_val (cutter->walls, cut);
}

/* A grid over the room, cut by its walls: floor, and ceiling turned over */
static void
cut_levels (Cutter *cutter)
{
  const LrRoom *room = cutter->study->setup->room;
  LrVec2 low, high, size;
  guint n, m;

  lr_polygon_bounds (room->corners_m, room->n_corners, &low, &high);
  size = lr_vec2_sub (high, low);
  n = count_parts (size.x, cutter->side_m);
  m = count_parts (size.y, cutter->side_m);
  for (guint i = 0; i < n * m; i++)
    {
      LrFrameBox cell = { low.x + size.x * (i % n) / n, low.x + size.x * (i % n + 1) / n, low.y + size.y * (i / n) / m,
                          low.y + size.y * (i / n + 1) / m };
      LrVec2 flat_m[LR_SILHOUETTE_MAX];
      LrVec3 low_m[LR_PATCH_CORNERS], high_m[LR_PATCH_CORNERS];
      gsize k = lr_frame_clip (room->corners_m, room->n_corners, &cell, flat_m, LR_SILHOUETTE_MAX);

      if (k < 3 || k > LR_PATCH_CORNERS)
        continue;
      for (gsize j = 0; j < k; j++)
        {
          low_m[j] = lr_vec2_raise (flat_m[j], 0.0);
          high_m[j] = lr_vec2_raise (flat_m[k - 1 - j], room->height_m);
        }
      add_patch (cutter, low_m, k, room->floor.reflectance, TRUE);
      add_patch (cutter, high_m, k, room->ceiling.reflectance, TRUE);
    }
}

/* Sides, top and bottom of an upright solid */
static void
cut_prism (Cutter         *cutter,
           const LrVolume *shape,
           double          reflectance)
{
  const LrOutline *base = &shape->base;
  LrVec2 ring_m[LR_OUTLINE_MAX];
  LrVec3 low_m[LR_OUTLINE_MAX], high_m[LR_OUTLINE_MAX];
  gsize n = base->n > 0 ? base->n : LR_OUTLINE_MAX;

  for (gsize i = 0; i < n; i++)
    ring_m[i] = base->n > 0 ? base->corner_m[i]
                            : lr_vec2_add (base->centre_m, lr_vec2_polar (2.0 * LR_PI * (double) i / (double) n, base->radius_m));
  for (gsize i = 0; i < n; i++)
    {
      LrVec2 a = ring_m[i], b = ring_m[(i + 1) % n];
      guint parts = MIN (count_parts (lr_vec2_distance (a, b), 2.0 * cutter->side_m), 4);

      for (guint k = 0; k < parts; k++)
        {
          LrVec2 p = lr_vec2_along (a, lr_vec2_sub (b, a), (double) k / parts), q = lr_vec2_along (a, lr_vec2_sub (b, a), (double) (k + 1) / parts);
          LrVec3 side_m[4] = { lr_vec2_raise (p, shape->bottom_m), lr_vec2_raise (q, shape->bottom_m), lr_vec2_raise (q, shape->top_m),
                               lr_vec2_raise (p, shape->top_m) };

          add_patch (cutter, side_m, 4, reflectance, FALSE);
        }
      high_m[i] = lr_vec2_raise (a, shape->top_m);
      low_m[n - 1 - i] = lr_vec2_raise (a, shape->bottom_m);
    }
  add_patch (cutter, high_m, n, reflectance, FALSE);
  if (shape->bottom_m > 0.05)
    add_patch (cutter, low_m, n, reflectance, FALSE);
}

static void
cut_things (Cutter *cutter)
{
  for (guint i = 0; i < cutter->study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (cutter->study->placed, LrPlaced, i);
      LrVolume shapes[2];
      guint n = 0;

      if (placed->item->kind == LR_ITEM_FURNITURE)
        n = lr_furniture_slabs (placed, shapes);
      else if (placed->item->kind == LR_ITEM_PANEL)
        lr_panel_sheet (placed, &shapes[n++]);
      for (guint j = 0; j < n; j++)
        cut_prism (cutter, &shapes[j],
                   placed->item->kind == LR_ITEM_PANEL ? placed->item->panel.reflectance : placed->item->furniture.reflectance);
    }
}

static GArray *
collect_covers (const LrStudy *study)
{
  GArray *covers = g_array_new (FALSE, FALSE, sizeof (LrVolume));

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (study->placed, LrPlaced, i);
      LrVolume shapes[2];

      if (placed->item->kind == LR_ITEM_FURNITURE)
        g_array_append_vals (covers, shapes, lr_furniture_slabs (placed, shapes));
    }
  return covers;
}

static void
clear_wall_cb (gpointer data)
{
  g_free (((LrWallPatches *) data)->patch);
}

static void
cut_room (LrBounce      *bounce,
          const LrStudy *study)
{
  const LrRoom *room = study->setup->room;
  Cutter cutter = { .study = study, .covers = collect_covers (study) };
  double area_m2 = 2.0 * study->room_area_m2;

  cutter.patches = bounce->patches = g_array_new (FALSE, FALSE, sizeof (LrPatch));
  cutter.walls = bounce->walls = g_array_new (FALSE, FALSE, sizeof (LrWallPatches));
  g_array_set_clear_func (bounce->walls, clear_wall_cb);
  for (gsize i = 0; i < room->n_corners; i++)
    area_m2 += room->height_m * lr_vec2_distance (room->corners_m[i], room->corners_m[(i + 1) % room->n_corners]);
  cutter.side_m = fmax (LEAST_SIDE_M, sqrt (area_m2 / WANTED_PATCHES));
  for (gsize i = 0; i < room->n_corners; i++)
    cut_wall (&cutter, (int) i);
  cut_levels (&cutter);
  cut_things (&cutter);
  g_array_unref (cutter.covers);
}

static bool
is_clear_cb (LrVec3      from_m,
             LrVec3      to_m,
             const void *shade)
{
  return lr_light_shade_is_clear (shade, from_m, to_m, NULL);
}

/* Parallel light on a corner of a patch, in its mean: on the middles of small triangles, SUN_CUTS to a side */
static double
triangle_lx (const LrEmitter    *beam,
             const LrLightShade *shade,
             const LrPatch      *patch,
             LrVec3              a_m,
             LrVec3              b_m,
             LrVec3              c_m)
{
  LrVec3 along = lr_vec3_scale (lr_vec3_sub (b_m, a_m), 1.0 / SUN_CUTS), up = lr_vec3_scale (lr_vec3_sub (c_m, a_m), 1.0 / SUN_CUTS);
  double lux = 0.0;

  for (int j = 0; j < SUN_CUTS; j++)
    for (int i = 0; i < 2 * (SUN_CUTS - j) - 1; i++)
      {
        double third = i % 2 == 0 ? 1.0 / 3.0 : 2.0 / 3.0;
        LrVec3 at_m = lr_vec3_along (lr_vec3_along (a_m, along, i / 2 + third), up, j + third);

        lux += lr_light_source_lx (beam, shade, lr_vec3_along (at_m, patch->normal, OFF_M), patch->normal, NULL, NULL);
      }
  return lux / (SUN_CUTS * SUN_CUTS);
}

static double
sun_lx (const LrEmitter    *beam,
        const LrLightShade *shade,
        const LrPatch      *patch)
{
  double sum = 0.0, area_m2 = 0.0;

  if (!(lr_vec3_dot (beam->axis, patch->normal) < 0.0))
    return 0.0;

  for (gsize i = 1; i + 1 < patch->n; i++)
    {
      LrVec3 a_m = patch->corner_m[0], b_m = patch->corner_m[i], c_m = patch->corner_m[i + 1];
      double part_m2 = 0.5 * lr_vec3_length (lr_vec3_cross (lr_vec3_sub (b_m, a_m), lr_vec3_sub (c_m, a_m)));

      sum += part_m2 * triangle_lx (beam, shade, patch, a_m, b_m, c_m);
      area_m2 += part_m2;
    }
  return sum / area_m2;
}

/* Straight from each of the sources onto each patch */
static double *
light_patches (const GArray       *patches,
               const LrLightShade *shade,
               const GArray       *sources)
{
  double *source_lx = g_new0 (double, patches->len * sources->len + 1);

  for (guint i = 0; i < patches->len; i++)
    for (guint j = 0; j < sources->len; j++)
      {
        const LrPatch *patch = &g_array_index (patches, LrPatch, i);
        const LrEmitter *emitter = &g_array_index (sources, LrLightSource, j).emitter;

        source_lx[i * sources->len + j] = emitter->shape == LR_EMITTER_BEAM
                                          ? sun_lx (emitter, shade, patch)
                                          : lr_light_source_lx (emitter, shade, patch->middle_m, patch->normal, NULL, NULL);
      }
  return source_lx;
}

/* All of them together */
static void
add_up (LrBounce *bounce)
{
  bounce->direct_lx = g_new0 (double, bounce->patches->len);
  for (guint i = 0; i < bounce->patches->len; i++)
    {
      for (guint j = 0; j < bounce->n_sources; j++)
        bounce->direct_lx[i] += bounce->source_lx[i * bounce->n_sources + j];
      bounce->flux_lm += bounce->direct_lx[i] * g_array_index (bounce->patches, LrPatch, i).area_m2;
    }
}

static gboolean
solve (LrBounce     *bounce,
       const void   *shade,
       GCancellable *cancellable)
{
  const LrPatch *patch = (const LrPatch *) (gpointer) bounce->patches->data;
  gsize n = bounce->patches->len;
  float *exchange = bounce->exchange = g_new0 (float, n * n);
  g_autofree double *scale = g_new (double, n);

  for (gsize i = 0; i < n; i++)
    {
      if (g_cancellable_is_cancelled (cancellable))
        return FALSE;
      lr_exchange_rows (patch, n, i, n, is_clear_cb, shade, exchange);
    }
  lr_exchange_close (patch, n, exchange, scale);
  return lr_radiosity_solve (patch, n, exchange, bounce->direct_lx, bounce->lux) > 0;
}

/**
 * lr_bounce_solve:
 * @study: a study
 * @shade: what stands in the way in it
 * @sources: (element-type LrLightSource): what gives light
 * @cancellable: (nullable): looked at between patches
 *
 * Source: radiosity.h.
 *
 * Returns: (transfer full) (nullable): the room's patches and what falls on them; %NULL when it was cancelled, or without a room
 */
LrBounce *
lr_bounce_solve (const LrStudy      *study,
                 const LrLightShade *shade,
                 const GArray       *sources,
                 GCancellable       *cancellable)
{
  LrBounce *bounce;

  if (study->setup->room->n_corners < 3)
    return NULL;

  bounce = g_new0 (LrBounce, 1);
  cut_room (bounce, study);
  bounce->lux = g_new0 (double, bounce->patches->len);
  bounce->n_sources = sources->len;
  bounce->source_lx = light_patches (bounce->patches, shade, sources);
  add_up (bounce);
  if (!solve (bounce, shade, cancellable))
    g_clear_pointer (&bounce, lr_bounce_free);
  return bounce;
}

/**
 * lr_bounce_solve_alone:
 * @bounce: a solved room
 * @shade: what stands in the way in it
 * @spares: (element-type LrLightSource): what does not shine and might
 * @cancellable: (nullable): looked at before
 *
 * What each source of the room, and each of @spares, would give to each patch alone.
 *
 * Source: radiosity.h.
 *
 * Returns: %FALSE when it was cancelled
 */
gboolean
lr_bounce_solve_alone (LrBounce           *bounce,
                       const LrLightShade *shade,
                       const GArray       *spares,
                       GCancellable       *cancellable)
{
  gsize n = bounce->patches->len, n_alone = bounce->n_sources + spares->len;
  g_autofree double *spare_lx = light_patches (bounce->patches, shade, spares);
  g_autofree double *direct_lx = g_new (double, n * n_alone + 1), *sum = g_new (double, n_alone + 1);

  if (g_cancellable_is_cancelled (cancellable))
    return FALSE;

  for (gsize i = 0; i < n; i++)
    for (gsize j = 0; j < n_alone; j++)
      direct_lx[i * n_alone + j] = j < bounce->n_sources ? bounce->source_lx[i * bounce->n_sources + j]
                                                         : spare_lx[i * spares->len + j - bounce->n_sources];
  bounce->n_alone = (guint) n_alone;
  bounce->alone_lx = g_new (double, n * n_alone + 1);
  return lr_radiosity_solve_each ((const LrPatch *) (gpointer) bounce->patches->data, n, bounce->exchange, n_alone, direct_lx, sum,
                                  bounce->alone_lx) > 0;
}

/**
 * lr_bounce_free:
 * @bounce: (transfer full) (nullable): a solved room
 */
void
lr_bounce_free (LrBounce *bounce)
{
  if (bounce == NULL)
    return;

  g_array_unref (bounce->patches);
  g_array_unref (bounce->walls);
  g_free (bounce->direct_lx);
  g_free (bounce->lux);
  g_free (bounce->exchange);
  g_free (bounce->source_lx);
  g_free (bounce->alone_lx);
  g_free (bounce);
}

typedef struct
{
  const LrLightShade *shade;
  const LrPlaced     *of;
} View;

static bool
is_clear_of_cb (LrVec3      from_m,
                LrVec3      to_m,
                const void *data)
{
  const View *view = data;

  return lr_light_shade_is_clear (view->shade, from_m, to_m, view->of);
}

/**
 * lr_bounce_lx:
 * @bounce: a solved room
 * @shade: what stands in the way
 * @point_m: a small face [m]
 * @normal: of it, of length 1
 * @of: (nullable): the thing that the face belongs to
 *
 * Returns: what the room gives it [lx], without what comes straight from the sources
 */
double
lr_bounce_lx (const LrBounce     *bounce,
              const LrLightShade *shade,
              LrVec3              point_m,
              LrVec3              normal,
              const LrPlaced     *of)
{
  View view = { shade, of };

  return lr_patches_lx ((const LrPatch *) (gpointer) bounce->patches->data, bounce->patches->len, bounce->lux, point_m, normal, is_clear_of_cb,
                        &view);
}

/**
 * lr_bounce_each_lx:
 * @bounce: a room that was solved for each source alone
 * @shade: what stands in the way
 * @point_m: a small face [m]
 * @normal: of it, of length 1
 * @of: (nullable): the thing that the face belongs to
 * @each_lx: (out caller-allocates) (array): what the room gives it of each source, and of each spare one, alone [lx]
 *
 * Returns: what the room gives it of all that shine [lx], as lr_bounce_lx()
 */
double
lr_bounce_each_lx (const LrBounce     *bounce,
                   const LrLightShade *shade,
                   LrVec3              point_m,
                   LrVec3              normal,
                   const LrPlaced     *of,
                   double             *each_lx)
{
  View view = { shade, of };
  gsize n = bounce->patches->len;
  g_autofree double *weight = g_new (double, n + 1);
  double all_lx = 0.0;

  lr_patches_weigh ((const LrPatch *) (gpointer) bounce->patches->data, n, point_m, normal, is_clear_of_cb, &view, weight);
  for (guint j = 0; j < bounce->n_alone; j++)
    each_lx[j] = 0.0;
  for (gsize i = 0; i < n; i++)
    {
      all_lx += weight[i] * bounce->lux[i];
      for (guint j = 0; weight[i] > 0.0 && j < bounce->n_alone; j++)
        each_lx[j] += weight[i] * bounce->alone_lx[i * bounce->n_alone + j];
    }
  return all_lx;
}
