/* canvas_item.h - a thing on the sheet as the keyboard and assistive technology meet it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * It draws nothing: the sheet paints the thing, and the halo of what is in hand is the sign of its focus.
 */

#pragma once

#include <gtk/gtk.h>

#define LR_TYPE_CANVAS_ITEM (lr_canvas_item_get_type ())
G_DECLARE_FINAL_TYPE (LrCanvasItem, lr_canvas_item, LR, CANVAS_ITEM, GtkWidget)

/* Signals: "taken": it got the focus, or assistive technology chose it */
GtkWidget  *lr_canvas_item_new          (const char *id);
const char *lr_canvas_item_get_id       (LrCanvasItem *self);
void        lr_canvas_item_set_words    (LrCanvasItem *self, const char *name, const char *description);
void        lr_canvas_item_set_selected (LrCanvasItem *self, gboolean is_selected);
/* Its rectangle on the sheet [px]; the sheet allocates it there */
void        lr_canvas_item_set_box      (LrCanvasItem *self, const GdkRectangle *box);
GdkRectangle lr_canvas_item_get_box     (LrCanvasItem *self);
