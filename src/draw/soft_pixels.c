/* soft_pixels.c - soft polygons written straight into a picture of pixels
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * On a page a soft edge is a stack of polygons (soft.c). On the screen the same ramp is computed pixel by pixel: of the blur
 * disc about a pixel an edge at t radii cuts off lr_soft_share (t). It is smoother than the stack, and several times as fast.
 * The rows of a convex polygon have a middle that is wholly covered and two ramps; only these are computed.
 *
 * Where two edges meet, the share that both leave is exact when they are the same edge (the smaller), at right angles (the
 * product) and on either side of a strip (both less 1); between these it is interpolated by the cosine of their angle.
 */

#include "paint.h"

#define LEAST_PX 0.58 /* radius: a sharp edge is as soft as a pixel is wide */

/* Distance outside the edge, place along it from 0 to 1, and radius there; of a pixel at x, y: all three are affine */
typedef struct
{
  double nx, ny, c;
  double ax, ay, a;
  double radius, more, most;
} Edge;

typedef struct
{
  const LrPixels *pixels;
  guint           n;
  Edge            edge[LR_PAINT_CORNERS];
  guint32         color;
  double          alpha;
} Job;

/**
 * lr_pixels_init:
 * @pixels: (out): a picture
 * @cr: (nullable): what paints on it
 *
 * Without pixels of our format under @cr, or when they are turned, skewed or clipped to more than a box, @pixels has no data.
 */
void
lr_pixels_init (LrPixels *pixels,
                cairo_t  *cr)
{
  cairo_surface_t *surface = cr != NULL ? cairo_get_group_target (cr) : NULL;
  cairo_rectangle_list_t *clip;
  double scale_x, scale_y, offset_x, offset_y;
  cairo_matrix_t m;

  *pixels = (LrPixels) { 0 };
  if (surface == NULL || cairo_surface_get_type (surface) != CAIRO_SURFACE_TYPE_IMAGE
      || cairo_image_surface_get_format (surface) != CAIRO_FORMAT_RGB24)
    return;

  cairo_get_matrix (cr, &m);
  cairo_surface_get_device_scale (surface, &scale_x, &scale_y);
  cairo_surface_get_device_offset (surface, &offset_x, &offset_y);
  clip = cairo_copy_clip_rectangle_list (cr);
  if (m.xy == 0.0 && m.yx == 0.0 && m.xx > 0.0 && m.xx * scale_x == m.yy * scale_y && clip->status == CAIRO_STATUS_SUCCESS
      && clip->num_rectangles == 1)
    {
      const cairo_rectangle_t *box = &clip->rectangles[0];

      pixels->surface = surface;
      pixels->scale = m.xx * scale_x;
      pixels->x = m.x0 * scale_x + offset_x;
      pixels->y = m.y0 * scale_y + offset_y;
      pixels->x0 = MAX (0, (int) floor (box->x * pixels->scale + pixels->x + 0.5));
      pixels->y0 = MAX (0, (int) floor (box->y * pixels->scale + pixels->y + 0.5));
      pixels->x1 = MIN (cairo_image_surface_get_width (surface),
                        (int) ceil ((box->x + box->width) * pixels->scale + pixels->x - 0.01));
      pixels->y1 = MIN (cairo_image_surface_get_height (surface),
                        (int) ceil ((box->y + box->height) * pixels->scale + pixels->y - 0.01));
      for (int i = 0; i <= LR_N_SHARES; i++)
        pixels->share[i] = (float) lr_soft_share (2.0 * i / LR_N_SHARES - 1.0);
    }
  cairo_rectangle_list_destroy (clip);
}

static void
init_edge (const LrPixels *pixels,
           LrVec2          from,
           LrVec2          to,
           double          from_radius,
           double          to_radius,
           Edge           *edge)
{
  LrVec2 p = { from.x * pixels->scale + pixels->x, from.y * pixels->scale + pixels->y };
  LrVec2 way = lr_vec2_scale (lr_vec2_sub (to, from), pixels->scale);
  double length = lr_vec2_length (way);
  double r0 = hypot (from_radius * pixels->scale, LEAST_PX), r1 = hypot (to_radius * pixels->scale, LEAST_PX);

  edge->nx = way.y / length;
  edge->ny = -way.x / length;
  edge->c = -(edge->nx * p.x + edge->ny * p.y);
  edge->ax = way.x / (length * length);
  edge->ay = way.y / (length * length);
  edge->a = -(edge->ax * p.x + edge->ay * p.y);
  edge->radius = r0;
  edge->more = r1 - r0;
  edge->most = fmax (r0, r1);
}

/* The part of a row at @y where each edge is nearer than @radii of its largest radius, or further inside: pixels from, to */
static void
cut_row (const Job *job,
         double     y,
         double     radii,
         int       *from,
         int       *to)
{
  double low = *from, high = *to;

  for (guint i = 0; i < job->n; i++)
    {
      const Edge *e = &job->edge[i];
      double reach = radii * e->most - (e->ny * y + e->c);

      if (fabs (e->nx) < 1e-9)
        high = reach > 0.0 ? high : low;
      else if (e->nx > 0.0)
        high = fmin (high, reach / e->nx);
      else
        low = fmax (low, reach / e->nx);
    }

  *from = (int) fmax (*from, ceil (fmin (low, 1e6) - 0.5));
  *to = (int) fmin (*to, ceil (fmax (high, -1e6) - 0.5));
  if (*to < *from)
    *to = *from;
}

