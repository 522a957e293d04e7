/* viewfinder_guides.c - what is drawn over a viewfinder's picture: frame line, thirds, safe areas, the height of the eyes
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Safe areas are shares of the delivered frame. Of a 16:9 one action keeps within 93 % and titles within 90 % of its width and
 * height (ITU-R BT.1848-1; EBU R 95; from memory). They speak of 16:9; there is no standard for other frames, and 1:1, 4:5,
 * 2.39:1 and the sensor's own get the same shares here. Players of upright pictures cover their head and foot with controls:
 * of 9:16 the upper 14 % and the lower 20 % are kept clear of titles (common practice, no source), and 5 % at the sides.
 */

#include "viewfinder.h"

#include "viewfinder_private.h"

#define POINTER_PX 8.0
#define OUTSIDE_ALPHA 0.5 /* how much darker the recorded frame is outside the delivered one */

/* Shares of a delivered frame at its edges that are not safe */
typedef struct
{
  double side, top, bottom;
} Margins;

static const Margins action_margins = { 0.035, 0.035, 0.035 };
static const Margins title_margins = { 0.05, 0.05, 0.05 };
static const Margins upright_margins = { 0.05, 0.14, 0.20 };

/* Upright and level lines are filled as boxes of whole pixels: sharp, and a tenth of the cost of stroking them */
static void
fill_lines (cairo_t *cr,
            double   x,
            double   y,
            double   width,
            double   height,
            int      n,
            double   line_width)
{
  for (int i = 0; i < n; i++)
    {
      double k = (double) (i + 1) / (n + 1);

      cairo_rectangle (cr, x + k * width - 0.5 * line_width, y, line_width, height);
      cairo_fill (cr);
      cairo_rectangle (cr, x, y + k * height - 0.5 * line_width, width, line_width);
      cairo_fill (cr);
    }
}

/* The four sides of a box, as boxes */
static void
fill_frame (cairo_t *cr,
            double   x,
            double   y,
            double   width,
            double   height,
            double   line_width)
{
  double half = 0.5 * line_width;

  cairo_rectangle (cr, x - half, y - half, width + line_width, line_width);
  cairo_fill (cr);
  cairo_rectangle (cr, x - half, y + height - half, width + line_width, line_width);
  cairo_fill (cr);
  cairo_rectangle (cr, x - half, y + half, line_width, height - line_width);
  cairo_fill (cr);
  cairo_rectangle (cr, x + width - half, y + half, line_width, height - line_width);
  cairo_fill (cr);
}

/* White over a wider dark line: seen on any ground */
static void
draw_thirds (cairo_t          *cr,
             const LrPictureBox *box,
             double            unit)
{
  cairo_set_source_rgba (cr, 0.0, 0.0, 0.0, 0.22);
  fill_lines (cr, box->x, box->y, box->width, box->height, 2, 2.2 * unit);
  cairo_set_source_rgba (cr, 1.0, 1.0, 1.0, 0.5);
  fill_lines (cr, box->x, box->y, box->width, box->height, 2, 1.0 * unit);
}

static void
add_dashes (cairo_t *cr,
            double   x,
            double   y,
            double   length,
            gboolean is_upright,
            double   unit)
{
  double on = 5.0 * unit, step = 8.0 * unit, half = 0.5 * unit;

  for (double at = 0.0; at < length; at += step)
    {
      double part = fmin (on, length - at);

      if (is_upright)
        cairo_rectangle (cr, x - half, y + at, 2.0 * half, part);
      else
        cairo_rectangle (cr, x + at, y - half, part, 2.0 * half);
    }
}

static void
inset (const LrPictureBox *box,
       const Margins    *margins,
       LrPictureBox       *out)
{
  *out = (LrPictureBox) {
    box->x + margins->side * box->width,
    box->y + margins->top * box->height,
    (1.0 - 2.0 * margins->side) * box->width,
    (1.0 - margins->top - margins->bottom) * box->height,
  };
}

static void
draw_title_area (cairo_t          *cr,
                 const LrPictureBox *box,
                 double            unit)
{
  double x1 = box->x + box->width, y1 = box->y + box->height;

  cairo_set_source_rgba (cr, 0.0, 0.0, 0.0, 0.16);
  fill_frame (cr, box->x, box->y, box->width, box->height, 2.0 * unit);
  cairo_set_source_rgba (cr, 1.0, 1.0, 1.0, 0.78);
  add_dashes (cr, box->x, box->y, box->width, FALSE, unit);
  add_dashes (cr, box->x, y1, box->width, FALSE, unit);
  add_dashes (cr, box->x, box->y, box->height, TRUE, unit);
  add_dashes (cr, x1, box->y, box->height, TRUE, unit);
  cairo_fill (cr);
}

