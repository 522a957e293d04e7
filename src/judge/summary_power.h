/* summary_power.h - what follows from the settings of leads, sockets and stands, in sentences
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study.h"
#include "units.h"

/* (transfer full): a sentence or more; "" for nothing */
char *lr_summary_lead   (const LrStudy *study, const LrItem *lead, LrUnits units);
char *lr_summary_socket (const LrStudy *study, const LrItem *socket);
char *lr_summary_feed  (const LrStudy *study, const LrItem *load);
char *lr_summary_stand  (const LrStudy *study, const LrPlaced *placed);
