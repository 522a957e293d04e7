/* figure_shade.c - the light on the round shapes of a figure
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lambert's law across a round thing, for the key, the light from all round, and the back light: one filled path with a
 * gradient, or, on a picture of pixels, a mask that its tones are painted through.
 */

#include "figure_parts.h"
#include "scene_light.h"

#define MAX_LEVELS 7 /* of an edge out of focus: each is a gradient */
#define SMALL_PX 5.0 /* half the width under which a shape has one tone: a gradient costs five times as much */

static LrVec3
unit (LrVec3 v)
{
  return lr_vec3_scale (v, 1.0 / fmax (lr_vec3_length (v), 1e-12));
}

static double
scale_at (const LrPainter *painter,
          LrVec3           at_m)
{
  return lr_painter_scale (painter, fmax (lr_painter_depth_m (painter, at_m), LR_NEAR_M));
}

/**
 * lr_figure_shading:
 * @figure: a person
 * @at_m: middle of the shape [m]
 * @radius_m: how far it reaches to its sides [m]
 * @direction: across the shape in the picture, either way, or 0, 0: towards the key
 * @shading: (out): where light ends and shadow begins on it
 */
void
lr_figure_shading (const LrFigure *figure,
                   LrVec3          at_m,
                   double          radius_m,
                   LrVec2          direction,
                   LrShading      *shading)
{
  const LrProjection *p = figure->painter->projection;
  LrVec3 key = figure->modelling.key;
  LrVec2 light = { lr_vec3_dot (key, p->right), -lr_vec3_dot (key, p->up) };
  double length;

  if (lr_vec2_dot (direction, direction) < 1e-12)
    direction = light;
  else if (lr_vec2_dot (direction, light) < 0.0)
    direction = lr_vec2_scale (direction, -1.0);

  length = lr_vec2_length (direction);
  *shading = (LrShading) { .along = length > 1e-6 ? lr_vec2_scale (direction, 1.0 / length) : lr_vec2 (-1.0, 0.0) };
  lr_painter_place (figure->painter, at_m, &shading->middle);
  shading->reach = radius_m * scale_at (figure->painter, at_m);
  shading->side = lr_vec3_along (lr_vec3_scale (p->right, shading->along.x), p->up, -shading->along.y);
  shading->towards = unit (lr_vec3_sub (p->eye_m, at_m));
}

/**
 * lr_figure_tone:
 * @figure: a person
 * @material: a material
 * @light: that falls on it, 1 for a face turned to the key
 *
 * Returns: its tone
 */
LrColor
lr_figure_tone (const LrFigure *figure,
                LrMaterial      material,
                double          light)
{
  return lr_tone (material.hue, fmin (0.93, material.reflectance * light * figure->modelling.gain));
}

static double
key_on (const LrModelling *modelling,
        LrVec3             normal)
{
  return modelling->ambient_share + modelling->key_share * lr_modelling_key (modelling, normal);
}

/**
 * lr_figure_light:
 * @figure: a person
 * @normal: of a flat piece of it, unit
 *
 * Returns: the light on it, without the back light
 */
double
lr_figure_light (const LrFigure *figure,
                 LrVec3          normal)
{
  return key_on (&figure->modelling, normal);
}

/* Light on the place of a round thing that is at s of its half extent, 1 at its lit edge */
static double
light_at (const LrModelling *modelling,
          const LrShading   *shading,
          double             s)
{
  LrVec3 normal = lr_vec3_along (lr_vec3_scale (shading->side, s), shading->towards, sqrt (fmax (0.0, 1.0 - s * s)));
  double back = modelling->back_share > 0.0 ? fmax (0.0, lr_vec3_dot (normal, modelling->back)) : 0.0;

  return key_on (modelling, normal) + modelling->back_share * back;
}

/* Places across a round thing, from its lit to its dark edge, at which its tone is known */
static const double places[] = { 1.0, 0.8, 0.5, 0.15, -0.2, -0.55, -0.85, -1.0 };

static void
tones_across (const LrFigure  *figure,
              const LrShading *shading,
              LrMaterial       material,
              LrColor         *tones)
{
  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    tones[i] = lr_figure_tone (figure, material, light_at (&figure->modelling, shading, places[i]));
}

/**
 * lr_figure_set_source:
 * @figure: a person
 * @shading: the light across the shape
 * @material: what it is made of
 * @alpha: how much of what is behind it hides
 *
 * Source: Lambert's cosine law.
 */
