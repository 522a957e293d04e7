/* empty-window.c - the least that a program with a window can be
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Usage: empty-window WIDTH HEIGHT
 */

#include "first_frame.h"

#include <locale.h>
#include <stdlib.h>

static void
activate_cb (GtkApplication *application,
             char          **argv)
{
  GtkWidget *window = gtk_application_window_new (application);

  gtk_window_set_default_size (GTK_WINDOW (window), atoi (argv[1]), atoi (argv[2]));
  gtk_window_present (GTK_WINDOW (window));
}

int
main (int    argc,
      char **argv)
{
  GtkApplication *application;

  if (argc < 3)
    {
      g_printerr ("Usage: empty-window WIDTH HEIGHT\n");
      return 2;
    }

  setlocale (LC_ALL, "");
  lr_first_frame_watch ();
  application = gtk_application_new ("io.github.lookroom.EmptyWindow", G_APPLICATION_NON_UNIQUE);
  g_signal_connect (application, "activate", G_CALLBACK (activate_cb), argv);

  return g_application_run (G_APPLICATION (application), 1, argv);
}
