/* radiosity.c - light that matte surfaces give back to each other
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * B_i = rho_i E_i, E_i = E0_i + sum over j of F_ij B_j (Goral, Torrance, Greenberg and Battaile, Modeling the interaction of light
 * between diffuse surfaces, 1984, from memory; Siegel and Howell, Thermal Radiation Heat Transfer). What two patches exchange,
 * A_i F_ij, is the same both ways, so only that is kept.
 *
 * Far apart, patches are points of their area. Nearer, the factor from the middle of one to the whole of the other is exact, by
 * Lambert's formula; near each other the mean from some points of either is taken; always both ways round. In a closed room every row of factors
 * adds up to one; what is left to that is scaled away so that no light comes or goes by it.
 */

#include "radiosity.h"

#include "domain.h"
#include "light.h"

/* Between the middles, in sums of the radii */
#define NEAR_RADII 2.0
#define FAR_RADII 6.0
#define N_POINTS 3          /* across and down a patch that is near */
#define N_CLOSING 40
#define MOST_SCALE 10.0
#define CLOSE 1e-6          /* of a row's sum */
#define SETTLED 1e-7        /* of the brightest patch, from round to round */
#define MOST_ROUNDS 2000

/* Gauss-Legendre on 0..1 */
static const double gauss_at[N_POINTS] = { 0.11270166537925831, 0.5, 0.88729833462074169 };
static const double gauss_weight[N_POINTS] = { 5.0 / 18.0, 8.0 / 18.0, 5.0 / 18.0 };

/**
 * lr_patch_init:
 * @patch: (out caller-allocates): a patch
 * @corner_m: (array length=n): its corners, flat and convex, anticlockwise seen from its front [m]
 * @n: how many, 3 to %LR_PATCH_CORNERS
 * @reflectance: 0 to 1
 *
 * Returns: %FALSE, with @patch untouched, unless there are so many corners, they span an area and the reflectance is in its domain
 */
bool
lr_patch_init (LrPatch      *patch,
               const LrVec3 *corner_m,
               size_t        n,
               double        reflectance)
{
  LrVec3 sum = { 0.0, 0.0, 0.0 }, middle = { 0.0, 0.0, 0.0 };
  LrPatch p = { .n = n, .reflectance = reflectance };
  double twice;

  if (n < 3 || n > LR_PATCH_CORNERS || !lr_is_at_least_zero (reflectance) || reflectance > 1.0)
    return false;

  for (size_t i = 1; i + 1 < n; i++)
    sum = lr_vec3_along (sum, lr_vec3_cross (lr_vec3_sub (corner_m[i], corner_m[0]), lr_vec3_sub (corner_m[i + 1], corner_m[0])), 1.0);
  twice = lr_vec3_length (sum);
  if (!lr_is_positive (twice))
    return false;

  p.normal = lr_vec3_scale (sum, 1.0 / twice);
  p.area_m2 = 0.5 * twice;
  for (size_t i = 1; i + 1 < n; i++)
    {
      LrVec3 a = lr_vec3_sub (corner_m[i], corner_m[0]), b = lr_vec3_sub (corner_m[i + 1], corner_m[0]);
      double share = lr_vec3_dot (lr_vec3_cross (a, b), p.normal) / twice;

      middle = lr_vec3_along (middle, lr_vec3_along (a, b, 1.0), share / 3.0);
    }
  p.middle_m = lr_vec3_along (corner_m[0], middle, 1.0);
  for (size_t i = 0; i < n; i++)
    {
      p.corner_m[i] = corner_m[i];
      p.radius_m = fmax (p.radius_m, lr_vec3_length (lr_vec3_sub (corner_m[i], p.middle_m)));
    }
  *patch = p;
  return true;
}

/* A point of the patch: of a quadrilateral across and down, of others on the way from the middle to a corner */
static LrVec3
point_of (const LrPatch *patch,
          size_t         i,
          size_t         n_points,
          double        *weight)
{
  double u, v;
  LrVec3 low_m, high_m;

  if (patch->n != 4)
    {
      *weight = 1.0 / (double) n_points;
      return lr_vec3_along (patch->middle_m, lr_vec3_sub (patch->corner_m[i], patch->middle_m), 0.5);
    }

  u = gauss_at[i % N_POINTS];
  v = gauss_at[i / N_POINTS];
  *weight = gauss_weight[i % N_POINTS] * gauss_weight[i / N_POINTS];
  low_m = lr_vec3_along (patch->corner_m[0], lr_vec3_sub (patch->corner_m[1], patch->corner_m[0]), u);
  high_m = lr_vec3_along (patch->corner_m[3], lr_vec3_sub (patch->corner_m[2], patch->corner_m[3]), u);
  return lr_vec3_along (low_m, lr_vec3_sub (high_m, low_m), v);
}

