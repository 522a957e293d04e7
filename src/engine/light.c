/* light.c - what light a source gives at a point
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A point obeys the photometric distance law, E = I cos / d^2 (CIE International Lighting Vocabulary, 17-25-104). A panel of even
 * luminance is exact by Lambert's formula for polygons: the sum over its edges of the angle that an edge spans, seen from the
 * point, times the cosine between the point's normal and that of the plane through edge and point. What lies under the point's
 * horizon is cut off first. A disc is a polygon of equal area.
 */

#include "light_private.h"

#include "domain.h"

#define MAX_CORNERS 64
#define DISC_CORNERS 48
#define NEAREST_M 1e-3
#define NEAREST_OF_SIDE 0.25
#define FARTHEST_M 1e4
#define MOST_STEPS 400
#define SAME_LEVEL 1e-3
#define CLOSE 1e-10 /* of the distance, from one step to the next */

/**
 * lr_candela_of_lumen:
 * @lumen: flux in the whole beam [lm], >= 0
 * @lobe: how it is spread
 * @candela: (out): intensity on the axis [cd]
 *
 * Source: lr_lobe_sr().
 *
 * Returns: %FALSE, with @candela untouched, unless the flux is in its domain and the lobe has some
 */
bool
lr_candela_of_lumen (double        lumen,
                     const LrLobe *lobe,
                     double       *candela)
{
  double sr = lr_lobe_sr (lobe);

  if (!lr_is_at_least_zero (lumen) || !lr_is_positive (sr))
    return false;

  *candela = lumen / sr;
  return true;
}

/**
 * lr_candela_of_lux:
 * @lux: illuminance on the axis [lx], >= 0
 * @distance_m: where it was measured [m], > 0; far from a wide source
 * @candela: (out): intensity on the axis [cd]
 *
 * Source: photometric distance law (CIE International Lighting Vocabulary, 17-25-104).
 *
 * Returns: %FALSE, with @candela untouched, unless both numbers are in their domain
 */
bool
lr_candela_of_lux (double  lux,
                   double  distance_m,
                   double *candela)
{
  if (!lr_is_at_least_zero (lux) || !lr_is_positive (distance_m))
    return false;

  *candela = lux * distance_m * distance_m;
  return true;
}

/* What of a polygon, seen from the point, is above its horizon; returns the number of corners */
static size_t
cut_at_horizon (const LrVec3 *corner_m,
                size_t        n,
                LrVec3        point_m,
                LrVec3        normal,
                LrVec3       *way_m)
{
  size_t m = 0;

  for (size_t i = 0; i < n; i++)
    {
      LrVec3 a = lr_vec3_sub (corner_m[i], point_m), b = lr_vec3_sub (corner_m[(i + 1) % n], point_m);
      double ha = lr_vec3_dot (a, normal), hb = lr_vec3_dot (b, normal);

      if (ha >= 0.0)
        way_m[m++] = a;
      if ((ha >= 0.0) != (hb >= 0.0))
        way_m[m++] = lr_vec3_along (a, lr_vec3_sub (b, a), ha / (ha - hb));
    }

  return m;
}

/* The sum of Lambert's formula over the edges: a vector whose part along a normal is 2 pi times the factor */
static LrVec3
edge_sum (const LrVec3 *way_m,
          size_t        n)
{
  LrVec3 sum = { 0.0, 0.0, 0.0 };

  for (size_t i = 0; i < n; i++)
    {
      LrVec3 a = way_m[i], b = way_m[(i + 1) % n], cross = lr_vec3_cross (a, b);
      double sine = lr_vec3_length (cross), cosine = lr_vec3_dot (a, b);

      if (sine > 1e-15 * (fabs (cosine) + sine))
        sum = lr_vec3_along (sum, cross, atan2 (sine, cosine) / sine);
    }

  return sum;
}

/**
 * lr_polygon_factor:
 * @corner_m: corners of a flat convex polygon [m]
 * @n: their number, 3 to 62
 * @point_m: where it shines [m]
 * @normal: of the face there, of length 1
 * @factor: (out): from 0 to 1
 *
 * Either side of the polygon counts as its front. With luminance L it gives `pi L factor` of illuminance.
 *
 * Source: Lambert, Photometria (1760), in the form of Siegel and Howell, Thermal Radiation Heat Transfer (contour integral of the
 * configuration factor between an element and a polygon).
 *
 * Returns: %FALSE, with @factor untouched, unless there are so many corners and every number is finite
 */
