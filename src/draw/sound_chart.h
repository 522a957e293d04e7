/* sound_chart.h - what a microphone hears of voice, room and noises, on a scale of decibels
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "sound.h"
#include "theme.h"

#define LR_SOUND_CHART_MAX_ROWS 8

typedef enum { LR_SOUND_ROW_VOICE, LR_SOUND_ROW_ROOM, LR_SOUND_ROW_NOISE, LR_SOUND_ROW_REST } LrSoundRowKind;

typedef struct
{
  LrSoundRowKind kind;
  char           title[48];  /* of a noise; "" for the others */
  double         level_db;
  double         win_db;     /* of a noise that can be switched off; NAN: it cannot, or it is none */
} LrSoundRow;

typedef struct
{
  LrSoundRow rows[LR_SOUND_CHART_MAX_ROWS];
  guint      n, n_more;      /* noises that are left out: the faintest */
  double     wanted_db;      /* all noise together should be under this */
} LrSoundChart;

/* FALSE: nobody speaks into it, or there is no room */
gboolean lr_sound_chart_read   (LrSoundChart *chart, const LrStudy *study, const char *microphone);
double   lr_sound_chart_height (const LrTheme *theme, const LrSoundChart *chart);
/* With its upper left corner at 0, 0 */
void     lr_sound_chart_draw   (cairo_t *cr, const LrTheme *theme, const LrSoundChart *chart, double width);
/* "Voice 58 dB, its room 54 dB, fridge 34 dB: off, it wins 10.6 dB, …"; (transfer full) */
char    *lr_sound_chart_words  (const LrSoundChart *chart);
