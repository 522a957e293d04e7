/* run_words.h - whether the day is long enough, in sentences
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "run_sheet.h"

/* (transfer full) (element-type utf8): Pango markup; of what does not fit the first; "08:30 in" and so on is not said */
GPtrArray *lr_run_notes (const LrRunSheet *sheet);
/* (transfer full): "Before rolling: 2 h 36 min, 1 h 30 min are planned" */
char      *lr_run_heading (const LrRunSheet *sheet, LrRunPart part);
/* (transfer full): "2 h 30 min", "45 min" */
char      *lr_duration_format (int minutes);
