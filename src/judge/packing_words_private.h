/* packing_words_private.h - titles and reasons of a packing list's lines
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "packing.h"
#include "units.h"

char *lr_pack_dup_title (const LrPackLine *line, LrUnits units);
char *lr_pack_dup_why   (const LrPacking *packing, const LrPackLine *line, const LrStudy *study, LrUnits units);
