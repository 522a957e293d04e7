/* paint.h - from the room to a picture: perspective, and softness by the measured blur disc
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "optics.h"
#include "scene.h"

#define LR_NEAR_M 0.08       /* what is nearer to the lens is left out */
#define LR_PAINT_CORNERS 64  /* most corners of a polygon */

#define LR_N_SHARES 512
#define LR_N_TONES 128

/* What a painter paints on, when that is a plain picture of pixels: from a place in device units to one in pixels, and the
 * box that may be painted on */
typedef struct
{
  cairo_surface_t *surface; /* NULL: it is not */
  double           scale, x, y;
  int              x0, y0, x1, y1;
  const float     *share;   /* lr_soft_share() of -1 to 1, LR_N_SHARES + 1 of them */
  cairo_surface_t *mask;    /* of that box, for shapes that are shaded; NULL: there is none */
  cairo_t         *mask_cr;
} LrPixels;

/* Tones that change from place to place of a picture of pixels: @level, 0 to 1, at a place in device units chooses one */
typedef struct
{
  double      (*level) (gconstpointer data, LrVec2 at);
  gconstpointer data;
  guint32       tone[LR_N_TONES];
  LrVec2        fine_low, fine_high; /* the box in which the level may change within a few pixels; none: low over high */
} LrPixelTones;

static inline guint32
lr_pixel_of (LrColor color)
{
  return 0xff000000 | (guint32) (255.0 * CLAMP (color.r, 0.0, 1.0) + 0.5) << 16
         | (guint32) (255.0 * CLAMP (color.g, 0.0, 1.0) + 0.5) << 8 | (guint32) (255.0 * CLAMP (color.b, 0.0, 1.0) + 0.5);
}

/* A pixel under another of which there is a share, out of 256 */
static inline guint32
lr_pixel_mix (guint32 under,
              guint32 over,
              guint32 share)
{
  guint32 left = 256 - share;
  guint32 rb = ((under & 0xff00ff) * left + (over & 0xff00ff) * share + 0x800080) >> 8 & 0xff00ff;
  guint32 g = ((under & 0x00ff00) * left + (over & 0x00ff00) * share + 0x008000) >> 8 & 0x00ff00;

  return 0xff000000 | rb | g;
}

typedef struct
{
  cairo_t            *cr;
  const LrProjection *projection;
  double              width, height; /* of the picture, device units */
  double              unit;          /* a pixel of the picture at its usual width: line weights and fineness */
  gboolean            has_focus;
  double              focal_m, f_number;
  double              per_sensor_m;  /* device units of the picture per metre on the sensor */
  LrFocus             focus;
  LrPixels            pixels;
} LrPainter;

/* A polygon in the picture, with the radius of the blur disc at each corner */
typedef struct
{
  guint  n;
  LrVec2 at[LR_PAINT_CORNERS];
  double radius[LR_PAINT_CORNERS];
} LrPatch;

void     lr_painter_init    (LrPainter *painter, cairo_t *cr, const LrCameraReading *camera, double width);
double   lr_painter_depth_m (const LrPainter *painter, LrVec3 point_m);
gboolean lr_painter_place   (const LrPainter *painter, LrVec3 point_m, LrVec2 *at);
double   lr_painter_blur    (const LrPainter *painter, double depth_m);
double   lr_painter_scale   (const LrPainter *painter, double depth_m); /* device units per metre there */
/* Cut at the near plane and brought into the picture; FALSE: nothing is left of it */
gboolean lr_painter_project (const LrPainter *painter, const LrVec3 *points_m, guint n, LrPatch *patch);

/* How much of the disc of radius 1 lies beyond a straight edge at @t from its middle */
double   lr_soft_share  (double t);
guint    lr_soft_levels (const LrPainter *painter, double radius);
/* The nth of n layers: how far from the edge, in radii, outside > 0, and its alpha */
void     lr_soft_level  (guint level, guint n_levels, double alpha, double *offset, double *layer_alpha);

/* soft_pixels.c */
void     lr_pixels_init    (LrPixels *pixels, cairo_t *cr);
gboolean lr_pixels_polygon (const LrPixels *pixels, const LrVec2 *p, const double *radius, guint n, LrColor color, double alpha);
void     lr_pixels_polygon_in_tones (const LrPixels *pixels, const LrVec2 *p, const double *radius, guint n, const LrPixelTones *tones);

/* shade_pixels.c */
void     lr_pixels_open_mask  (LrPixels *pixels, cairo_t *cr);
void     lr_pixels_close_mask (LrPixels *pixels);
void     lr_pixels_shade      (const LrPixels *pixels, LrVec2 low, LrVec2 high, const guint32 *tones, LrVec2 from, LrVec2 to);

void     lr_paint_patch (const LrPainter *painter, const LrPatch *patch, LrColor color, double alpha);
/* Only where there are pixels to write to */
void     lr_paint_patch_in_tones (const LrPainter *painter, const LrPatch *patch, const LrPixelTones *tones);
void     lr_paint_hull  (const LrPainter *painter, LrVec2 *points, guint n, double inset, LrColor color);
void     lr_paint_bar   (const LrPainter *painter, LrVec3 from_m, LrVec3 to_m, double radius_m, LrColor color,
                         double alpha);

/* Convex hull in place, anticlockwise in a frame with y up; returns its number of corners */
guint    lr_hull (LrVec2 *points, guint n);

/* order.c: indices of the solids that are in the picture, far to near */
GArray  *lr_paint_order (const LrPainter *painter, const LrScene *scene);
/* paint_scene.c */
void     lr_paint_scene (const LrPainter *painter, const LrScene *scene);
void     lr_paint_solid (const LrPainter *painter, const LrScene *scene, const LrSolid *solid);
void     lr_paint_room  (const LrPainter *painter, const LrScene *scene);
/* paint_wall.c */
void     lr_paint_wall  (const LrPainter *painter, const LrScene *scene, const LrFace *face, const LrPatch *patch);
