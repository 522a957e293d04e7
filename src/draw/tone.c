/* tone.c - the few tones that a viewfinder picture is painted in
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A tone is a hue and a relative luminance, so that light and reflectance multiply as they do in a room; only the
 * last step makes sRGB of it (IEC 61966-2-1: luminance weights and transfer curve).
 */

#include "tone.h"

#include <math.h>

/* Linear light of luminance 1 */
static const LrColor hues[LR_N_HUES] = {
  [LR_HUE_WALL]  = { 1.07, 0.995, 0.83 },
  [LR_HUE_WOOD]  = { 1.20, 0.965, 0.76 },
  [LR_HUE_CLOTH] = { 0.72, 1.04, 1.44 },
  [LR_HUE_SKIN]  = { 1.42, 0.92, 0.58 },
  [LR_HUE_PLAIN] = { 1.02, 1.00, 0.94 },
  [LR_HUE_METAL] = { 0.91, 1.01, 1.17 },
  [LR_HUE_DAY]   = { 0.94, 1.01, 1.08 },
  [LR_HUE_LAMP]  = { 1.05, 1.00, 0.86 },
};

/* Light cloth and light skin are less coloured: from this luminance on a hue fades, at 1 by so much of itself */
static const struct { double from, by; } fading[LR_N_HUES] = {
  [LR_HUE_CLOTH] = { 0.10, 1.0 },
  [LR_HUE_SKIN]  = { 0.30, 0.50 },
};

static double
encode (double linear)
{
  double v = CLAMP (linear, 0.0, 1.0);

  return v <= 0.0031308 ? 12.92 * v : 1.055 * pow (v, 1.0 / 2.4) - 0.055;
}

/**
 * lr_tone:
 * @hue: whose
 * @luminance: relative luminance, 0 black to 1 white
 *
 * Source: IEC 61966-2-1 (sRGB) for the curve; the hues are our palette.
 *
 * Returns: the tone in sRGB
 */
LrColor
lr_tone (LrHue  hue,
         double luminance)
{
  const LrColor *h = &hues[hue];
  double fade = fading[hue].by * sqrt (CLAMP ((luminance - fading[hue].from) / (1.0 - fading[hue].from), 0.0, 1.0));

  return (LrColor) {
    encode ((h->r + fade * (1.0 - h->r)) * luminance),
    encode ((h->g + fade * (1.0 - h->g)) * luminance),
    encode ((h->b + fade * (1.0 - h->b)) * luminance),
  };
}

/**
 * lr_tone_mix:
 * @a: a tone
 * @b: another
 * @share_of_b: 0 to 1
 *
 * Returns: the tone between them, as a transparent layer of @b over @a would give
 */
LrColor
lr_tone_mix (LrColor a,
             LrColor b,
             double  share_of_b)
{
  double k = CLAMP (share_of_b, 0.0, 1.0);

  return (LrColor) { a.r + k * (b.r - a.r), a.g + k * (b.g - a.g), a.b + k * (b.b - a.b) };
}

static double
decode (double v)
{
  return v <= 0.04045 ? v / 12.92 : pow ((v + 0.055) / 1.055, 2.4);
}

/**
 * lr_tone_light:
 * @tone: a tone
 * @gain: how much more light falls on it, 1 for as much
 *
 * Source: IEC 61966-2-1 (sRGB).
 *
 * Returns: the tone in that light
 */
LrColor
lr_tone_light (LrColor tone,
               double  gain)
{
  return (LrColor) { encode (gain * decode (tone.r)), encode (gain * decode (tone.g)),
                     encode (gain * decode (tone.b)) };
}

/**
 * lr_tone_most_gain:
 * @tone: a tone
 *
 * Returns: how much more light makes it white; more than that cannot be told from it
 */
double
lr_tone_most_gain (LrColor tone)
{
  return 1.0 / fmax (1e-4, decode (fmin (tone.r, fmin (tone.g, tone.b))));
}
