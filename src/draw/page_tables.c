/* page_tables.c - tables and lists of the page: measuring, cutting, drawing
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A table is its title over a rule, heads, rows, and lines under them. A list is the same without heads; its sentences
 * wrap. All distances run from baseline to baseline, so that rows of the two halves of the page keep their rhythm.
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "page_private.h"
#include "symbols.h"

#define TITLE_PT      7.8  /* upper edge of a title to its baseline */
#define RULE_PT       4.2  /* baseline of a title to its rule */
#define HEADS_PT      8.6  /* rule to the heads' baseline */
#define FIRST_ROW_PT  9.6  /* heads, or a list's rule, to the first row */
#define LINE_PT       8.5  /* between lines of one sentence */
#define FEET_PT       8.6
#define BOX_PAD_PT    (2.0 * LR_MM_PT)
#define BOX_FOOT_PT   4.9
#define DESCENT_PT    1.7  /* baseline of the last line to the foot of the table */
#define TAG_X_PT      7.7
#define TAG_SIZE      6.6
#define SENTENCE_X_PT 14.2
#define BULLET_X_PT   5.1

static double
inset (const LrTable *table)
{
  return table->is_boxed ? BOX_PAD_PT : 0.0;
}

/* Left edge of the sentences, from the list's own */
static double
sentence_x (const LrTable *table)
{
  return inset (table) + (table->bullet == LR_BULLET_NONE ? 0.0 : table->bullet == LR_BULLET_BOX ? 10.8 : SENTENCE_X_PT);
}

static LrTextStyle
sentence_style (const LrSheet *sheet,
                const LrTable *table,
                double         width)
{
  return (LrTextStyle) {
    .size = sheet->body_size,
    .weight = PANGO_WEIGHT_NORMAL,
    .width = width - sentence_x (table) - inset (table),
    .wraps = TRUE,
    .has_markup = TRUE
  };
}

static LrTextStyle
foot_style (double width)
{
  return (LrTextStyle) { .size = LR_PAGE_LEAST_SIZE, .weight = PANGO_WEIGHT_NORMAL, .width = width, .wraps = TRUE };
}

static guint
n_foot_lines (const LrSheet *sheet,
              const char    *foot,
              double         width)
{
  const LrTextStyle style = foot_style (width);
  g_autoptr (PangoLayout) layout = lr_text_layout (sheet->cr, sheet->theme, &style, foot);

  return (guint) pango_layout_get_line_count (layout);
}

/**
 * lr_table_wrap:
 * @sheet: the page
 * @table: a table or a list
 * @width: [pt]
 *
 * Finds the places of the columns in @width, and how high each sentence is when it is broken there.
 */
void
lr_table_wrap (const LrSheet *sheet,
               LrTable       *table,
               double         width)
{
  const LrTextStyle style = sentence_style (sheet, table, width);

  if (table->n_columns > 1)
    lr_table_place_columns (sheet, table, width);

  for (guint i = 0; i < table->rows->len; i++)
    {
      LrRow *row = g_ptr_array_index (table->rows, i);
      g_autoptr (PangoLayout) layout = NULL;

      if (row->markup == NULL)
        continue;

      layout = lr_text_layout (sheet->cr, sheet->theme, &style, row->markup);
      row->height = (pango_layout_get_line_count (layout) - 1) * LINE_PT;
    }

  table->n_foot_lines = 0;
  for (guint i = 0; i < table->feet->len; i++)
    table->n_foot_lines += n_foot_lines (sheet, g_ptr_array_index (table->feet, i), width);
}

static double
row_pitch (const LrTable *table,
           double         ease)
{
  return MAX ((table->columns != NULL ? 9.3 : 8.7) + 0.9 * ease, LINE_PT);
}

/* Title to the first row's baseline */
static double
head_height (const LrTable *table)
{
  if (table->is_boxed)
    return BOX_FOOT_PT + 0.6 + TITLE_PT + 11.4;

  return TITLE_PT + RULE_PT + (table->columns != NULL ? HEADS_PT : 0.0) + FIRST_ROW_PT;
}

static guint
n_left_out (const LrTable *table)
{
  return table->rows->len - table->n_shown;
}

/**
 * lr_table_height:
 * @table: a table, wrapped
 * @ease: 0 tight to 1 airy; a little less than 0 is tighter still
 *
 * Returns: from the upper edge of its title to the foot of its last line [pt]; 0 when it has no rows
 */
