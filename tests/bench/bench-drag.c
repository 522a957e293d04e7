/* bench-drag.c - what a frame of the whole window costs while something is dragged
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Usage: bench-drag [PLAN]. 1920 by 1200, software rendering, all overlays, both viewfinders, details, remarks. Processor time
 * of the process from the pointer's step to the painted frame: the edit, study and judge, every panel, and the frame clock's
 * work. Waiting for the clock is left out.
 */

#include "bench.h"

#include "app.h"
#include "main_window.h"
#include "typical.h"

#include <malloc.h>
#include <time.h>

#define N_FRAMES 120
#define N_WARM_UP 10

typedef struct
{
  GtkWidget  *window;
  LrCanvas   *canvas;
  LrDocument *document;
  double      paint_start_s, paint_s;
  gboolean    is_painted;
} Bench;

static double
now_s (void)
{
  struct timespec now;

  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &now);

  return (double) now.tv_sec + 1e-9 * (double) now.tv_nsec;
}

static void
before_cb (Bench *bench)
{
  bench->paint_start_s = now_s ();
}

static void
after_cb (Bench *bench)
{
  bench->paint_s = now_s () - bench->paint_start_s;
  bench->is_painted = TRUE;
}

/* To and fro, as a hand does; @frame < 0 warms up */
static double
drag_frame_s (Bench  *bench,
              LrVec2  press,
              int     frame)
{
  LrVec2 by = lr_vec2 (6.0 + 60.0 * sin (frame * 0.1), 40.0 * cos (frame * 0.07));
  double start_s = now_s (), step_s;

  lr_canvas_drag_update (bench->canvas, lr_vec2_add (press, by), 0);
  step_s = now_s () - start_s;
  bench->is_painted = FALSE;
  gtk_widget_queue_draw (GTK_WIDGET (bench->canvas));
  while (!bench->is_painted)
    g_main_context_iteration (NULL, TRUE);

  return step_s + bench->paint_s;
}

static void
drag (Bench      *bench,
      const char *id,
      const char *title)
{
  const LrPlaced *placed = lr_study_find_placed (lr_document_get_study (bench->document), id);
  g_autofree char *median_row = g_strdup_printf ("drag %s to finished frame: median", title);
  g_autofree char *worst_row = g_strdup_printf ("drag %s to finished frame: worst", title);
  double times_s[N_FRAMES], worst_s = 0.0;
  LrVec2 press;

  if (placed == NULL)
    return;

  press = lr_view_to_device (lr_canvas_get_view (bench->canvas), placed->at_m);
  lr_document_select (bench->document, id);
  lr_canvas_drag_begin (bench->canvas, press, 0);
  for (int i = -N_WARM_UP; i < N_FRAMES; i++)
    {
      double time_s = drag_frame_s (bench, press, i);

      if (i >= 0)
        times_s[i] = time_s;
    }
  lr_canvas_drag_cancel (bench->canvas);

  for (guint i = 0; i < N_FRAMES; i++)
    worst_s = MAX (worst_s, times_s[i]);
  lr_bench_row_ms (median_row, lr_bench_median (times_s, N_FRAMES), 8e-3);
  lr_bench_row_ms (worst_row, worst_s, 16e-3);
}

/* The last of a kind: the first piece of furniture is the chair that the subject sits on, whom a press there takes. Of
 * people the first: most hangs on the subject. */
static const LrItem *
pick (const LrSetup *setup,
      LrItemKind     kind)
{
  const LrItem *picked = NULL;

  for (guint i = 0; i < setup->items->len; i++)
    {
      const LrItem *item = setup->items->pdata[i];

      if (item->kind == kind && (picked == NULL || kind != LR_ITEM_PERSON))
        picked = item;
    }

  return picked;
}

static void
drag_one_of_each (Bench *bench)
{
  static const struct { LrItemKind kind; const char *title; } dragged[] = {
    { LR_ITEM_FURNITURE, "furniture" }, { LR_ITEM_CAMERA, "a camera" }, { LR_ITEM_LIGHT, "a light" },
    { LR_ITEM_PERSON, "the subject" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (dragged); i++)
    {
      g_autoptr (LrPlan) plan = lr_plan_ref (lr_document_get_committed (bench->document));
      const LrItem *item = pick (lr_plan_get_setup (plan), dragged[i].kind);

      if (item != NULL)
        drag (bench, item->id, dragged[i].title);
    }
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (GtkApplication) application = NULL;
  GdkFrameClock *clock;
  Bench bench = { 0 };

  /* As the program does */
  mallopt (M_MMAP_THRESHOLD, 32 << 20);
  mallopt (M_TRIM_THRESHOLD, 512 << 20);
  gtk_init ();
  application = lr_app_new (G_APPLICATION_NON_UNIQUE);
  g_application_register (G_APPLICATION (application), NULL, NULL);

  bench.window = lr_main_window_new (application);
  bench.canvas = lr_main_window_get_canvas (LR_MAIN_WINDOW (bench.window));
  bench.document = lr_main_window_get_document (LR_MAIN_WINDOW (bench.window));
  lr_document_reset (bench.document, lr_bench_plan_open (argc, argv), NULL);
  lr_document_set_shown (bench.document, LR_SHOW_SIGHT | LR_SHOW_LIGHT | LR_SHOW_SOUND | LR_SHOW_SUN | LR_SHOW_POWER);
  gtk_window_set_decorated (GTK_WINDOW (bench.window), FALSE);
  gtk_window_set_default_size (GTK_WINDOW (bench.window), 1920, 1200);
  gtk_window_present (GTK_WINDOW (bench.window));
  gtk_test_widget_wait_for_draw (bench.window);
  gtk_test_widget_wait_for_draw (bench.window);

  clock = gtk_widget_get_frame_clock (bench.window);
  g_signal_connect_swapped (clock, "before-paint", G_CALLBACK (before_cb), &bench);
  g_signal_connect_swapped (clock, "after-paint", G_CALLBACK (after_cb), &bench);
  drag_one_of_each (&bench);
  gtk_window_destroy (GTK_WINDOW (bench.window));

  return 0;
}
