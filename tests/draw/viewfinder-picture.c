/* viewfinder-picture.c - what the cameras of a plan see, for looking at
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * viewfinder-picture PLAN FOLDER [WIDTH] writes viewfinder-TAG.png for every camera, and tells how long one takes to draw.
 */

#include <time.h>

#include "plan_reader.h"
#include "viewfinder.h"

#define REPEATS 100

static void
draw (const LrStudy         *study,
      const LrCameraReading *camera,
      double                 width,
      const char            *folder)
{
  LrViewfinderStyle style = { .width = width, .has_thirds = TRUE, .has_safe_area = TRUE, .has_eye_pointers = TRUE };
  int height = (int) (lr_viewfinder_height (camera, width) + 0.5);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) width, height);
  g_autofree char *name = g_strdup_printf ("viewfinder-%s.png", *camera->item->tag != '\0' ? camera->item->tag : camera->item->id);
  g_autofree char *path = g_build_filename (folder, name, NULL);
  g_autofree char *figures = lr_viewfinder_figures (camera, LR_UNITS_METRIC);
  clock_t start;

  start = clock ();
  for (int i = 0; i < REPEATS; i++)
    {
      cairo_t *cr = cairo_create (surface);

      lr_viewfinder_draw (cr, study, camera, &style);
      cairo_destroy (cr);
    }
  g_print ("%s  %.2f ms  %s\n", name, 1000.0 * (double) (clock () - start) / CLOCKS_PER_SEC / REPEATS, figures);

  cairo_surface_write_to_png (surface, path);
  cairo_surface_destroy (surface);
}

int
main (int   argc,
      char *argv[])
{
  g_autoptr (GError) error = NULL;
  g_autoptr (LrPlan) plan = NULL;
  g_autoptr (LrStudy) study = NULL;

  if (argc < 3)
    {
      g_printerr ("usage: viewfinder-picture PLAN FOLDER [WIDTH]\n");
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
    draw (study, &g_array_index (study->cameras, LrCameraReading, i), argc > 3 ? g_ascii_strtod (argv[3], NULL) : 470.0, argv[2]);

  return 0;
}
