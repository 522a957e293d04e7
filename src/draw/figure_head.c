/* figure_head.c - the head: skull, jaw, hair, ears
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Level slices in shares of the head's height, from chin to crown. Breadth and length of the head after ANSUR II
 * (Gordon et al. 2014): .67 and .86 of it; the rest as a figure drawer would.
 */

#include "figure_head.h"

#include "body.h"

#define SIDEBURN_DEG 80.0
#define MOST_TURNED_DEG 140.0 /* of a face of which anything is drawn */

typedef struct
{
  double z, half_y, front, back, half_z;
} Slice;

static const Slice skull[] = {
  { -0.425, 0.132, 0.368, 0.090, 0.070 },
  { -0.385, 0.186, 0.358, 0.000, 0.050 },
  { -0.345, 0.220, 0.350, -0.070, 0.030 },
  { -0.285, 0.252, 0.368, -0.140, 0.040 },
  { -0.225, 0.276, 0.356, -0.210, 0.040 },
  { -0.130, 0.308, 0.352, -0.290, 0.050 },
  { -0.060, 0.319, 0.346, -0.350, 0.050 },
  { 0.010, 0.320, 0.340, -0.410, 0.050 },
  { 0.080, 0.325, 0.360, -0.440, 0.050 },
  { 0.180, 0.322, 0.354, -0.460, 0.050 },
  { 0.300, 0.290, 0.312, -0.430, 0.050 },
  { 0.400, 0.220, 0.220, -0.350, 0.040 },
  { 0.470, 0.120, 0.080, -0.240, 0.030 },
};

#define N_SKIN_SLICES 11 /* higher ones are under the hair, or the seen side of the face */

static const Slice hair[] = {
  { -0.205, 0.215, -0.165, -0.405, 0.045 },
  { -0.100, 0.312, -0.055, -0.480, 0.050 },
  { 0.020, 0.356, 0.020, -0.518, 0.050 },
  { 0.150, 0.368, 0.220, -0.528, 0.050 },
  { 0.280, 0.350, 0.345, -0.508, 0.050 },
  { 0.360, 0.308, 0.322, -0.468, 0.175 },
};

/* Where the hair ends over the forehead and before the ears, from right to left: parted on the left */
static const LrHeadSpot hairline[] = {
  { -SIDEBURN_DEG, -0.075, 0.003 }, { -76, -0.030, 0.004 }, { -71, 0.045, 0.005 }, { -63, 0.118, 0.008 },
  { -50, 0.160, 0.012 },
  { -34, 0.186, 0.014 }, { -17, 0.222, 0.014 }, { -2, 0.262, 0.012 }, { 11, 0.300, 0.008 }, { 19, 0.314, 0.006 },
  { 27, 0.292, 0.008 },
  { 40, 0.238, 0.010 }, { 52, 0.182, 0.010 }, { 63, 0.108, 0.008 }, { 71, 0.040, 0.005 }, { 76, -0.030, 0.004 },
  { SIDEBURN_DEG, -0.075, 0.003 },
};

/**
 * lr_head_point:
 * @figure: a person
 * @x: ahead of the middle of the head, in shares of its height
 * @y: to the left
 * @z: over the eyes
 *
 * Returns: the point in the room [m]
 */
LrVec3
lr_head_point (const LrFigure *figure,
               double          x,
               double          y,
               double          z)
{
  double h = figure->head_m;

  return lr_axes_point (&figure->head, x * h - LR_EYES_AHEAD_M, y * h, z * h);
}

/**
 * lr_head_place:
 * @figure: a person
 * @at_m: a point in the room [m]
 * @at: (out): where it is in the picture
 *
 * Returns: %FALSE when it is too near to the lens, or behind it
 */
gboolean
lr_head_place (const LrFigure *figure,
               LrVec3          at_m,
               LrVec2         *at)
{
  return lr_painter_depth_m (figure->painter, at_m) > LR_NEAR_M && lr_painter_place (figure->painter, at_m, at);
}

static Slice
slice_at (double z)
{
  guint i = 0, last = G_N_ELEMENTS (skull) - 1;
  const Slice *a, *b;
  double t;

  while (i + 1 < last && skull[i + 1].z < z)
    i++;

  a = &skull[i];
  b = &skull[i + 1];
  t = CLAMP ((z - a->z) / (b->z - a->z), 0.0, 1.0);
  return (Slice) { z, a->half_y + t * (b->half_y - a->half_y), a->front + t * (b->front - a->front),
                   a->back + t * (b->back - a->back), 0.0 };
}

/* Angle round a slice that faces the lens [rad] */
static double
faces_rad (const LrFigure *figure,
           const Slice    *slice)
{
  double middle = 0.5 * (slice->front + slice->back), half_x = 0.5 * (slice->front - slice->back);
  LrVec3 way = lr_vec3_sub (figure->painter->projection->eye_m, lr_head_point (figure, middle, 0.0, slice->z));

  return atan2 (lr_vec3_dot (way, figure->head.y) / slice->half_y, lr_vec3_dot (way, figure->head.x) / half_x);
}

