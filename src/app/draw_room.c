/* draw_room.c - the tool that draws a room corner by corner
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each click sets a corner. The running wall is pulled to right angles and to lines through earlier corners; its length
 * can be typed while it runs, and the arrow keys turn it, so that a room can be drawn without a pointer: Enter, arrow,
 * length, Enter, arrow, length, Enter, ... and Enter alone closes it.
 */

#include "config.h"

#include "canvas_private.h"
#include "text.h"

#include <glib/gi18n-lib.h>

#define CORNER_REACH 1.8 /* lines through corners pull so many times as far as those through things */
#define CLOSE_PX 9.0     /* how near to the first corner a click closes the room */
#define ANGLE_PX 13.0
#define START_M 1.0 /* length of the running wall before the pointer says otherwise */

typedef struct
{
  GArray  *corners_m; /* of LrVec2 */
  LrSnap   next;      /* where the running wall ends */
  gboolean has_next;
  GString *typed;     /* the running wall's length, as far as it is typed */
} RoomDrawing;

static RoomDrawing *
drawing_of (LrCanvas *self)
{
  return self->tool_data;
}

static const LrVec2 *
corners_of (const RoomDrawing *drawing)
{
  return &g_array_index (drawing->corners_m, LrVec2, 0);
}

static LrVec2
last_corner_m (const RoomDrawing *drawing)
{
  return g_array_index (drawing->corners_m, LrVec2, drawing->corners_m->len - 1);
}

/* The end of the running wall: where the pointer is pulled to, or at the length typed in that direction */
static LrVec2
end_m (LrCanvas *self)
{
  RoomDrawing *drawing = drawing_of (self);
  LrVec2 from_m, way_m;
  double length_m, way_length_m;

  if (drawing->corners_m->len == 0 || drawing->typed->len == 0
      || !lr_length_parse (drawing->typed->str, lr_document_get_units (self->document), &length_m))
    return drawing->next.at_m;

  from_m = last_corner_m (drawing);
  way_m = lr_vec2_sub (drawing->next.at_m, from_m);
  way_length_m = lr_vec2_length (way_m);
  if (!(way_length_m > 0.0))
    return lr_vec2_add (from_m, lr_vec2 (length_m, 0.0));
  return lr_vec2_along (from_m, way_m, length_m / way_length_m);
}

static gboolean
closes (const RoomDrawing *drawing)
{
  return drawing->corners_m->len >= 3 && drawing->typed->len == 0 && (drawing->next.why & LR_SNAP_FIRST);
}

static void
update_hint (LrCanvas *self)
{
  RoomDrawing *drawing = drawing_of (self);
  guint n = drawing->corners_m->len;
  g_autofree char *typed = NULL;

  if (n == 0)
    lr_canvas_set_hint (self, _("Click the first corner, or press Enter to start here. Shift goes by 1 cm, Escape leaves."));
  else if (drawing->typed->len > 0)
    {
      typed = g_strdup_printf (_("Length of this wall: %s. Enter sets it."), drawing->typed->str);
      lr_canvas_set_hint (self, typed);
    }
  else if (n < 3)
    lr_canvas_set_hint (self, _("Click the next corner or type the length. Arrow keys turn, Backspace takes back."));
  else
    lr_canvas_set_hint (self, _("Click the next corner or type the length. The first corner or Enter closes the room."));
}

