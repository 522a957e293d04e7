/* photometry.c - intensity by direction, and flux, from measured values
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Between the measured directions the intensity goes evenly with either angle. Outside the vertical angles of the file there is none.
 */

#include "photometry.h"

#include <stdlib.h>

/**
 * lr_photometry_clear:
 * @photometry: what was read; empty then
 */
void
lr_photometry_clear (LrPhotometry *photometry)
{
  free (photometry->v_deg);
  free (photometry->h_deg);
  free (photometry->candela);
  *photometry = (LrPhotometry) { 0 };
}

/* The step of rising angles in which one is, and how far on in it; false: it is outside */
static bool
find_step (const double *angle_deg,
           size_t        n,
           double        at_deg,
           size_t       *step,
           double       *share)
{
  size_t low = 0, high = n - 1;

  if (!(at_deg >= angle_deg[0] && at_deg <= angle_deg[n - 1]))
    return false;

  while (high - low > 1)
    {
      size_t middle = (low + high) / 2;

      if (angle_deg[middle] <= at_deg)
        low = middle;
      else
        high = middle;
    }

  *step = low;
  *share = n > 1 ? (at_deg - angle_deg[low]) / (angle_deg[high] - angle_deg[low]) : 0.0;
  return true;
}

/* In the plane of a horizontal angle */
static double
candela_in_plane (const LrPhotometry *photometry,
                  size_t              plane,
                  double              v_deg)
{
  const double *candela = photometry->candela + plane * photometry->n_v;
  double share;
  size_t step;

  if (!find_step (photometry->v_deg, photometry->n_v, v_deg, &step, &share))
    return 0.0;

  return step + 1 < photometry->n_v ? candela[step] + share * (candela[step + 1] - candela[step]) : candela[step];
}

/* A horizontal angle where the file has it, by its symmetry */
static double
fold (const LrPhotometry *photometry,
      double              h_deg)
{
  double first = photometry->h_deg[0], last = photometry->h_deg[photometry->n_h - 1];

  h_deg = fmod (fmod (h_deg, 360.0) + 360.0, 360.0);
  if (first == 0.0 && last == 90.0)
    {
      h_deg = h_deg > 180.0 ? 360.0 - h_deg : h_deg;
      return h_deg > 90.0 ? 180.0 - h_deg : h_deg;
    }
  if (first == 0.0 && last == 180.0)
    return h_deg > 180.0 ? 360.0 - h_deg : h_deg;
  if (first == 90.0 && last == 270.0)
    return h_deg < 90.0 ? 180.0 - h_deg : h_deg > 270.0 ? 540.0 - h_deg : h_deg;

  return h_deg < first ? h_deg + 360.0 : h_deg;
}

/**
 * lr_photometry_candela:
 * @photometry: what was read
 * @v_deg: from straight down [degrees], 0 to 180
 * @h_deg: about the vertical [degrees]
 *
 * Returns: the intensity there [cd]
 */
double
lr_photometry_candela (const LrPhotometry *photometry,
                       double              v_deg,
                       double              h_deg)
{
  size_t n = photometry->n_h, step;
  double share, last;

  if (n == 0 || !isfinite (v_deg) || !isfinite (h_deg))
    return 0.0;
  if (n == 1)
    return candela_in_plane (photometry, 0, v_deg);

  h_deg = fold (photometry, h_deg);
  if (find_step (photometry->h_deg, n, h_deg, &step, &share))
    return candela_in_plane (photometry, step, v_deg) * (1.0 - share) + candela_in_plane (photometry, step + 1, v_deg) * share;

  /* between the last plane and the first, all round */
  last = photometry->h_deg[n - 1];
  share = (h_deg - last) / (photometry->h_deg[0] + 360.0 - last);
  return candela_in_plane (photometry, n - 1, v_deg) * (1.0 - share) + candela_in_plane (photometry, 0, v_deg) * share;
}

/* For each radian about the vertical: I goes evenly from a to b, whose integral with sin is in closed form */
static double
flux_of_plane (const LrPhotometry *photometry,
               size_t              plane)
{
  const double *candela = photometry->candela + plane * photometry->n_v;
  double sum = 0.0;

  for (size_t i = 0; i + 1 < photometry->n_v; i++)
    {
      double a = photometry->v_deg[i] * LR_DEG, b = photometry->v_deg[i + 1] * LR_DEG;

      sum += candela[i] * cos (a) - candela[i + 1] * cos (b) + (candela[i + 1] - candela[i]) / (b - a) * (sin (b) - sin (a));
    }

  return sum;
}

/**
 * lr_photometry_flux_lm:
 * @photometry: what was read
 *
 * Source: closed form of the intensities that go evenly between the angles.
 *
 * Returns: all of its light [lm]
 */
double
lr_photometry_flux_lm (const LrPhotometry *photometry)
{
  size_t n = photometry->n_h;
  double sum = 0.0, span_deg;

  if (n == 0)
    return 0.0;
  if (n == 1)
    return 2.0 * LR_PI * flux_of_plane (photometry, 0);

  span_deg = photometry->h_deg[n - 1] - photometry->h_deg[0];
  for (size_t i = 0; i + 1 < n; i++)
    sum += 0.5 * (flux_of_plane (photometry, i) + flux_of_plane (photometry, i + 1)) * (photometry->h_deg[i + 1] - photometry->h_deg[i]);

  /* what is mirrored stands for all of it; else the last step closes the round */
  if ((photometry->h_deg[0] == 0.0 && (span_deg == 90.0 || span_deg == 180.0)) || (photometry->h_deg[0] == 90.0 && span_deg == 180.0))
    return sum / span_deg * 2.0 * LR_PI;

  sum += 0.5 * (flux_of_plane (photometry, n - 1) + flux_of_plane (photometry, 0)) * (360.0 - span_deg);
  return sum * LR_DEG;
}
