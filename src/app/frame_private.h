/* frame_private.h - what the files of the popover share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "frame_popover.h"

#include "reframe.h"

#define N_SIZES LR_SHOT_LONG /* extreme close-up to full */
#define N_LENS_FIGURES 3

typedef struct
{
  GtkWidget *button;    /* its label is the lens */
  GtkWidget *figures[N_LENS_FIGURES];
} LensRow;

struct _LrFramePopover
{
  GtkPopover  parent_instance;

  LrDocument *document;
  char       *camera;      /* id; NULL: none */
  gboolean    is_setting;  /* the plan, not the user, changes the widgets */

  GtkWidget  *names[N_SIZES], *places[N_SIZES], *lenses[N_SIZES];
  GtkWidget  *background, *background_label;
  GtkWidget  *lens_grid, *lens_heading;
  GArray     *lens_rows;   /* LensRow */
  GtkWidget  *focus;
  GPtrArray  *focus_ids;   /* of the drop-down's rows; "": what is behind */
  GtkWidget  *heading, *sentence, *offer, *instead, *no_offer;
  guint       focus_source;
  LrReframe  *offered;     /* what the button does; NULL: nothing */
};

/* frame_popover.c */
LrReframe *lr_frame_ask_size (LrFramePopover *self, int size, LrReframeBy by);
void       lr_frame_take_row (LrFramePopover *self, GtkWidget *button); /* of the list of lenses, by its index */

/* frame_answers.c: does what a choice asks for, or says why not */
const LrCameraReading *lr_frame_get_camera (LrFramePopover *self); /* (nullable) */
void       lr_frame_do         (LrFramePopover *self, LrReframe *reframe);   /* (transfer full) */
void       lr_frame_do_instead (LrFramePopover *self);
void       lr_frame_offer      (LrFramePopover *self, LrReframe *instead);   /* (transfer full) (nullable) */
void       lr_frame_say        (LrFramePopover *self, const char *sentence); /* (nullable): nothing was asked yet */

/* frame_figures.c: what the plan holds now, and what each choice would make of it */
void       lr_frame_show_figures (LrFramePopover *self, const LrCameraReading *camera);
