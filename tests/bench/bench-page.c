/* bench-page.c - the page to PDF, against a bare replay of the same cairo operations
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Usage: bench-page [PLAN]. Both onto a PDF surface that throws its bytes away.
 */

#include "bench.h"

#include "page.h"
#include "typical.h"

#include <cairo-pdf.h>

typedef struct
{
  const LrStudy   *study;
  const LrRemarks *remarks;
  LrPageOptions    options;
  cairo_surface_t *record; /* of the same operations */
} Job;

static cairo_status_t
swallow_cb (void                *closure G_GNUC_UNUSED,
            const unsigned char *data G_GNUC_UNUSED,
            unsigned int         length G_GNUC_UNUSED)
{
  return CAIRO_STATUS_SUCCESS;
}

static cairo_t *
begin_pdf (const Job *job)
{
  double width_pt, height_pt;
  cairo_surface_t *surface;
  cairo_t *cr;

  lr_paper_size_pt (job->options.paper, &width_pt, &height_pt);
  surface = cairo_pdf_surface_create_for_stream (swallow_cb, NULL, width_pt, height_pt);
  cr = cairo_create (surface);
  cairo_surface_destroy (surface);

  return cr;
}

static void
end_pdf (cairo_t *cr)
{
  cairo_surface_t *surface = cairo_surface_reference (cairo_get_target (cr));

  cairo_show_page (cr);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  cairo_surface_destroy (surface);
}

static void
write_page (gpointer data)
{
  Job *job = data;
  cairo_t *cr = begin_pdf (job);

  lr_page_draw (cr, job->study, job->remarks, &job->options);
  end_pdf (cr);
}

static void
replay (gpointer data)
{
  Job *job = data;
  cairo_t *cr = begin_pdf (job);

  cairo_set_source_surface (cr, job->record, 0.0, 0.0);
  cairo_paint (cr);
  end_pdf (cr);
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (LrPlan) plan = lr_bench_plan_open (argc, argv);
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrRemarks) remarks = lr_remarks_new (study, LR_UNITS_METRIC);
  Job job = { study, remarks, { .paper = LR_PAPER_A4, .units = LR_UNITS_METRIC }, NULL };
  LrBenchSide sides[] = { { .run = write_page, .data = &job }, { .run = replay, .data = &job } };
  cairo_t *on_record;
  double ratio;

  job.record = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  on_record = cairo_create (job.record);
  lr_page_draw (on_record, study, remarks, &job.options);

  ratio = lr_bench_measure (sides, G_N_ELEMENTS (sides));
  lr_bench_row_ratio ("page to PDF : bare replay", ratio, 1.3, "%.1f : %.1f ms", sides[0].time_s * 1e3, sides[1].time_s * 1e3);

  cairo_destroy (on_record);
  /* The record stays: cairo 1.16 copies it for its snapshot when it goes, and trips over the tags in it */

  return 0;
}
