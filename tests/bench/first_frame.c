/* first_frame.c - telling when an application has shown its first frame
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "first_frame.h"

#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define SETTLE_MS 500

static gboolean
end_cb (gpointer data G_GNUC_UNUSED)
{
  _Exit (0);
}

static void
after_paint_cb (void)
{
  static gboolean has_told = FALSE;
  struct timespec cpu;

  if (has_told)
    return;
  has_told = TRUE;
  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &cpu);
  printf ("%lld %lld\n", (long long) cpu.tv_sec * G_USEC_PER_SEC + cpu.tv_nsec / 1000, (long long) g_get_monotonic_time ());
  fflush (stdout);
  g_timeout_add (SETTLE_MS, end_cb, NULL);
}

static void
map_cb (GtkWidget *window,
        gpointer   data G_GNUC_UNUSED)
{
  g_signal_connect (gtk_widget_get_frame_clock (window), "after-paint", G_CALLBACK (after_paint_cb), NULL);
}

static gboolean
window_added_hook (GSignalInvocationHint *hint G_GNUC_UNUSED,
                   guint                  n_values G_GNUC_UNUSED,
                   const GValue          *values,
                   gpointer               data G_GNUC_UNUSED)
{
  g_signal_connect_after (g_value_get_object (&values[1]), "map", G_CALLBACK (map_cb), NULL);

  return FALSE;
}

/**
 * lr_first_frame_watch:
 *
 * Prints processor time and clock at the first frame of the first window, and ends the process half a second later.
 */
void
lr_first_frame_watch (void)
{
  gpointer klass = g_type_class_ref (GTK_TYPE_APPLICATION);

  g_signal_add_emission_hook (g_signal_lookup ("window-added", GTK_TYPE_APPLICATION), 0, window_added_hook, NULL, NULL);
  g_type_class_unref (klass);
}
