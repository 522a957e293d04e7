/* app.h - the program with a window
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#define LR_APP_ID "io.github.lookroom.Lookroom"
#define LR_RESOURCE_PATH "/io/github/lookroom/Lookroom"

#define LR_TYPE_APP (lr_app_get_type ())
G_DECLARE_FINAL_TYPE (LrApp, lr_app, LR, APP, GtkApplication)

GtkApplication *lr_app_new (GApplicationFlags flags);
/* Runs it with the files in @argv; returns the exit status */
int             lr_app_run (int argc, char **argv);
