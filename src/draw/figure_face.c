/* figure_face.c - eyes, brows, nose, mouth and glasses
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Few lines, and fewer the smaller the head: a face is recognised by where its features are and which way it
 * turns. The eyes are 63 mm apart (Dodgson 2004: most adults 50 to 75).
 */

#include "figure_head.h"

#define LEAST_PX 9.0  /* height of the head from which a face has features */
#define SMALL_PX 26.0 /* height of the head under which eyes, brows and mouth are strokes */
#define LARGE_PX 90.0 /* from which eyes have lids and a glint */
#define RIM_MIDDLE 0.147 /* of a lens of the glasses, from the middle of the face, and its half width; shares of the head's height */
#define RIM_HALF 0.108
#define PROFILE_START (78.0 * LR_DEG) /* turned so far, the nose stands out past the face */
#define PROFILE_END (118.0 * LR_DEG)  /* and here it is behind the cheek */

static LrColor
skin_tone (const LrFigure *figure,
           double          light)
{
  return lr_figure_tone (figure, figure->skin, light);
}

static gboolean
is_hidden (const LrFigure *figure,
           double          around_deg,
           double          up,
           double          most_deg)
{
  return fabs (lr_head_turned_deg (figure, (LrHeadSpot) { around_deg, up, 0.0 })) > most_deg;
}

static void
paint_spots (const LrFigure   *figure,
             const LrHeadSpot *spots,
             guint             n,
             int               side,
             LrColor           color,
             double            alpha)
{
  LrVec2 points[24];

  n = lr_head_spots (figure, spots, MIN (n, 24), side, points);
  lr_figure_fill (figure, points, n, color, alpha);
}

static void
line_spots (const LrFigure   *figure,
            const LrHeadSpot *spots,
            guint             n,
            int               side,
            double            width_m,
            LrColor           color,
            double            alpha)
{
  LrVec2 points[24];

  n = lr_head_spots (figure, spots, MIN (n, 24), side, points);
  lr_figure_line (figure, points, n, width_m, color, alpha);
}

static void
paint_brow (const LrFigure *figure,
            int             side)
{
  static const LrHeadSpot brow[] = { { 9, 0.086, 0.008 }, { 16, 0.108, 0.008 }, { 26, 0.122, 0.008 },
                                     { 36, 0.112, 0.008 }, { 45, 0.082, 0.006 },
                                     { 36, 0.099, 0.008 }, { 26, 0.103, 0.008 }, { 16, 0.086, 0.008 },
                                     { 10, 0.070, 0.008 } };
  LrMaterial material = { figure->hair.hue, fmin (0.5 * figure->hair.reflectance, 0.20) };
  LrColor color = lr_tone_mix (lr_figure_tone (figure, material, 0.8), skin_tone (figure, 0.4), 0.3);

  paint_spots (figure, brow, G_N_ELEMENTS (brow), side, color, 0.80);
}

static void
paint_iris (const LrFigure *figure,
            int             side)
{
  enum { N = 14 };
  LrHeadSpot iris[N], glint = { 25.0 + 1.6 * side, 0.016, 0.008 };
  LrColor color = lr_tone (LR_HUE_WOOD, 0.022);
  LrVec2 at;

  for (int i = 0; i < N; i++)
    {
      double a = 2.0 * LR_PI * i / N;

      iris[i] = (LrHeadSpot) { 25.5 + 4.9 * cos (a), fmin (0.006 + 0.029 * sin (a), 0.026), 0.005 };
    }
  paint_spots (figure, iris, N, side, color, 0.94);

  if (figure->head_px < LARGE_PX || lr_head_spots (figure, &glint, 1, side, &at) == 0)
    return;
  cairo_new_sub_path (figure->painter->cr);
  cairo_arc (figure->painter->cr, at.x, at.y, 0.0075 * figure->head_px * figure->painter->unit, 0.0, 2.0 * LR_PI);
  cairo_set_source_rgba (figure->painter->cr, 1.0, 1.0, 1.0, 0.75);
  cairo_fill (figure->painter->cr);
}

