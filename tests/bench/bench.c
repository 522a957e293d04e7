/* bench.c - measuring on a machine that others use too, and the rows of the table
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "bench.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define N_SAMPLES 31
#define SAMPLE_S 0.004 /* at least: far above what reading the clock takes */
#define MAX_RUNS 100000

/**
 * lr_bench_now_s:
 *
 * Returns: processor time of this thread [s]
 */
double
lr_bench_now_s (void)
{
  struct timespec now;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &now);

  return (double) now.tv_sec + 1e-9 * (double) now.tv_nsec;
}

static int
compare (const void *a,
         const void *b)
{
  const double *x = a, *y = b;

  return (*x > *y) - (*x < *y);
}

/**
 * lr_bench_median:
 * @values: (array length=n): numbers, which are sorted
 * @n: how many, > 0
 *
 * Returns: the middle one
 */
double
lr_bench_median (double *values,
                 gsize   n)
{
  qsort (values, n, sizeof *values, compare);

  return n % 2 == 1 ? values[n / 2] : (values[n / 2 - 1] + values[n / 2]) / 2.0;
}

static double
sample_s (const LrBenchSide *side)
{
  double start_s = lr_bench_now_s ();

  for (guint i = 0; i < side->n_runs; i++)
    side->run (side->data);

  return (lr_bench_now_s () - start_s) / side->n_runs;
}

/* Runs once to warm up, then as often as fills a sample */
static void
prepare (LrBenchSide *side)
{
  side->n_runs = 1;
  sample_s (side);
  side->n_runs = (guint) CLAMP (ceil (SAMPLE_S / fmax (sample_s (side), 1e-9)), 1.0, MAX_RUNS);
  side->samples_s = g_new (double, N_SAMPLES);
}

/**
 * lr_bench_measure:
 * @sides: (array length=n): what to measure
 * @n: how many
 *
 * Measures them in turns. Ratios of neighbours in time are kept, because the speed of a shared machine wanders.
 *
 * Returns: the median of the first's time over the last's
 */
double
lr_bench_measure (LrBenchSide *sides,
                  gsize        n)
{
  double ratios[N_SAMPLES];

  for (gsize i = 0; i < n; i++)
    prepare (&sides[i]);
  for (gsize s = 0; s < N_SAMPLES; s++)
    {
      for (gsize i = 0; i < n; i++)
        sides[i].samples_s[s] = sample_s (&sides[i]);
      ratios[s] = sides[0].samples_s[s] / sides[n - 1].samples_s[s];
    }
  for (gsize i = 0; i < n; i++)
    {
      sides[i].time_s = lr_bench_median (sides[i].samples_s, N_SAMPLES);
      g_clear_pointer (&sides[i].samples_s, g_free);
    }

  return lr_bench_median (ratios, N_SAMPLES);
}

static void
print_row (const char *what,
           const char *figure,
           const char *budget,
           const char *word,
           const char *detail)
{
  printf ("%-52s %12s %12s  %-7s%s%s\n", what, figure, budget, word, *detail != '\0' ? " " : "", detail);
  fflush (stdout);
}

static const char *
verdict (double figure,
         double budget)
{
  return figure <= budget ? "within" : "over";
}

/**
 * lr_bench_row_ms:
 * @what: what was measured
 * @time_s: what it took [s]
 * @budget_s: what it may take [s]
 */
void
lr_bench_row_ms (const char *what,
                 double      time_s,
                 double      budget_s)
{
  g_autofree char *figure = g_strdup_printf ("%.3f ms", time_s * 1e3);
  g_autofree char *budget = g_strdup_printf ("%.3g ms", budget_s * 1e3);

  print_row (what, figure, budget, verdict (time_s, budget_s), "");
}

/**
 * lr_bench_row_ratio:
 * @what: what was measured
 * @ratio: how many times what it is compared with it took
 * @budget: how many it may take
 * @detail_format: (nullable): what the ratio is of
 */
void
lr_bench_row_ratio (const char *what,
                    double      ratio,
                    double      budget,
                    const char *detail_format,
                    ...)
{
  g_autofree char *figure = g_strdup_printf ("%.2f x", ratio);
  g_autofree char *limit = g_strdup_printf ("%.2f x", budget);
  g_autofree char *detail = NULL;
  va_list args;

  va_start (args, detail_format);
  detail = detail_format != NULL ? g_strdup_vprintf (detail_format, args) : g_strdup ("");
  va_end (args);

  print_row (what, figure, limit, verdict (ratio, budget), detail);
}

/**
 * lr_bench_row_bytes:
 * @what: what was measured
 * @n_bytes: what it holds
 * @budget: what it may hold
 */
void
lr_bench_row_bytes (const char *what,
                    double      n_bytes,
                    double      budget)
{
  g_autofree char *figure = g_strdup_printf ("%.1f kB", n_bytes / 1e3);
  g_autofree char *limit = g_strdup_printf ("%.1f kB", budget / 1e3);

  print_row (what, figure, limit, verdict (n_bytes, budget), "");
}

/**
 * lr_bench_note:
 * @what: what was measured
 * @format: the figure
 *
 * A row without a budget.
 */
void
lr_bench_note (const char *what,
               const char *format,
               ...)
{
  g_autofree char *figure = NULL;
  va_list args;

  va_start (args, format);
  figure = g_strdup_vprintf (format, args);
  va_end (args);

  print_row (what, figure, "-", "", "");
}
