/* overlay_power.c - leads by length
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The leads themselves are symbols and turn thick while Power is shown; here is what is written along them.
 */

#include "config.h"

#include "floor_layers.h"

#include <glib/gi18n-lib.h>

#define OFF_PX 9.0

/* Index of the longest straight run */
static gsize
longest_run (const LrItem *item)
{
  gsize best = 0;

  for (gsize i = 1; i + 1 < item->n_path; i++)
    if (lr_vec2_distance (item->path_m[i], item->path_m[i + 1])
        > lr_vec2_distance (item->path_m[best], item->path_m[best + 1]))
      best = i;

  return best;
}

static char *
describe (const LrFloor       *floor,
          const LrLeadReading *lead)
{
  const LrPlaced *load = lr_study_find_placed (floor->study, lead->item->lead.feeds);
  const char *tag = load != NULL && *load->item->tag != '\0' ? load->item->tag : lead->item->tag;
  g_autofree char *laid = lr_length_format_short (lead->length_m, floor->view->units);
  g_autofree char *bought = lr_length_format (lead->item->lead.length_m, floor->view->units);

  if (floor->view->units == LR_UNITS_METRIC)
    {
      g_free (laid);
      laid = g_strdup_printf ("%.1f", lead->length_m);
      g_free (bought);
      bought = g_strdup_printf ("%g\u00a0m", lead->item->lead.length_m);
    }

  /* a lead's load, what it is long along the floor, and what it is long as bought: "L1  6.6 of 10 m" */
  return g_strdup_printf (_("%s  %s of %s"), tag, laid, bought);
}

static void
label_lead (const LrFloor       *floor,
            const LrLeadReading *lead)
{
  static const double shares[] = { 0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9 };
  static const double offs[] = { OFF_PX, -OFF_PX, OFF_PX + 12.0, -OFF_PX - 12.0, OFF_PX + 24.0 };
  const LrItem *item = lead->item;
  gsize run = longest_run (item);
  LrVec2 from = lr_floor_device (floor, item->path_m[run]), to = lr_floor_device (floor, item->path_m[run + 1]);
  g_autofree char *text = describe (floor, lead);
  double angle = lr_floor_reading_angle_rad (from, to);
  LrVec2 up = lr_vec2 (sin (angle), -cos (angle));
  LrVec2 places[G_N_ELEMENTS (offs) * G_N_ELEMENTS (shares)];
  LrLabel label = {
    .rank = LR_LABEL_NOTE,
    .text = text,
    .style = { .size = floor->theme->type_size[LR_TYPE_NOTE] },
    .color = floor->theme->family_line[LR_FAMILY_POWER],
    .halo = floor->theme->room,
    .has_halo = TRUE,
    .angle_rad = angle,
    .stands_on_lines = TRUE,
  };

  for (gsize i = 0; i < G_N_ELEMENTS (places); i++)
    {
      LrVec2 on = lr_vec2_along (from, lr_vec2_sub (to, from), shares[i % G_N_ELEMENTS (shares)]);

      places[i] = lr_vec2_along (on, up, offs[i / G_N_ELEMENTS (shares)] * floor->px);
    }
  lr_labels_add_at (floor->labels, &label, places, G_N_ELEMENTS (places));
}

/**
 * lr_overlay_power:
 * @floor: a drawing
 *
 * Along the longest run of each lead: what it feeds, how long it lies and how long it is.
 */
void
lr_overlay_power (const LrFloor *floor)
{
  if (!(floor->view->shown & LR_SHOW_POWER))
    return;

  for (guint i = 0; i < floor->study->leads->len; i++)
    {
      const LrLeadReading *lead = &g_array_index (floor->study->leads, LrLeadReading, i);

      if (lead->item->n_path >= 2 && lr_floor_has_id (floor, lead->item->id))
        label_lead (floor, lead);
    }
}
