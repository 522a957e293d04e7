/* symbols_people.c - people from above
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Origin at the head, facing +x. The subject has a solid head, the interviewer an open one and notes on the lap.
 */

#include "pen.h"

/* Under this width of the head hands, feet and the lines of the notes would clot */
#define SMALL_HEAD_PX 7.0
#define HEAD_WIDTH_M 0.156

static void
paint_clothes (const LrPen *pen)
{
  lr_pen_paint (pen, pen->theme->clothes, pen->theme->ink, LR_LINE_THIN);
}

/* One limb on each side, mirrored */
static void
draw_limbs (const LrPen *pen,
            LrVec2       from_m,
            LrVec2       to_m,
            double       radius_m)
{
  lr_pen_capsule (pen, from_m, to_m, radius_m);
  lr_pen_capsule (pen, lr_vec2 (from_m.x, -from_m.y), lr_vec2 (to_m.x, -to_m.y), radius_m);
  paint_clothes (pen);
}

static void
draw_chair (const LrPen *pen)
{
  lr_pen_round_box (pen, -0.24, -0.23, 0.22, 0.23, 0.05);
  lr_pen_paint (pen, pen->theme->furniture_fill, pen->theme->furniture_edge, LR_LINE_THIN);
  lr_pen_round_box (pen, -0.29, -0.21, -0.235, 0.21, 0.025);
  lr_pen_paint (pen, pen->theme->furniture_fill, pen->theme->furniture_edge, LR_LINE_THIN);
}

static void
draw_notes (const LrPen *pen,
            gboolean     has_lines)
{
  lr_pen_box (pen, 0.21, -0.11, 0.44, 0.11);
  lr_pen_paint (pen, pen->theme->room, pen->theme->ink, LR_LINE_THIN);

  if (!has_lines)
    return;
  for (int i = 0; i < 3; i++)
    lr_pen_segment (pen, 0.275 + 0.05 * i, -0.075, 0.275 + 0.05 * i, 0.075);
  lr_pen_stroke (pen, pen->theme->ink2, LR_LINE_HAIR, LR_DASH_SOLID);
}

static void
draw_shoulders (const LrPen *pen)
{
  cairo_t *cr = pen->cr;

  cairo_move_to (cr, 0.10, 0.0);
  cairo_curve_to (cr, 0.10, 0.12, 0.075, 0.22, 0.0, 0.235);
  cairo_curve_to (cr, -0.08, 0.25, -0.125, 0.13, -0.125, 0.0);
  cairo_curve_to (cr, -0.125, -0.13, -0.08, -0.25, 0.0, -0.235);
  cairo_curve_to (cr, 0.075, -0.22, 0.10, -0.12, 0.10, 0.0);
  cairo_close_path (cr);
  lr_pen_paint (pen, pen->theme->clothes, pen->theme->ink, LR_LINE_OUTLINE);
}

static void
draw_head (const LrPen *pen,
           gboolean     is_solid)
{
  LrColor ink = is_solid ? pen->theme->equipment : pen->theme->ink;
  cairo_t *cr = pen->cr;

  cairo_move_to (cr, 0.11, 0.03);
  cairo_line_to (cr, 0.155, 0.0);
  cairo_line_to (cr, 0.11, -0.03);
  cairo_close_path (cr);
  lr_pen_paint (pen, ink, ink, LR_LINE_THIN);

  lr_pen_ellipse (pen, 0.02, 0.0, 0.098, 0.078);
  if (is_solid)
    lr_pen_paint (pen, ink, ink, LR_LINE_THIN);
  else
    lr_pen_paint (pen, pen->theme->clothes, ink, LR_LINE_OUTLINE);
}

/**
 * lr_symbol_person:
 * @pen: a pen for a person
 */
void
lr_symbol_person (const LrPen *pen)
{
  const LrPerson *person = &pen->item->person;
  gboolean is_small = HEAD_WIDTH_M < SMALL_HEAD_PX * pen->px_m;

  if (person->posture == LR_POSTURE_SEATED)
    {
      draw_chair (pen);
      if (!is_small)
        draw_limbs (pen, lr_vec2 (0.50, 0.11), lr_vec2 (0.63, 0.13), 0.043);
      draw_limbs (pen, lr_vec2 (0.03, 0.10), lr_vec2 (0.47, 0.115), 0.075);
      if (person->role == LR_ROLE_INTERVIEWER)
        draw_notes (pen, !is_small);
      if (!is_small)
        draw_limbs (pen, lr_vec2 (0.03, 0.225), lr_vec2 (0.20, 0.19), 0.042);
    }
  else if (!is_small)
    {
      draw_limbs (pen, lr_vec2 (0.0, 0.085), lr_vec2 (0.135, 0.10), 0.042);
      draw_limbs (pen, lr_vec2 (0.0, 0.212), lr_vec2 (0.055, 0.222), 0.046);
    }

  draw_shoulders (pen);
  draw_head (pen, person->role == LR_ROLE_SUBJECT);
}
