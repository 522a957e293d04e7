/* tape_drawing.c - marks on the floor, drawn: with their tapes, or on a grid
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Tapes are dimension lines from a corner's ring to the mark, with an oblique stroke there and the length along them, readable
 * from the foot or the right of the sheet, as ISO 129-1 has it. Labels and lengths take the first place where they cover neither
 * each other nor a mark; tapes they may cross, on a band of the ground.
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "floor_layers.h"
#include "tape_drawing_private.h"

#define CROSS_PT    4.2  /* half a mark's arm */
#define OBLIQUE_PT  3.9
#define FACING_PT  17.0  /* arrow from the mark to where it is turned */
#define ARROW_PT    4.0
#define UP_PT       2.0  /* a length over its line */
#define DIM         0.25 /* of what is not pointed at */

/* --- Tapes ---------------------------------------------------------------------------------------------------- */

static void
draw_tape (const LrTapeDrawing *self,
           LrVec2               from_m,
           LrVec2               mark_m)
{
  LrVec2 a = lr_tape_device (self, from_m), b = lr_tape_device (self, mark_m);

  lr_theme_set_color (self->cr, self->sheet->theme->ink2, 1.0);
  lr_theme_set_line (self->cr, self->sheet->theme, LR_LINE_THIN, LR_DASH_SOLID);
  lr_tape_line (self, a, b);
  cairo_stroke (self->cr);
  lr_theme_set_line (self->cr, self->sheet->theme, LR_LINE_OUTLINE, LR_DASH_SOLID);
  lr_floor_oblique (self->cr, b, lr_vec2_scale (lr_vec2_sub (b, a), 1.0 / fmax (lr_vec2_distance (a, b), 1e-9)), OBLIQUE_PT);
}

static void
draw_tapes (const LrTapeDrawing *self,
            const LrTapeFix     *fix,
            LrVec2               mark_m)
{
  for (gsize k = 0; k < 2 && fix->way != LR_FIX_NONE; k++)
    draw_tape (self, fix->from_m[k], mark_m);
}

/* Along the line, beside it, near the mark: there lines from one corner have parted */
static void
draw_length (LrTapeDrawing *self,
             LrVec2         from_m,
             LrVec2         mark_m,
             double         length_m)
{
  static const double shares[] = { 0.30, 0.38, 0.24, 0.46, 0.54, 0.62, 0.70, 0.78, 0.34, 0.42, 0.50, 0.58, 0.66, 0.74 };
  const LrTextStyle style = { .size = LR_TAPE_FIGURE_PT, .weight = PANGO_WEIGHT_NORMAL, .align = LR_ALIGN_CENTRE };
  g_autofree char *text = lr_length_format_tape (length_m, self->sheet->options->units);
  double width = lr_page_text_width (self->sheet, LR_TAPE_FIGURE_PT, PANGO_WEIGHT_NORMAL, text);
  LrVec2 a = lr_tape_device (self, from_m), b = lr_tape_device (self, mark_m), up;
  double angle = lr_floor_reading_angle_rad (a, b);
  LrOutline outline = { 0 };

  up = lr_vec2 (sin (angle), -cos (angle));
  /* over the line; where all of it is taken, under it */
  for (gsize i = 0; i < 2 * G_N_ELEMENTS (shares); i++)
    {
      LrVec2 at = lr_vec2_along (b, lr_vec2_sub (a, b), shares[i % G_N_ELEMENTS (shares)]);
      double off_pt = (UP_PT + 0.36 * LR_TAPE_FIGURE_PT) * (i < G_N_ELEMENTS (shares) ? 1.0 : -1.4);
      LrOutline place = lr_outline_box (lr_vec2_along (at, up, off_pt), width + 2.0, LR_TAPE_FIGURE_PT, angle);

      if (i > 0 && !lr_tape_is_free (self, &place))
        continue;
      outline = place;
      if (lr_tape_is_free (self, &place))
        break;
    }

  lr_tape_take (self, outline);
  cairo_save (self->cr);
  cairo_translate (self->cr, outline.centre_m.x, outline.centre_m.y);
  cairo_rotate (self->cr, angle);
  lr_theme_set_color (self->cr, self->sheet->theme->ink, 1.0);
  lr_text_draw_halo (self->cr, self->sheet->theme, &style, 0.0, 0.36 * LR_TAPE_FIGURE_PT, text);
  cairo_restore (self->cr);
}

