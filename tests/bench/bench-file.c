/* bench-file.c - how long a plan takes to read, save and edit, against json-glib alone on the same bytes
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-file PLAN prints milliseconds and ratios: the plan as it is, and filled up to 1,000 items. Budgets: reading at most
 * 1.5 times a bare json-glib parse, saving (to memory) at most 1.5 times a bare json-glib print.
 */

#include "plan_edit.h"
#include "plan_reader.h"
#include "plan_writer.h"

#include <math.h>
#include <time.h>

#define N_ROUNDS 7
#define ROUND_US 100000

typedef struct
{
  const LrPlan *plan;
  GBytes       *bytes;
  JsonNode     *tree;
} Job;

typedef void (*JobFunc) (const Job *job);

static void
parse_bare (const Job *job)
{
  g_autoptr (JsonParser) parser = json_parser_new ();

  json_parser_load_from_data (parser, g_bytes_get_data (job->bytes, NULL), (gssize) g_bytes_get_size (job->bytes), NULL);
}

static void
read_plan (const Job *job)
{
  lr_plan_unref (lr_plan_read_data (g_bytes_get_data (job->bytes, NULL), g_bytes_get_size (job->bytes), NULL));
}

static void
print_bare (const Job *job)
{
  g_autoptr (JsonGenerator) generator = json_generator_new ();

  json_generator_set_pretty (generator, TRUE);
  json_generator_set_root (generator, job->tree);
  g_free (json_generator_to_data (generator, NULL));
}

static void
save_plan (const Job *job)
{
  g_bytes_unref (lr_plan_to_bytes (job->plan));
}

static void
edit_plan (const Job *job)
{
  lr_plan_unref (lr_plan_move (job->plan, "wenna", lr_vec2 (2.0, 2.0), NULL));
}

/* Of this process alone: others may be busy */
static gint64
cpu_us (void)
{
  struct timespec now;

  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &now);

  return (gint64) now.tv_sec * 1000000 + now.tv_nsec / 1000;
}

/* The best of several rounds, each long enough for the clock [ms] */
static double
time_ms (JobFunc    func,
         const Job *job)
{
  double best_ms = HUGE_VAL;

  for (int round = 0; round < N_ROUNDS; round++)
    {
      gint64 start_us = cpu_us (), now_us;
      int n = 0;

      do
        {
          func (job);
          n++;
          now_us = cpu_us ();
        }
      while (now_us - start_us < ROUND_US);
      best_ms = MIN (best_ms, (double) (now_us - start_us) / 1000.0 / n);
    }

  return best_ms;
}

static LrPlan *
fill (const LrPlan *plan,
      guint         n_items)
{
  LrPlan *full = lr_plan_ref (plan);

  for (guint i = 0; lr_plan_get_setup (full)->items->len < n_items; i++)
    {
      const LrItem *item = lr_plan_get_setup (plan)->items->pdata[i % lr_plan_get_setup (plan)->items->len];
      LrPlan *next = lr_plan_duplicate (full, item->id, lr_vec2 (0.1, 0.1), NULL, NULL);

      lr_plan_unref (full);
      full = next;
    }

  return full;
}

static void
bench (const LrPlan *plan)
{
  g_autoptr (GBytes) bytes = lr_plan_to_bytes (plan);
  g_autoptr (JsonParser) parser = json_parser_new ();
  Job job = { .plan = plan, .bytes = bytes };
  double parse_ms, read_ms, print_ms, save_ms;

  json_parser_load_from_data (parser, g_bytes_get_data (bytes, NULL), (gssize) g_bytes_get_size (bytes), NULL);
  job.tree = json_parser_get_root (parser);
  parse_ms = time_ms (parse_bare, &job);
  read_ms = time_ms (read_plan, &job);
  print_ms = time_ms (print_bare, &job);
  save_ms = time_ms (save_plan, &job);

  g_print ("%u items, %u kB\n", lr_plan_get_setup (plan)->items->len, (guint) (g_bytes_get_size (bytes) / 1000));
  g_print ("  read  %7.2f ms, bare parse %7.2f ms: %.2f of at most 1.5\n", read_ms, parse_ms, read_ms / parse_ms);
  g_print ("  save  %7.2f ms, bare print %7.2f ms: %.2f of at most 1.5\n", save_ms, print_ms, save_ms / print_ms);
  g_print ("  move  %7.4f ms\n", time_ms (edit_plan, &job));
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) plan = argc == 2 ? lr_plan_read (argv[1], &error) : NULL;
  g_autoptr (LrPlan) full = NULL;

  if (plan == NULL)
    {
      g_printerr ("%s\n", error != NULL ? error->message : "usage: bench-file PLAN");
      return 2;
    }

  full = fill (plan, 1000);
  bench (plan);
  bench (full);

  return 0;
}