bool
lr_polygon_factor (const LrVec3 *corner_m,
                   size_t        n,
                   LrVec3        point_m,
                   LrVec3        normal,
                   double       *factor)
{
  LrVec3 way_m[MAX_CORNERS + 2];
  double sum;
  size_t m;

  if (n < 3 || n > MAX_CORNERS - 2)
    return false;

  m = cut_at_horizon (corner_m, n, point_m, normal, way_m);
  sum = m < 3 ? 0.0 : fabs (lr_vec3_dot (edge_sum (way_m, m), normal)) / (2.0 * LR_PI);
  if (!isfinite (sum))
    return false;

  *factor = fmin (sum, 1.0);
  return true;
}

static size_t
outline_of (const LrEmitter *emitter,
            LrVec3          *corner_m)
{
  double area_radius_m = 0.5 * emitter->width_m * sqrt (2.0 * LR_PI / DISC_CORNERS / sin (2.0 * LR_PI / DISC_CORNERS));

  if (emitter->shape == LR_EMITTER_RECTANGLE)
    {
      for (int i = 0; i < 4; i++)
        corner_m[i] = lr_vec3_along (lr_vec3_along (emitter->at_m, emitter->right, (i == 1 || i == 2 ? 0.5 : -0.5) * emitter->width_m),
                                     emitter->up, (i >= 2 ? 0.5 : -0.5) * emitter->height_m);
      return 4;
    }

  for (int i = 0; i < DISC_CORNERS; i++)
    {
      double turn = 2.0 * LR_PI * i / DISC_CORNERS;

      corner_m[i] = lr_vec3_along (lr_vec3_along (emitter->at_m, emitter->right, area_radius_m * cos (turn)), emitter->up,
                                   area_radius_m * sin (turn));
    }
  return DISC_CORNERS;
}

static double
area_of (const LrEmitter *emitter)
{
  return emitter->shape == LR_EMITTER_DISC ? 0.25 * LR_PI * emitter->width_m * emitter->width_m : emitter->width_m * emitter->height_m;
}

static bool
is_known (const LrEmitter *emitter)
{
  if (emitter->shape == LR_EMITTER_BEAM)
    return lr_is_at_least_zero (emitter->parallel_lx) && lr_is_positive (area_of (emitter));
  if (emitter->table != NULL)
    return lr_table_is_known (emitter);

  return lr_is_at_least_zero (emitter->candela) && lr_is_at_least_zero (emitter->lobe.power)
         && (emitter->shape == LR_EMITTER_POINT || lr_is_positive (area_of (emitter)));
}

/**
 * lr_emitter_part_lx:
 * @emitter: a source that is known
 * @part_m: a place of its face [m]
 * @point_m: where it shines [m]
 * @normal: of the face there, of length 1
 *
 * Returns: how much of the light the part gives, against what others give; >= 0
 */
double
lr_emitter_part_lx (const LrEmitter *emitter,
                    LrVec3           part_m,
                    LrVec3           point_m,
                    LrVec3           normal)
{
  LrVec3 way_m = lr_vec3_sub (part_m, point_m);
  double square_m2 = lr_vec3_dot (way_m, way_m);

  if (emitter->table != NULL)
    return lr_table_lx_from (emitter, part_m, point_m, normal);

  return fmax (0.0, lr_vec3_dot (way_m, normal)) * fmax (0.0, -lr_vec3_dot (way_m, emitter->axis)) / fmax (square_m2 * square_m2, 1e-12);
}

/**
 * lr_emitter_way:
 * @emitter: a source
 * @point_m: where it shines [m]
 *
 * Returns: the direction from there to it, of length 1
 */
LrVec3
lr_emitter_way (const LrEmitter *emitter,
                LrVec3           point_m)
{
  return emitter->shape == LR_EMITTER_BEAM ? lr_vec3_scale (emitter->axis, -1.0) : lr_vec3_way (point_m, emitter->at_m);
}

/**
 * lr_beam_entry:
 * @beam: parallel light through a rectangle
 * @point_m: a place [m]
 * @entry_m: (out): where what reaches it comes through [m]
 *
 * Returns: %FALSE, with @entry_m untouched, if the place is not in the beam
 */
bool
lr_beam_entry (const LrEmitter *beam,
               LrVec3           point_m,
               LrVec3          *entry_m)
{
  LrVec3 face = lr_vec3_cross (beam->right, beam->up), at_m, off_m;
  double along = lr_vec3_dot (beam->axis, face), back_m = lr_vec3_dot (lr_vec3_sub (point_m, beam->at_m), face) / along;

  if (!(back_m > 0.0) || !isfinite (back_m))
    return false;

  at_m = lr_vec3_along (point_m, beam->axis, -back_m);
  off_m = lr_vec3_sub (at_m, beam->at_m);
  if (fabs (lr_vec3_dot (off_m, beam->right)) > 0.5 * beam->width_m || fabs (lr_vec3_dot (off_m, beam->up)) > 0.5 * beam->height_m)
    return false;

  *entry_m = at_m;
  return true;
}

