/* bench-viewfinder.c - how long the cameras' pictures take to draw
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-viewfinder PLAN prints milliseconds a row, software rendering at the width of the window's column, 470 px: each camera's
 * picture, and the bare replay of the same cairo operations.
 */

#include "plan_reader.h"
#include "viewfinder.h"

#include <math.h>
#include <time.h>

#define WIDTH 470
#define N_ROUNDS 7
#define ROUND_US 120000

typedef struct
{
  const LrStudy         *study;
  const LrCameraReading *camera;
  cairo_surface_t       *record; /* replayed instead if not NULL */
  cairo_t               *cr;
} Job;

static void
draw (const Job *job)
{
  LrViewfinderStyle style = { .width = WIDTH, .has_thirds = TRUE, .has_safe_area = TRUE, .has_eye_pointers = TRUE };

  if (job->record == NULL)
    {
      lr_viewfinder_draw (job->cr, job->study, job->camera, &style);
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
      gint64 start_us = cpu_us (), now_us = start_us;
      int n = 0;

      for (; now_us - start_us < ROUND_US; n++)
        {
          draw (job);
          now_us = cpu_us ();
        }
      best_ms = fmin (best_ms, (double) (now_us - start_us) / n / 1000.0);
    }

  return best_ms;
}

static double
bench (const LrStudy         *study,
       const LrCameraReading *camera)
{
  cairo_rectangle_t extents = { 0.0, 0.0, WIDTH, ceil (lr_viewfinder_height (camera, WIDTH)) };
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, (int) extents.height);
  cairo_surface_t *record = cairo_recording_surface_create (CAIRO_CONTENT_COLOR, &extents);
  cairo_t *to_image = cairo_create (image), *to_record = cairo_create (record);
  Job job = { study, camera, NULL, to_record };
  double drawn_ms, replay_ms;

  draw (&job);
  job.cr = to_image;
  drawn_ms = time_ms (&job);
  job.record = record;
  replay_ms = time_ms (&job);
  g_print ("%-12s %6.2f   replay %6.2f   ratio %.2f\n", camera->item->id, drawn_ms, replay_ms, drawn_ms / replay_ms);

  cairo_destroy (to_image);
  cairo_destroy (to_record);
  cairo_surface_destroy (image);
  cairo_surface_destroy (record);
  return drawn_ms;
}

int
main (int   argc,
      char *argv[])
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) plan = NULL;
  g_autoptr (LrStudy) study = NULL;
  double all_ms = 0.0;

  if (argc != 2)
    {
      g_printerr ("usage: bench-viewfinder PLAN\n");
      return 2;
    }

  plan = lr_plan_read (argv[1], &error);
  if (plan == NULL)
    {
      g_printerr ("%s\n", error->message);
      return 2;
    }

  study = lr_study_new (plan);
  for (guint i = 0; i < study->cameras->len; i++)
    all_ms += bench (study, &g_array_index (study->cameras, LrCameraReading, i));
  g_print ("%-12s %6.2f\n", "all", all_ms);

  return 0;
}
