/* window_fixture.h - a whole window with the example in it, and ways to find what it holds
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "main_window.h"
#include "main_window_private.h"

extern GtkApplication *app;

void          window_tests_init (int *argc, char ***argv); /* makes the application */
void          settle        (void);   /* lets the main loop run for a while: two frames and what waits for idle time */
LrMainWindow *open_example  (void);
void          close_window  (LrMainWindow *window); /* without a question; nothing of it stays */

typedef gboolean (*Match) (GtkWidget *widget, gconstpointer data);

GtkWidget    *find          (GtkWidget *root, Match match, gconstpointer data); /* (nullable) */
gboolean      is_field_of   (GtkWidget *widget, gconstpointer key);
gboolean      is_entry      (GtkWidget *widget, gconstpointer data);
gboolean      is_drop_down  (GtkWidget *widget, gconstpointer data);
GtkWidget    *entry_of      (LrMainWindow *window, const char *key); /* of a property in Details */
void          type          (GtkWidget *entry, const char *text);
const LrItem *get_item      (LrMainWindow *window, const char *id);
void          activate      (LrMainWindow *window, const char *action);
GtkWindow    *window_beside   (void); /* (transfer none) (nullable): a window beside the main one */
