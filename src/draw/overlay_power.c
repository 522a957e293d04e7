/* overlay_power.c - leads by length and by circuit
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The leads themselves are symbols and turn thick while Power is shown, each dashed as its circuit is; here is what is written along them,
 * and the key to the dashes.
 */

#include "config.h"

#include "floor_layers.h"

#include "power_readings.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define OFF_PX 9.0
#define LETTER_PX 6.0 /* about so wide is a letter of a note */
#define CLEAR_PX 8.0  /* nearer to another lead, a label reads as that one's */
#define HATCH_HALF_M 0.15
#define HATCH_STEP_M 0.06
#define KEY_LEFT_PX 27.0
#define KEY_FOOT_PX 16.0  /* under its middle: the dimension line is over it */
#define KEY_ROW_PX 18.0
#define KEY_DASH_PX 42.0
#define KEY_GAP_PX 8.0

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
  double needed_m = lr_study_needed_m (floor->study, lr_study_find_placed (floor->study, lead->item->lead.socket), lead->item->path_m,
                                       lead->item->n_path);
  g_autofree char *laid = lr_length_format_short (needed_m, floor->view->units);
  g_autofree char *bought = lr_length_format (lead->item->lead.length_m, floor->view->units);

  if (floor->view->units == LR_UNITS_METRIC)
    {
      g_free (laid);
      laid = g_strdup_printf ("%.1f", needed_m);
      g_free (bought);
      bought = g_strdup_printf ("%g\u00a0m", lead->item->lead.length_m);
    }

  /* a lead's load, how long it must be, and how long it is as bought: "L1  6.6 of 10 m" */
  return g_strdup_printf (_("%s  %s of %s"), tag, laid, bought);
}

/* Whether a label in its middle at @at reads as another lead's */
static gboolean
is_on_other (const LrFloor *floor,
             const LrItem  *own,
             LrVec2         at,
             LrVec2         along,
             double         half_px)
{
  for (guint i = 0; i < floor->study->leads->len; i++)
    {
      const LrItem *other = g_array_index (floor->study->leads, LrLeadReading, i).item;

      for (gsize k = 0; other != own && k + 1 < other->n_path; k++)
        for (int share = -2; share <= 2; share++)
          if (lr_segment_distance_m (lr_floor_device (floor, other->path_m[k]), lr_floor_device (floor, other->path_m[k + 1]),
                                     lr_vec2_along (at, along, 0.5 * share * half_px), NULL) < CLEAR_PX * floor->px)
            return TRUE;
    }

  return FALSE;
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
  LrVec2 places[G_N_ELEMENTS (offs) * G_N_ELEMENTS (shares)], on_others[G_N_ELEMENTS (places)];
  double half_px = 0.5 * LETTER_PX * floor->px * (double) g_utf8_strlen (text, -1);
  guint n_free = 0, n_on = 0;
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

      LrVec2 at = lr_vec2_along (on, up, offs[i / G_N_ELEMENTS (shares)] * floor->px);

      if (is_on_other (floor, item, at, lr_vec2 (cos (angle), sin (angle)), half_px))
        on_others[n_on++] = at;
      else
        places[n_free++] = at;
    }
  /* the others only where there is no free one */
  memcpy (places + n_free, on_others, n_on * sizeof *places);
  lr_labels_add_at (floor->labels, &label, places, G_N_ELEMENTS (places));
}

/* Where a lead crosses a way out: a hatched band of .30 m along it */
static void
hatch_crossing (const LrFloor *floor,
                const LrItem  *lead)
{
  LrVec2 at_m;
  const LrPlaced *door = lr_study_lead_across (floor->study, lead, &at_m);
  LrOutline zone;

  if (door == NULL || door->item->kind != LR_ITEM_DOOR || !door->item->door.is_exit || !lr_study_door_floor (floor->study, door, &zone))
    return;

  for (gsize i = 0; i + 1 < lead->n_path; i++)
    {
      LrVec2 from_m = lead->path_m[i], step = lr_vec2_sub (lead->path_m[i + 1], from_m), along, across;
      double length_m = lr_vec2_length (step), enter_m, leave_m;

      if (!(length_m > 0.0) || !lr_outline_ray (&zone, from_m, step, &enter_m, &leave_m))
        continue;
      along = lr_vec2_scale (step, 1.0 / length_m);
      across = lr_vec2_scale (lr_vec2_rotate (along, 0.25 * LR_PI), HATCH_HALF_M * G_SQRT2);
      for (double at = enter_m; at < MIN (leave_m, length_m); at += HATCH_STEP_M)
        {
          LrVec2 middle_m = lr_vec2_along (from_m, along, at);

          lr_floor_move_to (floor, lr_vec2_sub (middle_m, across));
          lr_floor_line_to (floor, lr_vec2_add (middle_m, across));
        }
    }
  lr_theme_set_color (floor->cr, floor->theme->fix_line, 1.0);
  lr_theme_set_line (floor->cr, floor->theme, LR_LINE_HAIR, LR_DASH_SOLID);
  cairo_stroke (floor->cr);
}

