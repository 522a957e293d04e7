/* levels.c - how face, clothes and walls come out in a camera, on a scale of the signal
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A row each, over one scale from nothing to full signal. The face is a bar from its shadow side to its lit side, which ends in a disc;
 * clothes are a square, walls an open one. Where face and walls are wanted the ground is washed, with a tick at the level itself.
 */

#include "config.h"

#include "levels.h"

#include "text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define NBSP "\u00a0"
#define ROW 15.0     /* units of the screen's figures */
#define SCALE_H 13.0
#define LABEL_W 62.0
#define FIGURE_W 76.0
#define N_ROWS 3

static const char *const row_titles[N_ROWS] = { N_("face"), N_("clothes"), N_("walls") };

/**
 * lr_levels_read:
 * @levels: (out): levels of a camera
 * @light: (nullable): of a plan
 * @plan: the plan that is shown
 * @camera: id of a camera
 *
 * Returns: %FALSE, with @levels untouched, if there is no light or no such camera
 */
gboolean
lr_levels_read (LrLevels            *levels,
                const LrLightLevels *light,
                const LrPlan        *plan,
                const char          *camera)
{
  LrLevels read = {
    .wanted = lr_plan_face_level (plan), .wanted_walls = lr_plan_wall_level (plan),
    .walls_off_stops = plan->limits.value[LR_LIMIT_WALL_LEVEL_OFF], .off_stops = plan->limits.value[LR_LIMIT_FACE_LEVEL_OFF],
    .is_whole = light != NULL && lr_light_levels_is_whole (light),
    .is_settled = light != NULL && lr_light_levels_is_settled (light) && lr_light_levels_get_plan (light) == plan,
  };

  if (light == NULL || lr_light_levels_n_sources (light) == 0 || !lr_light_levels_shares (light, camera, &read.shares))
    return FALSE;

  *levels = read;
  return TRUE;
}

/**
 * lr_levels_height:
 * @theme: of the drawing
 *
 * Returns: the height of a strip, in its units
 */
double
lr_levels_height (const LrTheme *theme)
{
  return (N_ROWS * ROW + SCALE_H) * theme->unit_px;
}

static double
signal_of (double share)
{
  return lr_signal_of_share (share);
}

static char *
per_cent (double share)
{
  return g_strdup_printf ("%.0f" NBSP "%%", 100.0 * signal_of (share));
}

static char *
face_figure (const LrShares *shares)
{
  if (isnan (shares->face))
    return g_strdup ("–");

  /* Translators: the levels of the shadow side and of the lit side of a face, per cent */
  return g_strdup_printf (_("%.0f to %.0f" NBSP "%%"), 100.0 * signal_of (shares->shadow), 100.0 * signal_of (shares->face));
}

/**
 * lr_levels_words:
 * @levels: of a camera
 *
 * Returns: (transfer full): the same as a sentence
 */
char *
lr_levels_words (const LrLevels *levels)
{
  const struct { const char *title; double share; } parts[] = {
    { _("lit side of the face"), levels->shares.face }, { _("shadow side"), levels->shares.shadow }, { _("clothes"), levels->shares.clothes },
    { _("walls"), levels->shares.background },
  };
  GString *text = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      g_autofree char *figure = NULL;

      if (isnan (parts[i].share))
        continue;
      figure = per_cent (parts[i].share);
      g_string_append_printf (text, "%s%s %s", text->len > 0 ? ", " : "", parts[i].title, figure);
    }
  /* Translators: behind how bright face and walls come out: where they are wanted, per cent */
  if (text->len > 0 && isnan (levels->wanted_walls))
    g_string_append_printf (text, _("; wanted: face %.0f" NBSP "%%, walls dark"), 100.0 * levels->wanted);
  else if (text->len > 0)
    g_string_append_printf (text, _("; wanted: face %.0f" NBSP "%%, walls %.0f" NBSP "%%"), 100.0 * levels->wanted, 100.0 * levels->wanted_walls);
  return g_string_free (text, FALSE);
}

/* Where a row is wanted: how far it may be off, and the level itself */
static void
draw_wanted (cairo_t       *cr,
             const LrTheme *theme,
             double         wanted,
             double         off_stops,
             int            row,
             double         from,
             double         length)
{
  double unit = theme->unit_px, top = row * ROW * unit, share = lr_share_of_signal (wanted);
  double low = signal_of (share * exp2 (-off_stops)), high = signal_of (share * exp2 (off_stops)), tick = 2.0 * unit;

  lr_theme_set_color (cr, theme->family_fill[LR_FAMILY_LIGHT], 0.30);
  cairo_rectangle (cr, from + low * length, top, (high - low) * length, ROW * unit);
  cairo_fill (cr);
  lr_theme_set_color (cr, theme->family_line[LR_FAMILY_LIGHT], 1.0);
  cairo_rectangle (cr, from + wanted * length - 0.5 * tick, top, tick, ROW * unit);
  cairo_fill (cr);
}

