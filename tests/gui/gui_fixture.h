/* gui_fixture.h - a sheet in a window, with a small loft on it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "canvas.h"

typedef struct
{
  GtkWidget  *window;
  LrCanvas   *canvas;
  LrDocument *document;
} GuiFixture;

/* A room of 7.20 x 5.40 with Wenna at (2.60, 2.95), Ines at (4.25, 2.30), camera A at (4.81, 2.80), a table at
 * (0.60, 2.80) and a door on the east wall */
#define GUI_DOOR "door-1"
#define GUI_TABLE "furniture-1"
#define GUI_WENNA "person-1"
#define GUI_INES "person-2"
#define GUI_CAMERA "camera-1"

LrPlan *gui_make_loft (void);
void    gui_setup     (GuiFixture *f, LrPlan *plan);  /* takes @plan; NULL: an empty one */
void    gui_teardown  (GuiFixture *f);
/* The same as functions of a test */
void    gui_setup_loft_cb  (GuiFixture *f, gconstpointer data);
void    gui_setup_empty_cb (GuiFixture *f, gconstpointer data);
void    gui_teardown_cb    (GuiFixture *f, gconstpointer data);
/* Of the document's "message": keeps the last sentence in a char * */
void    gui_keep_cb        (LrDocument *document, const char *sentence, char **kept);
/* Runs the main loop until @is_done says so; fails the test after five seconds */
void    gui_wait_for  (gboolean (*is_done) (gpointer data), gpointer data);
void    gui_settle    (GuiFixture *f);                /* until the next frame is painted */

const LrItem *gui_item (GuiFixture *f, const char *id);
LrVec2  gui_at        (GuiFixture *f, double x_m, double y_m); /* device place of a point of the room */
/* Press, move in a few steps, let go; by the sheet's own functions */
void    gui_drag      (GuiFixture *f, LrVec2 from, LrVec2 to, GdkModifierType state);
void    gui_type      (GuiFixture *f, const char *keys); /* characters; \n is Enter, \b Backspace */
