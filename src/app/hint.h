/* hint.h - tooltips that may change with every frame
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

/* What a tooltip on @widget says; NULL: there is none */
void lr_hint_set      (GtkWidget *widget, const char *text);
/* Tells the whole of a text that has no room in the entry */
void lr_hint_when_cut (GtkWidget *widget, GtkEditable *editable);
