/* page.c - the one-page plan: where everything stands
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Left: title, plan, scale bar, places by tape. Right: when and who, frames, tables, what the place is asked to do,
 * what is still open, cautions. Foot: the title block. Drawn in reading order, because that is the order in which a
 * PDF gives its text back.
 */

#include "config.h"

#include <cairo-pdf.h>

#include "page_private.h"

/**
 * lr_paper_size_pt:
 * @paper: which
 * @width_pt: (out): the longer side
 * @height_pt: (out): the shorter side
 *
 * Sizes of paper lying on its long side: A4 is 297 by 210 mm (ISO 216), Letter 11 by 8.5 in (ANSI/ASME Y14.1, size A).
 */
void
lr_paper_size_pt (LrPaper  paper,
                  double  *width_pt,
                  double  *height_pt)
{
  *width_pt = paper == LR_PAPER_LETTER ? 11.0 * LR_IN_PT : 297.0 * LR_MM_PT;
  *height_pt = paper == LR_PAPER_LETTER ? 8.5 * LR_IN_PT : 210.0 * LR_MM_PT;
}

/* --- Helpers of all parts ------------------------------------------------------------------------------------- */

/**
 * lr_page_put:
 * @sheet: the page
 * @size: of the type [pt]
 * @weight: #PangoWeight
 * @align: which end of the baseline is at @x
 * @color: of the text
 * @x: [pt]
 * @y: baseline [pt]
 * @text: plain text
 *
 * Returns: its width [pt]
 */
double
lr_page_put (const LrSheet *sheet,
             double         size,
             int            weight,
             LrAlign        align,
             LrColor        color,
             double         x,
             double         y,
             const char    *text)
{
  const LrTextStyle style = { .size = size, .weight = weight, .align = align };

  lr_theme_set_color (sheet->cr, color, 1.0);
  return lr_text_draw (sheet->cr, sheet->theme, &style, x, y, text);
}

/**
 * lr_page_put_markup:
 * @sheet: the page
 * @size: of the type [pt]
 * @color: of the text
 * @x: left edge [pt]
 * @y: baseline of the first line [pt]
 * @width: at which it is broken [pt]
 * @markup: Pango markup
 *
 * Returns: height of its lines, from its first baseline to that of a line after it [pt]
 */
double
lr_page_put_markup (const LrSheet *sheet,
                    double         size,
                    LrColor        color,
                    double         x,
                    double         y,
                    double         width,
                    const char    *markup)
{
  const LrTextStyle style = { .size = size, .weight = PANGO_WEIGHT_NORMAL, .width = width, .wraps = TRUE, .has_markup = TRUE };
  double height;

  lr_theme_set_color (sheet->cr, color, 1.0);
  lr_text_draw (sheet->cr, sheet->theme, &style, x, y, markup);
  lr_text_measure (sheet->cr, sheet->theme, &style, markup, NULL, &height);
  return height;
}

/**
 * lr_page_put_paragraph:
 * @sheet: the page
 * @color: of the text
 * @size: of the type [pt]
 * @x: left edge [pt]
 * @y: baseline of the first line [pt]
 * @width: at which it is broken [pt]
 * @markup: Pango markup; nothing is drawn for ""
 *
 * Returns: the baseline of a line after it [pt]
 */
double
lr_page_put_paragraph (const LrSheet *sheet,
                       LrColor        color,
                       double         size,
                       double         x,
                       double         y,
                       double         width,
                       const char    *markup)
{
  const LrTextStyle style = { .size = size, .weight = PANGO_WEIGHT_NORMAL, .has_markup = TRUE };
  double full;

  if (markup[0] == '\0')
    return y;

  /* a little smaller rather than a word on a line of its own */
  lr_text_measure (sheet->cr, sheet->theme, &style, markup, &full, NULL);
  if (full > width && full * LR_PAGE_LEAST_SIZE / size <= width)
    size *= width / full;

  lr_page_tag_begin (sheet, "P");
  y += lr_page_put_markup (sheet, size, color, x, y, width, markup);
  lr_page_tag_end (sheet, "P");
  return y;
}

/**
 * lr_page_put_line:
 * @sheet: the page
 * @color: of the text
 * @size: of the type [pt]
 * @x: left edge [pt]
 * @y: baseline [pt]
 * @width: that it has [pt]
 * @markup: Pango markup
 *
 * One line: what is too long is set smaller, and what is still too long ends in an ellipsis.
 */
void
lr_page_put_line (const LrSheet *sheet,
                  LrColor        color,
                  double         size,
                  double         x,
                  double         y,
                  double         width,
                  const char    *markup)
{
  LrTextStyle style = { .size = size, .weight = PANGO_WEIGHT_NORMAL, .has_markup = TRUE };
  double full;

  lr_text_measure (sheet->cr, sheet->theme, &style, markup, &full, NULL);
  if (full > width)
    {
      style.size = fmax (LR_PAGE_LEAST_SIZE, size * width / full);
      style.width = width;
    }
  lr_theme_set_color (sheet->cr, color, 1.0);
  lr_text_draw (sheet->cr, sheet->theme, &style, x, y, markup);
}

/**
 * lr_page_text_width:
 * @sheet: the page
 * @size: of the type [pt]
 * @weight: #PangoWeight
 * @text: plain text
 *
 * Returns: [pt]
 */
double
lr_page_text_width (const LrSheet *sheet,
                    double         size,
                    int            weight,
                    const char    *text)
{
  const LrTextStyle style = { .size = size, .weight = weight };
  double width;

  lr_text_measure (sheet->cr, sheet->theme, &style, text, &width, NULL);
  return width;
}