double
lr_table_height (const LrTable *table,
                 double         ease)
{
  guint n_lines = table->n_shown + (n_left_out (table) > 0 ? 1 : 0);
  double height = head_height (table) + DESCENT_PT;

  if (table->rows->len == 0)
    return 0.0;

  height += (MAX (n_lines, 1) - 1) * row_pitch (table, ease) + table->n_foot_lines * FEET_PT;
  for (guint i = 0; i < table->n_shown; i++)
    height += ((const LrRow *) g_ptr_array_index (table->rows, i))->height;

  return table->is_boxed ? height + BOX_FOOT_PT - DESCENT_PT : height;
}

/* --- Drawing -------------------------------------------------------------------------------------------------- */

static void
draw_title (const LrSheet *sheet,
            const LrTable *table,
            double         x,
            double         y,
            double         width)
{
  const LrTheme *theme = sheet->theme;

  lr_page_tag_begin (sheet, "H2");
  lr_page_put (sheet, LR_PAGE_HEAD_SIZE, PANGO_WEIGHT_BOLD, LR_ALIGN_LEFT, theme->ink, x, y, table->title);
  if (table->note != NULL)
    lr_page_put (sheet, LR_PAGE_NOTE_SIZE, PANGO_WEIGHT_NORMAL, LR_ALIGN_RIGHT, theme->ink2, x + width, y, table->note);
  lr_page_tag_end (sheet, "H2");

  if (!table->is_boxed)
    lr_page_rule (sheet, LR_LINE_OUTLINE, x, y + RULE_PT, width);
}

static double
column_anchor (const LrTable *table,
               gsize          i)
{
  return table->x[i] + (table->columns[i].align == LR_ALIGN_RIGHT ? table->width[i] : 0.0);
}

/**
 * lr_table_draw_heads:
 * @sheet: the page
 * @table: a table, wrapped
 * @x: its left edge
 * @y: baseline of the heads
 */
void
lr_table_draw_heads (const LrSheet *sheet,
                     const LrTable *table,
                     double         x,
                     double         y)
{
  lr_page_tag_begin (sheet, "TR");
  for (gsize i = 0; i < table->n_columns; i++)
    {
      const LrColumn *column = &table->columns[i];

      if (column->head == NULL)
        continue;

      lr_page_tag_begin (sheet, "TH");
      lr_page_put (sheet, LR_PAGE_LEAST_SIZE, PANGO_WEIGHT_NORMAL, column->align, sheet->theme->ink2,
                   x + column_anchor (table, i), y, _(column->head));
      lr_page_tag_end (sheet, "TH");
    }
  lr_page_tag_end (sheet, "TR");
}

static void
draw_cell (const LrSheet *sheet,
           const LrTable *table,
           gsize          i,
           double         x,
           double         y,
           const char    *text)
{
  const LrTextStyle style = {
    .size = sheet->body_size,
    .weight = PANGO_WEIGHT_NORMAL,
    .align = table->columns[i].align,
    .width = table->columns[i].is_flexible ? table->width[i] : 0.0
  };

  lr_page_tag_begin (sheet, "TD");
  lr_theme_set_color (sheet->cr, sheet->theme->ink, 1.0);
  lr_text_draw (sheet->cr, sheet->theme, &style, x + column_anchor (table, i), y, text);
  lr_page_tag_end (sheet, "TD");
}

/**
 * lr_table_draw_row:
 * @sheet: the page
 * @table: a table, wrapped
 * @row: one of its rows
 * @x: left edge of the table
 * @y: baseline of the row
 */
void
lr_table_draw_row (const LrSheet *sheet,
                   const LrTable *table,
                   const LrRow   *row,
                   double         x,
                   double         y)
{
  lr_page_tag_begin (sheet, "TR");
  if (row->tag[0] != '\0')
    {
      lr_page_tag_begin (sheet, "TH");
      lr_tag_draw_low (sheet->cr, sheet->theme, row->kind, row->tag, TAG_SIZE, x + TAG_X_PT, y - sheet->body_size * 0.36);
      lr_page_tag_end (sheet, "TH");
    }

  for (gsize i = 0; i < table->n_columns; i++)
    if (row->cell[i] != NULL)
      draw_cell (sheet, table, i, x, y, row->cell[i]);
  lr_page_tag_end (sheet, "TR");
}