static void
draw_scale (cairo_t        *cr,
            const LrTheme  *theme,
            const LrLevels *levels,
            double          from,
            double          length)
{
  double unit = theme->unit_px, foot = N_ROWS * ROW * unit;
  const LrTextStyle style = { .size = 9.0 * unit, .weight = PANGO_WEIGHT_NORMAL, .align = LR_ALIGN_CENTRE };

  draw_wanted (cr, theme, levels->wanted, levels->off_stops, 0, from, length);
  if (!isnan (levels->wanted_walls))
    draw_wanted (cr, theme, levels->wanted_walls, levels->walls_off_stops, N_ROWS - 1, from, length);

  lr_theme_set_color (cr, theme->ink3, 0.8);
  lr_theme_set_line (cr, theme, LR_LINE_HAIR, LR_DASH_SOLID);
  for (int i = 0; i <= 5; i++)
    {
      double x = from + length * i / 5.0;

      cairo_move_to (cr, x, 0.0);
      cairo_line_to (cr, x, foot + 2.0 * unit);
    }
  cairo_stroke (cr);
  for (int i = 0; i <= 5; i++)
    {
      g_autofree char *figure = g_strdup_printf ("%d", 20 * i);

      lr_theme_set_color (cr, theme->ink2, 1.0);
      lr_text_draw (cr, theme, &style, from + length * i / 5.0, foot + 11.0 * unit, figure);
    }
}

static void
draw_face (cairo_t        *cr,
           const LrTheme  *theme,
           const LrShares *shares,
           double          from,
           double          length,
           double          y)
{
  double unit = theme->unit_px, lit = from + length * signal_of (shares->face), shadow = from + length * signal_of (shares->shadow);

  lr_theme_set_color (cr, theme->ink, 1.0);
  cairo_set_line_width (cr, 3.0 * unit);
  cairo_move_to (cr, shadow, y);
  cairo_line_to (cr, lit, y);
  cairo_stroke (cr);
  cairo_arc (cr, lit, y, 4.5 * unit, 0.0, 2.0 * G_PI);
  cairo_fill (cr);
}

static void
draw_square (cairo_t       *cr,
             const LrTheme *theme,
             gboolean       is_open,
             double         x,
             double         y)
{
  double half = 3.8 * theme->unit_px;

  cairo_rectangle (cr, x - half, y - half, 2.0 * half, 2.0 * half);
  lr_theme_set_color (cr, is_open ? theme->room : theme->ink, 1.0);
  cairo_fill_preserve (cr);
  lr_theme_set_color (cr, theme->ink, 1.0);
  cairo_set_line_width (cr, 1.4 * theme->unit_px);
  cairo_stroke (cr);
}

static void
draw_row (cairo_t        *cr,
          const LrTheme  *theme,
          const LrLevels *levels,
          int             row,
          double          width)
{
  double unit = theme->unit_px, from = LABEL_W * unit, length = width - (LABEL_W + FIGURE_W) * unit, y = (row + 0.5) * ROW * unit;
  const double shares[N_ROWS] = { levels->shares.face, levels->shares.clothes, levels->shares.background };
  const LrTextStyle label = { .size = 11.0 * unit, .weight = PANGO_WEIGHT_NORMAL };
  const LrTextStyle figure_style = { .size = 11.0 * unit, .weight = PANGO_WEIGHT_NORMAL, .align = LR_ALIGN_RIGHT };
  g_autofree char *figure = row == 0 ? face_figure (&levels->shares) : isnan (shares[row]) ? g_strdup ("–") : per_cent (shares[row]);

  lr_theme_set_color (cr, theme->ink2, 1.0);
  lr_text_draw (cr, theme, &label, 0.0, y + 4.0 * unit, _(row_titles[row]));
  lr_theme_set_color (cr, shares[row] >= 1.0 ? theme->fix_line : theme->ink, 1.0);
  lr_text_draw (cr, theme, &figure_style, width, y + 4.0 * unit, figure);
  if (isnan (shares[row]))
    return;
  if (row == 0)
    draw_face (cr, theme, &levels->shares, from, length, y);
  else
    draw_square (cr, theme, row == 2, from + length * signal_of (shares[row]), y);
}

/* What the room gives back follows in a moment */
static void
draw_state (cairo_t        *cr,
            const LrTheme  *theme,
            const LrLevels *levels,
            double          width)
{
  const LrTextStyle style = { .size = 9.0 * theme->unit_px, .weight = PANGO_WEIGHT_NORMAL, .align = LR_ALIGN_RIGHT };

  if (levels->is_settled)
    return;

  lr_theme_set_color (cr, theme->ink2, 1.0);
  /* Translators: short: levels of light without, and with, the light that the walls give back */
  lr_text_draw (cr, theme, &style, width, (N_ROWS * ROW + 11.0) * theme->unit_px, levels->is_whole ? _("room as before") : _("direct only"));
}

/**
 * lr_levels_draw:
 * @cr: where to draw, the upper left corner at 0, 0
 * @theme: of the drawing
 * @levels: of a camera
 * @width: of the strip, in the theme's units
 */
void
lr_levels_draw (cairo_t        *cr,
                const LrTheme  *theme,
                const LrLevels *levels,
                double          width)
{
  draw_scale (cr, theme, levels, LABEL_W * theme->unit_px, width - (LABEL_W + FIGURE_W) * theme->unit_px);
  for (int row = 0; row < N_ROWS; row++)
    draw_row (cr, theme, levels, row, width);
  draw_state (cr, theme, levels, width);
}
