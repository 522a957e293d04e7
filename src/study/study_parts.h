/* study_parts.h - the steps of a study, in the order in which they run
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each fills its part of the study and reads those before it.
 */

#pragma once

#include "study.h"

void lr_study_place_items     (LrStudy *study);                    /* placed.c */
void lr_study_read_cameras    (LrStudy *study);                    /* camera_readings.c */
void lr_study_read_glass      (const LrStudy *study, LrCameraReading *camera); /* lens_readings.c */
void lr_study_read_sharpness  (const LrStudy *study, LrCameraReading *camera); /* lens_readings.c */
void lr_study_read_background (const LrStudy *study, LrCameraReading *camera); /* background.c */
void lr_study_read_framing    (const LrStudy *study, LrCameraReading *camera); /* framing_readings.c */
void lr_study_read_pairs      (LrStudy *study);                    /* pair_readings.c */
void lr_study_find_clashes    (LrStudy *study);                    /* clashes.c */
void lr_study_read_leads      (LrStudy *study);                    /* power.c */

/* Where a changed item of the study would stand */
void lr_study_place_item (const LrStudy *study, const LrItem *item, LrPlaced *placed); /* placed.c */

/* Whom a person looks at; (nullable) */
const LrPlaced *lr_study_find_partner (const LrStudy *study, const LrPlaced *person);

static inline LrPlaced *
lr_study_placed_at (const LrStudy *study,
                    guint          index)
{
  return &g_array_index (study->placed, LrPlaced, index);
}
