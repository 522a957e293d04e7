/* room_modes.h - what a room's and a table's hard faces do to a voice
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <stdbool.h>

/* A standing wave of a box with as many half waves along each side */
bool lr_room_mode_hz  (const double sides_m[3], const int half_waves[3], double *frequency_hz);
/* Over it the modes lie so close that single ones are not heard */
bool lr_schroeder_hz  (double time_s, double volume_m3, double *frequency_hz);

/* A clap between two faces that look at each other */
typedef struct
{
  double period_s;
  double ring_s;   /* until it is 60 dB down */
} LrFlutter;

bool lr_flutter (double spacing_m, double absorption_a, double absorption_b, LrFlutter *flutter);

/* A sound and its one reflection, together */
typedef struct
{
  double delay_s;
  double notch_hz;  /* the first */
  double share;     /* of the reflection, as pressure, of the direct sound */
  double peak_db, notch_db;
} LrComb;

bool lr_comb (double direct_m, double reflected_m, double absorption, LrComb *comb);
