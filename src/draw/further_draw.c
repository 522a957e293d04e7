/* further_draw.c - painting a sheet that follows the plan
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "further.h"

#include <glib/gi18n-lib.h>

#define JOB_Y_PT    8.0  /* baselines from the upper margin */
#define TITLE_Y_PT  32.0
#define RULE_Y_PT   38.0
#define TICK_PT     1.1  /* width of a tick's stroke */

/**
 * lr_flow_style:
 * @width: at which text is broken [pt]; 0: not
 *
 * Returns: of body type
 */
LrTextStyle
lr_flow_style (double width)
{
  return (LrTextStyle) { .size = LR_FLOW_BODY_SIZE, .weight = PANGO_WEIGHT_NORMAL, .width = width, .wraps = width > 0.0, .has_markup = TRUE };
}

/* Markup that gives way at the end: one line */
static void
put_line (const LrSheet *sheet,
          double         size,
          int            weight,
          LrAlign        align,
          LrColor        color,
          double         x,
          double         y,
          double         width,
          const char    *markup)
{
  const LrTextStyle style = { .size = size, .weight = weight, .align = align, .width = width, .has_markup = TRUE };

  lr_theme_set_color (sheet->cr, color, 1.0);
  lr_text_draw (sheet->cr, sheet->theme, &style, x, y, markup);
}

static char *
day_text (const LrJob *job)
{
  g_auto (GStrv) parts = g_strsplit (job->date, "-", 3);
  g_autoptr (GDateTime) day = NULL;

  if (g_strv_length (parts) == 3)
    day = g_date_time_new_utc ((int) g_ascii_strtoll (parts[0], NULL, 10), (int) g_ascii_strtoll (parts[1], NULL, 10),
                               (int) g_ascii_strtoll (parts[2], NULL, 10), 0, 0, 0.0);
  /* Translators: a day, see strftime() */
  return day != NULL ? g_date_time_format (day, _("%a %d %b %Y")) : g_strdup ("");
}

/* The job, the day and the number of the sheet; under it the list's title */
static void
draw_head (const LrSheet     *sheet,
           const LrFlowSheet *flow_sheet,
           const LrBox       *box,
           guint              number,
           guint              n_sheets)
{
  const LrTheme *theme = sheet->theme;
  const LrJob *job = sheet->study->plan->job;
  const char *title = lr_page_title_text (sheet);
  g_autofree char *day = day_text (job);
  /* Translators: which sheet of how many */
  g_autofree char *count = g_strdup_printf (_("sheet %u of %u"), number, n_sheets);
  g_autofree char *right = g_strconcat (day, day[0] != '\0' ? "   " : "", count, NULL);
  g_autofree char *left = g_markup_printf_escaped ("%s%s%s", title, job->title[0] != '\0' ? ", " : "",
                                                   job->title[0] != '\0' ? sheet->study->setup->name : "");
  /* Translators: title of a list that began on the sheet before */
  g_autofree char *name = flow_sheet->goes_on ? g_strdup_printf (_("%s, continued"), flow_sheet->title->text) : g_strdup (flow_sheet->title->text);
  double right_width = lr_page_text_width (sheet, LR_FLOW_NOTE_SIZE, PANGO_WEIGHT_NORMAL, right);

  lr_page_tag_begin (sheet, "P");
  put_line (sheet, LR_FLOW_NOTE_SIZE, PANGO_WEIGHT_SEMIBOLD, LR_ALIGN_LEFT, theme->ink2, box->x, box->y + JOB_Y_PT,
            box->width - right_width - LR_FLOW_GAP_PT, left);
  lr_page_put (sheet, LR_FLOW_NOTE_SIZE, PANGO_WEIGHT_NORMAL, LR_ALIGN_RIGHT, theme->ink2, box->x + box->width, box->y + JOB_Y_PT, right);
  lr_page_tag_end (sheet, "P");

  lr_page_tag_begin (sheet, "H1");
  put_line (sheet, LR_FLOW_TITLE_SIZE, PANGO_WEIGHT_BOLD, LR_ALIGN_LEFT, theme->ink, box->x, box->y + TITLE_Y_PT, 0.62 * box->width, name);
  if (flow_sheet->title->note != NULL)
    put_line (sheet, LR_FLOW_NOTE_SIZE, PANGO_WEIGHT_NORMAL, LR_ALIGN_RIGHT, theme->ink2, box->x + box->width, box->y + TITLE_Y_PT,
              0.36 * box->width, flow_sheet->title->note);
  lr_page_tag_end (sheet, "H1");
  lr_page_rule (sheet, LR_LINE_OUTLINE, box->x, box->y + RULE_Y_PT, box->width);
}

