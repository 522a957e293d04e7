/* bench-start.c - from start to the first frame, and peak memory, against an empty window of the same size
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Usage: bench-start WHOLE EMPTY. Starts the two programs by turns, needs a display. This program is kept small: the system
 * counts the parent's memory before exec as the child's.
 */

#include "bench.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#define N_ROUNDS 11

typedef struct
{
  double wall_s[N_ROUNDS], cpu_s[N_ROUNDS], peak_kb[N_ROUNDS];
} Starts;

static void
give_up (const char *what)
{
  g_printerr ("bench-start: %s: %s\n", what, g_strerror (errno));
  exit (2);
}

static pid_t
spawn (char *const *argv,
       FILE       **output)
{
  int ends[2];
  pid_t pid;

  if (pipe (ends) != 0)
    give_up ("pipe");
  pid = fork ();
  if (pid < 0)
    give_up ("fork");
  if (pid == 0)
    {
      dup2 (ends[1], STDOUT_FILENO);
      close (ends[0]);
      close (ends[1]);
      execv (argv[0], argv);
      _exit (127);
    }
  close (ends[1]);
  *output = fdopen (ends[0], "r");

  return pid;
}

static void
start_once (char *const *argv,
            Starts      *starts,
            guint        round)
{
  gint64 start_us = g_get_monotonic_time ();
  long long cpu_us, clock_us;
  struct rusage usage;
  FILE *output;
  int status;
  pid_t pid = spawn (argv, &output);
  int n_read = fscanf (output, "%lld %lld", &cpu_us, &clock_us);

  wait4 (pid, &status, 0, &usage);
  fclose (output);
  if (n_read != 2)
    {
      errno = ENOMSG;
      give_up (argv[0]);
    }

  starts->wall_s[round] = (double) (clock_us - start_us) / G_USEC_PER_SEC;
  starts->cpu_s[round] = (double) cpu_us / G_USEC_PER_SEC;
  starts->peak_kb[round] = (double) usage.ru_maxrss;
}

static double
median_ratio (const double *a,
              const double *b)
{
  double ratios[N_ROUNDS];

  for (guint i = 0; i < N_ROUNDS; i++)
    ratios[i] = a[i] / b[i];

  return lr_bench_median (ratios, N_ROUNDS);
}

int
main (int    argc,
      char **argv)
{
  /* As the program opens its window */
  char *whole_argv[] = { argc > 2 ? argv[1] : NULL, NULL };
  char *empty_argv[] = { argc > 2 ? argv[2] : NULL, "1600", "1000", NULL };
  Starts whole, empty;

  if (argc < 3)
    {
      g_printerr ("Usage: bench-start WHOLE EMPTY\n");
      return 2;
    }

  /* The first start of each reads its libraries from the disk */
  start_once (whole_argv, &whole, 0);
  start_once (empty_argv, &empty, 0);
  for (guint i = 0; i < N_ROUNDS; i++)
    {
      start_once (whole_argv, &whole, i);
      start_once (empty_argv, &empty, i);
    }

  {
    double wall = median_ratio (whole.wall_s, empty.wall_s), cpu = median_ratio (whole.cpu_s, empty.cpu_s);
    double peak = median_ratio (whole.peak_kb, empty.peak_kb);

    lr_bench_row_ratio ("start to first frame : empty window", wall, 1.25, "%.0f : %.0f ms",
                        lr_bench_median (whole.wall_s, N_ROUNDS) * 1e3, lr_bench_median (empty.wall_s, N_ROUNDS) * 1e3);
    lr_bench_note ("  of processor time", "%.2f x", cpu);
    lr_bench_row_ratio ("peak memory : empty window", peak, 1.3, "%.1f : %.1f MB",
                        lr_bench_median (whole.peak_kb, N_ROUNDS) / 1e3, lr_bench_median (empty.peak_kb, N_ROUNDS) / 1e3);
  }

  return 0;
}
