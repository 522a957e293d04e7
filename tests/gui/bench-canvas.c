/* bench-canvas.c - what a frame of the sheet costs while something moves
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For every case: milliseconds of processor time from the pointer's step to the painted frame: the edit, study and judge,
 * and the frame clock's paint. Waiting for the clock is left out. Usage: bench-canvas FILE [WORD]: only the cases
 * with the word in their name
 */

#include "app.h"
#include "main_window.h"

#include <malloc.h>
#include <stdlib.h>
#include <time.h>

#define FRAMES 120
#define WARM_UP 5

typedef struct
{
  GtkWidget  *window;
  LrCanvas   *canvas;
  LrDocument *document;
  gint64      paint_start_us, paint_us;
  gboolean    is_painted;
} Bench;

/* Processor time, so that other work on the machine does not count */
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
  b->paint_start_us = now_us ();
}

static void
after_cb (Bench *b)
{
  b->paint_us = now_us () - b->paint_start_us;
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
  g_print ("%-35s median %6.2f   p95 %6.2f   worst %6.2f ms\n", name, ms[FRAMES / 2], ms[FRAMES * 95 / 100], ms[FRAMES - 1]);
}

typedef void (*Step) (Bench *b, int i);

static const char *only = "";

static void
run (Bench      *b,
     const char *name,
     Step        step)
{
  double ms[FRAMES];

  if (strstr (name, only) == NULL)
    return;

  for (int i = -WARM_UP; i < FRAMES; i++)
    {
      gint64 start_us = now_us (), step_us;

      step (b, i + WARM_UP);
      step_us = now_us () - start_us;
      b->is_painted = FALSE;
      gtk_widget_queue_draw (GTK_WIDGET (b->canvas));
      while (!b->is_painted)
        g_main_context_iteration (NULL, TRUE);
      if (i >= 0)
        ms[i] = (double) (step_us + b->paint_us) / 1000.0;
    }
  report (name, ms);
}

static LrVec2
place_of (Bench      *b,
          const char *id)
{
  const LrPlaced *placed = lr_study_find_placed (lr_document_get_study (b->document), id);

  g_assert_nonnull (placed);
  return lr_view_to_device (lr_canvas_get_view (b->canvas), placed->at_m);
}

static LrVec2 press;

static void
drag_step (Bench *b,
           int    i)
{
  lr_canvas_drag_update (b->canvas, lr_vec2_add (press, lr_vec2 (6.0 + 60.0 * sin (i * 0.1), 40.0 * cos (i * 0.07))), 0);
}

static void
drag (Bench      *b,
      const char *name,
      const char *id)
{
  press = place_of (b, id);
  lr_canvas_drag_begin (b->canvas, press, 0);
  run (b, name, drag_step);
  lr_canvas_drag_cancel (b->canvas);
}

static void
pan_step (Bench *b,
          int    i)
{
  lr_canvas_pan (b->canvas, lr_vec2 (i % 2 ? 3.0 : -3.0, 1.0));
}

static void
zoom_step (Bench *b,
           int    i)
{
  lr_canvas_zoom_at (b->canvas, i % 20 < 10 ? 1.02 : 1.0 / 1.02, lr_vec2 (500.0, 400.0));
}

static void
hover_step (Bench *b,
            int    i)
{
  GPtrArray *items = lr_plan_get_setup (lr_document_get_plan (b->document))->items;
  const LrItem *item = g_ptr_array_index (items, (guint) i % items->len);

  lr_document_point_at (b->document, item->id);
}

static void
still_step (Bench *b,
            int    i)
{
}

static void
first_of (Bench      *b,
          LrItemKind  kind,
          const char *name)
{
  GPtrArray *items = lr_plan_get_setup (lr_document_get_plan (b->document))->items;

  for (guint i = 0; i < items->len; i++)
    {
      const LrItem *item = g_ptr_array_index (items, i);

      if (item->kind == kind)
        {
          g_autofree char *id = g_strdup (item->id);

          drag (b, name, id);
          return;
        }
    }
}