static void
paint_eye (const LrFigure *figure,
           int             side)
{
  static const LrHeadSpot hollow[] = { { 7, 0.075, 0 }, { 11, 0.000, 0 }, { 17, -0.040, 0 }, { 28, -0.055, 0 },
                                       { 40, -0.035, 0 }, { 47, 0.030, 0 },
                                       { 42, 0.085, 0 }, { 26, 0.100, 0 } };
  static const LrHeadSpot white[] = { { 14.5, -0.004, 0.004 }, { 19, 0.020, 0.004 }, { 26, 0.031, 0.004 },
                                      { 33, 0.021, 0.004 }, { 38.5, -0.003, 0.004 },
                                      { 33, -0.018, 0.004 }, { 26, -0.023, 0.004 }, { 19, -0.016, 0.004 } };
  static const LrHeadSpot lid[] = { { 13.5, -0.006, 0.006 }, { 18, 0.020, 0.006 }, { 26, 0.032, 0.006 },
                                    { 34, 0.020, 0.006 }, { 39.5, -0.004, 0.006 } };
  static const LrHeadSpot low_lid[] = { { 38, -0.008, 0.005 }, { 32, -0.021, 0.005 }, { 25, -0.025, 0.005 },
                                        { 18, -0.017, 0.005 } };
  static const LrHeadSpot crease[] = { { 15, 0.028, 0.005 }, { 20, 0.050, 0.005 }, { 27, 0.058, 0.005 },
                                       { 35, 0.044, 0.005 }, { 41, 0.018, 0.005 } };
  LrColor dark = lr_tone_mix (skin_tone (figure, 0.10), lr_tone (LR_HUE_WOOD, 0.02), 0.6);
  LrColor pale = lr_tone_mix (lr_figure_tone (figure, (LrMaterial) { LR_HUE_PLAIN, 0.50 }, 1.0), skin_tone (figure, 0.9), 0.35);

  if (is_hidden (figure, side * 24.0, 0.0, 76.0))
    return;

  paint_spots (figure, hollow, G_N_ELEMENTS (hollow), side, skin_tone (figure, 0.45), 0.20);
  if (figure->head_px < SMALL_PX)
    {
      line_spots (figure, lid + 1, 3, side, 0.008, dark, 0.75);
      return;
    }
  if (figure->head_px >= 44.0)
    paint_spots (figure, white, G_N_ELEMENTS (white), side, pale, 0.90);
  paint_iris (figure, side);
  line_spots (figure, lid, G_N_ELEMENTS (lid), side, 0.0027, dark, 0.85);
  if (figure->head_px >= 60.0)
    line_spots (figure, low_lid, G_N_ELEMENTS (low_lid), side, 0.0016, skin_tone (figure, 0.30), 0.55);
  if (figure->head_px >= LARGE_PX)
    line_spots (figure, crease, G_N_ELEMENTS (crease), side, 0.0018, skin_tone (figure, 0.32), 0.55);
}

/* Light on a plane of the nose */
static double
light_on (const LrFigure *figure,
          double          x,
          double          y,
          double          z)
{
  LrVec3 normal = lr_axes_direction (&figure->head, x, y, z);

  return lr_figure_light (figure, normal);
}

static gboolean
place_points (const LrFigure *figure,
              const LrVec3   *points,
              guint           n,
              LrVec2         *out)
{
  for (guint i = 0; i < n; i++)
    if (!lr_head_place (figure, lr_head_point (figure, points[i].x, points[i].y, points[i].z), &out[i]))
      return FALSE;

  return TRUE;
}

/* @root: how far its edge reaches into a face that is painted after it */
static void
paint_flank (const LrFigure *figure,
             int             side,
             double          root,
             LrColor         color,
             double          alpha)
{
  const LrVec3 flank[] = {
    { 0.344 - root, side * 0.008, 0.045 }, { 0.362, side * 0.010, -0.005 }, { 0.412, side * 0.014, -0.075 },
    { 0.458, side * 0.016, -0.135 },
    { 0.468, side * 0.020, -0.165 }, { 0.448, side * 0.028, -0.190 }, { 0.395, side * 0.050, -0.200 },
    { 0.360 - root, side * 0.076, -0.180 },
    { 0.362 - root, side * 0.068, -0.138 }, { 0.344 - root, side * 0.040, -0.050 },
  };
  LrVec2 points[G_N_ELEMENTS (flank)];

  if (place_points (figure, flank, G_N_ELEMENTS (flank), points))
    lr_figure_fill (figure, points, G_N_ELEMENTS (flank), color, alpha);
}

