/* glyphs.c - the signs of the five families, as their toggles show them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each is a cutting from what the family draws on the sheet: the wedge, the ticks of the fall-off, the lobe, the hatched
 * patch, the dash-dot lead with its plug bar.
 */

#include "glyphs.h"

#include <math.h>

static void
stroke (cairo_t       *cr,
        const LrTheme *theme,
        LrFamily       family,
        double         width)
{
  cairo_set_line_width (cr, width);
  lr_theme_set_color (cr, theme->family_line[family], 1.0);
  cairo_stroke (cr);
}

static void
draw_sight (cairo_t       *cr,
            const LrTheme *theme)
{
  cairo_move_to (cr, -7.0, 0.0);
  cairo_line_to (cr, 6.5, -6.0);
  cairo_line_to (cr, 6.5, 6.0);
  cairo_close_path (cr);
  lr_theme_set_color (cr, theme->family_fill[LR_FAMILY_SIGHT], 0.25);
  cairo_fill_preserve (cr);
  stroke (cr, theme, LR_FAMILY_SIGHT, 1.5);
}

static void
draw_light (cairo_t       *cr,
            const LrTheme *theme)
{
  cairo_rectangle (cr, -8.0, -6.0, 3.0, 12.0);
  lr_theme_set_color (cr, theme->family_fill[LR_FAMILY_LIGHT], 1.0);
  cairo_fill_preserve (cr);
  stroke (cr, theme, LR_FAMILY_LIGHT, 1.0);
  for (int i = 0; i < 3; i++)
    {
      double x = -1.5 + 4.0 * i, half = 4.5 - 1.25 * i;

      cairo_move_to (cr, x, -half);
      cairo_line_to (cr, x, half);
    }
  stroke (cr, theme, LR_FAMILY_LIGHT, 1.5);
}

static void
draw_sound (cairo_t       *cr,
            const LrTheme *theme)
{
  cairo_arc (cr, 1.5, 0.0, 5.8, 0.0, 2.0 * G_PI);
  stroke (cr, theme, LR_FAMILY_SOUND, 1.5);
  cairo_arc (cr, -5.2, 0.0, 2.3, 0.0, 2.0 * G_PI);
  lr_theme_set_color (cr, theme->family_line[LR_FAMILY_SOUND], 1.0);
  cairo_fill (cr);
}

static void
draw_sun (cairo_t       *cr,
          const LrTheme *theme)
{
  cairo_move_to (cr, -3.0, -6.0);
  cairo_line_to (cr, 7.0, -6.0);
  cairo_line_to (cr, 3.0, 6.0);
  cairo_line_to (cr, -7.0, 6.0);
  cairo_close_path (cr);
  lr_theme_set_color (cr, theme->family_fill[LR_FAMILY_SUN], 1.0);
  cairo_fill_preserve (cr);
  stroke (cr, theme, LR_FAMILY_SUN, 1.2);
  for (int i = 1; i < 3; i++)
    {
      cairo_move_to (cr, -3.0 + 3.4 * i, -6.0);
      cairo_line_to (cr, -7.0 + 3.4 * i, 6.0);
    }
  stroke (cr, theme, LR_FAMILY_SUN, 0.8);
}

static void
draw_power (cairo_t       *cr,
            const LrTheme *theme)
{
  cairo_move_to (cr, -7.0, -4.5);
  cairo_line_to (cr, -7.0, 4.5);
  cairo_move_to (cr, -7.0, 0.0);
  cairo_line_to (cr, -2.0, 0.0);
  cairo_move_to (cr, 0.2, 0.0);
  cairo_line_to (cr, 1.4, 0.0);
  cairo_move_to (cr, 3.4, 0.0);
  cairo_line_to (cr, 5.5, 0.0);
  stroke (cr, theme, LR_FAMILY_POWER, 1.8);
  cairo_arc (cr, 6.3, 0.0, 2.2, 0.0, 2.0 * G_PI);
  lr_theme_set_color (cr, theme->family_line[LR_FAMILY_POWER], 1.0);
  cairo_fill (cr);
}

/**
 * lr_glyph_draw:
 * @cr: in pixels
 * @family: which sign
 * @x: its middle [px]
 * @y: its middle [px]
 *
 * Draws the sign within %LR_GLYPH_SIZE_PX.
 */
void
lr_glyph_draw (cairo_t       *cr,
               const LrTheme *theme,
               LrFamily       family,
               double         x,
               double         y)
{
  static void (* const draws[LR_N_FAMILIES]) (cairo_t *, const LrTheme *) = {
    [LR_FAMILY_SIGHT] = draw_sight,
    [LR_FAMILY_LIGHT] = draw_light,
    [LR_FAMILY_SOUND] = draw_sound,
    [LR_FAMILY_SUN]   = draw_sun,
    [LR_FAMILY_POWER] = draw_power,
  };

  cairo_save (cr);
  cairo_translate (cr, x, y);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  draws[family] (cr, theme);
  cairo_restore (cr);
}
