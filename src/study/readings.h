/* readings.h - every computed number by item id, as JSON: the stable interface for tests and other programs
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "light_levels.h"

#include <json-glib/json-glib.h>

/* (transfer full): { "format": "lookroom-readings", "version": 1, "items": { id: { "distance-m": ... } }, "pairs": [...], ... } */
/* @levels (nullable): of light, in the same plan */
JsonNode *lr_readings_to_json (const LrStudy *study, const LrLightLevels *levels);
