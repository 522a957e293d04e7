/* figure_outline.c - the outline of round shapes in the picture, and lines and patches drawn on them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Seen from the lens, an ellipsoid's outline is the image of a circle: in the space where the ellipsoid is the
 * unit sphere and the eye is at e, the circle about e / |e|^2, square to e, of radius sqrt (1 - 1 / |e|^2) (polar
 * plane of the eye, closed form). So it is exact in any perspective.
 *
 * A chain of ellipsoids is outlined by the points that stand out furthest to either side of its way through the
 * picture, and a cap at each end, with a smooth curve through them. Where that does not hold, as with a thigh that
 * points at the lens, each two neighbours are joined by the convex hull of their outlines.
 */

#include "figure_parts.h"

#define MOST_BEADS 16
#define HULL_POINTS 28
#define CAP_POINTS 5

/* The circle in the room, and roughly its image: middle + a cos + b sin */
typedef struct
{
  LrVec3 middle_m, u_m, v_m;
  LrVec2 middle, a, b;
} Contour;

/**
 * lr_bead_round:
 * @at_m: its middle [m]
 * @radius_m: [m]
 *
 * Returns: a ball
 */
LrBead
lr_bead_round (LrVec3 at_m,
               double radius_m)
{
  return (LrBead) { at_m, { radius_m, 0.0, 0.0 }, { 0.0, radius_m, 0.0 }, { 0.0, 0.0, radius_m } };
}

/**
 * lr_bead_in:
 * @axes: a frame
 * @x: of its middle, ahead [m]
 * @y: to the left [m]
 * @z: up [m]
 * @rx: half axes [m]
 * @ry: [m]
 * @rz: [m]
 *
 * Returns: an ellipsoid along the frame's axes
 */
LrBead
lr_bead_in (const LrAxes *axes,
            double        x,
            double        y,
            double        z,
            double        rx,
            double        ry,
            double        rz)
{
  return (LrBead) {
    lr_axes_point (axes, x, y, z),
    lr_vec3_scale (axes->x, rx),
    lr_vec3_scale (axes->y, ry),
    lr_vec3_scale (axes->z, rz),
  };
}

static double
along_axis (LrVec3 way_m,
            LrVec3 half_axis_m)
{
  return lr_vec3_dot (way_m, half_axis_m) / lr_vec3_dot (half_axis_m, half_axis_m);
}

static LrVec3
unit (LrVec3 v)
{
  return lr_vec3_scale (v, 1.0 / fmax (lr_vec3_length (v), 1e-12));
}

/* From the space of the unit sphere to the room */
static LrVec3
to_room (const LrBead *bead,
         LrVec3        s)
{
  return lr_vec3_along (lr_vec3_along (lr_vec3_scale (bead->x, s.x), bead->y, s.y), bead->z, s.z);
}

