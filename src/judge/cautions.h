/* cautions.h - what can hurt someone, said from the plan
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Not judged and never fine: they hold for every plan that has such a thing in it.
 */

#pragma once

#include "study.h"
#include "units.h"

GPtrArray *lr_cautions_new     (const LrStudy *study, LrUnits units);
JsonNode  *lr_cautions_to_json (const GPtrArray *cautions);