/* Shade under the tip */
static void
paint_under_nose (const LrFigure *figure)
{
  const LrVec3 under[] = {
    { 0.362, 0.074, -0.178 }, { 0.400, 0.048, -0.188 }, { 0.452, 0.0, -0.180 }, { 0.400, -0.048, -0.188 },
    { 0.362, -0.074, -0.178 },
    { 0.376, -0.040, -0.208 }, { 0.398, 0.0, -0.214 }, { 0.376, 0.040, -0.208 },
  };
  LrVec2 points[G_N_ELEMENTS (under)];

  if (place_points (figure, under, G_N_ELEMENTS (under), points))
    lr_figure_fill (figure, points, G_N_ELEMENTS (under), skin_tone (figure, 0.30), 0.42);
}

/* The farther edge of a nose that is turned aside: from between the brows over the tip to the lip */
static void
line_bridge (const LrFigure *figure,
             double          turned)
{
  const LrVec3 bridge[] = {
    { 0.352, 0.0, 0.050 }, { 0.362, 0.0, 0.000 }, { 0.398, 0.0, -0.060 }, { 0.440, 0.0, -0.115 }, { 0.470, 0.0, -0.152 },
    { 0.466, 0.0, -0.180 }, { 0.436, 0.0, -0.200 }, { 0.384, 0.0, -0.208 },
  };
  double alpha = 0.55 * CLAMP ((turned - 0.45) / 0.4, 0.0, 1.0);
  LrVec2 points[G_N_ELEMENTS (bridge)];

  if (alpha > 0.0 && figure->head_px >= SMALL_PX && place_points (figure, bridge, G_N_ELEMENTS (bridge), points))
    lr_figure_line (figure, points, G_N_ELEMENTS (bridge), 0.0022, skin_tone (figure, 0.26), alpha);
}

/**
 * lr_figure_paint_nose:
 * @figure: a person
 * @is_before: whether the face is still to be painted
 *
 * The farther flank, the nearer one over it, then the shade under the tip. In profile the nose stands out past the
 * face, and hides what is behind it.
 */
void
lr_figure_paint_nose (const LrFigure *figure,
                      gboolean        is_before)
{
  LrVec3 way = lr_vec3_sub (figure->painter->projection->eye_m, figure->head.origin_m);
  double toward = atan2 (lr_vec3_dot (way, figure->head.y), lr_vec3_dot (way, figure->head.x));
  double turned = fabs (toward);
  int near_side = toward >= 0.0 ? 1 : -1;
  double front = light_on (figure, 1.0, 0.0, 0.0), lit = light_on (figure, 0.62, 0.78 * near_side, 0.0);
  double alpha = CLAMP (fabs (lit - front) * 1.5, 0.10, 0.55);

  if (turned > PROFILE_END || figure->head_px < LEAST_PX || is_before != (turned > PROFILE_START))
    return;

  if (turned < 0.35)
    {
      double far_lit = light_on (figure, 0.62, -0.78 * near_side, 0.0);

      paint_flank (figure, -near_side, 0.0, skin_tone (figure, far_lit), CLAMP (fabs (far_lit - front) * 1.5, 0.10, 0.55));
    }
  if (turned > 0.6)
    alpha = fmax (alpha, CLAMP ((turned - 0.6) / 0.4, 0.0, 1.0));
  paint_flank (figure, near_side, is_before ? 0.09 : 0.0, skin_tone (figure, turned > 0.6 ? 0.3 * front + 0.7 * lit : lit), alpha);
  if (turned < 1.2 && figure->head_px >= SMALL_PX)
    paint_under_nose (figure);
  line_bridge (figure, turned);
}

