/* soft.c - edges as soft as the measured blur disc
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A point out of focus becomes a disc of even brightness, so a straight edge becomes a ramp as wide as the disc:
 * at t radii beyond it, (acos t - t sqrt (1 - t^2)) / pi of the brightness is left, the share of a circle that a
 * chord cuts off. The ramp is painted as a stack of grown and shrunk polygons, so that it stays a drawing on every
 * surface.
 */

#include "paint.h"

#include <string.h>

#define SHARP_PX 0.3   /* radius under which an edge is drawn sharp */
#define STEP_PX 1.5    /* width of a step of a ramp */
#define MAX_LEVELS 14
#define LARGE_PX 20.0  /* half the width from which it pays to leave out the middle of all but the last layer */
#define WINDOW_UNIT 1.3 /* up to this size of a pixel time counts more */
#define PLAIN_STEPS 4  /* from so many on a step is too small for its own edge to be smoothed: a third of the time */

/**
 * lr_soft_share:
 * @t: distance of an edge from the middle of a disc of radius 1
 *
 * Source: area of a circular segment, closed form.
 *
 * Returns: the share of the disc beyond it
 */
double
lr_soft_share (double t)
{
  if (t >= 1.0)
    return 0.0;
  if (t <= -1.0)
    return 1.0;

  return (acos (t) - t * sqrt (1.0 - t * t)) / LR_PI;
}

/**
 * lr_soft_levels:
 * @painter: a painter
 * @radius: of a blur disc, device units
 *
 * Returns: how many layers a ramp of that radius takes; 1: it is sharp
 */
guint
lr_soft_levels (const LrPainter *painter,
                double           radius)
{
  double px = radius / painter->unit;

  if (!(px > SHARP_PX))
    return 1;

  return (guint) CLAMP (ceil (2.0 * px * fmin (2.0, fmax (1.0, painter->unit)) / STEP_PX), 2.0, MAX_LEVELS);
}

/**
 * lr_soft_level:
 * @level: from 0, the outermost
 * @n_levels: in all
 * @alpha: of the whole, 0 to 1
 * @offset: (out): how far from the edge the layer reaches, in radii, outside > 0
 * @layer_alpha: (out): its own alpha over the layers before it
 *
 * Between two edges of the stack the share is that in the middle.
 */
void
lr_soft_level (guint   level,
               guint   n_levels,
               double  alpha,
               double *offset,
               double *layer_alpha)
{
  double step = 2.0 / n_levels;
  double before = level == 0 ? 0.0 : alpha * lr_soft_share (1.0 - level * step);
  double here = level + 1 == n_levels ? alpha : alpha * lr_soft_share (1.0 - (level + 1.0) * step);

  if (n_levels == 1)
    {
      *offset = 0.0;
      *layer_alpha = alpha;
      return;
    }

  *offset = 1.0 - (level + 0.5) * step;
  *layer_alpha = 1.0 - (1.0 - here) / (1.0 - before);
}

static double
area_of (const LrVec2 *p,
         guint         n)
{
  double sum = 0.0;

  for (guint i = 0; i < n; i++)
    sum += lr_vec2_cross (p[i], p[(i + 1) % n]);

  return 0.5 * sum;
}

/* The outward normal of an edge of a polygon whose area is positive */
static LrVec2
edge_normal (LrVec2 a,
             LrVec2 b)
{
  LrVec2 way = lr_vec2_sub (b, a);
  double length = lr_vec2_length (way);

  return length > 1e-9 ? lr_vec2 (way.y / length, -way.x / length) : lr_vec2 (0.0, 0.0);
}

