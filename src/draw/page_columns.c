/* page_columns.c - where the columns of a table stand
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Columns are as wide as what they hold, with even gaps. When that is too wide, columns of words give way and end in an
 * ellipsis; figures are never cut.
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "page_private.h"

#define LEAST_GAP_PT     3.2 /* between columns, while words can give way */
#define TIGHT_GAP_PT     2.0
#define WORDS_GAP_PT    16.0 /* at most, before a last column of words */
#define EDGE_PT          0.6
#define LEAST_COLUMN_PT 24.0

/* Widths that the columns' heads and cells would like */
static void
measure_columns (const LrSheet *sheet,
                 LrTable       *table)
{
  for (gsize i = 0; i < table->n_columns; i++)
    {
      const char *head = table->columns[i].head;

      table->width[i] = head != NULL ? lr_page_text_width (sheet, LR_PAGE_LEAST_SIZE, PANGO_WEIGHT_NORMAL, _(head)) : 0.0;
      for (guint j = 0; j < table->rows->len; j++)
        {
          const char *cell = ((const LrRow *) g_ptr_array_index (table->rows, j))->cell[i];

          if (cell != NULL)
            table->width[i] = MAX (table->width[i], lr_page_text_width (sheet, sheet->body_size, PANGO_WEIGHT_NORMAL, cell) + 0.1);
        }
    }
}

/* Takes @excess from the flexible columns, always from the widest */
static void
narrow_columns (LrTable *table,
                double   excess)
{
  while (excess > 0.0)
    {
      double step = MIN (excess, 1.0);
      gsize widest = table->n_columns;

      for (gsize i = 0; i < table->n_columns; i++)
        if (table->columns[i].is_flexible && (widest == table->n_columns || table->width[i] > table->width[widest]))
          widest = i;
      if (widest == table->n_columns || table->width[widest] < LEAST_COLUMN_PT)
        return;

      table->width[widest] -= step;
      excess -= step;
    }
}

/**
 * lr_table_place_columns:
 * @sheet: the page
 * @table: a table with more than one column, its cells filled
 * @width: [pt]
 *
 * Places the columns from the tags to the right edge, with even gaps.
 */
void
lr_table_place_columns (const LrSheet *sheet,
                        LrTable       *table,
                        double         width)
{
  gsize n = table->n_columns;
  double total = LR_PAGE_CELLS_X_PT, n_gaps = (double) n - 1.0, gap;

  measure_columns (sheet, table);
  for (gsize i = 0; i < n; i++)
    total += table->width[i];
  narrow_columns (table, total + n_gaps * LEAST_GAP_PT - width);

  total = LR_PAGE_CELLS_X_PT;
  for (gsize i = 0; i < n; i++)
    total += table->width[i];
  gap = (width - EDGE_PT - total) / n_gaps;
  /* a last column of words follows the others instead of keeping to the right */
  gap = CLAMP (gap, TIGHT_GAP_PT, table->columns[n - 1].align == LR_ALIGN_LEFT ? WORDS_GAP_PT : width);

  for (gsize i = 0; i < n; i++)
    table->x[i] = i == 0 ? LR_PAGE_CELLS_X_PT : table->x[i - 1] + table->width[i - 1] + gap;
}
