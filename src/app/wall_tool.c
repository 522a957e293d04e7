/* wall_tool.c - the tool that puts doors, windows and sockets on walls
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The thing slides along the wall nearest to the pointer, as a preview; a click or Enter leaves it there. Left and Right
 * slide it along its wall, Tab takes it to the next one.
 */

#include "config.h"

#include "canvas_private.h"

#include <glib/gi18n-lib.h>

#define SLIDE_M 0.10
#define FINE_SLIDE_M 0.01

typedef struct
{
  LrItem *prototype;
  char   *id;        /* of the thing in the preview; NULL before the first */
  LrVec2  at_m;      /* where its middle was asked for */
} WallTool;

static WallTool *
tool_of (LrCanvas *self)
{
  return self->tool_data;
}

static void
leave (LrCanvas *self)
{
  WallTool *tool = self->tool_data;

  g_clear_pointer (&self->dropping, g_free);
  if (self->document != NULL)
    lr_document_end_preview (self->document, FALSE, NULL);
  lr_item_unref (tool->prototype);
  g_free (tool->id);
  g_free (tool);
  self->tool_data = NULL;
}

/* Its place along the wall, to the step; NULL leaves the thing where it is */
static LrPlan *
round_along (LrPlan     *next,
             const char *id,
             double      step_m)
{
  LrChange change = { id, "along-mm", fmax (lr_snap_value (lr_plan_find (next, id)->along_m, step_m), 0.0) };

  return lr_plan_change (next, &change, 1, NULL);
}

static void
show_at (LrCanvas *self,
         LrVec2    at_m,
         double    step_m)
{
  WallTool *tool = tool_of (self);
  g_autoptr (GError) error = NULL;
  g_autofree char *id = NULL;
  LrPlan *next = lr_plan_add (lr_document_get_committed (self->document), tool->prototype, at_m, 0.0, &id, &error);
  LrPlan *rounded;

  if (next == NULL)
    {
      lr_document_say (self->document, error->message);
      return;
    }

  rounded = round_along (next, id, step_m);
  if (rounded != NULL)
    {
      lr_plan_unref (next);
      next = rounded;
    }
  tool->at_m = at_m;
  g_free (tool->id);
  tool->id = g_strdup (id);
  g_free (self->dropping);
  self->dropping = g_steal_pointer (&id);
  lr_document_preview (self->document, next);
}

static void
hover (LrCanvas        *self,
       LrVec2           at,
       GdkModifierType  state)
{
  show_at (self, lr_canvas_to_room (self, at), lr_canvas_pull (self, state).step_m);
}

static void
put (LrCanvas *self)
{
  WallTool *tool = tool_of (self);
  g_autofree char *id = g_strdup (tool->id), *what = NULL;

  if (id == NULL)
    return;

  what = lr_canvas_title_of (self, _("Place %s"), id);
  lr_document_end_preview (self->document, TRUE, what);
  lr_canvas_leave_tool (self);
  lr_document_select (self->document, id);
  lr_canvas_children_grab (self);
}

static void
click (LrCanvas        *self,
       LrVec2           at,
       GdkModifierType  state)
{
  hover (self, at, state);
  put (self);
}

static void
slide (LrCanvas        *self,
       double           way,
       GdkModifierType  state)
{
  WallTool *tool = tool_of (self);
  const LrItem *item = tool->id != NULL ? lr_plan_find (lr_document_get_plan (self->document), tool->id) : NULL;
  double step_m = state & GDK_SHIFT_MASK ? FINE_SLIDE_M : SLIDE_M, facing_rad;
  LrVec2 along, at_m;

  if (item == NULL || !lr_room_wall (lr_canvas_get_room (self), item->wall, NULL, &along, NULL)
      || !lr_setup_place (lr_plan_get_setup (lr_document_get_plan (self->document)), item, &at_m, &facing_rad))
    return;

  /* Right goes right on the sheet, or up where a wall stands upright */
  if (along.x < -1e-9 || (fabs (along.x) <= 1e-9 && along.y < 0.0))
    way = -way;
  show_at (self, lr_vec2_along (at_m, along, way * step_m), FINE_SLIDE_M);
}

static void
next_wall (LrCanvas *self,
           int       by)
{
  WallTool *tool = tool_of (self);
  const LrItem *item = tool->id != NULL ? lr_plan_find (lr_document_get_plan (self->document), tool->id) : NULL;
  const LrRoom *room = lr_canvas_get_room (self);
  int n = (int) room->n_corners, wall = item != NULL ? item->wall : 0;
  LrVec2 from_m, along;
  double length_m;

  if (n > 0 && lr_room_wall (room, ((wall + by) % n + n) % n, &from_m, &along, &length_m))
    show_at (self, lr_vec2_along (from_m, along, length_m / 2.0), FINE_SLIDE_M);
}

static gboolean
key (LrCanvas        *self,
     guint            keyval,
     GdkModifierType  state)
{
  switch (keyval)
    {
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
      put (self);
      return TRUE;
    case GDK_KEY_Left:
    case GDK_KEY_Down:
      slide (self, -1.0, state);
      return TRUE;
    case GDK_KEY_Right:
    case GDK_KEY_Up:
      slide (self, 1.0, state);
      return TRUE;
    case GDK_KEY_Tab:
    case GDK_KEY_Page_Down:
      next_wall (self, 1);
      return TRUE;
    case GDK_KEY_ISO_Left_Tab:
    case GDK_KEY_Page_Up:
      next_wall (self, -1);
      return TRUE;
    default:
      return FALSE;
    }
}

static void
draw (LrCanvas *self,
      cairo_t  *cr)
{
}

static const LrCanvasTool wall_tool = { .leave = leave, .hover = hover, .click = click, .key = key, .draw = draw };

/**
 * lr_canvas_put_on_wall:
 * @self: the sheet
 * @kind: %LR_ITEM_DOOR, %LR_ITEM_WINDOW or %LR_ITEM_SOCKET
 *
 * Starts putting one on a wall; without a room it says what to do first.
 */
void
lr_canvas_put_on_wall (LrCanvas   *self,
                       LrItemKind  kind)
{
  const LrRoom *room;
  WallTool *data;

  g_return_if_fail (LR_IS_CANVAS (self));

  if (!lr_canvas_may_edit (self))
    return;
  room = lr_canvas_get_room (self);
  if (room->n_corners == 0)
    {
      lr_document_say (self->document, _("Draw the room first: a wall is needed for that."));
      return;
    }

  lr_canvas_drag_cancel (self);
  lr_document_select (self->document, NULL);
  lr_canvas_take_wall (self, -1);
  data = g_new0 (WallTool, 1);
  data->prototype = lr_item_new_usual (kind, 0, lr_item_kind_info (kind)->word);
  lr_canvas_set_tool (self, &wall_tool, data);
  lr_canvas_set_hint (self, _("Slide it along the wall, a click puts it there. Arrow keys slide, Tab goes to the next wall, "
                              "Enter puts it there, Escape leaves."));
  if (self->has_pointer)
    hover (self, self->pointer, 0);
  else
    next_wall (self, 0);
  gtk_widget_grab_focus (GTK_WIDGET (self));
}
