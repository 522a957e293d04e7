/* symbols_furniture.c - furniture from above
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Origin in the middle, depth along x, width along y. What has a front, as a chair, a sofa or a chest, has it towards +x.
 */

#include "pen.h"

#define FIN_STEP_M 0.11

static void
paint (const LrPen *pen)
{
  lr_pen_paint (pen, pen->theme->furniture_fill, pen->theme->furniture_edge, LR_LINE_THIN);
}

static void
stroke_detail (const LrPen *pen)
{
  lr_pen_stroke (pen, pen->theme->furniture_edge, LR_LINE_HAIR, LR_DASH_SOLID);
}

static void
draw_plain (const LrPen *pen,
            double       x,
            double       y)
{
  lr_pen_box (pen, -x, -y, x, y);
  paint (pen);
}

static void
draw_table (const LrPen *pen,
            double       x,
            double       y)
{
  draw_plain (pen, x, y);
  if (MIN (x, y) <= 0.08)
    return;
  lr_pen_box (pen, -x + 0.05, -y + 0.05, x - 0.05, y - 0.05);
  stroke_detail (pen);
}

static void
draw_chair (const LrPen *pen,
            double       x,
            double       y)
{
  double back_m = MIN (0.055, 0.25 * x);

  lr_pen_round_box (pen, -x + back_m - 0.005, -y, x, y, 0.05);
  paint (pen);
  lr_pen_round_box (pen, -x, -y + 0.02, -x + back_m, y - 0.02, 0.5 * back_m);
  paint (pen);
}

static void
draw_sofa (const LrPen *pen,
           double       x,
           double       y)
{
  double back = -x + 0.16, front = x - 0.02, right = -y + 0.14, left = y - 0.14;
  int n_seats;

  draw_plain (pen, x, y);
  if (front - back < 0.1 || left - right < 0.1)
    return;

  lr_pen_round_box (pen, back, right, front, left, 0.05);
  n_seats = MAX (1, (int) lround ((left - right) / 0.45));
  for (int i = 1; i < n_seats; i++)
    lr_pen_segment (pen, back, right + i * (left - right) / n_seats, front, right + i * (left - right) / n_seats);
  stroke_detail (pen);
}

static void
draw_cabinet (const LrPen *pen,
              double       x,
              double       y)
{
  draw_plain (pen, x, y);
  lr_pen_segment (pen, -x, -y, x, y);
  stroke_detail (pen);
}

static void
draw_chest (const LrPen *pen,
            double       x,
            double       y)
{
  draw_plain (pen, x, y);
  lr_pen_segment (pen, x - 0.06, -y, x - 0.06, y);
  stroke_detail (pen);

  for (int side = -1; side <= 1; side += 2)
    lr_pen_segment (pen, x - 0.03, side * 0.5 * y - 0.06, x - 0.03, side * 0.5 * y + 0.06);
  lr_pen_stroke (pen, pen->theme->furniture_edge, LR_LINE_THIN, LR_DASH_SOLID);
}

static void
draw_radiator (const LrPen *pen,
               double       x,
               double       y)
{
  draw_plain (pen, x, y);
  if (x >= y)
    for (double at = -x + FIN_STEP_M; at < x - 0.02; at += FIN_STEP_M)
      lr_pen_segment (pen, at, -y, at, y);
  else
    for (double at = -y + FIN_STEP_M; at < y - 0.02; at += FIN_STEP_M)
      lr_pen_segment (pen, -x, at, x, at);
  stroke_detail (pen);
}

static void
draw_cylinder (const LrPen *pen,
               double       x,
               double       y)
{
  lr_pen_ellipse (pen, 0.0, 0.0, x, y);
  paint (pen);
  if (MIN (x, y) <= 0.08)
    return;
  lr_pen_ellipse (pen, 0.0, 0.0, x - 0.05, y - 0.05);
  stroke_detail (pen);
}

/**
 * lr_symbol_furniture:
 * @pen: a pen for a piece of furniture
 */
void
lr_symbol_furniture (const LrPen *pen)
{
  static void (*const draw[]) (const LrPen *, double, double) = {
    [LR_FURNITURE_TABLE] = draw_table,
    [LR_FURNITURE_CHAIR] = draw_chair,
    [LR_FURNITURE_SOFA] = draw_sofa,
    [LR_FURNITURE_CABINET] = draw_cabinet,
    [LR_FURNITURE_CHEST] = draw_chest,
    [LR_FURNITURE_RADIATOR] = draw_radiator,
    [LR_FURNITURE_BOX] = draw_plain,
    [LR_FURNITURE_CYLINDER] = draw_cylinder,
  };
  const LrFurniture *furniture = &pen->item->furniture;

  g_return_if_fail (furniture->form >= 0 && furniture->form < (int) G_N_ELEMENTS (draw));

  draw[furniture->form] (pen, 0.5 * furniture->length_m, 0.5 * furniture->width_m);
}