/* Circuits that a lead hangs on, in the set-up's order; (transfer container) */
static GArray *
circuits_in_use (const LrFloor *floor)
{
  GArray *circuits = g_array_new (FALSE, FALSE, sizeof (LrCircuitReading));

  for (guint i = 0; i < floor->setup->items->len; i++)
    {
      LrCircuitReading reading;

      if (lr_study_circuit (floor->study, g_ptr_array_index (floor->setup->items, i), &reading) && reading.n_leads > 0)
        g_array_append_val (circuits, reading);
    }

  return circuits;
}

/* "C1: 280 W, 8 % of 16 A" */
static char *
describe_circuit (const LrCircuitReading *reading)
{
  const LrItem *circuit = reading->circuit;

  /* Translators: a circuit, watts at full, the share of its amperes that they come to, its amperes */
  return g_strdup_printf (_("%s: %.0f\u00a0W, %.0f\u00a0%% of %g\u00a0A"), *circuit->tag != '\0' ? circuit->tag : circuit->name, reading->full_w,
                          100.0 * reading->load_share, reading->rated_a);
}

/* Returns where the next one begins */
static double
draw_key_entry (const LrFloor          *floor,
                const LrCircuitReading *reading,
                double                  from,
                double                  y)
{
  g_autofree char *text = describe_circuit (reading);
  const LrTextStyle style = { .size = floor->theme->type_size[LR_TYPE_NOTE] };
  double to = from + KEY_DASH_PX * floor->px, gap = KEY_GAP_PX * floor->px, width;
  cairo_t *cr = floor->cr;

  /* on its own ground, for zoomed in it lies over the room */
  lr_text_measure (cr, floor->theme, &style, text, &width, NULL);
  cairo_rectangle (cr, from - gap, y - 0.5 * KEY_ROW_PX * floor->px, to - from + width + 3.0 * gap, KEY_ROW_PX * floor->px);
  lr_theme_set_color (cr, floor->theme->ground, 1.0);
  cairo_fill (cr);
  cairo_move_to (cr, from, y);
  cairo_line_to (cr, to, y);
  lr_theme_set_color (cr, floor->theme->family_line[LR_FAMILY_POWER], 1.0);
  lr_theme_set_line (cr, floor->theme, LR_LINE_THICK, lr_symbol_lead_dash (floor->setup, reading->circuit->id));
  cairo_stroke (cr);
  lr_theme_set_color (cr, floor->theme->ink2, 1.0);
  lr_text_draw (cr, floor->theme, &style, to + gap, y + 0.36 * style.size, text);
  return to + width + 4.0 * gap;
}

/* Along the foot of the sheet; one circuit alone needs none */
static void
draw_key (const LrFloor *floor)
{
  g_autoptr (GArray) circuits = NULL;
  double from = KEY_LEFT_PX * floor->px, y = floor->view->height - KEY_FOOT_PX * floor->px, at = from;

  if (!floor->has_base || floor->view->is_page)
    return;

  circuits = circuits_in_use (floor);
  if (circuits->len < 2)
    return;

  cairo_save (floor->cr);
  for (guint i = 0; i < circuits->len; i++)
    at = draw_key_entry (floor, &g_array_index (circuits, LrCircuitReading, i), at, y);
  lr_labels_block_box (floor->labels, from, y - 0.5 * KEY_ROW_PX * floor->px, at - from, KEY_ROW_PX * floor->px);
  cairo_restore (floor->cr);
}

/**
 * lr_overlay_power:
 * @floor: a drawing
 *
 * Along the longest run of each lead: what it feeds, how long it must be and is. A crossing of a way out is hatched. Where there are several
 * circuits, a key to their dashes, with what hangs on each.
 */
void
lr_overlay_power (const LrFloor *floor)
{
  if (!(floor->view->shown & LR_SHOW_POWER))
    return;

  draw_key (floor);
  for (guint i = 0; i < floor->study->leads->len; i++)
    {
      const LrLeadReading *lead = &g_array_index (floor->study->leads, LrLeadReading, i);

      if (lead->item->n_path >= 2 && lr_floor_has_id (floor, lead->item->id))
        {
          hatch_crossing (floor, lead->item);
          label_lead (floor, lead);
        }
    }
}