/* Only its corners, or two lines would run side by side */
static void
draw_action_area (cairo_t          *cr,
                  const LrPictureBox *box,
                  double            unit)
{
  double arm = 0.05 * fmin (box->width, box->height);

  cairo_set_source_rgba (cr, 1.0, 1.0, 1.0, 0.62);
  for (int i = 0; i < 4; i++)
    {
      double x = i & 1 ? box->x + box->width : box->x, y = i & 2 ? box->y + box->height : box->y;

      cairo_rectangle (cr, i & 1 ? x - arm : x, y - 0.5 * unit, arm, unit);
      cairo_rectangle (cr, x - 0.5 * unit, i & 2 ? y - arm : y, unit, arm);
    }
  cairo_fill (cr);
}

static void
draw_safe_areas (cairo_t               *cr,
                 const LrCameraReading *camera,
                 const LrPictureBox      *box,
                 double                 unit)
{
  LrPictureBox area;

  if (camera->item != NULL && camera->item->camera.aspect == LR_ASPECT_9_16)
    {
      inset (box, &upright_margins, &area);
      draw_title_area (cr, &area, unit);
      return;
    }

  inset (box, &title_margins, &area);
  draw_title_area (cr, &area, unit);
  inset (box, &action_margins, &area);
  draw_action_area (cr, &area, unit);
}

/* What is recorded beside the delivered frame is seen, but dimmed; a line parts them */
static void
draw_outside (cairo_t          *cr,
              const LrPictureBox *picture,
              const LrPictureBox *box,
              double            unit)
{
  cairo_fill_rule_t rule = cairo_get_fill_rule (cr);

  if (box->width >= picture->width - 0.5 && box->height >= picture->height - 0.5)
    return;

  cairo_set_fill_rule (cr, CAIRO_FILL_RULE_EVEN_ODD);
  cairo_rectangle (cr, picture->x, picture->y, picture->width, picture->height);
  cairo_rectangle (cr, box->x, box->y, box->width, box->height);
  cairo_set_source_rgba (cr, 0.0, 0.0, 0.0, OUTSIDE_ALPHA);
  cairo_fill (cr);
  cairo_set_fill_rule (cr, rule);

  cairo_set_source_rgba (cr, 1.0, 1.0, 1.0, 0.85);
  fill_frame (cr, box->x, box->y, box->width, box->height, unit);
}

static void
draw_eye_pointers (cairo_t          *cr,
                   const LrPictureBox *box,
                   double            y,
                   double            unit)
{
  for (int side = -1; side <= 1; side += 2)
    {
      double x = side < 0 ? box->x : box->x + box->width, tip = x - side * POINTER_PX * unit;

      cairo_move_to (cr, x, y - 0.6 * POINTER_PX * unit);
      cairo_line_to (cr, tip, y);
      cairo_line_to (cr, x, y + 0.6 * POINTER_PX * unit);
      cairo_close_path (cr);
    }

  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_set_source_rgba (cr, 0.0, 0.0, 0.0, 0.55);
  cairo_set_line_width (cr, 1.4 * unit);
  cairo_stroke_preserve (cr);
  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  cairo_fill (cr);
}

/**
 * lr_viewfinder_draw_guides:
 * @cr: where to draw
 * @camera: a camera
 * @style: which guides
 * @picture: the whole picture, device units
 * @box: the delivered frame in it
 */
void
lr_viewfinder_draw_guides (cairo_t                 *cr,
                           const LrCameraReading   *camera,
                           const LrViewfinderStyle *style,
                           const LrPictureBox        *picture,
                           const LrPictureBox        *box)
{
  /* not under a pixel: boxes of whole pixels would miss lines that lie between two of them */
  double unit = style->unit > 0.0 ? style->unit : fmax (1.0, style->width / 470.0);
  double eyes = camera->eyes_down;

  cairo_set_antialias (cr, CAIRO_ANTIALIAS_NONE);
  draw_outside (cr, picture, box, unit);
  if (style->has_thirds)
    draw_thirds (cr, box, unit);
  if (style->has_safe_area)
    draw_safe_areas (cr, camera, box, unit);
  cairo_set_source_rgba (cr, 0.0, 0.0, 0.0, 0.24);
  fill_frame (cr, picture->x, picture->y, picture->width, picture->height, 2.0 * unit);

  cairo_set_antialias (cr, CAIRO_ANTIALIAS_DEFAULT);
  if (style->has_eye_pointers && camera->has_subject && eyes >= 0.0 && eyes <= 1.0)
    draw_eye_pointers (cr, box, box->y + eyes * box->height, unit);
}
