/* bench-floor.c - drawing the sheet, against a bare replay of the same cairo operations, and the viewfinders
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Usage: bench-floor [PLAN]. Software rendering at 1920 by 1200; a viewfinder is 400 wide. The replay copies a recording onto
 * the picture with CAIRO_OPERATOR_SOURCE, for which cairo 1.16 plays it back without a picture in between.
 */

#include "bench.h"

#include "floor.h"
#include "typical.h"
#include "viewfinder.h"

#define WIDTH 1920
#define HEIGHT 1200
#define FINDER_WIDTH 400.0

typedef struct Drawing Drawing;
struct Drawing
{
  void           (*draw) (cairo_t *cr, const Drawing *drawing);
  const LrStudy   *study;
  const LrRemarks *remarks;
  LrView           view;
  const LrLightLevels *levels; /* of the viewfinders */
  cairo_t         *cr;     /* on the picture */
  cairo_surface_t *record; /* of the same operations */
};

static void
draw_sheet (cairo_t       *cr,
            const Drawing *drawing)
{
  lr_floor_draw (cr, drawing->study->plan, drawing->study, drawing->remarks, &drawing->view);
}

/* Of the first two cameras, as the window shows them */
static void
draw_finders (cairo_t       *cr,
              const Drawing *drawing)
{
  LrViewfinderStyle style = { .width = FINDER_WIDTH, .has_thirds = TRUE, .has_safe_area = TRUE, .has_eye_pointers = TRUE,
                              .levels = drawing->levels };

  for (guint i = 0; i < MIN (drawing->study->cameras->len, 2); i++)
    {
      cairo_save (cr);
      cairo_translate (cr, 0.0, i * 600.0);
      lr_viewfinder_draw (cr, drawing->study, &g_array_index (drawing->study->cameras, LrCameraReading, i), &style);
      cairo_restore (cr);
    }
}

static void
draw (gpointer data)
{
  Drawing *drawing = data;

  drawing->draw (drawing->cr, drawing);
}

static void
replay (gpointer data)
{
  Drawing *drawing = data;

  cairo_set_operator (drawing->cr, CAIRO_OPERATOR_SOURCE);
  cairo_set_source_surface (drawing->cr, drawing->record, 0.0, 0.0);
  cairo_paint (drawing->cr);
  cairo_set_operator (drawing->cr, CAIRO_OPERATOR_OVER);
}

static void
bench (Drawing    *drawing,
       const char *what,
       double      budget)
{
  LrBenchSide sides[] = { { .run = draw, .data = drawing }, { .run = replay, .data = drawing } };
  cairo_surface_t *picture = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  cairo_t *on_record;
  double ratio;

  drawing->cr = cairo_create (picture);
  drawing->record = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  on_record = cairo_create (drawing->record);
  drawing->draw (on_record, drawing);

  ratio = lr_bench_measure (sides, G_N_ELEMENTS (sides));
  lr_bench_row_ratio (what, ratio, budget, "%.2f : %.2f ms", sides[0].time_s * 1e3, sides[1].time_s * 1e3);

  cairo_destroy (on_record);
  cairo_surface_destroy (drawing->record);
  cairo_destroy (drawing->cr);
  cairo_surface_destroy (picture);
}

/* No replay: on a picture of pixels their edges and shades do not go through cairo */
static void
bench_finders (Drawing *drawing)
{
  g_autoptr (LrLightLevels) levels = lr_light_levels_new (drawing->study->plan, TRUE, NULL);
  LrBenchSide side = { .run = draw, .data = drawing };
  cairo_surface_t *picture = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);

  drawing->draw = draw_finders;
  drawing->cr = cairo_create (picture);
  lr_bench_measure (&side, 1);
  lr_bench_row_ms ("redraw both viewfinders, no light known", side.time_s, 4e-3);
  drawing->levels = levels;
  lr_bench_measure (&side, 1);
  lr_bench_row_ms ("redraw both viewfinders, lit", side.time_s, 4e-3);
  drawing->levels = NULL;
  cairo_destroy (drawing->cr);
  cairo_surface_destroy (picture);
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (LrPlan) plan = lr_bench_plan_open (argc, argv);
  g_autoptr (LrStudy) study = lr_study_new (plan);
  g_autoptr (LrRemarks) remarks = lr_remarks_new (study, LR_UNITS_METRIC);
  Drawing drawing = {
    .draw = draw_sheet, .study = study, .remarks = remarks,
    .view = { .width = WIDTH, .height = HEIGHT, .theme = lr_theme_get (LR_THEME_LIGHT), .has_dimensions = TRUE },
  };

  lr_view_fit (&drawing.view, study, 80.0, 0.0);
  bench (&drawing, "redraw the sheet : bare replay", 1.25);
  drawing.view.shown = LR_SHOW_SIGHT | LR_SHOW_LIGHT | LR_SHOW_SOUND | LR_SHOW_SUN | LR_SHOW_POWER;
  bench (&drawing, "redraw the sheet, all overlays : bare replay", 1.25);
  bench_finders (&drawing);

  return 0;
}
