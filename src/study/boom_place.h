/* boom_place.h - where a boom hangs best, and what light it takes from a face
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "sound.h"

#define LR_BOOM_MOST_HIDDEN 0.2 /* of a light, a third of a stop: it shows when the boom moves; common practice, no source */

/* Of places before and over the mouth that every camera's frame, every light, the room and the arm let it have, the one where it hears most; with
 * @margin, of a frame's height, over each. FALSE: there is none */
gboolean lr_boom_best_place (const LrStudy *study, const LrMicrophoneSound *boom, double margin, LrVec3 *tip_m);
/* Part of a light that arm and capsule hide from a person's face */
double   lr_boom_hides      (const LrPlaced *boom, const LrPlaced *light, const LrPlaced *person);
/* What balances the arm behind its post [kg]; FALSE: it has nothing behind */
gboolean lr_boom_weight_kg  (const LrPlaced *boom, double *weight_kg);
