/* my_kit.h - the user's own kit, from which new plans begin
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "own_kit.h"

char   *lr_my_kit_dup_path (void);             /* (transfer full): where it is kept */
/* (transfer full): an empty plan with it, or with the generic kit. @trouble: why it could not be read; NULL: it could, or there is none */
LrPlan *lr_my_kit_new_plan (char **trouble);