static void
changed (LrCanvas *self)
{
  update_hint (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
leave (LrCanvas *self)
{
  RoomDrawing *drawing = self->tool_data;

  g_array_unref (drawing->corners_m);
  g_string_free (drawing->typed, TRUE);
  g_free (drawing);
  self->tool_data = NULL;
}

static void
hover (LrCanvas        *self,
       LrVec2           at,
       GdkModifierType  state)
{
  RoomDrawing *drawing = drawing_of (self);
  LrSnapPull pull = lr_canvas_pull (self, state);

  pull.reach_m *= CORNER_REACH;
  if (pull.reach_m > 0.0)
    pull.close_m = CLOSE_PX / self->view.scale;
  drawing->next = lr_snap_corner (corners_of (drawing), drawing->corners_m->len, lr_canvas_to_room (self, at), &pull);
  drawing->has_next = TRUE;
  changed (self);
}

/* A room that nothing stands in yet has its leftmost and lowest walls through 0, 0. Returns: how far it was moved */
static LrVec2
move_to_origin (GArray *corners_m)
{
  double left_m = HUGE_VAL, low_m = HUGE_VAL;

  for (guint i = 0; i < corners_m->len; i++)
    {
      left_m = fmin (left_m, g_array_index (corners_m, LrVec2, i).x);
      low_m = fmin (low_m, g_array_index (corners_m, LrVec2, i).y);
    }
  for (guint i = 0; i < corners_m->len; i++)
    {
      LrVec2 *corner_m = &g_array_index (corners_m, LrVec2, i);

      *corner_m = lr_vec2_sub (*corner_m, lr_vec2 (left_m, low_m));
    }
  return lr_vec2 (-left_m, -low_m);
}

/* The picture that it was drawn over moves with it; takes @plan */
static LrPlan *
move_picture (LrPlan *plan,
              LrVec2  by_m)
{
  LrSimilarity lies;
  LrPlan *moved;

  if (!lr_room_underlay (lr_plan_get_setup (plan)->room, &lies))
    return plan;

  lies.origin_m = lr_vec2_add (lies.origin_m, by_m);
  moved = lr_plan_place_underlay (plan, &lies, FALSE, NULL);
  if (moved == NULL)
    return plan;
  lr_plan_unref (plan);
  return moved;
}

static void
close_room (LrCanvas *self)
{
  g_autoptr (GArray) corners_m = g_array_copy (drawing_of (self)->corners_m);
  LrPlan *committed = lr_document_get_committed (self->document);
  GError *error = NULL;
  LrVec2 by_m = lr_vec2 (0.0, 0.0);
  LrPlan *next;

  if (lr_plan_get_setup (committed)->items->len == 0)
    by_m = move_to_origin (corners_m);
  next = lr_plan_set_corners (committed, &g_array_index (corners_m, LrVec2, 0), corners_m->len, &error);
  if (next == NULL)
    {
      lr_canvas_commit (self, NULL, error, NULL, NULL);
      return;
    }

  lr_canvas_leave_tool (self);
  next = move_picture (next, by_m);
  lr_canvas_commit (self, next, NULL, _("Draw the room"), NULL);
  lr_canvas_fit (self);
}

static void
add_corner (LrCanvas *self,
            LrVec2    at_m)
{
  RoomDrawing *drawing = drawing_of (self);
  guint n = drawing->corners_m->len;

  if (n > 0 && lr_vec2_distance (at_m, last_corner_m (drawing)) < 0.001)
    return;
  if (lr_path_crosses (corners_of (drawing), n, at_m))
    {
      lr_document_say (self->document, _("A wall cannot cross another."));
      return;
    }
  if (n >= LR_MAX_CORNERS)
    {
      lr_document_say (self->document, _("A room cannot have more corners."));
      return;
    }

  /* the next wall starts square to this one, anticlockwise, until the pointer or an arrow key says otherwise */
  drawing->next = (LrSnap) { .at_m = lr_vec2_add (at_m, lr_vec2 (START_M, 0.0)) };
  if (n > 0)
    {
      LrVec2 way_m = lr_vec2_sub (at_m, last_corner_m (drawing));

      drawing->next.at_m = lr_vec2_along (at_m, lr_vec2_left (way_m), START_M / lr_vec2_length (way_m));
    }
  g_array_append_val (drawing->corners_m, at_m);
  g_string_truncate (drawing->typed, 0);
  changed (self);
}

static void
click (LrCanvas        *self,
       LrVec2           at,
       GdkModifierType  state)
{
  RoomDrawing *drawing = drawing_of (self);

  hover (self, at, state);
  if (closes (drawing))
    close_room (self);
  else
    add_corner (self, end_m (self));
}

static void
press_enter (LrCanvas *self)
{
  RoomDrawing *drawing = drawing_of (self);
  double length_m;

  if (drawing->typed->len > 0)
    {
      if (lr_length_parse (drawing->typed->str, lr_document_get_units (self->document), &length_m) && length_m > 0.0)
        add_corner (self, end_m (self));
      else
        lr_document_say (self->document, _("That is not a length. Write it as 3.6, 360 cm or 11' 10\"."));
    }
  else if (drawing->corners_m->len >= 3)
    close_room (self);
  else if (drawing->corners_m->len == 0)
    add_corner (self, drawing->has_next ? drawing->next.at_m
                                        : lr_canvas_to_room (self, lr_vec2 (self->view.width * 0.3, self->view.height * 0.7)));
}

static void
press_backspace (LrCanvas *self)
{
  RoomDrawing *drawing = drawing_of (self);

  if (drawing->typed->len > 0)
    {
      const char *last = g_utf8_find_prev_char (drawing->typed->str, drawing->typed->str + drawing->typed->len);

      g_string_truncate (drawing->typed, (gsize) (last - drawing->typed->str));
    }
  else if (drawing->corners_m->len > 0)
    g_array_set_size (drawing->corners_m, drawing->corners_m->len - 1);
  changed (self);
}

static void
turn_running_wall (LrCanvas *self,
                   LrVec2    way)
{
  RoomDrawing *drawing = drawing_of (self);
  double length_m;

  if (drawing->corners_m->len == 0)
    return;

  length_m = fmax (lr_vec2_distance (drawing->next.at_m, last_corner_m (drawing)), START_M);
  drawing->next = (LrSnap) { .at_m = lr_vec2_along (last_corner_m (drawing), way, length_m), .why = LR_SNAP_DIRECTION };
  changed (self);
}

/* Digits and what lengths are written with: 3.6 m, 360cm, 7' 10" */
static gboolean
type_char (LrCanvas *self,
           guint     keyval)
{
  gunichar c = gdk_keyval_to_unicode (keyval);
  RoomDrawing *drawing = drawing_of (self);

  if (drawing->corners_m->len == 0 || c == 0 || c >= 128 || strchr ("0123456789.,'\" /cmftin", (char) c) == NULL
      || (drawing->typed->len == 0 && !g_ascii_isdigit ((char) c) && c != '.' && c != ','))
    return FALSE;

  g_string_append_unichar (drawing->typed, c);
  changed (self);
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
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
    case GDK_KEY_ISO_Enter:
      press_enter (self);
      return TRUE;
    case GDK_KEY_BackSpace:
      press_backspace (self);
      return TRUE;
    case GDK_KEY_Left:
      turn_running_wall (self, lr_vec2 (-1.0, 0.0));
      return TRUE;
    case GDK_KEY_Right:
      turn_running_wall (self, lr_vec2 (1.0, 0.0));
      return TRUE;
    case GDK_KEY_Up:
      turn_running_wall (self, lr_vec2 (0.0, 1.0));
      return TRUE;
    case GDK_KEY_Down:
      turn_running_wall (self, lr_vec2 (0.0, -1.0));
      return TRUE;
    default:
      return type_char (self, keyval) || (keyval >= GDK_KEY_0 && keyval <= GDK_KEY_9);
    }
}

/* The angle between the last wall and the running one, inside the corner */
static void
draw_angle (LrCanvas *self,
            cairo_t  *cr,
            LrVec2    to_m)
{
  RoomDrawing *drawing = drawing_of (self);
  guint n = drawing->corners_m->len;
  LrTextStyle style = { .size = ANGLE_PX, .weight = PANGO_WEIGHT_SEMIBOLD, .align = LR_ALIGN_CENTRE };
  LrVec2 back, on, half, at;
  g_autofree char *text = NULL;
  double angle_rad;

  if (n < 2)
    return;

  back = lr_vec2_sub (g_array_index (drawing->corners_m, LrVec2, n - 2), last_corner_m (drawing));
  on = lr_vec2_sub (to_m, last_corner_m (drawing));
  if (!(lr_vec2_length (back) > 0.0) || !(lr_vec2_length (on) > 0.0))
    return;

  angle_rad = fabs (lr_angle_wrap_rad (lr_vec2_angle_rad (on) - lr_vec2_angle_rad (back)));
  half = lr_vec2_add (lr_vec2_scale (back, 1.0 / lr_vec2_length (back)), lr_vec2_scale (on, 1.0 / lr_vec2_length (on)));
  if (!(lr_vec2_length (half) > 0.05))
    return;

  half = lr_vec2_scale (half, 1.0 / lr_vec2_length (half));
  at = lr_view_to_device (&self->view, last_corner_m (drawing));
  text = lr_angle_format (angle_rad);
  lr_theme_set_color (cr, self->view.theme->ink2, 1.0);
  lr_text_draw_halo (cr, self->view.theme, &style, at.x + 30.0 * half.x, at.y - 30.0 * half.y + ANGLE_PX / 3.0, text);
}

static void
draw_guide (LrCanvas *self,
            cairo_t  *cr,
            LrVec2    from_m,
            LrVec2    to_m)
{
  LrVec2 from = lr_view_to_device (&self->view, from_m), to = lr_view_to_device (&self->view, to_m);

  lr_theme_set_line (cr, self->view.theme, LR_LINE_THIN, LR_DASH_SHORT);
  lr_theme_set_color (cr, self->view.theme->in_hand, 0.8);
  cairo_move_to (cr, from.x, from.y);
  cairo_line_to (cr, to.x, to.y);
  cairo_stroke (cr);
}

static void
draw_walls (LrCanvas *self,
            cairo_t  *cr)
{
  RoomDrawing *drawing = drawing_of (self);

  for (guint i = 0; i < drawing->corners_m->len; i++)
    {
      LrVec2 at = lr_view_to_device (&self->view, g_array_index (drawing->corners_m, LrVec2, i));

      cairo_line_to (cr, at.x, at.y);
    }
  lr_theme_set_line (cr, self->view.theme, LR_LINE_WALL, LR_DASH_SOLID);
  lr_theme_set_color (cr, self->view.theme->ink, 1.0);
  cairo_stroke (cr);
  for (guint i = 0; i + 1 < drawing->corners_m->len; i++)
    lr_canvas_draw_length (self, cr, g_array_index (drawing->corners_m, LrVec2, i),
                           g_array_index (drawing->corners_m, LrVec2, i + 1));
}

static void
draw_running_wall (LrCanvas *self,
                   cairo_t  *cr,
                   LrVec2    to_m)
{
  RoomDrawing *drawing = drawing_of (self);
  LrVec2 from = lr_view_to_device (&self->view, last_corner_m (drawing)), to = lr_view_to_device (&self->view, to_m);
  gboolean is_wrong = lr_path_crosses (corners_of (drawing), drawing->corners_m->len, to_m);

  if (drawing->typed->len == 0 && (drawing->next.why & LR_SNAP_ALIGN_X))
    draw_guide (self, cr, drawing->next.x_from_m, to_m);
  if (drawing->typed->len == 0 && (drawing->next.why & LR_SNAP_ALIGN_Y))
    draw_guide (self, cr, drawing->next.y_from_m, to_m);

  lr_theme_set_line (cr, self->view.theme, LR_LINE_WALL, LR_DASH_SOLID);
  lr_theme_set_color (cr, is_wrong ? self->view.theme->fix_line : self->view.theme->in_hand, 1.0);
  cairo_move_to (cr, from.x, from.y);
  cairo_line_to (cr, to.x, to.y);
  cairo_stroke (cr);
  lr_canvas_draw_length (self, cr, last_corner_m (drawing), to_m);
  draw_angle (self, cr, to_m);
}

static void
draw (LrCanvas *self,
      cairo_t  *cr)
{
  RoomDrawing *drawing = drawing_of (self);
  LrVec2 to_m = end_m (self);

  if (drawing->corners_m->len > 0)
    {
      draw_walls (self, cr);
      draw_running_wall (self, cr, to_m);
    }
  for (guint i = 0; i < drawing->corners_m->len; i++)
    lr_canvas_draw_knob (self, cr, g_array_index (drawing->corners_m, LrVec2, i));
  if (drawing->has_next && (drawing->corners_m->len == 0 || closes (drawing)))
    lr_canvas_draw_knob (self, cr, to_m);
}

static const LrCanvasTool tool = { .leave = leave, .hover = hover, .click = click, .key = key, .draw = draw };

/**
 * lr_canvas_draw_room:
 * @self: the sheet
 *
 * Starts drawing a room. One that is there stays until the new one is closed.
 */
void
lr_canvas_draw_room (LrCanvas *self)
{
  RoomDrawing *drawing;
  LrSimilarity lies;

  g_return_if_fail (LR_IS_CANVAS (self));

  if (!lr_canvas_may_edit (self))
    return;

  lr_canvas_drag_cancel (self);
  lr_document_select (self->document, NULL);
  lr_canvas_take_wall (self, -1);

  drawing = g_new0 (RoomDrawing, 1);
  drawing->corners_m = g_array_new (FALSE, FALSE, sizeof (LrVec2));
  drawing->typed = g_string_new (NULL);
  lr_canvas_set_tool (self, &tool, drawing);
  self->fits = FALSE; /* the paper stays still under the hand */
  if (lr_canvas_trace_lies (self, &lies) && lr_canvas_get_room (self)->underlay_is_guessed)
    lr_document_say (self->document, _("The picture is not to scale yet, so walls drawn over it have wrong lengths. Scale it first."));
  update_hint (self);
  gtk_widget_grab_focus (GTK_WIDGET (self));
}
