/* pattern.h - how a microphone favours its axis
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <stdbool.h>

#define LR_OMNI 1.0
#define LR_SUBCARDIOID 0.7
#define LR_CARDIOID 0.5
#define LR_SUPERCARDIOID 0.366 /* (sqrt 3 - 1) / 2 */
#define LR_HYPERCARDIOID 0.25
#define LR_FIGURE_EIGHT 0.0

typedef struct
{
  double omni_share; /* first order: share + (1 - share) cos */
  double tube_m;     /* acoustic length of an interference tube before it; 0: none */
} LrPattern;

/* Level of a source off the axis against one on it; -HUGE_VAL where it is deaf */
bool lr_pattern_level_db      (const LrPattern *pattern, double off_axis_rad, double frequency_hz, double *level_db);
/* Share of sound from everywhere that it takes in, against an omni: 1 / directivity */
bool lr_pattern_efficiency    (const LrPattern *pattern, double frequency_hz, double *efficiency);
/* How much less of sound from everywhere, >= 0; so many times as far away it hears a source like an omni does */
bool lr_pattern_directivity   (const LrPattern *pattern, double frequency_hz, double *index_db, double *distance_factor);
/* Where it is deaf; FALSE: nowhere */
bool lr_pattern_null_rad      (double omni_share, double *null_rad);
