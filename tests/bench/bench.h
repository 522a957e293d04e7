/* bench.h - measuring on a machine that others use too, and the rows of the table
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Everything that is compared is measured in one run, in turns A B A B, and the median counts. Times are processor time of
 * the calling thread: what waits for a core or a disk does not count.
 */

#pragma once

#include <glib.h>

typedef struct
{
  void   (*run) (gpointer data);
  gpointer data;
  double   time_s;     /* out: median of one run */
  guint    n_runs;     /* private: in one sample */
  double  *samples_s;  /* private: of one run each */
} LrBenchSide;

double lr_bench_now_s   (void);
double lr_bench_median  (double *values, gsize n); /* sorts them */
/* Fills in time_s. Returns the median of sides[0] over sides[n - 1], sample by sample */
double lr_bench_measure (LrBenchSide *sides, gsize n);

/* Rows */
void   lr_bench_row_ms    (const char *what, double time_s, double budget_s);
void   lr_bench_row_ratio (const char *what, double ratio, double budget, const char *detail_format, ...) G_GNUC_PRINTF (4, 5);
void   lr_bench_row_bytes (const char *what, double n_bytes, double budget);
void   lr_bench_note      (const char *what, const char *format, ...) G_GNUC_PRINTF (2, 3);
