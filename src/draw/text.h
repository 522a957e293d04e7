/* text.h - the one place that makes text layouts
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <pango/pangocairo.h>

#include "theme.h"

typedef enum { LR_ALIGN_LEFT, LR_ALIGN_CENTRE, LR_ALIGN_RIGHT } LrAlign;

typedef struct
{
  double      size;          /* device units of the cairo context */
  int         weight;        /* PangoWeight */
  LrAlign     align;
  double      width;         /* wraps or ends in an ellipsis when > 0 */
  gboolean    wraps;
  gboolean    has_markup;
} LrTextStyle;

PangoLayout *lr_text_layout (cairo_t *cr, const LrTheme *theme, const LrTextStyle *style, const char *text); /* (transfer full) */
/* Baseline-left (by align) at x, y; returns the width */
double lr_text_draw    (cairo_t *cr, const LrTheme *theme, const LrTextStyle *style, double x, double y, const char *text);
void   lr_text_measure (cairo_t *cr, const LrTheme *theme, const LrTextStyle *style, const char *text, double *width, double *height);
/* The same with a band of the halo colour under it */
double lr_text_draw_halo (cairo_t *cr, const LrTheme *theme, const LrTextStyle *style, double x, double y, const char *text);
/* The same on another ground */
double lr_text_draw_on   (cairo_t *cr, const LrTheme *theme, const LrTextStyle *style, LrColor ground, double x, double y, const char *text);
