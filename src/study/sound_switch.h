/* sound_switch.h - what switching noises off, or hanging blankets, would win
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "sound.h"

/* (transfer full): by index of its noises, what to switch off so that the voice is @wanted_db over the rest: as few as will do; all that win
 * something if they will not */
gboolean *lr_sound_switch_off (const LrMicrophoneSound *microphone, double wanted_db);
/* How far the subject's voice is over noise, at the microphone that is best as planned, with a noise that is off in the plan on again, and
 * as planned; FALSE: nobody hears it */
gboolean  lr_sound_over_with  (const LrStudy *study, const LrPlaced *noise, double *with_db, double *without_db);
/* Heavy blankets in folds over bare walls that make the room ring no longer; FALSE: it rings no longer already */
gboolean  lr_sound_blankets_m2 (const LrStudy *study, const LrRoomSound *room, double time_s, double *area_m2);
