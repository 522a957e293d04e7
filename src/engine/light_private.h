/* light_private.h - what the files of light share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "light.h"

/* Of an emitter with a table */
bool   lr_table_is_known   (const LrEmitter *emitter);
double lr_parts_lx         (const LrEmitter *emitter, LrVec3 point_m, LrVec3 normal);
/* As if all of it shone from there */
double lr_table_lx_from    (const LrEmitter *emitter, LrVec3 from_m, LrVec3 point_m, LrVec3 normal);
