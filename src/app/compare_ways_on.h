/* compare_ways_on.h - where other rooms would stand: how they come there
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

/* Beside a room that is alone: what to do, with a button for each way */
GtkWidget *lr_compare_ways_on_new (void);