static void
draw_lengths (LrTapeDrawing   *self,
              const LrTapeFix *fix,
              LrVec2           mark_m)
{
  for (gsize k = 0; k < 2 && fix->way != LR_FIX_NONE; k++)
    draw_length (self, fix->from_m[k], mark_m, fix->length_m[k]);
}

/* --- Marks ---------------------------------------------------------------------------------------------------- */

static void
draw_footprint (const LrTapeDrawing *self,
                const LrTapeMark    *mark,
                double               alpha)
{
  if (!mark->placed->has_footprint)
    return;

  lr_floor_trace_outline (self->cr, self->view, &mark->placed->footprint, 0.0);
  lr_theme_set_color (self->cr, self->sheet->theme->ink3, alpha);
  lr_theme_set_line (self->cr, self->sheet->theme, LR_LINE_HAIR, LR_DASH_SHORT);
  cairo_stroke (self->cr);
}

static void
draw_mark (LrTapeDrawing    *self,
           const LrTapeMark *mark,
           double            alpha)
{
  const LrTheme *theme = self->sheet->theme;
  LrVec2 at = lr_tape_device (self, mark->mark_m), facing = lr_tape_facing (mark), tip = lr_vec2_along (at, facing, FACING_PT);

  lr_theme_set_color (self->cr, theme->ink, alpha);
  lr_theme_set_line (self->cr, theme, LR_LINE_THIN, LR_DASH_SOLID);
  lr_tape_line (self, at, tip);
  cairo_stroke (self->cr);
  lr_floor_arrowhead (self->cr, tip, facing, ARROW_PT);

  lr_theme_set_line (self->cr, theme, LR_LINE_THICK, LR_DASH_SOLID);
  lr_tape_line (self, lr_vec2 (at.x - CROSS_PT, at.y), lr_vec2 (at.x + CROSS_PT, at.y));
  lr_tape_line (self, lr_vec2 (at.x, at.y - CROSS_PT), lr_vec2 (at.x, at.y + CROSS_PT));
  cairo_stroke (self->cr);

  lr_tape_take (self, lr_outline_disc (at, CROSS_PT));
  lr_tape_take (self, lr_outline_disc (lr_vec2_along (at, facing, 0.7 * FACING_PT), 3.0));
}

/* --- Walls ---------------------------------------------------------------------------------------------------- */

/* Outside those that are long enough, at their middle: "wall 3" */
static void
draw_wall_names (LrTapeDrawing *self)
{
  const LrTextStyle style = { .size = LR_TAPE_FIGURE_PT, .weight = PANGO_WEIGHT_NORMAL, .align = LR_ALIGN_CENTRE };
  const LrRoom *room = self->sheet->study->setup->room;
  double out_pt = LR_WALL_M * self->view->scale + 0.5 * LR_TAPE_FIGURE_PT + 2.0;

  for (int i = 0; i < (int) room->n_corners; i++)
    {
      g_autofree char *name = g_strdup_printf (_("wall %d"), lr_room_wall_number (room, i));
      double width = lr_page_text_width (self->sheet, LR_TAPE_FIGURE_PT, PANGO_WEIGHT_NORMAL, name), length_m;
      LrVec2 from_m, along, at, out;

      if (!lr_room_wall (room, i, &from_m, &along, &length_m) || length_m * self->view->scale < width)
        continue;

      out = lr_vec2 (along.y, along.x); /* off the room, y down */
      at = lr_vec2_along (lr_tape_device (self, lr_vec2_along (from_m, along, 0.5 * length_m)), out, out_pt);
      cairo_save (self->cr);
      cairo_translate (self->cr, at.x, at.y);
      cairo_rotate (self->cr, lr_floor_reading_angle_rad (lr_vec2 (0.0, 0.0), lr_vec2 (along.x, -along.y)));
      lr_theme_set_color (self->cr, self->sheet->theme->ink2, 1.0);
      lr_text_draw (self->cr, self->sheet->theme, &style, 0.0, 0.36 * LR_TAPE_FIGURE_PT, name);
      cairo_restore (self->cr);
    }
}

/* --- The drawings --------------------------------------------------------------------------------------------- */

/**
 * lr_tape_drawing_place:
 * @sheet: the page
 * @box: that it has
 * @is_free: as large as fits, not to a standard scale
 * @view: (out): where the room is
 * @scale: (out) (nullable): its scale; %NULL if it is free
 *
 * Puts the room in the middle of the box, with space around it for walls and numbers, and under it for the scale.
 *
 * Returns: %FALSE if there is no room, or no standard scale is small enough
 */
