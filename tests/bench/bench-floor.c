/* bench-floor.c - how long the sheet takes to draw
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-floor PLAN prints milliseconds a row, software rendering at 1200 by 1000: the whole sheet with its overlays, the bare
 * replay of the same cairo operations, and the moving half of a drag. Budgets: whole at most 1.25 times the replay.
 */

#include "floor.h"
#include "plan_reader.h"

#include <math.h>
#include <time.h>

#define WIDTH 1200
#define HEIGHT 1000
#define N_ROUNDS 7
#define ROUND_US 120000

typedef struct
{
  const LrStudy   *study;
  const LrRemarks *remarks;
  LrView           view;
  cairo_surface_t *record; /* replayed instead if not NULL */
  cairo_t         *cr;
} Job;

static void
draw (const Job *job)
{
  if (job->record == NULL)
    {
      lr_floor_draw (job->cr, job->study->plan, job->study, job->remarks, &job->view);
      return;
    }

  cairo_set_source_surface (job->cr, job->record, 0.0, 0.0);
  cairo_paint (job->cr);
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
time_ms (const Job *job)
{
  double best_ms = HUGE_VAL;

  for (int round = 0; round < N_ROUNDS; round++)
    {
      gint64 start_us = cpu_us (), now_us;
      int n = 0;

      do
        {
          draw (job);
          n++;
          now_us = cpu_us ();
        }
      while (now_us - start_us < ROUND_US);
      best_ms = MIN (best_ms, (double) (now_us - start_us) / 1000.0 / n);
    }

  return best_ms;
}

static void
bench (Job        *job,
       const char *name)
{
  double whole_ms, replay_ms;
  cairo_t *on_record;

  job->record = NULL;
  whole_ms = time_ms (job);

  job->record = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  on_record = cairo_create (job->record);
  lr_floor_draw (on_record, job->study->plan, job->study, job->remarks, &job->view);
  replay_ms = time_ms (job);
  g_print ("%-22s %7.2f ms  replay %7.2f ms  ratio %.2f\n", name, whole_ms, replay_ms, whole_ms / replay_ms);
  cairo_destroy (on_record);
  cairo_surface_destroy (job->record);
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) plan = argc > 1 ? lr_plan_read (argv[1], &error) : NULL;
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (LrRemarks) remarks = NULL;
  cairo_surface_t *surface;
  Job job = { 0 };

  if (plan == NULL)
    {
      g_printerr ("bench-floor PLAN: %s\n", error != NULL ? error->message : "no plan");
      return 2;
    }

  study = lr_study_new (plan);
  remarks = lr_remarks_new (study, LR_UNITS_METRIC);
  surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  job = (Job) {
    .study = study, .remarks = remarks, .cr = cairo_create (surface),
    .view = { .width = WIDTH, .height = HEIGHT, .theme = lr_theme_get (LR_THEME_LIGHT), .has_dimensions = TRUE },
  };
  lr_view_fit (&job.view, study, 80.0);

  bench (&job, "bare");
  job.view.shown = LR_SHOW_SIGHT | LR_SHOW_LIGHT | LR_SHOW_SOUND | LR_SHOW_SUN | LR_SHOW_POWER;
  bench (&job, "all overlays");
  if (study->cameras->len > 0)
    {
      job.view.only = job.view.in_hand = g_array_index (study->cameras, LrCameraReading, 0).item->id;
      job.view.is_dragging = TRUE;
      bench (&job, "drag camera");
    }
  if (study->subject != NULL)
    {
      job.view.only = job.view.in_hand = study->subject->item->id;
      bench (&job, "drag subject");
    }

  cairo_destroy (job.cr);
  cairo_surface_destroy (surface);

  return 0;
}
