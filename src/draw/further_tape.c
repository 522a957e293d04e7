/* further_tape.c - setting out: the marks with their tapes, and the floor with a grid
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "further.h"
#include "tape_drawing.h"

#include <glib/gi18n-lib.h>

#define MOST_PT  430.0 /* height of the drawing over the table, at most */
#define GAP_PT    10.0

static const LrFlowColumn columns[] = {
  { N_("centre of"), 0.0, 0.8, LR_ALIGN_LEFT },
  { N_("from walls"), 74.0, 0.0, LR_ALIGN_LEFT },
  { N_("by tapes from corners"), 78.0, 0.0, LR_ALIGN_LEFT },
  { N_("off by"), 36.0, 0.0, LR_ALIGN_RIGHT },
  { N_("height"), 62.0, 0.0, LR_ALIGN_LEFT },
  { N_("turned"), 0.0, 1.5, LR_ALIGN_LEFT },
};

/* --- The table ------------------------------------------------------------------------------------------------ */

static char *
say_one (const LrTapeFix *fix,
         gsize            which,
         LrUnits          units)
{
  g_autofree char *length = lr_length_format_tape (fix->length_m[which], units);

  return g_strdup_printf ("%d:\u00a0<b>%s</b>", fix->number[which], length);
}

/* "4: 2.45  5: 2.60", in brackets where it places badly, with a star where it is held over furniture */
static char *
say_fix (const LrTapeFix *fix,
         LrUnits          units)
{
  g_autofree char *a = NULL, *b = NULL;

  if (fix->way == LR_FIX_NONE)
    return g_strdup ("–");

  a = say_one (fix, 0, units);
  b = say_one (fix, 1, units);
  return g_strdup_printf (fix->is_poor ? "(%s  %s)" : fix->way == LR_FIX_OVER ? "%s  %s*" : "%s  %s", a, b);
}

static char *
say_error (const LrTapeMark *mark,
           LrUnits           units)
{
  double error_m = mark->corners.way != LR_FIX_NONE ? mark->corners.error.major_m : mark->walls.error.major_m;

  if (mark->corners.way == LR_FIX_NONE && mark->walls.way == LR_FIX_NONE)
    return g_strdup ("–");

  return units == LR_UNITS_METRIC ? g_strdup_printf (_("%.0f mm"), error_m * 1000.0) : lr_length_format_exact (error_m, units);
}

static char *
say_height (const LrTapeMark *mark,
            LrUnits           units)
{
  g_autofree char *height = NULL;

  if (mark->height_of == LR_HEIGHT_NONE)
    return g_strdup ("");

  height = lr_length_format_tape (mark->height_m, units);
  return g_strdup_printf ("%s\u00a0<b>%s</b>", lr_tape_height_word (mark->height_of), height);
}

static void
add_mark (LrFlow           *flow,
          const LrTapeMark *mark)
{
  const LrSheet *sheet = lr_flow_sheet (flow);
  LrUnits units = sheet->options->units;
  const LrItem *item = mark->placed->item;
  g_autofree char *spot = lr_tape_mark_spot (mark), *aim = lr_tape_mark_aim (mark, units);
  g_autofree char *what = g_markup_printf_escaped ("<b>%s</b>%s%s", item->tag, item->tag[0] != '\0' ? "  " : "", spot);
  g_autofree char *walls = say_fix (&mark->walls, units), *corners = say_fix (&mark->corners, units);
  g_autofree char *error = say_error (mark, units), *height = say_height (mark, units), *turned = g_markup_escape_text (aim, -1);
  g_autofree char *tick = lr_tape_mark_tick (mark);
  const char *cells[] = { what, walls, corners, error, height, turned };

  lr_flow_row (flow, lr_plan_is_ticked (sheet->study->plan, "tape", tick) ? LR_FLOW_BOX_TICKED : LR_FLOW_BOX, cells);
}

static char *
note_text (const LrSheet *sheet)
{
  return g_strdup (lr_page_is_imperial (sheet) ? _("feet and inches, to a quarter") : _("metres"));
}

/* --- The drawings --------------------------------------------------------------------------------------------- */

