/* tape_grid.c - marks on the floor, on a grid
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "pen.h"
#include "tape_drawing_private.h"

/* The room's box along the grid's axes [m], in whole steps */
typedef struct
{
  LrTapeGrid grid;
  double     step_m;
  int        low_x, high_x, low_y, high_y;
} GridBox;

static LrVec2
grid_place (const GridBox *box,
            double         x_m,
            double         y_m)
{
  return lr_vec2_along (lr_vec2_along (box->grid.origin_m, box->grid.along, x_m), box->grid.across, y_m);
}

static GridBox
make_box (const LrRoom     *room,
          const LrTapeGrid *grid,
          double            step_m)
{
  GridBox box = { *grid, step_m, 0, 0, 0, 0 };

  for (gsize i = 0; i < room->n_corners; i++)
    {
      LrVec2 off_m = lr_vec2_sub (room->corners_m[i], grid->origin_m);
      double x = lr_vec2_dot (off_m, grid->along) / step_m, y = lr_vec2_dot (off_m, grid->across) / step_m;

      box.low_x = MIN (box.low_x, (int) floor (x + 1e-6));
      box.high_x = MAX (box.high_x, (int) ceil (x - 1e-6));
      box.low_y = MIN (box.low_y, (int) floor (y + 1e-6));
      box.high_y = MAX (box.high_y, (int) ceil (y - 1e-6));
    }

  return box;
}

static void
line (const LrTapeDrawing *self,
      LrVec2               a_m,
      LrVec2               b_m)
{
  lr_tape_line (self, lr_tape_device (self, a_m), lr_tape_device (self, b_m));
}

/* Every second line is a whole metre, or four feet: plainer */
static void
draw_grid_lines (const LrTapeDrawing *self,
                 const GridBox       *box,
                 gboolean             is_whole)
{
  double low_x_m = box->low_x * box->step_m, high_x_m = box->high_x * box->step_m;
  double low_y_m = box->low_y * box->step_m, high_y_m = box->high_y * box->step_m;

  for (int i = box->low_x; i <= box->high_x; i++)
    if ((i % 2 == 0) == is_whole)
      line (self, grid_place (box, i * box->step_m, low_y_m), grid_place (box, i * box->step_m, high_y_m));
  for (int i = box->low_y; i <= box->high_y; i++)
    if ((i % 2 == 0) == is_whole)
      line (self, grid_place (box, low_x_m, i * box->step_m), grid_place (box, high_x_m, i * box->step_m));

  lr_theme_set_color (self->cr, self->sheet->theme->ink3, is_whole ? 0.9 : 0.5);
  lr_theme_set_line (self->cr, self->sheet->theme, is_whole ? LR_LINE_THIN : LR_LINE_HAIR, LR_DASH_SOLID);
  cairo_stroke (self->cr);
}

static void
clip_to_room (const LrTapeDrawing *self)
{
  const LrRoom *room = self->sheet->study->setup->room;

  for (gsize i = 0; i < room->n_corners; i++)
    {
      LrVec2 at = lr_tape_device (self, room->corners_m[i]);

      cairo_line_to (self->cr, at.x, at.y);
    }
  cairo_close_path (self->cr);
  cairo_clip (self->cr);
}

static void
put_number (const LrTapeDrawing *self,
            LrVec2               at_m,
            LrVec2               out_m,
            double               value_m)
{
  const LrTextStyle style = { .size = LR_TAPE_FIGURE_PT, .weight = PANGO_WEIGHT_NORMAL, .align = LR_ALIGN_CENTRE };
  double out_pt = LR_WALL_M * self->view->scale + 8.0;
  LrVec2 at = lr_vec2_along (lr_tape_device (self, at_m), lr_vec2 (out_m.x, -out_m.y), out_pt);
  g_autofree char *text = lr_page_is_imperial (self->sheet) ? g_strdup_printf ("%.0f′", value_m / 0.3048) : g_strdup_printf ("%.1f", value_m);

  lr_theme_set_color (self->cr, self->sheet->theme->ink, 1.0);
  lr_text_draw_halo (self->cr, self->sheet->theme, &style, at.x, at.y + 0.36 * LR_TAPE_FIGURE_PT, text);
}

