/* source_table.h - what each source alone gives a face and the walls behind it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "document.h"

#include <gtk/gtk.h>

#define LR_TYPE_SOURCE_TABLE (lr_source_table_get_type ())
G_DECLARE_FINAL_TYPE (LrSourceTable, lr_source_table, LR, SOURCE_TABLE, GtkWidget)

/* Invisible where nothing is known. @person (nullable): id; NULL: whom the first camera frames */
void lr_source_table_show (LrSourceTable *self, LrDocument *document, const char *person);
/* As a sentence for each row; (transfer full) */
char *lr_source_table_words (LrSourceTable *self);
