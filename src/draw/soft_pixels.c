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

#include <string.h>

#define LEVEL_STEP_PX 16
#define FINE_STEP_PX 6
#define LEAST_PX 0.58 /* radius: a sharp edge is as soft as a pixel is wide */

/* Of a pixel at x, y the distance outside the edge, n · (x, y) + c, and the place along it from 0 to 1, a · (x, y) + a0 */
typedef struct
{
  double nx, ny, c;
  double ax, ay, a0;
  double radius, more, most; /* at its start; at its end, more by that; the larger */
  double x0, per_y, reach;   /* where it crosses a row, x0 + per_y y, and how far its ramp reaches to either side along it */
  int    side;               /* the outside lies: 1 right of it, -1 left, 0: above or below, it is level */
} Edge;

/* In a ramp, from its first pixel on: distance in radii, and its growth from pixel to pixel */
typedef struct
{
  double t, step, nx, ny;
} Run;

/* Pixels of a row: outer ones are touched, inner ones wholly covered */
typedef struct
{
  int from, to, inner_from, inner_to;
} Row;

typedef struct
{
  const LrPixels *pixels;
  guint           n;
  Edge            edge[LR_PAINT_CORNERS];
  guint32         color;
  double          alpha;
  const LrPixelTones *tones; /* NULL: @color everywhere */
  guint32        *row_tone;  /* with them: those of the row, from the picture's x0 on */
} Job;

/* lr_soft_share() of -1 to 1, made once */
static const float *
shares (void)
{
  static float share[LR_N_SHARES + 1];
  static gsize is_made;

  if (g_once_init_enter (&is_made))
    {
      for (int i = 0; i <= LR_N_SHARES; i++)
        share[i] = (float) lr_soft_share (2.0 * i / LR_N_SHARES - 1.0);
      g_once_init_leave (&is_made, 1);
    }

  return share;
}

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
      pixels->share = shares ();
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
  edge->a0 = -(edge->ax * p.x + edge->ay * p.y);
  edge->radius = r0;
  edge->more = r1 - r0;
  edge->most = fmax (r0, r1);
  edge->side = edge->nx > 1e-9 ? 1 : edge->nx < -1e-9 ? -1 : 0;
  if (edge->side == 0)
    return;

  edge->x0 = -edge->c / edge->nx;
  edge->per_y = -edge->ny / edge->nx;
  edge->reach = edge->most / fabs (edge->nx);
}

/* First pixel whose middle is at @x or right of it, within bounds */
static inline int
pixel_from (double x,
            int    least,
            int    most)
{
  return x <= least ? least : x >= most ? most : (int) (x + 0.5);
}

static void
cut_row (const Job *job,
         double     y,
         Row       *row)
{
  double low = row->from, high = row->to, inner_low = low, inner_high = high;

  for (guint i = 0; i < job->n; i++)
    {
      const Edge *e = &job->edge[i];
      double at = e->x0 + e->per_y * y;

      if (e->side > 0)
        {
          high = MIN (high, at + e->reach);
          inner_high = MIN (inner_high, at - e->reach);
        }
      else if (e->side < 0)
        {
          low = MAX (low, at - e->reach);
          inner_low = MAX (inner_low, at + e->reach);
        }
      else
        {
          double out = e->ny * y + e->c;

          high = out < e->most ? high : low;
          inner_high = out < -e->most ? inner_high : inner_low;
        }
    }

  row->from = pixel_from (low, row->from, row->to);
  row->to = pixel_from (high, row->from, row->to);
  row->inner_from = pixel_from (inner_low, row->from, row->to);
  row->inner_to = pixel_from (inner_high, row->from, row->to);
  if (row->inner_to <= row->inner_from)
    row->inner_from = row->inner_to = row->to;
}

/* What two edges leave, by the cosine of the angle between their normals */
static inline double
both (double a,
      double b,
      double cosine)
{
  double product = a * b;

  if (cosine >= 0.0)
    return product + cosine * (MIN (a, b) - product);

  return product - cosine * (MAX (0.0, a + b - 1.0) - product);
}

