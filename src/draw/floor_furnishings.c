/* floor_furnishings.c - the sheet's own scale bar and north arrow
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "floor_layers.h"

#include <glib/gi18n-lib.h>

#define BAR_LEFT_PX 27.0
#define BAR_TOP_PX 40.0
#define BAR_HEIGHT_PX 5.0
#define BAR_LEAST_PX 40.0
#define BAR_MOST_PX 200.0
#define NORTH_RIGHT_PX 43.0
#define NORTH_TOP_PX 50.0
#define NORTH_RADIUS_PX 17.0
#define FOOT_M 0.3048

static double
bar_length_m (const LrFloor *floor,
              char         **text)
{
  static const int lengths[] = { 1, 2, 5, 10, 20, 50 };
  gboolean is_metric = floor->view->units == LR_UNITS_METRIC;
  double unit_m = is_metric ? 1.0 : FOOT_M;

  for (gsize i = 0; i < G_N_ELEMENTS (lengths); i++)
    if (lengths[i] * unit_m * floor->view->scale >= BAR_LEAST_PX)
      {
        *text = g_strdup_printf (is_metric ? "%d\u00a0m" : "%d\u2032", lengths[i]);
        return lengths[i] * unit_m;
      }

  *text = g_strdup ("");

  return 0.0;
}

static void
draw_bar (const LrFloor *floor)
{
  g_autofree char *text = NULL;
  double length = bar_length_m (floor, &text) * floor->view->scale;
  LrTextStyle style = { .size = floor->theme->type_size[LR_TYPE_NOTE] };
  cairo_t *cr = floor->cr;

  if (length <= 0.0)
    return;

  /* on its own ground, for zoomed in it lies over the room */
  cairo_rectangle (cr, BAR_LEFT_PX - 1.6, BAR_TOP_PX - 1.6, length + 3.2, BAR_HEIGHT_PX + 3.2);
  lr_theme_set_color (cr, floor->theme->ground, 1.0);
  cairo_fill (cr);
  cairo_rectangle (cr, BAR_LEFT_PX, BAR_TOP_PX, length, BAR_HEIGHT_PX);
  lr_theme_set_color (cr, floor->theme->ink2, 1.0);
  cairo_fill (cr);
  style.align = LR_ALIGN_LEFT;
  lr_text_draw_on (cr, floor->theme, &style, floor->theme->ground, BAR_LEFT_PX - 2.0, BAR_TOP_PX - 7.0, "0");
  style.align = LR_ALIGN_CENTRE;
  lr_text_draw_on (cr, floor->theme, &style, floor->theme->ground, BAR_LEFT_PX + length, BAR_TOP_PX - 7.0, text);
}

/**
 * lr_north_draw:
 * @cr: a cairo context whose unit is the device's
 * @theme: a palette
 * @north_rad: clockwise from up the sheet [rad]
 * @radius: of the ring, device units
 * @x: middle
 * @y: middle
 *
 * Ring, solid half-arrow, and an N outside.
 */
void
lr_north_draw (cairo_t       *cr,
               const LrTheme *theme,
               double         north_rad,
               double         radius,
               double         x,
               double         y)
{
  LrVec2 up = lr_vec2 (sin (north_rad), -cos (north_rad)), across = lr_vec2_left (up);
  double tip = 0.98 * radius, half = 0.34 * radius, size = theme->type_size[LR_TYPE_NOTE];
  LrTextStyle style = { .size = size, .weight = PANGO_WEIGHT_SEMIBOLD, .align = LR_ALIGN_CENTRE };
  double off = radius + 0.62 * size;

  cairo_save (cr);
  cairo_new_path (cr);
  lr_theme_set_color (cr, theme->unit_px < 1.0 ? theme->ink : theme->ink2, 1.0);
  cairo_arc (cr, x, y, radius, 0.0, 2.0 * LR_PI);
  cairo_move_to (cr, x, y);
  cairo_line_to (cr, x - tip * up.x, y - tip * up.y);
  lr_theme_set_line (cr, theme, LR_LINE_THIN, LR_DASH_SOLID);
  cairo_stroke (cr);

  cairo_move_to (cr, x + tip * up.x, y + tip * up.y);
  cairo_line_to (cr, x + half * across.x, y + half * across.y);
  cairo_line_to (cr, x - half * across.x, y - half * across.y);
  cairo_close_path (cr);
  cairo_fill (cr);

  lr_text_draw_on (cr, theme, &style, theme->ground, x + off * up.x, y + off * up.y + 0.364 * size, _("N"));
  cairo_restore (cr);
}

/**
 * lr_floor_draw_furnishings:
 * @floor: a drawing
 *
 * Scale bar at the upper left, north at the upper right of the sheet. The page has its own.
 */
void
lr_floor_draw_furnishings (const LrFloor *floor)
{
  if (!floor->has_base || floor->view->is_page || floor->room->n_corners < 3)
    return;

  cairo_save (floor->cr);
  draw_bar (floor);
  cairo_new_sub_path (floor->cr);
  cairo_arc (floor->cr, floor->view->width - NORTH_RIGHT_PX, NORTH_TOP_PX, NORTH_RADIUS_PX, 0.0, 2.0 * LR_PI);
  lr_theme_set_color (floor->cr, floor->theme->ground, 0.85);
  cairo_fill (floor->cr);
  lr_north_draw (floor->cr, floor->theme, floor->room->north_rad, NORTH_RADIUS_PX, floor->view->width - NORTH_RIGHT_PX,
                 NORTH_TOP_PX);
  cairo_restore (floor->cr);
}