/* A wide face that does not shine as a matte one */
static bool
is_in_parts (const LrEmitter *emitter)
{
  return emitter->shape != LR_EMITTER_POINT && (emitter->table != NULL || !lr_lobe_is_matte (&emitter->lobe));
}

/**
 * lr_emitter_lx:
 * @emitter: a source
 * @point_m: where it shines [m]
 * @normal: of the face there, of length 1
 * @lux: (out): illuminance [lx], nothing in between
 *
 * A matte panel is exact. One with another lobe, or a table, is the sum of its parts, each with an equal share of the intensity in its
 * own direction, see lr_parts_lx(); with a table it may shine backwards. A beam gives what it has, by the cosine, to all that it reaches.
 *
 * Source: photometric distance law; lr_polygon_factor().
 *
 * Returns: %FALSE, with @lux untouched, unless the source is known, and the point is not in it
 */
bool
lr_emitter_lx (const LrEmitter *emitter,
               LrVec3           point_m,
               LrVec3           normal,
               double          *lux)
{
  LrVec3 way_m = lr_vec3_sub (point_m, emitter->at_m);
  double distance_m = lr_vec3_length (way_m), cosine, factor;
  LrVec3 corner_m[MAX_CORNERS];

  if (!is_known (emitter) || !lr_is_positive (distance_m))
    return false;
  if (emitter->shape == LR_EMITTER_BEAM)
    {
      LrVec3 entry_m;

      *lux = lr_beam_entry (emitter, point_m, &entry_m) ? emitter->parallel_lx * fmax (0.0, -lr_vec3_dot (emitter->axis, normal)) : 0.0;
      return true;
    }

  if (emitter->table != NULL || is_in_parts (emitter))
    {
      *lux = lr_parts_lx (emitter, point_m, normal);
      return true;
    }

  cosine = lr_vec3_dot (way_m, emitter->axis) / distance_m;
  if (cosine <= 0.0)
    {
      *lux = 0.0;
      return true;
    }
  if (emitter->shape == LR_EMITTER_POINT)
    {
      *lux = emitter->candela * lr_lobe_relative (&emitter->lobe, cosine) * fmax (0.0, -lr_vec3_dot (way_m, normal))
             / (distance_m * distance_m * distance_m);
      return true;
    }

  if (!lr_polygon_factor (corner_m, outline_of (emitter, corner_m), point_m, normal, &factor))
    return false;

  *lux = LR_PI * emitter->candela / area_of (emitter) * factor;
  return true;
}

/**
 * lr_emitter_axis_lx:
 * @emitter: a source
 * @distance_m: out from it on its axis [m], > 0
 * @lux: (out): illuminance of a face turned to it [lx]
 *
 * Returns: %FALSE, with @lux untouched, unless the source is known and the distance is in its domain
 */
bool
lr_emitter_axis_lx (const LrEmitter *emitter,
                    double           distance_m,
                    double          *lux)
{
  return lr_is_positive (distance_m)
         && lr_emitter_lx (emitter, lr_vec3_along (emitter->at_m, emitter->axis, distance_m), lr_vec3_scale (emitter->axis, -1.0), lux);
}

/**
 * lr_emitter_distance_m:
 * @emitter: a source
 * @lux: a level [lx], > 0
 * @distance_m: (out): where the axis has it [m]
 *
 * Each step goes by the distance law from the level where it is; the level falls all the way out, so the steps close in on it, soon
 * where the source is small against the distance.
 *
 * Returns: %FALSE, with @distance_m untouched, if the level is nowhere on the axis
 */
bool
lr_emitter_distance_m (const LrEmitter *emitter,
                       double           lux,
                       double          *distance_m)
{
  /* right before a face in parts one looks between them */
  double nearest_m = is_in_parts (emitter) ? NEAREST_OF_SIDE * fmax (emitter->width_m, emitter->height_m) : NEAREST_M;
  double at_m = 1.0, here_lx, nearest_lx;

  if (!lr_is_positive (lux) || !lr_emitter_axis_lx (emitter, nearest_m, &nearest_lx) || nearest_lx < lux)
    return false;

  for (int i = 0; i < MOST_STEPS; i++)
    {
      double ratio;

      if (!lr_emitter_axis_lx (emitter, at_m, &here_lx) || !lr_is_positive (here_lx))
        return false;

      ratio = sqrt (here_lx / lux);
      at_m *= ratio;
      if (fabs (ratio - 1.0) < CLOSE)
        break;
    }

  /* on the axis of a table the level need not fall all the way */
  if (!(at_m >= NEAREST_M && at_m <= FARTHEST_M) || !lr_emitter_axis_lx (emitter, at_m, &here_lx) || fabs (here_lx / lux - 1.0) > SAME_LEVEL)
    return false;

  *distance_m = at_m;
  return true;
}
