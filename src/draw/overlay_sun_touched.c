/* overlay_sun_touched.c - what the sun touches over the floor: walls, tops of furniture, people
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * On a wall it is a bar along its foot, with the heights that the patch reaches from and to. Whose head is in it has rays around that, who
 * has it on the body alone around the shoulders.
 */

#include "config.h"

#include "floor_layers.h"
#include "sun_patches.h"
#include "sun_touches.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define BAR_PX 6.0
#define LABEL_OFF_PX 13.0
#define LEAST_LABEL_M 0.25 /* of a stretch, to be told with its heights */
#define LEAST_HEIGHT_M 0.03 /* of a patch, to be shown */
#define AT_FLOOR_M 0.005
#define RAYS 12
#define RAY_FROM_PX 4.0    /* off the head */
#define RAY_PX 6.0

/* "0.62 to 1.95 m up", "up to 0.44 m" beside the bar */
static void
label_wall (const LrFloor      *floor,
            const LrSunStretch *stretch,
            LrVec2              middle_m,
            LrVec2              along,
            LrVec2              inward)
{
  g_autofree char *low = lr_length_format_short (stretch->low_m, floor->view->units), *high = lr_length_format (stretch->high_m, floor->view->units);
  /* Translators: heights on a wall, from and to; from the floor to */
  g_autofree char *text = stretch->low_m < AT_FLOOR_M ? g_strdup_printf (_("up to %s"), high) : g_strdup_printf (_("%s to %s up"), low, high);
  LrLabel label = lr_floor_new_label (floor, LR_LABEL_NOTE, LR_TYPE_NOTE, text);
  double off_m = LABEL_OFF_PX * floor->px / floor->view->scale, length_m = stretch->to_m - stretch->from_m;
  LrVec2 places[6];

  label.color = floor->theme->family_line[LR_FAMILY_SUN];
  label.halo = floor->theme->room;
  label.has_halo = TRUE;
  label.stands_on_lines = TRUE;
  /* text is wider than high: beside an upright wall it needs more room */
  for (int i = 0; i < 6; i++)
    places[i] = lr_floor_device (floor, lr_vec2_along (lr_vec2_along (middle_m, inward, off_m * (1 + i / 3) * (1.0 + 2.2 * fabs (inward.x))), along,
                                                       (i % 3 == 0 ? 0.0 : i % 3 == 1 ? 0.3 : -0.3) * length_m));
  lr_labels_add_at (floor->labels, &label, places, G_N_ELEMENTS (places));
}

static void
draw_wall (const LrFloor    *floor,
           const LrSunPatch *patch)
{
  LrSunStretch stretch = lr_sun_stretch (floor->study, patch);
  double inset_m = 0.5 * BAR_PX * floor->px / floor->view->scale, length_m;
  LrVec2 from_m, along, inward, ends_m[2];

  if (stretch.high_m - stretch.low_m < LEAST_HEIGHT_M || !lr_room_wall (floor->room, patch->wall, &from_m, &along, &length_m))
    return;

  inward = lr_vec2_left (along);
  ends_m[0] = lr_vec2_along (lr_vec2_along (from_m, along, stretch.from_m), inward, inset_m);
  ends_m[1] = lr_vec2_along (lr_vec2_along (from_m, along, stretch.to_m), inward, inset_m);
  cairo_save (floor->cr);
  cairo_set_line_cap (floor->cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_dash (floor->cr, NULL, 0, 0.0);
  for (int i = 0; i < 2; i++)
    {
      lr_theme_set_color (floor->cr, i == 0 ? floor->theme->family_line[LR_FAMILY_SUN] : floor->theme->family_fill[LR_FAMILY_SUN], 1.0);
      cairo_set_line_width (floor->cr, (i == 0 ? BAR_PX : BAR_PX - 2.5) * floor->px);
      lr_floor_move_to (floor, ends_m[0]);
      lr_floor_line_to (floor, ends_m[1]);
      cairo_stroke (floor->cr);
    }
  cairo_restore (floor->cr);
  if (stretch.to_m - stretch.from_m > LEAST_LABEL_M)
    label_wall (floor, &stretch, lr_vec2_scale (lr_vec2_add (ends_m[0], ends_m[1]), 0.5), along, inward);
}

static void
draw_top (const LrFloor    *floor,
          const LrSunPatch *patch)
{
  lr_overlay_sun_trace (floor, patch);
  lr_theme_set_color (floor->cr, floor->theme->family_fill[LR_FAMILY_SUN], lr_floor_wash (floor, LR_FAMILY_SUN));
  cairo_fill_preserve (floor->cr);
  lr_theme_set_color (floor->cr, floor->theme->family_line[LR_FAMILY_SUN], 1.0);
  lr_theme_set_line (floor->cr, floor->theme, LR_LINE_THIN, LR_DASH_SOLID);
  cairo_stroke (floor->cr);
}

static void
draw_person (const LrFloor  *floor,
             const LrPlaced *person,
             gboolean        is_on_head)
{
  LrVec2 at = lr_floor_device (floor, lr_vec3_flat (person->eyes_m));
  double across_m = is_on_head ? person->body.head_depth_m : person->body.shoulder_width_m;
  double from = 0.5 * across_m * floor->view->scale + RAY_FROM_PX * floor->px;

  lr_theme_set_color (floor->cr, floor->theme->family_line[LR_FAMILY_SUN], 1.0);
  lr_theme_set_line (floor->cr, floor->theme, LR_LINE_OUTLINE, LR_DASH_SOLID);
  for (int i = 0; i < RAYS; i++)
    {
      LrVec2 way = lr_vec2_polar (2.0 * LR_PI * i / RAYS, 1.0), near = lr_vec2_along (at, way, from);
      LrVec2 far = lr_vec2_along (at, way, from + RAY_PX * floor->px);

      cairo_move_to (floor->cr, near.x, near.y);
      cairo_line_to (floor->cr, far.x, far.y);
    }
  cairo_stroke (floor->cr);
}

/**
 * lr_overlay_sun_touched:
 * @floor: a drawing
 * @way: to the sun, of length 1
 */
void
lr_overlay_sun_touched (const LrFloor *floor,
                        LrVec3         way)
{
  g_autoptr (GArray) patches = lr_sun_patches (floor->study, way);

  for (guint i = 0; i < patches->len; i++)
    {
      const LrSunPatch *patch = &g_array_index (patches, LrSunPatch, i);
      const char *ids[] = { patch->window->item->id, patch->placed != NULL ? patch->placed->item->id : NULL, NULL };

      if (patch->ground == LR_SUN_ON_WALL && lr_floor_has (floor, patch->window))
        draw_wall (floor, patch);
      else if (patch->ground == LR_SUN_ON_TOP && lr_floor_has_between (floor, ids))
        draw_top (floor, patch);
    }
  for (guint i = 0; i < floor->study->placed->len; i++)
    {
      const LrPlaced *placed = &g_array_index (floor->study->placed, LrPlaced, i);

      if (!floor->is_drawn[i] || placed->item->kind != LR_ITEM_PERSON || !(placed->body.stature_m > 0.0))
        continue;
      if (lr_sun_is_on (floor->study, placed, LR_SUN_HEAD, way))
        draw_person (floor, placed, TRUE);
      else if (lr_sun_is_on (floor->study, placed, LR_SUN_TRUNK, way))
        draw_person (floor, placed, FALSE);
    }
}
