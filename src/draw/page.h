/* page.h - the one-page plan
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "remarks.h"
#include "theme.h"

typedef enum { LR_PAPER_A4, LR_PAPER_LETTER } LrPaper;

typedef struct
{
  LrPaper paper;
  LrUnits units;
  gint64  created_unix_s; /* metadata; fixed in tests */
  const LrLightLevels *levels; /* of light in the plan; NULL: nothing is told of them */
} LrPageOptions;

void     lr_paper_size_pt (LrPaper paper, double *width_pt, double *height_pt); /* landscape */
/* Paints the page in points with its upper left corner at 0, 0 */
void     lr_page_draw (cairo_t *cr, const LrStudy *study, const LrRemarks *remarks, const LrPageOptions *options);
/* The denominator of the standard scale that it is drawn at: 50 for 1:50 */
int      lr_page_scale (const LrStudy *study, const LrPageOptions *options);
gboolean lr_page_write_pdf (const LrStudy *study, const LrRemarks *remarks, const LrPageOptions *options, const char *path, GError **error);
