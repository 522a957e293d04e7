/* field_presets.h - standard values offered in an entry that takes any
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

typedef void (*LrPresetChosen) (guint index, const char *text, gpointer data);

/* @texts: NULL-terminated; the entry gets an arrow that opens the list. @data outlives the entry */
void lr_field_presets_attach (GtkEntry *entry, const char *const *texts, LrPresetChosen chosen, gpointer data);
/* Which of them the entry's value is, where its text does not tell; -1: none of them */
void lr_field_presets_set_current (GtkEntry *entry, int index);
/* Nothing happens in an entry that has none */
void lr_field_presets_open   (GtkEntry *entry);
