/* page_plan.c - the floor plan on the sheet, with its title and scale bar
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "floor.h"
#include "page_private.h"

#define TITLE_Y_PT     13.7
#define SUBTITLE_Y_PT  27.4
#define NORTH_RADIUS_PT 11.0

/* --- Title ---------------------------------------------------------------------------------------------------- */

/**
 * lr_page_title_draw:
 * @sheet: the page
 * @place: where the plan stands
 *
 * Draws title and subtitle of the job over the plan.
 */
void
lr_page_title_draw (const LrSheet     *sheet,
                    const LrPlanPlace *place)
{
  const LrJob *job = sheet->study->plan->job;
  const double width = place->area.width - LR_PAGE_NORTH_PT;
  const LrTextStyle title = { .size = LR_PAGE_TITLE_SIZE, .weight = PANGO_WEIGHT_BOLD, .width = width };
  const LrTextStyle subtitle = { .size = 8.4, .weight = PANGO_WEIGHT_NORMAL, .width = width };

  lr_page_tag_begin (sheet, "H1");
  lr_theme_set_color (sheet->cr, sheet->theme->ink, 1.0);
  lr_text_draw (sheet->cr, sheet->theme, &title, place->area.x, place->area.y + TITLE_Y_PT, lr_page_title_text (sheet));
  lr_page_tag_end (sheet, "H1");

  lr_page_tag_begin (sheet, "P");
  lr_theme_set_color (sheet->cr, sheet->theme->ink2, 1.0);
  lr_text_draw (sheet->cr, sheet->theme, &subtitle, place->area.x, place->area.y + SUBTITLE_Y_PT, job->subtitle);
  lr_page_tag_end (sheet, "P");
}

/* --- Scale bar ------------------------------------------------------------------------------------------------ */

static char *
bar_label (const LrSheet         *sheet,
           const LrStandardScale *scale,
           int                    i)
{
  double unit_m = lr_page_is_imperial (sheet) ? 0.3048 : 1.0;
  g_autofree char *number = g_strdup_printf ("%.4g", i * scale->step_m / unit_m);

  if (i < scale->n_steps)
    return g_steal_pointer (&number);

  return g_strdup_printf (lr_page_is_imperial (sheet) ? _("%s ft") : _("%s m"), number);
}

/* "4 m on this bar are 80 mm on paper" */
static char *
bar_note (const LrSheet         *sheet,
          const LrStandardScale *scale)
{
  g_autofree char *length = bar_label (sheet, scale, scale->n_steps);
  double paper_mm = scale->step_m * scale->n_steps * 1000.0 / scale->scale;

  return lr_page_is_imperial (sheet) ? g_strdup_printf (_("%s on this bar are %.4g in on paper"), length, paper_mm / 25.4)
                             : g_strdup_printf (_("%s on this bar are %.4g mm on paper"), length, paper_mm);
}

static void
draw_bar (const LrSheet         *sheet,
          const LrStandardScale *scale,
          double                 x,
          double                 y)
{
  double step = scale->step_m * 1000.0 * LR_MM_PT / scale->scale;
  cairo_t *cr = sheet->cr;

  lr_theme_set_color (cr, sheet->theme->ink, 1.0);
  for (int i = 0; i < scale->n_steps; i += 2)
    cairo_rectangle (cr, x + i * step, y, step, 3.2);
  cairo_fill (cr);

  lr_theme_set_line (cr, sheet->theme, LR_LINE_THIN, LR_DASH_SOLID);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_rectangle (cr, x, y, step * scale->n_steps, 3.2);
  cairo_stroke (cr);

  for (int i = 0; i <= scale->n_steps; i++)
    {
      g_autofree char *label = bar_label (sheet, scale, i);
      g_autofree char *number = g_strdup (label);
      double width;

      /* the figure stands on its stroke, the unit beside it */
      number[strcspn (number, " ")] = '\0';
      width = lr_page_text_width (sheet, LR_PAGE_NOTE_SIZE, PANGO_WEIGHT_NORMAL, number);
      lr_page_put (sheet, LR_PAGE_NOTE_SIZE, PANGO_WEIGHT_NORMAL, LR_ALIGN_LEFT, sheet->theme->ink,
                   x + i * step - width / 2.0, y - 3.8, label);
    }
}

/**
 * lr_page_scale_draw:
 * @sheet: the page
 * @scale: a standard one
 * @scale_pt: points to the metre
 * @left: where words begin
 * @right: where the bar ends, at least as far off as both need
 * @base: baseline
 *
 * Writes the scale and draws a bar that proves it.
 */
