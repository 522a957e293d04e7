/* details.h - the thing in hand, or the room and the job when there is none
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define LR_TYPE_DETAILS (lr_details_get_type ())
G_DECLARE_FINAL_TYPE (LrDetails, lr_details, LR, DETAILS, GtkWidget)

void lr_details_set_document (LrDetails *self, LrDocument *document);
