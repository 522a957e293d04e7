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
/* Free numbers again, which rise from 0 to @most_deg */
bool lr_scan_angles  (LrPhotometryScan *scan, double *angle_deg, size_t n, double most_deg);
/* The number that a line begins with; a decimal comma counts as a point */
bool lr_scan_number_line (LrPhotometryScan *scan, double *value);
bool lr_scan_skip_lines  (LrPhotometryScan *scan, size_t n);
/* A whole number from @least to @most */
bool lr_scan_count   (LrPhotometryScan *scan, double value, size_t least, size_t most, size_t *count);
/* Whether nothing but spaces is left */
bool lr_scan_is_done (const LrPhotometryScan *scan);

/* Snaps angle @i; whether it lies between 0 and @most_deg, and after the one before */
bool lr_photometry_is_angle (double *angle_deg, size_t i, double most_deg);
/* Of a file that has been multiplied out */
bool lr_photometry_is_candela (double candela);
/* Planes all round, or those of a symmetry */
bool lr_photometry_check_planes (LrPhotometryScan *scan, const LrPhotometry *photometry);
bool lr_photometry_alloc (LrPhotometryScan *scan, size_t n_v, size_t n_h, LrPhotometry *photometry);
/* The same of all that was read: angles rise within their spheres, values are intensities */
bool lr_photometry_check (LrPhotometryScan *scan, LrPhotometry *photometry);