/* Corners and radii without those that fall together, with a positive area */
static guint
tidy (const LrPatch *patch,
      LrVec2        *p,
      double        *r)
{
  gboolean is_reversed = area_of (patch->at, patch->n) < 0.0;
  guint n = 0;

  for (guint i = 0; i < patch->n; i++)
    {
      guint from = is_reversed ? patch->n - 1 - i : i;

      if (n > 0 && lr_vec2_distance (p[n - 1], patch->at[from]) < 1e-3)
        continue;
      p[n] = patch->at[from];
      r[n++] = patch->radius[from];
    }
  while (n > 1 && lr_vec2_distance (p[n - 1], p[0]) < 1e-3)
    n--;

  return n;
}

/* Grown by t radii with cut corners */
static guint
grow (const LrVec2 *p,
      const double *r,
      guint         n,
      double        t,
      LrVec2       *out)
{
  guint m = 0;

  for (guint i = 0; i < n; i++)
    {
      LrVec2 before = edge_normal (p[(i + n - 1) % n], p[i]), after = edge_normal (p[i], p[(i + 1) % n]);
      LrVec2 middle = lr_vec2_add (before, after);
      double length = lr_vec2_length (middle), by = r[i] * t;

      if (m + 3 > 3 * LR_PAINT_CORNERS)
        break;
      if (n > 12 || length > 1.98)
        {
          out[m++] = lr_vec2_along (p[i], middle, by / fmax (length, 1e-6));
          continue;
        }
      out[m++] = lr_vec2_along (p[i], before, by);
      if (length > 1e-6)
        out[m++] = lr_vec2_along (p[i], middle, by / length);
      out[m++] = lr_vec2_along (p[i], after, by);
    }

  return m;
}

/* What of a polygon lies to the left of a to b */
static guint
cut (const LrVec2 *in,
     guint         n,
     LrVec2        a,
     LrVec2        b,
     LrVec2       *out)
{
  LrVec2 way = lr_vec2_sub (b, a);
  guint m = 0;

  for (guint i = 0; i < n; i++)
    {
      LrVec2 p = in[i], q = in[(i + 1) % n];
      double dp = lr_vec2_cross (way, lr_vec2_sub (p, a)), dq = lr_vec2_cross (way, lr_vec2_sub (q, a));

      if (dp >= 0.0)
        out[m++] = p;
      if ((dp >= 0.0) != (dq >= 0.0))
        out[m++] = lr_vec2_along (p, lr_vec2_sub (q, p), dp / (dp - dq));
    }

  return m;
}

/* Shrunk by t radii: what is left between its edges when each has moved inwards */
static guint
shrink (const LrVec2 *p,
        const double *r,
        guint         n,
        double        t,
        LrVec2       *out)
{
  LrVec2 buffer[3 * LR_PAINT_CORNERS];
  guint m = n;

  memcpy (out, p, n * sizeof (LrVec2));
  for (guint i = 0; i < n && m >= 3; i++)
    {
      guint j = (i + 1) % n;
      LrVec2 normal = edge_normal (p[i], p[j]);
      LrVec2 a = lr_vec2_along (p[i], normal, -r[i] * t), b = lr_vec2_along (p[j], normal, -r[j] * t);

      if (lr_vec2_distance (p[i], p[j]) < 1e-6)
        continue;
      m = cut (out, m, a, b, buffer);
      m = MIN (m, 2 * LR_PAINT_CORNERS);
      memcpy (out, buffer, m * sizeof (LrVec2));
    }

  return m;
}

/* Half the least width of a convex polygon */
static double
half_width_of (const LrVec2 *p,
               guint         n)
{
  double least = HUGE_VAL;

  for (guint i = 0; i < n; i++)
    {
      LrVec2 normal = edge_normal (p[i], p[(i + 1) % n]);
      double deepest = 0.0;

      if (lr_vec2_dot (normal, normal) < 0.5)
        continue;
      for (guint j = 0; j < n; j++)
        deepest = fmax (deepest, lr_vec2_dot (normal, lr_vec2_sub (p[i], p[j])));
      least = fmin (least, deepest);
    }

  return 0.5 * least;
}