/**
 * lr_head_turned_deg:
 * @figure: a person
 * @spot: a spot on the head
 *
 * Returns: how far round it lies from what faces the lens [deg], in (-180, 180]
 */
double
lr_head_turned_deg (const LrFigure *figure,
                    LrHeadSpot      spot)
{
  Slice slice = slice_at (spot.up);

  return lr_angle_wrap_rad (spot.around_deg * LR_DEG - faces_rad (figure, &slice)) / LR_DEG;
}

static gboolean
place_spot (const LrFigure *figure,
            LrHeadSpot      spot,
            LrVec2         *at)
{
  Slice slice = slice_at (spot.up);
  double middle = 0.5 * (slice.front + slice.back), half_x = 0.5 * (slice.front - slice.back);
  double faces = faces_rad (figure, &slice);
  /* Not wrapped: spots are on the front half, and what is round the corner slides to the edge that it went round */
  double turned = spot.around_deg * LR_DEG - faces;
  double around = faces + CLAMP (turned, -figure->head_seen_rad, figure->head_seen_rad);

  return lr_head_place (figure,
                        lr_head_point (figure, middle + (half_x + spot.lift) * cos (around),
                                       (slice.half_y + spot.lift) * sin (around),
                                       spot.up),
                        at);
}

/**
 * lr_head_spots:
 * @figure: a person
 * @spots: on the left side of the head
 * @n: their number
 * @side: 1, or -1 for the right side
 * @points: (out): where they are in the picture
 *
 * Returns: @n, or 0 when one cannot be placed
 */
guint
lr_head_spots (const LrFigure   *figure,
               const LrHeadSpot *spots,
               guint             n,
               int               side,
               LrVec2           *points)
{
  for (guint i = 0; i < n; i++)
    {
      LrHeadSpot spot = { side * spots[i].around_deg, spots[i].up, spots[i].lift };

      if (!place_spot (figure, spot, &points[i]))
        return 0;
    }

  return n;
}

static void
paint_slices (const LrFigure  *figure,
              const Slice     *slices,
              guint            n,
              const LrShading *shading,
              LrMaterial       material)
{
  double h = figure->head_m;
  LrBead beads[16];

  n = MIN (n, G_N_ELEMENTS (beads));
  for (guint i = 0; i < n; i++)
    {
      const Slice *s = &slices[i];

      beads[i] = lr_bead_in (&figure->head, 0.5 * (s->front + s->back) * h - LR_EYES_AHEAD_M, 0.0, s->z * h,
                             0.5 * (s->front - s->back) * h, s->half_y * h, s->half_z * h);
    }
  lr_figure_chain (figure, beads, n, shading, material);
}

/* From behind the outline's edge would be all that is seen of it */
static gboolean
shows_face (const LrFigure *figure)
{
  return fabs (lr_head_turned_deg (figure, (LrHeadSpot) { 0.0, 0.0, 0.0 })) < MOST_TURNED_DEG;
}

/* The side of the face that is seen: under the hairline, before the ears, as far as the outline */
static void
paint_face_skin (const LrFigure  *figure,
                 const LrShading *shading)
{
  static const double rows[] = { -0.12, -0.17, -0.225, -0.285, -0.33, -0.37 };
  const guint n_line = G_N_ELEMENTS (hairline), n_rows = G_N_ELEMENTS (rows);
  LrHeadSpot spots[2 * G_N_ELEMENTS (rows)];
  LrVec2 line[G_N_ELEMENTS (hairline)], sides[2 * G_N_ELEMENTS (rows)];
  cairo_t *cr = figure->painter->cr;

  for (guint i = 0; i < n_rows; i++)
    {
      double around_deg = SIDEBURN_DEG + (i < 2 ? 0.0 : 3.0 * i);

      spots[i] = (LrHeadSpot) { around_deg, rows[i], 0.0 };
      spots[2 * n_rows - 1 - i] = (LrHeadSpot) { -around_deg, rows[i], 0.0 };
    }

  if (lr_head_spots (figure, hairline, n_line, 1, line) != n_line
      || lr_head_spots (figure, spots, 2 * n_rows, 1, sides) != 2 * n_rows)
    return;

  lr_figure_set_source (figure, shading, figure->skin, 1.0);
  lr_figure_path (figure->painter, line, n_line, FALSE);
  for (guint i = 0; i < 2 * n_rows; i++)
    cairo_line_to (cr, sides[i].x, sides[i].y);
  cairo_close_path (cr);
  cairo_fill (cr);
}