static void
watch (Bench *b)
{
  GdkFrameClock *clock;

  lr_document_set_shown (b->document, LR_SHOW_SIGHT | LR_SHOW_LIGHT | LR_SHOW_SOUND | LR_SHOW_POWER);
  gtk_window_set_default_size (GTK_WINDOW (b->window), 1920, 1200);
  gtk_window_present (GTK_WINDOW (b->window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (b->canvas));
  clock = gtk_widget_get_frame_clock (GTK_WIDGET (b->canvas));
  g_signal_connect_swapped (clock, "before-paint", G_CALLBACK (before_cb), b);
  g_signal_connect_swapped (clock, "after-paint", G_CALLBACK (after_cb), b);
}

static void
open_file (LrDocument *document,
           const char *path)
{
  g_autoptr (GError) error = NULL;

  if (!lr_document_open (document, path, &error))
    g_error ("%s", error->message);
}

/* The sheet alone, as large as the screen */
static void
bench_sheet (const char *path)
{
  Bench b = { .document = lr_document_new (), .window = gtk_window_new (), .canvas = LR_CANVAS (lr_canvas_new ()) };

  open_file (b.document, path);
  lr_canvas_set_document (b.canvas, b.document);
  gtk_window_set_decorated (GTK_WINDOW (b.window), FALSE);
  gtk_window_set_child (GTK_WINDOW (b.window), GTK_WIDGET (b.canvas));
  watch (&b);

  run (&b, "sheet: nothing changes", still_step);
  first_of (&b, LR_ITEM_FURNITURE, "sheet: drag a piece of furniture");
  first_of (&b, LR_ITEM_CAMERA, "sheet: drag a camera");
  first_of (&b, LR_ITEM_LIGHT, "sheet: drag a light");
  first_of (&b, LR_ITEM_PERSON, "sheet: drag the subject");
  run (&b, "sheet: pan", pan_step);
  run (&b, "sheet: zoom", zoom_step);
  run (&b, "sheet: another thing pointed at", hover_step);
  gtk_window_destroy (GTK_WINDOW (b.window));
  g_object_unref (b.document);
}

/* With Tray, Viewfinders, Details and Remarks */
static void
bench_window (const char *path)
{
  GtkApplication *app = lr_app_new (G_APPLICATION_NON_UNIQUE);
  Bench b = { 0 };

  g_application_register (G_APPLICATION (app), NULL, NULL);
  b.window = lr_main_window_new (app);
  b.document = lr_main_window_get_document (LR_MAIN_WINDOW (b.window));
  b.canvas = lr_main_window_get_canvas (LR_MAIN_WINDOW (b.window));
  open_file (b.document, path);
  watch (&b);

  run (&b, "window: nothing changes", still_step);
  first_of (&b, LR_ITEM_FURNITURE, "window: drag a piece of furniture");
  first_of (&b, LR_ITEM_CAMERA, "window: drag a camera");
  first_of (&b, LR_ITEM_LIGHT, "window: drag a light");
  first_of (&b, LR_ITEM_PERSON, "window: drag the subject");
  lr_document_set_shown (b.document, LR_SHOW_SIGHT);
  first_of (&b, LR_ITEM_CAMERA, "window, Sight alone: drag a camera");
  first_of (&b, LR_ITEM_PERSON, "window, Sight alone: drag subject");
  gtk_window_destroy (GTK_WINDOW (b.window));
  g_object_unref (app);
}

int
main (int    argc,
      char **argv)
{
  mallopt (M_MMAP_THRESHOLD, 32 << 20);
  mallopt (M_TRIM_THRESHOLD, 512 << 20);
  gtk_init ();
  if (argc < 2)
    {
      g_printerr ("Usage: bench-canvas FILE [WORD]\n");
      return 2;
    }

  if (argc > 2)
    only = argv[2];
  bench_sheet (argv[1]);
  bench_window (argv[1]);
  return 0;
}
