/* main_window_private.h - shared by the files that make up the window
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "main_window.h"

#include "details.h"
#include "found_pane.h"
#include "journal.h"
#include "remarks_panel.h"
#include "set_refit.h"
#include "sun_scale.h"
#include "tray.h"
#include "viewfinders.h"

struct _LrMainWindow
{
  GtkApplicationWindow parent_instance;

  LrDocument *document;
  LrJournal  *journal;
  guint       notice_source, zoom_source, focus_source;
  int         seen_width_px, seen_height_px;
  gboolean    is_example;
  gboolean    may_close;     /* asked and answered */

  GtkWidget  *title_label, *subtitle_label, *setup_button, *setup_label, *undo_button, *redo_button, *menu_button;
  GtkWidget  *refit_bar, *refit_label, *refit_apply, *found_mark;
  GtkWidget  *recovered_bar, *recovered_label, *toggles, *zoom_button, *zoom_label, *notice, *notice_label, *centre, *right;
  GMenu      *main_menu, *recent_menu, *zoom_menu;
  LrTray     *tray;
  LrFoundPane *found_pane;   /* in the place of the tray */
  LrCanvas   *canvas;
  LrSunScale *sun_scale;
  LrRemarksPanel *remarks;
  LrViewfinders *viewfinders;
  LrDetails  *details;

  gboolean    shows_differences; /* in a set-up as found */
  GCancellable *refitting;   /* NULL: nothing is looked for */
  LrSetRefit *refit;         /* what was found and is offered; may be NULL */
};

/* main_window.c */
void lr_main_window_fit            (LrMainWindow *self); /* columns to the window */

/* window_actions.c */
void lr_main_window_add_actions    (LrMainWindow *self);
void lr_main_window_update_actions (LrMainWindow *self);

/* setup_menu.c */
void lr_main_window_add_setup_actions (LrMainWindow *self);
void lr_main_window_update_setups     (LrMainWindow *self);

/* found_actions.c */
void lr_main_window_add_found_actions (LrMainWindow *self);
void lr_main_window_update_found      (LrMainWindow *self); /* the plan shown is another */
void lr_main_window_clear_found       (LrMainWindow *self);
