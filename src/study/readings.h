/* readings.h - every computed number by item id, as JSON: the stable interface for tests and other programs
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study.h"

/* (transfer full): { "format": "lookroom-readings", "version": 1, "items": { id: { "distance-m": ... } }, "pairs": [...], ... } */
JsonNode *lr_readings_to_json (const LrStudy *study);
