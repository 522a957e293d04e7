/* figure_clothes.c - jacket, shirt and collar, drawn on the surface of the trunk
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Spots on the trunk are given by the angle round it, 0 ahead and growing to the left, and the height over the
 * shoulder for a stature of 1.70 m. What has turned out of sight slides to the outline.
 */

#include "figure_parts.h"

#define MOST_SPOTS 24

typedef struct
{
  double up_m, half_y_m, half_x_m, ahead_m;
} Girth;

/* The trunk's slices, from the neck down */
static const Girth girths[] = {
  { 0.100, 0.054, 0.054, -0.028 }, { 0.076, 0.058, 0.057, -0.030 }, { 0.056, 0.066, 0.064, -0.030 },
  { 0.036, 0.098, 0.074, -0.030 }, { 0.014, 0.142, 0.088, -0.026 },
  { -0.022, 0.176, 0.102, -0.018 }, { -0.090, 0.184, 0.120, -0.004 }, { -0.170, 0.174, 0.126, 0.004 },
  { -0.270, 0.164, 0.122, 0.002 },
  { -0.370, 0.160, 0.120, -0.002 }, { -0.520, 0.178, 0.126, -0.010 },
};

static Girth
girth_at (double up_m)
{
  guint last = G_N_ELEMENTS (girths) - 1, i = 0;
  const Girth *a, *b;
  double t;

  if (up_m >= girths[0].up_m)
    return girths[0];
  while (i + 1 < last && girths[i + 1].up_m > up_m)
    i++;

  a = &girths[i];
  b = &girths[i + 1];
  t = CLAMP ((a->up_m - up_m) / (a->up_m - b->up_m), 0.0, 1.0);
  return (Girth) {
    up_m,
    a->half_y_m + t * (b->half_y_m - a->half_y_m),
    a->half_x_m + t * (b->half_x_m - a->half_x_m),
    a->ahead_m + t * (b->ahead_m - a->ahead_m),
  };
}

/* Where a spot is in the picture; FALSE: behind the lens */
static gboolean
place_spot (const LrFigure *figure,
            LrSpot          spot,
            gboolean        is_back,
            LrVec2         *at)
{
  Girth girth = girth_at (spot.up_m);
  double k = figure->k;
  LrVec3 middle_m = lr_axes_point (&figure->body, girth.ahead_m * k, 0.0, figure->shoulder_m + spot.up_m * k);
  LrVec3 way = lr_vec3_sub (figure->painter->projection->eye_m, middle_m);
  double faces = atan2 (lr_vec3_dot (way, figure->body.y) / girth.half_y_m,
                        lr_vec3_dot (way, figure->body.x) / girth.half_x_m);
  /* Counted from the middle of the side it is on, so that what is round the corner slides to the edge that it went round */
  double turned = is_back ? lr_angle_wrap_rad (spot.around_deg * LR_DEG - LR_PI) - lr_angle_wrap_rad (faces - LR_PI)
                          : spot.around_deg * LR_DEG - faces;
  double around = faces + CLAMP (turned, -figure->trunk_seen_rad, figure->trunk_seen_rad);
  double x = girth.ahead_m + (girth.half_x_m + spot.lift_m) * cos (around);
  double y = (girth.half_y_m + spot.lift_m) * sin (around);
  LrVec3 at_m = lr_axes_point (&figure->body, x * k, y * k, figure->shoulder_m + spot.up_m * k);

  return lr_painter_depth_m (figure->painter, at_m) > LR_NEAR_M && lr_painter_place (figure->painter, at_m, at);
}

/* Spots, on the left side of the body or mirrored to its right */
static guint
place_spots (const LrFigure *figure,
             const LrSpot   *spots,
             guint           n,
             int             side,
             LrVec2         *points)
{
  gboolean is_back = fabs (spots[0].around_deg) > 90.0;

  for (guint i = 0; i < n; i++)
    {
      LrSpot spot = { side * spots[i].around_deg, spots[i].up_m, spots[i].lift_m };

      if (!place_spot (figure, spot, is_back, &points[i]))
        return 0;
    }

  return n;
}