/* FALSE: nothing is left of the bead, it is behind the lens or the lens is in it */
static gboolean
contour_of (const LrPainter *painter,
            LrBead           bead,
            double           grow_m,
            Contour         *contour)
{
  LrVec3 way = lr_vec3_sub (painter->projection->eye_m, bead.at_m), eye, aside, u, v;
  double gx = 1.0 + grow_m / lr_vec3_length (bead.x), gy = 1.0 + grow_m / lr_vec3_length (bead.y);
  double gz = 1.0 + grow_m / lr_vec3_length (bead.z);
  double distance2, radius;

  if (!(gx > 0.05) || !(gy > 0.05) || !(gz > 0.05) || lr_painter_depth_m (painter, bead.at_m) < LR_NEAR_M)
    return FALSE;

  bead.x = lr_vec3_scale (bead.x, gx);
  bead.y = lr_vec3_scale (bead.y, gy);
  bead.z = lr_vec3_scale (bead.z, gz);
  eye = lr_vec3 (along_axis (way, bead.x), along_axis (way, bead.y), along_axis (way, bead.z));
  distance2 = lr_vec3_dot (eye, eye);
  if (distance2 <= 1.0001)
    return FALSE;

  radius = sqrt (1.0 - 1.0 / distance2);
  aside = fabs (eye.z) < 0.9 * sqrt (distance2) ? lr_vec3 (0.0, 0.0, 1.0) : lr_vec3 (1.0, 0.0, 0.0);
  u = unit (lr_vec3_cross (eye, aside));
  v = unit (lr_vec3_cross (eye, u));
  contour->middle_m = lr_vec3_add (bead.at_m, to_room (&bead, lr_vec3_scale (eye, 1.0 / distance2)));
  contour->u_m = to_room (&bead, lr_vec3_scale (u, radius));
  contour->v_m = to_room (&bead, lr_vec3_scale (v, radius));

  if (!lr_painter_place (painter, contour->middle_m, &contour->middle)
      || !lr_painter_place (painter, lr_vec3_add (contour->middle_m, contour->u_m), &contour->a)
      || !lr_painter_place (painter, lr_vec3_add (contour->middle_m, contour->v_m), &contour->b))
    return FALSE;

  contour->a = lr_vec2_sub (contour->a, contour->middle);
  contour->b = lr_vec2_sub (contour->b, contour->middle);
  return TRUE;
}

static LrVec2
contour_point (const LrPainter *painter,
               const Contour   *contour,
               double           angle_rad)
{
  double c = cos (angle_rad), s = sin (angle_rad);
  LrVec2 at = lr_vec2_along (lr_vec2_along (contour->middle, contour->a, c), contour->b, s);

  lr_painter_place (painter, lr_vec3_along (lr_vec3_along (contour->middle_m, contour->u_m, c), contour->v_m, s), &at);
  return at;
}

/* The point of a contour that stands out furthest in a direction of the picture */
static LrVec2
furthest (const LrPainter *painter,
          const Contour   *contour,
          LrVec2           direction)
{
  return contour_point (painter, contour, atan2 (lr_vec2_dot (contour->b, direction),
                                                 lr_vec2_dot (contour->a, direction)));
}

/* How far a contour reaches in a direction */
static double
reach (const Contour *contour,
       LrVec2         direction)
{
  return lr_vec2_dot (contour->middle, direction) + hypot (lr_vec2_dot (contour->a, direction),
                                                           lr_vec2_dot (contour->b, direction));
}

/* Unit way through the picture at a bead; FALSE: it has none */
static gboolean
way_at (const Contour *contours,
        guint          n,
        guint          i,
        LrVec2        *way)
{
  LrVec2 from = contours[i > 0 ? i - 1 : i].middle, to = contours[i + 1 < n ? i + 1 : i].middle;
  double length = lr_vec2_distance (from, to);

  if (!(length > 1e-6))
    return FALSE;

  *way = lr_vec2_scale (lr_vec2_sub (to, from), 1.0 / length);
  return TRUE;
}

static void
add_cap (const LrPainter *painter,
         const Contour   *contour,
         LrVec2           way,
         LrVec2          *points,
         guint           *n)
{
  LrVec2 side = lr_vec2_scale (lr_vec2_left (way), -1.0);
  double start = atan2 (lr_vec2_dot (contour->b, side), lr_vec2_dot (contour->a, side));
  LrVec2 quarter = lr_vec2_along (lr_vec2_scale (contour->a, cos (start + 0.5 * LR_PI)), contour->b,
                                  sin (start + 0.5 * LR_PI));
  double turn = lr_vec2_dot (quarter, way) > 0.0 ? LR_PI : -LR_PI;

  for (guint i = 1; i <= CAP_POINTS; i++)
    points[(*n)++] = contour_point (painter, contour, start + turn * i / (CAP_POINTS + 1));
}

