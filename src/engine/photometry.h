/* photometry.h - the intensities of a lamp, as its maker's file has them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Goniometer type C: the vertical angle from straight down, the horizontal one about the vertical, anticlockwise from above, in degrees
 * as in the files.
 */

#pragma once

#include "vec.h"

#include <stddef.h>

#define LR_PHOTOMETRY_MOST_ANGLES 10000
#define LR_PHOTOMETRY_MOST_VALUES 1000000

typedef enum
{
  LR_PHOTOMETRY_NO_TILT,      /* no line that begins with TILT=: not such a file */
  LR_PHOTOMETRY_ENDS,         /* in the middle of its numbers */
  LR_PHOTOMETRY_NOT_A_NUMBER,
  LR_PHOTOMETRY_COUNT,        /* how many angles or lamps: none, too many, or not whole */
  LR_PHOTOMETRY_TYPE,         /* goniometer of another type */
  LR_PHOTOMETRY_UNITS,        /* neither feet nor metres */
  LR_PHOTOMETRY_ANGLES,       /* do not rise, or leave the sphere */
  LR_PHOTOMETRY_PLANES,       /* neither go all round nor fit a symmetry */
  LR_PHOTOMETRY_LEFT_OVER,    /* more numbers than it says: decimal commas, or a wrong count */
  LR_PHOTOMETRY_VALUE,        /* negative, or too large to be one */
  LR_PHOTOMETRY_MEMORY,
} LrPhotometryReason;

typedef struct
{
  LrPhotometryReason reason;
  size_t             line;    /* from 1 */
} LrPhotometryError;

/* What was read with a doubt */
typedef enum
{
  LR_PHOTOMETRY_TILT_IGNORED  = 1 << 0, /* how the output changes when the lamp is tilted */
  LR_PHOTOMETRY_TEXT_AFTER    = 1 << 1, /* the numbers */
  LR_PHOTOMETRY_SETS_IGNORED  = 1 << 2, /* of lamps, all but the first */
  LR_PHOTOMETRY_IS_DARK       = 1 << 3, /* every intensity is 0 */
} LrPhotometryWarning;

typedef struct
{
  size_t  n_v, n_h;
  double *v_deg;                          /* from 0, straight down */
  double *h_deg;                          /* one: the same all round; to 90, to 180, from 90 to 270: mirrored; else all round */
  double *candela;                        /* of the first horizontal angle, then the next */
  double  length_m, width_m, height_m;    /* of what emits; < 0: round; 0: a point */
  double  lamp_lm;                        /* < 0: intensities are absolute */
  double  watts;
  bool    is_across;                      /* horizontal angle 0 is across the length (EULUMDAT), not along it (LM-63) */
  unsigned warnings;                      /* LrPhotometryWarning */
} LrPhotometry;

/* ANSI/IES LM-63, of 1986 to 2019 */
bool   lr_photometry_read_ies (const char *text, size_t length, LrPhotometry *photometry, LrPhotometryError *error);
/* EULUMDAT */
bool   lr_photometry_read_ldt (const char *text, size_t length, LrPhotometry *photometry, LrPhotometryError *error);
void   lr_photometry_clear    (LrPhotometry *photometry);

/* Sides of what emits, the one along the length first; a round one as a square of the same area. FALSE: a point, or it is not told */
bool   lr_photometry_size_m   (const LrPhotometry *photometry, double *length_m, double *width_m);
/* Horizontal angle of the file to the right on a lamp's face, for a lamp drawn upright or not; from there it goes on upwards */
double lr_photometry_turn_deg (const LrPhotometry *photometry, bool is_upright);
/* Whether the length lies to the right on it, and not up */
bool   lr_photometry_is_level (const LrPhotometry *photometry, bool is_upright);
double lr_photometry_candela  (const LrPhotometry *photometry, double v_deg, double h_deg);
double lr_photometry_flux_lm  (const LrPhotometry *photometry);
/* Full angle between the directions of so much of the intensity straight down, in the plane of a horizontal angle; FALSE: that is none */
bool   lr_photometry_spread_rad (const LrPhotometry *photometry, double share, double h_deg, double *spread_rad);
