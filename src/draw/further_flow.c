/* further_flow.c - what stands in a list, and where it is broken
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "further.h"

static void
block_free (gpointer data)
{
  LrBlock *block = data;

  g_free (block->text);
  g_free (block->note);
  for (gsize i = 0; i < LR_FLOW_MAX_CELLS; i++)
    g_free (block->cell[i]);
  if (block->destroy != NULL)
    block->destroy (block->data);
  g_free (block);
}

/**
 * lr_flow_new:
 * @sheet: study, remarks and options of the page, and something to measure on
 *
 * Returns: (transfer full): an empty flow
 */
LrFlow *
lr_flow_new (const LrSheet *sheet)
{
  const LrTextStyle style = lr_flow_style (0.0);
  g_autoptr (PangoLayout) layout = lr_text_layout (sheet->cr, sheet->theme, &style, "x");
  LrFlow *flow = g_new0 (LrFlow, 1);

  flow->sheet = sheet;
  flow->blocks = g_ptr_array_new_with_free_func (block_free);
  flow->sheets = g_array_new (FALSE, TRUE, sizeof (LrFlowSheet));
  flow->ascent = (double) pango_layout_get_baseline (layout) / PANGO_SCALE;
  lr_text_measure (sheet->cr, sheet->theme, &style, "x", NULL, &flow->line);
  return flow;
}

/**
 * lr_flow_free:
 * @flow: (transfer full): a flow
 */
void
lr_flow_free (LrFlow *flow)
{
  g_ptr_array_unref (flow->blocks);
  g_array_unref (flow->sheets);
  g_free (flow);
}

/**
 * lr_flow_sheet:
 * @flow: a flow
 *
 * Returns: (transfer none): what its lists are of
 */
const LrSheet *
lr_flow_sheet (const LrFlow *flow)
{
  return flow->sheet;
}

/**
 * lr_flow_whole_box:
 * @flow: a flow
 * @is_lying: whether the sheet lies on its long side
 * @box: (out): the room between margins, head and foot, from 0, 0 [pt]
 */
void
lr_flow_whole_box (const LrFlow *flow,
                   gboolean      is_lying,
                   LrBox        *box)
{
  double longer, shorter;

  lr_paper_size_pt (flow->sheet->options->paper, &longer, &shorter);
  *box = (LrBox) {
    0.0, 0.0, (is_lying ? longer : shorter) - 2.0 * LR_FLOW_MARGIN_PT,
    (is_lying ? shorter : longer) - 2.0 * LR_FLOW_MARGIN_PT - LR_FLOW_HEAD_PT - LR_FLOW_FOOT_PT
  };
}

/**
 * lr_flow_width:
 * @flow: a flow
 *
 * Returns: width that text has on an upright sheet [pt]
 */
double
lr_flow_width (const LrFlow *flow)
{
  LrBox box;

  lr_flow_whole_box (flow, FALSE, &box);
  return box.width;
}

/* --- Filling -------------------------------------------------------------------------------------------------- */

static LrBlock *
add (LrFlow      *flow,
     LrBlockKind  kind)
{
  LrBlock *block = g_new0 (LrBlock, 1);

  block->kind = kind;
  g_ptr_array_add (flow->blocks, block);
  return block;
}

/**
 * lr_flow_title:
 * @flow: a flow
 * @title: markup
 * @note: (nullable): markup, at the right
 *
 * Begins a new list, on a sheet of its own.
 */
void
lr_flow_title (LrFlow     *flow,
               const char *title,
               const char *note)
{
  LrBlock *block = add (flow, LR_BLOCK_TITLE);

  block->text = g_strdup (title);
  block->note = g_strdup (note);
}

/**
 * lr_flow_group:
 * @flow: a flow
 * @title: markup
 *
 * Begins a group, whose title stays with what comes next and is said again when the group goes on over the sheet.
 */
void
lr_flow_group (LrFlow     *flow,
               const char *title)
{
  LrBlock *block = add (flow, LR_BLOCK_GROUP);

  block->text = g_strdup (title);
  block->height = LR_FLOW_GROUP_PT;
}

/**
 * lr_flow_paragraph:
 * @flow: a flow
 * @markup: broken at the width of the text
 */
void
lr_flow_paragraph (LrFlow     *flow,
                   const char *markup)
{
  const LrTextStyle style = lr_flow_style (lr_flow_width (flow));
  LrBlock *block = add (flow, LR_BLOCK_PARAGRAPH);
  double height;

  lr_text_measure (flow->sheet->cr, flow->sheet->theme, &style, markup, NULL, &height);
  block->text = g_strdup (markup);
  block->pad = LR_FLOW_PAD_PT;
  block->height = height + 2.0 * block->pad;
}

/**
 * lr_flow_table:
 * @flow: a flow
 * @columns: (array length=n_columns): at most %LR_FLOW_MAX_CELLS; it keeps the pointer
 * @n_columns: how many
 *
 * What rows that follow stand in.
 */
