/* page_tape.c - places by tape: from two walls, and from two corners that the plan marks
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
#define POOR_RAD   (30.0 * LR_DEG) /* tapes that cross at less, or within it of straight, place a point badly */

/* In the order of setting out: what the rest is measured against comes first, and is cut last */
static const LrItemKind order[] = { LR_ITEM_PERSON, LR_ITEM_CAMERA, LR_ITEM_LIGHT, LR_ITEM_MICROPHONE, LR_ITEM_PANEL };

static const char *
compass_letter (double bearing_rad)
{
  static const char *const letters[] = { NC_("compass", "N"), NC_("compass", "E"), NC_("compass", "S"), NC_("compass", "W") };
  int quarter = (int) lround (bearing_rad / (LR_PI / 2.0));

  return g_dpgettext2 (NULL, "compass", letters[((quarter % 4) + 4) % 4]);
}

/* "W wall": the wall that lies in a direction of the sheet, clockwise from up, by its quarter of the compass */
static char *
wall_head (const LrRoom *room,
           double        direction_rad)
{
  return g_strdup_printf (_("%s wall"), compass_letter (direction_rad - room->north_rad));
}

static const char *
what_stands (const LrItem *item)
{
  switch (item->kind)
    {
    case LR_ITEM_CAMERA:
      return _("camera, tripod");
    case LR_ITEM_MICROPHONE:
      return item->microphone.form == LR_MIC_BOOM ? _("boom, stand") : _("microphone, stand");
    case LR_ITEM_PANEL:
      return item->panel.form == LR_PANEL_REFLECTOR ? _("reflector, stand")
             : item->panel.form == LR_PANEL_FLAG ? _("flag, stand") : _("backdrop, middle");
    case LR_ITEM_LIGHT:
      switch ((LrLightJob) item->light.job)
        {
        case LR_JOB_KEY:
          return _("key, stand");
        case LR_JOB_FILL:
          return _("fill, stand");
        case LR_JOB_BACK:
          return _("back, stand");
        case LR_JOB_WALL:
          return _("wall light, stand");
        case LR_JOB_OTHER:
        default:
          return _("light, stand");
        }
    case LR_ITEM_PERSON:
    case LR_ITEM_LEAD:
    case LR_ITEM_FURNITURE:
    case LR_ITEM_DOOR:
    case LR_ITEM_WINDOW:
    case LR_ITEM_SOCKET:
    case LR_ITEM_CIRCUIT:
    case LR_ITEM_NOISE:
    case LR_ITEM_HOUSE_LIGHT:
    case LR_ITEM_LENS:
    case LR_N_ITEM_KINDS:
    default:
      return "";
    }
}

static char *
row_text (const LrItem *item)
{
  g_autofree char *name = NULL;

  if (item->kind != LR_ITEM_PERSON)
    return g_strdup (what_stands (item));

  name = item->name[0] != '\0' ? g_strdup (item->name) : lr_item_title (item);
  return g_strdup_printf (item->person.posture == LR_POSTURE_SEATED ? _("%s, mid-seat") : _("%s, feet"), name);
}

static gboolean
is_poor (const LrTapePair *tapes)
{
  return tapes->crossing_rad < POOR_RAD || tapes->crossing_rad > LR_PI - POOR_RAD;
}

/* In brackets when the tapes cross too flat to place the point well; a dash when a wall stands before the corner */
static char *
tape_text (double            length_m,
           const LrTapePair *tapes,
           LrUnits           units)
{
  g_autofree char *length = isfinite (length_m) ? lr_length_format_short (length_m, units) : g_strdup ("–");

  return is_poor (tapes) ? g_strdup_printf ("(%s)", length) : g_steal_pointer (&length);
}

static void
add_row (const LrSheet       *sheet,
         LrTable             *table,
         const LrTapeReading *reading)
{
  const LrItem *item = reading->placed->item;
  LrUnits units = sheet->options->units;
  LrRow *row = lr_table_add (table, item->kind, item->tag);

  row->cell[0] = row_text (item);
  row->cell[1] = lr_length_format_short (reading->west_m, units);
  row->cell[2] = lr_length_format_short (reading->south_m, units);
  if (sheet->study->has_tapes)
    {
      row->cell[3] = tape_text (reading->tapes.from_p_m, &reading->tapes, units);
      row->cell[4] = tape_text (reading->tapes.from_q_m, &reading->tapes, units);
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
  return (sheet->study->tapes->len + 1) / 2;
}

static LrTable *
tape_table (const LrSheet *sheet)
{
  LrTable *table = lr_table_new ("tape", _("Tape positions"));
  const GArray *tapes = sheet->study->tapes;

  for (gsize kind = 0; kind < G_N_ELEMENTS (order); kind++)
    for (guint i = 0; i < tapes->len; i++)
      {
        const LrTapeReading *reading = &g_array_index (tapes, LrTapeReading, i);

        if (reading->placed->item->kind == order[kind])
          add_row (sheet, table, reading);
      }

  return table;
}

static gboolean
has_poor_row (const LrSheet *sheet)
{
  for (guint i = 0; i < sheet->study->tapes->len; i++)
    if (is_poor (&g_array_index (sheet->study->tapes, LrTapeReading, i).tapes))
      return TRUE;

  return FALSE;
}

static char *
note_text (const LrSheet *sheet)
{
  const char *unit = sheet->options->units == LR_UNITS_IMPERIAL ? _("feet and inches") : _("metres");
  const char *corners = !sheet->study->has_tapes ? ""
                        : has_poor_row (sheet) ? _("; (in brackets): the tapes from P and Q cross too flat, use the walls")
                        : _("; P and Q are marked on the plan: keep those corners free at the floor");

  return g_strdup_printf (_("%s, to the centre of the footprint%s"), unit, corners);
}

/* Title and note over the whole width, a rule over each half */
static void
draw_title (const LrSheet *sheet,
            const LrTable *table,
            const LrBox   *box,
            double         half)
{
  g_autofree char *note = note_text (sheet);
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
  const LrRoom *room = sheet->study->setup->room;
  double half = box->width * (1.0 - GAP) / 2.0;
  g_autofree char *west = wall_head (room, LR_PI * 1.5);
  g_autofree char *south = wall_head (room, LR_PI);
  const LrColumn columns[] = {
    { N_("centre of"), LR_ALIGN_LEFT, TRUE },
    { west, LR_ALIGN_RIGHT, FALSE },
    { south, LR_ALIGN_RIGHT, FALSE },
    { N_("tape P"), LR_ALIGN_RIGHT, FALSE },
    { N_("tape Q"), LR_ALIGN_RIGHT, FALSE }
  };
  LrTable *table;
  guint n_shown, n_left;

  if (n_lines == 0)
    return;

  table = tape_table (sheet);
  table->columns = columns;
  table->n_columns = sheet->study->has_tapes ? 5 : 3;
  lr_table_wrap (sheet, table, half);

  n_shown = table->rows->len <= 2 * n_lines ? table->rows->len : 2 * n_lines - 1;
  n_left = MIN (n_shown, MIN (n_lines, (table->rows->len + 1) / 2));
  draw_title (sheet, table, box, half);
  draw_half (sheet, table, 0, n_left, 0, box->x, box->y + TITLE_PT + RULE_PT + HEADS_PT);
  draw_half (sheet, table, n_left, n_shown, table->rows->len - n_shown,
             box->x + box->width - half, box->y + TITLE_PT + RULE_PT + HEADS_PT);
  lr_table_free (table);
}
