/* endurance.h - how much recording and running takes: bytes, cards, batteries
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Counts are of whole cards and batteries; what is kept in reserve is the caller's.
 */

#pragma once

#include <stdbool.h>

/* 10^9 bytes that a rate in 10^6 bits a second makes */
bool lr_recorded_gb  (double rate_mbit_s, double time_s, double *size_gb);
/* Cards of @card_gb, filled to a share, that hold it */
bool lr_cards_needed (double size_gb, double card_gb, double fill_share, int *n);
/* How long a battery runs something, of whose energy a share can be had */
bool lr_battery_s    (double battery_wh, double usable_share, double draw_w, double *time_s);
/* Batteries that run it so long and a share of that time more */
bool lr_batteries_needed (double draw_w, double time_s, double more_share, double battery_wh, double usable_share, int *n);
