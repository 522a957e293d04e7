/* paint.c - from the room to a picture: perspective, and the blur disc at a distance
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "paint.h"

/**
 * lr_painter_init:
 * @painter: (out): a painter
 * @cr: where it paints, with the picture's upper left corner at 0, 0
 * @camera: through which it looks
 * @width: of the picture, device units
 */
void
lr_painter_init (LrPainter             *painter,
                 cairo_t               *cr,
                 const LrCameraReading *camera,
                 double                 width)
{
  *painter = (LrPainter) {
    .cr = cr,
    .projection = &camera->projection,
    .width = width,
    .height = width * camera->projection.half_height / camera->projection.half_width,
    .unit = width / 470.0,
    .focal_m = camera->focal_m,
    .f_number = camera->f_number,
  };
  painter->has_focus = camera->area.width_m > 0.0 && lr_focus_at (camera->focal_m, camera->focus_m, &painter->focus);
  if (painter->has_focus)
    painter->per_sensor_m = width / (camera->item->camera.squeeze * camera->area.width_m);
  lr_pixels_init (&painter->pixels, cr);
}

/**
 * lr_painter_depth_m:
 * @painter: a painter
 * @point_m: a point in the room [m]
 *
 * Returns: its depth along the axis, from the lens [m]; < 0 behind it
 */
double
lr_painter_depth_m (const LrPainter *painter,
                    LrVec3           point_m)
{
  return lr_vec3_dot (lr_vec3_sub (point_m, painter->projection->eye_m), painter->projection->forward);
}

/**
 * lr_painter_place:
 * @painter: a painter
 * @point_m: a point in the room [m]
 * @at: (out): where it is in the picture, device units
 *
 * Returns: %FALSE, with @at untouched, for a point that is not in front of the lens
 */
gboolean
lr_painter_place (const LrPainter *painter,
                  LrVec3           point_m,
                  LrVec2          *at)
{
  LrFramePoint place;

  if (!lr_projection_point (painter->projection, point_m, &place))
    return FALSE;

  *at = lr_vec2 (place.across * painter->width, place.down * painter->height);
  return TRUE;
}

/**
 * lr_painter_blur:
 * @painter: a painter
 * @depth_m: along the axis, from the lens [m]
 *
 * Returns: the radius of the blur disc of a point there, device units
 */
double
lr_painter_blur (const LrPainter *painter,
                 double           depth_m)
{
  double disc_m;

  if (!painter->has_focus
      || !lr_blur_disc_m (painter->focal_m, painter->f_number, &painter->focus, fmax (depth_m, LR_NEAR_M), &disc_m))
    return 0.0;

  return fmin (0.5 * disc_m * painter->per_sensor_m, 0.25 * painter->width);
}

/**
 * lr_painter_scale:
 * @painter: a painter
 * @depth_m: along the axis, from the lens [m], > 0
 *
 * Returns: device units per metre square to the axis there
 */
double
lr_painter_scale (const LrPainter *painter,
                  double           depth_m)
{
  return 0.5 * painter->width / (painter->projection->half_width * depth_m);
}

/**
 * lr_painter_project:
 * @painter: a painter
 * @points_m: corners of a convex polygon in the room [m]
 * @n: their number, < LR_PAINT_CORNERS
 * @patch: (out): what is seen of it
 *
 * Returns: %FALSE when nothing of it is in front of the near plane
 */
gboolean
lr_painter_project (const LrPainter *painter,
                    const LrVec3    *points_m,
                    guint            n,
                    LrPatch         *patch)
{
  double depth_m[LR_PAINT_CORNERS];

  patch->n = 0;
  for (guint i = 0; i < n; i++)
    depth_m[i] = lr_painter_depth_m (painter, points_m[i]) - LR_NEAR_M;

  for (guint i = 0; i < n && patch->n + 2 <= LR_PAINT_CORNERS; i++)
    {
      guint j = (i + 1) % n;

      if (depth_m[i] >= 0.0 && lr_painter_place (painter, points_m[i], &patch->at[patch->n]))
        patch->radius[patch->n++] = lr_painter_blur (painter, depth_m[i] + LR_NEAR_M);

      if ((depth_m[i] >= 0.0) != (depth_m[j] >= 0.0))
        {
          LrVec3 way = lr_vec3_sub (points_m[j], points_m[i]);
          LrVec3 cut_m = lr_vec3_along (points_m[i], way, depth_m[i] / (depth_m[i] - depth_m[j]));

          if (lr_painter_place (painter, cut_m, &patch->at[patch->n]))
            patch->radius[patch->n++] = lr_painter_blur (painter, LR_NEAR_M);
        }
    }

  return patch->n >= MIN (n, 3);
}