/* Both sides and two caps; 0 when the chain doubles back or an end lies inside its neighbours */
static guint
outline_by_sides (const LrPainter *painter,
                  const Contour   *contours,
                  guint            n,
                  LrVec2          *points)
{
  LrVec2 ways[MOST_BEADS], back;
  guint m = 0;

  for (guint i = 0; i < n; i++)
    if (!way_at (contours, n, i, &ways[i]))
      return 0;

  back = lr_vec2_scale (ways[0], -1.0);
  for (guint i = 0; i < n; i++)
    if (reach (&contours[i], ways[n - 1]) > reach (&contours[n - 1], ways[n - 1]) + painter->unit
        || reach (&contours[i], back) > reach (&contours[0], back) + painter->unit
        || (i > 0 && lr_vec2_dot (ways[i], ways[i - 1]) < 0.3))
      return 0;

  for (guint i = 0; i < n; i++)
    points[m++] = furthest (painter, &contours[i], lr_vec2_scale (lr_vec2_left (ways[i]), -1.0));
  add_cap (painter, &contours[n - 1], ways[n - 1], points, &m);
  for (guint i = n; i-- > 0;)
    points[m++] = furthest (painter, &contours[i], lr_vec2_left (ways[i]));
  add_cap (painter, &contours[0], back, points, &m);
  return m;
}

static void
outline_by_hulls (const LrPainter *painter,
                  const Contour   *contours,
                  guint            n)
{
  for (guint i = 0; i + 1 < MAX (n, 2); i++)
    {
      LrVec2 points[2 * HULL_POINTS];
      guint m = 0;

      for (guint j = i; j < MIN (i + 2, n); j++)
        for (guint k = 0; k < HULL_POINTS; k++)
          points[m++] = contour_point (painter, &contours[j], 2.0 * LR_PI * k / HULL_POINTS);

      m = lr_hull (points, m);
      for (guint k = 0; k < m; k++)
        if (k == 0)
          cairo_move_to (painter->cr, points[k].x, points[k].y);
        else
          cairo_line_to (painter->cr, points[k].x, points[k].y);
      cairo_close_path (painter->cr);
    }
}

/**
 * lr_figure_outline:
 * @painter: a painter
 * @beads: ellipsoids, each joined to the next
 * @n: their number
 * @grow_m: by how much they are grown, or shrunk when < 0 [m]
 *
 * Adds the outline to the path.
 */
void
lr_figure_outline (const LrPainter *painter,
                   const LrBead    *beads,
                   guint            n,
                   double           grow_m)
{
  LrVec2 points[2 * (MOST_BEADS + CAP_POINTS)];
  Contour contours[MOST_BEADS];
  guint n_contours = 0, m = 0;

  for (guint i = 0; i < MIN (n, MOST_BEADS); i++)
    if (contour_of (painter, beads[i], grow_m, &contours[n_contours]))
      n_contours++;

  if (n_contours > 1)
    m = outline_by_sides (painter, contours, n_contours, points);
  if (m > 0)
    lr_figure_path (painter, points, m, TRUE);
  else if (n_contours > 0)
    outline_by_hulls (painter, contours, n_contours);
}

/**
 * lr_figure_path:
 * @painter: a painter
 * @points: in the picture
 * @n: their number
 * @is_closed: whether the last is joined to the first
 *
 * Adds a smooth curve through the points: each piece a Bézier whose tangents are a sixth of the way between
 * neighbours (Catmull-Rom).
 */
void
lr_figure_path (const LrPainter *painter,
                const LrVec2    *points,
                guint            n,
                gboolean         is_closed)
{
  cairo_t *cr = painter->cr;
  guint n_pieces = is_closed ? n : n - 1;

  if (n < 2)
    return;

  cairo_move_to (cr, points[0].x, points[0].y);
  for (guint i = 0; i < n_pieces; i++)
    {
      LrVec2 a = points[i], b = points[(i + 1) % n];
      LrVec2 before = is_closed || i > 0 ? points[(i + n - 1) % n] : a;
      LrVec2 after = is_closed || i + 2 < n ? points[(i + 2) % n] : b;
      LrVec2 p = lr_vec2_along (a, lr_vec2_sub (b, before), 1.0 / 6.0);
      LrVec2 q = lr_vec2_along (b, lr_vec2_sub (after, a), -1.0 / 6.0);

      cairo_curve_to (cr, p.x, p.y, q.x, q.y, b.x, b.y);
    }
  if (is_closed)
    cairo_close_path (cr);
}

