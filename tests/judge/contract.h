/* contract.h - what every remedy owes the set
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "remarks.h"

void contract_check (const LrRemark *remark, const LrRemarks *before, const LrRemarks *after);