void
lr_figure_set_source (const LrFigure  *figure,
                      const LrShading *shading,
                      LrMaterial       material,
                      double           alpha)
{
  LrColor tones[G_N_ELEMENTS (places)];
  LrVec2 lit = lr_vec2_along (shading->middle, shading->along, shading->reach);
  LrVec2 dark = lr_vec2_along (shading->middle, shading->along, -shading->reach);
  cairo_pattern_t *pattern;

  if (shading->reach < SMALL_PX * figure->painter->unit)
    {
      LrColor tone = lr_figure_tone (figure, material, light_at (&figure->modelling, shading, 0.25));

      cairo_set_source_rgba (figure->painter->cr, tone.r, tone.g, tone.b, alpha);
      return;
    }

  pattern = cairo_pattern_create_linear (lit.x, lit.y, dark.x, dark.y);
  tones_across (figure, shading, material, tones);
  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    cairo_pattern_add_color_stop_rgba (pattern, 0.5 - 0.5 * places[i], tones[i].r, tones[i].g, tones[i].b, alpha);

  cairo_set_source (figure->painter->cr, pattern);
  cairo_pattern_destroy (pattern);
}

static gboolean
is_in_picture (const LrPainter *painter,
               const LrBead    *beads,
               guint            n,
               double           margin)
{
  double x0 = HUGE_VAL, x1 = -HUGE_VAL, y0 = HUGE_VAL, y1 = -HUGE_VAL;

  for (guint i = 0; i < n; i++)
    {
      double depth_m = lr_painter_depth_m (painter, beads[i].at_m), reach;
      LrVec2 at;

      if (depth_m < LR_NEAR_M || !lr_painter_place (painter, beads[i].at_m, &at))
        return TRUE; /* too near to tell */
      /* Off the axis a ball's image is drawn out: twice its radius is enough for any lens */
      reach = 2.0 * lr_painter_scale (painter, depth_m)
              * fmax (lr_vec3_length (beads[i].x), fmax (lr_vec3_length (beads[i].y), lr_vec3_length (beads[i].z)));
      x0 = fmin (x0, at.x - reach);
      x1 = fmax (x1, at.x + reach);
      y0 = fmin (y0, at.y - reach);
      y1 = fmax (y1, at.y + reach);
    }

  return x1 > -margin && y1 > -margin && x0 < painter->width + margin && y0 < painter->height + margin;
}

static void
fill_chains (const LrPainter *painter,
             const LrBead    *beads,
             guint            n_chains,
             guint            n,
             double           grow_m)
{
  for (guint i = 0; i < n_chains; i++)
    lr_figure_outline (painter, beads + i * n, n, grow_m);
  cairo_fill (painter->cr);
}

/* The tones between those at the places, evenly apart */
static void
fill_ramp (const LrColor *tones,
           guint32       *ramp)
{
  guint at = 0;

  for (guint i = 0; i < LR_N_TONES; i++)
    {
      double place = 1.0 - 2.0 * i / (LR_N_TONES - 1.0);

      while (at + 2 < G_N_ELEMENTS (places) && places[at + 1] > place)
        at++;
      ramp[i] = lr_pixel_of (lr_tone_mix (tones[at], tones[at + 1], (places[at] - place) / (places[at] - places[at + 1])));
    }
}

/* On a picture of pixels: all the layers into the mask, the tones through it at once */
static void
shade_chains (const LrFigure  *figure,
              const LrBead    *beads,
              guint            n_chains,
              guint            n,
              guint            n_levels,
              double           radius_m,
              const LrShading *shading,
              LrMaterial       material)
{
  LrPainter onto = *figure->painter;
  LrVec2 low = { HUGE_VAL, HUGE_VAL }, high = { -HUGE_VAL, -HUGE_VAL };
  LrColor tones[G_N_ELEMENTS (places)];
  guint32 ramp[LR_N_TONES];
  double left = 1.0; /* of what is behind it */

  onto.cr = onto.pixels.mask_cr;
  for (guint i = 0; i < n_levels; i++)
    {
      double offset, alpha, x0, y0, x1, y1;

      lr_soft_level (i, n_levels, 1.0, &offset, &alpha);
      left *= 1.0 - alpha;
      cairo_set_source_rgba (onto.cr, 0.0, 0.0, 0.0, 1.0 - left);
      for (guint j = 0; j < n_chains; j++)
        lr_figure_outline (&onto, beads + j * n, n, offset * radius_m);
      cairo_path_extents (onto.cr, &x0, &y0, &x1, &y1);
      low = lr_vec2 (fmin (low.x, x0), fmin (low.y, y0));
      high = lr_vec2 (fmax (high.x, x1), fmax (high.y, y1));
      cairo_fill (onto.cr);
    }

  tones_across (figure, shading, material, tones);
  fill_ramp (tones, ramp);
  lr_pixels_shade (&onto.pixels, low, high, ramp, lr_vec2_along (shading->middle, shading->along, shading->reach),
                   lr_vec2_along (shading->middle, shading->along, -shading->reach));
}

