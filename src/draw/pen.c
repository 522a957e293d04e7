/* pen.c - shapes in metres, edges in device units
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "pen.h"

#define FOOT_DOT_M 0.022
#define FOOT_DOT_LEAST_PX 1.1
#define RING_ALPHA 0.75

/**
 * lr_pen:
 * @cr: a cairo context whose unit is a metre of the item's own frame
 * @view: scale and palette
 * @placed: the item
 * @setup: (nullable): where it stands
 *
 * Returns: a pen for this item
 */
LrPen
lr_pen (cairo_t        *cr,
        const LrView   *view,
        const LrPlaced *placed,
        const LrSetup  *setup)
{
  return (LrPen) {
    .cr = cr,
    .view = view,
    .theme = view->theme,
    .px_m = view->theme->unit_px / view->scale,
    .placed = placed,
    .item = placed->item,
    .setup = setup,
  };
}

/**
 * lr_pen_at_least:
 * @pen: a pen
 * @size_m: true size [m]
 * @least_px: size on the device that it never falls below [px]
 *
 * Returns: the size to draw [m]
 */
double
lr_pen_at_least (const LrPen *pen,
                 double       size_m,
                 double       least_px)
{
  return MAX (size_m, least_px * pen->px_m);
}

/**
 * lr_pen_to_item:
 * @pen: a pen
 * @at_m: a place in the room [m]
 *
 * Returns: the same place in the item's own frame [m]
 */
LrVec2
lr_pen_to_item (const LrPen *pen,
                LrVec2       at_m)
{
  return lr_vec2_rotate (lr_vec2_sub (at_m, pen->placed->at_m), -pen->placed->facing_rad);
}

/**
 * lr_pen_box:
 * @pen: a pen
 * @x0_m: [m]
 * @y0_m: [m]
 * @x1_m: [m]
 * @y1_m: [m]
 *
 * A rectangle between two corners.
 */
void
lr_pen_box (const LrPen *pen,
            double       x0_m,
            double       y0_m,
            double       x1_m,
            double       y1_m)
{
  cairo_rectangle (pen->cr, x0_m, y0_m, x1_m - x0_m, y1_m - y0_m);
}

/**
 * lr_pen_round_box:
 * @pen: a pen
 * @x0_m: [m]
 * @y0_m: [m]
 * @x1_m: [m]
 * @y1_m: [m]
 * @radius_m: of its corners, at most half of its shorter side [m]
 *
 * A rectangle with round corners.
 */
void
lr_pen_round_box (const LrPen *pen,
                  double       x0_m,
                  double       y0_m,
                  double       x1_m,
                  double       y1_m,
                  double       radius_m)
{
  double r = MIN (radius_m, 0.5 * MIN (x1_m - x0_m, y1_m - y0_m));

  cairo_new_sub_path (pen->cr);
  cairo_arc (pen->cr, x1_m - r, y0_m + r, r, -0.5 * LR_PI, 0.0);
  cairo_arc (pen->cr, x1_m - r, y1_m - r, r, 0.0, 0.5 * LR_PI);
  cairo_arc (pen->cr, x0_m + r, y1_m - r, r, 0.5 * LR_PI, LR_PI);
  cairo_arc (pen->cr, x0_m + r, y0_m + r, r, LR_PI, 1.5 * LR_PI);
  cairo_close_path (pen->cr);
}

/**
 * lr_pen_capsule:
 * @pen: a pen
 * @a_m: [m]
 * @b_m: [m]
 * @radius_m: [m]
 *
 * All that lies within the radius of a line.
 */
void
lr_pen_capsule (const LrPen *pen,
                LrVec2       a_m,
                LrVec2       b_m,
                double       radius_m)
{
  double angle = lr_vec2_angle_rad (lr_vec2_sub (b_m, a_m));

  cairo_new_sub_path (pen->cr);
  cairo_arc (pen->cr, b_m.x, b_m.y, radius_m, angle - 0.5 * LR_PI, angle + 0.5 * LR_PI);
  cairo_arc (pen->cr, a_m.x, a_m.y, radius_m, angle + 0.5 * LR_PI, angle + 1.5 * LR_PI);
  cairo_close_path (pen->cr);
}

/**
 * lr_pen_disc:
 * @pen: a pen
 * @x_m: [m]
 * @y_m: [m]
 * @radius_m: [m]
 *
 * A full circle.
 */
void
lr_pen_disc (const LrPen *pen,
             double       x_m,
             double       y_m,
             double       radius_m)
{
  cairo_new_sub_path (pen->cr);
  cairo_arc (pen->cr, x_m, y_m, radius_m, 0.0, 2.0 * LR_PI);
  cairo_close_path (pen->cr);
}

/**
 * lr_pen_ellipse:
 * @pen: a pen
 * @x_m: [m]
 * @y_m: [m]
 * @half_x_m: [m]
 * @half_y_m: [m]
 *
 * An ellipse along the axes.
 */
void
lr_pen_ellipse (const LrPen *pen,
                double       x_m,
                double       y_m,
                double       half_x_m,
                double       half_y_m)
{
  cairo_save (pen->cr);
  cairo_translate (pen->cr, x_m, y_m);
  cairo_scale (pen->cr, half_x_m, half_y_m);
  lr_pen_disc (pen, 0.0, 0.0, 1.0);
  cairo_restore (pen->cr);
}

/**
 * lr_pen_segment:
 * @pen: a pen
 * @x0_m: [m]
 * @y0_m: [m]
 * @x1_m: [m]
 * @y1_m: [m]
 *
 * A line of its own.
 */
