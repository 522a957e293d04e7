/* wall_surface.c - what a wall is made of from place to place
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "wall_surface.h"

#define GLASS_REFLECTANCE 0.1
#define BLIND_REFLECTANCE 0.5 /* common practice, no source */

/* Half a blind hangs over the upper half */
static double
window_reflectance (const LrWindow *window,
                    double          z_m)
{
  gboolean has_blind = window->blind == LR_BLIND_DOWN || (window->blind == LR_BLIND_HALF && z_m > 0.5 * (window->sill_m + window->head_m));

  return has_blind ? BLIND_REFLECTANCE : GLASS_REFLECTANCE;
}

/**
 * lr_wall_reflectance:
 * @study: a study
 * @wall: of its room
 * @along_m: from the wall's first corner [m]
 * @z_m: above the floor [m]
 *
 * Returns: the share of light that the place gives back
 */
double
lr_wall_reflectance (const LrStudy *study,
                     int            wall,
                     double         along_m,
                     double         z_m)
{
  const GPtrArray *items = study->setup->items;

  for (guint i = 0; i < items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (items, i);

      if (item->kind == LR_ITEM_WINDOW && item->wall == wall && along_m > item->along_m && along_m < item->along_m + item->window.width_m
          && z_m > item->window.sill_m && z_m < item->window.head_m)
        return window_reflectance (&item->window, z_m);
    }
  return study->setup->room->walls.reflectance;
}
