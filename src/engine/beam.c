/* beam.c - how a lamp's intensity falls off from its axis
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One angle makes it a power of the cosine, `I cos^n`, with n = ln 0.5 / ln cos (beam / 2). Two make it
 * `I 2^-(2 a / beam)^p`, with p = ln log2 10 / ln (field / beam), which has half the intensity at the edge of the beam and a tenth at
 * that of the field: a Gaussian for a ratio of 1.823, flatter and sharper for less.
 */

#include "beam.h"

#include "domain.h"

#define STEPS 400 /* of Simpson's rule over the front: within 1e-6 for beams of 5 degrees and more */
#define LEAST_RATIO 1.02 /* of field to beam: a sharper edge than any lamp has */
#define TENTH_IN_STOPS 3.321928094887362 /* log2 10 */

/**
 * lr_beam_init:
 * @beam: (out): a beam
 * @beam_rad: full angle to half the intensity on the axis [rad], in (0, pi)
 * @field_rad: full angle to a tenth [rad], over 1.02 of the other; 0: not known
 *
 * Source: closed form; the angles' definitions are CIE's (International Lighting Vocabulary).
 *
 * Returns: %FALSE, with @beam untouched, unless the angles are in their domain
 */
bool
lr_beam_init (LrBeam *beam,
              double  beam_rad,
              double  field_rad)
{
  if (!lr_is_positive (beam_rad) || beam_rad >= LR_PI || !lr_is_at_least_zero (field_rad)
      || (field_rad > 0.0 && field_rad < LEAST_RATIO * beam_rad))
    return false;

  if (field_rad > 0.0)
    *beam = (LrBeam) { .beam_rad = beam_rad, .sharpness = log (TENTH_IN_STOPS) / log (field_rad / beam_rad) };
  else
    *beam = (LrBeam) { .lobe = log (0.5) / log (cos (0.5 * beam_rad)) };
  return true;
}

/**
 * lr_beam_relative:
 * @beam: a beam
 * @cosine: of the angle off the axis
 *
 * Returns: the intensity there, 1 on the axis
 */
double
lr_beam_relative (const LrBeam *beam,
                  double        cosine)
{
  if (!(cosine > 0.0))
    return 0.0;
  if (beam->beam_rad > 0.0)
    return exp2 (-pow (2.0 * acos (fmin (cosine, 1.0)) / beam->beam_rad, beam->sharpness));

  return beam->lobe == 1.0 ? cosine : pow (cosine, beam->lobe);
}

/**
 * lr_beam_sr:
 * @beam: a beam
 *
 * Source: closed form for a power of the cosine, `2 pi / (n + 1)`; else Simpson's rule over the front.
 *
 * Returns: its flux by its intensity on the axis [sr]
 */
double
lr_beam_sr (const LrBeam *beam)
{
  double step = 0.5 * LR_PI / STEPS, sum = lr_beam_relative (beam, 1e-15); /* at the side; on the axis the sine is 0 */

  if (!(beam->beam_rad > 0.0))
    return 2.0 * LR_PI / (beam->lobe + 1.0);

  for (int i = 1; i < STEPS; i++)
    sum += (i % 2 == 1 ? 4.0 : 2.0) * lr_beam_relative (beam, cos (i * step)) * sin (i * step);
  return 2.0 * LR_PI * step / 3.0 * sum;
}

/**
 * lr_beam_field_rad:
 * @beam: a beam
 *
 * Returns: the full angle between the directions of a tenth of the intensity [rad]
 */
double
lr_beam_field_rad (const LrBeam *beam)
{
  if (beam->beam_rad > 0.0)
    return beam->beam_rad * pow (TENTH_IN_STOPS, 1.0 / beam->sharpness);

  return 2.0 * acos (pow (0.1, 1.0 / beam->lobe));
}