static void
draw_group (const LrSheet *sheet,
            const LrBlock *block,
            gboolean       goes_on,
            const LrBox   *box,
            double         y)
{
  g_autofree char *text = goes_on ? g_strdup_printf (_("%s, continued"), block->text) : g_strdup (block->text);

  lr_page_tag_begin (sheet, "H2");
  put_line (sheet, LR_FLOW_GROUP_SIZE, PANGO_WEIGHT_BOLD, LR_ALIGN_LEFT, sheet->theme->ink, box->x, y + LR_FLOW_GROUP_PT - 6.0, box->width, text);
  lr_page_tag_end (sheet, "H2");
}

static void
draw_box (const LrSheet *sheet,
          LrFlowBox      box,
          double         x,
          double         y)
{
  cairo_t *cr = sheet->cr;

  if (box == LR_FLOW_NO_BOX)
    return;

  lr_theme_set_color (cr, sheet->theme->ink, 1.0);
  lr_theme_set_line (cr, sheet->theme, LR_LINE_THIN, LR_DASH_SOLID);
  cairo_rectangle (cr, x, y, LR_FLOW_BOX_PT, LR_FLOW_BOX_PT);
  cairo_stroke (cr);
  if (box != LR_FLOW_BOX_TICKED)
    return;

  cairo_set_line_width (cr, TICK_PT);
  cairo_move_to (cr, x + 0.2 * LR_FLOW_BOX_PT, y + 0.5 * LR_FLOW_BOX_PT);
  cairo_line_to (cr, x + 0.42 * LR_FLOW_BOX_PT, y + 0.75 * LR_FLOW_BOX_PT);
  cairo_line_to (cr, x + 0.82 * LR_FLOW_BOX_PT, y + 0.22 * LR_FLOW_BOX_PT);
  cairo_stroke (cr);
}

static void
draw_heads (const LrFlow  *flow,
            const LrSheet *sheet,
            const LrBlock *block,
            const LrBox   *box,
            double         y)
{
  lr_page_tag_begin (sheet, "TR");
  for (gsize i = 0; i < block->n_columns; i++)
    {
      const LrFlowColumn *column = &block->columns[i];
      double x, width;

      if (column->head == NULL)
        continue;
      lr_flow_column (flow, block, i, &x, &width);
      lr_page_tag_begin (sheet, "TH");
      lr_page_put (sheet, LR_FLOW_HEADS_SIZE, PANGO_WEIGHT_NORMAL, column->align, sheet->theme->ink2,
                   box->x + x + (column->align == LR_ALIGN_RIGHT ? width : 0.0), y - 3.6, _(column->head));
      lr_page_tag_end (sheet, "TH");
    }
  lr_page_tag_end (sheet, "TR");
  lr_page_rule (sheet, LR_LINE_THIN, box->x, y, box->width);
}

static void
draw_row (const LrFlow  *flow,
          const LrSheet *sheet,
          const LrBlock *block,
          const LrBox   *box,
          double         y)
{
  if (block->has_heads)
    draw_heads (flow, sheet, block, box, y);

  lr_page_tag_begin (sheet, "TR");
  draw_box (sheet, block->box, box->x, y + block->pad + 0.5 * (flow->line - LR_FLOW_BOX_PT));
  for (gsize i = 0; i < block->n_columns; i++)
    {
      LrTextStyle style;
      double x, width;

      if (block->cell[i][0] == '\0')
        continue;
      lr_flow_column (flow, block, i, &x, &width);
      style = lr_flow_style (width);
      style.align = block->columns[i].align;
      lr_page_tag_begin (sheet, "TD");
      lr_theme_set_color (sheet->cr, sheet->theme->ink, 1.0);
      lr_text_draw (sheet->cr, sheet->theme, &style, box->x + x + (style.align == LR_ALIGN_RIGHT ? width : 0.0),
                    y + block->pad + flow->ascent, block->cell[i]);
      lr_page_tag_end (sheet, "TD");
    }
  lr_page_tag_end (sheet, "TR");
  lr_page_rule (sheet, LR_LINE_HAIR, box->x, y + block->height, box->width);
}

