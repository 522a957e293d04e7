/* sound_chart.c - what a microphone hears of voice, room and noises, on a scale of decibels
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A row each: the voice a full bar, what the room gives back of it an open one, noises thin ones that end in a stroke, the loudest first.
 * Where all noise together is wanted the ground is washed. Beside a noise stands what switching it off would win.
 */

#include "config.h"

#include "sound_chart.h"

#include "text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define NBSP "\u00a0"
#define ROW 15.0
#define SCALE_H 13.0
#define LABEL_W 98.0
#define FIGURE_W 116.0
#define STEP_DB 20.0
#define LEAST_END_DB 60.0
#define MAX_LETTERS 14 /* of a noise's name */

/* (transfer full): "and 2 more" */
static char *
say_more (const LrSoundChart *chart)
{
  /* Translators: noises that are left out of a list */
  return g_strdup_printf (ngettext ("and %u fainter one", "and %u fainter ones", chart->n_more), chart->n_more);
}

/* Down to the scale: a line for those that are left out, too */
static double
rows_height (const LrSoundChart *chart)
{
  return (chart->n + (chart->n_more > 0 ? 1 : 0)) * ROW;
}

static const char *
row_title (const LrSoundRow *row)
{
  switch (row->kind)
    {
    case LR_SOUND_ROW_VOICE:
      return _("voice");
    case LR_SOUND_ROW_ROOM:
      return _("reverberation");
    case LR_SOUND_ROW_REST:
      return _("the room itself");
    case LR_SOUND_ROW_NOISE:
    default:
      return row->title;
    }
}

static void
add_row (LrSoundChart  *chart,
         LrSoundRowKind kind,
         const char    *title,
         double         level_db,
         double         win_db)
{
  LrSoundRow *row = &chart->rows[chart->n++];

  *row = (LrSoundRow) { .kind = kind, .level_db = level_db, .win_db = win_db };
  if (g_utf8_strlen (title, -1) > MAX_LETTERS)
    {
      g_autofree char *cut = g_utf8_substring (title, 0, MAX_LETTERS - 1);

      g_snprintf (row->title, sizeof row->title, "%.40s…", cut);
    }
  else
    g_strlcpy (row->title, title, sizeof row->title);
}

/**
 * lr_sound_chart_read:
 * @chart: (out): of a microphone
 * @study: a study
 * @microphone: id of a microphone
 *
 * Returns: %FALSE, with @chart untouched, if nobody speaks into it or there is no room
 */
gboolean
lr_sound_chart_read (LrSoundChart  *chart,
                     const LrStudy *study,
                     const char    *microphone)
{
  const LrMicrophoneSound *heard = lr_sound_find (lr_study_sound (study), microphone);
  LrSoundChart read = { 0 };

  if (heard == NULL)
    return FALSE;

  read.wanted_db = heard->voice_db - study->plan->limits.value[LR_LIMIT_OVER_NOISE];
  add_row (&read, LR_SOUND_ROW_VOICE, "", heard->voice_db, NAN);
  add_row (&read, LR_SOUND_ROW_ROOM, "", heard->reverberant_db, NAN);
  for (guint i = 0; i < heard->noises->len; i++)
    {
      const LrNoiseLevel *level = lr_sound_noise (heard, i);
      g_autofree char *title = level->noise != NULL ? lr_item_title (level->noise->item) : g_strdup ("");

      if (read.n == LR_SOUND_CHART_MAX_ROWS)
        read.n_more++;
      else
        add_row (&read, level->noise != NULL ? LR_SOUND_ROW_NOISE : LR_SOUND_ROW_REST, title, level->level_db,
                 level->noise != NULL && level->noise->item->noise.can_switch_off ? level->win_db : (double) NAN);
    }

  *chart = read;
  return TRUE;
}

/**
 * lr_sound_chart_height:
 * @theme: of the drawing
 * @chart: of a microphone
 *
 * Returns: its height, in the theme's units
 */
double
lr_sound_chart_height (const LrTheme      *theme,
                       const LrSoundChart *chart)
{
  return (rows_height (chart) + SCALE_H) * theme->unit_px;
}

/* "34 dB" or "34 dB  off: +10.6" */
static char *
row_figure (const LrSoundRow *row)
{
  if (!isfinite (row->win_db))
    return g_strdup_printf ("%.0f" NBSP "dB", row->level_db);

  /* Translators: a level, and what switching the noise off wins */
  return g_strdup_printf (_("%.0f" NBSP "dB, off: +%.1f"), row->level_db, row->win_db);
}

/**
 * lr_sound_chart_words:
 * @chart: of a microphone
 *
 * Returns: (transfer full): the same as a sentence
 */
char *
lr_sound_chart_words (const LrSoundChart *chart)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < chart->n; i++)
    {
      g_autofree char *figure = row_figure (&chart->rows[i]);

      g_string_append_printf (text, "%s%s %s", i > 0 ? "; " : "", row_title (&chart->rows[i]), figure);
    }
  if (chart->n_more > 0)
    {
      g_autofree char *more = say_more (chart);

      g_string_append_printf (text, "; %s", more);
    }
  return g_string_free (text, FALSE);
}

static double
scale_end_db (const LrSoundChart *chart)
{
  return fmax (LEAST_END_DB, STEP_DB * ceil (chart->rows[0].level_db / STEP_DB));
}

