/* tape_picture.h - marks on the floor and their tapes, as a picture of any size
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study.h"
#include "theme.h"
#include "units.h"

/* As large as fits. @pointed (nullable): id of an item; its tapes alone are drawn then, from walls and corners, if it has a mark */
void lr_tape_picture_draw (cairo_t *cr, const LrTheme *theme, const LrStudy *study, LrUnits units, const char *pointed,
                           double width, double height);
