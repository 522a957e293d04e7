/* sound_parts.h - the steps of the sound of a study
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "sound.h"

void lr_sound_read_room       (const LrStudy *study, LrRoomSound *room);       /* sound_room.c: of a room with corners */
/* sound_comb.c: the face that throws most of the voice back; FALSE: none does */
gboolean lr_sound_read_comb   (const LrStudy *study, const LrMicrophoneSound *microphone, LrCombReading *comb);
/* sound_microphones.c */
void lr_sound_read_microphones (const LrStudy *study, LrSound *sound);
double lr_sound_noise_db      (const LrRoomSound *room, const LrMicrophoneSound *microphone, const LrPlaced *noise);
double lr_sound_pattern_db    (const LrMicrophoneSound *microphone, LrVec3 from_m, double frequency_hz);

void lr_sound_free            (LrSound *sound);

#define LR_SOUND_MID(bands) (0.5 * ((bands)[2] + (bands)[3])) /* of octaves from 125 Hz */
