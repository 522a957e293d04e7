/* viewfinder.c - what a camera sees
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "viewfinder.h"

#include <glib/gi18n-lib.h>

#include "paint.h"

#define SAFE_SHARE 0.9
#define POINTER_PX 8.0
#define NBSP "\302\240"

/**
 * lr_viewfinder_height:
 * @camera: a camera
 * @width: of its picture, device units
 *
 * Returns: the height of the picture, device units
 */
double
lr_viewfinder_height (const LrCameraReading *camera,
                      double                 width)
{
  const LrProjection *p = &camera->projection;

  if (p->half_width > 0.0 && p->half_height > 0.0)
    return width * p->half_height / p->half_width;

  return width * 9.0 / 16.0;
}

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
draw_thirds (cairo_t *cr,
             double   width,
             double   height,
             double   unit)
{
  cairo_set_source_rgba (cr, 0.0, 0.0, 0.0, 0.22);
  fill_lines (cr, 0.0, 0.0, width, height, 2, 2.2 * unit);
  cairo_set_source_rgba (cr, 1.0, 1.0, 1.0, 0.5);
  fill_lines (cr, 0.0, 0.0, width, height, 2, 1.0 * unit);
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
draw_safe_area (cairo_t *cr,
                double   width,
                double   height,
                double   unit)
{
  double edge = 0.5 * (1.0 - SAFE_SHARE);
  double x0 = edge * width, x1 = width - x0, y0 = edge * height, y1 = height - y0;

  cairo_set_source_rgba (cr, 0.0, 0.0, 0.0, 0.16);
  fill_frame (cr, x0, y0, x1 - x0, y1 - y0, 2.0 * unit);
  cairo_set_source_rgba (cr, 1.0, 1.0, 1.0, 0.78);
  add_dashes (cr, x0, y0, x1 - x0, FALSE, unit);
  add_dashes (cr, x0, y1, x1 - x0, FALSE, unit);
  add_dashes (cr, x0, y0, y1 - y0, TRUE, unit);
  add_dashes (cr, x1, y0, y1 - y0, TRUE, unit);
  cairo_fill (cr);
}

static void
draw_eye_pointers (cairo_t *cr,
                   double   width,
                   double   y,
                   double   unit)
{
  for (int side = -1; side <= 1; side += 2)
    {
      double x = side < 0 ? 0.0 : width, tip = x - side * POINTER_PX * unit;

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

static void
draw_guides (cairo_t                 *cr,
             const LrCameraReading   *camera,
             const LrViewfinderStyle *style,
             double                   height)
{
  /* not under a pixel: boxes of whole pixels would miss lines that lie between two of them */
  double unit = style->unit > 0.0 ? style->unit : fmax (1.0, style->width / 470.0);
  double eyes = camera->eyes_down;

  cairo_set_antialias (cr, CAIRO_ANTIALIAS_NONE);
  if (style->has_thirds)
    draw_thirds (cr, style->width, height, unit);
  if (style->has_safe_area)
    draw_safe_area (cr, style->width, height, unit);
  cairo_set_source_rgba (cr, 0.0, 0.0, 0.0, 0.24);
  fill_frame (cr, 0.0, 0.0, style->width, height, 2.0 * unit);

  cairo_set_antialias (cr, CAIRO_ANTIALIAS_DEFAULT);
  if (style->has_eye_pointers && camera->has_subject && eyes >= 0.0 && eyes <= 1.0)
    draw_eye_pointers (cr, style->width, eyes * height, unit);
}

/**
 * lr_viewfinder_draw:
 * @cr: where to draw, with the picture's upper left corner at 0, 0
 * @study: a study
 * @camera: one of its cameras
 * @style: size of the picture, and what is drawn over it
 *
 * Everything is vector, at every size and on every surface.
 */
void
lr_viewfinder_draw (cairo_t                 *cr,
                    const LrStudy           *study,
                    const LrCameraReading   *camera,
                    const LrViewfinderStyle *style)
{
  double height = lr_viewfinder_height (camera, style->width);
  const LrProjection *p = &camera->projection;

  g_return_if_fail (style->width > 0.0);

  cairo_save (cr);
  /* Of pixels the picture takes whole ones: half a row at its foot would be neither the picture nor what is under it */
  if (cairo_surface_get_type (cairo_get_group_target (cr)) == CAIRO_SURFACE_TYPE_IMAGE)
    cairo_set_antialias (cr, CAIRO_ANTIALIAS_NONE);
  cairo_rectangle (cr, 0.0, 0.0, style->width, height);
  cairo_clip (cr);
  cairo_set_antialias (cr, CAIRO_ANTIALIAS_DEFAULT);
  if (p->half_width > 0.0 && p->half_height > 0.0 && isfinite (p->eye_m.x + p->eye_m.y + p->eye_m.z))
    {
      LrScene *scene = lr_scene_new (study, camera);
      LrPainter painter;

      cairo_set_tolerance (cr, 0.2);
      lr_painter_init (&painter, cr, camera, style->width);
      lr_paint_scene (&painter, scene);
      lr_scene_free (scene);
    }
  draw_guides (cr, camera, style, height);
  cairo_restore (cr);
}

static void
append_part (GString *line,
             char    *part)
{
  if (line->len > 0)
    g_string_append (line, "   ");
  g_string_append (line, part);
  g_free (part);
}

static char *
share_text (double share)
{
  g_autofree char *number = lr_number_format (100.0 * share, 0);

  return g_strconcat (number, NBSP "%", NULL);
}

static void
append_framing (GString               *line,
                const LrCameraReading *camera)
{
  g_autofree char *eyes = share_text (camera->eyes_down);
  double headroom = camera->framing.headroom;
  g_autofree char *room = share_text (fabs (headroom));

  if (!isfinite (camera->eyes_down) || !isfinite (headroom))
    return;

  if (camera->eyes_down < 0.0 || camera->eyes_down > 1.0 || camera->eyes_across < 0.0 || camera->eyes_across > 1.0)
    append_part (line, g_strdup (_("eyes outside the frame")));
  else
    append_part (line, g_strdup_printf (_("eyes %s down"), eyes));

  /* TRANSLATORS: both end in a share of the frame's height */
  append_part (line, g_strdup_printf (headroom >= 0.0 ? _("headroom %s") : _("crown cut by %s"), room));
}

static void
append_sharp (GString               *line,
              const LrCameraReading *camera,
              LrUnits                units)
{
  g_autofree char *near_m = lr_length_format (camera->sharp_near_m, units);
  g_autofree char *short_near_m = lr_length_format_short (camera->sharp_near_m, units);

  if (!isfinite (camera->sharp_near_m))
    return;

  if (isfinite (camera->sharp_far_m))
    {
      g_autofree char *far_m = lr_length_format (camera->sharp_far_m, units);

      append_part (line, g_strdup_printf (_("sharp %s to %s"), short_near_m, far_m));
    }
  else if (!isnan (camera->sharp_far_m))
    append_part (line, g_strdup_printf (_("sharp from %s on"), near_m));
}

/**
 * lr_viewfinder_figures:
 * @camera: a camera
 * @units: of lengths
 *
 * Returns: (transfer full): "eyes 31 % down   headroom 19 %   gaze 18° off the lens   sharp 2.00 to 2.30 m"; what
 *   cannot be told is left out
 */
char *
lr_viewfinder_figures (const LrCameraReading *camera,
                       LrUnits                units)
{
  GString *line = g_string_new (NULL);

  if (!camera->has_subject)
    {
      append_part (line, g_strdup (_("nobody to look at")));
      return g_string_free (line, FALSE);
    }

  append_framing (line, camera);
  if (isfinite (camera->gaze_rad))
    {
      g_autofree char *gaze = lr_angle_format (fabs (camera->gaze_rad));

      append_part (line, g_strdup_printf (_("gaze %s off the lens"), gaze));
    }
  append_sharp (line, camera, units);
  return g_string_free (line, FALSE);
}