void
lr_page_scale_draw (const LrSheet         *sheet,
                    const LrStandardScale *scale,
                    double                 scale_pt,
                    double                 left,
                    double                 right,
                    double                 base)
{
  g_autofree char *title = g_strdup_printf (_("Scale 1:%d"), scale->scale);
  g_autofree char *note = bar_note (sheet, scale);
  double x;

  lr_page_tag_begin (sheet, "P");
  x = left + lr_page_put (sheet, 8.6, PANGO_WEIGHT_BOLD, LR_ALIGN_LEFT, sheet->theme->ink, left, base, title) + 4.2;
  lr_page_put (sheet, LR_PAGE_NOTE_SIZE, PANGO_WEIGHT_NORMAL, LR_ALIGN_LEFT, sheet->theme->ink2, x, base, note);
  draw_bar (sheet, scale, right - scale->step_m * scale->n_steps * scale_pt, base - 4.6);
  lr_page_tag_end (sheet, "P");
}

/* Scale and bar under the room, from its left to its right face where they fit, else in the middle of the area */
static void
draw_scale (const LrSheet     *sheet,
            const LrPlanPlace *place)
{
  const LrStandardScale *scale = lr_page_standard_scale (sheet, place->scale);
  g_autofree char *title = g_strdup_printf (_("Scale 1:%d"), place->scale);
  g_autofree char *note = bar_note (sheet, scale);
  double bar = scale->step_m * scale->n_steps * place->view.scale;
  double words = lr_page_text_width (sheet, 8.6, PANGO_WEIGHT_BOLD, title) + 4.2
                 + lr_page_text_width (sheet, LR_PAGE_NOTE_SIZE, PANGO_WEIGHT_NORMAL, note);
  double left = place->view.origin.x + place->low_m.x * place->view.scale;
  double right = place->view.origin.x + place->high_m.x * place->view.scale;
  double need = words + 16.0 + bar;

  if (right - left < need)
    {
      left = CLAMP ((left + right - need) / 2.0, place->area.x, MAX (place->area.x + place->area.width - need, place->area.x));
      right = left + need;
    }
  lr_page_scale_draw (sheet, scale, place->view.scale, left, right, place->bar_y + LR_PAGE_BAR_PT);
}

/* --- The plan ------------------------------------------------------------------------------------------------- */

static void
draw_no_plan (const LrSheet     *sheet,
              const LrPlanPlace *place)
{
  gboolean is_empty = sheet->study->setup->room->n_corners < 3;

  lr_page_tag_begin (sheet, "P");
  lr_page_put (sheet, 10.0, PANGO_WEIGHT_NORMAL, LR_ALIGN_CENTRE, sheet->theme->ink2,
               place->area.x + place->area.width / 2.0, place->area.y + place->area.height / 2.0,
               is_empty ? _("The room has no walls yet.") : _("The room is too large for a sheet of this size."));
  lr_page_tag_end (sheet, "P");
}

/**
 * lr_page_plan_draw:
 * @sheet: the page
 * @place: where the plan stands
 *
 * Draws the plan, its dimensions, taped corners and scale bar.
 */
void
lr_page_plan_draw (const LrSheet     *sheet,
                   const LrPlanPlace *place)
{
  const LrStudy *study = sheet->study;
  g_autoptr (GArray) marks = lr_tape_marks_new (study);
  g_autoptr (LrPlan) planned = lr_page_planned (sheet);
  LrView view = place->view;
  cairo_t *cr = sheet->cr;

  if (!place->has_plan)
    {
      draw_no_plan (sheet, place);
      return;
    }

  lr_page_anchor (sheet, "plan");
  lr_page_tag_begin (sheet, "Figure");
  cairo_save (cr);
  cairo_rectangle (cr, place->area.x, place->area.y, place->area.width + place->gutter / 2.0, place->area.height);
  cairo_clip (cr);
  view.planned = planned;
  lr_floor_draw (cr, study->plan, study, sheet->remarks, &view);
  cairo_restore (cr);
  lr_north_draw (cr, sheet->theme, study->setup->room->north_rad, NORTH_RADIUS_PT,
                 place->area.x + place->area.width - 15.7, place->area.y + 21.2);

  lr_page_chains_draw (sheet, &place->view, place->chains);
  lr_page_corners_draw (sheet, &place->view, marks);
  lr_page_tag_end (sheet, "Figure");

  draw_scale (sheet, place);
}