/* From a point of one patch to the other; the part that is behind it gives nothing, and is cut off by lr_polygon_factor() */
static double
factor_to (const LrPatch *to,
           LrVec3         point_m,
           LrVec3         normal)
{
  double factor;

  return lr_vec3_dot (lr_vec3_sub (point_m, to->middle_m), to->normal) > 0.0
         && lr_polygon_factor (to->corner_m, to->n, point_m, normal, &factor) ? factor : 0.0;
}

static double
near_exchange_m2 (const LrPatch *from,
                  const LrPatch *to)
{
  size_t n_points = from->n == 4 ? (size_t) N_POINTS * N_POINTS : from->n;
  double sum = 0.0;

  for (size_t i = 0; i < n_points; i++)
    {
      double weight;
      LrVec3 point_m = point_of (from, i, n_points, &weight);

      sum += weight * factor_to (to, point_m, from->normal);
    }
  return sum * from->area_m2;
}

/* Whether any of one is before the other's face */
static bool
is_before (const LrPatch *patch,
           const LrPatch *of)
{
  for (size_t i = 0; i < patch->n; i++)
    if (lr_vec3_dot (lr_vec3_sub (patch->corner_m[i], of->middle_m), of->normal) > 1e-6 * of->radius_m)
      return true;
  return false;
}

static double
far_exchange_m2 (const LrPatch *a,
                 const LrPatch *b,
                 LrVec3         way_m)
{
  double square_m2 = lr_vec3_dot (way_m, way_m);
  double cos_a = lr_vec3_dot (way_m, a->normal), cos_b = -lr_vec3_dot (way_m, b->normal);

  return cos_a > 0.0 && cos_b > 0.0 ? cos_a * cos_b * a->area_m2 * b->area_m2 / (LR_PI * square_m2 * square_m2) : 0.0;
}

static double
exchange_m2 (const LrPatch *a,
             const LrPatch *b)
{
  LrVec3 way_m = lr_vec3_sub (b->middle_m, a->middle_m);
  double square_m2 = lr_vec3_dot (way_m, way_m), radii_m = a->radius_m + b->radius_m;

  if (square_m2 > FAR_RADII * FAR_RADII * radii_m * radii_m)
    return far_exchange_m2 (a, b, way_m);
  if (!is_before (a, b) || !is_before (b, a))
    return 0.0;
  if (square_m2 > NEAR_RADII * NEAR_RADII * radii_m * radii_m)
    return 0.5 * (a->area_m2 * factor_to (b, a->middle_m, a->normal) + b->area_m2 * factor_to (a, b->middle_m, b->normal));
  return 0.5 * (near_exchange_m2 (a, b) + near_exchange_m2 (b, a));
}

/**
 * lr_exchange_rows:
 * @patch: (array length=n): all that light falls on
 * @n: how many
 * @from: the first row
 * @step: every so many rows, so that others can do those between
 * @is_clear: (nullable): whether two places see each other
 * @data: for @is_clear
 * @exchange: (out caller-allocates): of n times n; the rows from their diagonals on
 *
 * Source: see the head of the file.
 */
void
lr_exchange_rows (const LrPatch *patch,
                  size_t         n,
                  size_t         from,
                  size_t         step,
                  LrClearFunc    is_clear,
                  const void    *data,
                  float         *exchange)
{
  for (size_t i = from; i < n; i += step)
    {
      exchange[i * n + i] = 0.0f;
      for (size_t j = i + 1; j < n; j++)
        {
          double m2 = exchange_m2 (&patch[i], &patch[j]);

          if (m2 > 0.0 && is_clear != NULL && !is_clear (patch[i].middle_m, patch[j].middle_m, data))
            m2 = 0.0;
          exchange[i * n + j] = (float) m2;
        }
    }
}

