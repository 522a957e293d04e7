/* tape_drawing_private.h - what the drawings of marks on the floor share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "floor.h"
#include "tape_drawing.h"

#define LR_TAPE_TAG_PT    8.0 /* type of tags and names */
#define LR_TAPE_FIGURE_PT 7.0 /* type of lengths */

typedef struct
{
  const LrSheet *sheet;
  const LrView  *view;
  cairo_t       *cr;
  GArray        *taken;   /* LrOutline, on the device: marks, labels and lengths */
} LrTapeDrawing;

static inline gboolean
lr_tape_is_free (const LrTapeDrawing *self,
                 const LrOutline     *outline)
{
  for (guint i = 0; i < self->taken->len; i++)
    if (lr_outline_overlap_m (outline, &g_array_index (self->taken, LrOutline, i), NULL) > 0.0)
      return FALSE;

  return TRUE;
}

static inline void
lr_tape_take (LrTapeDrawing *self,
              LrOutline      outline)
{
  g_array_append_val (self->taken, outline);
}

static inline LrVec2
lr_tape_device (const LrTapeDrawing *self,
                LrVec2               at_m)
{
  return lr_view_to_device (self->view, at_m);
}

static inline void
lr_tape_line (const LrTapeDrawing *self,
              LrVec2               a,
              LrVec2               b)
{
  cairo_move_to (self->cr, a.x, a.y);
  cairo_line_to (self->cr, b.x, b.y);
}

static inline LrVec2
lr_tape_facing (const LrTapeMark *mark)
{
  return lr_vec2 (cos (mark->facing_rad), -sin (mark->facing_rad));
}

/* tape_drawing.c: crosses, footprints and directions; what is not @pointed (nullable) is dim */
void lr_tape_draw_marks (LrTapeDrawing *self, const GArray *marks, const char *pointed);
/* tape_labels.c: the tag or name beside a mark, over @note (nullable) */
void lr_tape_draw_label (LrTapeDrawing *self, const LrTapeMark *mark, const char *note);
