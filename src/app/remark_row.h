/* remark_row.h - a remark as the list of remarks holds it: the same object for the same key, whatever is edited
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "remarks.h"

#define LR_TYPE_REMARK_ROW (lr_remark_row_get_type ())
G_DECLARE_FINAL_TYPE (LrRemarkRow, lr_remark_row, LR, REMARK_ROW, GObject)

/* Emits "changed" when its words, grade or remedy are others */
LrRemarkRow *lr_remark_row_new         (const LrRemark *remark);
void         lr_remark_row_set         (LrRemarkRow *self, const LrRemark *remark, gboolean is_moving);
const char  *lr_remark_row_get_key     (LrRemarkRow *self);
const char  *lr_remark_row_get_markup  (LrRemarkRow *self);
const char  *lr_remark_row_get_text    (LrRemarkRow *self);
const char  *lr_remark_row_get_remedy  (LrRemarkRow *self); /* (nullable): its sentence */
gboolean     lr_remark_row_is_waiting  (LrRemarkRow *self); /* its remedy is of a plan before: the plan moves */
LrGrade      lr_remark_row_get_grade   (LrRemarkRow *self);
/* Where the limit comes from; for the tooltip */
const char  *lr_remark_row_get_source  (LrRemarkRow *self);
