/* radiosity_each.c - what several lamps give, each alone, by one exchange of light
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Light adds up: what several lamps give is the sum of what each gives alone, and a lamp that is dimmed to a half gives half of all
 * that it gives, bounces too. The lamps are solved for side by side, so that the exchange is gone through once a round for all.
 */

#include "radiosity.h"

#include "light.h"

#define SETTLED 1e-7 /* of the brightest, from round to round */
#define MOST_ROUNDS 2000

/* What comes to a patch from all others, for each lamp */
static void
gather (const LrPatch *patch,
        size_t         n,
        const float   *row,
        size_t         n_lamps,
        const double  *lux,
        double        *sum)
{
  for (size_t k = 0; k < n_lamps; k++)
    sum[k] = 0.0;
  for (size_t j = 0; j < n; j++)
    {
      const double *from = &lux[j * n_lamps];
      double weight = (double) row[j] * patch[j].reflectance;

      if (weight > 0.0)
        for (size_t k = 0; k < n_lamps; k++)
          sum[k] += weight * from[k];
    }
}

/**
 * lr_radiosity_solve_each:
 * @patch: (array length=n): all that light falls on
 * @n: how many
 * @exchange: of n times n, whole
 * @n_lamps: how many lamps
 * @direct_lx: (array): what falls on each patch straight from each lamp, lamp by lamp for the first patch, then for the next [lx]
 * @sum: (out caller-allocates) (array length=n_lamps): room to work in
 * @lux: (out caller-allocates) (array): what falls on each in all of each lamp alone, in the same order [lx]
 *
 * Source: lr_radiosity_solve().
 *
 * Returns: how many rounds it took; 0: it did not settle
 */
size_t
lr_radiosity_solve_each (const LrPatch *patch,
                         size_t         n,
                         const float   *exchange,
                         size_t         n_lamps,
                         const double  *direct_lx,
                         double        *sum,
                         double        *lux)
{
  for (size_t i = 0; i < n * n_lamps; i++)
    lux[i] = direct_lx[i];

  for (size_t round = 1; round <= MOST_ROUNDS; round++)
    {
      double change = 0.0, most = 0.0;

      for (size_t i = 0; i < n; i++)
        {
          gather (patch, n, &exchange[i * n], n_lamps, lux, sum);
          for (size_t k = 0; k < n_lamps; k++)
            {
              double next = direct_lx[i * n_lamps + k] + sum[k] / patch[i].area_m2;

              if (!isfinite (next))
                return 0;
              change = fmax (change, fabs (next - lux[i * n_lamps + k]));
              most = fmax (most, fabs (next));
              lux[i * n_lamps + k] = next;
            }
        }
      if (change <= SETTLED * most)
        return round;
    }
  return 0;
}

/**
 * lr_patches_weigh:
 * @patch: (array length=n): all that gives light back
 * @n: how many
 * @point_m: a small face [m]
 * @normal: of it, of length 1
 * @is_clear: (nullable): whether two places see each other
 * @data: for @is_clear
 * @weight: (out caller-allocates) (array length=n): what the face gets of each patch, as a share of the light that falls on the patch
 *
 * With them lr_patches_lx() is a sum of products, for as many lights as there are.
 *
 * Source: lr_polygon_factor().
 */
void
lr_patches_weigh (const LrPatch *patch,
                  size_t         n,
                  LrVec3         point_m,
                  LrVec3         normal,
                  LrClearFunc    is_clear,
                  const void    *data,
                  double        *weight)
{
  for (size_t i = 0; i < n; i++)
    {
      double factor;

      weight[i] = 0.0;
      if (patch[i].reflectance > 0.0 && lr_vec3_dot (lr_vec3_sub (point_m, patch[i].middle_m), patch[i].normal) > 0.0
          && lr_polygon_factor (patch[i].corner_m, patch[i].n, point_m, normal, &factor) && factor > 0.0
          && (is_clear == NULL || is_clear (point_m, patch[i].middle_m, data)))
        weight[i] = patch[i].reflectance * factor;
    }
}
