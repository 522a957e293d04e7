/* shortcuts.h - every key that means something, in one table
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

/* Binds the keys of actions of the application and its windows */
void       lr_shortcuts_bind       (GtkApplication *application);
/* A window that lists them all */
GtkWidget *lr_shortcuts_window_new (void);