static void
draw_bullet (const LrSheet *sheet,
             const LrTable *table,
             LrGrade        grade,
             double         x,
             double         y)
{
  cairo_t *cr = sheet->cr;
  double middle = y - sheet->body_size * 0.36;

  switch (table->bullet)
    {
    case LR_BULLET_NONE:
      break;
    case LR_BULLET_DOT:
      lr_theme_set_color (cr, sheet->theme->ink, 1.0);
      cairo_new_sub_path (cr);
      cairo_arc (cr, x + BULLET_X_PT, middle, 1.1, 0.0, 2.0 * LR_PI);
      cairo_fill (cr);
      break;
    case LR_BULLET_BOX:
      lr_theme_set_color (cr, sheet->theme->ink, 1.0);
      lr_theme_set_line (cr, sheet->theme, LR_LINE_THIN, LR_DASH_SOLID);
      cairo_rectangle (cr, x, middle - 3.0, 6.0, 6.0);
      cairo_stroke (cr);
      break;
    case LR_BULLET_GRADE:
      lr_grade_mark_draw (cr, sheet->theme, grade, 3.7, x + BULLET_X_PT, middle);
      break;
    default:
      g_assert_not_reached ();
    }
}

static void
draw_sentence (const LrSheet *sheet,
               const LrTable *table,
               const LrRow   *row,
               double         x,
               double         y,
               double         width)
{
  lr_page_tag_begin (sheet, "LI");
  draw_bullet (sheet, table, row->grade, x + inset (table), y);
  lr_page_tag_begin (sheet, "LBody");
  lr_page_put_markup (sheet, sheet->body_size, sheet->theme->ink, x + sentence_x (table), y,
                      sentence_style (sheet, table, width).width, row->markup);
  lr_page_tag_end (sheet, "LBody");
  lr_page_tag_end (sheet, "LI");
}

/* Rows from the baseline @y on; returns that of the line after them */
static double
draw_rows (const LrSheet *sheet,
           const LrTable *table,
           double         x,
           double         y,
           double         width,
           double         ease)
{
  const char *tag = table->columns != NULL ? "Table" : "L";

  lr_page_tag_begin (sheet, tag);
  if (table->columns != NULL)
    lr_table_draw_heads (sheet, table, x, y - FIRST_ROW_PT);

  for (guint i = 0; i < table->n_shown; i++)
    {
      const LrRow *row = g_ptr_array_index (table->rows, i);

      if (row->markup != NULL)
        draw_sentence (sheet, table, row, x, y, width);
      else
        lr_table_draw_row (sheet, table, row, x, y);
      y += row_pitch (table, ease) + row->height;
    }
  lr_page_tag_end (sheet, tag);

  return y;
}

static void
draw_feet (const LrSheet *sheet,
           const LrTable *table,
           double         x,
           double         y,
           double         width,
           double         ease)
{
  if (n_left_out (table) > 0)
    {
      g_autofree char *more = lr_page_more_text (n_left_out (table));
      double indent = table->columns != NULL ? LR_PAGE_CELLS_X_PT : sentence_x (table);

      lr_page_tag_begin (sheet, "P");
      lr_page_put (sheet, LR_PAGE_NOTE_SIZE, PANGO_WEIGHT_SEMIBOLD, LR_ALIGN_LEFT, sheet->theme->ink2, x + indent, y, more);
      lr_page_tag_end (sheet, "P");
      y += row_pitch (table, ease);
    }

  y += FEET_PT - row_pitch (table, ease);
  for (guint i = 0; i < table->feet->len; i++)
    {
      const LrTextStyle style = foot_style (width);
      const char *foot = g_ptr_array_index (table->feet, i);

      lr_page_tag_begin (sheet, "P");
      lr_theme_set_color (sheet->cr, sheet->theme->ink2, 1.0);
      lr_text_draw (sheet->cr, sheet->theme, &style, x, y, foot);
      lr_page_tag_end (sheet, "P");
      y += n_foot_lines (sheet, foot, width) * FEET_PT;
    }
}

/**
 * lr_table_draw:
 * @sheet: the page
 * @table: a table, wrapped
 * @x: left edge
 * @y: upper edge of the title
 * @width: [pt]
 * @ease: as in lr_table_height()
 */
void
lr_table_draw (const LrSheet *sheet,
               const LrTable *table,
               double         x,
               double         y,
               double         width,
               double         ease)
{
  double title_y = y + TITLE_PT + (table->is_boxed ? BOX_FOOT_PT - 1.3 : 0.0);
  double next_y;

  if (table->rows->len == 0)
    return;

  lr_page_anchor (sheet, table->anchor);
  draw_title (sheet, table, x + inset (table), title_y, width - 2.0 * inset (table));
  next_y = draw_rows (sheet, table, x, y + head_height (table), width, ease);
  draw_feet (sheet, table, x, next_y, width, ease);

  if (table->is_boxed)
    {
      lr_theme_set_color (sheet->cr, sheet->theme->ink, 1.0);
      lr_theme_set_line (sheet->cr, sheet->theme, LR_LINE_OUTLINE, LR_DASH_SOLID);
      cairo_rectangle (sheet->cr, x, y, width, lr_table_height (table, ease));
      cairo_stroke (sheet->cr);
    }
}
