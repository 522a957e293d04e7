/* overlay_sun.c - where the sun comes in
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What falls on the floor at the chosen time is filled, and hatched along the ray, so that it differs from light by more than colour, but
 * for the shadows of furniture and panels; at the first and at the last minute of the shoot it is an outline. What stands before the
 * windows outside is not known.
 */

#include "config.h"

#include "floor_layers.h"
#include "intruders.h"
#include "sun_patches.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define HATCH_M 0.11
#define ARROW_PX 24.0
#define ARROW_FROM_M 0.17 /* outside the wall's inner face */
#define BESIDE_M 0.22     /* past the window's end */
#define LABEL_OFF_PX 9.0

static void
get_hours (const LrStudy *study,
           int           *roll,
           int           *wrap)
{
  int in, out;

  lr_job_minutes (study->plan->job, &in, roll, wrap, &out);
}

static int
chosen_minute (const LrFloor *floor)
{
  int middle = lr_study_light_minute (floor->study);

  if (floor->view->sun_minute > 0)
    return floor->view->sun_minute;

  return middle >= 0 ? middle : LR_DAY_MIN / 2;
}

static char *
format_minute (int minute)
{
  return g_strdup_printf ("%d:%02d", minute / 60 % 24, minute % 60);
}

static gboolean
is_shown (const LrFloor *floor)
{
  return (floor->view->shown & LR_SHOW_SUN) != 0 && !floor->view->is_page && floor->room->n_corners >= 3;
}

/**
 * lr_overlay_sun_trace:
 * @floor: a drawing
 * @patch: of sun
 *
 * Makes its outline the current path.
 */
void
lr_overlay_sun_trace (const LrFloor    *floor,
                      const LrSunPatch *patch)
{
  for (gsize i = 0; i < patch->n; i++)
    if (i == 0)
      lr_floor_move_to (floor, lr_vec3_flat (patch->corner_m[i]));
    else
      lr_floor_line_to (floor, lr_vec3_flat (patch->corner_m[i]));
  cairo_close_path (floor->cr);
}

/* Takes the shadow of what stands there out of what is painted */
static void
clip_shadow (const LrFloor  *floor,
             const LrVolume *shape,
             LrVec3          way)
{
  LrVec2 corner_m[2 * LR_OUTLINE_MAX];
  gsize n = lr_sun_shadow (shape, way, corner_m);
  double x0, y0, x1, y1;

  if (n == 0)
    return;

  cairo_clip_extents (floor->cr, &x0, &y0, &x1, &y1);
  cairo_rectangle (floor->cr, x0 - 1.0, y0 - 1.0, x1 - x0 + 2.0, y1 - y0 + 2.0);
  for (gsize i = 0; i < n; i++)
    if (i == 0)
      lr_floor_move_to (floor, corner_m[i]);
    else
      lr_floor_line_to (floor, corner_m[i]);
  cairo_close_path (floor->cr);
  cairo_set_fill_rule (floor->cr, CAIRO_FILL_RULE_EVEN_ODD);
  cairo_clip (floor->cr);
  cairo_set_fill_rule (floor->cr, CAIRO_FILL_RULE_WINDING);
}

static void
clip_shadows (const LrFloor *floor,
              LrVec3         way)
{
  for (guint i = 0; i < floor->study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (floor->study->placed, LrPlaced, i);
      LrVolume shapes[2];
      guint n = 0;

      if (floor->is_drawn[i] && placed->item->kind == LR_ITEM_FURNITURE)
        n = lr_furniture_slabs (placed, shapes);
      else if (floor->is_drawn[i] && placed->item->kind == LR_ITEM_PANEL)
        lr_panel_sheet (placed, &shapes[n++]);
      for (guint k = 0; k < n; k++)
        clip_shadow (floor, &shapes[k], way);
    }
}

