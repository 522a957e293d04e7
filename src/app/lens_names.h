/* lens_names.h - lenses offered by name while one is typed, if the open lens database is installed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "lens_database.h"

/* Somebody has chosen @lens, which is the database's */
typedef void (*LrLensChosen) (GtkWidget *entry, const LrFoundLens *lens);

/* Offers nothing where the database is not there */
void lr_lens_names_attach (GtkWidget *entry, LrLensChosen chosen);
