/* test-tape-drawing.c - marks on the floor, drawn: to scale, inside their box, with their numbers
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "fixture.h"
#include "pdf_probe.h"
#include "tape_drawing.h"
#include "tape_picture.h"

#include <glib/gstdio.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#define MM_PT (72.0 / 25.4)

typedef struct
{
  LrPlan          *plan;
  LrStudy         *study;
  LrPageOptions    options;
  cairo_surface_t *surface;
  LrSheet          sheet;
} Drawing;

static void
drawing_init (Drawing *d,
              LrPlan  *plan,
              LrUnits  units)
{
  d->plan = plan;
  d->study = lr_study_new (plan);
  d->options = (LrPageOptions) { .units = units, .created_unix_s = 1770000000, .sheets = LR_SHEET_TAPE | LR_SHEET_GRID };
  d->surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  d->sheet = (LrSheet) { cairo_create (d->surface), lr_theme_get (LR_THEME_PAGE), d->study, NULL, &d->options, LR_PAGE_BODY_SIZE };
}

static void
drawing_clear (Drawing *d)
{
  cairo_destroy (d->sheet.cr);
  cairo_surface_destroy (d->surface);
  lr_study_free (d->study);
  lr_plan_unref (d->plan);
}

static double
from_middle (double low,
             double high)
{
  return 0.5 * (low + high);
}

/* 1:50 makes 20 mm of a metre, 1:48 a quarter of an inch of a foot (ISO 5455, and the architect's rule); the next one up, 1:20 and
 * 1:24, has no room in the box */
static void
test_scale (void)
{
  static const struct { LrUnits units; int scale; double pt_per_m; } cases[] = {
    { LR_UNITS_METRIC, 50, 20.0 * MM_PT }, { LR_UNITS_IMPERIAL, 48, 18.0 / 0.3048 },
  };
  const LrBox box = { 30.0, 40.0, 560.0, 420.0 };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const LrStandardScale *scale;
      double x, y, width, height;
      g_autoptr (GArray) marks = NULL;
      Drawing d;
      LrView view;

      drawing_init (&d, fixture_example ("loft"), cases[i].units);
      marks = lr_tape_marks_new (d.study);
      g_assert_true (lr_tape_drawing_place (&d.sheet, &box, FALSE, &view, &scale));
      g_assert_cmpint (scale->scale, ==, cases[i].scale);
      assert_near (view.scale, cases[i].pt_per_m, 1e-9);

      lr_tape_drawing_tapes (&d.sheet, &view, marks, NULL);
      cairo_recording_surface_ink_extents (d.surface, &x, &y, &width, &height);
      g_assert_cmpfloat (x, >=, box.x);
      g_assert_cmpfloat (y, >=, box.y);
      g_assert_cmpfloat (x + width, <=, box.x + box.width);
      g_assert_cmpfloat (y + height, <=, box.y + box.height);
      g_assert_cmpfloat (width, >, 7.2 * view.scale); /* all of the room */
      drawing_clear (&d);
    }
}

static void
test_no_room (void)
{
  const LrBox box = { 0.0, 0.0, 560.0, 420.0 }, none = { 0.0, 0.0, 40.0, 40.0 };
  const LrStandardScale *scale;
  LrView view;
  Drawing d;

  drawing_init (&d, fixture_empty (), LR_UNITS_METRIC);
  g_assert_false (lr_tape_drawing_place (&d.sheet, &box, FALSE, &view, &scale));
  g_assert_null (scale);
  lr_tape_picture_draw (d.sheet.cr, d.sheet.theme, d.study, LR_UNITS_METRIC, NULL, 300.0, 200.0);
  g_assert_cmpuint (lr_page_count (d.study, NULL, &(LrPageOptions) { .sheets = LR_SHEET_GRID }), ==, 2);
  drawing_clear (&d);

  drawing_init (&d, fixture_example ("loft"), LR_UNITS_METRIC);
  g_assert_false (lr_tape_drawing_place (&d.sheet, &none, FALSE, &view, &scale));
  g_assert_false (lr_tape_drawing_place (&d.sheet, &none, TRUE, &view, &scale));
  drawing_clear (&d);
}

