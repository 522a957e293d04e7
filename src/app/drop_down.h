/* drop_down.h - a drop-down that may be narrower than its longest title
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

GtkWidget *lr_drop_down_new        (void);
/* @titles: NULL-terminated; nothing happens if it has these already. Returns whether it had others */
gboolean   lr_drop_down_set_titles (GtkDropDown *self, const char *const *titles);
