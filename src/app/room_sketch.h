/* room_sketch.h - the room as it is typed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "survey.h"

/* Walls and corners with their numbers, what is in doubt and the diagonal that would settle it; @survey may be NULL */
void lr_room_sketch_draw (GtkWidget *area, cairo_t *cr, int width, int height, const LrSurvey *survey, const GArray *diagonals);
