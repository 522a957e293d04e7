/* placing_private.h - what the files of placing share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "placing.h"

gboolean lr_placing_is_free    (const LrStudy *study, LrOutline outline);
/* Whether the mark of a noise or a house light, which take no floor, would lie on that of another */
gboolean lr_placing_covers_mark (const LrStudy *study, const LrItem *item, LrVec2 at_m);
/* placing_wall.c */
gboolean lr_placing_is_at_wall (const LrItem *item);
gboolean lr_placing_on_wall    (const LrStudy *study, const LrItem *item, LrVec2 *at_m, double *facing_rad);
