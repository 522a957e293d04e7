/* bench-window.c - what a frame of the whole window costs while something moves
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Milliseconds of processor time from the pointer's step to the painted frame: the edit, study and judge, every panel, and
 * the frame clock's paint. Waiting for the clock is left out. Usage: bench-window FILE
 */

#include "app.h"
#include "main_window.h"

#include <malloc.h>
#include <stdlib.h>
#include <time.h>

#define FRAMES 120
#define WARM_UP 10

typedef struct
{
  LrMainWindow *window;
  LrCanvas     *canvas;
  LrDocument   *document;
  gint64        layout_start_us, paint_us;
  gboolean      is_painted;
} Bench;

static gint64
now_us (void)
{
  struct timespec now;

  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &now);
  return (gint64) now.tv_sec * G_USEC_PER_SEC + now.tv_nsec / 1000;
}

static void
before_cb (Bench *b)
{
  b->layout_start_us = now_us ();
}

static void
after_cb (Bench *b)
{
  b->paint_us = now_us () - b->layout_start_us;
  b->is_painted = TRUE;
}

static int
compare (const void *a,
         const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static void
report (const char *name,
        double     *ms)
{
  qsort (ms, FRAMES, sizeof *ms, compare);
  g_print ("%-34s median %6.2f   p95 %6.2f   worst %6.2f ms\n", name, ms[FRAMES / 2], ms[FRAMES * 95 / 100], ms[FRAMES - 1]);
}

/* Drags the thing about, back and forth as a hand does */
static void
drag (Bench      *b,
      const char *name,
      const char *id)
{
  const LrPlaced *placed = lr_study_find_placed (lr_document_get_study (b->document), id);
  LrVec2 press = lr_view_to_device (lr_canvas_get_view (b->canvas), placed->at_m);
  double step_ms[FRAMES], paint_ms[FRAMES], both_ms[FRAMES];

  lr_canvas_drag_begin (b->canvas, press, 0);
  for (int i = -WARM_UP; i < FRAMES; i++)
    {
      gint64 start_us = now_us (), step_us;

      lr_canvas_drag_update (b->canvas, lr_vec2_add (press, lr_vec2 (6.0 + 60.0 * sin (i * 0.1), 40.0 * cos (i * 0.07))), 0);
      step_us = now_us () - start_us;
      b->is_painted = FALSE;
      gtk_widget_queue_draw (GTK_WIDGET (b->canvas));
      while (!b->is_painted)
        g_main_context_iteration (NULL, TRUE);
      if (i >= 0)
        {
          step_ms[i] = (double) step_us / 1000.0;
          paint_ms[i] = (double) b->paint_us / 1000.0;
          both_ms[i] = step_ms[i] + paint_ms[i];
        }
    }
  lr_canvas_drag_cancel (b->canvas);
  g_print ("%s\n", name);
  report ("  edit, study, panels", step_ms);
  report ("  layout and paint", paint_ms);
  report ("  both", both_ms);
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (GtkApplication) app = NULL;
  g_autoptr (GError) error = NULL;
  Bench b = { 0 };
  GdkFrameClock *clock;

  g_assert_cmpint (argc, >=, 2);
  mallopt (M_MMAP_THRESHOLD, 32 << 20);
  mallopt (M_TRIM_THRESHOLD, 512 << 20);
  gtk_init ();
  app = lr_app_new (G_APPLICATION_NON_UNIQUE);
  g_application_register (G_APPLICATION (app), NULL, &error);
  g_assert_no_error (error);

  b.window = LR_MAIN_WINDOW (lr_main_window_new (app));
  b.canvas = lr_main_window_get_canvas (b.window);
  b.document = lr_main_window_get_document (b.window);
  lr_document_open (b.document, argv[1], &error);
  g_assert_no_error (error);
  lr_document_set_shown (b.document, LR_SHOW_SIGHT | LR_SHOW_LIGHT | LR_SHOW_SOUND | LR_SHOW_POWER);
  gtk_window_set_default_size (GTK_WINDOW (b.window), 1900, 1180);
  gtk_window_present (GTK_WINDOW (b.window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (b.window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (b.window));

  clock = gtk_widget_get_frame_clock (GTK_WIDGET (b.window));
  g_signal_connect_swapped (clock, "before-paint", G_CALLBACK (before_cb), &b);
  g_signal_connect_swapped (clock, "after-paint", G_CALLBACK (after_cb), &b);

  g_print ("%d x %d px\n", gtk_widget_get_width (GTK_WIDGET (b.window)), gtk_widget_get_height (GTK_WIDGET (b.window)));
  for (int i = 2; i < argc; i++)
    {
      lr_document_select (b.document, argv[i]);
      drag (&b, argv[i], argv[i]);
    }
  gtk_window_destroy (GTK_WINDOW (b.window));
  return 0;
}