/* Edges that reach into pixels from .. to of a row. In so short a way the radius along an edge is that in its middle */
static guint
find_runs (const Job *job,
           double     y,
           int        from,
           int        to,
           Run       *runs)
{
  guint n = 0;

  for (guint i = 0; i < job->n; i++)
    {
      const Edge *e = &job->edge[i];
      double k = e->ny * y + e->c, middle = 0.5 * (from + to), per_radius;

      if (MAX (e->nx * from, e->nx * to) + k <= -e->most)
        continue;
      per_radius = 1.0 / (e->radius + e->more * CLAMP (e->ax * middle + e->ay * y + e->a0, 0.0, 1.0));
      runs[n++] = (Run) { (e->nx * (from + 0.5) + k) * per_radius, e->nx * per_radius, e->nx, e->ny };
    }

  return n;
}

static inline double
share_at (const LrPixels *pixels,
          double          t)
{
  if (t <= -1.0)
    return 1.0;
  if (t >= 1.0)
    return 0.0;

  return (double) pixels->share[(int) ((t + 1.0) * (0.5 * LR_N_SHARES) + 0.5)];
}

/* What the edges leave of the disc about the @i-th pixel */
static inline double
share_left (const LrPixels *pixels,
            const Run      *runs,
            guint           n,
            int             i)
{
  double left = share_at (pixels, runs[0].t + runs[0].step * i), least = left;
  guint first = 0;

  for (guint j = 1; j < n && left > 0.0; j++)
    {
      double share = share_at (pixels, runs[j].t + runs[j].step * i);

      if (share >= 1.0)
        continue;
      left = left >= 1.0 ? share : both (left, share, runs[first].nx * runs[j].nx + runs[first].ny * runs[j].ny);
      if (share < least)
        {
          least = share;
          first = j;
        }
    }

  return left;
}

static void
paint_ramp (const Job *job,
            guint32   *row,
            double     y,
            int        from,
            int        to)
{
  double alpha = 256.0 * job->alpha;
  Run runs[LR_PAINT_CORNERS];
  guint n;

  if (from >= to)
    return;

  n = find_runs (job, y, from, to, runs);
  if (n == 0) /* by the middle radius of each edge it is inside */
    runs[n++] = (Run) { -1.0, 0.0, 1.0, 0.0 };
  for (int i = from; i < to; i++)
    row[i] = lr_pixel_mix (row[i], job->row_tone != NULL ? job->row_tone[i - job->pixels->x0] : job->color,
                           (guint32) (alpha * share_left (job->pixels, runs, n, i - from) + 0.5));
}

static void
paint_middle (const Job *job,
              guint32   *row,
              int        from,
              int        to)
{
  guint32 share = (guint32) (256.0 * job->alpha + 0.5);

  if (job->row_tone != NULL)
    memcpy (row + from, job->row_tone + (from - job->pixels->x0), MAX (to - from, 0) * sizeof (guint32));
  else if (share >= 256)
    for (int i = from; i < to; i++)
      row[i] = job->color;
  else
    for (int i = from; i < to; i++)
      row[i] = lr_pixel_mix (row[i], job->color, share);
}

static double
level_at (const Job *job,
          int        x,
          double     y)
{
  const LrPixels *pixels = job->pixels;
  LrVec2 at = { (x + 0.5 - pixels->x) / pixels->scale, (y - pixels->y) / pixels->scale };

  return (LR_N_TONES - 1) * job->tones->level (job->tones->data, at) + 0.5;
}

/* Whether the level may change within a few of the pixels from there on */
static gboolean
is_fine (const Job *job,
         int        x,
         double     y)
{
  const LrPixels *pixels = job->pixels;
  const LrPixelTones *tones = job->tones;
  double top = tones->fine_low.y * pixels->scale + pixels->y, bottom = tones->fine_high.y * pixels->scale + pixels->y;

  return y >= top && y <= bottom && x + LEVEL_STEP_PX >= tones->fine_low.x * pixels->scale + pixels->x
         && x <= tones->fine_high.x * pixels->scale + pixels->x;
}