static gboolean
is_in_picture (const LrPainter *painter,
               const LrPatch   *patch)
{
  double x0 = HUGE_VAL, x1 = -HUGE_VAL, y0 = HUGE_VAL, y1 = -HUGE_VAL;

  for (guint i = 0; i < patch->n; i++)
    {
      x0 = fmin (x0, patch->at[i].x - patch->radius[i]);
      x1 = fmax (x1, patch->at[i].x + patch->radius[i]);
      y0 = fmin (y0, patch->at[i].y - patch->radius[i]);
      y1 = fmax (y1, patch->at[i].y + patch->radius[i]);
    }

  return x1 > 0.0 && y1 > 0.0 && x0 < painter->width && y0 < painter->height;
}

static void
add_path (cairo_t      *cr,
          const LrVec2 *p,
          guint         n,
          gboolean      is_reversed)
{
  cairo_new_sub_path (cr);
  for (guint i = 0; i < n; i++)
    {
      LrVec2 at = p[is_reversed ? n - 1 - i : i];

      cairo_line_to (cr, at.x, at.y);
    }
  cairo_close_path (cr);
}

/* A layer, but for a core that a later one covers */
static void
paint_layer (cairo_t      *cr,
             const LrVec2 *p,
             guint         n,
             const LrVec2 *core,
             guint         n_core,
             LrColor       color,
             double        alpha)
{
  if (n < 3 || !(alpha > 0.0))
    return;

  cairo_set_source_rgba (cr, color.r, color.g, color.b, alpha);
  add_path (cr, p, n, FALSE);
  if (n_core >= 3)
    add_path (cr, core, n_core, TRUE);
  cairo_fill (cr);
}

/**
 * lr_paint_patch:
 * @painter: a painter
 * @patch: a convex polygon in the picture
 * @color: its tone
 * @alpha: how much of what is behind it hides
 *
 * What is thinner than its blur disc does not hide what is behind it: a strip of half-width a under a disc of
 * radius r covers 1 - 2 share (a / r) of it.
 */
void
lr_paint_patch (const LrPainter *painter,
                const LrPatch   *patch,
                LrColor          color,
                double           alpha)
{
  LrVec2 p[LR_PAINT_CORNERS], layer[3 * LR_PAINT_CORNERS], core[3 * LR_PAINT_CORNERS];
  double r[LR_PAINT_CORNERS], mean = 0.0, half_width;
  guint n, n_levels, n_core = 0;

  if (patch->n < 3 || !is_in_picture (painter, patch))
    return;

  n = tidy (patch, p, r);
  if (n < 3 || lr_pixels_polygon (&painter->pixels, p, r, n, color, alpha))
    return;

  for (guint i = 0; i < n; i++)
    mean += r[i] / n;
  n_levels = lr_soft_levels (painter, mean);
  half_width = half_width_of (p, n);
  if (n_levels > 1 && half_width < mean)
    {
      double hidden = lr_soft_share (half_width / mean);

      alpha *= (1.0 - 2.0 * hidden) / (1.0 - hidden);
    }
  if (n_levels >= PLAIN_STEPS && painter->unit < WINDOW_UNIT)
    cairo_set_antialias (painter->cr, CAIRO_ANTIALIAS_NONE);
  if (n_levels > 2 && alpha >= 1.0 && half_width > LARGE_PX * painter->unit)
    n_core = shrink (p, r, n, 1.0 + 2.0 * painter->unit / mean, core);

  for (guint i = 0; i < n_levels; i++)
    {
      double offset, layer_alpha;
      guint m;

      lr_soft_level (i, n_levels, alpha, &offset, &layer_alpha);
      m = offset > 0.0 ? grow (p, r, n, offset, layer) : offset < 0.0 ? shrink (p, r, n, -offset, layer) : n;
      if (m < 3)
        break;
      paint_layer (painter->cr, offset == 0.0 ? p : layer, m, core, i + 1 < n_levels ? n_core : 0, color, layer_alpha);
    }

  cairo_set_antialias (painter->cr, CAIRO_ANTIALIAS_FAST);
}