/**
 * lr_page_is_imperial:
 * @sheet: the page
 *
 * Returns: whether its lengths are in feet and inches
 */
gboolean
lr_page_is_imperial (const LrSheet *sheet)
{
  return sheet->options->units == LR_UNITS_IMPERIAL;
}

/**
 * lr_page_title_text:
 * @sheet: the page
 *
 * Returns: (transfer none): title of the job, or the name of the set-up while it has none
 */
const char *
lr_page_title_text (const LrSheet *sheet)
{
  const char *title = sheet->study->plan->job->title;

  return title[0] != '\0' ? title : sheet->study->setup->name;
}

/**
 * lr_page_rule:
 * @sheet: the page
 * @weight: of the line
 * @x: left end
 * @y: [pt]
 * @width: [pt]
 *
 * Draws a level line.
 */
void
lr_page_rule (const LrSheet *sheet,
              LrLineWeight   weight,
              double         x,
              double         y,
              double         width)
{
  lr_theme_set_color (sheet->cr, sheet->theme->ink, 1.0);
  lr_theme_set_line (sheet->cr, sheet->theme, weight, LR_DASH_SOLID);
  cairo_set_line_cap (sheet->cr, CAIRO_LINE_CAP_BUTT);
  cairo_move_to (sheet->cr, x, y);
  cairo_line_to (sheet->cr, x + width, y);
  cairo_stroke (sheet->cr);
}

/**
 * lr_page_tag_begin:
 * @sheet: the page
 * @tag: a structure type of ISO 32000-1, 14.8.4
 *
 * What is drawn until lr_page_tag_end() belongs to an element of the document's structure.
 */
void
lr_page_tag_begin (const LrSheet *sheet,
                   const char    *tag)
{
  cairo_tag_begin (sheet->cr, tag, NULL);
}

/**
 * lr_page_tag_end:
 * @sheet: the page
 * @tag: as given to lr_page_tag_begin()
 */
void
lr_page_tag_end (const LrSheet *sheet,
                 const char    *tag)
{
  cairo_tag_end (sheet->cr, tag);
}

/**
 * lr_page_anchor:
 * @sheet: the page
 * @name: as in the outline
 *
 * A place that the document's outline leads to.
 */
void
lr_page_anchor (const LrSheet *sheet,
                const char    *name)
{
  g_autofree char *attributes = g_strdup_printf ("name='%s' internal", name);

  cairo_tag_begin (sheet->cr, CAIRO_TAG_DEST, attributes);
  cairo_tag_end (sheet->cr, CAIRO_TAG_DEST);
}

/* --- The page ------------------------------------------------------------------------------------------------- */

/**
 * lr_page_draw:
 * @cr: a cairo context whose unit is a point
 * @study: of the plan
 * @remarks: on it
 * @options: paper and units
 *
 * Paints the page with its upper left corner at 0, 0.
 */
void
lr_page_draw (cairo_t             *cr,
              const LrStudy       *study,
              const LrRemarks     *remarks,
              const LrPageOptions *options)
{
  LrSheet sheet = { cr, lr_theme_get (LR_THEME_PAGE), study, remarks, options, LR_PAGE_BODY_SIZE };
  double width, height, foot;
  LrPlanPlace place;
  LrBox column, tape, block;

  lr_paper_size_pt (options->paper, &width, &height);
  lr_page_plan_place (&sheet, width, height, &place);
  if (place.column_width < 0.9 * LR_PAGE_COLUMN_PT)
    sheet.body_size = LR_PAGE_NARROW_SIZE;

  foot = height - LR_PAGE_MARGIN_PT - LR_PAGE_BLOCK_PT;
  block = (LrBox) { LR_PAGE_MARGIN_PT, foot, width - 2.0 * LR_PAGE_MARGIN_PT, LR_PAGE_BLOCK_PT };
  column = (LrBox) { width - LR_PAGE_MARGIN_PT - place.column_width, LR_PAGE_MARGIN_PT, place.column_width, foot - LR_PAGE_FOOT_PT - LR_PAGE_MARGIN_PT };
  tape = (LrBox) { place.area.x, foot - LR_PAGE_FOOT_PT - lr_page_tape_height (place.tape_lines), place.area.width, lr_page_tape_height (place.tape_lines) };

  cairo_save (cr);
  lr_page_tag_begin (&sheet, "Document");
  lr_page_title_draw (&sheet, &place);
  lr_page_column_draw (&sheet, &column);
  lr_page_plan_draw (&sheet, &place);
  lr_page_tape_draw (&sheet, &tape, place.tape_lines);
  lr_page_block_draw (&sheet, &block);
  lr_page_tag_end (&sheet, "Document");
  cairo_restore (cr);

  lr_page_plan_clear (&place);
}

/**
 * lr_page_scale:
 * @study: of the plan
 * @options: paper and units
 *
 * Returns: the denominator of the standard scale that the page is drawn at: 50 for 1:50
 */
int
lr_page_scale (const LrStudy       *study,
               const LrPageOptions *options)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  const LrSheet sheet = { cr, lr_theme_get (LR_THEME_PAGE), study, NULL, options, LR_PAGE_BODY_SIZE };
  double width, height;
  LrPlanPlace place;
  int scale;

  lr_paper_size_pt (options->paper, &width, &height);
  lr_page_plan_place (&sheet, width, height, &place);
  scale = place.scale;
  lr_page_plan_clear (&place);

  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return scale;
}