/* The tones of a row; between places a few pixels apart the level goes evenly */
static void
find_row_tones (const Job *job,
                double     y,
                int        from,
                int        to)
{
  guint32 *tone = job->row_tone - job->pixels->x0;
  double here, next;

  if (from >= to)
    return;

  next = level_at (job, from, y);
  for (int x = from, end; x < to; x = end)
    {
      int way = is_fine (job, x, y) ? FINE_STEP_PX : LEVEL_STEP_PX, level, step;

      end = MIN (x + way, to);
      here = next;
      next = level_at (job, x + way, y);
      level = (int) (65536.0 * here);
      step = (int) (65536.0 / way * (next - here));
      for (int i = x; i < end; i++, level += step)
        tone[i] = job->tones->tone[level >> 16];
    }
}

static void
paint_row (const Job *job,
           guint32   *pixel,
           double     y)
{
  Row row = { .from = job->pixels->x0, .to = job->pixels->x1 };

  cut_row (job, y, &row);
  if (job->tones != NULL)
    find_row_tones (job, y, row.from, row.to);
  paint_ramp (job, pixel, y, row.from, row.inner_from);
  paint_middle (job, pixel, row.inner_from, row.inner_to);
  paint_ramp (job, pixel, y, row.inner_to, row.to);
}

static void
paint_polygon (Job          *job,
               const LrVec2 *p,
               const double *radius)
{
  const LrPixels *pixels = job->pixels;
  double top = HUGE_VAL, bottom = -HUGE_VAL;
  int y0, y1, stride;
  guint8 *data;

  for (guint i = 0; i < job->n; i++)
    {
      guint j = (i + 1) % job->n;
      double reach = radius[i] * pixels->scale + LEAST_PX, y = p[i].y * pixels->scale + pixels->y;

      init_edge (pixels, p[i], p[j], radius[i], radius[j], &job->edge[i]);
      top = fmin (top, y - reach);
      bottom = fmax (bottom, y + reach);
    }

  y0 = (int) fmax (pixels->y0, floor (fmin (top, 1e6)));
  y1 = (int) fmin (pixels->y1, ceil (fmax (bottom, -1e6)));
  if (y0 >= y1)
    return;

  cairo_surface_flush (pixels->surface);
  data = cairo_image_surface_get_data (pixels->surface);
  stride = cairo_image_surface_get_stride (pixels->surface);
  for (int y = y0; y < y1; y++)
    paint_row (job, (guint32 *) (void *) (data + (gsize) y * stride), y + 0.5);
  cairo_surface_mark_dirty_rectangle (pixels->surface, pixels->x0, y0, pixels->x1 - pixels->x0, y1 - y0);
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
  Job job;

  if (pixels->surface == NULL)
    return FALSE;

  job.pixels = pixels;
  job.n = n;
  job.color = lr_pixel_of (color);
  job.alpha = CLAMP (alpha, 0.0, 1.0);
  job.tones = NULL;
  job.row_tone = NULL;
  paint_polygon (&job, p, radius);
  return TRUE;
}

/**
 * lr_pixels_polygon_in_tones:
 * @pixels: a picture that has pixels to write to
 * @p: corners of a convex polygon, positive area, no two alike, device units
 * @radius: of the blur disc at each
 * @n: their number, 3 to LR_PAINT_CORNERS
 * @tones: its tones
 */
void
lr_pixels_polygon_in_tones (const LrPixels     *pixels,
                            const LrVec2       *p,
                            const double       *radius,
                            guint               n,
                            const LrPixelTones *tones)
{
  Job job;

  g_return_if_fail (pixels->surface != NULL);

  job.pixels = pixels;
  job.n = n;
  job.alpha = 1.0;
  job.tones = tones;
  job.row_tone = g_new (guint32, MAX (pixels->x1 - pixels->x0, 1));
  paint_polygon (&job, p, radius);
  g_free (job.row_tone);
}
