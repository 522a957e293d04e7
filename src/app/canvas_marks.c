/* canvas_marks.c - what the sheet draws over the plan: guides, the room's knobs, a tool's lines
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "canvas_private.h"
#include "text.h"

#define KNOB_PX 8.0
#define FIGURE_PX 13.0
#define FIGURE_OFF_PX 7.0

static void
line_to_device (LrCanvas *self,
                cairo_t  *cr,
                LrVec2    a_m,
                LrVec2    b_m)
{
  LrVec2 a = lr_view_to_device (&self->view, a_m), b = lr_view_to_device (&self->view, b_m);

  cairo_move_to (cr, a.x, a.y);
  cairo_line_to (cr, b.x, b.y);
}

/**
 * lr_canvas_draw_knob:
 * @self: a canvas
 * @cr: where to draw
 * @at_m: a place in the room [m]
 *
 * Draws a round knob.
 */
void
lr_canvas_draw_knob (LrCanvas *self,
                     cairo_t  *cr,
                     LrVec2    at_m)
{
  const LrTheme *theme = self->view.theme;
  LrVec2 at = lr_view_to_device (&self->view, at_m);

  cairo_rectangle (cr, round (at.x - KNOB_PX / 2.0), round (at.y - KNOB_PX / 2.0), KNOB_PX, KNOB_PX);
  lr_theme_set_color (cr, theme->room, 1.0);
  cairo_fill_preserve (cr);
  lr_theme_set_line (cr, theme, LR_LINE_OUTLINE, LR_DASH_SOLID);
  lr_theme_set_color (cr, theme->in_hand, 1.0);
  cairo_stroke (cr);
}

/* The text's own direction: never upside down, read from below or from the right */
static double
readable_rad (LrVec2 way)
{
  double angle_rad = atan2 (-way.y, way.x);

  if (angle_rad > LR_PI / 2.0 - 1e-6)
    return angle_rad - LR_PI;
  return angle_rad <= -LR_PI / 2.0 - 1e-6 ? angle_rad + LR_PI : angle_rad;
}

/**
 * lr_canvas_draw_length:
 * @self: a canvas
 * @cr: where to draw
 * @a_m: its start [m]
 * @b_m: its end [m]
 *
 * Draws a length along the way, above it and readable from below or from the right.
 */
void
lr_canvas_draw_length (LrCanvas *self,
                       cairo_t  *cr,
                       LrVec2    a_m,
                       LrVec2    b_m)
{
  LrTextStyle style = { .size = FIGURE_PX, .weight = PANGO_WEIGHT_SEMIBOLD, .align = LR_ALIGN_CENTRE };
  LrVec2 middle = lr_view_to_device (&self->view, lr_vec2_scale (lr_vec2_add (a_m, b_m), 0.5));
  g_autofree char *text = lr_length_format (lr_vec2_distance (a_m, b_m), self->view.units);

  cairo_save (cr);
  cairo_translate (cr, middle.x, middle.y);
  cairo_rotate (cr, readable_rad (lr_vec2_sub (b_m, a_m)));
  lr_theme_set_color (cr, self->view.theme->in_hand, 1.0);
  lr_text_draw_halo (cr, self->view.theme, &style, 0.0, -FIGURE_OFF_PX, text);
  cairo_restore (cr);
}

/* Thin lines from the things that the thing held is level with */
static void
draw_guides (LrCanvas *self,
             cairo_t  *cr)
{
  const LrSnap *snap = &self->drag.snap;

  if (!self->drag.has_moved || snap->why == 0)
    return;

  lr_theme_set_line (cr, self->view.theme, LR_LINE_THIN, LR_DASH_SHORT);
  lr_theme_set_color (cr, self->view.theme->in_hand, 0.8);
  if (snap->why & LR_SNAP_ALIGN_X)
    line_to_device (self, cr, snap->x_from_m, snap->at_m);
  if (snap->why & LR_SNAP_ALIGN_Y)
    line_to_device (self, cr, snap->y_from_m, snap->at_m);
  cairo_stroke (cr);
}

/* The room in hand: its corners as knobs, the wall in hand drawn over, lengths of the walls that change */
static void
draw_room_in_hand (LrCanvas *self,
                   cairo_t  *cr)
{
  const LrRoom *room = lr_canvas_get_room (self);
  int n = (int) room->n_corners, wall = self->wall_in_hand;

  if (wall >= 0 && wall < n)
    {
      lr_theme_set_line (cr, self->view.theme, LR_LINE_WALL, LR_DASH_SOLID);
      lr_theme_set_color (cr, self->view.theme->in_hand, 1.0);
      line_to_device (self, cr, room->corners_m[wall], room->corners_m[(wall + 1) % n]);
      cairo_stroke (cr);
    }

  for (int i = 0; i < n; i++)
    lr_canvas_draw_knob (self, cr, room->corners_m[i]);

  if (!self->drag.has_moved || (self->drag.grip != LR_GRIP_WALL && self->drag.grip != LR_GRIP_CORNER))
    return;
  for (int i = self->drag.index - 1; i <= self->drag.index + (self->drag.grip == LR_GRIP_WALL); i++)
    lr_canvas_draw_length (self, cr, room->corners_m[(i + n) % n], room->corners_m[(i + 1 + n) % n]);
}

/**
 * lr_canvas_has_marks:
 * @self: a canvas
 *
 * Returns: whether lr_canvas_draw_marks() draws anything
 */
gboolean
lr_canvas_has_marks (LrCanvas *self)
{
  return self->tool != NULL || self->has_room_in_hand || (self->drag.has_moved && self->drag.snap.why != 0);
}

/**
 * lr_canvas_draw_marks:
 * @self: a canvas
 * @cr: where to draw
 *
 * Draws what stands over the plan: what is in hand, pointed at, wrong, or would be mended.
 */
void
lr_canvas_draw_marks (LrCanvas *self,
                      cairo_t  *cr)
{
  if (self->has_room_in_hand && lr_canvas_get_room (self)->n_corners > 0)
    draw_room_in_hand (self, cr);
  draw_guides (self, cr);
  if (self->tool != NULL)
    self->tool->draw (self, cr);
}
