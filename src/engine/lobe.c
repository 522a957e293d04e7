/* lobe.c - how a lamp's intensity falls off from its axis
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One angle makes it a power of the cosine, `I cos^n`, with n = ln 0.5 / ln cos (beam / 2). Two make it
 * `I 2^-(2 a / beam)^p`, with p = ln log2 10 / ln (field / beam), which has half the intensity at the edge of the beam and a tenth at
 * that of the field: a Gaussian for a ratio of 1.823, flatter and sharper for less.
 */

#include "lobe.h"

#include "domain.h"

#define STEPS 400 /* of Simpson's rule over the front: within 1e-6 for beams of 5 degrees and more */
#define LEAST_RATIO 1.02 /* of field to beam: a sharper edge than any lamp has */
#define TENTH_IN_STOPS 3.321928094887362 /* log2 10 */

/**
 * lr_lobe_init:
 * @lobe: (out): a lobe
 * @beam_rad: full angle to half the intensity on the axis [rad], in (0, pi)
 * @field_rad: full angle to a tenth [rad], over 1.02 of the other; 0: not known
 *
 * Source: closed form; the angles' definitions are CIE's (International Lighting Vocabulary).
 *
 * Returns: %FALSE, with @lobe untouched, unless the angles are in their domain
 */
bool
lr_lobe_init (LrLobe *lobe,
              double  beam_rad,
              double  field_rad)
{
  if (!lr_is_positive (beam_rad) || beam_rad >= LR_PI || !lr_is_at_least_zero (field_rad)
      || (field_rad > 0.0 && field_rad < LEAST_RATIO * beam_rad))
    return false;

  if (field_rad > 0.0)
    *lobe = (LrLobe) { .beam_rad = beam_rad, .sharpness = log (TENTH_IN_STOPS) / log (field_rad / beam_rad) };
  else
    *lobe = (LrLobe) { .power = log (0.5) / log (cos (0.5 * beam_rad)) };
  return true;
}

/**
 * lr_lobe_relative:
 * @lobe: a lobe
 * @cosine: of the angle off the axis
 *
 * Returns: the intensity there, 1 on the axis
 */
double
lr_lobe_relative (const LrLobe *lobe,
                  double        cosine)
{
  if (!(cosine > 0.0))
    return 0.0;
  if (lobe->beam_rad > 0.0)
    return exp2 (-pow (2.0 * acos (fmin (cosine, 1.0)) / lobe->beam_rad, lobe->sharpness));

  return lobe->power == 1.0 ? cosine : pow (cosine, lobe->power);
}

/**
 * lr_lobe_sr:
 * @lobe: a lobe
 *
 * Source: closed form for a power of the cosine, `2 pi / (n + 1)`; else Simpson's rule over the front.
 *
 * Returns: its flux by its intensity on the axis [sr]
 */
double
lr_lobe_sr (const LrLobe *lobe)
{
  double step = 0.5 * LR_PI / STEPS, sum = lr_lobe_relative (lobe, 1e-15); /* at the side; on the axis the sine is 0 */

  if (!(lobe->beam_rad > 0.0))
    return 2.0 * LR_PI / (lobe->power + 1.0);

  for (int i = 1; i < STEPS; i++)
    sum += (i % 2 == 1 ? 4.0 : 2.0) * lr_lobe_relative (lobe, cos (i * step)) * sin (i * step);
  return 2.0 * LR_PI * step / 3.0 * sum;
}

/**
 * lr_lobe_beam_rad:
 * @lobe: a lobe
 *
 * Returns: the full angle between the directions of half of the intensity [rad]
 */
double
lr_lobe_beam_rad (const LrLobe *lobe)
{
  return lobe->beam_rad > 0.0 ? lobe->beam_rad : 2.0 * acos (pow (0.5, 1.0 / fmax (lobe->power, 1e-9)));
}

/**
 * lr_lobe_is_matte:
 * @lobe: a lobe
 *
 * Returns: whether the intensity goes with the cosine, as that of a matte face does
 */
bool
lr_lobe_is_matte (const LrLobe *lobe)
{
  return !(lobe->beam_rad > 0.0) && fabs (lobe->power - 1.0) < 1e-9;
}

/**
 * lr_lobe_field_rad:
 * @lobe: a lobe
 *
 * Returns: the full angle between the directions of a tenth of the intensity [rad]
 */
double
lr_lobe_field_rad (const LrLobe *lobe)
{
  if (lobe->beam_rad > 0.0)
    return lobe->beam_rad * pow (TENTH_IN_STOPS, 1.0 / lobe->sharpness);

  return 2.0 * acos (pow (0.1, 1.0 / lobe->power));
}
