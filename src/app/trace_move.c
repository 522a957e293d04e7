/* trace_move.c - the tool that moves and turns the picture of a floor plan
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For laying it under walls that are drawn already. It is drawn again from the picture at each step; the walls stand still.
 */

#include "config.h"

#include "canvas_private.h"

#include <glib/gi18n-lib.h>

#define STEP_M 0.10
#define FINE_STEP_M 0.01
#define TURN_RAD (1.0 * LR_DEG)
#define FINE_TURN_RAD (0.1 * LR_DEG)

static gboolean
committed_lies (LrCanvas     *self,
                LrSimilarity *lies)
{
  return self->trace.picture != NULL && lr_room_underlay (lr_plan_get_setup (lr_document_get_committed (self->document))->room, lies);
}

static void
leave (LrCanvas *self)
{
  if (self->document != NULL)
    lr_document_end_preview (self->document, FALSE, NULL);
}

static void
hover (LrCanvas        *self,
       LrVec2           at,
       GdkModifierType  state)
{
}

static void
click (LrCanvas        *self,
       LrVec2           at,
       GdkModifierType  state)
{
}

static void
drag (LrCanvas *self,
      LrVec2    from,
      LrVec2    to,
      gboolean  is_over)
{
  LrSimilarity lies;
  LrPlan *next;

  if (!committed_lies (self, &lies))
    return;

  lies.origin_m = lr_vec2_add (lies.origin_m, lr_vec2_sub (lr_canvas_to_room (self, to), lr_canvas_to_room (self, from)));
  next = lr_plan_place_underlay (lr_document_get_committed (self->document), &lies, FALSE, NULL);
  if (next != NULL)
    lr_document_preview (self->document, next);
  if (is_over)
    lr_document_end_preview (self->document, TRUE, _("Move the picture"));
}

static void
commit (LrCanvas           *self,
        const LrSimilarity *lies,
        const char         *what,
        const char         *merge_key)
{
  GError *error = NULL;
  LrPlan *next = lr_plan_place_underlay (lr_document_get_committed (self->document), lies, FALSE, &error);

  lr_canvas_commit (self, next, error, what, merge_key);
}

static gboolean
nudge (LrCanvas        *self,
       double           x,
       double           y,
       GdkModifierType  state)
{
  LrSimilarity lies;

  if (committed_lies (self, &lies))
    {
      lies.origin_m = lr_vec2_along (lies.origin_m, lr_vec2 (x, y), state & GDK_SHIFT_MASK ? FINE_STEP_M : STEP_M);
      commit (self, &lies, _("Move the picture"), "nudge-picture");
    }
  return TRUE;
}

/* About the middle of the sheet: what one looks at stays there */
static gboolean
turn (LrCanvas *self,
      double    by_rad)
{
  LrSimilarity lies;

  if (committed_lies (self, &lies))
    {
      lies = lr_similarity_turned (&lies, lr_canvas_to_room (self, lr_vec2 (self->view.width / 2.0, self->view.height / 2.0)), by_rad);
      commit (self, &lies, _("Turn the picture"), "turn-picture");
    }
  return TRUE;
}

static gboolean
key (LrCanvas        *self,
     guint            keyval,
     GdkModifierType  state)
{
  if (state & (GDK_CONTROL_MASK | GDK_ALT_MASK))
    return FALSE;

  switch (keyval)
    {
    case GDK_KEY_Left:
      return nudge (self, -1.0, 0.0, state);
    case GDK_KEY_Right:
      return nudge (self, 1.0, 0.0, state);
    case GDK_KEY_Up:
      return nudge (self, 0.0, 1.0, state);
    case GDK_KEY_Down:
      return nudge (self, 0.0, -1.0, state);
    case GDK_KEY_bracketleft:
    case GDK_KEY_comma:
      return turn (self, TURN_RAD);
    case GDK_KEY_bracketright:
    case GDK_KEY_period:
      return turn (self, -TURN_RAD);
    case GDK_KEY_braceleft:
    case GDK_KEY_less:
    case GDK_KEY_semicolon:
      return turn (self, FINE_TURN_RAD);
    case GDK_KEY_braceright:
    case GDK_KEY_greater:
    case GDK_KEY_colon:
      return turn (self, -FINE_TURN_RAD);
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
      lr_canvas_leave_tool (self);
      return TRUE;
    default:
      return FALSE;
    }
}

static void
draw (LrCanvas *self,
      cairo_t  *cr)
{
  const LrTheme *theme = self->view.theme;
  LrSimilarity lies;
  LrVec2 corners_m[4];

  if (!lr_canvas_trace_lies (self, &lies))
    return;

  lr_underlay_corners (self->trace.picture, &lies, corners_m);
  for (int i = 0; i < 4; i++)
    {
      LrVec2 at = lr_view_to_device (&self->view, corners_m[i]);

      cairo_line_to (cr, at.x, at.y);
    }
  cairo_close_path (cr);
  lr_theme_set_line (cr, theme, LR_LINE_OUTLINE, LR_DASH_SHORT);
  lr_theme_set_color (cr, theme->in_hand, 1.0);
  cairo_stroke (cr);
}

static const LrCanvasTool tool = { .leave = leave, .hover = hover, .click = click, .key = key, .draw = draw, .drag = drag, .needs_picture = TRUE };

/**
 * lr_canvas_trace_move:
 * @self: the sheet
 *
 * Starts moving the picture under the room.
 */
void
lr_canvas_trace_move (LrCanvas *self)
{
  LrSimilarity lies;

  g_return_if_fail (LR_IS_CANVAS (self));

  if (!lr_canvas_may_edit (self))
    return;
  if (!lr_canvas_trace_lies (self, &lies))
    {
      lr_document_say (self->document, _("There is no picture to be seen under this room."));
      return;
    }

  lr_canvas_drag_cancel (self);
  lr_document_select (self->document, NULL);
  lr_canvas_take_wall (self, -1);
  lr_canvas_set_tool (self, &tool, NULL);
  self->fits = FALSE;
  lr_canvas_set_hint (self, _("Drag the picture, or move it with the arrow keys; [ and ] turn it. With Shift in small steps. "
                              "Enter when it lies right."));
  gtk_widget_grab_focus (GTK_WIDGET (self));
}
