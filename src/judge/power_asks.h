/* power_asks.h - what the place is asked to do for power and ways out
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study.h"
#include "units.h"

typedef struct
{
  char *request; /* "Sockets S2 and S3 for us alone, 08:30 to 12:30." */
  char *reason;  /* "Our lamps take 280 W of circuit C1." */
} LrPowerAsk;

/* (transfer full): of LrPowerAsk, plain text, the gravest first; none when the plan gives no cause */
GPtrArray *lr_power_asks_new (const LrStudy *study, LrUnits units);
