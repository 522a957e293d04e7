/* summary_sound.h - what is heard, in a few lines: for the Details
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "sound.h"
#include "units.h"

/* All (transfer full), "" when nothing is known; several lines */
char *lr_microphone_sound_summary (const LrStudy *study, const LrPlaced *microphone, LrUnits units);
char *lr_noise_sound_summary      (const LrStudy *study, const LrPlaced *noise);
char *lr_room_voice_summary       (const LrStudy *study); /* how well the subject is heard at best */
char *lr_room_sound_summary       (const LrStudy *study, LrUnits units); /* how the room answers */
