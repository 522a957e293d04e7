/* power.h - what lamps draw from a circuit and what is lost in a lead
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Upper bounds for planning: currents are added as if they were in phase, conductors counted warm. Estimates of what is
 * drawn in the plan, no more: what is allowed and what is sound is for local rules and licensed people.
 */

#pragma once

#include <stdbool.h>

/* A load of three hours or more takes no more than this share of the breaker: NEC 210.19(A)(1), 210.20(A): 1 / 1.25 */
#define LR_POWER_CONTINUOUS_SHARE 0.8
/* Hottest that PVC-insulated conductors are meant for */
#define LR_POWER_WARM_C 70.0

bool lr_power_current_a (double power_w, double volts_v, double power_factor, double *current_a);
/* Of one conductor of a flexible lead, at 20 °C, per kilometre */
bool lr_power_resistance_ohm_km (double core_mm2, double *ohm_km);
/* What a flexible lead of that core bears for hours, lying free */
bool lr_power_bears_a (double core_mm2, double *current_a);
/* There and back through a lead of @length_m */
bool lr_power_drop_v (double length_m, double current_a, double ohm_km, double conductor_c, double *drop_v);
