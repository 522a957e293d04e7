/* page_tape.c - places by tape: each thing from two walls, and from two corners that the plan numbers
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "page_private.h"

#define TITLE_PT   7.8
#define RULE_PT    4.3
#define HEADS_PT   8.1
#define FIRST_PT   9.6
#define PITCH_PT   9.92
#define FOOT_PT    2.0
#define GAP        0.0588 /* of the whole width, between the halves */

/* "3: 2.60", from wall or corner 3; in brackets where it places the thing badly, with a star where it is held over furniture */
static char *
fix_text (const LrTapeFix *fix,
          gsize            which,
          LrUnits          units)
{
  g_autofree char *length = NULL;

  if (fix->way == LR_FIX_NONE)
    return g_strdup ("–");

  length = lr_length_format_tape (fix->length_m[which], units);
  if (fix->is_poor)
    return g_strdup_printf ("%d: (%s)", fix->number[which], length);

  return g_strdup_printf ("%d: %s%s", fix->number[which], length, fix->way == LR_FIX_OVER ? "*" : "");
}

static void
add_row (const LrSheet    *sheet,
         LrTable          *table,
         const LrTapeMark *mark)
{
  const LrItem *item = mark->placed->item;
  LrUnits units = sheet->options->units;
  LrRow *row = lr_table_add (table, item->kind, item->tag);

  row->cell[0] = lr_tape_mark_spot (mark);
  for (gsize i = 0; i < 2; i++)
    {
      row->cell[1 + i] = fix_text (&mark->walls, i, units);
      row->cell[3 + i] = fix_text (&mark->corners, i, units);
    }
}

/**
 * lr_page_tape_height:
 * @n_lines: rows in each half
 *
 * Returns: height of the table with its title [pt]; 0 without rows
 */
double
lr_page_tape_height (guint n_lines)
{
  return n_lines == 0 ? 0.0 : TITLE_PT + RULE_PT + HEADS_PT + FIRST_PT + (n_lines - 1) * PITCH_PT + FOOT_PT;
}

/**
 * lr_page_tape_lines:
 * @sheet: the page
 *
 * Returns: how many rows each half has when nothing is left out
 */
guint
lr_page_tape_lines (const LrSheet *sheet)
{
  g_autoptr (GArray) marks = lr_tape_marks_new (sheet->study);

  return (marks->len + 1) / 2;
}

static LrTable *
tape_table (const LrSheet *sheet,
            const GArray  *marks)
{
  LrTable *table = lr_table_new ("tape", _("Tape positions"));

  for (guint i = 0; i < marks->len; i++)
    add_row (sheet, table, &g_array_index (marks, LrTapeMark, i));

  return table;
}

typedef gboolean (*FixTest) (const LrTapeFix *fix);

static gboolean
is_poor (const LrTapeFix *fix)
{
  return fix->way != LR_FIX_NONE && fix->is_poor;
}

static gboolean
is_over (const LrTapeFix *fix)
{
  return fix->way == LR_FIX_OVER && !fix->is_poor;
}

static gboolean
has_fix (const GArray *marks,
         FixTest       test)
{
  for (guint i = 0; i < marks->len; i++)
    {
      const LrTapeMark *mark = &g_array_index (marks, LrTapeMark, i);

      if (test (&mark->walls) || test (&mark->corners))
        return TRUE;
    }

  return FALSE;
}

static char *
note_text (const LrSheet *sheet,
           const GArray  *marks)
{
  const char *unit = sheet->options->units == LR_UNITS_IMPERIAL ? _("feet and inches") : _("metres");

  /* Translators: %s are the unit of lengths, then nothing or what brackets and stars mean */
  return g_strdup_printf (_("%s, to the centre of the footprint; wall 1 goes from corner 1 to 2; keep the ringed corners free at the floor%s%s"), unit,
                          has_fix (marks, is_poor) ? _("; (in brackets): they cross too flat") : "",
                          has_fix (marks, is_over) ? _("; *: held level over furniture") : "");
}

