/* power.c - leads by length, and what they draw from the sockets
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

/**
 * lr_study_read_leads:
 * @study: a study
 *
 * Fills the length of each lead along its path.
 */
void
lr_study_read_leads (LrStudy *study)
{
  study->leads = g_array_new (FALSE, FALSE, sizeof (LrLeadReading));
  for (guint i = 0; i < study->placed->len; i++)
    {
      const LrItem *item = lr_study_placed_at (study, i)->item;
      LrLeadReading lead = { item, 0.0 };

      if (item->kind != LR_ITEM_LEAD)
        continue;

      for (gsize j = 1; j < item->n_path; j++)
        lead.length_m += lr_vec2_distance (item->path_m[j - 1], item->path_m[j]);
      g_array_append_val (study->leads, lead);
    }
}
