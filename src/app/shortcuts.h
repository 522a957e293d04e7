/* shortcuts.h - every key that means something, in one table
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

/* Binds the keys of actions of the application and its windows */
void       lr_shortcuts_bind       (GtkApplication *application);
/* (transfer full): keys of an action by its detailed name */
GStrv      lr_shortcuts_keys       (const char *action);
/* A window that lists them all */
GtkWidget *lr_shortcuts_window_new (void);
