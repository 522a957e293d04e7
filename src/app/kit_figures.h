/* kit_figures.h - the numbers of a thing of the kit that packing reckons with, under its line
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "field_grid.h"
#include "plan.h"

/* (transfer floating) (nullable): things of that kind have none */
GtkWidget   *lr_kit_figures_new (LrItemKind kind, LrUnits units);
/* (transfer none): its fields; what is given in them is told by its signal "number" */
LrFieldGrid *lr_kit_figures_get_grid (GtkWidget *figures);
void         lr_kit_figures_set (GtkWidget *figures, const LrItem *item);