static void
paint_mouth (const LrFigure *figure)
{
  static const LrHeadSpot upper[] = { { 24, -0.283, 0.002 }, { 12, -0.262, 0.012 }, { 4, -0.250, 0.018 },
                                      { 0, -0.255, 0.018 }, { -4, -0.250, 0.018 },
                                      { -12, -0.262, 0.012 }, { -24, -0.283, 0.002 }, { -10, -0.282, 0.014 },
                                      { 0, -0.284, 0.018 }, { 10, -0.282, 0.014 } };
  static const LrHeadSpot lower[] = { { 22, -0.284, 0.004 }, { 10, -0.284, 0.014 }, { 0, -0.287, 0.018 },
                                      { -10, -0.284, 0.014 }, { -22, -0.284, 0.004 },
                                      { -12, -0.309, 0.012 }, { 0, -0.322, 0.016 }, { 12, -0.309, 0.012 } };
  static const LrHeadSpot parting[] = { { 25, -0.280, 0.003 }, { 14, -0.284, 0.012 }, { 5, -0.2825, 0.018 },
                                        { 0, -0.2845, 0.018 }, { -5, -0.2825, 0.018 },
                                        { -14, -0.284, 0.012 }, { -25, -0.280, 0.003 } };
  static const LrHeadSpot under[] = { { 12, -0.335, 0.004 }, { 0, -0.340, 0.004 }, { -12, -0.335, 0.004 },
                                      { 0, -0.362, 0.004 } };
  LrColor lip = lr_figure_tone (figure, figure->skin, 0.34);
  LrColor line = lr_tone_mix (skin_tone (figure, 0.16), (LrColor) { 0.30, 0.10, 0.08 }, 0.4);

  lip.g *= 0.88;
  if (is_hidden (figure, 0.0, -0.28, 100.0))
    return;

  if (figure->head_px >= SMALL_PX)
    {
      paint_spots (figure, upper, G_N_ELEMENTS (upper), 1, lip, 0.50);
      paint_spots (figure, lower, G_N_ELEMENTS (lower), 1, lip, 0.34);
      paint_spots (figure, under, G_N_ELEMENTS (under), 1, skin_tone (figure, 0.40), 0.28);
    }
  line_spots (figure, parting, G_N_ELEMENTS (parting), 1, 0.0022, line, 0.72);
}

/* Of the frame, which bends back a little towards the temples; about 14 mm before the eyes */
static double
rim_ahead (double y)
{
  double out = fmax (0.0, y - 0.05);

  return 0.398 - 1.4 * out * out;
}

static gboolean
rim (const LrFigure *figure,
     int             side,
     LrVec2         *points,
     guint           n)
{
  for (guint i = 0; i < n; i++)
    {
      double a = 2.0 * LR_PI * i / n;
      double y = RIM_MIDDLE + RIM_HALF * cos (a), z = -0.012 + 0.098 * sin (a);
      if (!lr_head_place (figure, lr_head_point (figure, rim_ahead (y), side * y, z), &points[i]))
        return FALSE;
    }

  return TRUE;
}

static void
paint_glasses (const LrFigure *figure)
{
  enum { N = 20 };
  const LrVec3 bridge[] = { { 0.396, 0.046, 0.012 }, { 0.408, 0.0, 0.028 }, { 0.396, -0.046, 0.012 } };
  LrColor frame = lr_tone (LR_HUE_METAL, 0.02);
  LrVec2 points[N + 1];

  if (is_hidden (figure, 0.0, 0.0, 112.0))
    return;

  for (int side = -1; side <= 1; side += 2)
    {
      /* from the rim, where it bends back most */
      const LrVec3 temple[] = { { rim_ahead (RIM_MIDDLE + RIM_HALF), side * (RIM_MIDDLE + RIM_HALF), 0.000 }, { 0.15, side * 0.335, 0.016 },
                                { -0.06, side * 0.350, 0.030 } };

      if (!rim (figure, side, points, N))
        return;
      lr_figure_fill (figure, points, N, (LrColor) { 1.0, 1.0, 1.0 }, 0.07);
      points[N] = points[0];
      lr_figure_line (figure, points, N + 1, 0.0020, frame, 0.9);

      if (!is_hidden (figure, side * 60.0, 0.02, 64.0) && place_points (figure, temple, G_N_ELEMENTS (temple), points))
        lr_figure_line (figure, points, G_N_ELEMENTS (temple), 0.0020, frame, 0.9);
    }
  if (place_points (figure, bridge, G_N_ELEMENTS (bridge), points))
    lr_figure_line (figure, points, G_N_ELEMENTS (bridge), 0.0020, frame, 0.9);
}

/**
 * lr_figure_paint_face:
 * @figure: a person whose head is painted
 */
void
lr_figure_paint_face (const LrFigure *figure)
{
  if (is_hidden (figure, 0.0, 0.0, 112.0) || figure->head_px < LEAST_PX)
    return;

  for (int side = -1; side <= 1; side += 2)
    {
      paint_eye (figure, side);
      if (!is_hidden (figure, side * 26.0, 0.1, 88.0))
        paint_brow (figure, side);
    }
  paint_mouth (figure);
  lr_figure_paint_nose (figure, FALSE);
  if (figure->person->has_glasses)
    paint_glasses (figure);
}
