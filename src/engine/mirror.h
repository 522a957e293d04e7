/* mirror.h - what a small mirror shows, and a lens that looks near a lamp
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Ways are vectors of length 1.
 */

#pragma once

#include "vec.h"

/* Where one looks by a mirror with that normal, seen from @to_eye off it */
LrVec3 lr_mirror_way     (LrVec3 to_eye, LrVec3 normal);
/* The normal that shows what is at @to_light to who is at @to_eye; FALSE: they are opposite each other */
bool   lr_mirror_normal  (LrVec3 to_eye, LrVec3 to_light, LrVec3 *normal);
/* A lens of glasses: how far its normal turns from its middle to a place on it */
double lr_spectacle_turn_rad (double base_dioptres, double from_middle_m);
/* Whether an eye that looks along @gaze shows, between its lids, what is at @to_light to who is at @to_lens */
bool   lr_eye_mirrors    (LrVec3 gaze, LrVec3 to_lens, LrVec3 to_light);
