/* readings_private.h - how the files that write readings share the work
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "readings.h"
#include "tape_marks.h"

void lr_readings_add_number  (JsonBuilder *builder, const char *key, double value);
void lr_readings_add_degrees (JsonBuilder *builder, const char *key, double value_rad);
void lr_readings_add_text    (JsonBuilder *builder, const char *key, const char *text);
void lr_readings_add_flag    (JsonBuilder *builder, const char *key, gboolean value);
void lr_readings_add_count   (JsonBuilder *builder, const char *key, gint64 value);
const char *lr_readings_id_of (const LrPlaced *placed);

/* readings_between.c */
void lr_readings_add_pairs      (JsonBuilder *builder, const LrStudy *study);
void lr_readings_add_reverses   (JsonBuilder *builder, const LrStudy *study);
void lr_readings_add_intrusions (JsonBuilder *builder, const LrStudy *study);
void lr_readings_add_clashes    (JsonBuilder *builder, const LrStudy *study);

/* readings_sound.c */
void lr_readings_add_sound      (JsonBuilder *builder, const LrStudy *study);

/* readings_power.c: of a lead, a circuit, or what stands on three legs */
void lr_readings_add_power      (JsonBuilder *builder, const LrStudy *study, const LrPlaced *placed);

/* readings_tape.c; marks are of lr_tape_marks_new () */
void lr_readings_add_tape           (JsonBuilder *builder, const LrRoom *room, const GArray *marks, const LrPlaced *placed);
void lr_readings_add_common_corners (JsonBuilder *builder, const GArray *marks);

/* readings_light.c */
void lr_readings_add_light      (JsonBuilder *builder, const LrStudy *study, const LrLightLevels *levels);