/* Outside the walls: along the longest wall, and up from its first corner */
static void
draw_grid_numbers (const LrTapeDrawing *self,
                   const GridBox       *box)
{
  const LrRoom *room = self->sheet->study->setup->room;
  double low_x_m = 0.0, high_x_m = 0.0, low_y_m = 0.0, high_y_m = 0.0;

  for (gsize i = 0; i < room->n_corners; i++)
    {
      LrVec2 off_m = lr_vec2_sub (room->corners_m[i], box->grid.origin_m);

      low_x_m = fmin (low_x_m, lr_vec2_dot (off_m, box->grid.along));
      high_x_m = fmax (high_x_m, lr_vec2_dot (off_m, box->grid.along));
      low_y_m = fmin (low_y_m, lr_vec2_dot (off_m, box->grid.across));
      high_y_m = fmax (high_y_m, lr_vec2_dot (off_m, box->grid.across));
    }
  for (int i = box->low_x; i <= box->high_x; i++)
    if (i * box->step_m > low_x_m - 1e-6 && i * box->step_m < high_x_m + 1e-6)
      put_number (self, grid_place (box, i * box->step_m, low_y_m), lr_vec2_scale (box->grid.across, -1.0), i * box->step_m);
  for (int i = box->low_y; i <= box->high_y; i++)
    if (i * box->step_m > low_y_m - 1e-6 && i * box->step_m < high_y_m + 1e-6)
      put_number (self, grid_place (box, low_x_m, i * box->step_m), lr_vec2_scale (box->grid.along, -1.0), i * box->step_m);
}

/**
 * lr_tape_grid_step_m:
 * @sheet: the page
 * @scale: denominator of the drawing's scale
 *
 * Returns: half a metre or two feet [m], twice that on drawings smaller than 1:50 and 1:48, and so on, so that numbers have room
 */
double
lr_tape_grid_step_m (const LrSheet *sheet,
                     int            scale)
{
  double step_m = lr_page_is_imperial (sheet) ? 0.6096 : 0.5;

  for (int limit = 50; scale > limit; limit *= 2)
    step_m *= 2.0;
  return step_m;
}

/**
 * lr_tape_drawing_grid:
 * @sheet: the page
 * @view: where the room is on it
 * @marks: (element-type LrTapeMark): what is on the floor
 * @step_m: width of the grid [m]
 *
 * Draws the room, a grid from the first corner of its longest wall, and the marks with where they are on it.
 */
void
lr_tape_drawing_grid (const LrSheet *sheet,
                      const LrView  *view,
                      const GArray  *marks,
                      double         step_m)
{
  g_autoptr (GArray) taken = g_array_new (FALSE, FALSE, sizeof (LrOutline));
  LrTapeDrawing self = { sheet, view, sheet->cr, taken };
  LrTapeGrid grid;
  GridBox box;

  if (!lr_tape_grid (sheet->study->setup->room, &grid))
    return;

  box = make_box (sheet->study->setup->room, &grid, step_m);
  lr_floor_draw_shell (sheet->cr, sheet->study->plan, sheet->study, view);
  cairo_save (sheet->cr);
  clip_to_room (&self);
  draw_grid_lines (&self, &box, FALSE);
  draw_grid_lines (&self, &box, TRUE);
  cairo_restore (sheet->cr);
  lr_tape_draw_marks (&self, marks, NULL);
  draw_grid_numbers (&self, &box);
  lr_page_corners_draw (sheet, view, marks);
  for (guint i = 0; i < marks->len; i++)
    {
      const LrTapeMark *mark = &g_array_index (marks, LrTapeMark, i);
      g_autofree char *x = lr_length_format_tape (mark->grid_m.x, sheet->options->units);
      g_autofree char *y = lr_length_format_tape (mark->grid_m.y, sheet->options->units);
      /* a bar between them would be taken for a line of the grid */
      g_autofree char *note = g_strdup_printf ("%s;\u00a0%s", x, y);

      lr_tape_draw_label (&self, mark, note);
    }
}
