/* bench-page.c - how long the page takes to become a PDF
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-page PLAN prints milliseconds: the page, and the bare replay of the same cairo operations, both onto a PDF surface
 * that throws its bytes away. Budget: at most 1.3 times the replay.
 */

#include "page.h"
#include "plan_reader.h"

#include <cairo-pdf.h>
#include <math.h>
#include <time.h>

#define N_ROUNDS 15

typedef struct
{
  const LrStudy   *study;
  const LrRemarks *remarks;
  LrPageOptions    options;
  cairo_surface_t *record; /* replayed instead if not NULL */
} Job;

static cairo_status_t
swallow_cb (void                *closure G_GNUC_UNUSED,
            const unsigned char *data G_GNUC_UNUSED,
            unsigned int         length G_GNUC_UNUSED)
{
  return CAIRO_STATUS_SUCCESS;
}

static void
write_pdf (const Job *job)
{
  double width, height;
  cairo_surface_t *surface;
  cairo_t *cr;

  lr_paper_size_pt (job->options.paper, &width, &height);
  surface = cairo_pdf_surface_create_for_stream (swallow_cb, NULL, width, height);
  cr = cairo_create (surface);
  if (job->record != NULL)
    {
      cairo_set_source_surface (cr, job->record, 0.0, 0.0);
      cairo_paint (cr);
    }
  else
    lr_page_draw (cr, job->study, job->remarks, &job->options);
  cairo_show_page (cr);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  cairo_surface_destroy (surface);
}

/* Of this process alone: others may be busy */
static double
cpu_ms (void)
{
  struct timespec now;

  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &now);

  return (double) now.tv_sec * 1e3 + (double) now.tv_nsec / 1e6;
}

static double
best_ms (const Job *job)
{
  double best = HUGE_VAL;

  for (int i = 0; i < N_ROUNDS; i++)
    {
      double start = cpu_ms ();

      write_pdf (job);
      best = MIN (best, cpu_ms () - start);
    }

  return best;
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) plan = argc > 1 ? lr_plan_read (argv[1], &error) : NULL;
  g_autoptr (LrStudy) study = NULL;
  g_autoptr (LrRemarks) remarks = NULL;
  double page, replay;
  cairo_t *on_record;
  Job job;

  if (plan == NULL)
    {
      g_printerr ("bench-page PLAN: %s\n", error != NULL ? error->message : "no plan");
      return 2;
    }

  study = lr_study_new (plan);
  remarks = lr_remarks_new (study, LR_UNITS_METRIC);
  job = (Job) { study, remarks, { LR_PAPER_A4, LR_UNITS_METRIC, 0 }, NULL };
  page = best_ms (&job);

  job.record = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  on_record = cairo_create (job.record);
  lr_page_draw (on_record, study, remarks, &job.options);
  replay = best_ms (&job);
  g_print ("page to PDF            %7.2f ms  replay %7.2f ms  ratio %.2f\n", page, replay, page / replay);

  cairo_destroy (on_record);
  cairo_surface_destroy (job.record);
  return 0;
}
