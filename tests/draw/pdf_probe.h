/* pdf_probe.h - what a PDF holds, by the tools of poppler and by its own bytes
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>

/* Whether poppler's tools are there; else the test is skipped */
gboolean probe_has_tools (void);

/* What a tool prints; @args ends in NULL; (transfer full) */
char *probe_run (const char *const *args);

typedef struct
{
  char  *text;
  double x0, y0, x1, y1; /* pt from the upper left corner */
} ProbeWord;

/* (transfer full): of ProbeWord, in reading order, by pdftotext -bbox */
GArray *probe_words (const char *path);
/* The word's box, or NULL */
const ProbeWord *probe_find_word (const GArray *words, const char *text);

/* A strip of the page as grey pixels */
typedef struct
{
  int     width, height;
  guint8 *pixels;         /* 0 black */
  double  dpi, x_pt, y_pt; /* of the upper left pixel's corner */
} ProbeRaster;

ProbeRaster *probe_raster      (const char *path, double dpi, double x_pt, double y_pt, double width_pt, double height_pt);
void         probe_raster_free (ProbeRaster *raster);
/* Middles of the first and the last run of dark pixels in the row at @y_pt, pt; FALSE if there are none */
gboolean     probe_dark_middles (const ProbeRaster *raster, double y_pt, double *first_pt, double *last_pt);
/* Length of the longest run of dark pixels in any row, pt */
double       probe_longest_run  (const ProbeRaster *raster);

/* Smallest size of type that the content streams set, pt */
double probe_least_type_pt (const char *path);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (ProbeRaster, probe_raster_free)