static void
draw_scale (cairo_t            *cr,
            const LrTheme      *theme,
            const LrSoundChart *chart,
            double              from,
            double              length)
{
  double unit = theme->unit_px, foot = rows_height (chart) * unit, end_db = scale_end_db (chart);
  const LrTextStyle style = { .size = 9.0 * unit, .weight = PANGO_WEIGHT_NORMAL, .align = LR_ALIGN_CENTRE };

  lr_theme_set_color (cr, theme->family_fill[LR_FAMILY_SOUND], 0.30);
  cairo_rectangle (cr, from, 0.0, length * fmax (0.0, fmin (1.0, chart->wanted_db / end_db)), foot);
  cairo_fill (cr);

  for (double at_db = 0.0; at_db <= end_db; at_db += STEP_DB)
    {
      g_autofree char *figure = g_strdup_printf ("%.0f", at_db);
      double x = from + length * at_db / end_db;

      lr_theme_set_color (cr, theme->ink3, 0.8);
      lr_theme_set_line (cr, theme, LR_LINE_HAIR, LR_DASH_SOLID);
      cairo_move_to (cr, x, 0.0);
      cairo_line_to (cr, x, foot + 2.0 * unit);
      cairo_stroke (cr);
      lr_theme_set_color (cr, theme->ink2, 1.0);
      lr_text_draw (cr, theme, &style, x, foot + 11.0 * unit, figure);
    }
}

static void
draw_bar (cairo_t          *cr,
          const LrTheme    *theme,
          const LrSoundRow *row,
          double            from,
          double            to,
          double            y)
{
  double unit = theme->unit_px, half = (row->kind == LR_SOUND_ROW_VOICE || row->kind == LR_SOUND_ROW_ROOM ? 4.0 : 1.5) * unit;

  cairo_rectangle (cr, from, y - half, fmax (to - from, unit), 2.0 * half);
  lr_theme_set_color (cr,
                      row->kind == LR_SOUND_ROW_ROOM    ? theme->room
                      : row->kind == LR_SOUND_ROW_VOICE ? theme->family_fill[LR_FAMILY_SOUND]
                                                        : theme->ink,
                      1.0);
  cairo_fill_preserve (cr);
  lr_theme_set_color (cr, theme->ink, 1.0);
  cairo_set_line_width (cr, 1.0 * unit);
  cairo_stroke (cr);
  if (row->kind == LR_SOUND_ROW_VOICE || row->kind == LR_SOUND_ROW_ROOM)
    return;
  cairo_move_to (cr, to, y - 5.0 * unit);
  cairo_line_to (cr, to, y + 5.0 * unit);
  cairo_set_line_width (cr, 2.0 * unit);
  cairo_stroke (cr);
}

static void
draw_row (cairo_t            *cr,
          const LrTheme      *theme,
          const LrSoundChart *chart,
          guint               index,
          double              width)
{
  const LrSoundRow *row = &chart->rows[index];
  double unit = theme->unit_px, from = LABEL_W * unit, length = width - (LABEL_W + FIGURE_W) * unit, y = (index + 0.5) * ROW * unit;
  const LrTextStyle label = { .size = 11.0 * unit, .weight = PANGO_WEIGHT_NORMAL };
  const LrTextStyle figure_style = { .size = 11.0 * unit, .weight = PANGO_WEIGHT_NORMAL, .align = LR_ALIGN_RIGHT };
  g_autofree char *figure = row_figure (row);
  gboolean is_over = row->kind >= LR_SOUND_ROW_NOISE && row->level_db > chart->wanted_db;

  lr_theme_set_color (cr, theme->ink2, 1.0);
  lr_text_draw (cr, theme, &label, 0.0, y + 4.0 * unit, row_title (row));
  lr_theme_set_color (cr, is_over ? theme->fix_line : theme->ink, 1.0);
  lr_text_draw (cr, theme, &figure_style, width, y + 4.0 * unit, figure);
  draw_bar (cr, theme, row, from, from + length * fmax (0.0, row->level_db) / scale_end_db (chart), y);
}

static void
draw_more (cairo_t            *cr,
           const LrTheme      *theme,
           const LrSoundChart *chart)
{
  const LrTextStyle style = { .size = 11.0 * theme->unit_px, .weight = PANGO_WEIGHT_NORMAL };
  g_autofree char *more = say_more (chart);

  lr_theme_set_color (cr, theme->ink2, 1.0);
  lr_text_draw (cr, theme, &style, 0.0, ((chart->n + 0.5) * ROW + 4.0) * theme->unit_px, more);
}

/**
 * lr_sound_chart_draw:
 * @cr: where to draw, the upper left corner at 0, 0
 * @theme: of the drawing
 * @chart: of a microphone
 * @width: of the chart, in the theme's units
 */
void
lr_sound_chart_draw (cairo_t            *cr,
                     const LrTheme      *theme,
                     const LrSoundChart *chart,
                     double              width)
{
  draw_scale (cr, theme, chart, LABEL_W * theme->unit_px, width - (LABEL_W + FIGURE_W) * theme->unit_px);
  for (guint i = 0; i < chart->n; i++)
    draw_row (cr, theme, chart, i, width);
  if (chart->n_more > 0)
    draw_more (cr, theme, chart);
}