static void
draw_paragraph (const LrFlow  *flow,
                const LrSheet *sheet,
                const LrBlock *block,
                const LrBox   *box,
                double         y)
{
  const LrTextStyle style = lr_flow_style (box->width);

  lr_page_tag_begin (sheet, "P");
  lr_theme_set_color (sheet->cr, sheet->theme->ink, 1.0);
  lr_text_draw (sheet->cr, sheet->theme, &style, box->x, y + block->pad + flow->ascent, block->text);
  lr_page_tag_end (sheet, "P");
}

static void
draw_block (const LrFlow  *flow,
            const LrSheet *sheet,
            const LrBlock *block,
            const LrBox   *box)
{
  double y = box->y + block->y;
  const LrBox own = { box->x, y, box->width, block->height };

  cairo_save (sheet->cr);
  /* what is higher than a sheet */
  cairo_rectangle (sheet->cr, box->x - 1.0, box->y - 1.0, box->width + 2.0, box->height + 2.0);
  cairo_clip (sheet->cr);
  switch (block->kind)
    {
    case LR_BLOCK_GROUP:
      draw_group (sheet, block, FALSE, box, y);
      break;
    case LR_BLOCK_PARAGRAPH:
      draw_paragraph (flow, sheet, block, box, y);
      break;
    case LR_BLOCK_ROW:
      draw_row (flow, sheet, block, box, y);
      break;
    case LR_BLOCK_LINES:
      for (guint i = 1; i <= block->n_lines; i++)
        lr_page_rule (sheet, LR_LINE_HAIR, box->x + LR_FLOW_BOXES_PT, y + i * LR_FLOW_RULED_PT, box->width - LR_FLOW_BOXES_PT);
      break;
    case LR_BLOCK_FIGURE:
      block->draw (sheet, &own, block->data);
      break;
    case LR_BLOCK_WHOLE:
      block->draw (sheet, box, block->data);
      break;
    case LR_BLOCK_TITLE:
    default:
      break;
    }
  cairo_restore (sheet->cr);
}

/**
 * lr_flow_draw:
 * @flow: a flow that is broken, made with the context that is drawn on
 * @index: of one of its sheets
 * @n_sheets: of the whole document
 * @n_before: sheets before this flow's first
 *
 * Paints the sheet with its upper left corner at 0, 0.
 */
void
lr_flow_draw (const LrFlow *flow,
              guint         index,
              guint         n_sheets,
              guint         n_before)
{
  const LrSheet *sheet = flow->sheet;
  const LrFlowSheet *flow_sheet = &g_array_index (flow->sheets, LrFlowSheet, index);
  LrBox box;

  lr_flow_whole_box (flow, flow_sheet->is_lying, &box);
  box.x = LR_FLOW_MARGIN_PT;
  box.y = LR_FLOW_MARGIN_PT;
  cairo_save (sheet->cr);
  lr_page_tag_begin (sheet, "Sect");
  if (!flow_sheet->goes_on)
    {
      g_autofree char *name = g_strdup_printf ("sheet-%u", index);

      lr_page_anchor (sheet, name);
    }
  draw_head (sheet, flow_sheet, &box, n_before + index + 1, n_sheets);
  box.y += LR_FLOW_HEAD_PT;
  if (flow_sheet->group != NULL)
    draw_group (sheet, flow_sheet->group, TRUE, &box, box.y);
  for (guint i = 0; i < flow->blocks->len; i++)
    {
      const LrBlock *block = g_ptr_array_index (flow->blocks, i);

      if (block->sheet == index)
        draw_block (flow, sheet, block, &box);
    }
  lr_page_tag_end (sheet, "Sect");
  cairo_restore (sheet->cr);
}
