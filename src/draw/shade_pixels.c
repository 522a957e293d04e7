/* shade_pixels.c - shaded shapes written straight into a picture of pixels
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cairo fetches a gradient for each row of a shape, at a price that is far above the row's. Here the shape is filled into a
 * mask, soft edges and all, and its tones are looked up by the place across it.
 */

#include "paint.h"

/**
 * lr_pixels_open_mask:
 * @pixels: a picture
 * @cr: what paints on it
 *
 * Makes a mask of the picture's size; lr_pixels_close_mask() frees it.
 */
void
lr_pixels_open_mask (LrPixels *pixels,
                     cairo_t  *cr)
{
  cairo_matrix_t m;

  if (pixels->surface == NULL || pixels->x1 <= pixels->x0 || pixels->y1 <= pixels->y0)
    return;

  pixels->mask = cairo_image_surface_create (CAIRO_FORMAT_A8, pixels->x1 - pixels->x0, pixels->y1 - pixels->y0);
  pixels->mask_cr = cairo_create (pixels->mask);
  cairo_matrix_init (&m, pixels->scale, 0.0, 0.0, pixels->scale, pixels->x - pixels->x0, pixels->y - pixels->y0);
  cairo_set_matrix (pixels->mask_cr, &m);
  cairo_set_operator (pixels->mask_cr, CAIRO_OPERATOR_SOURCE); /* an inner layer hides more than the one around it */
  cairo_set_tolerance (pixels->mask_cr, cairo_get_tolerance (cr));
  cairo_set_antialias (pixels->mask_cr, cairo_get_antialias (cr));
}

/**
 * lr_pixels_close_mask:
 * @pixels: a picture
 */
void
lr_pixels_close_mask (LrPixels *pixels)
{
  g_clear_pointer (&pixels->mask_cr, cairo_destroy);
  g_clear_pointer (&pixels->mask, cairo_surface_destroy);
}

/* One row: what the mask covers takes its tone, and the mask is clear again */
static void
shade_row (guint32       *row,
           guint8        *mask,
           int            n,
           const guint32 *tones,
           double         first,
           double         step)
{
  for (int i = 0; i < n; i++)
    if (mask[i] > 0)
      {
        double place = CLAMP (first + step * i, 0.0, LR_N_TONES - 1.0);

        row[i] = lr_pixel_mix (row[i], tones[(int) (place + 0.5)], (guint32) mask[i] + (mask[i] >> 7));
        mask[i] = 0;
      }
}

/**
 * lr_pixels_shade:
 * @pixels: a picture whose mask is filled
 * @low: upper left corner of what is filled, device units
 * @high: lower right corner of it
 * @tones: LR_N_TONES of them, as pixels
 * @from: where the first is, device units
 * @to: where the last is
 *
 * Paints the tones through the mask, and clears the mask.
 */
void
lr_pixels_shade (const LrPixels *pixels,
                 LrVec2          low,
                 LrVec2          high,
                 const guint32  *tones,
                 LrVec2          from,
                 LrVec2          to)
{
  int x0 = (int) CLAMP (floor (low.x * pixels->scale + pixels->x) - 1.0, pixels->x0, pixels->x1);
  int x1 = (int) CLAMP (ceil (high.x * pixels->scale + pixels->x) + 1.0, x0, pixels->x1);
  int y0 = (int) CLAMP (floor (low.y * pixels->scale + pixels->y) - 1.0, pixels->y0, pixels->y1);
  int y1 = (int) CLAMP (ceil (high.y * pixels->scale + pixels->y) + 1.0, y0, pixels->y1);
  LrVec2 way = lr_vec2_sub (to, from);
  LrVec2 per_px = lr_vec2_scale (way, (LR_N_TONES - 1.0) / (pixels->scale * fmax (lr_vec2_dot (way, way), 1e-12)));
  int stride = cairo_image_surface_get_stride (pixels->surface), mask_stride = cairo_image_surface_get_stride (pixels->mask);
  guint8 *data, *mask;

  if (x0 >= x1 || y0 >= y1)
    return;

  cairo_surface_flush (pixels->surface);
  cairo_surface_flush (pixels->mask);
  data = cairo_image_surface_get_data (pixels->surface);
  mask = cairo_image_surface_get_data (pixels->mask);
  for (int y = y0; y < y1; y++)
    {
      LrVec2 at = { x0 + 0.5 - (from.x * pixels->scale + pixels->x), y + 0.5 - (from.y * pixels->scale + pixels->y) };

      shade_row ((guint32 *) (void *) (data + (gsize) y * stride) + x0, mask + (gsize) (y - pixels->y0) * mask_stride + x0 - pixels->x0,
                 x1 - x0, tones, lr_vec2_dot (at, per_px), per_px.x);
    }
  cairo_surface_mark_dirty_rectangle (pixels->surface, x0, y0, x1 - x0, y1 - y0);
  cairo_surface_mark_dirty (pixels->mask);
}
