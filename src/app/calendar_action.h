/* calendar_action.h - the call times saved as a calendar file
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "document.h"

/* Asks where to, and says why if it cannot be done */
void lr_calendar_save (GtkWindow *window, LrDocument *document);