/* Lines along the ray, evenly across it, where the clip lets them */
static void
hatch (const LrFloor    *floor,
       const LrSunPatch *patch,
       LrVec3            way)
{
  LrVec2 along = lr_vec2_scale (lr_vec3_flat (way), 1.0 / lr_vec2_length (lr_vec3_flat (way))), across = lr_vec2_left (along);
  double low = HUGE_VAL, high = -HUGE_VAL, near_m = HUGE_VAL, far_m = -HUGE_VAL;

  for (gsize i = 0; i < patch->n; i++)
    {
      double aside = lr_vec2_dot (lr_vec3_flat (patch->corner_m[i]), across), ahead = lr_vec2_dot (lr_vec3_flat (patch->corner_m[i]), along);

      low = fmin (low, aside);
      high = fmax (high, aside);
      near_m = fmin (near_m, ahead);
      far_m = fmax (far_m, ahead);
    }
  for (double aside = HATCH_M * ceil (low / HATCH_M); aside < high; aside += HATCH_M)
    {
      LrVec2 at_m = lr_vec2_scale (across, aside);

      lr_floor_move_to (floor, lr_vec2_along (at_m, along, near_m));
      lr_floor_line_to (floor, lr_vec2_along (at_m, along, far_m));
    }
  lr_theme_set_line (floor->cr, floor->theme, LR_LINE_HAIR, LR_DASH_SOLID);
  cairo_stroke (floor->cr);
}

static void
draw_patch (const LrFloor    *floor,
            const LrSunPatch *patch,
            LrVec3            way,
            gboolean          is_chosen)
{
  const LrTheme *theme = floor->theme;
  LrColor line = theme->family_line[LR_FAMILY_SUN];

  cairo_save (floor->cr);
  if (is_chosen)
    {
      lr_overlay_sun_trace (floor, patch);
      cairo_clip (floor->cr);
      clip_shadows (floor, way);
      lr_theme_set_color (floor->cr, theme->family_fill[LR_FAMILY_SUN], lr_floor_wash (floor, LR_FAMILY_SUN));
      cairo_paint (floor->cr);
      lr_theme_set_color (floor->cr, line, 1.0);
      hatch (floor, patch, way);
    }
  cairo_restore (floor->cr);
  lr_theme_set_color (floor->cr, line, 1.0);
  lr_theme_set_line (floor->cr, theme, is_chosen ? LR_LINE_OUTLINE : LR_LINE_THIN, is_chosen ? LR_DASH_SOLID : LR_DASH_SHORT);
  lr_overlay_sun_trace (floor, patch);
  cairo_stroke (floor->cr);
}

/**
 * lr_overlay_sun:
 * @floor: a drawing
 *
 * Patches on the floor.
 */
void
lr_overlay_sun (const LrFloor *floor)
{
  int minutes[3];

  if (!is_shown (floor))
    return;

  get_hours (floor->study, &minutes[0], &minutes[1]);
  minutes[2] = chosen_minute (floor); /* over the others */
  for (int k = 0; k < 3; k++)
    {
      g_autoptr (GArray) patches = NULL;
      LrVec3 way;

      if (minutes[k] < 0 || !lr_study_sun_way (floor->study, minutes[k], &way))
        continue;
      patches = lr_sun_patches (floor->study, way);
      for (guint i = 0; i < patches->len; i++)
        {
          const LrSunPatch *patch = &g_array_index (patches, LrSunPatch, i);

          if (patch->ground == LR_SUN_ON_FLOOR && lr_floor_has (floor, patch->window))
            draw_patch (floor, patch, way, k == 2);
        }
    }
}

static void
label_patch (const LrFloor *floor,
             const LrVec2   patch_m[4],
             int            minute,
             gboolean       is_chosen)
{
  LrVec2 middle_m = lr_vec2_along (patch_m[0], lr_vec2_sub (patch_m[1], patch_m[0]), 0.5), back = lr_vec2_sub (patch_m[0], patch_m[3]);
  double length_m = fmax (lr_vec2_length (back), 1e-6), off_m = LABEL_OFF_PX * floor->px / floor->view->scale;
  g_autofree char *text = format_minute (minute);
  LrLabel label = {
    .rank = LR_LABEL_SCALE, .stands_on_lines = TRUE, .text = text,
    .style = { .size = floor->theme->type_size[is_chosen ? LR_TYPE_JOB : LR_TYPE_STOP], .weight = is_chosen ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_MEDIUM },
    .color = floor->theme->family_line[LR_FAMILY_SUN], .halo = floor->theme->room, .has_halo = TRUE,
  };
  LrVec2 places[6];

  /* before the sill's edge, at its ends, in the patch, before its other edge */
  for (int i = 0; i < 3; i++)
    {
      LrVec2 at_m = i == 0 ? middle_m : i == 1 ? patch_m[0] : patch_m[1];

      places[i] = lr_floor_device (floor, lr_vec2_along (at_m, back, off_m / length_m));
      places[i + 3] = lr_floor_device (floor, lr_vec2_along (middle_m, back, -0.2 * (i + 1)));
    }
  if (lr_polygon_contains (floor->room->corners_m, floor->room->n_corners, middle_m))
    lr_labels_add_at (floor->labels, &label, places, G_N_ELEMENTS (places));
}

