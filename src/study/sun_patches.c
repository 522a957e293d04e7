/* sun_patches.c - what the sun falls on at an instant
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "sun_patches.h"

#include "intruders.h"

#include <stdlib.h>
#include <string.h>

#define LEAST_RISE 0.002 /* of the sun: lower it lies along the floor */

/* Corners of an outline; of a disc, some on its rim. Returns how many */
static gsize
ring_of (const LrOutline *outline,
         LrVec2           ring_m[LR_OUTLINE_MAX])
{
  gsize n = outline->n > 0 ? outline->n : LR_OUTLINE_MAX;

  for (gsize i = 0; i < n; i++)
    ring_m[i] = outline->n > 0 ? outline->corner_m[i]
                               : lr_vec2_add (outline->centre_m, lr_vec2_polar (2.0 * LR_PI * (double) i / (double) n, outline->radius_m));
  return n;
}

static void
add_flat (GArray       *patches,
          LrSunPatch   *patch,
          const LrVec2 *corner_m,
          double        level_m)
{
  for (gsize i = 0; i < patch->n; i++)
    patch->corner_m[i] = lr_vec2_raise (corner_m[i], level_m);
  if (patch->n >= 3)
    g_array_append_val (patches, *patch);
}

static void
add_top (GArray              *patches,
         const LrPlaced      *furniture,
         const LrPlaced      *window,
         const LrBeamStrip   *strip,
         const LrBeamHeights *heights)
{
  LrVolume shapes[2];
  guint n = lr_furniture_slabs (furniture, shapes);

  for (guint k = 0; k < n; k++)
    {
      LrSunPatch patch = { LR_SUN_ON_TOP, window, -1, furniture, 0, { { 0.0, 0.0, 0.0 } } };
      LrVec2 corner_m[LR_BEAM_CORNERS], ring_m[LR_OUTLINE_MAX];

      patch.n = lr_beam_on_level (strip, heights, shapes[k].top_m, corner_m);
      if (patch.n > 0)
        patch.n = lr_convex_common (corner_m, patch.n, ring_m, ring_of (&shapes[k].base, ring_m));
      add_flat (patches, &patch, corner_m, shapes[k].top_m);
    }
}

static void
add_tops (GArray              *patches,
          const LrStudy       *study,
          const LrPlaced      *window,
          const LrBeamStrip   *strip,
          const LrBeamHeights *heights)
{
  for (guint i = 0; i < study->placed->len; i++)
    if (g_array_index (study->placed, LrPlaced, i).item->kind == LR_ITEM_FURNITURE)
      add_top (patches, &g_array_index (study->placed, LrPlaced, i), window, strip, heights);
}

/**
 * lr_sun_patches_add:
 * @patches: (element-type LrSunPatch): to which they are added
 * @study: a study
 * @window: of it
 * @opening: what is open of it
 * @way: to the sun, of length 1
 * @grounds: a set of 1 << LrSunGround
 * @only: (nullable): furniture whose top is wanted; %NULL: all
 *
 * Nothing is added if the sun is not before the window.
 */
void
lr_sun_patches_add (GArray             *patches,
                    const LrStudy      *study,
                    const LrPlaced     *window,
                    const LrSunOpening *opening,
                    LrVec3              way,
                    guint               grounds,
                    const LrPlaced     *only)
{
  const LrRoom *room = study->setup->room;
  LrVec2 flat = lr_vec3_flat (way);
  double length = lr_vec2_length (flat);
  LrBeamStrip strips[LR_BEAM_STRIPS];
  LrBeamHeights heights;
  gsize n;

  if (!(way.z > LEAST_RISE) || !(length > 1e-6) || !(lr_vec2_dot (flat, opening->inward) < 0.0))
    return;

  heights = (LrBeamHeights) { opening->sill_m, fmin (opening->head_m, room->height_m), way.z / length };
  n = lr_beam_strips (room->corners_m, room->n_corners, opening->at_m, lr_vec2_along (opening->at_m, opening->along, opening->width_m),
                      lr_vec2_scale (flat, -1.0 / length), strips);
  for (gsize i = 0; i < n; i++)
    {
      LrSunPatch patch = { LR_SUN_ON_FLOOR, window, -1, NULL, 0, { { 0.0, 0.0, 0.0 } } };
      LrVec2 corner_m[LR_BEAM_CORNERS];

      if (grounds & (1u << LR_SUN_ON_FLOOR))
        {
          patch.n = lr_beam_on_level (&strips[i], &heights, 0.0, corner_m);
          add_flat (patches, &patch, corner_m, 0.0);
        }
      if (grounds & (1u << LR_SUN_ON_WALL))
        {
          patch.ground = LR_SUN_ON_WALL;
          patch.wall = (int) strips[i].edge;
          patch.n = lr_beam_on_wall (&strips[i], &heights, patch.corner_m);
          if (patch.n > 0)
            g_array_append_val (patches, patch);
        }
      if (grounds & (1u << LR_SUN_ON_TOP) && only != NULL)
        add_top (patches, only, window, &strips[i], &heights);
      else if (grounds & (1u << LR_SUN_ON_TOP))
        add_tops (patches, study, window, &strips[i], &heights);
    }
}

