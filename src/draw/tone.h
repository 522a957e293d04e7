/* tone.h - the few tones that a viewfinder picture is painted in
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "theme.h"

typedef enum
{
  LR_HUE_WALL,  /* warm light grey */
  LR_HUE_WOOD,  /* warm mid grey */
  LR_HUE_CLOTH, /* blue grey */
  LR_HUE_SKIN,
  LR_HUE_PLAIN, /* paper, hair, linen */
  LR_HUE_METAL, /* equipment */
  LR_HUE_DAY,   /* daylight through a window */
  LR_HUE_LAMP,  /* what emits */
  LR_N_HUES
} LrHue;

LrColor lr_tone     (LrHue hue, double luminance);
LrColor lr_tone_mix (LrColor a, LrColor b, double share_of_b);
LrColor lr_tone_light (LrColor tone, double gain);
/* From which on it is white */
double  lr_tone_most_gain (LrColor tone);
