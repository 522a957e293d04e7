/* viewfinder.c - what a camera sees
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "viewfinder.h"

#include <glib/gi18n-lib.h>

#include "paint.h"
#include "viewfinder_marks.h"
#include "viewfinder_private.h"

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

/**
 * lr_viewfinder_place:
 * @camera: a camera
 * @style: a style
 * @picture: (out): the whole picture, its upper left corner at 0, 0, device units
 * @delivered: (out): the delivered frame in it; all of it unless the style shows what is recorded
 */
void
lr_viewfinder_place (const LrCameraReading   *camera,
                     const LrViewfinderStyle *style,
                     LrPictureBox              *picture,
                     LrPictureBox              *delivered)
{
  const LrSensorArea *recorded = &camera->recorded, *area = &camera->area;
  double across = 1.0, down = 1.0, height = lr_viewfinder_height (camera, style->width);

  if (style->shows_recorded && area->width_m > 0.0 && area->height_m > 0.0 && recorded->width_m >= area->width_m
      && recorded->height_m >= area->height_m)
    {
      across = area->width_m / recorded->width_m;
      down = area->height_m / recorded->height_m;
    }

  *picture = (LrPictureBox) { 0.0, 0.0, style->width, height * across / down };
  *delivered = (LrPictureBox) { 0.5 * (1.0 - across) * picture->width, 0.5 * (1.0 - down) * picture->height,
                              across * picture->width, down * picture->height };
}

/* The same camera, seen by as much of its sensor as it records */
static LrCameraReading
as_recorded (const LrCameraReading *camera,
             const LrPictureBox      *picture,
             const LrPictureBox      *delivered)
{
  LrCameraReading recorded = *camera;

  recorded.projection.half_width *= picture->width / delivered->width;
  recorded.projection.half_height *= picture->height / delivered->height;
  recorded.area.width_m *= picture->width / delivered->width;
  recorded.area.height_m *= picture->height / delivered->height;
  return recorded;
}

static void
draw_picture (cairo_t               *cr,
              const LrStudy         *study,
              const LrCameraReading *camera,
              const LrLightLevels   *levels,
              double                 width)
{
  const LrProjection *p = &camera->projection;
  LrPainter painter;
  LrScene *scene;

  if (!(p->half_width > 0.0) || !(p->half_height > 0.0) || !isfinite (p->eye_m.x + p->eye_m.y + p->eye_m.z))
    return;

  scene = lr_scene_new (study, camera, levels);
  cairo_set_tolerance (cr, 0.2);
  lr_painter_init (&painter, cr, camera, width);
  lr_pixels_open_mask (&painter.pixels, cr);
  lr_paint_scene (&painter, scene);
  lr_pixels_close_mask (&painter.pixels);
  lr_scene_free (scene);
}

/**
 * lr_viewfinder_draw:
 * @cr: where to draw, with the picture's upper left corner at 0, 0
 * @study: a study
 * @camera: one of its cameras
 * @style: size of the picture, and what is drawn over it
 *
 * Everything is vector on a page; on a picture of pixels soft edges are computed pixel by pixel.
 */
void
lr_viewfinder_draw (cairo_t                 *cr,
                    const LrStudy           *study,
                    const LrCameraReading   *camera,
                    const LrViewfinderStyle *style)
{
  LrPictureBox picture, delivered;
  LrCameraReading seen;

  g_return_if_fail (style->width > 0.0);

  lr_viewfinder_place (camera, style, &picture, &delivered);
  seen = as_recorded (camera, &picture, &delivered);
  cairo_save (cr);
  /* Of pixels the picture takes whole ones: half a row at its foot would be neither the picture nor what is under it */
  if (cairo_surface_get_type (cairo_get_group_target (cr)) == CAIRO_SURFACE_TYPE_IMAGE)
    cairo_set_antialias (cr, CAIRO_ANTIALIAS_NONE);
  cairo_rectangle (cr, 0.0, 0.0, picture.width, picture.height);
  cairo_clip (cr);
  cairo_set_antialias (cr, CAIRO_ANTIALIAS_FAST);
  draw_picture (cr, study, &seen, style->levels, style->width);
  lr_viewfinder_draw_guides (cr, camera, style, &picture, &delivered);
  lr_viewfinder_marks (cr, study, camera, style, &delivered);
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