/**
 * lr_figure_chains:
 * @figure: a person
 * @beads: ellipsoids, chain after chain
 * @n_chains: number of chains
 * @n: ellipsoids in each, joined one to the next
 * @shading: the light across the whole
 * @material: what it is made of
 */
void
lr_figure_chains (const LrFigure  *figure,
                  const LrBead    *beads,
                  guint            n_chains,
                  guint            n,
                  const LrShading *shading,
                  LrMaterial       material)
{
  const LrPainter *painter = figure->painter;
  double depth_m = fmax (lr_painter_depth_m (painter, beads[n / 2].at_m), LR_NEAR_M);
  double radius = lr_painter_blur (painter, depth_m), scale = lr_painter_scale (painter, depth_m);
  guint n_levels = MIN (lr_soft_levels (painter, radius), MAX_LEVELS);

  if (!is_in_picture (painter, beads, n_chains * n, radius))
    return;

  if (n_levels == 1) /* a darker rim under the edge */
    {
      LrColor edge = lr_figure_tone (figure, material, 0.36);

      cairo_set_source_rgb (painter->cr, edge.r, edge.g, edge.b);
      fill_chains (painter, beads, n_chains, n, 0.5 * painter->unit / scale);
    }

  if (painter->pixels.mask_cr != NULL && shading->reach >= SMALL_PX * painter->unit)
    {
      shade_chains (figure, beads, n_chains, n, n_levels, radius / scale, shading, material);
      return;
    }

  for (guint i = 0; i < n_levels; i++)
    {
      double offset, alpha;

      lr_soft_level (i, n_levels, 1.0, &offset, &alpha);
      lr_figure_set_source (figure, shading, material, alpha);
      fill_chains (painter, beads, n_chains, n, offset * radius / scale);
    }
}

/**
 * lr_figure_chain:
 * @figure: a person
 * @beads: ellipsoids, each joined to the next
 * @n: their number
 * @shading: the light across the whole
 * @material: what it is made of
 */
void
lr_figure_chain (const LrFigure  *figure,
                 const LrBead    *beads,
                 guint            n,
                 const LrShading *shading,
                 LrMaterial       material)
{
  lr_figure_chains (figure, beads, 1, n, shading, material);
}

/**
 * lr_figure_limb:
 * @figure: a person
 * @at_m: middles of round beads along the limb [m]
 * @radius_m: their radii [m]
 * @n: their number, 2 to 6
 * @material: what covers it
 */
void
lr_figure_limb (const LrFigure *figure,
                const LrVec3   *at_m,
                const double   *radius_m,
                guint           n,
                LrMaterial      material)
{
  LrBead beads[6];
  LrShading shading;
  LrVec2 from = { 0.0, 0.0 }, to = { 0.0, 0.0 }, across;
  double widest = 0.0;

  n = MIN (n, G_N_ELEMENTS (beads));
  for (guint i = 0; i < n; i++)
    {
      beads[i] = lr_bead_round (at_m[i], radius_m[i]);
      widest = fmax (widest, radius_m[i]);
    }

  if (!lr_painter_place (figure->painter, at_m[0], &from) || !lr_painter_place (figure->painter, at_m[n - 1], &to))
    return;

  across = lr_vec2_left (lr_vec2_sub (to, from));
  lr_figure_shading (figure, lr_vec3_scale (lr_vec3_add (at_m[0], at_m[n - 1]), 0.5), widest, across, &shading);
  if (n > 2) /* a bent or tapering limb is shaded about its chord */
    {
      double least = HUGE_VAL, most = -HUGE_VAL;

      for (guint i = 0; i < n; i++)
        {
          LrVec2 at;
          double along, px;

          if (!lr_painter_place (figure->painter, at_m[i], &at))
            return;
          along = lr_vec2_dot (lr_vec2_sub (at, shading.middle), shading.along);
          px = radius_m[i] * scale_at (figure->painter, at_m[i]);
          least = fmin (least, along - px);
          most = fmax (most, along + px);
        }
      shading.middle = lr_vec2_along (shading.middle, shading.along, 0.5 * (least + most));
      shading.reach = 0.5 * (most - least);
    }

  lr_figure_chain (figure, beads, n, &shading, material);
}