gboolean
lr_tape_drawing_place (const LrSheet          *sheet,
                       const LrBox            *box,
                       gboolean                is_free,
                       LrView                 *view,
                       const LrStandardScale **scale)
{
  const LrRoom *room = sheet->study->setup->room;
  double foot = is_free ? 0.0 : LR_TAPE_SCALE_PT;
  double width = box->width - 2.0 * LR_TAPE_AROUND_PT, height = box->height - 2.0 * LR_TAPE_AROUND_PT - foot;
  LrVec2 low_m, high_m;

  *scale = NULL;
  if (room->n_corners < 3 || width <= 0.0 || height <= 0.0)
    return FALSE;

  lr_polygon_bounds (room->corners_m, room->n_corners, &low_m, &high_m);
  *view = (LrView) {
    .width = box->x + box->width, .height = box->y + box->height, .theme = sheet->theme, .units = sheet->options->units,
    .is_page = TRUE, .is_read_only = TRUE
  };
  view->scale = fmin (width / (high_m.x - low_m.x), height / (high_m.y - low_m.y));
  if (!is_free)
    {
      *scale = lr_page_scale_for (sheet, high_m.x - low_m.x, high_m.y - low_m.y, width, height);
      if (*scale == NULL)
        return FALSE;
      view->scale = 1000.0 * LR_MM_PT / (*scale)->scale;
    }

  view->origin.x = box->x + 0.5 * box->width - 0.5 * (low_m.x + high_m.x) * view->scale;
  view->origin.y = box->y + LR_TAPE_AROUND_PT + 0.5 * height + 0.5 * (low_m.y + high_m.y) * view->scale;
  return TRUE;
}

static gboolean
is_shown (const LrTapeMark *mark,
          const char       *pointed)
{
  return pointed == NULL || g_str_equal (mark->placed->item->id, pointed);
}

/**
 * lr_tape_draw_marks:
 * @self: a drawing
 * @marks: (element-type LrTapeMark): the marks
 * @pointed: (nullable): id of the item that is not dim
 *
 * Draws crosses, footprints, and where things are turned.
 */
void
lr_tape_draw_marks (LrTapeDrawing *self,
                    const GArray  *marks,
                    const char    *pointed)
{
  for (guint i = 0; i < marks->len; i++)
    {
      const LrTapeMark *mark = &g_array_index (marks, LrTapeMark, i);
      double alpha = is_shown (mark, pointed) ? 1.0 : DIM;

      draw_footprint (self, mark, alpha);
      draw_mark (self, mark, alpha);
    }
}

/**
 * lr_tape_drawing_tapes:
 * @sheet: the page
 * @view: where the room is on it
 * @marks: (element-type LrTapeMark): what is found by tape
 * @pointed: (nullable): id of an item whose tapes alone are drawn
 *
 * Draws the room, the marks and the tapes from the corners to them; of what is pointed at those from the walls as well.
 */
void
lr_tape_drawing_tapes (const LrSheet *sheet,
                       const LrView  *view,
                       const GArray  *marks,
                       const char    *pointed)
{
  g_autoptr (GArray) taken = g_array_new (FALSE, FALSE, sizeof (LrOutline));
  LrTapeDrawing self = { sheet, view, sheet->cr, taken };
  const LrTapeMark *all = (const LrTapeMark *) (gpointer) marks->data;

  lr_floor_draw_shell (sheet->cr, sheet->study->plan, sheet->study, view);
  for (guint i = 0; i < marks->len; i++)
    if (is_shown (&all[i], pointed))
      {
        draw_tapes (&self, &all[i].corners, all[i].mark_m);
        if (pointed != NULL)
          draw_tapes (&self, &all[i].walls, all[i].mark_m);
      }
  lr_tape_draw_marks (&self, marks, pointed);
  draw_wall_names (&self);
  lr_page_corners_draw (sheet, view, marks);
  for (guint i = 0; i < marks->len; i++)
    lr_tape_draw_label (&self, &all[i], NULL);
  for (guint i = 0; i < marks->len; i++)
    if (is_shown (&all[i], pointed))
      {
        draw_lengths (&self, &all[i].corners, all[i].mark_m);
        if (pointed != NULL)
          draw_lengths (&self, &all[i].walls, all[i].mark_m);
      }
}
