/* finder.h - one viewfinder: a camera's picture, its title above, its figures below
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define LR_TYPE_FINDER (lr_finder_get_type ())
G_DECLARE_FINAL_TYPE (LrFinder, lr_finder, LR, FINDER, GtkWidget)

GtkWidget  *lr_finder_new        (LrDocument *document);
/* Which camera it shows; (nullable): none, and the space says what to do */
void        lr_finder_set_camera (LrFinder *self, const char *id);
const char *lr_finder_get_camera (LrFinder *self);
void        lr_finder_open_frame (LrFinder *self); /* shot sizes, background, lenses, focus */
void        lr_finder_set_max_height (LrFinder *self, int max_height_px); /* of its picture */
/* The plan shown is another: title and figures at once; the picture is due until lr_finder_update_picture() */
void        lr_finder_update     (LrFinder *self);
void        lr_finder_update_picture (LrFinder *self);
