/* symbols_lights.c - lights, reflectors, flags and backdrops from above
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Origin at the stand, +x the way the light goes. What emits has its true width.
 */

#include "pen.h"

#define DEFAULT_WIDE_STAND_M 0.50
#define DEFAULT_SMALL_STAND_M 0.42
#define DEFAULT_PANEL_STAND_M 0.30
#define FIRST_LEG_RAD (LR_PI / 3.0)
#define DOOR_OPENS_RAD (3.0 * LR_DEG) /* barn doors lie outside the beam by this */

static double
stand_radius_m (double given_m,
                double fallback_m)
{
  return given_m > 0.0 ? given_m : fallback_m;
}

static void
draw_wide (const LrPen *pen,
           double       half_m)
{
  const LrTheme *theme = pen->theme;
  cairo_t *cr = pen->cr;
  double depth_m = lr_pen_at_least (pen, 0.045, 3.0);

  cairo_move_to (cr, 0.16, half_m);
  cairo_line_to (cr, 0.16, -half_m);
  cairo_line_to (cr, -0.26, -0.09);
  cairo_line_to (cr, -0.26, 0.09);
  cairo_close_path (cr);
  lr_pen_paint (pen, theme->room, theme->ink, LR_LINE_OUTLINE);

  for (int i = -1; i <= 1; i++)
    lr_pen_segment (pen, -0.26, 0.06 * i, 0.16, (half_m - 0.01) * i);
  lr_pen_stroke (pen, theme->ink2, LR_LINE_HAIR, LR_DASH_SOLID);

  lr_pen_round_box (pen, -0.41, -0.075, -0.26, 0.075, 0.01);
  lr_pen_fill (pen, theme->equipment);

  lr_pen_box (pen, 0.16, -half_m, 0.16 + depth_m, half_m);
  lr_pen_paint (pen, theme->family_fill[LR_FAMILY_LIGHT], theme->ink, LR_LINE_THIN);
}

static void
draw_small_panel (const LrPen *pen,
                  double       half_m)
{
  const LrTheme *theme = pen->theme;
  cairo_t *cr = pen->cr;
  double bar_m = lr_pen_at_least (pen, 0.04, 2.6);

  cairo_move_to (cr, 0.0, half_m + 0.03);
  cairo_line_to (cr, -0.06, half_m + 0.03);
  cairo_line_to (cr, -0.06, -half_m - 0.03);
  cairo_line_to (cr, 0.0, -half_m - 0.03);
  lr_pen_stroke (pen, theme->ink, LR_LINE_THIN, LR_DASH_SOLID);

  lr_pen_box (pen, -0.03, -half_m, 0.03, half_m);
  lr_pen_fill (pen, theme->equipment);
  lr_pen_box (pen, 0.03, -half_m, 0.03 + bar_m, half_m);
  lr_pen_paint (pen, theme->family_fill[LR_FAMILY_LIGHT], theme->ink, LR_LINE_THIN);
}

static void
draw_point (const LrPen *pen,
            double       beam_rad)
{
  const LrTheme *theme = pen->theme;
  double angle = CLAMP (0.5 * beam_rad + DOOR_OPENS_RAD, 0.0, 0.5 * LR_PI);
  LrVec2 door = lr_vec2_polar (angle, 0.17);

  lr_pen_round_box (pen, -0.15, -0.085, 0.06, 0.085, 0.03);
  lr_pen_fill (pen, theme->equipment);
  cairo_new_sub_path (pen->cr);
  cairo_arc (pen->cr, 0.03, 0.0, 0.075, -66.0 * LR_DEG, 66.0 * LR_DEG);
  cairo_close_path (pen->cr);
  lr_pen_paint (pen, theme->family_fill[LR_FAMILY_LIGHT], theme->ink, LR_LINE_THIN);

  lr_pen_segment (pen, 0.065, 0.085, 0.065 + door.x, 0.085 + door.y);
  lr_pen_segment (pen, 0.065, -0.085, 0.065 + door.x, -0.085 - door.y);
  lr_pen_bar (pen, theme->ink, LR_LINE_THICK);
}

/**
 * lr_symbol_light:
 * @pen: a pen for a light
 */
void
lr_symbol_light (const LrPen *pen)
{
  const LrLight *light = &pen->item->light;
  double fallback_m = light->form == LR_LIGHT_WIDE ? DEFAULT_WIDE_STAND_M : DEFAULT_SMALL_STAND_M;

  lr_pen_stand (pen, stand_radius_m (light->stand_radius_m, fallback_m), FIRST_LEG_RAD);

  switch ((LrLightForm) light->form)
    {
    case LR_LIGHT_WIDE:
      draw_wide (pen, 0.5 * light->width_m);
      break;
    case LR_LIGHT_PANEL:
      draw_small_panel (pen, 0.5 * light->width_m);
      break;
    case LR_LIGHT_POINT:
    default:
      draw_point (pen, lr_item_beam_rad (pen->item));
      break;
    }
}

/* Folds between two stands */
static void
draw_backdrop (const LrPen *pen,
               double       half_m)
{
  const LrTheme *theme = pen->theme;
  int n_folds = MAX (2, (int) lround (2.0 * half_m / 0.16));
  double step_m = 2.0 * half_m / n_folds;

  for (int side = -1; side <= 1; side += 2)
    lr_pen_segment (pen, -0.35, side * half_m, 0.35, side * half_m);
  lr_pen_stroke (pen, theme->ink2, LR_LINE_THIN, LR_DASH_SOLID);

  cairo_move_to (pen->cr, 0.0, -half_m);
  for (int i = 0; i < n_folds; i++)
    {
      double y = -half_m + i * step_m;
      double reach = i % 2 == 0 ? 0.05 : -0.05;

      cairo_curve_to (pen->cr, reach, y + 0.3 * step_m, reach, y + 0.7 * step_m, 0.0, y + step_m);
    }
  lr_pen_stroke (pen, theme->ink, LR_LINE_THICK, LR_DASH_SOLID);

  for (int side = -1; side <= 1; side += 2)
    lr_pen_disc (pen, 0.0, side * half_m, 0.05);
  lr_pen_paint (pen, theme->room, theme->ink, LR_LINE_OUTLINE);
}

/**
 * lr_symbol_panel:
 * @pen: a pen for a reflector, flag or backdrop
 */
void
lr_symbol_panel (const LrPen *pen)
{
  const LrPanel *panel = &pen->item->panel;
  const LrTheme *theme = pen->theme;
  double half_m = 0.5 * panel->width_m;
  double half_depth_m = 0.5 * lr_pen_at_least (pen, 0.035, 2.6);

  if (panel->form == LR_PANEL_BACKDROP)
    {
      draw_backdrop (pen, half_m);
      return;
    }

  lr_pen_stand (pen, stand_radius_m (panel->stand_radius_m, DEFAULT_PANEL_STAND_M), FIRST_LEG_RAD);
  lr_pen_box (pen, -half_depth_m, -half_m, half_depth_m, half_m);
  if (panel->form == LR_PANEL_FLAG)
    {
      lr_pen_fill (pen, theme->equipment);
      return;
    }

  lr_pen_paint (pen, theme->room, theme->ink, LR_LINE_OUTLINE);
  lr_pen_hatch_edge (pen, -half_depth_m, -half_m, half_m, 0.11, 0.064);
  lr_pen_stroke (pen, theme->ink, LR_LINE_HAIR, LR_DASH_SOLID);
}