void
lr_flow_table (LrFlow             *flow,
               const LrFlowColumn *columns,
               gsize               n_columns)
{
  g_assert (n_columns <= LR_FLOW_MAX_CELLS);

  flow->columns = columns;
  flow->n_columns = n_columns;
}

/**
 * lr_flow_column:
 * @flow: a flow
 * @block: a row
 * @index: of a column
 * @x: (out): its left edge from the text's [pt]
 * @width: (out): [pt]
 */
void
lr_flow_column (const LrFlow  *flow,
                const LrBlock *block,
                gsize          index,
                double        *x,
                double        *width)
{
  double left = lr_flow_width (flow) - LR_FLOW_BOXES_PT - LR_FLOW_GAP_PT * (double) (block->n_columns - 1), shares = 0.0;

  for (gsize i = 0; i < block->n_columns; i++)
    {
      left -= block->columns[i].width_pt;
      shares += block->columns[i].width_pt > 0.0 ? 0.0 : block->columns[i].share > 0.0 ? block->columns[i].share : 1.0;
    }

  *x = LR_FLOW_BOXES_PT - LR_FLOW_GAP_PT;
  *width = 0.0;
  for (gsize i = 0; i <= index; i++)
    {
      const LrFlowColumn *column = &block->columns[i];

      *x += *width + LR_FLOW_GAP_PT;
      *width = column->width_pt > 0.0 ? column->width_pt : (column->share > 0.0 ? column->share : 1.0) / shares * left;
    }
}

/**
 * lr_flow_row:
 * @flow: a flow with columns
 * @box: whether there is a box to tick, and whether it is ticked
 * @cells: markup for each column, broken at its width; may hold %NULL
 */
void
lr_flow_row (LrFlow            *flow,
             LrFlowBox          box,
             const char *const *cells)
{
  LrBlock *block = add (flow, LR_BLOCK_ROW);
  double highest = flow->line;

  block->columns = flow->columns;
  block->n_columns = flow->n_columns;
  block->box = box;
  for (gsize i = 0; i < block->n_columns; i++)
    {
      double x, width, height;
      LrTextStyle style;

      block->cell[i] = g_strdup (cells[i] != NULL ? cells[i] : "");
      lr_flow_column (flow, block, i, &x, &width);
      style = lr_flow_style (width);
      lr_text_measure (flow->sheet->cr, flow->sheet->theme, &style, block->cell[i], NULL, &height);
      highest = MAX (highest, height);
    }
  block->pad = LR_FLOW_PAD_PT;
  block->height = highest + 2.0 * block->pad;
}

/**
 * lr_flow_lines:
 * @flow: a flow
 * @n: how many
 *
 * Ruled lines to write on.
 */
void
lr_flow_lines (LrFlow *flow,
               guint   n)
{
  LrBlock *block = add (flow, LR_BLOCK_LINES);

  block->n_lines = n;
  block->height = n * LR_FLOW_RULED_PT + LR_FLOW_PAD_PT;
}

/**
 * lr_flow_lines_to_foot:
 * @flow: a flow
 *
 * Ruled lines down to the foot of the sheet, three at least.
 */
void
lr_flow_lines_to_foot (LrFlow *flow)
{
  lr_flow_lines (flow, LR_FLOW_LEAST_LINES);
  ((LrBlock *) g_ptr_array_index (flow->blocks, flow->blocks->len - 1))->fills_sheet = TRUE;
}

/**
 * lr_flow_figure:
 * @flow: a flow
 * @height_pt: of the drawing
 * @draw: paints it
 * @data: (transfer full): for @draw
 * @destroy: (nullable): frees @data
 */
void
lr_flow_figure (LrFlow         *flow,
                double          height_pt,
                LrFlowDraw      draw,
                gpointer        data,
                GDestroyNotify  destroy)
{
  LrBlock *block = add (flow, LR_BLOCK_FIGURE);

  block->height = height_pt;
  block->draw = draw;
  block->data = data;
  block->destroy = destroy;
}

/**
 * lr_flow_whole:
 * @flow: a flow
 * @title: markup
 * @note: (nullable): markup, at the right
 * @is_lying: whether the sheet lies on its long side
 * @draw: paints the room that lr_flow_whole_box() tells
 * @data: (transfer full): for @draw
 * @destroy: (nullable): frees @data
 *
 * A drawing on a sheet of its own.
 */
void
lr_flow_whole (LrFlow         *flow,
               const char     *title,
               const char     *note,
               gboolean        is_lying,
               LrFlowDraw      draw,
               gpointer        data,
               GDestroyNotify  destroy)
{
  LrBlock *block = add (flow, LR_BLOCK_WHOLE);

  block->text = g_strdup (title);
  block->note = g_strdup (note);
  block->is_lying = is_lying;
  block->draw = draw;
  block->data = data;
  block->destroy = destroy;
}