/**
 * lr_sun_patches:
 * @study: a study
 * @way: to the sun, of length 1
 *
 * Returns: (transfer full) (element-type LrSunPatch): what it falls on through all windows
 */
GArray *
lr_sun_patches (const LrStudy *study,
                LrVec3         way)
{
  GArray *patches = g_array_new (FALSE, FALSE, sizeof (LrSunPatch));

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrPlaced *window = &g_array_index (study->placed, LrPlaced, i);
      LrSunOpening opening;

      if (lr_sun_opening (study, window, &opening))
        lr_sun_patches_add (patches, study, window, &opening, way, 1u << LR_SUN_ON_FLOOR | 1u << LR_SUN_ON_WALL | 1u << LR_SUN_ON_TOP, NULL);
    }
  return patches;
}

/**
 * lr_sun_stretch:
 * @study: a study
 * @patch: on a wall of its room
 *
 * Returns: the box on the wall that holds the patch
 */
LrSunStretch
lr_sun_stretch (const LrStudy    *study,
                const LrSunPatch *patch)
{
  LrSunStretch stretch = { HUGE_VAL, -HUGE_VAL, HUGE_VAL, -HUGE_VAL };
  LrVec2 from_m, along;
  double length_m;

  g_return_val_if_fail (lr_room_wall (study->setup->room, patch->wall, &from_m, &along, &length_m), stretch);

  for (gsize i = 0; i < patch->n; i++)
    {
      double along_m = lr_vec2_dot (lr_vec2_sub (lr_vec3_flat (patch->corner_m[i]), from_m), along);

      stretch.from_m = fmin (stretch.from_m, along_m);
      stretch.to_m = fmax (stretch.to_m, along_m);
      stretch.low_m = fmin (stretch.low_m, patch->corner_m[i].z);
      stretch.high_m = fmax (stretch.high_m, patch->corner_m[i].z);
    }
  return stretch;
}

static int
by_x_cb (gconstpointer a,
         gconstpointer b)
{
  const LrVec2 *p = a, *q = b;

  if (p->x != q->x)
    return p->x < q->x ? -1 : 1;
  return p->y < q->y ? -1 : p->y > q->y;
}

/**
 * lr_sun_shadow:
 * @shape: an upright solid
 * @way: to the sun, of length 1
 * @corner_m: (out): of what it shades on the floor, anticlockwise [m]
 *
 * Source: the hull of base and top, each moved by its height over the rise of the sun; hull by Andrew (1979), from memory.
 *
 * Returns: the number of corners; 0: it is no upright solid, or the sun is too low
 */
gsize
lr_sun_shadow (const LrVolume *shape,
               LrVec3          way,
               LrVec2          corner_m[2 * LR_OUTLINE_MAX])
{
  LrVec2 ring_m[LR_OUTLINE_MAX], point_m[2 * LR_OUTLINE_MAX], hull_m[4 * LR_OUTLINE_MAX + 2];
  gsize n, k = 0;

  if (shape->type != LR_VOLUME_PRISM || !(way.z > LEAST_RISE))
    return 0;

  n = ring_of (&shape->base, ring_m);
  for (gsize i = 0; i < n; i++)
    {
      point_m[i] = lr_vec2_along (ring_m[i], lr_vec3_flat (way), -shape->bottom_m / way.z);
      point_m[n + i] = lr_vec2_along (ring_m[i], lr_vec3_flat (way), -shape->top_m / way.z);
    }
  n *= 2;
  qsort (point_m, n, sizeof *point_m, by_x_cb);
  for (gsize pass = 0, least = 2; pass < 2; pass++, least = k + 1)
    for (gsize i = pass; i < n; i++)
      {
        LrVec2 next_m = point_m[pass == 0 ? i : n - 1 - i];

        while (k >= least && lr_vec2_cross (lr_vec2_sub (hull_m[k - 1], hull_m[k - 2]), lr_vec2_sub (next_m, hull_m[k - 2])) <= 0.0)
          k--;
        hull_m[k++] = next_m;
      }
  k--; /* the first again */
  if (k < 3)
    return 0;

  memcpy (corner_m, hull_m, k * sizeof *corner_m);
  return k;
}
