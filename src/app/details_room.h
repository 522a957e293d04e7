/* details_room.h - the room and the job, when nothing is in hand
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define LR_TYPE_DETAILS_ROOM (lr_details_room_get_type ())
G_DECLARE_FINAL_TYPE (LrDetailsRoom, lr_details_room, LR, DETAILS_ROOM, GtkWidget)

void lr_details_room_set_document (LrDetailsRoom *self, LrDocument *document);
/* The plan shown is another */
void lr_details_room_update       (LrDetailsRoom *self);