void
lr_pen_segment (const LrPen *pen,
                double       x0_m,
                double       y0_m,
                double       x1_m,
                double       y1_m)
{
  cairo_move_to (pen->cr, x0_m, y0_m);
  cairo_line_to (pen->cr, x1_m, y1_m);
}

/**
 * lr_pen_hatch_edge:
 * @pen: a pen
 * @x_m: where the line stands [m]
 * @from_y_m: its lower end [m]
 * @to_y_m: its upper end [m]
 * @step_m: between strokes [m]
 * @length_m: of a stroke [m]
 *
 * Strokes at 45° from a line along y, to the left and down.
 */
void
lr_pen_hatch_edge (const LrPen *pen,
                   double       x_m,
                   double       from_y_m,
                   double       to_y_m,
                   double       step_m,
                   double       length_m)
{
  double reach = length_m * G_SQRT2 / 2.0;

  for (double y = from_y_m; y <= to_y_m + 1e-9; y += step_m)
    lr_pen_segment (pen, x_m, y, x_m - reach, y - reach);
}

/* What is not there yet: its edges alone, in ink */
static void
stroke_ghost (const LrPen *pen)
{
  lr_theme_set_color (pen->cr, pen->theme->ink, 1.0);
  lr_theme_set_line_at (pen->cr, pen->theme, LR_LINE_THIN, LR_DASH_GHOST, pen->view->scale);
  cairo_stroke (pen->cr);
}

/**
 * lr_pen_fill:
 * @pen: a pen
 * @color: a colour
 *
 * Fills the path.
 */
void
lr_pen_fill (const LrPen *pen,
             LrColor      color)
{
  if (pen->view->is_ghost)
    {
      stroke_ghost (pen);
      return;
    }

  lr_theme_set_color (pen->cr, color, 1.0);
  cairo_fill (pen->cr);
}

/**
 * lr_pen_stroke:
 * @pen: a pen
 * @color: a colour
 * @weight: device units, by name
 * @dash: pattern
 *
 * Strokes the path.
 */
void
lr_pen_stroke (const LrPen  *pen,
               LrColor       color,
               LrLineWeight  weight,
               LrDash        dash)
{
  if (pen->view->is_ghost)
    {
      stroke_ghost (pen);
      return;
    }

  lr_theme_set_color (pen->cr, color, 1.0);
  lr_theme_set_line_at (pen->cr, pen->theme, weight, dash, pen->view->scale);
  cairo_stroke (pen->cr);
}

/**
 * lr_pen_paint:
 * @pen: a pen
 * @fill: colour inside
 * @edge: colour of the edge
 * @weight: of the edge
 *
 * Fills the path and strokes its edge.
 */
void
lr_pen_paint (const LrPen  *pen,
              LrColor       fill,
              LrColor       edge,
              LrLineWeight  weight)
{
  if (!pen->view->is_ghost)
    {
      lr_theme_set_color (pen->cr, fill, 1.0);
      cairo_fill_preserve (pen->cr);
    }
  lr_pen_stroke (pen, edge, weight, LR_DASH_SOLID);
}

/**
 * lr_pen_bar:
 * @pen: a pen
 * @color: a colour
 * @weight: device units, by name
 *
 * Strokes the path with ends cut square.
 */
void
lr_pen_bar (const LrPen  *pen,
            LrColor       color,
            LrLineWeight  weight)
{
  if (pen->view->is_ghost)
    {
      stroke_ghost (pen);
      return;
    }

  lr_theme_set_color (pen->cr, color, 1.0);
  lr_theme_set_line_at (pen->cr, pen->theme, weight, LR_DASH_SOLID, pen->view->scale);
  cairo_set_line_cap (pen->cr, CAIRO_LINE_CAP_BUTT);
  cairo_stroke (pen->cr);
}

/**
 * lr_pen_stand:
 * @pen: a pen
 * @radius_m: spread of the legs [m]
 * @first_rad: direction of one leg in the item's own frame [rad]
 *
 * Footprint ring, three legs and their feet.
 */
void
lr_pen_stand (const LrPen *pen,
              double       radius_m,
              double       first_rad)
{
  double dot_m = lr_pen_at_least (pen, FOOT_DOT_M, FOOT_DOT_LEAST_PX);

  lr_pen_disc (pen, 0.0, 0.0, radius_m);
  if (pen->view->is_ghost)
    {
      stroke_ghost (pen); /* its legs would say no more */
      return;
    }
  lr_theme_set_color (pen->cr, pen->theme->ink2, RING_ALPHA);
  lr_theme_set_line_at (pen->cr, pen->theme, LR_LINE_HAIR, LR_DASH_FINE, pen->view->scale);
  cairo_stroke (pen->cr);

  for (int leg = 0; leg < 3; leg++)
    {
      LrVec2 foot = lr_vec2_polar (first_rad + leg * 2.0 * LR_PI / 3.0, radius_m);

      lr_pen_segment (pen, 0.0, 0.0, foot.x, foot.y);
    }
  lr_pen_stroke (pen, pen->theme->ink2, LR_LINE_THIN, LR_DASH_SOLID);

  for (int leg = 0; leg < 3; leg++)
    {
      LrVec2 foot = lr_vec2_polar (first_rad + leg * 2.0 * LR_PI / 3.0, radius_m);

      lr_pen_disc (pen, foot.x, foot.y, dot_m);
    }
  lr_pen_fill (pen, pen->theme->ink2);
}