/* A few strands, combed from the parting */
static void
paint_strands (const LrFigure *figure)
{
  static const LrHeadSpot strands[][4] = {
    { { 17, 0.345, 0.035 }, { -8, 0.330, 0.040 }, { -36, 0.270, 0.045 }, { -60, 0.175, 0.045 } },
    { { 17, 0.385, 0.040 }, { -14, 0.385, 0.045 }, { -50, 0.320, 0.050 }, { -78, 0.180, 0.050 } },
    { { 18, 0.425, 0.045 }, { -22, 0.430, 0.050 }, { -70, 0.350, 0.055 }, { -104, 0.150, 0.055 } },
    { { 24, 0.340, 0.035 }, { 42, 0.300, 0.045 }, { 58, 0.225, 0.050 }, { 72, 0.110, 0.045 } },
    { { 26, 0.390, 0.040 }, { 52, 0.355, 0.050 }, { 76, 0.250, 0.055 }, { 96, 0.090, 0.050 } },
    { { 30, 0.430, 0.045 }, { 74, 0.385, 0.055 }, { 108, 0.260, 0.060 }, { 124, 0.060, 0.055 } },
  };
  LrColor dark = lr_figure_tone (figure, figure->hair, 0.34);

  if (figure->head_px < 36.0)
    return;

  for (guint i = 0; i < G_N_ELEMENTS (strands); i++)
    {
      LrVec2 points[4];

      /* One that has gone round the edge would lie along the outline */
      if (fabs (lr_head_turned_deg (figure, strands[i][0])) < 80.0
          && fabs (lr_head_turned_deg (figure, strands[i][3])) < 84.0
          && lr_head_spots (figure, strands[i], 4, 1, points) == 4)
        lr_figure_line (figure, points, 4, 0.0022, dark, 0.34);
    }
}

static void
paint_ear (const LrFigure  *figure,
           const LrShading *shading,
           int              side)
{
  enum { N = 14 };
  LrVec2 points[N], inner[5];
  LrColor edge = lr_figure_tone (figure, figure->skin, 0.25);

  for (int i = 0; i < N; i++)
    {
      double a = 2.0 * LR_PI * i / N, low = sin (a) < 0.0 ? 0.72 : 1.0;
      double x = -0.062 + 0.062 * low * cos (a) - 0.022 * sin (a), z = -0.075 + 0.125 * sin (a);

      if (!lr_head_place (figure, lr_head_point (figure, x, side * (0.334 + 0.35 * (-0.02 - x)), z), &points[i]))
        return;
    }
  for (int i = 0; i < 5; i++)
    {
      double a = (0.15 + 0.9 * i / 4.0) * LR_PI;

      if (!lr_head_place (figure, lr_head_point (figure, -0.062 + 0.036 * cos (a), side * 0.350,
                                                 -0.062 + 0.082 * sin (a)), &inner[i]))
        return;
    }

  lr_figure_set_source (figure, shading, (LrMaterial) { figure->skin.hue, 0.94 * figure->skin.reflectance }, 1.0);
  lr_figure_path (figure->painter, points, N, TRUE);
  cairo_fill_preserve (figure->painter->cr);
  if (figure->soft >= figure->painter->unit)
    {
      lr_figure_soften (figure, lr_figure_tone (figure, figure->skin, 0.75), 1.0);
      return;
    }
  cairo_set_source_rgba (figure->painter->cr, edge.r, edge.g, edge.b, 0.45);
  cairo_set_line_width (figure->painter->cr, fmax (0.6, 0.007 * figure->head_px) * figure->painter->unit);
  cairo_stroke (figure->painter->cr);
  if (figure->head_px > 50.0)
    lr_figure_line (figure, inner, 5, 0.0028, edge, 0.5);
}

/* How far an ear is turned towards the lens: cosine of the angle to its side */
static double
ear_faces (const LrFigure *figure,
           int             side)
{
  LrVec3 way = lr_vec3_sub (figure->painter->projection->eye_m, figure->head.origin_m);

  return side * lr_vec3_dot (way, figure->head.y) / fmax (lr_vec3_length (way), 1e-6);
}

/**
 * lr_figure_paint_head:
 * @figure: a person
 *
 * A far ear, skull and jaw in skin, hair over it, the seen side of the face over that, a near ear, and the features.
 */
void
lr_figure_paint_head (const LrFigure *figure)
{
  double h = figure->head_m;
  LrShading face, crown;

  lr_figure_shading (figure, lr_head_point (figure, 0.0, 0.0, -0.02), 0.46 * h, lr_vec2 (0.0, 0.0), &face);
  lr_figure_shading (figure, lr_head_point (figure, -0.06, 0.0, 0.10), 0.48 * h, lr_vec2 (0.0, 0.0), &crown);

  for (int side = -1; side <= 1; side += 2)
    if (ear_faces (figure, side) <= 0.10 && ear_faces (figure, side) > -0.6)
      paint_ear (figure, &face, side);

  lr_figure_paint_nose (figure, TRUE);
  paint_slices (figure, skull, N_SKIN_SLICES, &face, figure->skin);
  paint_slices (figure, hair, G_N_ELEMENTS (hair), &crown, figure->hair);
  paint_strands (figure);
  if (shows_face (figure))
    paint_face_skin (figure, &face);

  for (int side = -1; side <= 1; side += 2)
    if (ear_faces (figure, side) > 0.10)
      paint_ear (figure, &face, side);

  lr_figure_paint_face (figure);
}
