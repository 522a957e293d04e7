/* sound_levels.h - levels of voices and noises in a room
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All levels of one sum in the same weighting: the 62 dB of a normal voice and its 59 dB(A) are the same voice.
 */

#pragma once

#include <stdbool.h>
#include <stddef.h>

#define LR_VOICE_DIRECTIVITY 2.0 /* on the talker's axis, over all round */

/* Of sounds that have nothing to do with each other; -HUGE_VAL for none */
double lr_level_sum_db (const double *levels_db, size_t n);
/* What a source gives off, from what a meter reads so far away from it: straight, or in a room that answers too */
bool lr_level_power_db      (double level_db, double distance_m, double directivity, double absorption_m2, double *power_db);
bool lr_level_free_power_db (double level_db, double distance_m, double directivity, double *power_db);
/* Straight from it; and what the room answers, everywhere alike */
bool lr_level_direct_db     (double power_db, double distance_m, double directivity, double *level_db);
bool lr_level_diffuse_db    (double power_db, double absorption_m2, double *level_db);
/* A talker's level off the way that the mouth points, against straight ahead: <= 0 */
double lr_voice_turned_db   (double off_mouth_rad);
