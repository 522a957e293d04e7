/* page_zoom.h - a sheet of paper in a scrolled window: how large it is shown
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#define LR_PAGE_MARGIN_PX 16.0 /* around the sheet */

typedef struct
{
  GtkWidget *scroller, *area; /* borrowed; the area is in the scroller */
  double     zoom;            /* 1: as large as on paper, at 96 pixels to the inch; 0: all of it is seen */
  double     width_pt, height_pt;
  double     pan_x, pan_y;    /* of the scroller when a pan began */
} LrPageZoom;

/* Wheel with Control zooms, a drag pans; @zoom lives as long as the widgets */
void   lr_page_zoom_init     (LrPageZoom *zoom, GtkWidget *scroller, GtkWidget *area);
void   lr_page_zoom_set_size (LrPageZoom *zoom, double width_pt, double height_pt);
/* 0: all of it */
void   lr_page_zoom_to       (LrPageZoom *zoom, double ratio);
/* To the next of the usual ratios */
void   lr_page_zoom_step     (LrPageZoom *zoom, int by);
/* Pixels to a point as it is shown now, in an area of that size */
double lr_page_zoom_scale    (const LrPageZoom *zoom, int width_px, int height_px);
/* (transfer full): "Fit", "100 %" */
char  *lr_page_zoom_text     (const LrPageZoom *zoom);
