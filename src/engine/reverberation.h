/* reverberation.h - how long a room rings, and how far a voice carries over it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Statistical: right for spread absorption and mixed sound. Small furnished rooms keep to it within some 20 % (common practice, no
 * source).
 */

#pragma once

#include <stdbool.h>

#define LR_SOUND_SPEED_M_S 343.2 /* in air at 20 °C */

/* What the air itself takes [dB a metre] at standard pressure; humidity 0 .. 1 */
bool lr_air_loss_db_m (double frequency_hz, double celsius, double humidity_share, double *loss_db_m);

/* @surface_m2: of all that bounds the room; @surfaces_m2: of it, as absorption; @objects_m2: absorption of people and things;
 * @air_db_m: what the air takes */
bool lr_reverberation_sabine_s (double volume_m3, double absorption_m2, double air_db_m, double *time_s);
bool lr_reverberation_eyring_s (double volume_m3, double surface_m2, double surfaces_m2, double objects_m2, double air_db_m,
                                double *time_s);
/* The absorption that makes a room ring so long, the air's included */
bool lr_reverberation_area_m2  (double volume_m3, double time_s, double *absorption_m2);

/* Where a source, @directivity times as strong on its axis as all round, is as loud as the room's answer to it */
bool lr_critical_distance_m (double directivity, double absorption_m2, double *distance_m);