/* How far the rows are from adding up; @scale goes a step towards it */
static double
improve_scale (const LrPatch *patch,
               size_t         n,
               const float   *exchange,
               double        *scale)
{
  double worst = 0.0;

  for (size_t i = 0; i < n; i++)
    {
      const float *row = &exchange[i * n];
      double sum = 0.0;

      for (size_t j = 0; j < n; j++)
        sum += (double) row[j] * scale[j];
      if (!(sum > 0.0))
        continue;

      worst = fmax (worst, fabs (patch[i].area_m2 / (sum * scale[i]) - 1.0));
      scale[i] = fmin (MOST_SCALE, fmax (1.0 / MOST_SCALE, sqrt (scale[i] * patch[i].area_m2 / sum)));
    }
  return worst;
}

/**
 * lr_exchange_close:
 * @patch: (array length=n): all that light falls on, with nothing open between
 * @n: how many
 * @exchange: (inout): of n times n, as lr_exchange_rows() leaves it; then whole, each row adding up to its patch's area
 * @scale: (array length=n): room to work in
 *
 * Rows and columns are scaled alike, again and again: what is exchanged stays the same both ways. Rows of nothing stay so, and those of
 * next to nothing, of a patch in a gap, do not come to their area: what they lack is lost.
 *
 * Source: symmetric scaling to given row sums (Sinkhorn and Knopp, 1967, from memory).
 */
void
lr_exchange_close (const LrPatch *patch,
                   size_t         n,
                   float         *exchange,
                   double        *scale)
{
  for (size_t i = 0; i < n; i++)
    {
      scale[i] = 1.0;
      for (size_t j = i + 1; j < n; j++)
        exchange[j * n + i] = exchange[i * n + j];
    }

  for (int round = 0; round < N_CLOSING; round++)
    if (improve_scale (patch, n, exchange, scale) < CLOSE)
      break;

  for (size_t i = 0; i < n; i++)
    for (size_t j = 0; j < n; j++)
      exchange[i * n + j] *= (float) (scale[i] * scale[j]);
}

/**
 * lr_radiosity_solve:
 * @patch: (array length=n): all that light falls on
 * @n: how many
 * @exchange: of n times n, whole
 * @direct_lx: (array length=n): what falls on each straight from the lamps [lx]
 * @lux: (out caller-allocates) (array length=n): what falls on each in all [lx]
 *
 * In a closed room the sum of A (1 - rho) E is the flux that entered.
 *
 * Source: the head of the file; Gauss and Seidel's method.
 *
 * Returns: how many rounds it took; 0: it did not settle
 */
size_t
lr_radiosity_solve (const LrPatch *patch,
                    size_t         n,
                    const float   *exchange,
                    const double  *direct_lx,
                    double        *lux)
{
  for (size_t i = 0; i < n; i++)
    lux[i] = direct_lx[i];

  for (size_t round = 1; round <= MOST_ROUNDS; round++)
    {
      double change = 0.0, most = 0.0;

      for (size_t i = 0; i < n; i++)
        {
          const float *row = &exchange[i * n];
          double sum = 0.0, next;

          for (size_t j = 0; j < n; j++)
            sum += (double) row[j] * patch[j].reflectance * lux[j];
          next = direct_lx[i] + sum / patch[i].area_m2;
          if (!isfinite (next))
            return 0;
          change = fmax (change, fabs (next - lux[i]));
          most = fmax (most, fabs (next));
          lux[i] = next;
        }
      if (change <= SETTLED * most)
        return round;
    }
  return 0;
}

/**
 * lr_patches_lx:
 * @patch: (array length=n): all that gives light back
 * @n: how many
 * @lux: (array length=n): what falls on each [lx]
 * @point_m: a small face [m]
 * @normal: of it, of length 1
 * @is_clear: (nullable): whether two places see each other
 * @data: for @is_clear
 *
 * Source: lr_polygon_factor().
 *
 * Returns: what the patches give it [lx]
 */
double
lr_patches_lx (const LrPatch *patch,
               size_t         n,
               const double  *lux,
               LrVec3         point_m,
               LrVec3         normal,
               LrClearFunc    is_clear,
               const void    *data)
{
  double sum = 0.0;

  for (size_t i = 0; i < n; i++)
    {
      double given = patch[i].reflectance * lux[i], factor;

      if (given > 0.0 && lr_vec3_dot (lr_vec3_sub (point_m, patch[i].middle_m), patch[i].normal) > 0.0
          && lr_polygon_factor (patch[i].corner_m, patch[i].n, point_m, normal, &factor) && factor > 0.0
          && (is_clear == NULL || is_clear (point_m, patch[i].middle_m, data)))
        sum += given * factor;
    }
  return sum;
}