/* Outside, past the window's end, where its own note does not stand: the way of the light, and how high the sun is */
static void
draw_arrow (const LrFloor  *floor,
            const LrPlaced *window,
            int             minute,
            LrVec3          way)
{
  LrVec2 flat = lr_vec3_flat (way), from_m, along, at_m, tip, tail, direction;
  double flat_length = lr_vec2_length (flat), length_m;
  g_autofree char *time = format_minute (minute), *text = NULL;
  LrLabel label;

  if (flat_length < 1e-3 || !lr_room_wall (floor->room, window->item->wall, &from_m, &along, &length_m))
    return;

  at_m = lr_vec2_along (from_m, along, window->item->along_m + window->item->window.width_m + BESIDE_M);
  tip = lr_floor_device (floor, lr_vec2_along (at_m, lr_vec2_left (along), -ARROW_FROM_M));
  direction = lr_vec2 (-flat.x / flat_length, flat.y / flat_length); /* device: y runs down */
  tail = lr_vec2_along (tip, direction, -ARROW_PX * floor->px);
  lr_theme_set_color (floor->cr, floor->theme->family_line[LR_FAMILY_SUN], 1.0);
  lr_theme_set_line (floor->cr, floor->theme, LR_LINE_OUTLINE, LR_DASH_SOLID);
  cairo_move_to (floor->cr, tail.x, tail.y);
  cairo_line_to (floor->cr, tip.x, tip.y);
  cairo_stroke (floor->cr);
  lr_floor_arrowhead (floor->cr, tip, direction, 8.0 * floor->px);
  lr_labels_block_segment (floor->labels, tail, tip);

  /* Translators: a time, and how high the sun stands */
  text = g_strdup_printf (floor->study->plan->job->sky == LR_SKY_CLEAR ? _("%s, %.0f° high") : _("%s, %.0f° high, if it shines"), time,
                          asin (way.z) / LR_DEG);
  label = lr_floor_new_label (floor, LR_LABEL_NOTE, LR_TYPE_NOTE, text);
  {
    LrVec2 middle = lr_vec2 (0.5 * (tip.x + tail.x), 0.5 * (tip.y + tail.y)), places[4] = {
      lr_vec2 (middle.x + 52.0 * floor->px, middle.y), lr_vec2 (middle.x - 52.0 * floor->px, middle.y),
      lr_vec2 (middle.x, tail.y + 14.0 * floor->px), lr_vec2 (middle.x, tail.y - 14.0 * floor->px),
    };

    lr_labels_add_at (floor->labels, &label, places, G_N_ELEMENTS (places));
  }
}

/**
 * lr_overlay_sun_notes:
 * @floor: a drawing
 *
 * Times, the way of the sun outside, and what it touches over the floor.
 */
void
lr_overlay_sun_notes (const LrFloor *floor)
{
  int minutes[3], chosen = chosen_minute (floor);
  gboolean has_arrow = FALSE;
  LrVec3 way;

  if (!is_shown (floor))
    return;

  if (lr_study_sun_way (floor->study, chosen, &way))
    lr_overlay_sun_touched (floor, way);
  get_hours (floor->study, &minutes[0], &minutes[1]);
  minutes[2] = chosen;
  for (guint i = 0; i < floor->study->placed->len; i++)
    {
      const LrPlaced *window = &g_array_index (floor->study->placed, LrPlaced, i);

      for (int k = 0; floor->is_drawn[i] && k < 3; k++)
        {
          LrVec2 patch_m[4];

          if (minutes[k] < 0 || (k < 2 && minutes[k] == chosen) || !lr_study_sun_patch (floor->study, window, minutes[k], patch_m))
            continue;
          label_patch (floor, patch_m, minutes[k], k == 2);
          if (k == 2 && !has_arrow && lr_study_sun_way (floor->study, chosen, &way))
            {
              draw_arrow (floor, window, chosen, way);
              has_arrow = TRUE;
            }
        }
    }
}