/* Half a metre to 1:50, and never less than 10 mm on paper, so that its numbers have room */
static void
test_step (void)
{
  static const int metric[] = { 20, 50, 100, 200, 500, 1000 }, inches[] = { 24, 48, 96, 192 };
  Drawing d;

  drawing_init (&d, fixture_empty (), LR_UNITS_METRIC);
  assert_near (lr_tape_grid_step_m (&d.sheet, 50), 0.5, 1e-12);
  assert_near (lr_tape_grid_step_m (&d.sheet, 100), 1.0, 1e-12);
  for (gsize i = 0; i < G_N_ELEMENTS (metric); i++)
    g_assert_cmpfloat (lr_tape_grid_step_m (&d.sheet, metric[i]) / metric[i], >=, 0.01 - 1e-12);
  drawing_clear (&d);

  drawing_init (&d, fixture_empty (), LR_UNITS_IMPERIAL);
  assert_near (lr_tape_grid_step_m (&d.sheet, 48), 2.0 * 0.3048, 1e-12);
  for (gsize i = 0; i < G_N_ELEMENTS (inches); i++)
    g_assert_cmpfloat (lr_tape_grid_step_m (&d.sheet, inches[i]) / inches[i], >=, 0.01 - 1e-12);
  drawing_clear (&d);
}

/* What is pointed at alone has lengths */
static void
test_pointed (void)
{
  double x, y, width, height;
  Drawing d;

  drawing_init (&d, fixture_example ("loft"), LR_UNITS_METRIC);
  lr_tape_picture_draw (d.sheet.cr, d.sheet.theme, d.study, LR_UNITS_METRIC, "camera-a", 500.0, 400.0);
  cairo_recording_surface_ink_extents (d.surface, &x, &y, &width, &height);
  g_assert_cmpfloat (x, >=, 0.0);
  g_assert_cmpfloat (y, >=, 0.0);
  g_assert_cmpfloat (x + width, <=, 500.0);
  g_assert_cmpfloat (y + height, <=, 400.0);
  drawing_clear (&d);
}

static char *
write_pdf (Drawing *d)
{
  g_autoptr (LrRemarks) remarks = lr_remarks_new (d->study, d->options.units);
  g_autoptr (GError) error = NULL;
  char *path;
  int fd = g_file_open_tmp ("lookroom-XXXXXX.pdf", &path, &error);

  g_assert_no_error (error);
  g_close (fd, NULL);
  lr_page_write_pdf (d->study, remarks, &d->options, path, &error);
  g_assert_no_error (error);
  return path;
}

/* Middle of a word on the last sheet, by pdftotext; of several the first */
static void
find_on_last (const char *path,
              const char *word,
              double     *x,
              double     *y)
{
  const char *const args[] = { "pdftotext", "-bbox", "-f", "3", path, "-", NULL };
  g_autofree char *text = probe_run (args), *end = g_strdup_printf (">%s</word>", word);
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  for (char **line = lines; *line != NULL; line++)
    {
      double x0, y0, x1, y1;

      g_strstrip (*line);
      if (!g_str_has_suffix (*line, end)
          || sscanf (*line, "<word xMin=\"%lf\" yMin=\"%lf\" xMax=\"%lf\" yMax=\"%lf\">", &x0, &y0, &x1, &y1) != 4)
        continue;
      *x = from_middle (x0, x1);
      *y = from_middle (y0, y1);
      return;
    }

  g_error ("no “%s” on the last sheet", word);
}

/* By a ruler on the file: a metre of the grid is 20 mm, half of it 10 mm, and a mark has its place */
static void
test_ruler (void)
{
  g_autofree char *path = NULL;
  double x, y, left, foot;
  Drawing d;

  if (!probe_has_tools ())
    return;

  drawing_init (&d, fixture_example ("loft"), LR_UNITS_METRIC);
  path = write_pdf (&d);
  find_on_last (path, "6.5", &left, &foot);
  find_on_last (path, "5.5", &x, &y);
  assert_near (left - x, 1000.0 / 50.0 * MM_PT, 0.3);
  find_on_last (path, "7.0", &x, &y);
  assert_near (x - left, 500.0 / 50.0 * MM_PT, 0.3);
  assert_near (y, foot, 0.1);
  find_on_last (path, "4.81;", &x, &y); /* camera A stands at (4.81, 2.80) */
  find_on_last (path, "2.80", &x, &y);
  g_unlink (path);
  drawing_clear (&d);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tape-drawing/scale", test_scale);
  g_test_add_func ("/tape-drawing/no-room", test_no_room);
  g_test_add_func ("/tape-drawing/step", test_step);
  g_test_add_func ("/tape-drawing/pointed", test_pointed);
  g_test_add_func ("/tape-drawing/ruler", test_ruler);

  return g_test_run ();
}
