/* summary.h - one thing in a sentence or two: the figures that follow from its settings
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "light_levels.h"
#include "study.h"
#include "units.h"

/* (transfer full): "Sees 1.08 × 0.60 m at Wenna. ..."; "" when there is nothing to say */
/* @levels (nullable): of light; what is told of them is of the plan that they are of */
char *lr_item_summary (const LrStudy *study, const LrLightLevels *levels, const char *id, LrUnits units);
/* (transfer full) (nullable): "1240 lm by its file, beam 62° × 40°, field 110° × 80°, from 0.30 m × 0.30 m."; NULL: it has no such file */
char *lr_lamp_file_words (const LrItem *light, LrUnits units);
/* (transfer full): "7.20 × 5.40 m, 38.4 m², 2.80 m high." */
char *lr_room_summary (const LrStudy *study, LrUnits units);