/* How much of a small shape is left when each of its points is a blur disc */
static double
left_of (const LrFigure *figure,
         const LrVec2   *points,
         guint           n)
{
  double x0 = HUGE_VAL, x1 = -HUGE_VAL, y0 = HUGE_VAL, y1 = -HUGE_VAL, more = 1.6 * figure->soft;

  for (guint i = 0; i < n; i++)
    {
      x0 = fmin (x0, points[i].x);
      x1 = fmax (x1, points[i].x);
      y0 = fmin (y0, points[i].y);
      y1 = fmax (y1, points[i].y);
    }

  return (x1 - x0) / (x1 - x0 + more) * (y1 - y0) / (y1 - y0 + more);
}

/**
 * lr_figure_fill:
 * @figure: a person
 * @points: corners in the picture
 * @n: their number
 * @color: a tone
 * @alpha: how much of what is under it hides
 */
void
lr_figure_fill (const LrFigure *figure,
                const LrVec2   *points,
                guint           n,
                LrColor         color,
                double          alpha)
{
  if (n < 3)
    return;

  if (figure->soft < figure->painter->unit)
    {
      cairo_set_source_rgba (figure->painter->cr, color.r, color.g, color.b, alpha);
      lr_figure_path (figure->painter, points, n, TRUE);
      cairo_fill (figure->painter->cr);
      return;
    }

  alpha *= left_of (figure, points, n);
  cairo_set_source_rgba (figure->painter->cr, color.r, color.g, color.b, 0.6 * alpha);
  lr_figure_path (figure->painter, points, n, TRUE);
  cairo_fill_preserve (figure->painter->cr);
  lr_figure_soften (figure, color, 0.8 * alpha);
}

/**
 * lr_figure_soften:
 * @figure: a person
 * @color: a tone
 * @alpha: of what fills the path
 */
void
lr_figure_soften (const LrFigure *figure,
                  LrColor         color,
                  double          alpha)
{
  cairo_t *cr = figure->painter->cr;

  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_source_rgba (cr, color.r, color.g, color.b, 0.28 * alpha);
  cairo_set_line_width (cr, 0.8 * figure->soft);
  cairo_stroke_preserve (cr);
  cairo_set_line_width (cr, 1.6 * figure->soft);
  cairo_stroke (cr);
}

/**
 * lr_figure_line:
 * @figure: a person
 * @points: in the picture
 * @n: their number
 * @width_m: of the line, at the head's distance [m]
 * @color: a tone
 * @alpha: how much of what is under it hides
 *
 * Lines too thin for the picture grow pale instead of disappearing.
 */
void
lr_figure_line (const LrFigure *figure,
                const LrVec2   *points,
                guint           n,
                double          width_m,
                LrColor         color,
                double          alpha)
{
  cairo_t *cr = figure->painter->cr;
  double width = width_m * figure->head_px * figure->painter->unit / figure->head_m;
  double least = 0.7 * figure->painter->unit;

  if (n < 2)
    return;
  if (figure->soft >= figure->painter->unit) /* as wide as its blur, and as much paler */
    {
      alpha *= width / (width + 1.3 * figure->soft);
      width += 1.3 * figure->soft;
    }
  if (width < least)
    {
      alpha *= fmax (0.35, width / least);
      width = least;
    }

  cairo_set_source_rgba (cr, color.r, color.g, color.b, alpha);
  cairo_set_line_width (cr, width);
  cairo_set_line_cap (cr, width > 2.0 * figure->painter->unit ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_BEVEL);
  lr_figure_path (figure->painter, points, n, FALSE);
  cairo_stroke (cr);
}

