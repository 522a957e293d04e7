/* canvas.h - the sheet: the room to scale, under the hand
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Actions on the widget (gtk_widget_activate_action):
 *   canvas.zoom-in, canvas.zoom-out, canvas.zoom-fit, canvas.zoom-to (d: the denominator, 50 for 1:50)
 *   canvas.draw-room, canvas.type-room         ways to make the room
 *   canvas.trace-picture (asks for a file), canvas.scale-picture, canvas.move-picture, canvas.show-picture (or hide),
 *   canvas.remove-picture                      a picture of a floor plan under the room
 *   canvas.wall-length, canvas.add-corner (i: a wall), canvas.remove-corner (i: a corner)
 *   canvas.put-on-wall (s: "door", "window", "socket")
 *   canvas.duplicate, canvas.delete, canvas.turn (d: degrees), canvas.bring-to-wall, canvas.route, canvas.aim-at (s: an id or "")
 *   canvas.step (i: 1 the next item, -1 the one before)
 *   canvas.let-go                              what Escape does
 */

#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define LR_TYPE_CANVAS (lr_canvas_get_type ())
G_DECLARE_FINAL_TYPE (LrCanvas, lr_canvas, LR, CANVAS, GtkWidget)

/* Properties:
 *   "document"          LrDocument
 *   "zoom-denominator"  double, read only: 37 while the room stands at 1:37 on a screen of 96 px to the inch */

GtkWidget    *lr_canvas_new             (void);
LrDocument   *lr_canvas_get_document    (LrCanvas *self); /* (nullable) (transfer none) */
void          lr_canvas_set_document    (LrCanvas *self, LrDocument *document);
const LrView *lr_canvas_get_view        (LrCanvas *self); /* how it looks at the room now; owned by the canvas */

/* Zoom and pan; places are in pixels of the widget */
double        lr_canvas_get_denominator (LrCanvas *self);
void          lr_canvas_zoom_at         (LrCanvas *self, double factor, LrVec2 at);
void          lr_canvas_zoom_to         (LrCanvas *self, double denominator);
void          lr_canvas_fit             (LrCanvas *self);
void          lr_canvas_pan             (LrCanvas *self, LrVec2 by);

/* A drag with the pointer, as the gestures forward it. @state: modifiers held */
void          lr_canvas_drag_begin      (LrCanvas *self, LrVec2 at, GdkModifierType state);
void          lr_canvas_drag_update     (LrCanvas *self, LrVec2 at, GdkModifierType state);
void          lr_canvas_drag_end        (LrCanvas *self, LrVec2 at, GdkModifierType state);
void          lr_canvas_drag_cancel     (LrCanvas *self);
gboolean      lr_canvas_is_dragging     (LrCanvas *self);
/* The pointer moves over the sheet with no button down */
void          lr_canvas_hover           (LrCanvas *self, LrVec2 at, GdkModifierType state);
void          lr_canvas_click           (LrCanvas *self, LrVec2 at, int n_press);
/* Whether the key meant something here */
gboolean      lr_canvas_key             (LrCanvas *self, guint keyval, GdkModifierType state);

/* Things from the Tray by name: "kit:ID" of a kit entry, "room:WORD" of what any room may have ("room:person") */
gboolean      lr_canvas_drop_motion     (LrCanvas *self, const char *what, LrVec2 at); /* shows it there */
void          lr_canvas_drop_leave      (LrCanvas *self);
gboolean      lr_canvas_drop            (LrCanvas *self, const char *what, LrVec2 at);
/* Puts it where it makes sense and takes it in hand: Enter in the Tray. Doors and windows start the wall tool */
gboolean      lr_canvas_place           (LrCanvas *self, const char *what);

/* Tools */
void          lr_canvas_draw_room       (LrCanvas *self);
void          lr_canvas_put_on_wall     (LrCanvas *self, LrItemKind kind);
void          lr_canvas_trace_scale     (LrCanvas *self);
void          lr_canvas_trace_move      (LrCanvas *self);
void          lr_canvas_leave_tool      (LrCanvas *self);
gboolean      lr_canvas_has_tool        (LrCanvas *self);

/* A picture of a floor plan becomes the room's, once it is known what it looks like; the scale tool is started */
void          lr_canvas_trace_file      (LrCanvas *self, GFile *file);
LrUnderlay   *lr_canvas_get_underlay    (LrCanvas *self); /* (transfer none) (nullable): what it looks like */
