/* page.h - the one-page plan
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "remarks.h"
#include "theme.h"

typedef enum { LR_PAPER_A4, LR_PAPER_LETTER } LrPaper;

/* Lists that may follow the plan on sheets of their own */
typedef enum
{
  LR_SHEET_RUN       = 1 << 0,
  LR_SHEET_CHECKS    = 1 << 1,
  LR_SHEET_QUESTIONS = 1 << 2,
  LR_SHEET_PACKING   = 1 << 3,
  LR_SHEET_TAPE      = 1 << 4,
  LR_SHEET_GRID      = 1 << 5,
} LrSheets;

typedef struct
{
  LrPaper paper;
  LrUnits units;
  gint64  created_unix_s; /* metadata; fixed in tests */
  const LrLightLevels *levels; /* of light in the plan; NULL: nothing is told of them */
  guint   sheets;         /* LrSheets: what follows the plan; 0: it is alone */
} LrPageOptions;

void     lr_paper_size_pt (LrPaper paper, double *width_pt, double *height_pt); /* landscape */
/* Paints the page in points with its upper left corner at 0, 0 */
void     lr_page_draw (cairo_t *cr, const LrStudy *study, const LrRemarks *remarks, const LrPageOptions *options);
/* Lists that may follow the plan, by index from 0: the flag (LrSheets), 0 behind the last; the word of the command line; the title, translated */
guint    lr_sheet_info (guint index, const char **word, const char **title);

/* A sheet of the document */
typedef struct
{
  char    *title;               /* of what is on it */
  double   width_pt, height_pt; /* lists stand upright, the plan lies */
  gboolean begins;              /* what is on it does not go on from the sheet before */
} LrPageSheet;

/* (element-type LrPageSheet): the plan's, then those of the lists that go along */
GArray  *lr_page_sheets_new (const LrStudy *study, const LrRemarks *remarks, const LrPageOptions *options);
void     lr_page_sheet_clear (LrPageSheet *sheet);
guint    lr_page_count (const LrStudy *study, const LrRemarks *remarks, const LrPageOptions *options);
/* Paints sheet @index, from 0, which is the plan's */
void     lr_page_draw_sheet (cairo_t *cr, const LrStudy *study, const LrRemarks *remarks, const LrPageOptions *options, guint index);
/* The denominator of the standard scale that it is drawn at: 50 for 1:50 */
int      lr_page_scale (const LrStudy *study, const LrPageOptions *options);
gboolean lr_page_write_pdf (const LrStudy *study, const LrRemarks *remarks, const LrPageOptions *options, const char *path, GError **error);