/* A flat piece of cloth: straight edges, in one tone, with a thin darker edge when it is large enough to have one */
static void
paint_piece (const LrFigure *figure,
             const LrSpot   *spots,
             guint           n,
             int             side,
             gboolean        has_edge,
             LrMaterial      material,
             double          light)
{
  LrVec2 points[MOST_SPOTS];
  LrColor tone = lr_figure_tone (figure, material, light), edge = lr_figure_tone (figure, material, 0.55 * light);
  cairo_t *cr = figure->painter->cr;

  n = place_spots (figure, spots, MIN (n, MOST_SPOTS), side, points);
  if (n < 3)
    return;

  for (guint i = 0; i < n; i++)
    cairo_line_to (cr, points[i].x, points[i].y);
  cairo_close_path (cr);
  cairo_set_source_rgb (cr, tone.r, tone.g, tone.b);
  if ((figure->head_px < 30.0 || !has_edge) && figure->soft < figure->painter->unit)
    {
      cairo_fill (cr);
      return;
    }
  cairo_fill_preserve (cr);
  if (figure->soft >= figure->painter->unit)
    {
      lr_figure_soften (figure, tone, 1.0);
      return;
    }
  cairo_set_source_rgb (cr, edge.r, edge.g, edge.b);
  cairo_set_line_width (cr, fmax (0.6, 0.006 * figure->head_px) * figure->painter->unit);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_BEVEL);
  cairo_stroke (cr);
}

/* A piece of skin that runs into what is round it: no edge */
static void
paint_bare (const LrFigure *figure,
            const LrSpot   *spots,
            guint           n,
            LrMaterial      material,
            double          light)
{
  LrVec2 points[MOST_SPOTS];

  n = place_spots (figure, spots, MIN (n, MOST_SPOTS), 1, points);
  lr_figure_fill (figure, points, n, lr_figure_tone (figure, material, light), 1.0);
}

static void
paint_seam (const LrFigure *figure,
            const LrSpot   *spots,
            guint           n,
            int             side,
            LrMaterial      material)
{
  LrVec2 points[MOST_SPOTS];

  n = place_spots (figure, spots, MIN (n, MOST_SPOTS), side, points);
  lr_figure_line (figure, points, n, 0.0035, lr_figure_tone (figure, material, 0.25), 0.75);
}

static void
paint_dot (const LrFigure *figure,
           LrSpot          spot,
           double          radius_m,
           LrColor         color)
{
  cairo_t *cr = figure->painter->cr;
  double radius, soft, alpha;
  LrVec2 at;

  if (!place_spot (figure, spot, FALSE, &at))
    return;

  cairo_new_sub_path (cr);
  radius = fmax (0.8, radius_m * figure->k * figure->head_px / figure->head_m) * figure->painter->unit;
  soft = figure->soft < figure->painter->unit ? 0.0 : figure->soft;
  alpha = radius * radius / ((radius + soft) * (radius + soft));
  cairo_set_source_rgba (cr, color.r, color.g, color.b, alpha);
  cairo_arc (cr, at.x, at.y, radius + soft, 0.0, 2.0 * LR_PI);
  cairo_fill (cr);
}

/* Light on the side of the chest that is turned by an angle */
static double
light_on (const LrFigure *figure,
          double          around_deg)
{
  LrVec3 normal = lr_axes_direction (&figure->body, cos (around_deg * LR_DEG), sin (around_deg * LR_DEG), 0.1);

  return lr_figure_light (figure, normal);
}