static void
draw_tapes (const LrSheet *sheet,
            const LrBox   *box,
            gpointer       data G_GNUC_UNUSED)
{
  g_autoptr (GArray) marks = lr_tape_marks_new (sheet->study);
  const LrStandardScale *scale;
  LrView view;

  if (!lr_tape_drawing_place (sheet, box, FALSE, &view, &scale))
    return;

  lr_page_tag_begin (sheet, "Figure");
  lr_tape_drawing_tapes (sheet, &view, marks, NULL);
  lr_page_tag_end (sheet, "Figure");
  lr_page_scale_draw (sheet, scale, view.scale, box->x + LR_TAPE_AROUND_PT, box->x + box->width - LR_TAPE_AROUND_PT,
                      box->y + box->height - 5.0);
}

static void
draw_grid (const LrSheet *sheet,
           const LrBox   *box,
           gpointer       data G_GNUC_UNUSED)
{
  g_autoptr (GArray) marks = lr_tape_marks_new (sheet->study);
  const LrStandardScale *scale;
  LrView view;

  if (!lr_tape_drawing_place (sheet, box, FALSE, &view, &scale))
    {
      lr_page_put (sheet, LR_FLOW_BODY_SIZE, PANGO_WEIGHT_NORMAL, LR_ALIGN_LEFT, sheet->theme->ink2, box->x, box->y + 20.0,
                   sheet->study->setup->room->n_corners < 3 ? _("The room has no walls yet.") : _("The room is too large for a sheet of this size."));
      return;
    }

  lr_page_tag_begin (sheet, "Figure");
  lr_tape_drawing_grid (sheet, &view, marks, lr_tape_grid_step_m (sheet, scale->scale));
  lr_page_tag_end (sheet, "Figure");
  lr_page_scale_draw (sheet, scale, view.scale, box->x + LR_TAPE_AROUND_PT, box->x + box->width - LR_TAPE_AROUND_PT,
                      box->y + box->height - 5.0);
}

/* As high as the room needs at its scale */
static double
figure_height (LrFlow *flow)
{
  const LrSheet *sheet = lr_flow_sheet (flow);
  const LrRoom *room = sheet->study->setup->room;
  const LrBox box = { 0.0, 0.0, lr_flow_width (flow), MOST_PT };
  const LrStandardScale *scale;
  LrVec2 low_m, high_m;
  LrView view;

  if (!lr_tape_drawing_place (sheet, &box, FALSE, &view, &scale))
    return 0.0;

  lr_polygon_bounds (room->corners_m, room->n_corners, &low_m, &high_m);
  return fmin (MOST_PT, (high_m.y - low_m.y) * view.scale + 2.0 * LR_TAPE_AROUND_PT + LR_TAPE_SCALE_PT + GAP_PT);
}

/**
 * lr_further_tape:
 * @flow: gets the list
 *
 * The marks and their tapes, drawn to scale, over a table of them.
 */
void
lr_further_tape (LrFlow *flow)
{
  const LrSheet *sheet = lr_flow_sheet (flow);
  g_autoptr (GArray) marks = lr_tape_marks_new (sheet->study);
  g_autofree char *note = note_text (sheet);
  double height = figure_height (flow);

  lr_flow_title (flow, _("Tape positions"), note);
  if (marks->len == 0)
    {
      lr_flow_paragraph (flow, _("Nothing is marked on the floor: there is no room, or nothing stands in it."));
      return;
    }

  if (height > 0.0)
    lr_flow_figure (flow, height, draw_tapes, NULL, NULL);
  lr_flow_paragraph (flow, _("Wall 1 goes from corner 1 to corner 2. From a wall, swing the tape: the shortest reading is square to it. From two corners, "
                             "hold both tapes level and straight: the mark is where they meet. Off by: one standard deviation of the worse direction, "
                             "with tapes good to 4 mm and 0.2 mm per metre. (In brackets): they cross too flat. *: held level over furniture."));
  lr_flow_table (flow, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < marks->len; i++)
    add_mark (flow, &g_array_index (marks, LrTapeMark, i));
}

/**
 * lr_further_grid:
 * @flow: gets the list
 *
 * The floor with a grid from a corner along the longest wall, on a sheet of its own.
 */
void
lr_further_grid (LrFlow *flow)
{
  const LrSheet *sheet = lr_flow_sheet (flow);
  g_autofree char *note = NULL;
  LrTapeGrid grid;

  if (lr_tape_grid (sheet->study->setup->room, &grid))
    /* Translators: where a grid on the floor starts; the second is a wall */
    note = g_strdup_printf (_("from corner %u along wall %u, then square to it"), (guint) grid.corner_number, (guint) grid.wall_number);
  lr_flow_whole (flow, _("Floor grid"), note, TRUE, draw_grid, NULL, NULL);
}