static inline double
share_left (const LrPixels *pixels,
            const Edge     *edge,
            double          x,
            double          y)
{
  double t = edge->nx * x + edge->ny * y + edge->c;

  if (edge->more != 0.0)
    t /= edge->radius + edge->more * CLAMP (edge->ax * x + edge->ay * y + edge->a, 0.0, 1.0);
  else
    t /= edge->radius;
  if (t <= -1.0)
    return 1.0;
  if (t >= 1.0)
    return 0.0;

  return (double) pixels->share[(int) ((t + 1.0) * (0.5 * LR_N_SHARES) + 0.5)];
}

/* What two edges leave, by the cosine of the angle between their normals */
static inline double
both (double a,
      double b,
      double cosine)
{
  double product = a * b;

  if (cosine >= 0.0)
    return product + cosine * (fmin (a, b) - product);

  return product - cosine * (fmax (0.0, a + b - 1.0) - product);
}

static inline guint32
mixed (guint32 under,
       guint32 over,
       guint32 share) /* of @over, out of 256 */
{
  guint32 left = 256 - share;
  guint32 rb = ((under & 0xff00ff) * left + (over & 0xff00ff) * share + 0x800080) >> 8 & 0xff00ff;
  guint32 g = ((under & 0x00ff00) * left + (over & 0x00ff00) * share + 0x008000) >> 8 & 0x00ff00;

  return 0xff000000 | rb | g;
}

/* Edges that reach into pixels from .. to of a row */
static guint
edges_in (const Job   *job,
          double       y,
          int          from,
          int          to,
          const Edge **edges)
{
  guint n = 0;

  for (guint i = 0; i < job->n; i++)
    {
      const Edge *e = &job->edge[i];
      double k = e->ny * y + e->c;

      if (fmax (e->nx * from, e->nx * to) + k > -e->most)
        edges[n++] = e;
    }

  return n;
}

static void
paint_ramp (const Job *job,
            guint32   *row,
            double     y,
            int        from,
            int        to)
{
  const Edge *edges[LR_PAINT_CORNERS];
  guint n;

  if (from >= to)
    return;

  n = edges_in (job, y, from, to, edges);
  for (int i = from; i < to; i++)
    {
      double left = 1.0, least = 2.0;
      const Edge *first = NULL;

      for (guint j = 0; j < n && left > 0.0; j++)
        {
          double share = share_left (job->pixels, edges[j], i + 0.5, y);

          if (share >= 1.0)
            continue;
          left = first == NULL ? share : both (left, share, first->nx * edges[j]->nx + first->ny * edges[j]->ny);
          if (share < least)
            {
              least = share;
              first = edges[j];
            }
        }
      row[i] = mixed (row[i], job->color, (guint32) (256.0 * job->alpha * left + 0.5));
    }
}

static void
paint_middle (const Job *job,
              guint32   *row,
              int        from,
              int        to)
{
  guint32 share = (guint32) (256.0 * job->alpha + 0.5);

  if (share >= 256)
    for (int i = from; i < to; i++)
      row[i] = job->color;
  else
    for (int i = from; i < to; i++)
      row[i] = mixed (row[i], job->color, share);
}

static guint32
to_byte (double share)
{
  return (guint32) (255.0 * CLAMP (share, 0.0, 1.0) + 0.5);
}

/**
 * lr_pixels_polygon:
 * @pixels: a picture
 * @p: corners of a convex polygon, positive area, no two alike, device units
 * @radius: of the blur disc at each
 * @n: their number, 3 to LR_PAINT_CORNERS
 * @color: its tone
 * @alpha: how much of what is behind it hides
 *
 * Returns: %FALSE: there are no pixels to write to
 */
gboolean
lr_pixels_polygon (const LrPixels *pixels,
                   const LrVec2   *p,
                   const double   *radius,
                   guint           n,
                   LrColor         color,
                   double          alpha)
{
  double top = HUGE_VAL, bottom = -HUGE_VAL;
  guint8 *data;
  int y0, y1, stride;
  Job job;

  if (pixels->surface == NULL)
    return FALSE;

  job.pixels = pixels;
  job.n = n;
  job.color = 0xff000000 | to_byte (color.r) << 16 | to_byte (color.g) << 8 | to_byte (color.b);
  job.alpha = CLAMP (alpha, 0.0, 1.0);
  for (guint i = 0; i < n; i++)
    {
      double reach = radius[i] * pixels->scale + LEAST_PX, y = p[i].y * pixels->scale + pixels->y;

      init_edge (pixels, p[i], p[(i + 1) % n], radius[i], radius[(i + 1) % n], &job.edge[i]);
      top = fmin (top, y - reach);
      bottom = fmax (bottom, y + reach);
    }

  y0 = (int) fmax (pixels->y0, floor (fmin (top, 1e6)));
  y1 = (int) fmin (pixels->y1, ceil (fmax (bottom, -1e6)));
  if (y0 >= y1)
    return TRUE;

  cairo_surface_flush (pixels->surface);
  data = cairo_image_surface_get_data (pixels->surface);
  stride = cairo_image_surface_get_stride (pixels->surface);
  for (int y = y0; y < y1; y++)
    {
      guint32 *row = (guint32 *) (void *) (data + (gsize) y * stride);
      int from = pixels->x0, to = pixels->x1, inner_from, inner_to;

      cut_row (&job, y + 0.5, 1.0, &from, &to);
      inner_from = from;
      inner_to = to;
      cut_row (&job, y + 0.5, -1.0, &inner_from, &inner_to);
      if (inner_to <= inner_from)
        inner_from = inner_to = to;
      paint_ramp (&job, row, y + 0.5, from, inner_from);
      paint_middle (&job, row, inner_from, inner_to);
      paint_ramp (&job, row, y + 0.5, inner_to, to);
    }
  cairo_surface_mark_dirty_rectangle (pixels->surface, pixels->x0, y0, pixels->x1 - pixels->x0, y1 - y0);
  return TRUE;
}