static void
paint_front (const LrFigure *figure)
{
  static const LrSpot shirt[] = { { 62, 0.075, 0 }, { 42, 0.034, 0 }, { 20, -0.060, 0 }, { 0, -0.172, 0 },
                                  { -20, -0.060, 0 },
                                  { -42, 0.034, 0 }, { -62, 0.075, 0 } };
  static const LrSpot throat[] = { { 30, 0.092, 0.002 }, { 12, 0.045, 0.004 }, { 0, 0.000, 0.004 },
                                   { -12, 0.045, 0.004 }, { -30, 0.092, 0.002 } };
  static const LrSpot placket[] = { { 0, 0.0, 0.004 }, { 0, -0.172, 0.004 } };
  static const LrSpot wing[] = { { 78, 0.100, 0.008 }, { 38, 0.088, 0.010 }, { 3, 0.004, 0.010 },
                                 { 20, -0.042, 0.012 }, { 46, 0.036, 0.012 } };
  static const LrSpot stand[] = { { 34, 0.086, 0.006 }, { 78, 0.100, 0.008 }, { 120, 0.106, 0.008 },
                                  { 165, 0.108, 0.008 }, { 165, 0.070, 0.010 },
                                  { 120, 0.066, 0.010 }, { 78, 0.056, 0.010 }, { 46, 0.036, 0.010 } };
  static const LrSpot lapel[] = { { 84, 0.080, 0.012 }, { 54, 0.034, 0.010 }, { 26, -0.052, 0.008 },
                                  { 1, -0.176, 0.008 },
                                  { 15, -0.118, 0.010 }, { 37, -0.046, 0.012 }, { 35, -0.028, 0.012 },
                                  { 45, -0.014, 0.012 }, { 76, 0.054, 0.012 } };
  static const LrSpot front[] = { { 1, -0.176, 0.004 }, { -1, -0.30, 0.004 }, { -3, -0.50, 0.004 } };
  LrMaterial skin = { figure->skin.hue, 0.74 * figure->skin.reflectance };
  LrColor button = lr_figure_tone (figure, figure->jacket, 0.22);

  paint_piece (figure, shirt, G_N_ELEMENTS (shirt), 1, FALSE, figure->shirt, 0.72 * light_on (figure, 0.0));
  lr_figure_paint_neck (figure);
  paint_bare (figure, throat, G_N_ELEMENTS (throat), skin, 0.86 * light_on (figure, 0.0));
  paint_seam (figure, placket, G_N_ELEMENTS (placket), 1, figure->shirt);
  for (int side = -1; side <= 1; side += 2)
    {
      paint_piece (figure, stand, G_N_ELEMENTS (stand), side, TRUE, figure->shirt, 0.74 * light_on (figure, side * 80.0));
      paint_piece (figure, wing, G_N_ELEMENTS (wing), side, TRUE, figure->shirt, 0.90 * light_on (figure, side * 30.0));
    }
  for (int side = -1; side <= 1; side += 2)
    paint_piece (figure, lapel, G_N_ELEMENTS (lapel), side, TRUE, figure->jacket, 1.08 * light_on (figure, side * 40.0));
  paint_seam (figure, front, G_N_ELEMENTS (front), 1, figure->jacket);
  paint_dot (figure, (LrSpot) { 3, -0.200, 0.006 }, 0.0075, button);
  paint_dot (figure, (LrSpot) { 3, -0.300, 0.006 }, 0.0075, button);
}

static void
paint_back (const LrFigure *figure)
{
  static const LrSpot collar[] = { { 100, 0.050, 0.008 }, { 130, 0.072, 0.010 }, { 180, 0.078, 0.010 },
                                   { -130, 0.072, 0.010 },
                                   { -100, 0.050, 0.008 }, { -130, 0.022, 0.010 }, { 180, 0.010, 0.010 },
                                   { 130, 0.022, 0.010 } };
  static const LrSpot seam[] = { { 180, 0.008, 0.004 }, { 180, -0.2, 0.004 }, { 180, -0.52, 0.004 } };

  paint_piece (figure, collar, G_N_ELEMENTS (collar), 1, TRUE, figure->jacket, 1.05 * light_on (figure, 180.0));
  paint_seam (figure, seam, G_N_ELEMENTS (seam), 1, figure->jacket);
}

static const LrPlaced *
find_lavalier (const LrFigure *figure)
{
  const GArray *placed = figure->scene->study->placed;

  for (guint i = 0; i < placed->len; i++)
    {
      const LrPlaced *other = &g_array_index (placed, LrPlaced, i);

      if (other->item->kind == LR_ITEM_MICROPHONE && other->item->microphone.form == LR_MIC_LAVALIER
          && g_strcmp0 (other->item->microphone.worn_by, figure->placed->item->id) == 0)
        return other;
    }

  return NULL;
}

/**
 * lr_figure_paint_jacket:
 * @figure: a person whose trunk is painted
 *
 * From the front the neck is painted between shirt and collar.
 */
void
lr_figure_paint_jacket (const LrFigure *figure)
{
  LrVec3 way = lr_vec3_sub (figure->painter->projection->eye_m, figure->body.origin_m);
  double turned = fabs (atan2 (lr_vec3_dot (way, figure->body.y), lr_vec3_dot (way, figure->body.x)));
  const LrPlaced *lavalier = find_lavalier (figure);

  if (turned > 0.5 * LR_PI)
    paint_back (figure);
  if (turned <= 0.5 * LR_PI)
    paint_front (figure);
  if (lavalier != NULL && turned < 0.4 * LR_PI)
    paint_dot (figure, (LrSpot) { 13, (lavalier->point_m.z - figure->shoulder_m) / figure->k, 0.012 }, 0.0075,
               lr_tone (LR_HUE_METAL, 0.012));
}
