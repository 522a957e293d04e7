/* power.c - what the leads draw from the sockets
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The load is the sum of what stands on the plates, at full: no dimming, no power factor, nothing of what is not drawn.
 */

#include "study_parts.h"

static double
full_load_w (const LrItem *item)
{
  if (item->kind == LR_ITEM_LIGHT)
    return item->light.power_w;

  return item->kind == LR_ITEM_CAMERA ? item->camera.draw_w : 0.0;
}

/**
 * lr_study_socket_load_w:
 * @study: a study
 * @socket: a socket of its set-up
 * @load_w: (out): what its leads feed, at full [W]
 *
 * Returns: %FALSE, with @load_w untouched, if no lead is in it
 */
gboolean
lr_study_socket_load_w (const LrStudy *study,
                        const LrItem  *socket,
                        double        *load_w)
{
  gboolean has_lead = FALSE;
  double sum_w = 0.0;

  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrItem *lead = g_array_index (study->placed, LrPlaced, i).item;
      const LrPlaced *fed;

      if (lead->kind != LR_ITEM_LEAD || g_strcmp0 (lead->lead.socket, socket->id) != 0)
        continue;

      has_lead = TRUE;
      fed = lr_study_find_placed (study, lead->lead.feeds);
      if (fed != NULL)
        sum_w += full_load_w (fed->item);
    }

  if (has_lead)
    *load_w = sum_w;
  return has_lead;
}
