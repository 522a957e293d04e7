/* photometry.c - intensity by direction, and flux, from measured values
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Between the measured directions the intensity goes evenly with either angle. Outside the vertical angles of the file there is none.
 */

#include "photometry.h"

#include "domain.h"

#include <stdlib.h>

#define MOST_SIDE_M 20.0 /* more is in another unit than it says */

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

/**
 * lr_photometry_size_m:
 * @photometry: what was read
 * @length_m: (out): of what emits, along the length [m]; 0 with a width: a line across it
 * @width_m: (out): across it [m]
 *
 * What is round counts as a square of the same area. The height of what emits is left out.
 *
 * Source: ANSI/IESNA LM-63-2002: sizes below 0 are diameters; EULUMDAT: a width of 0 is one.
 *
 * Returns: %FALSE, with both untouched, if the file tells a point, or a size that no lamp has
 */
bool
lr_photometry_size_m (const LrPhotometry *photometry,
                      double             *length_m,
                      double             *width_m)
{
  double along_m = fabs (photometry->length_m), across_m = fabs (photometry->width_m), round = 0.5 * sqrt (LR_PI);

  if (!(fmax (along_m, across_m) > 0.0 && fmax (along_m, across_m) <= MOST_SIDE_M))
    return false;

  if (photometry->length_m < 0.0 || photometry->width_m < 0.0)
    {
      along_m = round * (along_m > 0.0 ? along_m : across_m);
      across_m = across_m > 0.0 ? round * across_m : along_m;
    }
  *length_m = along_m;
  *width_m = across_m;
  return true;
}

/**
 * lr_photometry_is_level:
 * @photometry: what was read
 * @is_upright: whether the lamp is drawn higher than wide
 *
 * The longer side of what emits lies along the longer side as drawn; a lamp drawn square has it to the right.
 *
 * Returns: whether the file's length lies to the right, and not up
 */
bool
lr_photometry_is_level (const LrPhotometry *photometry,
                        bool                is_upright)
{
  double length_m, width_m;
  bool is_long = !lr_photometry_size_m (photometry, &length_m, &width_m) || length_m >= width_m;

  return is_long != is_upright;
}

/**
 * lr_photometry_turn_deg:
 * @photometry: what was read
 * @is_upright: whether the lamp is drawn higher than wide
 *
 * Straight down of the file is where the lamp points. Horizontal angles are anticlockwise from above, so seen from behind the lamp, with
 * its right and up as they are from there: they go on from the right upwards. 0 is along the length in LM-63, across it in EULUMDAT. Which of its
 * two ends the length begins at no file tells: to the right, or up.
 *
 * Source: ANSI/IESNA LM-63-2002 (type C); for EULUMDAT common practice, no source.
 *
 * Returns: the file's horizontal angle to the right [degrees]
 */
double
lr_photometry_turn_deg (const LrPhotometry *photometry,
                        bool                is_upright)
{
  return (lr_photometry_is_level (photometry, is_upright) ? 0.0 : -90.0) - (photometry->is_across ? 90.0 : 0.0);
}

/* From straight down to where the intensity has fallen to @least, in the half plane of a horizontal angle */
static double
edge_deg (const LrPhotometry *photometry,
          double              least,
          double              h_deg)
{
  double before = lr_photometry_candela (photometry, photometry->v_deg[0], h_deg);

  for (size_t i = 1; i < photometry->n_v; i++)
    {
      double low_deg = photometry->v_deg[i - 1], high_deg = photometry->v_deg[i];
      double here = lr_photometry_candela (photometry, high_deg, h_deg);

      if (here < least)
        return before > least ? low_deg + (high_deg - low_deg) * (before - least) / (before - here) : low_deg;
      before = here;
    }
  return photometry->v_deg[photometry->n_v - 1];
}

/**
 * lr_photometry_spread_rad:
 * @photometry: what was read
 * @share: 0.5: the beam; 0.1: the field
 * @h_deg: horizontal angle of the plane [degrees], which goes on at the other side
 * @spread_rad: (out): full angle [rad], to 2 pi
 *
 * The reference is the intensity straight down (CIE), not the largest one (IES), as it is for a lobe. Where it rises again further out
 * does not count.
 *
 * Returns: %FALSE, with @spread_rad untouched, if there is no intensity straight down
 */
bool
lr_photometry_spread_rad (const LrPhotometry *photometry,
                          double              share,
                          double              h_deg,
                          double             *spread_rad)
{
  double least = share * lr_photometry_candela (photometry, 0.0, 0.0);

  if (!(least > 0.0))
    return false;

  *spread_rad = (edge_deg (photometry, least, h_deg) + edge_deg (photometry, least, h_deg + 180.0)) * LR_DEG;
  return true;
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
