/* page_dimensions.c - chains of dimensions, drawn
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * ISO 129-1: a thin dimension line ended by oblique strokes at 45°, extension lines that start clear of the object and
 * pass the line a little, the figure above the line, readable from the foot or from the right of the sheet.
 */

#include "config.h"

#include "page_private.h"
#include "pen.h"

#define CLEAR_PT      2.5
#define STROKE_PT     3.9
#define TEXT_UP_PT    2.15

/* A chain on the sheet: places along its line, and the direction that its figures read in */
typedef struct
{
  LrVec2   along, out; /* unit, on the sheet */
  double   angle_rad;  /* of the text */
  double   face;       /* of the outer face, along out, from the room's 0, 0 */
} LrChainFrame;

static LrChainFrame
chain_frame (const LrView  *view,
             const LrChain *chain)
{
  LrChainFrame frame;

  frame.along = lr_vec2 (chain->along.x, -chain->along.y);
  frame.out = lr_vec2 (chain->out.x, -chain->out.y);
  frame.angle_rad = atan2 (frame.along.y, frame.along.x);
  if (frame.angle_rad >= LR_PI / 2.0 - 1e-9)
    frame.angle_rad -= LR_PI;
  else if (frame.angle_rad < -LR_PI / 2.0 - 1e-9)
    frame.angle_rad += LR_PI;
  frame.face = (chain->level_m + LR_WALL_M) * view->scale;
  return frame;
}

static LrVec2
frame_place (const LrChainFrame *frame,
             const LrView       *view,
             double              at_m,
             double              out_pt)
{
  return lr_vec2_along (lr_vec2_along (view->origin, frame->along, at_m * view->scale), frame->out, out_pt);
}

static void
line (cairo_t *cr,
      LrVec2   a,
      LrVec2   b)
{
  cairo_move_to (cr, a.x, a.y);
  cairo_line_to (cr, b.x, b.y);
}

static void
draw_lines (const LrSheet      *sheet,
            const LrView       *view,
            const LrChain      *chain,
            const LrChainFrame *frame)
{
  cairo_t *cr = sheet->cr;
  double at = frame->face + chain->offset_pt;
  const LrChainPoint *points = (const LrChainPoint *) (void *) chain->points->data;
  guint n = chain->points->len;
  LrVec2 stroke = lr_vec2_polar (frame->angle_rad - LR_PI / 4.0, STROKE_PT / 2.0);

  lr_theme_set_color (cr, sheet->theme->ink2, 1.0);
  lr_theme_set_line (cr, sheet->theme, LR_LINE_HAIR, LR_DASH_SOLID);
  for (guint i = 0; i < n; i++)
    {
      double start = (points[i].level_m + LR_WALL_M) * view->scale + CLEAR_PT;

      if (fabs (chain->out.y) > 0.5 && !chain->is_aligned && points[i].level_m > chain->level_m - 0.05)
        start = MAX (start, frame->face + chain->stubs_pt);
      line (cr, frame_place (frame, view, points[i].at_m, start), frame_place (frame, view, points[i].at_m, at + CLEAR_PT));
    }
  cairo_stroke (cr);

  lr_theme_set_line (cr, sheet->theme, LR_LINE_THIN, LR_DASH_SOLID);
  line (cr, frame_place (frame, view, points[0].at_m, at), frame_place (frame, view, points[n - 1].at_m, at));
  cairo_stroke (cr);

  lr_theme_set_line (cr, sheet->theme, LR_LINE_OUTLINE, LR_DASH_SOLID);
  for (guint i = 0; i < n; i++)
    {
      LrVec2 end = frame_place (frame, view, points[i].at_m, at);

      line (cr, lr_vec2_sub (end, stroke), lr_vec2_add (end, stroke));
    }
  cairo_stroke (cr);
}

/* Writes one figure with its middle at @along_pt of the chain; above the line, or below it where above has no room */
static void
draw_figure (const LrSheet      *sheet,
             const LrChainFrame *frame,
             LrVec2              at,
             gboolean            is_below,
             const char         *text)
{
  const LrTextStyle style = { .size = LR_PAGE_NOTE_SIZE, .weight = PANGO_WEIGHT_NORMAL, .align = LR_ALIGN_CENTRE };
  cairo_t *cr = sheet->cr;

  cairo_save (cr);
  cairo_translate (cr, at.x, at.y);
  cairo_rotate (cr, frame->angle_rad);
  lr_theme_set_color (cr, sheet->theme->ink2, 1.0);
  lr_text_draw_halo (cr, sheet->theme, &style, 0.0, is_below ? LR_PAGE_NOTE_SIZE + 1.6 : -TEXT_UP_PT, text);
  cairo_restore (cr);
}

/* The whole length's figure stands in the middle under a chain: there "below" is taken */
static gboolean
is_taken_below (const GPtrArray *chains,
                const LrChain   *chain,
                double           from_m,
                double           to_m,
                double           figure_m)
{
  for (guint i = 0; i < chains->len; i++)
    {
      const LrChain *other = g_ptr_array_index (chains, i);
      const LrChainPoint *points = (const LrChainPoint *) (void *) other->points->data;
      double middle_m;

      if (other == chain || other->is_aligned || other->edge != chain->edge || other->offset_pt < chain->offset_pt)
        continue;

      middle_m = (points[0].at_m + points[other->points->len - 1].at_m) / 2.0;
      if (from_m < middle_m + figure_m && to_m > middle_m - figure_m)
        return TRUE;
    }

  return FALSE;
}

static void
draw_figures (const LrSheet      *sheet,
              const LrView       *view,
              const GPtrArray    *chains,
              const LrChain      *chain,
              const LrChainFrame *frame)
{
  const LrChainPoint *points = (const LrChainPoint *) (void *) chain->points->data;
  double at = frame->face + chain->offset_pt;

  for (guint i = 0; i + 1 < chain->points->len; i++)
    {
      double length_m = points[i + 1].at_m - points[i].at_m, middle_m = points[i].at_m + length_m / 2.0;
      g_autofree char *text = lr_length_format_short (length_m, sheet->options->units);
      double width_m = lr_page_text_width (sheet, LR_PAGE_NOTE_SIZE, PANGO_WEIGHT_NORMAL, text) / view->scale;
      gboolean is_tight = width_m + 1.5 / view->scale > length_m;
      gboolean is_below = is_tight
                          && !is_taken_below (chains, chain, middle_m - width_m / 2.0, middle_m + width_m / 2.0, width_m);

      draw_figure (sheet, frame, frame_place (frame, view, middle_m, at), is_below, text);
    }
}

/**
 * lr_page_chains_draw:
 * @sheet: the page
 * @view: of the plan
 * @chains: of #LrChain
 *
 * Draws every chain: extension lines, dimension line, strokes, figures.
 */
void
lr_page_chains_draw (const LrSheet   *sheet,
                     const LrView    *view,
                     const GPtrArray *chains)
{
  cairo_save (sheet->cr);
  for (guint i = 0; i < chains->len; i++)
    {
      const LrChain *chain = g_ptr_array_index (chains, i);
      LrChainFrame frame = chain_frame (view, chain);

      draw_lines (sheet, view, chain, &frame);
      draw_figures (sheet, view, chains, chain, &frame);
    }
  cairo_restore (sheet->cr);
}