/**
 * lr_paint_patch_in_tones:
 * @painter: a painter on a picture of pixels
 * @patch: a convex polygon in the picture
 * @tones: its tones
 */
void
lr_paint_patch_in_tones (const LrPainter    *painter,
                         const LrPatch      *patch,
                         const LrPixelTones *tones)
{
  LrVec2 p[LR_PAINT_CORNERS];
  double r[LR_PAINT_CORNERS];
  guint n;

  if (patch->n < 3 || !is_in_picture (painter, patch))
    return;

  n = tidy (patch, p, r);
  if (n >= 3)
    lr_pixels_polygon_in_tones (&painter->pixels, p, r, n, tones);
}

/**
 * lr_paint_hull:
 * @painter: a painter
 * @points: points in the picture, overwritten
 * @n: their number
 * @inset: how far inside their convex hull to stay, device units
 * @color: a tone
 *
 * A ground under the faces of a solid, so that nothing shines through where they meet.
 */
void
lr_paint_hull (const LrPainter *painter,
               LrVec2          *points,
               guint            n,
               double           inset,
               LrColor          color)
{
  LrVec2 inner[3 * LR_PAINT_CORNERS];
  double radius[LR_PAINT_CORNERS];
  guint m;

  n = lr_hull (points, MIN (n, LR_PAINT_CORNERS));
  for (guint i = 0; i < n; i++)
    radius[i] = inset;
  m = shrink (points, radius, n, 1.0, inner);
  paint_layer (painter->cr, inner, m, NULL, 0, color, 1.0);
}

/**
 * lr_paint_bar:
 * @painter: a painter
 * @from_m: one end of its axis [m]
 * @to_m: the other [m]
 * @radius_m: [m]
 * @color: its tone
 * @alpha: how much of what is behind it hides
 */
void
lr_paint_bar (const LrPainter *painter,
              LrVec3           from_m,
              LrVec3           to_m,
              double           radius_m,
              LrColor          color,
              double           alpha)
{
  double from_depth = lr_painter_depth_m (painter, from_m), to_depth = lr_painter_depth_m (painter, to_m);
  LrVec2 a, b, normal;
  LrPatch patch;
  double ra, rb;

  if (fmax (from_depth, to_depth) <= LR_NEAR_M)
    return;
  if (from_depth < LR_NEAR_M)
    from_m = lr_vec3_along (from_m, lr_vec3_sub (to_m, from_m), (LR_NEAR_M - from_depth) / (to_depth - from_depth));
  if (to_depth < LR_NEAR_M)
    to_m = lr_vec3_along (to_m, lr_vec3_sub (from_m, to_m), (LR_NEAR_M - to_depth) / (from_depth - to_depth));
  from_depth = fmax (from_depth, LR_NEAR_M);
  to_depth = fmax (to_depth, LR_NEAR_M);
  if (!lr_painter_place (painter, from_m, &a) || !lr_painter_place (painter, to_m, &b))
    return;

  normal = edge_normal (a, b);
  if (lr_vec2_dot (normal, normal) < 0.5)
    normal = lr_vec2 (1.0, 0.0);
  ra = radius_m * lr_painter_scale (painter, from_depth);
  rb = radius_m * lr_painter_scale (painter, to_depth);
  patch.n = 4;
  patch.at[0] = lr_vec2_along (a, normal, ra);
  patch.at[1] = lr_vec2_along (b, normal, rb);
  patch.at[2] = lr_vec2_along (b, normal, -rb);
  patch.at[3] = lr_vec2_along (a, normal, -ra);
  patch.radius[0] = patch.radius[3] = lr_painter_blur (painter, from_depth);
  patch.radius[1] = patch.radius[2] = lr_painter_blur (painter, to_depth);
  lr_paint_patch (painter, &patch, color, alpha);
}
