/* photometry_private.h - what the readers of photometric files share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "photometry.h"

typedef struct
{
  const char *at, *end;
  size_t      line;
  LrPhotometryError *error;
} LrPhotometryScan;

bool lr_scan_fail    (LrPhotometryScan *scan, LrPhotometryReason reason);
/* The next line without its end; false: there is none */
bool lr_scan_line    (LrPhotometryScan *scan, const char **line, size_t *length);
/* Free numbers, parted by spaces, commas and ends of lines */
bool lr_scan_number  (LrPhotometryScan *scan, double *value);
bool lr_scan_numbers (LrPhotometryScan *scan, double *values, size_t n);
/* The number that a line begins with; a decimal comma counts as a point */
bool lr_scan_number_line (LrPhotometryScan *scan, double *value);
bool lr_scan_skip_lines  (LrPhotometryScan *scan, size_t n);
/* A whole number from @least to @most */
bool lr_scan_count   (LrPhotometryScan *scan, double value, size_t least, size_t most, size_t *count);
/* Whether nothing but spaces is left */
bool lr_scan_is_done (const LrPhotometryScan *scan);

bool lr_photometry_alloc (LrPhotometryScan *scan, size_t n_v, size_t n_h, LrPhotometry *photometry);
/* Angles rise within their spheres, values are intensities */
bool lr_photometry_check (LrPhotometryScan *scan, LrPhotometry *photometry);
