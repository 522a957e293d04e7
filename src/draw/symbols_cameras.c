/* symbols_cameras.c - cameras and lenses from above
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "pen.h"

#define DEFAULT_STAND_M 0.48

/**
 * lr_symbol_camera:
 * @pen: a pen for a camera
 *
 * Tripod with one leg under the lens, pan handle, body, lens, and the front bar in the colour of Sight.
 */
void
lr_symbol_camera (const LrPen *pen)
{
  const LrCamera *camera = &pen->item->camera;
  const LrTheme *theme = pen->theme;

  lr_pen_stand (pen, camera->stand_radius_m > 0.0 ? camera->stand_radius_m : DEFAULT_STAND_M, 0.0);

  lr_pen_segment (pen, -0.10, 0.0, -0.34, -0.13);
  lr_pen_stroke (pen, theme->ink, LR_LINE_OUTLINE, LR_DASH_SOLID);

  lr_pen_round_box (pen, -0.13, -0.075, 0.06, 0.075, 0.012);
  lr_pen_paint (pen, theme->equipment, theme->equipment, LR_LINE_HAIR);
  cairo_move_to (pen->cr, 0.06, -0.045);
  cairo_line_to (pen->cr, 0.17, -0.052);
  cairo_line_to (pen->cr, 0.17, 0.052);
  cairo_line_to (pen->cr, 0.06, 0.045);
  cairo_close_path (pen->cr);
  lr_pen_fill (pen, theme->equipment);

  lr_pen_segment (pen, 0.17, -0.085, 0.17, 0.085);
  lr_pen_bar (pen, theme->family_line[LR_FAMILY_SIGHT], LR_LINE_THICK);
}

/**
 * lr_symbol_lens:
 * @pen: a pen for a lens in the kit
 *
 * Four times its size, since a lens at the scale of a room would be a speck: barrel with two rings, hood, front bar.
 */
void
lr_symbol_lens (const LrPen *pen)
{
  const LrLens *lens = &pen->item->lens;
  const LrTheme *theme = pen->theme;
  double barrel_m = CLAMP (0.26 + 4.0 * lens->focal_min_m, 0.3, 1.0);
  double x = -0.5 * (barrel_m + 0.2);

  lr_pen_box (pen, x, -0.20, x + barrel_m, 0.20);
  lr_pen_box (pen, x + barrel_m, -0.25, x + barrel_m + 0.18, 0.25);
  lr_pen_fill (pen, theme->equipment);

  lr_pen_segment (pen, x + 0.10, -0.20, x + 0.10, 0.20);
  lr_pen_segment (pen, x + 0.17, -0.20, x + 0.17, 0.20);
  lr_pen_bar (pen, theme->room, LR_LINE_THIN);
  lr_pen_segment (pen, x + barrel_m + 0.20, -0.27, x + barrel_m + 0.20, 0.27);
  lr_pen_bar (pen, theme->family_line[LR_FAMILY_SIGHT], LR_LINE_THICK);
}
