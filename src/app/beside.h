/* beside.h - windows that stay beside the main one, and its keys there
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "document.h"

/* Actions of @parent and the keys of those that belong to the plan work in @window, whose title tells whether the plan is saved */
void lr_beside_bind       (GtkWindow *window, GtkWindow *parent, LrDocument *document, const char *title);
/* What is being typed in a window is taken, and stays in hand */
void lr_beside_take_typed (GtkWindow *window);
