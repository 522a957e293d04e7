/* csv.h - tables for spreadsheets
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>

/* Adds a field to the last row, with a comma before all but its first; @text may be NULL for an empty one */
void lr_csv_add     (GString *csv, const char *text);
/* The same for a number with so many decimals; empty if it is not finite */
void lr_csv_add_number (GString *csv, double value, int decimals);
void lr_csv_end_row (GString *csv);