/* Title and note over the whole width, a rule over each half */
static void
draw_title (const LrSheet *sheet,
            const LrTable *table,
            const char    *note,
            const LrBox   *box,
            double         half)
{
  double title = lr_page_text_width (sheet, LR_PAGE_HEAD_SIZE, PANGO_WEIGHT_BOLD, table->title);
  const LrTextStyle style = {
    .size = LR_PAGE_LEAST_SIZE, .weight = PANGO_WEIGHT_NORMAL, .align = LR_ALIGN_RIGHT, .width = box->width - title - 12.0
  };

  lr_page_anchor (sheet, table->anchor);
  lr_page_tag_begin (sheet, "H2");
  lr_page_put (sheet, LR_PAGE_HEAD_SIZE, PANGO_WEIGHT_BOLD, LR_ALIGN_LEFT, sheet->theme->ink,
               box->x, box->y + TITLE_PT, table->title);
  lr_page_tag_end (sheet, "H2");

  lr_page_tag_begin (sheet, "P");
  lr_theme_set_color (sheet->cr, sheet->theme->ink2, 1.0);
  lr_text_draw (sheet->cr, sheet->theme, &style, box->x + box->width, box->y + TITLE_PT, note);
  lr_page_tag_end (sheet, "P");

  lr_page_rule (sheet, LR_LINE_OUTLINE, box->x, box->y + TITLE_PT + RULE_PT, half);
  lr_page_rule (sheet, LR_LINE_OUTLINE, box->x + box->width - half, box->y + TITLE_PT + RULE_PT, half);
}

/* One half: rows @from to @to, and how many rows are left out after them */
static void
draw_half (const LrSheet *sheet,
           const LrTable *table,
           guint          from,
           guint          to,
           guint          n_left_out,
           double         x,
           double         y)
{
  lr_page_tag_begin (sheet, "Table");
  if (from < to)
    lr_table_draw_heads (sheet, table, x, y);
  y += FIRST_PT;
  for (guint i = from; i < to; i++, y += PITCH_PT)
    lr_table_draw_row (sheet, table, g_ptr_array_index (table->rows, i), x, y);
  lr_page_tag_end (sheet, "Table");

  if (n_left_out > 0)
    {
      g_autofree char *more = lr_page_more_text (n_left_out);

      lr_page_tag_begin (sheet, "P");
      lr_page_put (sheet, LR_PAGE_NOTE_SIZE, PANGO_WEIGHT_SEMIBOLD, LR_ALIGN_LEFT, sheet->theme->ink2,
                   x + table->x[0], y, more);
      lr_page_tag_end (sheet, "P");
    }
}

/**
 * lr_page_tape_draw:
 * @sheet: the page
 * @box: where it stands
 * @n_lines: rows that each half has room for
 *
 * Draws the table in two halves. What does not fit is left out at the end, and counted.
 */
void
lr_page_tape_draw (const LrSheet *sheet,
                   const LrBox   *box,
                   guint          n_lines)
{
  double half = box->width * (1.0 - GAP) / 2.0;
  static const LrColumn columns[] = {
    { N_("centre of"), LR_ALIGN_LEFT, TRUE },
    { N_("wall"), LR_ALIGN_RIGHT, FALSE },
    { N_("wall"), LR_ALIGN_RIGHT, FALSE },
    { N_("corner"), LR_ALIGN_RIGHT, FALSE },
    { N_("corner"), LR_ALIGN_RIGHT, FALSE }
  };
  g_autoptr (GArray) marks = lr_tape_marks_new (sheet->study);
  g_autofree char *note = note_text (sheet, marks);
  LrTable *table;
  guint n_shown, n_left;

  if (n_lines == 0)
    return;

  table = tape_table (sheet, marks);
  table->columns = columns;
  table->n_columns = G_N_ELEMENTS (columns);
  lr_table_wrap (sheet, table, half);

  n_shown = table->rows->len <= 2 * n_lines ? table->rows->len : 2 * n_lines - 1;
  n_left = MIN (n_shown, MIN (n_lines, (table->rows->len + 1) / 2));
  draw_title (sheet, table, note, box, half);
  draw_half (sheet, table, 0, n_left, 0, box->x, box->y + TITLE_PT + RULE_PT + HEADS_PT);
  draw_half (sheet, table, n_left, n_shown, table->rows->len - n_shown,
             box->x + box->width - half, box->y + TITLE_PT + RULE_PT + HEADS_PT);
  lr_table_free (table);
}
